/**
 * The notebooks that this browser keeps. Each one is its snapshot in local storage and the journal entries
 * behind it; either may be ahead of the other, and opening takes the longer.
 */
import { now } from './book.js';
import { core } from './core.js';
import { words } from './strings.js';

/** @import { Journal } from './journal.js' */
/** @import { Desk, ShelfItem } from './types.js' */

/** After this time a browser has surely written its local storage to disk, in ms (seen: 7 s are enough). */
const SETTLED = 60_000;

/**
 * @typedef {object} Loaded
 * @property {Desk} desk
 * @property {number} entries how many the log holds
 * @property {number} covered how many of them the snapshot held
 * @property {string} written when the snapshot was written (RFC 3339); empty without one
 * @property {number} aside how many journal entries were set aside
 */

export class Shelf {
  /** @param {Journal | undefined} journal */
  constructor(journal) {
    this.journal = journal;
  }

  /**
   * The notebooks, the last changed first.
   * @param {boolean} binned
   */
  list(binned) {
    return core.shelf_list().filter((item) => item.binned === binned)
      .sort((a, b) => (a.changed < b.changed ? 1 : -1));
  }

  /** @param {string} id @returns {ShelfItem | undefined} */
  item(id) {
    return core.shelf_list().find((item) => item.id === id);
  }

  /**
   * Opens a notebook: its snapshot, and every journal entry after it.
   * @param {string} id
   * @returns {Promise<Loaded>}
   */
  async load(id) {
    const written = this.item(id)?.changed ?? '';
    const text = core.shelf_read(id);
    const desk = text === undefined ? core.Desk.blank() : core.Desk.open(text);
    const covered = desk.length();
    const later = await this.journal?.read(id, covered) ?? [];
    const gap = later.findIndex((entry, place) => entry.number !== covered + place);
    replay(desk, gap === -1 ? later : later.slice(0, gap));
    const entries = desk.length();
    const aside = later.slice(entries - covered);
    if (aside.length > 0) await this.journal?.setAside(id, aside);
    return { desk, entries, covered, written, aside: aside.length };
  }

  /**
   * Drops the journal entries that the snapshot covers: it was read back by this opening, and is dropped behind
   * only when it is old enough to be on disk.
   * @param {string} id
   * @param {Loaded} loaded
   */
  async compact(id, { covered, written }) {
    if (covered > 0 && Date.now() - Date.parse(written) > SETTLED) await this.journal?.drop(id, covered);
  }

  /**
   * Keeps a notebook as a new one.
   * @param {Desk} desk
   * @returns {Promise<string>} its id
   */
  async create(desk) {
    const id = newId();
    const entries = desk.entries(0);
    if (entries.length > 0) await this.journal?.append(id, 0, entries);
    this.write(id, desk);
    return id;
  }

  /** @param {string} id @param {Desk} desk */
  write(id, desk) {
    core.shelf_write(id, desk.title(), now(), desk.text());
  }

  /**
   * Gives a notebook that is not open another title.
   * @param {string} id
   * @param {string} title
   */
  async rename(id, title) {
    const { desk, entries } = await this.load(id);
    desk.apply({ set_title: title }, now());
    await this.journal?.append(id, entries, desk.entries(entries));
    this.write(id, desk);
    desk.free();
  }

  /** @param {string} id */
  async duplicate(id) {
    const { desk } = await this.load(id);
    desk.apply({ set_title: words.notebooks.copyOf(desk.title() || words.untitled) }, now());
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
    await this.journal?.drop(id);
    core.shelf_forget(id);
  }

  /** Puts notebooks back on the shelf whose snapshot was lost while the journal kept them. */
  async recover() {
    const known = new Set(core.shelf_list().map((item) => item.id));
    for (const id of await this.journal?.notebooks() ?? []) {
      if (known.has(id)) continue;
      const kept = await this.journal?.read(id, 0) ?? [];
      if (kept[0]?.number !== 0) continue;
      const { desk } = await this.load(id);
      // As old as its last entry, so that the notebook last in hand opens first again.
      core.shelf_write(id, desk.title(), madeAt(kept[kept.length - 1]), desk.text());
      desk.free();
    }
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
 * Replays journal entries as far as they can be applied.
 * @param {Desk} desk
 * @param {import('./journal.js').Entry[]} entries
 */
function replay(desk, entries) {
  try {
    desk.replay(entries.map((entry) => entry.text));
  } catch {
    // Those before the one that failed hold; what follows from them is computed by an empty replay.
    desk.replay([]);
  }
}

function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
