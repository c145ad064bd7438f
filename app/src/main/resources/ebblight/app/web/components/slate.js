// The slate: a code that fills the screen, to be photographed before the frames it speaks of.

import { el, fill, key } from '../dom.js';
import { openSheet } from './sheet.js';
import { filterWords } from './side.js';
import { modules } from '../logic/qr.js';
import { slateText, wishesByKind } from '../logic/slate.js';
import { clockIn } from '../logic/zone.js';

/** A camera's clock is set by the slate: it never shows an older time than this. */
const RENEWED_MILLIS = 2000;

/** Light modules round a code (ISO/IEC 18004, from memory). */
const QUIET = 4;

function drawing(rows) {
  const side = rows.length + 2 * QUIET;
  const path = rows.map((row, y) => Array.from(row, (dark, x) => (dark ? `M${x + QUIET} ${y + QUIET}h1v1h-1z` : '')).join('')).join('');
  return `<svg viewBox="0 0 ${side} ${side}" shape-rendering="crispEdges" role="img" aria-label="The slate"><rect class="slate-paper" width="${side}" height="${side}"/><path class="slate-dark" d="${path}"/></svg>`;
}

/** @param c of the steps: store, s, choice; bare when the frames after it are taken without the filters */
export function slateKey(c, bare) {
  return key('Slate for the camera', () => showSlate(c, bare), { class: 'hold', 'data-focus': 'slate' });
}

function showSlate({ store, s, choice }, bare) {
  const filters = bare ? [] : choice?.filters || [];
  const said = { zone: store.outing.zone, view: s.view.name, filters, wishes: s.view.wishes };
  let timer = 0;
  openSheet('Slate', () => {
    const code = el('div.slate-code');
    const words = el('p.slate-words');
    const draw = () => {
      const now = Date.now();
      const text = slateText(said, now);
      code.dataset.text = text;
      code.innerHTML = drawing(modules(text));
      fill(words, el('b', {}, clockIn(said.zone, now, true)), ` ${[said.view, filterWords(filters), ...wishesByKind(said.wishes)].filter(Boolean).join(', ')}`);
      timer = setTimeout(draw, RENEWED_MILLIS);
    };
    draw();
    return el('div.slate', {}, code, words, el('p.cap', {}, 'Photograph it before the frames. On the desk, sort reads it: clock, view, filters, wish.'));
  }, { className: 'slate-sheet', onclose: () => clearTimeout(timer) });
}
