/**
 * Workers with a wasm of their own, which read evidence and pack bundles beside the page. Every promise of
 * theirs is refused with a {@link ThrownInWords}, whose message is for a person.
 */
import { messageOf } from './core.js';
import { say, worded } from './words.js';
import { compiled, startWorker, workerHere } from './wasm.js';

/** @import { Answer, Asking, Call, CallOutcome, Calls, Refusal, Task, ThrownInWords, WorkerRefusal } from './evidence-types.js' */

/** Where one worker is, when it is needed: started when it is asked for something, and anew when it has ended. */
export class WorkerSlot {
  /** @param {number} rest how long nobody has asked when its worker is ended, ms; 0 for never */
  constructor(rest) {
    this.rest = rest;
    this.timer = 0;
    /** Questions without an answer. */
    this.open = 0;
    /** @type {Promise<EvidenceWorker> | undefined} */
    this.worker = undefined;
  }

  /**
   * @template {Call} C
   * @param {C} call
   * @param {Parameters<Calls[C]>} values
   * @returns {Promise<ReturnType<Calls[C]>>}
   */
  async ask(call, ...values) {
    clearTimeout(this.timer);
    this.open += 1;
    try {
      return await (await this.started()).ask(call, ...values);
    } finally {
      this.open -= 1;
      if (this.rest && !this.open) this.timer = window.setTimeout(() => this.end(), this.rest);
    }
  }

  /** The worker, a new one if there is none or it has ended. @returns {Promise<EvidenceWorker>} */
  started() {
    const before = this.worker;
    const follow = async () => {
      const worker = await before?.catch(() => undefined);
      return worker && !worker.ended ? worker : EvidenceWorker.start();
    };
    this.worker = follow();
    return this.worker;
  }

  /** Ends the worker, which owes nothing. */
  end() {
    void this.worker?.then((worker) => worker.end(refusal('stopped')), () => {});
    this.worker = undefined;
  }
}

/** One worker, with the promises that it owes. */
export class EvidenceWorker {
  /** The wasm and the script's address, loaded once. @type {Promise<[WebAssembly.Module, string]> | undefined} */
  static loaded;

  /** What workers are started with. */
  static parts() {
    EvidenceWorker.loaded ??= Promise.all([
      compiled(globalThis.SLOPE_EVIDENCE, 'slope_worker_bg.wasm'),
      workerHere(globalThis.SLOPE_EVIDENCE_WORKER, 'evidence-worker.js'),
    ]).catch((error) => {
      EvidenceWorker.loaded = undefined;
      throw refusal('start', messageOf(error));
    });
    return EvidenceWorker.loaded;
  }

  static async start() {
    const [core, address] = await EvidenceWorker.parts();
    return new EvidenceWorker(core, address);
  }

  /**
   * @param {WebAssembly.Module} core
   * @param {string} address
   */
  constructor(core, address) {
    /** Why it has ended, when it has. @type {ThrownInWords | undefined} */
    this.ended = undefined;
    this.started = false;
    this.next = 0;
    /** @type {Map<number, {resolve: (value: CallOutcome) => void, reject: (error: ThrownInWords) => void}>} */
    this.open = new Map();
    this.worker = startWorker(address);
    this.worker.onmessage = (/** @type {MessageEvent<Answer>} */ { data }) => this.heard(data);
    this.worker.onmessageerror = () => this.fail('');
    this.worker.onerror = (event) => {
      event.preventDefault();
      this.fail(event.message);
    };
    this.send({ core });
  }

  /** @param {Task} task */
  send(task) {
    this.worker.postMessage(task);
  }

  /**
   * @template {Call} C
   * @param {C} call
   * @param {Parameters<Calls[C]>} values
   * @returns {Promise<ReturnType<Calls[C]>>}
   */
  ask(call, ...values) {
    if (this.ended) return Promise.reject(this.ended);
    const id = this.next;
    this.next += 1;
    return new Promise((resolve, reject) => {
      // What comes under this number is what this call gives.
      this.open.set(id, { resolve: /** @type {(value: CallOutcome) => void} */ (resolve), reject });
      try {
        this.send(/** @type {Asking} */ ({ id, call, values }));
      } catch (error) {
        this.open.delete(id);
        reject(refusal('crash', messageOf(error)));
      }
    });
  }

  /** @param {Answer} answer */
  heard(answer) {
    if ('crashed' in answer) {
      this.fail(answer.why);
      return;
    }
    this.started = true;
    if ('started' in answer) return;
    const owed = this.open.get(answer.id);
    this.open.delete(answer.id);
    if ('thrown' in answer) {
      owed?.reject(refusalOf(answer.thrown));
    } else {
      owed?.resolve(answer.value);
    }
  }

  /** @param {string | undefined} why empty where the browser does not say */
  fail(why) {
    this.end(refusal(this.started ? 'crash' : 'start', why ? say('browser-says', { words: why }) : say('evidence-unsaid')));
  }

  /** Ends the worker, and refuses what it still owes. @param {ThrownInWords} why */
  end(why) {
    if (this.ended) return;
    this.ended = why;
    this.worker.terminate();
    for (const { reject } of this.open.values()) reject(why);
    this.open.clear();
  }
}

/** What a worker refused, in words. @param {WorkerRefusal} thrown @returns {ThrownInWords} */
export function refusalOf({ kind, message, name }) {
  // What says nothing is one that the worker's script names.
  return message ? { kind, message: worded(message) } : refusal(/** @type {Refusal} */ (kind), name);
}

/**
 * A refusal of the page's own, in words.
 * @param {Refusal} kind
 * @param {string} [what] the name of a file, a count, or the reason
 * @returns {ThrownInWords}
 */
export function refusal(kind, what = '') {
  return { kind, message: say(`evidence-refusals-${kind}`, { what }) };
}

/** Reads traces and bundles, and keeps the traces that were measured last. */
export const reader = new WorkerSlot(0);
