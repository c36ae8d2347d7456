/**
 * Opening the picture of a row: with the marks of the notebook, or, where there are none yet, with proposed ones. The
 * corner marks of the picture before serve a series from a fixed camera, which is checked for each picture.
 */
import { messageOf } from './core.js';
import { keptFile } from './file-store.js';
import { corners, edgeMarks, gridMarks, point, proposedEdges, proposedGrid, Sheet } from './picture-sheet.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { MarkedBefore, Proposal, Standing } from './worker-types.js' */
/** @import { EvidenceView, Grid, Picture } from './types.js' */

/** Standard uncertainty of a mark by which it is judged whether a camera moved, pixels. */
const U_PIXELS = 1;

/** @typedef {{found: Proposal | undefined, refusal: string}} ProposalAnswer */
/** @typedef {Extract<EvidenceView, {kind: 'picture'}>} PictureEvidence */
/** @typedef {{grid: Grid, number: number}} Series a grid of the notebook, and the number of the row it was marked on */

/**
 * The picture of a row and its grid.
 * @param {Book} book
 * @param {number} row
 */
export function pictureOf(book, row) {
  const evidence = book.desk.evidence(row);
  return evidence?.kind === 'picture' ? evidence : undefined;
}

/** Whether both edges are marked. @param {Picture} picture */
export function isMarked({ a, b }) {
  return a.length > 0 && b.length > 0;
}

/**
 * The marks of the notebook.
 * @param {number} row
 * @param {PictureEvidence} evidence
 */
export function takenSheet(row, { picture, grid }) {
  if (!grid || !isMarked(picture)) return undefined;
  const { columns, rows, id } = grid;
  return new Sheet({ row, picture, columns, rows, gridId: id, marks: [...gridMarks(grid), ...edgeMarks(picture)] });
}

/**
 * The grid marked last on a picture of the same size.
 * @param {Book} book
 * @param {Picture} picture
 * @returns {Series | undefined}
 */
export function seriesFor(book, { width, height }) {
  const { delays, rows } = book.view;
  for (const { rows: users, problem } of [...delays.grids].reverse()) {
    const [first] = users;
    const evidence = first === undefined || problem !== null ? undefined : pictureOf(book, first);
    if (evidence?.grid && evidence.picture.width === width && evidence.picture.height === height) {
      return { grid: evidence.grid, number: rows.find(({ id }) => id === first)?.number ?? 0 };
    }
  }
  return undefined;
}

/**
 * The marked picture next before a row, or else after it: it tells A's edge from B's.
 * @param {Book} book
 * @param {number} row
 */
export function markedNear(book, row) {
  /** @type {PictureEvidence | undefined} */
  let near;
  let isBefore = true;
  for (const { id, evidence: kind } of book.view.rows) {
    if (id === row) isBefore = false;
    const evidence = kind === 'picture' && id !== row ? pictureOf(book, id) : undefined;
    if (evidence?.grid && isMarked(evidence.picture) && (isBefore || !near)) near = evidence;
  }
  return near;
}

export class Proposer {
  /** @param {EvidenceWorkers} evidence */
  constructor(evidence) {
    this.evidence = evidence;
    /** What was found on a picture, by its hash and the size of its grid, with what told A from B. @type {Map<string, ProposalAnswer & {by: string}>} */
    this.known = new Map();
    /** What is to be said of the marks of a sheet. @type {WeakMap<Sheet, string[]>} */
    this.said = new WeakMap();
    /** Sheets with marks that a person set and has yet to accept, by their rows. @type {Map<number, Sheet>} */
    this.left = new Map();
  }

  /** Keeps a sheet with marks that a person set, while another picture is open. @param {Sheet | undefined} sheet @param {number} next the row of that */
  keep(sheet, next) {
    if (sheet && sheet.row !== next && sheet.marks.some(({ state }) => state === 'set')) this.left.set(sheet.row, sheet);
  }

  /**
   * A sheet with proposed marks, or as it was left, and what is to be said of them.
   * @param {number} row
   * @param {Picture} picture
   * @param {Blob} blob
   * @param {{columns: number, rows: number}} size of a grid that is new
   * @param {Series | undefined} series
   * @param {PictureEvidence | undefined} marked a picture that tells A's edge from B's
   */
  async propose(row, picture, blob, size, series, marked) {
    const left = this.left.get(row);
    this.left.delete(row);
    if (left?.picture.file.sha256 === picture.file.sha256) return { said: this.said.get(left) ?? [], sheet: left };
    const before = marked && await this.before(marked);
    const standing = series && await this.standing(blob, series.grid);
    const serves = series !== undefined && (standing === undefined || standing.holds);
    const { columns, rows } = serves ? series.grid : size;
    const { found, refusal } = await this.found(picture, blob, columns, rows, before);
    const edges = proposedEdges(found, picture);
    const said = [
      ...(series ? [gridText(standing, series.number)] : []),
      refusal ? say('pictures-not-found', { why: refusal }) : say('pictures-proposed'),
      ...(found?.doubts ?? []).map((doubt) => say(`pictures-doubts-${doubt}`)),
      ...(refusal ? [] : edges.filter(({ state }) => state === 'sought')
        .map(({ kind }) => say('pictures-no-edge', { name: say(`pictures-marks-${kind}`) }))),
    ];
    const grid = serves ? gridMarks(series.grid) : proposedGrid(found, picture);
    const sheet = new Sheet({ row, picture, columns, rows, gridId: serves ? series.grid.id : 0, marks: [...grid, ...edges] });
    this.said.set(sheet, said);
    return { said, sheet };
  }

  /**
   * How the grid of a picture lies beside marks made on another; nothing where it is not seen.
   * @param {Blob} blob
   * @param {Grid} grid
   * @returns {Promise<Standing | undefined>}
   */
  async standing(blob, grid) {
    try {
      return await this.evidence.checkSeries(blob, corners(grid), U_PIXELS, grid.columns, grid.rows);
    } catch {
      return undefined;
    }
  }

  /**
   * What was found on a marked picture, with its marks; nothing where it is not at hand.
   * @param {PictureEvidence} marked
   * @returns {Promise<MarkedBefore | undefined>}
   */
  async before({ picture, grid }) {
    const [a, b] = [picture.a[0], picture.b[0]];
    if (!grid || !a || !b) return undefined;
    const { columns, rows } = grid;
    let edges = this.known.get(keyOf(picture, columns, rows))?.found?.edges;
    if (!edges) {
      const kept = await keptFile(picture.file.sha256).catch(() => undefined);
      edges = kept && (await this.found(picture, kept.blob, columns, rows)).found?.edges;
    }
    return edges && { edges, a: point(a), b: point(b) };
  }

  /**
   * @param {Picture} picture
   * @param {Blob} blob
   * @param {number} columns
   * @param {number} rows
   * @param {MarkedBefore} [before]
   * @returns {Promise<ProposalAnswer>}
   */
  async found(picture, blob, columns, rows, before) {
    const by = JSON.stringify(before ?? null);
    const known = this.known.get(keyOf(picture, columns, rows));
    if (known?.by === by) return known;
    try {
      const answer = { found: await this.evidence.propose(blob, columns, rows, before), refusal: '', by };
      this.known.set(keyOf(picture, columns, rows), answer);
      return answer;
    } catch (error) {
      return { found: undefined, refusal: messageOf(error) };
    }
  }
}

/** @param {Picture} picture @param {number} columns @param {number} rows */
function keyOf({ file }, columns, rows) {
  return `${file.sha256} ${columns} ${rows}`;
}

/**
 * How a picture's grid lies beside the corner marks of a row before.
 * @param {{holds: boolean} | undefined} standing nothing where no grid was seen
 * @param {number} n the row's number
 */
function gridText(standing, n) {
  if (!standing) return say('pictures-unseen', { n });
  return standing.holds ? say('pictures-serves', { n }) : say('pictures-moved', { n });
}
