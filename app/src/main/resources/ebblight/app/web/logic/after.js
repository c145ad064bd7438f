// Words, names and places of After. No document here.

import { say } from '../axis/scale.js';

export const TOOLS = [
  ['sort', 'Sort'],
  ['side', 'Side by side'],
  ['filter', 'Filter check'],
  ['blend', 'Blend'],
  ['repair', 'Repair'],
  ['finish', 'Finish'],
  ['write', 'Write out'],
];

export const nameOf = (path) => path.slice(path.lastIndexOf('/') + 1);
export const stemOf = (path) => nameOf(path).replace(/\.[^.]*$/, '');
export const pathIn = (folder, file) => (folder === '.' ? file : `${folder}/${file}`);

/** "2.7 MB", "780 kB": thousands, as the web counts. */
export function sayBytes(bytes) {
  return bytes >= 999500 ? `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB` : `${Math.max(1, Math.round(bytes / 1e3))} kB`;
}

/** "f/11", "f/8". */
const aperture = (n) => `f/${n >= 9.5 ? Math.round(n) : Math.round(10 * n) / 10}`;

export const sayTime = (frame) => (frame.exposureSeconds ? say(frame.exposureSeconds) : '');

/** Hours and minutes on the camera's clock. */
export const clockOf = (frame) => (frame.taken ? frame.taken.slice(11, 16) : '');

export function sayRole(frame) {
  if (frame.role === 'filtered' && frame.filterStops > 0) {
    return `${Math.round(frame.filterStops)}-stop`;
  }
  return { test: 'test frame', burst: 'of a burst', dark: 'dark', slate: 'slate' }[frame.role] || '';
}

/** "6-stop, f/11, ISO 100, 17:16". */
export const saySettings = (frame) =>
  [sayRole(frame), frame.fNumber ? aperture(frame.fNumber) : '', frame.iso ? `ISO ${Math.round(frame.iso)}` : '', clockOf(frame)].filter(Boolean).join(', ');

/** What sets a frame apart most comes first. */
const TELLING = [/^(shaken|soft)/, /\b([2-9]\d|1\d\d|[5-9]) % of it is clipped/, /brighter|darker/, /veil|flare|tilt|horizon|cast/, /texture/];

/** The reason in a few words: what sets a frame apart, else how smooth its flow is. */
export function shortReason(frame) {
  const note = TELLING.map((telling) => frame.notes.find((n) => telling.test(n))).find(Boolean) || frame.notes[0] || '';
  return note
    .replace(/still parts hold (\d+ %) of the best's detail.*/, '$1 of the detail')
    .replace(/ of the flow's texture is left(, the smoothest)?/, ' texture left$1')
    .replace(/ than the middle of this view/, '')
    .replace(/ of it is clipped/, ' clipped')
    .replace(/ of this view$/, '');
}

const POOR_SHARPNESS = 0.9;
const POOR_CLIPPED = 0.2;

/** Not advised: shaken, or clipped over a fifth. Told by an edge and a hatch, never hidden. */
export const notAdvised = (frame) =>
  (frame.fixedSharpness !== null && frame.fixedSharpness !== undefined && frame.fixedSharpness < POOR_SHARPNESS) || frame.clippedFraction > POOR_CLIPPED;

export const KIND_NAMES = { darks: 'Dark frames', slate: 'Slate' };

export function titleOf(group, number) {
  return KIND_NAMES[group.kind] || `View ${number}`;
}

/** Bursts of a group: [{ number, frames }], frames in order of time. */
export function burstsOf(group) {
  const bursts = new Map();
  for (const frame of group.frames) {
    if (frame.burst) {
      bursts.set(frame.burst, [...(bursts.get(frame.burst) || []), frame]);
    }
  }
  return [...bursts].map(([number, frames]) => ({ number, frames }));
}

export const byRank = (group) => [...group.frames].sort((a, b) => a.rank - b.rank);

/** Two lines under a small picture; letters are larger at night. */
const NOTE_HEIGHT = { room: 46, night: 60 };
const TITLE_COLUMN = 192;
const INFO_COLUMN = 236;
const GAP = 14;

/**
 * A card laid out in blocks of known height, so that only those in sight need to be drawn: per group a head with the
 * best frames, then rows of the others.
 */
export function layOut(groups, width, night = false) {
  const phone = width < 700;
  const note = NOTE_HEIGHT[night || phone ? 'night' : 'room'];
  const blocks = [];
  let top = 0;
  let number = 0;
  const add = (block) => {
    blocks.push({ ...block, top });
    top += block.height;
  };
  groups.forEach((group, index) => {
    number += group.kind === 'view' ? 1 : 0;
    const ranked = byRank(group);
    const title = titleOf(group, number);
    const rows = (frames, across, small) => {
      const [w, h] = small;
      const height = h + note + GAP;
      for (let i = 0; i < frames.length; i += across) {
        add({ kind: 'row', group: index, frames: frames.slice(i, i + across), width: w, imageHeight: h, height });
      }
    };
    if (phone) {
      const w = width - 32;
      add({ kind: 'head', group: index, title, frames: ranked.slice(0, 1), width: w, imageHeight: Math.round(w / 1.5), height: Math.round(w / 1.5) + (night ? 420 : 350), phone });
      const half = Math.floor((w - GAP) / 2);
      rows(ranked.slice(1, 3), 2, [half, Math.round(half / 1.5)]);
      const third = Math.floor((w - 2 * GAP) / 3);
      rows(ranked.slice(3), 3, [third, Math.round(third / 1.5)]);
    } else if (group.kind === 'view') {
      const left = width - 48 - TITLE_COLUMN - 396 - INFO_COLUMN - 3 * GAP;
      const pair = left >= 168 ? 2 : 0;
      const across = Math.max(0, Math.floor((left - 168) / (116 + GAP)));
      const few = ranked.slice(1 + pair, 1 + pair + 2 * across);
      add({ kind: 'head', group: index, title, frames: ranked.slice(0, 1), pair: ranked.slice(1, 1 + pair), few, across, width: 396, imageHeight: 264, height: 260 + 2 * note });
      rows(ranked.slice(1 + pair + few.length), Math.max(1, Math.floor((width - 48 - TITLE_COLUMN) / (116 + GAP))), [116, 77]);
    } else {
      const across = Math.max(1, Math.floor((width - 48 - TITLE_COLUMN) / (116 + GAP)));
      add({ kind: 'head', group: index, title, frames: [], pair: [], few: ranked.slice(0, across), across, width: 116, imageHeight: 77, height: 77 + note + 2 * GAP + 30 });
      rows(ranked.slice(across), across, [116, 77]);
    }
  });
  return { blocks, height: top };
}

/** Blocks between two heights; they are in order of their tops. */
export function inSight(blocks, from, to) {
  let low = 0;
  let high = blocks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (blocks[middle].top + blocks[middle].height < from) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  const seen = [];
  for (let i = low; i < blocks.length && blocks[i].top < to; i++) {
    seen.push(blocks[i]);
  }
  return seen;
}
