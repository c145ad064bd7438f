// Write out: slips of one sheet, each a file: print, web, edition, lesson. Each says what it leaves out.

import { el, fill, key } from '../dom.js';
import { progressBox } from '../components/progress.js';
import { nameOf, sayBytes, stemOf } from '../logic/after.js';
import { BYTES, EDGES, PPI, nearest, printFacts, provedWords, stepIn } from '../logic/write.js';
import { madeList, make, sizeOf, thumbnail } from './desk.js';
import { lookSheet } from './look.js';
import { pick } from './pick.js';
import { contactSheet } from './contact-sheet.js';
import { planDocuments } from './plan-documents.js';
import { proofRows } from './proof.js';

export function open(host, app) {
  const { store } = app;
  const state = { picture: '', size: null, record: null, made: [], slips: {}, profiles: null, proof: null, proving: null };

  const settings = () => ({ width: 0, ppi: 300, border: 0, edge: 2048, bytes: 800e3, title: '', caption: '', copyright: '', creator: '', keywords: '', of: 12, paper: 'cotton, matt', hide: false, without: '', profile: '', intent: 'relative', ...store.outing.writeOut });
  const set = (name, value) => {
    store.edit((outing) => {
      outing.writeOut = { ...outing.writeOut, [name]: value };
    });
    draw();
  };

  const notes = () => {
    const { title, caption, copyright, creator, keywords } = settings();
    return Object.fromEntries(Object.entries({ title, caption, copyright, creator, keywords }).filter(([, v]) => v));
  };

  /** @param request what is to be written, or what finds it out first */
  async function run(name, request) {
    const slip = (state.slips[name] = state.slips[name] || {});
    const stop = new AbortController();
    const progress = progressBox('Writing', () => stop.abort());
    Object.assign(slip, { progress: progress.box, done: null, fault: '' });
    draw();
    try {
      const options = { signal: stop.signal, onProgress: progress.update };
      const asked = typeof request === 'function' ? await request(options) : request;
      slip.done = await make({ command: 'write', inputs: [state.picture], ...asked }, options);
    } catch (error) {
      slip.fault = error.name === 'AbortError' ? 'Stopped. Nothing was written.' : error.message;
    }
    slip.progress = null;
    draw();
  }

  const stepRow = (id, label, value, under, less, more) =>
    el('div.slip-row', { role: 'group', 'aria-label': label }, el('span', {}, label), el('div', {}, el('b', { role: 'status' }, value), under ? el('small', {}, under) : ''), el('div.pm', {}, key('−', less, { 'aria-label': `${label}: less`, 'data-focus': `${id}-less` }), key('+', more, { 'aria-label': `${label}: more`, 'data-focus': `${id}-more` })));

  const plainRow = (label, value, under) => el('div.slip-row', {}, el('span', {}, label), el('div', {}, el('b', {}, value), under ? el('small', {}, under) : ''));

  const textRow = (name, label, hint) => el('label.slip-row', {}, el('span', {}, label), el('input', { type: 'text', maxlength: '300', value: settings()[name], placeholder: hint, 'data-focus': `text-${name}`, onchange: (event) => set(name, event.target.value.trim()) }));

  /** What became of a slip, its key, and its progress. */
  function slipFoot(name, label, act, { disabled = false, told = () => '' } = {}) {
    const slip = state.slips[name] || {};
    return el(
      'div.slip-foot',
      {},
      slip.fault ? el('p.fault', { role: 'alert' }, slip.fault) : '',
      slip.progress || '',
      slip.done ? el('p.result', { role: 'status' }, el('b', {}, nameOf(slip.done.file)), ' ', told(slip.done), slip.done.warnings?.map((w) => el('span.note', {}, ` ${w}`))) : '',
      slip.progress
        ? ''
        : el('div.keys', {}, key(slip.done ? `${label} again` : label, act, { class: slip.done ? 'alt' : 'act', disabled, 'data-focus': `write-${name}` }), slip.done && !slip.done.file.endsWith('.pdf') ? key('Every pixel', () => lookSheet(app, slip.done.file), { class: 'alt', 'data-focus': `look-${name}` }) : ''),
    );
  }

  /** Width of the print in centimetres: chosen, else that of the paper it was finished for, else 30. */
  function width() {
    const crop = state.record?.documents?.['--with']?.crop;
    return settings().width || (crop?.paper ? crop.paper[0] - 2 * (crop.border || 0) : 0) || state.record?.documents?.['--with']?.printWidthCentimetres || 30;
  }

  function print() {
    const { ppi, border } = settings();
    const crop = state.record?.documents?.['--with']?.crop;
    const edge = border || crop?.border || 0;
    const facts = printFacts(state.size, width(), ppi, edge);
    const proved = Boolean(settings().profile);
    return el(
      'section.slip',
      { 'aria-label': 'Print' },
      el('h2', {}, 'Print'),
      el('p', {}, 'TIFF, 16 bits, the picture’s own profile inside'),
      el('div.slip-picture', {}, el('img', { src: state.proof?.href || thumbnail(state.picture, 800), alt: state.proof?.href ? 'As the print will look' : '', style: edge ? `border:${Math.max(2, Math.round(240 * edge / facts.paperWidth))}px solid #fff` : '' })),
      el(
        'div.slip-rows',
        {},
        stepRow('width', 'Picture', `${facts.widthWords} × ${facts.heightWords} cm`, crop?.paper ? 'finished for this paper' : 'the other side follows', () => set('width', Math.max(5, Math.ceil(width()) - 1)), () => set('width', Math.min(300, Math.floor(width()) + 1))),
        stepRow('border', 'White border', `${edge} cm`, `sheet ${facts.paperWords} cm`, () => set('border', Math.max(0, edge - 0.5)), () => set('border', Math.min(20, edge + 0.5))),
        stepRow('ppi', 'Pixels an inch', String(ppi), facts.native, () => set('ppi', stepIn(PPI, ppi, -1)), () => set('ppi', stepIn(PPI, ppi, 1))),
        proofRows({ state, settings, set, draw }),
        plainRow('File', `${facts.pixels[0]} × ${facts.pixels[1]} pixels`, `about ${sayBytes(facts.bytes)}, before it is packed`),
      ),
      slipFoot('print', 'Write the print file', () => run('print', { name: `print-${stemOf(state.picture)}`, ending: 'tif', options: { size: `${facts.widthWords}x`, ppi, ...(edge ? { border: edge } : {}), ...(proved ? { intent: settings().intent } : {}), ...notes() }, ...(proved ? { files: { proof: settings().profile }, outputs: { 'proof-picture': true } } : {}) }), {
        told: (d) => `${Math.round(10 * d.widthCentimetres) / 10} × ${Math.round(10 * d.heightCentimetres) / 10} cm, ${d.width} × ${d.height} pixels, ${Math.round(d.pixelsPerInch)} an inch, ${sayBytes(d.bytes)}, ${d.profile}.${d.proof ? ` Proofed: ${provedWords(d.proof).slice(0, 2).join(', ')}.` : ''}`,
      }),
    );
  }

  function web() {
    const { edge, bytes } = settings();
    const long = Math.max(state.size.width, state.size.height);
    const shown = Math.min(edge, long);
    return el(
      'section.slip',
      { 'aria-label': 'Web' },
      el('h2', {}, 'Web'),
      el('p', {}, 'JPEG in sRGB, for your own pages'),
      el('div.slip-picture', {}, el('img', { src: thumbnail(state.picture, 800), alt: '' })),
      el(
        'div.slip-rows',
        {},
        stepRow('edge', 'Long side', `${shown} pixels`, shown === long && edge >= long ? 'all that there are' : '', () => set('edge', stepIn(EDGES, nearest(EDGES, shown), -1)), () => set('edge', stepIn(EDGES, edge, 1))),
        stepRow('bytes', 'File', `at most ${sayBytes(bytes)}`, 'the best quality that fits is found', () => set('bytes', stepIn(BYTES, bytes, -1)), () => set('bytes', stepIn(BYTES, bytes, 1))),
        plainRow('Keeps', 'caption, copyright, date'),
        plainRow('Leaves out', 'place', 'where you stood stays unknown'),
      ),
      slipFoot('web', 'Write for the web', () => run('web', { name: `web-${stemOf(state.picture)}`, ending: 'jpg', options: { 'long-edge': shown, 'at-most': `${bytes}`, ...notes() } }), {
        told: (d) => `came to ${sayBytes(d.bytes)} (${d.bytes} bytes), ${d.width} × ${d.height} pixels, ${d.profile}${d.likeness ? `, likeness ${d.likeness.toFixed(3)} of 1` : ''}.`,
      }),
    );
  }

  function edition() {
    const { of, paper, title } = settings();
    const facts = printFacts(state.size, width(), settings().ppi, 0);
    const done = state.slips.edition?.done;
    return el(
      'section.slip',
      { 'aria-label': 'Edition' },
      el('h2', {}, 'Edition'),
      el('p', {}, 'Register and certificate, PDF'),
      el('div.slip-number', {}, el('span', {}, 'Number'), el('p', {}, el('b', {}, done ? String(done.entry.number) : 'next'), ` of ${done?.entry.of ?? of}`), el('span', {}, title || 'give it a title')),
      el(
        'div.slip-rows',
        {},
        textRow('title', 'Title', 'The Door at dusk'),
        stepRow('of', 'Prints', String(of), 'said once for an edition', () => set('of', Math.max(1, of - 1)), () => set('of', Math.min(500, of + 1))),
        textRow('paper', 'Paper', 'cotton, matt'),
        plainRow('Checksum', 'of the file of this page', 'each number is given once'),
      ),
      slipFoot('edition', 'Enter the next number', () => run('edition', { name: `certificate-${stemOf(state.picture)}`, ending: 'pdf', again: Date.now(), options: { title, of, paper, size: `${facts.widthWords}x${facts.heightWords}`, ...(settings().creator ? { creator: settings().creator } : {}) }, outputs: { edition: `edition-${stemOf(state.picture)}` } }), {
        disabled: !title,
        told: (d) => `certificate of number ${d.entry.number} of ${d.entry.of}. ${d.entry.given} given so far.`,
      }),
    );
  }

  function lesson() {
    const { hide, without } = settings();
    const kept = (store.outing.kept || []).filter((p) => p !== state.picture);
    const list = [...new Set([without, ...kept].filter(Boolean))];
    return el(
      'section.slip',
      { 'aria-label': 'Lesson' },
      el('h2', {}, 'Lesson'),
      el('p', {}, 'Plan against result, one page, PDF'),
      el('div.slip-picture.two', {}, without ? el('img', { src: thumbnail(without, 400), alt: 'Without the long time' }) : '', el('img', { src: thumbnail(state.picture, 400), alt: 'The result' })),
      el(
        'div.slip-rows',
        {},
        el('label.slip-row', {}, el('span', {}, 'Beside it'), el('select', { 'data-focus': 'without', onchange: (event) => set('without', event.target.value) }, el('option', { value: '' }, 'no frame without'), list.map((p) => el('option', { value: p, selected: p === without }, nameOf(p))))),
        plainRow('Planned', plannedWords() || 'nothing in the log', 'as There noted it'),
        plainRow('Made', state.record ? madeFrom(state.record) : 'from one frame'),
        el('div.slip-row', {}, el('span', {}, 'Answers'), key(hide ? 'left open, for a class' : 'shown', () => set('hide', !hide), { class: 'alt', 'aria-pressed': String(hide), 'data-focus': 'hide' })),
      ),
      slipFoot('lesson', 'Write the lesson', () => run('lesson', async (asking) => ({ documents: await planDocuments(store.outing, state.picture, state.made, asking), name: `lesson-${stemOf(state.picture)}`, ending: 'pdf', options: { lesson: true, ...(hide ? { hide: true } : {}), ...(settings().title ? { title: settings().title } : {}) }, ...(without ? { files: { without } } : {}) })), { told: (d) => `${sayBytes(d.bytes || 0)}, what was wished, measured and logged beside what was made.` }),
    );
  }

  const lastLogged = () => (store.outing.log || []).at(-1);

  function plannedWords() {
    const one = lastLogged();
    return one ? `${one.plannedSeconds ? `${Math.round(10 * one.plannedSeconds) / 10} s` : ''}${one.settings?.fNumber ? `, f/${one.settings.fNumber}` : ''}` : '';
  }

  const madeFrom = (record) => ({ stack: `${record.answer.frames} frames`, blend: 'a blend', finish: `finished in ${record.answer.done?.length || 0} ${record.answer.done?.length === 1 ? 'step' : 'steps'}`, repair: 'repaired', write: 'written before' })[record.command] || record.command;

  function draw() {
    if (!state.size) {
      return;
    }
    fill(
      host,
      el('div.tool-head', {}, el('h1', {}, el('b', {}, nameOf(state.picture)), ` ${state.size.width} × ${state.size.height} pixels`), el('p.cap', {}, 'Originals are never changed.'), el('div.keys', {}, key('Another picture', () => app.goTool('write'), { class: 'alt', 'data-focus': 'another' }))),
      el('div.slips', {}, print(), web(), edition(), lesson()),
      el('section.notes-form', { 'aria-label': 'What the files say' }, el('h2', {}, 'What the files say of themselves'), el('div.slip-rows', {}, textRow('caption', 'Caption', 'Half tide, a long quarter of an hour'), textRow('copyright', 'Copyright', '© 2027 your name'), textRow('creator', 'Made by', 'your name'), textRow('keywords', 'Keywords', 'sea, dusk, long exposure'))),
    );
  }

  async function start() {
    const { picture } = app.asked();
    if (!picture) {
      state.picture = '';
      state.size = null;
      pick(host, app, 'Write out: which picture?', 'A finished picture, for paper and for the web.', (path) => app.goTool('write', { picture: path }), contactSheet(app));
      return;
    }
    if (picture === state.picture) {
      return;
    }
    Object.assign(state, { picture, size: null, record: null, slips: {}, proof: null, proving: null });
    fill(host, el('p.wait', {}, `Opening ${nameOf(picture)}.`));
    try {
      const [size, made] = await Promise.all([sizeOf(picture), madeList()]);
      if (state.picture !== picture) {
        return;
      }
      state.size = size;
      state.made = made;
      state.record = made.find((m) => m.path === picture) || null;
      draw();
    } catch (error) {
      fill(host, el('div.empty.fault', { role: 'alert' }, el('h1', {}, 'The picture does not open'), el('p', {}, error.message), key('Another picture', () => app.goTool('write'), { class: 'act' })));
    }
  }

  start();
  return { hint: '', moved: start, changed: draw };
}
