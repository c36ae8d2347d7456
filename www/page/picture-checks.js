/**
 * Checks of the lens beside corners that are moved: those that nobody set go with the corners, or are left out where no grid
 * is seen.
 */
import { alike } from './dom.js';
import { checkPlaces, corners, gridChecks } from './picture-sheet.js';
import { pictureOf } from './picture-series.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { Board } from './picture-board.js' */
/** @import { Sheet } from './picture-sheet.js' */
/** @import { Grid, Spot } from './types.js' */

/** @typedef {{blob: () => Blob | undefined, isProposed: () => boolean, say: (text: string) => void}} OpenPicture the open picture */

export class Checks {
  /** @param {Book} book @param {EvidenceWorkers} evidence @param {Board} board @param {OpenPicture} open */
  constructor(book, evidence, board, open) {
    this.book = book;
    this.evidence = evidence;
    this.board = board;
    this.open = open;
    /** Ends when checks stand where the corners have put them. @type {Promise<void>} */
    this.following = Promise.resolve();
    /** Counts moves of corners, so that what comes late is told apart. */
    this.moves = 0;
    /** The corners with which the checks of a grid last stood. @type {{id: number, corners: Grid['corners']} | undefined} */
    this.stood = undefined;
  }

  /**
   * Sees to the checks after a corner has moved, once what is under way has ended, and only if it was the last to move.
   * @param {(isLast: () => boolean) => Promise<void>} does
   */
  afterMove(does) {
    this.moves += 1;
    const { moves } = this;
    const isLast = () => moves === this.moves;
    this.following = this.following.then(() => (isLast() ? does(isLast) : undefined));
  }

  /** Looks for them where the corners put them that a person is about to accept. @param {Sheet} sheet */
  find(sheet) {
    this.afterMove(async (isLast) => {
      const grid = sheet.grid();
      const blob = this.open.blob();
      // Corners that fix no plane have no checks.
      const found = blob && await this.evidence
        .lensChecks(blob, corners(grid), grid.columns, grid.rows).catch(() => undefined);
      if (!isLast() || sheet !== this.board.sheet || !this.open.isProposed()) return;
      sheet.layChecks(found);
      this.board.show(sheet, this.board.bitmap);
    });
  }

  /**
   * Lets those of a grid of the notebook go with a corner that was moved.
   * @param {Sheet} sheet
   * @param {Grid} grid
   * @param {{index: number, at: Spot}} was the corner before
   */
  follow({ row, picture }, grid, { index, at }) {
    const { id, columns, rows, checks = [] } = grid;
    const blob = this.open.blob();
    if (this.stood?.id !== id) {
      const before = grid.corners.map((corner, place) => (place === index ? at : corner));
      this.stood = { id, corners: /** @type {Grid['corners']} */ (before) };
    }
    const from = corners({ ...grid, corners: this.stood.corners });
    if (!blob || checks.length === 0) return;
    this.afterMove(async (isLast) => {
      const found = await this.evidence
        .follow(blob, checkPlaces(grid), from, corners(grid), columns, rows).catch(() => undefined);
      if (!isLast()) return;
      this.stood = undefined;
      const moved = found && gridChecks(found, picture);
      if (!moved || !alike(pictureOf(this.book, row)?.grid, grid) || alike(moved, checks)) return;
      this.book.edit({ set_grid: { ...grid, checks: moved } });
      this.open.say(say('pictures-checks-moved', { n: moved.length }));
    });
  }
}
