// Carries requests to the local server. Long work becomes a job there: its progress comes as server-sent events, it is
// joined again after a reload, and it is stopped when the signal says so.

export class Problem extends Error {
  constructor(status, document) {
    super(document.problem || `the server answered ${status}`);
    this.status = status;
    this.document = document;
  }
}

const UNREACHABLE = 'The program behind this page does not answer. Start ./ebblight open again and use its link; what was saved is in the folder.';
const LONG_WAIT_MILLIS = 20000;

export async function call(path, options = {}) {
  let reply;
  try {
    reply = await fetch(path, { credentials: 'same-origin', ...options });
  } catch (error) {
    if (error.name === 'AbortError') {
      throw error;
    }
    throw new Problem(0, { problem: UNREACHABLE });
  }
  if (!reply.ok) {
    let document = {};
    try {
      document = await reply.json();
    } catch {
      document = { problem: `the server answered ${reply.status}` };
    }
    throw new Problem(reply.status, document);
  }
  return reply;
}

export const json = async (path, options) => (await call(path, options)).json();

const post = (path, body, signal) => ({ path, options: { method: 'POST', body: JSON.stringify(body), signal } });

async function asked(path, request, { onProgress, signal, ahead } = {}) {
  const first = post(`${path}?wait=${ahead ? LONG_WAIT_MILLIS : 200}`, request, signal);
  let reply = await call(first.path, first.options);
  let whole = await reply.json();
  if (reply.status !== 202) {
    return whole;
  }
  const stop = () => call(`/api/jobs/${whole.job}`, { method: 'DELETE' }).catch(() => {});
  const { job } = whole;
  signal?.addEventListener('abort', stop, { once: true });
  const stream = onProgress && !ahead ? watch(job, onProgress) : null;
  onProgress?.(whole);
  try {
    while (reply.status === 202) {
      if (signal?.aborted) {
        throw new DOMException('stopped', 'AbortError');
      }
      reply = await call(`/api/jobs/${job}?wait=${stream ? 2000 : LONG_WAIT_MILLIS}`, { signal });
      whole = await reply.json();
      if (reply.status === 202) {
        onProgress?.(whole);
      }
    }
    return whole;
  } finally {
    stream?.close();
    signal?.removeEventListener('abort', stop);
  }
}

function watch(job, onProgress) {
  const stream = new EventSource('/api/events');
  stream.addEventListener('job', (event) => {
    const state = JSON.parse(event.data);
    if (state.job === job && !state.over) {
      onProgress(state);
    }
  });
  return stream;
}

export const httpCarrier = {
  answer: (request, options) => asked('/api/ask', request, options),
  make: (request, options) => asked('/api/make', request, options),
  async picture(address) {
    return createImageBitmap(await (await call(address)).blob());
  },
  async bytes(address) {
    return new Uint8Array(await (await call(address)).arrayBuffer());
  },
};
