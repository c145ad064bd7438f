// The way to the shot: the staff of steps, one shot state above them, the guard above all.

import { betweenTouches, el, fill, key, marks } from '../dom.js';
import { sayThird } from '../axis/scale.js';
import { latestStart, minutesLeft } from '../logic/guard.js';
import { stepAfter, stepsOf } from '../logic/staff.js';
import { filterWords, fLabel } from '../components/side.js';
import { stepBody } from '../components/steps.js';
import { exposeBody } from '../components/expose.js';
import { judgeBody } from '../components/judge.js';
import { stepList } from '../components/step-list.js';
import { mountPicture } from '../components/picture.js';

const WAVE = '<svg width="40" height="24" viewBox="0 0 40 24" aria-hidden="true"><path d="M0 9q5-8 10 0t10 0 10 0 10 0M0 20q5-8 10 0t10 0 10 0 10 0" fill="none" stroke="currentColor" stroke-width="4"/></svg>';
const AXIS = '<svg width="44" height="20" viewBox="0 0 44 20" aria-hidden="true"><path d="M2 10H42M8 10V4M17 10V4M36 10V4" stroke="currentColor" stroke-width="3"/><rect x="21" y="3" width="11" height="14" fill="none" stroke="currentColor" stroke-width="3"/></svg>';

export function showShot(host, app) {
  const { store, go, place, scene } = app;
  const s = scene.state;
  host.classList.add('shot-page');
  let listed = false;
  let body = null;
  let lastMinutes = -1;
  const guardBar = el('button.guard', { type: 'button', onclick: () => app.go({ part: 'shot', step: 1 }) });
  const staffBar = el('nav.staff', { 'aria-label': 'Steps' });
  const shotLine = el('div.shot-line');
  const content = el('section.step');
  const foot = el('div.step-foot');
  const beside = el('section.beside', { 'aria-label': 'The picture' });
  fill(host, el(`div.field${store.outing.hand === 'left' ? '.left' : ''}`, {}, guardBar, staffBar, shotLine, content, foot), beside);
  const picture = mountPicture(beside, () => {});
  beside.dataset.fit = 'contain';

  const number = () => Math.min(9, Math.max(1, place().step || 1));

  function context() {
    const steps = stepsOf(store.outing);
    const choice = scene.current();
    return {
      ...app, s, steps, choice,
      step: steps[number() - 1],
      seconds: choice ? choice.seconds : Math.pow(2, s.third / 3),
      openSeconds: choice ? choice.correctedSeconds : Math.pow(2, s.third / 3),
      busySeconds: choice ? choice.busySeconds : Math.pow(2, s.third / 3),
      stopsPerMinute: s.light?.stopsPerMinute || 0,
      late: (now = Date.now()) => {
        const start = latestStart(store.outing, now, choice ? choice.busySeconds : Math.pow(2, s.third / 3));
        return start !== null && now > start;
      },
      next: () => toStep(stepAfter(steps, number())),
      toStep, redraw: draw,
    };
  }

  function toStep(n) {
    listed = false;
    store.edit((o) => { o.shot = { ...o.shot, step: n }; }, { undoable: false });
    go({ page: 'there', view: s.view.id, part: 'shot', step: n, third: s.third });
  }

  function drawGuard(now = Date.now()) {
    const guard = store.outing.guard;
    const left = minutesLeft(store.outing, now);
    lastMinutes = left;
    guardBar.setAttribute('aria-label', left === null ? 'Set the time to leave' : `Leave by ${guard.leaveBy}, ${left} minutes`);
    fill(guardBar, marks(WAVE), left === null ? 'Set the time to leave' : `Leave by ${guard.leaveBy}`, el('span', {}, left === null ? '' : `${left} min`));
  }

  function draw() {
    body?.leave?.();
    const c = context();
    drawGuard();
    const steps = c.steps;
    fill(
      staffBar,
      steps.map((one) =>
        el(
          `button${one.number < number() ? '.done' : ''}${one.number === number() ? '.cur' : ''}${one.skipped ? '.skipped' : ''}`,
          {
            type: 'button',
            'data-focus': `staff-${one.number}`,
            'aria-label': `${one.number}, ${one.name}${one.number < number() ? ', done' : ''}${one.skipped ? ', left out' : ''}`,
            'aria-current': one.number === number() ? 'step' : null,
            onclick: () => { if (one.number === number() && !wide()) { listed = !listed; draw(); } else { toStep(one.number); } },
          },
          el('i', {}, String(one.number)),
          el('span', {}, one.name, el('small', {}, one.line)),
        )),
      el('button.staff-edit', { type: 'button', 'data-focus': 'staff-edit', onclick: () => { listed = !listed; draw(); } }, 'Edit the steps'),
    );
    const wishes = Object.entries(s.view.wishes || {}).filter(([id]) => id.startsWith('flowing'))[0];
    fill(
      shotLine,
      el('b', {}, c.choice ? `${sayThird(s.third)} · ${fLabel(c.choice.fNumber)} · ${c.choice.iso}` : sayThird(s.third), el('small', {}, [s.measured.guessed ? 'a guess' : null, c.choice ? filterWords(c.choice.filters) : 'no reading yet', wishes ? wishes[1].replace('!', '') : null].filter(Boolean).join(', '))),
      el('button', { type: 'button', 'aria-label': 'Back to the time axis', 'data-focus': 'to-axis', onclick: () => go({ part: null, step: null, third: s.third }) }, marks(AXIS), 'axis'),
    );
    if (listed) {
      body = stepList(c);
    } else if (c.step.id === 'expose') {
      body = exposeBody(c);
    } else if (c.step.id === 'judge') {
      body = judgeBody(c);
    } else {
      body = stepBody(c);
    }
    content.className = `step${listed ? ' listed' : ''} step-${c.step.id}`;
    fill(content, body.content);
    fill(foot, body.foot || '');
    picture.show(scene.pictures.at(s.third));
    picture.update({ parts: [], strokes: [], lines: c.step.id === 'compose' || c.step.id === 'level', horizon: s.measured.horizon, bare: true, note: '' });
  }

  const wide = () => innerWidth > 700 && innerHeight > 500;

  draw();
  const drawing = betweenTouches(host, () => body?.running || draw());
  content.querySelector('h1')?.setAttribute('tabindex', '-1');
  return {
    tell(what) {
      if (what === 'picture') {
        picture.show(scene.pictures.at(s.third));
      } else if (what !== 'progress') {
        drawing.soon();
      }
    },
    redraw: () => (body?.running ? picture.show(scene.pictures.at(s.third)) : drawing.soon()),
    tick(now) {
      if (minutesLeft(store.outing, now) !== lastMinutes) {
        drawGuard(now);
      }
      body?.tick?.(now);
    },
    key(event) {
      if (event.key === 'Escape') {
        go({ part: null, step: null, third: s.third });
      }
    },
    leave() {
      drawing.end();
      body?.leave?.();
    },
  };
}
