// Long work: how much, how long, and a way to stop. The stroke lies down as the work is done.

import { el, key } from '../dom.js';
import { strokePath } from '../axis/marks.js';

export function progressBox(title, onstop) {
  const stage = el('b', {}, title);
  const left = el('span', {}, '');
  const drawing = el('span.progress-stroke', { 'aria-hidden': 'true' });
  const box = el(
    'div.progress',
    { role: 'progressbar', 'aria-label': title, 'aria-valuemin': '0', 'aria-valuemax': '100', 'aria-valuenow': '0' },
    el('p', {}, stage, left),
    drawing,
    onstop ? key('Stop', onstop, { class: 'alt' }) : '',
  );
  const draw = (fraction) => {
    const w = 560;
    const at = Math.max(6, w * fraction);
    const rest = at < w - 8 ? `<path d="${strokePath(at, w, 16, 13, () => 1, 5, 6)}" fill="none" stroke="currentColor" stroke-width="2.4" stroke-linejoin="bevel"/>` : '';
    drawing.innerHTML = `<svg viewBox="0 0 ${w} 32" width="100%" height="32" preserveAspectRatio="none"><path d="M2 16H${at}" stroke="currentColor" stroke-width="6"/>${rest}</svg>`;
  };
  draw(0);
  return {
    box,
    update(state) {
      const percent = Math.round(100 * state.fraction);
      box.setAttribute('aria-valuenow', String(percent));
      stage.textContent = `${state.stage[0].toUpperCase()}${state.stage.slice(1)}, ${percent} %`;
      left.textContent = state.secondsLeft > 0.5 ? `about ${timeLeft(state.secondsLeft)} left` : '';
      draw(state.fraction);
    },
  };
}

function timeLeft(seconds) {
  return seconds < 90 ? `${Math.ceil(seconds)} s` : `${Math.ceil(seconds / 60)} min`;
}
