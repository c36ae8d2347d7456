/**
 * One planned position: its texts, where it is, and what is wrong with them.
 */
import { el, setAttribute, setHidden, setText } from './dom.js';
import { inWords, say } from './words.js';
import { put } from './typing.js';

/** @import { Book } from './book.js' */
/** @import { PlannedPosition, PositionView } from './types.js' */

/** @typedef {'rail' | 'reading' | 'time_base' | 'repeats'} PositionColumn */

/** The texts in the order in which they stand. @type {PositionColumn[]} */
export const COLUMNS = ['rail', 'reading', 'time_base', 'repeats'];

export class PositionLine {
  /**
   * @param {Book} book
   * @param {number} id
   */
  constructor(book, id) {
    this.book = book;
    /** @type {PlannedPosition} */
    this.texts = { id, rail: '', reading: '', time_base: '', repeats: '' };
    this.boxes = COLUMNS.map((column) => el('input', {
      type: 'text', id: `position-${id}-${column}`, autocomplete: 'off', spellcheck: 'false',
      'data-position': String(id), 'data-column': column, 'aria-describedby': `position-${id}-told`,
      ...(column === 'rail' ? {} : { inputmode: 'decimal' }),
    }));
    this.number = el('th', { scope: 'row' });
    this.distance = el('output', { 'aria-live': 'off' });
    this.told = el('td', { id: `position-${id}-told`, colspan: String(COLUMNS.length + 3), class: 'problem' });
    this.below = el('tr', { hidden: true }, this.told);
    this.remove = el('button', { type: 'button', class: 'quiet', click: () => this.take() }, '✕');
    this.root = el('tbody', {}, el('tr', {}, this.number, ...this.boxes.map((box) => el('td', {}, box)),
      el('td', { class: 'distance' }, this.distance), el('td', {}, this.remove)), this.below);
  }

  /** @param {Partial<PlannedPosition>} change */
  send(change) {
    this.texts = { ...this.texts, ...change };
    this.book.edit({ set_position: this.texts });
  }

  /** @param {PositionView} position @param {number} index */
  show({ typed, place, problems }, index) {
    const number = index + 1;
    this.texts = typed;
    setText(this.number, String(number));
    setText(this.distance, place?.distance ?? '');
    setAttribute(this.remove, 'aria-label', say('plan-remove', { n: number }));
    COLUMNS.forEach((column, at) => {
      const box = /** @type {HTMLInputElement} */ (this.boxes[at]);
      put(box, typed[column]);
      setAttribute(box, 'placeholder', column === 'repeats' ? '1' : column === 'reading' ? undefined : place?.[column]);
      setAttribute(box, 'aria-label', say('plan-cell', { column: say(`plan-columns-${column}`), n: number }));
      setAttribute(box, 'aria-invalid', problems.some((problem) => problem.column === column) ? 'true' : undefined);
    });
    setText(this.told, inWords(problems.map(({ column, problem }) => (
      say('readings-problem', { column: say(`plan-columns-${/** @type {PositionColumn} */ (column)}`), problem })))));
    setHidden(this.below, problems.length === 0);
  }

  take() {
    const { id } = this.texts;
    if (!this.book.edit({ remove_position: id })) return;
    this.book.onUndoable(say('plan-removed', { n: this.number.textContent ?? '' }));
    document.getElementById('plan-add')?.focus();
  }
}
