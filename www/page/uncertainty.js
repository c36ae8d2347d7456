/**
 * The section Uncertainty: the budget, what follows from it, and the trials that check it.
 */
import { benchField } from './apparatus.js';
import { Budget } from './budget.js';
import { byId, setHidden } from './dom.js';
import { Figures } from './figures.js';
import { NoticeList, ofSection, setRefusal } from './notices.js';
import { TrialsPart } from './trials.js';
import { setTold } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Uncertainty {
  /** @param {Book} book */
  constructor(book) {
    this.notices = new NoticeList(book, byId('uncertainty-notices'), ofSection('uncertainty'));
    this.refusal = byId('budget-refusal');
    this.box = byId('budget-box');
    this.budget = new Budget(byId('budget-table'), book);
    this.summary = byId('budget-summary');
    this.figures = new Figures(byId('budget-figures'));
    this.coverage = benchField(book, 'coverage', { term: 'coverage-probability' });
    byId('uncertainty-fields').append(this.coverage.root);
    this.trials = new TrialsPart(book);
  }

  /** @param {View} view */
  show(view) {
    const { budget, line, result } = view;
    this.notices.show(view);
    setRefusal(this.refusal, budget.refusal, { line: line.refusal, result: result.refusal });
    setHidden(this.box, budget.components.length === 0);
    this.budget.show(budget);
    setTold(this.summary, budget.summary);
    this.figures.show(budget.figures);
    this.coverage.show(view.bench.coverage);
    this.trials.show(view);
  }
}
