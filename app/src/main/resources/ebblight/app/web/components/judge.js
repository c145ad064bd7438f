// Judge: what to change for the next frame, by how much, and one line of why. Again is solved anew for the light now.

import { el, fill, key } from '../dom.js';
import { clampThird, fraction, sayThird } from '../axis/scale.js';
import { latestStart } from '../logic/guard.js';
import { clockIn } from '../logic/zone.js';
import { dials } from '../logic/light.js';
import { nameOfKind } from '../axis/marks.js';
import { parseWish, rowRegions } from '../logic/parts.js';
import { stopWords } from '../logic/staff.js';

const TAGS = ['legs moved', 'drops', 'boat', 'gust'];
const FOR = ['print', 'web', 'lesson', 'trial'];

export function judgeBody(c) {
  const { store, s } = c;
  const log = store.outing.log || [];
  const last = log.at(-1);
  if (!last) {
    return { content: [el('h1', { tabindex: '-1' }, 'Nothing to judge yet'), el('p', {}, 'Expose a frame first; it is logged by itself.')], foot: key('To the exposure', () => c.toStep(8), { class: 'go' }) };
  }
  const content = el('div.judge');
  const foot = el('div');
  // Kept while the frame is judged: the page may be drawn anew meanwhile, by answers that arrive.
  const fresh = () => ({ thirds: 0, bias: 0, tags: [...(last.tags || [])], why: last.why || proposeWhy(), verdict: last.verdict || 'keep' });
  s.judging = s.judging?.frame === last.frame && s.judging.openedAt === last.openedAt ? s.judging : { frame: last.frame, openedAt: last.openedAt, next: fresh() };
  const { next } = s.judging;

  function proposeWhy() {
    const word = (want) => rowRegions(s.measured, s.shown).filter((r) => want(r)).map((r) => [r, parseWish(s.view.wishes?.[r.id]).word]).filter(([, w]) => w).map(([r, w]) => `${nameOfKind(r.kind).toLowerCase()} ${w}`);
    return {
      flow: word((r) => r.kind === 'flowing' || r.kind === 'drifting').join(', '),
      hold: word((r) => r.kind === 'fixed' || r.kind === 'swaying').join(', '),
      for: 'print',
    };
  }

  /** What a third darker or brighter is made of; the time stays. */
  function lever(direction) {
    const d = last.settings;
    if (!d) {
      return `${direction > 0 ? '+' : '−'}⅓ stop`;
    }
    const iso = dials.iso.at(d.iso);
    const f = dials.fNumber.at(d.fNumber);
    const base = s.camera?.baseIso || 100;
    if (direction < 0) {
      return d.iso > base * 1.1 ? `−⅓, ISO ${dials.iso.label(iso - 1)}` : `−⅓, ${dials.fNumber.label(f + 1)}`;
    }
    return `+⅓, ISO ${dials.iso.label(iso + 1)}`;
  }

  const third = () => clampThird((last.third ?? s.third) + next.thirds);

  /** Writes the judgement into the last entry; what follows uses it. */
  function write() {
    store.edit((o) => {
      const entry = o.log.at(-1);
      Object.assign(entry, { tags: next.tags, why: next.why, verdict: next.verdict });
      if (next.thirds || next.bias) {
        entry.next = { thirds: next.thirds, stops: Math.round(100 * next.bias) / 100 };
      }
    }, { undoable: false });
    s.judging = null;
  }

  function again() {
    write();
    store.edit((o) => { o.light = { ...o.light, biasStops: Math.round(3 * ((o.light?.biasStops || 0) + next.bias)) / 3 }; }, { undoable: false });
    const before = c.scene.current()?.filters.join();
    s.third = third();
    s.choice = 0;
    c.scene.solve().then(() => {
      const same = c.scene.current()?.filters.join() === before;
      c.toStep(s.light?.stale ? 5 : same ? 8 : 6);
    });
  }

  const toggle = (label, on, act, small, focus) => el(`button${on ? '.sel' : ''}`, { type: 'button', 'aria-pressed': String(on), onclick: act, 'data-focus': focus || label }, label, small ? el('small', {}, small) : '');

  function draw() {
    const off = last.offStops;
    const t = (n) => sayThird(clampThird((last.third ?? s.third) + n));
    const set = (change) => () => { change(); draw(); };
    fill(
      content,
      el('h1', { tabindex: '-1' }, `Frame ${last.frame}`, el('small', {}, `${sayThird(last.third ?? s.third)}, ${Math.abs(off) < 0.05 ? 'as planned' : stopWords(off)}`)),
      el('div.pair2', { role: 'group', 'aria-label': 'Verdict' }, toggle('Keep', next.verdict === 'keep', set(() => { next.verdict = 'keep'; })), toggle('Not this one', next.verdict === 'not', set(() => { next.verdict = 'not'; }))),
      el(
        'div.pair2',
        { role: 'group', 'aria-label': 'Next frame' },
        toggle('Rougher', next.thirds < 0, set(() => { next.thirds = next.thirds === -3 ? 0 : Math.min(0, next.thirds) - 1; }), next.thirds < 0 ? `${t(next.thirds)}, −${fraction(next.thirds / 3)}` : t(-1)),
        toggle('Smoother', next.thirds > 0, set(() => { next.thirds = next.thirds === 3 ? 0 : Math.max(0, next.thirds) + 1; }), next.thirds > 0 ? `${t(next.thirds)}, +${fraction(next.thirds / 3)}` : t(1)),
        toggle('Darker', next.bias < 0, set(() => { next.bias = next.bias <= -0.9 ? 0 : Math.min(0, next.bias) - 1 / 3; }), next.bias < 0 ? `−${fraction(next.bias)} stop` : lever(-1)),
        toggle('Brighter', next.bias > 0, set(() => { next.bias = next.bias >= 0.9 ? 0 : Math.max(0, next.bias) + 1 / 3; }), next.bias > 0 ? `+${fraction(next.bias)} stop` : lever(1)),
      ),
      el('div.tag-keys', { role: 'group', 'aria-label': 'What happened' }, TAGS.map((tag) => toggle(tag, next.tags.includes(tag), set(() => { next.tags = next.tags.includes(tag) ? next.tags.filter((x) => x !== tag) : [...next.tags, tag]; })))),
      el('div.why', { role: 'group', 'aria-label': 'Why' }, el('p', {}, el('b', {}, 'Why: '), [next.why.flow, next.why.hold].filter(Boolean).join('; ') || 'no wish set', ', for'), el('div.tag-keys', {}, FOR.map((word) => toggle(word, next.why.for === word, set(() => { next.why = { ...next.why, for: word }; }))))),
      againWords(),
    );
    const late = c.late();
    fill(foot, el('div.keys2', {}, late ? '' : key('Log, again', again, { class: 'go', 'data-focus': 'again' }), key('Log, pack', () => { write(); c.go({ part: 'log', step: null }); }, { class: late ? 'go' : 'hold', 'data-focus': 'pack' })));
  }

  function againWords() {
    const start = latestStart(store.outing, Date.now(), c.busySeconds);
    if (c.late()) {
      return el('p.again', {}, `Past the latest start of ${clockIn(store.outing.zone, start, true)}: no other frame. Leave by ${store.outing.guard.leaveBy}.`);
    }
    return el('p.again', {}, `Again: solved anew for the light now${s.light ? `, EV ${s.light.exposureValue100.toFixed(1)}` : ''}.${s.light?.stale ? ' The reading is stale: it begins with the test frame.' : ''}${start ? ` Latest start ${clockIn(store.outing.zone, start, true)}.` : ''}`);
  }

  draw();
  return { content, foot, tick: () => {} };
}
