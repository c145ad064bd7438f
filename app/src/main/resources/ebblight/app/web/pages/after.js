// After: back home. Sort, look, blend, repair, finish, write out; each tool is a module that draws into one host.

import { el, fill, key } from '../dom.js';
import { phoneSheet } from '../components/phone-sheet.js';
import { TOOLS } from '../logic/after.js';

const MODULES = {
  sort: () => import('../after/sort.js'),
  side: () => import('../after/side.js'),
  filter: () => import('../after/filter.js'),
  blend: () => import('../after/blend.js'),
  repair: () => import('../after/repair.js'),
  finish: () => import('../after/finish.js'),
  write: () => import('../after/write.js'),
};

/** What a tool keeps of the address when another one is opened: the card, the picture. */
const CARRIED = ['folder', 'picture'];

export function open(host, app) {
  const sub = el('nav.sub', { 'aria-label': 'After' });
  const body = el('div.after');
  let tool = null;
  let showing = 0;
  host.append(sub, body);

  const at = () => {
    const { tool: name, asked } = app.place();
    return { tool: MODULES[name] ? name : 'sort', asked };
  };
  const goTool = (name, next = {}, replace = false) => app.go({ page: 'after', tool: name, asked: next }, replace);

  function nav() {
    const now = at();
    const carried = Object.fromEntries(CARRIED.filter((k) => now.asked[k]).map((k) => [k, now.asked[k]]));
    fill(sub, TOOLS.map(([name, text]) => key(text, () => goTool(name, carried), { 'aria-current': name === now.tool ? 'page' : null, 'data-focus': `tool-${name}` })), key('The phone’s log', () => phoneSheet(app, () => tool?.changed?.()), { 'data-focus': 'tool-phone' }), el('span.cap', {}, tool?.hint || ''));
    sub.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  async function show() {
    const now = at();
    if (tool && tool.name === now.tool && tool.moved) {
      tool.moved(now.asked);
      nav();
      return;
    }
    tool?.leave?.();
    tool = null;
    nav();
    const mine = ++showing;
    body.replaceChildren(el('p.wait', {}, 'One moment.'));
    const module = await MODULES[now.tool]();
    if (mine !== showing) {
      return;
    }
    body.replaceChildren();
    body.className = `after tool-${now.tool}`;
    tool = module.open(body, { ...app, asked: () => at().asked, goTool, nav });
    tool.name = now.tool;
    nav();
  }

  show();
  return {
    moved: show,
    redraw: () => tool?.redraw?.(),
    changed: () => tool?.changed?.(),
    key: (event) => tool?.key?.(event),
    leave: () => {
      // a tool that is still on its way finds nobody there
      showing += 1;
      tool?.leave?.();
    },
  };
}
