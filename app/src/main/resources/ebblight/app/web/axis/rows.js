// The rows under the strips: what the bag reaches, what each time is worth, the limits.

import { escapeText, strokePath } from './marks.js';
import { FIRST_STOP, LAST_STOP, say } from './scale.js';
import { stopOf, valueAt } from './lane.js';

const r = (v) => Math.round(v * 10) / 10;

// Worth: left around the subject that counts as full swing.
const ROUGH_SEPARATION = 0.5;

/** Places of the bag's keys, those that would overlap left out; chosen ones first. */
export function bagPlaces({ model, at, phone }) {
  const wide = phone ? 30 : 76;
  const taken = [];
  const order = [...model.bag].sort((a, b) => Number(b.chosen) - Number(a.chosen) || a.rank - b.rank);
  for (const one of order) {
    const x = at.x(stopOf(one.seconds));
    if (x < at.left + 2 || x > at.right - 2) {
      continue;
    }
    const left = Math.min(Math.max(x - wide / 2, at.left), at.right - wide);
    if (taken.every((t) => left + wide + 3 <= t.left || left >= t.left + wide + 3)) {
      taken.push({ ...one, x, left, wide });
    }
  }
  return taken.sort((a, b) => a.x - b.x);
}

export function bagRow(scene) {
  const { at, phone, lanes, model } = scene;
  const y = at.bagTop;
  const h = at.bag - 6;
  let s = phone ? '' : `<rect x="${at.left}" y="${y}" width="${at.right - at.left}" height="${h}" fill="var(--sheet)"/>`;
  for (const l of lanes) {
    s += phone ? '' : `<rect x="${r(l.left + 2)}" y="${y}" width="${r(Math.max(0, l.right - l.left - 4))}" height="${h - 3}" fill="var(--lane)"/>`;
  }
  if (!model.bag.length && !phone) {
    s += `<text x="${at.left + 12}" y="${y + 25}" font-size="14" font-weight="600" fill="var(--ink-2)">Meter without a filter, and the times that your filters reach stand here.</text>`;
  }
  for (const one of bagPlaces(scene)) {
    const on = lanes.some((l) => one.x > l.left && one.x < l.right);
    if (phone) {
      const label = one.filters.length ? String(one.filters[0]).slice(0, 2) : '0';
      s += `<path d="M${r(one.x - 7)} ${y + 2}h14l-7 -8z" fill="var(--ink)"/><circle cx="${r(one.x)}" cy="${y + 16}" r="13" fill="${one.chosen ? 'var(--ink)' : on ? 'var(--lane)' : 'var(--sheet)'}" stroke="var(--ink)" stroke-width="2"/><text x="${r(one.x)}" y="${y + 22.5}" font-size="19" font-weight="800" text-anchor="middle" fill="${one.chosen ? 'var(--sheet)' : 'var(--ink)'}">${escapeText(label)}</text>`;
    } else {
      const label = one.filters.length ? one.filters.join('+') : 'none';
      s += `<path d="M${r(one.x - 6)} ${y - 1}L${r(one.x)} ${y + 8}L${r(one.x + 6)} ${y - 1}Z" fill="var(--ink)"/><rect x="${r(one.left)}" y="${y + 8}" width="${one.wide}" height="26" fill="${one.chosen ? 'var(--ink)' : 'var(--sheet)'}" stroke="var(--ink)" stroke-width="${on || one.chosen ? 2.2 : 1}"/><text x="${r(one.left + one.wide / 2)}" y="${y + 26}" text-anchor="middle" font-size="14" font-weight="750" fill="${one.chosen ? 'var(--sheet)' : 'var(--ink)'}">${escapeText(label)} <tspan font-weight="450">${escapeText(one.aperture)}</tspan></text>`;
    }
  }
  return s;
}

/** One cell a stop: the block is the share of the picture that changes, the post stands off the stroke round it. */
export function worthRow({ model, at, k, chosenStop }) {
  if (!model.worth.length) {
    return '';
  }
  let s = '';
  for (let q = FIRST_STOP; q <= LAST_STOP; q++) {
    const chosen = q === chosenStop;
    const x = at.x(q - 0.5) + at.cut;
    const w = at.x(q + 0.5) - at.cut - x;
    const h = at.worth - 12;
    const y = at.worthTop + 2;
    const changed = valueAt(model.worth, 'changedFraction', chosen ? k : q);
    const rough = Math.min(1, (1 - valueAt(model.worth, 'separation', chosen ? k : q)) / ROUGH_SEPARATION);
    const block = Math.max(2, changed * h);
    s += `<rect x="${r(x)}" y="${y}" width="${r(w)}" height="${h}" fill="var(--sheet)" stroke="${chosen ? 'var(--ink)' : 'var(--line-2)'}" stroke-width="${chosen ? 3 : 1}"/>`;
    s += `<rect x="${r(x + 4)}" y="${r(y + h - block)}" width="${r(w * 0.34)}" height="${r(block)}" fill="var(--ink)"/>`;
    const bx = x + w * 0.34 + 9;
    const bw = w - (bx - x) - 5;
    s += `<path d="M${r(bx)} ${y + h - 3}V${y + 6}h${r(bw * 0.3)}V${y + h - 3}z" fill="var(--ink-2)"/>`;
    s += `<path d="${strokePath(bx + bw * 0.36, bx + bw, y + h * 0.62, h * 0.36, () => rough, 9 + q, 4)}" fill="none" stroke="var(--ink)" stroke-width="2" stroke-linejoin="bevel"/>`;
  }
  return s;
}

/** Past the longest timed shutter, and where the light fades faster than it gathers. */
export function limitsRow({ model, at, phone }) {
  const y = at.limitsTop + 11;
  if (phone) {
    const leave = model.limits.leaveSeconds;
    return (
      (leave === null ? '' : `<text x="${at.right - 8}" y="${at.limitsTop + 20}" text-anchor="end" font-size="19" font-weight="780" fill="var(--sea)">${leave > 0.1 ? `at most ${say(leave)}` : 'leave now'}</text>`) +
      `<text x="8" y="${at.limitsTop + 20}" font-size="19" font-weight="780">${escapeText(model.windowWords)}</text>`
    );
  }
  const marks = [];
  if (model.limits.timedSeconds) {
    marks.push([at.x(stopOf(model.limits.timedSeconds)) + at.unit / 6, `past ${say(model.limits.timedSeconds)}: bulb and cable`, '2 5']);
  }
  const fades = model.limits.fadesBeyondSeconds;
  if (fades && stopOf(fades) < LAST_STOP + 0.5) {
    marks.push([at.x(stopOf(fades)), 'light fades faster', '10 4']);
  }
  return marks
    .map(([x, text, dash], i) => {
      const from = Math.max(at.left, x);
      const next = marks[i + 1];
      const to = next ? next[0] - (fits(next) ? 12 : 14 + next[1].length * 6.9) : at.right;
      const wide = text.length * 6.9;
      const inside = from + 14 + wide < to;
      const words = `<text x="${r(inside ? from + 9 : from - 8)}" y="${y + 5}" font-size="14" font-weight="600" ${inside ? '' : 'text-anchor="end"'}>${escapeText(text)}</text>`;
      const dashes = inside ? from + 18 + wide : from + 6;
      return `<path d="M${r(from)} ${y - 8}v16" stroke="var(--ink)" stroke-width="3.5"/>${words}${to > dashes ? `<path d="M${r(dashes)} ${y}H${r(to)}" stroke="var(--ink)" stroke-width="2.5" stroke-dasharray="${dash}"/>` : ''}`;
    })
    .join('');

  function fits([x, text]) {
    return Math.max(at.left, x) + 14 + text.length * 6.9 < at.right;
  }
}
