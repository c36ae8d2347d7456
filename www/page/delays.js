/**
 * The section Delays: what rows take their delay from where it is not typed.
 */
import { benchField } from './apparatus.js';
import { byId, el } from './dom.js';
import { Evidence } from './evidence.js';
import { NoticeList, ofSection } from './notices.js';
import { Pictures } from './pictures.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Delays {
  /** @param {Book} book */
  constructor(book) {
    this.notices = new NoticeList(byId('delays-notices'), ofSection('delays'));
    /** Reads pictures and traces, beside the page. */
    this.evidence = new Evidence();
    this.pictures = new Pictures(book, this.evidence);
    this.mark = benchField(book, 'mark_uncertainty');
    byId('pictures').append(el('fieldset', { class: 'bare', role: 'none', 'data-written': true },
      el('div', { class: 'fields' }, this.mark.root)));
  }

  /** @param {View} view */
  show(view) {
    this.notices.show(view);
    this.mark.show(view.bench.mark_uncertainty);
    this.pictures.show(view);
  }
}
