// What each part is made of, as blend/1 reads it, and its words. No document here.

import { sayThird, secondsOf } from '../axis/scale.js';

export const WAYS = { time: 'a time', lull: 'the lull', gone: 'people gone', joined: 'trails joined', whole: 'all frames' };

/** Which ways a kind of part has. */
export const waysOf = (kind) => (kind === 'swaying' ? ['time', 'lull', 'whole'] : kind === 'fixed' ? ['whole', 'gone', 'joined', 'time'] : ['time', 'whole', 'gone', 'joined']);

/** A first choice: what flows as long as there is, what drifts short, what sways in its lull, what stands of all. */
export function firstChoice(kind, longest) {
  return {
    flowing: { way: 'time', third: longest },
    drifting: { way: 'time', third: Math.min(longest, -3) },
    swaying: { way: 'lull' },
    fixed: { way: 'whole' },
  }[kind];
}

export function wordsOf(choice) {
  return choice.way === 'time' ? sayThird(choice.third) : WAYS[choice.way];
}

/** The document: kinds for all parts of a kind. */
export function documentOf(choices) {
  const parts = [];
  for (const [region, choice] of Object.entries(choices)) {
    if (choice.way === 'time') {
      parts.push({ region, time: `${Number(secondsOf(choice.third).toPrecision(6))}s` });
    } else if (choice.way === 'lull') {
      parts.push({ region, frame: 'lull' });
    } else if (choice.way === 'gone') {
      parts.push({ region, people: 'gone' });
    } else if (choice.way === 'joined') {
      parts.push({ region, trails: 'joined' });
    }
  }
  return { schema: 'blend/1', parts };
}

/** The longest third of a stop that frames of so many seconds hold, and the shortest. */
export const longestThird = (seconds) => Math.floor(3 * Math.log2(seconds) + 1e-6);
export const shortestThird = (exposure) => Math.ceil(3 * Math.log2(exposure) - 1e-6);
