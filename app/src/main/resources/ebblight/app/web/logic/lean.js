// Which of two frames a measure speaks for, and how strongly. No document here.

const clamp = (v) => Math.min(1, Math.max(-1, v));
const known = (v) => v !== null && v !== undefined && Number.isFinite(v);
const percent = (v) => `${Math.round(100 * v)} %`;

/** Measures: field, name, how a value reads, difference that leans all the way, and whether more is better. */
const MEASURES = [
  ['fixedSharpness', 'Rock', (v) => `${percent(v)} sharp`, 0.3, 1],
  ['smoothness', 'Water', (v) => `${percent(1 - v)} texture left`, 0.5, 1],
  ['clippedFraction', 'Clipped', (v) => (v < 0.0005 ? 'none' : `${(100 * v).toFixed(1)} %`), 0.1, -1],
  ['hotPixels', 'Hot pixels', (v) => String(v), 40, -1],
  ['veilStops', 'Veil', (v) => (v < 0.05 ? 'none' : `${v.toFixed(1)} stop`), 0.5, -1],
];

/** Rows of the spine: what each frame reads, and the way it leans from −1, the first, to 1, the second. */
export function leans(first, second) {
  const rows = MEASURES.filter(([field]) => known(first[field]) && known(second[field])).map(([field, name, read, full, better]) => {
    const way = clamp((better * (second[field] - first[field])) / full);
    const left = read(first[field]);
    const right = read(second[field]);
    return { name, left, right, way: Math.abs(way) < 0.02 ? 0 : way, words: `${name}: ${left} against ${right}${Math.abs(way) < 0.02 ? ', alike' : way < 0 ? ', the first is better' : ', the second is better'}` };
  });
  const won = (sign) => rows.filter((r) => Math.sign(r.way) === sign && Math.abs(r.way) > 0.1).map((r) => r.name.toLowerCase());
  const [a, b] = [won(-1), won(1)];
  const list = (names) => names.join(', ').replace(/, ([^,]*)$/, ' and $1');
  const words = !a.length && !b.length
    ? 'Measured alike.'
    : [a.length ? `Outside the edge leads in ${list(a)}.` : '', b.length ? `Inside leads in ${list(b)}.` : ''].filter(Boolean).join(' ');
  return { rows, words };
}
