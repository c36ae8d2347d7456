/**
 * One row of the readings: its cells, what follows from them, and what is wrong with them.
 */
import { el, setAttribute, setHidden, setText } from './dom.js';
import { SHAPES } from './notices.js';
import { inWords, say, tell } from './words.js';
import { put } from './typing.js';

/** @import { Cell, Field, NewRow, RowNotice, RowView } from './types.js' */
/** @import { AllOf } from './words.js' */

/** The cells in the order in which they stand. */
export const CELLS = /** @type {const} */ ([
  'rail', 'reading', 'time_base', 'edge_a', 'edge_b', 'distance', 'distance_uncertainty', 'delay',
  'delay_uncertainty', 'remark',
]);
/** @typedef {AllOf<Cell, typeof CELLS>} AllCells */
/** Cells that give distance or delay directly. @type {Cell[]} */
export const DIRECT = ['distance', 'distance_uncertainty', 'delay', 'delay_uncertainty'];
/** @type {('distance' | 'delay' | 'residual')[]} */
export const OUTPUTS = ['distance', 'delay', 'residual'];
/** Cells that hold more than the keys of a number pad: words, and the sign of a limit. @type {Cell[]} */
const WORDY = ['rail', 'remark', 'distance_uncertainty', 'delay_uncertainty'];
/** Cells with which a row may begin. @type {Cell[]} */
export const PROPOSED = ['rail', 'reading', 'time_base'];
/** Cells that stay empty where a picture or traces give the delay. @type {Cell[]} */
const EDGES = ['edge_a', 'edge_b'];
/** How long rows out of sight wait, so that what is in sight comes first, ms. */
const PATIENCE = 60;

/** @type {WeakMap<Element, RowLine>} */
const lineOf = new WeakMap();
const sight = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) lineOf.get(target)?.comes(isIntersecting);
});
/** Those that wait. @type {Set<RowLine>} */
const waiting = new Set();

function settle() {
  for (const line of waiting) line.catchUp();
}

export class RowLine {
  /**
   * @param {(line: RowLine) => void} strike strikes the row out, or restores it
   * @param {(row: number) => void} showEvidence shows its picture or its traces
   */
  constructor(strike, showEvidence) {
    /** The row shown; nothing in the line for the next row. @type {RowView | undefined} */
    this.row = undefined;
    /** The cells in the document. @type {RowView['cells'] | undefined} */
    this.filled = undefined;
    this.number = el('span', { class: 'number' });
    this.marks = el('span', { class: 'marks' });
    /** @type {Map<Cell, HTMLInputElement>} */
    this.boxes = new Map(CELLS.map((cell) => [cell, cellBox(cell)]));
    this.outputs = OUTPUTS.map(() => el('output', { 'aria-live': 'off' }));
    this.lacks = el('span', { class: 'lacks' });
    this.strike = el('button', { type: 'button', class: 'quiet strike', click: () => strike(this) });
    this.jump = el('button', {
      type: 'button', class: 'quiet jump', hidden: true,
      click: () => {
        if (this.row) showEvidence(this.row.id);
      },
    });
    const remark = CELLS.length - 1;
    const cells = CELLS.map((cell) => cellFor(cell, /** @type {HTMLInputElement} */ (this.boxes.get(cell))));
    const outputs = OUTPUTS.map((name, index) => el('td',
      { role: 'gridcell', class: `output ${name}`, 'data-label': say(`readings-output-names-${name}`) },
      /** @type {HTMLElement} */ (this.outputs[index]), ...(name === 'residual' ? [this.lacks] : [])));
    cells[CELLS.indexOf('edge_b')]?.append(this.jump);
    this.head = el('th', { scope: 'row', role: 'rowheader' }, this.number, this.marks);
    this.main = el('tr', { role: 'row' },
      this.head,
      ...cells.slice(0, remark), ...outputs, ...cells.slice(remark),
      el('td', { role: 'gridcell', class: 'action' }, this.strike));
    this.told = el('td', { role: 'gridcell', class: 'told' });
    this.below = el('tr', { role: 'row', class: 'below', hidden: true }, this.told);
    this.root = el('tbody', { role: 'rowgroup' }, this.main, this.below);
    this.name('new', undefined);
    this.inSight = true;
    lineOf.set(this.root, this);
    sight.observe(this.root);
  }

  /** @param {boolean} inSight */
  comes(inSight) {
    this.inSight = inSight;
    if (inSight) this.catchUp();
  }

  /** Shows what waited. */
  catchUp() {
    if (!waiting.delete(this) || !this.row) return;
    this.fill(this.row);
  }

  /**
   * Gives the row's parts their ids and names.
   * @param {string} id
   * @param {number | undefined} number
   */
  name(id, number) {
    setAttribute(this.root, 'id', `row-${id}`);
    setAttribute(this.root, 'data-row', id);
    setAttribute(this.told, 'id', `row-${id}-told`);
    for (const [cell, box] of this.boxes) {
      const column = columnName(cell);
      setAttribute(box, 'id', `cell-${id}-${cell}`);
      setAttribute(box, 'aria-label', number === undefined
        ? say('readings-new-cell', { column }) : say('readings-cell', { column, n: number }));
    }
    const head = number === undefined ? say('readings-new-row') : String(number);
    setText(this.number, head);
    // The head is named by the number alone, which is read out at each cell.
    setAttribute(this.head, 'aria-label', head);
    setHidden(this.strike, number === undefined);
  }

  /** @param {RowView} row */
  show(row) {
    // The core says which rows are news; one that is not is the same object still.
    if (row === this.row) return;
    const known = this.row !== undefined;
    this.row = row;
    // One edit moves the residuals of all rows. Those out of sight can wait until what is in sight is drawn; what was
    // typed never waits.
    if (known && !this.inSight && row.cells === this.filled) {
      if (waiting.size === 0) setTimeout(settle, PATIENCE);
      waiting.add(this);
    } else {
      this.fill(row);
    }
  }

  /** @param {RowView} row */
  fill(row) {
    OUTPUTS.forEach((name, index) => setText(/** @type {Node} */ (this.outputs[index]), row[name]));
    // Where only outputs are news, the cells are those that were there.
    if (row.cells === this.filled) return;
    this.filled = row.cells;
    this.name(String(row.id), row.number);
    setAttribute(this.root, 'class', row.state);
    for (const [cell, box] of this.boxes) {
      const { text, problem, default: standIn, meant } = row.cells[cell];
      put(box, text);
      const held = EDGES.includes(cell) && row.evidence !== '' && text === '';
      const only = held || 'fixed' in box.dataset;
      if (box.readOnly !== only) box.readOnly = only;
      setAttribute(box, 'placeholder', (held && row.evidence ? say(`delays-from-${row.evidence}`) : inWords(standIn)) || undefined);
      setAttribute(box, 'aria-invalid', problem ? 'true' : undefined);
      setAttribute(box, 'aria-describedby', problem || meant ? this.told.id : undefined);
    }
    setHidden(this.jump, row.evidence === '');
    if (row.evidence) {
      setText(this.jump, say(`delays-from-${row.evidence}`));
      setAttribute(this.jump, 'aria-label', say(`delays-jump-${row.evidence}`, { n: row.number }));
    }
    setText(this.lacks, row.state === 'incomplete' ? say('readings-not-used') : '');
    const struck = row.struck !== '';
    setText(this.strike, struck ? say('readings-restore') : say('readings-strike'));
    setAttribute(this.strike, 'aria-label', say(struck ? 'readings-restore-row' : 'readings-strike-row', { n: row.number }));
    this.tell(row);
  }

  /**
   * Lets the line below the cells reach over all columns in sight.
   * @param {boolean} direct whether those that give distance or delay directly are
   */
  span(direct) {
    const count = this.main.children.length - (direct ? 0 : DIRECT.length);
    if (this.told.colSpan !== count) this.told.colSpan = count;
  }

  /** @param {RowView} row */
  tell(row) {
    const lines = CELLS.filter((cell) => row.cells[cell].problem).map((cell) => el('p', { class: 'problem' },
      say('readings-problem', { column: columnName(cell), problem: tell(row.cells[cell].problem) })));
    if (row.struck !== '') lines.push(el('p', { class: 'reason' }, say('readings-struck', { reason: row.struck })));
    for (const notice of row.notices.filter(({ told }) => told)) {
      lines.push(el('p', { class: `notice ${notice.weight}` },
        el('span', { class: 'shape', 'aria-hidden': 'true' }, SHAPES[notice.weight]),
        el('span', {}, say('notices-in-row', { weight: say(`notices-weights-${notice.weight}`), text: tell(notice.text) }))));
    }
    // What is missing, and what follows from a limit, is said while one is in the row, not beside every row; where a cell
    // says what is wrong with it, the row does not say it again.
    const lacks = row.state === 'incomplete' && !CELLS.some((cell) => row.cells[cell].problem);
    const meanwhile = [...DIRECT.flatMap((cell) => limitIn(cell, row.cells[cell])), ...(lacks ? [tell(row.lacks)] : [])]
      .map((text) => el('p', { class: 'missing' }, text));
    setAttribute(this.below, 'class', lines.length > 0 ? 'below' : 'below waiting');
    this.told.replaceChildren(...lines, ...meanwhile);
    setHidden(this.below, this.told.childElementCount === 0);
    this.marks.replaceChildren(...row.notices.map((notice) => mark(notice)));
  }

  /**
   * Shows what the next row would begin with.
   * @param {NewRow['cells']} cells
   */
  propose(cells) {
    for (const [cell, box] of this.boxes) setAttribute(box, 'placeholder', cells[cell] || undefined);
  }
}

/** @param {Cell} cell */
function cellBox(cell) {
  const inputmode = WORDY.includes(cell) ? false : 'decimal';
  return el('input', { type: 'text', autocomplete: 'off', spellcheck: 'false', inputmode, 'data-cell': cell });
}

/** @param {Cell} cell @param {HTMLInputElement} box */
function cellFor(cell, box) {
  const kind = DIRECT.includes(cell) ? `direct ${cell}` : cell;
  return el('td', { role: 'gridcell', class: kind, 'data-label': columnName(cell) }, box);
}

/** What follows from a limit typed in a cell. @param {Cell} cell @param {Field} field */
function limitIn(cell, { text, meant }) {
  return meant?.u ? [say('row-limit', { name: say(`readings-columns-${cell}`), typed: text, u: meant.u })] : [];
}

/** @param {RowNotice} notice */
function mark(notice) {
  const text = say('notices-in-row', { weight: say(`notices-weights-${notice.weight}`), text: tell(notice.text) });
  return el('span', { class: `mark ${notice.weight}`, role: 'img', 'aria-label': text, title: text },
    SHAPES[notice.weight]);
}

/**
 * The name of a column, standing alone.
 * @param {Cell} cell
 */
function columnName(cell) {
  const name = say(`readings-columns-${cell}`);
  switch (cell) {
    case 'distance_uncertainty': return say('readings-uncertainty-of', { quantity: say('readings-columns-distance'), u: name });
    case 'delay_uncertainty': return say('readings-uncertainty-of', { quantity: say('readings-columns-delay'), u: name });
    default: return name;
  }
}
