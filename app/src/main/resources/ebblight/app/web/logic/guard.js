// The time to leave: a clock time typed by the photographer, what packing takes, and what is left for an exposure.

export const DEFAULT_PACKING_MINUTES = 3;

/** Milliseconds of the next "16:33" of the zone's clock that is not more than twelve hours gone. */
export function instantOf(clock, now) {
  const match = /^(\d{1,2}):(\d{2})$/.exec(clock || '');
  if (!match) {
    return null;
  }
  const day = new Date(now);
  day.setHours(Number(match[1]), Number(match[2]), 0, 0);
  let at = day.getTime();
  const half = 12 * 3600e3;
  if (at < now - half) {
    at += 2 * half;
  }
  if (at > now + half) {
    at -= 2 * half;
  }
  return at;
}

export const clockOf = (millis, seconds = false) => {
  const d = new Date(millis);
  const two = (v) => String(v).padStart(2, '0');
  return `${two(d.getHours())}:${two(d.getMinutes())}${seconds ? `:${two(d.getSeconds())}` : ''}`;
};

/** Longest exposure in seconds that still leaves by the time; null when no time is set. */
export function longestSeconds(guard, now, darkFrame) {
  const leave = guard && instantOf(guard.leaveBy, now);
  if (!leave) {
    return null;
  }
  const packing = guard.packingMinutes ?? DEFAULT_PACKING_MINUTES;
  const left = (leave - now) / 1000 - 60 * packing - 2;
  return Math.max(0, darkFrame ? left / 2 : left);
}

/** The latest instant at which an exposure may begin; null when no time is set. */
export function latestStart(guard, now, busySeconds) {
  const leave = guard && instantOf(guard.leaveBy, now);
  return leave ? leave - 60e3 * (guard.packingMinutes ?? DEFAULT_PACKING_MINUTES) - 1000 * (busySeconds + 2) : null;
}

/** Whole minutes until the time to leave, never below 0; null when no time is set. */
export function minutesLeft(guard, now) {
  const leave = guard && instantOf(guard.leaveBy, now);
  return leave ? Math.max(0, Math.floor((leave - now) / 60e3)) : null;
}
