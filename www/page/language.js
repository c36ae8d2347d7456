/**
 * The language of this visit, and the tables of words. A script by itself, loaded before the page's others: so the table
 * comes while they do.
 */
import { LANGUAGES } from './languages.js';
import { unpacked } from './packed.js';

/** Where the chosen language is kept, for this visit alone. */
const CHOSEN = 'slope-of-light/language';

/** The language of this visit: the one chosen in the settings, else the browser's first that has a table. */
export const LANGUAGE = [chosen(), ...navigator.languages.map((tag) => tag.split('-')[0])]
  .find((tag) => tag && tag in LANGUAGES) ?? 'en';

/** Its table of words. */
const table = tableOf(LANGUAGE);
// Who waits for it says so.
table.catch(() => {});

function chosen() {
  try {
    return sessionStorage.getItem(CHOSEN);
  } catch {
    return null;
  }
}

/** Keeps a language for this visit, from the next load of the page on; throws where it can't. @param {string} language */
export function keepLanguage(language) {
  sessionStorage.setItem(CHOSEN, language);
}

/** The table of words of a language. @param {string} language @returns {Promise<string>} */
export function wordsOf(language) {
  return language === LANGUAGE ? table : tableOf(language);
}

/**
 * What of a language's table only later scripts say, and what leaves the page; the source's tables are whole, and so are the
 * one file's.
 * @param {string} language
 */
export async function lateWords(language) {
  return globalThis.SLOPE_WORDS ? '' : fetched(`words/${language}-late.ftl`);
}

/** @param {string} language @returns {Promise<string>} */
async function tableOf(language) {
  const inside = globalThis.SLOPE_WORDS?.[language];
  if (!inside) return fetched(`words/${language}.ftl`);
  const texts = await unpacked(inside, 'text/plain').text();
  if (!texts.startsWith('=')) return texts;
  // The one file names them in the first table alone, and has them in its order.
  const names = (await tableOf('en')).match(/^\S+/gm) ?? [];
  return texts.replace(/^=/gm, () => `${names.shift()} =`);
}

/** @param {string} name of a file beside the page */
async function fetched(name) {
  const answer = await fetch(new URL(name, document.baseURI));
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return answer.text();
}
