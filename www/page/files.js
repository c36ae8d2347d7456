/**
 * What leaves the notebook and what comes in: copies, files, the report's tab, bundles.
 */
import { keepFile, keptFile } from './attic.js';
import { core, messageOf } from './core.js';
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

/** The bundle, with the pictures that its rows rest on. @param {Book} book */
export async function takeBundle(book) {
  const { desk } = book;
  const rows = book.current().rows.filter(({ evidence }) => evidence === 'picture');
  const hashes = new Set(rows.flatMap(({ id }) => {
    const evidence = desk.evidence(id);
    return evidence?.kind === 'picture' ? [evidence.picture.file.sha256] : [];
  }));
  const names = [];
  const pictures = [];
  for (const hash of hashes) {
    const bytes = await (await keptFile(hash))?.blob.arrayBuffer().catch(() => undefined);
    if (!bytes) continue;
    names.push(`${hash}.jpg`);
    pictures.push(new Uint8Array(bytes));
  }
  download(book.desk.bundle(names, pictures), 'application/zip', `${fileName(book)}.zip`);
  if (names.length < hashes.size) tell(words.pictures.notInBundle(hashes.size - names.length));
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
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    const [text, ...pictures] = core.read_bundle(bytes);
    await keepPictures(pictures);
    return text;
  }
  return new TextDecoder().decode(bytes);
}

/**
 * Keeps the pictures of a bundle; the notebook works without one that finds no room.
 * @param {(string | Uint8Array<ArrayBuffer>)[]} pictures name and bytes in turn
 */
async function keepPictures(pictures) {
  for (let place = 0; place + 1 < pictures.length; place += 2) {
    const [name = '', bytes = ''] = pictures.slice(place);
    const [sha256 = ''] = String(name).split('.');
    if (!/^[0-9a-f]{64}$/.test(sha256)) continue;
    try {
      await keepFile(sha256, { blob: new Blob([bytes], { type: 'image/jpeg' }), name: String(name) });
    } catch (error) {
      tell(words.pictures.notKept(String(name), messageOf(error)));
      return;
    }
  }
}

/** @param {Book} book */
function fileName(book) {
  const title = book.view.title || words.untitled;
  return title.normalize('NFC').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 60) || 'notebook';
}
