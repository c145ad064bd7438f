// Wishes of the hour: a running line of sentences, each opened to be set by steppers, one key for another wish.

import { el, fill, key } from '../dom.js';
import { openSheet } from './sheet.js';
import { stepper } from './stepper.js';
import { moved, number, toggled, wishesIn, wishesLeft } from '../logic/plan.js';

/** @param set (name, value or undefined) => void */
export function wishLine({ outing, view, set }) {
  const wished = wishesIn(outing, view);
  return el(
    'div.wish-line',
    { role: 'group', 'aria-label': 'Wishes of the hour' },
    wished.map((wish) => key(wish.sentence(view.hour[wish.name]), () => wishSheet(wish, view.hour[wish.name], set), { class: 'wish-chip', 'data-focus': `wish-${wish.name}`, title: 'Change this wish' })),
    key(wished.length ? 'Another wish' : 'First wish', () => moreSheet(outing, view, set), { class: 'wish-chip more', 'data-focus': 'wish-more' }),
  );
}

function moreSheet(outing, view, set) {
  openSheet('Another wish', (close) =>
    el(
      'div.wish-choice',
      {},
      wishesLeft(outing, view).map((wish) =>
        key(
          [el('b', {}, wish.title), el('small', {}, `${wish.sentence(wish.fresh)}${wish.forecast ? '. Without a forecast it is taken as wished.' : ''}`)],
          () => {
            close();
            set(wish.name, wish.fresh);
            wishSheet(wish, wish.fresh, set);
          },
        )),
    ));
}

function wishSheet(wish, start, set) {
  let value = start;
  openSheet(wish.title, (close) => {
    const sentence = el('p.wish-sentence', { 'aria-live': 'polite' }, wish.sentence(value));
    const to = (next) => {
      value = next;
      sentence.textContent = wish.sentence(value);
      set(wish.name, value);
    };
    const body = el('div.wish-set', {});
    const draw = () => fill(body, controls(wish, () => value, (next) => { to(next); draw(); }, to));
    draw();
    return el('div.wish-body', {}, sentence, body, el('div.keys', {}, key('Done', () => close(), { class: 'act' }), key('Leave it out', () => { close(); set(wish.name, undefined); }, { class: 'alt' })));
  });
}

function controls(wish, read, toAndDraw, to) {
  if (wish.kind === 'choice') {
    return wish.options.map(([word, text]) => key(text, () => toAndDraw(word), { class: 'alt', 'aria-pressed': String(read() === word), 'data-focus': `choice-${word}` }));
  }
  if (wish.kind === 'several') {
    return wish.options.map(([word, text]) => key(text, () => toAndDraw(toggled(read(), word)), { class: 'alt', 'aria-pressed': String(read().includes(word)), 'data-focus': `choice-${word}` }));
  }
  const text = (end) => (wish.kind === 'hours' ? read()[end] : `${number(wish.scale * read()[end], wish.decimals)}${wish.unit}`);
  return ['from', 'to'].map((label, end) => stepper(label, () => text(end), (direction) => to(moved(wish, read(), end, direction)), `end-${label}`));
}
