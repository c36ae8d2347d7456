/**
 * The words of the page: every text by its identifier, from the table of one language (`words/en.ftl`, in the syntax of
 * Fluent). What a text may be filled with is declared from the table (`words-table.d.ts`), so that a text that is missing,
 * or filled with something else, does not pass the type check.
 */
import { FluentBundle, FluentNumber, FluentResource } from './fluent/index.js';

/** @import { Table } from './words-table.js' */

/** The table in use. @type {FluentBundle} */
let table = new FluentBundle('en');

/** Has the texts of a language at hand; nothing can be said before. @param {string} language */
export async function loadWords(language) {
  const text = globalThis.SLOPE_WORDS ?? await fetched(`words/${language}.ftl`);
  // Marks about each value that keep its direction of writing would be copied and read along.
  table = new FluentBundle(language, { useIsolating: false });
  table.addResource(new FluentResource(text));
}

/** @param {string} name of a file beside the page */
async function fetched(name) {
  const answer = await fetch(new URL(name, document.baseURI));
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return answer.text();
}

/**
 * A text, filled with what it asks for.
 * @template {keyof Table} Id
 * @param {Id} id
 * @param {Table[Id] extends Record<string, never> ? [] : [values: Table[Id]]} values
 * @returns {string}
 */
export function say(id, ...[values]) {
  const pattern = table.getMessage(id)?.value;
  if (!pattern) throw new Error(`the table has no text “${id}”`);
  return table.formatPattern(pattern, values && whole(values));
}

/**
 * Numbers are counts and numbers of rows: written in plain digits, and chosen by where a text has forms for one and for
 * more.
 * @param {Record<string, string | number>} values
 */
function whole(values) {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => (
    [name, typeof value === 'number' ? new FluentNumber(value, { useGrouping: false }) : value])));
}

/**
 * Texts that belong together, each by the end of its identifier, such as those of a choice.
 * @template {string} Key
 * @param {Key[]} keys
 * @param {(key: Key) => string} text
 * @returns {Record<string, string>}
 */
export function each(keys, text) {
  return Object.fromEntries(keys.map((key) => [key, text(key)]));
}

/** Puts the texts where the page's HTML names them. */
export function putWords() {
  for (const node of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-words]'))) {
    node.textContent = named(node.dataset.words);
  }
  for (const node of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-label-words]'))) {
    node.setAttribute('aria-label', named(node.dataset.labelWords));
  }
}

/** @param {string | undefined} id as the HTML names it */
function named(id) {
  return say(/** @type {'skip'} */ (id));
}
