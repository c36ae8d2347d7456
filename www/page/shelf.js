/**
 * The notebooks that this browser keeps. Each one is its journal, all of it, and for a quick start its snapshot in local
 * storage, which a browser writes to disk when it likes; either may be ahead of the other, and opening takes the longer.
 */
import { now } from './book.js';
import { core, isKind } from './core.js';
import { Superseded, newId } from './journal.js';
import { dropLeftOversOf, leftOversOf, removeLeftOver } from './left-over.js';
import { say } from './words.js';

/** @import { Apart } from './banner.js' */
/** @import { Journal } from './journal.js' */
/** @import { LeftOver } from './left-over.js' */
/** @import { Desk } from './slope_of_light.js' */
/** @import { StoredNotebook } from './types.js' */

/**
 * @typedef {object} Loaded
 * @property {Desk} desk
 * @property {number} stored how many of its entries the journal holds
 * @property {number} aside how many journal entries were set aside
 * @property {Apart | undefined} apart a notebook that holds what a snapshot had and the journal has not
 */

/** Where a window remembers which notebook is open in it, for when it is loaded anew. */
const OPEN_HERE = 'slope-of-light/open';

/** Remembers which notebook is open, here and for the next visit. @param {string} id */
export function rememberOpen(id) {
  core.setting_write('open', id);
  try {
    sessionStorage.setItem(OPEN_HERE, id);
  } catch {
    // Site data is off, which the banner says.
  }
}

/** The notebook that was open in this window; nothing in a new one. */
export function openHere() {
  try {
    return sessionStorage.getItem(OPEN_HERE);
  } catch {
    return null;
  }
}

export class Shelf {
  /** @param {Journal | undefined} journal */
  constructor(journal) {
    this.journal = journal;
    /** When the snapshots that this window wrote or read were written, by notebook. @type {Map<string, string>} */
    this.known = new Map();
  }

  /**
   * The notebooks, the last changed first.
   * @param {boolean} binned
   */
  list(binned) {
    return core.shelf_list().filter((item) => item.binned === binned)
      .sort((a, b) => (a.changed < b.changed ? 1 : -1));
  }

  /** @param {string} id @returns {StoredNotebook | undefined} */
  item(id) {
    return core.shelf_list().find((item) => item.id === id);
  }

  /** Whether nothing was written in a notebook yet. @param {string} id */
  isBlank(id) {
    return core.shelf_read(id)?.includes('"edit"') === false;
  }

  /** Whether anything outlives the visit. */
  outlivesVisit() {
    return this.journal !== undefined || core.shelf_outlives_visit();
  }

  /**
   * Opens a notebook with all that is stored of it.
   * @param {string} id
   * @param {boolean} writes whether this window may put right what does not go together
   * @returns {Promise<Loaded>}
   */
  async load(id, writes) {
    const loaded = await this.loadLog(id, writes);
    if (this.journal) for (const leftOver of leftOversOf(id)) await this.takeUp(leftOver, loaded, writes);
    return loaded;
  }

  /**
   * Takes up what a closed window left. The notebook goes on with it where it follows on; where another window went on
   * otherwise, or writes, it is kept apart.
   * @param {LeftOver} leftOver
   * @param {Loaded} loaded
   * @param {boolean} writes
   */
  async takeUp(leftOver, loaded, writes) {
    const { desk } = loaded;
    const { from, entries } = leftOver;
    const there = desk.entries(from);
    const fork = entries.findIndex((text, place) => core.entry_now(text) !== there[place]);
    // It lies there until the journal has it.
    if (fork === -1) return loaded.stored < from + entries.length ? undefined : removeLeftOver(leftOver);
    if (writes && from + fork === desk.length()) return replay(desk, entries.slice(fork));
    const other = core.Desk.blank();
    try {
      other.replay([...desk.entries(0).slice(0, from), ...entries]);
      loaded.apart = await this.keepApart(other, leftOver.apart);
      removeLeftOver(leftOver);
    } catch (error) {
      // Another window was quicker. Or there is no room for it, and it lies there until there is.
      if (error instanceof Superseded) removeLeftOver(leftOver);
    } finally {
      other.free();
    }
  }

  /**
   * Opens the snapshot of a notebook, and every journal entry after it. The journal has what was shown as saved. Where
   * the snapshot of a window that was closed does not go with it, that one is kept apart.
   * @param {string} id
   * @param {boolean} writes
   * @returns {Promise<Loaded>}
   */
  async loadLog(id, writes) {
    const written = this.item(id)?.changed ?? '';
    const text = core.shelf_read(id);
    let desk = text === undefined ? core.Desk.blank() : core.Desk.open(text);
    const covered = desk.length();
    const length = await this.journal?.length(id);
    // The last entry that both have: where it is the same, so are all before it.
    const shared = Math.min(covered, length ?? 0);
    const journal = await this.journal?.read(id, Math.max(0, shared - 1)) ?? [];
    const last = journal[0]?.number === shared - 1 ? journal.shift() : undefined;
    if (last && core.entry_now(last.text) !== desk.entries(shared - 1)[0]) return this.loadForked(id, desk, written, writes);
    const gap = journal.findIndex((entry, place) => entry.number !== covered + place);
    const following = gap === -1 ? journal : journal.slice(0, gap);
    if (following.length > 0) replay(desk, following.map(({ text }) => text));
    const entries = desk.length();
    const rest = journal.slice(entries - covered);
    if (writes && rest.length > 0) await this.journal?.setAside(id, rest);
    this.known.set(id, written);
    const aside = writes ? rest.length : 0;
    // A journal that has lost all of it gets it anew, of the window that writes.
    const held = length ?? (writes && this.journal ? 0 : entries);
    return { desk, stored: Math.min(held, entries), aside, apart: undefined };
  }

  /**
   * Opens a notebook whose snapshot went on otherwise than the journal did: what they share, and the journal's entries. Where there
   * is no room to keep the snapshot apart, it is left as it is.
   * @param {string} id
   * @param {Desk} snapshot
   * @param {string} written
   * @param {boolean} writes
   * @returns {Promise<Loaded>}
   */
  async loadForked(id, snapshot, written, writes) {
    const journal = await this.journal?.read(id, 0) ?? [];
    const entries = snapshot.entries(0);
    const fork = journal.find(({ number, text }) => core.entry_now(text) !== entries[number])?.number ?? entries.length;
    const desk = core.Desk.blank();
    desk.replay([...entries.slice(0, fork), ...journal.filter(({ number }) => number >= fork).map(({ text }) => text)]);
    const apart = writes ? await this.keepApart(snapshot).catch(() => undefined) : undefined;
    snapshot.free();
    if (apart) {
      this.known.set(id, written);
      this.replaceSnapshot(id, desk);
    }
    return { desk, stored: desk.length(), aside: 0, apart };
  }

  /**
   * Takes the place of a snapshot that was kept apart: it would be kept once more by the next opening. The journal has what is on
   * the desk.
   * @param {string} id
   * @param {Desk} desk
   */
  replaceSnapshot(id, desk) {
    try {
      this.write(id, desk);
    } catch {
      try {
        core.shelf_forget(id);
        this.write(id, desk);
      } catch {
        // A shelf that is full gets it another day.
      }
    }
  }

  /**
   * Keeps a notebook as a new one.
   * @param {Desk} desk
   * @param {string} [id] as what
   * @returns {Promise<string>} its id
   */
  async create(desk, id = newId()) {
    const entries = desk.entries(0);
    if (entries.length > 0) await this.journal?.append(id, 0, entries);
    this.write(id, desk);
    return id;
  }

  /**
   * Keeps what was typed here while another window came to write, as a notebook of its own.
   * @param {Desk} desk
   * @param {string} [id] as what
   */
  async keepApart(desk, id = newId()) {
    const copy = core.Desk.open(desk.text());
    try {
      const title = say('saving-apart-title', { title: copy.title() || say('untitled') });
      copy.apply({ set_title: title }, now());
      await this.create(copy, id).catch(async (error) => {
        // A shelf that is full gets it another day, where the journal has it.
        if (await this.journal?.length(id) !== copy.length()) throw error;
      });
      return { id, title };
    } finally {
      copy.free();
    }
  }

  /**
   * Writes the snapshot of a notebook. One that another window wrote meanwhile is not written over if it holds more.
   * @param {string} id
   * @param {Desk} desk
   * @returns {boolean} whether it was written
   */
  write(id, desk) {
    const there = this.item(id)?.changed;
    const isForeign = there !== undefined && there !== this.known.get(id);
    // The journal has this one's entries, and the next opening looks at both.
    if (this.journal && isForeign && holdsMore(core.shelf_read(id), desk)) return false;
    const at = now();
    core.shelf_write(id, desk.title(), at, desk.text());
    this.known.set(id, at);
    return true;
  }

  /**
   * Gives a notebook that is not open another title; this window's turn it must be to write in it.
   * @param {string} id
   * @param {string} title
   */
  async rename(id, title) {
    const { desk, stored } = await this.load(id, true);
    desk.apply({ set_title: title }, now());
    await this.journal?.append(id, stored, desk.entries(stored));
    this.write(id, desk);
    desk.free();
  }

  /** @param {string} id */
  async duplicate(id) {
    const { desk } = await this.load(id, false);
    desk.apply({ copied: say('notebooks-copy-of', { title: desk.title() || say('untitled') }) }, now());
    await this.create(desk);
    desk.free();
  }

  /** @param {string} id @param {boolean} binned */
  bin(id, binned) {
    core.shelf_bin(id, binned);
  }

  /**
   * Deletes a notebook for good.
   * @param {string} id
   */
  async forget(id) {
    await this.journal?.forget(id);
    core.shelf_forget(id);
    dropLeftOversOf(id);
  }

  /**
   * Puts notebooks back on the shelf whose snapshot was lost while the journal kept them.
   * @param {string[]} journalled the notebooks that the journal holds
   * @returns {Promise<{refused: unknown[], latest?: {id: string, at: string}}>} why some can't be, which are left as
   *   they are; and the one last changed of the others
   */
  async recover(journalled) {
    const refused = [];
    /** @type {{id: string, at: string} | undefined} */
    let latest;
    const known = new Set(core.shelf_list().map((item) => item.id));
    for (const id of journalled) {
      if (known.has(id)) continue;
      const kept = await this.journal?.read(id, 0) ?? [];
      if (kept[0]?.number !== 0) continue;
      try {
        const { desk } = await this.load(id, false);
        const at = madeAt(kept[kept.length - 1]);
        if (at > (latest?.at ?? '')) latest = { id, at };
        try {
          // As old as its last entry, so that it stands in its place among the others.
          core.shelf_write(id, desk.title(), at, desk.text());
        } catch {
          // A shelf that is full gets it another day; the journal has it.
        }
        desk.free();
      } catch (error) {
        refused.push(error);
      }
    }
    return { refused, latest };
  }
}

/**
 * When a journal entry was made (RFC 3339); nothing for the entries of the demo, which nobody made.
 * @param {import('./journal.js').Entry} entry
 * @returns {string}
 */
function madeAt(entry) {
  const { at } = JSON.parse(entry.text);
  return typeof at === 'string' ? at : '';
}

/**
 * Replays journal entries as far as they can be applied. Entries of a later version are no reason to go on without
 * them: the notebook is then not opened, and left as it is.
 * @param {Desk} desk
 * @param {string[]} entries
 */
function replay(desk, entries) {
  try {
    desk.replay(entries);
  } catch (error) {
    if (isKind(error, 'later')) throw error;
    // Those before the one that failed hold; what follows from them is computed by an empty replay.
    desk.replay([]);
  }
}

/**
 * Whether a snapshot holds entries that a desk has not.
 * @param {string | undefined} text
 * @param {Desk} desk
 */
function holdsMore(text, desk) {
  if (text === undefined) return false;
  const snapshot = core.Desk.open(text);
  const entries = snapshot.entries(0);
  snapshot.free();
  const [last] = desk.entries(entries.length - 1);
  return last !== entries[entries.length - 1];
}
