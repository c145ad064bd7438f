// Blend: a shutter time for every part, out of one burst or clip. The seals are the tools: stroke a part on where it
// belongs, stroke with another to take away.

import { el, fill, key } from '../dom.js';
import * as engine from '../engine.js';
import { mountPicture, outlineOf } from '../components/picture.js';
import { progressBox } from '../components/progress.js';
import { nameOfKind, sealOfKind, sealSvg } from '../axis/marks.js';
import { sayThird, say as sayTime } from '../axis/scale.js';
import { burstsOf, nameOf, pathIn, stemOf } from '../logic/after.js';
import { STROKES, documentOf, edgeNear, edgePixels, firstChoice, longestThird, shortestThird, wordsOf } from '../logic/blend.js';
import { clamp } from '../logic/finish.js';
import { make, sortCard } from './desk.js';
import { FIRST, LAST, blendRows } from './blend-rows.js';
import { lookSheet } from './look.js';
import { pulledEdge } from './pulled-edge.js';

const ORDER = ['drifting', 'swaying', 'fixed', 'flowing'];
/** A step softened by a normal distribution: its width from 10 to 90 % in standard deviations. */
const STEP_SIGMAS = 2.563;

export function open(host, app) {
  const { store } = app;
  const state = { id: '', frames: null, measured: null, map: null, strips: {}, choices: {}, tool: null, wide: 'twig', selected: null, fault: '', working: null, done: null, longest: 0, shortest: FIRST };
  const bitmaps = new Map();
  let stop = null;
  let view = null;
  let composing = 0;
  const parts = {};

  const saved = () => store.outing.blends?.[state.id] || {};
  const strokes = () => saved().strokes || viewOf()?.strokes || [];
  const viewOf = () => (store.outing.views || []).find((v) => v.frames === state.frames?.path);
  const kinds = () => ORDER.filter((kind) => state.measured?.regions.some((r) => r.kind === kind));
  const edges = () => ({ ...saved().edges, ...(state.edge ? { [state.selected]: state.edge } : {}) });
  const choiceOf = (kind) => (state.pull?.kind === kind ? state.pull.choice : saved().choices?.[kind]) || firstChoice(kind, state.longest);

  function edit(change) {
    store.edit((outing) => {
      outing.blends = outing.blends || {};
      const at = { ...outing.blends[state.id] };
      change(at);
      outing.blends[state.id] = at;
    });
  }

  async function start() {
    const { frames, folder, burst } = app.asked();
    const id = frames || (folder && burst ? `${folder}#${burst}` : '');
    if (!id) {
      state.id = '';
      const inputs = store.whole.inputs;
      fill(host, el('div.choose', {}, el('h1', {}, 'Blend: which frames?'), el('p', {}, 'One burst or clip gives every part its own shutter time: silky water under a sharp sky, and the branch from the one frame in the lull. No single exposure can.'), inputs.map((i) => el('div.choose-row', {}, el('div', {}, el('b', {}, i.path), el('span.cap', {}, i.clip ? 'clip' : `${i.frames} frames`)), el('div.keys', {}, key('Blend', () => app.goTool('blend', { frames: i.path }), { class: 'act', 'data-focus': `blend-${i.path}`, 'aria-label': `Blend ${i.path}` })))), inputs.length ? '' : el('p', {}, 'No clip and no folder of frames is here yet. Copy a burst into a folder of the outing.')));
      return;
    }
    if (id === state.id) {
      return;
    }
    Object.assign(state, { id, frames: null, measured: null, map: null, strips: {}, tool: null, selected: null, fault: '', done: null, working: null });
    bitmaps.clear();
    view = null;
    stop?.abort();
    stop = new AbortController();
    const progress = progressBox('Measuring the parts', () => stop.abort());
    fill(host, el('div.after-wait', {}, el('h1', {}, `Blend ${nameOf(id)}`), progress.box));
    try {
      if (frames) {
        const known = (store.outing.views || []).find((v) => v.frames === frames);
        state.frames = { path: frames, ...(known?.framesPerSecond ? { fps: known.framesPerSecond } : {}) };
      } else {
        const card = await sortCard(folder, { signal: stop.signal, onProgress: progress.update });
        const [group, number] = burst.split('-').map(Number);
        const found = burstsOf(card.groups[group] || { frames: [] }).find((b) => b.number === number);
        if (!found) {
          throw new Error(`This burst is not in ${folder} any more; sort it again.`);
        }
        state.frames = { files: found.frames.map((f) => pathIn(folder, f.file)) };
      }
      await measure(progress.update);
    } catch (error) {
      state.id = '';
      fill(host, el('div.empty.fault', { role: 'alert' }, el('h1', {}, 'Nothing to blend'), el('p', {}, error.name === 'AbortError' ? 'Stopped. Nothing was changed.' : error.message), key('Other frames', () => app.goTool('blend'), { class: 'act' })));
    }
  }

  async function measure(onProgress) {
    const id = state.id;
    const whole = await engine.measure(state.frames, strokes(), { signal: stop.signal, onProgress });
    const map = await mapOf(whole);
    if (id !== state.id) {
      return;
    }
    const { answer } = whole;
    state.measured = answer;
    state.map = map;
    state.longest = clamp(longestThird(answer.seconds), FIRST, LAST);
    state.shortest = clamp(shortestThird(answer.seconds / answer.frames), FIRST, state.longest);
    if (view) {
      drawAll();
    } else {
      mount();
    }
    await compose();
    await strips();
  }

  async function mapOf({ answer, blobs }) {
    const map = blobs.regions ? await engine.bytes(blobs.regions) : null;
    return { map, width: answer.mapWidth, height: answer.mapHeight, kinds: answer.regions.map((r) => r.kind) };
  }

  async function strips() {
    const largest = kinds().map((kind) => state.measured.regions.find((r) => r.kind === kind));
    const crops = largest.filter((r) => r.crop).map((r) => ({ id: r.kind, ...r.crop }));
    try {
      const whole = await engine.strips(state.frames, strokes(), crops, 3, { signal: stop.signal, ahead: true });
      for (const s of whole.answer.strips) {
        state.strips[s.id] = { ...s, href: whole.blobs[s.id], firstThird: whole.answer.firstThird };
      }
      drawRows();
    } catch (error) {
      if (error.name !== 'AbortError') {
        state.fault = error.message;
        drawSide();
      }
    }
  }

  function mount() {
    parts.picture = el('div', { 'data-fit': 'contain' });
    parts.side = el('div.blend-side');
    parts.rows = el('div.blend-rows');
    parts.head = el('div.tool-head');
    fill(host, parts.head, el('div.blend', {}, parts.picture, parts.side), parts.rows);
    view = mountPicture(parts.picture, (name, detail) => {
      if (name === 'stroke') {
        edit((at) => { at.strokes = [...strokes(), detail]; });
        again();
      } else if (name === 'part') {
        const region = state.measured.regions.find((r) => r.id === detail.id);
        state.selected = state.selected === region.kind ? null : region.kind;
        drawAll();
      }
    });
    parts.edge = pulledEdge(parts.picture, pullEdge);
    drawAll();
  }

  /** The edge of the selected part is pulled wider; once it is let go, it is kept. */
  function pullEdge(edge, over) {
    state.edge = over ? null : edge;
    if (over) {
      edit((at) => { at.edges = { ...at.edges, [state.selected]: edge || undefined }; });
      state.done = null;
      drawAll();
    } else {
      drawEdge(edge);
    }
    recompose();
  }

  function drawEdge(edge = edges()[state.selected] || 0) {
    const { map, width, height, kinds: of } = state.map;
    const region = state.measured.regions.find((r) => r.kind === state.selected && r.place);
    const is = (x, y) => x >= 0 && y >= 0 && x < width && y < height && of[map[y * width + x]] === state.selected;
    const place = region && map && !state.tool ? edgeNear(is, width, height, region.place) : null;
    parts.edge.update(place && { view, place, edge, pixels: state.measured.width, name: nameOfKind(state.selected).toLowerCase() });
  }

  async function again() {
    parts.side.classList.add('searching');
    try {
      // the parts at once, then what is measured of them
      const id = state.id;
      const map = await mapOf(await engine.parts(state.frames, strokes(), { signal: stop.signal }));
      if (id !== state.id) {
        return;
      }
      state.map = map;
      drawAll();
      parts.side.classList.add('searching');
      recompose();
      bitmaps.clear();
      await measure(() => {});
    } catch (error) {
      if (error.name !== 'AbortError') {
        state.fault = error.message;
        drawSide();
      }
    }
  }

  const third = (choice) => (choice.way === 'time' ? choice.third : choice.way === 'lull' ? state.shortest : state.longest);

  async function bitmapOf(node) {
    const at = clamp(node, FIRST, LAST);
    if (!bitmaps.has(at)) {
      bitmaps.set(at, engine.preview(state.frames, strokes(), at, { signal: stop.signal }).then((p) => p.bitmap));
    }
    return bitmaps.get(at);
  }

  /** The picture as it will be, at the size of the screen: each part from the picture of its time. */
  async function compose() {
    const mine = ++composing;
    const { map, width, height } = state.map;
    const base = await bitmapOf(state.longest);
    const canvas = new OffscreenCanvas(base.width, base.height);
    const pen = canvas.getContext('2d');
    pen.drawImage(base, 0, 0);
    const pulled = edges();
    // parts with a pulled edge last: it lies over its neighbours
    for (const kind of kinds().sort((a, b) => (pulled[a] || 0) - (pulled[b] || 0))) {
      const node = third(choiceOf(kind));
      if (!map || (node === state.longest && !pulled[kind])) {
        continue;
      }
      const bitmap = await bitmapOf(node);
      const layer = new OffscreenCanvas(base.width, base.height);
      const over = layer.getContext('2d');
      over.filter = `blur(${Math.max(2, ((pulled[kind] || 0) * base.width) / STEP_SIGMAS).toFixed(1)}px)`;
      over.drawImage(maskOf(kind, map, width, height), 0, 0, base.width, base.height);
      over.filter = 'none';
      over.globalCompositeOperation = 'source-in';
      over.drawImage(bitmap, 0, 0);
      pen.drawImage(layer, 0, 0);
    }
    if (mine === composing) {
      view.update({ note: '', laidByShow: true });
      view.show({ bitmap: canvas.transferToImageBitmap() });
    }
  }

  /** The same, not waited for: who leaves the page stops it, and that is no fault. */
  function recompose() {
    compose().catch((error) => {
      if (error.name !== 'AbortError') {
        state.fault = error.message;
        drawSide();
      }
    });
  }

  function maskOf(kind, map, width, height) {
    const canvas = new OffscreenCanvas(width, height);
    const pen = canvas.getContext('2d');
    const pixels = pen.createImageData(width, height);
    for (let i = 0; i < width * height; i++) {
      pixels.data[4 * i + 3] = state.map.kinds[map[i]] === kind ? 255 : 0;
    }
    pen.putImageData(pixels, 0, 0);
    return canvas;
  }

  function outline() {
    const { map, width, height } = state.map;
    if (!state.selected || !map) {
      return null;
    }
    const one = map.map((index) => (state.map.kinds[index] === state.selected ? 1 : 0));
    return outlineOf(one, width, height, 1);
  }

  function choose(kind, choice) {
    const next = choice.way === 'time' ? { way: 'time', third: clamp(choice.third, state.shortest, state.longest) } : choice;
    edit((at) => { at.choices = { ...Object.fromEntries(kinds().map((k) => [k, choiceOf(k)])), [kind]: next }; });
    state.done = null;
    drawAll();
    recompose();
  }

  async function run() {
    const cancel = new AbortController();
    const progress = progressBox('Blending at full size', () => cancel.abort());
    Object.assign(state, { working: progress.box, fault: '' });
    drawSide();
    try {
      const inputs = state.frames.files || [state.frames.path];
      const choices = Object.fromEntries(kinds().map((k) => [k, choiceOf(k)]));
      const answer = await make({
        command: 'blend', inputs, name: `blend-${stemOf(inputs[0])}`,
        options: state.frames.fps ? { fps: state.frames.fps } : {},
        documents: { parts: documentOf(choices, edges()), ...(strokes().length ? { strokes: { schema: 'strokes/1', strokes: strokes() } } : {}) },
        outputs: { masks: true },
      }, { signal: cancel.signal, onProgress: progress.update });
      if (answer.conflict) {
        state.fault = `${answer.conflict.text} ${answer.ways.map((w) => w.text).join(' ')}`;
      } else {
        state.done = answer;
      }
    } catch (error) {
      state.fault = error.name === 'AbortError' ? 'Stopped. Nothing was written.' : error.message;
    }
    state.working = null;
    drawSide();
    parts.side.querySelector('.act')?.focus({ preventScroll: true });
  }

  function drawSide() {
    const list = kinds();
    const { done } = state;
    fill(
      parts.side,
      el('h2', {}, 'Stroke with a part'),
      el('div.seal-row', { role: 'group', 'aria-label': 'Stroke with a part' }, ORDER.map((kind) => el('button', { type: 'button', 'aria-pressed': String(state.tool === kind), 'data-focus': `tool-part-${kind}`, onclick: () => { state.tool = state.tool === kind ? null : kind; drawAll(); }, html: `${sealSvg(sealOfKind(kind), 24)}<span>${nameOfKind(kind).toLowerCase()}</span>` }))),
      state.tool
        ? [
          el('p.cap', {}, 'Stroke it on where it belongs. To take away, stroke with the part that is there.'),
          el('h2', {}, 'As wide as a'),
          el('div.seal-row.widths', { role: 'group', 'aria-label': 'As wide as a' }, Object.entries(STROKES).map(([word, share]) => el('button', { type: 'button', 'aria-pressed': String(state.wide === word), 'data-focus': `wide-${word}`, onclick: () => { state.wide = word; drawAll(); }, html: `<svg width="72" height="22" viewBox="0 0 72 22" aria-hidden="true"><path d="M4 14C18 4 30 18 44 10S62 8 68 10" fill="none" stroke="currentColor" stroke-width="${(2 + 190 * share).toFixed(1)}"/></svg><span>${word}</span>` }))),
          el('p.cap', {}, STROKES[state.wide] ? 'Paints where it lies, and nothing else.' : 'Points at a part: what is like it comes along.'),
        ]
        : el('p.cap', {}, state.selected ? 'The knob on its edge pulls the edge wider, arrow keys too.' : 'Parts are those that were measured. A few strokes correct them; touch a seal on the picture to pull its edge.'),
      strokes().length ? el('div.keys', {}, key('Take the last stroke back', () => { edit((at) => { at.strokes = strokes().slice(0, -1); }); again(); }, { class: 'alt', 'data-focus': 'unstroke' })) : '',
      el('h2', {}, 'To check'),
      el('ul.told', {}, checks(list).map((c) => el('li', {}, c))),
      state.fault ? el('p.fault', { role: 'alert' }, state.fault) : '',
      state.working || '',
      done ? el('p.result', { role: 'status' }, el('b', {}, done.file), ` ${done.width} × ${done.height}, from ${done.frames} frames.`, done.layers.map((l) => el('span.layer-line', {}, `${l.regions.map((r) => nameOfKind(r.replace(/-\d+$/, '')).toLowerCase()).filter((n, i, all) => all.indexOf(n) === i).join(', ')}: ${l.of === 'lull' ? `frame ${l.number}, the lull` : l.frames === 1 ? 'one frame' : `${l.frames} frames`}${l.gaps?.count ? `, gaps ${sayTime(l.gaps.seconds)}` : ''}`)), (done.warnings || []).map((w) => el('span.note', {}, w))) : '',
      state.working
        ? ''
        : el('div.keys', {}, done ? [key('Finish it', () => app.goTool('finish', { picture: done.file }), { class: 'act', 'data-focus': 'to-finish' }), key('Every pixel', () => lookSheet(app, done.file), { class: 'alt', 'data-focus': 'pixels' })] : key('Write 16-bit TIFF', run, { class: 'act', 'data-focus': 'run' })),
    );
    parts.side.classList.remove('searching');
  }

  function checks(list) {
    const said = [];
    const water = list.includes('flowing') && choiceOf('flowing');
    if (list.includes('swaying') && choiceOf('swaying').way === 'lull') {
      said.push('Branch from the lull: one frame, with the grain of one frame.');
    }
    if (water?.way === 'time') {
      said.push(`Water at ${sayThird(water.third)}: where it meets rock, foam is an average, as in one exposure.`);
    }
    Object.entries(edges()).filter(([kind, edge]) => edge && list.includes(kind)).forEach(([kind, edge]) => said.push(`Edge of ${nameOfKind(kind).toLowerCase()}: ${edgePixels(edge, state.measured.width)} px wide, over whatever lies beside it.`));
    said.push('Edges follow the picture; they are softer in the file than on this screen.');
    return said;
  }

  const drawRows = () => blendRows(parts.rows, { state, kinds, choiceOf, third, choose, recompose, drawAll });

  function drawAll() {
    const list = kinds();
    const different = new Set(list.map((k) => wordsOf(choiceOf(k)))).size;
    fill(parts.head, el('h1', {}, el('b', {}, `${list.length} ${list.length === 1 ? 'part' : 'parts'}, ${different} ${different === 1 ? 'time' : 'times'}`), ` from ${nameOf(state.frames.path || state.frames.files[0])}: ${state.measured.frames} frames, ${sayTime(state.measured.seconds)}; no time is longer`), el('div.keys', {}, key('Other frames', () => app.goTool('blend'), { class: 'alt', 'data-focus': 'another' })));
    const places = list.map((kind) => state.measured.regions.find((r) => r.kind === kind && r.place)).filter(Boolean);
    view.update({ parts: places, selected: places.find((p) => p.kind === state.selected)?.id || null, outline: outline(), tool: state.tool, wide: STROKES[state.wide], strokes: strokes(), label: 'The blend as it will be', note: view.shown ? '' : 'The picture comes.', size: [state.measured.width, state.measured.height] });
    drawEdge();
    drawSide();
    drawRows();
  }

  start();
  return {
    hint: 'Touch a time on a strip. Arrow keys move it by ⅓ stop.',
    moved: start,
    redraw: () => (view && state.measured ? (drawAll(), recompose()) : null),
    changed: () => (view && state.measured ? again() : null),
    leave: () => stop?.abort(),
  };
}
