/**
 * A drawing as a table, for those who do not see it: folded away below it, and filled only while it is open.
 */
import { el, setAttribute } from './dom.js';
import { inWords, say, tell } from './words.js';

/** @import { PlotTable as Table } from './types.js' */

export class PlotTable {
  /**
   * @param {HTMLElement} canvas what it tells
   * @param {() => Table | null | undefined} read what the core has of it
   */
  constructor(canvas, read) {
    this.read = read;
    this.table = el('table', { class: 'plot-table', 'aria-label': canvas.getAttribute('aria-label') ?? '' });
    this.box = el('div', { class: 'table-box', tabindex: '0', role: 'group', 'aria-label': say('plot-table') }, this.table);
    this.root = el('details', { id: `${canvas.id}-table`, toggle: () => this.show() },
      el('summary', {}, say('plot-table')), this.box);
    setAttribute(canvas, 'aria-details', this.root.id);
  }

  show() {
    const told = this.root.open ? this.read() : undefined;
    this.table.replaceChildren(...(told ? parts(told) : []));
  }
}

/** @param {Table} told */
function parts({ columns, rows }) {
  const heads = columns.map(({ name, unit }) => el('th', { scope: 'col' }, tell(name), ' ', el('span', { class: 'unit' }, unit)));
  const lines = rows.map(([name = '', ...texts]) => (
    el('tr', {}, el('th', { scope: 'row' }, inWords(name)), ...texts.map((text) => el('td', {}, inWords(text))))));
  return [el('thead', {}, el('tr', {}, ...heads)), el('tbody', {}, ...lines)];
}
