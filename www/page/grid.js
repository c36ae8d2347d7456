/**
 * Moving through the readings by keyboard, as in a table: Enter goes down, Shift+Enter up, the arrow keys up
 * and down, Tab along the row. Enter after a run of Tabs goes to the column where the run began.
 */
import { reveal } from './leaves.js';
import { doneTyping, flush, textBox } from './typing.js';

/**
 * @param {HTMLTableElement} table whose rows are bodies and whose boxes name their cell
 * @param {() => void} begin begins a row when Enter is pressed in the line for the next one
 */
export function walk(table, begin) {
  /** The column where the run of Tabs began. @type {string | undefined} */
  let column;
  let tabbed = false;

  table.addEventListener('focusin', (event) => {
    const box = textBox(event.target);
    if (!tabbed) column = box?.dataset.cell;
    tabbed = false;
  });

  table.addEventListener('keydown', (event) => {
    const box = textBox(event.target);
    tabbed = event.key === 'Tab';
    if (!box || event.isComposing || event.altKey || event.ctrlKey || event.metaKey) return;
    const steps = { Enter: event.shiftKey ? -1 : 1, ArrowDown: 1, ArrowUp: -1 };
    const step = steps[/** @type {keyof typeof steps} */ (event.key)];
    if (step === undefined || (event.key !== 'Enter' && event.shiftKey)) return;
    event.preventDefault();
    flush(box);
    doneTyping();
    const cell = (event.key === 'Enter' ? column : undefined) ?? box.dataset.cell ?? '';
    const body = box.closest('tbody');
    if (event.key === 'Enter' && step === 1 && body?.dataset.row === 'new') begin();
    const next = step === 1 ? body?.nextElementSibling : body?.previousElementSibling;
    focusCell(next, cell);
  });
}

/**
 * Puts the focus into a cell of a row and selects what stands there.
 * @param {Element | null | undefined} row
 * @param {string} cell
 */
export function focusCell(row, cell) {
  const box = row?.querySelector(`[data-cell="${cell}"]`);
  if (!(box instanceof HTMLInputElement)) return;
  reveal(box);
  box.focus();
  box.select();
  // The whole row with its neighbours, not the box alone.
  row?.scrollIntoView({ block: 'nearest' });
}
