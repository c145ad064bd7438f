// What is planned besides the wishes: shutter time, way back, shortest window; each on a sheet with steppers.

import { el, fill, key } from '../dom.js';
import * as engine from '../engine.js';
import { openSheet } from './sheet.js';
import { stepper } from './stepper.js';
import { exposureEnds, number, timeWords } from '../logic/plan.js';

const TIMES = [1, 2, 4, 8, 15, 30, 60, 120, 240, 480, 960];

/** @param setPlan (name, value or undefined) => void; lens: the view as the engine reads it, or undefined */
export function exposureSheet(plan, setPlan, lens) {
  let ends = exposureEnds(plan) || [30, 120];
  const put = () => setPlan('exposure', { from: `${ends[0]}s`, to: `${ends[1]}s` });
  const near = (s) => TIMES.reduce((best, t, i) => (Math.abs(Math.log(t / s)) < Math.abs(Math.log(TIMES[best] / s)) ? i : best), 0);
  if (!plan.exposure) {
    put();
  }
  openSheet('Shutter time wished', (close) =>
    el(
      'div.wish-body',
      {},
      ['shortest', 'longest'].map((label, end) =>
        stepper(label, () => timeWords(ends[end]), (d) => {
          const next = TIMES[Math.max(0, Math.min(TIMES.length - 1, near(ends[end]) + d))];
          ends = end === 0 ? [Math.min(next, ends[1]), ends[1]] : [ends[0], Math.max(next, ends[0])];
          put();
        })),
      guessBox(plan, setPlan, lens),
      el('div.keys', {}, key('Done', () => close(), { class: 'act' }), key('Leave it out', () => { close(); setPlan('exposure', undefined); }, { class: 'alt' })),
    ));
}

/** @param datum above which the water is told */
export function guardSheet(plan, setPlan, datum) {
  const guard = { feetMetres: 3, marginMetres: 0.5, ...plan.guard };
  const put = (change) => setPlan('guard', Object.assign(guard, change) && { ...guard });
  if (!plan.guard) {
    put({});
  }
  const metres = (name, label, least, most) => stepper(label, () => `${number(guard[name], 1)} m`, (d) => put({ [name]: Math.max(least, Math.min(most, Math.round(10 * (guard[name] + 0.1 * d)) / 10)) }));
  const swell = el('div.wish-set', {});
  const drawSwell = () =>
    fill(
      swell,
      guard.swellMetres
        ? [metres('swellMetres', 'swell', 0.1, 15), stepper('its period', () => `${guard.swellSeconds} s`, (d) => put({ swellSeconds: Math.max(3, Math.min(25, guard.swellSeconds + d)) }))]
        : key('There is swell', () => { put({ swellMetres: 1, swellSeconds: 8 }); drawSwell(); }, { class: 'alt' }),
    );
  drawSwell();
  openSheet('Way back', (close) =>
    el(
      'div.wish-body',
      {},
      el('p', {}, `Heights above ${datum || 'the datum of the station'}. The lowest point you must cross rules; the margin is never under half a metre, nor under what the swell runs up.`),
      metres('feetMetres', 'lowest point', -5, 20),
      metres('marginMetres', 'margin', 0.5, 5),
      swell,
      el('div.keys', {}, key('Done', () => close(), { class: 'act' }), key('Leave it out', () => { close(); setPlan('guard', undefined); }, { class: 'alt' })),
    ));
}

export function leastSheet(plan, setPlan) {
  let least = plan.minMinutes || 15;
  openSheet('Shortest window', (close) => el('div.wish-body', {}, stepper('at least', () => `${least} min`, (d) => { least = Math.max(5, Math.min(240, least + 5 * d)); setPlan('minMinutes', least); }), el('div.keys', {}, key('Done', () => close(), { class: 'act' }))));
}

const LAYERS = [[undefined, 'no cloud'], ['low', 'low clouds'], ['middle', 'middle'], ['high', 'high']];

/** What shutter times do before any clip exists, guessed from wind and cloud, and marked so. @param guessed is told each answer */
export function guessBox(plan, setPlan, lens, guessed = () => {}) {
  const guess = { windMetresPerSecond: 5, ...plan.guess };
  const said = el('div.guess-said', { 'aria-live': 'polite' });
  const layers = el('div.keys', {});
  let turn = 0;
  async function ask() {
    const mine = ++turn;
    const { layer, ...water } = guess;
    try {
      const answer = await engine.guess(lens && layer ? { ...water, layer, view: lens } : water);
      if (mine !== turn) {
        return;
      }
      guessed(answer);
      const words = (part) => part.limits.map((l) => l.text).join('; ');
      fill(
        said,
        el('p', {}, el('b', {}, 'Water: '), words(answer.water), '.'),
        answer.cloud ? el('p', {}, el('b', {}, 'Cloud: '), words(answer.cloud), '.') : layer && !lens ? el('p', {}, 'How fast clouds go depends on the lens: set bearing and lens first.') : '',
        el('p.cap', {}, `This is ${answer.mark}. Waves of lakes and bays are shorter than the wind's own.`),
      );
    } catch (error) {
      fill(said, el('p.fault', {}, error.message));
    }
  }
  const put = (change) => {
    Object.assign(guess, change);
    setPlan('guess', JSON.parse(JSON.stringify(guess)));
    ask();
  };
  const drawLayers = () => fill(layers, LAYERS.map(([layer, text]) => key(text, () => { put({ layer }); drawLayers(); }, { class: 'alt', 'aria-pressed': String(guess.layer === layer), 'data-focus': `layer-${text}` })));
  drawLayers();
  ask();
  return el('section.guess', { 'aria-label': 'A first guess' }, el('h3', {}, 'No clip yet: a first guess'), stepper('wind', () => `${guess.windMetresPerSecond} m/s`, (d) => put({ windMetresPerSecond: Math.max(1, Math.min(30, guess.windMetresPerSecond + d)) })), layers, said);
}
