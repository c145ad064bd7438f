// Shutter times in stops from 1 s, in thirds, and as people read them.

export const FIRST_STOP = -3;
export const LAST_STOP = 10;

const DIAL = {
  '-9': '1/8', '-8': '1/6', '-7': '1/5', '-6': '1/4', '-5': '0.3', '-4': '0.4', '-3': '1/2', '-2': '0.6', '-1': '0.8',
  0: '1', 1: '1.3', 2: '1.6', 3: '2', 4: '2.5', 5: '3.2', 6: '4', 7: '5', 8: '6', 9: '8', 10: '10', 11: '13', 12: '15',
  13: '20', 14: '25', 15: '30',
};

export const stops = (seconds) => Math.log2(seconds);
export const secondsOf = (third) => Math.pow(2, third / 3);
export const thirdOf = (seconds) => Math.round(3 * Math.log2(seconds));
export const clampThird = (third) => Math.min(3 * LAST_STOP, Math.max(3 * FIRST_STOP, third));

/** The time of a third as { number, unit }: dial labels up to 30 s (which is 32 s), real seconds beyond. */
export function dialOf(third) {
  const label = DIAL[third];
  if (label) {
    return { number: label, unit: 's' };
  }
  return plain(secondsOf(third));
}

/** Real seconds as { number, unit }. */
export function plain(seconds) {
  if (seconds < 0.28) {
    return { number: `1/${Math.round(1 / seconds)}`, unit: 's' };
  }
  if (seconds < 9.95) {
    return { number: String(Math.round(seconds * 10) / 10), unit: 's' };
  }
  const whole = Math.round(seconds);
  if (whole < 60) {
    return { number: String(whole), unit: 's' };
  }
  const minutes = Math.floor(whole / 60);
  const rest = whole % 60;
  return { number: rest ? `${minutes}:${String(rest).padStart(2, '0')}` : String(minutes), unit: 'min' };
}

/** "25 s", "2 min 8 s". */
export function say(seconds) {
  const t = plain(seconds);
  if (t.unit === 'min' && t.number.includes(':')) {
    const [m, s] = t.number.split(':');
    return `${m} min ${Number(s)} s`;
  }
  return `${t.number} ${t.unit}`;
}

/** A third as it is said: the dial's label up to 30 s. */
export function sayThird(third) {
  return DIAL[third] ? `${DIAL[third]} s` : say(secondsOf(third));
}

/** "10 s to 2 min", "up to 1 s", "from 8 s", "any time". */
export function sayRange(fromSeconds, toSeconds) {
  const open = toSeconds === null || toSeconds === undefined || toSeconds > 960;
  if (fromSeconds < 0.1) {
    return open ? 'any time' : `up to ${say(toSeconds)}`;
  }
  return open ? `from ${say(fromSeconds)}` : `${say(fromSeconds)} to ${say(toSeconds)}`;
}

/** Stops in thirds: "4⅓", "⅔", "0". */
export function fraction(value) {
  const thirds = Math.round(Math.abs(value) * 3);
  const whole = Math.floor(thirds / 3);
  const part = ['', '⅓', '⅔'][thirds % 3];
  return `${whole || (part ? '' : '0')}${part}`;
}
