/**
 * Whose turn it is to write in a notebook. A Web Lock says it; browsers have those in secure contexts only (Web Locks
 * API, section 3), so where a page comes over plain HTTP, the journal says it. Either way the journal takes entries from
 * the window whose turn it is, and from no other.
 */

/** @import { Journal } from './journal.js' */

const NAME = 'slope-of-light';
const TURNS = `${NAME} turns`;
/** How long a window that writes may take to say so, in ms. */
const ANSWER = 400;
/** How often a window that waits looks whether the one that writes is still there, in ms. */
const LOOK = 5_000;

/**
 * Speaks with this browser's other windows. Where it has no such channel, as before 2022, or forbids it together with storage,
 * they don't hear each other.
 * @param {string} name
 * @param {(message: any) => void} heard
 * @returns {{postMessage: (message: object) => void, close: () => void}}
 */
export function channelOf(name, heard) {
  try {
    const channel = new BroadcastChannel(name);
    channel.onmessage = ({ data }) => heard(data);
    return channel;
  } catch {
    return { postMessage() {}, close() {} };
  }
}

/**
 * One turn at a time: each request gives up the one before.
 * @typedef {object} Turns
 * @property {(id: string) => Promise<boolean>} take has it, if no other window has
 * @property {(id: string) => Promise<boolean>} seize has it, whoever had it
 * @property {(id: string) => Promise<boolean>} wait ends when it is had, or when something else was requested
 * @property {() => void} leave
 * @property {(id: string, work: () => Promise<void>) => Promise<boolean>} briefly does something to a notebook that is
 *   not open here, unless another window writes in it
 * @property {() => void} onLost called when another window seized it
 */

/**
 * @param {Journal | undefined} journal
 * @returns {Turns}
 */
export function turnsWith(journal) {
  if (navigator.locks) return new LockTurns(journal);
  return journal ? new LeaseTurns(journal) : new SoleTurns();
}

/** @implements {Turns} */
class LockTurns {
  /** @param {Journal | undefined} journal */
  constructor(journal) {
    this.journal = journal;
    this.requests = 0;
    /** Whether the page is being left: browsers end its locks then, or refuse them, though no other window came. */
    this.isLeft = false;
    this.release = () => {};
    this.onLost = () => {};
    whenLeft(() => { this.isLeft = true; });
  }

  /** @param {string} id */
  take(id) {
    return this.request(id, { ifAvailable: true });
  }

  /** @param {string} id */
  seize(id) {
    return this.request(id, { steal: true });
  }

  /** @param {string} id */
  wait(id) {
    return this.request(id, {});
  }

  leave() {
    this.requests += 1;
    this.release();
    this.release = () => {};
  }

  /** @param {string} id @param {() => Promise<void>} work */
  async briefly(id, work) {
    const does = async () => {
      await this.journal?.claim(id);
      await work();
      return true;
    };
    if (await areForbidden()) return does();
    return navigator.locks.request(lockName(id), { ifAvailable: true }, async (lock) => lock !== null && does());
  }

  /**
   * @param {string} id
   * @param {LockOptions} options
   * @returns {Promise<boolean>}
   */
  request(id, options) {
    // Who seizes waits on until the turn is had: else it would go, in between, to whoever waits behind.
    const { release } = this;
    if (options.steal) this.requests += 1;
    else this.leave();
    const request = this.requests;
    const isOver = () => request !== this.requests;
    const queues = !options.ifAvailable && !options.steal;
    const stop = new AbortController();
    if (queues) this.release = () => stop.abort();
    return new Promise((resolve) => {
      navigator.locks.request(lockName(id), queues ? { signal: stop.signal } : options, async (lock) => {
        if (options.steal) release();
        if (!lock || isOver()) return resolve(false);
        const left = new Promise((done) => { this.release = () => done(undefined); });
        // Whatever is asked of the journal from now on comes after it, so nobody waits for its end.
        this.journal?.claim(id).catch(() => {});
        resolve(true);
        return left;
      }).catch((error) => {
        resolve(isForbidden(error));
        if (isForbidden(error) || this.isLeft || isOver()) return;
        // A window that hears of its turn only after the next one has it claims the journal behind that one's back.
        this.journal?.release(id).catch(() => {});
        this.onLost();
      });
    });
  }
}

/** @implements {Turns} */
class LeaseTurns {
  /** @param {Journal} journal */
  constructor(journal) {
    this.journal = journal;
    this.requests = 0;
    /** The notebook whose turn this window has; empty without one. */
    this.id = '';
    this.onLost = () => {};
    /** Lets a window that waits look again. */
    this.look = () => {};
    /** Ends when the turn before is given back. @type {Promise<unknown>} */
    this.given = Promise.resolve();
    this.channel = channelOf(TURNS, (message) => this.heard(message));
    whenLeft(() => this.leave());
  }

  /** @param {string} id */
  async take(id) {
    this.leave();
    return this.taken(id, this.requests);
  }

  /** @param {string} id */
  async seize(id) {
    this.leave();
    const request = this.requests;
    await this.journal.claim(id);
    this.channel.postMessage({ kind: 'seized', id });
    return this.has(id, request);
  }

  /** @param {string} id */
  async wait(id) {
    this.leave();
    const request = this.requests;
    for (;;) {
      await new Promise((resolve) => {
        this.look = () => resolve(undefined);
        setTimeout(resolve, LOOK);
      });
      if (request !== this.requests) return false;
      if (await this.taken(id, request)) return true;
    }
  }

  leave() {
    this.requests += 1;
    this.look();
    const { id } = this;
    if (id === '') return;
    this.id = '';
    this.giveBack(id);
    this.channel.postMessage({ kind: 'left', id });
  }

  /** @param {string} id */
  giveBack(id) {
    this.given = this.journal.release(id).catch(() => {});
  }

  /** @param {string} id @param {() => Promise<void>} work */
  async briefly(id, work) {
    if (!await this.claimed(id)) return false;
    try {
      await work();
    } finally {
      await this.journal.release(id);
    }
    return true;
  }

  /** @param {string} id @param {number} request */
  async taken(id, request) {
    return await this.claimed(id) && this.has(id, request);
  }

  /** Notes that the turn is had, if it is still wanted. @param {string} id @param {number} request */
  has(id, request) {
    const wanted = request === this.requests;
    if (wanted) this.id = id;
    else this.giveBack(id);
    return wanted;
  }

  /** Claims a notebook in which no window writes that is still there. @param {string} id */
  async claimed(id) {
    await this.given;
    const before = await this.journal.writer(id);
    if (before !== '' && before !== this.journal.window && await this.isThere(id)) return false;
    const claimed = await this.journal.claim(id, before);
    // One that was only too busy to answer hears of it.
    if (claimed && before !== '') this.channel.postMessage({ kind: 'seized', id });
    return claimed;
  }

  /** Whether a window says that it writes in a notebook. @param {string} id @returns {Promise<boolean>} */
  isThere(id) {
    return new Promise((resolve) => {
      const channel = channelOf(TURNS, (message) => {
        if (message.kind === 'here' && message.id === id) end(true);
      });
      const end = (/** @type {boolean} */ isThere) => {
        channel.close();
        resolve(isThere);
      };
      setTimeout(() => end(false), ANSWER);
      channel.postMessage({ kind: 'who', id });
    });
  }

  /** @param {{kind: string, id: string}} message */
  heard({ kind, id }) {
    if (kind === 'left') this.look();
    if (id !== this.id) return;
    if (kind === 'who') this.channel.postMessage({ kind: 'here', id });
    if (kind === 'seized') this.check().catch(() => {});
  }

  /** Looks whether the turn is still had: what is heard may be older than it. */
  async check() {
    const { id, requests } = this;
    if (await this.journal.writer(id) === this.journal.window || requests !== this.requests) return;
    this.id = '';
    this.onLost();
  }
}

/** Where no window knows of another. @implements {Turns} */
class SoleTurns {
  onLost = () => {};

  async take() {
    return true;
  }

  async seize() {
    return true;
  }

  /** @returns {Promise<boolean>} */
  wait() {
    return new Promise(() => {});
  }

  leave() {}

  /** @param {string} _ @param {() => Promise<void>} work */
  async briefly(_, work) {
    await work();
    return true;
  }
}

/** Whether locks are refused since the browser forbids them, as it does together with storage. @param {Error} refusal */
function isForbidden(refusal) {
  return refusal.name === 'SecurityError';
}

/**
 * Ends a turn as the page is left. One that a browser kept, and shows again, has none any more: it begins anew.
 * @param {() => void} end
 */
function whenLeft(end) {
  addEventListener('pagehide', end);
  addEventListener('pageshow', ({ persisted }) => { if (persisted) location.reload(); });
}

/** Whether the browser forbids locks: windows share nothing then, and nothing is in anyone's way. @returns {Promise<boolean>} */
function areForbidden() {
  return navigator.locks.query().then(() => false, isForbidden);
}

/** @param {string} id */
function lockName(id) {
  return `${NAME} ${id}`;
}
