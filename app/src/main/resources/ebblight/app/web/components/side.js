// The panel beside the picture: with what the time is reached, or why it is not, and what to do.

import { el, key } from '../dom.js';
import { fraction, say, sayThird, thirdOf } from '../axis/scale.js';
import { latestStart } from '../logic/guard.js';
import { clockIn } from '../logic/zone.js';
import { readable } from '../logic/parts.js';
import { enteringWords } from '../logic/entering.js';
import { meterPanel, guardPanel } from './meter.js';

const list = (items) => el('ul.costs', {}, items.filter(Boolean).map((text) => el('li', {}, text[0].toUpperCase() + text.slice(1))));

export const filterWords = (filters) => (filters.length ? `${filters.join(' + ')}-stop` : 'no filter');

export const fLabel = (n) => `f/${n}`;

/** "25s" as it is read: "25 s". */
export const dialWords = (dial) => dial.replace('bulb ', '').replace(/^([\d./]+)s?$/, '$1 s');

/** A caution without its figures; they stay in the list of the command line. */
const short = (text) => text.replace(/^diffraction: .*$/, 'diffraction softens').replace(/^one filter: /, '').replace(/^([\d.]+) stops? above base ISO: more noise$/, 'more noise, $1 stops over base ISO');

/** "1.9 m to 12 m", "1.9 m to the horizon". */
export function sharpWords(choice) {
  const far = choice.farMetres === null || choice.farMetres > 1000 ? 'the horizon' : `${choice.farMetres.toFixed(1)} m`;
  return `Sharp from ${choice.nearMetres.toFixed(1)} m to ${far}.`;
}

/**
 * @param s state of the page; actions: toShot, pair, choose(i), goThird(third), panel(name), meter…, guard…
 */
export function sidePanel(s, actions) {
  const { model, verdict, settings, panel } = s;
  const tabs = el(
    'div.side-tabs',
    { role: 'group', 'aria-label': 'Panel' },
    [
      ['reach', verdict.state === 'clash' ? 'Clash' : 'Reached with'],
      ['meter', 'Meter'],
      ['leave', 'Leave by'],
    ].map(([name, text]) => key(text, () => actions.panel(name), { 'aria-pressed': String(panel === name), class: panel === name ? 'on' : '', 'data-focus': `tab-${name}` })),
  );
  if (panel === 'meter') {
    return [tabs, meterPanel(s.outing, s.measured, s.light, s.dial, actions)];
  }
  if (panel === 'leave') {
    return [tabs, guardPanel(s.outing, actions)];
  }
  if (verdict.state === 'late') {
    return [tabs, late(s, actions)];
  }
  if (verdict.state === 'clash') {
    return [tabs, entering(s), clash(s, actions)];
  }
  if (!settings && s.outing.light?.readings?.length) {
    return [tabs, el('p', { role: 'status' }, 'Solving for the light now.')];
  }
  if (!settings) {
    return [
      tabs,
      entering(s),
      el('h2', {}, 'No reading yet'),
      el('p', {}, 'Meter the scene without a neutral filter. From the reading come filter, aperture and ISO for this time.'),
      el('div.keys.foot', {}, key('Set the reading', () => actions.panel('meter'), { class: 'act' }), key('Take this to the shot', actions.toShot, { class: 'alt' })),
    ];
  }
  return [tabs, entering(s), settings.choices.length ? reached(s, actions) : notReached(s, actions)];
}

const entering = (s) => enteringWords(s.entering, s.outing.zone).map((text) => el('p.caution', {}, text));

function reached(s, actions) {
  const { settings, model } = s;
  const index = Math.min(s.choice, settings.choices.length - 1);
  const c = settings.choices[index];
  const big = (value, unit) => el('div', {}, value, el('small', {}, unit));
  const light = c.correctedSeconds - c.seconds;
  const off = Math.log2(c.seconds / model.chosenSeconds);
  const start = latestStart(s.outing, s.now, c.busySeconds);
  const others = settings.choices.map((one, i) => [one, i]).filter(([, i]) => i !== index).slice(0, 2);
  const body = el(
    'div.reached-body',
    {},
    el(
      'div.set',
      {},
      big(c.filters.length ? c.filters.join('+') : '0', 'stop filter'),
      big(fLabel(c.fNumber), 'aperture'),
      big(String(c.iso), 'ISO'),
      c.focusMetres === null ? '' : big(`${c.focusMetres.toFixed(1)} m`, 'focus'),
    ),
    el(
      'p.set-line',
      {},
      `${c.shutter === 'timed' ? 'Timed' : 'Bulb'}, ${dialWords(c.dial)}. Camera busy ${say(c.busySeconds)}. `,
      c.focusMetres === null ? '' : sharpWords(c),
    ),
    list([
      `${Math.abs(off) < 0.17 ? 'Meets the time' : `${fraction(off)} stop ${off > 0 ? 'longer' : 'shorter'}`}${Math.abs(light) >= 0.5 ? `, ${light > 0 ? '+' : '−'}${say(Math.abs(light))} for the light that ${light > 0 ? 'fades' : 'grows'}` : ''}. Exposure likely within ${c.errorRangeStops.toFixed(2)} stop.`,
      start ? `Latest start ${clockIn(s.outing.zone, start, true)}, leave by ${s.outing.guard.leaveBy}.` : null,
      c.cautions.filter((text) => !/longer than asked|shorter than asked/.test(text)).map(short).join('; '),
      s.light?.stale ? `The reading is ${Math.round(s.light.ageMinutes)} min old: meter again.` : null,
    ]),
    others.length
      ? el(
          'div.others',
          { role: 'group', 'aria-label': 'Other ways' },
          others.map(([one, i]) => key(`${one.filters.length ? one.filters.join('+') : 'no filter'} · ${fLabel(one.fNumber)} · ISO ${one.iso}`, () => actions.choose(i), { 'data-focus': `choice-${i}`, title: one.cautions.join('; ') })),
        )
      : '',
  );
  return el(
    'div.reached',
    {},
    body,
    el('div.keys.foot', {}, key('Take this to the shot', actions.toShot, { class: 'act', 'data-focus': 'to-shot' }), key('Pair: with and without', actions.pair, { class: 'alt', 'aria-pressed': String(Boolean(s.view.pair)) })),
  );
}

function notReached(s, actions) {
  return el(
    'div.reached',
    {},
    el('h2', {}, `The bag does not reach ${sayThird(s.third)} here`),
    list(s.settings.ways.map((way) => `${readable(way.text)}.`)),
    el('div.keys.foot', {}, key('Meter', () => actions.panel('meter'), { class: 'act' }), key('Kit', actions.kit, { class: 'alt' })),
  );
}

function late(s, actions) {
  const most = s.model.limits.leaveSeconds;
  const third = most > 0.13 ? Math.floor(3 * Math.log2(most)) : null;
  return el(
    'div.reached',
    {},
    el('h2', {}, most > 0.13 ? 'Not from this rock now' : 'Leave now'),
    el('p', {}, most > 0.13 ? `${sayThird(s.third)} would end too late: packing takes ${s.outing.guard.packingMinutes ?? 3} min, leave by ${s.outing.guard.leaveBy}.` : `It is past the latest start for any exposure: leave by ${s.outing.guard.leaveBy}.`),
    list([most > 0.13 ? `Longest now: ${say(most)}.` : null, 'Or from higher up, measured again there.']),
    el('p.caution', {}, 'Tables leave out weather, surge and waves. Watch the sea.'),
    el('div.keys.foot', {}, third !== null && third >= -9 ? key(`Go to ${sayThird(third)}`, () => actions.goThird(third), { class: 'act' }) : key('Leave by', () => actions.panel('leave'), { class: 'alt' })),
  );
}

/** The three ways out of a clash, each with what it takes here. */
function clash(s, actions) {
  const { model, weighed } = s;
  const conflict = weighed.conflict;
  const c = model.clash;
  const ways = conflict.ways;
  const row = (i, title, text, act) =>
    el('li', {}, el('i', {}, String(i)), el('span', {}, el('b', {}, title), el('p', {}, text), act || ''));
  const titles = { between: 'One time between', blend: 'Two frames, blended', burst: 'A burst, stacked', relax: 'Ask for less' };
  const order = ['blend', 'burst', 'between', 'relax'];
  const sorted = [...ways].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));
  const first = model.parts.find((p) => p.id === c.firstId);
  const second = model.parts.find((p) => p.id === c.secondId);
  const head =
    c.firstId === c.secondId
      ? `${c.first} ${first?.wish || ''}: no time gives it`
      : `${c.first} ${first?.wish || ''} ends at ${say(c.shorterSeconds)}, ${c.second.toLowerCase()} ${second?.wish || ''} starts at ${say(c.longerSeconds)}`;
  return el(
    'div.reached',
    {},
    el('h2', {}, head),
    el(
      'ol.ways',
      {},
      sorted.map((way, i) =>
        row(
          i + 1,
          `${titles[way.kind] || way.kind}${way.kind === 'burst' ? `: ${way.frames} × ${say(way.seconds[0])}` : way.kind === 'blend' ? `: ${way.seconds.map(say).join(' and ')}` : way.kind === 'between' ? `: ${say(way.seconds[0])}` : ''}`,
          wayText(s, way),
          way.kind === 'between' ? key('Go there', () => actions.goThird(thirdOf(way.seconds[0])), { class: 'alt' }) : '',
        ),
      ),
    ),
  );
}

function wayText(s, way) {
  const text = readable(way.text.replace(/^[^:]*: /, ''));
  if (way.kind === 'blend' && s.blend?.length) {
    return `${text}. ${s.blend.map((c) => `${say(c.seconds)}: ${filterWords(c.filters)}, ${fLabel(c.fNumber)}, ISO ${c.iso}`).join('; ')}.`;
  }
  return `${text}.`;
}
