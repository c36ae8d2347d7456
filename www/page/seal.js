/**
 * The seal on the result: putting it on, and opening it for good after a question.
 */
import { randomDigits } from './chance.js';
import { byId, el, setHidden } from './dom.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Seal {
  /** @param {Book} book */
  constructor(book) {
    this.offer = byId('seal-offer');
    this.sealed = byId('sealed');
    byId('put-seal').addEventListener('click', () => {
      if (!book.edit({ seal: randomDigits(16) })) return;
      book.draw();
      open.focus();
    });
    const open = byId('open-seal');
    const dialog = /** @type {HTMLDialogElement} */ (byId('seal-dialog'));
    open.addEventListener('click', () => dialog.showModal());
    dialog.append(el('h2', { id: 'seal-title' }, say('seal-open-title')), el('p', {}, say('seal-open-hint')),
      el('p', { class: 'actions' },
        el('button', { type: 'button', click: () => dialog.close() }, say('seal-keep')),
        el('button', { type: 'button', class: 'main', id: 'open-seal-sure', click: () => {
          dialog.close();
          if (!book.edit('open_seal')) return;
          book.draw();
          byId('result').focus();
        } }, say('seal-open-sure'))));
  }

  /** @param {View} view */
  show({ result }) {
    setHidden(this.sealed, !result.sealed);
    setHidden(this.offer, !result.may_seal);
  }
}
