// The picture on its mount: the step tablet beside it from which the picture's own colours hang, the test strip laid on
// it, the easel with its four blades round it.

import { el, fill } from '../dom.js';
import { nameOfKind, sealOfKind, sealSvg } from '../axis/marks.js';
import { clamp, gradeWord, partStops, sayStops } from '../logic/finish.js';
import { easelOf } from './easel.js';

const LIGHTEST = 2.5;
const STEP_STOPS = 0.5;
const SVG = 'http://www.w3.org/2000/svg';

const srgb = (linear) => Math.round(255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055));

export function mountOf(host, { wait, moveColour, chooseColour, movePart, choosePart, grade, crop }) {
  const picture = el('img', { alt: '' });
  const box = el('div.print');
  const side = el('div.tablet');
  let data = null;
  let drag = null;

  function update(next) {
    data = next;
    const source = next.bare ? next.untouched || next.bitmap : next.bitmap;
    if (!source) {
      fill(host, el('div.mount-wait', {}, wait(), next.fault ? el('p.fault', { role: 'alert' }, next.fault) : ''));
      return;
    }
    const edges = next.drawer === 'edges' && !next.strip && next.edges;
    host.classList.toggle('easel', edges);
    if (!host.contains(box)) {
      fill(host, box, side);
    }
    if (picture.getAttribute('src') !== source) {
      picture.src = source;
    }
    picture.alt = next.bare ? 'The picture untouched' : 'The picture with this finish';
    if (next.strip && !next.bare) {
      fill(box, picture, pieces());
    } else if (edges && !next.bare) {
      easelOf(box, picture, next.finish.crop, crop);
    } else {
      fill(box, picture);
    }
    fill(side, edges ? sheet() : tablet());
    side.hidden = Boolean(next.strip);
  }

  /** Five pieces of the picture, cut, each with its grade. */
  function pieces() {
    const middle = data.finish.grade ?? 2;
    return el(
      'div.pieces',
      { role: 'group', 'aria-label': 'Test strip of grades' },
      data.stripGrades.map((g, i) =>
        el(
          'button',
          { type: 'button', 'aria-label': `Grade ${gradeWord(g)}${g === middle ? ', now' : ''}`, 'aria-pressed': String(g === middle), 'data-focus': `grade-${i}`, onclick: () => grade(i), style: data.strip[i] ? `background-image:url(${data.strip[i]});background-size:500% 100%;background-position:${25 * i}% 0` : '' },
          el('b', {}, g === middle ? `grade ${gradeWord(g)}` : gradeWord(g)),
        )),
    );
  }

  /** Half stops from paper to black; a wide step fills more of the print. */
  function tablet() {
    const steps = data.drawn?.steps || [];
    const rows = steps.map((share, i) => {
      const stops = LIGHTEST - STEP_STOPS * i;
      const c = srgb(clamp(0.18 * Math.pow(2, stops), 0, 1));
      const label = Number.isInteger(stops) ? sayStops(stops) : '';
      return el(`div.tone-step${stops === 0 ? '.middle' : ''}`, {}, el('span', {}, label), el('i', { style: `width:${(18 + 190 * Math.pow(share, 0.75)).toFixed(0)}px;background:rgb(${c},${c},${c})` }, i === 0 ? 'paper' : i === steps.length - 1 ? 'black' : ''));
    });
    const tags = tagsOf();
    return [
      el('div.tone-steps', { role: 'img', 'aria-label': describe(steps) }, rows),
      tags.length
        ? el('div.hang', { role: 'group', 'aria-label': data.drawer === 'tone' ? 'Parts of the picture at their tone' : 'Colours of the picture at their tone' }, hanging(tags))
        : el('p.cap', {}, 'Stops from middle grey. A wide step fills more of the print.'),
    ];
  }

  const describe = (steps) => `Tones of the print: ${steps.map((share, i) => [LIGHTEST - STEP_STOPS * i, share]).filter(([, s]) => s > 0.08).map(([v, s]) => `${Math.round(100 * s)} % at ${sayStops(v)}`).join(', ')} stops from middle grey`;

  /** What hangs from the tablet: the parts of the picture by their seals; its own colours where the colours are open. */
  function tagsOf() {
    const parts = data.drawn?.parts || [];
    if (data.drawer !== 'colour' && parts.length) {
      return parts.filter((p) => p.toneStops !== null).map((p) => {
        const stops = partStops(data.finish, p.kind);
        return { toneStops: p.toneStops, stops, word: nameOfKind(p.kind), on: data.part === p.kind, mark: el('i.seal', { 'aria-hidden': 'true', html: sealSvg(sealOfKind(p.kind), 20) }), choose: () => choosePart(p.kind), move: (to) => movePart(p.kind, to) };
      });
    }
    const colours = data.finish.blackAndWhite ? data.drawn?.colours || [] : [];
    return colours.map((c, i) => ({ toneStops: c.toneStops, stops: c.stops || 0, word: c.word, on: i === data.colour, mark: el('i.patch', { 'aria-hidden': 'true' }, el('span', { style: `background:lab(${c.lab[0]}% ${c.lab[1]} ${c.lab[2]})` })), choose: () => chooseColour(i), move: (to) => moveColour(i, to) }));
  }

  /** Tags at their middle tone; they keep off each other, and are pulled up and down. */
  function hanging(tags) {
    const per = 100 / 16;
    const placed = tags.map((c, i) => ({ c, i, at: c.toneStops === null ? 50 : clamp((LIGHTEST - c.toneStops) / STEP_STOPS * per + per / 2, 3, 97) })).sort((a, b) => a.at - b.at);
    const apart = Math.min(10.5, 94 / Math.max(1, placed.length - 1));
    let last = -99;
    placed.forEach((p) => {
      p.y = Math.max(p.at, last + apart);
      last = p.y;
    });
    const over = last - 97;
    if (over > 0) {
      let most = 97;
      for (const p of [...placed].reverse()) {
        p.y = Math.min(p.y, most);
        most = p.y - apart;
      }
    }
    const lines = document.createElementNS(SVG, 'svg');
    lines.setAttribute('class', 'threads');
    lines.setAttribute('viewBox', '0 0 40 100');
    lines.setAttribute('preserveAspectRatio', 'none');
    lines.innerHTML = placed.map((p) => `<path d="M0 ${p.at.toFixed(1)}L34 ${p.y.toFixed(1)}H40" class="${p.c.on ? 'on' : ''}"/>`).join('');
    return [
      lines,
      ...placed.map(({ c, i, y }) =>
        el(
          'button',
          {
            type: 'button', style: `top:${y.toFixed(1)}%`, class: c.on ? 'on' : '', 'data-focus': `hang-${i}`,
            'aria-label': `${c.word}, middle tone ${c.toneStops === null ? 'unknown' : sayStops(c.toneStops)} stops; arrow up lighter, arrow down darker`,
            onclick: c.choose,
            onkeydown: (event) => {
              const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
              if (way) {
                event.preventDefault();
                event.stopPropagation();
                c.move(c.stops + way / 6);
              }
            },
            onpointerdown: (event) => {
              drag = { move: c.move, y: event.clientY, stops: c.stops, height: side.querySelector('.tone-steps').clientHeight };
              event.target.setPointerCapture?.(event.pointerId);
            },
          },
          c.mark,
          el('span', {}, c.word),
          el('b', {}, c.toneStops === null ? '' : sayStops(c.toneStops)),
        )),
    ];
  }

  side.addEventListener('pointermove', (event) => {
    if (drag && Math.abs(event.clientY - drag.y) > 3) {
      event.preventDefault();
      drag.moved = drag.stops + (drag.y - event.clientY) / drag.height * 8;
    }
  });
  side.addEventListener('pointerup', () => {
    if (drag && drag.moved !== undefined) {
      drag.move(drag.moved);
    }
    drag = null;
  });

  /** The sheet of paper, to scale, and how many pixels lie on it. */
  function sheet() {
    const { drawn, finish } = data;
    const { crop: cut } = finish;
    if (!drawn) {
      return [];
    }
    if (!cut?.paper) {
      const width = cut ? Math.round((cut.right - cut.left) * drawn.keptWidth) : drawn.keptWidth;
      const height = cut ? Math.round((cut.bottom - cut.top) * drawn.keptHeight) : drawn.keptHeight;
      return [el('div.sheet-note', {}, el('h2', {}, `${width} × ${height} pixels`), el('p', {}, cut ? 'Blades are free. Pull a blade, or move it by arrow keys.' : 'Choose the paper first; the ratio follows.'))];
    }
    const [pw, ph] = cut.paper;
    const border = cut.border || 0;
    const ratio = (pw - 2 * border) / (ph - 2 * border);
    const across = Math.min(drawn.keptWidth, Math.round(drawn.keptHeight * ratio));
    const scale = 190 / Math.max(pw, ph);
    const inner = pw - 2 * border;
    return [
      el(
        'div.sheet-note',
        {},
        el('h2', {}, `Paper ${pw} × ${ph} cm`),
        el('p', {}, border ? `white border ${border} cm` : 'no border'),
        el('div.paper', { style: `width:${(pw * scale).toFixed(0)}px;height:${(ph * scale).toFixed(0)}px;padding:${(border * scale).toFixed(0)}px`, 'aria-hidden': 'true' }, el('div')),
        el('p', {}, `picture ${+inner.toFixed(1)} × ${+(ph - 2 * border).toFixed(1)} cm`, el('br'), `${across} × ${Math.round(across / ratio)} pixels, ${Math.round(across / inner * 2.54)} an inch`),
      ),
    ];
  }

  return { update };
}
