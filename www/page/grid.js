/**
 * Moving through the readings by keyboard, as in a table: Enter goes down, Shift+Enter up, the arrow keys up
 * and down, Tab along the row; where the whole text of a cell is selected, left and right do, too. Enter after a run of
 * Tabs goes to the column where the run began; in the row to come, to the first cell from there on that is not proposed.
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
    if (!event.shiftKey && goAside(box, event.key)) {
      event.preventDefault();
      return;
    }
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
    const isToCome = next instanceof HTMLElement && next.dataset.row === 'new';
    focusCell(next, event.key === 'Enter' && isToCome ? firstFree(next, cell) : cell);
  });

  // A keyboard on the screen leaves less of the page.
  addEventListener('resize', () => {
    if (table.contains(document.activeElement)) document.activeElement?.closest('tbody')?.scrollIntoView({ block: 'nearest' });
  });
}

/**
 * Goes along the row, where a cell is moved over and not edited: where its whole text is selected. F2 begins to edit it, and
 * ends that.
 * @param {HTMLInputElement | HTMLTextAreaElement} box
 * @param {string} key
 * @returns {boolean} whether the key did something
 */
function goAside(box, key) {
  const { selectionStart, selectionEnd, value: { length } } = box;
  const isWhole = selectionStart === 0 && selectionEnd === length;
  if (key === 'F2') {
    box.setSelectionRange(isWhole ? length : 0, length);
    return true;
  }
  const row = box.closest('tbody');
  const boxes = cellsOf(row);
  const place = boxes.findIndex((each) => each === box);
  const to = { ArrowLeft: place - 1, ArrowRight: place + 1, Home: 0, End: boxes.length - 1 }[key];
  if (to === undefined || !isWhole) return false;
  focusCell(row, boxes[to]?.dataset.cell ?? '');
  return true;
}

/** The cells of a row that can be gone to. @param {Element | null} row */
function cellsOf(row) {
  return [...row?.querySelectorAll('input') ?? []].filter((box) => box.checkVisibility());
}

/** The first cell of a row, from one on, in which nothing is proposed. @param {Element} row @param {string} cell */
function firstFree(row, cell) {
  const boxes = cellsOf(row);
  const from = boxes.slice(boxes.findIndex((box) => box.dataset.cell === cell));
  return from.find((box) => box.placeholder === '')?.dataset.cell ?? cell;
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
  box.focus({ preventScroll: true });
  box.select();
  // The whole row with its neighbours, not the box alone, which would move about from row to row.
  for (const part of [row, box]) part?.scrollIntoView({ block: 'nearest' });
}
