/**
 * What leaves the notebook and what comes in: copies, files, the report's tab, bundles.
 */
import { keepFile, keptFile } from './file-store.js';
import { core, messageOf } from './core.js';
import { download } from './dom.js';
import { reader } from './worker-slot.js';
import { loadLateWords, say, tell, teller } from './words.js';
import { toast } from './toast.js';

/** @import { Book } from './book.js' */
/** @import { Desk } from './slope_of_light.js' */
/** @import { KeptFile } from './file-store.js' */

/** Files that came with a notebook, each by its SHA-256. @typedef {[sha256: string, file: KeptFile][]} BesideNotebook */
/** @typedef {'csv' | 'latex' | 'markdown'} TableKind */

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
    toast(say('result-copied'));
  } catch {
    toast(say('result-not-copied'));
  }
}

/** The bundle, with the files that its rows rest on. @param {Book} book */
export function takeBundle(book) {
  return takeDesk(book.desk, fileName(book));
}

/** The same of any notebook, by a name without its ending. @param {Desk} desk @param {string} name */
export async function takeDesk(desk, name) {
  try {
    download(await packed(desk), 'application/zip', `${name}.zip`);
  } catch (error) {
    toast(messageOf(error));
  }
}

/** The bytes of a notebook's bundle; says which of its files could not go in. @param {Desk} desk */
export async function packed(desk) {
  await loadLateWords();
  const { names, contents } = entries(desk.bundle(tell));
  let lacking = 0;
  for (const [name, { sha256 }] of desk.files()) {
    const bytes = await (await keptFile(sha256))?.blob.arrayBuffer().catch(() => undefined);
    if (bytes) {
      names.push(name);
      contents.push(new Uint8Array(bytes));
    } else {
      lacking += 1;
    }
  }
  const bytes = await reader.ask('pack', names, contents);
  if (lacking > 0) toast(say('report-not-in-bundle', { n: lacking }));
  return bytes;
}

/** Names and contents of what the core gives as name and text in turn. @param {string[]} texts */
function entries(texts) {
  const names = texts.filter((_, place) => place % 2 === 0);
  const contents = texts.filter((_, place) => place % 2 === 1)
    .map((text) => /** @type {Uint8Array<ArrayBuffer>} */ (new TextEncoder().encode(text)));
  return { names, contents };
}

/** @param {Book} book @param {TableKind} kind */
export async function takeTable(book, kind) {
  const { type, ending } = TABLES[kind];
  await loadLateWords();
  download(book.desk.table(kind, tell), `${type};charset=utf-8`, `${fileName(book)}.${ending}`);
}

/**
 * Opens the report in a tab of its own. The tab lives under this page's policy, which allows no inline style;
 * so the report's own style sheet is handed over as a style sheet object.
 * It is opened at the press itself, as browsers ask, before the words of another language have come.
 * @param {Book} book
 * @param {string} language of the report
 */
export async function openReport(book, language) {
  const tab = /** @type {(Window & typeof globalThis) | null} */ (window.open('', '_blank'));
  try {
    const words = await teller(language);
    showReport(tab, book.desk.report(words), `${fileName(book)}.html`);
  } catch (error) {
    tab?.close();
    throw error;
  }
}

/**
 * The report to go on writing: LaTeX is one file, Markdown a zip with its plots.
 * @param {Book} book
 * @param {'latex' | 'markdown'} form
 * @param {string} language of the report
 */
export async function takeReport(book, form, language) {
  const texts = book.desk.report_files(form, await teller(language));
  // Neither the bundle nor the table of readings is called so.
  const name = `${fileName(book)}-${safeName(say('report-title'), 20)}`;
  if (form === 'latex') {
    download(texts[1] ?? '', 'text/x-tex;charset=utf-8', `${name}.tex`);
    return;
  }
  const { names, contents } = entries(texts);
  download(await reader.ask('pack', names, contents), 'application/zip', `${name}.zip`);
}

/** @param {(Window & typeof globalThis) | null} tab @param {string} html @param {string} name */
function showReport(tab, html, name) {
  if (!tab) {
    toast(say('report-blocked'));
    download(html, 'text/html;charset=utf-8', name);
    return;
  }
  const { report, styles } = parsed(html);
  const sheet = new tab.CSSStyleSheet();
  sheet.replaceSync(styles);
  // A copy that the tab makes: what was made here stays of this page's kind there, and programs that look at the tab miss it.
  tab.document.replaceChild(tab.document.importNode(report.documentElement, true), tab.document.documentElement);
  tab.document.adoptedStyleSheets = [sheet];
}

/**
 * A report's document, and its styles apart.
 * @param {string} html
 */
export function parsed(html) {
  let styles = '';
  // Before it is parsed, which would count as a breach of the policy. The core writes them, and escapes what was typed.
  const bare = html.replace(/<style>([^]*?)<\/style>/g, (_, style) => {
    styles += style;
    return '';
  });
  const report = new DOMParser().parseFromString(bare, 'text/html');
  for (const old of report.querySelectorAll('meta[http-equiv]')) old.remove();
  return { report, styles };
}

/**
 * The notebook in a file, a bundle or a bare notebook; keeps the files that came with it.
 * @param {File} file
 * @returns {Promise<{desk: Desk, lost: string}>} `lost`: which of these finds no room, in words
 */
export async function notebookIn(file) {
  const { desk, files } = await readNotebook(file);
  return { desk, lost: await keepFiles(files) };
}

/**
 * The same, with the files that came with it, of which none is kept.
 * @param {File} file
 * @returns {Promise<{desk: Desk, files: BesideNotebook}>}
 */
export async function readNotebook(file) {
  // Every zip file begins with the letters PK.
  if (await file.slice(0, 2).text() !== 'PK') return { desk: core.Desk.open(await file.text()), files: [] };
  const entries = new Map(await reader.ask('unpack', file));
  const desk = core.Desk.open_bundled(new TextDecoder().decode(entries.get('notebook.json')));
  /** @type {BesideNotebook} */
  const files = [];
  for (const [place, { sha256, name }] of desk.files()) {
    const bytes = entries.get(place);
    const type = place.endsWith('.jpg') ? 'image/jpeg' : 'text/plain';
    if (bytes) files.push([sha256, { blob: new Blob([bytes], { type }), name }]);
  }
  return { desk, files };
}

/**
 * Keeps files. One that is here already stays as it is: more is known of it, the layout and the level by which it was measured.
 * @param {BesideNotebook} files
 * @returns {Promise<string>} which finds no room, in words; empty where all do
 */
export async function keepFiles(files) {
  for (const [sha256, file] of files) {
    try {
      const kept = await keptFile(sha256);
      const isRead = await kept?.blob.slice(0, 1).arrayBuffer().then(() => true, () => false);
      await keepFile(sha256, kept && isRead ? kept : file);
    } catch (error) {
      // The notebook works without a file that finds no room.
      return say('report-not-kept', { name: file.name, why: messageOf(error) });
    }
  }
  return '';
}

/** What a file of the open notebook is called, without its ending. @param {Book} book */
export function fileName(book) {
  return safeName(book.view.title || say('untitled'), 60) || 'notebook';
}

/** A text as a part of a file's name: letters, with their marks, and digits alone, the rest as hyphens. @param {string} text @param {number} most */
export function safeName(text, most) {
  return text.normalize('NFC').replace(/[^\p{L}\p{M}\p{N}]+/gu, '-').replace(/^-/, '').slice(0, most).replace(/-$|\p{Cs}/gu, '');
}
