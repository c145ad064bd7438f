// The log of the outing: what was taken, how, and why.

import { el, fill, key } from '../dom.js';
import { say, sayThird } from '../axis/scale.js';
import { clockIn } from '../logic/zone.js';
import { filterWords, fLabel } from '../components/side.js';
import { stopWords } from '../logic/staff.js';

export function showLog(host, app) {
  const { store, go, scene } = app;
  host.classList.add('log-page');
  const draw = () => {
    const log = [...(store.outing.log || [])].reverse();
    fill(
      host,
      el(
        'section.log',
        {},
        el('div.log-head', {}, el('h1', {}, 'Log'), el('div.keys', {}, key('To the axis', () => go({ part: null, step: null, third: scene.state.third }), { class: 'act' }))),
        log.length ? '' : el('p', {}, 'No frame yet. Take a time to the shot; what you expose is written here by itself, into outing.json.'),
        el('ol.log-rows', {}, log.map(row)),
        store.whole.keptWords && !store.whole.beside ? el('div.fault', { role: 'alert' }, el('p', {}, store.whole.keptWords), key('Save or send the log', () => go({ page: 'after', view: null, part: null, step: null, third: null }), { class: 'alt' })) : '',
        store.unsaved ? el('p.fault', {}, 'Not saved yet; it is kept in this browser and tried again.') : '',
      ),
    );
  };
  const row = (e) =>
    el(
      'li',
      {},
      el('b.frame', {}, String(e.frame)),
      el('div', {}, el('b', {}, sayThird(e.third)), ` ${e.settings ? `${filterWords(e.settings.filters)}, ${fLabel(e.settings.fNumber)}, ISO ${e.settings.iso}` : ''}`, el('p', {}, `${clockIn(store.outing.zone, Date.parse(e.openedAt))}, open ${say(Math.max(0.1, e.openSeconds))}, ${Math.abs(e.offStops) < 0.05 ? 'as planned' : `${stopWords(e.offStops)} against the plan`}`)),
      el('div', {}, el('p', {}, [e.why?.flow, e.why?.hold].filter(Boolean).join('; ') || (e.why ? 'no wish' : ''), e.why ? `, for ${e.why.for}` : ''), el('p.cap', {}, [...(e.marks || []).map((m) => `${m.what} at ${say(Math.max(0.1, m.atSeconds))}`), ...(e.tags || []), e.pair ? 'pair' : ''].filter(Boolean).join(', '))),
      el(`span.verdict-word${e.verdict === 'not' ? '.not' : ''}`, {}, e.verdict === 'not' ? 'not this one' : e.verdict === 'keep' ? 'kept' : 'not judged'),
    );
  draw();
  // what is not saved yet is a moment later
  const unheard = store.listen(draw);
  return { tell: draw, redraw: draw, leave: unheard, key: (event) => event.key === 'Escape' && go({ part: null, step: null, third: scene.state.third }) };
}
