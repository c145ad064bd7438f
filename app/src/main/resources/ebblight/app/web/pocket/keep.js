// What outlives the tab: documents in IndexedDB, written at once. Where there is no lasting storage, memory, and the page
// says so.

const NAME = 'ebblight-pocket';
let memory = null;

const wanted = (request) =>
  new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });

/** When what a transaction wrote is there to stay: a written request alone is lost with a tab that falls over before. */
const ended = (transaction) =>
  new Promise((done, failed) => {
    transaction.oncomplete = () => done();
    transaction.onabort = () => failed(transaction.error);
  });

let opened = null;

async function database() {
  opened ||= (async () => {
    try {
      const request = indexedDB.open(NAME, 1);
      request.onupgradeneeded = () => request.result.createObjectStore('kept');
      const base = await wanted(request);
      // some browsers open a base that forgets everything: only a written and read value proves it
      await wanted(base.transaction('kept', 'readwrite').objectStore('kept').put(1, 'probe'));
      return base;
    } catch {
      memory = new Map();
      return null;
    }
  })();
  return opened;
}

/** Whether what is written here is there after the page was closed. */
export const lasts = async () => (await database()) !== null;

export async function read(key) {
  const base = await database();
  return base ? wanted(base.transaction('kept').objectStore('kept').get(key)) : memory.get(key);
}

/** Changes a document in one transaction: change gets what is there and returns what shall be there. */
export async function change(key, act) {
  const base = await database();
  if (!base) {
    const made = act(memory.get(key));
    memory.set(key, made);
    return made;
  }
  const transaction = base.transaction('kept', 'readwrite', { durability: 'strict' });
  const store = transaction.objectStore('kept');
  const made = act(await wanted(store.get(key)));
  store.put(made, key);
  await ended(transaction);
  return made;
}

export async function keys(prefix) {
  const base = await database();
  const range = IDBKeyRange.bound(prefix, `${prefix}\uffff`);
  return base ? wanted(base.transaction('kept').objectStore('kept').getAllKeys(range)) : [...memory.keys()].filter((key) => key.startsWith(prefix));
}

export async function remove(key) {
  const base = await database();
  if (base) {
    const transaction = base.transaction('kept', 'readwrite');
    transaction.objectStore('kept').delete(key);
    await ended(transaction);
  } else {
    memory.delete(key);
  }
}
