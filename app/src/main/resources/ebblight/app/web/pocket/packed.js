// The outing this page is about: the one it came with, or one opened from a file since then.

import * as keep from './keep.js';

const came = globalThis.ebblightPacked;

/** The outing that was opened last. */
export const packedOuting = async () => (await keep.read('packed')) || came;

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
