// The steps to the shot in the order of the field, and what an exposure that runs knows.

import { stopsIfClosed } from './light.js';

export const STEPS = [
  { id: 'watch', name: 'Watch, wish', title: 'Watch, then wish', done: 'Wishes are set', line: 'five minutes of sea first' },
  { id: 'compose', name: 'Compose', title: 'Compose', done: 'Composed', line: 'without ND, polariser turned' },
  { id: 'level', name: 'Level', title: 'Level, and firm', done: 'It stands', line: 'spikes in, strap off' },
  { id: 'focus', name: 'Focus, lock', title: 'Focus, lock', done: 'Focus is locked', line: 'manual, stabiliser off' },
  { id: 'test', name: 'Test frame', title: 'Test frame', done: 'The test frame is right', line: 'manual, RAW, fixed white balance' },
  { id: 'nd', name: 'ND on', title: 'ND on, then set', done: 'ND is on', line: 'nearest the lens, glass wiped' },
  { id: 'cover', name: 'Cover, shade', title: 'Cover, shade', done: 'Covered', line: 'eyepiece shut, sun shaded' },
  { id: 'expose', name: 'Expose', title: 'Expose', done: '', line: 'counted in, press at 0' },
  { id: 'judge', name: 'Judge', title: 'Judge', done: '', line: 'keep or again' },
];

/** The steps of an outing: those left out are left out, own lines stand in place of the usual ones. */
export function stepsOf(outing) {
  const skip = outing.staff?.skip || [];
  const lines = outing.staff?.lines || {};
  return STEPS.map((s, i) => ({ ...s, number: i + 1, line: lines[s.id] || s.line, skipped: skip.includes(s.id) }));
}

/** The step after a number, those left out passed over. */
export function stepAfter(steps, number) {
  const next = steps.find((s) => s.number > number && !s.skipped);
  return next ? next.number : number;
}

/**
 * A run: { openAt, plannedSeconds, stopsPerMinute, marks } in milliseconds of the clock.
 * @returns what is to be said at an instant
 */
export function runAt(run, now) {
  const elapsed = (now - run.openAt) / 1000;
  const left = run.plannedSeconds - elapsed;
  return {
    phase: elapsed < 0 ? 'count' : left > 0 ? 'open' : 'over',
    count: Math.ceil(-elapsed),
    elapsed: Math.max(0, elapsed),
    left: Math.max(0, Math.ceil(left - 1e-6)),
    over: Math.max(0, -left),
    stops: stopsIfClosed(elapsed, run.plannedSeconds, run.stopsPerMinute || 0),
  };
}

/** What two clocks may differ by between two looks at them, milliseconds: a busy phone is late by less. */
const LEAST_SET_MILLIS = 500;

/**
 * How far the clock of the wall was set between two looks at it and at a clock that cannot be set, { wall, steady } in
 * milliseconds; 0 when it was not. Where the page was not seen in between, a clock ahead may as well be a phone that
 * slept: only one set back is told.
 */
export function clockSet(before, now, seenAllTheTime) {
  const set = now.wall - before.wall - (now.steady - before.steady);
  return set < -LEAST_SET_MILLIS || (seenAllTheTime && set > LEAST_SET_MILLIS) ? set : 0;
}

/** A tap on the shutter's count: common practice. */
const LEAST_LEAD_SECONDS = 4;

/** The wave that is wished to draw lines and its period: { periodSeconds }, or null where there is none. */
export function linesWave(measured, wishes) {
  const wave = measured.regions.find((r) => (wishes?.[r.id] || '').startsWith('lines') && r.wavePeriodSeconds > 0);
  return wave ? { periodSeconds: wave.wavePeriodSeconds } : null;
}

/** When water that runs back now runs back again, with time to count in between; milliseconds. */
export const nextRunBack = (now, periodSeconds) => now + 1000 * periodSeconds * Math.ceil(LEAST_LEAD_SECONDS / periodSeconds);

/** "−1.1 stops", "+⅓"-free: one decimal, a true minus. */
export const stopWords = (stops) => {
  const value = Math.abs(stops) < 0.05 ? 0 : stops;
  return `${value < 0 ? '−' : value > 0 ? '+' : ''}${Math.abs(value).toFixed(1)} ${Math.abs(value) === 1 ? 'stop' : 'stops'}`;
};
