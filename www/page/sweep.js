/**
 * Sweeping the file store: files that no notebook refers to, and what was said of notebooks that are gone, are removed, a day
 * after they were brought in.
 *
 * A notebook refers to every file that its log names anywhere, so that an undo finds it again; one in the bin, or of which
 * the journal alone tells, counts like any other. Nothing is removed while another tab has a notebook open, which it may
 * not have been able to store, or where something can't be read.
 */
import { database, STORE } from './file-store.js';
import { core } from './core.js';
import { Journal, STORE as ENTRIES } from './journal.js';

/** @import { KeptFile } from './file-store.js' */
/** @import { Book } from './book.js' */

/** How long the page has been open before it sweeps, ms. */
const REST = 5000;
/** How long ago a file was brought in that is looked at, ms. */
const OLD = 24 * 60 * 60 * 1000;

/** Marks `swept` once it is over, for those who measure and test. @param {Book} book */
export function sweepSoon(book) {
  // What can't be swept today can be another day.
  setTimeout(() => sweep(book).catch(() => {}).finally(() => performance.mark('swept')), REST);
}

/** @param {Book} book */
async function sweep(book) {
  const files = await database();
  if (!files || !await isAlone()) return;
  const idle = await oldFiles(files);
  if (idle.size === 0) return;
  const spare = (/** @type {string} */ text) => core.hashes_in(text).forEach((sha256) => idle.delete(sha256));
  for (const { id } of core.shelf_list()) {
    const text = core.shelf_read(id);
    if (text === undefined) return;
    spare(text);
    idle.delete(`feedback/${id}`);
  }
  const journal = await Journal.open();
  if (!journal) return;
  await each(journal.database.transaction(ENTRIES), ENTRIES, ({ value }) => spare(value));
  for (const id of await journal.notebooks()) idle.delete(`feedback/${id}`);
  journal.database.close();
  if (!await isAlone()) return;
  spare(book.desk.text());
  await each(files.transaction(STORE, 'readwrite'), STORE, (cursor) => {
    if (!idle.has(String(cursor.key)) || !isOld(cursor.value)) return;
    if (cursor.value.at === undefined) cursor.update({ ...cursor.value, at: Date.now() });
    else cursor.delete();
  });
}

/** Whether no other tab has a notebook open: each writes in one, or waits to. */
export async function isAlone() {
  // Browsers have no locks over plain HTTP; nothing tells then.
  if (!navigator.locks) return false;
  const { held = [], pending = [] } = await navigator.locks.query();
  return held.length + pending.length <= 1;
}

/** The hashes of files that were brought in long ago, or nobody knows when. @param {IDBDatabase} files */
async function oldFiles(files) {
  /** @type {Set<string>} */
  const old = new Set();
  await each(files.transaction(STORE), STORE, ({ key, value }) => { if (isOld(value)) old.add(String(key)); });
  return old;
}

/** @param {KeptFile} file */
function isOld({ at = 0 }) {
  return Date.now() - at > OLD;
}

/**
 * Goes through a store; ends when the transaction has.
 * @param {IDBTransaction} transaction
 * @param {string} store
 * @param {(cursor: IDBCursorWithValue) => void} look
 * @returns {Promise<void>}
 */
function each(transaction, store, look) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
    const request = transaction.objectStore(store).openCursor();
    request.onsuccess = () => {
      const cursor = request.result;
      if (!cursor) return;
      look(cursor);
      cursor.continue();
    };
  });
}
