// What There knows: the measured clip, wishes weighed, light, settings. Asks the engine, keeps answers, tells the page.

import * as engine from '../engine.js';
import { json } from '../http-carrier.js';
import { createPictures } from '../components/pictures.js';
import { outlineOf } from '../components/picture.js';
import { axisModel, carriedWishes, proposedWishes, rowRegions, wishTexts } from '../logic/parts.js';
import { verdict } from '../axis/lane.js';
import { fLabel } from '../components/side.js';
import { longestSeconds } from '../logic/guard.js';
import { tellingReadings } from '../logic/light.js';
import { enteringQuestion } from '../logic/entering.js';

const PREFERRED_APERTURE = 11.3;

/** A reading is carried on by its rate for half an hour; no rate holds for longer, and it was stale long before. */
const CARRIED_MILLIS = 30 * 60e3;

/** What stands for a measurement where no clip was read: no parts, no horizon. */
const GUESSED = { regions: [], horizon: null, warnings: [], width: 3, height: 2, guessed: true };

export function createScene(store, tell) {
  const state = {
    view: null, measured: null, drawn: null, weighed: null, strips: null, settings: null, light: null, kit: null,
    third: 15, choice: 0, shown: {}, selected: null, blend: [], reading: null, problem: null, dial: {}, judging: null, entering: [],
  };
  let stop = null;
  let turn = 0;
  const pictures = createPictures((node, error) => {
    if (error) {
      state.problem = error;
    }
    tell('picture', node);
  });

  const frames = () => ({ path: state.view.frames, ...(state.view.framesPerSecond ? { fps: state.view.framesPerSecond } : {}) });
  const strokes = () => state.view.strokes || [];

  /** Opens a view: measure, weigh, then pictures and strips. */
  async function open(view, { keep = false } = {}) {
    stop?.abort();
    stop = new AbortController();
    const mine = ++turn;
    const { signal } = stop;
    state.view = view;
    state.problem = null;
    if (!keep) {
      pictures.halt();
      Object.assign(state, { measured: null, drawn: null, weighed: null, strips: null, selected: null });
    }
    state.reading = { fraction: 0, stage: keep ? 'measuring the parts' : 'reading the clip', secondsLeft: null };
    tell('all');
    try {
      if (!state.kit) {
        state.kit = await json('/api/kit');
      }
      const whole = await engine.measure(frames(), strokes(), {
        signal,
        onProgress: (progress) => {
          if (mine === turn) {
            state.reading = progress;
            tell('progress');
          }
        },
      });
      if (mine !== turn) {
        return;
      }
      state.measured = whole.answer;
      state.drawn = await drawn(whole);
      state.reading = null;
      const before = JSON.stringify(view.wishes);
      const wished = view.wishes ? carriedWishes(view.wishes, state.measured) : proposedWishes(state.measured);
      if (wished && state.measured.regions.length) {
        view.wishes = wished;
        store.edit((outing) => {
          const mineView = outing.views.find((v) => v.id === view.id);
          if (mineView && [undefined, before].includes(JSON.stringify(mineView.wishes))) {
            mineView.wishes = { ...wished };
          }
        }, { undoable: false });
      }
      tell('measured');
      if (!state.measured.regions.length) {
        return;
      }
      pictures.begin(frames(), strokes(), state.third);
      await weigh();
      await solve();
      await strips(mine, signal);
    } catch (error) {
      if (mine === turn) {
        state.reading = null;
        if (error.name !== 'AbortError') {
          state.problem = error;
        } else {
          state.stopped = true;
        }
        tell('all');
      }
    }
  }

  /** Opens a view without a clip: the time is guessed, everything after it is as ever. */
  async function bare(view) {
    stop?.abort();
    pictures.halt();
    turn++;
    Object.assign(state, { view, measured: GUESSED, drawn: null, weighed: null, strips: null, selected: null, reading: null, problem: null });
    state.kit = state.kit || await json('/api/kit');
    await solve();
  }

  /** The parts of an answer and the map of them: the index of the part at every pixel. */
  async function drawn({ answer, blobs }) {
    const map = blobs.regions ? await engine.bytes(blobs.regions) : null;
    return { regions: answer.regions, map, width: answer.mapWidth, height: answer.mapHeight };
  }

  /** Strokes were drawn or taken back: the parts are shown at once, then what is measured of them. */
  async function stroked() {
    stop?.abort();
    stop = new AbortController();
    const mine = ++turn;
    try {
      const found = await drawn(await engine.parts(frames(), strokes(), { signal: stop.signal }));
      if (mine !== turn) {
        return;
      }
      state.drawn = found;
      tell('parts');
    } catch (error) {
      if (mine !== turn || error.name === 'AbortError') {
        return;
      }
    }
    await open(state.view, { keep: true });
  }

  async function strips(mine, signal) {
    const crops = rowRegions(state.measured, state.shown).map((r) => ({ id: r.id, ...r.crop }));
    // whole stops first, for a strip to look at; the thirds between for the piece that is pulled out
    for (const everyThirds of [3, 1]) {
      const whole = await engine.strips(frames(), strokes(), crops, everyThirds, { signal, ahead: true });
      if (mine !== turn) {
        return;
      }
      state.strips = whole.answer.strips.map((s) => ({ ...s, href: whole.blobs[s.id], firstThird: whole.answer.firstThird, everyThirds: whole.answer.everyThirds }));
      tell('model');
    }
  }

  /** Weighs the wishes against what was measured. */
  async function weigh() {
    const texts = wishTexts(state.view.wishes, state.measured);
    const asked = JSON.stringify(texts);
    state.weighing = asked;
    const whole = await engine.wish(frames(), strokes(), texts, {});
    if (state.weighing !== asked) {
      return;
    }
    state.weighed = texts.length ? whole.answer : { ...whole.answer, windows: [], demands: [], conflict: null };
    tell('model');
  }

  const cameraOf = () => {
    const camera = state.kit?.cameras?.find((c) => c.inBag) || {};
    const lens = state.kit?.lenses?.find((l) => l.inBag) || {};
    const { name: a, inBag: b, ...one } = camera;
    const { name: c, inBag: d, ...two } = lens;
    return Object.fromEntries(Object.entries({ ...one, ...two }).filter(([, v]) => v !== null && v !== undefined));
  };

  /** How fast the sun's light changes where the outing has a place; null when it has none, or when it is not known. */
  const rateOfSky = (outing, reading) =>
    outing.place?.at
      ? engine.sky({ at: outing.place.at, time: new Date(Date.now()).toISOString(), meter: { reading: reading.meter, time: new Date(reading.at).toISOString() } })
        .then((sky) => sky.fadingStopsPerMinute)
        .catch(() => null)
      : Promise.resolve(null);

  /** Light now, and settings for the chosen time. */
  async function solve() {
    const outing = store.outing;
    const readings = outing.light?.readings || [];
    state.camera = cameraOf();
    if (!readings.length) {
      state.settings = null;
      state.light = null;
      tell('model');
      return;
    }
    const bag = (state.kit?.filters || []).filter((f) => f.inBag);
    const asked = state.third;
    const lastAt = Date.parse(readings.at(-1).at);
    const openAt = Math.min(Date.now(), lastAt + CARRIED_MILLIS);
    const bySun = (outing.light.stopsPerMinute ?? null) === null && tellingReadings(readings).length === 1 ? await rateOfSky(outing, readings.at(-1)) : null;
    const rate = bySun ?? outing.light.stopsPerMinute;
    state.light = await engine.light({
      readings: tellingReadings(readings).map((r) => ({ meter: r.meter, atSeconds: Date.parse(r.at) / 1000 })),
      openAtSeconds: openAt / 1000,
      ...(rate === null || rate === undefined ? {} : { stopsPerMinute: rate }),
    }).catch(() => engine.light({ readings: readings.slice(-1).map((r) => ({ meter: r.meter, atSeconds: Date.parse(r.at) / 1000 })), openAtSeconds: openAt / 1000 }));
    state.light.ageMinutes = (Date.now() - lastAt) / 60e3;
    if (bySun !== null) {
      state.light.rateFrom = 'sun';
    }
    const request = (seconds) => ({
      exposureValue100: state.light.exposureValue100,
      time: `${seconds}s`,
      filters: bag.map((f) => f.takes),
      measured: bag.filter((f) => f.measuredStops).map((f) => `${f.takes}=${f.measuredStops}`),
      fadingStopsPerMinute: state.light.stopsPerMinute,
      biasStops: outing.light.biasStops || 0,
      camera: state.camera,
      ...(state.view.nearestMetres ? { nearestMetres: state.view.nearestMetres } : {}),
    });
    const settings = await engine.settings(request(Math.pow(2, asked / 3)));
    if (asked !== state.third) {
      return;
    }
    state.settings = settings;
    const conflict = state.weighed?.conflict;
    const blend = conflict?.ways.find((w) => w.kind === 'blend');
    state.blend = blend
      ? (await Promise.all(blend.seconds.map((s) => engine.settings(request(s)).catch(() => null)))).map((a) => a?.choices[0]).filter(Boolean)
      : [];
    tell('model');
  }

  let solving = 0;
  function solveSoon() {
    clearTimeout(solving);
    solving = setTimeout(() => solve().catch((error) => { state.problem = error; tell('model'); }), 60);
  }

  function bag() {
    if (!state.settings) {
      return [];
    }
    const c = current();
    return state.settings.reach.map((one) => ({
      seconds: one.correctedSeconds ?? one.seconds,
      filters: one.filters,
      fNumber: one.fNumber,
      aperture: fLabel(one.fNumber),
      rank: 2 * Math.abs(Math.log2(one.fNumber / PREFERRED_APERTURE)) + 0.6 * one.filters.length,
      chosen: Boolean(c) && c.filters.join() === one.filters.join() && Math.abs(c.fNumber - one.fNumber) < 0.01 && Math.abs(Math.log2(one.seconds / Math.pow(2, state.third / 3))) < 0.35,
    }));
  }

  const current = () => state.settings?.choices[Math.min(state.choice, state.settings.choices.length - 1)] || null;

  /** Seconds the shutter stays open. */
  const openSeconds = () => current()?.correctedSeconds ?? Math.pow(2, state.third / 3);

  let looked = '';

  /** What comes into the picture while the shutter is open, if it opened now; asked anew when the question changes. */
  async function look(now) {
    const question = state.view && enteringQuestion(store.outing, state.view, openSeconds(), now);
    const asked = JSON.stringify(question);
    if (asked === looked) {
      return;
    }
    looked = asked;
    const found = question ? await engine.sky(question).then((sky) => sky.exposure.entering).catch(() => []) : [];
    if (asked === looked && JSON.stringify(found) !== JSON.stringify(state.entering)) {
      state.entering = found;
      tell('model');
    }
  }

  function model() {
    const now = Date.now();
    const built = axisModel({
      measured: state.measured,
      weighed: state.weighed,
      third: state.third,
      view: state.view,
      shown: state.shown,
      strips: state.strips,
      bag: bag(),
      limits: {
        leaveSeconds: longestSeconds(store.outing, now, state.camera?.darkFrame),
        leaveBy: store.outing.guard?.leaveBy || '',
        timedSeconds: state.settings?.timedLimitSeconds || 32,
        fadesBeyondSeconds: state.settings?.longestEquivalentSeconds ?? null,
      },
      bagWords: state.light ? `EV ${state.light.exposureValue100.toFixed(1)}${state.light.stale ? ', stale' : ''}` : 'no reading yet',
    });
    return { model: built, verdict: verdict(built) };
  }

  function outline() {
    const index = state.drawn?.map ? state.drawn.regions.findIndex((r) => r.id === state.selected) : -1;
    return index < 0 ? null : outlineOf(state.drawn.map, state.drawn.width, state.drawn.height, index);
  }

  return {
    state, pictures, frames, open, bare, weigh, solve, solveSoon, look, model, current, outline,
    stroked,
    restrip: () => strips(turn, stop.signal).catch(() => {}),
    halt() {
      stop?.abort();
      pictures.halt();
    },
    /** Nothing is open any more: a view without frames is shown, or none. */
    leave() {
      stop?.abort();
      pictures.halt();
      turn++;
      Object.assign(state, { view: null, measured: null, drawn: null, weighed: null, strips: null, selected: null, reading: null, problem: null });
    },
  };
}
