// Where boats lie between visits: IndexedDB, which writes to the disk before it
// says so; localStorage where a browser has none; else nowhere.

/**
 * @typedef {object} Depot
 * @property {boolean} lasting whether anything stays
 * @property {() => Promise<unknown[]>} all every entry
 * @property {(id: string, change: (stored: unknown) => unknown) => Promise<unknown>} update
 *   puts what change makes of the stored entry (undefined takes it out), with
 *   no other tab in between, and gives what was put; rejects where it was not kept
 */

const STORE = 'boats';

/**
 * The best depot that this browser gives.
 * @returns {Promise<Depot>}
 */
export async function openDepot() {
  try {
    return database(await opened());
  } catch {
    return local() ?? nowhere();
  }
}

/** @returns {Promise<IDBDatabase>} */
function opened() {
  return new Promise((done, fail) => {
    const asked = indexedDB.open('marinecalc', 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE, { keyPath: 'id' });
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
    asked.onblocked = () => fail(new Error('blocked'));
  });
}

/**
 * @param {IDBDatabase} db
 * @returns {Depot}
 */
function database(db) {
  return {
    lasting: true,
    all: () =>
      new Promise((done, fail) => {
        const asked = db.transaction(STORE).objectStore(STORE).getAll();
        asked.onsuccess = () => done(asked.result);
        asked.onerror = () => fail(asked.error);
      }),
    update: (id, change) =>
      new Promise((done, fail) => {
        // Strict: it is on the disk when it says so, whatever becomes of the battery.
        const act = db.transaction(STORE, 'readwrite', { durability: 'strict' });
        const boats = act.objectStore(STORE);
        /** @type {unknown} */
        let put;
        const asked = boats.get(id);
        asked.onsuccess = () => {
          try {
            put = change(asked.result);
            if (put === undefined) boats.delete(id);
            else boats.put(put);
          } catch (error) {
            act.abort();
            fail(error);
          }
        };
        act.oncomplete = () => done(put);
        act.onabort = () => fail(act.error ?? new Error('not kept'));
      }),
  };
}

const PREFIX = 'marinecalc.kept.';

/** @returns {Depot | undefined} */
function local() {
  try {
    localStorage.setItem(`${PREFIX}try`, '');
    localStorage.removeItem(`${PREFIX}try`);
  } catch {
    return undefined;
  }
  /** @param {string} key */
  const read = (key) => {
    const text = localStorage.getItem(key);
    try {
      return text === null ? undefined : JSON.parse(text);
    } catch {
      return { id: key.slice(PREFIX.length), damaged: text };
    }
  };
  return {
    lasting: true,
    all: async () => Object.keys(localStorage).filter((k) => k.startsWith(PREFIX)).map(read),
    update: async (id, change) => {
      const put = change(read(PREFIX + id));
      if (put === undefined) localStorage.removeItem(PREFIX + id);
      else localStorage.setItem(PREFIX + id, JSON.stringify(put));
      return put;
    },
  };
}

/** @returns {Depot} */
function nowhere() {
  return { lasting: false, all: async () => [], update: () => Promise.reject(new Error('this browser keeps nothing')) };
}
