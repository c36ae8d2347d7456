/**
 * Those who read the notebooks of a class: for each core of the machine a worker that unpacks what was handed in, and one
 * with the core that recomputes it. Nothing of the files stays here but the rows that came of them.
 */
import { compiledCore, messageOf } from './core.js';
import { say } from './words.js';
import { EvidenceWorker, refusalOf } from './worker-slot.js';
import { startWorker, workerHere } from './wasm.js';

/** @import { ClassRow } from './class-row.js' */
/** @import { Value } from './types.js' */
/** @import { Feedback, Key } from './worker-types.js' */
/** @import { Found, ThrownInWords } from './evidence-types.js' */

/**
 * A notebook that was read.
 * @typedef {{text: string, line: string | undefined}} Text
 * @typedef {{texts: Text[]}} Recompute what a worker with the core is asked
 * @typedef {{row: ClassRow, stored: string | undefined} | {refused: Value}} RowOutcome `stored`: the table of its line that came with it
 * @typedef {{rows: RowOutcome[]} | {why: unknown}} Recomputed
 */
/**
 * A file that was handed in: by itself, or inside another.
 * @typedef {{name: string, file: Blob | undefined, inside: Handed | undefined}} Handed
 * @typedef {{handed: Handed, row: ClassRow | undefined, stored: string | undefined, refused: string}} ClassEntry `refused` is empty
 * where there is a row
 * @typedef {{handed: Handed, place: number[]}} Waiting `place`: of the file among all, then of that in it
 * @typedef {{key: Key} | {feedback: Feedback}} TeachersFile
 */

/** The most pairs, however many cores there are. */
const MOST_PAIRS = 4;
/** The most files that are read at once, and about how many bytes. */
const MOST_TOGETHER = 24;
const TOGETHER = 8 << 20;
/** How deep zips may lie in one another. */
const DEEPEST = 2;

export class ClassPool {
  /** @param {(done: number, all: number) => void} told how many files were read, and are to be read */
  constructor(told) {
    this.told = told;
    this.stopped = false;
    this.done = 0;
    this.all = 0;
    /** What waits. @type {Waiting[]} */
    this.queue = [];
    /** The keys to data sets among them. @type {Key[]} */
    this.keys = [];
    /** What a teacher says of notebooks, among them. @type {Feedback[]} */
    this.feedback = [];
    /** The files in which these stand. @type {(Waiting & {found: TeachersFile})[]} */
    this.teachers = [];
    /** What came of each. @type {{place: number[], entry: ClassEntry}[]} */
    this.found = [];
    /** @type {WorkerPair[]} */
    this.pairs = [];
  }

  /**
   * Reads files; what is in them takes their place. Refused only where no worker can be had.
   * @param {Handed[]} files
   * @returns {Promise<ClassEntry[]>}
   */
  async read(files) {
    this.queue = files.map((handed, place) => ({ handed, place: [place] }));
    this.all = files.length;
    try {
      // Files that lie in others come in the next round, so that all pairs have some of them.
      while (this.queue.length > 0 && !this.stopped) {
        const round = this.queue.reverse();
        this.queue = [];
        const count = Math.min(navigator.hardwareConcurrency || 1, MOST_PAIRS, round.length);
        while (this.pairs.length < count) this.pairs.push(new WorkerPair());
        await Promise.all(this.pairs.map((pair) => this.work(pair, round)));
      }
    } finally {
      this.end();
    }
    this.sortTeachers();
    return this.found.sort((one, other) => inOrder(one.place, other.place)).map(({ entry }) => entry);
  }

  /** Refuses what should be a teacher's and came in one zip with notebooks: whoever handed one of these in may have written it. */
  sortTeachers() {
    const handedIn = new Set(this.found.flatMap(({ entry }) => (entry.row ? [outermost(entry.handed)] : [])));
    for (const { handed, place, found } of this.teachers) {
      if (handedIn.has(outermost(handed))) this.found.push({ place, entry: { handed, row: undefined, stored: undefined, refused: say('class-teachers') } });
      else if ('key' in found) this.keys.push(found.key);
      else this.feedback.push(found.feedback);
    }
  }

  /** Ends the work; what is in hand is let go. */
  stop() {
    this.stopped = true;
    this.end();
  }

  end() {
    for (const pair of this.pairs) pair.end();
  }

  /** Has a pair work off what waits, from its end on. @param {WorkerPair} pair @param {Waiting[]} round */
  async work(pair, round) {
    while (round.length > 0 && !this.stopped) {
      const some = [];
      let bytes = 0;
      const most = Math.min(MOST_TOGETHER, Math.ceil(round.length / (2 * this.pairs.length)));
      for (let next = round.at(-1); next && some.length < most; next = round.at(-1)) {
        bytes += next.handed.file?.size ?? 0;
        if (some.length > 0 && bytes > TOGETHER) break;
        some.push(next);
        round.pop();
      }
      await this.readSome(pair, some);
    }
  }

  /** @param {WorkerPair} pair @param {Waiting[]} some */
  async readSome(pair, some) {
    /** @type {(Waiting & {text: Text})[]} */
    const texts = [];
    for (const [index, found] of (await unpacked(pair, some.map(({ handed }) => handed))).entries()) {
      const { handed, place } = /** @type {Waiting} */ (some[index]);
      if ('refused' in found) this.take(handed, place, { refused: found.refused });
      else if ('files' in found) this.unfold(handed, place, found.files);
      else if ('key' in found || 'feedback' in found) this.takeBeside({ handed, place, found });
      else texts.push({ handed, place, text: found });
    }
    const rows = await recomputed(pair, texts.map(({ text }) => text));
    for (const [index, { handed, place }] of texts.entries()) this.take(handed, place, rows[index] ?? {});
    if (!this.stopped) this.told(this.done, this.all);
  }

  /** @param {Handed} handed @param {number[]} place @param {{row?: ClassRow, stored?: string | undefined, refused?: string}} outcome */
  take(handed, place, { row, stored, refused = '' }) {
    if (this.stopped) return;
    this.done += 1;
    // A file that lies in another is unpacked again when it is asked for.
    const file = handed.inside ? undefined : handed.file;
    this.found.push({ place, entry: { handed: { ...handed, file }, row, stored, refused } });
  }

  /** Takes what is no notebook itself. @param {Waiting & {found: TeachersFile}} file */
  takeBeside(file) {
    this.done += 1;
    this.teachers.push(file);
  }

  /** @param {Handed} handed @param {number[]} place @param {[string, Uint8Array<ArrayBuffer>][]} files */
  unfold(handed, place, files) {
    if (depth(handed) >= DEEPEST) {
      this.take(handed, place, { refused: say('class-deep') });
      return;
    }
    this.all += files.length - 1;
    const inside = { ...handed, file: handed.inside ? undefined : handed.file };
    for (const [index, [name, bytes]] of files.entries()) {
      this.queue.push({ handed: { name, file: new Blob([bytes]), inside }, place: [...place, index] });
    }
  }
}

/** @param {number[]} one @param {number[]} other */
function inOrder(one, other) {
  const apart = one.findIndex((place, index) => place !== other[index]);
  return (one[apart] ?? 0) - (other[apart] ?? 0);
}

/** In how many files one lies. @param {Handed} handed @returns {number} */
function depth({ inside }) {
  return inside ? 1 + depth(inside) : 0;
}

/** The file in which one lies that was chosen. @param {Handed} handed @returns {Handed} */
function outermost(handed) {
  return handed.inside ? outermost(handed.inside) : handed;
}

/** The path of a file through those in which it lies. @param {Handed} handed @returns {string} */
export function pathOf({ name, inside }) {
  return inside ? `${pathOf(inside)}/${name}` : name;
}

/** A file that was handed in, as it is. @param {Handed} handed @returns {Promise<File>} */
export async function fileOf(handed) {
  const { name, file, inside } = handed;
  const last = name.split('/').at(-1) ?? name;
  if (file || !inside) return new File(file ? [file] : [], last);
  const pair = new WorkerPair();
  try {
    const [found] = await unpacked(pair, [{ ...inside, file: await fileOf(inside) }]);
    const bytes = found && 'files' in found ? found.files.find(([one]) => one === name)?.[1] : undefined;
    return new File(bytes ? [bytes] : [], last);
  } finally {
    pair.end();
  }
}

/** The text of the notebook in a file. @param {File} file */
export async function textIn(file) {
  const pair = new WorkerPair();
  try {
    const [found] = await unpacked(pair, [{ name: file.name, file, inside: undefined }]);
    if (found && 'text' in found) return found.text;
    throw new Error(found && 'refused' in found ? found.refused : '');
  } finally {
    pair.end();
  }
}

/** One worker that unpacks, and one that recomputes; each started when it is needed, and anew when it has ended. */
class WorkerPair {
  constructor() {
    /** @type {EvidenceWorker | undefined} */
    this.reader = undefined;
    /** @type {Worker | undefined} */
    this.core = undefined;
    this.address = '';
    this.ended = false;
    /** Ends the wait for an answer of the core's worker. */
    this.letGo = () => {};
  }

  async unpacker() {
    if (!this.reader || this.reader.ended) this.reader = await EvidenceWorker.start();
    if (this.ended) this.reader.end({ kind: 'stopped', message: '' });
    return this.reader;
  }

  /** @param {Text[]} texts @returns {Promise<RowOutcome[]>} refused where the worker came to a bad end */
  async recompute(texts) {
    const core = this.core ?? await this.startCore();
    return new Promise((resolve, reject) => {
      this.letGo = () => reject(new Error(''));
      const fail = (/** @type {unknown} */ why) => {
        core.terminate();
        this.core = undefined;
        reject(new Error(messageOf(why)));
      };
      core.onmessage = ({ data }) => {
        const answer = /** @type {Recomputed} */ (data);
        if ('rows' in answer) resolve(answer.rows);
        else fail(answer.why);
      };
      core.onmessageerror = () => fail('');
      core.onerror = (event) => {
        event.preventDefault();
        fail(event.message);
      };
      core.postMessage({ texts });
    });
  }

  async startCore() {
    this.address ||= await workerHere(globalThis.SLOPE_TRIALS_WORKER, 'trials-worker.js');
    if (this.ended) throw new Error('');
    this.core = startWorker(this.address);
    this.core.postMessage({ core: compiledCore() });
    return this.core;
  }

  end() {
    this.ended = true;
    this.reader?.end({ kind: 'stopped', message: '' });
    this.core?.terminate();
    this.letGo();
    if (this.address.startsWith('blob:')) URL.revokeObjectURL(this.address);
  }
}

/**
 * Files unpacked: several by one reading of all; where that fails, one by one, so that the one is known.
 * @param {WorkerPair} pair
 * @param {Handed[]} some
 * @returns {Promise<(Found | {refused: string})[]>}
 */
async function unpacked(pair, some) {
  if (pair.ended) return some.map(() => ({ refused: '' }));
  const files = some.map(({ file }) => file ?? new Blob());
  const parts = some.map(({ name }, index) => ({ name, size: files[index]?.size ?? 0 }));
  try {
    const reader = await pair.unpacker();
    const answers = await reader.ask('hand_in', new Blob(files), parts);
    return answers.map(({ found, thrown }) => found ?? { refused: thrown ? refusalOf(thrown).message : '' });
  } catch (error) {
    const refused = /** @type {ThrownInWords} */ (error);
    if (refused.kind === 'start') throw refused;
    if (some.length === 1) return [{ refused: refused.message }];
    const each = [];
    for (const one of some) each.push(...await unpacked(pair, [one]));
    return each;
  }
}

/**
 * Rows of notebooks; where the core comes to a bad end, one by one, so that the others stand.
 * @param {WorkerPair} pair
 * @param {Text[]} texts
 * @returns {Promise<{row?: ClassRow, stored?: string | undefined, refused?: string}[]>}
 */
async function recomputed(pair, texts) {
  if (texts.length === 0 || pair.ended) return [];
  try {
    return (await pair.recompute(texts)).map((one) => ('row' in one ? one : { refused: messageOf({ message: one.refused }) }));
  } catch {
    if (texts.length === 1) return [{ refused: say('class-crashed') }];
    const each = [];
    for (const text of texts) each.push(...await recomputed(pair, [text]));
    return each;
  }
}
