/**
 * Opens what a teacher says of a notebook: finds the notebook by the digest of what was handed in, and keeps the file beside
 * it, with those of other teachers. Neither its log nor anything that is computed of it changes.
 */
import { keepFeedback } from './feedback-kept.js';
import { say } from './words.js';
import { reader } from './worker-slot.js';

/** @import { Book } from './book.js' */
/** @import { Keeper } from './keeper.js' */
/** @import { Shelf } from './shelf.js' */
/** @import { Feedback, HandedNotebook } from './worker-types.js' */
/** @import { KeptComments } from './feedback-kept.js' */
/** @typedef {{shelf: Shelf, book: Book, keeper: Keeper, open: (id: string) => Promise<boolean>}} PageAccess what is asked of the page */

/** The word by which such a file is known; what it is else, the worker says. */
const KIND = 'slope-of-light feedback';

/**
 * Takes a file in, if it is one.
 * @param {PageAccess} page
 * @param {File} file
 * @returns {Promise<boolean>} whether it was
 */
export async function takeFeedback(page, file) {
  // A bundle's letters need not be looked through.
  if (await file.slice(0, 2).text() === 'PK') return false;
  const text = await file.text();
  if (!text.includes(KIND)) return false;
  const feedback = await reader.ask('read_feedback', file.name, text);
  if (!feedback) return false;
  const id = await notebookOf(page, feedback.of);
  if (id === undefined) {
    const { title, people, student_number, group, date, entries } = feedback.of;
    const who = [people, student_number, group, date].filter((part) => part.trim() !== '');
    throw new Error(say('feedback-nowhere', { title: title || say('untitled'), who: who.join(', ') || '–', n: entries }));
  }
  if (id !== page.keeper.id && !await page.open(id)) return true;
  await keepFeedback(id, async (kept) => [{ name: file.name, text }, ...await saidByOthers(kept, feedback, text)]);
  return true;
}

/**
 * What stays beside something that is said now: all but what the same person said. Who gives no name may be anybody.
 * @param {KeptComments[]} kept
 * @param {Feedback} said
 * @param {string} text of its file
 */
async function saidByOthers(kept, { from }, text) {
  /** @type {KeptComments[]} */
  const others = [];
  for (const one of kept) {
    const before = await reader.ask('read_feedback', one.name, one.text);
    const isSame = one.text === text || (from.trim() !== '' && before?.from.trim() === from.trim());
    if (!isSame) others.push(one);
  }
  return others;
}

/**
 * The notebook whose log begins with what was handed in: the open one, or else the one that went on least since.
 * @param {PageAccess} page
 * @param {HandedNotebook} of
 */
async function notebookOf({ shelf, book, keeper }, of) {
  if (await beginsWith(book.desk.entries(0), of)) return keeper.id;
  /** @type {{id: string, length: number} | undefined} */
  let least;
  for (const { id } of shelf.list(false)) {
    const entries = id === keeper.id ? [] : await entriesOf(shelf, id);
    if (entries.length < (least?.length ?? Infinity) && await beginsWith(entries, of)) least = { id, length: entries.length };
  }
  return least?.id;
}

/** What the log of a notebook holds; nothing where it can't be opened. @param {Shelf} shelf @param {string} id */
async function entriesOf(shelf, id) {
  try {
    const { desk } = await shelf.loadLog(id, false);
    const entries = desk.entries(0);
    desk.free();
    return entries;
  } catch {
    return [];
  }
}

/** @param {string[]} log @param {HandedNotebook} of */
async function beginsWith(log, { entries, digest }) {
  return log.length >= entries && (await reader.ask('chain', log.slice(0, entries))).at(-1) === digest;
}
