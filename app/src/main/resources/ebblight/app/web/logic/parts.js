// From answers of the engine to the model of the time axis. No document here.

import { nameOfKind, sealOfKind } from '../axis/marks.js';
import { nearestWindow, sayWindow } from '../axis/lane.js';

const SMALLEST_AREA = 0.01;
const ORDER = ['drifting', 'swaying', 'fixed', 'flowing'];
const SMOOTHNESS = ['as seen', 'softened', 'silky', 'mist', 'glass'];

/** Regions large enough to be a part of the picture, largest first. */
export const largeRegions = (measured) => measured.regions.filter((r, i) => r.areaFraction >= SMALLEST_AREA || (i < 4 && r.areaFraction > 0.003));

/** One region a kind for the rows: the one asked for, else the largest. Those in the air first. */
export function rowRegions(measured, shown = {}) {
  const large = largeRegions(measured);
  return ORDER.map((kind) => large.find((r) => r.id === shown[kind]) || large.find((r) => r.kind === kind)).filter(Boolean);
}

const spansOf = (region, word) => region.words.find((w) => w.word === word);

/** Words of a part one after the other along the scale of time. */
export function bandsOf(region) {
  const from = (word) => spansOf(region, word)?.likely[0]?.fromSeconds;
  const cut = (list) =>
    list
      .filter((w) => w.from !== undefined && w.from !== null)
      .sort((a, b) => a.from - b.from)
      .map((w, i, all) => ({ word: w.word, fromSeconds: w.from, toSeconds: i + 1 < all.length ? all[i + 1].from : null }))
      .filter((w) => w.toSeconds === null || w.toSeconds > w.fromSeconds);
  if (region.kind === 'fixed') {
    return [{ word: 'still', fromSeconds: 0, toSeconds: null }];
  }
  if (region.kind === 'drifting') {
    const sharp = spansOf(region, 'sharp')?.likely[0];
    const streaked = spansOf(region, 'streaked')?.likely[0];
    if (!sharp || sharp.toSeconds === null || !streaked) {
      return [{ word: 'sharp', fromSeconds: 0, toSeconds: null }];
    }
    return cut([
      { word: 'sharp', from: 0 },
      { word: 'softened', from: sharp.toSeconds },
      { word: 'streaked', from: streaked.fromSeconds },
    ]);
  }
  if (!region.seen) {
    return [{ word: 'as seen', fromSeconds: 0, toSeconds: null }];
  }
  const still = region.kind === 'swaying' ? spansOf(region, 'still')?.likely[0] : null;
  const bands = cut(SMOOTHNESS.map((word) => ({ word, from: from(word) })));
  if (still && still.fromSeconds === 0 && still.toSeconds !== null && bands.length) {
    bands[0] = { ...bands[0], fromSeconds: still.toSeconds };
    return [{ word: 'still', fromSeconds: 0, toSeconds: still.toSeconds }, ...bands].filter((b) => b.toSeconds === null || b.toSeconds > b.fromSeconds);
  }
  return bands;
}

/** Words that can be wished of a part, in the order of growing smoothness. */
export function wishWords(region) {
  const order = {
    flowing: ['as seen', 'lines', 'softened', 'silky', 'mist', 'glass', 'gone', 'trails'],
    swaying: ['still', 'softened', 'silky', 'mist', 'glass', 'gone', 'trails'],
    drifting: ['sharp', 'streaked'],
    fixed: ['still'],
  }[region.kind];
  return order.map((word) => spansOf(region, word)).filter(Boolean);
}

/** "silky!" to { word, closed }. */
export function parseWish(text) {
  const closed = Boolean(text && text.endsWith('!'));
  return { word: closed ? text.slice(0, -1) : text || null, closed };
}

/** The wishes as the engine reads them. */
export const wishTexts = (wishes, measured) =>
  Object.entries(wishes || {})
    .filter(([id, word]) => word && measured.regions.some((r) => r.id === id))
    .map(([id, word]) => `${id}=${word}`);

/** A first set of wishes: the water as smooth as it can be had, what stands still. */
export function proposedWishes(measured) {
  const wishes = {};
  for (const region of rowRegions(measured)) {
    if (region.kind === 'fixed') {
      wishes[region.id] = 'still';
    } else if (region.kind === 'flowing') {
      const reachable = ['silky', 'softened'].find((word) => spansOf(region, word)?.likely.length);
      if (reachable && region.seen) {
        wishes[region.id] = reachable;
      }
    }
  }
  return wishes;
}

export function axisModel(state) {
  const { measured, weighed, third, view, strips, bag, limits } = state;
  const rows = rowRegions(measured, state.shown);
  const doubles = {};
  rows.forEach((r) => {
    doubles[r.kind] = largeRegions(measured).filter((q) => q.kind === r.kind).length;
  });
  const name = (id) => nameOfKind(measured.regions.find((r) => r.id === id)?.kind);
  const parts = rows.map((region) => {
    const { word, closed } = parseWish(view.wishes?.[region.id]);
    const demand = weighed?.demands.find((d) => d.region === region.id);
    const wanted = word ? demand || spansOf(region, word) : null;
    const strip = strips?.find((s) => s.id === region.id) || null;
    return {
      id: region.id,
      kind: region.kind,
      name: nameOfKind(region.kind),
      seal: sealOfKind(region.kind),
      air: region.kind === 'drifting' || region.kind === 'swaying',
      wish: word,
      closed,
      spans: wanted ? wanted.likely : [],
      sureSpans: wanted ? wanted.sure : [],
      note: demand?.note || '',
      words: bandsOf(region),
      left: region.left,
      contrast: strip ? strip.contrast : [],
      strip,
    };
  });
  const conflict = weighed?.conflict;
  const ids = conflict ? conflict.between.map((text) => text.split('=')[0]) : [];
  const model = {
    chosenSeconds: Math.pow(2, third / 3),
    parts,
    windows: weighed ? weighed.windows : [],
    clash: conflict
      ? {
          first: name(ids[0]),
          second: name(ids[1] || ids[0]),
          firstId: ids[0],
          secondId: ids[1] || ids[0],
          stops: conflict.stops,
          shorterSeconds: conflict.shorterSeconds,
          longerSeconds: conflict.longerSeconds,
        }
      : null,
    bag: bag || [],
    worth: weighed ? weighed.worth : [],
    limits,
    windowWords: '',
    bagWords: state.bagWords || 'no reading yet',
  };
  const window = nearestWindow(model);
  model.windowWords = window ? sayWindow(window) : weighed ? 'no window' : Object.keys(view.wishes || {}).length ? 'weighing' : 'no wish yet';
  return model;
}

/** Names of regions in a text of the engine, made readable: "flowing-1" to "water". */
export function readable(text) {
  return text
    .replace(/\b(flowing|drifting|swaying|fixed)-(\d+)/g, (all, kind, n) => nameOfKind(kind).toLowerCase() + (n === '1' ? '' : ` ${n}`))
    .replace(/^./, (c) => c.toUpperCase());
}

const NOTICED_STANDING = 0.05;

/** Why moving water never grows smooth: what stands in it is there at any time. */
export const standingNotes = (measured, shown) =>
  rowRegions(measured, shown)
    .filter((r) => r.kind === 'flowing' && r.standing > NOTICED_STANDING && !spansOf(r, 'silky')?.likely.length)
    .map((r) => `${nameOfKind(r.kind)}: strands, foam lines or stones under it stand in it at any time. No time makes it silky; choose how the moving part looks.`);

/**
 * Wishes after the picture was parted anew: those of a kind of which no part is left that has one go to its largest
 * part. Null when there is nothing to carry over.
 */
export function carriedWishes(wishes, measured) {
  const known = (id) => measured.regions.some((r) => r.id === id);
  const carried = { ...wishes };
  for (const [id, word] of Object.entries(wishes || {})) {
    const kind = id.replace(/-\d+$/, '');
    const wished = Object.keys(carried).some((other) => known(other) && other.startsWith(`${kind}-`));
    const heir = measured.regions.find((r) => r.kind === kind);
    if (!known(id) && !wished && heir) {
      carried[heir.id] = word;
    }
  }
  return Object.keys(carried).length > Object.keys(wishes || {}).length ? carried : null;
}
