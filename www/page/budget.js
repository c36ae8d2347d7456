/**
 * The budget: a row for each component of the uncertainty, the largest first, and in each row a slider that asks
 * what the uncertainty would be if that component were smaller or larger. Asking changes nothing in the notebook.
 */
import { messageOf } from './core.js';
import { alike, el, Keyed, setAttribute, setHidden, setText } from './dom.js';
import { lettered } from './figures.js';
import { helpLink } from './help.js';
import { inWords, say, setTold, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { BudgetView, ComponentView, Figure } from './types.js' */

/** @typedef {'name' | 'acts_on' | 'u' | 'shape' | 'degrees_of_freedom' | 'sensitivity' | 'contribution'} BudgetColumn */

/** The columns of plain text, in their order. @type {BudgetColumn[]} */
const COLUMNS = ['name', 'acts_on', 'u', 'shape', 'degrees_of_freedom', 'sensitivity', 'contribution'];

/** All columns, in their order. @type {(BudgetColumn | 'share' | 'what_if')[]} */
const ALL_COLUMNS = [...COLUMNS, 'share', 'what_if'];

/** The terms of the glossary among the columns. @type {Partial<Record<BudgetColumn | 'share' | 'what_if', string>>} */
const TERMS = {
  u: 'standard-uncertainty', shape: 'rectangular', degrees_of_freedom: 'degrees-of-freedom', sensitivity: 'sensitivity',
  contribution: 'combined',
};

/** What a component can be multiplied by: the places of the slider. */
const FACTORS = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2];
/** How these are written. */
const WRITTEN = ['× 0', '× ¼', '× ½', '× ¾', '× 1', '× 1¼', '× 1½', '× 1¾', '× 2'];
/** The place of the slider at which nothing is asked. */
const AS_IT_IS = FACTORS.indexOf(1);

export class Budget {
  /**
   * @param {HTMLElement} table
   * @param {Book} book
   */
  constructor(table, book) {
    this.book = book;
    const head = header();
    table.append(el('caption', { class: 'unseen' }, say('budget-caption')), head);
    this.lines = new Keyed(table, (/** @type {ComponentView} */ component) => component.id,
      ({ id }) => new ComponentLine(id, (place) => this.ask(id, place)), head);
    /** The component that is asked about, and the place of its slider. */
    this.asked = { id: '', place: AS_IT_IS };
    /** The figures as they are. @type {Figure[]} */
    this.figures = [];
  }

  /** @param {BudgetView} budget */
  show({ components, figures }) {
    this.figures = figures;
    this.lines.show(components);
    this.answer();
  }

  /** @param {string} id @param {number} place */
  ask(id, place) {
    this.asked = { id, place };
    this.answer();
  }

  /** Answers in the row of the component that is asked about; one at a time, since each answer changes it alone. */
  answer() {
    const { id, place } = this.asked;
    for (const [key, line] of this.lines.parts) line.answer(key === id ? place : AS_IT_IS, (factor) => this.what(key, factor));
  }

  /**
   * The figures that would change, each as it would be and as it is now; or why there are none.
   * @param {string} id
   * @param {number} factor
   */
  what(id, factor) {
    try {
      const { refusal, figures } = this.book.desk.what_if(id, factor);
      if (refusal) return tell(refusal);
      const now = new Map(this.figures.map((figure) => [figure.id, inWords(figure.value)]));
      return figures.filter(({ id: each, value }) => now.get(each) !== inWords(value))
        .map((figure) => ({ ...figure, now: now.get(figure.id) ?? '' }));
    } catch (error) {
      return messageOf(error);
    }
  }
}

/** @typedef {string | (Figure & {now: string})[]} WhatIfAnswer */

class ComponentLine {
  /**
   * @param {string} id
   * @param {(place: number) => void} ask
   */
  constructor(id, ask) {
    /** @type {ComponentView | undefined} */
    this.component = undefined;
    this.texts = COLUMNS.map(() => el('span'));
    this.bar = el('span', { class: 'bar' }, el('span'));
    this.share = el('span');
    this.slider = el('input', {
      type: 'range', id: `what-if-${id}`, min: '0', max: String(FACTORS.length - 1), step: '1', value: String(AS_IT_IS),
      input: () => ask(Number(this.slider.value)),
    });
    this.factor = el('span', { class: 'factor', 'aria-hidden': 'true' });
    this.remark = el('p', { class: 'hint', hidden: true });
    this.answered = el('output');
    this.reset = el('button', { type: 'button', class: 'quiet', click: () => {
      ask(AS_IT_IS);
      this.slider.focus();
    } }, say('budget-reset'));
    this.asking = el('p', { class: 'answer', hidden: true }, this.answered, ' ', this.reset);
    const cells = COLUMNS.map((column, place) => {
      const text = /** @type {HTMLElement} */ (this.texts[place]);
      return column === 'name'
        ? el('th', { scope: 'row', role: 'rowheader' }, text)
        : cell(column, text);
    });
    this.below = el('tr', { role: 'row', class: 'below' },
      el('td', { role: 'cell', colspan: String(COLUMNS.length + 2) }, this.remark, this.asking));
    this.root = el('tbody', { role: 'rowgroup' },
      el('tr', { role: 'row' }, ...cells, cell('share', this.bar, this.share), cell('what_if', this.slider, this.factor)),
      this.below);
  }

  /** @param {ComponentView} component */
  show(component) {
    if (alike(component, this.component)) return;
    this.component = component;
    COLUMNS.forEach((column, place) => setTold(/** @type {HTMLElement} */ (this.texts[place]), component[column]));
    // Set as a property: the page's policy allows no style attribute.
    /** @type {HTMLElement} */ (this.bar.firstElementChild).style.inlineSize = component.bar;
    setText(this.share, component.share_text);
    setTold(this.remark, component.remark);
    setAttribute(this.root, 'class', component.contribution === '0' ? 'nothing' : undefined);
    setAttribute(this.slider, 'aria-label', say('budget-what-if-of', { name: inWords(component.name) }));
  }

  /**
   * Stands at a place of the slider and shows what would be.
   * @param {number} place
   * @param {(factor: number) => WhatIfAnswer} what
   */
  answer(place, what) {
    const name = WRITTEN[place] ?? '';
    if (this.slider.value !== String(place)) this.slider.value = String(place);
    setAttribute(this.slider, 'aria-valuetext', name);
    setText(this.factor, name);
    const asks = place !== AS_IT_IS;
    this.answered.replaceChildren(...(asks ? written(name, what(FACTORS[place] ?? 1)) : []));
    setHidden(this.asking, !asks);
    setHidden(this.below, !asks && this.remark.hidden);
  }
}

/**
 * @param {string} name of the factor
 * @param {WhatIfAnswer} answer
 * @returns {(Node | string)[]}
 */
function written(name, answer) {
  if (typeof answer === 'string') return [answer];
  if (answer.length === 0) return [say('budget-answer-none', { factor: name })];
  const changes = answer.map(({ symbol, value, now }) => (
    say('budget-change', { symbol: `${OPEN}${symbol}${CLOSE}`, value, now })));
  return withSymbols(say('budget-answer', { factor: name, changes: { all: changes } }));
}

/** Marks about a symbol inside a sentence, by which it is found again (Unicode, private use). */
const [OPEN, CLOSE] = ['\ue000', '\ue001'];

/** A sentence with its symbols set as symbols. @param {string} sentence */
function withSymbols(sentence) {
  return sentence.split(new RegExp(`[${OPEN}${CLOSE}]`, 'u'))
    .map((part, place) => (place % 2 === 1 ? el('i', { class: 'symbol' }, ...lettered(part)) : part));
}

function header() {
  return el('thead', { role: 'rowgroup' }, el('tr', { role: 'row' }, ...ALL_COLUMNS.map((column) => (
    el('th', { scope: 'col', role: 'columnheader', class: `in-${column}` }, headed(column))))));
}

/** What a column is called; a term of the glossary leads there. @param {BudgetColumn | 'share' | 'what_if'} column */
function headed(column) {
  const name = say(`budget-columns-${column}`);
  const term = TERMS[column];
  return term ? helpLink(`term-${term}`, { class: 'term', title: say('how-glossary') }, name) : name;
}

/** @param {BudgetColumn | 'share' | 'what_if'} column @param {...Node} content */
function cell(column, ...content) {
  return el('td', { role: 'cell', class: `in-${column}`, 'data-label': say(`budget-columns-${column}`) }, ...content);
}
