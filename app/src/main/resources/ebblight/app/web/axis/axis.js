// The live time axis: drawn by draw.js, moved by pointer, touch and keys. Data down by update(), actions up by events:
// "third" {third} while moving, "settle" {third} at rest, "wish" {id}, "bag" {seconds}.

import { drawAxis } from './draw.js';
import { escapeText, glyph, sealSvg } from './marks.js';
import { bagPlaces } from './rows.js';
import { clampThird, sayThird, thirdOf } from './scale.js';
import { nearestWindow, verdict, windowThirds } from './lane.js';

const KEYS = { ArrowLeft: -1, ArrowRight: 1, ArrowDown: -3, ArrowUp: 3 };
const TAP_PIXELS = 10;

export function mountAxis(host, emit) {
  host.classList.add('time-axis');
  host.innerHTML = '<svg class="axis-drawing" tabindex="0" role="slider" aria-label="Shutter time"></svg><div class="axis-words"></div>';
  const svg = host.firstElementChild;
  const words = host.lastElementChild;
  let model = null;
  let options = null;
  let at = null;
  let drag = null;
  let written = '';
  const layers = [];

  const third = () => thirdOf(model.chosenSeconds);
  const go = (next, event) => {
    const to = clampThird(next);
    if (to !== third()) {
      emit('third', { third: to });
    }
    if (event === 'settle') {
      emit('settle', { third: to });
    }
  };

  function update(nextModel, nextOptions) {
    model = nextModel;
    options = nextOptions;
    const drawn = drawAxis(model, options);
    at = drawn.at;
    svg.setAttribute('width', drawn.width);
    svg.setAttribute('height', drawn.height);
    svg.setAttribute('viewBox', `0 0 ${drawn.width} ${drawn.height}`);
    drawn.layers.forEach((layer, i) => {
      if (layers[i]?.text !== layer) {
        layers[i] = { text: layer, group: layers[i]?.group || svg.appendChild(document.createElementNS(svg.namespaceURI, 'g')) };
        layers[i].group.innerHTML = layer;
      }
    });
    svg.setAttribute('aria-valuemin', '-9');
    svg.setAttribute('aria-valuemax', '30');
    svg.setAttribute('aria-valuenow', String(third()));
    svg.setAttribute('aria-valuetext', `${sayThird(third())}, ${verdict(model).words}`);
    overlay();
  }

  /** Keys that are words of the page: wishes and the bag. Kept in place, so that the focus stays. */
  function overlay() {
    const phone = options.form === 'phone';
    const keys = model.parts.map((part, i) => {
      const clash = model.clash && (model.clash.firstId === part.id || model.clash.secondId === part.id);
      const wish = part.wish ? part.wish + (part.closed ? ', no more' : '') : 'no wish';
      const raised = part.strip && part.strip.raised > 1 ? `raised ×${part.strip.raised}` : '';
      return {
        key: `wish-${part.id}`,
        name: 'wish',
        detail: { id: part.id },
        label: `${part.name}, wish: ${wish}`,
        style: phone
          ? `left:0;top:${at.rows[i]}px;width:132px;height:56px`
          : `left:0;top:${at.rows[i] - 2}px;width:${at.gutter - 10}px;height:${at.row}px`,
        className: phone ? 'axis-touch' : `axis-wish${clash ? ' clash' : ''}`,
        html: phone
          ? ''
          : `${sealSvg(part.seal, 30)}<span><b>${escapeText(part.name)}</b> <small>${raised}</small><span class="axis-word">${glyph(part.wish || 'none', 26, 14)}${escapeText(wish)}</span></span>`,
      };
    });
    const scene = { model, at, phone };
    for (const one of phone ? [] : bagPlaces(scene)) {
      const label = one.filters.length ? `${one.filters.join(' and ')} stops` : 'no filter';
      keys.push({
        key: `bag-${one.filters.join('-')}-${one.aperture}`,
        name: 'bag',
        detail: { seconds: one.seconds, filters: one.filters, fNumber: one.fNumber },
        label: `${label}, ${one.aperture}: ${sayThird(clampThird(thirdOf(one.seconds)))}`,
        style: `left:${one.left}px;top:${at.bagTop}px;width:${one.wide}px;height:36px`,
        className: 'axis-touch',
        html: '',
      });
    }
    const gutter = phone
      ? ''
      : [
          [at.bandTop + 4, 'Shutter time', model.windowWords],
          [at.bagTop, 'In the bag', model.bagWords],
          [at.worthTop, 'Worth', 'changes, stands off'],
          [at.limitsTop, 'Limits', ''],
        ]
          .filter(([, name]) => name !== 'Worth' || model.worth.length)
          .map(([y, a, b]) => `<div class="axis-gutter" style="top:${y}px;width:${at.gutter - 10}px"><b>${a}</b>${escapeText(b)}</div>`)
          .join('');
    const markup =
      keys.map((q) => `<button type="button" data-key="${escapeText(q.key)}" class="${q.className}" style="${q.style}" aria-label="${escapeText(q.label)}">${q.html}</button>`).join('') + gutter;
    if (markup === written) {
      return;
    }
    written = markup;
    const focused = document.activeElement && words.contains(document.activeElement) ? document.activeElement.dataset.key : null;
    words.innerHTML = markup;
    words.querySelectorAll('button').forEach((button, i) => {
      button.onclick = () => emit(keys[i].name, keys[i].detail);
      if (button.dataset.key === focused) {
        button.focus({ preventScroll: true });
      }
    });
  }

  const thirdAt = (event) => {
    const box = svg.getBoundingClientRect();
    return clampThird(Math.round(3 * at.k(((event.clientX - box.left) * options.width) / box.width)));
  };

  svg.addEventListener('pointerdown', (event) => {
    if (event.button > 0) {
      return;
    }
    svg.setPointerCapture(event.pointerId);
    drag = { x: event.clientX, moved: event.pointerType === 'mouse' };
    if (drag.moved) {
      go(thirdAt(event));
    }
  });
  svg.addEventListener('pointermove', (event) => {
    if (drag) {
      drag.moved = drag.moved || Math.abs(event.clientX - drag.x) > TAP_PIXELS;
      if (drag.moved) {
        go(thirdAt(event));
      }
    }
  });
  svg.addEventListener('pointerup', (event) => {
    if (drag) {
      drag = null;
      go(thirdAt(event), 'settle');
    }
  });
  svg.addEventListener('pointercancel', () => {
    // a finger that turns to scroll leaves the time where it had come to
    if (drag?.moved) {
      go(third(), 'settle');
    }
    drag = null;
  });

  /** Keys of the axis; true when the key was one. */
  function key(event) {
    const step = KEYS[event.key];
    if (step) {
      go(third() + step, 'settle');
      return true;
    }
    if (event.key === 'Home' || event.key === 'End' || event.key === 'PageUp' || event.key === 'PageDown') {
      const ends = model.windows.map((w) => windowThirds(w, model.limits.leaveSeconds));
      if (!ends.length) {
        return true;
      }
      const here = windowThirds(nearestWindow(model), model.limits.leaveSeconds);
      if (event.key === 'Home' || event.key === 'End') {
        go(event.key === 'Home' ? here.from : here.to, 'settle');
      } else {
        const i = ends.findIndex((e) => e.from === here.from);
        const next = ends[Math.min(ends.length - 1, Math.max(0, i + (event.key === 'PageDown' ? 1 : -1)))];
        go(next.from, 'settle');
      }
      return true;
    }
    return false;
  }
  svg.addEventListener('keydown', (event) => {
    if (!event.ctrlKey && !event.metaKey && !event.altKey && key(event)) {
      event.preventDefault();
      event.stopPropagation();
    }
  });

  return { update, key, focus: () => svg.focus(), element: svg };
}
