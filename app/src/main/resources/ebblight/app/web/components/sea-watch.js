// The sea watch: frames of the shore from above before one steps down. The highest wash is drawn on the picture, the tide's
// rise is added; the same frames read the breakers.

import { el, fill, key } from '../dom.js';
import * as engine from '../engine.js';
import { json } from '../http-carrier.js';
import { frameGap } from './frame-gap.js';
import { openSheet } from './sheet.js';
import { progressBox } from './progress.js';
import { stepper } from './stepper.js';
import { risesOn, washPicture } from './wash-picture.js';
import { takeFrames } from './take-frames.js';
import { leaveAt } from '../logic/guard.js';
import { riseOf, riseWords, stepOver, watchWords, waterOf, WATCH_GAP_SECONDS, WATCH_MINUTES } from '../logic/sea-watch.js';

/** Sends files into the outing as the frames of one folder: { path, timed } , timed when the times of the files are kept. */
async function dropped(files, tell) {
  const batch = `watch-${new Date().toISOString().slice(0, 19).replace(/[^0-9]/g, '-')}`;
  let last = null;
  for (const [i, file] of files.entries()) {
    tell(i / files.length);
    last = await json(`/api/drop?name=${encodeURIComponent(file.name)}${files.length > 1 ? `&batch=${batch}` : ''}`, { method: 'POST', body: file });
  }
  return { path: files.length > 1 ? last.folder : last.path, timed: Boolean(last.timed) };
}

/** How much the tide rises from now until the time to leave; null where the outing knows no water, or no time is set. */
async function tideRise(outing, now) {
  const until = leaveAt(outing, now);
  const water = until === null || until <= now ? null : waterOf(outing, await json('/api/water'));
  if (!water) {
    return null;
  }
  const { answer } = await engine.answer({ schema: 'tide/1', ...water, from: new Date(now).toISOString(), to: new Date(until).toISOString(), everySeconds: stepOver((until - now) / 1000) });
  const metres = riseOf(answer.heights);
  return metres === null ? null : { metres, until: outing.guard.leaveBy };
}

/** @param c of the steps: store, s, scene, redraw */
export function seaWatch({ store, s, go }) {
  const host = el('div.sea-watch');
  let stop = () => {};
  let minutes = WATCH_MINUTES;
  let height = s.view.watch?.washMetres || 0;

  const words = (...rows) => rows.map((text) => el('p', {}, text));
  const failed = (error) => error.name === 'AbortError' || fault(error);
  const fault = (error) => fill(host, el('p.fault', { role: 'alert' }, error.message), key('Again', ready, { class: 'act' }));

  function ready() {
    const input = el('input', { type: 'file', multiple: true, accept: 'image/*,video/*', class: 'unseen', tabindex: '-1', 'aria-label': 'Frames of a watch' });
    input.addEventListener('change', () => input.files.length && read([...input.files], false));
    fill(
      host,
      words('Stand high above the water, with the phone on something firm. Have the shore and the ground you want to stand on in the picture.', `One frame every ${WATCH_GAP_SECONDS} s. Watch with your own eyes meanwhile: you see more than the phone.`),
      stepper('Watch for', () => `${minutes} min`, (d) => { minutes = Math.max(1, Math.min(20, minutes + d)); }, 'watch-minutes'),
      key('Begin the watch', watch, { class: 'go', 'data-focus': 'begin-watch' }),
      key('Choose frames or a clip', () => input.click(), { class: 'hold' }),
      input,
    );
  }

  async function watch() {
    const live = el('video', { muted: true, playsinline: true, class: 'sea-live' });
    const left = el('div.count', { role: 'timer' });
    const taken = el('p', {});
    const taking = takeFrames(live, WATCH_GAP_SECONDS, 60 * minutes, (state) => {
      const seconds = Math.ceil(state.left);
      left.textContent = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
      taken.textContent = `${state.frames} frames`;
    });
    stop = taking.stop;
    fill(host, live, left, taken, key('End the watch now', () => taking.finish(), { class: 'hold' }));
    try {
      await read(await taking.done, true);
    } catch (error) {
      failed(error);
    }
  }

  async function read(files, watched) {
    const halt = new AbortController();
    stop = () => halt.abort();
    const progress = progressBox('Reading the watch', () => { halt.abort(); ready(); });
    fill(host, progress.box);
    try {
      const { path, timed } = await dropped(files, (fraction) => progress.update({ fraction: 0.1 * fraction, stage: 'keeping the frames', secondsLeft: null }));
      const frames = watched && !timed ? { path, fps: 1 / WATCH_GAP_SECONDS } : { path };
      const options = { signal: halt.signal, onProgress: (state) => progress.update({ ...state, fraction: 0.1 + 0.9 * state.fraction }) };
      await seen(frames, options).catch((error) => {
        if (error.document?.needs !== 'fps') {
          throw error;
        }
        askGap((fps) => {
          fill(host, progress.box);
          seen({ path, fps }, options).catch(failed);
        });
      });
    } catch (error) {
      failed(error);
    }
  }

  /** Frames that do not say when they were taken. */
  const askGap = (choose) => fill(host, words('How far apart are these frames? The pictures do not say when they were taken.'), frameGap(1 / WATCH_GAP_SECONDS, choose));

  async function seen(frames, options) {
    const rise = await tideRise(store.outing, Date.now()).catch(() => null);
    const riseMetres = Math.max(0, rise?.metres || 0);
    const whole = await engine.wash(frames, [], height && riseMetres ? { washMetres: height, riseMetres } : {}, options);
    const { bitmap } = await engine.preview(frames, [], 0, options);
    const map = await engine.bytes(whole.blobs.wash);
    const { answer } = whole;
    const { id } = s.view;
    store.edit((o) => { o.views.find((v) => v.id === id).watch = { at: new Date().toISOString(), watchedSeconds: answer.watchedSeconds, highestAtSeconds: answer.highestAtSeconds, washMetres: height || null, riseMetres }; }, { undoable: false });
    const again = () => seen(frames, options).catch(fault);
    let soon = 0;
    fill(
      host,
      washPicture(bitmap, map, answer.mapWidth, answer.mapHeight),
      words(watchWords(answer), riseWords(rise, height, store.outing, risesOn(map))),
      stepper('Highest wash above the usual water, by eye', () => (height ? `${height.toFixed(1)} m` : '–'), (d) => {
        height = Math.max(0, Math.min(10, Math.round(10 * height + 2 * d) / 10));
        clearTimeout(soon);
        soon = setTimeout(again, 700);
      }, 'wash-height'),
      answer.cautions.map((text) => el('div.warn', {}, `${text[0].toUpperCase()}${text.slice(1)}.`)),
      key('Read the water from it', () => {
        close();
        store.edit((o) => { Object.assign(o.views.find((v) => v.id === id), { frames: frames.path }, frames.fps ? { framesPerSecond: frames.fps } : {}); });
        go({ page: 'there', view: id, part: null, step: null, third: s.third });
      }, { class: 'go', 'data-focus': 'use-watch' }),
      key('Watch again', ready, { class: 'hold' }),
    );
  }

  ready();
  const close = openSheet('Watch the sea', () => host, { className: 'sea-sheet', onclose: () => stop() });
}
