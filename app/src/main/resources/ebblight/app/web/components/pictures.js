// Previews at every third of a stop, fetched from the chosen time outwards and kept decoded, so that the picture follows
// the handle without asking anybody.

import { preview } from '../engine.js';

const FIRST = -9;
const LAST = 30;
const AT_ONCE = 2;

export function createPictures(onarrived) {
  let bitmaps = new Map();
  let facts = new Map();
  let asked = new Set();
  let source = null;
  let stop = null;
  let running = 0;
  let near = 0;

  function next() {
    let best = null;
    for (let node = FIRST; node <= LAST; node++) {
      if (!bitmaps.has(node) && !asked.has(node)) {
        // whole stops first: they are the pieces of the strips
        const away = Math.abs(node - near) + (node % 3 === 0 ? 0 : 6);
        if (best === null || away < best.away) {
          best = { node, away };
        }
      }
    }
    return best && best.node;
  }

  async function pump() {
    while (source && running < AT_ONCE) {
      const node = next();
      if (node === null) {
        return;
      }
      asked.add(node);
      running++;
      const mine = source;
      preview(mine.frames, mine.strokes, node, { signal: stop.signal })
        .then((one) => {
          if (mine === source) {
            bitmaps.set(node, one.bitmap);
            facts.set(node, one.facts);
            onarrived(node);
          } else {
            one.bitmap.close();
          }
        })
        .catch((error) => {
          if (mine === source && error.name !== 'AbortError') {
            onarrived(node, error);
          }
        })
        .finally(() => {
          if (mine === source) {
            running--;
            pump();
          }
        });
    }
  }

  return {
    /** Begins anew with other frames or strokes; the old pictures stay until new ones come. */
    begin(frames, strokes, third) {
      stop?.abort();
      stop = new AbortController();
      source = { frames, strokes };
      bitmaps.forEach((bitmap) => bitmap.close());
      bitmaps = new Map();
      facts = new Map();
      asked = new Set();
      running = 0;
      near = third;
      pump();
    },
    /** Stops asking; what is here stays. */
    halt() {
      stop?.abort();
      source = null;
    },
    aim(third) {
      near = third;
    },
    /** The picture of a third, or of the nearest third that is here: { bitmap, node }. */
    at(third) {
      let best = null;
      for (const node of bitmaps.keys()) {
        if (best === null || Math.abs(node - third) < Math.abs(best - third)) {
          best = node;
        }
      }
      return best === null ? null : { bitmap: bitmaps.get(best), node: best, facts: facts.get(best) };
    },
    get count() {
      return bitmaps.size;
    },
    total: LAST - FIRST + 1,
  };
}
