/**
 * Printing the page prints the report: what a person gets by the browser's own command is what can be handed in; while a notebook
 * of a class is being read, its report.
 */
import { parsed } from './files.js';
import { el } from './dom.js';
import { flushAll } from './typing.js';
import { tell } from './words.js';

/** @import { Book } from './book.js' */

export class Print {
  /** @param {Book} book */
  constructor(book) {
    const host = el('div', { id: 'printed' });
    const inside = host.attachShadow({ mode: 'open' });
    document.body.append(host);
    addEventListener('beforeprint', () => {
      flushAll();
      const { report, styles } = parsed(book.desk.report(tell));
      const sheet = new CSSStyleSheet({ media: 'print' });
      sheet.replaceSync(styles);
      // In the page for the sheet of paper and what is inherited, inside for the rest.
      document.adoptedStyleSheets = [sheet];
      inside.adoptedStyleSheets = [sheet];
      const read = document.querySelector('dialog.handed[open] > div')?.shadowRoot?.querySelector('body');
      inside.replaceChildren(...(read?.cloneNode(true) ?? report.body).childNodes);
    });
    addEventListener('afterprint', () => {
      document.adoptedStyleSheets = [];
      inside.replaceChildren();
    });
  }
}
