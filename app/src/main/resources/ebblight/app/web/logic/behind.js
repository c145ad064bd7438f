// What a result goes back to, by the records of what it was made from. No document here.

const MOST_STEPS = 6;

/** The result itself and what it was made from, newest first, as far as records tell. */
function* chain(path, made) {
  let at = made.find((m) => m.path === path);
  for (let k = 0; k < MOST_STEPS && at; k++) {
    yield at;
    const { path: of, sources } = at;
    at = made.find((m) => m.path !== of && sources.includes(m.path));
  }
}

/** The stack that a result goes back to; null when there is none. */
export function stackBehind(path, made) {
  for (const at of chain(path, made)) {
    if (at.command === 'stack') {
      return at;
    }
  }
  return null;
}

const folderOf = (path) => path.split('/').slice(0, -1).join('/');

/**
 * The frames that a result was stacked, blended or previewed from, as requests name them, with the strokes that were
 * drawn over them; null when no record tells.
 */
export function viewBehind(path, made) {
  for (const at of chain(path, made)) {
    if (['stack', 'blend', 'preview'].includes(at.command) && at.inputs.length) {
      const strokes = at.documents['--strokes'];
      return { frames: at.inputs.length === 1 ? { path: at.inputs[0] } : { files: at.inputs }, ...(strokes?.strokes?.length ? { strokes } : {}) };
    }
  }
  return null;
}

/** The same frames named by their folder where they are all that lies in it. */
export function byFolder(view, inputs) {
  const files = view?.frames.files;
  const folder = files && inputs.find((i) => !i.clip && i.frames === files.length && files.every((f) => folderOf(f) === i.path));
  return folder ? { ...view, frames: { path: folder.path } } : view;
}
