/**
 * Where a rail stands: the kind of splice, and the texts that this kind asks for.
 */
import { el, Keyed, setHidden, setOptional } from './dom.js';
import { Choice, plain, TextField } from './field.js';
import { each, say, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { OverlapPair, RailView, Splice } from './types.js' */

/** @typedef {'unsaid' | 'at_splitter' | 'at_distance' | 'joined' | 'overlap' | 'free'} SpliceKind */
/** @typedef {'mark' | 'distance' | 'mark_before' | 'gap' | 'uncertainty'} SpliceField */
/** A splice as the editor holds it: what was typed stays at hand while another kind is looked at.
 * @typedef {{kind: SpliceKind, texts: Record<SpliceField, string>, pairs: OverlapPair[]}} Draft */

/** The texts of each kind, in the order shown. @type {Record<SpliceKind, SpliceField[]>} */
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
/** @type {SpliceKind[]} */
const KINDS = ['unsaid', 'at_splitter', 'at_distance', 'joined', 'overlap', 'free'];
/** @type {SpliceField[]} */
const ALL_PARTS = ['mark', 'distance', 'mark_before', 'gap', 'uncertainty'];
const NO_PAIR = { here: '', before: '' };

export class SpliceEditor {
  /**
   * @param {Book} book
   * @param {number} rail
   */
  constructor(book, rail) {
    const id = `rail-${rail}-splice`;
    this.draft = draftOf('unsaid');
    this.send = (/** @type {Partial<Draft>} */ change) => {
      this.draft = { ...this.draft, ...change };
      book.edit({ set_splice: { rail, splice: stored(this.draft) } });
    };
    this.kind = new Choice({
      id: `${id}-kind`,
      label: say('splice-kind'),
      options: each(KINDS, (kind) => say(`splice-kinds-${kind}`)),
      term: 'splice',
    }, (/** @type {SpliceKind} */ kind) => {
      const old = this.draft;
      // Kept where the parts have the same name.
      const texts = { ...old.texts };
      for (const part of ALL_PARTS) if (!PARTS[old.kind].includes(part)) texts[part] = '';
      this.send({ kind, texts, pairs: [NO_PAIR, NO_PAIR] });
    });
    this.kind.root.classList.add('wide');
    this.problem = el('p', { class: 'problem', hidden: true });
    this.fields = ALL_PARTS.map((part) => ({ part, field: new TextField({ id: `${id}-${part}`, label: say(`splice-${part}`) },
      (text) => this.send({ texts: { ...this.draft.texts, [part]: text } }), book.setKind) }));
    const list = el('div', { class: 'pairs' });
    this.pairs = new Keyed(list, (/** @type {PairItem} */ item) => String(item.place),
      (item) => new PairLine(`${id}-pair-${item.place}`, item.place, (change) => this.changePair(item.place, change)));
    const add = el('button', { type: 'button', id: `${id}-add-pair`, click: () => this.changePair(this.count(), NO_PAIR) },
      say('splice-add-pair'));
    this.overlap = el('div', { class: 'wide' }, list, el('p', { class: 'actions' }, add));
    this.root = el('fieldset', { class: 'splice', id }, el('legend', {}, say('splice-legend')), this.problem,
      el('div', { class: 'fields' }, this.kind.root, ...this.fields.map(({ field }) => field.root),
        this.overlap));
  }

  /**
   * @param {RailView} rail
   * @param {RailView | undefined} before the rail before, if there is one
   */
  show(rail, before) {
    const { kind, texts, pairs } = draftOf(rail.splice);
    this.draft = { kind, texts, pairs };
    const problems = rail.splice_problems;
    const kinds = before ? FOR_LATER : FOR_FIRST;
    const offered = kinds.includes(kind) ? kinds : [...kinds, kind];
    this.kind.offer(each(offered, (name) => say(`splice-kinds-${name}`)));
    this.kind.show(kind);
    setOptional(this.problem, tell(problems.splice));
    for (const { part, field } of this.fields) {
      const shown = PARTS[kind].includes(part);
      setHidden(field.root, !shown);
      if (shown) {
        field.show(part === 'uncertainty' ? rail.splice_uncertainty
          : plain(texts[part], problems[part], unitOf(part, rail, before)));
      }
      if (part === 'mark') field.rename(kind === 'at_splitter' ? say('splice-mark-at-splitter') : say('splice-mark'));
    }
    setHidden(this.overlap, kind !== 'overlap');
    this.pairs.show(pairs.map((pair, place) => ({
      place,
      here: plain(pair.here, problems[`pairs.${place}.here`], rail.unit_symbol),
      before: plain(pair.before, problems[`pairs.${place}.before`], before?.unit_symbol ?? ''),
    })));
  }

  count() {
    return this.draft.pairs.length;
  }

  /**
   * Changes a pair, adds one behind the last, or takes one away.
   * @param {number} place
   * @param {Partial<OverlapPair> | undefined} change
   */
  changePair(place, change) {
    if (this.draft.kind !== 'overlap') return;
    const pairs = this.draft.pairs.slice();
    if (change) pairs[place] = { ...NO_PAIR, ...pairs[place], ...change };
    else pairs.splice(place, 1);
    this.send({ pairs });
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
    this.here = new TextField({ id: `${id}-here`, label: say('splice-here', { n: place + 1 }) }, (here) => change({ here }));
    this.before = new TextField({ id: `${id}-before`, label: say('splice-before', { n: place + 1 }) }, (before) => change({ before }));
    const remove = el('button',
      { type: 'button', class: 'quiet', 'aria-label': say('splice-remove-pair', { n: place + 1 }), click: () => change(undefined) }, '×');
    this.root = el('div', { class: 'pair' }, this.here.root, this.before.root, remove);
  }

  /** @param {PairItem} item */
  show(item) {
    this.here.show(item.here);
    this.before.show(item.before);
  }
}

/**
 * The unit of a bare number in a part.
 * @param {SpliceField} part
 * @param {RailView} rail
 * @param {RailView | undefined} before
 */
function unitOf(part, rail, before) {
  return part === 'mark_before' ? before?.unit_symbol ?? '' : rail.unit_symbol;
}

/** @param {Splice} splice @returns {Draft} */
function draftOf(splice) {
  /** @type {Record<SpliceField, string>} */
  const texts = { mark: '', distance: '', mark_before: '', gap: '', uncertainty: '' };
  if (splice === 'unsaid') return { kind: 'unsaid', texts, pairs: [] };
  if ('at_splitter' in splice) return { kind: 'at_splitter', texts: { ...texts, ...splice.at_splitter }, pairs: [] };
  if ('at_distance' in splice) return { kind: 'at_distance', texts: { ...texts, ...splice.at_distance }, pairs: [] };
  if ('joined' in splice) return { kind: 'joined', texts: { ...texts, ...splice.joined }, pairs: [] };
  if ('overlap' in splice) return { kind: 'overlap', texts, pairs: splice.overlap.pairs };
  return { kind: 'free', texts: { ...texts, ...splice.free }, pairs: [] };
}

/** @param {Draft} draft @returns {Splice} */
function stored({ kind, texts: { mark, distance, mark_before, gap, uncertainty }, pairs }) {
  switch (kind) {
    case 'unsaid': return 'unsaid';
    case 'at_splitter': return { at_splitter: { mark, uncertainty } };
    case 'at_distance': return { at_distance: { mark, distance, uncertainty } };
    case 'joined': return { joined: { mark, mark_before, gap, uncertainty } };
    case 'overlap': return { overlap: { pairs } };
    case 'free': return { free: { mark } };
  }
}
