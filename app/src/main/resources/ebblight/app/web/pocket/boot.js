// Unpacks the page: parts lie in it as characters (Base91 of the packer), gzipped; the engine by LZMA, for the worker to
// undo. Modules get addresses of their own, told to the browser by an import map.

(async () => {
  const packed = (name) => document.getElementById(`part-${name}`);
  // also given to the worker, as text: it stands on its own
  const unpacked = (text) => {
    const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789!#$%&()*+,./:;=>?@[]^_`{|}~"-';
    const values = new Uint8Array(128);
    for (let i = 0; i < DIGITS.length; i++) {
      values[DIGITS.charCodeAt(i)] = i;
    }
    const raw = new Uint8Array(text.length);
    let length = 0;
    let bits = 0;
    let count = 0;
    const put = () => {
      raw[length++] = bits;
      bits >>>= 8;
      count -= 8;
    };
    for (let i = 0; i + 1 < text.length; i += 2) {
      const value = values[text.charCodeAt(i)] + 91 * values[text.charCodeAt(i + 1)];
      bits |= value << count;
      count += (value & 8191) > 88 ? 13 : 14;
      while (count > 7) {
        put();
      }
    }
    if (text.length % 2) {
      bits |= values[text.charCodeAt(text.length - 1)] << count;
      put();
    }
    return raw.subarray(0, length);
  };
  const text = (name) => new Response(new Blob([unpacked(packed(name).textContent)]).stream().pipeThrough(new DecompressionStream('gzip'))).text();
  const cannot = (words) => {
    document.getElementById('main').textContent = words;
  };
  try {
    localStorage.getItem('ebblight-light');
  } catch {
    // a page opened from a file manager may be refused any storage: then this tab alone remembers
    const held = new Map();
    const value = { getItem: (name) => held.get(name) ?? null, setItem: (name, text) => held.set(name, String(text)), removeItem: (name) => held.delete(name) };
    Object.defineProperty(globalThis, 'localStorage', { value, configurable: true });
  }
  if (!globalThis.DecompressionStream || !HTMLScriptElement.supports?.('importmap')) {
    cannot('This browser is too old for the page. It needs one of 2023 or newer.');
    return;
  }
  globalThis.ebblightParts = { wasm: packed('wasm') !== null, script: packed('script') !== null, text, unpacked, packed: (name) => packed(name).textContent };
  try {
    const style = document.createElement('style');
    style.textContent = await text('styles');
    document.head.append(style);
    globalThis.ebblightPacked = JSON.parse(await text('outing'));
    const imports = {};
    for (const [name, source] of Object.entries(JSON.parse(await text('pages')))) {
      imports[name] = URL.createObjectURL(new Blob([source], { type: 'text/javascript' }));
    }
    const map = document.createElement('script');
    map.type = 'importmap';
    map.textContent = JSON.stringify({ imports });
    document.head.append(map);
    await import('ebblight/main.js');
  } catch (error) {
    cannot(`The page does not start: ${error.message}`);
  }
})();
