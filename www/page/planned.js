/**
 * The plan in words: sentences and figures from what the core worked out and rounded. The formulas hold the core's own
 * figures; nothing is computed here.
 */
import { words } from './strings.js';

/** @import { Figure, Formula, PlaceView, Said } from './types.js' */

/** @typedef {keyof typeof words.plan.figures} FigureId */

/** @param {PlaceView} place */
export function placeText({ shown, rail, distance }) {
  return words.plan.place(shown, rail, distance);
}

/**
 * A sentence of a table by its identifier; nothing when the table has none.
 * @param {Record<string, (...with_: string[]) => string>} table
 * @param {Said} said
 */
export function sentence(table, said) {
  return table[said.id]?.(...said.with) ?? '';
}

/** What is expected and what limits it. @param {string[]} with_ */
export function expectedText([u = '', , , rows = '', limit = '', share = '']) {
  const { expected, limits } = words.plan;
  return limit ? `${expected(u, rows)} ${limits(limit, share)}` : expected(u, rows);
}

/** How it turned out. @param {string[]} with_ */
export function comparedText([how = '', ...figures]) {
  const [planned = '', rows = '', achieved = '', taken = ''] = figures;
  /** @type {Record<string, string>} */
  const endings = words.plan.turnedOut;
  return `${words.plan.compared(planned, rows, achieved, taken)} ${endings[how] ?? ''}`;
}

/**
 * The figures of a plan.
 * @param {Said[]} all
 * @returns {Figure[]}
 */
export function planFigures(all) {
  return all.flatMap(({ id, with: [value = '', ...more] }) => {
    const [first = '', second = '', third = ''] = more;
    switch (id) {
      case 'expected':
        return [
          figure('expected', value, equation(over(symbol('u', 'v'), symbol('v')),
            root(row(squared(symbol('u', 'r')), op('+'), squared(symbol('u', 's')))),
            root(row(squared(number(first)), op('+'), squared(number(second)))), value)),
          figure('reading', first, row(symbol('u', 'b'), op('='),
            over(symbol('σ'), root(row(op('Σ'), squared(row(op('('), symbol('d', 'i'), op('−'), symbol('d̄'), op(')')))))),
            op(','), squared(symbol('σ')), op('='), squared(symbol('u', 't')), op('+'), squared(symbol('b')),
            squared(symbol('u', 'd')))),
          figure('shared', second),
        ];
      case 'compared':
        return [figure('achieved', third)];
      case 'again': case 'rail': case 'floor':
        return [figure(id, value)];
      case 'faster':
        return [figure(id, first === '0' ? words.plan.noneFaster : words.plan.fasterRows(value, first))];
      case 'reach':
        return [figure(id, value, equation(symbol('d', 'max'), over(row(symbol('v'), op('·'), symbol('T')), symbol('f')),
          over(row(number(first), op('·'), number(second)), number(third)), value))];
      case 'step': {
        const two = number('2√2');
        return [figure(id, value, equation(symbol('Δd'),
          over(row(two, op('·'), symbol('u', 't'), op('·'), symbol('v')), symbol('f')),
          over(row(two, op('·'), number(first), op('·'), number(second)), number(third)), value))];
      }
      default:
        return [];
    }
  });
}

/**
 * What was so in a rehearsal, as figures.
 * @param {Said[]} told
 * @returns {Figure[]}
 */
export function truthFigures(told) {
  if (told.length === 0) return [];
  const { truth, stated } = words.plan;
  return [bare('c', truth.c, 'c₀', '299 792 458 m/s'), ...told.map(({ id, with: [name = '', value = '', u = ''] }, place) => (
    id === 't0' ? bare(id, truth.t0, 't₀', name) : bare(`${id}-${place}`, name, '', stated(value, u))))];
}

/** @param {string} id @param {string} name @param {string} symbol_ @param {string} value @returns {Figure} */
function bare(id, name, symbol_, value) {
  return { id, name, symbol: symbol_, value, meaning: '', formula: null, source: '' };
}

/**
 * @param {FigureId} id
 * @param {string} value
 * @param {Formula | null} [formula]
 * @returns {Figure}
 */
function figure(id, value, formula = null) {
  return { id, value, formula, ...words.plan.figures[id] };
}

/** @param {string} tag @param {string} text @returns {Formula} */
function leaf(tag, text) {
  return { tag, text };
}

/** @param {string} tag @param {...Formula} children @returns {Formula} */
function node(tag, ...children) {
  return { tag, children };
}

/** @param {string} base @param {string} [low] */
function symbol(base, low) {
  return low ? node('msub', leaf('mi', base), leaf('mi', low)) : leaf('mi', base);
}

/** @param {string} text */
function number(text) {
  return leaf('mn', text);
}

/** @param {string} text */
function op(text) {
  return leaf('mo', text);
}

/** @param {...Formula} children */
function row(...children) {
  return node('mrow', ...children);
}

/** @param {Formula} above @param {Formula} below */
function over(above, below) {
  return node('mfrac', above, below);
}

/** @param {Formula} base */
function squared(base) {
  return node('msup', base, number('2'));
}

/** @param {Formula} inner */
function root(inner) {
  return node('msqrt', inner);
}

/**
 * `left = symbols`, and below it the same with the numbers put in.
 * @param {Formula} left
 * @param {Formula} symbols
 * @param {Formula} numbers
 * @param {string} value
 */
function equation(left, symbols, numbers, value) {
  const line = (/** @type {Formula[]} */ ...children) => node('mtr', node('mtd', row(...children)));
  return node('mtable', line(left, op('='), symbols), line(op('='), numbers, op('='), number(value)));
}
