/**
 * The notebooks of a class as a table that sorts and filters, and as cells of a file.
 */
import { core } from './core.js';
import { el, setText } from './dom.js';
import { pathOf } from './class-pool.js';
import { isEmpty } from './feedback-places.js';
import { counted } from './notices.js';
import { each, inWords, say, tell } from './words.js';

/** @import { ClassEntry, Handed } from './class-pool.js' */
/** @import { ClassRow } from './class-row.js' */
/** @import { Alike, Compared as ToldOf, Covered, Feedback } from './worker-types.js' */

/** What is told of a notebook beside the others; `merged` where the same readings come of a merge between partners, `handed_otherwise` where its teacher's layer is not that of most. @typedef {Omit<ToldOf, 'alike'> & {alike: (Alike & {merged: boolean})[], handed_otherwise: boolean}} Compared */
/** A notebook with what is told of it beside the others. @typedef {ClassEntry & {compared: Compared | undefined}} Member */
/** @typedef {'all' | 'marked' | 'without' | 'notice'} Filter */
/**
 * A column: what stands for a notebook that was read where it is sorted by this column, and what is shown of it.
 * @typedef {{id: ColumnId, rank: (row: ClassRow, compared: Compared) => number | string | null | undefined, cell: (row: ClassRow, compared: Compared, members: Member[]) => Node | string, words?: boolean}} Column
 */
/** @typedef {'rows' | 'c' | 'expanded' | 'z' | 'apart' | 'key' | 'chi_square' | 'p_value' | 'method' | 'notices' | 'missing' | 'remarks'} ColumnId */

/** The longest name that is shown whole. */
const LONGEST = 300;
/** So many lines are laid out at a time: more than a screen holds. */
const AT_ONCE = 100;

/** @type {Column[]} */
const COLUMNS = [
  { id: 'c', rank: (_, { result }) => result?.c, cell: ({ sealed }, { c }) => (sealed ? say('seal-mark') : c) },
  { id: 'expanded', rank: (_, { result }) => result?.expanded, cell: (_, { expanded }) => expanded },
  { id: 'z', rank: (_, { result }) => result?.z, cell: (_, { z }) => z },
  { id: 'notices', words: true, rank: ({ notices }) => notices.length, cell: noticesOf },
  { id: 'key', words: true, rank: againstKey, cell: againstKey },
  { id: 'remarks', words: true, rank: (row, compared) => remarkCount(row, compared), cell: (row, compared, members) => lines(remarks(row, compared, members)) },
  { id: 'missing', words: true, rank: (row) => missing(row).length, cell: (row) => lines(missing(row)) },
  { id: 'apart', rank: (_, { apart_value }) => apart_value, cell: (_, { apart }) => apart },
  { id: 'rows', rank: (row) => row.used, cell: ({ used, struck }) => (struck ? say('class-struck', { used, struck }) : String(used)) },
  { id: 'chi_square', rank: (_, { fit }) => fit?.chi_square, cell: (_, { chi_square }) => chi_square },
  { id: 'p_value', rank: (_, { fit }) => fit?.p_value, cell: (_, { p_value }) => p_value },
  { id: 'method', words: true, rank: methodOf, cell: methodOf },
];

export class ClassTable {
  /**
   * @param {HTMLTableElement} table
   * @param {(member: Member) => void} open
   * @param {{all: Map<Handed, Feedback>, others: Map<Handed, Feedback[]>}} said what the teacher says of each, and what others do
   */
  constructor(table, open, said) {
    this.open = open;
    this.said = said;
    /** Where it stands that something is said. @type {WeakMap<Handed, HTMLElement>} */
    this.notes = new WeakMap();
    /** @type {Member[]} */
    this.members = [];
    /** By what it is sorted: nothing where it is as it came. @type {ColumnId | 'who' | ''} */
    this.by = '';
    this.falling = false;
    this.sought = '';
    /** @type {Filter} */
    this.filter = 'all';
    /** The notice of the filter by one. */
    this.notice = '';
    /** What still has to be laid out. @type {number | undefined} */
    this.rest = undefined;
    this.collator = new Intl.Collator(say('language'), { numeric: true });
    this.body = el('tbody');
    /** Those in sight: that of the key only where one was read. */
    this.columns = COLUMNS;
    /** @type {HTMLElement[]} */
    this.heads = [];
    this.head = el('tr');
    table.append(el('caption', { class: 'unseen' }, say('class-table')), el('thead', {}, this.head), this.body);
  }

  /** @param {boolean} keyed whether a key was read */
  layColumns(keyed) {
    const columns = COLUMNS.filter(({ id }) => keyed || id !== 'key');
    if (this.heads.length === columns.length + 1) return;
    this.columns = columns;
    this.heads = [this.headOf('who', true), ...columns.map(({ id, words }) => this.headOf(id, words))];
    this.head.replaceChildren(...this.heads, el('td'));
  }

  /** @param {ColumnId | 'who'} id @param {boolean} [words] whether words stand in its column, and no numbers */
  headOf(id, words) {
    const name = say(`class-columns-${id}`);
    const button = el('button', { type: 'button', class: 'quiet', 'aria-label': say('class-sort', { column: name }), click: () => {
      this.falling = this.by === id && !this.falling;
      this.by = id;
      this.draw();
    } }, name);
    return el('th', { scope: 'col', 'data-column': id, class: words ? 'words' : '' }, button);
  }

  /** @param {Member[]} members @param {boolean} keyed whether a key was read @returns {number} how many are shown */
  show(members, keyed) {
    this.layColumns(keyed);
    this.members = members;
    return this.draw();
  }

  /** Those in sight, in their order. */
  shown() {
    const sought = this.sought.toLowerCase();
    const some = this.members.filter((member) => (
      `${whoOf(member)} ${pathOf(member.handed)}`.toLowerCase().includes(sought) && this.passes(member)));
    if (!this.by) return some;
    const sign = this.falling ? -1 : 1;
    // What has nothing to sort by comes last, either way.
    return some.map((member) => ({ member, rank: this.rankOf(member) })).sort(({ rank: one }, { rank: other }) => {
      if (one === undefined || other === undefined) return Number(one === undefined) - Number(other === undefined);
      return sign * (typeof one === 'number' && typeof other === 'number' ? one - other : this.collator.compare(String(one), String(other)));
    }).map(({ member }) => member);
  }

  /** What stands for it where the table is sorted. @param {Member} member */
  rankOf(member) {
    if (this.by === 'who') return whoOf(member);
    const column = COLUMNS.find(({ id }) => id === this.by);
    const { row, compared } = member;
    return (row && compared && column?.rank(row, compared)) ?? undefined;
  }

  /** @param {Member} member */
  passes({ row, compared }) {
    if (this.filter === 'without') return !compared?.result;
    if (this.filter === 'notice') return row?.notices.some(({ id }) => id === this.notice) ?? false;
    if (this.filter === 'marked') return !row || !compared || missing(row).length + row.notices.length + remarkCount(row, compared) > 0;
    return true;
  }

  draw() {
    for (const head of this.heads) {
      const { column } = head.dataset;
      if (column === this.by) head.setAttribute('aria-sort', this.falling ? 'descending' : 'ascending');
      else head.removeAttribute('aria-sort');
    }
    const shown = this.shown();
    this.body.replaceChildren();
    this.lay(shown);
    return shown.length;
  }

  /** Adds lines, those beyond a screen a moment later, so that the page goes on answering. @param {Member[]} members */
  lay(members) {
    clearTimeout(this.rest);
    this.body.append(...members.slice(0, AT_ONCE).map((member) => this.line(member)));
    if (members.length > AT_ONCE) this.rest = setTimeout(() => this.lay(members.slice(AT_ONCE)));
  }

  /** @param {Member} member */
  line(member) {
    const { row, compared, refused, handed } = member;
    const name = whoOf(member);
    const path = pathOf(handed);
    const who = el('th', { scope: 'row' }, name, ...(name === path ? [] : [el('small', {}, path)]));
    if (!row || !compared) return el('tr', { class: 'unread' }, who, el('td', { colspan: String(this.columns.length), class: 'refusal' }, el('span', {}, refused)), el('td'));
    const note = el('small');
    this.notes.set(handed, note);
    this.tellSaid(handed);
    who.append(note);
    return el('tr', {}, who,
      ...this.columns.map(({ id, cell, words }) => (
        el('td', { 'data-column': id, 'data-label': say(`class-columns-${id}`), class: words ? 'words' : '' }, cell(row, compared, this.members)))),
      el('td', {}, el('button', { type: 'button', 'aria-label': say('class-open-of', { name }), click: () => this.open(member) }, say('notebooks-open'))));
  }

  /** Says how much is said of a notebook. @param {Handed} handed */
  tellSaid(handed) {
    const note = this.notes.get(handed);
    if (!note) return;
    const said = this.said.all.get(handed);
    const others = (this.said.others.get(handed) ?? []).map((other) => (
      say('class-said-by', { from: other.from.trim() || say('class-colleague'), brief: inBrief(other) })));
    setText(note, [said && !isEmpty(said) ? inBrief(said) : '', ...others].filter((text) => text).join('; '));
  }
}

/** The mark, and how many comments there are, that on all of it among them. @param {Feedback} said */
function inBrief({ mark, general, comments }) {
  const n = [general, ...comments.map(({ text }) => text)].filter((text) => text.trim() !== '').length;
  return [mark.trim(), n > 0 ? say('class-comments', { n }) : ''].filter((text) => text).join(' · ');
}

/** Who it is from, by what there is; of a name of any length as much as a table can hold. @param {ClassEntry} entry */
export function whoOf({ row, handed }) {
  const name = row?.people.trim() || row?.title.trim() || pathOf(handed);
  return name.length > LONGEST ? `${name.slice(0, LONGEST)}…` : name;
}

/** @param {ClassRow} row */
function noticesOf({ notices }) {
  if (notices.length === 0) return '';
  const list = el('ul');
  const details = el('details', {}, el('summary', {}, counted(notices, say('strip-notices', { n: notices.length }))), list);
  details.addEventListener('toggle', () => list.replaceChildren(...notices.map(({ text }) => el('li', {}, tell(text)))));
  return details;
}

/** @param {string[]} texts */
function lines(texts) {
  return texts.length > 1 ? el('ul', {}, ...texts.map((text) => el('li', {}, text))) : texts[0] ?? '';
}

/** How its line was fitted. @param {ClassRow} row */
function methodOf({ method }) {
  const names = each(['ordinary', 'weighted', 'both', 'shared'], (key) => say(`class-methods-${key}`));
  return names[method?.id.split('-').at(-1) ?? ''] ?? '';
}

/** Whether it covers what the key says. @param {ClassRow} row @param {Compared} compared */
function againstKey({ sealed }, { key }) {
  if (!key) return say('class-key-none');
  return sealed ? say('seal-mark') : covered(key);
}

/** @param {Covered} key */
function covered({ c, t0 }) {
  if (c === null || t0 === null) return '';
  if (c) return say(t0 ? 'class-key-both' : 'class-key-c');
  return say(t0 ? 'class-key-t0' : 'class-key-neither');
}

/** What is not there yet. @param {ClassRow} row */
function missing({ refusal, incomplete, lacks }) {
  const rows = incomplete ? [say('class-incomplete', { n: incomplete })] : [];
  return [...(refusal ? [tell(refusal)] : []), ...rows, ...lacks.map((piece) => say(`handout-pieces-${piece}`))];
}

/** How many remarks there are of a notebook. @param {ClassRow} row @param {Compared} compared */
function remarkCount({ after_seal, scattered, coverage }, { alike, differs, handed_otherwise }) {
  const kinds = new Set(alike.map(({ merged }) => merged));
  return [handed_otherwise, scattered, coverage, after_seal].filter(Boolean).length + Number(differs.length > 0) + kinds.size;
}

/** @param {ClassRow} row @param {Compared} compared @param {Member[]} members */
function remarks({ after_seal, figures, scattered, coverage }, { alike, differs, handed_otherwise }, members) {
  const told = [];
  if (handed_otherwise) told.push(say('class-handed_otherwise'));
  if (scattered) told.push(say('class-scattered'));
  if (coverage) told.push(say('class-coverage', { coverage }));
  if (after_seal) told.push(say('class-after-seal', { n: after_seal }));
  const other = figures.flatMap(({ id, name }) => (differs.includes(id) ? [name] : []));
  if (other.length > 0) told.push(say('class-differs', { figures: { all: other } }));
  const tellAlike = (/** @type {'class-alike' | 'class-alike-merged'} */ text, /** @type {Alike[]} */ some) => {
    const [first] = some;
    const names = some.map(({ notebook }) => members[notebook]).map((member) => (member ? whoOf(member) : ''));
    if (first) told.push(say(text, { rows: first.rows, names: { all: names } }));
  };
  tellAlike('class-alike', alike.filter(({ merged }) => !merged));
  tellAlike('class-alike-merged', alike.filter(({ merged }) => merged));
  return told;
}

/** All notebooks as a file, in the order of the table. @param {Member[]} members @param {Member[]} all @param {boolean} keyed whether a key was read @param {Map<Handed, Feedback>} said */
export function csvOf(members, all, keyed, said) {
  const isSaid = [...said.values()].some((one) => !isEmpty(one));
  const heads = [
    say('class-columns-file'), say('class-columns-people'), say('class-columns-title'), say('class-columns-rows'), say('class-columns-struck'),
    `${say('class-columns-c')}/(m/s)`, `${say('class-columns-u')}/(m/s)`, `${say('class-columns-expanded')}/(m/s)`, say('class-columns-z'), say('class-columns-apart'),
    'χ²', say('class-columns-degrees_of_freedom'), say('class-columns-p_value'), say('class-columns-method'), say('class-columns-notices'),
    say('class-columns-missing'), say('class-columns-remarks'), ...(keyed ? [say('class-columns-key')] : []), ...(isSaid ? [say('class-mark'), say('class-general')] : []), say('class-columns-refusal'),
  ];
  const cells = members.flatMap(({ handed, row, compared, refused }) => {
    const path = pathOf(handed);
    if (!row || !compared) return [path, ...heads.slice(2).map(() => ''), refused];
    const { result, fit } = compared;
    const sealed = row.sealed ? [say('seal-mark')] : [];
    return [
      path, row.people, row.title, row.used, row.struck, result?.c, result?.u, result?.expanded,
      result?.z, compared.apart_value, fit?.chi_square, fit?.degrees_of_freedom, fit?.p_value, methodOf(row), inWords(row.notices.map(({ text }) => text)),
      missing(row).join(' · '), [...sealed, ...remarks(row, compared, all)].join(' · '), ...(keyed ? [againstKey(row, compared)] : []),
      ...(isSaid ? [said.get(handed)?.mark ?? '', said.get(handed)?.general ?? ''] : []), '',
    ];
  });
  return core.csv([...heads, ...cells], heads.length);
}

/** Says how many are shown. @param {HTMLElement} node @param {number} shown @param {number} all */
export function sayShown(node, shown, all) {
  setText(node, all ? say('class-shown', { shown, all }) : say('class-empty'));
}
