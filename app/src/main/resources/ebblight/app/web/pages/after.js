// After is not built yet; it says so, shows what was made, and what the command line does meanwhile.

import { el, key } from '../dom.js';

export function open(host, { store, go }) {
  const log = store.outing.log || [];
  host.append(
    el(
      'section.empty',
      {},
      el('h1', {}, 'After: sort, blend, finish'),
      el('p', {}, 'The pages of After are not in this version. Your frames lie where they were; nothing was touched.'),
      el('p', {}, log.length ? `The log of this outing holds ${log.length} ${log.length === 1 ? 'frame' : 'frames'}.` : 'The log of this outing is empty: take a time to the shot in There, and it fills by itself.'),
      el('p', {}, 'What serves today: ', el('code', {}, './ebblight stack FRAMES -o OUT.tif'), ' makes one long exposure from a burst, in linear light, 16 bit.'),
      el('div.keys', {}, log.length ? key('To the log', () => go({ page: 'there', part: 'log', step: null }), { class: 'act' }) : key('To There', () => go({ page: 'there', part: null, step: null }), { class: 'act' })),
    ),
  );
  return {};
}
