/**
 * The open notebook: takes edits, and has every part of the page redrawn from the view that follows, at most
 * once a frame. It holds no state but the core's log.
 */
import { core, messageOf } from './core.js';
import { alike } from './dom.js';
import { flushAll } from './typing.js';

/** @import { Cell, Desk, Edit, Part, Taken, View } from './types.js' */

export class Book {
  constructor() {
    /** @type {Desk} */
    this.desk = core.Desk.blank();
    /** @type {View} */
    this.view = this.desk.view();
    /** @type {Part[]} */
    this.parts = [];
    /** Called after each change of the log. @type {() => void} */
    this.onChange = () => {};
    /** Called when an edit was refused. @type {(message: string) => void} */
    this.onRefusal = () => {};
    /** Called after a pasted block was taken: whether its decimal marks were turned, and the headings left out.
     * @type {(turned: boolean, headings: string) => void} */
    this.onPasted = () => {};
    /** Another tab writes; this one reads along. */
    this.readOnly = false;
    /** A redrawing waits for its turn. */
    this.due = false;
    /** The frame that comes, after a redrawing. */
    this.frame = 0;
  }

  /**
   * Puts another notebook on the desk.
   * @param {Desk} desk
   */
  put(desk) {
    this.desk = desk;
    this.redraw();
  }

  /** @param {Part} part */
  add(part) {
    this.parts.push(part);
  }

  /**
   * @param {Edit} edit
   * @returns {boolean} whether it was taken
   */
  edit(edit) {
    return this.change(() => this.desk.apply(edit, now()));
  }

  /**
   * Fills cells from a block copied out of a spreadsheet.
   * @param {number | undefined} row
   * @param {Cell} cell
   * @param {string} block
   */
  paste(row, cell, block) {
    this.change(() => {
      const [turned, headings] = this.desk.paste(row, cell, block, now());
      this.onPasted(turned, headings);
    });
  }

  /**
   * Puts measured traces into rows.
   * @param {Taken[]} all
   */
  takeTraces(all) {
    return this.change(() => this.desk.take_traces(all, now()));
  }

  undo() {
    flushAll();
    if (this.desk.can_undo()) this.edit('undo');
  }

  redo() {
    flushAll();
    if (this.desk.can_redo()) this.edit('redo');
  }

  /** A number that no rail, setting or shared error of this notebook has had: the log only grows. */
  newNumber() {
    const { rails, settings, shared, entries } = this.current();
    return Math.max(entries, ...[...rails, ...settings, ...shared].map((item) => item.id)) + 1;
  }

  /** The view as of now; what waits for its turn is drawn first. */
  current() {
    if (this.due) this.draw();
    return this.view;
  }

  /** Redraws once the work in hand is done, so that it need not wait for the frame; but once in a frame only. */
  redraw() {
    if (this.due) return;
    this.due = true;
    if (!this.frame) queueMicrotask(() => this.drawIfDue());
  }

  drawIfDue() {
    if (this.due) this.draw();
  }

  /** Redraws now. */
  draw() {
    this.due = false;
    this.frame ||= requestAnimationFrame(() => {
      this.frame = 0;
      this.drawIfDue();
    });
    const news = this.desk.news();
    const known = this.view;
    this.view = {
      ...news,
      rows: news.rows.map((row, place) => (row ? { ...known.rows[place], ...row } : known.rows[place])),
      // Kept as it was, so that a row need not compare all that a notice holds.
      notices: news.notices.map((notice) => known.notices.find((old) => alike(old, notice)) ?? notice),
    };
    for (const part of this.parts) part.show(this.view);
  }

  /** @param {() => void} work */
  change(work) {
    if (this.readOnly) return false;
    try {
      work();
    } catch (error) {
      this.onRefusal(messageOf(error));
      this.redraw();
      return false;
    }
    this.onChange();
    this.redraw();
    return true;
  }
}

/** The time as the page's clock says it (RFC 3339). */
export function now() {
  return new Date().toISOString();
}
