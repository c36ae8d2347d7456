/**
 * A hand-out, on the leaf Report: a teacher prepares it there, and those who have it see what is fixed, what they are asked
 * and what is missing, and hand in. Everything of it comes once the page is open.
 */
import { FixedMarks } from './handout-fixed.js';
import { HandIn } from './handout-in.js';
import { Preparation } from './handout-prepare.js';
import { Tasks } from './handout-tasks.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Handout {
  /** @param {Book} book */
  constructor(book) {
    // Its texts stand on every leaf, and comments beside them: they don't wait for the leaf Report.
    book.add(new Tasks(book));
    this.parts = [new FixedMarks(), new HandIn(book), new Preparation(book)];
  }

  /** @param {View} view */
  show(view) {
    for (const part of this.parts) part.show(view);
  }
}
