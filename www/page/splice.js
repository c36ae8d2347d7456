/**
 * Where a rail stands: the kind of splice, and the texts that this kind asks for.
 */
import { el, Keyed, setHidden, setOptional } from './dom.js';
import { Choice, plain, TextField } from './field.js';
import { words } from './strings.js';

/** @import { Book } from './book.js' */
/** @import { OverlapPair, RailView, Splice, StoredSplice, SpliceKind } from './types.js' */

/** The texts of each kind, in the order shown. @type {Record<SpliceKind, string[]>} */
const PARTS = {
  unsaid: [],
  at_splitter: ['mark', 'uncertainty'],
  at_distance: ['mark', 'distance', 'uncertainty'],
  joined: ['mark', 'mark_before', 'gap', 'uncertainty'],
  overlap: [],
  free: ['mark'],
};
/** @type {SpliceKind[]} */
const FOR_FIRST = ['unsaid', 'at_splitter', 'at_distance'];
/** @type {SpliceKind[]} */
const FOR_LATER = ['unsaid', 'joined', 'overlap', 'at_distance', 'free'];
const NO_PAIR = { here: '', before: '' };

export class SpliceEditor {
  /**
   * @param {Book} book
   * @param {number} rail
   */
  constructor(book, rail) {
    const t = words.splice;
    const id = `rail-${rail}-splice`;
    /** @type {Splice} */
    this.splice = { kind: 'unsaid' };
    this.send = (/** @type {Splice} */ splice) => {
      this.splice = splice;
      book.edit({ set_splice: { rail, splice: stored(splice) } });
    };
    this.kind = new Choice({ id: `${id}-kind`, label: t.kind, options: t.kinds }, (kind) => {
      this.send(ofKind(kind, this.splice));
    });
    this.kind.root.classList.add('wide');
    this.problem = el('p', { class: 'problem', hidden: true });
    /** @type {Record<string, TextField>} */
    this.fields = {};
    for (const part of /** @type {const} */ (['mark', 'distance', 'mark_before', 'gap', 'uncertainty'])) {
      this.fields[part] = new TextField({ id: `${id}-${part}`, label: t[part] }, (text) => {
        this.send(/** @type {Splice} */ ({ ...this.splice, [part]: text }));
      });
    }
    const list = el('div', { class: 'pairs' });
    this.pairs = new Keyed(list, (/** @type {PairItem} */ item) => String(item.place),
      (item) => new PairLine(`${id}-pair-${item.place}`, item.place, (change) => this.changePair(item.place, change)));
    const add = el('button', { type: 'button', id: `${id}-add-pair`, click: () => this.changePair(this.count(), NO_PAIR) },
      t.addPair);
    this.overlap = el('div', { class: 'wide' }, list, el('p', { class: 'actions' }, add));
    this.root = el('fieldset', { class: 'splice', id }, el('legend', {}, t.legend), this.problem,
      el('div', { class: 'fields' }, this.kind.root, ...Object.values(this.fields).map((field) => field.root),
        this.overlap));
  }

  /**
   * @param {RailView} rail
   * @param {RailView | undefined} before the rail before, if there is one
   */
  show(rail, before) {
    const splice = opened(rail.splice);
    this.splice = splice;
    const { kind } = splice;
    const problems = rail.splice_problems;
    const kinds = before ? FOR_LATER : FOR_FIRST;
    const offered = kinds.includes(kind) ? kinds : [...kinds, kind];
    this.kind.offer(Object.fromEntries(offered.map((name) => [name, words.splice.kinds[name]])));
    this.kind.show(kind);
    setOptional(this.problem, problems.splice ?? '');
    const texts = /** @type {Record<string, string>} */ (/** @type {unknown} */ (splice));
    for (const [part, field] of Object.entries(this.fields)) {
      const shown = PARTS[kind].includes(part);
      setHidden(field.root, !shown);
      if (shown) field.show(plain(texts[part] ?? '', problems[part] ?? '', unitOf(part, rail, before)));
    }
    this.fields.mark?.rename(kind === 'at_splitter' ? words.splice.markAtSplitter : words.splice.mark);
    setHidden(this.overlap, kind !== 'overlap');
    const pairs = splice.kind === 'overlap' ? splice.pairs : [];
    this.pairs.show(pairs.map((pair, place) => ({
      place,
      here: plain(pair.here, problems[`pairs.${place}.here`] ?? '', rail.unit_symbol),
      before: plain(pair.before, problems[`pairs.${place}.before`] ?? '', before?.unit_symbol ?? ''),
    })));
  }

  count() {
    return this.splice.kind === 'overlap' ? this.splice.pairs.length : 0;
  }

  /**
   * Changes a pair, adds one behind the last, or takes one away.
   * @param {number} place
   * @param {Partial<OverlapPair> | undefined} change
   */
  changePair(place, change) {
    if (this.splice.kind !== 'overlap') return;
    const pairs = this.splice.pairs.slice();
    if (change) pairs[place] = { ...NO_PAIR, ...pairs[place], ...change };
    else pairs.splice(place, 1);
    this.send({ kind: 'overlap', pairs });
  }
}

/** @typedef {{place: number, here: ReturnType<typeof plain>, before: ReturnType<typeof plain>}} PairItem */

class PairLine {
  /**
   * @param {string} id
   * @param {number} place
   * @param {(change: Partial<OverlapPair> | undefined) => void} change
   */
  constructor(id, place, change) {
    const t = words.splice;
    this.here = new TextField({ id: `${id}-here`, label: t.here(place + 1) }, (here) => change({ here }));
    this.before = new TextField({ id: `${id}-before`, label: t.before(place + 1) }, (before) => change({ before }));
    const remove = el('button',
      { type: 'button', class: 'quiet', 'aria-label': t.removePair(place + 1), click: () => change(undefined) }, '×');
    this.root = el('div', { class: 'pair' }, this.here.root, this.before.root, remove);
  }

  /** @param {PairItem} item */
  show(item) {
    this.here.show(item.here);
    this.before.show(item.before);
  }
}

/**
 * A splice of another kind that keeps what was typed where the parts have the same name.
 * @param {SpliceKind} kind
 * @param {Splice} old
 * @returns {Splice}
 */
function ofKind(kind, old) {
  const texts = /** @type {Record<string, string>} */ (/** @type {unknown} */ (old));
  const parts = Object.fromEntries(PARTS[kind].map((part) => [part, texts[part] ?? '']));
  const pairs = kind === 'overlap' ? { pairs: [NO_PAIR, NO_PAIR] } : {};
  return /** @type {Splice} */ (/** @type {unknown} */ ({ kind, ...parts, ...pairs }));
}

/**
 * The unit of a bare number in a part.
 * @param {string} part
 * @param {RailView} rail
 * @param {RailView | undefined} before
 */
function unitOf(part, rail, before) {
  return part === 'mark_before' ? before?.unit_symbol ?? '' : rail.unit_symbol;
}

/**
 * A splice as the notebook stores it, with its kind beside its texts.
 * @param {StoredSplice} splice
 * @returns {Splice}
 */
function opened(splice) {
  if (splice === 'unsaid') return { kind: 'unsaid' };
  const [[kind, texts]] = Object.entries(splice);
  return /** @type {Splice} */ ({ kind, ...texts });
}

/**
 * A splice as the notebook stores it.
 * @param {Splice} splice
 * @returns {StoredSplice}
 */
function stored({ kind, ...texts }) {
  return kind === 'unsaid' ? 'unsaid' : /** @type {StoredSplice} */ (/** @type {unknown} */ ({ [kind]: texts }));
}
