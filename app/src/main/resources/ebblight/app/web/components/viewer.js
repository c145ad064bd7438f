// Every pixel of the chosen time: the full-size preview is written into the outing, and looked at by tiles.

import { el, fill, key } from '../dom.js';
import * as engine from '../engine.js';
import { json } from '../http-carrier.js';
import { sayThird } from '../axis/scale.js';
import { openSheet } from './sheet.js';
import { progressBox } from './progress.js';

export function viewerOf(app, scene) {
  const s = scene.state;
  const stop = new AbortController();
  openSheet(
    `${sayThird(s.third)}, every pixel`,
    () => {
      const host = el('div.viewer');
      const progress = progressBox('Exposing at full size', () => stop.abort());
      fill(host, progress.box);
      const seconds = Number(Math.pow(2, s.third / 3).toPrecision(6));
      engine
        .make(scene.frames(), s.view.strokes, `${seconds}s`, { signal: stop.signal, onProgress: progress.update })
        .then(async (whole) => {
          const file = whole.answer.file;
          const { facts, box } = await tilesOf(file, `The picture at ${sayThird(s.third)}, one pixel for one`);
          fill(host, el('p.cap', {}, `${file}, ${facts.width} × ${facts.height}, with its record beside it. Scroll or drag to move.`), box);
        })
        .catch((error) => fill(host, el('p.fault', { role: 'alert' }, error.name === 'AbortError' ? 'Stopped. Nothing was written.' : error.message), key('Close', () => host.closest('.sheet').querySelector('.sheet-head button').click(), { class: 'alt' })));
      return host;
    },
    { className: 'tall', onclose: () => stop.abort() },
  );
}

/** Every pixel of a picture of the outing in a box to scroll and drag, and its size. */
export async function tilesOf(path, label) {
  const facts = await json(`/api/picture?path=${encodeURIComponent(path)}`);
  const tiles = [];
  for (let row = 0; row * facts.tile < facts.height; row++) {
    for (let column = 0; column * facts.tile < facts.width; column++) {
      const w = Math.min(facts.tile, facts.width - column * facts.tile);
      const h = Math.min(facts.tile, facts.height - row * facts.tile);
      tiles.push(el('img', { loading: 'lazy', alt: '', width: String(w), height: String(h), style: `left:${column * facts.tile}px;top:${row * facts.tile}px`, src: `/api/tile?path=${encodeURIComponent(path)}&column=${column}&row=${row}` }));
    }
  }
  const box = el('div.tiles', { tabindex: '0', role: 'img', 'aria-label': label }, el('div', { style: `width:${facts.width}px;height:${facts.height}px` }, tiles));
  drag(box);
  return { facts, box };
}

function drag(box) {
  let from = null;
  box.addEventListener('pointerdown', (event) => {
    if (event.pointerType === 'mouse') {
      from = [event.clientX + box.scrollLeft, event.clientY + box.scrollTop];
      box.setPointerCapture(event.pointerId);
      event.preventDefault();
    }
  });
  box.addEventListener('pointermove', (event) => {
    if (from) {
      box.scrollTo(from[0] - event.clientX, from[1] - event.clientY);
    }
  });
  box.addEventListener('pointerup', () => {
    from = null;
  });
}
