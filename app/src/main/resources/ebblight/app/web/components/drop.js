// Clips and frames come in here: dropped, chosen, or filmed with the phone's camera.

import { el, key } from '../dom.js';
import { json } from '../http-carrier.js';
import { progressBox } from './progress.js';

const slug = () => `frames-${new Date().toISOString().slice(0, 19).replace(/[^0-9]/g, '-')}`;

/** @param done (path) => void, with the path of the clip or folder in the outing */
export function dropBox(title, words, done) {
  const input = el('input', { type: 'file', multiple: true, accept: 'video/*,image/*', class: 'unseen', tabindex: '-1', 'aria-label': 'Clip or frames' });
  const film = el('input', { type: 'file', accept: 'video/*', capture: 'environment', class: 'unseen', tabindex: '-1', 'aria-label': 'Film a clip' });
  const status = el('div.drop-status', { role: 'status' });
  const take = async (files) => {
    const list = [...files];
    if (!list.length) {
      return;
    }
    const clip = list.length === 1;
    const batch = clip ? '' : `&batch=${slug()}`;
    let stopped = false;
    const progress = progressBox('Copying', () => {
      stopped = true;
    });
    status.replaceChildren(progress.box);
    let last = null;
    try {
      for (let i = 0; i < list.length && !stopped; i++) {
        progress.update({ fraction: i / list.length, stage: `copying ${list[i].name}`, secondsLeft: 0 });
        last = await json(`/api/drop?name=${encodeURIComponent(list[i].name)}${batch}`, { method: 'POST', body: list[i] });
      }
      status.replaceChildren();
      if (last && !stopped) {
        done(clip ? last.path : last.folder);
      }
    } catch (error) {
      status.replaceChildren(el('p.fault', {}, el('b', {}, 'Not copied. '), error.message));
    }
  };
  input.addEventListener('change', () => take(input.files));
  film.addEventListener('change', () => take(film.files));
  const box = el(
    'div.drop',
    {
      ondragover: (event) => {
        event.preventDefault();
        box.classList.add('over');
      },
      ondragleave: () => box.classList.remove('over'),
      ondrop: (event) => {
        event.preventDefault();
        box.classList.remove('over');
        take(event.dataTransfer.files);
      },
    },
    el('h2', {}, title),
    words.map((text) => el('p', {}, text)),
    el('div.keys', {}, key('Choose a clip or frames', () => input.click(), { class: 'act' }), key('Film with this camera', () => film.click(), { class: 'alt' })),
    el('p.cap', {}, 'Or drop them here. They are copied into the outing; originals stay as they are.'),
    status,
    input,
    film,
  );
  return box;
}
