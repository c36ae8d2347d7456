/**
 * Whether all is saved, in the strip; and below it what needs an answer: another tab writes, storage is full.
 */
import { byId, el, setHidden, setText } from './dom.js';
import { words } from './strings.js';

/** @import { Saved } from './keeper.js' */

export class Banner {
  /**
   * @param {{takeBundle: () => void, takeOver: () => void}} answers
   */
  constructor(answers) {
    this.answers = answers;
    this.saved = byId('saved');
    this.place = byId('banner');
    this.shown = '';
  }

  /** @param {Saved} saved @param {string} [why] */
  show(saved, why = '') {
    const t = words.saving;
    const bundle = el('button', { type: 'button', click: this.answers.takeBundle }, t.takeBundle);
    const over = el('button', { type: 'button', id: 'take-over', click: this.answers.takeOver }, t.takeOver);
    switch (saved) {
      case 'saved': return this.put(t.saved, '');
      case 'saving': return this.put(t.saving, this.shown);
      case 'reading': return this.put(t.reading, t.otherTab, over);
      case 'conflict': return this.put(t.reading, t.elsewhere, over);
      case 'noJournal': return this.put(t.notSaved, t.noJournal, bundle);
      case 'full': return this.put(t.notSaved, t.full, bundle);
      case 'shelfFull': return this.put(t.saved, t.shelfFull, bundle);
      default: return this.put(t.notSaved, t.failed(why), bundle);
    }
  }

  /** @param {string} state @param {string} text @param {HTMLElement} [button] */
  put(state, text, button) {
    setText(this.saved, state);
    this.saved.classList.toggle('trouble', state === words.saving.notSaved);
    if (text === this.shown) return;
    this.shown = text;
    this.place.replaceChildren(...(text ? [el('p', {}, text), ...(button ? [button] : [])] : []));
    setHidden(this.place, text === '');
  }
}
