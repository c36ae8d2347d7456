/**
 * How the first of the files reads, for a person to look at and to correct.
 */
import { messageOf } from './core.js';
import { el, setHidden, setOptional, setText } from './dom.js';
import { Choice } from './field.js';
import { later } from './strings-later.js';

/** @import { Evidence } from './evidence.js' */
/** @import { Column, Known, Layout, Role, Unit } from './evidence-types.js' */

/** @type {Role[]} */
const ROLES = ['time', 'channel_a', 'channel_b', 'ignored'];
/** @type {Unit[]} */
const UNITS = ['s', 'ms', 'µs', 'ns', 'ps', 'V', 'mV', '1'];

export class LayoutTable {
  /** @param {Evidence} evidence */
  constructor(evidence) {
    this.evidence = evidence;
    /** @type {File | undefined} */
    this.file = undefined;
    /** @type {Layout | undefined} */
    this.layout = undefined;
    /** Whether a person changed anything. */
    this.corrected = false;
    /** What of it a person stated, that each file would else say itself. */
    this.stated = { line: false, step: false };
    this.turn = 0;
    const t = later.traces.layout;
    this.title = el('p', { class: 'plot-words' });
    this.delimiter = new Choice({ id: 'trace-delimiter', label: t.delimiter, options: t.delimiters },
      (delimiter) => void this.know({ delimiter }));
    this.decimal = new Choice({ id: 'trace-decimal', label: t.decimal, options: t.decimals },
      (decimal) => void this.know({ decimal }));
    this.line = number('trace-first-line', t.firstLine, '1', (value) => {
      this.stated.line = true;
      void this.correct((layout) => { layout.first_line = Math.round(value); });
    });
    this.step = number('trace-step', t.step, 'any', (value) => {
      this.stated.step = true;
      void this.correct((layout) => { layout.step = value; });
    });
    this.problem = el('p', { class: 'problem', role: 'alert', hidden: true });
    this.table = el('table', { class: 'trace-layout' });
    this.settings = el('details', { hidden: true }, el('summary', {}, t.settings), el('dl', { class: 'trace-settings' }));
    this.root = el('div', { hidden: true }, this.title,
      el('div', { class: 'fields' }, this.delimiter.root, this.decimal.root, this.line.root, this.step.root),
      this.problem, el('div', { class: 'table-box', tabindex: '0', role: 'group', 'aria-label': t.table }, this.table),
      this.settings);
  }

  /**
   * Looks at a file, if it can be read; what was corrected before is forgotten.
   * @param {File} file
   */
  async look(file) {
    this.file = file;
    this.layout = undefined;
    this.corrected = false;
    this.stated = { line: false, step: false };
    setText(this.title, later.traces.layout.of(file.name));
    setHidden(this.root, false);
    return this.read({});
  }

  forget() {
    this.turn += 1;
    this.file = undefined;
    this.layout = undefined;
    this.corrected = false;
    setHidden(this.root, true);
  }

  /** The layout for all files, where a person corrected it. @returns {Layout | undefined} */
  wanted() {
    const { layout, stated } = this;
    if (!this.corrected || !layout) return undefined;
    return { ...layout, first_line: stated.line ? layout.first_line : 0, step: stated.step ? layout.step : null, start: null };
  }

  /** @param {Known} known */
  async know(known) {
    this.corrected = true;
    const { delimiter, decimal } = this.layout ?? {};
    await this.read({ ...(delimiter && { delimiter }), ...(decimal && { decimal }), ...known });
  }

  /** @param {(layout: Layout) => void} change */
  async correct(change) {
    if (!this.layout) return;
    const layout = structuredClone(this.layout);
    change(layout);
    this.corrected = true;
    await this.read({}, layout);
  }

  /**
   * @param {Known} known
   * @param {Layout} [layout]
   * @returns {Promise<boolean>} whether it can be read so
   */
  async read(known, layout) {
    const { file } = this;
    if (!file) return false;
    this.turn += 1;
    const { turn } = this;
    try {
      const found = await this.evidence.lookAt(file, known, layout);
      if (turn !== this.turn) return false;
      this.layout = found.layout;
      setOptional(this.problem, '');
      this.show(found.layout, found.rows);
      return true;
    } catch (error) {
      if (turn === this.turn) setOptional(this.problem, messageOf(error));
      if (turn === this.turn && !this.layout) this.table.replaceChildren();
      return false;
    }
  }

  /** @param {Layout} layout @param {string[][]} rows */
  show(layout, rows) {
    const t = later.traces.layout;
    this.delimiter.show(layout.delimiter);
    this.decimal.show(layout.decimal);
    put(this.line.input, layout.first_line);
    const timed = layout.columns.some(({ role }) => role === 'time');
    setHidden(this.step.root, timed);
    put(this.step.input, layout.step);
    const columns = layout.columns.map((column, index) => this.head(column, index));
    const head = (/** @type {string} */ name, /** @type {HTMLElement[]} */ cells) => el('tr', {},
      el('th', { scope: 'row' }, name), ...cells);
    this.table.replaceChildren(el('caption', { class: 'unseen' }, t.table), el('tbody', {},
      head(t.column, columns.map(({ name }) => el('td', {}, name))),
      head(t.holds, columns.map(({ role }) => el('td', {}, role))),
      head(t.unit, columns.map(({ unit }) => el('td', {}, unit))),
      ...rows.map((row, index) => head(t.line(layout.first_line + index), columns.map((_, column) => (
        el('td', { class: 'sample' }, row[column] ?? '')))))));
    setHidden(this.settings, layout.settings.length === 0);
    this.settings.lastElementChild?.replaceChildren(...layout.settings.flatMap(({ name, value }) => (
      [el('dt', {}, name), el('dd', {}, value)])));
  }

  /** @param {Column} column @param {number} index */
  head({ role, unit, unit_stated, label }, index) {
    const t = later.traces.layout;
    const name = label || t.numbered(index + 1);
    const roles = pick(t.roleOf(name), ROLES.map((value) => [value, t.roles[value]]), role, (value) => {
      void this.correct((layout) => {
        // Only one column is the time, and only one each trace.
        for (const other of layout.columns) if (other.role === value) other.role = 'ignored';
        const chosen = layout.columns[index];
        if (chosen) chosen.role = /** @type {Role} */ (value);
      });
    });
    const units = pick(t.unitOf(name), UNITS.map((value) => [value, t.units[value]]), unit, (value) => {
      void this.correct((layout) => {
        const chosen = layout.columns[index];
        if (chosen) Object.assign(chosen, { unit: value, unit_stated: true });
      });
    });
    const supposed = role !== 'ignored' && !unit_stated ? [' ', el('span', { class: 'hint' }, t.supposed)] : [];
    return { name: el('span', {}, name), role: roles, unit: el('span', { class: 'trace-unit' }, units, ...supposed) };
  }
}

/**
 * @param {string} label
 * @param {[string, string][]} options
 * @param {string} value
 * @param {(value: string) => void} send
 */
function pick(label, options, value, send) {
  const box = el('select', { 'aria-label': label, change: () => send(box.value) },
    ...options.map(([name, text]) => el('option', { value: name }, text)));
  box.value = value;
  return box;
}

/**
 * @param {string} id
 * @param {string} label
 * @param {string} step
 * @param {(value: number) => void} send
 */
function number(id, label, step, send) {
  const input = el('input', { type: 'number', id, min: step === '1' ? '1' : '0', step, change: () => {
    if (input.valueAsNumber > 0) send(input.valueAsNumber);
  } });
  const root = el('div', { class: 'field' }, el('label', { for: id }, label), el('span', { class: 'box' }, input));
  return { input, root };
}

/** @param {HTMLInputElement} input @param {number | null} value */
function put(input, value) {
  if (value === null) input.value = '';
  else if (input.valueAsNumber !== value) input.valueAsNumber = value;
}
