/**
 * Numbers with their names and values; what each means is one press away.
 */
import { el, Keyed, setAttribute, setHidden, setText } from './dom.js';

/** @import { Figure } from './types.js' */

class FigureLine {
  /** @param {string} list @param {string} id */
  constructor(list, id) {
    this.name = el('span');
    this.symbol = el('i', { class: 'symbol' });
    this.written = '';
    this.meaning = el('p');
    this.value = el('dd', { id: `${list}-${id}` });
    this.more = el('details', {}, el('summary', {}, this.name, ' ', this.symbol), this.meaning);
    this.root = el('div', { class: 'figure' }, el('dt', {}, this.more), this.value);
  }

  /** @param {Figure} figure */
  show({ name, symbol, value, meaning }) {
    setText(this.name, name);
    this.write(symbol);
    setText(this.value, value);
    setText(this.meaning, meaning);
    setAttribute(this.root, 'class', meaning ? 'figure' : 'figure bare');
  }

  /**
   * Writes a symbol; what stands behind a low line is set low.
   * @param {string} symbol
   */
  write(symbol) {
    if (this.written === symbol) return;
    this.written = symbol;
    const [first = '', ...lows] = symbol.split('_');
    this.symbol.replaceChildren(first, ...lows.flatMap((part) => [el('sub', {}, part.slice(0, 1)), part.slice(1)]));
  }
}

export class Figures {
  /** @param {HTMLElement} root an empty `dl`; its id begins the id of each value */
  constructor(root) {
    this.root = root;
    this.list = new Keyed(root, (/** @type {Figure} */ figure) => figure.id,
      (figure) => new FigureLine(root.id, figure.id));
  }

  /** @param {Figure[]} figures */
  show(figures) {
    this.list.show(figures);
    setHidden(this.root, figures.length === 0);
  }
}
