/**
 * Recorded traces: taking their files in, measuring a whole run, looking at a row's traces, and what walk does.
 */
import { benchField } from './apparatus.js';
import { messageOf } from './core.js';
import { byId, el, setHidden, setText } from './dom.js';
import { reveal } from './leaves.js';
import { Choice, Radios } from './field.js';
import { filePicker } from './file-picker.js';
import { Figures } from './figures.js';
import { isTrace } from './incoming.js';
import { Plot } from './plot.js';
import { drawnBy } from './plot-files.js';
import { PlotTable } from './plot-table.js';
import { each, inWords, say, setTold, tell } from './words.js';
import { toast } from './toast.js';
import { inOrder, withFolder } from './traces-files.js';
import { LayoutTable } from './traces-layout.js';
import { filesOf, keepFiles, measureRun, takenFrom, tracesOf } from './traces-run.js';
import { TraceView } from './traces-view.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { TraceFiles } from './evidence-types.js' */
/** @import { Estimator, View } from './types.js' */
/** @import { AllOf } from './words.js' */
/** @import { Job } from './traces-run.js' */

const ESTIMATORS = /** @type {const} */ (['constant_fraction', 'fixed_level', 'edge_line', 'cross_correlation', 'shift_and_scale']);
/** @typedef {AllOf<Estimator, typeof ESTIMATORS>} AllEstimators */
/** Files whose layout is tried, until one can be read. */
const TRIED = 5;
/** Reasons that are listed, at most. */
const LISTED = 50;

export class TracesSection {
  /** @param {Book} book @param {EvidenceWorkers} evidence */
  constructor(book, evidence) {
    this.book = book;
    this.evidence = evidence;
    this.desk = book.desk;
    /** Files given, in pairs, not yet measured. @type {Job[]} */
    this.given = [];
    /** Stops what goes on. @type {AbortController | undefined} */
    this.work = undefined;
    /** The row whose traces are open. @type {number | undefined} */
    this.row = undefined;
    /** What is drawn: row, files and wishes. @type {string | undefined} */
    this.opened = undefined;
    this.inSight = false;
    const button = (/** @type {string} */ id, /** @type {string} */ text, /** @type {() => void} */ work, kind = '') => (
      el('button', { type: 'button', id, class: kind, click: work }, text));

    this.status = el('p', { class: 'plot-words', role: 'status', id: 'trace-status' });
    this.refused = el('ul', { class: 'problems', id: 'trace-refused', role: 'list', 'aria-label': say('traces-refused-title') });
    this.layout = new LayoutTable(book, evidence);
    this.measure = button('trace-measure', say('traces-measure-all'), () => void this.start(false), 'main');
    this.forget = button('trace-forget', say('traces-forget'), () => this.forgetGiven());
    this.offer = el('p', { class: 'actions', hidden: true }, this.measure, this.forget);
    this.bar = el('progress', { id: 'trace-progress', max: '1', value: '0', 'aria-label': say('traces-progress') });
    this.count = el('span', { id: 'trace-count' });
    this.running = el('p', { class: 'running actions', hidden: true },
      button('trace-stop', say('stop'), () => this.work?.abort()), this.bar, this.count);

    this.level = benchField(book, 'trace_level', { term: 'time-walk' });
    this.fraction = benchField(book, 'trace_fraction', { term: 'constant-fraction' });
    this.estimator = new Radios({
      name: 'estimator',
      legend: say('traces-estimator'),
      options: each(ESTIMATORS, (key) => say(`traces-estimators-${key}`)),
    },
      (/** @type {Estimator} */ estimator) => book.edit({ set_estimator: estimator }));
    this.again = button('trace-again', say('traces-again'), () => void this.start(true));
    this.choice = new Choice({ id: 'trace-choice', label: say('traces-choose'), options: {} }, (row) => this.open(Number(row)));
    this.view = new TraceView(book, evidence);
    this.off = button('trace-off', say('traces-take-off'), () => this.takeOff(), 'quiet');
    this.walk = new Figures(el('dl', { class: 'figures', id: 'walk-figures' }));
    const canvas = el('canvas', { id: 'walk-plot', role: 'img', 'aria-label': say('traces-walk'), 'aria-describedby': 'walk-summary' });
    this.walkPlot = new Plot(canvas, (on, paper, pixels) => book.desk.draw_walk(on, paper, pixels, tell));
    drawnBy('walk', () => book.desk.walk_svg(tell));
    this.walkSummary = el('p', { class: 'plot-words', id: 'walk-summary' });
    this.walkTable = new PlotTable(canvas, () => book.desk.walk_table());
    this.walkBox = el('div', { hidden: true }, el('figure', {}, el('figcaption', {}, say('traces-walk')), canvas, this.walkSummary,
      this.walkTable.root), this.walk.root);

    const written = (/** @type {Node[]} */ ...parts) => (
      el('fieldset', { class: 'bare', role: 'none', 'data-written': true }, ...parts));
    this.settings = written(this.estimator.root, el('div', { class: 'fields' }, this.level.root, this.fraction.root),
      el('p', { class: 'actions' }, this.again, el('span', { class: 'hint' }, say('traces-again-hint'))));
    this.rows = el('div', { hidden: true }, this.settings, el('div', { class: 'trace-chooser' }, this.choice.root),
      this.view.root, written(el('p', { class: 'actions' }, this.off)), this.walkBox);
    byId('traces').append(el('h3', {}, say('traces-title')), el('p', { class: 'hint' }, say('traces-hint')),
      written(el('p', { class: 'actions' }, this.chooser('trace-files', say('traces-add'), false),
        this.chooser('trace-folder', say('traces-add-folder'), true)), this.layout.root, this.offer),
      this.running, this.status, this.refused, this.rows);
    this.watch();
  }

  /** @param {string} id @param {string} label @param {boolean} folder */
  chooser(id, label, folder) {
    return filePicker(label, { id, webkitdirectory: folder }, (files) => void this.take(files.map((file) => withFolder(file))));
  }

  watch() {
    new IntersectionObserver((entries) => {
      this.inSight = entries.some(({ isIntersecting }) => isIntersecting);
      if (this.inSight) this.book.redraw();
    }, { rootMargin: '200px' }).observe(byId('traces'));
  }

  /** Goes to the traces of a row. @param {number} row */
  goTo(row) {
    this.open(row);
    reveal(this.choice.box);
    this.choice.box.scrollIntoView({ block: 'center' });
    this.choice.box.focus({ preventScroll: true });
  }

  /**
   * Takes files in: which belong together, where they stood, and how they read.
   * @param {File[]} chosen
   */
  async take(chosen) {
    if (chosen.length === 0 || this.book.readOnly) return;
    reveal(byId('traces'));
    byId('traces').scrollIntoView({ block: 'nearest' });
    if (this.work) {
      toast(say('traces-busy', { n: chosen.length }));
      return;
    }
    this.work = new AbortController();
    const other = chosen.filter((file) => !isTrace(file)).map(({ name }) => say('traces-other', { name }));
    this.refuse(other);
    setText(this.status, say('traces-looking'));
    try {
      const files = inOrder(chosen.filter((file) => isTrace(file)));
      const names = files.map(({ name }) => name);
      const [pairs, told] = await Promise.all([this.evidence.pair(names), this.evidence.railReadings(names, this.book.current())]);
      const job = (/** @type {number} */ a, /** @type {number | null} */ b) => {
        const [first, second] = [files[a], b === null ? undefined : files[b]];
        if (!first) return [];
        /** @type {TraceFiles} */
        const both = second ? [{ file: first }, { file: second }] : [{ file: first }];
        const named = told[a];
        return [named ? { files: both, named } : { files: both }];
      };
      this.given = pairs.flatMap(({ a, b }) => job(a, b));
      setText(this.status, files.length > 0 ? say('traces-given', { files: files.length, pairs: this.given.length }) : '');
      await this.lookAtFirst(files);
    } catch (error) {
      this.given = [];
      this.layout.forget();
      setText(this.status, '');
      this.refuse([...other, messageOf(error)]);
    }
    this.work = undefined;
    this.showWork();
  }

  /** @param {File[]} files */
  async lookAtFirst(files) {
    const look = (/** @type {File} */ file) => {
      const pair = this.given.map((job) => job.files.map((one) => one.file)).find((pairs) => pairs.includes(file));
      return this.layout.look(file, pair ?? [file]);
    };
    for (const file of files.slice(0, TRIED)) if (await look(file)) return;
    const [first] = files;
    if (first) await look(first);
  }

  forgetGiven() {
    this.given = [];
    this.layout.forget();
    this.refuse([]);
    setText(this.status, '');
    this.showWork();
  }

  showWork() {
    const busy = this.work !== undefined;
    setHidden(this.offer, busy || this.given.length === 0);
    this.again.disabled = busy;
  }

  /** @param {string[]} reasons */
  refuse(reasons) {
    const more = reasons.length - LISTED;
    const shown = more > 0 ? [...reasons.slice(0, LISTED), say('traces-more', { n: more })] : reasons;
    this.refused.replaceChildren(...shown.map((reason) => el('li', {}, reason)));
  }

  /**
   * Measures what was given and, so that all rows share one level, the rows that have traces already.
   * @param {boolean} only the rows alone
   */
  async start(only) {
    const { book } = this;
    const { desk, view } = book;
    if (this.work || book.readOnly) return;
    if (view.bench.trace_level.problem || view.bench.trace_fraction.problem) {
      setText(this.status, say('traces-bad-wish'));
      return;
    }
    const work = new AbortController();
    this.work = work;
    this.showWork();
    this.tellProgress(0, 1, false);
    setHidden(this.running, false);
    byId('trace-stop').focus();
    // What was corrected just before may still be on its way.
    await this.layout.reading;
    const layout = this.layout.wanted();
    /** @type {Job[]} */
    const fresh = only ? [] : this.given.map((job) => ({ ...job, files: /** @type {TraceFiles} */ (
      job.files.map(({ file }) => ({ file, layout }))) }));
    try {
      const { jobs, needed } = await this.knownJobs();
      const outcome = await measureRun(this.evidence, [...jobs, ...fresh], view,
        (done, all, again) => this.tellProgress(done, all, again), work.signal);
      if (book.desk !== desk) throw { kind: 'edit', message: say('files-other-notebook') };
      const taken = takenFrom(book, outcome.found);
      if (taken.length > 0) book.takeEvidence(taken);
      const lost = await keepFiles(outcome);
      this.refuse([...outcome.refused, ...needed, ...lost]);
      const n = outcome.found.length;
      const told = outcome.stopped ? say('traces-stopped', { n }) : taken.length === 0 && n > 0 ? say('traces-unchanged') : say('traces-measured', { n });
      setText(this.status, inWords(taken.length > 0 ? [told, say('traces-undo')] : told));
      // Files that are all refused stay given, so that what they lack, such as the interval, can be stated.
      if (!outcome.stopped && outcome.found.some(({ job }) => fresh.includes(job))) {
        this.given = [];
        this.layout.forget();
      }
      this.opened = undefined;
    } catch (error) {
      setText(this.status, '');
      this.refuse([messageOf(error)]);
    }
    this.work = undefined;
    setHidden(this.running, true);
    this.showWork();
    book.redraw();
  }

  /**
   * The rows that have traces, as far as their files are kept here; which file is needed where they are not.
   */
  async knownJobs() {
    const { book } = this;
    /** @type {Job[]} */
    const jobs = [];
    /** @type {string[]} */
    const needed = [];
    for (const { id, number, evidence, struck } of book.view.rows) {
      if (evidence !== 'traces' || struck !== '') continue;
      const { files, missing } = await filesOf(book, id);
      if (files) jobs.push({ files, row: id });
      else needed.push(say('traces-needed', { row: number, name: missing }));
    }
    return { jobs, needed };
  }

  /** @param {number} done @param {number} all @param {boolean} again */
  tellProgress(done, all, again) {
    this.bar.max = all;
    this.bar.value = done;
    setText(this.count, say(again ? 'traces-done-again' : 'traces-done', { done, all }));
  }

  /** @param {number} row */
  open(row) {
    this.row = row;
    this.opened = undefined;
    this.inSight = true;
    this.book.redraw();
  }

  takeOff() {
    const { row, book } = this;
    const number = book.view.rows.find(({ id }) => id === row)?.number;
    if (row === undefined || number === undefined || !book.edit({ set_evidence: { row } })) return;
    this.book.onUndoable(say('traces-taken-off', { n: number }));
  }

  /** @param {View} view */
  show(view) {
    const { book } = this;
    if (this.desk !== book.desk) {
      this.desk = book.desk;
      this.row = undefined;
      this.opened = undefined;
      this.view.close();
      this.work?.abort();
      this.forgetGiven();
    }
    const rows = view.rows.filter(({ evidence }) => evidence === 'traces');
    setHidden(this.rows, rows.length === 0);
    this.level.show(view.bench.trace_level);
    this.fraction.show(view.bench.trace_fraction);
    this.estimator.show(view.delays.estimator);
    if (!rows.some(({ id }) => id === this.row)) this.row = rows[0]?.id;
    if (rows.length === 0) {
      this.opened = undefined;
      this.view.close();
    } else if (this.inSight) {
      this.showRow(rows);
    }
    setHidden(this.walkBox, view.delays.walk.length === 0);
    this.walk.show(view.delays.walk);
    setTold(this.walkSummary, view.delays.walk_summary);
    this.walkPlot.show();
    this.walkTable.show();
  }

  /** @param {View['rows']} rows those that have traces */
  showRow(rows) {
    const name = (/** @type {View['rows'][number]} */ { cells }) => (
      [cells.rail.text, cells.reading.text].filter((text) => text !== '').join(' ') || cells.remark.text);
    this.choice.offer(Object.fromEntries(rows.map((row) => [row.id, say('traces-option', { n: row.number, name: name(row) })])));
    const { row } = this;
    if (row === undefined) return;
    this.choice.show(String(row));
    this.view.show(row);
    // Read anew where the row shown is another one, or its files are.
    const files = (tracesOf(this.book, row)?.files ?? []).map(({ sha256 }) => sha256).join();
    const { level, fraction } = this.book.view.delays;
    const wanted = `${row} ${files} ${level} ${fraction}`;
    if (wanted === this.opened || this.work) return;
    this.opened = wanted;
    void this.view.open(row);
  }
}
