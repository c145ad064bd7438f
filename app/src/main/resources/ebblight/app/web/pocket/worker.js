// The engine in a worker of its own. Messages in: { reason } once, then { id, put | answer | get | forget }; each is answered
// by its id, work tells its progress on the way.

let engine = null;

const open = {
  async wasm({ wasm }) {
    const { exports } = await TeaVM.wasmGC.load(unlzma(unpacked(wasm)));
    return exports;
  },
  script: () => self.ebblightReason,
};

const does = {
  put: ({ put, bytes }) => engine.put(put, new Int8Array(bytes)),
  get: ({ get }) => engine.get(get),
  forget: () => engine.forget(),
  answer({ id, answer }) {
    let told = 0;
    return engine.answer(answer, (fraction, stage) => {
      const now = performance.now();
      if (now - told > 100) {
        told = now;
        postMessage({ id, fraction, stage });
      }
    });
  },
};

onmessage = async ({ data }) => {
  try {
    if (data.reason) {
      engine = await open[data.reason](data);
      engine.main?.([]);
      postMessage({ ready: data.reason });
      return;
    }
    const what = Object.keys(does).find((name) => name in data);
    const done = does[what](data);
    postMessage({ id: data.id, done });
  } catch (error) {
    postMessage({ id: data.id, fault: String(error.message || error) });
  }
};
