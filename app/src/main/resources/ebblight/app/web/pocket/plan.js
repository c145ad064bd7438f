// The windows to come, found on the phone from what was packed: place, wishes, the tide station's constants, the kit. And
// what sun, moon, light and water do now.

import { el, fill, key } from '../dom.js';
import { json } from '../http-carrier.js';
import * as engine from '../engine.js';
import { bagOf, cutOff, dayWords, guardWords, hourIn, dayIn, momentWords, plainWords, questionOf, takeWindow, takenWords } from '../logic/plan.js';
import { windowWish } from './hours.js';
import { packedOuting } from './packed.js';

const MOST_SHOWN = 12;

export function open(host, { store, go, place, say }) {
  let closed = false;
  let answer = null;
  let moment = null;
  let fault = '';
  let packed = {};
  const outing = () => store.outing;
  const zone = () => outing().zone || 'UTC';
  const view = () => outing().views.find((v) => v.id === place().view && v.hour) || outing().views.find((v) => v.hour) || null;

  async function search() {
    const now = new Date();
    packed = await packedOuting();
    const kit = await json('/api/kit');
    const question = view() && questionOf(outing(), view(), dayIn(zone(), now), kit.filters?.some((f) => f.inBag) ? bagOf(kit, {}) : null);
    try {
      moment = outing().place?.at ? await nowHere(now) : null;
      answer = question ? await engine.answer(windowWish(question, packed)).then((whole) => whole.answer) : null;
      fault = '';
    } catch (error) {
      fault = error.message;
    }
    if (!closed) {
      draw();
    }
  }

  async function nowHere(now) {
    const time = now.toISOString();
    const sky = await engine.sky({ at: outing().place.at, time });
    const tide = packed.station
      ? await engine.answer({ schema: 'tide/1', station: packed.station, from: new Date(now - 600e3).toISOString(), to: new Date(now.getTime() + 600e3).toISOString(), everySeconds: 600 }).then((whole) => whole.answer)
      : null;
    const levels = tide?.heights || [];
    return {
      sun: sky.sun, moon: sky.moon, ev100: sky.exposureValue100,
      ...(levels.length > 2 ? { heightMetres: levels[1].heightMetres, risingMetresPerHour: 3 * (levels[2].heightMetres - levels[0].heightMetres) } : {}),
    };
  }

  function take(window) {
    store.edit((o) => takeWindow(o, view(), window));
    say(takenWords(window, zone()));
    go({ page: 'there', part: null, step: null });
  }

  const row = (one) =>
    el(
      'li',
      {},
      el(
        'div',
        {},
        el('b', {}, `${dayWords(dayIn(zone(), new Date(one.start)))} ${hourIn(zone(), one.start)} to ${hourIn(zone(), one.end)}`),
        el('p', {}, `${one.minutes} min. ${one.why.map(plainWords).join('; ')}.`),
        el('p', {}, el('b', {}, guardWords(one, zone()))),
        outing().plan?.chosen?.start === one.start ? el('p.cap', {}, 'taken') : cutOff(one) ? '' : key('I go then', () => take(one), { class: 'alt' }),
      ),
    );

  function draw() {
    const windows = (answer?.windows || []).filter((one) => Date.parse(one.end) > Date.now());
    fill(
      host,
      el(
        'section.log',
        {},
        el('div.log-head', {}, el('h1', {}, 'Windows')),
        fault ? el('p.fault', { role: 'alert' }, fault) : '',
        moment ? el('dl.now', {}, momentWords(moment).map(([name, text]) => [el('dt', {}, `${name} now`), el('dd', {}, text)])) : '',
        !view() ? el('p', {}, 'No wish of the hour is packed. Plan on the desk, then make the page again.') : '',
        view() && answer && !windows.length ? el('p', {}, `No window in the days searched.${answer.hardest ? ` ${plainWords(answer.hardest)}.` : ''}`) : '',
        el('ol.log-rows', {}, windows.slice(0, MOST_SHOWN).map(row)),
        windows.length > MOST_SHOWN ? el('p.cap', {}, `and ${windows.length - MOST_SHOWN} later ones`) : '',
        (answer?.cautions || packed.cautions || []).map((text) => el('p.caution', {}, text)),
        packed.station?.attribution ? el('p.cap', {}, packed.station.attribution) : '',
      ),
    );
  }

  draw();
  search();
  return { changed: search, moved: search, leave: () => { closed = true; } };
}
