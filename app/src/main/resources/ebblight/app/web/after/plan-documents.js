// What is known of the plan, as the lesson reads it: what was measured and wished of the view, what the log says of the
// settings, what the result is a stack of. What is not known is left out.

import * as engine from '../engine.js';
import { wishTexts } from '../logic/parts.js';

const plannedSettings = (entry) => ({
  schema: 'settings/1',
  exposureValue100: entry.exposureValue100,
  choices: [{ ...entry.settings, correctedSeconds: entry.plannedSeconds }],
});

/** The stack that a result goes back to, by the records of what it was made from; null when there is none. */
export function stackBehind(path, made) {
  let at = made.find((m) => m.path === path);
  for (let k = 0; k < 6 && at; k++) {
    if (at.command === 'stack') {
      return at;
    }
    const sources = at.sources;
    at = made.find((m) => m.path !== at.path && sources.includes(m.path));
  }
  return null;
}

/** @returns documents by the option that takes them */
export async function planDocuments(outing, path, made, options) {
  const documents = {};
  const stack = stackBehind(path, made);
  if (stack) {
    documents.stack = stack.answer;
  }
  const entry = (outing.log || []).filter((e) => e.settings && e.plannedSeconds && e.exposureValue100 !== null && e.exposureValue100 !== undefined).at(-1);
  if (entry) {
    documents.settings = plannedSettings(entry);
  }
  const view = (outing.views || []).find((v) => v.id === entry?.view && v.frames) || (outing.views || []).find((v) => v.frames);
  if (view) {
    const frames = { path: view.frames, ...(view.framesPerSecond ? { fps: view.framesPerSecond } : {}) };
    try {
      const { answer } = await engine.measure(frames, view.strokes || [], options);
      documents.measure = answer;
      const wishes = wishTexts(view.wishes, answer);
      if (wishes.length) {
        documents.wish = (await engine.wish(frames, view.strokes || [], wishes, options)).answer;
      }
    } catch (error) {
      if (error.name === 'AbortError') {
        throw error;
      }
      // a clip that went or does not open leaves the lesson without what was measured of it
    }
  }
  return documents;
}
