// What is planned: wishes of the hour as sentences, the question they make, and what a moment of the day is called.

import { clockIn } from './zone.js';

export const MOST_DAYS = 35;

const clock = (minutes) => `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
const minutesOf = (text) => {
  const [hours, minutes] = text.split(':').map(Number);
  return 60 * hours + minutes;
};

export const number = (value, decimals = 0) => value.toFixed(decimals).replace('-', '−');

const range = (name, title, words, { unit = '', step = 1, least, most, decimals = 0, fresh, scale = 1, needs, forecast } = {}) => ({
  name, title, kind: 'range', unit, step, least, most, decimals, fresh, scale, needs, forecast,
  sentence: ([a, b]) => words(`${number(scale * a, decimals)}`, `${number(scale * b, decimals)}${unit}`),
});

/** A bearing against the view: to the left below 0. */
const sided = (text) => (text.startsWith('−') ? `${text.slice(1).replace('°', '')}° left` : `${text.replace('°', '')}° right`);

const choice = (name, title, options, { fresh, needs } = {}) => ({
  name, title, kind: 'choice', options, fresh, needs, sentence: (value) => options.find((o) => o[0] === value)?.[1] ?? title,
});

const DAYS = [['mon', 'Mon'], ['tue', 'Tue'], ['wed', 'Wed'], ['thu', 'Thu'], ['fri', 'Fri'], ['sat', 'Sat'], ['sun', 'Sun']];
const KINDS = [['day', 'by day'], ['civil', 'in civil twilight'], ['nautical', 'in nautical twilight'], ['astronomical', 'in astronomical twilight'], ['night', 'at night']];

const list = (words) => (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`);

/** Every wish there is: how it is said, and how it is set. `needs` names what must be known first. */
export const WISHES = [
  range('sunAltitude', 'Height of the sun', (a, b) => `Sun ${a} to ${b} high`, { unit: '°', least: -18, most: 90, fresh: [-6, 5] }),
  choice('sunInFrame', 'Sun and picture', [[false, 'Sun out of the picture'], [true, 'Sun in the picture']], { fresh: false, needs: 'view' }),
  range('sunBearing', 'Sun beside the view', (a, b) => `Sun ${sided(a)} to ${sided(b)} of the view`, { unit: '°', step: 5, least: -180, most: 180, fresh: [60, 120], needs: 'view' }),
  { name: 'twilight', title: 'Part of the day', kind: 'several', options: KINDS, fresh: ['civil'], sentence: (v) => { const words = list(KINDS.filter((k) => v.includes(k[0])).map((k) => k[1])); return words[0].toUpperCase() + words.slice(1); } },
  range('tideMetres', 'Height of the water', (a, b) => `Water ${a} to ${b}`, { unit: ' m', step: 0.1, least: -5, most: 20, decimals: 1, fresh: [0.5, 2], needs: 'station' }),
  choice('tideDirection', 'Way of the water', [['falling', 'Falling water'], ['rising', 'Rising water']], { fresh: 'falling', needs: 'station' }),
  range('ev100', 'Light', (a, b) => `Light EV ${a} to ${b}`, { least: -6, most: 16, fresh: [3, 9] }),
  { name: 'hours', title: 'Hours of the clock', kind: 'hours', fresh: ['05:00', '22:00'], sentence: ([a, b]) => `Between ${a} and ${b}` },
  { name: 'days', title: 'Days of the week', kind: 'several', options: DAYS, fresh: ['sat', 'sun'], sentence: (v) => `On ${list(DAYS.filter((d) => v.includes(d[0])).map((d) => d[1]))}` },
  range('moonAltitude', 'Height of the moon', (a, b) => `Moon ${a} to ${b} high`, { unit: '°', least: -90, most: 90, step: 5, fresh: [5, 90] }),
  range('moonFraction', 'Lit part of the moon', (a, b) => `Moon ${a} to ${b} lit`, { unit: ' %', scale: 100, step: 0.05, least: 0, most: 1, fresh: [0.5, 1] }),
  choice('moonInFrame', 'Moon and picture', [[true, 'Moon in the picture'], [false, 'Moon out of the picture']], { fresh: true, needs: 'view' }),
  range('windMetresPerSecond', 'Wind', (a, b) => `Wind ${a} to ${b}`, { unit: ' m/s', least: 0, most: 30, fresh: [0, 6], forecast: true }),
  range('swellMetres', 'Swell', (a, b) => `Swell ${a} to ${b}`, { unit: ' m', step: 0.1, decimals: 1, least: 0, most: 10, fresh: [0, 1.5], forecast: true }),
  range('cloudCover', 'Cloud', (a, b) => `Cloud over ${a} to ${b} of the sky`, { unit: ' %', scale: 100, step: 0.05, least: 0, most: 1, fresh: [0.3, 0.8], forecast: true }),
];

/** A sentence of the engine with the wishes called as they are here. */
export const plainWords = (text) => WISHES.filter((wish) => /[A-Z0-9]/.test(wish.name)).reduce((said, wish) => said.replace(new RegExp(`\\b${wish.name}\\b`), wish.title.toLowerCase()), text).replace(/^./, (first) => first.toUpperCase());

/** One end of a wish moved by a step; the ends never pass each other. */
export function moved(wish, value, end, direction) {
  const next = [...value];
  if (wish.kind === 'hours') {
    next[end] = clock((minutesOf(value[end]) + 15 * direction + 1440) % 1440);
    return next;
  }
  const stepped = Math.round((value[end] + wish.step * direction) / wish.step) * wish.step;
  const tidy = Number(stepped.toFixed(4));
  const low = end === 0 ? wish.least : value[0];
  const high = end === 0 ? value[1] : wish.most;
  next[end] = Math.min(high, Math.max(low, tidy));
  return next;
}

/** A set of words with one put in or taken out; the last one stays. */
export const toggled = (value, word) => (value.includes(word) ? (value.length > 1 ? value.filter((v) => v !== word) : value) : [...value, word]);

export const timeWords = (seconds) => (seconds < 60 ? `${seconds} s` : `${seconds / 60} min`);

const secondsOf = (text) => {
  const m = /^(?:(\d+)m)?(?:(\d+)s)?$/.exec(text || '');
  return m && text ? 60 * Number(m[1] || 0) + Number(m[2] || 0) : null;
};

/** Shortest and longest shutter time wished, in seconds; null when none is. */
export function exposureEnds(plan) {
  const wished = plan?.exposure;
  const ends = wished && [secondsOf(wished.from || wished.time), secondsOf(wished.to || wished.time)];
  return ends && ends.every(Boolean) ? ends : null;
}

const isoDay = (date) => date.toISOString().slice(0, 10);

export const addDays = (day, days) => isoDay(new Date(Date.parse(`${day}T00:00:00Z`) + days * 86400e3));

/** The day on the calendar of a zone. */
export const dayIn = (zone, now) => new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(now);

export const dayWords = (day) =>
  new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' }).format(new Date(`${day}T00:00:00Z`)).replace(',', '');

export const hourIn = (zone, instant) => clockIn(zone, Date.parse(instant));

/** The span that is searched: what was planned, or from today on when that is over. */
export function spanOf(plan, today) {
  const days = plan?.from && plan?.to ? Math.max(1, Math.round((Date.parse(plan.to) - Date.parse(plan.from)) / 86400e3)) : MOST_DAYS;
  const from = plan?.from && addDays(plan.from, days) > today ? plan.from : today;
  return { from, to: addDays(from, days), days };
}

const knows = (outing, view) => ({ view: Number.isFinite(view?.azimuth), station: Boolean(outing.place?.station || outing.plan?.table) });

/** Wishes of a view that can be asked for now. */
export function wishesIn(outing, view) {
  const known = knows(outing, view);
  return WISHES.filter((w) => view?.hour && view.hour[w.name] !== undefined && (!w.needs || known[w.needs]));
}

/** Wishes that could be added. */
export function wishesLeft(outing, view) {
  const known = knows(outing, view);
  return WISHES.filter((w) => view?.hour?.[w.name] === undefined && (!w.needs || known[w.needs]));
}

/** Where the lens looks, as the engine reads it; undefined while it has no bearing. */
export const lensOf = (view) =>
  Number.isFinite(view?.azimuth)
    ? { azimuth: view.azimuth, altitude: view.altitude || 0, focalMillimetres: view.focalMillimetres || 24, ...(view.sensorMillimetres ? { sensorMillimetres: view.sensorMillimetres } : {}) }
    : undefined;

/** The question as wishes/1; null while there is no place or no wish. */
export function questionOf(outing, view, today, bag) {
  const wished = wishesIn(outing, view);
  if (!outing.place?.at || !wished.length) {
    return null;
  }
  const { place, plan = {} } = outing;
  const { from, to } = spanOf(plan, today);
  const question = { schema: 'wishes/1', name: place.name || outing.name || '', at: place.at, zone: outing.zone, from, to, minMinutes: plan.minMinutes || 15 };
  for (const name of ['elevationMetres', 'station']) {
    if (place[name] !== undefined && place[name] !== null) {
      question[name] = place[name];
    }
  }
  for (const name of ['setUpMinutes', 'exposure', 'cloud', 'weather', 'table']) {
    if (plan[name] !== undefined && plan[name] !== null) {
      question[name] = plan[name];
    }
  }
  if (question.table) {
    delete question.station;
  }
  if (plan.guard && (place.station || plan.table)) {
    question.guard = plan.guard;
  }
  if (lensOf(view)) {
    question.view = lensOf(view);
  }
  if (plan.guess) {
    const { layer, ...water } = plan.guess;
    question.guess = question.view && layer ? plan.guess : water;
  }
  const skyline = view.skylineDegrees ?? place.skylineDegrees;
  if (Number.isFinite(skyline)) {
    question.skylineDegrees = skyline;
  }
  for (const wish of wished) {
    question[wish.name] = view.hour[wish.name];
  }
  if (question.exposure && bag) {
    question.kit = bag;
  }
  return question;
}

/** Filters of the bag as a kit of the question. */
export function bagOf(kit, camera) {
  const filters = (kit?.filters || []).filter((f) => f.inBag);
  return { filters: filters.map((f) => f.takes), measured: filters.filter((f) => f.measuredStops).map((f) => `${f.takes}=${f.measuredStops}`), camera };
}

const POINTS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];

export const point = (azimuth) => POINTS[Math.round(azimuth / 22.5) % 16];

/** A moment of the day in words, part by part. */
export function momentWords(moment) {
  const words = [
    ['Sun', `${number(moment.sun.altitude, 1)}° high, ${Math.round(moment.sun.azimuth)}° ${point(moment.sun.azimuth)}`],
    ['Moon', moment.moon.altitude > 0 ? `${number(moment.moon.altitude)}° high, ${Math.round(moment.moon.azimuth)}° ${point(moment.moon.azimuth)}` : 'down'],
  ];
  if (Number.isFinite(moment.heightMetres)) {
    words.push(['Water', `${number(moment.heightMetres, 1)} m, ${moment.risingMetresPerHour > 0 ? 'rising' : 'falling'} ${number(Math.abs(moment.risingMetresPerHour), 1)} m an hour`]);
  }
  words.push(['Light', `EV ${number(moment.ev100, 1)}, give or take 1`]);
  return words;
}

/** Whether the way back is gone, or too near to that for one frame, when a window begins: nobody is sent there. */
export const cutOff = ({ start, guard }) =>
  Boolean(guard) && (guard.verdict === 'leave now' || (Boolean(guard.latestStart) && Date.parse(guard.latestStart) < Date.parse(start)));

/** What the water guard says of a window; empty without a guard. */
export function guardWords(window, zone) {
  const { guard } = window;
  if (!guard) {
    return '';
  }
  if (guard.leaveBy) {
    const day = dayIn(zone, new Date(guard.leaveBy));
    const other = window.start && day !== dayIn(zone, new Date(window.start)) ? `${dayWords(day).split(' ')[0]} ` : '';
    return `Leave by ${other}${hourIn(zone, guard.leaveBy)}${Date.parse(guard.leaveBy) < Date.parse(window.end) ? ', before the window ends' : ''}.`;
  }
  return { 'leave now': 'The water is over the way back at the start.', 'not reached by the prediction': 'Predicted water does not reach the way back.' }[guard.verdict] || 'The water is not known.';
}

/** There takes a window over: by when to leave, and which way the water runs. */
export function takeWindow(outing, view, { start, end, why, guard }) {
  outing.plan = { ...outing.plan, chosen: { view: view.id, start, end, why } };
  if (guard) {
    const { leaveBy, rising } = guard;
    outing.guard = { packingMinutes: 3, ...outing.guard, leaveBy: leaveBy ? hourIn(outing.zone, leaveBy) : null, yes: false };
    if (rising !== null && rising !== undefined) {
      outing.guard.water = rising ? 'rising' : 'falling';
    }
  }
}

export const takenWords = ({ guard }, zone) => (guard?.leaveBy ? `Taken. There leaves by ${hourIn(zone, guard.leaveBy)}.` : 'Taken.');
