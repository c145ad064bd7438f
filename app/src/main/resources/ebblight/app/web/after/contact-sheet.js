// The contact sheet: all pictures of a folder, or those that were kept, small on pages with their names and times.

import { el, fill, key } from '../dom.js';
import { progressBox } from '../components/progress.js';
import { make, madeList } from './desk.js';

export function contactSheet(app) {
  const { store } = app;
  const box = el('section.contact', { 'aria-label': 'Contact sheet' });
  const state = { of: '', title: '', made: [], progress: null, done: null, fault: '' };

  /** What a sheet can be of: [value, words, inputs]. */
  function choices() {
    const kept = store.outing.kept || [];
    const results = state.made.filter((m) => !m.path.endsWith('.pdf')).map((m) => m.path);
    return [
      kept.length ? ['kept', `the ${kept.length} kept`, kept] : null,
      results.length ? ['made', `the ${results.length} made here`, results] : null,
      ...store.whole.inputs.filter((i) => !i.clip).map((i) => [`folder ${i.path}`, `${i.path}, ${i.frames} frames`, [i.path]]),
    ].filter(Boolean);
  }

  async function run(inputs, name) {
    const stop = new AbortController();
    const progress = progressBox('Laying out the sheet', () => stop.abort());
    Object.assign(state, { progress: progress.box, done: null, fault: '' });
    draw();
    try {
      state.done = await make({ command: 'write', inputs, name: `contact-${name}`, ending: 'pdf', options: { contact: true, ...(state.title ? { title: state.title } : {}) } }, { signal: stop.signal, onProgress: progress.update });
    } catch (error) {
      state.fault = error.name === 'AbortError' ? 'Stopped. Nothing was written.' : error.message;
    }
    state.progress = null;
    draw();
  }

  function draw() {
    const list = choices();
    const [of, , inputs] = list.find(([value]) => value === state.of) || list[0] || [];
    const { done } = state;
    fill(
      box,
      el('h2', {}, 'Contact sheet'),
      el('p', {}, 'All of them small on pages to print, each with its name, time, aperture and ISO. PDF.'),
      of
        ? [
          el('label.slip-row', {}, el('span', {}, 'Of'), el('select', { 'data-focus': 'contact-of', onchange: (event) => { state.of = event.target.value; draw(); } }, list.map(([value, words]) => el('option', { value, selected: value === of }, words)))),
          el('label.slip-row', {}, el('span', {}, 'Title'), el('input', { type: 'text', maxlength: '120', value: state.title, placeholder: 'Contact sheet', 'data-focus': 'contact-title', onchange: (event) => { state.title = event.target.value.trim(); } })),
          state.fault ? el('p.fault', { role: 'alert' }, state.fault) : '',
          state.progress || el('div.keys', {}, key('Write the contact sheet', () => run(inputs, of.replace(/^folder /, '').replace(/[^\p{L}\p{N}._-]+/gu, '-')), { class: 'act', 'data-focus': 'contact-write' })),
          done ? el('p.result', { role: 'status' }, el('b', {}, done.file), ` ${done.pictures} pictures.`, (done.skipped || []).map((s) => el('span.note', {}, `${s.file}: ${s.reason}`))) : '',
        ]
        : el('p', {}, 'There is no folder of frames here yet.'),
    );
  }

  madeList().then((made) => { state.made = made; draw(); }).catch((error) => { state.fault = error.message; draw(); });
  draw();
  return box;
}
