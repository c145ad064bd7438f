// Where on the axis wishes hold: pure arithmetic on the model that draw.js draws.

import { FIRST_STOP, LAST_STOP, say, sayThird } from './scale.js';

// A chosen third of a stop holds when it lies this near the edge: dial times are not exact powers of two.
const TOLERANCE = 0.15;

export const holdsAt = (spans, k) =>
  spans.some((s) => k >= stopOf(s.fromSeconds) - TOLERANCE && k <= stopOf(s.toSeconds) + TOLERANCE);

export function stopOf(seconds) {
  return seconds === null || seconds === undefined ? 99 : seconds <= 0 ? -99 : Math.log2(seconds);
}

/** Value of listed {seconds, …} points at k stops, straight on a scale of stops. */
export function valueAt(points, key, k) {
  if (!points.length) {
    return 1;
  }
  let i = 0;
  while (i < points.length - 2 && Math.log2(points[i + 1].seconds) < k) {
    i++;
  }
  const a = Math.log2(points[i].seconds);
  const b = Math.log2(points[Math.min(i + 1, points.length - 1)].seconds);
  const t = b > a ? Math.min(1, Math.max(0, (k - a) / (b - a))) : 0;
  const p = points[i][key];
  const q = points[Math.min(i + 1, points.length - 1)][key];
  return p > 0 && q > 0 ? Math.exp(Math.log(p) + t * (Math.log(q) - Math.log(p))) : p + t * (q - p);
}

/** What there is to say of the chosen time: {state, words, holding, wished}. */
export function verdict(model) {
  const k = stopOf(model.chosenSeconds);
  const wished = model.parts.filter((p) => p.wish);
  const holding = wished.filter((p) => holdsAt(p.spans, k));
  const counts = ['', 'The wish', 'Both wishes', 'All three wishes', 'All four wishes'];
  if (model.limits.leaveSeconds !== null && k > stopOf(Math.max(model.limits.leaveSeconds, 1e-3)) + 0.01) {
    return { state: 'late', words: 'Past the time to leave', holding, wished };
  }
  if (!wished.length) {
    return { state: 'open', words: 'No wish yet', holding, wished };
  }
  if (holding.length === wished.length) {
    const sure = wished.every((p) => holdsAt(p.sureSpans, k));
    const plural = wished.length > 1;
    const who = counts[wished.length] || `All ${wished.length} wishes`;
    return {
      state: 'holds',
      sure,
      words: sure ? `${who} hold${plural ? '' : 's'}` : `${who} likely hold${plural ? '' : 's'}`,
      holding,
      wished,
    };
  }
  if (model.clash) {
    return { state: 'clash', words: clashWords(model.clash), holding, wished };
  }
  const first = wished.find((p) => !holdsAt(p.spans, k));
  const before = first.spans.some((s) => k < stopOf(s.fromSeconds));
  return { state: 'misses', words: `${first.name} ${before ? 'not yet' : 'no longer'} ${first.wish}`, holding, wished };
}

function clashWords(clash) {
  return clash.second && clash.second !== clash.first
    ? `No time serves both ${clash.first.toLowerCase()} and ${clash.second.toLowerCase()}`
    : `No time serves ${clash.first.toLowerCase()}`;
}

/** The window that holds the chosen time, else the nearest one; null when there is none. */
export function nearestWindow(model) {
  const k = stopOf(model.chosenSeconds);
  let best = null;
  let away = Infinity;
  for (const w of model.windows) {
    const a = stopOf(w.fromSeconds);
    const b = stopOf(w.toSeconds);
    const d = k < a ? a - k : k > b ? k - b : 0;
    if (d < away) {
      away = d;
      best = w;
    }
  }
  return best;
}

/** Thirds at the two ends of a window, inside it and inside the time to leave. */
export function windowThirds(window, leaveSeconds) {
  const a = stopOf(window.fromSeconds);
  const b = Math.min(stopOf(window.toSeconds), leaveSeconds === null ? 99 : stopOf(Math.max(1e-3, leaveSeconds)));
  return {
    from: Math.max(-9, Math.ceil(3 * (a - TOLERANCE))),
    to: Math.min(30, Math.floor(3 * (b + (stopOf(window.toSeconds) === b ? TOLERANCE : 0)))),
  };
}

/** A window in thirds of a stop, as the band of the axis labels its ends: "10 s to 2 min 8 s", "from 8 s", "any time". */
export function sayWindow(window) {
  const { from, to } = windowThirds(window, null);
  const early = stopOf(window.fromSeconds) < FIRST_STOP;
  const late = stopOf(window.toSeconds) > LAST_STOP;
  if (from > 3 * LAST_STOP) {
    return `past ${say(2 ** LAST_STOP)}`;
  }
  if (to < from) {
    return `near ${say(window.fromSeconds)}`;
  }
  return early && late ? 'any time' : early ? `up to ${sayThird(to)}` : late ? `from ${sayThird(from)}` : from === to ? sayThird(to) : `${sayThird(from)} to ${sayThird(to)}`;
}
