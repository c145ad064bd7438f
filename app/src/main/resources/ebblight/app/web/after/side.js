// Side by side: two frames in one picture, parted along a part's own edge. One locator in the spine moves both; the
// spine leans to the better frame, measure by measure.

import { el, fill, key } from '../dom.js';
import * as engine from '../engine.js';
import { progressBox } from '../components/progress.js';
import { outlineOf } from '../components/picture.js';
import { sealSvg } from '../axis/marks.js';
import { burstsOf, byRank, nameOf, pathIn, sayTime } from '../logic/after.js';
import { leans } from '../logic/lean.js';
import { clamp } from '../logic/finish.js';
import { sizeOf, sortCard, thumbnail } from './desk.js';

const KINDS = [['drifting', 'cloud'], ['swaying', 'branch'], ['fixed', 'rock'], ['flowing', 'water']];
/** Frames of the view by which its parts are told. */
const MOST_FRAMES = 8;
const MOST_OF_BURST = 24;
const TILE_FROM = 0.9;

export function open(host, app) {
  const { store } = app;
  const state = { a: '', b: '', group: null, folder: '', size: null, zoom: 0, x: 0.5, y: 0.5, edge: '', parts: null, fault: '', looking: null };
  let stage = null;
  let spine = null;
  let stop = null;
  let urls = [];

  const frameOf = (path) => state.group?.frames.find((f) => pathIn(state.folder, f.file) === path) || null;

  async function load() {
    const { folder, a, b } = app.asked();
    if (!folder || !a || !b) {
      fill(host, el('div.choose', {}, el('h1', {}, 'Side by side'), el('p', {}, 'Two frames of one view in one picture, parted along the edge of the water, the cloud, the rock. Open a view in Sort and press Side by side.'), el('div.keys', {}, key('To Sort', () => app.goTool('sort', folder ? { folder } : {}), { class: 'act' }))));
      state.a = '';
      return;
    }
    if (a === state.a && b === state.b) {
      return;
    }
    const sameView = state.folder === folder && frameOf(a) && frameOf(b);
    Object.assign(state, { a, b, folder, fault: '' });
    stop?.abort();
    stop = new AbortController();
    try {
      if (!sameView) {
        const progress = progressBox('Opening the view', () => stop.abort());
        fill(host, el('div.after-wait', {}, el('h1', {}, 'Side by side'), progress.box));
        const card = await sortCard(folder, { signal: stop.signal, onProgress: progress.update });
        state.group = card.groups.find((g) => g.frames.some((f) => pathIn(folder, f.file) === a)) || null;
        state.parts = null;
        if (!frameOf(a) || !frameOf(b)) {
          throw new Error(`${nameOf(a)} and ${nameOf(b)} are not of one view of ${folder}; choose them in Sort.`);
        }
      }
      state.size = await sizeOf(a);
      mount();
      if (!state.parts) {
        await findParts();
      }
    } catch (error) {
      if (error.name !== 'AbortError') {
        state.a = '';
        fill(host, el('div.empty.fault', { role: 'alert' }, el('h1', {}, 'Not side by side'), el('p', {}, error.message), key('To Sort', () => app.goTool('sort', { folder }), { class: 'act' })));
      }
    }
  }

  /** Which places flow, drift, sway and stand, told by the frames of the view among themselves. */
  async function findParts() {
    // a burst tells them best: its frames follow each other as those of a clip do
    const paths = (frames) => frames.map((f) => pathIn(state.folder, f.file));
    const burst = burstsOf(state.group).sort((x, y) => y.frames.length - x.frames.length)[0];
    const others = paths(byRank(state.group)).filter((p) => p !== state.a && p !== state.b);
    const files = burst?.frames.length >= MOST_FRAMES ? paths(burst.frames).slice(0, MOST_OF_BURST) : [state.a, state.b, ...others].slice(0, MOST_FRAMES).sort();
    state.looking = { fraction: 0, stage: 'finding the edges of the parts' };
    drawSpine();
    try {
      const whole = await engine.parts({ files }, [], { signal: stop.signal });
      const map = whole.blobs.regions ? await engine.bytes(whole.blobs.regions) : null;
      const { regions, mapWidth: width, mapHeight: height } = whole.answer;
      state.parts = map ? { map, width, height, kinds: regions.map((r) => r.kind) } : { none: 'The view shows no parts.' };
      const shares = Object.fromEntries(KINDS.map(([kind]) => [kind, regions.filter((r) => r.kind === kind).reduce((sum, r) => sum + r.areaFraction, 0)]));
      state.parts.shares = shares;
      state.edge = ['flowing', 'drifting', 'fixed', 'swaying'].find((kind) => shares[kind] > 0.03) || '';
    } catch (error) {
      if (error.name === 'AbortError') {
        return;
      }
      state.parts = { none: `No parts could be told: ${error.message}. A straight edge parts the frames.` };
    }
    state.looking = null;
    layMask();
    drawSpine();
  }

  const layers = {};

  function mount() {
    stage = el('div.side-stage', {
      tabindex: '0', role: 'application', 'data-focus': 'stage',
      'aria-label': `${nameOf(state.a)} and ${nameOf(state.b)} in one picture. Arrow keys move, plus and minus change the size.`,
      onkeydown: keys,
    });
    spine = el('aside.spine', { 'aria-label': 'The spine' });
    layers.inner = el('div.side-inner');
    layers.a = el('div.layer');
    layers.b = el('div.layer.inside');
    layers.edge = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
    layers.edge.setAttribute('class', 'side-edge');
    layers.edge.setAttribute('preserveAspectRatio', 'none');
    layers.inner.append(layers.a, layers.b, layers.edge);
    for (const which of ['a', 'b']) {
      layers[which].append(el('img.base', { src: thumbnail(state[which], 1600), alt: '' }));
    }
    stage.append(layers.inner, tag('a', 'outside the edge'), tag('b', 'inside'));
    fill(host, el('h1.unseen', {}, `${nameOf(state.a)} and ${nameOf(state.b)} side by side`), el('div.side-by-side', {}, stage, spine));
    dragging();
    layMask();
    place();
    drawSpine();
  }

  const tag = (which, where) => {
    const f = frameOf(state[which]);
    return el(`div.side-tag.${which}`, {}, el('b', {}, sayTime(f) || f.file), el('span', {}, `${where}: ${f.file}, rank ${f.rank}`));
  };

  const isIn = (i) => state.parts?.map && state.parts.kinds[state.parts.map[i]] === state.edge;

  /** Cuts the second frame along the edge of the part: a mask over its layer. */
  function layMask() {
    urls.forEach(URL.revokeObjectURL);
    urls = [];
    const { parts, edge } = state;
    if (!parts?.map || !edge) {
      layers.b.style.maskImage = '';
      layers.b.style.clipPath = 'inset(0 0 0 50%)';
      layers.edge.setAttribute('viewBox', '0 0 100 100');
      layers.edge.innerHTML = '<path d="M50 0V100" class="edge-out"/><path d="M50 0V100" class="edge-in"/>';
      return;
    }
    const { width, height } = parts;
    const canvas = new OffscreenCanvas(width, height);
    const pen = canvas.getContext('2d');
    const pixels = pen.createImageData(width, height);
    const one = new Uint8Array(width * height);
    for (let i = 0; i < width * height; i++) {
      one[i] = isIn(i) ? 1 : 0;
      pixels.data[4 * i + 3] = 255 * one[i];
    }
    pen.putImageData(pixels, 0, 0);
    const path = outlineOf(one, width, height, 1)((x) => x * width, (y) => y * height);
    layers.edge.setAttribute('viewBox', `0 0 ${width} ${height}`);
    layers.edge.innerHTML = `<path d="${path}" class="edge-out"/><path d="${path}" class="edge-in"/>`;
    canvas.convertToBlob().then((blob) => {
      const url = URL.createObjectURL(blob);
      urls.push(url);
      layers.b.style.clipPath = '';
      layers.b.style.maskImage = `url(${url})`;
    });
  }

  const fit = () => Math.min(stage.clientWidth / state.size.width, stage.clientHeight / state.size.height);
  const scaleOf = () => (state.zoom === 0 ? fit() : state.zoom);

  /** One transform moves both frames. */
  function place() {
    if (!stage?.isConnected) {
      return;
    }
    const k = scaleOf();
    const { width, height } = state.size;
    const W = stage.clientWidth;
    const H = stage.clientHeight;
    const half = [W / 2 / (width * k), H / 2 / (height * k)];
    state.x = half[0] >= 0.5 ? 0.5 : clamp(state.x, half[0], 1 - half[0]);
    state.y = half[1] >= 0.5 ? 0.5 : clamp(state.y, half[1], 1 - half[1]);
    const left = W / 2 - state.x * width * k;
    const top = H / 2 - state.y * height * k;
    Object.assign(layers.inner.style, { width: `${width * k}px`, height: `${height * k}px`, transform: `translate(${left.toFixed(1)}px,${top.toFixed(1)}px)` });
    if (k >= TILE_FROM) {
      tiles(k, -left / k, -top / k, (W - left) / k, (H - top) / k);
    } else {
      stage.querySelectorAll('img.tile').forEach((t) => t.remove());
    }
    locate(half);
  }

  /** Pixels themselves, where they are looked at. */
  function tiles(k, left, top, right, bottom) {
    const { tile, width, height } = state.size;
    const wanted = new Set();
    for (let row = Math.max(0, Math.floor(top / tile)); row * tile < Math.min(bottom, height); row++) {
      for (let column = Math.max(0, Math.floor(left / tile)); column * tile < Math.min(right, width); column++) {
        wanted.add(`${column},${row}`);
      }
    }
    for (const which of ['a', 'b']) {
      const there = new Map([...layers[which].querySelectorAll('img.tile')].map((t) => [t.dataset.at, t]));
      there.forEach((t, at) => !wanted.has(at) && t.remove());
      for (const at of wanted) {
        const [column, row] = at.split(',').map(Number);
        const t = there.get(at) || el('img.tile', { alt: '', 'data-at': at, src: `/api/tile?path=${encodeURIComponent(state[which])}&column=${column}&row=${row}` });
        Object.assign(t.style, { left: `${column * tile * k}px`, top: `${row * tile * k}px`, width: `${Math.min(tile, width - column * tile) * k}px` });
        if (!there.has(at)) {
          layers[which].append(t);
        }
      }
    }
  }

  let frame = null;

  function locate(half) {
    if (frame) {
      const [hx, hy] = half.map((v) => Math.min(0.5, v));
      Object.assign(frame.style, { left: `${100 * (state.x - hx)}%`, top: `${100 * (state.y - hy)}%`, width: `${200 * hx}%`, height: `${200 * hy}%` });
    }
  }

  function zoomTo(zoom) {
    state.zoom = zoom;
    place();
    drawSpine();
  }

  function keys(event) {
    const step = 60 / (scaleOf() * state.size.width);
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (way) {
      state.x += step * way[0];
      state.y += step * way[1] * state.size.width / state.size.height;
      place();
    } else if (event.key === '+' || event.key === '=') {
      zoomTo(state.zoom === 0 ? 1 : Math.min(4, state.zoom * 2));
    } else if (event.key === '-') {
      zoomTo(state.zoom <= 1 ? 0 : state.zoom / 2);
    } else {
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  }

  function dragging() {
    let from = null;
    stage.addEventListener('pointerdown', (event) => {
      from = { x: event.clientX, y: event.clientY, at: [state.x, state.y] };
      stage.setPointerCapture(event.pointerId);
    });
    stage.addEventListener('pointermove', (event) => {
      if (from) {
        const k = scaleOf();
        state.x = from.at[0] - (event.clientX - from.x) / (k * state.size.width);
        state.y = from.at[1] - (event.clientY - from.y) / (k * state.size.height);
        place();
      }
    });
    for (const end of ['pointerup', 'pointercancel']) {
      stage.addEventListener(end, () => { from = null; });
    }
    stage.addEventListener('wheel', (event) => {
      if (event.ctrlKey) {
        event.preventDefault();
        zoomTo(event.deltaY < 0 ? (state.zoom === 0 ? 1 : Math.min(4, state.zoom * 2)) : state.zoom <= 1 ? 0 : state.zoom / 2);
      }
    }, { passive: false });
    stage.addEventListener('dblclick', () => zoomTo(state.zoom === 0 ? 1 : 0));
  }

  function keep(path) {
    store.edit((outing) => {
      outing.kept = [...new Set([...(outing.kept || []), path])].sort();
    });
    drawSpine();
  }

  function drawSpine() {
    const fa = frameOf(state.a);
    const fb = frameOf(state.b);
    const others = byRank(state.group);
    frame = el('span.locator-frame');
    const locator = el('div.locator', {
      'aria-hidden': 'true',
      onpointerdown: (event) => { event.currentTarget.setPointerCapture(event.pointerId); jump(event); },
      onpointermove: (event) => (event.buttons ? jump(event) : null),
    }, el('img', { src: thumbnail(state.a, 480), alt: '' }), frame);
    const jump = (event) => {
      const r = locator.getBoundingClientRect();
      state.x = (event.clientX - r.left) / r.width;
      state.y = (event.clientY - r.top) / r.height;
      place();
    };
    const chooser = (which, label) =>
      el('label.labelled', {}, el('small', {}, label), el('select', { 'data-focus': `choose-${which}`, onchange: (event) => app.goTool('side', { folder: state.folder, a: state.a, b: state.b, [which]: event.target.value }, true) }, others.map((f) => { const p = pathIn(state.folder, f.file); return el('option', { value: p, selected: p === state[which] }, `${f.rank}. ${sayTime(f)}, ${f.file}`); })));
    const kept = new Set(store.outing.kept || []);
    const { rows, words } = leans(fa, fb);
    fill(
      spine,
      locator,
      el('div.keys.zooms', { role: 'group', 'aria-label': 'Size' }, [[0, 'All'], [1, '1:1'], [2, '2:1']].map(([z, text]) => key(text, () => zoomTo(z), { class: 'alt', 'aria-pressed': String(state.zoom === z), 'data-focus': `zoom-${z}` }))),
      state.looking ? el('p.cap', { role: 'status' }, 'Finding the edges of the parts.') : '',
      state.parts?.none ? el('p.cap', {}, state.parts.none) : '',
      el('div.seal-row', { role: 'group', 'aria-label': 'Edge that parts the frames' }, KINDS.map(([kind, word]) => el('button', { type: 'button', 'aria-pressed': String(state.edge === kind), disabled: !(state.parts?.shares?.[kind] > 0.005), 'data-focus': `edge-${kind}`, onclick: () => { state.edge = state.edge === kind ? '' : kind; layMask(); drawSpine(); }, html: `${sealSvg(word, 24)}<span>${word}</span>` }))),
      chooser('a', 'Outside the edge'),
      chooser('b', 'Inside'),
      el('ul.leans', {}, rows.map((r) => el('li', { 'aria-label': r.words }, el('b', { class: r.way < 0 ? 'won' : '' }, r.left), el('span', {}, r.name), el('b', { class: r.way > 0 ? 'won' : '' }, r.right), el('i', { style: r.way <= 0 ? `right:50%;width:${50 * Math.abs(r.way)}%` : `left:50%;width:${50 * r.way}%`, class: r.way < 0 ? 'to-left' : r.way > 0 ? 'to-right' : '' })))),
      el('p', {}, words),
      el(
        'div.keys',
        {},
        [[state.a, fa], [state.b, fb]].map(([path, f]) => key(kept.has(path) ? `${sayTime(f) || f.file} is kept` : `Keep ${sayTime(f) || f.file}`, () => keep(path), { class: 'alt', 'aria-pressed': String(kept.has(path)), 'data-focus': `keep-${path}` })),
        key('Finish the better', () => app.goTool('finish', { folder: state.folder, picture: fa.rank < fb.rank ? state.a : state.b }), { class: 'act', 'data-focus': 'finish' }),
      ),
    );
    place();
  }

  load();
  return {
    hint: 'Two frames in one picture, parted along the edge of a part. Touch a seal for another edge.',
    moved: load,
    redraw: () => place(),
    changed: () => (state.a ? drawSpine() : null),
    key: (event) => (state.a && !event.target.closest?.('select') ? keys(event) : null),
    leave() {
      stop?.abort();
      urls.forEach(URL.revokeObjectURL);
    },
  };
}
