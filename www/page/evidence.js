/**
 * Evidence: what is read out of trace files and pictures, in workers with a wasm of their own, so that the page stays
 * live. Nothing of it is loaded before it is first asked for. Every promise is refused with a {@link Thrown}, whose
 * message is for a person.
 */
import { messageOf } from './core.js';
import { words } from './strings.js';
import { compiled, workerAddress } from './wasm.js';

/**
 * @import { Answer, Asked, BatchEnd, BatchStep, Call, Calls, Corner, Detector, Envelope, Known, Layout, LookedAt, Measured,
 *   MeasuredFiles, Named, Pair, Picture, PictureProposal, Refusal, Shrunk, Standing, Task, Thrown, TraceFiles, Wish,
 *   WorkerRefusal
 * } from './evidence-types.js'
 */

/** Bytes of a file, at most. */
const LARGEST = 64 * 1024 * 1024;
/** Files at once, at most. */
const MOST_FILES = 2000;
/** Workers of a batch, however many cores there are. */
const MOST_WORKERS = 4;
/** How often a worker of a batch is asked ahead: the next files are read while the ones before them are measured. */
const AHEAD = 2;
/** Pairs that a worker of a batch is asked for at once, at most, and bytes of their files. */
const MOST_TOGETHER = 16;
const TOGETHER = 8 * 1024 * 1024;

/** @typedef {Pick<BatchStep, 'found' | 'refused'>} Outcome */

export class Evidence {
  constructor() {
    /** The one worker that keeps what was looked at last. @type {Promise<Helper> | undefined} */
    this.helper = undefined;
    /** Numbers of pictures, by which it tells whether it keeps the pixels. @type {WeakMap<Picture, number>} */
    this.numbers = new WeakMap();
    this.next = 0;
  }

  /**
   * How the numbers of a trace file are set out.
   * @param {File} file
   * @returns {Promise<Layout>}
   */
  async recognise(file) {
    checkSize(file);
    return this.ask('recognise', file);
  }

  /**
   * How a file reads by a layout, or as it is recognised where delimiter or decimal mark is known.
   * @param {File} file
   * @param {Known} known
   * @param {Layout} [layout]
   * @returns {Promise<LookedAt>}
   */
  async lookAt(file, known, layout) {
    checkSize(file);
    return this.ask('look_at', file, known, layout);
  }

  /**
   * The one fixed level for a run, V, from half the lower pulse of each pair; nothing for no pair.
   * @param {number[]} levels
   * @returns {Promise<number | null>}
   */
  commonLevel(levels) {
    return this.ask('common_level', levels);
  }

  /**
   * Reads the files of a pair and measures it; the traces are kept for {@link measureAgain} and {@link envelope}.
   * @param {TraceFiles} files
   * @param {Asked} asked
   * @returns {Promise<MeasuredFiles>}
   */
  async measure(files, asked) {
    for (const { file } of files) checkSize(file);
    return this.ask('measure', files, asked, true);
  }

  /**
   * Measures the pair that was measured last by other settings.
   * @param {Asked} asked
   * @returns {Promise<Measured>}
   */
  measureAgain(asked) {
    return this.ask('measure_again', asked);
  }

  /**
   * A trace of the pair that was measured last, from one time to another (ns), in so many stretches at most.
   * @param {Detector} side
   * @param {number} from
   * @param {number} to
   * @param {number} points
   * @returns {Promise<Envelope>}
   */
  envelope(side, from, to, points) {
    return this.ask('envelope', side, from, to, points);
  }

  /**
   * Which files belong together, by their names (with the folder, where there is one).
   * @param {string[]} names
   * @returns {Promise<Pair[]>}
   */
  async pair(names) {
    checkCount(names.length);
    return this.ask('pair', names);
  }

  /**
   * What each name tells of rail, reading and channel.
   * @param {string[]} names
   * @returns {Promise<Named[]>}
   */
  async railReadings(names) {
    checkCount(names.length);
    return this.ask('rail_reading', names);
  }

  /**
   * SHA-256 of a file, in hexadecimal digits.
   * @param {Blob} file
   * @returns {Promise<string>}
   */
  async hash(file) {
    checkSize(file);
    return this.ask('hash', file);
  }

  /**
   * The bytes of a bundle with entries.
   * @param {string[]} names
   * @param {Uint8Array<ArrayBuffer>[]} contents the bytes of each, in the same place
   * @returns {Promise<Uint8Array<ArrayBuffer>>}
   */
  pack(names, contents) {
    return this.ask('pack', names, contents);
  }

  /**
   * The entries of a bundle, each checked against the bundle's own list.
   * @param {Blob} bundle
   * @returns {Promise<Map<string, Uint8Array<ArrayBuffer>>>} by their names
   */
  async unpack(bundle) {
    return new Map(await this.ask('unpack', bundle));
  }

  /**
   * A picture as it is to be kept: upright, no larger than wished for, a JPEG without what the camera wrote beside
   * the pixels (place, time, device). Its pixels stay in the worker for {@link propose} and {@link checkSeries}.
   * @param {File} file
   * @param {Wish} [wish]
   * @returns {Promise<Shrunk>}
   */
  async shrinkPicture(file, wish = {}) {
    checkSize(file);
    const number = this.next;
    this.next += 1;
    const shrunk = await this.ask('shrink', file, number, wish);
    this.numbers.set(shrunk.blob, number);
    return shrunk;
  }

  /**
   * Marks proposed for a picture, in its pixels. One that {@link shrinkPicture} gave last, or that was looked at last,
   * is not decoded again.
   * @param {Picture} picture
   * @param {number} columns
   * @param {number} rows
   * @returns {Promise<PictureProposal>}
   */
  async propose(picture, columns, rows) {
    checkSize(picture);
    return this.ask('propose', picture, this.number(picture), columns, rows);
  }

  /**
   * Whether corner marks made on another picture of the series serve this one too.
   * @param {Picture} picture
   * @param {Corner[]} corners
   * @param {number} u_pixels standard uncertainty of a mark in x and in y
   * @param {number} columns
   * @param {number} rows
   * @returns {Promise<Standing>}
   */
  async checkSeries(picture, corners, u_pixels, columns, rows) {
    checkSize(picture);
    return this.ask('check_series', picture, this.number(picture), corners, u_pixels, columns, rows);
  }

  /**
   * Measures many pairs, in as many workers as the machine has cores for. A pair that is refused does not stop the
   * others. Refused itself where no worker can be had.
   * @param {TraceFiles[]} pairs
   * @param {Asked} asked
   * @param {(step: BatchStep) => void} each told of each pair as it is finished, in any order
   * @param {AbortSignal} [signal] stops it at once
   * @returns {Promise<BatchEnd>}
   */
  async batch(pairs, asked, each, signal) {
    const all = pairs.length;
    const lanes = Math.min(navigator.hardwareConcurrency || 1, MOST_WORKERS, all);
    let [next, done] = [0, 0];
    /** @type {Set<Helper>} */
    const helpers = new Set();
    const stop = () => {
      next = all;
      for (const helper of helpers) helper.end(refusal('stopped'));
    };
    /** @param {number} index */
    const bytesOf = (index) => (pairs[index] ?? []).reduce((sum, { file }) => sum + file.size, 0);
    /** The places of the next pairs that a worker is asked for at once: fewer towards the end, so that all end together. */
    const some = () => {
      const most = Math.min(MOST_TOGETHER, Math.ceil((all - next) / (2 * AHEAD * lanes)));
      const first = next;
      let bytes = 0;
      do {
        bytes += bytesOf(next);
        next += 1;
      } while (next < all && next - first < most && bytes + bytesOf(next) <= TOGETHER);
      return Array.from({ length: next - first }, (_, place) => first + place);
    };
    /** @param {Helper} helper @param {number[]} places */
    const ask = (helper, places) => {
      const answer = measureSome(helper, places.map((index) => /** @type {TraceFiles} */ (pairs[index])), asked);
      // A refusal is looked at when it is their turn.
      answer.catch(() => {});
      return { places, answer };
    };
    const lane = async () => {
      /** @type {Helper | undefined} */
      let helper;
      /** Asked and not yet answered, in the order in which the worker takes them. @type {ReturnType<typeof ask>[]} */
      let open = [];
      /** Places of pairs asked for together, over which the worker failed. @type {number[]} */
      let apart = [];
      while (open.length > 0 || apart.length > 0 || next < all) {
        if (!helper || helper.ended) {
          helper = await Helper.start();
          if (signal?.aborted) helper.end(refusal('stopped'));
          helpers.add(helper);
          // The worker came to its end over what was answered for; these had not their turn.
          const fresh = helper;
          open = open.map(({ places }) => ask(fresh, places));
        }
        const asking = helper;
        if (apart.length > 0) {
          open.unshift(...apart.map((index) => ask(asking, [index])));
          apart = [];
        }
        while (open.length < AHEAD && next < all) open.push(ask(helper, some()));
        const first = open.shift();
        if (!first) return;
        const { places, answer } = first;
        /** @type {Outcome[]} */
        let outcomes;
        try {
          outcomes = await answer;
        } catch (error) {
          const refused = /** @type {Thrown} */ (error);
          if (refused.kind === 'stopped') return;
          if (refused.kind === 'start') throw refused;
          if (places.length > 1) {
            // One by one they tell which it was.
            apart = places;
            continue;
          }
          outcomes = [{ found: null, refused }];
        }
        for (const [place, outcome] of outcomes.entries()) {
          if (signal?.aborted) return;
          done += 1;
          each({ index: places[place] ?? 0, ...outcome, done, all });
        }
      }
    };
    if (signal?.aborted) return { done, stopped: true };
    signal?.addEventListener('abort', stop);
    try {
      await Promise.all(Array.from({ length: lanes }, lane));
    } finally {
      signal?.removeEventListener('abort', stop);
      stop();
    }
    return { done, stopped: done < all };
  }

  /** Has a worker ready, while it can be had; what is asked for later says if none can. */
  prepare() {
    this.started().catch(() => {});
  }

  /** Ends whatever goes on; what was kept is forgotten. The next call begins anew. */
  stop() {
    const { helper } = this;
    this.helper = undefined;
    void helper?.then((started) => started.end(refusal('stopped')), () => {});
  }

  /**
   * @template {Call} C
   * @param {C} call
   * @param {Parameters<Calls[C]>} values
   * @returns {Promise<ReturnType<Calls[C]>>}
   */
  async ask(call, ...values) {
    const helper = await this.started();
    return helper.ask(call, ...values);
  }

  /** The worker, a new one if there is none or it has ended. @returns {Promise<Helper>} */
  started() {
    const before = this.helper;
    const follow = async () => {
      const helper = await before?.catch(() => undefined);
      return helper && !helper.ended ? helper : Helper.start();
    };
    this.helper = follow();
    return this.helper;
  }

  /** The number under which the worker keeps a picture's pixels. @param {Picture} picture */
  number(picture) {
    const number = this.numbers.get(picture) ?? this.next;
    if (number === this.next) this.next += 1;
    this.numbers.set(picture, number);
    return number;
  }
}

/** One worker, with the promises that it owes. */
class Helper {
  /** @type {Promise<WebAssembly.Module> | undefined} */
  static core;
  static address = '';

  /** Starts one; the wasm is loaded and compiled once. */
  static async start() {
    try {
      Helper.core ??= compiled(globalThis.SLOPE_ASIDE_BASE64, 'slope_aside_bg.wasm');
      const core = await Helper.core;
      Helper.address ||= workerAddress(globalThis.SLOPE_EVIDENCE_WORKER, 'evidence-worker.js');
      return new Helper(core, Helper.address);
    } catch (error) {
      Helper.core = undefined;
      throw refusal('start', messageOf(error));
    }
  }

  /**
   * @param {WebAssembly.Module} core
   * @param {string} address
   */
  constructor(core, address) {
    /** Why it has ended, when it has. @type {Thrown | undefined} */
    this.ended = undefined;
    this.started = false;
    this.next = 0;
    /** @type {Map<number, {resolve: (value: any) => void, reject: (error: Thrown) => void}>} */
    this.open = new Map();
    this.worker = new Worker(address);
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
      this.open.set(id, { resolve, reject });
      try {
        this.send({ id, call, values });
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
      owed?.reject(inWords(answer.thrown));
    } else {
      owed?.resolve(answer.value);
    }
  }

  /** @param {string | undefined} why empty where the browser does not say */
  fail(why) {
    this.end(refusal(this.started ? 'crash' : 'start', why || words.evidence.unsaid));
  }

  /** Ends the worker, and refuses what it still owes. @param {Thrown} why */
  end(why) {
    if (this.ended) return;
    this.ended = why;
    this.worker.terminate();
    for (const { reject } of this.open.values()) reject(why);
    this.open.clear();
  }
}

/**
 * Measures pairs by one reading of all their files; a single one by itself, so that a file that can't be read is named.
 * @param {Helper} helper
 * @param {TraceFiles[]} pairs
 * @param {Asked} asked
 * @returns {Promise<Outcome[]>} of each
 */
async function measureSome(helper, pairs, asked) {
  const [first] = pairs;
  if (first && pairs.length === 1) {
    for (const { file } of first) checkSize(file);
    return [{ found: await helper.ask('measure', first, asked, false), refused: null }];
  }
  const whole = new Blob(pairs.flatMap((files) => files.map(({ file }) => file)));
  const parts = pairs.map((files) => files.map(({ file: { name, size }, layout }) => ({ name, size, layout })));
  const answers = await helper.ask('measure_all', whole, parts, asked);
  return answers.map(({ found, thrown }) => ({ found, refused: thrown && inWords(thrown) }));
}

/** @param {WorkerRefusal} thrown @returns {Thrown} */
function inWords({ kind, message, name }) {
  return message ? { kind, message } : refusal(kind, name);
}

/**
 * A refusal of the page's own, in words.
 * @param {Refusal} kind
 * @param {string} [name] of a file, or the reason
 * @returns {Thrown}
 */
function refusal(kind, name = '') {
  const of = /** @type {Partial<Record<Refusal, (name: string) => string>>} */ (words.evidence.refusals);
  return { kind, message: of[kind]?.(name) ?? name };
}

/** @param {Picture} file a bitmap is no file, and may be as large as it is */
function checkSize(file) {
  if (file instanceof Blob && file.size > LARGEST) throw refusal('too_large', file instanceof File ? file.name : '');
}

/** @param {number} files */
function checkCount(files) {
  if (files > MOST_FILES) throw refusal('too_many', String(files));
}

/** The page's own. */
export const evidence = new Evidence();
