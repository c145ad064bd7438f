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

const made = (choice) => ({
  time: () => ({ time: `${Number(secondsOf(choice.third).toPrecision(6))}s` }),
  lull: () => ({ frame: 'lull' }),
  gone: () => ({ people: 'gone' }),
  joined: () => ({ trails: 'joined' }),
  whole: () => ({ frame: 'all' }),
})[choice.way]();

/**
 * The document: kinds for all parts of a kind. What is made of all frames needs no word unless its edge was pulled.
 *
 * @param edges how wide the edge of each kind was pulled, as a fraction of the picture's width
 */
export function documentOf(choices, edges = {}) {
  const parts = Object.entries(choices)
    .filter(([region, choice]) => choice.way !== 'whole' || edges[region])
    .map(([region, choice]) => ({ region, ...made(choice), ...(edges[region] ? { edge: edges[region] } : {}) }));
  return { schema: 'blend/1', parts };
}

/** How wide a stroke is, as a fraction of the picture's width; a line without a width points at all that is alike. */
export const STROKES = { twig: 0, bough: 0.025, tree: 0.08 };

export const WIDEST_EDGE = 0.1;

/** Pixels over which an edge runs in a picture so many pixels wide. */
export const edgePixels = (edge, width) => Math.round(edge * width);

/**
 * A place on the edge of a kind, away from the border of the picture and near the seal, and which way is out of it.
 *
 * @param is whether a pixel of the map is of the kind
 * @returns x, y as fractions, out as a unit vector; null where it has no edge
 */
export function edgeNear(is, width, height, [nearX, nearY]) {
  const margin = Math.ceil(0.06 * width);
  let best = null;
  let least = Infinity;
  for (let y = margin; y < height - margin; y++) {
    for (let x = margin; x < width - margin; x++) {
      if (is(x, y) && !(is(x + 1, y) && is(x - 1, y) && is(x, y + 1) && is(x, y - 1))) {
        const far = Math.hypot(x - nearX * width, y - nearY * height);
        if (far < least) {
          least = far;
          best = [x, y];
        }
      }
    }
  }
  if (!best) {
    return null;
  }
  let [outX, outY] = [0, 0];
  for (let dy = -6; dy <= 6; dy++) {
    for (let dx = -6; dx <= 6; dx++) {
      const inside = is(best[0] + dx, best[1] + dy);
      outX += inside ? -dx : dx;
      outY += inside ? -dy : dy;
    }
  }
  const long = Math.hypot(outX, outY);
  return { x: (best[0] + 0.5) / width, y: (best[1] + 0.5) / height, out: long > 0 ? [outX / long, outY / long] : [0, -1] };
}

/** The longest third of a stop that frames of so many seconds hold, and the shortest. */
export const longestThird = (seconds) => Math.floor(3 * Math.log2(seconds) + 1e-6);
export const shortestThird = (exposure) => Math.ceil(3 * Math.log2(exposure) - 1e-6);
