/**
 * Formulas: presentation MathML (W3C, MathML Core) from plain data. Only names on the list become elements.
 */

/** @import { Formula } from './types.js' */

const SPACE = 'http://www.w3.org/1998/Math/MathML';
const NAMES = [
  'mi', 'mn', 'mo', 'mtext', 'mrow', 'mfrac', 'msub', 'msup', 'msubsup', 'msqrt', 'mover', 'mtable', 'mtr', 'mtd',
];

/**
 * The formula as an element; nothing when it holds a name that is not on the list.
 * @param {Formula} formula
 * @returns {MathMLElement | undefined}
 */
export function math(formula) {
  const inside = build(formula);
  if (!inside) return undefined;
  const root = document.createElementNS(SPACE, 'math');
  root.setAttribute('displaystyle', 'true');
  root.append(inside);
  return root;
}

/**
 * @param {Formula} node
 * @returns {Element | undefined}
 */
function build(node) {
  if (!NAMES.includes(node.tag)) return undefined;
  const element = document.createElementNS(SPACE, node.tag);
  if ('text' in node) {
    element.textContent = node.text;
    return element;
  }
  for (const child of node.children) {
    const built = build(child);
    if (!built) return undefined;
    element.append(built);
  }
  return element;
}
