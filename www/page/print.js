/**
 * Printing the page prints the report: what a person gets by the browser's own command is what can be handed in; while a notebook
 * of a class is being read, its report. On the right page of the report its sheets are seen before, as they will be printed.
 */
import { parsed } from './files.js';
import { byId, el, setText } from './dom.js';
import { isUp } from './leaves.js';
import { flushAll } from './typing.js';
import { say, tell, teller } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Desk } from './slope_of_light.js' */
/** @import { Message, View } from './types.js' */

/** How long after an edit the sheets are made anew, ms: not while one types. */
const REST = 700;
/** The width of a sheet of A4, mm (ISO 216), and the millimetres of a CSS pixel (CSS Values and Units 3, 6.2). */
const [SHEET, PIXEL] = [210, 25.4 / 96];
/** Lays the report out in columns as large as what a sheet holds within the report's margins, sheet beside sheet, at their own size. */
const SHEETS = `body { position: absolute; box-sizing: border-box; block-size: 297mm; padding: 10mm 12mm 12mm; columns: 185mm; column-gap: 24mm; column-fill: auto;
  column-rule: 1px solid #999; transform: scale(var(--scale)); transform-origin: 0 0; }
  .page-number { position: absolute; inset-block-end: 0; inline-size: 186mm; margin-inline-start: 12mm; text-align: end;
    font: calc(9pt / min(1, var(--scale)))/12mm system-ui, sans-serif; /* to be read however small the sheet is */ }`;

export class Print {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** The language of the report. */
    this.language = say('language');
    /** What puts it into that. @type {(message: Message) => string} */
    this.words = tell;
    /** The notebook that the sheets are of. @type {Desk | undefined} */
    this.desk = undefined;
    /** Whether a seal covers them. */
    this.isSealed = false;
    const host = el('div', { id: 'printed' });
    const inside = host.attachShadow({ mode: 'open' });
    document.body.append(host);
    addEventListener('beforeprint', () => {
      flushAll();
      const { body, styles } = this.report();
      const sheet = new CSSStyleSheet({ media: 'print' });
      sheet.replaceSync(styles);
      // In the page for the sheet of paper and what is inherited, inside for the rest.
      document.adoptedStyleSheets = [sheet];
      inside.adoptedStyleSheets = [sheet];
      const read = document.querySelector('dialog.handed[open] > div')?.shadowRoot?.querySelector('body');
      host.lang = read ? '' : body.lang;
      inside.replaceChildren(...(read?.cloneNode(true) ?? body).childNodes);
    });
    addEventListener('afterprint', () => {
      document.adoptedStyleSheets = [];
      inside.replaceChildren();
    });
    this.sheets = el('div', { class: 'sheets', tabindex: '0', role: 'group', 'aria-labelledby': 'sheets-title', 'aria-describedby': 'sheets-hint' });
    this.paper = this.sheets.attachShadow({ mode: 'open' });
    this.hint = el('p', { class: 'hint', id: 'sheets-hint' });
    byId('result-short').parentElement?.after(el('section', { id: 'sheets', 'aria-labelledby': 'sheets-title' },
      el('div', { class: 'head' }, el('h3', { id: 'sheets-title' }, say('sheets-title')),
        el('button', { type: 'button', click: () => print() }, say('sheets-print'))), this.hint, this.sheets));
    this.isInSight = false;
    this.isStale = true;
    this.timer = 0;
    new IntersectionObserver(([entry]) => {
      this.isInSight = entry?.isIntersecting ?? false;
      // Who comes to them finds them made: it is typing that they wait for.
      this.make();
    }).observe(this.sheets);
    new ResizeObserver(() => this.sheets.style.setProperty('--scale', String(this.sheets.clientWidth * PIXEL / SHEET))).observe(this.sheets);
  }

  /** The report as the document's body, and its styles. */
  report() {
    const { report, styles } = parsed(this.book.desk.report(this.words));
    report.body.lang = report.documentElement.lang;
    return { body: report.body, styles };
  }

  /** Has the report in another language. @param {string} language */
  async speak(language) {
    this.language = language;
    const words = await teller(language);
    if (language !== this.language) return;
    this.words = words;
    this.again();
  }

  /** @param {View} view */
  show({ result: { sealed } }) {
    // What a seal covers stays nowhere; nor does what is of another notebook.
    if (sealed !== this.isSealed || this.desk !== this.book.desk) this.paper.replaceChildren();
    this.isSealed = sealed;
    this.desk = this.book.desk;
    this.again();
  }

  again() {
    this.isStale = true;
    this.soon();
  }

  /** Makes the sheets anew, once nothing has changed for a while. */
  soon() {
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.make(), REST);
  }

  /** Makes the sheets, where they are in sight and not as the notebook is, which was shown before. */
  make() {
    if (!this.isStale || !this.isInSight || this.desk !== this.book.desk || !isUp(this.sheets)) return;
    this.isStale = false;
    const { body, styles } = this.report();
    const [own, laid] = [new CSSStyleSheet(), new CSSStyleSheet()];
    // As on paper, where the report has rules for that.
    own.replaceSync(styles.replace('@media screen', '@media speech').replace('@media print', '@media all'));
    laid.replaceSync(SHEETS);
    this.paper.adoptedStyleSheets = [own, laid];
    // To be looked at: who wants to read opens the report.
    body.inert = true;
    body.style.inlineSize = `${SHEET}mm`;
    this.paper.replaceChildren(body);
    // The margin beyond the last column counts in some browsers, and not in others.
    const sheets = Math.round(body.scrollWidth * PIXEL / SHEET);
    body.style.inlineSize = `${SHEET * sheets}mm`;
    body.append(...Array.from({ length: sheets }, (_, index) => pageNumber(index, sheets)));
    setText(this.hint, say('sheets-hint', { n: sheets }));
  }
}

/** The number of a page, where the report's styles have it printed. @param {number} index @param {number} pages */
function pageNumber(index, pages) {
  const number = el('span', { class: 'page-number' }, `${index + 1} / ${pages}`);
  number.style.insetInlineStart = `${SHEET * index}mm`;
  return number;
}
