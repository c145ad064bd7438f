// Unpacks the page: parts lie in it gzipped, as base64. Modules get addresses of their own, told to the browser by an
// import map.

(async () => {
  const packed = (name) => document.getElementById(`part-${name}`);
  const bytes = async (name) => {
    const raw = Uint8Array.from(atob(packed(name).textContent.trim()), (c) => c.charCodeAt(0));
    const stream = new Blob([raw]).stream().pipeThrough(new DecompressionStream('gzip'));
    return new Uint8Array(await new Response(stream).arrayBuffer());
  };
  const text = async (name) => new TextDecoder().decode(await bytes(name));
  const cannot = (words) => {
    document.getElementById('main').textContent = words;
  };
  if (!globalThis.DecompressionStream || !HTMLScriptElement.supports?.('importmap')) {
    cannot('This browser is too old for the page. It needs one of 2023 or newer.');
    return;
  }
  globalThis.ebblightParts = { wasm: packed('wasm') !== null, script: packed('script') !== null, bytes, text };
  try {
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
