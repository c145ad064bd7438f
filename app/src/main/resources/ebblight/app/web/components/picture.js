// The picture at the chosen time, with what lies over it: seals of the parts, their edges, strokes, level line, thirds.

import { el } from '../dom.js';
import { layMasks } from './hatch.js';
import { nameOfKind, sealOfKind, sealPath } from '../axis/marks.js';

const PEN_STEP = 0.02;

export function mountPicture(host, emit) {
  const canvas = el('canvas', { 'aria-hidden': 'true' });
  const hatched = el('canvas', { 'aria-hidden': 'true' });
  const over = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  over.setAttribute('class', 'over');
  const seals = el('div.seals');
  const note = el('p.picture-note', {});
  const shade = el('button.picture-shade', { type: 'button', onclick: () => reveal() }, 'Touch to see the picture');
  host.classList.add('picture');
  host.append(canvas, hatched, over, seals, note, shade);
  let box = { x: 0, y: 0, w: 1, h: 1 };
  let shown = null;
  let data = { parts: [], strokes: [], lines: false, selected: null, tool: null, masks: [] };
  let laid = null;
  let drawing = null;
  let pen = { x: 0.5, y: 0.5, down: false };

  const reveal = () => host.classList.toggle('seen');

  /** Where in the host a picture of a size lies. */
  function place(width, height) {
    const { clientWidth: W, clientHeight: H } = host;
    const scale = host.dataset.fit === 'cover' ? Math.max(W / width, H / height) : Math.min(W / width, H / height);
    box = { w: width * scale, h: height * scale };
    box.x = (W - box.w) / 2;
    box.y = (H - box.h) / 2;
  }

  /** Draws a picture; returns once it is on the canvas. Before the first one comes, its place is known already. */
  function show(picture) {
    if (!picture) {
      if (data.size) {
        place(...data.size);
        hatch(false);
        lay();
      }
      note.textContent = data.note || '';
      return;
    }
    const { clientWidth: W, clientHeight: H } = host;
    const dpr = Math.min(2, window.devicePixelRatio || 1);
    place(picture.bitmap.width, picture.bitmap.height);
    const cw = Math.round(W * dpr);
    const ch = Math.round(H * dpr);
    const resized = canvas.width !== cw || canvas.height !== ch;
    for (const one of [canvas, hatched]) {
      if (one.width !== cw || one.height !== ch) {
        one.width = cw;
        one.height = ch;
      }
    }
    const pen2d = canvas.getContext('2d');
    pen2d.clearRect(0, 0, cw, ch);
    pen2d.imageSmoothingQuality = 'high';
    pen2d.drawImage(picture.bitmap, box.x * dpr, box.y * dpr, box.w * dpr, box.h * dpr);
    shown = picture;
    hatch(resized);
    lay();
  }

  /** Lays the hatches anew, when they or the place of the picture changed. */
  function hatch(always) {
    const { masks } = data;
    if (always || masks !== laid) {
      laid = masks;
      layMasks(hatched, masks, box, Math.min(2, window.devicePixelRatio || 1));
    }
  }

  const px = (x) => box.x + x * box.w;
  const py = (y) => box.y + y * box.h;

  /** Everything over the picture. */
  function lay() {
    over.setAttribute('viewBox', `0 0 ${host.clientWidth} ${host.clientHeight}`);
    let s = '';
    if (data.outline) {
      s += `<path d="${data.outline(px, py)}" class="edge-out"/><path d="${data.outline(px, py)}" class="edge-in"/>`;
    }
    if (data.lines) {
      const line = (x0, y0, x1, y1, c) => `<path d="M${px(x0)} ${py(y0)}L${px(x1)} ${py(y1)}" class="${c}"/>`;
      for (const c of ['guide-out', 'guide-in']) {
        for (const t of [1 / 3, 2 / 3]) {
          s += line(t, 0, t, 1, c) + line(0, t, 1, t, c);
        }
        const h = data.horizon;
        s += line(0, h ? (h.left + h.right) / 2 : 0.5, 1, h ? (h.left + h.right) / 2 : 0.5, `${c} level`);
      }
    }
    // Lines drawn before are seen while parts are corrected, and leave the picture alone otherwise.
    for (const stroke of data.tool ? [...data.strokes, ...(drawing ? [drawing] : [])] : []) {
      const path = stroke.points.map(([x, y], i) => `${i ? 'L' : 'M'}${px(x).toFixed(1)} ${py(y).toFixed(1)}`).join('');
      const wide = (stroke.width || 0) * box.w;
      if (wide) {
        s += `<path d="${path}l.1 0" class="stroke-out" style="stroke-width:${(wide + 3).toFixed(1)}px;stroke-opacity:.5"/><path d="${path}l.1 0" class="stroke-in" style="stroke-width:${wide.toFixed(1)}px;stroke-opacity:.5"/>`;
      } else {
        s += `<path d="${path}l.1 0" class="stroke-out"/><path d="${path}l.1 0" class="stroke-in"/>`;
      }
    }
    if (data.tool && data.wide) {
      const r = (data.wide * box.w / 2).toFixed(1);
      s += `<circle cx="${px(pen.x)}" cy="${py(pen.y)}" r="${r}" class="pen-out"/><circle cx="${px(pen.x)}" cy="${py(pen.y)}" r="${r}" class="pen-in"/>`;
    } else if (data.tool) {
      s += `<path d="M${px(pen.x) - 12} ${py(pen.y)}h24M${px(pen.x)} ${py(pen.y) - 12}v24" class="pen-out"/><path d="M${px(pen.x) - 12} ${py(pen.y)}h24M${px(pen.x)} ${py(pen.y) - 12}v24" class="pen-in"/>`;
    }
    over.innerHTML = s;
    seals.replaceChildren(
      ...(data.tool || data.bare ? [] : data.parts.filter((p) => p.place)).map((p) =>
        el(
          `button.seal-key${data.selected === p.id ? '.on' : ''}`,
          {
            type: 'button',
            style: `left:${px(p.place[0])}px;top:${py(p.place[1])}px`,
            'aria-label': `${nameOfKind(p.kind)}, ${Math.round(100 * p.areaFraction)} % of the picture; show this part`,
            'aria-pressed': String(data.selected === p.id),
            onclick: () => emit('part', { id: p.id }),
            html: `<svg width="20" height="20" viewBox="0 0 28 28" aria-hidden="true"><path d="${sealPath(sealOfKind(p.kind))}" fill="none" stroke="currentColor" stroke-width="2.4" stroke-linejoin="round" stroke-linecap="round"/></svg>`,
          },
        ),
      ),
    );
    note.textContent = data.note || '';
  }

  const at = (event) => {
    const r = host.getBoundingClientRect();
    const clip = (v) => Math.min(1, Math.max(0, v));
    return [clip((event.clientX - r.left - box.x) / box.w), clip((event.clientY - r.top - box.y) / box.h)];
  };
  const finish = () => {
    if (drawing) {
      emit('stroke', { kind: drawing.kind, ...(drawing.width ? { width: drawing.width } : {}), points: drawing.points.map(([x, y]) => [Number(x.toFixed(4)), Number(y.toFixed(4))]) });
      drawing = null;
    }
  };
  host.addEventListener('pointerdown', (event) => {
    if (data.tool && event.button === 0 && !event.target.closest('button')) {
      host.setPointerCapture(event.pointerId);
      drawing = { kind: data.tool, width: data.wide, pointer: event.pointerId, points: [at(event)] };
      [pen.x, pen.y] = drawing.points[0];
      event.preventDefault();
      lay();
    }
  });
  host.addEventListener('pointermove', (event) => {
    if (!drawing || drawing.pointer !== event.pointerId) {
      return;
    }
    // A quick finger moves more than once within a frame of the screen.
    const moves = event.getCoalescedEvents?.() || [];
    for (const move of moves.length ? moves : [event]) {
      const p = at(move);
      const last = drawing.points[drawing.points.length - 1];
      if (Math.hypot(p[0] - last[0], p[1] - last[1]) > 0.006) {
        drawing.points.push(p);
        [pen.x, pen.y] = p;
      }
    }
    lay();
  });
  host.addEventListener('pointerup', finish);
  host.addEventListener('pointercancel', finish);
  host.addEventListener('keydown', (event) => {
    if (!data.tool) {
      return;
    }
    const move = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (move) {
      pen.x = Math.min(1, Math.max(0, pen.x + PEN_STEP * move[0]));
      pen.y = Math.min(1, Math.max(0, pen.y + PEN_STEP * move[1]));
      drawing?.points.push([pen.x, pen.y]);
    } else if (event.key === ' ' || event.key === 'Enter') {
      if (drawing) {
        finish();
      } else {
        drawing = { kind: data.tool, width: data.wide, points: [[pen.x, pen.y]] };
      }
    } else {
      return;
    }
    event.preventDefault();
    event.stopPropagation();
    lay();
  });

  return {
    show,
    update(next) {
      data = { ...data, ...next };
      host.tabIndex = data.tool ? 0 : -1;
      host.setAttribute('role', data.tool ? 'application' : 'group');
      host.setAttribute('aria-label', data.tool ? 'Picture. Arrow keys move the pen, space begins and ends a stroke.' : data.label || 'The picture at the chosen time');
      host.classList.toggle('drawing', Boolean(data.tool));
      if (shown && !next.laidByShow) {
        hatch(false);
        lay();
      }
    },
    /** A place of the picture, in pixels of the host, and how many of them it is wide. */
    at: (x, y) => [px(x), py(y)],
    get width() {
      return box.w;
    },
    get shown() {
      return shown;
    },
  };
}

/** The edge of one part of a map of parts, as a path in fractions of the picture. */
export function outlineOf(map, width, height, index) {
  const is = (x, y) => x >= 0 && y >= 0 && x < width && y < height && map[y * width + x] === index;
  const runs = [];
  for (let y = 0; y <= height; y++) {
    let from = -1;
    for (let x = 0; x <= width; x++) {
      const edge = x < width && is(x, y) !== is(x, y - 1);
      if (edge && from < 0) {
        from = x;
      }
      if (!edge && from >= 0) {
        runs.push([from, y, x, y]);
        from = -1;
      }
    }
  }
  for (let x = 0; x <= width; x++) {
    let from = -1;
    for (let y = 0; y <= height; y++) {
      const edge = y < height && is(x, y) !== is(x - 1, y);
      if (edge && from < 0) {
        from = y;
      }
      if (!edge && from >= 0) {
        runs.push([x, from, x, y]);
        from = -1;
      }
    }
  }
  return (px, py) => runs.map(([a, b, c, d]) => `M${px(a / width).toFixed(1)} ${py(b / height).toFixed(1)}L${px(c / width).toFixed(1)} ${py(d / height).toFixed(1)}`).join('');
}
