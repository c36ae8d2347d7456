/**
 * The open notebook: takes edits, and has every part of the page redrawn from the view that follows, at most
 * once a frame. It holds no state but the core's log.
 */
import { core, messageOf } from './core.js';
import { flowInHand, flushAll } from './typing.js';

/** @import { Cell, Edit, TakenEvidence, UncertaintyKind, UncertaintyOf, View } from './types.js' */
/** @import { Desk } from './slope_of_light.js' */

/** A part of the page that is redrawn from the view. @typedef {{show(view: View): void}} Part */

/** How long after an edit checks and notices are computed, and what is not in sight is redrawn, ms: not in the way of
 * the line that one watches. */
const REST = 100;
/** How long drawing waits for a press to end, at most, ms. */
const PRESS = 500;

export class Book {
  constructor() {
    /** @type {Desk} */
    this.desk = core.Desk.blank();
    /** @type {View} */
    this.view = { ...this.desk.news().view, rows: [] };
    /** The parts, whether each is in sight, and the view that it shows.
     * @type {{part: Part, isInSight: () => boolean, shows?: View}[]} */
    this.parts = [];
    /** The redrawing of what is not in sight, while it waits for its turn. @type {number | undefined} */
    this.rest = undefined;
    /** Called after each change of the log. @type {() => void} */
    this.onChange = () => {};
    /** Called when an edit was refused. @type {(message: string) => void} */
    this.onRefusal = () => {};
    /** Called after a pasted block was taken: whether its decimal marks were turned, and the headings left out.
     * @type {(turned: boolean, headings: string) => void} */
    this.onPasted = () => {};
    /** Called after something was done that one may want to take back; says what. @type {(done: string) => void} */
    this.onUndoable = () => {};
    /** Called to show the picture or the traces of a row. @type {(row: number) => void} */
    this.onEvidence = () => {};
    /** Another tab writes; this one reads along. */
    this.readOnly = false;
    /** How many edits each step that undo can take back made: a flow of typing is one. @type {number[]} */
    this.steps = [];
    /** The same of the steps taken back. @type {number[]} */
    this.undone = [];
    /** The flow of typing to which the last step belongs. @type {number | undefined} */
    this.flow = undefined;
    /** A redrawing waits for its turn. */
    this.due = false;
    /** The frame that comes, after a redrawing. */
    this.frame = 0;
    /** The press that is under way: what is drawn meanwhile could move what is pressed from under the pointer, and the press
     * would be lost. @type {number | undefined} */
    this.press = undefined;
    addEventListener('pointerdown', ({ target }) => {
      if (target instanceof Element && target.closest('button:not([role=slider]), a, summary')) this.hold();
    }, true);
    for (const end of ['pointerup', 'pointercancel']) addEventListener(end, () => this.letGo(), true);
  }

  hold() {
    clearTimeout(this.press);
    this.press = setTimeout(() => this.letGo(), PRESS);
  }

  /** Draws what waited for the press, once that was answered. */
  letGo() {
    if (this.press === undefined) return;
    clearTimeout(this.press);
    this.press = undefined;
    setTimeout(() => this.drawIfDue());
  }

  /**
   * Puts another notebook on the desk.
   * @param {Desk} desk
   */
  put(desk) {
    this.desk = desk;
    [this.steps, this.undone, this.flow] = [[], [], undefined];
    this.redraw();
  }

  /** @param {Part} part @param {() => boolean} [isInSight] */
  add(part, isInSight = () => true) {
    this.parts.push({ part, isInSight });
  }

  /**
   * @param {Edit} edit
   * @returns {boolean} whether it was taken
   */
  edit(edit) {
    return this.step(() => this.desk.apply(edit, now()));
  }

  /**
   * Fills cells from a block copied out of a spreadsheet.
   * @param {number | undefined} row
   * @param {Cell} cell
   * @param {string} block
   */
  paste(row, cell, block) {
    this.step(() => {
      const [turned, headings] = this.desk.paste(row, cell, block, now());
      this.onPasted(turned, headings);
    });
  }

  /**
   * Puts traces and pictures into rows.
   * @param {TakenEvidence[]} all
   */
  takeEvidence(all) {
    return this.step(() => this.desk.take_evidence(all, now()));
  }

  /** Says as what an uncertainty is meant. @type {(of: UncertaintyOf, kind: UncertaintyKind) => void} */
  setKind = (of, kind) => {
    this.edit({ set_kind: { of, kind } });
  };

  /** Takes back the last edit; of a flow of typing, all that it made. */
  undo() {
    flushAll();
    if (this.readOnly) return;
    const edits = this.times(this.steps.pop() ?? 1, 'undo', () => this.desk.can_undo());
    if (edits > 0) this.undone.push(edits);
  }

  redo() {
    flushAll();
    if (this.readOnly) return;
    const edits = this.times(this.undone.pop() ?? 1, 'redo', () => this.desk.can_redo());
    if (edits > 0) this.steps.push(edits);
  }

  /**
   * @param {number} times
   * @param {'undo' | 'redo'} edit
   * @param {() => boolean} can
   * @returns {number} how many times it could be done
   */
  times(times, edit, can) {
    this.flow = undefined;
    let done = 0;
    while (done < times && can() && this.change(() => this.desk.apply(edit, now()))) done += 1;
    return done;
  }

  /** A number for something new of this notebook. */
  newNumber() {
    const [number = 0] = this.desk.new_numbers(1);
    return number;
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
    if (this.due && this.press === undefined) this.draw();
  }

  /** Redraws now; what is not in sight, a moment later. */
  draw() {
    this.due = false;
    this.frame ||= requestAnimationFrame(() => {
      this.frame = 0;
      this.drawIfDue();
    });
    const { sealed } = this.view.result;
    this.takeNews();
    // What a seal covers stays nowhere, not even out of sight.
    this.drawParts(this.view.result.sealed !== sealed);
    this.rest ??= setTimeout(() => this.atRest(), REST);
  }

  atRest() {
    this.rest = this.press === undefined ? undefined : setTimeout(() => this.atRest(), REST);
    if (this.rest === undefined) this.judge();
  }

  /** Has checks and notices computed, and everything shown. */
  judge() {
    if (this.due) this.draw();
    if (this.desk.judge()) this.takeNews();
    this.drawParts(true);
  }

  takeNews() {
    const { view, rows } = this.desk.news();
    const known = this.view.rows;
    // What is not news of a row stays the object that it was, and is not drawn again.
    this.view = {
      ...view,
      rows: rows.flatMap((row, place) => row && 'id' in row ? row : known.slice(place, place + 1).map((old) => (
        row ? { ...old, ...row } : old))),
    };
  }

  /** Has the parts show the view that there is. @param {boolean} [all] those not in sight, too */
  drawParts(all = false) {
    for (const one of this.parts) {
      if (one.shows === this.view || !(all || one.isInSight())) continue;
      one.shows = this.view;
      one.part.show(this.view);
    }
  }

  /**
   * Does what is one step to a person, or goes on with the flow of typing that makes one.
   * @param {() => void} work
   */
  step(work) {
    if (!this.change(work)) return false;
    const flow = flowInHand();
    const last = this.steps.length - 1;
    if (flow !== undefined && flow === this.flow && last >= 0) this.steps[last] = (this.steps[last] ?? 0) + 1;
    else this.steps.push(1);
    this.flow = flow;
    this.undone = [];
    return true;
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
