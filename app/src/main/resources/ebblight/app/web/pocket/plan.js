// The plan as it was packed: windows with their reasons. It is made on the desk; here it is read.

import { el, fill } from '../dom.js';

const packed = globalThis.ebblightPacked;

export function open(host, { store }) {
  const zone = store.outing.zone || 'UTC';
  const words = new Intl.DateTimeFormat('en-GB', { timeZone: zone, weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
  const hour = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' });
  const windows = (packed.plan?.windows || []).filter((one) => Date.parse(one.end) > Date.now());
  fill(
    host,
    el(
      'section.log',
      {},
      el('div.log-head', {}, el('h1', {}, 'Windows')),
      windows.length ? '' : el('p', {}, 'No window is packed. Plan on the desk, then make the page again.'),
      el(
        'ol.log-rows',
        {},
        windows.map((one) =>
          el(
            'li',
            {},
            el('div', {}, el('b', {}, `${words.format(Date.parse(one.start))} to ${hour.format(Date.parse(one.end))}`), el('p', {}, one.why.join('; '))),
          )),
      ),
      (packed.plan?.cautions || []).map((text) => el('p.caution', {}, text)),
    ),
  );
  return {};
}
