// Arithmetic of light on the page: the same formulas as core.exposure.ChangingLight and ThirdStops, checked against them.

const LN_2 = Math.log(2);

/** Seconds of starting light that an open time gathers when light changes by stops a minute (positive: darker). */
export function gathered(openSeconds, stopsPerMinute) {
  const k = (stopsPerMinute / 60) * LN_2;
  return Math.abs(k * openSeconds) < 1e-9 ? openSeconds : (1 - Math.exp(-k * openSeconds)) / k;
}

/** Stops against the plan if the shutter closes after openSeconds instead of plannedSeconds. */
export function stopsIfClosed(openSeconds, plannedSeconds, stopsPerMinute) {
  return Math.log2(gathered(Math.max(openSeconds, 1e-3), stopsPerMinute) / gathered(plannedSeconds, stopsPerMinute));
}

/** Exposure value at ISO 100 of exact settings. */
export const exposureValue = (fNumber, seconds, iso) => Math.log2((fNumber * fNumber) / seconds) - Math.log2(iso / 100);

const F_LABELS = '1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32'.split(' ');
const ISO_LABELS = '25 32 40 50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400 8000 10000 12800'.split(' ');
const TIME_LABELS = '1/8000 1/6400 1/5000 1/4000 1/3200 1/2500 1/2000 1/1600 1/1250 1/1000 1/800 1/640 1/500 1/400 1/320 1/250 1/200 1/160 1/125 1/100 1/80 1/60 1/50 1/40 1/30 1/25 1/20 1/15 1/13 1/10 1/8 1/6 1/5 1/4 0.3 0.4 0.5 0.6 0.8 1 1.3 1.6 2 2.5 3.2 4 5 6 8 10 13 15 20 25 30'.split(' ');

const FIRST_ISO = -6;
const FIRST_TIME = -39;

const step = (labels, at) => Math.min(labels.length - 1, Math.max(0, at));

/** The dials of a meter in thirds: label, exact value, neighbour. */
export const dials = {
  fNumber: {
    at: (value) => step(F_LABELS, Math.round(6 * Math.log2(value))),
    label: (at) => `f/${F_LABELS[at]}`,
    typed: (at) => `f/${F_LABELS[at]}`,
    value: (at) => Math.pow(2, at / 6),
    last: F_LABELS.length - 1,
  },
  time: {
    at: (value) => step(TIME_LABELS, Math.round(3 * Math.log2(value)) - FIRST_TIME),
    label: (at) => `${TIME_LABELS[at]} s`,
    typed: (at) => TIME_LABELS[at],
    value: (at) => Math.pow(2, (at + FIRST_TIME) / 3),
    last: TIME_LABELS.length - 1,
  },
  iso: {
    at: (value) => step(ISO_LABELS, Math.round(3 * Math.log2(value / 100)) - FIRST_ISO),
    label: (at) => ISO_LABELS[at],
    typed: (at) => `ISO${ISO_LABELS[at]}`,
    value: (at) => 100 * Math.pow(2, (at + FIRST_ISO) / 3),
    last: ISO_LABELS.length - 1,
  },
};

/** A reading as the engine takes it: dial times are exact thirds behind their labels. */
export function meterText(reading) {
  return `${dials.fNumber.typed(reading.fNumber)} ${dials.time.value(reading.time).toPrecision(12)}s ${dials.iso.typed(reading.iso)}`;
}

/** Two readings nearer to each other than this tell no rate. */
const APART_MILLIS = 30e3;

/** The last reading, and before it the latest one that lies far enough back to tell how the light changes. */
export function tellingReadings(readings) {
  const last = readings.at(-1);
  const before = readings.filter((r) => Date.parse(last.at) - Date.parse(r.at) >= APART_MILLIS).at(-1);
  return before ? [before, last] : [last];
}
