// The three drawers of Finish: tone, colour, edges. One is open.

import { el, key } from '../dom.js';
import { nameOfKind, sealOfKind, sealSvg } from '../axis/marks.js';
import { DISTANCES, GRAINS, LENS_FILTERS, PAPERS, SURFACES, TONES, UNCHANGED_GRADE, clamp, gradeWord, indexIn, paperWord, partStops, sayStops, tidy } from '../logic/finish.js';

const FRONTS = { tone: 'grade, parts, light', colour: 'of this picture, toning', edges: 'paper, blades, distance' };

const cell = (id, title, small, value, under, less, more, name = title) =>
  el(
    'div.drawer-cell',
    { role: 'group', 'aria-label': name },
    el('h2', {}, title, small ? el('small', {}, ` ${small}`) : ''),
    el('div.st', {}, key('−', less, { 'aria-label': `${name}: less`, 'data-focus': `${id}-less` }), el('b', { role: 'status' }, value, under ? el('small', {}, under) : ''), key('+', more, { 'aria-label': `${name}: more`, 'data-focus': `${id}-more` })),
  );

/** A cell that steps a number. */
function numberCell({ finish, change }, id, title, small, { value, step, low, high, none = 0, read = sayStops, under = '', per = 6 }) {
  const set = (to) => {
    const next = tidy(clamp(to, low, high), per);
    change(id, next === none ? undefined : next);
  };
  return cell(id, title, small, read(value), under, () => set(value - step), () => set(value + step));
}

/** A cell that walks a list of [value, word]. */
function listCell({ change }, id, title, small, list, value, under = '') {
  const at = indexIn(list, value);
  const go = (to) => change(id, list[clamp(to, 0, list.length - 1)][0] ?? undefined);
  return cell(id, title, small, list[at][1], under, () => go(at - 1), () => go(at + 1));
}

/** The tone of one part; where nothing tells the parts, which frames of the view do. */
function part(c) {
  const { finish, state, movePart, chooseView, inputs } = c;
  const parts = state.drawn?.parts || [];
  if (!parts.length) {
    return state.view || !inputs.length
      ? ''
      : el('div.drawer-cell', {}, el('h2', {}, 'Parts', el('small', {}, ' told by frames of this view')), el('select', { 'aria-label': 'Frames that tell the parts', 'data-focus': 'part-frames', onchange: (event) => event.target.value && chooseView(event.target.value) }, el('option', { value: '' }, 'no frames'), inputs.map((i) => el('option', { value: i.path }, i.path))));
  }
  const { kind } = parts.find((p) => p.kind === state.part) || parts.find((p) => p.kind === 'flowing') || parts[0];
  const stops = partStops(finish, kind);
  const name = nameOfKind(kind);
  return cell('part', [el('i.seal', { html: sealSvg(sealOfKind(kind), 22), 'aria-hidden': 'true' }), name], '', sayStops(stops), stops > 0 ? 'lighter' : stops < 0 ? 'darker' : 'as it is', () => movePart(kind, stops - 1 / 6), () => movePart(kind, stops + 1 / 6), name);
}

function tone(c) {
  const { finish, state } = c;
  const tones = finish.tone || {};
  return [
    numberCell(c, 'exposure', 'Exposure', 'stops', { value: finish.exposure || 0, step: 1 / 3, low: -5, high: 5, per: 3 }),
    numberCell(c, 'grade', 'Grade', 'soft to hard', { value: finish.grade ?? UNCHANGED_GRADE, step: 0.5, low: 0, high: 5, none: UNCHANGED_GRADE, read: gradeWord, per: 2 }),
    el('div.drawer-cell', {}, el('h2', {}, 'Test strip', el('small', {}, ' five grades on the picture')), key([state.strip ? 'Take it off' : 'Lay it on', el('u', {}, 'G')], c.strip, { class: 'k', 'aria-pressed': String(Boolean(state.strip)), 'data-focus': 'strip' })),
    part(c),
    numberCell(c, 'shadows', 'Shadows', 'stops', { value: tones.shadows || 0, step: 1 / 6, low: -1.5, high: 1.5 }),
    numberCell(c, 'lights', 'Lights', 'stops', { value: tones.lights || 0, step: 1 / 6, low: -1.5, high: 1.5 }),
    numberCell(c, 'localContrast', 'Fine contrast', 'stops', { value: finish.localContrast || 0, step: 1 / 6, low: -1, high: 1 }),
    listCell(c, 'grain', 'Grain', '', GRAINS, finish.grain || 0, state.drawn?.grainKnown ? 'from the burst' : 'estimated'),
  ];
}

const rgb = ([l, a, b]) => `lab(${l}% ${a} ${b})`;

function colour(c) {
  const { finish, state, change, moveColour } = c;
  const bw = finish.blackAndWhite;
  const colours = bw?.colours?.length ? bw.colours : state.drawn?.colours || [];
  const toning = finish.toning || {};
  const tints = [
    listCell(c, 'toning-shadows', 'Toning, shadows', '', TONES, toning.shadows),
    listCell(c, 'toning-lights', 'Toning, lights', '', TONES, toning.lights),
  ];
  if (!bw) {
    return [el('div.drawer-cell.wide', {}, el('h2', {}, 'Black and white', el('small', {}, ' by the colours of this picture')), key('Print black and white', () => change('blackAndWhite', {}), { class: 'k', 'data-focus': 'bw' })), ...tints];
  }
  return [
    ...colours.map((one, i) => {
      const greyed = clamp(one.lab[0] + 12 * (one.stops || 0), 4, 98);
      const word = one.word || 'colour';
      return el(
        `div.drawer-cell${state.colour === i ? '.on' : ''}`,
        { role: 'group', 'aria-label': `${word}, ${Math.round(100 * (one.share || 0))} % of the picture` },
        el('h2', {}, el('i.patch', { 'aria-hidden': 'true' }, el('span', { style: `background:${rgb(one.lab)}` }), el('span', { style: `background:${rgb([greyed, 0, 0])}` })), word),
        el(
          'div.st',
          {},
          key('−', () => moveColour(i, (one.stops || 0) - 1 / 6), { 'aria-label': `${word} darker`, 'data-focus': `colour-${i}-less` }),
          el('b', { role: 'status' }, sayStops(one.stops || 0), el('small', {}, one.stops > 0.05 ? 'lighter' : one.stops < -0.05 ? 'darker' : 'as it is')),
          key('+', () => moveColour(i, (one.stops || 0) + 1 / 6), { 'aria-label': `${word} lighter`, 'data-focus': `colour-${i}-more` }),
        ),
      );
    }),
    listCell(c, 'filter', 'On the lens', '', LENS_FILTERS, bw.filter),
    ...tints,
    el('div.drawer-cell', {}, el('h2', {}, 'Colour'), key('Back to colour', () => change('blackAndWhite', undefined), { class: 'k', 'data-focus': 'bw-off' })),
  ];
}

function edges(c) {
  const { finish, change } = c;
  const { crop } = finish;
  const paper = crop?.paper || null;
  const upright = Boolean(paper && paper[1] > paper[0]);
  const along = paper ? [Math.max(...paper), Math.min(...paper)] : null;
  const setPaper = (to, turned = upright) => change('crop', to ? { ...(paper ? crop : { border: 0, at: [0.5, 0.5] }), border: Math.min(crop?.border || 0, 0.4 * to[1]), paper: turned ? [to[1], to[0]] : to } : undefined);
  const papers = PAPERS.map((p) => [p, paperWord(p)]);
  const at = indexIn(papers, along);
  const level = finish.level || 0;
  const setLevel = (to) => { const next = tidy(clamp(to, -45, 45), 10); change('level', next || undefined); };
  const seen = finish.sharpness;
  const distances = DISTANCES.map((d) => [d, d ? `${d} cm` : 'as it is']);
  const distance = indexIn(distances, seen?.viewingCentimetres ?? null);
  const setSeen = (i) => { const d = DISTANCES[clamp(i, 0, DISTANCES.length - 1)]; change('sharpness', d ? { viewingCentimetres: d, paper: seen?.paper || 'matt' } : undefined); };
  const surface = SURFACES.indexOf(seen?.paper || 'matt');
  const setSurface = (i) => change('sharpness', { viewingCentimetres: seen?.viewingCentimetres || 60, paper: SURFACES[clamp(i, 0, SURFACES.length - 1)] });
  return [
    cell('paper', 'Paper first', 'cm', paperWord(paper), paper ? 'the ratio follows' : crop ? 'blades are free' : '', () => setPaper(PAPERS[clamp(at - 1, 0, PAPERS.length - 1)]), () => setPaper(PAPERS[clamp(at + 1, 0, PAPERS.length - 1)])),
    paper ? cell('border', 'White border', '', `${crop.border || 0} cm`, '', () => change('crop', { ...crop, border: clamp((crop.border || 0) - 0.5, 0, 0.4 * along[1]) }), () => change('crop', { ...crop, border: clamp((crop.border || 0) + 0.5, 0, 0.4 * along[1]) })) : '',
    cell('level', 'Level', 'clockwise', `${level.toFixed(1).replace('-', '−')}°`, '', () => setLevel(level - 0.1), () => setLevel(level + 0.1)),
    cell('seen', 'Seen from', '', distances[distance][1], seen ? '' : 'no edges strengthened', () => setSeen(distance - 1), () => setSeen(distance + 1)),
    cell('surface', 'Paper surface', '', seen ? SURFACES[surface] : '–', seen ? 'edges for it' : '', () => setSurface(surface - 1), () => setSurface(surface + 1)),
    el('div.drawer-cell', {}, el('h2', {}, 'Frame'), paper ? key(upright ? 'Turn along' : 'Turn upright', () => setPaper(along, !upright), { class: 'k', 'data-focus': 'turn' }) : key(crop ? 'All of it' : 'Free blades', () => change('crop', crop ? undefined : { left: 0.02, top: 0.02, right: 0.98, bottom: 0.98 }), { class: 'k', 'data-focus': 'free' })),
  ];
}

export function drawersOf(c) {
  const { drawer } = c.state;
  return [
    el('div.fronts', { role: 'tablist', 'aria-label': 'Drawers' }, Object.entries(FRONTS).map(([name, words]) => key([el('span', {}, name[0].toUpperCase() + name.slice(1)), el('small', {}, words)], () => c.open(name), { role: 'tab', 'aria-selected': String(drawer === name), class: drawer === name ? 'open' : '', 'data-focus': `drawer-${name}` }))),
    el('div.drawer', { role: 'tabpanel', 'aria-label': drawer }, { tone, colour, edges }[drawer]?.(c) || tone(c)),
  ];
}
