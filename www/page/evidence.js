/**
 * Evidence: what is read out of trace files and pictures, in workers, so that the page stays live. Every promise is
 * refused with a {@link ThrownInWords}, whose message is for a person.
 */
import { EvidenceWorker, refusalOf, WorkerSlot, reader, refusal } from './worker-slot.js';

/** @import { Asked, BatchEnd, BatchStep, LookedAt, MeasuredFiles, PictureSource, Shrunk, ThrownInWords, TraceFiles } from './evidence-types.js' */
/** @import { Corner, Detector, Envelope, Known, Layout, LensChecks, MarkedBefore, Named, Pair, Proposal, Standing } from './worker-types.js' */
/** @import { View } from './types.js' */

/** Bytes of a file, at most. */
const LARGEST = 64 * 1024 * 1024;
/** Files at once, at most. */
const MOST_FILES = 2000;
/** Workers of a batch, however many cores there are. */
const MOST_WORKERS = 4;
/** How often a worker of a batch is asked ahead: the next files are read while the ones before them are measured. */
const AHEAD = 2;
/** How long nobody has asked after a picture when its worker is ended, ms. */
const REST = 5000;
/** Pairs that a worker of a batch is asked for at once, at most, and bytes of their files. */
const MOST_TOGETHER = 16;
const TOGETHER = 8 * 1024 * 1024;

/** @typedef {Pick<BatchStep, 'found' | 'refused'>} PairOutcome */
/** Pairs by their places, and what a worker answers once it was asked. @typedef {{places: number[], answer?: Promise<PairOutcome[]>}} PairRequest */

export class EvidenceWorkers {
  constructor() {
    /** Looks at pictures, which takes much room: it is let go when nobody has asked for a while. */
    this.viewer = new WorkerSlot(REST);
    /** Numbers of pictures, by which it tells which one it looked at last. @type {WeakMap<PictureSource, number>} */
    this.numbers = new WeakMap();
    this.next = 0;
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
    return reader.ask('look_at', file, known, layout);
  }

  /**
   * The one fixed level for a run, V, from half the lower pulse of each pair; nothing for no pair.
   * @param {number[]} levels
   * @returns {Promise<number | null>}
   */
  commonLevel(levels) {
    return reader.ask('common_level', levels);
  }

  /**
   * Reads the files of a pair and measures it.
   * @param {TraceFiles} files
   * @param {Asked} asked
   * @param {boolean} [keep] the traces, for {@link envelope}
   * @returns {Promise<MeasuredFiles>}
   */
  async measure(files, asked, keep = true) {
    for (const { file } of files) checkSize(file);
    return reader.ask('measure', files, asked, keep);
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
    return reader.ask('envelope', side, from, to, points);
  }

  /**
   * Which files belong together, by their names (with the folder, where there is one).
   * @param {string[]} names
   * @returns {Promise<Pair[]>}
   */
  async pair(names) {
    checkCount(names.length);
    return reader.ask('pair', names);
  }

  /**
   * What each name tells of rail, reading and channel; the reading as the notebook writes it.
   * @param {string[]} names
   * @param {Pick<View, 'rails' | 'decimal_mark'>} notebook
   * @returns {Promise<Named[]>}
   */
  async railReadings(names, { rails, decimal_mark: decimal }) {
    checkCount(names.length);
    return reader.ask('rail_reading', names, rails.map(({ fields }) => fields.name.text.trim()), decimal);
  }

  /**
   * A picture as it is to be kept: upright, no larger than need be, a JPEG without what the camera wrote beside
   * the pixels (place, time, device).
   * @param {File} file
   * @returns {Promise<Shrunk>}
   */
  async shrinkPicture(file) {
    checkSize(file);
    return this.viewer.ask('shrink', file);
  }

  /**
   * Marks proposed for a picture, in its pixels. The one that was looked at last is not decoded again.
   * @param {PictureSource} picture
   * @param {number} columns
   * @param {number} rows
   * @param {MarkedBefore} [before] a picture of the run that was marked: tells A's edge from B's
   * @returns {Promise<Proposal>}
   */
  async propose(picture, columns, rows, before) {
    checkSize(picture);
    return this.viewer.ask('propose', picture, this.number(picture), columns, rows, before);
  }

  /**
   * Crossings for a check of the lens, near corners that a person has put.
   * @param {PictureSource} picture
   * @param {Corner[]} corners
   * @param {number} columns
   * @param {number} rows
   * @returns {Promise<LensChecks>}
   */
  async lensChecks(picture, corners, columns, rows) {
    checkSize(picture);
    return this.viewer.ask('lens_checks', picture, this.number(picture), corners, columns, rows);
  }

  /**
   * What becomes of the checks of a grid whose corners were moved.
   * @param {PictureSource} picture
   * @param {Corner[]} checks
   * @param {Corner[]} from
   * @param {Corner[]} to
   * @param {number} columns
   * @param {number} rows
   * @returns {Promise<Corner[]>}
   */
  async follow(picture, checks, from, to, columns, rows) {
    checkSize(picture);
    return this.viewer.ask('follow', picture, this.number(picture), checks, from, to, columns, rows);
  }

  /**
   * Whether corner marks made on another picture of the series serve this one too.
   * @param {PictureSource} picture
   * @param {Corner[]} corners
   * @param {number} u_pixels standard uncertainty of a mark in x and in y
   * @param {number} columns
   * @param {number} rows
   * @returns {Promise<Standing>}
   */
  async checkSeries(picture, corners, u_pixels, columns, rows) {
    checkSize(picture);
    return this.viewer.ask('check_series', picture, this.number(picture), corners, u_pixels, columns, rows);
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
  batch(pairs, asked, each, signal) {
    return new Batch(pairs, asked, each, signal).run();
  }

  /** The number by which the worker knows a picture. @param {PictureSource} picture */
  number(picture) {
    const number = this.numbers.get(picture) ?? this.next;
    if (number === this.next) this.next += 1;
    this.numbers.set(picture, number);
    return number;
  }
}

/** Many pairs, measured in several workers at once. */
class Batch {
  /**
   * @param {TraceFiles[]} pairs
   * @param {Asked} asked
   * @param {(step: BatchStep) => void} each
   * @param {AbortSignal} [signal]
   */
  constructor(pairs, asked, each, signal) {
    this.pairs = pairs;
    this.asked = asked;
    this.each = each;
    this.signal = signal;
    this.all = pairs.length;
    this.atOnce = Math.min(navigator.hardwareConcurrency || 1, MOST_WORKERS, this.all);
    /** The first pair that nobody has been asked for. */
    this.next = 0;
    this.done = 0;
    /** @type {Set<EvidenceWorker>} */
    this.workers = new Set();
  }

  /** @returns {Promise<BatchEnd>} */
  async run() {
    const stop = () => this.stop();
    if (this.signal?.aborted) return { done: 0, stopped: true };
    this.signal?.addEventListener('abort', stop);
    try {
      await Promise.all(Array.from({ length: this.atOnce }, () => this.work()));
    } finally {
      this.signal?.removeEventListener('abort', stop);
      this.stop();
    }
    return { done: this.done, stopped: this.done < this.all };
  }

  stop() {
    this.next = this.all;
    for (const worker of this.workers) worker.end(refusal('stopped'));
  }

  /** Measures with one worker after another, as long as there are pairs. */
  async work() {
    /** @type {EvidenceWorker | undefined} */
    let worker;
    /** What is to be asked and what was, in the order in which it is answered. @type {PairRequest[]} */
    let open = [];
    while (open.length > 0 || this.next < this.all) {
      if (!worker || worker.ended) {
        worker = await this.start();
        // The one before came to its end over what was answered for; these had not their turn.
        open = open.map(({ places }) => ({ places }));
      }
      while (open.length < AHEAD && this.next < this.all) open.push({ places: this.some() });
      for (const request of open) request.answer ??= this.ask(worker, request.places);
      const [first] = open.splice(0, 1);
      if (!first) return;
      try {
        this.tell(first.places, await first.answer ?? []);
      } catch (error) {
        const refused = /** @type {ThrownInWords} */ (error);
        if (refused.kind === 'stopped') return;
        if (refused.kind === 'start') throw refused;
        // One by one they tell which it was.
        if (first.places.length > 1) open.unshift(...first.places.map((place) => ({ places: [place] })));
        else this.tell(first.places, [{ found: null, refused }]);
      }
    }
  }

  async start() {
    const worker = await EvidenceWorker.start();
    if (this.signal?.aborted) worker.end(refusal('stopped'));
    this.workers.add(worker);
    return worker;
  }

  /** The places of the next pairs that a worker is asked for at once: fewer towards the end, so that all end together. */
  some() {
    const first = this.next;
    const most = Math.min(MOST_TOGETHER, Math.ceil((this.all - first) / (2 * AHEAD * this.atOnce)));
    let bytes = 0;
    do {
      bytes += this.bytesOf(this.next);
      this.next += 1;
    } while (this.next < this.all && this.next - first < most && bytes + this.bytesOf(this.next) <= TOGETHER);
    return Array.from({ length: this.next - first }, (_, place) => first + place);
  }

  /** @param {number} place */
  bytesOf(place) {
    return (this.pairs[place] ?? []).reduce((sum, { file }) => sum + file.size, 0);
  }

  /** @param {EvidenceWorker} worker @param {number[]} places */
  ask(worker, places) {
    const pairs = places.map((place) => /** @type {TraceFiles} */ (this.pairs[place]));
    const answer = measureSome(worker, pairs, this.asked);
    // A refusal is looked at when it is their turn.
    answer.catch(() => {});
    return answer;
  }

  /** @param {number[]} places @param {PairOutcome[]} outcomes of each */
  tell(places, outcomes) {
    for (const [place, outcome] of outcomes.entries()) {
      if (this.signal?.aborted) return;
      this.done += 1;
      this.each({ index: places[place] ?? 0, ...outcome, done: this.done, all: this.all });
    }
  }
}

/**
 * Measures pairs by one reading of all their files; a single one by itself, so that a file that can't be read is named.
 * @param {EvidenceWorker} worker
 * @param {TraceFiles[]} pairs
 * @param {Asked} asked
 * @returns {Promise<PairOutcome[]>} of each
 */
async function measureSome(worker, pairs, asked) {
  const [first] = pairs;
  if (first && pairs.length === 1) {
    for (const { file } of first) checkSize(file);
    return [{ found: await worker.ask('measure', first, asked, false), refused: null }];
  }
  const whole = new Blob(pairs.flatMap((files) => files.map(({ file }) => file)));
  const parts = pairs.map((files) => files.map(({ file: { name, size }, layout }) => ({ name, size, layout })));
  const answers = await worker.ask('measure_all', whole, parts, asked);
  return answers.map(({ found, thrown }) => ({ found, refused: thrown && refusalOf(thrown) }));
}

/** @param {PictureSource} file a bitmap is no file, and may be as large as it is */
function checkSize(file) {
  if (file instanceof Blob && file.size > LARGEST) throw refusal('too_large', file instanceof File ? file.name : '');
}

/** @param {number} files */
function checkCount(files) {
  if (files > MOST_FILES) throw refusal('too_many', String(files));
}

/** The page's own. */
export const evidence = new EvidenceWorkers();
