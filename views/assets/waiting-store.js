// Acts that wait to be sent, in the browser's own store, in the order in which they were done.

const ACTS = 'acts';

const opened = () =>
  new Promise((resolve, reject) => {
    const asked = indexedDB.open('mould-rota', 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(ACTS, { keyPath: 'place', autoIncrement: true });
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });

/** The store, or null where the browser has none: then nothing is kept, and the page says what was not sent. */
export const openStore = async () => {
  const database = await opened().catch(() => null);
  if (!database) return null;
  const run = (mode, ask) =>
    new Promise((resolve, reject) => {
      const transaction = database.transaction(ACTS, mode);
      const asked = ask(transaction.objectStore(ACTS));
      transaction.oncomplete = () => resolve(asked.result);
      transaction.onabort = () => reject(transaction.error);
    });
  return {
    /** Its place, by which it is known from then on. */
    add: (act) => run('readwrite', (acts) => acts.add(act)),
    put: (act) => run('readwrite', (acts) => acts.put(act)),
    remove: (place) => run('readwrite', (acts) => acts.delete(place)),
    all: () => run('readonly', (acts) => acts.getAll()),
  };
};
