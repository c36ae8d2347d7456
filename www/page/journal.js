/**
 * The durable journal: every entry of every notebook's log, in IndexedDB, under [notebook, entry number]; and beside it,
 * for each notebook, which window writes in it. Local storage loses its last seconds when a browser is killed; a
 * completed IndexedDB transaction stays. Transactions of all windows come one after the other, so what one of them
 * checks holds until it has written: a window that lost its turn can't write behind another's back.
 */
import { randomDigits } from './chance.js';
import { say } from './words.js';

const NAME = 'slope-of-light';
const VERSION = 2;
export const STORE = 'journal';
const WRITERS = 'writers';
/** Marks the key of entries that did not follow on from what was stored. */
const ASIDE = ' set aside ';
/** How long a database may take to open, in ms; browsers have had faults by which one never does. */
const PATIENCE = 5_000;

/** @typedef {{number: number, text: string}} Entry number from 0 */

/** Another window writes in the notebook, or has written in it. */
export class Superseded extends Error {}

/** The journal holds fewer entries than it was thought to, as when its user had the browser empty it. */
export class Behind extends Error {
  /** @param {number} length how many it holds */
  constructor(length) {
    super();
    this.length = length;
  }
}

export class Journal {
  /**
   * @returns {Promise<Journal | undefined>} nothing where the browser gives no database
   */
  static async open() {
    try {
      return new Journal(await database());
    } catch {
      return undefined;
    }
  }

  /** @param {IDBDatabase} opened */
  constructor(opened) {
    /** By what this window is known among those that write. */
    this.window = newId();
    this.database = opened;
    // A later version of the page in another tab may need to change the database.
    opened.onversionchange = () => opened.close();
  }

  /** Opens the database anew where the browser closed it. */
  async reopen() {
    this.database.close();
    this.database = await database();
    this.database.onversionchange = () => this.database.close();
  }

  /**
   * The window that writes in a notebook, or did when it was last seen; empty when none does.
   * @param {string} notebook
   */
  async writer(notebook) {
    const store = this.database.transaction(WRITERS).objectStore(WRITERS);
    return String(await outcome(store.get(notebook)) ?? '');
  }

  /**
   * Makes this window the one that writes in a notebook. What another one has not written by now, it can't write any
   * more.
   * @param {string} notebook
   * @param {string} [before] only if it is still this window that writes
   * @param {string} [window] another one to write from now on; none if empty
   * @returns {Promise<boolean>} whether it was done
   */
  async claim(notebook, before, window = this.window) {
    let done = false;
    await this.write((_, writers) => {
      writers.get(notebook).onsuccess = ({ target }) => {
        done = before === undefined || (resultOf(target) ?? '') === before;
        if (done) writers.put(window, notebook);
      };
    }, 'relaxed');
    return done;
  }

  /**
   * Says that this window writes no more in a notebook.
   * @param {string} notebook
   */
  release(notebook) {
    return this.claim(notebook, this.window, '');
  }

  /**
   * Adds entries behind those that are there, if this window is the one that writes; ends when they are safely stored.
   * An entry that is there already is never overwritten.
   * @param {string} notebook
   * @param {number} from number of the first
   * @param {string[]} entries
   * @throws {Superseded | Behind | DOMException} nothing is written then
   */
  async append(notebook, from, entries) {
    /** @type {Error | undefined} */
    let refused;
    const work = this.write((store, writers, transaction) => {
      const refuse = (/** @type {Error} */ error) => {
        refused ??= error;
        transaction.abort();
      };
      writers.get(notebook).onsuccess = ({ target }) => {
        const window = resultOf(target);
        if (window === undefined && from > 0) refuse(new Behind(0));
        else if (window && window !== this.window) refuse(new Superseded());
        else if (window !== this.window) writers.put(this.window, notebook);
      };
      store.openKeyCursor(allOf(notebook), 'prev').onsuccess = ({ target }) => {
        const [, last = from - 1] = /** @type {[string, number] | undefined} */ (resultOf(target)?.key) ?? [];
        if (last !== from - 1 && !refused) refuse(last < from - 1 ? new Behind(last + 1) : new Superseded());
      };
      // Asked for at once, to be undone by a refusal: so nobody waits for the answers.
      entries.forEach((text, place) => store.add(text, [notebook, from + place]));
    });
    await work.catch((error) => {
      if (refused) throw refused;
      throw error.name === 'ConstraintError' ? new Superseded() : error;
    });
  }

  /**
   * How many entries of a notebook there are and were; nothing where it holds none, or holds none any more.
   * @param {string} notebook
   * @returns {Promise<number | undefined>}
   */
  async length(notebook) {
    const store = this.database.transaction(STORE).objectStore(STORE);
    const cursor = await outcome(store.openKeyCursor(allOf(notebook), 'prev'));
    return cursor ? /** @type {[string, number]} */ (cursor.key)[1] + 1 : undefined;
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
   * Drops all of a notebook.
   * @param {string} notebook
   */
  forget(notebook) {
    return this.write((store, writers) => {
      store.delete(allOf(notebook));
      writers.delete(notebook);
    });
  }

  /** Drops all of every notebook. */
  empty() {
    return this.write((store, writers) => {
      store.clear();
      writers.clear();
    });
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
   * @param {(store: IDBObjectStore, writers: IDBObjectStore, transaction: IDBTransaction) => void} work
   * @param {'strict' | 'relaxed'} durability
   * @returns {Promise<void>}
   */
  write(work, durability = 'strict') {
    return new Promise((resolve, reject) => {
      const transaction = this.database.transaction([STORE, WRITERS], 'readwrite', { durability });
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error(say('saving-no-answer')));
      work(transaction.objectStore(STORE), transaction.objectStore(WRITERS), transaction);
    });
  }
}

/** An identifier that nothing else has. */
export function newId() {
  return randomDigits(12);
}

/** @returns {Promise<IDBDatabase>} */
function database() {
  const request = indexedDB.open(NAME, VERSION);
  request.onupgradeneeded = ({ oldVersion }) => {
    if (oldVersion < 1) request.result.createObjectStore(STORE);
    request.result.createObjectStore(WRITERS);
  };
  let isLate = false;
  /** @type {Promise<never>} */
  const late = new Promise((_, reject) => {
    setTimeout(() => {
      isLate = true;
      // Words may not have come yet: it is put into them where it is told.
      reject({ message: { id: 'saving-no-answer', values: {} } });
    }, PATIENCE);
  });
  const opened = outcome(request);
  // One that comes too late stands in no other window's way.
  opened.then((database) => { if (isLate) database.close(); }, () => {});
  return Promise.race([opened, late]);
}

/** The keys of all entries of a notebook. @param {string} notebook */
function allOf(notebook) {
  return IDBKeyRange.bound([notebook, 0], [notebook, Infinity]);
}

/** @param {EventTarget | null} target of a request's event */
function resultOf(target) {
  return /** @type {IDBRequest} */ (target).result;
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
