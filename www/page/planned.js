/**
 * The plan in words: sentences and figures from what the core worked out and rounded. The formulas hold the core's own
 * figures; nothing is computed here.
 */
import { inWords, say } from './words.js';

/** @import { Figure, Formula, PlaceView, Said, Value } from './types.js' */

/** The figures, each with its symbol. */
const SYMBOLS = {
  expected: 'u(v)/v', reading: 'u_r', shared: 'u_s', floor: '', again: '', rail: '', faster: '', achieved: 'u(v)/v',
  reach: 'd_max', step: 'Δd',
};

/** @typedef {keyof typeof SYMBOLS} FigureId */

/** @param {PlaceView} place */
export function placeText({ shown, rail, distance }) {
  return say('plan-place', { reading: shown, rail, distance });
}

/** What is unwise about a plan. @param {Said} said */
export function warningText({ id, with: [first = '', second = ''] }) {
  switch (id) {
    case 'off_rail': case 'beyond_reach': case 'off_screen': return say(`plan-warnings-${id}`, { n: first });
    case 'side': return say('plan-warnings-side', { rail: first, have: second });
    case 'cluster': return say('plan-warnings-cluster', { length: first, whole: second });
    default: return say('plan-warnings-few', { rows: first });
  }
}

/** What is offered to be planned. @param {Said} said */
export function offerText({ id, with: [rows = '', u = ''] }) {
  return id === 'ends' ? say('plan-offers-ends', { rows, u }) : say('plan-offers-spread', { rows, u });
}

/** Why a next reading is proposed. @param {Said} said */
export function reasonText({ id, with: [value = ''] }) {
  switch (id) {
    case 'lever': return say('plan-reasons-lever', { arm: value });
    case 'side': return say('plan-reasons-side', { have: value });
    case 'gap': return say('plan-reasons-gap', { gap: value });
    default: return id === 'first' ? say('plan-reasons-first') : say('plan-reasons-little');
  }
}

/** What is expected and what limits it. @param {Omit<Said, 'id'>} said */
export function expectedText({ with: [u = '', , , rows = '', share = ''], name }) {
  const expected = say('plan-expected', { u, rows });
  return name ? `${expected} ${say('plan-limits', { name: inWords(name), share })}` : expected;
}

/** How it turned out. @param {string[]} with_ */
export function comparedText([how = '', ...figures]) {
  const [planned = '', rows = '', achieved = '', taken = ''] = figures;
  const compared = say('plan-compared', { planned, rows, achieved, taken });
  const turnedOut = how === 'kept' || how === 'missing' ? how : 'worse';
  return `${compared} ${say(`plan-turned-out-${turnedOut}`)}`;
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
        return [figure(id, first === '0' ? say('plan-none-faster') : say('plan-faster-rows', { u: value, rows: first }))];
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
  return [bare('c', say('plan-truth-c'), 'c₀', '299 792 458 m/s'), ...told.map(({ id, with: [value = '', u = ''], name }, place) => (
    name === null ? bare(id, say('plan-truth-t0'), 't₀', value) : bare(`${id}-${place}`, name, '', u ? say('plan-stated', { value, u }) : value)))];
}

/** @param {string} id @param {Value} name @param {string} symbol_ @param {string} value @returns {Figure} */
function bare(id, name, symbol_, value) {
  return { id, name, symbol: symbol_, value, meaning: [], formula: null, source: null };
}

/**
 * @param {FigureId} id
 * @param {string} value
 * @param {Formula | null} [formula]
 * @returns {Figure}
 */
function figure(id, value, formula = null) {
  const source = id === 'expected' || id === 'reading' || id === 'step' ? say(`plan-figures-${id}-source`) : null;
  return {
    id, value, formula, source, symbol: SYMBOLS[id], name: say(`plan-figures-${id}-name`),
    meaning: [say(`plan-figures-${id}-meaning`)],
  };
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
