/**
 * What the notebook noticed, beside what it is about. Weight is told by a word and a shape, not only by colour.
 */
import { alike, el, Keyed, setAttribute, setHidden, setText } from './dom.js';
import { flushAll } from './typing.js';
import { helpLink } from './help.js';
import { say, setTold, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Message, Notice, Section, View, Weight } from './types.js' */

/** Signs of weights, the gravest first, that are no mark of a rail in the charts. @type {Record<Weight, string>} */
export const SHAPES = { grave: '!', look: '?', know: 'i' };
/** The gravest first. */
export const WEIGHTS = /** @type {Weight[]} */ (Object.keys(SHAPES));

/** The term of the glossary that explains a notice, by the notice's name. @type {Record<string, string>} */
const TERMS = {
  treated_as_exact: 'standard-uncertainty', defaults_only: 'standard-uncertainty', dominant_component: 'correlated',
  few_rows: 'degrees-of-freedom', scatter_too_large: 'chi-squared', scatter_too_small: 'chi-squared', runs: 'residual',
  decisive_row: 'leverage', walk: 'time-walk', walk_twice: 'time-walk', vague_splice: 'splice', step_at_splice: 'splice',
};

/** Of more rows than this the others are counted. */
const MANY = 8;

/** @typedef {{key: string, notice: Notice, numbers: Map<number, number>}} Shown numbers: of the rows, by id */

class NoticeItem {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** @type {Notice | undefined} */
    this.notice = undefined;
    this.repair = el('button', { type: 'button', class: 'repair', click: () => this.mend() });
    this.shape = el('span', { class: 'shape', 'aria-hidden': 'true' });
    this.weight = el('strong');
    this.text = el('span');
    this.lookAt = el('span', { class: 'look-at' });
    this.rows = el('span', { class: 'rows' });
    this.signs = el('ul');
    this.told = '';
    this.shown = '';
    this.root = el('li', { tabindex: '-1' },
      this.shape, el('div', { class: 'notice-text' }, this.weight, ' ', this.text, ' ', this.lookAt, ' ', this.rows, ' ', this.repair, this.signs));
    this.term = '';
  }

  /** @param {Shown} item */
  show({ notice, numbers }) {
    this.notice = notice;
    setText(this.shape, SHAPES[notice.weight]);
    setAttribute(this.root, 'class', `notice ${notice.weight}`);
    setAttribute(this.root, 'data-notice', notice.id);
    setText(this.weight, say('notices-lead', { weight: say(`notices-weights-${notice.weight}`) }));
    setText(this.text, tell(notice.text));
    setText(this.lookAt, tell(notice.look_at));
    const term = TERMS[notice.id] ?? '';
    if (term !== this.term) this.lookAt.after(' ', helpLink(`term-${term}`, { class: 'term' }, say('how-glossary')));
    this.term = term;
    setHidden(this.repair, !notice.repair);
    if (notice.repair) setTold(this.repair, notice.repair.does);
    const signs = notice.signs.map(tell);
    if (signs.join('\n') !== this.told) {
      this.told = signs.join('\n');
      this.signs.replaceChildren(...signs.map((sign) => el('li', {}, sign)));
    }
    setHidden(this.signs, signs.length === 0);
    setAttribute(this.signs, 'aria-label', say('notices-signs'));
    const all = notice.rows.filter((row) => numbers.has(row));
    const rows = all.slice(0, MANY);
    const more = all.length - rows.length;
    const shown = all.map((row) => `${row}:${numbers.get(row)}`).join();
    if (shown === this.shown) return;
    this.shown = shown;
    this.rows.replaceChildren(...rows.flatMap((row) => [rowLink(row, numbers.get(row) ?? 0), ' ']),
      more > 0 ? say('notices-more', { n: more }) : '');
  }

  /**
   * Mends what was noticed, by one edit, unless something typed meanwhile took it away. A row is struck out for what was
   * noticed of it.
   */
  mend() {
    const repair = this.notice?.repair;
    flushAll();
    this.book.judge();
    if (!repair || !this.root.isConnected || !alike(repair, this.notice?.repair)) return;
    const { edit, reason } = repair;
    const struck = typeof edit === 'object' && 'strike_row' in edit && reason;
    this.book.edit(struck ? { strike_row: { ...edit.strike_row, reason: tell(reason) } } : edit);
  }
}

/**
 * @param {number} row
 * @param {number} number
 */
function rowLink(row, number) {
  return el('a', { href: `#row-${row}` }, say('notices-row', { n: number }));
}

/**
 * The first of the gravest notices, if there are any.
 * @template {{weight: Weight}} Weighed
 * @param {Weighed[]} notices
 */
export function gravest(notices) {
  const weight = WEIGHTS.find((some) => notices.some((notice) => notice.weight === some));
  return notices.find((notice) => notice.weight === weight);
}

/** The sign of the gravest with what is said of them all, by itself how many they are; nothing of none. @param {{weight: Weight}[]} notices @param {string} [said] */
export function counted(notices, said = String(notices.length)) {
  const first = gravest(notices);
  return first ? `${SHAPES[first.weight]} ${said}` : '';
}

/** The notices of one section, or of one rail. */
export class NoticeList {
  /**
   * @param {Book} book
   * @param {HTMLElement} root an empty `ul`
   * @param {(notice: Notice, view: View) => boolean} belongs
   */
  constructor(book, root, belongs) {
    this.root = root;
    this.belongs = belongs;
    this.list = new Keyed(root, (/** @type {Shown} */ item) => item.key, () => new NoticeItem(book));
  }

  /** @param {View} view */
  show(view) {
    const numbers = new Map(view.rows.map((row) => [row.id, row.number]));
    /** @type {Map<string, number>} */
    const seen = new Map();
    const items = view.notices.filter((notice) => this.belongs(notice, view)).map((notice) => {
      const count = seen.get(notice.id) ?? 0;
      seen.set(notice.id, count + 1);
      return { notice, numbers, key: `${notice.id} ${count}` };
    });
    this.list.show(items);
    setHidden(this.root, items.length === 0);
  }
}

/**
 * The notices of a section that are not about one rail that is there.
 * @param {Section} section
 * @returns {(notice: Notice, view: View) => boolean}
 */
export function ofSection(section) {
  return (notice, view) => notice.section === section
    && (section !== 'apparatus' || !view.rails.some((rail) => rail.id === notice.rail));
}

/**
 * Why a section has nothing to show. The same refusal stands once, at the section that it stops first; the others name
 * that one.
 * @param {HTMLElement} node
 * @param {Message | null} refusal
 * @param {Partial<Record<'line' | 'result', Message | null>>} before the refusals of the sections that come first
 */
export function setRefusal(node, refusal, before) {
  const first = refusal && Object.entries(before).find(([, other]) => alike(other, refusal));
  const section = first && say(first[0] === 'line' ? 'line-title' : 'result-title');
  setTold(node, section ? say('section-waits', { section }) : refusal);
}
