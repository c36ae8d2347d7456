/**
 * Texts of a hand-out with marks of CommonMark: emphasis, lists, code, quotations, links. A parser that others keep takes a
 * text apart; of what it finds elements are made here, so that no text becomes markup. What is HTML is shown as it is typed,
 * headings are strong paragraphs, and pictures their words.
 */
import { lexer } from './marked/marked.esm.js';
import { el } from './dom.js';

/** @import { Token } from './marked/marked.esm.js' */

/** The longest text that is taken apart: the time it takes grows with the square of its length, to half a second at worst. */
const LONGEST = 4000;
/** How deep elements stand in one another at most: what lays a page out has an end, too. */
const DEEPEST = 50;

/** A text as elements; as one paragraph where it is too long, or nested too deep. @param {string} text @returns {Node[]} */
export function marked(text) {
  if (text.length > LONGEST) return [el('p', {}, text)];
  try {
    return elements(lexer(text, { gfm: false }));
  } catch {
    return [el('p', {}, text)];
  }
}

/** @param {Token[] | undefined} tokens @param {number} [depth] @returns {Node[]} */
function elements(tokens, depth = 0) {
  if (depth > DEEPEST) throw new RangeError();
  return (tokens ?? []).flatMap((token) => element(token, depth + 1));
}

/** @param {Token} token @param {number} depth of what is inside it @returns {Node[]} */
function element(token, depth) {
  const inside = () => ('tokens' in token && token.tokens ? elements(token.tokens, depth) : [new Text('text' in token ? token.text : token.raw)]);
  switch (token.type) {
    case 'space':
    case 'def':
      return [];
    case 'hr':
      return [el('hr')];
    case 'br':
      return [el('br')];
    case 'paragraph':
      return [el('p', {}, ...inside())];
    case 'heading':
      return [el('p', {}, el('strong', {}, ...inside()))];
    case 'blockquote':
      return [el('blockquote', {}, ...inside())];
    case 'list':
      return [list(token, depth)];
    case 'code':
      return [el('pre', {}, el('code', {}, token.text))];
    case 'codespan':
      return [el('code', {}, token.text)];
    case 'strong':
      return [el('strong', {}, ...inside())];
    case 'em':
      return [el('em', {}, ...inside())];
    case 'link':
      return link(token.href, inside());
    default:
      return token.type === 'html' ? [new Text(token.raw)] : inside();
  }
}

/** @param {Token} token @param {number} depth of its points */
function list(token, depth) {
  const items = /** @type {{tokens: Token[]}[]} */ ('items' in token ? token.items : []);
  const points = items.map((item) => el('li', {}, ...elements(item.tokens, depth)));
  if (!('ordered' in token) || !token.ordered) return el('ul', {}, ...points);
  return el('ol', { start: String(token.start || 1) }, ...points);
}

/** A link into the web opens in a window of its own; any other is its words alone. @param {string} address @param {Node[]} words */
function link(address, words) {
  if (!/^https?:\/\//iu.test(address) || !URL.canParse(address)) return words;
  return [el('a', { href: address, target: '_blank', rel: 'noreferrer' }, ...words)];
}
