// What is photographed before a series, so that the desk knows time, view, filters and wish of the frames after it: slate/1.

import { offsetMinutes } from './zone.js';

const LONGEST_VIEW = 40;
const MOST_FILTERS = 4;
const PARTS = { flowing: 'water', drifting: 'cloud', swaying: 'branch', fixed: 'rock' };

const two = (n) => String(n).padStart(2, '0');

/** "2027-01-14T17:15:00+01:00": the clock on the wall of a zone. */
export function wallTime(zone, millis) {
  const minutes = offsetMinutes(zone, millis);
  const wall = new Date(Math.floor(millis / 1000) * 1000 + 60e3 * minutes).toISOString().slice(0, 19);
  const away = Math.abs(minutes);
  return `${wall}${minutes < 0 ? '-' : '+'}${two(Math.floor(away / 60))}:${two(Math.round(away % 60))}`;
}

/** Wishes by what the eye sees, the first of each kind: the desk need not know the phone's parts. */
export function wishesByKind(wishes) {
  const said = {};
  for (const [id, word] of Object.entries(wishes || {})) {
    const part = PARTS[id.replace(/-\d+$/, '')];
    if (part && word) {
      said[part] ||= `${part}=${word}`;
    }
  }
  return Object.values(said);
}

/** @param filters as settings take them: 6, nd1000, pol */
export const slateText = ({ zone, view, filters, wishes }, millis) =>
  JSON.stringify({
    schema: 'slate/1',
    time: wallTime(zone, millis),
    ...(view ? { view: [...view].slice(0, LONGEST_VIEW).join('') } : {}),
    filters: filters.slice(0, MOST_FILTERS).map(String),
    ...(wishesByKind(wishes).length ? { wish: wishesByKind(wishes) } : {}),
  });
