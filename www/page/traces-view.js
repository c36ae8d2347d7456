/**
 * The traces of one row, drawn with what was found on them; a closer look by buttons, wheel, fingers, dragging and keys.
 */
import { messageOf } from './core.js';
import { el, setHidden, setOptional, setText } from './dom.js';
import { Figures } from './figures.js';
import { Hands } from './hands.js';
import { Plot } from './plot.js';
import { drawnBy } from './plot-files.js';
import { PlotTable } from './plot-table.js';
import { say, setTold, tell } from './words.js';
import { filesOf } from './traces-run.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { TraceMarks } from './slope_of_light.js' */
/** @import { Envelope, Estimator, Measured } from './worker-types.js' */

/** Stretches of a drawn trace, at most. */
const POINTS = 900;
/** By what one step of zoom narrows what is shown, and what share of it one step to the side goes. */
const [NARROWER, ASIDE] = [0.6, 0.25];

export class TraceView {
  /** @param {Book} book @param {EvidenceWorkers} evidence */
  constructor(book, evidence) {
    this.book = book;
    this.evidence = evidence;
    /** @type {Measured | undefined} */
    this.measured = undefined;
    /** From and to of what is shown, ns. @type {[number, number]} */
    this.span = [0, 1];
    /** @type {[Float64Array, Float64Array]} */
    this.traces = [new Float64Array(), new Float64Array()];
    /** @type {[TraceMarks, TraceMarks]} */
    this.marks = [[], []];
    this.turn = 0;
    this.isAsking = false;
    const button = (/** @type {string} */ id, /** @type {string} */ text, /** @type {() => void} */ work) => (
      el('button', { type: 'button', id, click: work }, text));
    this.state = el('p', { class: 'plot-words', role: 'status' });
    this.canvas = el('canvas', { id: 'traces-plot', role: 'img', 'aria-label': say('traces-view'), 'aria-describedby': 'traces-summary' });
    this.summary = el('p', { class: 'plot-words', id: 'traces-summary' });
    this.table = new PlotTable(this.canvas, () => book.desk.traces_table(...this.marks));
    this.tools = el('div', { class: 'actions' },
      button('traces-in', say('traces-zoom-in'), () => this.zoom(NARROWER)), button('traces-out', say('traces-zoom-out'), () => this.zoom(1 / NARROWER)),
      button('traces-earlier', say('traces-earlier'), () => this.aside(-ASIDE)), button('traces-later', say('traces-later'), () => this.aside(ASIDE)),
      button('traces-reset', say('traces-reset'), () => this.reset()));
    this.stage = el('div', { class: 'plot', role: 'group', tabindex: '0', 'aria-label': say('traces-view-keys'),
      keydown: (/** @type {KeyboardEvent} */ event) => this.key(event) }, this.canvas);
    this.figure = el('figure', { id: 'traces-figure', hidden: true }, el('figcaption', {}, say('traces-view')), this.stage, this.tools,
      this.summary, this.table.root);
    this.figures = new Figures(el('dl', { class: 'figures', id: 'traces-figures' }));
    this.problem = el('p', { class: 'problem', hidden: true });
    this.root = el('div', {}, this.state, this.figure, this.problem, this.figures.root);
    new Hands(this.stage, {
      within: ({ clientX }) => {
        const { left, width } = this.canvas.getBoundingClientRect();
        return { x: (clientX - left) / width, y: 0 };
      },
      zoom: (factor, { x }) => this.zoom(factor, x),
      aside: (x) => this.aside(x),
      // Where a record ends, the drawing says.
      isPart: () => true,
    });
    this.plot = new Plot(this.canvas, (canvas, paper, pixels) => {
      book.desk.draw_traces(canvas, paper, pixels, ...this.span, ...this.traces, ...this.marks, tell);
    });
    drawnBy('traces', () => this.svg());
  }

  /** Shows nothing. */
  close() {
    this.turn += 1;
    this.measured = undefined;
    setHidden(this.figure, true);
    setText(this.state, '');
    this.figures.show([]);
    setOptional(this.problem, '');
  }

  /**
   * Reads the traces of a row and shows them.
   * @param {number} row
   */
  async open(row) {
    this.turn += 1;
    const { turn, book } = this;
    this.measured = undefined;
    setText(this.state, say('traces-loading'));
    try {
      const { files, missing, level } = await filesOf(book, row);
      if (turn !== this.turn) return;
      if (!files) {
        setHidden(this.figure, true);
        setText(this.state, say('traces-missing', { name: missing }));
        return;
      }
      const { fraction, level: stated } = book.view.delays;
      const { measured } = await this.evidence.measure(files, {
        level: stated ?? level, fraction, points: POINTS, decimal: book.view.decimal_mark,
      });
      if (turn !== this.turn) return;
      this.measured = measured;
      setText(this.state, '');
      setHidden(this.figure, false);
      this.reset();
    } catch (error) {
      if (turn !== this.turn) return;
      setHidden(this.figure, true);
      setText(this.state, messageOf(error));
    }
  }

  /**
   * The figures of a row, and the marks of the estimator chosen.
   * @param {number} row
   */
  show(row) {
    const evidence = this.book.desk.evidence(row);
    if (evidence?.kind !== 'traces') return;
    setOptional(this.problem, tell(evidence.problem));
    this.figures.show(evidence.figures);
    if (this.measured) this.draw();
  }

  reset() {
    const { measured } = this;
    if (!measured) return;
    const [a, b] = measured.sides;
    const region = a.drawn?.region ?? b.drawn?.region ?? extent(a.envelope);
    void this.look(region);
  }

  /** @param {number} factor @param {number} [at] the share of the width that stays where it is */
  zoom(factor, at = 0.5) {
    const [from, to] = this.span;
    const still = from + at * (to - from);
    void this.look([still - factor * (still - from), still + factor * (to - still)]);
  }

  /** @param {number} share */
  aside(share) {
    const [from, to] = this.span;
    const way = share * (to - from);
    void this.look([from + way, to + way]);
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    /** @type {Record<string, () => void>} */
    const keys = {
      '+': () => this.zoom(NARROWER), '=': () => this.zoom(NARROWER), '-': () => this.zoom(1 / NARROWER),
      ArrowUp: () => this.zoom(NARROWER), ArrowDown: () => this.zoom(1 / NARROWER),
      ArrowLeft: () => this.aside(-ASIDE), ArrowRight: () => this.aside(ASIDE), 0: () => this.reset(), Home: () => this.reset(),
    };
    const work = keys[event.key];
    if (!work) return;
    event.preventDefault();
    work();
  }

  /** @param {[number, number]} span */
  async look(span) {
    const [from, to] = span;
    if (!(to > from)) return;
    this.span = span;
    // A drag asks faster than traces are read: while one answer is waited for, only the last question counts.
    if (this.isAsking) return;
    this.isAsking = true;
    const { turn } = this;
    try {
      const [a, b] = await Promise.all([
        this.evidence.envelope('A', from, to, POINTS), this.evidence.envelope('B', from, to, POINTS)]);
      if (turn === this.turn) {
        this.traces = [flat(a), flat(b)];
        this.draw();
      }
    } catch (error) {
      if (turn === this.turn) setText(this.state, messageOf(error));
    } finally {
      this.isAsking = false;
    }
    if (this.measured && this.span !== span) await this.look(this.span);
  }

  /** What is shown as SVG, at the size of the report's plots; nothing where no traces are. */
  svg() {
    const { measured, book } = this;
    if (!measured) return undefined;
    const marks = marksOf(measured, book.view.delays.estimator);
    return book.desk.traces_svg(...this.span, ...this.traces, ...marks, tell);
  }

  draw() {
    const { measured, book } = this;
    if (!measured) return;
    this.marks = marksOf(measured, book.view.delays.estimator);
    setTold(this.summary, book.desk.traces_words(...this.span, ...this.marks));
    this.table.show();
    this.plot.show();
  }
}

/**
 * What is marked on both traces: of each its levels and, where the estimator finds it, its edge.
 * @param {Measured} measured
 * @param {Estimator} estimator
 * @returns {[TraceMarks, TraceMarks]}
 */
export function marksOf({ outcomes, sides }, estimator) {
  const edges = outcomes.find((outcome) => outcome.estimator === estimator)?.delay?.edges;
  /** @param {0 | 1} place @returns {TraceMarks} */
  const marks = (place) => {
    const { drawn } = sides[place];
    const edge = edges?.[place];
    if (!drawn) return [];
    const { baseline, top_level: top } = drawn;
    return edge ? [baseline, top, edge.level, edge.time, edge.uncertainty] : [baseline, top];
  };
  return [marks(0), marks(1)];
}

/** @param {Envelope | null} envelope as the drawing takes it */
export function flat(envelope) {
  if (!envelope) return new Float64Array();
  const { start, step, least, greatest } = envelope;
  return Float64Array.from([start, step, ...least.flatMap((low, index) => [low, greatest[index] ?? low])]);
}

/** @param {Envelope | null} envelope @returns {[number, number]} */
export function extent(envelope) {
  return envelope ? [envelope.start, envelope.start + envelope.step * envelope.least.length] : [0, 1];
}
