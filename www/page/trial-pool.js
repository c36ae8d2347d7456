/**
 * Those who run one notebook's trials: a worker for each core of the machine, or the page itself where no worker
 * can be had. Blocks are given out one by one; their results come back in any order and are taken in the blocks'
 * own order, so that the outcome does not depend on who was faster.
 */
import { compiledCore, core, messageOf } from './core.js';
import { say, worded } from './words.js';
import { startWorker, workerHere } from './wasm.js';

/** @import { Tally, Trials } from './slope_of_light.js' */

/** The most workers, however many cores there are. */
const MOST = 8;
/** How far the blocks given out may run ahead of the one whose turn it is, for each worker. */
const AHEAD = 8;

/** What a worker is handed: the core and the notebook first, then the number of one block after the other.
 * @typedef {{core: WebAssembly.Module, text?: string} | {block: number}} TrialTask */
/** @typedef {{block: number, values: Float64Array} | {why: unknown}} TrialAnswer */
/** @typedef {{postMessage(task: TrialTask): void, terminate(): void}} Hand */

export class TrialPool {
  /**
   * @param {string} text the notebook
   * @param {Tally} tally
   * @param {{taken: () => void, done: () => void, failed: (why: string) => void}} told
   */
  constructor(text, tally, told) {
    this.text = text;
    this.tally = tally;
    this.told = told;
    /** @type {Hand[]} */
    this.hands = [];
    /** Those with room for one more block. @type {Hand[]} */
    this.free = [];
    /** The next block to be given out. */
    this.next = 0;
    /** The block whose results are to be taken next. */
    this.due = 0;
    /** Results that came before their turn. @type {Map<number, Float64Array>} */
    this.early = new Map();
    this.address = '';
    this.stopped = false;
  }

  /** Begins with workers. */
  async begin() {
    try {
      this.address = await workerHere(globalThis.SLOPE_TRIALS_WORKER, 'trials-worker.js');
      if (this.stopped) return;
      const count = Math.min(navigator.hardwareConcurrency || 1, MOST);
      while (this.hands.length < count) this.hands.push(this.worker());
    } catch (error) {
      this.fail(messageOf(error));
      return;
    }
    // Each has two blocks in hand, so that it need not wait for the next.
    this.free = [...this.hands, ...this.hands];
    this.giveOut();
  }

  /** Begins on the page itself. */
  beginHere() {
    const hand = new Here(this.text, (answer) => this.heard(hand, answer));
    this.hands = [hand];
    this.free = [hand];
    this.giveOut();
  }

  /** Ends the work; what comes in later is not heard. */
  stop() {
    this.stopped = true;
    for (const hand of this.hands) hand.terminate();
    this.hands = [];
    this.free = [];
    this.early.clear();
    if (this.address.startsWith('blob:')) URL.revokeObjectURL(this.address);
  }

  worker() {
    const worker = startWorker(this.address);
    worker.onmessage = ({ data }) => this.heard(worker, data);
    worker.onmessageerror = () => this.fail('');
    worker.onerror = (event) => {
      event.preventDefault();
      if (this.hands.includes(worker)) this.fail(event.message);
    };
    worker.postMessage({ core: compiledCore(), text: this.text });
    return worker;
  }

  /** Gives out as many blocks as may be. */
  giveOut() {
    const end = this.due + this.hands.length * AHEAD;
    while (this.next < end) {
      const hand = this.free.shift();
      if (!hand) return;
      hand.postMessage({ block: this.next });
      this.next += 1;
    }
  }

  /** @param {Hand} hand @param {TrialAnswer} answer */
  heard(hand, answer) {
    if (!this.hands.includes(hand)) return;
    if ('why' in answer) {
      this.fail(worded(answer.why));
      return;
    }
    this.free.push(hand);
    this.early.set(answer.block, answer.values);
    let enough = false;
    try {
      enough = this.takeWhatIsDue();
    } catch (error) {
      this.fail(messageOf(error));
      return;
    }
    if (enough) {
      this.stop();
      this.told.done();
    } else {
      this.giveOut();
      this.told.taken();
    }
  }

  /** Whether no more are needed. */
  takeWhatIsDue() {
    for (let values = this.early.get(this.due); values; values = this.early.get(this.due)) {
      this.early.delete(this.due);
      this.due += 1;
      if (this.tally.take(values)) return true;
    }
    return false;
  }

  /** @param {string} why empty where the browser does not say */
  fail(why) {
    this.stop();
    this.told.failed(why || say('trials-unsaid'));
  }
}

/** The page itself, block by block, with room between them for everything else. @implements {Hand} */
class Here {
  /** @param {string} text @param {(answer: TrialAnswer) => void} answer */
  constructor(text, answer) {
    this.text = text;
    this.answer = answer;
    /** @type {Trials | undefined} */
    this.trials = undefined;
    this.timer = 0;
  }

  /** @param {TrialTask} task */
  postMessage(task) {
    if ('block' in task) this.timer = window.setTimeout(() => this.answer(this.run(task.block)));
  }

  /** @param {number} block @returns {TrialAnswer} */
  run(block) {
    try {
      this.trials ??= core.Trials.of(this.text);
      return { block, values: this.trials.run(block) };
    } catch (error) {
      return { why: messageOf(error) };
    }
  }

  terminate() {
    clearTimeout(this.timer);
    this.trials?.free();
    this.trials = undefined;
  }
}
