// The easel: four black blades over the picture with a centimetre scale; the whole frame is pulled where paper rules,
// each blade where they are free.

import { el, fill } from '../dom.js';
import { clamp } from '../logic/finish.js';

const LEAST = 0.05;
const STEP = 0.01;

const round = (v) => Math.round(1000 * v) / 1000;

/** What the crop keeps of a picture, as fractions. */
export function keptOf(crop, width, height) {
  if (!crop) {
    return { left: 0, top: 0, right: 1, bottom: 1 };
  }
  if (!crop.paper) {
    return crop;
  }
  const border = crop.border || 0;
  const ratio = (crop.paper[0] - 2 * border) / (crop.paper[1] - 2 * border);
  const w = Math.min(1, height * ratio / width);
  const h = Math.min(1, width / ratio / height);
  const [x, y] = crop.at || [0.5, 0.5];
  const left = clamp(x - w / 2, 0, 1 - w);
  const top = clamp(y - h / 2, 0, 1 - h);
  return { left, top, right: left + w, bottom: top + h };
}

const tens = (centimetres) => Array.from({ length: Math.max(0, Math.ceil(centimetres / 10) - 1) }, (_, i) => el('b', { style: `left:${(1000 * (i + 1)) / centimetres}%` }, String(10 * (i + 1))));

export function easelOf(box, picture, crop, change) {
  const draw = () => {
    const width = picture.naturalWidth || 3;
    const height = picture.naturalHeight || 2;
    const k = keptOf(crop, width, height);
    const pc = (v) => `${(100 * v).toFixed(2)}%`;
    const centimetres = crop?.paper ? crop.paper[0] - 2 * (crop.border || 0) : 0;
    const scale = centimetres ? el('div.scale', { 'aria-hidden': 'true', style: `background-size:${(100 / centimetres).toFixed(3)}% 100%` }, tens(centimetres)) : '';
    const blade = (name, style) =>
      el('button', {
        type: 'button', class: `blade ${name}`, style, 'data-focus': `blade-${name}`, disabled: !crop || Boolean(crop.paper),
        'aria-label': `Blade ${name}, at ${Math.round(100 * k[name])} %`,
        onkeydown: (event) => {
          const way = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[event.key];
          if (way) {
            event.preventDefault();
            event.stopPropagation();
            move(name, k[name] + way * STEP);
          }
        },
        onpointerdown: (event) => pull(event, name),
      });
    fill(
      box,
      picture,
      el('div.shade', { style: `clip-path:polygon(evenodd,0 0,100% 0,100% 100%,0 100%,0 0,${pc(k.left)} ${pc(k.top)},${pc(k.right)} ${pc(k.top)},${pc(k.right)} ${pc(k.bottom)},${pc(k.left)} ${pc(k.bottom)},${pc(k.left)} ${pc(k.top)})` }),
      el('div.kept-frame', {
        style: `left:${pc(k.left)};top:${pc(k.top)};width:${pc(k.right - k.left)};height:${pc(k.bottom - k.top)}`,
        tabindex: crop?.paper ? '0' : null, role: crop?.paper ? 'group' : null, 'data-focus': 'kept-frame',
        'aria-label': crop?.paper ? 'What the paper keeps; arrow keys move it' : null,
        onkeydown: (event) => {
          const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
          if (way && crop?.paper) {
            event.preventDefault();
            event.stopPropagation();
            shift(way[0] * STEP, way[1] * STEP, k);
          }
        },
        onpointerdown: (event) => (crop?.paper ? pull(event, null) : null),
      }, scale),
      blade('left', `left:calc(${pc(k.left)} - 34px);top:calc(${pc(k.top)} - 34px);height:calc(${pc(k.bottom - k.top)} + 68px)`),
      blade('right', `left:${pc(k.right)};top:calc(${pc(k.top)} - 34px);height:calc(${pc(k.bottom - k.top)} + 68px)`),
      blade('top', `top:calc(${pc(k.top)} - 34px);left:calc(${pc(k.left)} - 34px);width:calc(${pc(k.right - k.left)} + 68px)`),
      blade('bottom', `top:${pc(k.bottom)};left:calc(${pc(k.left)} - 34px);width:calc(${pc(k.right - k.left)} + 68px)`),
    );

    function move(name, to) {
      const next = { left: k.left, top: k.top, right: k.right, bottom: k.bottom };
      const low = { left: 0, top: 0, right: k.left + LEAST, bottom: k.top + LEAST }[name];
      const high = { left: k.right - LEAST, top: k.bottom - LEAST, right: 1, bottom: 1 }[name];
      next[name] = round(clamp(to, low, high));
      change(next);
    }

    function shift(dx, dy, from) {
      const w = from.right - from.left;
      const h = from.bottom - from.top;
      change({ ...crop, at: [round(clamp((from.left + from.right) / 2 + dx, w / 2, 1 - w / 2)), round(clamp((from.top + from.bottom) / 2 + dy, h / 2, 1 - h / 2))] });
    }

    /** The frame follows the finger at once; the finish is changed when it is let go. */
    function pull(event, name) {
      const rect = box.getBoundingClientRect();
      const from = [event.clientX, event.clientY];
      const target = event.currentTarget;
      target.setPointerCapture(event.pointerId);
      event.preventDefault();
      let far = [0, 0];
      target.onpointermove = (e) => {
        far = [(e.clientX - from[0]) / rect.width, (e.clientY - from[1]) / rect.height];
        target.style.transform = name === null ? `translate(${e.clientX - from[0]}px,${e.clientY - from[1]}px)` : name === 'left' || name === 'right' ? `translateX(${e.clientX - from[0]}px)` : `translateY(${e.clientY - from[1]}px)`;
      };
      target.onpointerup = () => {
        target.onpointermove = null;
        target.onpointerup = null;
        target.style.transform = '';
        if (Math.hypot(...far) < 0.003) {
          return;
        }
        if (name === null) {
          shift(far[0], far[1], k);
        } else {
          move(name, k[name] + (name === 'left' || name === 'right' ? far[0] : far[1]));
        }
      };
    }
  };
  if (picture.complete && picture.naturalWidth) {
    draw();
  } else {
    fill(box, picture);
    picture.addEventListener('load', draw, { once: true });
  }
}
