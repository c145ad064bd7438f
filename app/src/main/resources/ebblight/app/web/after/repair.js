// Repair: only what is asked for is looked at; untouched and repaired lie one over the other, and the mask shows where.

import { el, fill, key } from '../dom.js';
import { progressBox } from '../components/progress.js';
import { tilesOf } from '../components/viewer.js';
import { nameOf, pathIn, stemOf } from '../logic/after.js';
import { clamp, tidy } from '../logic/finish.js';
import { make, sortCard, thumbnail } from './desk.js';
import { pick } from './pick.js';

/** Half the side of the part that is taken for grey, as a fraction. */
const GREY = 0.02;
const SPECK = 0.006;

export function open(host, app) {
  const { store } = app;
  const state = { picture: '', darks: '', frames: '', reference: '', level: 0, corners: 0, dust: [], neutral: null, tool: '', card: null, done: null, working: null, fault: '', show: 'repaired' };

  /** The document of the numbers (repair/1). */
  function numbers() {
    const { neutral, corners, dust, level } = state;
    return {
      schema: 'repair/1',
      ...(neutral ? { neutral } : {}),
      ...(corners ? { vignetting: corners } : {}),
      ...(dust.length ? { dust } : {}),
      ...(level ? { level } : {}),
    };
  }

  const asksNumbers = () => Object.keys(numbers()).length > 1;
  const asks = () => Boolean(state.darks || state.frames || state.reference || asksNumbers());

  async function run() {
    const stop = new AbortController();
    const progress = progressBox('Repairing', () => stop.abort());
    Object.assign(state, { working: progress.box, fault: '', done: null });
    draw();
    try {
      const files = Object.fromEntries(['darks', 'frames', 'reference'].filter((k) => state[k]).map((k) => [k, state[k]]));
      state.done = await make({ command: 'repair', inputs: [state.picture], name: `repaired-${stemOf(state.picture)}`, files, documents: asksNumbers() ? { with: numbers() } : {}, outputs: { mask: true } }, { signal: stop.signal, onProgress: progress.update });
      state.show = 'repaired';
    } catch (error) {
      state.fault = error.name === 'AbortError' ? 'Stopped. Nothing was written.' : error.message;
    }
    state.working = null;
    draw();
    if (state.done) {
      results();
    }
  }

  const select = (name, label, none, options) =>
    el('label.labelled', {}, el('b', {}, label), el('select', { 'data-focus': name, onchange: (event) => { state[name] = event.target.value; drawSide(); } }, el('option', { value: '' }, none), options.map(([value, words]) => el('option', { value, selected: value === state[name] }, words))));

  const stepRow = (id, label, read, step) => el('div.stepper', { role: 'group', 'aria-label': label }, el('small', {}, label), el('b', { role: 'status' }, read()), key('−', () => { step(-1); drawSide(); }, { 'aria-label': `${label} down`, 'data-focus': `${id}-1` }), key('+', () => { step(1); drawSide(); }, { 'aria-label': `${label} up`, 'data-focus': `${id}1` }));

  function darkOptions() {
    const folders = store.whole.inputs.filter((i) => !i.clip).map((i) => [i.path, `all of ${i.path}, if they are darks`]);
    const { folder } = app.asked();
    const darks = (state.card?.groups || []).filter((g) => g.kind === 'darks').flatMap((g) => g.frames);
    return [...darks.map((f) => [pathIn(folder, f.file), `${f.file}, dark of ${f.exposureSeconds ? `${Math.round(10 * f.exposureSeconds) / 10} s` : 'unknown time'}`]), ...folders];
  }

  const parts = {};

  function drawSide() {
    const { tool, dust, card, neutral } = state;
    const known = (card?.dust || []).length;
    fill(
      parts.side,
      select('darks', 'Hot pixels and glow, by a dark frame', 'leave them', darkOptions()),
      select('frames', 'Hot pixels, by frames of other views', 'leave them', store.whole.inputs.filter((i) => !i.clip).map((i) => [i.path, `${i.path}, ${i.frames} frames`])),
      select('reference', 'Light leaked through the eyepiece, by the same view covered', 'leave it', (store.outing.kept || []).map((p) => [p, nameOf(p)])),
      stepRow('corners', 'Dark corners, stops', () => state.corners.toFixed(2), (d) => { state.corners = tidy(clamp(state.corners + 0.05 * d, 0, 3), 100); }),
      stepRow('level', 'Level, degrees', () => state.level.toFixed(1).replace('-', '−'), (d) => { state.level = tidy(clamp(state.level + 0.1 * d, -45, 45), 10); }),
      el(
        'div.keys',
        {},
        key(neutral ? 'Cast: grey part chosen' : 'Cast: touch a grey part', () => { state.tool = tool === 'grey' ? '' : 'grey'; if (neutral) { state.neutral = null; state.tool = ''; } draw(); }, { class: 'alt', 'aria-pressed': String(tool === 'grey' || Boolean(neutral)), 'data-focus': 'grey' }),
        key(dust.length ? `Spotting ${dust.length}` : 'Spot dust', () => { state.tool = tool === 'dust' ? '' : 'dust'; draw(); }, { class: 'alt', 'aria-pressed': String(tool === 'dust'), 'data-focus': 'dust' }),
        known ? key(`The ${known} specks of this card`, () => { state.dust = card.dust.map(({ x, y, radius }) => ({ x, y, radius: Math.max(radius, 0.002) })); draw(); }, { class: 'alt', 'data-focus': 'known-dust' }) : '',
        dust.length ? key('None of them', () => { state.dust = []; draw(); }, { class: 'alt', 'data-focus': 'no-dust' }) : '',
      ),
      state.fault ? el('p.fault', { role: 'alert' }, state.fault) : '',
      state.working || el('div.keys', {}, key('Repair', run, { class: 'act', disabled: !asks(), 'data-focus': 'run' })),
      asks() ? '' : el('p.cap', {}, 'Nothing is asked for yet. What is not sure is left alone and counted.'),
    );
  }

  /** The picture to touch: a grey part, a speck. */
  function stage() {
    const marks = [
      ...state.dust.map((d) => el('span.speck', { style: `left:${100 * d.x}%;top:${100 * d.y}%` })),
      state.neutral ? el('span.grey', { style: `left:${100 * state.neutral[0]}%;top:${100 * state.neutral[1]}%;width:${200 * GREY}%;height:${100 * (state.neutral[3] - state.neutral[1])}%` }) : '',
    ];
    return el(
      `div.repair-stage${state.tool ? '.touch' : ''}`,
      {
        onclick: (event) => {
          const rect = event.currentTarget.querySelector('img').getBoundingClientRect();
          touch((event.clientX - rect.left) / rect.width, (event.clientY - rect.top) / rect.height);
        },
        onkeydown: (event) => {
          const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
          if (state.tool && way) {
            state.pen = [clamp((state.pen?.[0] ?? 0.5) + 0.01 * way[0], 0, 1), clamp((state.pen?.[1] ?? 0.5) + 0.01 * way[1], 0, 1)];
            draw();
            event.preventDefault();
          } else if (state.tool && (event.key === 'Enter' || event.key === ' ')) {
            touch(...(state.pen || [0.5, 0.5]));
            event.preventDefault();
          }
        },
        tabindex: state.tool ? '0' : null, 'data-focus': 'stage', role: state.tool ? 'application' : 'img', 'aria-label': state.tool ? 'Picture. Arrow keys move the pen, Enter touches.' : `${nameOf(state.picture)}, untouched`,
      },
      el('div', {}, el('img', { src: thumbnail(state.picture, 1600), alt: '' }), marks, state.tool && state.pen ? el('span.pen', { style: `left:${100 * state.pen[0]}%;top:${100 * state.pen[1]}%` }) : ''),
    );
  }

  function touch(x, y) {
    if (state.tool === 'grey') {
      const left = clamp(x - GREY, 0, 1 - 2 * GREY);
      const top = clamp(y - GREY, 0, 1 - 2 * GREY);
      state.neutral = [left, top, left + 2 * GREY, top + 2 * GREY].map((v) => Math.round(1e4 * v) / 1e4);
      state.tool = '';
    } else if (state.tool === 'dust') {
      const near = state.dust.findIndex((d) => Math.hypot(d.x - x, d.y - y) < 2 * SPECK);
      if (near >= 0) {
        state.dust.splice(near, 1);
      } else {
        state.dust.push({ x: Math.round(1e4 * x) / 1e4, y: Math.round(1e4 * y) / 1e4, radius: SPECK });
      }
    } else {
      return;
    }
    draw();
  }

  function draw() {
    if (!state.picture) {
      return;
    }
    fill(parts.head, el('h1', {}, el('b', {}, nameOf(state.picture))), el('p.cap', {}, 'The picture stays as it is; a repaired copy is made.'), el('div.keys', {}, key('Another picture', () => app.goTool('repair', { folder: app.asked().folder }), { class: 'alt', 'data-focus': 'another' })));
    if (!state.done) {
      fill(parts.main, stage());
    }
    drawSide();
  }

  /** Untouched, repaired and the mask over each other at one pixel for one, moved together. */
  async function results() {
    const { done } = state;
    const layers = { untouched: state.picture, repaired: done.file, ...(done.mask ? { mask: done.mask } : {}) };
    const boxes = {};
    const keys = el('div.keys', { role: 'group', 'aria-label': 'What is shown' });
    const view = el('div.repair-view');
    const show = (name) => {
      state.show = name;
      for (const [each, box] of Object.entries(boxes)) {
        box.classList.toggle('shown', each === name);
        box.setAttribute('aria-hidden', String(each !== name));
      }
      fill(keys, Object.keys(boxes).map((each) => key({ untouched: 'Untouched', repaired: 'Repaired', mask: 'Where' }[each], () => show(each), { class: 'alt', 'aria-pressed': String(each === name), 'data-focus': `show-${each}` })));
    };
    fill(
      parts.main,
      keys,
      view,
      el('ul.told', { role: 'status' }, done.done.map((d) => el('li', {}, d.words)), done.done.length ? '' : el('li', {}, 'Nothing was found to change.')),
      done.warnings.map((w) => el('p.note', {}, w)),
      el('div.keys', {}, el('b', {}, done.file), key('Finish it', () => app.goTool('finish', { picture: done.file }), { class: 'act', 'data-focus': 'to-finish' }), key('Ask for something else', () => { state.done = null; draw(); }, { class: 'alt', 'data-focus': 'else' })),
    );
    for (const [name, path] of Object.entries(layers)) {
      const { box } = await tilesOf(path, `${name}, one pixel for one`);
      boxes[name] = box;
      view.append(box);
      box.addEventListener('scroll', () => {
        if (state.show === name) {
          Object.values(boxes).forEach((other) => other !== box && other.scrollTo(box.scrollLeft, box.scrollTop));
        }
      });
    }
    show('repaired');
  }

  async function start() {
    const { picture, folder } = app.asked();
    if (!picture) {
      state.picture = '';
      pick(host, app, 'Repair: which picture?', 'A stack, or a frame that you kept. Hot pixels, glow, leaked light, dark corners, cast, dust, level.', (path) => app.goTool('repair', { folder, picture: path }));
      return;
    }
    if (picture === state.picture) {
      return;
    }
    Object.assign(state, { picture, darks: '', frames: '', reference: '', level: 0, corners: 0, dust: [], neutral: null, tool: '', pen: null, done: null, working: null, fault: '' });
    parts.head = el('div.tool-head');
    parts.main = el('div.repair-main');
    parts.side = el('div.repair-side');
    fill(host, parts.head, el('div.repair', {}, parts.main, parts.side));
    draw();
    if (folder) {
      state.card = await sortCard(folder).catch(() => null);
      drawSide();
    }
  }

  start();
  return {
    hint: 'Only what is asked for is looked at.',
    moved: start,
    key(event) {
      if (event.key === '0' && state.done) {
        host.querySelector('[data-focus="show-untouched"]')?.click();
      }
    },
  };
}
