// A view that is planned and not filmed yet: when, by when to leave, a first guess of shutter times, and the way to a clip.

import { el, fill, key } from '../dom.js';
import { dropBox } from '../components/drop.js';
import { guessBox } from '../components/plan-sheets.js';
import { dayIn, dayWords, hourIn, lensOf } from '../logic/plan.js';
import { guessedTime } from '../components/guessed-time.js';
import { viewKeys } from '../components/view-keys.js';

/** @param framesOf (path) => void, gives the view its clip; inputs what lies in the folder, as an element */
export function showPlanned(host, app, view, framesOf, inputs) {
  const { store } = app;
  const { plan, guard, zone } = store.outing;
  const chosen = plan?.chosen?.view === view.id ? plan.chosen : null;
  const guessed = guessedTime(app, view);
  const setPlan = (name, value) => store.edit((o) => { o.plan = { ...o.plan, [name]: value }; });
  fill(
    host,
    el(
      'section.empty.planned',
      {},
      el('h1', {}, view.name || view.id),
      chosen ? el('p', {}, el('b', {}, `${dayWords(dayIn(zone, new Date(chosen.start)))}, ${hourIn(zone, chosen.start)} to ${hourIn(zone, chosen.end)}. `), guard?.leaveBy ? `Leave by ${guard.leaveBy}.` : '') : el('p', {}, 'No hour taken yet: Before finds one. ', key('To Before', () => app.go({ page: 'before', view: view.id, part: null, step: null, third: null }), { class: 'alt' })),
      guessBox(plan || {}, setPlan, lensOf(view), guessed.tell),
      guessed.box,
      dropBox('Film it when you stand there', ['Put the camera on the tripod, or the phone on a rock. Lock exposure and focus. Ten seconds replace the guess.'], framesOf),
      inputs,
      viewKeys(app, view),
    ),
  );
  return { tell: () => {} };
}
