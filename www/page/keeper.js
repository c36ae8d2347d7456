/**
 * Saving as one goes: every edit's log entries go to the journal at once, the snapshot follows when the hands rest.
 * "Saved" is said only when the journal has everything typed. What could not be stored is tried again by itself.
 */
import { isKind, messageOf } from './core.js';
import { Behind, Superseded, newId } from './journal.js';
import { leave } from './left-over.js';
import { flushAll, isWaiting, watchWaiting } from './typing.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Journal } from './journal.js' */
/** @import { Shelf } from './shelf.js' */

/** How long after the last change the snapshot is written, in ms. */
const REST = 2_000;
/** How long after a failure storing is tried again, in ms: at first, and at most after several. */
const FIRST_WAIT = 1_000;
const LONGEST_WAIT = 30_000;
/** How long the journal may take before it is said that it does not answer, in ms. */
const PATIENCE = 5_000;

let isAsked = false;

/** Asks the browser, once a visit, not to remove what is stored when it needs room (Storage Standard, 4). */
function askToLast() {
  if (isAsked) return;
  isAsked = true;
  navigator.storage?.persist?.().catch(() => {});
}

/** @typedef {'saved' | 'saving' | 'reading' | 'noJournal' | 'full' | 'shelfFull' | 'failed'} Saved */
/** @typedef {{saved: Saved, why: string}} State */

export class Keeper {
  /**
   * @param {Book} book
   * @param {Shelf} shelf
   * @param {Journal | undefined} journal
   */
  constructor(book, shelf, journal) {
    this.book = book;
    this.shelf = shelf;
    this.journal = journal;
    this.id = '';
    /** As what is kept apart what could not be stored before another window came to write: once, whoever does it. */
    this.apart = newId();
    /** How many entries are stored. */
    this.stored = 0;
    /** Whether the snapshot is behind. */
    this.behind = false;
    this.timer = 0;
    /** What keeps entries from being stored. @type {State | undefined} */
    this.trouble = undefined;
    /** What keeps the snapshot from being written. @type {State | undefined} */
    this.shelfTrouble = undefined;
    this.retry = 0;
    this.wait = FIRST_WAIT;
    /** @type {Promise<void> | undefined} */
    this.running = undefined;
    /** Told what became of the saving. @type {(saved: Saved, why: string) => void} */
    this.onSaved = () => {};
    /** Told what was stored. @type {(from: number, entries: string[]) => void} */
    this.onStored = () => {};
    /** Told that another window writes in the notebook. @type {() => void} */
    this.onSuperseded = () => {};
    watchWaiting(() => this.tell());
    addEventListener('pagehide', () => this.close());
    document.addEventListener('visibilitychange', () => {
      if (document.hidden) this.leave();
    });
  }

  /**
   * Takes care of a notebook from now on.
   * @param {string} id
   * @param {number} stored how many of its entries are stored
   */
  watch(id, stored) {
    clearTimeout(this.timer);
    clearTimeout(this.retry);
    this.id = id;
    this.apart = newId();
    this.stored = stored;
    this.behind = false;
    this.running = undefined;
    this.trouble = this.journal ? undefined : { saved: 'noJournal', why: '' };
    this.shelfTrouble = undefined;
    this.wait = FIRST_WAIT;
    if (this.lacking() > 0) this.note();
    this.tell();
  }

  /** How many entries are not stored yet. */
  lacking() {
    return this.id === '' ? 0 : this.book.desk.length() - this.stored;
  }

  /** Called after each change of the open notebook. */
  note() {
    // Not for a notebook that was only opened: some browsers ask the person.
    if (this.stored > 0) askToLast();
    this.behind = true;
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.snapshot(), REST);
    this.store();
  }

  /** Stores what is not stored yet. */
  store() {
    clearTimeout(this.retry);
    if (this.journal && this.lacking() > 0) this.running ??= this.run(this.journal);
    this.tell();
  }

  /** @param {Journal} journal */
  async run(journal) {
    const { id, book: { desk } } = this;
    const isOver = () => desk !== this.book.desk;
    const slow = setTimeout(() => {
      if (isOver()) return;
      this.trouble = { saved: 'failed', why: say('saving-no-answer') };
      this.tell();
    }, PATIENCE);
    try {
      while (!isOver() && this.lacking() > 0) {
        const from = this.stored;
        const entries = desk.entries(from);
        await journal.append(id, from, entries);
        if (isOver()) return;
        this.stored = from + entries.length;
        this.onStored(from, entries);
      }
      this.trouble = undefined;
      this.wait = FIRST_WAIT;
    } catch (error) {
      if (!isOver()) this.failed(error, journal);
    } finally {
      clearTimeout(slow);
      if (!isOver()) {
        this.running = undefined;
        this.tell();
      }
    }
  }

  /** @param {unknown} error @param {Journal} journal */
  failed(error, journal) {
    if (error instanceof Superseded) {
      this.onSuperseded();
      return;
    }
    if (error instanceof Behind) this.stored = error.length;
    else this.trouble = { saved: isQuota(error) ? 'full' : 'failed', why: messageOf(error) };
    this.retry = window.setTimeout(async () => {
      if (error instanceof DOMException && error.name === 'InvalidStateError') await journal.reopen().catch(() => {});
      this.store();
    }, error instanceof Behind ? 0 : this.wait);
    this.wait = Math.min(2 * this.wait, LONGEST_WAIT);
  }

  /**
   * Everything typed is sent and stored, as far as it can be.
   * @returns {Promise<boolean>} whether it is stored
   */
  async settle() {
    flushAll();
    this.store();
    await this.running;
    this.snapshot();
    return this.lacking() === 0 || !this.behind;
  }

  leave() {
    flushAll();
    this.snapshot();
  }

  /** The page is being closed, or another notebook comes, and nothing more is heard of what is stored, nor of whose turn it is. */
  close() {
    this.leave();
    if (this.journal && this.lacking() > 0) leave(this.id, this.apart, this.stored, this.book.desk.entries(this.stored));
  }

  /**
   * Stores nothing more, and drops all that the journal has of any notebook.
   * @throws {DOMException} all is as it was then
   */
  async abandon() {
    await this.running;
    clearTimeout(this.timer);
    clearTimeout(this.retry);
    const { id } = this;
    this.id = '';
    try {
      await this.journal?.empty();
    } catch (error) {
      this.id = id;
      throw error;
    }
  }

  /**
   * Another window writes now. What was not stored before it came is kept as a notebook of its own; that is tried until
   * it can be done, and the notebook stays in sight meanwhile.
   * @returns {Promise<{id: string, title: string} | undefined>} the notebook, if one was needed
   */
  async part() {
    await this.running;
    clearTimeout(this.timer);
    clearTimeout(this.retry);
    this.behind = false;
    const { id } = this;
    let as = this.apart;
    for (let wait = FIRST_WAIT; this.id === id && this.lacking() > 0; wait = Math.min(2 * wait, LONGEST_WAIT)) {
      try {
        const apart = await this.shelf.keepApart(this.book.desk, as);
        if (this.id === id) this.stored = this.book.desk.length();
        return apart;
      } catch (error) {
        // Under that name something else was kept since.
        if (error instanceof Superseded) as = newId();
        this.trouble = { saved: isQuota(error) ? 'full' : 'failed', why: messageOf(error) };
        this.tell();
      }
      await new Promise((resolve) => setTimeout(resolve, wait));
    }
    return undefined;
  }

  /**
   * Writes the snapshot, if it is behind. What is on its way to the journal may yet be refused there, and is waited for:
   * of two that tell different stories one would have to be kept apart. A notebook of which nothing is stored is no
   * other window's yet, and stands on the shelf at once.
   */
  snapshot() {
    clearTimeout(this.timer);
    if (!this.behind || this.book.readOnly || this.id === '') return;
    if (this.running && this.stored > 0) {
      void this.running.then(() => this.snapshot());
      return;
    }
    try {
      this.behind = !this.shelf.write(this.id, this.book.desk);
      this.shelfTrouble = undefined;
      if (!this.journal) this.stored = this.book.desk.length();
    } catch (error) {
      this.shelfTrouble = isKind(error, 'quota') ? { saved: 'shelfFull', why: '' } : { saved: 'failed', why: messageOf(error) };
    }
    this.tell();
  }

  /** Says how things stand. */
  tell() {
    const { saved, why } = this.state();
    this.onSaved(saved, why);
  }

  /** @returns {State} */
  state() {
    const reads = this.book.readOnly && this.lacking() === 0;
    if (reads) return { saved: 'reading', why: '' };
    if (this.trouble) return this.trouble;
    if (isWaiting() || this.lacking() > 0) return { saved: 'saving', why: '' };
    return this.shelfTrouble ?? { saved: 'saved', why: '' };
  }
}

/** @param {unknown} error */
function isQuota(error) {
  return error instanceof Error && error.name === 'QuotaExceededError';
}
