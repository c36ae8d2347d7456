/**
 * The tour of the demo: from the apparatus to the report in a few steps, each with a sentence or two beside what it speaks
 * of. It changes nothing and can be left at any time.
 */
import { byId, el, setHidden, setText } from './dom.js';
import { reveal } from './leaves.js';
import { say } from './words.js';

/** What each step speaks of, in the order of the tour. */
const STEPS = /** @type {const} */ ([
  ['apparatus', '#bench-figure'],
  ['readings', '#readings .table-box'],
  ['line', '#line-figure'],
  ['residuals', '#residual-figure'],
  ['budget', '#budget-box .budget'],
  ['result', '#result-figures'],
  ['report', '#report .take'],
  ['end', '#readings'],
]);

export class Tour {
  constructor() {
    this.step = 0;
    this.place = el('p', { class: 'hint' });
    this.text = el('p');
    this.back = el('button', { type: 'button', click: () => this.go(this.step - 1) }, say('tour-back'));
    this.next = el('button', { type: 'button', class: 'main', click: () => this.go(this.step + 1) });
    this.quit = el('button', { type: 'button', class: 'quiet', click: () => this.leave() }, say('tour-leave'));
    this.root = el('aside', {
      id: 'tour',
      'aria-label': say('tour'),
      keydown: (/** @type {KeyboardEvent} */ event) => { if (event.key === 'Escape') this.leave(); },
    }, el('div', { role: 'status' }, this.place, this.text), el('p', { class: 'actions' }, this.back, this.next, this.quit));
  }

  /** Begins at the first step. */
  start() {
    document.body.append(this.root);
    this.go(0);
    this.next.focus({ preventScroll: true });
  }

  /** @param {number} step */
  go(step) {
    const here = STEPS[step];
    if (!here) {
      this.leave();
      return;
    }
    const [name, target] = here;
    this.step = step;
    setText(this.place, say('tour-place', { n: step + 1, all: STEPS.length }));
    setText(this.text, say(`tour-${name}`));
    const isLast = step + 1 === STEPS.length;
    setText(this.next, say(isLast ? 'tour-done' : 'tour-next'));
    setHidden(this.back, step === 0);
    setHidden(this.quit, isLast);
    this.mark(document.querySelector(target));
  }

  /** @param {Element | null} target */
  mark(target) {
    document.querySelector('.toured')?.classList.remove('toured');
    if (target) reveal(target);
    target?.classList.add('toured');
    target?.scrollIntoView({ block: 'start' });
  }

  leave() {
    this.mark(null);
    this.root.remove();
    reveal(byId('readings'));
    byId('readings').focus({ preventScroll: true });
  }
}
