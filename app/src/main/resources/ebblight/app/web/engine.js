// The one door to the engine: the contract of Engine.answer, whatever carries it. A carrier is
//   { answer(request, { onProgress, signal, ahead }) -> Promise<{ answer, blobs }> , picture(blob) -> Promise<ImageBitmap> }
// where blobs maps names to addresses or byte arrays. The desk's carrier speaks HTTP to the local server; the phone's calls
// the same engine inside the page.

let carrier = null;

export function useCarrier(next) {
  carrier = next;
}

export function answer(request, options = {}) {
  return carrier.answer(request, options);
}

const withStrokes = (request, strokes) =>
  strokes && strokes.length ? { ...request, strokes: { schema: 'strokes/1', strokes } } : request;

export const measure = (frames, strokes, options) =>
  answer(withStrokes({ schema: 'measure/1', frames }, strokes), options);

/** Which parts there are, with the strokes, before anything of them is measured: at once for frames that were read. */
export const parts = (frames, strokes, options) =>
  answer(withStrokes({ schema: 'parts/1', frames }, strokes), options);

/** How far the water came up in these frames; @param more { riseMetres, washMetres } */
export const wash = (frames, strokes, more, options) =>
  answer(withStrokes({ schema: 'wash/1', frames, ...more }, strokes), options);

export const wish = (frames, strokes, wishes, options) =>
  answer(withStrokes({ schema: 'wish/1', frames, wishes }, strokes), options);

export const strips = (frames, strokes, crops, everyThirds, options) =>
  answer(withStrokes({ schema: 'strip/1', frames, crops, everyThirds }, strokes), options);

export const settings = (request) => answer({ schema: 'settings/1', ...request }).then((whole) => whole.answer);

export const light = (request) => answer({ schema: 'light/1', ...request }).then((whole) => whole.answer);

export const sky = (request) => answer({ schema: 'sky/1', ...request }).then((whole) => whole.answer);

export const guess = (request) => answer({ schema: 'guess/1', ...request }).then((whole) => whole.answer);

/** The picture at a third of a stop, as an ImageBitmap. */
export async function preview(frames, strokes, node, options) {
  const whole = await answer(withStrokes({ schema: 'preview/1', frames, node }, strokes), { ahead: true, ...options });
  return { bitmap: await carrier.picture(whole.blobs.picture), facts: whole.answer };
}

export const bytes = (blob) => carrier.bytes(blob);

/** The full-size preview as a file of the outing. */
export const make = (frames, strokes, time, options) =>
  carrier.make(withStrokes({ frames, time }, strokes), options);
