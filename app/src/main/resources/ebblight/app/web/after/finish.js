// Finish: one column. The picture on its mount, the step tablet at its edge, the steps as one sentence, three drawers.

import { el, fill, key } from '../dom.js';
import { progressBox } from '../components/progress.js';
import { nameOf, stemOf } from '../logic/after.js';
import { clamp, fresh, plainFinish, sentence, tidy, valueOf, withValue } from '../logic/finish.js';
import { byFolder, viewBehind } from '../logic/behind.js';
import { draft, madeList, make } from './desk.js';
import { drawersOf } from './drawers.js';
import { mountOf } from './mount.js';
import { pick } from './pick.js';
import { lookSheet } from './look.js';
import { savedSheet } from './saved-sheet.js';

export function open(host, app) {
  const { store, say } = app;
  const state = { picture: '', drawer: 'tone', drawn: null, bitmap: null, untouched: null, strip: null, bare: false, fault: '', working: null, made: null, colour: 0, part: '', stripGrades: [], view: null };
  let asking = null;
  let again = false;
  let mount = null;
  const parts = {};

  const kept = () => store.outing.finishes?.[state.picture] || { finish: fresh(), off: {} };
  const finish = () => kept().finish;

  function change(id, value, off = null) {
    const next = withValue(finish(), id, value);
    store.edit((outing) => {
      outing.finishes = outing.finishes || {};
      const at = outing.finishes[state.picture] || { off: {} };
      const struck = { ...at.off };
      if (off === null) {
        delete struck[id];
      } else {
        struck[id] = off;
      }
      outing.finishes[state.picture] = { ...at, finish: next, off: struck };
    });
    changed();
  }

  function set(whole) {
    store.edit((outing) => {
      outing.finishes = { ...outing.finishes, [state.picture]: { ...outing.finishes?.[state.picture], finish: whole, off: {} } };
    });
    changed();
  }

  function changed() {
    state.made = null;
    drawAll();
    ask();
  }

  /** A part is printed lighter or darker. */
  const movePart = (kind, stops) => { state.part = kind; change(`part-${kind}`, clamp(tidy(stops), -3, 3) || undefined); };

  /** A colour is moved: those found become the picture's own, written down. */
  function moveColour(index, stops) {
    const found = state.drawn?.colours || [];
    const bw = finish().blackAndWhite || {};
    const colours = (bw.colours?.length ? bw.colours : found.map(({ lab, share, word, stops: s }) => ({ lab, share, word, stops: s }))).map((c) => ({ ...c }));
    colours[index].stops = clamp(tidy(stops), -3, 3);
    change('blackAndWhite', { ...bw, colours });
  }

  /** Asks for the draft of what is wished now; while one is drawn, only the last wish waits. */
  async function ask() {
    if (asking) {
      again = true;
      return;
    }
    const path = state.picture;
    const whole = plainFinish(finish());
    const edges = state.drawer === 'edges' && !state.strip;
    const asked = edges ? withValue(whole, 'crop', undefined) : whole;
    // the picture first, and its parts when they are told: looking at frames takes its time
    const view = state.bitmap ? state.view : null;
    asking = draft(path, plain(edges && whole.sharpness ? withValue(asked, 'sharpness', undefined) : asked, view), view, { onProgress: state.bitmap ? null : progressOf });
    try {
      const answer = await asking;
      if (path === state.picture) {
        state.bitmap = answer.blobs.picture;
        state.edges = edges;
        state.drawn = edges && state.drawn ? { ...answer.answer, steps: state.drawn.steps, parts: state.drawn.parts } : answer.answer;
        state.fault = '';
        again = again || view !== state.view;
        drawAll();
      }
    } catch (error) {
      if (view && view === state.view) {
        // frames that went or do not open: the picture is finished without parts
        state.view = null;
        again = true;
      }
      state.fault = error.message;
      drawAll();
    } finally {
      asking = null;
      if (again) {
        again = false;
        ask();
      }
    }
  }

  /** Parts stay out of a draft where nothing tells where they lie. */
  function plain(whole, view) {
    return view ? whole : withValue(whole, 'parts', undefined);
  }

  /** Which frames tell the parts of this picture: chosen, or those it was made from. */
  async function findView() {
    const path = state.picture;
    const chosen = kept().view;
    const view = chosen || byFolder(viewBehind(path, await madeList()), store.whole.inputs);
    if (path === state.picture && view) {
      state.view = view;
      drawAll();
      if (state.bitmap) {
        ask();
      }
    }
  }

  function chooseView(path) {
    // strokes that were drawn over these frames tell the parts here too
    const drawn = store.outing.blends?.[path]?.strokes || (store.outing.views || []).find((v) => v.frames === path)?.strokes || [];
    const view = { frames: { path }, ...(drawn.length ? { strokes: { schema: 'strokes/1', strokes: drawn } } : {}) };
    store.edit((outing) => {
      outing.finishes = outing.finishes || {};
      outing.finishes[state.picture] = { finish: fresh(), off: {}, ...outing.finishes[state.picture], view };
    });
    state.view = view;
    ask();
  }

  const progressOf = (now) => parts.progress?.update(now);

  async function untouched(on) {
    if (state.bare === on) {
      return;
    }
    state.bare = on;
    if (on && !state.untouched) {
      const only = {};
      for (const step of ['level', 'crop']) {
        if (finish()[step] !== undefined && !(step === 'crop' && state.edges)) {
          only[step] = finish()[step];
        }
      }
      state.untouched = (await draft(state.picture, { ...fresh(), ...only }, null)).blobs.picture;
    }
    drawMount();
  }

  /** The test strip: five grades, half a grade apart, each a piece of the picture itself. */
  async function strip() {
    if (state.strip) {
      state.strip = null;
      drawAll();
      return;
    }
    const middle = finish().grade ?? 2;
    state.stripGrades = [-1, -0.5, 0, 0.5, 1].map((d) => clamp(middle + d, 0, 5));
    state.strip = state.stripGrades.map(() => null);
    drawAll();
    for (const [i, grade] of state.stripGrades.entries()) {
      if (!state.strip) {
        return;
      }
      const answer = await draft(state.picture, plain(plainFinish(withValue(finish(), 'grade', grade)), state.view), state.view);
      if (state.strip) {
        state.strip[i] = answer.blobs.picture;
        drawMount();
      }
    }
  }

  async function makeIt() {
    const stop = new AbortController();
    const progress = progressBox('Finishing at full size', () => stop.abort());
    state.working = progress.box;
    drawFoot();
    try {
      state.made = await make({ command: 'finish', inputs: [state.picture], name: `finished-${stemOf(state.picture)}`, ...partsOf() }, { signal: stop.signal, onProgress: progress.update });
      state.fault = '';
    } catch (error) {
      state.fault = error.name === 'AbortError' ? 'Stopped. Nothing was written.' : error.message;
    }
    state.working = null;
    drawFoot();
    parts.foot.querySelector('.act')?.focus({ preventScroll: true });
  }

  /** What the command is given: the finish, and what tells its parts where it has some. */
  function partsOf() {
    const whole = plain(plainFinish(finish()), state.view);
    const { frames, strokes } = state.view || {};
    const told = whole.parts && { files: { frames: frames.files || frames.path }, options: frames.fps ? { fps: frames.fps } : {} };
    return { documents: { with: whole, ...(told && strokes ? { strokes } : {}) }, ...told };
  }

  const drawMount = () => mount.update({ ...state, finish: finish() });

  function drawSentence() {
    const steps = sentence(finish());
    const off = Object.entries(kept().off || {});
    const all = [];
    all.push(el('span', {}, el('b', {}, nameOf(state.picture)), steps.length ? ', ' : ': nothing done yet. Open a drawer.'));
    steps.forEach(({ id, text, before }) => all.push(before, key(text, () => change(id, undefined, { value: valueOf(finish(), id), text }), { 'aria-label': `Undo: ${text}`, 'data-focus': `say-${id}` })));
    off.filter(([id]) => !steps.some((s) => s.id === id)).forEach(([id, { value, text }]) => all.push(', ', key(text, () => change(id, value), { class: 'off', 'aria-label': `Put back: ${text}`, 'data-focus': `say-${id}` })));
    fill(parts.say, all, steps.length ? '.' : '');
  }

  function drawDrawers() {
    fill(parts.drawers, drawersOf({ state, finish: finish(), change, moveColour, movePart, chooseView, inputs: store.whole.inputs, strip, open: (name) => { state.drawer = name; state.strip = null; app.goTool('finish', { ...app.asked(), drawer: name }, true); drawAll(); ask(); } }));
  }

  function drawFoot() {
    const done = state.made;
    fill(
      parts.foot,
      state.fault ? el('p.fault', { role: 'alert' }, state.fault) : '',
      state.working || '',
      done ? el('p.result', { role: 'status' }, el('b', {}, done.file), ` ${done.width} × ${done.height}${done.pixelsPerInch ? `, ${Math.round(done.pixelsPerInch)} pixels an inch on that paper` : ''}. Its record lies beside it.`) : '',
      state.working
        ? ''
        : el(
          'div.keys',
          {},
          done
            ? [key('Write it out', () => app.goTool('write', { picture: done.file }), { class: 'act', 'data-focus': 'to-write' }), key('Every pixel', () => lookSheet(app, done.file), { class: 'alt', 'data-focus': 'pixels' })]
            : key('Finish at full size', makeIt, { class: 'act', 'data-focus': 'make' }),
          key('Saved finishes', () => savedSheet(app, finish(), set), { class: 'alt', 'data-focus': 'saved' }),
          key('Another picture', () => app.goTool('finish'), { class: 'alt', 'data-focus': 'another' }),
        ),
    );
  }

  function drawAll() {
    drawMount();
    drawSentence();
    drawDrawers();
    drawFoot();
  }

  function start() {
    const { picture, drawer } = app.asked();
    if (!picture) {
      state.picture = '';
      pick(host, app, 'Finish: which picture?', 'A stack, a blend, or a frame that you kept.', (path) => app.goTool('finish', { picture: path }));
      return;
    }
    if (picture === state.picture) {
      if (drawer && drawer !== state.drawer) {
        state.drawer = drawer;
        drawAll();
        ask();
      }
      return;
    }
    Object.assign(state, { picture, drawer: drawer || state.drawer, drawn: null, bitmap: null, untouched: null, strip: null, made: null, view: null, part: '', fault: '' });
    parts.progress = progressBox(`Opening ${nameOf(picture)}`);
    parts.mount = el('div.mount');
    parts.say = el('p.say');
    parts.drawers = el('div.drawers');
    parts.foot = el('div.finish-foot');
    fill(host, el('h1.unseen', {}, `Finish ${nameOf(picture)}`), parts.mount, parts.say, parts.drawers, parts.foot);
    mount = mountOf(parts.mount, {
      wait: () => parts.progress.box,
      moveColour,
      movePart,
      choosePart: (kind) => { state.part = kind; drawAll(); },
      chooseColour: (i) => { state.colour = i; drawAll(); },
      grade: (i) => { const grade = state.stripGrades[i]; state.strip = null; change('grade', grade === 2 ? undefined : grade); },
      crop: (crop) => change('crop', crop),
    });
    drawAll();
    ask();
    findView().catch((error) => { state.fault = error.message; drawAll(); });
  }

  const up = (event) => {
    if (event.key === '0') {
      untouched(false);
    }
  };
  addEventListener('keyup', up);
  start();
  return {
    hint: 'Touch a word of the sentence to undo it. Hold 0 for untouched, G lays the test strip on.',
    moved: start,
    redraw: () => (state.picture ? drawMount() : null),
    changed: () => {
      if (state.picture) {
        state.untouched = null;
        changed();
      }
    },
    key(event) {
      if (!state.picture) {
        return;
      }
      if (event.key === '0' && !event.repeat) {
        state.untouched = null;
        untouched(true);
      } else if (event.key.toLowerCase() === 'g') {
        strip();
      }
    },
    leave: () => {
      removeEventListener('keyup', up);
      say('');
    },
  };
}
