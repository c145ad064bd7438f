// Expose: counts in, counts on the clock of the wall, says what closing now would mean, takes marks. A reload loses nothing.

import { el, fill, key } from '../dom.js';
import { strokePath } from '../axis/marks.js';
import { say } from '../axis/scale.js';
import { latestStart } from '../logic/guard.js';
import { clockIn } from '../logic/zone.js';
import { enteringWarnings } from './steps.js';
import { clockSet, linesWave, nextRunBack, runAt, stopWords } from '../logic/staff.js';
import * as tones from './tones.js';

const COUNT_IN_SECONDS = 5;
const MARKS = ['gust', 'boat', 'wave'];
const HOLD_MILLIS = 1500;
const LIFT_MILLIS = 300;

const line = (big, small) => el('div.line', {}, el('b', {}, big), small);

export function exposeBody(c) {
  const { store, s } = c;
  const keyOf = `ebblight-run-${store.whole.folder}`;
  const content = el('div.expose');
  const foot = el('div');
  const stored = localStorage.getItem(keyOf);
  let run = stored ? JSON.parse(stored) : null;
  let timer = 0;
  let shaken = '';
  let lock = null;
  /** The clocks at the last look, and whether the page was seen since. */
  let clocks = null;
  let seen = true;
  const body = { content: [el('h1.unseen', { tabindex: '-1' }, 'Expose'), content], foot, leave, tick, running: Boolean(run) };

  let shown = '';
  /** Puts keys at the foot, and leaves those alone that are there: the text above changes every second, a touch lasts longer. */
  function keys(name, make) {
    if (shown !== name) {
      shown = name;
      fill(foot, make());
    }
  }

  const keep = () => (run ? localStorage.setItem(keyOf, JSON.stringify(run)) : localStorage.removeItem(keyOf));

  function begin(openAt) {
    run = {
      openAt,
      plannedSeconds: c.openSeconds,
      equivalentSeconds: c.seconds,
      stopsPerMinute: c.stopsPerMinute,
      third: s.third,
      marks: [],
    };
    body.running = true;
    shaken = '';
    clocks = null;
    keep();
    listen();
    sound();
    hold();
    loop();
  }

  const endAt = () => run.openAt + 1000 * run.plannedSeconds;

  /** Lays the tones ahead; where the phone does not let the page sound yet, as soon as it does. */
  function sound() {
    tones.wake();
    tones.onWake(() => run && tones.lay(run.openAt, endAt()));
    tones.lay(run.openAt, endAt());
  }

  const hold = () => navigator.wakeLock?.request('screen').then((got) => { lock = got; }).catch(() => {});

  /** Back from behind another page, or from sleep: the wall's clock has gone on. */
  function back() {
    seen = false;
    if (run && document.visibilityState === 'visible') {
      followClock();
      tones.lay(run.openAt, endAt());
      hold();
      loop();
    }
  }

  function listen() {
    document.addEventListener('visibilitychange', back);
    document.addEventListener('pointerup', touched);
  }

  /** After a reload the phone waits for a touch before it lets the page sound; a touch counts when the finger is lifted. */
  function touched() {
    if (run && !tones.awake()) {
      sound();
    }
  }

  function close() {
    const now = Date.now();
    const at = runAt(run, now);
    const d = c.choice;
    const frame = (store.outing.log || []).length + 1;
    store.edit((o) => {
      o.log = [...(o.log || []), {
        frame,
        view: s.view.id,
        openedAt: new Date(run.openAt).toISOString(),
        openSeconds: Math.round(10 * at.elapsed) / 10,
        plannedSeconds: Math.round(10 * run.plannedSeconds) / 10,
        offStops: Math.round(100 * at.stops) / 100,
        settings: d ? { filters: d.filters, fNumber: d.fNumber, iso: d.iso, dial: d.dial, shutter: d.shutter } : null,
        exposureValue100: s.light ? Math.round(100 * s.light.exposureValue100) / 100 : null,
        stopsPerMinute: run.stopsPerMinute,
        wishes: { ...s.view.wishes },
        third: run.third,
        ...(s.measured.guessed ? { guessed: true } : {}),
        pair: Boolean(s.view.pair),
        marks: run.marks,
        tags: [],
        why: null,
        verdict: null,
      }];
    }, { undoable: false });
    store.save();
    stop();
    c.toStep(9);
  }

  function stop() {
    run = null;
    body.running = false;
    keep();
    leave();
  }

  function leave() {
    clearTimeout(timer);
    document.removeEventListener('visibilitychange', back);
    document.removeEventListener('pointerup', touched);
    if (!run) {
      tones.clear();
    }
    lock?.release().catch(() => {});
    lock = null;
  }

  function mark(word) {
    run.marks.push({ what: word, atSeconds: Math.round((Date.now() - run.openAt) / 100) / 10 });
    keep();
    tones.buzz(40);
    draw();
  }

  /** A clock that is set while the shutter is open moves the exposure's beginning with it: seconds stay seconds. */
  function followClock() {
    const now = { wall: Date.now(), steady: performance.now() };
    const set = clocks ? clockSet(clocks, now, seen) : 0;
    clocks = now;
    seen = document.visibilityState === 'visible';
    if (set) {
      run.openAt += set;
      run.setSeconds = Math.round((run.setSeconds || 0) + set / 1000);
      keep();
    }
  }

  function loop() {
    if (!run || !content.isConnected) {
      return;
    }
    clearTimeout(timer);
    followClock();
    draw();
    const now = Date.now();
    const next = now < run.openAt ? run.openAt : endAt();
    // whole seconds before the shutter opens, then before it closes, then after that
    timer = setTimeout(loop, ((next - now) % 1000 + 1000) % 1000 + 5);
  }

  /** Shakes the phone once at every turn of the exposure. */
  function shake(phase, pattern) {
    if (shaken !== phase) {
      shaken = phase;
      tones.buzz(pattern);
    }
  }

  function tick() {
    if (!run) {
      idle();
    }
  }

  function draw() {
    const at = runAt(run, Date.now());
    if (at.phase === 'count') {
      fill(content, el('p', {}, 'Press at 0'), el('div.count', { role: 'timer' }, String(at.count)), el('p', {}, 'Low, low, low, high. Press the cable on the high tone, as the wave runs back.'), el('div.grow'), line(`${say(run.plannedSeconds)}`, `open; then the camera is ready after ${say(c.busySeconds)}`));
      keys('count', () => key('Stop the count', () => { stop(); idle(); }, { class: 'hold wide', 'data-focus': 'stop-count' }));
      return;
    }
    shake(at.phase, at.phase === 'open' ? 200 : [300, 120, 300, 120, 600]);
    const near = at.phase === 'open' && at.left <= 10;
    fill(
      content,
      el('p', {}, at.phase === 'open' ? 'Close in' : 'Close now'),
      el(`div.count${near ? '.near' : ''}`, { role: 'timer' }, ...number(at.phase === 'open' ? at.left : at.over)),
      el(
        'div.run',
        {},
        el(
          'div',
          {},
          wishLine(at.elapsed),
          line(stopWords(at.stops), at.phase === 'open' ? 'if closed now' : 'by now'),
          line(`${say(run.equivalentSeconds)}${Math.abs(run.plannedSeconds - run.equivalentSeconds) >= 0.5 ? ` ${run.plannedSeconds > run.equivalentSeconds ? '+' : '−'} ${say(Math.abs(run.plannedSeconds - run.equivalentSeconds))}` : ''}`, run.stopsPerMinute > 0.005 ? 'the light fades' : run.stopsPerMinute < -0.005 ? 'the light grows' : 'the light is steady'),
          tones.awake() ? '' : line('No sound yet', 'touch the page once'),
          run.setSeconds ? line(`Clock set ${run.setSeconds < 0 ? 'back' : 'on'} ${Math.abs(run.setSeconds)} s`, 'the count goes on without it') : '',
          run.marks.length ? line(run.marks.map((m) => m.what).join(', '), 'marked') : '',
        ),
        el('span.marks', { html: gauge(at.elapsed, run.plannedSeconds), 'aria-hidden': 'true' }),
      ),
    );
    keys('open', () => [el('div.mark-keys', { role: 'group', 'aria-label': 'Mark' }, MARKS.map((word) => key(word, () => mark(word), { class: 'hold', 'data-focus': `mark-${word}` }))), key('I closed it now', close, { class: 'go wide', 'data-focus': 'closed' })]);
  }

  const number = (seconds) => {
    const whole = Math.ceil(seconds);
    return whole < 100 ? [String(whole), el('small', {}, 's')] : [`${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`];
  };

  /** Since when the water has its wish. */
  function wishLine(elapsed) {
    const { model } = c.scene.model();
    const wished = model.parts.filter((p) => p.wish && p.kind === 'flowing' && p.spans.length)[0];
    if (!wished) {
      return '';
    }
    const from = wished.spans[0].fromSeconds;
    const has = elapsed >= from;
    return line(has ? wished.wish[0].toUpperCase() + wished.wish.slice(1) : `not yet ${wished.wish}`, has ? `since ${say(Math.max(from, 0.1))}` : `likely from ${say(from)}`);
  }

  function idle() {
    const start = latestStart(store.outing, Date.now(), c.busySeconds);
    const late = c.late();
    if (late) {
      fill(content, el('p.leave-now', {}, 'Leave now'), el('p', {}, `It is past the latest start of ${clockIn(store.outing.zone, start, true)} for this time; leave by ${store.outing.guard.leaveBy}.`), line(`Frame ${(store.outing.log || []).length + 1}`, 'not started'), el('div.warn', {}, 'Predictions leave out weather, surge and waves. Never turn your back on the sea.'));
      keys('late', () => el('div.keys2', {}, key('I am off the rock', () => c.go({ part: 'log', step: null }), { class: 'go', 'data-focus': 'off' }), key('Shorter time', () => c.go({ part: null, step: null }), { class: 'hold' })));
      return;
    }
    const rising = store.outing.guard?.water === 'rising' && !store.outing.guard.yes;
    const wave = linesWave(s.measured, s.view.wishes);
    const words = [
      el('p', {}, 'Press at 0'),
      el('div.count.ready', {}, String(COUNT_IN_SECONDS)),
      rising ? '' : el('p', {}, 'Five, four, then low, low, low, high. Press the cable on the high tone, as the wave runs back.'),
      el('div.grow'),
      start ? line(clockIn(store.outing.zone, start, true), 'latest start') : '',
      wave ? line(`A wave every ${say(wave.periodSeconds)}`, 'touch as it runs back: the next one is counted in; release as it runs back') : '',
      line(say(c.openSeconds), `open; the camera is busy ${say(c.busySeconds).replaceAll(' ', '\u00a0')}`),
      navigator.wakeLock ? '' : line('Keep the screen on', 'asleep, the phone gives no signal'),
      s.light?.stale ? line('Meter again', `the reading is ${Math.round(s.light.ageMinutes)} min old`) : '',
      ...enteringWarnings(c),
      rising ? el('div.warn', {}, 'The water rises. Know the way back, and its lowest place, before you open.') : '',
    ];
    fill(content, words);
    keys(rising ? 'rising' : `ready ${wave?.periodSeconds}`, () => rising ? holdKey('Hold: I know the way back', () => { store.edit((o) => { o.guard = { ...o.guard, yes: true }; }); idle(); }) : [
      wave ? key('It runs back now', () => begin(nextRunBack(Date.now(), wave.periodSeconds)), { class: 'go wide', 'data-focus': 'runs-back' }) : '',
      key('Count me in', () => begin(Date.now() + 1000 * COUNT_IN_SECONDS), { class: wave ? 'hold wide' : 'go wide', 'data-focus': 'count-in' }),
    ]);
  }

  /** A deliberate yes: held, not touched. */
  function holdKey(label, done) {
    let timerOf = 0;
    const button = key(label, () => {}, { class: 'hold wide deliberate', 'data-focus': 'deliberate' });
    /** The key that comes in its place lies under the finger that is yet to be lifted: that is no press of it. */
    const held = () => {
      const lifting = new AbortController();
      foot.addEventListener('click', (event) => { event.stopPropagation(); event.preventDefault(); }, { capture: true, signal: lifting.signal });
      for (const end of ['pointerup', 'pointercancel', 'keyup']) {
        addEventListener(end, () => setTimeout(() => lifting.abort(), LIFT_MILLIS), { signal: lifting.signal });
      }
      done();
    };
    const down = () => {
      button.classList.add('held');
      clearTimeout(timerOf);
      timerOf = setTimeout(() => button.isConnected && held(), HOLD_MILLIS);
    };
    const up = () => {
      button.classList.remove('held');
      clearTimeout(timerOf);
    };
    button.addEventListener('pointerdown', down);
    // a long touch asks phones for their menu, which would take the touch away
    button.addEventListener('contextmenu', (event) => event.preventDefault());
    for (const name of ['pointerup', 'pointerleave', 'pointercancel', 'blur', 'keyup']) {
      button.addEventListener(name, up);
    }
    button.addEventListener('keydown', (event) => {
      if ((event.key === ' ' || event.key === 'Enter') && !event.repeat) {
        down();
      }
    });
    return button;
  }

  if (run) {
    listen();
    setTimeout(loop, 0);
    tones.lay(run.openAt, endAt());
    hold();
    draw();
  } else {
    idle();
  }
  return body;
}

/** Light adds up and the line lies down. */
function gauge(elapsed, planned, height = 300) {
  const night = document.body.dataset.light === 'night';
  const w = 92;
  const share = Math.min(1, elapsed / planned);
  const y = height - share * (height - 4) - 2;
  let s = '';
  for (let yy = height - 8; yy > y + 6; yy -= 11) {
    const q = (height - yy) / height;
    s += `<path d="${strokePath(5, w - 41, yy, 6, () => Math.max(0.04, 1 - 1.9 * q), Math.round(yy), 6)}" fill="none" stroke="${night ? 'var(--ink)' : 'var(--ground)'}" stroke-width="2.2"/>`;
  }
  const step = [1, 2, 5, 10, 20, 30, 60, 120, 300].find((v) => planned / v <= 6) || 600;
  for (let t = 0; t <= planned + 1e-6; t += step) {
    const gy = height - 2 - (t / planned) * (height - 4);
    s += `<path d="M${w - 38} ${gy}h14" stroke="var(--ink)" stroke-width="4"/>`;
    if (t) {
      s += `<text x="${w}" y="${gy + 7}" text-anchor="end" font-size="19" font-weight="800" fill="var(--ink)">${t < 100 ? t : `${Math.round(t / 60)}m`}</text>`;
    }
  }
  return `<svg width="${w}" height="${height}" viewBox="0 0 ${w} ${height}"><rect x="2" y="2" width="${w - 40}" height="${height - 4}" fill="none" stroke="var(--ink)" stroke-width="4"/>${night ? '' : `<rect x="2" y="${y}" width="${w - 40}" height="${height - y - 2}" fill="var(--ink)"/>`}<path d="M2 ${y}h${w - 40}" stroke="var(--ink)" stroke-width="6"/>${s}</svg>`;
}
