// The outing's document on the page: edits are functions, so that they can be done again on a newer document, and undone.
// Nothing typed is lost: what could not be saved stays in this browser and is tried again.

import { Problem, json } from './http-carrier.js';
import { framesLeft } from './logic/unsaved.js';

const SAVE_AFTER_MILLIS = 350;
const RETRY_AFTER_MILLIS = 4000;
const MOST_UNDO = 60;

export function createStore(say) {
  let whole = null;
  let pending = [];
  let timer = 0;
  let saving = false;
  const past = [];
  const listeners = new Set();

  const tell = () => listeners.forEach((listener) => listener());
  const safeKey = () => `ebblight-unsaved-${whole.folder}`;
  const copy = (value) => JSON.parse(JSON.stringify(value));

  async function load() {
    whole = await json('/api/outing');
    const left = localStorage.getItem(safeKey());
    if (left) {
      const unsaved = JSON.parse(left);
      if (unsaved.revision === whole.outing.revision) {
        whole.outing = unsaved;
        pending = [(document) => Object.assign(document, copy(unsaved), { revision: document.revision })];
        schedule(0);
        say('Edits that were not saved last time are back.');
      } else {
        regain(framesLeft(unsaved, whole.outing));
      }
    }
    return whole;
  }

  /** The outing went on without this browser: what was planned since stands, and no frame that was taken is lost. */
  function regain(frames) {
    if (frames.length) {
      edit((document) => { document.log = [...(document.log || []), ...frames]; }, { undoable: false });
    } else {
      localStorage.removeItem(safeKey());
    }
    const back = frames.length === 1 ? ', and one frame of the log is back' : frames.length ? `, and ${frames.length} frames of the log are back` : '';
    say(`The outing is newer than edits that were not saved last time: they are left out${back}.`);
  }

  function edit(change, { undoable = true } = {}) {
    if (undoable) {
      past.push(copy(whole.outing));
      past.splice(0, past.length - MOST_UNDO);
    }
    change(whole.outing);
    pending.push(change);
    keep();
    schedule(SAVE_AFTER_MILLIS);
    tell();
  }

  function undo() {
    const before = past.pop();
    if (!before) {
      return false;
    }
    const log = whole.outing.log;
    const change = (document) => {
      for (const key of Object.keys(document)) {
        delete document[key];
      }
      Object.assign(document, copy(before), { log });
    };
    const revision = whole.outing.revision;
    edit((document) => {
      const at = document.revision;
      change(document);
      document.revision = at === undefined ? revision : at;
    }, { undoable: false });
    return true;
  }

  const keep = () => {
    try {
      localStorage.setItem(safeKey(), JSON.stringify(whole.outing));
    } catch {
      say('This browser keeps nothing; save before you close it.');
    }
  };

  function schedule(after) {
    clearTimeout(timer);
    timer = setTimeout(save, after);
  }

  async function save() {
    if (saving || !pending.length) {
      return;
    }
    saving = true;
    const sent = pending.length;
    try {
      const written = await json('/api/outing', { method: 'PUT', body: JSON.stringify(whole.outing) });
      pending = pending.slice(sent);
      whole.outing.revision = written.revision;
      if (pending.length) {
        keep();
      } else {
        localStorage.removeItem(safeKey());
      }
      say('', 'saving');
      tell();
    } catch (error) {
      if (error instanceof Problem && error.status === 409) {
        const newer = error.document.newer;
        pending.forEach((change) => change(newer));
        whole.outing = newer;
        keep();
        say('Changed in another tab: both changes are kept.');
        tell();
        schedule(0);
      } else {
        say(`Not saved yet: ${error.message}`, 'saving');
        schedule(RETRY_AFTER_MILLIS);
      }
    } finally {
      saving = false;
    }
    if (pending.length) {
      schedule(SAVE_AFTER_MILLIS);
    }
  }

  return {
    load,
    edit,
    undo,
    save,
    get whole() {
      return whole;
    },
    get outing() {
      return whole.outing;
    },
    get unsaved() {
      return pending.length > 0;
    },
    get canUndo() {
      return past.length > 0;
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
