/**
 * How a row was worked out: its figures with their formulas, shown at a press on the row's number.
 */
import { byId, el, setHidden, setText } from './dom.js';
import { Figures } from './figures.js';
import { later } from './strings-later.js';
import { words } from './strings.js';

/** @import { Book } from './book.js' */

export class RowWork {
  /** @param {Book} book */
  constructor(book) {
    const t = later.rowWork;
    this.title = el('h2', { id: 'row-work-title' });
    this.none = el('p', {}, t.none);
    const list = el('dl', { class: 'figures', id: 'row-work-figures' });
    this.dialog = el('dialog', { id: 'row-work', 'aria-labelledby': this.title.id }, this.title, this.none, list,
      el('p', { class: 'actions' }, el('button', { type: 'button', click: () => this.dialog.close() }, t.close)));
    document.body.append(this.dialog);
    this.figures = new Figures(list);
    byId('readings-table').addEventListener('click', ({ target }) => {
      if (!(target instanceof HTMLButtonElement) || !target.matches('.number')) return;
      this.open(book, Number(target.closest('tbody')?.dataset.row), Number(target.textContent));
    });
  }

  /** The dialog shows a row as it was when it was opened. */
  show() {}

  /** @param {Book} book @param {number} row @param {number} number on the page */
  open(book, row, number) {
    book.current();
    const figures = book.desk.row_work(row);
    setText(this.title, words.readings.workOf(number));
    this.figures.show(figures);
    setHidden(this.none, figures.length > 0);
    this.dialog.showModal();
    for (const more of this.dialog.querySelectorAll('details')) more.open = true;
  }
}
