// The outing this page is about: the one it came with, or one opened from a file since then.

import * as keep from './keep.js';

const came = globalThis.ebblightPacked;

/** In front of an outing in the address: a code on the desk's screen that the phone's camera opened. */
const OPEN = '#open=';

async function fromAddress() {
  const { hash } = location;
  if (!hash.startsWith(OPEN)) {
    return;
  }
  history.replaceState(null, '', '#there');
  const bytes = Uint8Array.from(atob(hash.slice(OPEN.length).replaceAll('-', '+').replaceAll('_', '/')), (sign) => sign.charCodeAt(0));
  const text = await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).text();
  await openFile(new File([text], 'the code'));
}

let opened = null;

/** The outing that was opened last. */
export async function packedOuting() {
  opened ||= fromAddress().catch(() => { throw new Error('The code was not read whole. Hold the camera nearer, and open it again.'); });
  await opened;
  return (await keep.read('packed')) || came;
}

/** A code that comes while the page is open. */
addEventListener('hashchange', () => location.hash.startsWith(OPEN) && location.reload());

/** Opens an outing from a file of the desk. */
export async function openFile(file) {
  let document;
  try {
    document = JSON.parse(await file.text());
  } catch {
    throw new Error(`${file.name}: is not an outing for the phone; expected the file outing.pocket.json of the desk.`);
  }
  if (document.schema !== 'pocket-outing/1' || !document.outing?.views) {
    throw new Error(`${file.name}: is not an outing for the phone; expected the file outing.pocket.json of the desk.`);
  }
  await keep.change('packed', () => document);
}
