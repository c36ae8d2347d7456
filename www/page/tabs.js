/**
 * Windows on one notebook: one writes, the others read along and can take over. Whose turn it is, {@link Turns} say; a
 * broadcast channel carries what was written, and the wish to take over:
 *
 *     ask      a window wants to write; each ask has a name of its own
 *     coming   the one that writes has heard it, and stores what it holds
 *     grant    all of that is stored: the one that asked may seize the turn
 *     writes   a window came to write; who still wants to asks again, of that one
 *
 * A window that does not answer is not waited for: the turn is seized from it.
 */
import { newId } from './journal.js';
import { channelOf, turnsWith } from './turns.js';

/** @import { Journal } from './journal.js' */

const NAME = 'slope-of-light';
/** How long the window that writes may take to answer, in ms. */
const PATIENCE = 1_500;
/** How long it may take to store what it holds, once it has answered, in ms. */
const LONG_PATIENCE = 10_000;

/** @typedef {{kind: 'ask' | 'coming' | 'grant', id: string, ask: string}} AskMessage */
/** @typedef {{kind: 'writes', id: string}} WritesMessage */
/** @typedef {{kind: 'entries', id: string, from: number, entries: string[]}} EntriesMessage */

export class Tabs {
  /** @param {Journal | undefined} journal */
  constructor(journal) {
    this.id = '';
    this.writing = false;
    /** How many notebooks were gone to. */
    this.visits = 0;
    /** The name of the ask that waits for its answer; empty without one. */
    this.ask = '';
    this.timer = 0;
    /** Called when this window comes to write. @type {() => void} */
    this.onGain = () => {};
    /** Called when another window came to write. @type {() => void} */
    this.onLoss = () => {};
    /** Called before the turn is handed over: stores everything. @type {() => Promise<unknown>} */
    this.onAsk = async () => undefined;
    /** Called with what the window that writes stored. @type {(from: number, entries: string[]) => void} */
    this.onEntries = () => {};
    this.turns = turnsWith(journal);
    // It may be lost before this window has heard that it was had.
    this.turns.onLost = () => (this.writing ? this.lose() : void this.wait());
    this.channel = channelOf(NAME, (message) => this.heard(message));
  }

  /**
   * Goes to a notebook, and leaves the one before.
   * @param {string} id
   * @returns {Promise<boolean>} whether this window writes in it
   */
  async enter(id) {
    this.writing = false;
    this.stopAsking();
    this.visits += 1;
    const visit = this.visits;
    this.id = id;
    const had = await this.turns.take(id);
    if (visit !== this.visits) return false;
    this.writing = had;
    if (!had) this.wait();
    return had;
  }

  /** Tells the other windows what was stored. @param {number} from @param {string[]} entries */
  spread(from, entries) {
    this.post({ kind: 'entries', id: this.id, from, entries });
  }

  /** Asks the window that writes to let this one write. */
  takeOver() {
    if (this.writing || this.ask !== '') return;
    this.ask = newId();
    this.askAgain();
  }

  askAgain() {
    this.post({ kind: 'ask', id: this.id, ask: this.ask });
    this.seizeAfter(PATIENCE);
  }

  /** @param {number} time in ms */
  seizeAfter(time) {
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.seize(), time);
  }

  async seize() {
    this.stopAsking();
    const { visits } = this;
    if (await this.turns.seize(this.id) && visits === this.visits) this.gain();
  }

  stopAsking() {
    clearTimeout(this.timer);
    this.ask = '';
  }

  /**
   * Does something to a notebook that is not open here, unless another window writes in it.
   * @param {string} id
   * @param {() => Promise<void>} work
   * @returns {Promise<boolean>} whether it was done
   */
  withTurn(id, work) {
    return this.turns.briefly(id, work);
  }

  /** Waits until no other window writes. */
  async wait() {
    const { visits } = this;
    if (await this.turns.wait(this.id) && visits === this.visits) this.gain();
  }

  gain() {
    this.stopAsking();
    this.writing = true;
    this.post({ kind: 'writes', id: this.id });
    this.onGain();
  }

  lose() {
    if (!this.writing) return;
    this.writing = false;
    this.onLoss();
    this.wait();
  }

  /** @param {AskMessage | WritesMessage | EntriesMessage} message */
  post(message) {
    this.channel.postMessage(message);
  }

  /** @param {AskMessage | WritesMessage | EntriesMessage} message */
  heard(message) {
    if (message.id !== this.id) return;
    switch (message.kind) {
      case 'entries': return this.writing ? undefined : this.onEntries(message.from, message.entries);
      case 'writes': return this.ask === '' ? undefined : this.askAgain();
      case 'ask': return this.writing ? void this.grant(message) : undefined;
      default: if (message.ask !== this.ask) return;
    }
    if (message.kind === 'coming') this.seizeAfter(LONG_PATIENCE);
    else this.seize();
  }

  /** @param {AskMessage} asked */
  async grant({ id, ask }) {
    this.post({ kind: 'coming', id, ask });
    await this.onAsk();
    if (id !== this.id || !this.writing) return;
    this.post({ kind: 'grant', id, ask });
    this.lose();
  }
}
