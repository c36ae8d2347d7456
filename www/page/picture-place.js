/**
 * Where pictures are worked on: what takes them in, the list of those there are, and the open one with its row.
 */
import { el, setText } from './dom.js';
import { plain, TextField } from './field.js';
import { filePicker } from './file-picker.js';
import { Figures } from './figures.js';
import { Board } from './picture-board.js';
import { VideoFrames } from './video-frames.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Owner } from './picture-board.js' */
/** @import { Mark, MarkKey } from './picture-sheet.js' */

/** Cells of a row that stand beside its picture. */
export const FIELDS = /** @type {const} */ (['rail', 'reading', 'time_base']);

/** The most divisions that a grid has across or down. */
const MOST_DIVISIONS = 100;

/** What takes pictures in, and the size of their grid. */
export class IntakeBox {
  /** @param {Book} book @param {{take: (files: File[], into?: number) => void, resize: () => void}} does */
  constructor(book, { take, resize }) {
    this.book = book;
    /** Divisions of a grid that is new. */
    this.divisions = { columns: 10, rows: 8 };
    const files = filePicker(say('pictures-add'), { id: 'picture-files', accept: 'image/*,video/*' }, (chosen) => take(chosen));
    /** Why photos were not taken. @type {string[]} */
    this.reasons = [];
    this.frames = new VideoFrames(book, { take, refuse: () => this.refuse(this.reasons) });
    const side = (/** @type {'columns' | 'rows'} */ name) => {
      const field = new TextField({ id: `grid-${name}`, label: say(`pictures-${name}`) }, (text) => {
        const { value, problem } = book.desk.typed_whole_number(text, 1, MOST_DIVISIONS);
        field.show(plain(text, problem));
        if (value === null || value === this.divisions[name]) return;
        this.divisions[name] = value;
        resize();
      });
      return field;
    };
    this.sides = { columns: side('columns'), rows: side('rows') };
    this.showSize(this.divisions);
    this.status = el('p', { role: 'status', class: 'plot-words', id: 'picture-status' });
    this.refused = el('ul', { class: 'problems', id: 'picture-refused', role: 'list', 'aria-label': say('pictures-refused-title') });
    this.fields = el('div', { class: 'fields' }, el('p', { class: 'actions wide' }, files), this.sides.columns.root, this.sides.rows.root,
      this.frames.root);
  }

  /** Says nothing more, and lets go of what was not taken in. */
  clear() {
    this.frames.clear();
    this.refuse([]);
    this.say('');
  }

  /** The divisions of a grid that is new. */
  size() {
    return { ...this.divisions };
  }

  /** @param {{columns: number, rows: number}} size */
  showSize({ columns, rows }) {
    this.divisions = { columns, rows };
    for (const name of /** @type {const} */ (['columns', 'rows'])) {
      const field = this.sides[name];
      // One who types is not corrected.
      if (document.activeElement !== field.box) field.show(plain(this.book.desk.number_text(this.divisions[name])));
    }
  }

  /** @param {string} text */
  say(text) {
    setText(this.status, text);
  }

  /** Tells it beside what is said of videos. @param {string[]} reasons why photos were not taken */
  refuse(reasons) {
    this.reasons = reasons;
    const all = [...this.frames.broken, ...reasons];
    this.refused.replaceChildren(...all.map((why) => el('li', {}, why)));
    this.refused.hidden = all.length === 0;
  }
}

/** Which pictures there are. */
export class Chooser {
  /** @param {(row: number) => void} open */
  constructor(open) {
    this.choice = labelled(say('pictures-choose'),
      el('select', { id: 'picture-choice', change: () => open(Number(this.choice.input.value)) }));
    this.count = el('p', { class: 'plot-words', id: 'picture-count' });
    this.root = el('div', { class: 'picture-chooser', hidden: true }, this.choice.root, this.count);
  }

  /** @param {{value: string, text: string}[]} options @param {string} count in words */
  show(options, count) {
    const { input } = this.choice;
    options.forEach(({ value, text }, index) => {
      const option = input.options[index] ?? input.appendChild(el('option'));
      if (option.value !== value) option.value = value;
      setText(option, text);
    });
    input.options.length = options.length;
    setText(this.count, count);
  }

  /** @param {number} row */
  choose(row) {
    this.choice.input.value = String(row);
  }
}

/** @typedef {'accept' | 'exchange' | 'againA' | 'againB' | 'drop' | 'own' | 'off'} Action */

/** The open picture, and beside it what is said of it, its row's fields and figures, and what can be done. */
export class Workplace {
  /**
   * @param {{press: (action: Action) => void, set: (was: Mark) => void, drop: (place: MarkKey) => void,
   *   moved: () => void, write: (value: number) => string, levels: Owner['levels'], type: (cell: typeof FIELDS[number], text: string) => void}} does
   */
  constructor({ press, set, drop, moved, write, levels, type }) {
    this.board = new Board({ set, drop, moved, accept: () => press('accept'), write, levels });
    /** Where the ends of the edges are seen to. */
    this.ends = el('div');
    this.said = el('div', { class: 'picture-said', role: 'status', id: 'picture-said' });
    this.problem = el('p', { class: 'problem', id: 'picture-problem', hidden: true });
    this.lacks = el('p', { class: 'hint', id: 'picture-lacks', hidden: true });
    this.fields = FIELDS.map((cell) => ({ cell, field: new TextField(
      { id: `picture-${cell}`, label: say(`pictures-fields-${cell}`), prose: cell === 'rail' }, (text) => type(cell, text)) }));
    const button = (/** @type {Action} */ action, /** @type {string} */ text, kind = '') => el('button',
      { type: 'button', id: `picture-${action}`, class: kind, click: () => press(action) }, text);
    this.accept = button('accept', say('pictures-accept'), 'main');
    this.doubt = el('p', { class: 'hint', id: 'picture-doubt', hidden: true });
    this.exchange = button('exchange', say('pictures-exchange'));
    this.againA = button('againA', say('pictures-mark-again', { name: say('pictures-marks-a') }));
    this.againB = button('againB', say('pictures-mark-again', { name: say('pictures-marks-b') }));
    this.drop = button('drop', say('pictures-drop-mark'));
    this.own = button('own', say('pictures-own-corners'));
    this.off = button('off', say('pictures-take-off'), 'quiet');
    this.shared = el('p', { class: 'hint', id: 'picture-shared', hidden: true });
    const list = el('dl', { class: 'figures', id: 'picture-figures' });
    this.figures = new Figures(list);
    // Next to the picture, so that both are in sight while marks are looked at in turn.
    this.view = el('div', {}, this.board.root, this.board.tools, el('div', { class: 'actions' }, this.accept, this.exchange), this.doubt,
      el('p', { class: 'hint' }, say('pictures-how')));
    this.root = el('div', { class: 'picture-work', hidden: true }, this.view,
      el('div', {}, this.said, this.problem,
        el('div', { class: 'fields' }, ...this.fields.map(({ field }) => field.root)), this.lacks, list, this.shared,
        el('div', { class: 'actions' }, this.againA, this.againB, this.drop, this.own, this.off), this.ends));
  }

  /** @param {string[]} lines */
  say(lines) {
    this.said.replaceChildren(...lines.map((line) => el('p', {}, line)));
  }
}

/**
 * @template {HTMLInputElement | HTMLSelectElement} Box
 * @param {string} label
 * @param {Box} input
 */
function labelled(label, input) {
  return { input, root: el('div', { class: 'field' }, el('label', { for: input.id }, label),
    el('span', { class: 'box' }, input)) };
}
