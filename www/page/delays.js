/**
 * The section Delays: what rows take their delay from where it is not typed.
 */
import { benchField } from './apparatus.js';
import { byId, el } from './dom.js';
import { evidence } from './evidence.js';
import { NoticeList, ofSection } from './notices.js';
import { pictureOf } from './picture-series.js';
import { Pictures } from './pictures.js';
import { tracesOf } from './traces-run.js';
import { TracesSection } from './traces.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Delays {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    this.notices = new NoticeList(book, byId('delays-notices'), ofSection('delays'));
    /** Reads pictures and traces, beside the page. */
    this.evidence = evidence;
    this.pictures = new Pictures(book, this.evidence);
    this.mark = benchField(book, 'mark_uncertainty', { term: 'standard-uncertainty' });
    byId('pictures').append(el('fieldset', { class: 'bare', role: 'none', 'data-written': true },
      el('div', { class: 'fields' }, this.mark.root)));
    this.traces = new TracesSection(book, this.evidence);
  }

  /** Goes to the picture or the traces of a row. @param {number} row */
  goTo(row) {
    if (pictureOf(this.book, row)) this.pictures.goTo(row);
    else if (tracesOf(this.book, row)) this.traces.goTo(row);
  }

  /** @param {View} view */
  show(view) {
    this.notices.show(view);
    this.mark.show(view.bench.mark_uncertainty);
    this.pictures.show(view);
    this.traces.show(view);
  }
}
