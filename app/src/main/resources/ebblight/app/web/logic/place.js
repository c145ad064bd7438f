// Where in the app we are, in the hash of the address: #there/view-1/shot/4?time=25s, #after/finish?picture=made/stack.tif

import { clampThird, thirdOf, secondsOf } from '../axis/scale.js';

export const PAGES = ['before', 'there', 'after', 'kit'];

/** Seconds of a time as commands read it: "4m", "4m30s", "1/60", "0.8s", "30"; 0 for what is no time. */
export function secondsTyped(text) {
  const found = /^(?:(\d+(?:\.\d+)?)m)?(?:(\d+(?:\.\d+)?)(?:\/(\d+(?:\.\d+)?))?s?)?$/.exec((text || '').trim());
  const [, minutes = 0, seconds = 0, parts = 1] = found || [];
  const whole = 60 * Number(minutes) + Number(seconds) / Number(parts);
  return Number.isFinite(whole) ? whole : 0;
}

export function readPlace(hash) {
  const [path, query = ''] = hash.replace(/^#/, '').split('?');
  const parts = path.split('/').map((part) => decodeURIComponent(part));
  const page = PAGES.includes(parts[0]) ? parts[0] : 'there';
  const asked = new URLSearchParams(query);
  const seconds = secondsTyped(asked.get('time'));
  const after = page === 'after';
  return {
    page,
    ...(after ? { tool: parts[1] || null, asked: Object.fromEntries(asked) } : {}),
    view: after ? null : parts[1] || null,
    part: parts[2] || null,
    step: parts[3] ? Number(parts[3]) : null,
    third: seconds > 0 ? clampThird(thirdOf(seconds)) : null,
  };
}

export function writePlace({ page, view, part, step, third, tool, asked }) {
  if (page === 'after') {
    const query = Object.entries(asked || {}).filter(([, value]) => value !== null && value !== undefined && value !== '');
    return `#after${tool ? `/${tool}` : ''}${query.length ? `?${new URLSearchParams(query)}` : ''}`;
  }
  const path = [page, view, part, step].filter((one) => one !== null && one !== undefined).map((one) => encodeURIComponent(one)).join('/');
  const time = third === null || third === undefined ? '' : `?time=${Number(secondsOf(third).toPrecision(4))}s`;
  return `#${path}${time}`;
}
