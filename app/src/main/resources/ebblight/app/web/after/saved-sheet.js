// Saved finishes: the photographer's own, kept in the outing by name.

import { el, fill, key } from '../dom.js';
import { openSheet } from '../components/sheet.js';
import { sentence } from '../logic/finish.js';

export function savedSheet(app, finish, take) {
  const { store } = app;
  openSheet('Saved finishes', (close) => {
    const body = el('div.saved');
    const draw = () => {
      const saved = store.outing.savedFinishes || [];
      const name = el('input', { type: 'text', maxlength: '60', placeholder: 'Dusk, warm', 'aria-label': 'Name of this finish', 'data-focus': 'saved-name' });
      fill(
        body,
        saved.length ? '' : el('p', {}, 'None yet. Give the finish of this picture a name, and take it for the next one. Level and crop stay with the picture.'),
        saved.map((one, i) =>
          el(
            'div.choose-row',
            {},
            el('div', {}, el('b', {}, one.name), el('span.cap', {}, sentence(one.finish).map((s) => s.text).join(', ') || 'nothing done')),
            el('div.keys', {}, key('Take it', () => { close(); take({ ...one.finish, ...Object.fromEntries(['level', 'crop'].filter((k) => finish[k] !== undefined).map((k) => [k, finish[k]])) }); }, { class: 'act', 'data-focus': `take-${i}`, 'aria-label': `Take ${one.name}` }), key('Remove', () => { store.edit((o) => { o.savedFinishes.splice(i, 1); }); draw(); }, { class: 'alt', 'data-focus': `remove-${i}`, 'aria-label': `Remove ${one.name}` })),
          )),
        el('form.saved-new', { onsubmit: (event) => {
          event.preventDefault();
          const text = name.value.trim();
          if (text) {
            const { level, crop, ...rest } = finish;
            store.edit((o) => { o.savedFinishes = [...(o.savedFinishes || []), { name: text, finish: rest }]; });
            draw();
          }
        } }, el('label.labelled', {}, el('small', {}, 'Name of this finish'), name), el('button', { type: 'submit', class: 'act' }, 'Save it')),
      );
    };
    draw();
    return body;
  });
}
