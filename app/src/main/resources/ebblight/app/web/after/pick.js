// Which picture a tool works on: results and kept frames, newest first.

import { el, fill, key } from '../dom.js';
import { nameOf } from '../logic/after.js';
import { madeList, thumbnail } from './desk.js';
import { madeWords } from './made.js';

const MOST = 40;

/**
 * @param take (path) => void
 * @param more what stands below the list
 */
export function pick(host, app, title, words, take, more = '') {
  const list = el('div.pick-list', {}, el('p.wait', {}, 'Looking what is there.'));
  fill(host, el('div.choose', {}, el('h1', {}, title), el('p', {}, words), list, more));
  const row = (path, text) =>
    el('button.pick', { type: 'button', 'data-focus': `pick-${path}`, onclick: () => take(path) }, el('img', { src: thumbnail(path, 240), alt: '', loading: 'lazy', width: '150', height: '100' }), el('b', {}, nameOf(path)), el('span.cap', {}, text));
  madeList()
    .then((made) => {
      const rows = made.filter((m) => !m.path.endsWith('.pdf')).slice(0, MOST);
      const kept = (app.store.outing.kept || []).slice(0, MOST);
      fill(
        list,
        kept.map((path) => row(path, 'kept in Sort')),
        rows.map((m) => row(m.path, madeWords(m))),
        rows.length || kept.length ? '' : el('div.empty-card', {}, el('p', {}, 'Nothing was made or kept yet. Sort a folder, keep its best frame or stack a burst, and come back.'), key('To Sort', () => app.goTool('sort'), { class: 'act' })),
      );
    })
    .catch((error) => fill(list, el('p.fault', { role: 'alert' }, error.message)));
}
