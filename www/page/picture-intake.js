/**
 * From files to rows with pictures: each picture is scaled down and kept, and joins the row with the reading that its
 * name tells, or begins one. A picture that is refused stops none of the others.
 */
import { byName } from './file-picker.js';
import { keepFile } from './file-store.js';
import { messageOf } from './core.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { Named } from './worker-types.js' */
/** @import { Picture, RowView, View } from './types.js' */

/** The grid of a picture on which none is marked yet; no grid has this number. */
const NO_GRID = 0;

/** @typedef {{named: Named, picture: Picture, lasts: boolean}} Kept lasts: it will outlive the page */
/** @typedef {Kept & {first: boolean}} TakenIn first: of all that were chosen */
/** @typedef {{rows: number[], refused: string[], last: boolean}} IntakeOutcome rows that got a picture; why others did not */

/**
 * Takes pictures into the notebook, with one edit.
 * @param {Book} book
 * @param {EvidenceWorkers} evidence
 * @param {File[]} files
 * @param {number | undefined} into the row for the first of them
 * @param {(done: number, all: number) => void} progress
 * @returns {Promise<IntakeOutcome>}
 */
export async function takeIn(book, evidence, files, into, progress) {
  const { desk } = book;
  const view = book.current();
  const sorted = [...files].sort(byName);
  /** @type {TakenIn[]} */
  const taken = [];
  /** @type {string[]} */
  const refused = [];
  for (const [index, file] of sorted.entries()) {
    progress(index, sorted.length);
    try {
      taken.push({ ...await take(evidence, file, view), first: index === 0 });
    } catch (error) {
      refused.push(messageOf(error));
    }
  }
  progress(sorted.length, sorted.length);
  // Another notebook may have been opened meanwhile.
  if (book.desk !== desk) return { rows: [], refused: [say('files-other-notebook')], last: true };
  const once = again(book, taken);
  refused.push(...once.refused);
  // What was asked about the row was asked for the first file: where that is refused, no other has its place.
  const all = once.fresh.map(({ named: { rail, reading }, picture, first }) => (
    { row: first ? into ?? null : null, rail, reading, evidence: { picture } }));
  const done = all.length > 0 && book.takeEvidence(all);
  const pictures = picturesOf(book);
  const rows = once.fresh.flatMap(({ picture }) => pictures.get(picture.file.sha256)?.id ?? []);
  return { rows: done ? rows : [], refused, last: taken.every(({ lasts }) => lasts) };
}

/**
 * What is to be asked before the first of some pictures goes to a row: it has evidence already, or another reading than the
 * picture's name tells. Nothing where it may go there.
 * @param {Book} book
 * @param {EvidenceWorkers} evidence
 * @param {File[]} files
 * @param {number} into
 */
export async function questionFor(book, evidence, files, into) {
  const view = book.current();
  const row = view.rows.find(({ id }) => id === into);
  const [file] = [...files].sort(byName);
  if (!row || !file) return '';
  const { name } = file;
  const held = book.desk.evidence(into);
  if (held && (held.kind !== 'picture' || held.picture.a.length > 0)) return say('pictures-replace', { name, n: row.number });
  const [named] = await evidence.railReadings([name], view);
  const { text, unit } = row.cells.reading;
  // In doubt it asks: what is the same in another unit is not looked into here.
  if (!named?.reading || ['', named.reading].includes(text) || `${text} ${unit}` === named.reading) return '';
  return say('pictures-other-reading', { name, n: row.number, reading: text });
}

/** The rows that have a picture, each by its SHA-256. @param {Book} book @returns {Map<string, RowView>} */
function picturesOf(book) {
  const rows = new Map();
  for (const row of book.current().rows.filter(({ evidence }) => evidence === 'picture')) {
    const evidence = book.desk.evidence(row.id);
    if (evidence?.kind === 'picture') rows.set(evidence.picture.file.sha256, row);
  }
  return rows;
}

/**
 * Leaves out pictures that a row has already, or that were chosen twice: the same picture again is no other reading.
 * @param {Book} book
 * @param {TakenIn[]} taken
 */
function again(book, taken) {
  /** Row numbers by the picture's SHA-256; 0 for the pictures chosen now. */
  const known = new Map([...picturesOf(book)].map(([sha256, { number }]) => [sha256, number]));
  /** @type {string[]} */
  const refused = [];
  const fresh = taken.filter(({ picture: { file } }) => {
    const number = known.get(file.sha256);
    if (number !== undefined) refused.push(number > 0
      ? say('pictures-twice', { name: file.name, n: number }) : say('pictures-twice-chosen', { name: file.name }));
    else known.set(file.sha256, 0);
    return number === undefined;
  });
  return { fresh, refused };
}

/** @param {EvidenceWorkers} evidence @param {File} file @param {View} view @returns {Promise<Kept>} */
async function take(evidence, file, view) {
  const { stored, width, height, lasts } = await keepPicture(evidence, file);
  const [named] = await evidence.railReadings([file.name], view);
  return {
    named: named ?? { reading: null, rail: null, channel: null },
    picture: { file: stored, width, height, grid: NO_GRID, a: [], b: [] },
    lasts,
  };
}

/**
 * Scales a picture down, freed of what the camera wrote beside it, and keeps it; `lasts`: it will outlive the page.
 * @param {EvidenceWorkers} evidence
 * @param {File} file
 */
export async function keepPicture(evidence, file) {
  const { name } = file;
  const { blob, width, height, sha256 } = await evidence.shrinkPicture(file);
  try {
    const lasts = await keepFile(sha256, { blob, name });
    return { stored: { sha256, name, bytes: blob.size }, width, height, lasts };
  } catch (error) {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    const why = messageOf(error);
    throw { kind: 'store', message: full ? say('pictures-full', { name }) : say('report-not-kept', { name, why }) };
  }
}
