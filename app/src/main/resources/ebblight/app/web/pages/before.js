// Before: place and views, wishes of the hour, the weave of days, one day's strip and lens, windows with reasons, the bag.

import { el, fill, key } from '../dom.js';
import { call, json } from '../http-carrier.js';
import { wishLine } from '../components/wish-hour.js';
import { placeForm, placeSheet, viewSheet } from '../components/plan-place.js';
import { exposureSheet, guardSheet, leastSheet } from '../components/plan-sheets.js';
import { rowsSheet } from '../components/plan-files.js';
import { packingList, windowList } from '../components/plan-windows.js';
import { phoneSheet } from '../components/phone-sheet.js';
import { planDay } from '../components/plan-day.js';
import { addDays, bagOf, dayIn, dayWords, exposureEnds, hourIn, lensOf, MOST_DAYS, number, questionOf, spanOf, timeWords, takeWindow, takenWords } from '../logic/plan.js';

/** A wider drawing of the lens would be taller than the page. */
const WIDEST_LENS = 600;

export function open(host, { store, go, place, say, header }) {
  let kit = null;
  let whole = null;
  let fault = '';
  let day = null;
  let waiting = 0;
  let turn = 0;
  let all = false;
  let closed = false;
  const planned = planDay();
  const weave = el('div.weave', { role: 'group', 'aria-label': 'Weave of days' });
  const windows = el('section.windows', { 'aria-label': 'Windows' });
  const pack = el('section.pack', { 'aria-label': 'To pack' });
  const cautions = el('div.cautions', {});
  const title = el('h2.day-title', { 'aria-live': 'polite' });

  const outing = () => store.outing;
  const view = () => outing().views.find((v) => v.id === place().view && v.hour) || outing().views.find((v) => v.hour) || outing().views[0] || null;
  const zone = () => outing().zone || 'UTC';
  const today = () => dayIn(zone(), new Date());
  const edit = (change) => {
    store.edit(change);
    header();
    draw();
    ask(250);
  };
  const ofView = (change) => {
    const { id } = view();
    edit((o) => change(o.views.find((v) => v.id === id)));
  };

  function camera() {
    const { name: a, inBag: b, ...one } = kit?.cameras.find((c) => c.inBag) || {};
    const { name: c, inBag: d, ...two } = kit?.lenses.find((l) => l.inBag) || {};
    return Object.fromEntries(Object.entries({ ...one, ...two }).filter(([, v]) => v !== null && v !== undefined));
  }

  const question = () => questionOf(outing(), view(), today(), kit?.filters.some((f) => f.inBag) ? bagOf(kit, camera()) : null);

  const widthOf = (node, otherwise) => Math.max(280, Math.round(node.clientWidth || otherwise));

  function ask(after = 0) {
    clearTimeout(waiting);
    waiting = setTimeout(search, after);
  }

  async function search() {
    const asked = question();
    const mine = ++turn;
    if (!asked) {
      whole = null;
      draw();
      return;
    }
    host.classList.add('searching');
    try {
      const next = await json('/api/plan', { method: 'POST', body: JSON.stringify({ wishes: asked, ...(day ? { day } : {}), width: widthOf(weave, 800), lensWidth: Math.min(WIDEST_LENS, widthOf(planned.lens, 460)), small: document.body.dataset.light === 'night' ? 19 : 14 }) });
      if (mine !== turn || closed) {
        return;
      }
      const fresh = !whole;
      whole = next;
      fault = '';
      if (fresh) {
        draw();
      }
      show();
    } catch (error) {
      if (mine === turn && !closed) {
        fault = error.message;
        draw();
      }
    } finally {
      host.classList.remove('searching');
    }
  }

  const ofDay = () => whole.answer.windows.filter((w) => w.end > whole.from && w.start < whole.to);

  /** Puts an answer on the page without drawing the rest anew. */
  function show() {
    const { pictures } = whole;
    if (weave.isConnected && Math.abs(weave.clientWidth - pictures.weave.width) > 2 && weave.clientWidth >= 280) {
      ask(50);
    }
    planned.show(whole, zone());
    weave.innerHTML = pictures.weave.svg;
    const mine = ofDay();
    fill(
      title,
      dayWords(whole.day),
      mine.length ? el('span', {}, mine.map((w) => `${hourIn(zone(), w.start)} to ${hourIn(zone(), w.end)}, ${w.minutes} min`).join('; ')) : el('span.none', {}, 'no window'),
    );
    drawWindows();
    fill(pack, packingList({ answer: whole.answer, exposure: outing().plan?.exposure, zone: zone(), toKit: () => go({ page: 'kit', view: null, part: null, step: null, third: null }), sheet }));
    fill(cautions, whole.answer.cautions.map((text) => el('p.caution', {}, text)));
  }

  const drawWindows = () =>
    fill(windows, windowList({
      answer: whole.answer, mine: ofDay(), zone: zone(), all, chosen: outing().plan?.chosen?.start, longest: exposureEnds(outing().plan)?.[1],
      turnTo, choose, setAll: (value) => { all = value; drawWindows(); },
    }));

  function choose(window) {
    edit((o) => takeWindow(o, view(), window));
    say(takenWords(window, zone()));
    drawWindows();
  }

  async function sheet() {
    try {
      const reply = await call('/api/plan/sheet', { method: 'POST', body: JSON.stringify({ wishes: question(), day: whole.day }) });
      const address = URL.createObjectURL(await reply.blob());
      const link = el('a', { href: address, download: `plan-${whole.day}.pdf` });
      document.body.append(link);
      link.click();
      link.remove();
      setTimeout(() => URL.revokeObjectURL(address), 10_000);
      say('The sheet is written: one page.');
    } catch (error) {
      say(error.message);
    }
  }

  function turnTo(next) {
    const { from, to } = spanOf(outing().plan, today());
    day = next < from ? from : next >= to ? addDays(to, -1) : next;
    ask();
  }

  weave.addEventListener('click', (event) => {
    if (whole) {
      const { top, row, days, first } = whole.pictures.weave;
      const i = Math.floor((event.clientY - weave.getBoundingClientRect().top - top) / row);
      if (i >= 0 && i < days) {
        turnTo(addDays(first, i));
      }
    }
  });

  function nextWindow(direction) {
    const days = [...new Set(whole.answer.windows.map((w) => dayIn(zone(), new Date(w.start))))];
    const next = direction > 0 ? days.find((d) => d > whole.day) : days.filter((d) => d < whole.day).pop();
    if (next) {
      turnTo(next);
    }
  }

  function setPlace({ at, name, station, stationName, zone: zoneName }) {
    day = null;
    edit((o) => {
      o.place = { ...o.place, at, name, station, stationName };
      o.zone = zoneName;
      if (!o.views.some((v) => v.hour)) {
        const bare = o.views[0];
        const hour = station ? { sunAltitude: [-6, 5], tideDirection: 'falling' } : { sunAltitude: [-6, 5] };
        if (bare) {
          bare.hour = hour;
        } else {
          o.views.push({ id: 'view-1', name: 'first view', hour });
        }
      }
    });
  }

  const setWish = (name, value) =>
    ofView((v) => {
      v.hour = { ...v.hour };
      if (value === undefined) {
        delete v.hour[name];
      } else {
        v.hour[name] = value;
      }
    });

  const setPlan = (name, value) =>
    edit((o) => {
      o.plan = { ...o.plan };
      if (value === undefined) {
        delete o.plan[name];
      } else {
        o.plan[name] = value;
      }
    });

  function viewKeys() {
    const views = outing().views.filter((v) => v.hour);
    const words = (v) => (Number.isFinite(v.azimuth) ? `${v.name || v.id}: ${Math.round(v.azimuth)}°, ${v.focalMillimetres || 24} mm` : `${v.name || v.id}: no bearing yet`);
    return [
      views.map((v) => {
        const now = v.id === view()?.id;
        return key(words(v), () => (now ? openView() : (go({ page: 'before', view: v.id, part: null, step: null, third: null }))), { class: 'wish-chip', 'aria-pressed': String(now), 'data-focus': `plan-view-${v.id}`, title: now ? 'Set bearing and lens' : '' });
      }),
      key('Another view', () => {
        const id = `view-${1 + Math.max(0, ...outing().views.map((v) => Number(v.id.split('-')[1]) || 0))}`;
        const { azimuth = 270, altitude = 0, focalMillimetres = 24, hour } = view() || {};
        edit((o) => o.views.push({ id, name: `view ${o.views.length + 1}`, azimuth, altitude, focalMillimetres, hour: { ...hour } }));
        go({ page: 'before', view: id, part: null, step: null, third: null });
        openView();
      }, { class: 'wish-chip more', 'data-focus': 'view-more' }),
    ];
  }

  function openView() {
    const mine = view();
    const removable = outing().views.filter((v) => v.hour).length > 1;
    viewSheet(mine, (change) => ofView((v) => Object.assign(v, change)), removable ? () => {
      edit((o) => {
        const gone = o.views.find((v) => v.id === mine.id);
        if (gone.frames) {
          delete gone.hour;
        } else {
          o.views = o.views.filter((v) => v.id !== mine.id);
        }
      });
      go({ page: 'before', view: null, part: null, step: null, third: null });
    } : null);
  }

  function head() {
    const { place: where = {}, plan = {} } = outing();
    const span = spanOf(plan, today());
    const shift = (days) => {
      const from = addDays(span.from, days) < today() ? today() : addDays(span.from, days);
      day = null;
      edit((o) => { o.plan = { ...o.plan, from, to: addDays(from, span.days) }; });
    };
    const shutter = exposureEnds(plan);
    const water = plan.table ? 'typed table' : where.station === 'nearest' ? whole?.answer.station?.name || 'nearest station' : where.stationName || where.station;
    return el(
      'div.before-head',
      {},
      el('div.place-line', {}, el('h1', {}, key([el('b', {}, where.name || where.at), el('span', {}, [where.name ? where.at : '', water ? `water: ${water}` : 'no tide'].filter(Boolean).join(', '))], () => placeSheet(outing(), setPlace), { class: 'place-key', 'data-focus': 'place' })), el('div.chips', {}, viewKeys()), el('div.span-keys', { role: 'group', 'aria-label': 'Span of days' }, key('Earlier', () => shift(-span.days), { class: 'wish-chip', disabled: span.from <= today(), 'data-focus': 'span-earlier' }), el('span', {}, `${dayWords(span.from)} to ${dayWords(addDays(span.to, -1))}`), key('Later', () => shift(Math.min(span.days, MOST_DAYS)), { class: 'wish-chip', 'data-focus': 'span-later' }))),
      el('div.chips', {}, wishLine({ outing: outing(), view: view(), set: setWish }),
        key(`At least ${plan.minMinutes || 15} min`, () => leastSheet(plan, setPlan), { class: 'wish-chip plain', 'data-focus': 'plan-least' }),
        key(shutter ? `Shutter ${[...new Set(shutter.map(timeWords))].join(' to ')}` : 'Shutter time', () => exposureSheet(plan, setPlan, lensOf(view())), { class: 'wish-chip plain', 'data-focus': 'plan-exposure' }),
        where.station || plan.table ? key(plan.guard ? `Way back ${number(plan.guard.feetMetres, 1)} m` : 'Way back', () => guardSheet(plan, setPlan, whole?.answer.datum), { class: 'wish-chip plain', 'data-focus': 'plan-guard' }) : '',
        [['waters', 'table', 'Table of waters'], ['weather', 'weather', 'Forecast']].map(([kind, name, words]) =>
          key(Array.isArray(plan[name]) ? `${words}: ${plan[name].length} rows` : words, () => rowsSheet(kind, Array.isArray(plan[name]) ? plan[name] : undefined, zone(), (rows) => setPlan(name, rows)), { class: 'wish-chip plain', 'data-focus': `plan-${name}` })),
        key('The phone', () => phoneSheet({ store, say }, () => {}), { class: 'wish-chip plain', 'data-focus': 'plan-phone' })),
    );
  }

  function draw() {
    if (closed) {
      return;
    }
    if (!outing().place?.at) {
      fill(host, el('section.empty', {}, el('h1', {}, 'Where will you stand?'), el('p', {}, 'Type a latitude and longitude, or search for a port. Then say what you wish of sun, light and water, and the days are searched.'), placeForm(outing(), setPlace), caution()));
      return;
    }
    if (!question()) {
      fill(host, el('div.before', {}, head(), el('section.empty', {}, el('h1', {}, 'What do you wish of the hour?'), el('p', {}, 'Say at least one wish above: the height of the sun, the light, the water.'), caution())));
      return;
    }
    if (fault) {
      fill(host, el('div.before', {}, head(), el('section.empty.fault', { role: 'alert' }, el('h1', {}, 'The days were not searched'), el('p', {}, fault), key('Try again', () => ask(), { class: 'act' }))));
      return;
    }
    fill(
      host,
      el(
        'div.before',
        {},
        head(),
        el('div.before-days', {}, weave, el('p.weave-key', {}, [['window', 'window: all wishes hold'], ['night', 'night'], outing().place.station || outing().plan?.table ? ['water', 'water as wished'] : null].filter(Boolean).map(([name, words]) => el('span.weave-mark', {}, el(`span.k-${name}`, {}), words))), el('div.day-head', {}, title, el('div.keys', {}, key('Day before', () => turnTo(addDays(whole.day, -1)), { class: 'wish-chip', 'data-focus': 'day-before' }), key('Day after', () => turnTo(addDays(whole.day, 1)), { class: 'wish-chip', 'data-focus': 'day-after' }))), planned.strip, planned.words),
        el('div.before-side', {}, Number.isFinite(view()?.azimuth) ? planned.lens : el('div.no-view', {}, el('p', {}, 'No bearing yet: with one, the sun’s path through the picture stands here.'), key('Set bearing and lens', openView, { class: 'alt', 'data-focus': 'set-view' })), windows, pack, cautions),
      ),
    );
    if (whole) {
      show();
    } else {
      fill(windows, el('p.wait', {}, 'Searching the days.'));
    }
  }

  const caution = () => el('p.caution', {}, 'Predictions leave out weather, surge and waves, and are not for navigation. Never look at the sun through an optical finder; neutral-density filters are not solar filters.');

  draw();
  json('/api/kit').then((one) => { kit = one; }).catch((error) => say(error.message)).finally(() => ask());

  let resizing = 0;
  return {
    moved() {
      draw();
      ask();
    },
    changed() {
      draw();
      ask();
    },
    redraw() {
      clearTimeout(resizing);
      resizing = setTimeout(() => whole && ask(), 150);
    },
    key(event) {
      if (!whole) {
        return;
      }
      const act = {
        ArrowLeft: () => planned.step(-1, event.shiftKey),
        ArrowRight: () => planned.step(1, event.shiftKey),
        ArrowUp: () => turnTo(addDays(whole.day, -1)),
        ArrowDown: () => turnTo(addDays(whole.day, 1)),
        PageDown: () => nextWindow(1),
        PageUp: () => nextWindow(-1),
      }[event.key];
      if (act) {
        event.preventDefault();
        act();
      }
    },
    leave() {
      closed = true;
      clearTimeout(waiting);
      clearTimeout(resizing);
    },
  };
}
