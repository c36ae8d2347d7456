/**
 * Whether all is saved, in the strip that stays in sight; and below it, in sight as well, what needs an answer: another
 * window writes, something can't be stored, a newer version of the page waits.
 */
import { byId, el, setHidden, setText } from './dom.js';
import { inWords, say } from './words.js';

/** @import { Saved } from './keeper.js' */

/**
 * What can be answered.
 * @typedef {object} Answers
 * @property {() => void} takeBundle
 * @property {() => void} takeOver
 * @property {() => void} tryAgain stores what could not be stored
 * @property {(id: string) => void} open opens a notebook
 */

/** @typedef {{id: string, title: string}} Apart a notebook that holds what another window's turn kept from this one */

export class Banner {
  /** @param {Answers} answers */
  constructor(answers) {
    this.saved = byId('saved');
    this.place = byId('banner');
    this.shown = '';
    /** @type {Apart | undefined} */
    this.apart = undefined;
    /** Has the newer version that waits take over. @type {(() => void) | undefined} */
    this.newer = undefined;
    this.bundle = el('button', { type: 'button', click: answers.takeBundle }, say('saving-take-bundle'));
    this.over = el('button', { type: 'button', id: 'take-over', click: answers.takeOver }, say('saving-take-over'));
    this.again = el('button', { type: 'button', click: answers.tryAgain }, say('saving-try-again'));
    this.open = el('button', { type: 'button', click: () => answers.open(this.apart?.id ?? '') }, say('saving-open-apart'));
    this.use = el('button', { type: 'button', click: () => this.newer?.() }, say('offline-use'));
    new ResizeObserver(() => this.makeRoom()).observe(this.place);
  }

  /** @param {Saved} saved @param {string} why */
  show(saved, why) {
    const { bundle, over, again } = this;
    switch (saved) {
      case 'saved': return this.put(say('saving-saved'), this.besides(), ...this.besidesButtons());
      case 'saving': return this.put(say('saving-saving'), this.besides(), ...this.besidesButtons());
      case 'reading':
        return this.put(say('saving-reading'), [...this.besides(), say('saving-other-tab')], over,
          ...this.besidesButtons());
      case 'noJournal': return this.put(say('saving-not-saved'), [say('saving-no-journal')], bundle);
      case 'full': return this.put(say('saving-not-saved'), [say('saving-full')], bundle, again);
      case 'shelfFull': return this.put(say('saving-saved'), [say('saving-shelf-full')], bundle);
      default: return this.put(say('saving-not-saved'), [say('saving-failed', { why })], bundle, again);
    }
  }

  /** What is said beside the state of saving, sentence by sentence. */
  besides() {
    return [
      ...(this.apart ? [say('saving-apart', { title: this.apart.title })] : []),
      ...(this.newer ? [say('offline-newer')] : []),
    ];
  }

  besidesButtons() {
    return [...(this.apart ? [this.open] : []), ...(this.newer ? [this.use] : [])];
  }

  /** @param {string} state @param {string[]} sentences @param {HTMLElement[]} buttons */
  put(state, sentences, ...buttons) {
    const text = inWords(sentences);
    setText(this.saved, state);
    this.saved.classList.toggle('trouble', state === say('saving-not-saved'));
    if (text === this.shown) return;
    this.shown = text;
    this.place.replaceChildren(...(text ? [el('p', {}, text), el('span', { class: 'actions' }, ...buttons)] : []));
    setHidden(this.place, text === '');
  }

  /** Keeps the strip, grown by the banner, from covering what is in hand. */
  makeRoom() {
    document.documentElement.style.setProperty('--banner', `${this.place.offsetHeight}px`);
    const { activeElement } = document;
    const box = activeElement?.closest('main') ? activeElement.getBoundingClientRect() : undefined;
    const isInSight = box && box.bottom > 0 && box.top < innerHeight;
    if (isInSight) activeElement?.scrollIntoView({ block: 'nearest' });
  }
}
