// Where After begins: folders to sort, clips and bursts to stack, and what was made so far.

import { el, fill, key } from '../dom.js';
import { madeList, thumbnail } from './desk.js';
import { nameOf, sayBytes } from '../logic/after.js';
import { madeWords } from './made.js';
import { stackSheet } from './stack-sheet.js';
import { lookSheet } from './look.js';

export function choose(host, app) {
  const { inputs } = app.store.whole;
  const folders = inputs.filter((i) => !i.clip);
  const clips = inputs.filter((i) => i.clip);
  const made = el('section.made-so-far', { 'aria-label': 'Made so far' });
  const row = (input) =>
    el(
      'div.choose-row',
      {},
      el('div', {}, el('b', {}, input.path), el('span.cap', {}, input.clip ? `clip, ${sayBytes(input.bytes)}` : `${input.frames} frames, ${sayBytes(input.bytes)}`)),
      el(
        'div.keys',
        {},
        input.clip ? '' : key('Sort', () => app.goTool('sort', { folder: input.path }), { class: 'act', 'data-focus': `sort-${input.path}`, 'aria-label': `Sort ${input.path}` }),
        key('Stack', () => stackSheet(app, [input.path]), { class: 'alt', 'data-focus': `stack-${input.path}`, 'aria-label': `Stack ${input.path}` }),
        key('Blend', () => app.goTool('blend', { frames: input.path }), { class: 'alt', 'data-focus': `blend-${input.path}`, 'aria-label': `Blend ${input.path}` }),
      ),
    );
  const { loose } = app.store.whole;
  const looseRow = loose?.frames
    ? el('div.choose-row', {}, el('div', {}, el('b', {}, 'Loose in this outing'), el('span.cap', {}, `${loose.frames} ${loose.frames === 1 ? 'frame' : 'frames'} beside the folders, ${sayBytes(loose.bytes)}`)), el('div.keys', {}, key('Sort', () => app.goTool('sort', { folder: '.' }), { class: 'act', 'data-focus': 'sort-loose', 'aria-label': 'Sort the frames that lie loose in this outing' })))
    : '';
  fill(
    host,
    el(
      'div.choose',
      {},
      el('h1', {}, 'Back home'),
      el('p', {}, 'A card of frames becomes chosen, repaired, finished pictures. Originals are only read; whatever is made goes to made/, with a record beside it.'),
      folders.length || looseRow ? el('section', { 'aria-label': 'Folders' }, el('h2', {}, 'Folders of frames'), folders.map(row), looseRow) : '',
      clips.length ? el('section', { 'aria-label': 'Clips' }, el('h2', {}, 'Clips'), clips.map(row)) : '',
      folders.length || looseRow
        ? ''
        : el('section.empty-card', {}, el('h2', {}, 'No folder of frames here'), el('p', {}, 'Copy the card into a folder beside this outing’s clips, then come back.')),
      made,
    ),
  );
  madeList()
    .then((rows) => {
      if (!rows.length || !made.isConnected) {
        return;
      }
      fill(
        made,
        el('h2', {}, 'Made so far'),
        rows.slice(0, 60).map((one) => {
          const pdf = one.path.endsWith('.pdf');
          return el(
            'div.made-row',
            {},
            pdf ? el('span.thumb', {}, 'PDF') : el('img.thumb', { src: thumbnail(one.path, 240), alt: '', loading: 'lazy' }),
            el('div', {}, el('b', {}, nameOf(one.path)), el('span.cap', {}, `${madeWords(one)}, ${sayBytes(one.bytes)}`)),
            el(
              'div.keys',
              {},
              pdf ? '' : key('Look', () => lookSheet(app, one.path), { class: 'alt', 'data-focus': `look-${one.path}`, 'aria-label': `Look at ${nameOf(one.path)} at 1:1` }),
              pdf ? '' : key('Finish', () => app.goTool('finish', { picture: one.path }), { class: 'alt', 'data-focus': `finish-${one.path}`, 'aria-label': `Finish ${nameOf(one.path)}` }),
              pdf ? '' : key('Write out', () => app.goTool('write', { picture: one.path }), { class: 'alt', 'data-focus': `write-${one.path}`, 'aria-label': `Write out ${nameOf(one.path)}` }),
            ),
          );
        }),
      );
    })
    .catch((error) => fill(made, el('p.fault', { role: 'alert' }, error.message)));
}
