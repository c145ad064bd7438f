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
const SHORT_WAIT_MILLIS = 200;
const LONG_WAIT_MILLIS = 20000;

/** Another tab may stop work that both wait for; it is asked for again, but not for ever. */
const MOST_TRIES = 4;

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

/** Long work at an address of the server: joined when it is under way, told of as it goes, stopped when the signal says so. */
export async function asked(path, request, options = {}) {
  for (let tries = 1; tries <= MOST_TRIES; tries++) {
    const whole = await askedOnce(path, request, options);
    if (!whole.stopped) {
      return whole;
    }
  }
  throw new Problem(410, { problem: 'This work was stopped in another tab. Ask for it again.' });
}

async function askedOnce(path, request, { onProgress, signal, ahead }) {
  // The first answer comes soon and is waited for even when stopped: only it names the job that must be stopped too.
  let reply = await call(`${path}?wait=${SHORT_WAIT_MILLIS}`, { method: 'POST', body: JSON.stringify(request) });
  let whole = await reply.json();
  const { job } = whole;
  const stop = () => call(`/api/jobs/${job}`, { method: 'DELETE' }).catch(() => {});
  const stopped = () => new DOMException('stopped', 'AbortError');
  if (reply.status === 202) {
    signal?.addEventListener('abort', stop, { once: true });
  }
  if (signal?.aborted) {
    if (reply.status === 202) {
      stop();
    }
    throw stopped();
  }
  const stream = reply.status === 202 && onProgress && !ahead ? watch(job, onProgress) : null;
  try {
    while (reply.status === 202) {
      onProgress?.(whole);
      reply = await call(`/api/jobs/${job}?wait=${stream ? 2000 : LONG_WAIT_MILLIS}`, { signal });
      whole = await reply.json();
      if (signal?.aborted) {
        throw stopped();
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
