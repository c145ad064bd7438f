// The meter's reading by steppers, how the light changes, and until when: all without a keyboard.

import { el, key } from '../dom.js';
import { stepper } from './stepper.js';
import { dials, meterText } from '../logic/light.js';
import { clockIn } from '../logic/zone.js';
import { fraction } from '../axis/scale.js';

/** A reading to begin with: the last one, else what the frames tell, else a clear evening. */
function expectedReading(outing, measured) {
  const last = outing.light?.readings?.at(-1)?.dials;
  if (last) {
    return { ...last };
  }
  return {
    fNumber: dials.fNumber.at(measured?.framesFNumber || 11.3),
    time: dials.time.at(0.125),
    iso: dials.iso.at(measured?.framesIso || 100),
  };
}

/** The reading that is being dialled, kept in a holder until it is taken: the page may be drawn anew meanwhile. */
export function dialledReading(holder, outing, measured) {
  const since = outing.light?.readings?.at(-1)?.at || null;
  if (!holder.reading || holder.since !== since) {
    Object.assign(holder, { since, reading: expectedReading(outing, measured) });
  }
  return holder.reading;
}

/** Three steppers over a reading { fNumber, time, iso } of dial places. */
export function meterSteppers(reading, changed) {
  const one = (name, label) => {
    const dial = dials[name];
    return stepper(label, () => dial.label(reading[name]), (d) => {
      reading[name] = Math.min(dial.last, Math.max(0, reading[name] + d));
      changed();
    }, `meter-${name}`);
  };
  return [one('fNumber', 'Aperture'), one('time', 'Time'), one('iso', 'ISO')];
}

export const readingOf = (reading, now) => ({
  dials: { ...reading },
  meter: meterText(reading),
  at: new Date(now).toISOString(),
});

/** Words of the light: what it was, how it changes, whether the reading still holds. */
export function lightWords(light, { light: read, zone }) {
  const readings = read?.readings || [];
  if (!light) {
    return ['no reading yet', ''];
  }
  const last = readings.at(-1);
  const age = Math.max(0, Math.round(light.ageMinutes));
  const at = clockIn(zone, Date.parse(last.at));
  const rate = light.stopsPerMinute;
  const how = Math.abs(rate) < 0.01 ? 'taken as steady' : `${rate > 0 ? 'fades' : 'grows'} ${Math.abs(rate).toFixed(2)} stop/min${light.rateFrom === 'readings' ? ` ± ${light.rangeStopsPerMinute.toFixed(2)}` : ''}${light.rateFrom === 'sun' ? ' by the sun' : ''}`;
  return [`EV ${light.exposureValue100.toFixed(1)}, read at ${at}`, light.stale ? `${age} min old: meter again` : how];
}

/** The panel: a reading, a rate, a bias. actions: { read(reading), rate(stops or null), bias(thirds) } */
export function meterPanel(outing, measured, light, dial, actions) {
  const reading = dialledReading(dial, outing, measured);
  const state = outing.light || {};
  const rate = state.stopsPerMinute;
  const bias = state.biasStops || 0;
  const [value, how] = lightWords(light, outing);
  return el(
    'div.meter',
    {},
    el('div.meter-dials', {}, meterSteppers(reading, () => {})),
    el(
      'div.keys',
      {},
      key('Set this reading, no filter on', () => actions.read(reading), { class: 'act' }),
      light && (state.readings || []).length === 1 ? el('span.cap', {}, 'Meter again in a minute or more: two readings tell how the light changes.') : '',
    ),
    el('p.meter-now', {}, el('b', {}, value), how ? ` · ${how}` : ''),
    el(
      'div.meter-more',
      {},
      stepper('Light, stops a minute', () => (rate === undefined || rate === null ? 'measured' : rate.toFixed(2)), (d) => actions.rate(Math.round(100 * ((rate ?? light?.stopsPerMinute ?? 0) + 0.05 * d)) / 100), 'rate'),
      stepper('Brighter than metered', () => `${bias < 0 ? '−' : bias > 0 ? '+' : ''}${fraction(bias)} stop`, (d) => actions.bias(Math.round(3 * bias + d) / 3), 'bias'),
    ),
  );
}

/** Steppers for the time to leave. actions: { leave(clock or null), packing(minutes), tide(word) } */
export function guardPanel(outing, actions) {
  const guard = outing.guard || {};
  const start = () => clockIn(outing.zone, Math.ceil((Date.now() + 45 * 60e3) / 300e3) * 300e3);
  const shift = (minutes) => {
    const [h, m] = (guard.leaveBy || start()).split(':').map(Number);
    const all = (h * 60 + m + minutes + 1440) % 1440;
    actions.leave(`${String(Math.floor(all / 60)).padStart(2, '0')}:${String(all % 60).padStart(2, '0')}`);
  };
  return el(
    'div.guard-panel',
    {},
    guard.leaveBy
      ? [
          stepper('Leave by', () => guard.leaveBy, (d) => shift(d), 'leave'),
          stepper('Packing', () => `${guard.packingMinutes ?? 3} min`, (d) => actions.packing(Math.max(1, Math.min(30, (guard.packingMinutes ?? 3) + d))), 'packing'),
        ]
      : el('p', {}, 'Set the time at which you walk off, from the tide table and what you saw the water do. Ebblight then knows the longest exposure and the latest start.'),
    el(
      'div.choices',
      { role: 'group', 'aria-label': 'The water' },
      [
        ['rising', 'water rises'],
        ['falling', 'water falls'],
        ['none', 'no tide here'],
      ].map(([word, text]) => key(text, () => actions.tide(word), { 'aria-pressed': String(guard.water === word), class: guard.water === word ? 'on' : '', 'data-focus': `tide-${word}` })),
    ),
    el(
      'div.keys',
      {},
      guard.leaveBy ? key('Take it away', () => actions.leave(null), { class: 'alt' }) : key(`Leave by ${start()}`, () => actions.leave(start()), { class: 'act' }),
    ),
    el('p.caution', {}, 'Tables leave out weather, surge and waves; sets of large waves come without warning. Follow the official tables and signs, and never turn your back on the sea.'),
  );
}
