// Bringing the log home: the outing with its log as a file, shared or saved.

import { el, fill, key } from '../dom.js';
import { openFile } from './packed.js';

export function open(host, { store, say }) {
  const file = () => new File([`${JSON.stringify(store.outing, null, 2)}\n`], 'outing-from-phone.json', { type: 'application/json' });

  async function share() {
    const one = file();
    if (navigator.canShare?.({ files: [one] })) {
      await navigator.share({ files: [one], title: store.outing.name }).catch(() => {});
      return;
    }
    const link = el('a', { href: URL.createObjectURL(one), download: one.name });
    link.click();
    say('The file is with your downloads.');
  }

  const input = el('input', { type: 'file', accept: '.json,application/json', class: 'unseen', tabindex: '-1', 'aria-label': 'Outing for the phone' });
  input.addEventListener('change', async () => {
    try {
      await openFile(input.files[0]);
      location.hash = '#there';
      location.reload();
    } catch (error) {
      say(error.message);
    }
    input.value = '';
  });

  const frames = store.outing.log?.length || 0;
  fill(
    host,
    el(
      'section.empty',
      {},
      el('h1', {}, 'Bring it home'),
      el('p', {}, frames ? `${frames} ${frames === 1 ? 'frame is' : 'frames are'} in the log.` : 'The log is empty so far; every exposure writes itself.'),
      el('p', {}, 'On the desk, "The phone’s log" (After) takes it into the outing and finds the frame of each entry; so does "ebblight outing join FOLDER FILE".'),
      store.whole.beside ? '' : el('p.fault', { role: 'alert' }, store.whole.keptWords),
      globalThis.ebblightNewer ? el('p', {}, 'A newer page has come; logs and bag stay as they are. ', key('Use it now', () => location.reload(), { class: 'alt' })) : '',
      el('div.keys', {}, key('Save or send the log', share, { class: 'act' })),
      el('h2', {}, 'Another outing'),
      el('p', {}, 'The desk writes outing.pocket.json beside this page. Logs of other outings stay on this phone.'),
      el('div.keys', {}, key('Open an outing', () => input.click(), { class: 'alt' })),
      input,
    ),
  );
  return {};
}
