// Draws the time axis as SVG text from a model of plain data; needs no document, so that a report can hold it too.
// The model is described in README.txt beside this file.

import { escapeText, glyph, sealPath, strokePath, swing } from './marks.js';
import { FIRST_STOP, LAST_STOP, clampThird, dialOf, fraction, plain, say, secondsOf } from './scale.js';
import { holdsAt, nearestWindow, stopOf, valueAt, verdict, windowThirds } from './lane.js';
import { layout } from './geometry.js';
import { bagRow, limitsRow, worthRow } from './rows.js';

const rect = (x, y, w, h, more) =>
  w > 0 ? `<rect x="${r(x)}" y="${r(y)}" width="${r(w)}" height="${r(h)}" ${more}/>` : '';
const r = (v) => Math.round(v * 10) / 10;
const DIGIT = 10.5; // width in pixels of a bold digit of the band

/**
 * @returns {{svg: string, layers: string[], width: number, height: number, at: object}} layers are the pieces of svg, one
 * over the other, so that those that did not change can stay; at is the layout, for overlays and pointers
 */
export function drawAxis(model, { width, form = 'desk', night = false, labels = false, uid = 'ax' }) {
  const k = stopOf(model.chosenSeconds);
  const chosenStop = Math.min(LAST_STOP, Math.max(FIRST_STOP, Math.round(k)));
  const at = layout(model.parts, width, form, chosenStop);
  const scene = { model, at, k, chosenStop, night, uid, phone: form === 'phone', verdict: verdict(model) };
  scene.leave = model.limits.leaveSeconds === null ? null : stopOf(Math.max(1e-3, model.limits.leaveSeconds));
  scene.lanes = model.windows.map((w) => lane(scene, w)).filter((l) => l.right > l.left);
  scene.frame = frameOf(scene);
  const top = [
    defs(scene),
    laneGround(scene),
    band(scene),
    ...model.parts.map((part, i) => strip(scene, part, i)),
    laneEdges(scene),
    water(scene),
    ...model.parts.map((part, i) => chosenPiece(scene, part, i)),
    chips(scene),
    clashBox(scene),
    bagRow(scene),
    form === 'phone' ? '' : worthRow(scene),
    limitsRow(scene),
    chosenFrame(scene),
    labels ? rowLabels(scene) : '',
  ];
  return { layers: top, svg: top.join(''), width, height: at.height, at };
}

/** The whole picture as one SVG element, for a page without scripts. */
export function axisSvg(model, options) {
  const drawn = drawAxis(model, { labels: true, ...options });
  const title = `Shutter time ${say(model.chosenSeconds)}: ${verdict(model).words}`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="time-axis" role="img" aria-label="${escapeText(title)}" ` +
    `width="${drawn.width}" height="${drawn.height}" viewBox="0 0 ${drawn.width} ${drawn.height}">${drawn.svg}</svg>`
  );
}

function lane(scene, w) {
  const { at, leave } = scene;
  const a = stopOf(w.fromSeconds);
  const b = stopOf(w.toSeconds);
  const end = leave === null ? b : Math.min(b, leave);
  const sure = w.sure ? { a: stopOf(w.sure.fromSeconds), b: Math.min(end, stopOf(w.sure.toSeconds)) } : null;
  const clip = (q) => Math.min(at.right, Math.max(at.left, q < -50 ? at.left : q > 50 ? at.right : at.x(q)));
  return {
    window: w, a, b, end, left: clip(a), right: clip(end),
    sureLeft: sure ? clip(sure.a) : clip(end), sureRight: sure ? clip(sure.b) : clip(end),
    openLeft: a < FIRST_STOP - 0.5, openRight: end > LAST_STOP + 0.5,
  };
}

const inLane = (scene, x) => scene.lanes.some((l) => x > l.left && x < l.right);

function frameOf({ at, phone, chosenStop }) {
  const left = at.x(chosenStop - 0.5) + at.cut;
  const right = at.x(chosenStop + 0.5) - at.cut;
  const wide = Math.max(right - left + 8, phone ? 72 : 0);
  const x = Math.min(Math.max((left + right) / 2 - wide / 2, at.left), at.right - wide);
  return { left, right, x, width: wide };
}

function defs({ model, at, uid }) {
  const veil = (part) => {
    if (!part.wish || !part.spans.length) {
      return '';
    }
    const share = (x) => Math.min(1, Math.max(0, (x - at.left) / (at.right - at.left)));
    const stop = (x, o) => `<stop offset="${share(x).toFixed(4)}" stop-color="var(--veil)" stop-opacity="${o}"/>`;
    let stops = '';
    let from = -99;
    part.spans.forEach((span, i) => {
      const a = stopOf(span.fromSeconds);
      const b = stopOf(span.toSeconds);
      const sure = part.sureSpans[i] || span;
      if (a > -50) {
        stops += stop(from < -50 ? at.left : at.x(from), 0.8) + stop(at.x(a), 0.8);
        stops += stop(Math.min(at.right, at.x(Math.max(a + 0.05, stopOf(sure.fromSeconds)))), 0);
      }
      if (b < 50) {
        stops += stop(at.x(Math.min(b - 0.05, stopOf(sure.toSeconds))), 0) + stop(at.x(b), 0.8);
        from = b;
      }
    });
    return `<linearGradient id="${uid}-veil-${part.seal}" gradientUnits="userSpaceOnUse" x1="${at.left}" x2="${at.right}" y1="0" y2="0">${stops}</linearGradient>`;
  };
  return (
    '<defs>' +
    `<pattern id="${uid}-hatch" width="7" height="7" patternUnits="userSpaceOnUse"><path d="M0 7L7 0M-1 1L1 -1M6 8L8 6M0 0L7 7" stroke="var(--ink)" stroke-width="1.6"/></pattern>` +
    `<pattern id="${uid}-flow" width="34" height="15" patternUnits="userSpaceOnUse"><path d="M0 8q8.5 -7 17 0t17 0" fill="none" stroke="var(--sea)" stroke-width="1.8"/></pattern>` +
    `<pattern id="${uid}-dots" width="6" height="4" patternUnits="userSpaceOnUse"><rect width="2" height="2" fill="var(--lane-dots)"/><rect x="3" y="2" width="2" height="2" fill="var(--lane-dots)"/></pattern>` +
    model.parts.map(veil).join('') +
    '</defs>'
  );
}

function laneGround({ lanes, at }) {
  return lanes
    .map((l) => rect(l.left, at.stripsTop, l.right - l.left, at.bagTop - at.stripsTop, 'fill="var(--lane)"'))
    .join('');
}

function band(scene) {
  const { at, model, night, lanes, uid, phone } = scene;
  const { bandTop: y, band: h } = at;
  let s = rect(at.left, y, at.right - at.left, h, 'fill="var(--band)"');
  if (night) {
    s += `<path d="M${at.left} ${y}H${at.right}M${at.left} ${y + h}H${at.right}" stroke="var(--line)" stroke-width="2"/>`;
  }
  for (const l of lanes) {
    s += rect(l.left, y, l.right - l.left, h, 'fill="var(--lane)"');
    s += rect(l.left, y, Math.min(l.sureLeft, l.right) - l.left, h, `fill="url(#${uid}-dots)"`);
    s += rect(Math.max(l.left, l.sureRight), y, l.right - Math.max(l.left, l.sureRight), h, `fill="url(#${uid}-dots)"`);
  }
  const clash = clashSpan(scene);
  if (clash) {
    s += rect(clash.left, y, clash.right - clash.left, h, 'fill="var(--sheet)"');
    s += rect(clash.left, y, clash.right - clash.left, h, `fill="url(#${uid}-hatch)"`);
  }
  const frame = scene.frame;
  const covered = (x, half) => x + half > frame.x - 4 && x - half < frame.x + frame.width + 4;
  const pale = (x) => inLane(scene, x) || (clash && x > clash.left && x < clash.right);
  for (let q = FIRST_STOP; q <= LAST_STOP; q++) {
    for (const d of [-1 / 3, 0, 1 / 3]) {
      const x = at.x(q + d);
      if (x >= at.left && x <= at.right && !covered(x, 0)) {
        s += `<path d="M${r(x)} ${y}v${d ? 6 : 10}" stroke="${pale(x) ? 'var(--lane-ink)' : 'var(--band-ink)'}" stroke-width="${d ? 1.2 : 2}"/>`;
      }
    }
  }
  const ends = chipPlaces(scene);
  let written = at.left; // so far, where the last number ends
  for (let q = FIRST_STOP; q <= LAST_STOP; q++) {
    const x = at.x(q);
    const t = dialOf(3 * q);
    const unit = q === 0 ? (phone ? 's' : ' s') : q === 6 ? (phone ? 'm' : ' min') : '';
    const number = q >= 6 ? String(Math.pow(2, q - 6)) : t.number;
    const half = phone ? 17 : unit ? 28 : 17;
    const hidden = covered(x, half) || ends.some((c) => x + half > c.x && x - half < c.x + c.width) || (phone && (q - FIRST_STOP) % 2);
    const tx = Math.max(x, at.left + (phone ? 21 : 0));
    const halfNumber = (DIGIT * (number.length + unit.length)) / 2;
    if (!hidden && tx - halfNumber >= written) {
      written = tx + halfNumber + DIGIT / 2;
      const hatched = clash && x > clash.left && x < clash.right;
      if (hatched) {
        s += rect(x - 18, y + h / 2 - 7, 36, 24, 'fill="var(--sheet)"');
      }
      // keeps the dots of a likely edge away from the number
      const rim = !hatched && inLane(scene, x) ? ' stroke="var(--lane)" stroke-width="6" paint-order="stroke"' : '';
      s += `<text x="${r(tx)}" y="${y + h - (phone ? 11 : 12)}" font-size="${phone ? 19 : 20}" font-weight="700" text-anchor="middle"${rim} fill="${pale(x) ? 'var(--lane-ink)' : 'var(--band-ink)'}">${number}<tspan font-size="${phone ? 19 : 14}" font-weight="600">${unit}</tspan></text>`;
    }
  }
  return s;
}

function clashSpan({ model, at }) {
  const clash = model.clash;
  if (!clash || !(clash.shorterSeconds > 0) || clash.longerSeconds === null) {
    return null;
  }
  const left = Math.max(at.left, at.x(stopOf(clash.shorterSeconds)));
  const right = Math.min(at.right, at.x(stopOf(clash.longerSeconds)));
  return right - left > 6 ? { left, right } : null;
}

/** The two ends of the lane, written on the band. */
function chipPlaces(scene) {
  const { model, at, phone, frame } = scene;
  const ends = [];
  const clash = clashSpan(scene);
  if (scene.lanes.length) {
    const nearest = nearestWindow(model);
    const l = scene.lanes.find((one) => one.window === nearest) || scene.lanes[0];
    const thirds = windowThirds(l.window, model.limits.leaveSeconds);
    if (!l.openLeft && thirds.from > 3 * FIRST_STOP) {
      ends.push([l.left, -1, dialOf(thirds.from)]);
    }
    if (!l.openRight && thirds.to >= thirds.from) {
      ends.push([l.right, 1, l.end === scene.leave ? plain(model.limits.leaveSeconds) : dialOf(thirds.to)]);
    }
  } else if (clash) {
    ends.push([clash.left, -1, plain(model.clash.shorterSeconds)], [clash.right, 1, plain(model.clash.longerSeconds)]);
  }
  return ends.map(([edge, side, t]) => {
    const text = t.number + (t.unit === 'min' ? (phone ? 'm' : ' min') : phone ? '' : ' s');
    const width = text.length * (phone ? 10.5 : 10.5) + 14;
    let x = side < 0 ? edge - width : edge;
    const hits = (v) => v < frame.x + frame.width + 2 && v + width > frame.x - 2;
    if (hits(x)) {
      x = side < 0 ? frame.x - width - 3 : frame.x + frame.width + 3;
    }
    x = Math.min(Math.max(x, at.left), at.right - width);
    return { x, width, text, hidden: hits(x) };
  });
}

function chips(scene) {
  const { at, night, phone } = scene;
  return chipPlaces(scene)
    .filter((c) => !c.hidden)
    .map(
      (c) =>
        rect(c.x, at.bandTop + 20, c.width, at.band - 20, `fill="var(--band)" ${night ? 'stroke="var(--line)" stroke-width="1.5"' : ''}`) +
        `<text x="${r(c.x + c.width / 2)}" y="${at.bandTop + at.band - 8}" text-anchor="middle" font-size="${phone ? 19 : 19}" font-weight="800" fill="var(--chip)">${c.text}</text>`,
    )
    .join('');
}

/** One cut of a strip: the crop at a third of a stop. */
function piece(part, third, x, y, w, h, night) {
  const sheet = part.strip;
  if (!sheet) {
    return rect(x, y, w, h, 'fill="none" stroke="var(--line-2)" stroke-dasharray="3 4"');
  }
  const i = Math.min(sheet.pieces - 1, Math.max(0, Math.round((third - sheet.firstThird) / sheet.everyThirds)));
  const pw = sheet.pieceWidth;
  const ph = sheet.pieceHeight;
  const cw = Math.min(pw, (ph * w) / h);
  const ch = Math.min(ph, (cw * h) / w);
  return (
    `<svg x="${r(x)}" y="${r(y)}" width="${r(w)}" height="${r(h)}" viewBox="${r(i * pw + (pw - cw) / 2)} ${r((ph - ch) / 2)} ${r(cw)} ${r(ch)}" preserveAspectRatio="none">` +
    `<image href="${escapeText(sheet.href)}" width="${sheet.pieces * pw}" height="${ph}" preserveAspectRatio="none" ${night ? 'style="filter:url(#night-red)"' : ''}/></svg>`
  );
}

function notch(air, x, y, h, n, fill) {
  return air
    ? `<path d="M${r(x - n)} ${y + h + 0.5}L${r(x)} ${r(y + h - n * 1.2)}L${r(x + n)} ${y + h + 0.5}Z" fill="${fill}"/>`
    : `<path d="M${r(x - n)} ${y - 0.5}L${r(x)} ${r(y + n * 1.2)}L${r(x + n)} ${y - 0.5}Z" fill="${fill}"/>`;
}

/** Swing of the stroke at k stops: what is left where that is known, else the contrast of the strip itself. */
function swingAt(part, k) {
  return part.left.length ? swing(valueAt(part.left, 'left', k)) : Math.min(1, valueAt(part.contrast, 'share', k));
}

function strip(scene, part, i) {
  const { at, phone, chosenStop, night, uid, leave } = scene;
  const y = at.rows[i] + at.label;
  const h = at.image;
  const rowHeight = at.row - at.label;
  let s = rect(at.left, y + h, at.right - at.left, rowHeight - h, 'fill="var(--sheet)"');
  for (const l of scene.lanes) {
    s += rect(l.left, y + h, l.right - l.left, rowHeight - h, 'fill="var(--lane)"');
  }
  for (let q = FIRST_STOP; q <= LAST_STOP; q++) {
    if (q !== chosenStop) {
      const x = at.x(q - 0.5) + at.cut;
      s += piece(part, 3 * q, x, y, at.x(q + 0.5) - at.cut - x, h, night);
    }
  }
  if (part.wish && part.spans.length) {
    s += rect(at.left, y, at.right - at.left, h, `fill="url(#${uid}-veil-${part.seal})"`);
  } else if (part.wish) {
    s += rect(at.left, y, at.right - at.left, h, 'fill="var(--veil)" opacity=".8"');
  }
  for (const span of part.wish ? part.spans : []) {
    const a = stopOf(span.fromSeconds);
    const b = stopOf(span.toSeconds);
    const xa = a < FIRST_STOP - 0.5 ? at.left : at.x(a);
    const xb = b > LAST_STOP + 0.5 ? at.right : at.x(b);
    if (xb > at.left && xa < at.right) {
      s += `<path d="M${r(xa)} ${y + 1.5}H${r(xb)}M${r(xa)} ${y + h - 1.5}H${r(xb)}" stroke="var(--ink)" stroke-width="3"/>`;
    }
  }
  for (let q = FIRST_STOP; q < LAST_STOP; q++) {
    const x = at.x(q + 0.5);
    s += rect(x - at.cut, y - 0.5, 2 * at.cut, h + 1, `fill="${inLane(scene, x) ? 'var(--lane)' : 'var(--ground)'}"`);
  }
  for (let q = FIRST_STOP; q <= LAST_STOP; q++) {
    if (q !== chosenStop) {
      const x = at.x(q);
      s += notch(part.air, x, y, h, phone ? 4 : 6, inLane(scene, x) ? 'var(--lane)' : part.air ? 'var(--sheet)' : 'var(--ground)');
    }
  }
  for (const span of part.wish ? part.spans : []) {
    for (const q of [stopOf(span.fromSeconds), stopOf(span.toSeconds)]) {
      if (q > FIRST_STOP - 0.5 && q < LAST_STOP + 0.5) {
        s += `<path d="M${r(at.x(q))} ${y}v${h}" stroke="var(--ink)" stroke-width="4"/>`;
      }
    }
  }
  return s + strokeRow(scene, part, i, y + h, rowHeight - h, leave);
}

/** The stroke under a strip, cut where the word for it changes. */
function strokeRow({ at, phone }, part, i, top, height, leave) {
  const middle = top + height / 2;
  const most = height / 2 - 1.5;
  let s = '';
  part.words.forEach((word, j) => {
    const a = stopOf(word.fromSeconds);
    const b = stopOf(word.toSeconds);
    const xa = a < FIRST_STOP - 0.5 ? at.left : at.x(a);
    const xb = b > LAST_STOP + 0.5 ? at.right : at.x(b);
    if (xb - xa < 3 || xa >= at.right) {
      return;
    }
    const on = !part.wish || holdsAt(part.spans, at.k((xa + xb) / 2));
    if (j && xa > at.left + 2) {
      s += `<path d="M${r(xa)} ${top}v${height}" stroke="var(--ink)" stroke-width="1.5"/>`;
    }
    let x = xa + (phone ? 2 : 6);
    const wide = phone ? 0 : word.word.length * 7.4 + 12;
    const end = leave === null ? xb : Math.min(xb, at.x(leave));
    if (!phone && end - xa > wide + 14) {
      s += `<text x="${r(x)}" y="${middle + 4.5}" font-size="14" font-weight="${word.word === part.wish ? 750 : 550}" fill="${on ? 'var(--lane-ink)' : 'var(--ink-3)'}">${escapeText(word.word)}</text>`;
      x += wide;
    }
    if (xb - x > 8) {
      const path = strokePath(x, xb - 4, middle, most, (px) => swingAt(part, at.k(px)), 11 + i, 5);
      s += `<path d="${path}" fill="none" stroke="${on ? 'var(--lane-ink)' : 'var(--line-2)'}" stroke-width="${on ? 2.1 : 1.4}" stroke-linejoin="bevel"/>`;
    }
  });
  return s;
}

function laneEdges({ lanes, at }) {
  const bottom = at.worthTop - 6;
  return lanes
    .map(
      (l) =>
        `<path d="${l.openLeft ? '' : `M${r(l.left)} ${at.stripsTop}V${bottom}`}${l.openRight ? '' : `M${r(l.right)} ${at.stripsTop}V${bottom}`}" stroke="var(--ink)" stroke-width="4"/>` +
        `<path d="M${r(l.left - 2)} ${at.stripsTop - 1}H${r(l.right + 2)}M${r(l.left - 2)} ${bottom}H${r(l.right + 2)}" stroke="var(--ink)" stroke-width="5"/>`,
    )
    .join('');
}

/** Past the longest time that still leaves by the leave-by time. */
function water({ model, at, leave, uid, phone }) {
  if (leave === null || leave > LAST_STOP + 0.5) {
    return '';
  }
  const x = Math.max(at.left, at.x(leave));
  const bottom = at.worthTop - 4;
  let edge = `M${r(x)} ${at.stripsTop}`;
  for (let y = at.stripsTop; y < bottom - 6; y += 8) {
    edge += 'q4 2 0 4t0 4';
  }
  let s =
    rect(x, at.stripsTop, at.right - x, bottom - at.stripsTop, 'fill="var(--sea-fill)" opacity=".62"') +
    rect(x, at.stripsTop, at.right - x, bottom - at.stripsTop, `fill="url(#${uid}-flow)"`) +
    `<path d="${edge}" fill="none" stroke="var(--sea)" stroke-width="3.5"/>`;
  if (!phone) {
    const y = at.rows[at.rows.length - 1] + 2;
    const bx = Math.min(Math.max(x - 8, at.left), at.right - 156);
    s += `<g transform="translate(${r(bx)} ${y})"><rect width="150" height="48" fill="var(--sheet)" stroke="var(--sea)" stroke-width="2.5"/><text x="10" y="21" font-size="16" font-weight="750" fill="var(--sea)">Leave by ${escapeText(model.limits.leaveBy)}</text><text x="10" y="40" font-size="14" font-weight="550" fill="var(--ink)">${model.limits.leaveSeconds > 0.1 ? `at most ${say(model.limits.leaveSeconds)}` : 'no exposure any more'}</text></g>`;
  }
  return s;
}

/** The piece at exactly the chosen time, pulled out of its strip. */
function chosenPiece(scene, part, i) {
  const { at, k, phone, night, frame } = scene;
  const y = at.rows[i] + at.label - at.lift;
  const h = at.image + 2 * at.lift;
  const w = frame.right - frame.left;
  const holds = !part.wish || holdsAt(part.spans, k);
  let s = rect(frame.left - 1, y, w + 2, h, 'fill="var(--ground)"');
  s += piece(part, Math.round(3 * k), frame.left, y, w, h, night);
  s += notch(part.air, Math.min(frame.right - 8, Math.max(frame.left + 8, at.x(k))), y, h, phone ? 6 : 9, scene.lanes.length && holds ? 'var(--lane)' : 'var(--ground)');
  s += rect(frame.left, y, w, h, `fill="none" stroke="var(--ink)" stroke-width="4" ${holds ? '' : 'stroke-dasharray="3 5"'}`);
  if (phone) {
    s += `<text x="8" y="${at.rows[i] + at.label - 6}" font-size="19" font-weight="780" fill="var(--ink)" stroke="var(--ground)" stroke-width="5" paint-order="stroke">${escapeText(part.name)} <tspan font-weight="${night ? 700 : 520}">${escapeText(part.wish ? part.wish + (part.closed ? ', no more' : '') : 'no wish')}</tspan></text>`;
  }
  return s;
}

function clashBox(scene) {
  const { model, at, frame, phone } = scene;
  const span = clashSpan(scene);
  if (!span) {
    return '';
  }
  let s = `<rect x="${r(span.left)}" y="${at.stripsTop}" width="${r(span.right - span.left)}" height="${at.bagTop - at.stripsTop - at.gap}" fill="none" stroke="var(--ink)" stroke-width="2.5" stroke-dasharray="3 5"/>`;
  const ground = model.parts.findIndex((p) => !p.air);
  const row = ground < 0 ? 0 : ground;
  const wide = phone ? 206 : 222;
  const middle = (frame.left + frame.right) / 2;
  const x = Math.min(Math.max(middle < (span.left + span.right) / 2 ? span.right - wide : span.left + 8, at.left + 4), at.right - wide - 4);
  s += `<g transform="translate(${r(x)} ${at.rows[row] + (phone ? 22 : 1)})"><rect width="${wide}" height="52" fill="var(--sheet)" stroke="var(--ink)" stroke-width="3"/><text x="12" y="22" font-size="${phone ? 19 : 16}" font-weight="780">${escapeText(model.clash.first)} and ${escapeText(model.clash.second.toLowerCase())}</text><text x="12" y="43" font-size="${phone ? 19 : 16}" font-weight="600">${phone ? '' : 'clash, '}${fraction(model.clash.stops)} stops apart</text></g>`;
  return s;
}

/** The frame on the band: as wide as the pieces pulled out; its three teeth are the thirds. */
function chosenFrame({ model, at, k, chosenStop, frame, phone, night, verdict: v }) {
  const over = phone ? 4 : 8;
  const top = at.bandTop - over;
  const height = at.band + 2 * over;
  const third = clampThird(Math.round(3 * k));
  const t = Math.abs(3 * k - third) < 0.02 ? dialOf(third) : plain(model.chosenSeconds);
  let s = rect(frame.x, top, frame.width, height, `fill="${v.state === 'holds' && !night ? 'var(--lichen)' : 'var(--sheet)'}" stroke="var(--ink)" stroke-width="4"`);
  for (const d of [-1 / 3, 0, 1 / 3]) {
    const x = at.x(chosenStop + d);
    const on = Math.abs(chosenStop + d - k) < 0.05;
    if (x > frame.x + 6 && x < frame.x + frame.width - 6) {
      s += `<path d="M${r(x)} ${top}v${on ? 13 : 6}M${r(x)} ${top + height}v-${on ? 12 : 6}" stroke="var(--ink)" stroke-width="${on ? 6 : 2.5}"/>`;
    }
  }
  const long = t.number.length > 3;
  const size = phone ? (long ? 21 : 28) : long ? 28 : 36;
  s += `<text x="${r(frame.x + frame.width / 2)}" y="${at.bandTop + (phone ? 33 : 37)}" text-anchor="middle" font-size="${size}" font-weight="800" letter-spacing="-1">${t.number}<tspan font-size="${phone ? 19 : 20}" dx="${phone ? 1 : 4}" letter-spacing="0">${phone && t.unit === 'min' ? 'm' : t.unit}</tspan></text>`;
  return s;
}

/** Words of the rows as text, for a page where nothing can be touched. */
function rowLabels({ model, at }) {
  if (!at.gutter) {
    return '';
  }
  const rows = model.parts.map((part, i) => {
    const y = at.rows[i];
    const raised = part.strip && part.strip.raised > 1 ? ` <tspan font-size="14" font-weight="400" fill="var(--ink-2)">raised ×${part.strip.raised}</tspan>` : '';
    return (
      `<g transform="translate(0 ${y + 12})" stroke="currentColor"><path d="${sealPath(part.seal)}" fill="none" stroke-width="2" stroke-linejoin="round"/></g>` +
      `<text x="38" y="${y + 18}" font-size="16" font-weight="700">${escapeText(part.name)}${raised}</text>` +
      `<g transform="translate(38 ${y + 28})">${glyph(part.wish || 'none', 26, 14)}</g>` +
      `<text x="72" y="${y + 40}" font-size="14" font-weight="600">${escapeText(part.wish || 'no wish')}</text>`
    );
  });
  const words = (y, a, b) =>
    `<text x="0" y="${y + 17}" font-size="16" font-weight="700">${a}</text><text x="0" y="${y + 35}" font-size="14" fill="var(--ink-2)">${escapeText(b)}</text>`;
  return (
    rows.join('') +
    words(at.bandTop, 'Shutter time', model.windowWords) +
    words(at.bagTop, 'In the bag', model.bagWords) +
    words(at.worthTop, 'Worth', 'changes, stands off')
  );
}

export { secondsOf };
