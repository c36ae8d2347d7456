/**
 * The part of a picture that is seen: a closer look keeps the picture's shape. Places are shares of the picture, or of what is
 * seen of it, from the left and from the top.
 */

/** @import { UnitPoint } from './hands.js' */

/** The least share of the picture's width that is seen, and the share that counts as all: steps out and in are no exact numbers. */
const [LEAST, NEARLY] = [1 / 32, 0.999];

export class PictureLook {
  constructor() {
    this.left = 0;
    this.top = 0;
    /** Of the picture's width, and of its height. */
    this.share = 1;
  }

  isWhole() {
    return this.share === 1;
  }

  reset() {
    this.share = 1;
    this.put(0, 0);
  }

  /** Where a place of the picture is seen; beyond 0 and 1 it is not. @param {UnitPoint} place @returns {UnitPoint} */
  seen({ x, y }) {
    return { x: (x - this.left) / this.share, y: (y - this.top) / this.share };
  }

  /** Which place of the picture is seen somewhere. @param {UnitPoint} seen @returns {UnitPoint} */
  place({ x, y }) {
    return { x: this.left + x * this.share, y: this.top + y * this.share };
  }

  /** @param {number} factor by which what is seen is narrowed @param {UnitPoint} still of what is seen, what stays where it is */
  zoom(factor, still) {
    const { x, y } = this.place(still);
    const wanted = Math.max(LEAST, factor * this.share);
    this.share = wanted > NEARLY ? 1 : wanted;
    this.put(x - still.x * this.share, y - still.y * this.share);
  }

  /** @param {number} x @param {number} y shares of what is seen, to the right and down */
  aside(x, y) {
    this.put(this.left + x * this.share, this.top + y * this.share);
  }

  /** Brings a place into sight: into the middle, where it is not seen. @param {UnitPoint} place */
  reach(place) {
    const { x, y } = this.seen(place);
    if (Math.min(x, y) < 0 || Math.max(x, y) > 1) this.put(place.x - this.share / 2, place.y - this.share / 2);
  }

  /** Has what is seen begin somewhere, within the picture. @param {number} left @param {number} top */
  put(left, top) {
    const within = (/** @type {number} */ start) => Math.min(1 - this.share, Math.max(0, start));
    [this.left, this.top] = [within(left), within(top)];
  }
}
