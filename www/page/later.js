/**
 * What is not in sight when the page opens: the plan, delays from pictures and traces, how a row was worked out.
 */
import { Delays } from './delays.js';
import { byId } from './dom.js';
import { Plan } from './plan.js';
import { RowWork } from './row-work.js';
import { later } from './strings-later.js';
import { putWords } from './strings.js';
import { sweepSoon } from './sweep.js';

/** @import { Book } from './book.js' */
/** @import { Desk, Part } from './types.js' */

/**
 * @param {Book} book
 * @param {(desk: Desk) => Promise<void>} keep keeps a notebook as a new one and opens it
 * @returns {Part[]}
 */
export function sections(book, keep) {
  putWords(later);
  document.addEventListener('pasted', (event) => tellPasted(/** @type {CustomEvent} */ (event).detail));
  const parts = [new Plan(book, keep), new Delays(book), new RowWork(book)];
  for (const id of ['plan', 'delays']) byId(id).hidden = false;
  sweepSoon(book);
  return parts;
}

/** Tells what was made of a block that was pasted, where it is not just what stood there. @param {[boolean, string]} pasted */
function tellPasted([turned, headings]) {
  const t = later.pasted;
  const told = [turned ? t.turned : '', headings ? t.headed(headings) : ''].filter(Boolean).join(' ');
  if (told) document.dispatchEvent(new CustomEvent('undoable', { detail: told }));
}
