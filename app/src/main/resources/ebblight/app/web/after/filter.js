// Filter check: the same view without and with a filter tells what it truly takes. Pairs are those that Sort found.

import { el, fill, key } from '../dom.js';
import { json } from '../http-carrier.js';
import { progressBox } from '../components/progress.js';
import { nameOf, pathIn, titleOf } from '../logic/after.js';
import { checkFilter, learnFilters, sortCard, thumbnail } from './desk.js';

export function open(host, app) {
  let pairs = null;
  let fault = '';
  let stop = null;
  let of = '';
  const found = new Map();
  let kit = null;
  let learned = [];
  let keeping = null;

  async function load() {
    const { folder, without, with: filtered } = app.asked();
    const asked = `${folder} ${without} ${filtered}`;
    if (asked === of) {
      return;
    }
    of = asked;
    pairs = null;
    fault = '';
    if (!folder) {
      kit = kit || (await json('/api/kit'));
      fill(host, el('div.choose', {}, el('h1', {}, 'Filter check'), el('p', {}, 'Two frames of one view, without and with the filter, tell its true density, its cast and what it takes from the corners. Engraved numbers are off by a third of a stop and more. Sort a card first: it finds the pairs.'), el('div.keys', {}, key('To Sort', () => app.goTool('sort'), { class: 'act' })), kitSection()));
      return;
    }
    stop?.abort();
    stop = new AbortController();
    const progress = progressBox(`Sorting ${folder}`, () => stop.abort());
    fill(host, el('div.after-wait', {}, el('h1', {}, 'Looking for pairs'), progress.box));
    try {
      kit = kit || (await json('/api/kit'));
      const card = await sortCard(folder, { signal: stop.signal, onProgress: progress.update });
      learned = card.filters || [];
      keeping = null;
      let number = 0;
      pairs = card.groups.flatMap((group) => {
        number += group.kind === 'view' ? 1 : 0;
        const title = titleOf(group, number);
        return group.pairs.map((p) => ({ title, without: pathIn(folder, p.without), with: pathIn(folder, p.with), stops: p.filterStops }));
      });
      if (without && filtered) {
        pairs.sort((a, b) => (b.without === without && b.with === filtered) - (a.without === without && a.with === filtered));
      }
    } catch (error) {
      fault = error.name === 'AbortError' ? 'Stopped. Nothing was changed.' : error.message;
      of = '';
    }
    draw();
  }

  const idOf = (pair) => `${pair.without} ${pair.with}`;

  async function check(pair, filter) {
    const progress = progressBox('Measuring the pair');
    found.set(idOf(pair), { ...found.get(idOf(pair)), progress: progress.box, fault: '' });
    draw();
    try {
      const answer = await checkFilter({ without: pair.without, with: pair.with, ...(filter ? { filter } : {}) }, { onProgress: progress.update });
      found.set(idOf(pair), { answer });
      if (filter) {
        kit = await json('/api/kit');
        app.say(`Kept with ${answer.filter}: ${answer.stops.toFixed(2)} stops. Settings use it from now on.`);
      }
    } catch (error) {
      found.set(idOf(pair), { fault: error.message });
    }
    draw();
  }

  /** What the kit knows of its filters: what the ring says, and what was measured. */
  function kitSection() {
    const filters = kit?.filters || [];
    return el(
      'section.filter-kit',
      { 'aria-label': 'In the kit' },
      el('h2', {}, 'In the kit'),
      filters.length
        ? el('ul.told', {}, filters.map((f) => el('li', {}, el('b', {}, f.name || f.takes), f.measuredStops ? `: ${f.measuredStops.toFixed(2)} stops measured${f.measuredOn ? ` on ${f.measuredOn}` : ''}, engraved ${f.takes}${f.cast ? `; ${f.cast}` : ''}.` : `: engraved ${f.takes}, never measured.`)))
        : el('p', {}, 'No filter yet. Add what is engraved on the ring, on the Kit page.'),
    );
  }

  /** What the card's own slates taught: which filter was on is photographed before the frames. */
  function slateSection() {
    if (!learned.length) {
      return '';
    }
    return el(
      'section.filter-kit',
      { 'aria-label': 'By the slates of this card' },
      el('h2', {}, 'By the slates of this card'),
      el('ul.told', {}, learned.map((f) => el('li', {}, el('b', {}, `Filter ${f.filter}`), `: ${f.stops.toFixed(2)} stops (${f.low.toFixed(2)} to ${f.high.toFixed(2)}), cast ${f.castWord}, by ${f.pairs.length} ${f.pairs.length === 1 ? 'pair' : 'pairs'}.`, f.warnings.map((w) => el('span.note', {}, w.replace(/ \(--[a-z]+\)/g, '')))))),
      keeping?.done ? el('p.result', { role: 'status' }, keeping.done) : '',
      keeping?.fault ? el('p.fault', { role: 'alert' }, keeping.fault) : '',
      keeping?.progress || el('div.keys', {}, key('Keep them in the kit', keepLearned, { class: 'act', 'data-focus': 'keep-learned' })),
    );
  }

  async function keepLearned() {
    const progress = progressBox('Keeping what the slates taught');
    keeping = { progress: progress.box };
    draw();
    try {
      const { kept } = await learnFilters(app.asked().folder, { onProgress: progress.update });
      kit = await json('/api/kit');
      keeping = { done: kept.length ? `Kept: ${kept.join(', ')}. Settings use it from now on.` : 'The kit holds none of these filters: add them there first.' };
    } catch (error) {
      keeping = { fault: error.message };
    }
    draw();
  }

  function result(pair, { answer, progress, fault: problem } = {}) {
    if (progress) {
      return progress;
    }
    if (problem) {
      return el('p.fault', { role: 'alert' }, problem);
    }
    if (!answer) {
      return key('Check this pair', () => check(pair), { class: 'act', 'data-focus': `check-${idOf(pair)}`, 'aria-label': `Check ${nameOf(pair.without)} and ${nameOf(pair.with)}` });
    }
    const { cast, castLab, vignetting } = answer;
    const filters = kit?.filters || [];
    return el(
      'div.filter-result',
      { role: 'status' },
      el('p.big', {}, `${answer.stops.toFixed(2)} stops`, el('small', {}, `${answer.low.toFixed(2)} to ${answer.high.toFixed(2)}`)),
      el('p', {}, el('b', {}, `Cast: ${answer.castWord}. `), `Red × ${cast.red.toFixed(3)}, blue × ${cast.blue.toFixed(3)}: a grey goes ${castLab.a.toFixed(1).replace('-', '−')} in a*, ${castLab.b.toFixed(1).replace('-', '−')} in b*.`),
      el('p', {}, el('b', {}, 'Corners: '), `${vignetting.cornerStops.toFixed(2).replace('-', '−')} stop more than the middle, ± ${vignetting.rangeStops.toFixed(2)}.`),
      answer.warnings.map((w) => el('p.note', {}, w.replace(/ \(--[a-z]+\)/g, ''))),
      answer.filter
        ? el('p', {}, el('b', {}, `Kept with ${answer.filter}.`))
        : filters.length
          ? el('div.keys', { role: 'group', 'aria-label': 'Keep with a filter of the kit' }, el('span', {}, 'Keep with'), filters.map((f) => key(f.name, () => check(pair, f.name), { class: 'alt', 'data-focus': `keep-${f.name}-${idOf(pair)}` })))
          : el('p', {}, 'The kit holds no filter yet: add it there, and keep the result with it.'),
    );
  }

  function draw() {
    if (fault) {
      fill(host, el('div.empty.fault', { role: 'alert' }, el('h1', {}, 'No pairs'), el('p', {}, fault), key('Try again', load, { class: 'act' })));
      return;
    }
    if (!pairs) {
      return;
    }
    fill(
      host,
      el('div.tool-head', {}, el('h1', {}, el('b', {}, `${app.asked().folder}:`), ` ${pairs.length} ${pairs.length === 1 ? 'pair' : 'pairs'} without and with a filter`), el('p.cap', {}, 'By what stands still. Tripod, white balance, aperture and ISO as they were; only filter and time changed.')),
      slateSection(),
      pairs.length ? '' : el('div.empty', {}, el('p', {}, 'No view of this card has a frame without a filter beside one with it. Take the pair at the next outing: There reminds of it.')),
      el(
        'div.filter-pairs',
        {},
        pairs.map((pair) =>
          el(
            'section.filter-pair',
            { 'aria-label': `${nameOf(pair.without)} and ${nameOf(pair.with)}` },
            el('div.two', {}, [[pair.without, 'without'], [pair.with, 'with']].map(([path, word]) => el('figure', {}, el('img', { src: thumbnail(path, 480), alt: '', loading: 'lazy' }), el('figcaption', {}, el('b', {}, word), ` ${nameOf(path)}`)))),
            el('div.filter-words', {}, el('p.cap', {}, `${pair.title}. By their settings about ${pair.stops.toFixed(1)} stops.`), result(pair, found.get(idOf(pair)))),
          )),
      ),
      kitSection(),
    );
  }

  load();
  return { hint: 'Kept results serve Settings and There.', moved: load, leave: () => stop?.abort() };
}
