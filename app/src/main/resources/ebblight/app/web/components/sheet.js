// A sheet over the page: the rest rests while it is open; Escape and the close key put it away.

import { el, key } from '../dom.js';

export function openSheet(title, build, { className = '', onclose } = {}) {
  const back = document.activeElement;
  const host = document.getElementById('sheets');
  const main = document.getElementById('main');
  const close = (result) => {
    if (!sheet.isConnected) {
      return;
    }
    sheet.remove();
    if (!host.children.length) {
      main.inert = false;
    }
    if (back && back.isConnected) {
      back.focus({ preventScroll: true });
    }
    onclose?.(result);
  };
  const heading = el('h2', { tabindex: '-1' }, title);
  const sheet = el(`section.sheet${className ? `.${className}` : ''}`, {
    role: 'dialog',
    'aria-modal': 'true',
    'aria-label': title,
    onkeydown: (event) => {
      if (event.key === 'Escape') {
        event.stopPropagation();
        close();
      }
    },
    onclick: (event) => {
      if (event.target === sheet) {
        close();
      }
    },
  });
  sheet.append(el('div.sheet-in', {}, el('div.sheet-head', {}, heading, key('Close', () => close(), { class: 'alt' })), build(close)));
  host.append(sheet);
  main.inert = true;
  heading.focus();
  return close;
}
