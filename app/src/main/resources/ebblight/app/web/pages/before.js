// Before is not built yet; it says so, and what serves meanwhile.

import { el, key } from '../dom.js';

export function open(host, { go }) {
  host.append(
    el(
      'section.empty',
      {},
      el('h1', {}, 'Before: place and hour'),
      el('p', {}, 'The search for dates at which sun, tide and light agree is not in this version. Nothing is planned here, and nothing is guessed.'),
      el('p', {}, 'What serves today: on the shore, set the time to leave in There; pack by what Kit says your filters reach.'),
      el('div.keys', {}, key('To There', () => go({ page: 'there', view: null, part: null, step: null }), { class: 'act' }), key('To Kit', () => go({ page: 'kit', view: null, part: null, step: null, third: null }), { class: 'alt' })),
      el('p.caution', {}, 'Predictions leave out weather, surge and waves, and are not for navigation. Never look at the sun through an optical finder; neutral-density filters are not solar filters.'),
    ),
  );
  return {};
}
