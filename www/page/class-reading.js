/**
 * A notebook that was handed in, to be read: its report, made here from the file, over the page. Nothing of it is kept, and
 * nothing can be changed in it.
 */
import { core } from './core.js';
import { el, setText } from './dom.js';
import { parsed } from './files.js';
import { say, tell } from './words.js';

export class ClassReading {
  constructor() {
    this.title = el('h2', { id: 'class-reading-title' });
    this.host = el('div', { class: 'table-box', tabindex: '0', role: 'group', 'aria-labelledby': 'class-reading-title' });
    this.inside = this.host.attachShadow({ mode: 'open' });
    /** What puts a copy of what is read among one's own notebooks. */
    this.copy = () => {};
    this.dialog = el('dialog', { class: 'handed', 'aria-labelledby': 'class-reading-title', close: () => this.inside.replaceChildren() },
      this.title, el('p', { class: 'hint' }, say('class-reading-hint')),
      el('p', { class: 'actions' },
        el('button', { type: 'button', class: 'main', click: () => this.dialog.close() }, say('class-reading-close')),
        el('button', { type: 'button', click: () => this.take() }, say('class-reading-copy'))),
      this.host);
    document.body.append(this.dialog);
  }

  /** @param {string} name whose it is @param {string} text of the notebook @param {() => void} copy */
  open(name, text, copy) {
    const desk = core.Desk.open(text);
    try {
      const { report, styles } = parsed(desk.report(tell));
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(styles);
      this.inside.adoptedStyleSheets = [sheet];
      this.inside.replaceChildren(report.body);
    } finally {
      desk.free();
    }
    this.copy = copy;
    setText(this.title, name);
    this.dialog.showModal();
    this.host.scrollTop = 0;
  }

  take() {
    this.dialog.close();
    this.copy();
  }
}
