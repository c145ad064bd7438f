// Every pixel of a picture of the outing, in a sheet.

import { el, fill } from '../dom.js';
import { openSheet } from '../components/sheet.js';
import { tilesOf } from '../components/viewer.js';
import { nameOf } from '../logic/after.js';

export function lookSheet(app, path, title = nameOf(path)) {
  openSheet(
    `${title}, one pixel for one`,
    () => {
      const host = el('div.viewer', {}, el('p.wait', {}, 'Opening the picture.'));
      fillTiles(host, path);
      return host;
    },
    { className: 'tall' },
  );
}

export async function fillTiles(host, path) {
  try {
    const { facts, box } = await tilesOf(path, `${nameOf(path)}, one pixel for one`);
    fill(host, el('p.cap', {}, `${path}, ${facts.width} × ${facts.height}. Scroll or drag to move.`), box);
  } catch (error) {
    fill(host, el('p.fault', { role: 'alert' }, error.message));
  }
}
