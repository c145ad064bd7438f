// The steps before the exposure.

import { el, key, marks } from '../dom.js';
import { nameOfKind, sealOfKind, sealSvg } from '../axis/marks.js';
import { sayThird } from '../axis/scale.js';
import { readable, rowRegions, parseWish } from '../logic/parts.js';
import { wishSheet } from './wish-sheet.js';
import { dialledReading, guardPanel, lightWords, meterSteppers, readingOf } from './meter.js';
import { dialWords, fLabel } from './side.js';
import { dials, exposureValue, meterText } from '../logic/light.js';
import { stepper } from './stepper.js';
import { enteringWords } from '../logic/entering.js';
import { seaWatch } from './sea-watch.js';
import { slateKey } from './slate.js';

const line = (big, small) => el('div.line', {}, el('b', {}, big), small);
const warn = (text) => el('div.warn', {}, text);

/** What comes into the picture before the shutter closes. */
export const enteringWarnings = (c) => enteringWords(c.s.entering, c.store.outing.zone).map(warn);

const METRES = [0.3, 0.5, 0.7, 1, 1.5, 2, 3, 5, 7, 10, 20];

export function stepBody(c) {
  const content = (BODIES[c.step.id] || plain)(c);
  return {
    content: [el('h1', { tabindex: '-1' }, c.step.title), content],
    foot: key(c.step.done, () => {
      // A frame that is right as metered a moment ago is no second reading: it would say that the light stands.
      if (c.reading && (!c.s.light || c.s.light.stale || meterText(c.reading) !== c.store.outing.light?.readings?.at(-1)?.meter)) {
        const taken = readingOf(c.reading, Date.now());
        c.store.edit((o) => { o.light = { ...o.light, readings: [...(o.light?.readings || []), taken].slice(-20) }; });
        c.scene.solve();
      }
      c.next();
    }, { class: 'go', 'data-focus': 'step-done' }),
  };
}

const plain = (c) => el('p', {}, c.step.line);

const BODIES = {
  watch(c) {
    const { s, store, scene, redraw } = c;
    const rows = rowRegions(s.measured, s.shown);
    const edit = (id, text) => {
      const viewId = s.view.id;
      store.edit((o) => {
        const view = o.views.find((v) => v.id === viewId);
        view.wishes = { ...view.wishes };
        if (text) {
          view.wishes[id] = text;
        } else {
          delete view.wishes[id];
        }
      });
      s.view = store.outing.views.find((v) => v.id === viewId);
      scene.weigh().then(scene.solve);
      redraw();
    };
    return [
      el('p', {}, 'Five minutes of sea from above, before you step down.'),
      key(s.view.watch ? 'Watch the sea again' : 'Watch the sea', () => seaWatch(c), { class: 'hold', 'data-focus': 'sea-watch' }),
      el('div.wish-list', {}, rows.map((r) => el('button', { type: 'button', 'data-focus': `w-${r.id}`, onclick: () => wishSheet(r, nameOfKind(r.kind), s.strips?.find((q) => q.id === r.id), s.view.wishes?.[r.id], (text) => edit(r.id, text), document.body.dataset.light === 'night') }, marks(sealSvg(sealOfKind(r.kind), 32)), el('span', {}, nameOfKind(r.kind)), el('small', {}, parseWish(s.view.wishes?.[r.id]).word || 'no wish')))),
      guardPanel(store.outing, {
        leave: (clock) => { store.edit((o) => { o.guard = { ...o.guard, leaveBy: clock }; }); redraw(); },
        packing: (minutes) => { store.edit((o) => { o.guard = { ...o.guard, packingMinutes: minutes }; }); redraw(); },
        tide: (word) => { store.edit((o) => { o.guard = { ...o.guard, water: word, yes: false }; }); redraw(); },
      }),
    ];
  },
  compose(c) {
    const horizon = c.s.measured.horizon;
    return [
      el('p', {}, 'Polariser or graduated filter on, ND off: you see and meter through them.'),
      line('Thirds and level', 'lie over the picture here'),
      horizon ? line(`${Math.abs(horizon.tiltDegrees).toFixed(1)}°`, Math.abs(horizon.tiltDegrees) < 0.15 ? 'the clip’s horizon is level' : `the clip’s horizon ${horizon.tiltDegrees > 0 ? 'rises' : 'falls'} to the right`) : line('No horizon found', 'level by the camera’s own'),
      line('Edges', 'walk the four of them once'),
    ];
  },
  level() {
    return [line('Legs', 'spikes in, thickest sections first, centre column down'), line('Weight', 'low and hanging still, strap off the camera'), line('Level', 'the horizon, then tighten'), warn('On sand and shingle: push each leg down, wait a wave, look again')];
  },
  focus(c) {
    const { s, store, scene, redraw } = c;
    const near = s.view.nearestMetres;
    const set = (metres) => {
      const id = s.view.id;
      store.edit((o) => { o.views.find((v) => v.id === id).nearestMetres = metres; });
      s.view = store.outing.views.find((v) => v.id === id);
      scene.solve().then(redraw);
    };
    const at = near ? METRES.reduce((a, m, i) => (Math.abs(m - near) < Math.abs(METRES[a] - near) ? i : a), 0) : 3;
    const d = c.choice;
    return [
      d && d.focusMetres !== null
        ? el('div.value.big', {}, el('small', {}, 'Focus at'), el('b', {}, d.focusMetres.toFixed(1), el('i', {}, 'm')))
        : el('p', {}, 'How near is the nearest thing that must be sharp?'),
      stepper('Nearest', () => (near ? `${near} m` : '–'), (k) => set(METRES[Math.min(METRES.length - 1, Math.max(0, near ? at + k : at))]), 'nearest'),
      d && d.focusMetres !== null ? line(`${d.nearMetres.toFixed(1)} m to ${d.farMetres === null || d.farMetres > 1000 ? 'the horizon' : `${d.farMetres.toFixed(1)} m`}`, `sharp at ${fLabel(d.fNumber)}, judged at arm’s length`) : '',
      line('Lock', 'manual focus, stabiliser off'),
      line('No auto power-off', 'the lens forgets its focus'),
    ];
  },
  test(c) {
    const { s, store } = c;
    const reading = dialledReading(s.dial, store.outing, s.measured);
    c.reading = reading;
    const words = el('p.ev', { role: 'status' });
    const tell = () => {
      const value = exposureValue(dials.fNumber.value(reading.fNumber), dials.time.value(reading.time), dials.iso.value(reading.iso));
      const [, how] = lightWords(s.light, store.outing);
      words.replaceChildren(el('b', {}, `EV ${value.toFixed(1)}`), how);
    };
    tell();
    return [
      el('p', {}, 'Manual, RAW, fixed white balance, auto ISO off. In the histogram of each colour nothing at the right edge.'),
      ...meterSteppers(reading, tell),
      words,
      s.view.pair ? line('The pair', 'keep this frame: it is the one without') : '',
      s.view.pair ? slateKey(c, true) : '',
    ];
  },
  nd(c) {
    const d = c.choice;
    if (!d && c.s.settings) {
      return [el('p', {}, `The bag does not reach ${sayThird(c.s.third)} in this light.`), c.s.settings.ways.slice(0, 3).map((way) => el('p', {}, `${readable(way.text)}.`)), slateKey(c, false)];
    }
    if (!d) {
      return [el('p', {}, "No reading yet: without one there are no settings."), line(sayThird(c.s.third), 'the time chosen on the axis'), key('To the test frame', () => c.toStep(5), { class: 'hold' })];
    }
    const t = dialWords(d.dial);
    const [number, unit] = /min/.test(t) ? [t, ''] : t.split(' ');
    return [
      el(`div.value.big${number.length > 3 ? '.long' : ''}`, {}, el('small', {}, d.shutter === 'timed' ? 'Timed shutter' : 'Bulb, by cable'), el('b', {}, number, el('i', {}, unit))),
      el('div.two', {}, el('div.value', {}, el('small', {}, 'Aperture'), el('b', {}, fLabel(d.fNumber))), el('div.value', {}, el('small', {}, 'ISO'), el('b', {}, String(d.iso)))),
      line(d.filters.length ? `${d.filters.join(' + ')}-stop` : 'No filter', d.filters.length ? 'nearest the lens, glass wiped' : 'the light is low enough'),
      warn('Do not touch the focus ring'),
      ...enteringWarnings(c),
      slateKey(c, false),
    ];
  },
  cover(c) {
    const optical = c.s.camera?.opticalFinder !== false;
    return [
      optical ? line('Eyepiece', 'shut or covered: light comes in from behind') : line('Eyepiece', 'an electronic finder needs no cover'),
      line('Sun', 'shade the front glass, flare grows with the time'),
      line('Wind', 'stand to windward, keep still'),
      line('Drops', 'wipe the front glass once more'),
      ...enteringWarnings(c),
      warn('Never look at the sun through an optical finder. ND filters are not solar filters.'),
    ];
  },
};
