// Sort: a folder becomes groups by view. Size is rank, every frame has its reason, nothing is ever taken away.

import { el, fill, key } from '../dom.js';
import { progressBox } from '../components/progress.js';
import { KIND_NAMES, burstsOf, byRank, clockOf, layOut, inSight, notAdvised, pathIn, sayRole, saySettings, sayTime, shortReason } from '../logic/after.js';
import { sortCard, thumbnail, writeMarks } from './desk.js';
import { choose } from './choose.js';
import { frameSheet } from './frame-sheet.js';
import { stackSheet } from './stack-sheet.js';

/** Pixels above and below the screen that are drawn ahead. */
const AHEAD = 900;
/** Pictures are fetched once the page rests for so long: who races past does not wait for them. */
const REST_MILLIS = 90;

export function open(host, app) {
  const { store, say } = app;
  let card = null;
  let cardOf = '';
  let stop = null;
  let layout = { blocks: [], height: 0 };
  let list = null;
  let bar = null;
  let drawn = new Map();
  let current = null;

  const folder = () => app.asked().folder || '';
  const kept = () => new Set(store.outing.kept || []);
  const pathOf = (frame) => pathIn(cardOf, frame.file);

  async function load() {
    const asked = folder();
    if (!asked) {
      stop?.abort();
      stop = null;
      cardOf = '';
      card = null;
      list = null;
      choose(host, app);
      return;
    }
    if (cardOf === asked) {
      return;
    }
    cardOf = asked;
    card = null;
    stop?.abort();
    const mine = new AbortController();
    stop = mine;
    const progress = progressBox(`Sorting ${asked}`, () => mine.abort());
    fill(host, el('div.after-wait', {}, el('h1', {}, `Sorting ${asked}`), el('p', {}, 'Frames are only read. Metadata and small copies first, then every view is measured.'), progress.box));
    try {
      const answer = await sortCard(asked, { signal: mine.signal, onProgress: progress.update });
      if (stop !== mine) {
        return;
      }
      card = answer;
      mount();
    } catch (error) {
      if (stop !== mine) {
        return;
      }
      cardOf = '';
      const words = error.name === 'AbortError' ? 'Stopped. Nothing was changed.' : error.message;
      fill(host, el('div.empty.fault', { role: 'alert' }, el('h1', {}, 'Not sorted'), el('p', {}, words), el('div.keys', {}, key('Try again', load, { class: 'act' }), key('Another folder', () => app.goTool('sort'), { class: 'alt' }))));
    }
  }

  function mount() {
    bar = el('div.sort-bar');
    list = el('div.sort-list', { role: 'group', 'aria-label': 'Frames by view and rank' });
    fill(host, bar, foot(), list);
    drawn = new Map();
    drawBar();
    lay();
    const asked = app.asked().frame;
    if (asked) {
      openFrame(asked);
    }
  }

  function drawBar() {
    const frames = card.groups.reduce((sum, g) => sum + g.frames.length, 0);
    const marks = keptFrames();
    fill(
      bar,
      el('h1', {}, el('b', {}, `${cardOf}:`), ` ${frames} frames, ${card.groups.filter((g) => g.kind === 'view').length} views`),
      el('p.cap', {}, 'Size is rank: what should be still, what should flow. Dotted and hatched: not advised, never deleted.'),
      el(
        'div.keys',
        {},
        key(marks.length ? `Write ${marks.length} ${marks.length === 1 ? 'mark' : 'marks'}` : 'Nothing kept yet', writeKept, { class: 'alt', disabled: !marks.length, 'data-focus': 'marks', title: 'xmp:Rating in sidecars beside the frames; a rating that is there stays' }),
        key('Another folder', () => app.goTool('sort'), { class: 'alt', 'data-focus': 'another-folder' }),
      ),
    );
  }

  /** What belongs to no view, and dust, told unasked. */
  function foot() {
    const { dust, skipped, clock } = card;
    if (!dust.length && !skipped.length && !clock) {
      return '';
    }
    return el(
      'details.sort-foot',
      {},
      el('summary', {}, [dust.length ? `Dust, ${dust.length} ${dust.length === 1 ? 'spot' : 'spots'}` : '', skipped.length ? `${skipped.length} ${skipped.length === 1 ? 'file' : 'files'} left out` : '', clock ? 'camera clock' : ''].filter(Boolean).join(' · ')),
      dust.length ? el('p', {}, 'At the same place of the sensor in several views: ', dust.map((d) => `${Math.round(100 * d.x)} % from the left, ${Math.round(100 * d.y)} % down, takes ${d.stops} stop`).join('; '), '. Repair spots it when asked.') : '',
      clock ? el('p', {}, `By ${clock.slates} ${clock.slates === 1 ? 'slate' : 'slates'} the camera's clock is ${Math.abs(Math.round(clock.cameraAheadSeconds))} s ${clock.cameraAheadSeconds < 0 ? 'behind' : 'ahead'}.`) : '',
      skipped.length ? el('ul', {}, skipped.slice(0, 50).map((s) => el('li', {}, el('b', {}, s.file), ` ${s.reason}`)), skipped.length > 50 ? el('li', {}, `and ${skipped.length - 50} more; ./ebblight sort --json names all`) : '') : '',
    );
  }

  const lay = () => {
    layout = layOut(card.groups, innerWidth, document.body.dataset.light === 'night');
    list.style.height = `${layout.height}px`;
    list.replaceChildren();
    drawn.clear();
    drawSeen();
  };

  function drawSeen(racing = false) {
    if (!list?.isConnected) {
      return;
    }
    performance.mark('sort-draw-begins');
    const top = -list.getBoundingClientRect().top;
    const seen = inSight(layout.blocks, top - AHEAD, top + innerHeight + AHEAD);
    const wanted = new Set(seen);
    for (const [block, node] of drawn) {
      if (!wanted.has(block) && !node.contains(document.activeElement)) {
        node.querySelectorAll('img').forEach((img) => img.removeAttribute('src'));
        node.remove();
        drawn.delete(block);
      }
    }
    clearTimeout(resting);
    resting = setTimeout(() => list.querySelectorAll('img[data-src]').forEach((img) => {
      img.src = img.dataset.src;
      delete img.dataset.src;
    }), racing ? REST_MILLIS : 0);
    for (const block of seen) {
      if (!drawn.has(block)) {
        const node = el(`section.block.${block.kind}${block.phone ? '.phone' : ''}`, { style: `top:${block.top}px;height:${block.height}px`, 'aria-label': block.title || null }, block.kind === 'head' ? head(block) : block.frames.map((f) => small(f, block.width, block.imageHeight)));
        drawn.set(block, node);
        // in the order of the page, so that Tab walks down
        const after = [...drawn.keys()].filter((b) => b.top > block.top).sort((a, b) => a.top - b.top)[0];
        list.insertBefore(node, after ? drawn.get(after) : null);
      }
    }
    performance.measure('sort-draw', 'sort-draw-begins');
  }

  const image = (frame, width, height) => el('img', { 'data-src': thumbnail(pathOf(frame), width < 200 ? 240 : 800), width: String(width), height: String(height), alt: '', decoding: 'async' });

  const say1 = (frame) => `Rank ${frame.rank}, ${[sayTime(frame), sayRole(frame)].filter(Boolean).join(', ')}, ${frame.file}${kept().has(pathOf(frame)) ? ', kept' : ''}. ${frame.notes.join('. ')}`;

  function frameKey(frame, width, height, big) {
    const path = pathOf(frame);
    const classes = ['frame', notAdvised(frame) ? 'bad' : '', kept().has(path) ? 'kept' : '', big ? 'best' : ''].filter(Boolean).join(' ');
    return el('button', { type: 'button', class: classes, 'data-frame': path, 'data-focus': `frame-${path}`, 'aria-label': say1(frame), onclick: () => app.goTool('sort', { folder: cardOf, frame: path }) }, el('span.im', { style: `width:${width}px;height:${height}px` }, image(frame, width, height)));
  }

  const small = (frame, width, height) =>
    el('div.cell', { style: `width:${width}px` }, frameKey(frame, width, height), el('p.told', { 'aria-hidden': 'true' }, el('span.n', {}, String(frame.rank)), el('b', {}, sayTime(frame)), kept().has(pathOf(frame)) ? el('i', {}, ' kept') : '', ` ${frame.role === 'test' ? 'test frame, ' : ''}${shortReason(frame)}`));

  function head(block) {
    const group = card.groups[block.group];
    const times = group.frames.map(clockOf).filter(Boolean).sort();
    const bursts = burstsOf(group);
    const title = el(
      'div.ti',
      {},
      el('h2', {}, block.title),
      el('p', {}, `${group.frames.length} ${group.frames.length === 1 ? 'frame' : 'frames'}`, times.length ? el('br') : '', times.length ? `${times[0]} to ${times[times.length - 1]}` : ''),
      bursts.map((b) => key(`Stack ${b.frames.length} frames`, () => stackSheet(app, b.frames.map(pathOf)), { class: 'alt', 'data-focus': `stack-${block.group}-${b.number}`, 'aria-label': `Stack burst ${b.number} of ${block.title}, ${b.frames.length} frames` })),
      bursts.map((b) => key('Blend it', () => app.goTool('blend', { folder: cardOf, burst: `${block.group}-${b.number}` }), { class: 'alt', 'data-focus': `blend-${block.group}-${b.number}`, 'aria-label': `Blend burst ${b.number} of ${block.title}` })),
      group.pairs.length ? key('Filter check', () => app.goTool('filter', { folder: cardOf, group: block.group }), { class: 'alt', 'data-focus': `filter-${block.group}` }) : '',
    );
    if (KIND_NAMES[group.kind] && !block.phone) {
      return [title, el('div.few', {}, block.few.map((f) => small(f, 116, 77)))];
    }
    const best = block.frames[0];
    const second = byRank(group)[1];
    return [
      title,
      frameKey(best, block.width, block.imageHeight, true),
      el(
        'div.info',
        {},
        el('span.one', { 'aria-hidden': 'true' }, '1'),
        el('p.time', {}, sayTime(best) || best.file),
        el('p.cap', {}, `${best.file}${kept().has(pathOf(best)) ? ', kept' : ''}`, el('br'), saySettings(best)),
        el('ul.told', {}, best.notes.slice(0, 3).map((n) => el('li', {}, n))),
        el(
          'div.keys',
          {},
          key('Finish', () => app.goTool('finish', { folder: cardOf, picture: pathOf(best) }), { class: 'act', 'data-focus': `finish-${block.group}` }),
          second ? key('Side by side', () => app.goTool('side', { folder: cardOf, a: pathOf(best), b: pathOf(second) }), { class: 'alt', 'data-focus': `side-${block.group}` }) : '',
        ),
      ),
      block.pair?.length ? el('div.pair', {}, block.pair.map((f) => small(f, 168, 112))) : '',
      block.few?.length ? el('div.few', { style: `grid-template-columns:repeat(${block.across},116px)` }, block.few.map((f) => small(f, 116, 77))) : '',
    ];
  }

  const find = (path) => {
    for (const [index, group] of card.groups.entries()) {
      const frame = group.frames.find((f) => pathOf(f) === path);
      if (frame) {
        return { index, group, frame };
      }
    }
    return null;
  };

  const keptFrames = () => (card ? card.groups.flatMap((g) => g.frames.filter((f) => kept().has(pathOf(f))).map((f) => ({ path: pathOf(f), best: f.rank === 1 }))) : []);

  async function writeKept() {
    try {
      const { sidecars } = await writeMarks(keptFrames());
      const left = sidecars.filter((s) => s.rating === null);
      say(`${sidecars.length - left.length} marked beside their frames, as xmp:Rating.${left.length ? ` ${left.length} left as they are: ${left[0].text}.` : ''}`);
    } catch (error) {
      say(`Not written: ${error.message}`);
    }
  }

  function toggleKept(path) {
    store.edit((outing) => {
      const now = new Set(outing.kept || []);
      if (!now.delete(path)) {
        now.add(path);
      }
      outing.kept = [...now].sort();
    });
    refresh();
  }

  function refresh() {
    if (!card || !list) {
      return;
    }
    const focused = document.activeElement?.dataset?.focus;
    lay();
    drawBar();
    if (focused) {
      host.querySelector(`[data-focus="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
    }
  }

  function openFrame(path) {
    const found = find(path);
    if (!found || current === path) {
      return;
    }
    current = path;
    frameSheet(app, {
      ...found,
      path,
      pathOf,
      folder: cardOf,
      isKept: () => kept().has(path),
      toggle: () => toggleKept(path),
      closed: () => {
        current = null;
        if (app.asked().frame === path) {
          app.goTool('sort', { folder: cardOf }, true);
        }
        focusFrame(path);
      },
    });
  }

  /** Scrolls to a frame and gives it the focus. */
  function focusFrame(path) {
    const found = find(path);
    const block = found && layout.blocks.find((b) => b.group === found.index && [...b.frames, ...(b.pair || []), ...(b.few || [])].includes(found.frame));
    if (!block) {
      return;
    }
    const top = list.getBoundingClientRect().top + scrollY + block.top;
    if (top < scrollY || top + block.height > scrollY + innerHeight) {
      scrollTo({ top: Math.max(0, top - 60) });
    }
    drawSeen();
    list.querySelector(`[data-frame="${CSS.escape(path)}"]`)?.focus({ preventScroll: true });
  }

  function step(event) {
    const ways = { ArrowRight: [0, 1], ArrowLeft: [0, -1], ArrowDown: [1, 0], ArrowUp: [-1, 0] };
    const way = ways[event.key];
    const on = document.activeElement?.dataset?.frame;
    if (way && card) {
      const found = on && find(on);
      if (!found) {
        focusFrame(pathOf(byRank(card.groups[0])[0]));
      } else if (way[0]) {
        const group = card.groups[found.index + way[0]];
        if (group) {
          focusFrame(pathOf(byRank(group)[0]));
        }
      } else {
        const next = byRank(found.group)[found.frame.rank - 1 + way[1]];
        if (next) {
          focusFrame(pathOf(next));
        }
      }
      event.preventDefault();
    } else if (event.key.toLowerCase() === 'k' && on) {
      toggleKept(on);
      event.preventDefault();
    }
  }

  let frame = 0;
  let resting = 0;
  const scrolled = () => {
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(() => drawSeen(true));
  };
  addEventListener('scroll', scrolled, { passive: true });
  load();
  return {
    hint: 'Arrows walk, Enter opens, K keeps.',
    moved(asked) {
      if (asked.folder !== cardOf || !card) {
        load();
      } else if (asked.frame) {
        openFrame(asked.frame);
      } else if (current) {
        document.querySelector('.sheet .sheet-head button')?.click();
      }
    },
    redraw: () => (card && list ? refresh() : null),
    changed: refresh,
    key: step,
    leave() {
      stop?.abort();
      removeEventListener('scroll', scrolled);
      cancelAnimationFrame(frame);
      clearTimeout(resting);
    },
  };
}
