// A short tour of three sentences for a first look; put away once and for all.

import { el, key } from '../dom.js';

const STEPS = [
  ['The strips are your view at fourteen shutter times. Drag along them: the picture follows.', '.time-axis'],
  ['Where the lane runs, every wish holds. Touch a word at the left to wish something else of a part.', '.axis-wish, .axis-touch'],
  ['Set a reading under Meter, then take the time to the shot: nine steps, in the order of the field.', '.side, .foot-bar'],
];

export function tour(store, host) {
  if (localStorage.getItem('ebblight-tour') === 'seen') {
    return () => {};
  }
  let at = 0;
  const box = el('aside.tour', { 'aria-label': 'A short tour' });
  const away = () => {
    localStorage.setItem('ebblight-tour', 'seen');
    box.remove();
  };
  const draw = () => {
    const last = at === STEPS.length - 1;
    box.replaceChildren(
      el('p', { role: 'status' }, el('b', {}, `${at + 1} of ${STEPS.length}  `), STEPS[at][0]),
      el('div.keys', {}, key(last ? 'Begin' : 'Next', () => { if (last) { away(); } else { at++; draw(); box.querySelector('button').focus(); } }, { class: 'act' }), last ? '' : key('No tour', away, { class: 'alt' })),
    );
  };
  draw();
  host.prepend(box);
  return () => box.remove();
}
