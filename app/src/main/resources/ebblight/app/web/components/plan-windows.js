// Windows with their reasons, and what to pack for them.

import { el, key } from '../dom.js';
import { cutOff, dayIn, dayWords, guardWords, hourIn, plainWords, timeWords } from '../logic/plan.js';

const MOST_WINDOWS = 4;
const BRING = ['Cable, second battery', 'Cover for the eyepiece', 'Red torch, cloth'];

/** @param mine windows of the day shown; longest shutter time in seconds, if one is wished */
export function windowList({ answer, mine, zone, all, chosen, longest, turnTo, choose, setAll }) {
  if (!answer.windows.length) {
    return [
      el('h2', {}, 'No window'),
      el('p', {}, 'In this span the wishes never hold together for long enough.'),
      answer.shortfalls.map((s) => el('p.shortfall', {}, plainWords(s.text))),
      answer.ways.length ? el('ul.relax', {}, answer.ways.map((w) => el('li', {}, plainWords(w)))) : el('p', {}, 'Relaxing one of them alone is not enough; begin with the first.'),
    ];
  }
  const now = new Date().toISOString();
  const ranked = [...answer.windows].sort((a, b) => (a.end < now) - (b.end < now) || a.rank - b.rank);
  const first = [...mine, ...ranked.filter((w) => !mine.includes(w))];
  const shown = (all ? ranked : first.slice(0, Math.max(MOST_WINDOWS, mine.length))).sort((a, b) => (a.start < b.start ? -1 : 1));
  return [
    el('h2', {}, answer.windows.length === 1 ? 'One window' : `${answer.windows.length} windows`, el('span', {}, answer.datum ? 'falling water first' : '')),
    shown.map((w) => windowCard(w, { on: mine.includes(w), zone, chosen: chosen === w.start, longest, turnTo, choose })),
    answer.windows.length > shown.length || all ? key(all ? 'Fewer' : `All ${answer.windows.length}`, () => setAll(!all), { class: 'link', 'data-focus': 'windows-all' }) : '',
    [...answer.warnings, ...answer.assumed].map((text) => el('p.cap', {}, `${plainWords(text)}.`)),
  ];
}

function windowCard(window, { on, zone, chosen, longest, turnTo, choose }) {
  const date = dayIn(zone, new Date(window.start));
  const [weekday, ...rest] = dayWords(date).split(' ');
  const guard = guardWords(window, zone);
  return el(
    `article.window${on ? '.on' : ''}`,
    {},
    key(
      [
        el('span.d', {}, `${weekday} ${rest[0]}`, el('small', {}, rest[1])),
        el('span.reason', {}, el('b', {}, `${hourIn(zone, window.start)} to ${hourIn(zone, window.end)}`), el('span', {}, window.why.map((w) => w[0].toUpperCase() + w.slice(1)).join('. '), '.')),
        el('span.len', {}, String(window.minutes), el('small', {}, 'min')),
      ],
      () => turnTo(date),
      { class: 'window-key', 'aria-pressed': String(on), 'data-focus': `window-${window.start}` },
    ),
    on
      ? el(
          'div.window-more',
          {},
          el('p', {}, `At the tripod by ${hourIn(zone, window.atTripodBy)}.${window.frames ? ` ${window.frames} frames of ${timeWords(longest)} fit.` : ''}`),
          guard ? el('p.leave', {}, guard) : '',
          cutOff(window)
            ? el('p.cap', {}, 'Not to be taken: stand higher, set the way back anew, or take another window.')
            : key(chosen ? 'I go then: taken' : 'I go then', () => choose(window), { class: 'alt', 'aria-pressed': String(chosen), 'data-focus': `go-${window.start}` }),
        )
      : '',
  );
}

/** @param exposure wished shutter times, if any */
export function packingList({ answer, exposure, zone, toKit, sheet }) {
  const { packing: list } = answer;
  return [
    el('h2', {}, 'To pack'),
    list
      ? [
          el('p', {}, el('b', {}, list.filters.length ? `Filters ${list.filters.join(', ')}` : 'No filter'), list.reachedFraction !== null && list.reachedFraction < 1 ? `, for ${Math.round(100 * list.reachedFraction)} % of the windows` : '', list.compromise ? '; with apertures beyond the sharpest, or a higher ISO' : ''),
          list.missing ? el('p.shortfall', {}, `${dayWords(dayIn(zone, new Date(list.missing.time)))} ${hourIn(zone, list.missing.time)}: ${list.missing.text}.`) : '',
        ]
      : el('p', {}, exposure ? ['No filter in the bag. ', key('To Kit', toKit, { class: 'link' })] : 'Say a shutter time, and the fewest filters that reach it stand here.'),
    el('ul', {}, BRING.map((b) => el('li', {}, b))),
    key('Sheet to print', sheet, { class: 'act', 'data-focus': 'sheet-pdf' }),
  ];
}
