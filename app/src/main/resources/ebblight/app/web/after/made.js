// What a result is, in words, from its record.

import { say } from '../axis/scale.js';

export function madeWords({ command, answer }) {
  const size = answer.width ? `${answer.width} × ${answer.height}` : '';
  const light = answer.seconds ? `, ${say(answer.seconds)} of light` : '';
  const words = {
    stack: `${answer.frames} frames stacked${light}`,
    blend: `blended in ${answer.layers?.length || 0} parts`,
    preview: 'preview of a shutter time',
    repair: 'repaired',
    finish: answer.done?.length ? `finished: ${answer.done.join(', ')}` : 'finished: nothing done',
    write: answer.kind === 'print' ? `for print, ${Math.round(10 * answer.widthCentimetres) / 10} × ${Math.round(10 * answer.heightCentimetres) / 10} cm at ${Math.round(answer.pixelsPerInch)} ppi` : answer.kind === 'web' ? 'for the web' : 'page',
  }[command] || command;
  return [words, size].filter(Boolean).join(', ');
}
