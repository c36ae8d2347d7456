/**
 * A notebook that was handed in, to be read: its report, made here from the file, over the page. Nothing of it is kept, and
 * nothing can be changed in it; what a teacher says of it is written beside its places.
 */
import { commentStyles, layComments, saidBy } from './class-comments.js';
import { core } from './core.js';
import { el, setHidden, setText } from './dom.js';
import { parsed } from './files.js';
import { say, tell } from './words.js';

/** @import { Feedback } from './worker-types.js' */
/**
 * What is done with a notebook that is read.
 * @typedef {object} Doing
 * @property {Feedback | undefined} feedback what is said of it, to be written on; nothing where there is nothing in it
 * @property {Feedback[]} others what others say of it, to be read
 * @property {() => void} changed told of each change of what is said
 * @property {() => void} take takes what is said away as a file
 * @property {() => void} copy puts a copy of it among one's own notebooks
 */

export class ClassReading {
  constructor() {
    this.title = el('h2', { id: 'class-reading-title' });
    this.host = el('div', { class: 'table-box', tabindex: '0', role: 'group', 'aria-labelledby': 'class-reading-title' });
    this.inside = this.host.attachShadow({ mode: 'open' });
    /** @type {Doing | undefined} */
    this.doing = undefined;
    this.general = el('textarea', { id: 'class-general', rows: '3', dir: 'auto', input: () => this.write('general', this.general.value) });
    this.mark = el('input', { type: 'text', id: 'class-mark', autocomplete: 'off', dir: 'auto', input: () => this.write('mark', this.mark.value) });
    this.others = el('div', { class: 'wide' });
    this.said = el('div', { class: 'fields' },
      el('div', { class: 'field wide' }, el('label', { for: 'class-general' }, say('class-general')), el('span', { class: 'box' }, this.general)),
      el('div', { class: 'field' }, el('label', { for: 'class-mark' }, say('class-mark')), el('span', { class: 'box' }, this.mark)),
      this.others);
    this.file = el('button', { type: 'button', click: () => this.doing?.take() }, say('class-feedback-take-one'));
    this.dialog = el('dialog', { class: 'handed', 'aria-labelledby': 'class-reading-title', close: () => this.inside.replaceChildren() },
      this.title, el('p', { class: 'hint' }, say('class-reading-hint')),
      el('p', { class: 'actions' },
        el('button', { type: 'button', class: 'main', click: () => this.dialog.close() }, say('class-reading-close')), this.file,
        el('button', { type: 'button', click: () => this.copy() }, say('class-reading-copy'))),
      this.host, this.said);
    document.body.append(this.dialog);
  }

  /** @param {string} name whose it is @param {string} text of the notebook @param {Doing} doing */
  open(name, text, doing) {
    const { feedback, others, changed } = doing;
    const desk = core.Desk.open(text);
    try {
      const { report, styles } = parsed(desk.report(tell));
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(styles);
      this.inside.adoptedStyleSheets = [sheet, commentStyles()];
      this.inside.replaceChildren(report.body);
      if (feedback) {
        const { view, rows } = desk.news();
        const all = rows.flatMap((row) => (row && 'id' in row ? [row] : []));
        layComments(/** @type {HTMLElement} */ (this.inside.querySelector('body')), { ...view, rows: all }, feedback, others, changed);
      }
    } finally {
      desk.free();
    }
    this.doing = doing;
    this.general.value = feedback?.general ?? '';
    this.mark.value = feedback?.mark ?? '';
    const onAll = others.filter(({ general, mark }) => `${general}${mark}`.trim());
    this.others.replaceChildren(...onAll.map((other) => saidBy(other, other.mark.trim() && say('feedback-mark', { mark: other.mark }), other.general)));
    for (const node of [this.said, this.file]) setHidden(node, !feedback);
    setText(this.title, name);
    this.dialog.showModal();
    this.host.scrollTop = 0;
  }

  /** @param {'general' | 'mark'} part @param {string} text */
  write(part, text) {
    if (!this.doing?.feedback) return;
    this.doing.feedback[part] = text;
    this.doing.changed();
  }

  copy() {
    this.dialog.close();
    this.doing?.copy();
  }
}
