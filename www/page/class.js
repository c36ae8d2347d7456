/**
 * The section Class: the notebooks that a class handed in, each recomputed here, side by side. It holds them for as long as
 * the page is open, apart from the notebooks that are kept.
 */
import { ClassBudget } from './class-budget.js';
import { ClassChart } from './class-chart.js';
import { ClassFeedback } from './class-feedback.js';
import { areMerged } from './class-merged.js';
import { ClassNotices } from './class-notices.js';
import { ClassPool, fileOf, pathOf, textIn } from './class-pool.js';
import { ClassReading } from './class-reading.js';
import { ClassResiduals } from './class-residuals.js';
import { ClassTable, csvOf, whoOf, sayShown } from './class-table.js';
import { messageOf } from './core.js';
import { byId, download, el, setHidden, setText } from './dom.js';
import { Choice } from './field.js';
import { Figures } from './figures.js';
import { reveal } from './leaves.js';
import { toast } from './toast.js';
import { each, say, setTold } from './words.js';
import { reader } from './worker-slot.js';

/** @import { ClassEntry } from './class-pool.js' */
/** @import { Filter, Member } from './class-table.js' */
/** @import { DecimalMark, Figure, Value, View } from './types.js' */
/** @import { Class, ClassFigure, Key } from './worker-types.js' */

export class ClassSection {
  /** @param {(file: File) => void} open opens a copy of a notebook */
  constructor(open) {
    /** @type {ClassEntry[]} */
    this.entries = [];
    /** @type {Key[]} */
    this.keys = [];
    /** @type {DecimalMark} */
    this.mark = 'point';
    /** @type {ClassPool | undefined} */
    this.pool = undefined;
    /** What was chosen while others are read. @type {File[]} */
    this.waiting = [];
    /** The count of comparisons begun: an answer to an earlier one is not heard. */
    this.compared = 0;
    this.progress = /** @type {HTMLProgressElement} */ (byId('class-progress'));
    this.running = byId('class-running');
    this.count = byId('class-count');
    this.state = byId('class-state');
    this.result = byId('class-result');
    this.shownCount = byId('class-shown');
    this.nothing = byId('class-nothing');
    this.refusal = byId('class-refusal');
    this.figure = byId('class-figure');
    this.summary = byId('class-summary');
    this.figures = new Figures(byId('class-figures'));
    this.chart = new ClassChart(byId('class-plot'), byId('class-scale'));
    this.filter = new Choice({ id: 'class-filter', label: say('class-filter'), options: {} }, (value) => this.filterBy(value));
    this.feedback = new ClassFeedback((handed) => this.table.tellSaid(handed));
    byId('class-result').append(this.feedback.root);
    this.reading = new ClassReading();
    this.residuals = new ClassResiduals();
    this.budget = new ClassBudget();
    this.notices = new ClassNotices((notice) => this.only(notice));
    byId('class-figures').after(this.residuals.root, this.budget.root, this.notices.root);
    this.table = new ClassTable(/** @type {HTMLTableElement} */ (byId('class-table')), (member) => void this.open(member, open), this.feedback);
    this.listen();
  }

  listen() {
    for (const what of ['files', 'folder']) {
      const input = /** @type {HTMLInputElement} */ (byId(`class-${what}`));
      byId(`class-choose-${what}`).addEventListener('click', () => input.click());
      input.addEventListener('change', () => {
        const files = [...input.files ?? []].map((file) => (
          file.webkitRelativePath ? new File([file], file.webkitRelativePath, { type: file.type }) : file));
        input.value = '';
        void this.take(files);
      });
    }
    const search = el('input', { type: 'search', id: 'class-search', autocomplete: 'off', input: () => {
      this.table.sought = search.value;
      this.sayShown(this.table.draw());
    } });
    this.filter.offer(filters(['all', 'marked', 'without']));
    byId('class-choices').append(
      el('div', { class: 'field' }, el('label', { for: 'class-search' }, say('class-search')), el('span', { class: 'box' }, search)), this.filter.root);
    byId('class-stop').addEventListener('click', () => this.pool?.stop());
    byId('class-clear').addEventListener('click', () => this.askToClear());
    byId('class-take-table').addEventListener('click', () => {
      const csv = csvOf(this.table.shown(), this.table.members, this.keys.length > 0, this.feedback.all);
      download(csv, 'text/csv;charset=utf-8', 'class.csv');
    });
  }

  /** @param {Filter} filter */
  filterBy(filter) {
    this.table.filter = filter;
    this.filter.show(filter);
    this.sayShown(this.table.draw());
  }

  /** Shows those notebooks alone in which a notice stands. @param {string} notice */
  only(notice) {
    this.table.notice = notice;
    this.filter.offer(filters(['all', 'marked', 'without', 'notice']));
    this.filterBy('notice');
    reveal(this.filter.root);
    this.filter.box.focus();
  }

  /** The class is none of the open notebook, but for its decimal mark. @param {View} view */
  show({ decimal_mark }) {
    if (this.mark === decimal_mark) return;
    this.mark = decimal_mark;
    void this.compare();
  }

  /** Reads files, once those before are read, and adds what is in them to the class. @param {File[]} files */
  async take(files) {
    if (this.pool) this.waiting.push(...files);
    if (this.pool || files.length === 0) return;
    const pool = new ClassPool((done, all) => this.tell(done, all));
    this.pool = pool;
    setHidden(this.running, false);
    this.tell(0, files.length);
    setText(this.state, '');
    try {
      const may = await reader.ask('handed_in_by_name', files.map(({ name }) => name));
      const some = files.filter((_, index) => may[index]);
      const found = await pool.read(some.map((file) => ({ name: file.name, file, inside: undefined })));
      // The table may have been cleared meanwhile.
      if (this.pool !== pool) return;
      this.entries = onceEach([...this.entries, ...found]);
      this.keys = [...this.keys, ...pool.keys];
      const told = pool.stopped ? say('class-stopped', { done: pool.done, all: pool.all }) : say('class-done', { n: pool.done });
      const over = files.length - some.length;
      const astray = await this.feedback.match(pool.feedback, this.entries);
      const names = this.feedback.namesOfOthers().map((name) => name || say('class-feedback-nameless'));
      const keys = pool.keys.map(({ title, sets }) => say('class-key-read', { title, n: sets.length }));
      setText(this.state, [told, ...(over ? [say('class-passed-over', { n: over })] : []), ...keys,
        ...(pool.feedback.length > 0 ? [say('class-feedback-read', { n: pool.feedback.length, astray })] : []),
        ...(pool.feedback.length > 0 && names.length > 0 ? [say('class-feedback-whose', { names: { all: names } })] : [])].join(' '));
    } catch (error) {
      if (this.pool === pool) setText(this.state, say('class-failed', { why: messageOf(error) }));
    }
    if (this.pool !== pool) return;
    this.pool = undefined;
    setHidden(this.running, true);
    await this.compare();
    await this.take(this.waiting.splice(0));
  }

  /** @param {number} done @param {number} all */
  tell(done, all) {
    this.progress.max = all;
    this.progress.value = done;
    setText(this.count, say('class-running', { done, all }));
  }

  /** Clears the table; where comments written here would be lost with it, only when that is wished all the same. */
  askToClear() {
    const n = this.feedback.unsavedWork();
    if (n === 0) this.clear();
    else toast(say('class-clear-lost', { n }), { label: say('class-clear-anyway'), run: () => this.clear() });
  }

  clear() {
    this.pool?.stop();
    this.pool = undefined;
    this.waiting = [];
    setHidden(this.running, true);
    this.filter.offer(filters(['all', 'marked', 'without']));
    this.filterBy('all');
    this.entries = [];
    this.keys = [];
    this.feedback.clear();
    setText(this.state, '');
    void this.compare();
  }

  /** Has the notebooks compared, and shows them. */
  async compare() {
    this.compared += 1;
    const turn = this.compared;
    const read = this.entries.flatMap(({ row, stored }) => (row ? [{ ...row, stored }] : []));
    try {
      /** @type {Numbers<string>} */
      const readingsSeen = new Numbers();
      /** @type {Numbers<Value>} */
      const components = new Numbers();
      const given = read.map(({ sealed, figures, stored, readings, layer, rows, rails, parts }) => ({
        sealed,
        figures: figures.map(({ id, value, uncertainty }) => ({ id, value, uncertainty })),
        stored: stored ?? null,
        readings: readings.map((reading) => readingsSeen.of(reading, reading)),
        layer: this.keys.length > 0 ? layer : '',
        rows,
        rails,
        parts: parts.map(({ name, share }) => ({ component: components.of(JSON.stringify(name), name), share })),
      }));
      const names = [...components.known.keys()];
      const told = read.length > 0 ? await reader.ask('class_of', given, this.keys, names, this.mark) : undefined;
      const members = await membersOf(this.entries, told);
      if (turn === this.compared) this.draw(members, told, components.things);
    } catch (error) {
      if (turn === this.compared) setText(this.state, say('class-failed', { why: messageOf(error) }));
    }
  }

  /** @param {Member[]} members @param {Class | undefined} told of those that could be read, in their order @param {Value[]} components what those of budgets are called */
  draw(members, told, components) {
    setHidden(this.result, members.length === 0);
    setHidden(this.nothing, members.length > 0);
    this.sayShown(this.table.show(members, this.keys.length > 0));
    const count = this.chart.show(members, told);
    this.residuals.show(told?.residuals ?? undefined);
    this.budget.show(told, components);
    this.notices.show(members);
    setTold(this.refusal, told?.refusal ?? null);
    this.figures.show((told?.figures ?? []).map(figureOf));
    setHidden(this.figure, count === 0);
    setText(this.summary, say('class-summary', { n: count }));
  }

  /** @param {number} shown */
  sayShown(shown) {
    sayShown(this.shownCount, shown, this.table.members.length);
  }

  /** Opens a notebook to be read; a copy of it, on request. @param {Member} member @param {(file: File) => void} open */
  async open(member, open) {
    try {
      const file = await fileOf(member.handed);
      const text = await textIn(file);
      const { handed } = member;
      this.reading.open(whoOf(member), text, {
        feedback: await this.feedback.of(handed, text),
        others: this.feedback.others.get(handed) ?? [],
        changed: () => this.feedback.write(handed),
        take: () => void this.feedback.take(handed),
        copy: () => open(file),
      });
    } catch (error) {
      toast(messageOf(error));
    }
  }
}

/** The entries, a notebook that came before refused as that: counted twice, it would weigh twice in all. @param {ClassEntry[]} entries @returns {ClassEntry[]} */
function onceEach(entries) {
  /** @type {Map<string, ClassEntry>} */
  const first = new Map();
  return entries.map((entry) => {
    const { row } = entry;
    if (!row || row.figures.length === 0) return entry;
    const known = JSON.stringify([row.entries, row.title, row.people, row.layer, row.rows, row.figures]);
    const before = first.get(known);
    if (before) return { ...entry, row: undefined, refused: say('class-twice', { path: pathOf(before.handed) }) };
    first.set(known, entry);
    return entry;
  });
}

/** Numbers for things, from 0, the same for the same key. @template Thing */
class Numbers {
  constructor() {
    /** @type {Map<string, number>} */
    this.known = new Map();
    /** @type {Thing[]} */
    this.things = [];
  }

  /** @param {string} key @param {Thing} thing */
  of(key, thing) {
    const known = this.known.get(key);
    if (known !== undefined) return known;
    this.known.set(key, this.things.length);
    return this.things.push(thing) - 1;
  }
}

/**
 * Each notebook with what is told of it. What was told names the places among those that could be read.
 * @param {ClassEntry[]} entries
 * @param {Class | undefined} told
 * @returns {Promise<Member[]>}
 */
function membersOf(entries, told) {
  const places = entries.flatMap(({ row }, place) => (row ? [place] : []));
  const compared = new Map(places.map((place, index) => [place, told?.notebooks[index]]));
  const handed = layerOfMost(entries);
  return Promise.all(entries.map(async (entry, place) => {
    const its = compared.get(place);
    const alike = await Promise.all(its?.alike.map(async ({ notebook, rows }) => {
      const other = places[notebook] ?? 0;
      return { notebook: other, rows, merged: await areMerged(entry, entries[other]) };
    }) ?? []);
    return { ...entry, compared: its && { ...its, alike, handed_otherwise: handed !== '' && entry.row?.layer !== handed } };
  }));
}

/** The teacher's layer that most of the notebooks have; empty where no layer is that of most, as with data sets. @param {ClassEntry[]} entries */
function layerOfMost(entries) {
  const layers = entries.flatMap(({ row }) => (row ? [row.layer] : []));
  /** @type {Map<string, number>} */
  const counts = new Map();
  for (const layer of layers) counts.set(layer, (counts.get(layer) ?? 0) + 1);
  return [...counts].find(([, count]) => 2 * count > layers.length)?.[0] ?? '';
}

/** @param {ClassFigure} figure @returns {Figure} */
function figureOf({ meaning, ...figure }) {
  return { ...figure, meaning: [meaning], formula: null };
}

/** @param {Filter[]} all */
function filters(all) {
  return each(all, (key) => say(`class-filters-${key}`));
}
