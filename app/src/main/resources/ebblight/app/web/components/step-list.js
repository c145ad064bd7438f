// All steps at once; to be edited: a step left out, a line of one's own.

import { el, key } from '../dom.js';

export function stepList(c) {
  const { store, steps, redraw } = c;
  const set = (change) => {
    store.edit((o) => {
      o.staff = { skip: [], lines: {}, ...o.staff };
      change(o.staff);
    });
  };
  const row = (one) =>
    el(
      `div.list-row${one.number === c.step.number ? '.now' : ''}${one.skipped ? '.skipped' : ''}`,
      {},
      el('button', { type: 'button', 'data-focus': `list-${one.number}`, onclick: () => c.toStep(one.number) }, `${one.number} ${one.name}`),
      el('input', {
        type: 'text', value: one.line, maxlength: '60', 'aria-label': `Line of ${one.name}`,
        onchange: (event) => set((staff) => { staff.lines = { ...staff.lines, [one.id]: event.target.value.trim() || undefined }; }),
      }),
      one.id === 'expose' ? '' : key(one.skipped ? 'take in' : 'leave out', () => { set((staff) => { staff.skip = one.skipped ? staff.skip.filter((id) => id !== one.id) : [...staff.skip, one.id]; }); redraw(); }, { class: 'alt', 'data-focus': `skip-${one.number}` }),
    );
  const hand = store.outing.hand === 'left' ? 'right' : 'left';
  return {
    content: [el('h1', { tabindex: '-1' }, 'The steps'), el('div.list-rows', {}, steps.map(row))],
    foot: el('div.keys2', {}, key(`Staff to the ${hand}`, () => { store.edit((o) => { o.hand = hand; }); c.redraw(); document.querySelector('.field')?.classList.toggle('left', hand === 'left'); }, { class: 'hold' }), key('Back to the step', () => c.toStep(c.step.number), { class: 'go' })),
  };
}
