// Sun and moon that come into the picture while the shutter is open.

import { lensOf } from './plan.js';
import { clockIn } from './zone.js';

/** How long an answer holds: the question is asked anew after that, for the instant it is then. */
const HOLDS_MILLIS = 30e3;

const NAMES = { sun: 'The sun', moon: 'The moon' };

/** The question for an exposure that opens now; null where nobody said where the lens looks. */
export function enteringQuestion({ place }, view, openSeconds, now) {
  const lens = lensOf(view);
  if (!place?.at || !lens) {
    return null;
  }
  const skyline = view.skylineDegrees ?? place.skylineDegrees;
  return {
    at: place.at,
    time: new Date(HOLDS_MILLIS * Math.floor(now / HOLDS_MILLIS)).toISOString(),
    view: lens,
    ...(Number.isFinite(skyline) ? { skylineDegrees: skyline } : {}),
    // half a minute more: the answer holds that long
    exposure: { openSeconds: Math.ceil(openSeconds + HOLDS_MILLIS / 1000) },
  };
}

/** One sentence for each of them. */
export const enteringWords = (entering, zone) =>
  (entering || []).map(({ body, time }) =>
    `${NAMES[body]} comes into the picture at ${clockIn(zone, Date.parse(time), true)}, before the shutter closes: flare, and clipped light${body === 'sun' ? '. Never look at it through an optical finder' : ''}.`);
