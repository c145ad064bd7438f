// The strips of Blend: one a part, its pieces at their times, the chosen one pulled along or stepped by keys.

import { el, fill, key } from '../dom.js';
import { nameOfKind, sealOfKind, sealSvg } from '../axis/marks.js';
import { sayThird } from '../axis/scale.js';
import { WAYS, waysOf, wordsOf } from '../logic/blend.js';
import { clamp } from '../logic/finish.js';

export const FIRST = -9;
export const LAST = 30;

export function blendRows(host, { state, kinds, choiceOf, third, choose, recompose, drawAll }) {
  /** A strip is pulled: the time under the finger, in thirds, within what the frames hold. */
  function pulled(kind, event) {
    const pieces = [...event.currentTarget.querySelectorAll('.piece')];
    const first = pieces[0].getBoundingClientRect();
    const last = pieces[pieces.length - 1].getBoundingClientRect();
    const at = (event.clientX - first.left) / (last.right - first.left) * 3 * pieces.length - 1.5;
    const wanted = clamp(FIRST + Math.round(at), state.shortest, state.longest);
    if (state.pull?.choice.third !== wanted) {
      state.pull = { kind, choice: { way: 'time', third: wanted } };
      pieces.forEach((piece, i) => {
        const on = Math.abs(wanted - FIRST - 3 * i) < 1.5;
        piece.classList.toggle('now', on);
        piece.firstChild.textContent = on ? sayThird(wanted) : '';
      });
      event.currentTarget.querySelector('.any')?.remove();
      recompose();
    }
  }

  const list = kinds();
  const scale = [];
  for (let t = FIRST; t < LAST; t += 3) {
    scale.push(t);
  }
  // air above the scale, ground below it, as in the picture
  const ground = list.findIndex((kind) => kind === 'fixed' || kind === 'flowing');
  const rows = list.map((kind) => {
    const choice = choiceOf(kind);
    const strip = state.strips[kind];
    const area = state.measured.regions.filter((r) => r.kind === kind).reduce((sum, r) => sum + r.areaFraction, 0);
    return el(
      `section.blend-row${state.selected === kind ? '.on' : ''}`,
      { 'aria-label': nameOfKind(kind) },
      el('div.blend-name', {}, el('span', { html: sealSvg(sealOfKind(kind), 28) }), el('b', {}, nameOfKind(kind)), el('small', {}, `${Math.round(100 * area)} % of the picture`)),
      el(
        'div.strip-pieces',
        {
          role: 'slider', tabindex: '0', 'data-focus': `strip-${kind}`, 'aria-label': `${nameOfKind(kind)}, shutter time`, 'aria-valuemin': String(state.shortest), 'aria-valuemax': String(state.longest), 'aria-valuenow': String(third(choice)), 'aria-valuetext': wordsOf(choice),
          onpointerdown: (event) => { event.currentTarget.setPointerCapture(event.pointerId); pulled(kind, event); },
          onpointermove: (event) => (state.pull ? pulled(kind, event) : null),
          onpointerup: () => {
            const { pull } = state;
            state.pull = null;
            if (pull) {
              choose(kind, pull.choice);
            }
          },
          onpointercancel: () => { state.pull = null; drawAll(); },
          onkeydown: (event) => {
            const way = { ArrowLeft: -1, ArrowRight: 1, ArrowDown: -3, ArrowUp: 3 }[event.key];
            if (way) {
              event.preventDefault();
              event.stopPropagation();
              choose(kind, { way: 'time', third: third(choice) + way });
            }
          },
        },
        scale.map((t, i) => {
          const out = t > state.longest + 0.5 || t < state.shortest - 2.5;
          const now = choice.way === 'time' && Math.abs(choice.third - t) < 1.5;
          return el(`span.piece${now ? '.now' : ''}${out ? '.out' : ''}`, {
            style: strip && !out ? `background-image:url(${strip.href});background-size:${strip.pieces * 100}% 100%;background-position:${(100 * i) / (strip.pieces - 1)}% 0` : '',
          }, el('span', {}, now ? sayThird(choice.third) : ''));
        }),
        choice.way === 'time' ? '' : el('span.any', {}, WAYS[choice.way]),
      ),
      el('div.blend-ways', { role: 'group', 'aria-label': `${nameOfKind(kind)} made of` }, waysOf(kind).map((way) => key(WAYS[way], () => choose(kind, way === 'time' ? { way, third: third(choice) } : { way }), { 'aria-pressed': String(choice.way === way), 'data-focus': `way-${kind}-${way}` }))),
    );
  });
  rows.splice(ground < 0 ? rows.length : ground, 0, el('div.blend-scale', { 'aria-hidden': 'true' }, el('b', {}, 'Time per part'), el('div', {}, scale.map((t) => el(`span${t > state.longest + 0.5 ? '.out' : ''}`, {}, sayThird(t).replace(/ s$/, '').replace(/ min.*/, ' min'))))));
  fill(host, rows);
}
