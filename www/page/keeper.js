/**
 * Saving as one goes: every edit's log entries go to the journal at once, the snapshot follows when the hands
 * rest. "Saved" is said only when the journal has it.
 */
import { isKind, messageOf } from './core.js';
import { flushAll } from './typing.js';

/** @import { Book } from './book.js' */
/** @import { Journal } from './journal.js' */
/** @import { Shelf } from './shelf.js' */

/** How long after the last change the snapshot is written, in ms. */
const REST = 2_000;

/** @typedef {'saved' | 'saving' | 'reading' | 'noJournal' | 'full' | 'shelfFull' | 'failed' | 'conflict'} Saved */

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
    /** How many entries are stored. */
    this.stored = 0;
    /** Whether the snapshot is behind. */
    this.behind = false;
    this.timer = 0;
    /** @type {Promise<void> | undefined} */
    this.running = undefined;
    /** Told what became of the saving. @type {(saved: Saved, why?: string) => void} */
    this.onSaved = () => {};
    /** Told what was stored. @type {(from: number, entries: string[]) => void} */
    this.onStored = () => {};
    addEventListener('pagehide', () => this.leave());
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
    this.id = id;
    this.stored = stored;
    this.behind = false;
    this.say(this.journal ? 'saved' : 'noJournal');
  }

  /** Called after each change of the open notebook. */
  note() {
    this.behind = true;
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.snapshot(), REST);
    if (!this.journal) return;
    this.say('saving');
    this.running ??= this.run(this.journal);
  }

  /** @param {Journal} journal */
  async run(journal) {
    try {
      for (;;) {
        const from = this.stored;
        const entries = this.book.desk.entries(from);
        if (entries.length === 0) break;
        await journal.append(this.id, from, entries);
        this.stored = from + entries.length;
        this.onStored(from, entries);
      }
      this.say('saved');
    } catch (error) {
      this.say(reason(error), messageOf(error));
    } finally {
      this.running = undefined;
    }
  }

  /** Everything typed is sent and stored, as far as it can be. */
  async settle() {
    flushAll();
    await this.running;
    this.snapshot();
  }

  leave() {
    flushAll();
    this.snapshot();
  }

  /** Writes the snapshot, if it is behind. */
  snapshot() {
    clearTimeout(this.timer);
    if (!this.behind || this.book.readOnly || this.id === '') return;
    try {
      this.shelf.write(this.id, this.book.desk);
      this.behind = false;
    } catch (error) {
      if (this.journal) this.say(isKind(error, 'quota') ? 'shelfFull' : 'failed', messageOf(error));
    }
  }

  /** @param {Saved} saved @param {string} [why] */
  say(saved, why) {
    this.onSaved(this.book.readOnly ? 'reading' : saved, why);
  }
}

/** @param {unknown} error @returns {Saved} */
function reason(error) {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') return 'full';
  if (name === 'ConstraintError') return 'conflict';
  return 'failed';
}
