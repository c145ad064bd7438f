// The axis page of There: number, picture, parts, panel, and the axis itself.

import { betweenTouches, el, fill, key, marks } from '../dom.js';
import { glyph, nameOfKind, sealOfKind, sealSvg } from '../axis/marks.js';
import { mountAxis } from '../axis/axis.js';
import { clampThird, dialOf, say as sayTime, sayThird, thirdOf } from '../axis/scale.js';
import { holdsAt, nearestWindow, sayWindow, stopOf, valueAt } from '../axis/lane.js';
import { mountPicture } from '../components/picture.js';
import { createLayers } from '../components/picture-layers.js';
import { panelSheet } from '../components/panel-sheet.js';
import { sidePanel, filterWords, fLabel } from '../components/side.js';
import { wishSheet } from '../components/wish-sheet.js';
import { openSheet } from '../components/sheet.js';
import { frameGap } from '../components/frame-gap.js';
import { viewKeys } from '../components/view-keys.js';
import { tour } from '../components/tour.js';
import { viewerOf } from '../components/viewer.js';
import { readingOf } from '../components/meter.js';
import { largeRegions, parseWish, readable, standingNotes, wishWords } from '../logic/parts.js';

const TOOLS = ['drifting', 'swaying', 'fixed', 'flowing'];

export function showAxisPage(host, app) {
  const { store, go, scene, say } = app;
  const s = scene.state;
  let panel = 'reach';
  let tool = null;
  let lines = false;
  let numbers = false;
  let clipped = false;
  const layers = createLayers(scene);
  let built = scene.model();
  const now = el('section.now', { 'aria-label': 'The chosen time' });
  const pictureHost = el('section');
  const tags = el('section.tags', { 'aria-label': 'Parts' });
  const side = el('section.side', { 'aria-label': 'Settings' });
  const axisHost = el('section', { 'aria-label': 'Time axis' });
  const foot = el('div.foot-bar');
  const more = el('section.more-keys', { 'aria-label': 'Picture and settings' });
  const notes = el('section.notes', { 'aria-label': 'Notes' });
  host.classList.add('axis-page');
  fill(host, el('h1.unseen', {}, 'There: the time axis'), el('div.stage', {}, now, pictureHost, tags, side), axisHost, foot, more, notes);
  const picture = mountPicture(pictureHost, (what, detail) => (what === 'part' ? select(detail.id) : addStroke(detail)));
  const axis = mountAxis(axisHost, (what, detail) => {
    if (what === 'third') {
      setThird(detail.third);
    } else if (what === 'settle') {
      settle();
    } else if (what === 'wish') {
      openWish(detail.id);
    } else if (what === 'bag') {
      setThird(clampThird(thirdOf(detail.seconds)));
      settle(detail);
    }
  });

  const phone = () => innerWidth <= 700 || innerHeight <= 500;
  const narrow = () => innerWidth < 1200 || phone();
  const form = () => (phone() ? 'phone' : innerWidth < 1200 || innerHeight < 820 ? 'low' : 'desk');
  const night = () => document.body.dataset.light === 'night';

  let asked = 0;
  let frame = 0;

  /** Follows the handle: picture and axis in the next frame of the screen, however many moves came before it. */
  function setThird(third) {
    s.third = third;
    scene.pictures.aim(third);
    asked = asked || performance.now();
    frame = frame || requestAnimationFrame(() => {
      frame = 0;
      built = scene.model();
      showPicture();
      drawAxis();
      drawNow();
      performance.measure('follow', { start: asked, end: performance.now() });
      asked = 0;
      tagsSoon();
    });
  }

  let tagTimer = 0;
  function tagsSoon() {
    clearTimeout(tagTimer);
    tagTimer = setTimeout(drawTags, 80);
  }

  function settle(wanted) {
    go({ third: s.third }, true);
    s.choice = 0;
    scene.solve().then(() => {
      if (wanted) {
        const i = s.settings?.choices.findIndex((c) => c.filters.join() === wanted.filters.join() && Math.abs(c.fNumber - wanted.fNumber) < 0.06 * wanted.fNumber);
        s.choice = Math.max(0, i ?? 0);
        drawAll();
      }
    }).catch((error) => say(error.message));
  }

  function editView(change, options) {
    const { id } = s.view;
    store.edit((outing) => change(outing.views.find((v) => v.id === id)), options);
    s.view = store.outing.views.find((v) => v.id === id);
  }

  function setWish(id, text) {
    editView((view) => {
      view.wishes = { ...view.wishes };
      if (text) {
        view.wishes[id] = text;
      } else {
        delete view.wishes[id];
      }
    });
    drawAll();
    scene.weigh().then(scene.solve).catch((error) => say(error.message));
  }

  function openWish(id) {
    const region = s.measured.regions.find((r) => r.id === id);
    wishSheet(region, nameOfKind(region.kind), s.strips?.find((q) => q.id === id), s.view.wishes?.[id], (text) => setWish(id, text), night());
  }

  function select(id) {
    s.selected = s.selected === id ? null : id;
    const region = s.measured.regions.find((r) => r.id === id);
    if (s.selected && s.shown[region.kind] !== id && largeRegions(s.measured).filter((r) => r.kind === region.kind).length > 1) {
      s.shown = { ...s.shown, [region.kind]: id };
      scene.restrip();
    }
    drawAll();
  }

  function addStroke({ kind, points }) {
    editView((view) => {
      view.strokes = [...(view.strokes || []), { kind, points }];
    });
    scene.stroked();
  }

  function correct() {
    tool = tool ? null : 'flowing';
    host.classList.toggle('correcting', Boolean(tool));
    drawAll();
    window.scrollTo({ top: 0 });
    if (tool) {
      pictureHost.focus();
    }
  }

  function showPicture() {
    const one = scene.pictures.at(s.third);
    picture.update({
      size: [s.measured.width, s.measured.height],
      parts: largeRegions(s.measured).filter((r) => r.areaFraction > 0.02),
      selected: s.selected,
      outline: layers.outline(),
      strokes: s.view.strokes || [],
      horizon: s.measured.horizon,
      lines, tool,
      bare: phone() && !s.selected,
      note: layers.note(one, clipped),
      masks: layers.masks(one, tool, clipped),
      laidByShow: true,
    });
    picture.show(one);
    axisHost.dataset.node = one ? String(one.node) : '';
  }

  function drawAxis() {
    const width = Math.max(320, axisHost.clientWidth || host.clientWidth || innerWidth);
    axis.update(built.model, { width, form: form(), night: night() });
  }

  function drawNow() {
    const { model, verdict } = built;
    const t = dialOf(s.third);
    const unit = t.unit === 's' ? (t.number === '1' ? 'second' : 'seconds') : t.number === '1' ? 'minute' : 'minutes';
    const window = nearestWindow(model);
    const sure = window?.sure ? sayWindow(window.sure) : '';
    const likely = sure && !sure.startsWith('past') ? `sure ${sure}` : window ? 'sure nowhere here' : '';
    fill(
      now,
      el(`div.time${t.number.length > 3 ? '.long' : ''}`, { 'data-time': sayThird(s.third) }, t.number),
      el('div.unit', {}, unit),
      el(`div.verdict.${verdict.state}${verdict.state === 'holds' && !verdict.sure ? '.unsure' : ''}`, { role: 'status' }, el('span', {}, verdict.words)),
      window ? el('p.window', {}, 'Window ', el('b', {}, sayWindow(window)), el('br'), likely) : '',
      el(
        'div.keys.thirds',
        {},
        key('− ⅓', () => { setThird(clampThird(s.third - 1)); settle(); }, { 'aria-label': 'a third of a stop shorter', 'data-focus': 'shorter' }),
        key('+ ⅓', () => { setThird(clampThird(s.third + 1)); settle(); }, { 'aria-label': 'a third of a stop longer', 'data-focus': 'longer' }),
      ),
    );
  }

  /** What else can be done with the picture. */
  const pictureKeys = () => [
    key('Correct', correct, { class: 'alt', 'data-focus': 'correct', title: 'C: stroke a part on the picture' }),
    key('Level', () => { lines = !lines; showPicture(); drawTags(); }, { class: 'alt', 'aria-pressed': String(lines), 'data-focus': 'level', title: 'L: level line and thirds' }),
    key('Lost light', () => { clipped = !clipped; showPicture(); drawTags(); }, { class: 'alt', 'aria-pressed': String(clipped), 'data-focus': 'clipped', title: 'B: where light is burnt or black' }),
    key('1:1', () => viewerOf(app, scene), { class: 'alt', 'data-focus': 'viewer', title: 'Every pixel of this time' }),
  ];

  /** On small screens the keys of the picture and the panel stand under the axis. */
  function drawMore() {
    fill(more, narrow() && !tool ? [el('div.keys', {}, pictureKeys(), phone() ? [['meter', 'Meter'], ['leave', 'Leave by']].map(([name, text]) => key(text, () => panelSheet(name, text, panelState, actions), { class: 'alt', 'data-focus': `sheet-${name}` })) : '')] : '');
  }

  function drawTags() {
    drawMore();
    if (phone() && !tool) {
      fill(tags);
      return;
    }
    if (tool) {
      fill(
        tags,
        el('h2', {}, 'Stroke with a part'),
        el('div.tools', { role: 'group', 'aria-label': 'Part to stroke with' }, TOOLS.map((kind) =>
          el(`button${tool === kind ? '.on' : ''}`, { type: 'button', 'aria-pressed': String(tool === kind), 'data-focus': `tool-${kind}`, onclick: () => { tool = kind; drawAll(); pictureHost.focus(); } }, marks(sealSvg(sealOfKind(kind), 24)), nameOfKind(kind)))),
        el('p.cap', {}, `Draw it on the picture where it belongs; rows mark what counts as ${nameOfKind(tool).toLowerCase()}. One stroke is often enough.${phone() ? '' : ' Arrow keys and space draw too.'}`),
        el('div.keys', {}, key('Take all back', () => { editView((view) => { view.strokes = []; }); scene.stroked(); }, { class: 'alt', disabled: !(s.view.strokes || []).length }), key('Done', correct, { class: 'act', 'data-focus': 'strokes-done' })),
      );
      return;
    }
    const k = s.third / 3;
    fill(
      tags,
      built.model.parts.map((part) => {
        const word = part.words.find((w) => k >= stopOf(w.fromSeconds) - 1e-9 && k < stopOf(w.toSeconds)) || part.words.at(-1);
        const holds = !part.wish || holdsAt(part.spans, k);
        const left = part.left.length ? `${(100 * valueAt(part.left, 'left', k)).toFixed(1)} % left, likely ${(100 * valueAt(part.left, 'low', k)).toFixed(1)}–${(100 * valueAt(part.left, 'high', k)).toFixed(1)}` : driftWords(part, k);
        return el(
          `button.tag${s.selected === part.id ? '.on' : ''}`,
          { type: 'button', onclick: () => { numbers = !numbers || s.selected !== part.id; select(part.id); }, 'aria-pressed': String(s.selected === part.id), 'data-focus': `tag-${part.id}` },
          el('span.who', {}, marks(sealSvg(part.seal, 24)), part.name),
          el('b', {}, word ? word.word : ''),
          el('span.what', {}, s.selected === part.id && numbers ? left : [marks(glyph(word ? word.word : 'none', 30, 14)), part.wish ? (holds ? '' : el('b', {}, 'not wished')) : 'no wish']),
        );
      }),
      narrow() ? '' : el('div.keys.small', {}, pictureKeys()),
    );
  }

  function driftWords(part, k) {
    const region = s.measured.regions.find((r) => r.id === part.id);
    const v = region.driftPixelsPerSecond;
    return v ? `${((Math.hypot(v[0], v[1]) * Math.pow(2, k) * 100) / s.measured.width).toFixed(1)} % of the width` : region.kind === 'fixed' ? 'stands' : 'drift not told';
  }

  const actions = {
    panel: (name) => { panel = name; drawSide(); },
    kit: () => go({ page: 'kit', view: null, part: null, step: null, third: null }),
    toShot: () => go({ page: 'there', view: s.view.id, part: 'shot', step: store.outing.shot?.step || 1, third: s.third }),
    pair: () => { editView((view) => { view.pair = !view.pair; }); say(s.view.pair ? 'A pair: the test frame without the filter is kept beside the shot.' : 'One frame, no pair.'); drawSide(); },
    choose: (i) => { s.choice = i; drawAll(); },
    goThird: (third) => { setThird(clampThird(third)); settle(); },
    read: (reading) => { store.edit((o) => { o.light = { ...o.light, readings: [...(o.light?.readings || []), readingOf(reading, Date.now())].slice(-20) }; }); panel = 'reach'; scene.solve(); },
    rate: (stops) => { store.edit((o) => { o.light = { ...o.light, stopsPerMinute: stops }; }); scene.solve(); },
    bias: (stops) => { store.edit((o) => { o.light = { ...o.light, biasStops: stops }; }); scene.solve(); },
    leave: (clock) => { store.edit((o) => { o.guard = { ...o.guard, leaveBy: clock }; }); drawAll(); },
    packing: (minutes) => { store.edit((o) => { o.guard = { ...o.guard, packingMinutes: minutes }; }); drawAll(); },
    tide: (word) => { store.edit((o) => { o.guard = { ...o.guard, water: word }; }); drawAll(); },
  };

  const panelState = () => ({ ...s, ...built, outing: store.outing, now: Date.now() });

  function drawSide() {
    fill(side, sidePanel({ ...panelState(), panel }, actions));
  }

  function drawFoot() {
    if (!phone()) {
      fill(foot);
      return;
    }
    const { model, verdict } = built;
    const c = scene.current();
    const third = model.limits.leaveSeconds > 0.13 ? Math.floor(3 * Math.log2(model.limits.leaveSeconds)) : null;
    const main =
      verdict.state === 'late'
        ? key(third !== null && third >= -9 ? ['Go to', el('br'), sayThird(third)] : 'Leave now', () => (third === null ? actions.toShot() : actions.goThird(third)), { class: 'go' })
        : verdict.state === 'clash'
          ? key(['Three', el('br'), 'ways out'], () => panelSheet('reach', 'Ways out', panelState, actions), { class: 'go' })
          : c
            ? key([`Use ${filterWords(c.filters)}`, el('br'), `${fLabel(c.fNumber)}, ISO ${c.iso}`], actions.toShot, { class: 'go' })
            : key(['To the', el('br'), 'shot'], actions.toShot, { class: 'go' });
    fill(foot, key('− ⅓', () => { setThird(clampThird(s.third - 1)); settle(); }, { 'aria-label': 'a third of a stop shorter' }), main, key('+ ⅓', () => { setThird(clampThird(s.third + 1)); settle(); }, { 'aria-label': 'a third of a stop longer' }));
  }

  function gapSheet() {
    const close = openSheet('How far apart are the frames?', () => frameGap(s.view.framesPerSecond, (rate) => { close(); editView((view) => { view.framesPerSecond = rate; }); scene.open(s.view); }));
  }

  function drawNotes() {
    fill(
      notes,
      s.reading ? el('p', { role: 'status' }, el('b', {}, `${s.reading.stage}, ${Math.round(100 * s.reading.fraction)} %`)) : '',
      s.problem ? el('p.fault', { role: 'alert' }, el('b', {}, 'Not done. '), s.problem.message) : '',
      built.model.parts.filter((p) => p.note).map((p) => el('p', {}, el('b', {}, `${p.name}: `), readable(p.note))),
      standingNotes(s.measured, s.shown).map((text) => el('p', {}, text)),
      s.measured.warnings.map((text) => el('p', {}, readable(text))),
      s.view.framesPerSecond ? el('p', {}, `One frame every ${sayTime(1 / s.view.framesPerSecond)}, as you said. `, key('Change', gapSheet, { class: 'link' })) : '',
      viewKeys(app, s.view),
    );
  }

  function drawAll() {
    built = scene.model();
    pictureHost.dataset.fit = phone() && !tool ? 'cover' : 'contain';
    // Corrected whole: no part may lie outside of what is shown.
    pictureHost.style.aspectRatio = phone() && tool ? `${s.measured.width} / ${s.measured.height}` : '';
    showPicture();
    drawAxis();
    drawNow();
    drawTags();
    drawSide();
    drawFoot();
    drawNotes();
  }

  drawAll();
  const drawing = betweenTouches(host, drawAll);
  const noting = betweenTouches(host, drawNotes);
  document.fonts?.ready.then(() => host.isConnected && drawAll());
  const endTour = tour(store, host);

  return {
    tell(what) {
      if (what === 'picture' || what === 'parts') {
        showPicture();
      } else if (what === 'progress') {
        noting.soon();
      } else {
        drawing.soon();
      }
    },
    redraw: drawing.soon,
    tick(time) {
      if (store.outing.guard?.leaveBy && Math.floor(time / 1000) % 10 === 0) {
        built = scene.model();
        drawAxis();
        drawNow();
        drawFoot();
      }
    },
    key(event) {
      if (tool && pictureHost.contains(event.target)) {
        return;
      }
      const part = built.model.parts[Number(event.key) - 1];
      if (axis.key(event)) {
        event.preventDefault();
      } else if (part) {
        const region = s.measured.regions.find((r) => r.id === part.id);
        const words = [null, ...wishWords(region).filter((w) => w.likely.length).map((w) => w.word)];
        const at = words.indexOf(parseWish(s.view.wishes?.[part.id]).word);
        setWish(part.id, words[(at + 1) % words.length]);
      } else if (event.key === 'l' || event.key === 'L') {
        lines = !lines;
        showPicture();
        drawTags();
      } else if (event.key === 'b' || event.key === 'B') {
        clipped = !clipped;
        showPicture();
        drawTags();
      } else if (event.key === 'c' || event.key === 'C') {
        correct();
      } else if (event.key === 'Escape' && tool) {
        correct();
      } else if (event.key === 'Enter' && (event.target === document.body || event.target === axis.element)) {
        actions.toShot();
      }
    },
    leave() {
      cancelAnimationFrame(frame);
      clearTimeout(tagTimer);
      drawing.end();
      noting.end();
      endTour();
    },
  };
}
