/**
 * How a row was worked out: its figures with their formulas, shown at a press on the row's number. One button goes to
 * the row in hand and lies over its number: two hundred of them would slow down every edit.
 */
import { byId, el, setAttribute, setHidden, setText } from './dom.js';
import { Figures } from './figures.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */

export class RowWork {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    this.title = el('h2', { id: 'row-work-title' });
    this.none = el('p', {}, say('row-work-none'));
    const list = el('dl', { class: 'figures', id: 'row-work-figures' });
    this.dialog = el('dialog', { id: 'row-work', 'aria-labelledby': this.title.id }, this.title, this.none, list,
      el('p', { class: 'actions' }, el('button', { type: 'button', click: () => this.dialog.close() }, say('close'))));
    document.body.append(this.dialog);
    this.figures = new Figures(list);
    this.button = el('button', { type: 'button', class: 'quiet number' });
    const table = byId('readings-table');
    for (const kind of /** @type {const} */ (['focusin', 'pointerover'])) {
      table.addEventListener(kind, ({ target }) => this.goTo(headOf(target)));
    }
    // On the button, or by a finger on a number where the button is not yet.
    table.addEventListener('click', ({ target }) => {
      const head = headOf(target);
      if (!(target instanceof Element) || !head?.contains(target)) return;
      this.goTo(head);
      this.open(book, head);
    });
  }

  /** Brings the button to the head of a row. @param {HTMLElement | undefined} head */
  goTo(head) {
    const at = this.button.parentElement;
    if (!head || at === head || document.activeElement === this.button) return;
    const row = rowOf(this.book, head);
    if (!row) return;
    setAttribute(this.button, 'aria-label', say('readings-work-of', { n: row.number }));
    head.append(this.button);
  }

  /** @param {Book} book @param {HTMLElement} head */
  open(book, head) {
    book.current();
    const row = rowOf(book, head);
    if (!row) return;
    const figures = book.desk.row_work(row.id);
    setText(this.title, say('readings-work-of', { n: row.number }));
    this.figures.show(figures);
    setHidden(this.none, figures.length > 0);
    this.dialog.showModal();
    for (const more of this.dialog.querySelectorAll('details')) more.open = true;
  }
}

/** The head of the row of something. @param {EventTarget | null} target */
function headOf(target) {
  return (target instanceof Element ? target.closest('tbody')?.querySelector('th') : undefined) ?? undefined;
}

/** The row at whose head something stands; the row to come is none yet. @param {Book} book @param {HTMLElement} head */
function rowOf(book, head) {
  const id = head.closest('tbody')?.dataset.row;
  return book.view.rows.find((row) => String(row.id) === id);
}
