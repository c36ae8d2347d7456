/**
 * The section Delays: what rows take their delay from where it is not typed.
 */
import { byId } from './dom.js';
import { NoticeList, ofSection } from './notices.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Delays {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    this.notices = new NoticeList(byId('delays-notices'), ofSection('delays'));
  }

  /** @param {View} view */
  show(view) {
    this.notices.show(view);
  }
}
