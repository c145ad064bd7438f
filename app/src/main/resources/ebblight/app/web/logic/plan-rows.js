// Rows of a forecast and of typed waters: as text, as they are stored, and in a few words.

import { dayIn, dayWords, hourIn } from './plan.js';

const COLUMNS = ['cloudCover', 'windMetresPerSecond', 'windFromDegrees', 'pressureHectopascals', 'swellMetres', 'swellSeconds', 'swellFromDegrees'];

export const TABLES = {
  waters: {
    title: 'Table of waters',
    heading: 'time,heightMetres,kind',
    example: 'time,heightMetres,kind\n2027-01-10T03:12Z,5.1,high\n2027-01-10T09:40Z,1.2,low',
    says: ['High and low waters of a printed table, instead of the station. Times end in Z, or in an offset such as +01:00; high and low come in turn. Between them the water is taken to run as half a cosine, which in shallow places is wrong by a tenth of the range and more.'],
  },
  weather: {
    title: 'Forecast',
    heading: 'time,cloudCover,windMetresPerSecond,swellMetres,swellSeconds',
    example: 'time,cloudCover,windMetresPerSecond,swellMetres,swellSeconds\n2027-01-10T12:00Z,0.5,6,1.2,9\n2027-01-10T18:00Z,0.8,8,,',
    says: [`Rows in order of time; straight lines between them, not known across gaps over 12 hours. An empty field is not known. Columns: ${COLUMNS.join(', ')}. Cloud cover is a share, 0 to 1.`, 'Wishes about wind, swell and cloud are asked of it, and the cloud dims the light.'],
  },
};

/** The rows as they would be typed. */
export function rowsText(kind, rows) {
  if (kind === 'waters') {
    return [TABLES.waters.heading, ...rows.map((row) => row.join(','))].join('\n');
  }
  const told = COLUMNS.filter((name) => rows.some((row) => row[name] !== undefined && row[name] !== null));
  return [['time', ...told].join(','), ...rows.map((row) => [row.time, ...told.map((name) => row[name] ?? '')].join(','))].join('\n');
}

/** How many they are and from when to when: "4 waters, Sun 10 Jan 03:12 to Mon 11 Jan 15:55". */
export function rowsWords(kind, rows, zone) {
  const time = (row) => (kind === 'waters' ? row[0] : row.time);
  const words = (row) => `${dayWords(dayIn(zone, new Date(time(row))))} ${hourIn(zone, time(row))}`;
  const many = `${rows.length} ${kind === 'waters' ? 'waters' : rows.length === 1 ? 'row' : 'rows'}`;
  return rows.length === 1 ? `${many}, ${words(rows[0])}` : `${many}, ${words(rows[0])} to ${words(rows[rows.length - 1])}`;
}
