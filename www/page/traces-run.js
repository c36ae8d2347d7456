/**
 * One measurement of a run: every pair of trace files, in workers, then once more by the one fixed level that all rows
 * share, and the files kept for another look.
 */
import { keepFile, keptFile } from './file-store.js';
import { messageOf } from './core.js';
import { alike } from './dom.js';
import { say, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { Layout, LevelOf, Named } from './worker-types.js' */
/** @import { Asked, MeasuredFiles, ThrownInWords, TraceFile, TraceFiles } from './evidence-types.js' */
/** @import { EvidenceView, TakenEvidence, View } from './types.js' */

/** Files larger than this, in bytes, are not kept in the browser. */
const KEPT_AT_MOST = 8 * 1024 * 1024;

/** A pair to be measured: for a row already, or where its name tells. @typedef {{files: TraceFiles, row?: number, named?: Named}} Job */
/** @typedef {{job: Job, found: MeasuredFiles}} FoundTraces */
/** @typedef {{found: FoundTraces[], refused: string[], stopped: boolean, level: number | null, level_of: LevelOf}} RunOutcome */

/** @param {EvidenceView | null} evidence */
function tracesIn(evidence) {
  return evidence?.kind === 'traces' ? evidence.traces : undefined;
}

/**
 * The traces of a row as the notebook holds them.
 * @param {Book} book
 * @param {number} row
 */
export function tracesOf(book, row) {
  return tracesIn(book.desk.evidence(row));
}

/**
 * The files of a row from where they are kept, with the layout and the level by which they were measured.
 * @param {Book} book
 * @param {number} row
 * @returns {Promise<{files: TraceFiles | undefined, missing: string, level: number | null}>} no files where one is missing, or
 *   how it is set out can't be read any more: both are mended by adding it again
 */
export async function filesOf(book, row) {
  const traces = tracesOf(book, row);
  /** @type {TraceFile[]} */
  const files = [];
  let level = null;
  for (const [place, { sha256, name }] of (traces?.files ?? []).entries()) {
    const found = await keptFile(sha256);
    const stated = traces?.layouts?.[place];
    // The first builds kept a layout beside the file alone.
    const layout = stated ? layoutIn(stated) : found?.layout;
    if (!found || layout === null) return { files: undefined, missing: name, level };
    level = found.level ?? null;
    files.push({ file: new File([found.blob], name), layout });
  }
  const [a, b] = files;
  if (!a) return { files: undefined, missing: '', level };
  return { files: b ? [a, b] : [a], missing: '', level };
}

/** A layout as a notebook keeps it. @param {string} text @returns {Layout | null} none where it can't be read */
function layoutIn(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/**
 * Measures all pairs.
 * @param {EvidenceWorkers} evidence
 * @param {Job[]} jobs
 * @param {Pick<View, 'delays' | 'decimal_mark'>} wishes
 * @param {(done: number, all: number, again: boolean) => void} progress
 * @param {AbortSignal} signal
 * @returns {Promise<RunOutcome>}
 */
export async function measureRun(evidence, jobs, { delays: { level: stated, fraction }, decimal_mark: decimal }, progress, signal) {
  /** @type {string[]} */
  const refused = [];
  /**
   * @param {Job[]} some
   * @param {Asked} asked
   * @param {boolean} again
   */
  const pass = async (some, asked, again) => {
    /** @type {(MeasuredFiles | undefined)[]} */
    const results = [];
    const { stopped } = await evidence.batch(some.map(({ files }) => files), asked, (step) => {
      if (step.found?.measured.evidence) results[step.index] = step.found;
      else refused.push(tell(step.found?.measured.refusal) || named(some[step.index], step.refused));
      progress(step.done, step.all, again);
    }, signal);
    const found = some.flatMap((job, index) => {
      const result = results[index];
      return result ? [{ job, found: result }] : [];
    });
    return { found, stopped };
  };
  /** @type {LevelOf} */
  const first = stated === null ? 'pair' : 'stated';
  const once = await pass(jobs, { level: stated, level_of: first, fraction, points: 0, decimal }, false);
  const outcome = { ...once, refused, level: stated, level_of: first };
  if (stated !== null || once.stopped || once.found.length === 0) return outcome;
  const level = await evidence.commonLevel(once.found.flatMap(({ found }) => found.measured.level ?? []));
  const all = once.found.map(({ job }) => job);
  const twice = await pass(all, { level, level_of: 'run', fraction, points: 0, decimal }, true);
  // What was not measured a second time stays as the first time found it.
  if (twice.stopped) return { ...outcome, stopped: true };
  return { ...twice, refused, level, level_of: 'run' };
}

/** @param {Job | undefined} job @param {ThrownInWords | null} refused */
function named(job, refused) {
  const message = refused?.message ?? '';
  const [first] = job?.files ?? [];
  return first && !job?.files.some(({ file }) => message.includes(file.name))
    ? say('traces-of-file', { name: first.file.name, why: message }) : message;
}

/**
 * What goes into the notebook: each row's traces, but for rows that hold just that already.
 * @param {Book} book
 * @param {FoundTraces[]} found
 * @returns {TakenEvidence[]}
 */
export function takenFrom(book, found) {
  return found.flatMap(({ job: { row, named: told }, found: { measured } }) => {
    const traces = measured.evidence;
    if (!traces || (row !== undefined && alike(tracesOf(book, row), traces))) return [];
    const evidence = { traces };
    return [row === undefined ? { rail: told?.rail ?? null, reading: told?.reading ?? null, evidence } : { row, evidence }];
  });
}

/**
 * Keeps the files of what was measured.
 * @param {RunOutcome} outcome
 * @returns {Promise<string[]>} what could not be kept, in words
 */
export async function keepFiles({ found, level }) {
  /** @type {string[]} */
  const lost = [];
  let large = 0;
  let last = true;
  for (const { job: { files }, found: { files: held } } of found) {
    for (const [place, { file, layout }] of files.entries()) {
      const { sha256 = '', name = '' } = held[place] ?? {};
      if (file.size > KEPT_AT_MOST) {
        large += 1;
        if (large === 1) lost.push(say('traces-not-kept', { name, why: say('traces-too-large-to-keep') }));
        continue;
      }
      try {
        const about = { blob: new Blob([file]), name, level, ...(layout && { layout }) };
        last = await keepFile(sha256, about) && last;
      } catch (error) {
        // Where one finds no room, the next will not either.
        return [...lost, say('traces-not-kept', { name, why: messageOf(error) })];
      }
    }
  }
  return [...(large > 1 ? [say('traces-many-too-large', { n: large })] : lost), ...(last ? [] : [say('only-here')])];
}
