// Words of a sea watch. No line is a limit of what the sea does.

import { plain } from '../axis/scale.js';

export const WATCH_MINUTES = 5;
export const WATCH_GAP_SECONDS = 5;
const RISE_EVERY_SECONDS = 300;

const time = (seconds) => {
  const { number, unit } = plain(Math.max(1, Math.round(seconds)));
  return `${number} ${unit}`;
};

export const watchWords = ({ watchedSeconds, highestAtSeconds, washedFraction }) =>
  washedFraction > 0 ? `Highest wash of ${time(watchedSeconds)}: it came after ${time(highestAtSeconds)}.` : `No wash above the usual water in ${time(watchedSeconds)}.`;

/** Seconds between the heights that are looked at, about five minutes: the last one falls on the end of the span. */
export const stepOver = (seconds) => Math.max(1, seconds / Math.ceil(seconds / RISE_EVERY_SECONDS) - 1e-6);

/** The water as the engine takes it, a typed table before a station; null where the outing knows neither. */
export function waterOf({ plan }, { table, station }) {
  const typed = Array.isArray(plan?.table) ? plan.table : table;
  return typed ? { table: typed } : station ? { station } : null;
}

/** How far the highest water of a span is above its first; null where the table of waters does not reach over all of it. */
export function riseOf(heights) {
  const levels = heights.map((one) => one.heightMetres);
  return levels.length && levels.every((level) => level !== null) ? Math.max(...levels) - levels[0] : null;
}

/** @param rise { metres, until } of the tide, or null when it is not known; drawn: whether it moves the line on the picture */
export function riseWords(rise, washMetres, outing, drawn) {
  if (!outing.guard?.leaveBy) {
    return 'Set the time to leave: then the tide’s rise until then is added.';
  }
  if (!rise) {
    return 'How much the tide rises until you leave is not known here: look it up, and add it to what you saw.';
  }
  if (rise.metres <= 0) {
    return `By the table the tide does not rise until ${rise.until}. Sets of waves still can come higher than the line.`;
  }
  const metres = rise.metres < 0.05 ? 'less than 0.1' : rise.metres.toFixed(1);
  const risen = `By the table the tide rises ${metres} m until ${rise.until}`;
  if (!washMetres) {
    return `${risen}: every wash then comes that much higher than the line. Say how high the wash was, and it is drawn.`;
  }
  return drawn ? `${risen}: the broken line, if the ground goes on as steep as it is. An estimate.` : `${risen}: too little to draw on this picture. Sets of waves still can come higher than the line.`;
}
