/**
 * Opens what was posted: the notebook in the fragment of a link, the one that `?open=` names on the same site, or the one
 * inside the one file. Nothing that is kept is ever written over: a notebook that was begun from the same hand-out is
 * opened as it was left, and anything else is a new notebook.
 */
import { core, messageOf } from './core.js';
import { byId } from './dom.js';
import { takeFeedback } from './feedback-open.js';
import { notebookIn } from './files.js';
import { reveal } from './leaves.js';
import { OPENS, textIn } from './link.js';
import { fileInside } from './file-inside.js';
import { recall } from './preferences.js';
import { openHere } from './shelf.js';
import { toast } from './toast.js';
import { inWords, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Keeper } from './keeper.js' */
/** @import { Shelf } from './shelf.js' */
/** @import { Desk } from './slope_of_light.js' */
/** A notebook, and which of the files that came with it found no room, in words. @typedef {{desk: Desk, lost: string}} Opened */
/**
 * What opening a notebook asks of the page.
 * @typedef {object} Opener
 * @property {Shelf} shelf
 * @property {Book} book
 * @property {Keeper} keeper
 * @property {(id: string) => Promise<boolean>} open
 * @property {(desk: Desk) => Promise<void>} keep opens it as a new notebook
 */

/**
 * @param {Opener} page
 * @returns {Promise<boolean>} whether a notebook was opened; says why not
 */
export async function openPosted(page) {
  try {
    const opened = await posted();
    if (opened) await takeUp(page, opened, false);
    return opened !== undefined;
  } catch (error) {
    toast(say('posted-refused', { why: messageOf(error) }));
    return false;
  }
}

/** How the files of notebooks end. */
const NOTEBOOKS = /\.(zip|json)$/i;

/** Ends when the file before is open: of those that come together none is left out for another. @type {Promise<unknown>} */
let opening = Promise.resolve();

/**
 * Opens a file that a person chose: a notebook, or what a teacher says of one.
 * @param {Opener} page
 * @param {File} file
 * @returns {Promise<void>}
 */
export function openFile(page, file) {
  const turn = opening.then(() => open(page, file));
  opening = turn.catch(() => {});
  return turn;
}

/** @param {Opener} page @param {File} file */
async function open(page, file) {
  if (await takeFeedback(page, file)) return;
  const notebook = await notebookIn(file).catch((/** @type {unknown} */ error) => {
    throw NOTEBOOKS.test(file.name) ? error : new Error(say('posted-other_kind'));
  });
  await takeUp(page, notebook, true);
}

/**
 * Opens a notebook as a new one, or the one that was begun from it.
 * @param {Opener} page
 * @param {Opened} opened
 * @param {boolean} isFile whether a person chose it: one in which something was done is then opened as it is
 */
async function takeUp(page, { desk, lost }, isFile) {
  const title = desk.title() || say('untitled');
  const begun = isFile && !isUntouched(desk) ? [] : begunFrom(page.shelf, desk);
  // On a shared computer that of another window may be somebody else's.
  const own = recall('computer') === 'shared' ? begun.find((id) => id === openHere()) : begun[0];
  if (own !== undefined && await page.open(own)) {
    toast(inWords([say('posted-begun', { title }), lost].filter((text) => text)), { label: say('posted-anew'), run: () => void page.keep(desk) });
  } else {
    const isHandOut = isUntouched(desk);
    await page.keep(desk);
    const asks = isHandOut && page.book.current().handout.missing.length > 0;
    const others = begun.length > 0 && own === undefined ? say('posted-others') : '';
    toast(inWords([say('report-opened', { title }), others, asks ? say('posted-asks') : '', lost].filter((text) => text)),
      asks ? { label: say('posted-show-asked'), run: () => showAsked(page.book) } : undefined);
  }
}

/** Leads to the list of what a hand-out asks for; to the report, at whose head it stands, while that is still on its way. @param {Book} book */
function showAsked(book) {
  // It may stand on a leaf that is yet to be drawn.
  book.drawParts(true);
  const place = document.getElementById('handin') ?? byId('report');
  reveal(place);
  place.scrollIntoView();
  place.querySelector('a')?.focus({ preventScroll: true });
}

/** Whether a notebook is a hand-out in which nothing was done yet. @param {Desk} desk */
function isUntouched(desk) {
  const [last = ''] = desk.entries(desk.length() - 1);
  return last.endsWith('"edit":"hand_out"}');
}

/** What the address or the file itself asks for. @returns {Promise<Opened | undefined>} */
async function posted() {
  const { hash, href } = location;
  if (hash.startsWith(OPENS)) {
    // Not opened anew with every reload.
    history.replaceState(null, '', href.slice(0, href.indexOf('#')));
    return { desk: core.Desk.open(await textIn(hash)), lost: '' };
  }
  // Loaded anew, a window goes on with what was open in it.
  const [visit] = performance.getEntriesByType('navigation');
  if (visit instanceof PerformanceNavigationTiming && visit.type === 'reload') return undefined;
  const path = new URLSearchParams(location.search).get('open');
  const file = path === null ? fileInside() : await fileAt(path);
  return file && notebookIn(file);
}

/**
 * A notebook's file of the same site. Nothing else is asked for, whatever a link says.
 * @param {string} path
 */
async function fileAt(path) {
  const { protocol, origin } = location;
  if (globalThis.SLOPE_CORE || !protocol.startsWith('http')) throw new Error(say('posted-no_site'));
  const place = URL.parse(path, document.baseURI);
  if (place?.origin !== origin || place.protocol !== protocol || place.username || place.password) {
    throw new Error(say('posted-elsewhere', { path }));
  }
  if (!NOTEBOOKS.test(place.pathname)) throw new Error(say('posted-no_notebook', { path }));
  const answer = await fetch(place, { redirect: 'error' }).catch(() => undefined);
  if (!answer?.ok) throw new Error(say('posted-not_there', { path }));
  return new File([await answer.blob()], path);
}

/**
 * The notebooks whose logs begin with another one's whole log, the one last changed first.
 * @param {Shelf} shelf
 * @param {Desk} desk
 */
function begunFrom(shelf, desk) {
  if (desk.length() === 0) return [];
  const text = desk.text();
  const log = text.slice(0, text.lastIndexOf('\n]'));
  return shelf.list(false).flatMap(({ id }) => (core.shelf_read(id)?.startsWith(log) ? [id] : []));
}
