// Where things lie on the axis: rows, and the way from stops to pixels and back.

import { FIRST_STOP, LAST_STOP } from './scale.js';

const FORMS = {
  desk: { gutter: 188, row: 60, image: 42, band: 48, gap: 7, top: 6, wide: 2, cut: 2.5, label: 0, bag: 46, worth: 46, limits: 26, lift: 5 },
  low: { gutter: 168, row: 50, image: 33, band: 46, gap: 5, top: 6, wide: 2, cut: 2, label: 0, bag: 44, worth: 42, limits: 26, lift: 4 },
  phone: { gutter: 0, row: 76, image: 34, band: 48, gap: 4, top: 4, wide: 2.2, cut: 1.5, label: 23, bag: 34, worth: 0, limits: 28, lift: 3 },
};

/**
 * @param parts of the model, those in the air first
 * @param width of the drawing in pixels
 * @param form desk, low or phone
 * @param chosenStop the stop nearest the chosen time: its piece is wider
 */
export function layout(parts, width, form, chosenStop) {
  const f = FORMS[form];
  const left = f.gutter;
  const right = width;
  const pieces = LAST_STOP - FIRST_STOP + 1;
  const unit = (right - left) / (pieces - 1 + f.wide);
  const a = chosenStop - FIRST_STOP;
  const x = (k) => {
    const v = k - FIRST_STOP + 0.5;
    return left + unit * (v < a ? v : v > a + 1 ? v - 1 + f.wide : a + (v - a) * f.wide);
  };
  const k = (px) => {
    const v = (px - left) / unit;
    return (v < a ? v : v > a + f.wide ? v + 1 - f.wide : a + (v - a) / f.wide) + FIRST_STOP - 0.5;
  };
  const air = parts.filter((p) => p.air).length;
  const rows = [];
  let y = f.top;
  for (let i = 0; i < air; i++) {
    rows.push(y);
    y += f.row + f.gap;
  }
  const stripsTop = f.top;
  const bandTop = y + (form === 'phone' ? 4 : 2);
  y = bandTop + f.band + (form === 'phone' ? 4 : 11);
  for (let i = air; i < parts.length; i++) {
    rows.push(y);
    y += f.row + f.gap;
  }
  const bagTop = y;
  const worthTop = bagTop + f.bag;
  const limitsTop = worthTop + f.worth;
  return { ...f, form, left, right, unit, x, k, rows, stripsTop, bandTop, bagTop, worthTop, limitsTop, height: limitsTop + f.limits };
}
