// The day's strip and the view through the lens, both as the server drew them, with one cursor of time over them.

import { el, fill } from '../dom.js';
import { hourIn, momentWords } from '../logic/plan.js';

const MOMENT_MINUTES = 5;

export function planDay() {
  let whole = null;
  let zone = 'UTC';
  let at = 0;
  const line = el('div.cursor-line', { 'aria-hidden': 'true' });
  const strip = el('div.strip', { role: 'slider', tabindex: '0', 'aria-label': 'Time of the day', 'data-focus': 'day-strip' });
  const sun = el('div.cursor-sun', { 'aria-hidden': 'true' });
  const moon = el('div.cursor-moon', { 'aria-hidden': 'true' });
  const lens = el('div.lens', {});
  const words = el('dl.moment', {});

  function place() {
    const moment = whole.moments[at];
    const { left, right } = whole.pictures.strip;
    line.style.left = `${left + ((right - left) * at) / (whole.moments.length - 1)}px`;
    line.dataset.hour = hourIn(zone, moment.time);
    line.classList.toggle('late', at > whole.moments.length * 0.85);
    strip.setAttribute('aria-valuemin', '0');
    strip.setAttribute('aria-valuemax', String(whole.moments.length - 1));
    strip.setAttribute('aria-valuenow', String(at));
    strip.setAttribute('aria-valuetext', `${hourIn(zone, moment.time)}. ${momentWords(moment).map(([n, t]) => `${n} ${t}`).join('. ')}`);
    fill(words, el('div', {}, el('dt', {}, 'At'), el('dd', {}, hourIn(zone, moment.time))), momentWords(moment).map(([name, text]) => el('div', {}, el('dt', {}, name), el('dd', {}, text))));
    const view = whole.pictures.lens;
    for (const [node, body] of [[sun, moment.sun], [moon, moment.moon]]) {
      const x = view && Number.isFinite(body.x) ? view.middleX + view.perMillimetre * body.x : NaN;
      const y = view && Number.isFinite(body.y) ? view.middleY - view.perMillimetre * body.y : NaN;
      const seen = x > 0 && y > 24 && x < view?.width && y < view?.height - 20 && body.altitude > -0.6;
      node.hidden = !seen;
      if (seen) {
        node.style.left = `${x}px`;
        node.style.top = `${y}px`;
      }
    }
  }

  function to(index) {
    at = Math.max(0, Math.min(whole.moments.length - 1, index));
    place();
  }

  function drag(event) {
    const { left, right } = whole.pictures.strip;
    const x = event.clientX - strip.getBoundingClientRect().left;
    to(Math.round(((x - left) / (right - left)) * (whole.moments.length - 1)));
  }

  strip.addEventListener('pointerdown', (event) => {
    if (whole && event.button === 0) {
      strip.setPointerCapture(event.pointerId);
      drag(event);
    }
  });
  strip.addEventListener('pointermove', (event) => {
    if (whole && (strip.hasPointerCapture(event.pointerId) || (event.pointerType === 'mouse' && event.buttons === 0))) {
      drag(event);
    }
  });

  return {
    strip, lens, words,
    /** Steps of five minutes. */
    step: (direction, far) => whole && to(at + direction * (far ? 60 / MOMENT_MINUTES : 1)),
    show(next, zoneName) {
      const other = !whole || whole.day !== next.day;
      whole = next;
      zone = zoneName;
      strip.innerHTML = whole.pictures.strip.svg;
      strip.append(line);
      if (whole.pictures.lens) {
        lens.innerHTML = whole.pictures.lens.svg;
        lens.append(sun, moon);
      } else {
        lens.replaceChildren();
      }
      if (other) {
        const first = whole.answer.windows.find((w) => w.end > whole.from && w.start < whole.to);
        const start = first ? Math.round((Date.parse(first.start) - Date.parse(whole.from)) / (60e3 * MOMENT_MINUTES)) : 12 * 12;
        at = Math.max(0, Math.min(whole.moments.length - 1, start));
      }
      at = Math.min(at, whole.moments.length - 1);
      place();
    },
  };
}
