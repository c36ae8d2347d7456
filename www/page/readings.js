/**
 * The section Readings: a table with one row for each carriage position, and a line at its end where the next
 * row is begun by typing in it.
 */
import { byId, el, Keyed, setHidden } from './dom.js';
import { focusCell, walk } from './grid.js';
import { NoticeList, ofSection } from './notices.js';
import { CELLS, DIRECT, OUTPUTS, PROPOSED, RowLine } from './row.js';
import { say } from './words.js';
import { StrikeDialog } from './strike.js';
import { flush, listen, textBox } from './typing.js';

/** @import { Book } from './book.js' */
/** @import { Cell, NewRow, RowView, View } from './types.js' */

export class Readings {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** The desk shown last: another one begins without the columns that are not needed. */
    this.desk = book.desk;
    this.notices = new NoticeList(book, byId('readings-notices'), ofSection('readings'));
    this.start = byId('readings-start');
    this.direct = /** @type {HTMLInputElement} */ (byId('direct'));
    this.direct.addEventListener('change', () => book.redraw());
    this.dialog = new StrikeDialog(book);
    this.table = /** @type {HTMLTableElement} */ (byId('readings-table'));
    const head = header();
    this.table.append(el('caption', { class: 'unseen' }, say('readings-caption')), head);
    this.rows = new Keyed(this.table, (/** @type {RowView} */ row) => String(row.id), () => this.newLine(), head);
    this.next = this.newLine();
    this.table.append(this.next.root);
    listen(this.table, (box, text) => this.typed(box, text));
    walk(this.table, () => this.enter());
    this.table.addEventListener('paste', (event) => this.pasted(event));
  }

  newLine() {
    return new RowLine((line) => this.strike(line), (row) => this.book.onEvidence(row));
  }

  /** @param {View} view */
  show(view) {
    this.notices.show(view);
    const focused = textBox(document.activeElement);
    const inTable = focused !== undefined && this.table.contains(focused);
    this.rows.show(view.rows);
    const filled = view.rows.some((row) => DIRECT.some((cell) => row.cells[cell].text !== ''));
    this.showDirect(filled);
    this.next.propose(proposed(view));
    // The row in which the focus was may be gone, by an undo.
    if (inTable && !this.table.contains(focused)) focusCell(this.next.root, focused.dataset.cell ?? '');
    setHidden(this.start, view.rows.length > 0);
    // Of a notebook without rows there is no run to play back.
    setHidden(byId('open-replay'), view.rows.length === 0);
  }

  /**
   * Shows the columns that give distance or delay directly, when wanted or needed.
   * @param {boolean} filled whether one of them holds something
   */
  showDirect(filled) {
    if (this.desk !== this.book.desk) this.direct.checked = false;
    this.desk = this.book.desk;
    if (filled) this.direct.checked = true;
    this.direct.disabled = filled;
    const { checked } = this.direct;
    this.table.classList.toggle('no-direct', !checked);
    for (const line of this.rows.parts.values()) line.span(checked);
  }

  /**
   * @param {HTMLInputElement | HTMLTextAreaElement} box
   * @param {string} text
   */
  typed(box, text) {
    const cell = /** @type {Cell} */ (box.dataset.cell);
    const row = box.closest('tbody')?.dataset.row;
    if (row === 'new') {
      if (text !== '') this.begin({ [cell]: text });
    } else {
      this.book.edit({ set_cell: { row: Number(row), cell, text } });
    }
  }

  /** Begins a row from what is proposed alone; where the last row is nothing more yet, goes on in that one. */
  enter() {
    const view = this.book.current();
    const last = view.rows.at(-1);
    if (last && isAsProposed(last)) focusCell(this.rows.parts.get(String(last.id))?.root, 'edge_a');
    else if (Object.keys(proposed(view)).length > 0) this.begin({});
  }

  /**
   * Begins a row from what is proposed and what was typed. The line for the next row becomes that row, so that
   * the typing goes on in the same box.
   * @param {Partial<Record<Cell, string>>} typed
   */
  begin(typed) {
    const view = this.book.current();
    const { row } = view.proposal;
    if (!this.book.edit({ add_row: { row, cells: { ...proposed(view), ...typed } } })) return;
    const line = this.next;
    line.name(String(row), undefined);
    this.rows.parts.set(String(row), line);
    this.next = this.newLine();
    this.table.append(this.next.root);
    this.book.draw();
  }

  /** @param {ClipboardEvent} event */
  pasted(event) {
    const box = textBox(event.target);
    const block = (event.clipboardData?.getData('text/plain') ?? '').replace(/\r?\n$/, '');
    if (!box || !/[\t\n]/.test(block)) return;
    event.preventDefault();
    flush(box);
    const row = box.closest('tbody')?.dataset.row;
    this.book.paste(row === 'new' ? undefined : Number(row), /** @type {Cell} */ (box.dataset.cell), block);
  }

  /** @param {RowLine} line */
  strike({ row }) {
    if (!row) return;
    if (row.struck === '') this.dialog.ask(row);
    else this.book.edit({ restore_row: row.id });
  }
}

/** What the next row begins with: nothing that is refused where it stands. @param {View} view @returns {NewRow['cells']} */
function proposed({ proposal, rows }) {
  return Object.fromEntries(Object.entries(proposal.cells).filter(([cell, text]) => (
    !rows.some(({ cells: { [/** @type {Cell} */ (cell)]: old } }) => old.problem && old.text.trim() === text))));
}

/** Whether a row holds nothing but what may be proposed. @param {RowView} row */
function isAsProposed({ struck, evidence, cells }) {
  return struck === '' && evidence === '' && CELLS.every((cell) => PROPOSED.includes(cell) || cells[cell].text === '');
}

/** @param {Cell} cell */
function unitOf(cell) {
  return cell === 'rail' || cell === 'remark' ? '' : say(`readings-units-${cell}`);
}

function header() {
  const remark = CELLS.length - 1;
  const column = (/** @type {Cell} */ cell) => heading(say(`readings-columns-${cell}`), unitOf(cell),
    DIRECT.includes(cell) ? `direct ${cell}` : cell);
  return el('thead', { role: 'rowgroup' }, el('tr', { role: 'row' },
    heading(say('readings-row'), '', ''),
    ...CELLS.slice(0, remark).map(column),
    ...OUTPUTS.map((name) => heading(say(`readings-outputs-${name}`), say(`readings-output-units-${name}`), `output ${name}`)),
    ...CELLS.slice(remark).map(column),
    el('td', { role: 'gridcell', class: 'action' })));
}

/** @param {string} name @param {string} unit @param {string} kind */
function heading(name, unit, kind) {
  const parts = unit ? [name, ' ', el('span', { class: 'unit' }, unit)] : [name];
  return el('th', { scope: 'col', role: 'columnheader', class: kind }, ...parts);
}
