/**
 * The points of both plots as a table, for those who do not see them: gone through by the arrow keys, each with a way to its
 * row. It is filled only while it is open.
 */
import { byId, el, Keyed, setAttribute, setHidden, setText } from './dom.js';
import { focusCell } from './grid.js';
import { Roving } from './roving.js';
import { OUTPUTS } from './row.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { RowView, View } from './types.js' */

/** What has no residual: the rows of a line that goes through all of them. */
const NONE = '–';

export class Points {
  /** @param {Book} book */
  constructor(book) {
    this.body = el('tbody');
    this.links = new Roving(this.body, 'a');
    this.points = new Keyed(this.body, (/** @type {RowView} */ row) => String(row.id), () => new Point());
    this.box = el('details', { id: 'points', toggle: () => this.show(book.current()) },
      el('summary', { id: 'points-title' }, say('points-title')),
      el('p', { class: 'hint' }, say('points-hint')),
      el('table', { id: 'points-table', 'aria-labelledby': 'points-title' }, header(), this.body));
    byId('under-plots').append(this.box);
    for (const plot of ['line-plot', 'residual-plot']) setAttribute(byId(plot), 'aria-details', 'points');
    this.show(book.current());
  }

  /** @param {View} view */
  show({ rows }) {
    // As the plot of the line.
    setHidden(this.box, !rows.some(({ state }) => state === 'used'));
    this.points.show(this.box.open ? rows.filter(isDrawn) : []);
    this.links.settle();
  }
}

/** One point: a way to its row, and what the row's outputs say. */
class Point {
  constructor() {
    /** @type {RowView | undefined} */
    this.row = undefined;
    this.link = el('a', { tabindex: '-1', click: (/** @type {MouseEvent} */ event) => this.follow(event) });
    this.head = el('th', { scope: 'row', class: 'rows' }, this.link);
    this.outputs = OUTPUTS.map(() => el('td'));
    this.root = el('tr', {}, this.head, ...this.outputs);
  }

  /** @param {RowView} row */
  show(row) {
    if (row === this.row) return;
    this.row = row;
    const { id, number: n, distance, delay, struck: reason } = row;
    const residual = row.residual || NONE;
    setAttribute(this.link, 'href', `#row-${id}`);
    setText(this.link, say('notices-row', { n }));
    setAttribute(this.link, 'aria-label', reason
      ? say('points-struck', { n, distance, delay, reason }) : say('points-point', { n, distance, delay, residual }));
    // The head is named by the number alone, which is read out at each cell.
    setAttribute(this.head, 'aria-label', String(n));
    const texts = { distance, delay, residual: reason ? say('readings-struck', { reason }) : residual };
    OUTPUTS.forEach((name, index) => setText(/** @type {Node} */ (this.outputs[index]), texts[name]));
  }

  /** Goes into the row, where a plain press asks for that. @param {MouseEvent} event */
  follow(event) {
    if (!this.row || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    focusCell(byId(`row-${this.row.id}`), 'rail');
  }
}

/** Whether a row has a point in the plots. @param {RowView} row */
function isDrawn({ state, distance, delay }) {
  return (state === 'used' || state === 'struck') && distance !== '' && delay !== '';
}

function header() {
  const outputs = OUTPUTS.map((name) => el('th', { scope: 'col' },
    say(`readings-output-names-${name}`), ' ', el('span', { class: 'unit' }, say(`readings-output-units-${name}`))));
  return el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, say('readings-row')), ...outputs));
}
