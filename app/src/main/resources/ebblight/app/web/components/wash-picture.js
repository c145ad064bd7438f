// The highest wash on the picture: an unbroken line where the water came, a broken one where it would come with the tide.

import { el } from '../dom.js';
import { outlineOf } from './picture.js';

const NEVER = 0;
const WITH_RISE = 3;

/** Whether the tide's rise takes the wash further on a map of it. */
export const risesOn = (map) => map.includes(WITH_RISE);

export function washPicture(bitmap, map, width, height) {
  const canvas = el('canvas', { width: String(bitmap.width), height: String(bitmap.height) });
  canvas.getContext('2d').drawImage(bitmap, 0, 0);
  const line = (within, name) => {
    const cut = map.map((place) => (within(place) ? 1 : 0));
    return cut.includes(1) ? `<path class="${name}" d="${outlineOf(cut, width, height, 1)((x) => x * width, (y) => y * height)}"/>` : '';
  };
  const reached = line((place) => place !== NEVER && place !== WITH_RISE, 'wash-line');
  const risen = risesOn(map) ? line((place) => place !== NEVER, 'wash-risen') : '';
  const over = el('span', { html: `<svg viewBox="0 0 ${width} ${height}" role="img" aria-label="Highest wash">${risen}${reached}</svg>` });
  return el('figure.wash-picture', {}, canvas, over, el('figcaption', {}, risen ? 'Unbroken: highest wash seen. Broken: the same with the tide’s rise.' : 'Highest wash seen.'));
}
