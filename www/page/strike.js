/**
 * Asks for the reason before a row is struck out.
 */
import { byId, el, setOptional, setText } from './dom.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { RowView } from './types.js' */

export class StrikeDialog {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** @type {RowView | undefined} */
    this.row = undefined;
    this.dialog = /** @type {HTMLDialogElement} */ (byId('strike-dialog'));
    this.title = el('h2', { id: 'strike-title' });
    this.reason = el('input', { type: 'text', id: 'strike-reason', autocomplete: 'off',
      'aria-describedby': 'strike-problem' });
    this.problem = el('p', { class: 'problem', id: 'strike-problem', role: 'alert', hidden: true });
    const form = el('form', { submit: (/** @type {Event} */ event) => this.confirm(event) },
      this.title, el('p', { class: 'hint' }, say('strike-hint')),
      el('div', { class: 'field wide' }, el('label', { for: 'strike-reason' }, say('strike-reason')),
        el('span', { class: 'box' }, this.reason), el('div', {}, this.problem)),
      el('p', { class: 'actions' },
        el('button', { id: 'strike-confirm', class: 'main' }, say('readings-strike')),
        el('button', { type: 'button', click: () => this.dialog.close() }, say('strike-cancel'))));
    this.dialog.append(form);
  }

  /** @param {RowView} row */
  ask(row) {
    this.row = row;
    setText(this.title, say('readings-strike-row', { n: row.number }));
    this.reason.value = '';
    setOptional(this.problem, '');
    this.dialog.showModal();
    this.reason.focus();
  }

  /** @param {Event} event */
  confirm(event) {
    event.preventDefault();
    const reason = this.reason.value.trim();
    setOptional(this.problem, reason === '' ? say('strike-needed') : '');
    if (reason === '' || !this.row) return;
    this.dialog.close();
    this.book.edit({ strike_row: { row: this.row.id, reason } });
  }
}
