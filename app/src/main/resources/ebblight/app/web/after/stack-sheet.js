// Stack: many frames become one long exposure, as a job that can be stopped; the result at once, pixel for pixel.

import { el, fill, key } from '../dom.js';
import { openSheet } from '../components/sheet.js';
import { progressBox } from '../components/progress.js';
import { say } from '../axis/scale.js';
import { nameOf, stemOf } from '../logic/after.js';
import { make } from './desk.js';
import { fillTiles } from './look.js';

const WAYS = {
  mean: ['one long exposure', 'The mean: what one exposure of the whole time would have held.'],
  median: ['who passes is gone', 'The median: what is there most of the time.'],
  brightest: ['trails of lights', 'The brightest of every place: lights that move draw lines.'],
  darkest: ['spray and lights left out', 'The darkest of every place.'],
};

export function stackSheet(app, inputs) {
  const choice = { as: 'mean', align: false };
  let stop = new AbortController();
  const many = inputs.length > 1 ? `${inputs.length} frames` : nameOf(inputs[0]);
  const name = inputs.length > 1 ? `stack-${stemOf(inputs[0])}-to-${stemOf(inputs[inputs.length - 1])}` : `stack-${stemOf(inputs[0])}`;
  openSheet(
    `Stack ${many}`,
    (close) => {
      const body = el('div.stack-sheet');
      const ask = () =>
        fill(
          body,
          el('div.ways', { role: 'group', 'aria-label': 'As' }, Object.entries(WAYS).map(([as, [words]]) => key(words, () => { choice.as = as; ask(); }, { class: 'alt', 'aria-pressed': String(choice.as === as), 'data-focus': `as-${as}` }))),
          el('p', {}, WAYS[choice.as][1], ' In linear light, 16 bits a sample.'),
          key(choice.align ? 'Tripod moved: frames are laid over the first' : 'Tripod stood still', () => { choice.align = !choice.align; ask(); }, { class: 'alt', 'aria-pressed': String(choice.align), 'data-focus': 'align' }),
          el('div.keys', {}, key('Stack', run, { class: 'act', 'data-focus': 'run' })),
        );
      const run = async () => {
        stop = new AbortController();
        const progress = progressBox('Stacking', () => stop.abort());
        fill(body, progress.box);
        try {
          const answer = await make({ command: 'stack', inputs, name: choice.as === 'mean' ? name : `${name}-${choice.as}`, options: choice }, { signal: stop.signal, onProgress: progress.update });
          done(answer);
        } catch (error) {
          fill(body, el('p.fault', { role: 'alert' }, error.name === 'AbortError' ? 'Stopped. Nothing was written.' : error.message), key('Back', ask, { class: 'alt' }));
        }
      };
      const done = (answer) => {
        const pixels = el('div.viewer');
        fill(
          body,
          el('p.result', { role: 'status' }, el('b', {}, answer.file), ` ${answer.frames} frames${answer.seconds ? `, ${say(answer.seconds)} of light` : ''}, ${answer.width} × ${answer.height}, 16 bits`),
          answer.gaps?.count ? el('p', {}, `Gaps between frames: ${answer.gaps.count}, together ${say(answer.gaps.seconds)}, the longest ${say(answer.gaps.longestSeconds)}. Moving lights show them.`) : '',
          answer.skipped.length ? el('p.fault', {}, `Left out: ${answer.skipped.map((s) => `${nameOf(s.file)} (${s.reason})`).slice(0, 5).join('; ')}${answer.skipped.length > 5 ? ` and ${answer.skipped.length - 5} more` : ''}. The other ${answer.frames} are stacked.`) : '',
          answer.warnings.map((w) => el('p', {}, w)),
          pixels,
          el(
            'div.keys',
            {},
            key('Finish it', () => { close(); app.goTool('finish', { picture: answer.file }); }, { class: 'act', 'data-focus': 'to-finish' }),
            key('Repair first', () => { close(); app.goTool('repair', { picture: answer.file }); }, { class: 'alt', 'data-focus': 'to-repair' }),
            key('Write out', () => { close(); app.goTool('write', { picture: answer.file }); }, { class: 'alt', 'data-focus': 'to-write' }),
          ),
        );
        fillTiles(pixels, answer.file);
        body.querySelector('[data-focus="to-finish"]').focus({ preventScroll: true });
      };
      ask();
      return body;
    },
    { className: 'tall', onclose: () => stop.abort() },
  );
}
