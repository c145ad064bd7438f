// A document of wishes as the engine reads it: days become instants of the outing's zone, the station its constants. Java's
// zones are no use in a page; the browser's own know the offsets.

import { offsetMinutes } from '../logic/zone.js';

const DAY = 86400e3;

const written = (minutes) => {
  const size = Math.abs(minutes);
  const two = (n) => String(n).padStart(2, '0');
  return minutes === 0 ? 'Z' : `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
};

/** The instant at which a day begins in a zone. */
export function startOf(day, zone) {
  const wall = Date.parse(`${day}T00:00:00Z`);
  const first = wall - 60e3 * offsetMinutes(zone, wall);
  return wall - 60e3 * offsetMinutes(zone, first);
}

/** The offsets of a zone over a span, each from the instant on at which it holds. */
export function offsetsOf(zone, from, to) {
  const rows = [[new Date(from).toISOString(), written(offsetMinutes(zone, from))]];
  for (let at = from; at < to; at += DAY) {
    let low = at;
    let high = Math.min(to, at + DAY);
    const before = offsetMinutes(zone, low);
    if (offsetMinutes(zone, high) !== before) {
      while (high - low > 1000) {
        const middle = Math.floor((low + high) / 2000) * 1000;
        if (middle <= low) {
          break;
        }
        if (offsetMinutes(zone, middle) === before) {
          low = middle;
        } else {
          high = middle;
        }
      }
      rows.push([new Date(high).toISOString(), written(offsetMinutes(zone, high))]);
    }
  }
  return rows;
}

/** Rows of a file: in the outing itself, or packed beside it where the outing names a file. */
const rows = (name, wished, packed) => (Array.isArray(wished) ? { [name]: wished } : wished && packed[name] ? { [name]: packed[name] } : {});

/** @param question wishes/1 of the pages, with days and a station's name */
export function windowWish(question, packed) {
  const zone = question.zone || 'UTC';
  const from = startOf(question.from, zone);
  const to = startOf(question.to, zone);
  const { table, weather, station, ...rest } = question;
  return {
    ...rest,
    schema: 'when/1',
    from: new Date(from).toISOString(),
    to: new Date(to).toISOString(),
    offsets: offsetsOf(zone, from, to),
    ...(station && packed.station ? { station: packed.station } : {}),
    ...rows('table', table, packed),
    ...rows('weather', weather, packed),
  };
}
