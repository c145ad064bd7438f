// Clock times where the outing is, whatever zone this machine or phone is set to.

const FORMATS = new Map();

/** The clock of a zone; that of this machine where the zone is not known. */
function formatOf(zone) {
  if (!FORMATS.has(zone)) {
    const asked = { year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' };
    let format;
    try {
      format = new Intl.DateTimeFormat('en-GB', { ...asked, timeZone: zone || undefined });
    } catch {
      format = new Intl.DateTimeFormat('en-GB', asked);
    }
    FORMATS.set(zone, format);
  }
  return FORMATS.get(zone);
}

function partsIn(zone, millis) {
  const parts = Object.fromEntries(formatOf(zone).formatToParts(new Date(millis)).map(({ type, value }) => [type, value]));
  return { ...parts, asUtc: Date.UTC(parts.year, parts.month - 1, parts.day, parts.hour, parts.minute, parts.second) };
}

/** Offset of a zone from UTC at an instant, in minutes. */
export const offsetMinutes = (zone, millis) => (partsIn(zone, millis).asUtc - Math.floor(millis / 1000) * 1000) / 60e3;

/** "16:33", or with seconds "16:33:05". */
export function clockIn(zone, millis, seconds = false) {
  const { hour, minute, second } = partsIn(zone, millis);
  return `${hour}:${minute}${seconds ? `:${second}` : ''}`;
}

/** Milliseconds of the "16:33" of the zone's clock that is nearest to now; null for what is no clock time. */
export function instantIn(zone, clock, now) {
  const match = /^(\d{1,2}):(\d{2})$/.exec(clock || '');
  if (!match) {
    return null;
  }
  const half = 12 * 3600e3;
  const here = partsIn(zone, now);
  let wall = Date.UTC(here.year, here.month - 1, here.day, Number(match[1]), Number(match[2]));
  if (wall < here.asUtc - half) {
    wall += 2 * half;
  } else if (wall > here.asUtc + half) {
    wall -= 2 * half;
  }
  // The offset may change between now and then: what holds at the first guess holds at the second.
  const first = wall - (here.asUtc - Math.floor(now / 1000) * 1000);
  return wall - (partsIn(zone, first).asUtc - first);
}
