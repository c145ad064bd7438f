// The shell: pages by the address, the light of the screen, keys, undo, what is to be said.

import { useCarrier } from './engine.js';
import { httpCarrier } from './http-carrier.js';
import { createStore } from './store.js';
import { PAGES, readPlace, writePlace } from './logic/place.js';
import { el, fill, key, marks } from './dom.js';
import { MARK } from './axis/marks.js';
import { openSheet } from './components/sheet.js';
import { keyMap } from './components/key-map.js';

useCarrier(httpCarrier);

const LIGHTS = { room: 'Room', day: 'Daylight', night: 'Night' };
const NAMES = { before: 'Before', there: 'There', after: 'After', kit: 'Kit' };
const main = document.getElementById('main');
const notice = document.getElementById('notice');
let page = null;
let noticeTimer = 0;
let lasting = '';

/** Something to be told in passing; kind "saving" stays until it is told with no words. */
function say(text, kind) {
  clearTimeout(noticeTimer);
  if (kind === 'saving') {
    lasting = text;
  }
  notice.textContent = text || lasting;
  if (text && kind !== 'saving') {
    noticeTimer = setTimeout(() => {
      notice.textContent = lasting;
    }, 6000);
  }
}

const store = createStore(say);

function light() {
  return localStorage.getItem('ebblight-light') || (innerWidth <= 700 ? 'day' : 'room');
}

function setLight(name) {
  localStorage.setItem('ebblight-light', name);
  document.body.dataset.light = name;
  page?.redraw?.();
  header();
}

export const place = () => readPlace(location.hash);

/** Goes somewhere; replace leaves no step for the back key. */
function go(next, replace = false) {
  const to = writePlace({ ...place(), ...next });
  if (to === location.hash) {
    return;
  }
  if (replace) {
    history.replaceState(null, '', to);
  } else {
    history.pushState(null, '', to);
    show();
  }
}

const lights = () =>
  el(
    'div.lights',
    { role: 'group', 'aria-label': 'Light of the screen' },
    Object.entries(LIGHTS).map(([name, text]) => key(text, () => setLight(name), { 'aria-pressed': String(document.body.dataset.light === name), 'data-focus': `light-${name}` })),
  );

const links = (close) =>
  PAGES.map((name) =>
    el('a', { href: `#${name}`, 'aria-current': place().page === name ? 'page' : null, 'data-focus': `nav-${name}`, onclick: () => close?.() }, NAMES[name]),
  );

function header() {
  const outing = store.whole?.outing;
  const view = outing?.views?.find((v) => v.id === place().view) || outing?.views?.[0];
  document.title = `${NAMES[place().page]} · ${outing?.name || 'Ebblight'} · Ebblight`;
  fill(
    document.getElementById('top'),
    el('a.mark', { href: '#there', 'aria-label': 'Ebblight' }, marks(MARK), el('span', {}, 'Ebblight')),
    el('nav', { 'aria-label': 'Pages' }, links()),
    el('div.place', {}, el('b', {}, outing?.place?.name || outing?.name || ''), view && outing.views.length > 1 ? el('span', {}, ` · ${view.name}`) : ''),
    key('Undo', undo, { class: 'tool', disabled: !store.whole || !store.canUndo, 'data-focus': 'undo', title: 'Ctrl Z' }),
    lights(),
    key('Menu', menu, { class: 'tool menu' }),
  );
}

function menu() {
  openSheet('Where to', (close) => el('div.menu-sheet', {}, links(close), lights(), key('Undo', () => { close(); undo(); }, { class: 'alt', disabled: !store.canUndo }), key('Keys', () => { close(); keyMap(); }, { class: 'alt' })));
}

function undo() {
  if (store.undo()) {
    say('Taken back.');
    page?.changed?.();
    header();
  }
}

const MODULES = {
  there: () => import('./pages/there.js'),
  before: () => import('./pages/before.js'),
  after: () => import('./pages/after.js'),
  kit: () => import('./pages/kit.js'),
};

let showing = 0;

/** Shows the page of the address; of two calls at once (a click tells popstate and hashchange) only the last opens it. */
async function show() {
  const at = place();
  header();
  if (page && page.name === at.page && page.moved) {
    page.moved(at);
    return;
  }
  page?.leave?.();
  page = null;
  main.replaceChildren(el('p.wait', {}, 'One moment.'));
  const mine = ++showing;
  const module = await MODULES[at.page]();
  if (mine !== showing) {
    return;
  }
  main.replaceChildren();
  main.className = `page-${at.page}`;
  page = module.open(main, { store, go, place, say, header });
  page.name = at.page;
}

function fault(error) {
  main.replaceChildren(
    el(
      'div.empty.fault',
      { role: 'alert' },
      el('h1', {}, error.status === 401 ? 'This page is closed' : 'The outing does not open'),
      el('p', {}, error.message),
      key('Try again', start, { class: 'act' }),
    ),
  );
}

async function start() {
  try {
    await store.load();
    store.listen(header);
    if (!store.whole.beside) {
      say(store.whole.keptWords || `This folder cannot be written. The outing is kept in ${store.whole.keptIn}.`);
    }
    await show();
  } catch (error) {
    fault(error);
  }
}

addEventListener('popstate', show);
addEventListener('hashchange', show);
addEventListener('resize', () => page?.redraw?.());
addEventListener('beforeunload', (event) => {
  if (store.whole && store.unsaved) {
    store.save();
    event.preventDefault();
  }
});
addEventListener('keydown', (event) => {
  const typing = /^(INPUT|TEXTAREA|SELECT)$/.test(event.target.tagName);
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z' && !typing) {
    event.preventDefault();
    undo();
  } else if (event.key === '?' && !typing) {
    keyMap();
  } else if (!typing && !event.ctrlKey && !event.metaKey && !event.altKey && !document.querySelector('.sheet')) {
    page?.key?.(event);
  }
});

document.body.dataset.light = light();
start();
