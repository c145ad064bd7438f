// What lies over the picture of the axis, made once for as long as it holds: hatches, the edge of a part, its note.

import { cutMasks, lossesOf } from './hatch.js';
import { plain, sayThird } from '../axis/scale.js';

const NOTHING = [];
const share = (part) => (part > 0 && part < 0.001 ? 'under 0.1 %' : `${(100 * part).toFixed(1)} %`);

export function createLayers(scene) {
  const s = scene.state;
  let lost = { bitmap: null, losses: null };
  let cut = { drawn: null, kind: null, masks: NOTHING };
  let outlined = { id: null, drawn: null, path: null };

  function losses(one) {
    if (lost.bitmap !== one.bitmap) {
      lost = { bitmap: one.bitmap, losses: lossesOf(one.bitmap) };
    }
    return lost.losses;
  }

  /** All that counts as a kind of part. */
  function kindNow(kind) {
    const { drawn } = s;
    if (drawn?.map && (cut.drawn !== drawn || cut.kind !== kind)) {
      const { map, width, height, regions } = drawn;
      const mine = regions.map((r) => r.kind === kind);
      cut = { drawn, kind, masks: cutMasks([{ hatch: 'part', width, height, has: (i) => mine[map[i]] }]) };
    }
    return cut.masks;
  }

  return {
    /** @param tool kind that is stroked with, or null; clipped whether lost light is shown */
    masks: (one, tool, clipped) => (tool ? kindNow(tool) : clipped && one ? losses(one).masks : NOTHING),
    outline() {
      if (outlined.id !== s.selected || outlined.drawn !== s.drawn) {
        outlined = { id: s.selected, drawn: s.drawn, path: scene.outline() };
      }
      return outlined.path;
    },
    /** What is to be said of the picture that is shown. */
    note(one, clipped) {
      if (!one) {
        return 'The first picture comes.';
      }
      if (clipped) {
        const { burnt, black } = losses(one);
        return `Light lost in the clip’s own exposure: burnt ${share(burnt)} (dashes), black ${share(black)} (dots).`;
      }
      if (one.node !== s.third) {
        return `Shows ${sayThird(one.node)}; ${sayThird(s.third)} comes.`;
      }
      const { facts } = one;
      if (facts.method === 'predicted') {
        const { number, unit } = plain(facts.clipSeconds);
        return `Predicted, the clip is ${number} ${unit}: foam and streaks are likely ones.`;
      }
      return facts.frames === 1 ? 'One frame of the clip.' : `Mean of ${facts.frames} frames.`;
    },
  };
}
