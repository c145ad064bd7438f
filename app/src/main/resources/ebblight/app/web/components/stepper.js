// A value between two keys that run while held: no keyboard needed.

import { el, key, runWhileHeld } from '../dom.js';

/** @param read () => text; step (direction) => void */
export function stepper(label, read, step, focus) {
  const value = el('b', { role: 'status' }, read());
  const side = (sign, direction) => {
    const button = key(sign, () => {}, { 'aria-label': `${label} ${direction > 0 ? 'up' : 'down'}`, 'data-focus': `${focus || label}${direction}` });
    runWhileHeld(button, () => {
      step(direction);
      value.textContent = read();
    });
    return button;
  };
  return el('div.stepper', { role: 'group', 'aria-label': label }, el('small', {}, label), value, side('−', -1), side('+', 1));
}
