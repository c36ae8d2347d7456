/**
 * The way to the help pages (`help/`, one document a language): links to their sections, and beside each section of the
 * notebook a short text on how to fill it in.
 */
import { byId, el } from './dom.js';
import { unpacked } from './packed.js';
import { say } from './words.js';

/** The section of the help that tells more of a section of the notebook. */
const MORE = /** @type {const} */ ({
  apparatus: 'splices',
  plan: 'steps',
  readings: 'limits',
  delays: 'traces',
  line: 'line',
  uncertainty: 'result',
  result: 'result',
  report: 'steps',
  class: 'teachers',
});

/** Where the help is, once that is known. */
let help = '';

/** Puts the texts beside the sections, and leads every link that names a section of the help there. */
export async function putHelp() {
  for (const [section, more] of Object.entries(MORE)) {
    byId(`${section}-title`).after(how(/** @type {keyof typeof MORE} */ (section), more));
  }
  help = await address();
  for (const link of /** @type {NodeListOf<HTMLAnchorElement>} */ (document.querySelectorAll('a[data-help]'))) {
    link.href = `${help}#${link.dataset.help}`;
  }
}

/**
 * A link to a place of the help, in a window of its own: the notebook stays as it is.
 * @param {string} place
 * @param {Record<string, string>} attributes
 * @param {string} text
 */
export function helpLink(place, attributes, text) {
  const link = el('a', { 'data-help': place, target: '_blank', ...attributes }, text);
  if (help) link.href = `${help}#${place}`;
  return link;
}

/**
 * A link to a term of the glossary, beside what is called `name`.
 * @param {string} term
 * @param {string} name
 */
export function termLink(term, name) {
  return helpLink(`term-${term}`, { class: 'term', 'aria-label': say('how-glossary-of', { term: name }) }, say('how-glossary'));
}

/** @param {keyof typeof MORE} section @param {string} more */
function how(section, more) {
  const name = say(`${section}-title`);
  return el('details', { class: 'how' },
    el('summary', { 'aria-label': say('how-of', { section: name }) }, say('how')),
    el('p', {}, say(`how-${section}`), ' ', helpLink(more, {}, say('how-more'))));
}

/** Where the help is: beside the page, or inside the one file, which holds once the pictures that all languages share. */
async function address() {
  const inside = globalThis.SLOPE_HELP?.[say('language')];
  if (!inside) return new URL(`help/${say('language')}.html`, document.baseURI).href;
  let page = await unpacked(inside, 'text/html').text();
  for (const [name, picture] of Object.entries(globalThis.SLOPE_HELP_PICTURES ?? {})) {
    page = page.replaceAll(name, await unpacked(picture, 'text/plain').text());
  }
  return URL.createObjectURL(new Blob([page], { type: 'text/html' }));
}
