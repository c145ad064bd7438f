// A panel of the axis as a sheet, where the screen has no room beside the picture.

import { el, fill } from '../dom.js';
import { openSheet } from './sheet.js';
import { sidePanel } from './side.js';

/** @param panel name; state () => what the panel is drawn from; actions of the page */
export function panelSheet(panel, title, state, actions) {
  const body = el('div.side');
  const draw = () => fill(body, sidePanel({ ...state(), panel }, then).slice(1));
  let close = () => {};
  const drawAfter = (act) => (...given) => {
    act(...given);
    draw();
  };
  const closeAfter = (act) => (...given) => {
    close();
    act(...given);
  };
  const then = { ...actions, read: closeAfter(actions.read), goThird: closeAfter(actions.goThird), leave: drawAfter(actions.leave), tide: drawAfter(actions.tide) };
  close = openSheet(title, () => { draw(); return body; }, { className: 'tall' });
}
