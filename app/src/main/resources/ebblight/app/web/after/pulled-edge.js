// The handle on the edge of a part: pulled away from it, the edge runs over a wider strip of the picture.

import { el } from '../dom.js';
import { WIDEST_EDGE, edgePixels } from '../logic/blend.js';
import { clamp } from '../logic/finish.js';

/** Pixels of the screen from the edge to the handle of an edge that was not pulled. */
const REST = 26;
/** Pixels of the screen by which the handle moves for one of the edge: small widths matter most. */
const GEAR = 3;
const STEP = 0.001;

/**
 * @param pull (edge, over) => void: how wide the edge is while it is pulled, and when it was let go
 */
export function pulledEdge(host, pull) {
  const rod = el('i.edge-rod', { 'aria-hidden': 'true' });
  const root = el('i.edge-root', { 'aria-hidden': 'true' });
  const knob = el('button.edge-knob', {
    type: 'button', role: 'slider', 'aria-valuemin': '0', 'data-focus': 'edge',
    onpointerdown: (event) => {
      knob.setPointerCapture(event.pointerId);
      event.stopPropagation();
      held = true;
    },
    onpointermove: (event) => held && pull(edgeAt(event), false),
    onpointerup: (event) => {
      if (held) {
        held = false;
        pull(edgeAt(event), true);
      }
    },
    onpointercancel: () => { held = false; },
    onkeydown: (event) => {
      const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
      if (way || event.key === 'Home') {
        event.preventDefault();
        event.stopPropagation();
        pull(way ? rounded(data.edge + STEP * way) : 0, true);
      }
    },
  });
  let held = false;
  let data = null;
  host.append(rod, root, knob);

  const rounded = (edge) => clamp(Math.round(edge * 2000) / 2000, 0, WIDEST_EDGE);

  function edgeAt(event) {
    const box = host.getBoundingClientRect();
    const { from, out, width } = data;
    const along = (event.clientX - box.left - from[0]) * out[0] + (event.clientY - box.top - from[1]) * out[1];
    return rounded((along - REST) / (GEAR * width));
  }

  return {
    /** @param next { view, place, edge, pixels, name } or null: no handle */
    update(next) {
      for (const part of [rod, root, knob]) {
        part.hidden = !next;
      }
      if (!next) {
        return;
      }
      const from = next.view.at(next.place.x, next.place.y);
      const { width } = next.view;
      const far = REST + GEAR * next.edge * width;
      const [dx, dy] = next.place.out;
      data = { from, out: next.place.out, width, edge: next.edge };
      rod.style.cssText = `left:${from[0]}px;top:${from[1]}px;width:${far}px;transform:rotate(${Math.atan2(dy, dx)}rad)`;
      root.style.cssText = `left:${from[0]}px;top:${from[1]}px`;
      knob.style.cssText = `left:${clamp(from[0] + dx * far, 24, host.clientWidth - 24)}px;top:${clamp(from[1] + dy * far, 24, host.clientHeight - 24)}px`;
      const words = next.edge ? `edge ${edgePixels(next.edge, next.pixels)} px` : 'pull the edge';
      knob.replaceChildren(el('span', {}, words));
      knob.classList.toggle('left', from[0] + dx * far > 0.6 * host.clientWidth);
      knob.setAttribute('aria-label', `Edge of ${next.name}`);
      knob.setAttribute('aria-valuemax', String(edgePixels(WIDEST_EDGE, next.pixels)));
      knob.setAttribute('aria-valuenow', String(edgePixels(next.edge, next.pixels)));
      knob.setAttribute('aria-valuetext', next.edge ? `${edgePixels(next.edge, next.pixels)} pixels` : 'as the picture has it');
    },
  };
}
