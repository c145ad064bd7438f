// The time to leave: a clock time of the outing's zone, what packing takes, and what is left for an exposure.

import { instantIn } from './zone.js';

export const DEFAULT_PACKING_MINUTES = 3;

/** Seconds between letting the cable go and the camera's own end of it. */
const SLACK_SECONDS = 2;

const packing = (guard) => guard.packingMinutes ?? DEFAULT_PACKING_MINUTES;

/** The instant to leave in milliseconds; null when no time is set. */
export const leaveAt = ({ guard, zone }, now) => (guard ? instantIn(zone, guard.leaveBy, now) : null);

/** Longest exposure in seconds that still leaves by the time; null when no time is set. */
export function longestSeconds(outing, now, darkFrame) {
  const leave = leaveAt(outing, now);
  if (leave === null) {
    return null;
  }
  const left = (leave - now) / 1000 - 60 * packing(outing.guard) - SLACK_SECONDS;
  return Math.max(0, darkFrame ? left / 2 : left);
}

/** The latest instant at which an exposure may begin; null when no time is set. */
export function latestStart(outing, now, busySeconds) {
  const leave = leaveAt(outing, now);
  return leave === null ? null : leave - 60e3 * packing(outing.guard) - 1000 * (busySeconds + SLACK_SECONDS);
}

/** Whole minutes until the time to leave, never below 0; null when no time is set. */
export function minutesLeft(outing, now) {
  const leave = leaveAt(outing, now);
  return leave === null ? null : Math.max(0, Math.floor((leave - now) / 60e3));
}
