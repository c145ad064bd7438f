// One frame: the picture, its rank and reasons, and where it can go from here.

import { el, fill, key } from '../dom.js';
import { openSheet } from '../components/sheet.js';
import { byRank, nameOf, saySettings, sayTime } from '../logic/after.js';
import { thumbnail } from './desk.js';
import { fillTiles } from './look.js';

export function frameSheet(app, { frame, group, path, pathOf, folder, isKept, toggle, closed }) {
  const view = group.kind === 'view';
  const best = byRank(group)[0];
  const pair = group.pairs.find((p) => pathOf({ file: p.with }) === path);
  let whole = false;
  openSheet(
    `${sayTime(frame) || frame.file}${view ? `, rank ${frame.rank} of ${group.frames.length}` : ''}`,
    (close) => {
      const body = el('div.frame-sheet');
      const leaveTo = (tool, asked) => {
        closed = () => {};
        close();
        app.goTool(tool, { folder, ...asked });
      };
      const draw = () => {
        const picture = el('div.frame-picture');
        if (whole) {
          fillTiles(picture, path);
        } else {
          picture.append(el('img', { src: thumbnail(path, 1600), alt: `${frame.file}, ${sayTime(frame)}` }));
        }
        fill(
          body,
          picture,
          el('p', {}, el('b', {}, nameOf(path)), ` ${saySettings(frame)}`),
          el('ul.told', {}, frame.notes.map((n) => el('li', {}, n))),
          el(
            'div.keys',
            {},
            view ? key(isKept() ? 'Kept' : 'Keep', () => { toggle(); draw(); }, { class: 'alt', 'aria-pressed': String(isKept()), 'data-focus': 'keep' }) : '',
            key(whole ? 'Whole picture' : 'Every pixel', () => { whole = !whole; draw(); }, { class: 'alt', 'data-focus': 'pixels' }),
            view && best !== frame ? key('Beside the best', () => leaveTo('side', { a: pathOf(best), b: path }), { class: 'alt', 'data-focus': 'beside' }) : '',
            pair ? key('Filter check', () => leaveTo('filter', { without: pathOf({ file: pair.without }), with: path }), { class: 'alt', 'data-focus': 'pair' }) : '',
            key('Repair', () => leaveTo('repair', { picture: path }), { class: 'alt', 'data-focus': 'repair' }),
            key('Finish', () => leaveTo('finish', { picture: path }), { class: 'act', 'data-focus': 'finish' }),
          ),
        );
      };
      draw();
      return body;
    },
    { className: 'tall', onclose: () => closed() },
  );
}
