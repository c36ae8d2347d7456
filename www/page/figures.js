/**
 * Numbers with their names and values; what each means, and how it is worked out, is one press away.
 */
import { alike, el, Keyed, setAttribute, setHidden } from './dom.js';
import { math } from './formula.js';
import { termLink } from './help.js';
import { inWords, say, setTold } from './words.js';

/** @import { Figure, Formula } from './types.js' */

/** The term of the glossary that explains a figure, by the figure's identifier. @type {Record<string, string>} */
const TERMS = {
  covariance: 'covariance', degrees_of_freedom: 'degrees-of-freedom', chi_square: 'chi-squared', p_value: 'p-value',
  birge_ratio: 'birge-ratio', quadratic: 'p-value', runs: 'p-value', decisive_row: 'leverage', group_index: 'group-index',
  c: 'measurand', coverage_factor: 'coverage-factor', expanded: 'expanded', combined: 'combined',
  effective_degrees: 'degrees-of-freedom', trials_symmetric: 'coverage-interval', trials_shortest: 'coverage-interval',
  separation_uncertainty: 'standard-uncertainty', fixed_level: 'time-walk', constant_fraction: 'constant-fraction',
  walk_slope: 'time-walk', walk_shift: 'time-walk', row_residual: 'residual', row_distance: 'standard-uncertainty', row_delay: 'standard-uncertainty',
};

class FigureLine {
  /** @param {string} list @param {string} id */
  constructor(list, id) {
    this.name = el('span');
    this.symbol = el('i', { class: 'symbol' });
    this.written = '';
    this.meaning = el('p');
    /** @type {Formula | null} */
    this.formula = null;
    /** The formula as drawn last. @type {Formula | null} */
    this.drawn = null;
    this.work = el('div', { class: 'formula', hidden: true });
    this.source = el('small', { hidden: true });
    this.value = el('dd', { id: `${list}-${id}` });
    const term = TERMS[id];
    this.term = term === undefined ? undefined : termLink(term, '');
    this.more = el('details', {}, el('summary', {}, this.name, ' ', this.symbol), this.meaning, this.work, this.source,
      ...(this.term ? [el('p', {}, this.term)] : []));
    this.more.addEventListener('toggle', () => this.write());
    this.root = el('div', { class: 'figure' }, el('dt', {}, this.more), this.value);
  }

  /** @param {Figure} figure */
  show({ name, symbol, value, meaning, formula, source }) {
    setTold(this.name, name);
    if (this.term) setAttribute(this.term, 'aria-label', say('how-glossary-of', { term: inWords(name) }));
    if (this.written !== symbol) {
      this.written = symbol;
      this.symbol.replaceChildren(...lettered(symbol));
    }
    setTold(this.value, value);
    setTold(this.meaning, meaning);
    this.formula = formula;
    this.write();
    setTold(this.source, source);
    setAttribute(this.root, 'class', meaning.length > 0 || formula ? 'figure' : 'figure bare');
  }

  /** Draws the formula, while it is in sight: every edit brings new numbers. */
  write() {
    if (!this.more.open) return;
    if (!alike(this.formula, this.drawn)) {
      this.drawn = this.formula;
      const drawn = this.formula ? math(this.formula) : undefined;
      this.work.replaceChildren(...(drawn ? [drawn] : []));
      setHidden(this.work, !drawn);
    }
    // Told anew of its size, at once or when its leaf is turned up: till then it has none that counts.
    places.unobserve(this.work);
    places.observe(this.work);
  }
}

/** Watches the places of formulas: a phone is turned, a window made narrow. */
const places = new ResizeObserver((changed) => {
  for (const { target } of changed) reach(/** @type {HTMLElement} */ (target));
});

/** Lets the keyboard scroll a formula that is larger than its place. @param {HTMLElement} work */
function reach(work) {
  const isLarger = work.scrollWidth > work.clientWidth || work.scrollHeight > work.clientHeight;
  setAttribute(work, 'tabindex', isLarger ? '0' : undefined);
}

/**
 * A symbol as it is set: the letters and digits behind a low line are set low.
 * @param {string} symbol
 * @returns {(Node | string)[]}
 */
export function lettered(symbol) {
  const [first = '', ...lows] = symbol.split('_');
  return [first, ...lows.flatMap((part) => {
    const [low = ''] = part.match(/^[\p{L}\p{N}]*/u) ?? [];
    return [el('sub', {}, low), part.slice(low.length)];
  })];
}

export class Figures {
  /** @param {HTMLElement} root an empty `dl`; its id begins the id of each value */
  constructor(root) {
    this.root = root;
    this.list = new Keyed(root, (/** @type {Figure} */ figure) => figure.id,
      (figure) => new FigureLine(root.id, figure.id));
  }

  /** @param {Figure[]} figures */
  show(figures) {
    this.list.show(figures);
    setHidden(this.root, figures.length === 0);
  }
}
