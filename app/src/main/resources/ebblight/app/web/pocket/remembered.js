// Answers about a clip that outlive it: phones let go of a clip with its page, while parts, wishes and pictures that were
// measured from it are still wanted, most of all in the middle of an exposure.

import * as keep from './keep.js';

const PREFIX = 'answer ';
const keyOf = (path, asked) => `${PREFIX}${path} ${JSON.stringify(asked)}`;

export const recall = (path, asked) => keep.read(keyOf(path, asked));

export const remember = (path, asked, whole) => keep.change(keyOf(path, asked), () => whole);

/** Lets go of what was answered about clips that no view has any more. */
export async function forgetOthers(paths) {
  for (const key of await keep.keys(PREFIX)) {
    if (!paths.some((path) => key.startsWith(`${PREFIX}${path} `))) {
      await keep.remove(key);
    }
  }
}

/** A name that no clip has had on this phone: cameras call every clip alike. */
export async function freeName(name) {
  const known = await keep.keys(`${PREFIX}${name} `);
  const dot = name.lastIndexOf('.');
  return known.length ? `${name.slice(0, dot)}-${Date.now().toString(36)}${name.slice(dot)}` : name;
}
