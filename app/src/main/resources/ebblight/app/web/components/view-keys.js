// The views of the outing, those that are only planned among them, and the ways to another clip and to the log.

import { el, key } from '../dom.js';

export function viewKeys({ store, go }, shown) {
  const { views, log } = store.outing;
  return el(
    'div.views',
    { role: 'group', 'aria-label': 'Views of this outing' },
    views.map((v) => key(v.frames ? v.name : `${v.name || v.id}, planned`, () => go({ view: v.id, part: null, step: null, third: null }), { 'aria-pressed': String(v.id === shown.id), 'data-focus': `view-${v.id}` })),
    key('Another clip', () => go({ part: 'new', step: null, view: shown.id }), { 'data-focus': 'another' }),
    shown.frames ? key(`Log, ${(log || []).length}`, () => go({ part: 'log', step: null, view: shown.id }), { 'data-focus': 'log' }) : '',
  );
}
