/**
 * The page grows once it is open: it changes to the whole core and adds the sections that need it, so that what is
 * needed first is there first.
 */
import { changeTo, core } from './core.js';
import { el } from './dom.js';

/** @import { Book } from './book.js' */
/** @import { Desk } from './types.js' */

const SCRIPT = 'later-begin.js';
/** How long to wait for trials to end, ms. */
const PATIENCE = 500;

/**
 * @param {Book} book
 * @param {(desk: Desk) => Promise<void>} keep keeps a notebook as a new one and opens it
 */
export async function grow(book, keep) {
  const { sections, whole } = await brought();
  if (whole) {
    await changeTo(whole);
    // Trials that run belong to the desk that they were begun on.
    while (book.held) await new Promise((resolve) => setTimeout(resolve, PATIENCE));
    const old = book.desk;
    book.put(core.Desk.open(old.text()));
    book.draw();
    old.free();
  }
  for (const part of sections(book, keep)) {
    book.add(part);
    part.show(book.current());
  }
}

/** What the later script brings. */
async function brought() {
  if (!globalThis.SLOPE_LATER) {
    await new Promise((resolve, reject) => {
      document.head.append(el('script', { type: 'module', src: SCRIPT, load: resolve, error: () => reject(new Error(SCRIPT)) }));
    });
  }
  return /** @type {NonNullable<typeof globalThis.SLOPE_LATER>} */ (globalThis.SLOPE_LATER);
}
