/**
 * The texts and questions of a hand-out, each beside what it is about, with its answer.
 */
import { byId, el, Keyed, setHidden, setText } from './dom.js';
import { TextField } from './field.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Piece, TaskView, View } from './types.js' */

/** The sections, in the order of the leaves, each with what a text or question is about that stands there. */
export const TASK_PLACES = /** @type {Record<'cautions' | 'apparatus' | 'plan' | 'readings' | 'delays' | 'line' | 'uncertainty' | 'result' | 'report', Piece>} */ ({
  cautions: 'cautions',
  apparatus: 'rails',
  plan: 'positions',
  readings: 'readings',
  delays: 'evidence',
  line: 'line',
  uncertainty: 'uncertainty',
  result: 'result',
  report: 'discussion',
});

/** What a text with marks of CommonMark has. */
const MARKS = /[*_`~\\[<>#&]|^ {0,3}(?:[-+]|\d{1,9}[.)]) |^ {4}|^[-=]+ *$/mu;

/** The longest text that is laid out unasked: one of 10 MB would stop the page for a minute. */
const LONGEST = 40_000;

export class Tasks {
  /** @param {Book} book */
  constructor(book) {
    this.boxes = Object.entries(TASK_PLACES).map(([place, piece]) => {
      const root = el('fieldset', { class: 'group', 'data-written': true, hidden: true }, el('legend', {}, say('handout-tasks')));
      byId(`${place}-title`).after(root);
      return { piece, root, tasks: new Keyed(root, (/** @type {TaskView} */ { id, asks }) => `${id} ${asks}`,
        ({ id, asks }) => new TaskBox(book, id, asks), root.firstElementChild ?? undefined) };
    });
  }

  /** @param {View} view */
  show({ handout: { tasks } }) {
    for (const box of this.boxes) {
      const here = tasks.filter(({ at }) => at === box.piece);
      setHidden(box.root, here.length === 0);
      // The help that belongs to the title may have come since.
      const how = box.root.parentElement?.querySelector(':scope > details.how');
      if (how && how.nextElementSibling !== box.root) how.after(box.root);
      box.tasks.show(here);
    }
  }
}

class TaskBox {
  /** @param {Book} book @param {number} task @param {TaskView['asks']} asks */
  constructor(book, task, asks) {
    this.text = el('div', { class: 'typed' });
    this.root = el('div', { id: `task-${task}-box` }, this.text);
    if (asks === 'nothing') return;
    const words = asks === 'words';
    this.field = new TextField({
      id: `task-${task}`, label: say(words ? 'handout-answer' : 'handout-answer-number'), lines: words ? 3 : 1, prose: words,
    }, (text) => {
      book.edit({ answer: [task, text] });
    });
    this.root.append(this.field.root);
  }

  /** @param {TaskView} view */
  show({ text, answer }) {
    if (text !== this.shown) void this.tell(text);
    this.field?.show(answer);
  }

  /** As typed at once, and with its marks once what reads them has come. @param {string} text */
  async tell(text) {
    this.shown = text;
    if (text.length > LONGEST) {
      this.text.replaceChildren(el('details', {}, el('summary', {}, `${text.slice(0, 200)}…`), text));
      return;
    }
    setText(this.text, text);
    if (!MARKS.test(text)) return;
    // Offline, and never asked for before, it stays as typed.
    const { marked } = await import('./marked-text.js').catch(() => ({ marked: undefined }));
    if (marked && text === this.shown) this.text.replaceChildren(...marked(text));
  }
}
