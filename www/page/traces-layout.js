/**
 * How the first of the files reads, for a person to look at and to correct.
 */
import { messageOf } from './core.js';
import { el, setHidden, setOptional, setText } from './dom.js';
import { Choice, plain, TextField } from './field.js';
import { LayoutPreview } from './traces-preview.js';
import { each, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { TraceFiles } from './evidence-types.js' */
/** @import { ColumnUnit, Known, Layout, Role, TraceColumn } from './worker-types.js' */

/** @type {Role[]} */
const ROLES = ['time', 'channel_a', 'channel_b', 'ignored'];
/** @type {ColumnUnit[]} */
const UNITS = ['s', 'ms', 'µs', 'ns', 'ps', 'V', 'mV', '1'];

/** The last line of a file that may be said to be the first with samples. */
const LAST_LINE = 1_000_000;

export class LayoutTable {
  /** @param {Book} book @param {EvidenceWorkers} evidence */
  constructor(book, evidence) {
    this.book = book;
    this.evidence = evidence;
    /** @type {File | undefined} */
    this.file = undefined;
    /** All files of its pair. @type {File[]} */
    this.pair = [];
    this.preview = new LayoutPreview(book, evidence);
    /** @type {Layout | undefined} */
    this.layout = undefined;
    /** The corrected one by which the file is being read: what is corrected next is corrected in it. @type {Layout | undefined} */
    this.asked = undefined;
    /** Ends when the file was read as it was asked for last. @type {Promise<unknown>} */
    this.reading = Promise.resolve();
    /** Whether a person changed anything. */
    this.corrected = false;
    /** What of it a person stated, that each file would else say itself. */
    this.stated = { line: false, step: false };
    this.turn = 0;
    this.title = el('p', { class: 'plot-words' });
    this.delimiter = new Choice({
      id: 'trace-delimiter',
      label: say('traces-layout-delimiter'),
      options: each(['tab', 'semicolon', 'comma', 'bar', 'space'], (key) => say(`traces-layout-delimiters-${key}`)),
    },
      (delimiter) => void this.know({ delimiter }));
    this.decimal = new Choice({
      id: 'trace-decimal',
      label: say('traces-layout-decimal'),
      options: each(['point', 'comma'], (key) => say(`traces-layout-decimals-${key}`)),
    },
      (decimal) => void this.know({ decimal }));
    this.line = new TextField({ id: 'trace-first-line', label: say('traces-layout-first-line') }, (text) => {
      const { value, problem } = book.desk.typed_whole_number(text, 1, LAST_LINE);
      this.line.show(plain(text, problem));
      if (value === null) return;
      this.stated.line = true;
      void this.correct((layout) => { layout.first_line = value; });
    });
    this.step = new TextField({ id: 'trace-step', label: say('traces-layout-step') }, (text) => {
      const { value, problem } = book.desk.typed_time(text);
      this.step.show(plain(text, problem));
      if (value === null) return;
      this.stated.step = true;
      void this.correct((layout) => Object.assign(layout, { step: value, is_step_supposed: false }));
    });
    this.problem = el('p', { class: 'problem', role: 'alert', hidden: true });
    this.body = el('tbody');
    this.table = el('table', { class: 'trace-layout' }, el('caption', { class: 'unseen' }, say('traces-layout-table')), this.body);
    /** What the columns are called, and their choices. @type {string[]} */
    this.names = [];
    /** @type {ReturnType<LayoutTable['head']>[]} */
    this.heads = [];
    /** @type {ReturnType<LayoutTable['head']>[] | undefined} */
    this.shownHeads = undefined;
    this.settings = el('details', { hidden: true }, el('summary', {}, say('traces-layout-settings')), el('dl', { class: 'trace-settings' }));
    this.root = el('div', { hidden: true }, this.title,
      el('div', { class: 'fields' }, this.delimiter.root, this.decimal.root, this.line.root, this.step.root),
      this.problem, el('div', { class: 'table-box', tabindex: '0', role: 'group', 'aria-label': say('traces-layout-table') }, this.table),
      this.settings, this.preview.root);
  }

  /**
   * Looks at a file, if it can be read; what was corrected before is forgotten.
   * @param {File} file
   * @param {File[]} pair all files of its pair
   */
  async look(file, pair) {
    this.file = file;
    this.pair = pair;
    this.layout = undefined;
    this.corrected = false;
    this.stated = { line: false, step: false };
    setText(this.title, say('traces-layout-of', { name: file.name }));
    setHidden(this.root, false);
    return this.read({});
  }

  forget() {
    this.turn += 1;
    this.file = undefined;
    this.layout = undefined;
    this.asked = undefined;
    this.corrected = false;
    this.preview.hide();
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
    this.reading = this.read({ ...(delimiter && { delimiter }), ...(decimal && { decimal }), ...known });
    await this.reading;
  }

  /** @param {(layout: Layout) => void} change */
  async correct(change) {
    const before = this.asked ?? this.layout;
    if (!before) return;
    const layout = structuredClone(before);
    change(layout);
    this.corrected = true;
    this.reading = this.read({}, layout);
    await this.reading;
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
    this.asked = layout;
    try {
      const found = await this.evidence.lookAt(file, known, layout);
      if (turn !== this.turn) return false;
      this.asked = undefined;
      this.layout = found.layout;
      setOptional(this.problem, '');
      this.show(found.layout, found.rows);
      void this.preview.show(/** @type {TraceFiles} */ (this.pair.map((one) => ({ file: one, layout: this.wanted() }))));
      return true;
    } catch (error) {
      if (turn !== this.turn) return false;
      this.asked = undefined;
      setOptional(this.problem, messageOf(error));
      this.preview.hide();
      if (!this.layout) this.clear();
      return false;
    }
  }

  clear() {
    this.names = [];
    this.heads = [];
    this.shownHeads = undefined;
    this.body.replaceChildren();
  }

  /** @param {Layout} layout @param {string[][]} rows */
  show(layout, rows) {
    this.delimiter.show(layout.delimiter);
    this.decimal.show(layout.decimal);
    const { desk } = this.book;
    this.line.show(plain(desk.number_text(layout.first_line)));
    const timed = layout.columns.some(({ role }) => role === 'time');
    setHidden(this.step.root, timed);
    this.step.show(plain(layout.step === null ? '' : desk.number_text(layout.step)));
    // Made anew only for other columns, so that a choice keeps the focus while it is made.
    const names = layout.columns.map(({ label }, index) => label || String(index + 1));
    if (names.join('\n') !== this.names.join('\n')) {
      this.names = names;
      this.heads = names.map((name, index) => this.head(name, index));
    }
    const { heads } = this;
    for (const [index, column] of layout.columns.entries()) heads[index]?.show(column);
    const line = (/** @type {string} */ name, /** @type {HTMLElement[]} */ parts) => el('tr', {},
      el('th', { scope: 'row' }, name), ...parts);
    const rowsShown = rows.map((row, index) => line(say('traces-layout-line', { n: layout.first_line + index }),
      names.map((_, column) => el('td', { class: 'sample' }, row[column] ?? ''))));
    if (this.body.firstElementChild?.children.length === names.length + 1 && this.shownHeads === heads) {
      [...this.body.children].slice(3).forEach((old) => old.remove());
      this.body.append(...rowsShown);
    } else {
      this.shownHeads = heads;
      this.body.replaceChildren(line(say('traces-layout-column'), heads.map(({ name }) => el('td', {}, name))),
        line(say('traces-layout-holds'), heads.map(({ role }) => el('td', {}, role))),
        line(say('traces-layout-unit'), heads.map(({ unit }) => el('td', {}, unit))), ...rowsShown);
    }
    setHidden(this.settings, layout.settings.length === 0);
    this.settings.lastElementChild?.replaceChildren(...layout.settings.flatMap(({ name, value }) => (
      [el('dt', {}, name), el('dd', {}, value)])));
  }

  /** @param {string} name @param {number} index */
  head(name, index) {
    const role = pick(say('traces-layout-role-of', { name }), ROLES.map((value) => [value, say(`traces-layout-roles-${value}`)]), (value) => {
      void this.correct(({ columns }) => {
        const chosen = columns[index];
        if (!chosen) return;
        // Only one column is the time, and only one each trace: the two change places.
        const other = value === 'ignored' ? undefined : columns.find((column) => column.role === value);
        if (other) other.role = chosen.role;
        chosen.role = /** @type {Role} */ (value);
      });
    });
    const nameOf = (/** @type {ColumnUnit} */ value) => (value === '1' ? say('traces-layout-unit-none') : value);
    const unit = pick(say('traces-layout-unit-of', { name }), UNITS.map((value) => [value, nameOf(value)]), (value) => {
      void this.correct(({ columns }) => {
        const chosen = columns[index];
        if (chosen) Object.assign(chosen, { unit: value, unit_stated: true });
      });
    });
    // Stands there as long as nobody stated a unit: to choose one, be it the same, is to state it.
    const assumed = el('option', { value: '', disabled: true });
    /** @param {TraceColumn} column */
    const show = (column) => {
      if (role.value !== column.role) role.value = column.role;
      const stated = column.unit_stated || column.role === 'ignored';
      if (stated) assumed.remove();
      else if (!assumed.parentNode) unit.prepend(assumed);
      setText(assumed, say('traces-layout-supposed', { unit: nameOf(column.unit) }));
      const shown = stated ? column.unit : '';
      if (unit.value !== shown) unit.value = shown;
    };
    return { name, role, unit, show };
  }
}

/**
 * @param {string} label
 * @param {[string, string][]} options
 * @param {(value: string) => void} send
 */
function pick(label, options, send) {
  const box = el('select', { 'aria-label': label, change: () => send(box.value) },
    ...options.map(([name, text]) => el('option', { value: name }, text)));
  return box;
}
