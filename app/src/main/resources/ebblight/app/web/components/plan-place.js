// Where it will be: coordinates typed or taken from a station, the tide station, the zone; and the views from there.

import { el, fill, key } from '../dom.js';
import { json } from '../http-carrier.js';
import { openSheet } from './sheet.js';
import { stepper } from './stepper.js';
import { point } from '../logic/plan.js';

/** @param set ({ at, name, station, stationName, zone }) => void */
export function placeSheet(outing, set) {
  openSheet('Place', (close) => placeForm(outing, set, close), { className: 'place-sheet' });
}

export function placeForm(outing, set, close = () => {}) {
  const place = outing.place || {};
  let station = place.station ? { id: place.station, name: place.stationName || place.station } : null;
  const fault = el('p.fault', { role: 'alert', hidden: true });
  const chosen = el('p', {});
  const found = el('div.stations', { 'aria-live': 'polite' });
  const at = el('input', { type: 'text', value: place.at || '', placeholder: '48.65,-2.03', inputmode: 'text', autocomplete: 'off', maxlength: '40', 'data-focus': 'place-at' });
  const name = el('input', { type: 'text', value: place.name || '', placeholder: 'what you call it', maxlength: '80', 'data-focus': 'place-name' });
  const zone = el('input', { type: 'text', value: outing.zone || '', list: 'zones', maxlength: '60', 'data-focus': 'place-zone' });
  const search = el('input', { type: 'search', placeholder: 'part of a port’s name', maxlength: '60', 'data-focus': 'place-search' });
  const zones = el('datalist', { id: 'zones' }, (Intl.supportedValuesOf?.('timeZone') || []).map((z) => el('option', { value: z })));

  const told = () => fill(chosen, station ? [el('b', {}, 'Water: '), `${station.name}${Number.isFinite(station.distanceKilometres) ? `, ${station.distanceKilometres.toFixed(1)} km away` : ''} `, key('No tide here', () => { station = null; told(); }, { class: 'link' })] : 'No tide station: a lake, a city, or choose one below.');
  const complain = (text) => {
    fault.textContent = text;
    fault.hidden = !text;
  };

  async function stations(query) {
    try {
      const whole = await json(`/api/stations?${query}`);
      complain('');
      fill(
        found,
        whole.stations.length ? '' : el('p', {}, 'No station has this in its name.'),
        whole.stations.map((s) =>
          key([el('b', {}, s.name), el('small', {}, [s.country, Number.isFinite(s.distanceKilometres) ? `${s.distanceKilometres.toFixed(1)} km away` : s.at].filter(Boolean).join(', '))], () => {
            station = s;
            if (!at.value.trim()) {
              at.value = s.at;
              name.value = name.value || s.name;
            }
            told();
          }, { class: 'station' })),
        whole.found > whole.stations.length ? el('p.cap', {}, `${whole.found} in all; type more of the name.`) : '',
      );
    } catch (error) {
      complain(error.message);
    }
  }

  let timer = 0;
  search.addEventListener('input', () => {
    clearTimeout(timer);
    timer = setTimeout(() => search.value.trim().length > 1 && stations(`q=${encodeURIComponent(search.value.trim())}`), 250);
  });

  async function done() {
    try {
      // the server says what is wrong with a place before it is kept
      await json(`/api/stations?at=${encodeURIComponent(at.value.trim())}`);
      new Intl.DateTimeFormat('en', { timeZone: zone.value.trim() });
    } catch (error) {
      complain(error instanceof RangeError ? `${zone.value} is no time zone; expected one such as Atlantic/Reykjavik.` : error.message);
      return;
    }
    set({ at: at.value.trim(), name: name.value.trim(), station: station?.id || null, stationName: station?.name || null, zone: zone.value.trim() });
    close();
  }

  told();
  return el(
    'form.place-form',
    { onsubmit: (event) => { event.preventDefault(); done(); } },
    el('label', {}, el('small', {}, 'Latitude, longitude'), at),
    el('label', {}, el('small', {}, 'Name'), name),
    el('label', {}, el('small', {}, 'Time zone'), zone, zones),
    el('div.place-water', {}, chosen, el('div.keys', {}, key('Nearest stations', () => stations(`at=${encodeURIComponent(at.value.trim())}`), { class: 'alt' }), el('label', {}, el('small', {}, 'Search stations'), search)), found),
    fault,
    el('div.keys', {}, el('button', { type: 'submit', class: 'act' }, 'Take this place')),
  );
}

/** Where the lens looks, by steppers. */
export function viewSheet(view, set, remove) {
  const now = { azimuth: 270, altitude: 0, focalMillimetres: 24, sensorMillimetres: [36, 24], skylineDegrees: 0, ...Object.fromEntries(Object.entries(view).filter(([, v]) => v !== undefined)) };
  const lenses = [14, 16, 18, 20, 24, 28, 35, 50, 70, 85, 100, 135, 200, 300, 400];
  const put = (change) => {
    Object.assign(now, change);
    set({ azimuth: now.azimuth, altitude: now.altitude, focalMillimetres: now.focalMillimetres, sensorMillimetres: now.sensorMillimetres, skylineDegrees: now.skylineDegrees });
  };
  openSheet('View', (close) => {
    const upright = key('Held upright', () => {
      put({ sensorMillimetres: [...now.sensorMillimetres].reverse() });
      upright.setAttribute('aria-pressed', String(now.sensorMillimetres[1] > now.sensorMillimetres[0]));
    }, { class: 'alt', 'aria-pressed': String(now.sensorMillimetres[1] > now.sensorMillimetres[0]) });
    return el(
      'div.wish-body',
      {},
      el('label', {}, el('small', {}, 'Name'), el('input', { type: 'text', value: view.name || '', maxlength: '60', onchange: (event) => set({ name: event.target.value.trim() || view.id }) })),
      stepper('looks to', () => `${Math.round(now.azimuth)}° ${point(now.azimuth)}`, (d) => put({ azimuth: (now.azimuth + d + 360) % 360 })),
      stepper('tilt', () => `${now.altitude > 0 ? '+' : ''}${now.altitude}°`, (d) => put({ altitude: Math.max(-60, Math.min(60, now.altitude + d)) })),
      stepper('focal length', () => `${now.focalMillimetres} mm`, (d) => {
        const at = lenses.reduce((best, f, i) => (Math.abs(f - now.focalMillimetres) < Math.abs(lenses[best] - now.focalMillimetres) ? i : best), 0);
        put({ focalMillimetres: lenses[Math.max(0, Math.min(lenses.length - 1, at + d))] });
      }),
      stepper('skyline', () => (now.skylineDegrees ? `${now.skylineDegrees}° high` : 'level'), (d) => put({ skylineDegrees: Math.max(0, Math.min(45, now.skylineDegrees + d)) })),
      el('div.keys', {}, upright),
      el('div.keys', {}, key('Done', () => close(), { class: 'act' }), remove ? key('Remove this view', () => { close(); remove(); }, { class: 'alt' }) : ''),
    );
  });
}
