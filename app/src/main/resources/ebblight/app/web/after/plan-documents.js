// What is known of the plan, as the lesson reads it: what was measured and wished of the view, what the log says of the
// settings, what the result is a stack of. What is not known is left out.

import * as engine from '../engine.js';
import { stackBehind } from '../logic/behind.js';
import { wishTexts } from '../logic/parts.js';

const plannedSettings = (entry) => ({
  schema: 'settings/1',
  exposureValue100: entry.exposureValue100,
  choices: [{ ...entry.settings, correctedSeconds: entry.plannedSeconds }],
});

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
