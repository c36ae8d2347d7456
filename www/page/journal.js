/**
 * The durable journal: every entry of every notebook's log, in IndexedDB, under [notebook, entry number].
 * Local storage loses its last seconds when a browser is killed; a completed IndexedDB transaction stays.
 */

const NAME = 'slope-of-light';
const VERSION = 1;
export const STORE = 'journal';
/** Marks the key of entries that did not follow on from what was stored. */
const ASIDE = ' set aside ';

/** @typedef {{number: number, text: string}} Entry number from 0 */

export class Journal {
  /**
   * @returns {Promise<Journal | undefined>} nothing where the browser gives no database
   */
  static async open() {
    try {
      const request = indexedDB.open(NAME, VERSION);
      request.onupgradeneeded = () => request.result.createObjectStore(STORE);
      return new Journal(await outcome(request));
    } catch {
      return undefined;
    }
  }

  /** @param {IDBDatabase} database */
  constructor(database) {
    this.database = database;
    // A later version of the page in another tab may need to change the database.
    database.onversionchange = () => database.close();
  }

  /**
   * Adds entries behind those that are there; ends when they are safely stored. An entry that is there already
   * is never overwritten: the whole call then fails.
   * @param {string} notebook
   * @param {number} from number of the first
   * @param {string[]} entries
   */
  append(notebook, from, entries) {
    return this.write((store) => entries.forEach((text, place) => store.add(text, [notebook, from + place])));
  }

  /**
   * The entries of a notebook from a number on, in order.
   * @param {string} notebook
   * @param {number} from
   * @returns {Promise<Entry[]>}
   */
  async read(notebook, from) {
    const store = this.database.transaction(STORE).objectStore(STORE);
    const range = IDBKeyRange.bound([notebook, from], [notebook, Infinity]);
    const [keys, texts] = await Promise.all([outcome(store.getAllKeys(range)), outcome(store.getAll(range))]);
    return keys.map((key, place) => ({ number: /** @type {[string, number]} */ (key)[1], text: texts[place] }));
  }

  /**
   * Drops the entries of a notebook below a number.
   * @param {string} notebook
   * @param {number} below
   */
  drop(notebook, below = Infinity) {
    return this.write((store) => store.delete(IDBKeyRange.bound([notebook, 0], [notebook, below], false, true)));
  }

  /**
   * Moves entries out of the way without losing them.
   * @param {string} notebook
   * @param {Entry[]} entries
   */
  setAside(notebook, entries) {
    const place = `${notebook}${ASIDE}${new Date().toISOString()}`;
    return this.write((store) => {
      for (const { number, text } of entries) {
        store.put(text, [place, number]);
        store.delete([notebook, number]);
      }
    });
  }

  /**
   * The notebooks of which the journal holds entries.
   * @returns {Promise<string[]>}
   */
  notebooks() {
    const request = this.database.transaction(STORE).objectStore(STORE).openKeyCursor();
    /** @type {string[]} */
    const names = [];
    return new Promise((resolve, reject) => {
      request.onerror = () => reject(request.error);
      request.onsuccess = () => {
        const cursor = request.result;
        if (!cursor) {
          resolve(names.filter((name) => !name.includes(ASIDE)));
          return;
        }
        const [name] = /** @type {[string, number]} */ (cursor.key);
        names.push(name);
        // An array stands behind every number, so this leads to the next notebook.
        cursor.continue([name, []]);
      };
    });
  }

  /**
   * @param {(store: IDBObjectStore) => void} work
   * @returns {Promise<void>}
   */
  write(work) {
    return new Promise((resolve, reject) => {
      const transaction = this.database.transaction(STORE, 'readwrite', { durability: 'strict' });
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error('the browser broke off'));
      work(transaction.objectStore(STORE));
    });
  }
}

/**
 * @template T
 * @param {IDBRequest<T>} request
 * @returns {Promise<T>}
 */
function outcome(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
