/**
 * What the number pad of a phone lacks, beside the row in hand: minus, semicolon, and the letters of a unit.
 */
import { byId, el } from './dom.js';
import { textBox } from './typing.js';
import { say } from './words.js';

export class RowPad {
  constructor() {
    /** The box typed in last. @type {HTMLInputElement | HTMLTextAreaElement | undefined} */
    this.box = undefined;
    const key = (/** @type {string} */ name, /** @type {string} */ text, /** @type {() => void} */ click) => (
      el('button', { type: 'button', tabindex: '-1', 'aria-label': name, click }, text));
    this.root = el('span', {
      class: 'pad',
      // The box keeps the focus, so that the pad stays.
      pointerdown: (/** @type {Event} */ event) => event.preventDefault(),
    }, ...['−', ';'].map((sign) => key(sign === ';' ? say('row-pad-semicolon') : say('row-pad-minus'), sign, () => this.type(sign))),
    key(say('row-pad-letters'), say('row-pad-abc'), () => this.turn()));
    byId('readings-table').addEventListener('focusin', ({ target }) => {
      const box = textBox(target);
      if (!box) return;
      this.box = box;
      // Beside the other button of the row: its head is read out at each cell. It lies below the row's number.
      if (box.inputMode) box.closest('tr')?.querySelector('.action')?.append(this.root);
      else this.root.remove();
    });
  }

  /** Types a sign where the cursor is. @param {string} sign */
  type(sign) {
    const { box } = this;
    if (!box || box.readOnly) return;
    box.setRangeText(sign, box.selectionStart ?? 0, box.selectionEnd ?? 0, 'end');
    box.dispatchEvent(new Event('input', { bubbles: true }));
  }

  /** Turns from the number pad to the letters, and back. */
  turn() {
    if (this.box) this.box.inputMode = this.box.inputMode === 'decimal' ? 'text' : 'decimal';
  }
}
