/**
 * What hands do on a plot or a picture: the wheel and two fingers look closer or wider, dragging moves what is seen. In shares
 * of the frame, from its left, and from its foot or its top as `within` has it.
 */

/** A point of a frame, or of what is seen in it, in shares of its sides. @typedef {{x: number, y: number}} UnitPoint */
/** Where a pointer stands in the window. @typedef {{clientX: number, clientY: number}} Pointer */

/**
 * What is done then.
 * @typedef {object} Handled
 * @property {(pointer: Pointer) => UnitPoint} within the share of the frame at which a pointer stands
 * @property {(factor: number, still: UnitPoint) => void} zoom narrows what is seen by a factor; `still` stays where it is
 * @property {(x: number, y: number) => void} aside moves by shares of what is seen, to the right and away from where `within` begins
 * @property {() => boolean} isPart whether there is more than is seen
 * @property {boolean} [byTwo] whether it takes two fingers to move what is seen: one alone, or the mouse, does something else
 * @property {(event: PointerEvent) => void} [press] a press that moved nothing
 */

/** How far a wheel goes in one notch, in CSS pixels: common practice, no source. */
const NOTCH = 100;
/** By what a notch narrows what is seen. */
const NARROWER = 0.7;
/** How far a pointer goes to drag, in CSS pixels. */
const DRAG = 4;

export class Hands {
  /** @param {HTMLElement} stage @param {Handled} does */
  constructor(stage, does) {
    this.stage = stage;
    this.does = does;
    /** Fingers, or the mouse, that are down, and where. @type {Map<number, Pointer>} */
    this.down = new Map();
    this.dragged = false;
    const forget = (/** @type {PointerEvent} */ { pointerId }) => this.down.delete(pointerId);
    stage.addEventListener('wheel', (event) => this.turn(event), { passive: false });
    stage.addEventListener('pointerdown', (event) => this.press(event));
    stage.addEventListener('pointermove', (event) => this.move(event));
    stage.addEventListener('pointerup', (event) => this.lift(event));
    stage.addEventListener('pointercancel', forget);
    stage.addEventListener('pointerleave', forget);
  }

  /** Whether a pointer is down. */
  isHeld() {
    return this.down.size > 0;
  }

  /**
   * With the focus on it, or in it, the wheel zooms; else, and once all is seen, it scrolls the page, as everywhere. A pad of fine
   * steps zooms in fine steps.
   * @param {WheelEvent} event
   */
  turn(event) {
    const { ctrlKey, deltaY } = event;
    const isMeant = ctrlKey || (this.stage.contains(document.activeElement) && (deltaY < 0 || this.does.isPart()));
    if (deltaY === 0 || !isMeant) return;
    event.preventDefault();
    const notches = Math.min(1, Math.max(-1, deltaY / NOTCH));
    this.does.zoom(NARROWER ** -notches, this.does.within(event));
  }

  /** @param {PointerEvent} event */
  press({ pointerId, clientX, clientY, button }) {
    if (button !== 0) return;
    this.down.set(pointerId, { clientX, clientY });
    if (this.down.size === 1) this.dragged = false;
  }

  /** @param {PointerEvent} event */
  move({ pointerId, clientX, clientY }) {
    const before = this.down.get(pointerId);
    if (!before) return;
    const now = { clientX, clientY };
    const other = [...this.down].find(([id]) => id !== pointerId)?.[1];
    if (other) {
      this.pinch(before, now, other);
      this.dragged = true;
    } else if (!this.does.byTwo && this.does.isPart()) {
      if (!this.dragged && apart(before, now) < DRAG) return;
      this.stage.setPointerCapture(pointerId);
      this.drag(before, now);
      this.dragged = true;
    }
    // Also of one finger that moved nothing here: a second one is held against where it is now.
    this.down.set(pointerId, now);
  }

  /** @param {Pointer} before @param {Pointer} now */
  drag(before, now) {
    const [from, to] = [this.does.within(before), this.does.within(now)];
    this.does.aside(from.x - to.x, from.y - to.y);
  }

  /** @param {Pointer} before @param {Pointer} now @param {Pointer} other the finger that rests */
  pinch(before, now, other) {
    const middle = this.does.within(between(now, other));
    this.does.zoom(apart(before, other) / Math.max(1, apart(now, other)), middle);
    if (!this.does.byTwo) return;
    const from = this.does.within(between(before, other));
    this.does.aside(from.x - middle.x, from.y - middle.y);
  }

  /** @param {PointerEvent} event */
  lift(event) {
    const isPressed = this.down.delete(event.pointerId);
    if (isPressed && !this.dragged && !this.isHeld()) this.does.press?.(event);
  }
}

/** @param {Pointer} a @param {Pointer} b @returns {Pointer} */
function between(a, b) {
  return { clientX: (a.clientX + b.clientX) / 2, clientY: (a.clientY + b.clientY) / 2 };
}

/** @param {Pointer} a @param {Pointer} b */
function apart(a, b) {
  return Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
}
