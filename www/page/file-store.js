/**
 * The file store: files that notebooks refer to, kept by the SHA-256 of their bytes in a database of their own. A notebook
 * works without them, since it holds what was read out of them as numbers.
 */
import { say } from './words.js';

const NAME = 'slope-of-light files';
export const STORE = 'files';

/** @import { Layout } from './worker-types.js' */

/**
 * A file; of a trace, the layout and the level by which it was measured. `at`: when it was brought in last, ms.
 * @typedef {{blob: Blob, name: string, layout?: Layout | undefined, level?: number | null, at?: number}} KeptFile
 */

/** Files that the browser gives no place for: they last as long as the page. @type {Map<string, KeptFile>} */
const here = new Map();

/** @type {Promise<IDBDatabase | undefined> | undefined} */
let opened;

/** @returns {Promise<IDBDatabase | undefined>} nothing where the browser gives none */
export function database() {
  opened ??= new Promise((resolve) => {
    try {
      const request = indexedDB.open(NAME, 1);
      request.onupgradeneeded = () => request.result.createObjectStore(STORE);
      request.onerror = () => resolve(undefined);
      request.onsuccess = () => {
        const { result } = request;
        result.onversionchange = () => result.close();
        resolve(result);
      };
    } catch {
      resolve(undefined);
    }
  });
  return opened;
}

/**
 * Writes to the store; ends when that is on the disk.
 * @param {IDBDatabase} found
 * @param {(store: IDBObjectStore) => void} work
 * @returns {Promise<void>}
 */
function write(found, work) {
  return new Promise((resolve, reject) => {
    const transaction = found.transaction(STORE, 'readwrite', { durability: 'strict' });
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error(say('saving-no-answer')));
    work(transaction.objectStore(STORE));
  });
}

/**
 * Keeps a file; ends when it is safely stored. The same bytes are kept once.
 * @param {string} sha256
 * @param {KeptFile} file
 * @returns {Promise<boolean>} whether it will outlive the page
 */
export async function keepFile(sha256, file) {
  const found = await database();
  if (!found) {
    here.set(sha256, file);
    return false;
  }
  const kept = { ...file, at: Date.now() };
  try {
    await write(found, (store) => store.put(kept, sha256));
  } catch {
    // WebKit stores no Blob in a private window.
    const blob = await file.blob.arrayBuffer();
    await write(found, (store) => store.put({ ...kept, blob }, sha256));
  }
  return true;
}

/** Removes all of them; ends when they are gone. */
export async function removeFiles() {
  here.clear();
  const found = await database();
  if (found) await write(found, (store) => store.clear());
}

/**
 * @param {string} sha256
 * @returns {Promise<KeptFile | undefined>} nothing where it is not kept here
 */
export async function keptFile(sha256) {
  const found = await database();
  if (!found) return here.get(sha256);
  return new Promise((resolve) => {
    const request = found.transaction(STORE).objectStore(STORE).get(sha256);
    request.onerror = () => resolve(undefined);
    request.onsuccess = () => resolve(asKept(request.result));
  });
}

/**
 * A file as it was kept, though its bytes alone may be stored.
 * @param {KeptFile | (Omit<KeptFile, 'blob'> & {blob: ArrayBuffer}) | undefined} stored
 * @returns {KeptFile | undefined}
 */
function asKept(stored) {
  if (!stored) return undefined;
  const { blob } = stored;
  return { ...stored, blob: blob instanceof ArrayBuffer ? new Blob([blob]) : blob };
}
