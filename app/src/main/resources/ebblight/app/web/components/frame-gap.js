// How far apart frames were taken, where they do not say it themselves: by steps, without a keyboard.

import { el, key } from '../dom.js';
import { plain } from '../axis/scale.js';
import { stepper } from './stepper.js';

/** Seconds between frames that people set: video, bursts, interval timers. */
const GAPS = [1 / 60, 1 / 30, 1 / 25, 1 / 15, 1 / 10, 1 / 5, 1 / 2, 1, 2, 3, 4, 5, 6, 8, 10, 11, 12, 15, 20, 30, 60];
const USUAL = 12;

const words = (seconds) => {
  const { number, unit } = plain(seconds);
  return `${number} ${unit}`;
};

/** @param now frames a second as typed before, if they were; choose (frames a second) => void */
export function frameGap(now, choose) {
  const wanted = now ? 1 / now : USUAL;
  let at = GAPS.reduce((best, gap, i) => (Math.abs(gap - wanted) < Math.abs(GAPS[best] - wanted) ? i : best), 0);
  return el(
    'div.frame-gap',
    {},
    stepper('One frame every', () => words(GAPS[at]), (d) => { at = Math.max(0, Math.min(GAPS.length - 1, at + d)); }, 'gap'),
    key('Read them so', () => choose(1 / GAPS[at]), { class: 'act', 'data-focus': 'gap-read' }),
  );
}
