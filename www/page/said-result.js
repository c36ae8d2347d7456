/**
 * c as a screen reader says it: once for what was entered, when that is left and all is calm, and not at each letter. The
 * places that show c, and what stands in the rows, follow every letter, and are not read out by themselves.
 */
import { byId, setText } from './dom.js';
import { isTyping } from './typing.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

/** How long c stays as it is before it is said, ms. */
const CALM = 1_000;

export class SaidResult {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    this.place = byId('result-said');
    this.timer = 0;
    this.begin(book.current());
    document.addEventListener('focusin', () => this.wait());
  }

  /** What a notebook opens on is no news. @param {View} view */
  begin({ result }) {
    this.desk = this.book.desk;
    this.hear(result);
    /** What was said last. */
    this.said = this.short;
    setText(this.place, '');
  }

  /** @param {View} view */
  show(view) {
    if (this.desk !== this.book.desk) this.begin(view);
    this.hear(view.result);
    this.wait();
  }

  /** Under a seal c is not the one that was found, which is said with it. @param {View['result']} result */
  hear({ short, sealed }) {
    this.short = [short, short && sealed ? say('seal-mark') : ''].filter((text) => text).join(', ');
  }

  wait() {
    clearTimeout(this.timer);
    if (this.short !== this.said) this.timer = window.setTimeout(() => this.say(), CALM);
  }

  say() {
    // Who is still at it is not interrupted: the focus that leaves the text comes back here.
    if (isTyping()) return;
    this.said = this.short;
    setText(this.place, this.short ? say('strip-result-said', { c: this.short }) : say('strip-no-result'));
  }
}
