/**
 * Undo and redo, told where they act: what was changed is brought into sight, and named.
 */
import { alike, byId } from './dom.js';
import { reveal } from './leaves.js';
import { toast } from './toast.js';
import { flushAll } from './typing.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { RowView, View } from './types.js' */

/** How long the place stands out, ms. */
const STAY = 2000;

/** The places of what is no row and no field, each with what of the view stands there. @type {[id: string, of: (view: View) => unknown][]} */
const PLACES = [
  ['title', ({ title }) => title],
  ['cautions-box', ({ cautions }) => cautions.read],
  ['apparatus-carriage', ({ path }) => path],
  ['apparatus-instruments', ({ photo }) => photo],
  ['rails', ({ rails }) => rails],
  ['settings', ({ settings }) => settings],
  ['shared', ({ shared }) => shared],
  ['readings', ({ notes }) => notes],
  ['trials', ({ trials }) => trials],
  ['result', ({ result: { basis, reason, sealed } }) => [basis, reason, sealed]],
  ['delays', ({ delays }) => delays],
];

/** Takes the last edit back, and goes where it was. @param {Book} book */
export function undo(book) {
  const done = act(book, () => book.undo(), (where) => (where ? say('undone-at', { where }) : say('undone')));
  if (!done && book.view.handout.entries > 0) toast(say('edit-undo_stops'));
}

/** Does again what was taken back last, and goes there. @param {Book} book */
export function redo(book) {
  act(book, () => book.redo(), (where) => (where ? say('redone-at', { where }) : say('redone')));
}

/** @param {Book} book @param {() => void} work @param {(where: string) => string} told */
function act(book, work, told) {
  flushAll();
  const before = book.current();
  work();
  const after = book.current();
  if (after.entries === before.entries) return false;
  book.drawParts(true);
  const place = document.getElementById(changed(before, after) ?? '');
  if (place) show(place);
  toast(told(place ? placeName(place) : ''));
  return true;
}

/**
 * The id of the first place at which two views of a notebook differ in what was entered.
 * @param {View} before
 * @param {View} after
 */
export function changed(before, after) {
  const row = changedRow(before.rows, after.rows);
  if (row !== undefined) return row;
  const names = /** @type {(keyof View['bench'])[]} */ (Object.keys(after.bench));
  const field = names.find((name) => !alike(before.bench[name], after.bench[name]));
  if (field) return `bench-${field}`;
  return PLACES.find(([, of]) => !alike(of(before), of(after)))?.[0];
}

/** @param {RowView[]} before @param {RowView[]} after */
function changedRow(before, after) {
  const known = new Map(before.map((row) => [row.id, row]));
  for (const row of after) {
    const old = known.get(row.id);
    known.delete(row.id);
    if (!old || old.struck !== row.struck || old.evidence !== row.evidence) return `row-${row.id}`;
    const names = /** @type {(keyof RowView['cells'])[]} */ (Object.keys(row.cells));
    const cell = names.find((name) => old.cells[name].text !== row.cells[name].text);
    if (cell) return `cell-${row.id}-${cell}`;
  }
  // A row that is gone again stood at the foot, where the next one begins.
  return known.size > 0 ? 'row-new' : undefined;
}

/** @param {HTMLElement} place */
function show(place) {
  reveal(place);
  place.scrollIntoView({ block: 'nearest' });
  place.classList.add('undone');
  setTimeout(() => place.classList.remove('undone'), STAY);
}

/** What a place is called on the page. @param {HTMLElement} place */
export function placeName(place) {
  if (place.matches('tbody')) return say('notices-row', { n: place.querySelector('th')?.getAttribute('aria-label') ?? '' });
  if (place instanceof HTMLInputElement || place instanceof HTMLTextAreaElement) {
    const [label] = place.labels ?? [];
    return place.getAttribute('aria-label') ?? label?.textContent?.trim() ?? '';
  }
  const heading = place.closest('fieldset, details')?.querySelector('legend, summary') ?? byId(place.closest('section')?.id ?? 'readings').querySelector('h2');
  return heading?.textContent?.trim() ?? '';
}
