/**
 * Preparing a hand-out: what is fixed or asked for, texts and questions, and how a class gets it. It stands at the
 * end of the leaf Report, where things leave the notebook; the notebook itself stays the teacher's, to be changed and
 * handed out again.
 */
import { benchField } from './apparatus.js';
import { byId, el, Keyed, setHidden } from './dom.js';
import { Choice, plain, TextField } from './field.js';
import { Posting } from './handout-post.js';
import { DataSets } from './handout-sets.js';
import { TASK_PLACES } from './handout-tasks.js';
import { each, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Asks, Piece, Rule, TaskView, View } from './types.js' */
/** @import { AllOf } from './words.js' */

/** In the order of the leaves. */
const PIECES = /** @type {const} */ ([
  'title', 'cautions', 'source', 'instruments', 'rails', 'screen', 'time_bases', 'air', 'positions', 'readings', 'evidence', 'uncertainty', 'line',
  'result', 'people', 'student_number', 'group', 'date', 'aim', 'method', 'discussion', 'answers',
]);
/** @typedef {AllOf<Piece, typeof PIECES>} AllPieces */
/** What most hand-outs rule. @type {[Piece, Rule][]} */
const USUAL = [
  ['cautions', 'needed'], ['source', 'fixed'], ['rails', 'fixed'], ['aim', 'fixed'],
  ['people', 'needed'], ['student_number', 'needed'], ['group', 'needed'], ['date', 'needed'],
  ['readings', 'needed'], ['result', 'needed'], ['discussion', 'needed'], ['answers', 'needed'],
];
const RULES = /** @type {const} */ (['open', 'fixed', 'needed']);
/** @typedef {AllOf<Rule, typeof RULES>} AllRules */
const ASKS = /** @type {const} */ (['nothing', 'words', 'number']);
/** @typedef {AllOf<Asks, typeof ASKS>} AllAsks */

export class Preparation {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    const rules = each(RULES, (rule) => say(`handout-rules-${rule}`));
    this.rules = PIECES.map((piece) => {
      const choice = new Choice({ id: `rule-${piece}`, label: say(`handout-pieces-${piece}`), options: rules }, (rule) => {
        book.edit({ set_piece: [piece, rule] });
      });
      return { piece, choice };
    });
    this.least = benchField(book, 'least_rows');
    this.tasks = el('div', { id: 'prepare-tasks' });
    this.list = new Keyed(this.tasks, (/** @type {TaskView} */ { id }) => String(id), (task) => new TaskForm(book, task));
    this.sealed = el('input', { type: 'checkbox', id: 'prepare-sealed' });
    this.posting = new Posting(book, () => this.sealed.checked);
    this.sets = new DataSets(book, () => this.sealed.checked);
    this.root = el('details', { id: 'prepare' }, el('summary', {}, say('handout-title')),
      el('p', { class: 'hint' }, say('handout-hint')),
      el('fieldset', { class: 'bare', role: 'none', 'data-written': true },
        el('fieldset', { class: 'group' }, el('legend', {}, say('handout-rules')),
          el('p', { class: 'hint' }, say('handout-rules-hint')),
          el('p', { class: 'actions' }, el('button', { type: 'button', id: 'prepare-usual', click: () => this.usual() }, say('handout-usual'))),
          el('div', { class: 'fields' }, ...this.rules.map(({ choice }) => choice.root), this.least.root)),
        el('fieldset', { class: 'group' }, el('legend', {}, say('handout-tasks-title')),
          el('p', { class: 'hint' }, say('handout-tasks-hint')), this.tasks,
          el('p', { class: 'actions' }, el('button', { type: 'button', id: 'prepare-add', click: () => this.add() }, say('handout-add'))))),
      el('p', { class: 'check' }, this.sealed, ' ', el('label', { for: 'prepare-sealed' }, say('handout-sealed'))),
      this.posting.root, this.sets.root);
    this.root.addEventListener('toggle', () => this.measure());
    this.sealed.addEventListener('change', () => {
      this.sets.forget();
      this.measure();
    });
    byId('report').append(this.root);
  }

  /** @param {View} view */
  show({ bench, handout: { entries, fixed, needed, tasks } }) {
    setHidden(this.root, entries > 0);
    for (const { piece, choice } of this.rules) choice.show(fixed.includes(piece) ? 'fixed' : needed.includes(piece) ? 'needed' : 'open');
    this.least.show(bench.least_rows);
    this.list.show(entries > 0 ? [] : tasks);
    this.sets.show();
    this.measure();
  }

  usual() {
    this.book.edit({ together: USUAL.map(([piece, rule]) => ({ set_piece: [piece, rule] })) });
  }

  add() {
    const id = this.book.newNumber();
    if (!this.book.edit({ set_task: [id, 'line', 'words', ''] })) return;
    this.book.draw();
    byId(`prepare-${id}-text`).focus();
  }

  /** Has the length of the link told, where it is in sight. */
  measure() {
    if (this.root.open && !this.root.hidden) this.posting.show();
  }
}

/** A text or question, as it is written. */
class TaskForm {
  /** @param {Book} book @param {TaskView} task */
  constructor(book, task) {
    this.task = task;
    const { id } = task;
    const change = (/** @type {Partial<TaskView>} */ part) => {
      this.task = { ...this.task, ...part };
      const { at, asks, text } = this.task;
      book.edit({ set_task: [id, at, asks, text] });
    };
    this.at = new Choice({ id: `prepare-${id}-at`, label: say('handout-at'), options: each(Object.values(TASK_PLACES), (piece) => say(`handout-pieces-${piece}`)) },
      (at) => change({ at }));
    this.asks = new Choice({ id: `prepare-${id}-asks`, label: say('handout-asks'), options: each(ASKS, (asks) => say(`handout-asks-${asks}`)) },
      (asks) => change({ asks }));
    this.text = new TextField({ id: `prepare-${id}-text`, label: say('handout-text'), lines: 3 }, (text) => change({ text }));
    this.root = el('div', { class: 'fields' }, this.at.root, this.asks.root, this.text.root,
      el('button', { type: 'button', click: () => book.edit({ remove_task: id }) }, say('handout-remove')));
  }

  /** @param {TaskView} task */
  show(task) {
    this.task = task;
    this.at.show(task.at);
    this.asks.show(task.asks);
    this.text.show(plain(task.text));
  }
}
