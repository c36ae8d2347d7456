/**
 * The words of the page: every text by its identifier, from the table of one language (`words/XX.ftl`, in the syntax of
 * Fluent). What a text may be filled with is declared from the table (`words-table.d.ts`), so that a text that is missing,
 * or filled with something else, does not pass the type check.
 */
import { alike, setOptional } from './dom.js';
import { FluentBundle, FluentNumber, FluentResource } from './fluent/index.js';
import { LANGUAGE, lateWords, wordsOf } from './language.js';

/** @import { Message, Value } from './types.js' */
/** @import { Table } from './words-table.js' */

/** The texts of one language. */
class Words {
  /** @param {string} language @param {string} texts in the syntax of Fluent */
  constructor(language, texts) {
    this.language = language;
    // Marks about each value that keep its direction of writing would be copied and read along.
    this.table = new FluentBundle(language, { useIsolating: false });
    this.add(texts);
    /** How its language lists things; made when something is first listed. @type {Intl.ListFormat | undefined} */
    this.lists = undefined;
  }

  /** @param {string} texts in the syntax of Fluent */
  add(texts) {
    this.table.addResource(new FluentResource(texts));
  }

  /** @param {string} id @param {Record<string, Value>} values */
  filled(id, values) {
    const pattern = this.table.getMessage(id)?.value;
    if (!pattern) throw new Error(`the table has no text “${id}”`);
    return this.table.formatPattern(pattern, Object.fromEntries(Object.entries(values).map(
      ([name, value]) => [name, typeof value === 'number' ? new Count(value) : this.part(value)])));
  }

  /** @param {Value} value @returns {string} */
  part(value) {
    if (typeof value !== 'object') return String(value).replace(TURNING, '');
    if (!('all' in value)) return this.filled(value.id, value.values);
    this.lists ??= new Intl.ListFormat(this.language);
    return this.lists.format(value.all.map((one) => this.part(one)));
  }
}

/** Marks that turn the direction of all that follows them (Unicode, UAX #9, table 4): a name may hold one, and turn a sentence round. */
const TURNING = /[\u202a-\u202e\u2066-\u2069]/g;

/** What each element tells, so that what is as it was is not put into words anew. @type {WeakMap<Node, Told>} */
const telling = new WeakMap();

/** @typedef {Value | Value[] | null} Told */

/** The words in use. */
let words = new Words('en', '');

/** Has the texts of this visit's language at hand; nothing can be said before. */
export async function loadWords() {
  words = new Words(LANGUAGE, await wordsOf(LANGUAGE));
  document.documentElement.lang = LANGUAGE;
}

/** The texts that only later scripts and files say, on their way or at hand. @type {Promise<void> | undefined} */
let late;

/** Has the texts at hand that only later scripts and files say; asked again where they could not be had. */
export function loadLateWords() {
  late ??= lateWords(LANGUAGE).then((texts) => words.add(texts)).catch((error) => {
    late = undefined;
    throw error;
  });
  return late;
}

/** A way to put messages of the core into a language, which is loaded when it is not the one in use. @param {string} language */
export async function teller(language) {
  let its = words;
  if (language === words.language) await loadLateWords();
  else its = new Words(language, (await Promise.all([wordsOf(language), lateWords(language)])).join('\n'));
  return (/** @type {Message} */ { id, values }) => its.filled(id, values);
}

/**
 * A text, filled with what it asks for.
 * @template {keyof Table} Id
 * @param {Id} id
 * @param {Table[Id] extends Record<string, never> ? [] : [values: Table[Id]]} values
 * @returns {string}
 */
export function say(id, ...[values]) {
  return words.filled(id, values ?? {});
}

/**
 * A time as it is written in this language; nothing where the text is none.
 * @param {string} at RFC 3339
 * @param {Intl.DateTimeFormatOptions} style
 */
export function dated(at, style) {
  const time = new Date(at);
  return Number.isNaN(time.getTime()) ? '' : time.toLocaleString(words.language, style);
}

/**
 * A message of the core in words; nothing where there is none.
 * @param {Message | null | undefined} message
 * @returns {string}
 */
export function tell(message) {
  return message ? words.filled(message.id, message.values) : '';
}

/**
 * What may be a message, or sentences that follow one another, as text.
 * @param {Told} told
 * @returns {string}
 */
export function inWords(told) {
  return Array.isArray(told) ? told.map((one) => words.part(one)).join(' ') : words.part(told ?? '');
}

/**
 * Shows what there is to tell, and hides its element where there is nothing.
 * @param {HTMLElement} node
 * @param {Told} told
 */
export function setTold(node, told) {
  if (telling.has(node) && alike(telling.get(node), told)) return;
  telling.set(node, told);
  setOptional(node, inWords(told));
}

/**
 * A count, or the number of a row: written in plain digits, in groups of three where there are five or more (SI Brochure,
 * 9th edition, 5.4.4), and chosen by where a text has forms for one and for more.
 */
class Count extends FluentNumber {
  toString() {
    const digits = String(this.value);
    return digits.length > 4 ? digits.replace(/\B(?=(\d{3})+$)/g, '\u202f') : digits;
  }
}

/**
 * What an error says: a message of the core, or a text of the browser.
 * @param {unknown} said
 * @returns {string}
 */
export function worded(said) {
  return said && typeof said === 'object' && 'id' in said ? tell(/** @type {Message} */ (said)) : String(said);
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

/** @param {string} [id] as the HTML names it */
function named(id = '') {
  return words.filled(id, {});
}
