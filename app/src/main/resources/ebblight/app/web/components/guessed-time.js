// Settings before any clip: a shutter time from the guess or by hand, then the meter.

import { el, fill, key } from '../dom.js';
import { clampThird, sayThird, thirdOf } from '../axis/scale.js';
import { stepper } from './stepper.js';

const USUAL_THIRD = 9;

/** { box, tell(answer of guess/1) } */
export function guessedTime({ store, go }, view) {
  const { id } = view;
  let third = view.third ?? USUAL_THIRD;
  const keep = (change) => store.edit((o) => Object.assign(o.views.find((v) => v.id === id), change));
  const words = el('div.keys');
  const time = el('div');
  const drawTime = () => fill(time, stepper('Shutter time, guessed', () => sayThird(third), (d) => { third = clampThird(third + d); keep({ third }); }, 'guessed'));
  const take = (limit) => {
    third = clampThird(thirdOf(limit.seconds));
    keep({ third, wishes: { ...store.outing.views.find((v) => v.id === id).wishes, 'flowing-1': limit.word } });
    drawTime();
  };
  drawTime();
  return {
    box: el(
      'section.guessed',
      { 'aria-label': 'Without a clip' },
      words,
      time,
      el('div.keys', {}, key('Meter, then the settings', () => go({ page: 'there', view: id, part: 'shot', step: 5, third }), { class: 'act' })),
    ),
    tell(answer) {
      const reached = (answer.water?.limits || []).filter((limit) => !limit.until && Number.isFinite(limit.seconds));
      fill(words, reached.map((limit) => key(`${limit.word}, ${sayThird(clampThird(thirdOf(limit.seconds)))}`, () => take(limit), { class: 'alt', 'data-focus': `guess-${limit.word}` })));
    },
  };
}
