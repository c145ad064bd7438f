// A finish (finish/1) as a sentence and as steps that are changed one by one. No document here.

export const UNCHANGED_GRADE = 2;

export const PAPERS = [null, [15, 10], [21, 14], [30, 20], [30, 24], [40, 30], [60, 40], [60, 50], [80, 60], [80, 40], [90, 60], [120, 80]];
export const SURFACES = ['gloss', 'satin', 'matt', 'cotton'];
export const DISTANCES = [null, 30, 40, 60, 80, 100, 150, 200, 300];
export const GRAINS = [[0, 'leave'], [0.5, 'half of it'], [1, 'as measured'], [1.5, 'half as much again']];
/** Tones by hue and chroma of L*a*b* (D50). */
export const TONES = [[null, 'none'], [{ hueDegrees: 70, chroma: 4 }, 'warm, faint'], [{ hueDegrees: 70, chroma: 8 }, 'warm'], [{ hueDegrees: 255, chroma: 4 }, 'cool, faint'], [{ hueDegrees: 255, chroma: 8 }, 'cool']];
/** Lens filters by the angle of their hue; the factor by which each weakens white light (common practice). */
export const LENS_FILTERS = [[null, 'none'], [{ hueDegrees: 60, factor: 2 }, 'yellow, ×2'], [{ hueDegrees: 30, factor: 4 }, 'orange, ×4'], [{ hueDegrees: 0, factor: 8 }, 'red, ×8'], [{ hueDegrees: 120, factor: 4 }, 'green, ×4'], [{ hueDegrees: 240, factor: 4 }, 'blue, ×4']];

/** Stops in sixths, "+⅓", "−1½", "0". */
export function sayStops(value) {
  const sixths = Math.round(Math.abs(value) * 6);
  const whole = Math.floor(sixths / 6);
  const part = ['', '⅙', '⅓', '½', '⅔', '⅚'][sixths % 6];
  if (!sixths) {
    return '0';
  }
  return `${value < 0 ? '−' : '+'}${whole || ''}${part}`;
}

const stopWord = (value, up, down) => `${sayStops(Math.abs(value)).slice(1)} ${Math.abs(value) > 1.01 ? 'stops' : 'stop'} ${value > 0 ? up : down}`;

const liftWord = (name, value) => `${name} ${value > 0 ? 'lifted' : 'held down'} ${stopWord(value, '', '').trim()}`;

export const fresh = () => ({ schema: 'finish/1' });

const same = (a, b) => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

/** The place of a value in a list of [value, word]. */
export const indexIn = (list, value) => Math.max(0, list.findIndex(([v]) => same(v, value)));

export const gradeWord = (grade) => (Number.isInteger(grade) ? String(grade) : `${Math.floor(grade)}½`);

export const paperWord = (paper) => (paper ? `${paper[0]} × ${paper[1]}` : 'as it is');

const PART_WORDS = { flowing: 'water', drifting: 'cloud', swaying: 'branch', fixed: 'rock' };

/** Stops by which a part of the view is printed lighter. */
export const partStops = (finish, region) => (finish.parts || []).find((p) => p.region === region)?.stops || 0;

/** Steps of a finish in words: [{ id, before, text }]; before is what joins it to the one before. */
export function sentence(finish) {
  const steps = [];
  const add = (id, text, before = ', ') => steps.push({ id, text, before: steps.length ? before : '' });
  if (finish.grain) {
    add('grain', `grain taken out, ${GRAINS[indexIn(GRAINS, finish.grain)][1]}`);
  }
  if (finish.level) {
    add('level', `levelled by ${finish.level.toFixed(1).replace('-', '−')}°`);
  }
  if (finish.crop) {
    const { paper, border } = finish.crop;
    add('crop', paper ? `under the easel at ${paperWord(paper)} cm${border ? ` with ${border} cm of white` : ''}` : 'cut free by the blades');
  }
  if (finish.exposure) {
    add('exposure', `printed ${stopWord(finish.exposure, 'lighter', 'darker')}`);
  }
  if (finish.blackAndWhite) {
    const moved = (finish.blackAndWhite.colours || []).filter((c) => Math.abs(c.stops) > 0.08);
    add('blackAndWhite', 'in black and white', finish.exposure ? ' ' : ', ');
    moved.forEach((c) => add(`colour-${finish.blackAndWhite.colours.indexOf(c)}`, `${c.word || 'a colour'} ${stopWord(c.stops, 'lighter', 'darker')}`));
    if (finish.blackAndWhite.filter) {
      add('filter', `through a ${LENS_FILTERS[indexIn(LENS_FILTERS, finish.blackAndWhite.filter)][1].split(',')[0]} filter`, ' ');
    }
  }
  (finish.parts || []).forEach(({ region, stops }) => add(`part-${region}`, `the ${liftWord(PART_WORDS[region] || region, stops)}`));
  if (finish.tone?.shadows) {
    add('shadows', liftWord('shadows', finish.tone.shadows));
  }
  if (finish.tone?.lights) {
    add('lights', liftWord('lights', finish.tone.lights));
  }
  if (finish.localContrast) {
    add('localContrast', `fine contrast ${stopWord(finish.localContrast, 'higher', 'lower')}`);
  }
  if (finish.grade !== undefined && finish.grade !== UNCHANGED_GRADE) {
    add('grade', `on grade ${gradeWord(finish.grade)}`);
  }
  if (finish.sharpness) {
    add('sharpness', `for eyes ${finish.sharpness.viewingCentimetres} cm away on ${finish.sharpness.paper}`);
  }
  for (const [part, word] of [['shadows', 'shadows'], ['lights', 'lights']]) {
    const tint = finish.toning?.[part];
    if (tint) {
      add(`toning-${part}`, `${word} toned ${TONES[indexIn(TONES, tint)][1]}`);
    }
  }
  return steps;
}

/** The value of a step, to be put back later. */
export function valueOf(finish, id) {
  const colour = /^colour-(\d+)$/.exec(id);
  if (colour) {
    return finish.blackAndWhite?.colours?.[colour[1]]?.stops;
  }
  const part = /^part-(.+)$/.exec(id);
  if (part) {
    return partStops(finish, part[1]);
  }
  const inside = { shadows: ['tone', 'shadows'], lights: ['tone', 'lights'], filter: ['blackAndWhite', 'filter'], 'toning-shadows': ['toning', 'shadows'], 'toning-lights': ['toning', 'lights'] }[id];
  return inside ? finish[inside[0]]?.[inside[1]] : finish[id];
}

/** A copy of a finish with one step changed; undefined takes the step away. */
export function withValue(finish, id, value) {
  const next = JSON.parse(JSON.stringify(finish));
  const colour = /^colour-(\d+)$/.exec(id);
  if (colour) {
    if (next.blackAndWhite?.colours?.[colour[1]]) {
      next.blackAndWhite.colours[colour[1]].stops = value ?? 0;
    }
    return next;
  }
  const part = /^part-(.+)$/.exec(id);
  if (part) {
    const others = (next.parts || []).filter((p) => p.region !== part[1]);
    next.parts = value ? [...others, { region: part[1], stops: value }] : others;
    if (!next.parts.length) {
      delete next.parts;
    }
    return next;
  }
  const inside = { shadows: ['tone', 'shadows'], lights: ['tone', 'lights'], filter: ['blackAndWhite', 'filter'], 'toning-shadows': ['toning', 'shadows'], 'toning-lights': ['toning', 'lights'] }[id];
  const [outer, inner] = inside || [null, id];
  const at = outer ? (next[outer] = next[outer] || {}) : next;
  if (value === undefined || value === null) {
    delete at[inner];
  } else {
    at[inner] = value;
  }
  if (outer && outer !== 'blackAndWhite' && !Object.keys(at).length) {
    delete next[outer];
  }
  // edges are made for a size on paper: without paper, the width of the print is said apart
  if (next.crop?.paper) {
    delete next.printWidthCentimetres;
  } else if (next.sharpness) {
    next.printWidthCentimetres = next.printWidthCentimetres || 40;
  }
  return next;
}

/** Nothing but what the engine reads: words of colours are ours. */
export function plainFinish(finish) {
  const next = JSON.parse(JSON.stringify(finish));
  if (next.blackAndWhite?.colours) {
    next.blackAndWhite.colours = next.blackAndWhite.colours.map(({ lab, share, stops }) => ({ lab, share, stops }));
  }
  return next;
}

/** Rounds away the crumbs of adding thirds. */
export const tidy = (value, per = 6) => Math.round(value * per) / per;

export const clamp = (value, low, high) => Math.min(high, Math.max(low, value));
