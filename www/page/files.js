/**
 * What leaves the notebook and what comes in: copies, files, the report's tab, bundles.
 */
import { core } from './core.js';
import { download } from './dom.js';
import { words } from './strings.js';
import { tell } from './tell.js';

/** @import { Book } from './book.js' */
/** @import { TableKind } from './types.js' */

/** @type {Record<TableKind, {type: string, ending: string}>} */
const TABLES = {
  csv: { type: 'text/csv', ending: 'csv' },
  latex: { type: 'text/x-tex', ending: 'tex' },
  markdown: { type: 'text/markdown', ending: 'md' },
};

/** @param {string} text */
export async function copyText(text) {
  try {
    await navigator.clipboard.writeText(text);
    tell(words.result.copied);
  } catch {
    tell(words.result.notCopied);
  }
}

/** @param {Book} book */
export function takeBundle(book) {
  download(book.desk.bundle(), 'application/zip', `${fileName(book)}.zip`);
}

/** @param {Book} book @param {TableKind} kind */
export function takeTable(book, kind) {
  const { type, ending } = TABLES[kind];
  download(book.desk.table(kind), `${type};charset=utf-8`, `${fileName(book)}.${ending}`);
}

/**
 * Opens the report in a tab of its own. The tab lives under this page's policy, which allows no inline style;
 * so the report's own style sheet is handed over as a style sheet object.
 * @param {Book} book
 */
export function openReport(book) {
  const html = book.desk.report();
  const tab = /** @type {(Window & typeof globalThis) | null} */ (window.open('', '_blank'));
  if (!tab) {
    tell(words.report.blocked);
    download(html, 'text/html;charset=utf-8', `${fileName(book)}.html`);
    return;
  }
  /** @type {CSSStyleSheet[]} */
  const sheets = [];
  const plain = html.replace(/<style>([^]*?)<\/style>/g, (_, rules) => {
    const sheet = new tab.CSSStyleSheet();
    sheet.replaceSync(rules);
    sheets.push(sheet);
    return '';
  });
  const report = new DOMParser().parseFromString(plain, 'text/html');
  for (const meta of report.querySelectorAll('meta[http-equiv]')) meta.remove();
  tab.document.replaceChild(tab.document.adoptNode(report.documentElement), tab.document.documentElement);
  tab.document.adoptedStyleSheets = sheets;
}

/**
 * The notebook's text in a file: a bundle or a bare notebook.
 * @param {File} file
 */
export async function notebookIn(file) {
  const bytes = new Uint8Array(await file.arrayBuffer());
  // Every zip file begins with the letters PK.
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return core.read_bundle(bytes);
  return new TextDecoder().decode(bytes);
}

/** @param {Book} book */
function fileName(book) {
  const title = book.view.title || words.untitled;
  return title.normalize('NFC').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 60) || 'notebook';
}
