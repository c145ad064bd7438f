// The marks of the visual language: one stroke whose swing is the detail that is left, glyphs of the words, seals of the
// parts. Pure text in, text out; no document needed.

const NAMES = { water: 'Water', cloud: 'Cloud', branch: 'Branch', rock: 'Rock' };
const KINDS = { flowing: 'water', drifting: 'cloud', swaying: 'branch', fixed: 'rock' };

// Share left on the screen to swing of the stroke, 0 to 1: as seen (over 15 %) is full, glass (under 1 %) almost flat.
const FULL_SWING_LEFT = 0.2;
const SWING_POWER = 0.8;

const WORD_SWING = { 'as seen': 1, softened: 0.5, silky: 0.22, mist: 0.09, glass: 0 };

export function sealOfKind(kind) {
  return KINDS[kind] || 'rock';
}

export function nameOfKind(kind) {
  return NAMES[sealOfKind(kind)];
}

export function swing(left) {
  return Math.pow(Math.min(1, Math.max(0, left) / FULL_SWING_LEFT), SWING_POWER);
}

// A fixed sequence of numbers, so that a stroke is drawn the same way every time.
function dice(seed) {
  let s = seed;
  return () => {
    s = (s * 1664525 + 1013904223) >>> 0;
    return s / 4294967296;
  };
}

/** Path of a stroke from x0 to x1 at height y; amp(x) is its swing as a share of max. */
export function strokePath(x0, x1, y, max, amp, seed = 3, step = 4) {
  const next = dice(seed);
  let path = `M${x0.toFixed(1)} ${y.toFixed(1)}`;
  let side = 1;
  for (let x = x0 + step; x <= x1; x += step) {
    const a = amp(x) * max * (0.55 + 0.45 * next());
    side = -side;
    path += `L${x.toFixed(1)} ${(y + side * a).toFixed(1)}`;
  }
  return `${path}L${x1.toFixed(1)} ${y.toFixed(1)}`;
}

/** The glyph of a word, w by h pixels, in the colour of the text around it. */
export function glyph(word, w = 28, h = 14) {
  const m = h / 2;
  const pen = 'fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="bevel"';
  let inner;
  if (word === 'sharp' || word === 'still') {
    inner = `<path ${pen} d="M1 ${h - 2}H${w * 0.25}V2H${w * 0.6}V${h - 2}H${w - 1}"/>`;
  } else if (word === 'streaked' || word === 'trails') {
    inner = `<path ${pen} d="M1 2H${w - 8}M6 ${m}H${w - 1}M1 ${h - 2}H${w - 5}"/>`;
  } else if (word === 'lines') {
    inner = `<path ${pen} d="M1 ${h - 2}q${w * 0.3}-10 ${w * 0.6}-9t${w * 0.4}-2M${w * 0.3} ${h - 1}q${w * 0.2}-6 ${w * 0.7}-6"/>`;
  } else if (word === 'gone') {
    inner = `<path ${pen} stroke-dasharray="2 4" d="M1 ${m}H${w - 1}"/>`;
  } else if (word in WORD_SWING) {
    const a = WORD_SWING[word];
    inner = `<path ${pen} d="${strokePath(1, w - 1, m, m - 1.5, () => a, 7, a < 0.3 ? 5 : 3.6)}"/>`;
  } else {
    inner = `<circle cx="${m}" cy="${m}" r="${m - 2}" ${pen}/>`;
  }
  return `<svg width="${w}" height="${h}" viewBox="0 0 ${w} ${h}" aria-hidden="true">${inner}</svg>`;
}

const SEAL = {
  water: 'M2 9l4-3 4 3 4-3 4 3 4-3 4 3M2 15l4-3 4 3 4-3 4 3 4-3 4 3M2 21l4-3 4 3 4-3 4 3 4-3 4 3',
  cloud: 'M3 18h22M6 18c-3-5 2-8 5-6 1-6 10-6 11 0 4 0 4 5 2 6M6 22h10M19 22h5',
  branch: 'M3 24L24 5M10 18l-1-8M15 13l8 1M9 10l-3-3M9 10l2-4M23 14l2-3M23 14l1 4',
  rock: 'M3 24L8 9l6-3 5 7 3-1 4 12zM8 9l4 8-4 7M19 13l-3 5 3 6',
};

export function sealPath(seal) {
  return SEAL[seal];
}

export function sealSvg(seal, size = 28) {
  return `<svg width="${size}" height="${size}" viewBox="0 0 28 28" aria-hidden="true"><path d="${SEAL[seal]}" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" stroke-linecap="round"/></svg>`;
}

export const MARK =
  '<svg width="44" height="18" viewBox="0 0 44 18" aria-hidden="true"><path d="M1 9l3-7 3.5 14L11 3l3.5 11L18 5.5l3.5 6.5 3.5-4.5 3.5 2.6L32 8.6l3 .6 8-.2" fill="none" stroke="currentColor" stroke-width="2.4" stroke-linejoin="bevel"/></svg>';

export function escapeText(text) {
  return String(text).replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);
}
