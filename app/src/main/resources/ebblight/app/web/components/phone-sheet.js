// To the phone and back, on the desk: the page over the house's network, an outing as a code, the log brought home.

import { el, fill, key } from '../dom.js';
import { json } from '../http-carrier.js';
import { openSheet } from './sheet.js';

const PAGE_KEY = 'ebblight-page-address';

const drawn = ({ side, path }) => el('div.code', { html: `<svg viewBox="0 0 ${side} ${side}" shape-rendering="crispEdges" role="img" aria-label="Code for the phone's camera"><rect width="${side}" height="${side}" fill="#fff"/><path d="${path}" fill="#000"/></svg>` });

const post = (path, body) => json(path, { method: 'POST', body: JSON.stringify(body) });

/** @param app of the page: store, say, go; joined () => void is called when a log has come in */
export function phoneSheet({ store, say }, joined) {
  const near = el('section.phone-way', {});
  const code = el('div', { 'aria-live': 'polite' });
  const back = el('div', { 'aria-live': 'polite' });
  const fault = (host) => (error) => fill(host, el('p.fault', { role: 'alert' }, error.message));

  function drawNear(state) {
    fill(
      near,
      el('h3', {}, 'In this network'),
      state.open
        ? [drawn(state.code), el('p', {}, 'Photograph the code with the phone, in the same network. It is open for a quarter of an hour.'), el('p.cap', {}, el('code', {}, state.link)), key('Close it', () => json('/api/hand-over', { method: 'DELETE' }).then(drawNear, fault(near)), { class: 'alt' })]
        : [el('p', {}, 'Off. Opened, this machine hands the page and this outing to whoever has the link, and nothing else.'), key('Hand the page over', () => post('/api/hand-over', {}).then(drawNear, fault(near)), { class: 'act' })],
      el('p.cap', {}, 'Over plain http a phone can save the page, but not put it on the home screen, use the live camera, or hold its screen on. iOS opens no page from its files.'),
    );
  }

  const page = el('input', { type: 'url', placeholder: 'https://', value: localStorage.getItem(PAGE_KEY) || '', 'aria-label': 'Address of the page that is on the phone', maxlength: '300' });

  async function drawCode() {
    localStorage.setItem(PAGE_KEY, page.value.trim());
    try {
      await store.save();
      const answer = await post('/api/pocket-code', { page: page.value });
      fill(
        code,
        answer.fits
          ? [drawn(answer.code), el('p', {}, 'Photograph it with the phone that has the page: it opens without a network. The log and the readings stay here.')]
          : el('p.fault', {}, `This outing is too large for a code: ${answer.signs} signs, at most ${answer.most}. Take fewer views or rows of tables, or send the file outing.pocket.json.`),
      );
    } catch (error) {
      fault(code)(error);
    }
  }

  const input = el('input', { type: 'file', accept: '.json,application/json', class: 'unseen', tabindex: '-1', 'aria-label': 'Log of the phone' });
  const frames = el('select', { 'aria-label': 'Frames of the camera' }, el('option', { value: '' }, 'no frames yet'), store.whole.inputs.filter((one) => !one.clip).map((one) => el('option', { value: one.path }, one.path)));
  input.addEventListener('change', async () => {
    const [file] = input.files;
    try {
      let log;
      try {
        log = JSON.parse(await file.text());
      } catch {
        throw new Error(`${file.name}: is no log of the phone page; expected the file outing-from-phone.json.`);
      }
      await store.save();
      const answer = await post('/api/join', { name: file.name, log, ...(frames.value ? { frames: frames.value } : {}) });
      const told = answer.cameras.map((camera) => (camera.clockOffsetSeconds === null ? `${camera.camera}: no frame is like an entry of the log.` : `${camera.camera}: ${camera.matched.length} of ${camera.frames} frames found, clock ${Math.abs(camera.clockOffsetSeconds)} s ${camera.clockOffsetSeconds < 0 ? 'behind' : 'ahead of'} the phone's.${camera.ambiguous ? ' Another offset would do as well: check it.' : ''}`)).concat((answer.warnings || []).map((w) => `${w[0].toUpperCase()}${w.slice(1)}.`));
      await store.load();
      fill(back, el('p', { role: 'status' }, el('b', {}, `${answer.added} new, ${answer.entries} in the log.`)), told.map((text) => el('p', {}, text)));
      say('The log is in the outing.');
      joined();
    } catch (error) {
      fault(back)(error);
    }
    input.value = '';
  });

  json('/api/hand-over').then(drawNear, fault(near));
  openSheet('The phone', () =>
    el(
      'div.phone-sheet',
      {},
      near,
      el('section.phone-way', {}, el('h3', {}, 'A phone that has the page'), el('p', {}, 'The page from an https host (./ebblight pocket writes the folder "site"), opened once on the phone. Its address:'), page, key('Show the outing as a code', drawCode, { class: 'act' }), code),
      el('section.phone-way', {}, el('h3', {}, 'Bring the log home'), el('p', {}, 'On the phone: After, then Save or send the log. With the camera’s frames, each entry finds its frame, whatever the camera’s clock says.'), store.whole.inputs.some((one) => !one.clip) ? frames : '', key('Take a log in', () => input.click(), { class: 'act' }), back, input),
    ), { className: 'tall' });
}
