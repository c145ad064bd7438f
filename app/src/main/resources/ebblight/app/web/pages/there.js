// There: the picture at the chosen time, the time axis, and the way to the shot.

import { el, fill, key } from '../dom.js';
import { createScene } from './scene.js';
import { showAxisPage } from './axis-page.js';
import { showShot } from './shot.js';
import { showLog } from './log.js';
import { showPlanned } from './planned.js';
import { dropBox } from '../components/drop.js';
import { frameGap } from '../components/frame-gap.js';
import { progressBox } from '../components/progress.js';

const PARTS = { shot: showShot, log: showLog };

export function open(host, app) {
  const { store, go, place } = app;
  let current = null;
  let progress = null;
  let closed = false;
  const scene = createScene(store, (what, detail) => {
    if (closed) {
      return;
    }
    const whole = what === 'all' || what === 'measured';
    if (what === 'progress' && progress) {
      progress.update(scene.state.reading);
    } else if (whole && (!current || !scene.state.measured)) {
      render();
    } else {
      current?.tell(what, detail);
    }
  });
  const tick = setInterval(() => {
    const now = Date.now();
    scene.look(now);
    current?.tick?.(now);
  }, 1000);

  /** The view asked for, else the first with frames, else the first that is planned, else any. */
  const viewOf = (at) => {
    const { views } = store.outing;
    return views.find((v) => v.id === at.view) || views.find((v) => v.frames) || views.find((v) => v.hour) || views[0] || null;
  };

  const freeId = () => `view-${1 + Math.max(0, ...store.outing.views.map((v) => Number(v.id.split('-')[1]) || 0))}`;

  function addBare() {
    const id = freeId();
    store.edit((outing) => {
      if (!outing.views.some((v) => v.id === id)) {
        outing.views.push({ id, name: 'Without a clip' });
      }
    });
    go({ page: 'there', view: id, part: null, step: null, third: null });
  }

  function addView(path) {
    const id = freeId();
    const name = path.split('/').pop().replace(/\.[^.]+$/, '');
    store.edit((outing) => {
      if (!outing.views.some((v) => v.frames === path)) {
        outing.views.push({ id, name, frames: path });
      }
    });
    const view = store.outing.views.find((v) => v.frames === path);
    go({ page: 'there', view: view.id, part: null, step: null, third: null });
  }

  /** Puts the page that the state asks for in place. */
  function render() {
    current?.leave?.();
    current = null;
    progress = null;
    const at = place();
    const view = viewOf(at);
    host.classList.remove('axis-page', 'shot-page', 'log-page', 'correcting');
    const s = scene.state;
    if (!view || at.part === 'new') {
      fill(host, el('section.empty', {}, dropBox(view ? 'Another clip' : 'No clip yet', [
        'Put the camera on the tripod, or the phone on a rock. Lock exposure and focus.',
        'Ten seconds for ripples, twenty for swell; for surf 20 to 30 frames, 10 to 12 seconds apart.',
      ], addView), view ? '' : key('No clip: guess the time', addBare, { class: 'alt' }), inputsList(addView)));
    } else if (!view.frames && PARTS[at.part]) {
      current = PARTS[at.part](host, { ...app, scene, addView });
    } else if (!view.frames) {
      current = showPlanned(host, app, view, (path) => setFrames(view, path), inputsList((path) => setFrames(view, path)));
    } else if (s.problem && !s.measured && PARTS[at.part]) {
      // the clip is gone, or cannot be read: an exposure that runs, the steps and the log do without it
      scene.bare(view).catch((error) => app.say(error.message));
      render();
    } else if (s.problem && !s.measured) {
      fill(host, s.problem.document?.needs === 'fps' ? gapBox(view) : faultBox(s.problem));
    } else if (s.reading && !s.measured) {
      progress = progressBox('Reading the clip', () => {
        scene.halt();
      });
      progress.update(s.reading);
      fill(host, el('section.empty.reading', {}, el('h1', {}, view.name), progress.box, el('p.cap', {}, 'Leave this page or reload it: the reading goes on.')));
    } else if (s.stopped && !s.measured) {
      fill(host, el('section.empty', {}, el('h1', {}, 'Stopped'), el('p', {}, 'The clip was not read. Nothing was changed.'), key('Read it', () => begin(view), { class: 'act' })));
    } else if (s.measured && !s.measured.regions.length) {
      fill(host, el('section.empty.fault', { role: 'alert' }, el('h1', {}, 'Nothing can be measured in this clip'), s.measured.warnings.map((text) => el('p', {}, `${text[0].toUpperCase()}${text.slice(1)}.`)), key('Another clip', () => go({ part: 'new' }), { class: 'act' })));
    } else if (s.measured) {
      current = (PARTS[at.part] || showAxisPage)(host, { ...app, scene, addView });
    }
  }

  function inputsList(take) {
    const inputs = store.whole.inputs.filter((i) => !store.outing.views.some((v) => v.frames === i.path));
    return inputs.length
      ? el('div.inputs', {}, el('h2', {}, 'In this folder'), inputs.map((i) => key(`${i.path}${i.clip ? '' : `, ${i.frames} frames`}`, () => take(i.path), { class: 'alt' })))
      : '';
  }

  /** A planned view gets its clip. */
  function setFrames(view, path) {
    const { id } = view;
    store.edit((outing) => { outing.views.find((v) => v.id === id).frames = path; });
    start();
  }

  /** Frames that do not say when they were taken. */
  function gapBox(view) {
    const { id } = view;
    return el(
      'section.empty',
      {},
      el('h1', {}, 'How far apart are these frames?'),
      el('p', {}, `${view.name}: the pictures do not say to a part of a second when they were taken.`),
      frameGap(view.framesPerSecond, (rate) => {
        store.edit((outing) => { outing.views.find((v) => v.id === id).framesPerSecond = rate; });
        begin(store.outing.views.find((v) => v.id === id));
      }),
      key('Another clip', () => go({ part: 'new' }), { class: 'alt' }),
    );
  }

  function faultBox(error) {
    return el(
      'section.empty.fault',
      { role: 'alert' },
      el('h1', {}, 'This clip does not open'),
      el('p', {}, error.message),
      el('div.keys', {}, key('Try again', () => begin(viewOf(place())), { class: 'act' }), key('Another clip', () => go({ part: 'new' }), { class: 'alt' })),
    );
  }

  function begin(view) {
    scene.state.stopped = false;
    scene.open(view);
  }

  function start() {
    const at = place();
    const view = viewOf(at);
    if (at.third !== null) {
      scene.state.third = at.third;
    } else if (view?.third !== undefined) {
      scene.state.third = view.third;
    }
    if (view?.frames && at.part !== 'new') {
      begin(view);
    } else if (view && PARTS[at.part]) {
      scene.bare(view).catch((error) => app.say(error.message));
      render();
    } else {
      scene.leave();
      render();
    }
  }

  start();
  return {
    moved(at) {
      const view = viewOf(at);
      if (view && at.part !== 'new' && (!view.frames || !scene.state.view || view.id !== scene.state.view.id || scene.state.measured?.guessed)) {
        start();
        return;
      }
      if (at.third !== null && at.third !== scene.state.third) {
        scene.state.third = at.third;
        scene.solveSoon();
      }
      render();
    },
    changed() {
      const view = viewOf(place());
      if (!view?.frames) {
        render();
        return;
      }
      const before = JSON.stringify(scene.state.view?.strokes || []);
      scene.state.view = view;
      if (JSON.stringify(view.strokes || []) !== before) {
        scene.stroked();
      } else if (scene.state.measured) {
        scene.weigh().then(scene.solve);
        render();
      }
    },
    redraw: () => current?.redraw?.(),
    key: (event) => current?.key?.(event),
    leave() {
      closed = true;
      clearInterval(tick);
      current?.leave?.();
      scene.halt();
    },
  };
}
