// What the keys do.

import { el } from '../dom.js';
import { openSheet } from './sheet.js';

const KEYS = [
  ['← →', 'a third of a stop shorter, longer'],
  ['↓ ↑', 'one stop shorter, longer'],
  ['Home  End', 'the two ends of the window'],
  ['Page Up  Page Down', 'the window before, after'],
  ['1 to 4', 'the next wish of that part'],
  ['L', 'level line and thirds on the picture'],
  ['B', 'where light is burnt or black'],
  ['C', 'correct the parts by strokes'],
  ['Enter', 'take this time to the shot'],
  ['Ctrl Z', 'take the last edit back'],
  ['?', 'this list'],
];

export function keyMap() {
  openSheet('Keys', () => el('dl.key-map', {}, KEYS.map(([k, text]) => [el('dt', {}, k), el('dd', {}, text)])));
}
