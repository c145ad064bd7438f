// The engine of the page: a worker that answers one question after the other. Stopping ends the worker; the next question
// starts a new one and hands it the frames again.

const parts = globalThis.ebblightParts;
const hasWasm = () => {
  try {
    // a module with one garbage-collected type: refused where the phone does not know them
    return WebAssembly.validate(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 3, 1, 0x5f, 0]));
  } catch {
    return false;
  }
};

let worker = null;
let next = 1;
let waiting = new Map();
const kept = new Map();

/** Which way the engine runs here: "wasm", "script", or null where neither can. */
export const way = () => (hasWasm() && parts.wasm ? 'wasm' : parts.script ? 'script' : null);

async function start() {
  const how = way();
  if (!how) {
    throw new Error('This browser cannot run the page: it needs a browser of 2024 or newer, or the page from its folder, which also runs in older ones.');
  }
  // the script is of the kind that fills in "exports"; a worker from a file may not import anything
  const source = how === 'wasm' ? [await parts.text('wasm-runtime'), `\nconst unpacked = ${parts.unpacked};\n`] : ['var exports = {};\n', await parts.text('script'), '\nself.ebblightReason = exports;\n'];
  source.push(await parts.text('worker'));
  const made = new Worker(URL.createObjectURL(new Blob(source, { type: 'text/javascript' })));
  const ready = new Promise((done, failed) => {
    made.onerror = (event) => failed(new Error(event.message));
    made.onmessage = ({ data }) => {
      if (data.ready) {
        done();
        return;
      }
      const one = waiting.get(data.id);
      if (!one) {
        if (data.fault) {
          failed(new Error(data.fault));
        }
      } else if ('done' in data) {
        waiting.delete(data.id);
        one.done(data.done);
      } else if ('fault' in data) {
        waiting.delete(data.id);
        one.failed(new Error(data.fault));
      } else {
        one.onProgress?.(data);
      }
    };
  });
  made.postMessage({ reason: how, wasm: how === 'wasm' ? parts.packed('wasm') : null });
  await ready;
  const ask = (message, onProgress) =>
    new Promise((done, failed) => {
      const id = next++;
      waiting.set(id, { done, failed, onProgress });
      made.postMessage({ id, ...message });
    });
  for (const [name, bytes] of kept) {
    ask({ put: name, bytes });
  }
  return { ask, end: () => made.terminate() };
}

const running = () => {
  worker ||= start().catch((error) => {
    worker = null;
    throw error;
  });
  return worker;
};

/** Starts the engine ahead of the first question. */
export const warm = () => running().then(() => way());

/** Hands over a frame; it is handed over again to a new worker. */
export async function put(name, bytes) {
  kept.set(name, bytes);
  await (await running()).ask({ put: name, bytes });
}

export async function forget() {
  kept.clear();
  await (await running()).ask({ forget: true });
}

export const get = async (name) => (await running()).ask({ get: name });

/** Answers a request of the engine; what is wrong with it is thrown. */
export async function answer(request, { onProgress, signal } = {}) {
  const { ask } = await running();
  signal?.throwIfAborted();
  const stop = async () => {
    const ended = await worker;
    worker = null;
    const left = waiting;
    waiting = new Map();
    ended.end();
    left.forEach((one) => one.failed(new DOMException('stopped', 'AbortError')));
  };
  signal?.addEventListener('abort', stop, { once: true });
  try {
    const document = JSON.parse(await ask({ answer: JSON.stringify(request) }, onProgress));
    if (document.problem) {
      throw new Error(document.problem);
    }
    return document;
  } finally {
    signal?.removeEventListener('abort', stop);
  }
}
