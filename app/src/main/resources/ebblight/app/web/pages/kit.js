// Kit: cameras, lenses, filters with measured densities. Kept in the user's data folder; export and import as a file.

import { el, fill, key } from '../dom.js';
import { json } from '../http-carrier.js';
import { stepper } from '../components/stepper.js';

const LISTS = {
  filters: {
    title: 'Filters',
    empty: 'No filter yet. Add what is engraved on the ring: stops, factor or density.',
    fresh: { name: '', takes: '6', measuredStops: null, measuredOn: null, cast: null, inBag: true },
    fields: [['name', 'Name', 'text'], ['takes', 'Takes', 'text', 'stops 6, factor nd1000, density 3.0d, pol, grad2'], ['measuredStops', 'Measured, stops', 'number'], ['measuredOn', 'Measured on', 'text', '2027-01-03'], ['cast', 'Cast', 'text', 'slightly warm']],
  },
  cameras: {
    title: 'Cameras',
    empty: 'No camera yet. Without one: ISO 100 to 6400, timed to 30 s, 36 × 24 mm, optical finder.',
    fresh: { name: '', sensorWidthMillimetres: 36, sensorHeightMillimetres: 24, lowestIso: 100, highestIso: 6400, baseIso: 100, timedLimitSeconds: 32, darkFrame: false, opticalFinder: true, inBag: true },
    fields: [['name', 'Name', 'text'], ['sensorWidthMillimetres', 'Sensor width, mm', 'number'], ['sensorHeightMillimetres', 'Sensor height, mm', 'number'], ['baseIso', 'Base ISO', 'number'], ['lowestIso', 'Lowest ISO', 'number'], ['highestIso', 'Highest ISO', 'number'], ['timedLimitSeconds', 'Longest timed, s', 'number'], ['darkFrame', 'Dark frame in camera', 'flag'], ['opticalFinder', 'Optical finder', 'flag']],
  },
  lenses: {
    title: 'Lenses',
    empty: 'No lens yet. Without one: 24 mm, f/2.8 to f/22.',
    fresh: { name: '', focalMillimetres: 24, widestFNumber: 2.8, narrowestFNumber: 22, sharpestFrom: 5.6, sharpestTo: 11, inBag: true },
    fields: [['name', 'Name', 'text'], ['focalMillimetres', 'Focal length, mm', 'number'], ['widestFNumber', 'Widest f/', 'number'], ['narrowestFNumber', 'Narrowest f/', 'number'], ['sharpestFrom', 'Sharpest from f/', 'number'], ['sharpestTo', 'to f/', 'number']],
  },
};

export function open(host, { say }) {
  let kit = null;
  let fault = '';
  const input = el('input', { type: 'file', accept: 'application/json,.json', class: 'unseen', tabindex: '-1', 'aria-label': 'Kit file' });
  input.addEventListener('change', async () => {
    try {
      kit = JSON.parse(await input.files[0].text());
      await save('The kit of the file is in.');
    } catch (error) {
      fault = `The file was not taken: ${error.message}`;
      load();
    }
    input.value = '';
  });

  async function load() {
    try {
      kit = await json('/api/kit');
    } catch (error) {
      fault = error.message;
    }
    draw();
  }

  async function save(words) {
    try {
      kit = await json('/api/kit', { method: 'PUT', body: JSON.stringify(kit) });
      fault = '';
      say(words || 'Kept.');
    } catch (error) {
      fault = error.message;
    }
    draw();
  }

  function field(list, row, i, [name, label, kind, hint]) {
    if (kind === 'flag') {
      return key(label, () => { row[name] = !row[name]; save(); }, { 'aria-pressed': String(Boolean(row[name])), class: 'flag', 'data-focus': `${list}-${i}-${name}` });
    }
    if (name === 'measuredStops') {
      const engraved = parseFloat(row.takes) || 6;
      return stepper(label, () => (row[name] ? row[name].toFixed(1) : '–'), (d) => { row[name] = Math.round(10 * ((row[name] || engraved) + (row[name] ? 0.1 * d : 0))) / 10; row.measuredOn = row.measuredOn || new Date().toISOString().slice(0, 10); soon(); }, `${list}-${i}-${name}`);
    }
    return el('label', {}, el('small', {}, label), el('input', {
      type: 'text', inputmode: kind === 'number' ? 'decimal' : null, value: row[name] ?? '', placeholder: hint || '', 'data-focus': `${list}-${i}-${name}`, maxlength: '200',
      onchange: (event) => {
        const text = event.target.value.trim();
        row[name] = kind === 'number' ? (text === '' ? null : Number(text.replace(',', '.'))) : text || null;
        if (row[name] === null && (name === 'name' || name === 'takes')) {
          row[name] = '';
        }
        save();
      },
    }));
  }

  /** On a phone: one's own bag on the page of somebody else. */
  const bags = () =>
    [['page', 'Bag of this page'], ['own', 'My own bag']].map(([whose, text]) =>
      key(text, async () => {
        kit = await json(`/api/kit?whose=${whose}`, { method: 'POST' });
        draw();
      }, { class: 'alt', 'aria-pressed': String(kit.whose === whose), 'data-focus': `bag-${whose}` }));

  let timer = 0;
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(() => save(), 700);
  };

  function section(list) {
    const { title, empty, fresh, fields } = LISTS[list];
    const rows = kit[list] || [];
    return el(
      'section.kit-list',
      { 'aria-label': title },
      el('h2', {}, title),
      rows.length ? '' : el('p', {}, empty),
      rows.map((row, i) =>
        el(
          `div.kit-row${row.inBag ? '.in' : ''}`,
          {},
          key(row.inBag ? 'in the bag' : 'at home', () => { row.inBag = !row.inBag; save(); }, { 'aria-pressed': String(Boolean(row.inBag)), class: 'bag', 'data-focus': `${list}-${i}-bag`, 'aria-label': `${row.name || title}: ${row.inBag ? 'in the bag' : 'at home'}` }),
          fields.map((f) => field(list, row, i, f)),
          key('Remove', () => { rows.splice(i, 1); save('Removed.'); }, { class: 'alt', 'aria-label': `Remove ${row.name || 'this entry'}` }),
        )),
      key(`Add to ${title.toLowerCase()}`, () => { kit[list] = [...rows, { ...fresh, name: `${title.slice(0, -1)} ${rows.length + 1}` }]; save('Added.'); }, { class: 'alt', 'data-focus': `${list}-add` }),
    );
  }

  function draw() {
    fill(
      host,
      el(
        'div.kit',
        {},
        el('div.kit-head', {}, el('h1', {}, 'Kit'), el('p', {}, 'The first camera and lens in the bag, and all filters in it, are used in There. Engraved densities are off by a third of a stop or more: measure with and without, and set it here.', kit?.whose ? '' : ' Export writes the kit and all that the outings taught as one file; Import takes either in again.'), el('div.keys', {}, kit?.whose ? bags() : '', kit?.whose ? el('a.alt', { href: `data:application/json,${encodeURIComponent(JSON.stringify(kit))}`, download: 'ebblight-kit.json' }, 'Export') : el('a.alt', { href: '/api/kit?export=1', download: 'ebblight-memory.json' }, 'Export'), key('Import', () => input.click(), { class: 'alt' }))),
        fault ? el('p.fault', { role: 'alert' }, fault) : '',
        kit ? ['filters', 'cameras', 'lenses'].map(section) : el('p.wait', {}, 'Opening the kit.'),
        input,
      ),
    );
  }

  load();
  return {};
}
