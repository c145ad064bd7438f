// The proof of a print: the picture as a printer's profile says it will look, and what the paper cannot hold.

import { el, fill, key } from '../dom.js';
import { openSheet } from '../components/sheet.js';
import { INTENTS, provedWords } from '../logic/write.js';
import { bringProfile, profilesHere, proofOf } from './desk.js';

/**
 * @param c { state, settings, set, draw }
 */
export function proofRows({ state, settings, set, draw }) {
  const { profile, intent } = settings();
  const known = state.profiles || [];

  async function ask(path = profile, how = intent) {
    const mine = (state.proving = {});
    state.proof = null;
    if (!path) {
      draw();
      return;
    }
    draw();
    try {
      const whole = await proofOf(state.picture, path, how);
      if (mine === state.proving) {
        state.proof = { path, how, ...whole.answer, href: whole.blobs.picture };
      }
    } catch (error) {
      if (mine === state.proving) {
        state.proof = { path, how, fault: error.message };
      }
    }
    draw();
  }

  async function bring(file) {
    try {
      const one = await bringProfile(file);
      state.profiles = [...known.filter((p) => p.path !== one.path), one];
      set('profile', one.path);
      ask(one.path);
    } catch (error) {
      state.proof = { fault: error.message };
      draw();
    }
  }

  if (!state.profiles && !state.lookingForProfiles) {
    state.lookingForProfiles = true;
    profilesHere().then((list) => { state.profiles = list; draw(); }).catch(() => { state.profiles = []; });
  }
  if (profile && known.some((p) => p.path === profile) && !state.proof && !state.proving) {
    ask();
  }
  const file = el('input', { type: 'file', accept: '.icc,.icm', hidden: true, onchange: (event) => event.target.files[0] && bring(event.target.files[0]) });
  const { proof } = state;
  const choice = el(
    'label.slip-row',
    {},
    el('span', {}, 'Proof on'),
    el('select', { 'data-focus': 'profile', onchange: (event) => { if (event.target.value === '+') { file.click(); event.target.value = profile; } else { set('profile', event.target.value); ask(event.target.value); } } }, el('option', { value: '' }, 'no printer’s profile'), known.map((p) => el('option', { value: p.path, selected: p.path === profile }, p.name || p.path)), el('option', { value: '+' }, 'bring a profile (.icc) …')),
    file,
  );
  if (!profile && !proof?.fault) {
    return [choice];
  }
  const step = (way) => {
    const next = INTENTS[(INTENTS.findIndex(([word]) => word === intent) + way + INTENTS.length) % INTENTS.length][0];
    set('intent', next);
    ask(profile, next);
  };
  return [
    choice,
    profile ? el('div.slip-row', { role: 'group', 'aria-label': 'Colours beyond it' }, el('span', {}, 'Beyond it'), el('div', {}, el('b', { role: 'status' }, INTENTS.find(([word]) => word === intent)[1]), el('small', {}, intent)), el('div.pm', {}, key('−', () => step(-1), { 'aria-label': 'Colours beyond it: before', 'data-focus': 'intent-less' }), key('+', () => step(1), { 'aria-label': 'Colours beyond it: next', 'data-focus': 'intent-more' }))) : '',
    el(
      'div.slip-row.proved',
      { role: 'status' },
      el('span', {}, 'Proofed'),
      el('div', {}, proof?.fault ? el('span.note', {}, proof.fault) : proof ? provedWords(proof).map((text, i) => el(i ? 'small' : 'b', {}, text)) : 'looking'),
    ),
    proof?.href ? el('div.slip-row', {}, el('span', {}), key('Look at the proof', () => proofSheet(state), { class: 'alt', 'data-focus': 'proof-look' })) : '',
  ];
}

/** The proof large, with the picture as it is under the same key. */
function proofSheet(state) {
  openSheet('Proof', () => {
    const body = el('div.stack-sheet');
    const draw = (bare) => fill(body, el('div.frame-picture', {}, el('img', { src: bare ? `/api/thumbnail?path=${encodeURIComponent(state.picture)}&width=1280` : state.proof.href, alt: bare ? 'The picture as it is' : 'The picture as the print will look' })), el('div.ways', { role: 'group', 'aria-label': 'Shown' }, key('As printed', () => draw(false), { class: 'alt', 'aria-pressed': String(!bare), 'data-focus': 'as-printed' }), key('Untouched', () => draw(true), { class: 'alt', 'aria-pressed': String(bare), 'data-focus': 'as-it-is' })), provedWords(state.proof).map((text) => el('p', {}, text)), el('p.cap', {}, 'As true as this screen is; its own profile is for the system to apply.'));
    draw(false);
    return body;
  });
}
