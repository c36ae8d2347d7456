/**
 * Where a class lost its uncertainty: the components of all budgets, each with its share in the middle.
 */
import { el, setHidden, setText } from './dom.js';
import { inWords, say } from './words.js';

/** @import { Value } from './types.js' */
/** @import { Class } from './worker-types.js' */

/** @type {('component' | 'share' | 'largest')[]} */
const COLUMNS = ['component', 'share', 'largest'];

export class ClassBudget {
  constructor() {
    this.hint = el('p', { class: 'hint' });
    this.body = el('tbody');
    this.root = el('section', { id: 'class-budget', 'aria-labelledby': 'class-budget-title', hidden: true },
      el('h3', { id: 'class-budget-title' }, say('class-lost')), this.hint,
      el('div', { class: 'table-box' }, el('table', {}, el('caption', { class: 'unseen' }, say('class-lost')),
        el('thead', {}, el('tr', {}, ...COLUMNS.map((column) => el('th', { scope: 'col' }, say(`class-lost-${column}`))))), this.body)));
  }

  /** @param {Class | undefined} told @param {Value[]} names of the components */
  show(told, names) {
    const lost = told?.lost ?? [];
    setHidden(this.root, lost.length === 0);
    setText(this.hint, say('class-lost-hint', { n: told?.budgets ?? 0 }));
    this.body.replaceChildren(...lost.map(({ component, share, text, largest }) => {
      const bar = el('span');
      bar.style.inlineSize = `${share}%`;
      return el('tr', {}, el('th', { scope: 'row' }, inWords(names[component] ?? '')),
        el('td', {}, el('span', { class: 'bar', 'aria-hidden': 'true' }, bar), text), el('td', {}, String(largest)));
    }));
  }
}
