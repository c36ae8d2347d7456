/**
 * What a layout makes of a pair's files: both traces against time in nanoseconds, as they would be measured.
 */
import { messageOf } from './core.js';
import { el, setHidden, setOptional } from './dom.js';
import { fileName } from './files.js';
import { Plot } from './plot.js';
import { saveButtons } from './plot-files.js';
import { PlotTable } from './plot-table.js';
import { extent, flat, marksOf } from './traces-view.js';
import { say, setTold, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { TraceFiles } from './evidence-types.js' */
/** @import { TraceMarks } from './slope_of_light.js' */
/** @import { Measured } from './worker-types.js' */

/** Stretches of a drawn trace, at most. */
const POINTS = 900;

/** From and to in ns, the traces, and what is marked on them. @typedef {[number, number, Float64Array, Float64Array, TraceMarks, TraceMarks]} PreviewDrawing */

export class LayoutPreview {
  /** @param {Book} book @param {EvidenceWorkers} evidence */
  constructor(book, evidence) {
    this.book = book;
    this.evidence = evidence;
    this.turn = 0;
    /** @type {PreviewDrawing | undefined} */
    this.drawing = undefined;
    const canvas = el('canvas', { id: 'layout-plot', role: 'img', 'aria-label': say('traces-layout-view'), 'aria-describedby': 'layout-summary' });
    this.summary = el('p', { class: 'plot-words', id: 'layout-summary', role: 'status' });
    this.table = new PlotTable(canvas, () => this.drawing && book.desk.traces_table(this.drawing[4], this.drawing[5]));
    this.figure = el('figure', { hidden: true }, el('figcaption', {}, say('traces-layout-view')), canvas, this.summary,
      saveButtons(say('traces-layout-view'), () => `${fileName(book)}-traces`, () => this.drawing && book.desk.traces_svg(...this.drawing, tell)), this.table.root);
    this.refusal = el('p', { class: 'hint', id: 'layout-refusal', hidden: true });
    this.root = el('div', {}, this.figure, this.refusal);
    this.plot = new Plot(canvas, (on, paper, pixels) => {
      if (this.drawing) book.desk.draw_traces(on, paper, pixels, ...this.drawing, tell);
    });
  }

  hide() {
    this.turn += 1;
    setHidden(this.figure, true);
    setOptional(this.refusal, '');
  }

  /** @param {TraceFiles} files with the layout to be shown */
  async show(files) {
    this.turn += 1;
    const { turn, book } = this;
    const { level, fraction } = book.view.delays;
    const asked = { level, fraction, points: POINTS, decimal: book.view.decimal_mark };
    try {
      const { measured } = await this.evidence.measure(files, asked, false);
      if (turn === this.turn) this.draw(measured);
    } catch (error) {
      if (turn !== this.turn) return;
      this.hide();
      setOptional(this.refusal, messageOf(error));
    }
  }

  /** @param {Measured} measured */
  draw(measured) {
    const { book } = this;
    const [a, b] = measured.sides;
    const span = a.drawn?.region ?? b.drawn?.region ?? extent(a.envelope);
    const marks = marksOf(measured, book.view.delays.estimator);
    this.drawing = [...span, flat(a.envelope), flat(b.envelope), ...marks];
    setHidden(this.figure, false);
    setTold(this.summary, book.desk.traces_words(...span, ...marks));
    setOptional(this.refusal, tell(measured.refusal));
    this.table.show();
    this.plot.show();
  }
}
