/**
 * Two tabs on one notebook: one writes, the others read along and can take over. A Web Lock says who writes; a
 * broadcast channel carries what was written, and the wish to take over.
 */

const NAME = 'slope-of-light';
/** How long the writing tab is given to finish before it is taken over from, in ms. */
const PATIENCE = 1_500;

export class Tabs {
  constructor() {
    this.id = '';
    this.writing = false;
    /** Lets go of the lock, or stops waiting for it. @type {() => void} */
    this.release = () => {};
    /** Called when this tab comes to write. @type {() => void} */
    this.onGain = () => {};
    /** Called when another tab took over. @type {() => void} */
    this.onLoss = () => {};
    /** Called before the lock is handed over. @type {() => Promise<void>} */
    this.onAsk = async () => {};
    /** Called with what the writing tab stored. @type {(from: number, entries: string[]) => void} */
    this.onEntries = () => {};
    this.channel = new BroadcastChannel(NAME);
    this.channel.onmessage = ({ data }) => this.heard(data);
  }

  /**
   * Goes to a notebook, and leaves the one before.
   * @param {string} id
   * @returns {Promise<boolean>} whether this tab writes in it
   */
  async enter(id) {
    this.leave();
    this.id = id;
    this.writing = !navigator.locks || await this.request({ ifAvailable: true });
    if (!this.writing) this.wait();
    return this.writing;
  }

  leave() {
    this.writing = false;
    this.release();
    this.release = () => {};
  }

  /** Tells the other tabs what was stored. @param {number} from @param {string[]} entries */
  spread(from, entries) {
    this.channel.postMessage({ kind: 'entries', id: this.id, from, entries });
  }

  /** Asks the writing tab to let go; does not wait for ever. */
  takeOver() {
    const { id } = this;
    this.channel.postMessage({ kind: 'ask', id });
    setTimeout(async () => {
      if (this.writing || this.id !== id) return;
      this.leave();
      if (await this.request({ steal: true })) this.gain();
    }, PATIENCE);
  }

  /**
   * Does something to a notebook that is not open here, unless another tab writes in it.
   * @param {string} id
   * @param {() => Promise<void>} work
   * @returns {Promise<boolean>} whether it was done
   */
  async withLock(id, work) {
    if (!navigator.locks || id === this.id) {
      await work();
      return true;
    }
    return navigator.locks.request(lockName(id), { ifAvailable: true }, async (lock) => {
      if (lock) await work();
      return lock !== null;
    });
  }

  /** Waits in the queue for the writing tab to close. */
  async wait() {
    const { id } = this;
    if (await this.request({}) && this.id === id) this.gain();
  }

  gain() {
    this.writing = true;
    this.onGain();
  }

  /**
   * @param {LockOptions} options
   * @returns {Promise<boolean>} ends when the lock is had, or can't be had
   */
  request(options) {
    const { id } = this;
    const queues = !options.ifAvailable && !options.steal;
    const stop = new AbortController();
    if (queues) this.release = () => stop.abort();
    return new Promise((resolve) => {
      navigator.locks.request(lockName(id), queues ? { signal: stop.signal } : options, (lock) => {
        resolve(lock !== null);
        return lock ? new Promise((done) => { this.release = () => done(undefined); }) : undefined;
      }).catch(() => {
        // Stopped while waiting, or taken away by another tab.
        resolve(false);
        if (this.id === id && this.writing) this.lose();
      });
    });
  }

  lose() {
    this.leave();
    this.onLoss();
    this.wait();
  }

  /** @param {{kind: string, id: string, from: number, entries: string[]}} message */
  async heard({ kind, id, from, entries }) {
    if (id !== this.id) return;
    if (kind === 'entries' && !this.writing) this.onEntries(from, entries);
    if (kind === 'ask' && this.writing) {
      await this.onAsk();
      this.lose();
    }
  }
}

/** @param {string} id */
function lockName(id) {
  return `${NAME} ${id}`;
}
