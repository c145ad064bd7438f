// How a part shall look: one field a word, with the patch at a time that has it, the stroke, and the times.

import { el } from '../dom.js';
import { glyph, escapeText } from '../axis/marks.js';
import { sayRange } from '../axis/scale.js';
import { openSheet } from './sheet.js';
import { parseWish, wishWords } from '../logic/parts.js';

const CLOSABLE = ['softened', 'silky', 'mist'];
const MEANING = {
  gone: 'people and cars leave no trace',
  trails: 'lights join into unbroken lines',
  lines: 'the backwash draws; release as it runs back',
};

/** @param choose (text or null) => void, "silky!" for no smoother than silky */
export function wishSheet(region, name, strip, current, choose, recolour) {
  const now = parseWish(current);
  openSheet(
    `${name}: how shall it look?`,
    (close) => {
      const pick = (text) => {
        close();
        choose(text);
      };
      const field = (word) => {
        const span = word.likely[0];
        const never = !span;
        const on = now.word === word.word;
        const times = word.likely.map((s) => sayRange(s.fromSeconds, s.toSeconds)).join(' or ');
        const words = never ? word.note || 'never here' : MEANING[word.word] ? `${times}; ${MEANING[word.word]}` : times;
        return el('div.wish-row', {}, el(
          `button.wish-field${on ? '.on' : ''}`,
          { type: 'button', disabled: never, 'aria-pressed': String(on), onclick: () => pick(word.word), 'data-word': word.word },
          patch(strip, span, region.kind, recolour),
          el('span', {}, el('b', {}, word.word), el('span.marks', { html: glyph(word.word, 120, 18) }), el('small', {}, words)),
        ), CLOSABLE.includes(word.word) && !never
          ? el(`button.wish-closed${on && now.closed ? '.on' : ''}`, { type: 'button', 'aria-pressed': String(on && now.closed), 'aria-label': `${word.word}, and no smoother`, onclick: () => pick(`${word.word}!`) }, 'no', el('br'), 'more')
          : '');
      };
      return el(
        'div.wish-fields',
        {},
        wishWords(region).map(field),
        el('button.wish-none', { type: 'button', onclick: () => pick(null), 'aria-pressed': String(!now.word) }, 'No wish for this part'),
      );
    },
    { className: 'wish' },
  );
}

function patch(strip, span, kind, night) {
  if (!strip || !span) {
    return el('i.wish-patch.blank');
  }
  const from = span.fromSeconds > 0 ? Math.log2(span.fromSeconds) : -3;
  const to = span.toSeconds === null ? from + 1 : Math.log2(span.toSeconds);
  const stop = Math.min(10, Math.max(-3, kind === 'fixed' || span.fromSeconds <= 0 ? Math.min(to, -1) : (from + Math.min(to, from + 2)) / 2));
  const i = Math.min(strip.pieces - 1, Math.round((3 * stop - strip.firstThird) / strip.everyThirds));
  const w = strip.pieceWidth;
  return el('i.wish-patch', {
    html: `<svg width="100%" height="100%" viewBox="${i * w} 0 ${w} ${strip.pieceHeight}" preserveAspectRatio="xMidYMid slice" aria-hidden="true"><image href="${escapeText(strip.href)}" width="${strip.pieces * w}" height="${strip.pieceHeight}" ${night ? 'style="filter:url(#night-red)"' : ''}/></svg>`,
  });
}
