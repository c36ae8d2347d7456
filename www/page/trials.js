/**
 * Trials, the check of the budget by drawing every input from its distribution (Monte Carlo): how many, the seed,
 * the run with its progress, and what came of it. A run belongs to the notebook as it was when it began.
 */
import { messageOf } from './core.js';
import { TrialPool } from './trial-pool.js';
import { alike, byId, setAttribute, setHidden, setOptional, setText } from './dom.js';
import { TextField } from './field.js';
import { Figures } from './figures.js';
import { Plot } from './plot.js';
import { PlotTable } from './plot-table.js';
import { say, setTold, tell } from './words.js';
import { flushAll } from './typing.js';

/** @import { Book } from './book.js' */
/** @import { Desk, Tally } from './slope_of_light.js' */
/** @import { TrialsView, View } from './types.js' */

/** What a run gives that was not made. @type {TrialsView} */
const NOTHING = { refusal: null, figures: [], verdict: null, summary: null };

export class TrialsPart {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    this.refused = false;
    this.refusal = byId('trials-refusal');
    this.wanted = new TextField({ id: 'trials-number', label: say('trials-wanted') }, (wanted) => {
      book.edit({ set_trials: { seed: this.seed, wanted } });
    });
    byId('trials-wanted').replaceWith(this.wanted.root);
    this.seed = '';
    this.seedText = byId('trials-seed');
    byId('trials-new-seed').addEventListener('click', () => {
      flushAll();
      book.edit({ set_trials: { seed: newSeed(), wanted: book.view.trials.wanted.text } });
    });
    this.start = byId('trials-start');
    this.start.addEventListener('click', () => this.begin((pool) => pool.begin()));
    this.stop = byId('trials-stop');
    this.stop.addEventListener('click', () => this.end(say('trials-stopped')));
    this.here = byId('trials-here');
    this.here.addEventListener('click', () => this.begin((pool) => pool.beginHere()));
    this.running = byId('trials-running');
    this.progress = /** @type {HTMLProgressElement} */ (byId('trials-progress'));
    this.progressText = byId('trials-progress-text');
    this.state = byId('trials-state');
    this.result = byId('trials-result');
    this.stale = byId('trials-stale');
    this.resultRefusal = byId('trials-result-refusal');
    this.verdict = byId('trials-verdict');
    this.figures = new Figures(byId('trials-figures'));
    this.figure = byId('trials-figure');
    this.summary = byId('trials-summary');
    const canvas = /** @type {HTMLCanvasElement} */ (byId('trials-plot'));
    this.plot = new Plot(canvas, (canvas, paper, pixels) => {
      this.tally?.draw(canvas, paper, pixels, tell);
    });
    this.table = new PlotTable(canvas, () => this.tally?.table());
    this.figure.append(this.table.root);
    /** @type {TrialPool | undefined} */
    this.pool = undefined;
    /** @type {Tally | undefined} */
    this.tally = undefined;
    /** The notebook that the run belongs to: its desk, how many entries its log had, whether it was sealed.
     * @type {{desk?: Desk, entries: number, sealed: boolean}} */
    this.of = { entries: 0, sealed: false };
    this.frame = 0;
  }

  /** @param {View} view */
  show({ trials, budget, entries, result }) {
    const { desk } = this.book;
    this.seed = trials.seed;
    this.refused = trials.refusal !== null;
    const told = [trials.wanted.problem, budget.refusal].some((other) => other && alike(other, trials.refusal));
    setOptional(this.refusal, told ? '' : tell(trials.refusal));
    this.wanted.show(trials.wanted);
    setText(this.seedText, trials.seed);
    // What came of a run before the seal would tell what the seal hides.
    if (this.of.desk && (desk !== this.of.desk || (result.sealed && !this.of.sealed))) this.clear();
    const changed = entries !== this.of.entries;
    if (this.pool && changed) this.end(say('trials-changed'));
    setHidden(this.stale, !changed);
    this.showButtons();
  }

  showButtons() {
    const runs = this.pool !== undefined;
    setAttribute(this.start, 'aria-disabled', runs || this.refused ? 'true' : undefined);
    if (runs === this.running.hidden) {
      const hadFocus = document.activeElement === this.stop;
      setHidden(this.running, !runs);
      if (hadFocus) this.start.focus();
    }
  }

  /** @param {(pool: TrialPool) => void} setGoing */
  begin(setGoing) {
    flushAll();
    const { entries, trials, result: { sealed } } = this.book.current();
    if (this.pool || trials.refusal) return;
    this.clear();
    const { desk } = this.book;
    try {
      this.tally = desk.tally();
      this.pool = new TrialPool(desk.text(), this.tally, {
        taken: () => this.note(),
        done: () => this.end(say('trials-done')),
        failed: (why) => this.failed(why),
      });
    } catch (error) {
      setText(this.state, say('trials-failed', { why: messageOf(error) }));
      return;
    }
    this.of = { desk, entries, sealed };
    this.showProgress();
    this.showButtons();
    setText(this.state, say('trials-running'));
    setGoing(this.pool);
  }

  /** Shows the progress, at most once a frame. */
  note() {
    this.frame ||= requestAnimationFrame(() => this.showProgress());
  }

  showProgress() {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    if (!this.tally || !this.pool) return;
    const { done, most, text } = this.tally.progress();
    this.progress.max = most;
    this.progress.value = done;
    setTold(this.progressText, text);
  }

  /**
   * Ends the run, if it still goes on, and shows what came of it.
   * @param {string} how
   */
  end(how) {
    const { tally } = this;
    if (!this.pool || !tally) return;
    this.pool.stop();
    this.pool = undefined;
    setText(this.state, how);
    this.showButtons();
    this.showResult(tally.finish());
    const { desk } = this.book;
    if (desk !== this.of.desk || desk.length() !== this.of.entries) return;
    desk.keep_trials(tally);
    this.book.redraw();
  }

  /** @param {TrialsView} result */
  showResult(result) {
    this.write(result);
    setHidden(this.result, false);
    this.plot.show();
  }

  /** @param {TrialsView} result */
  write({ refusal, figures, verdict, summary }) {
    setOptional(this.resultRefusal, tell(refusal));
    setTold(this.verdict, verdict);
    this.figures.show(figures);
    setTold(this.summary, summary);
    setHidden(this.figure, summary === null);
    this.table.show();
  }

  /** The workers failed; what they did is dropped, and the page offers to do it all. @param {string} why */
  failed(why) {
    this.clear();
    setText(this.state, say('trials-failed', { why }));
    setHidden(this.here, false);
  }

  /** Forgets the run and what came of it, out of sight too: a seal may hide it. */
  clear() {
    this.pool?.stop();
    this.pool = undefined;
    this.tally?.free();
    this.tally = undefined;
    this.of = { entries: 0, sealed: false };
    setText(this.state, '');
    setHidden(this.here, true);
    setHidden(this.result, true);
    this.write(NOTHING);
    this.plot.clear();
    this.showButtons();
  }
}

/** A seed that nobody chose. */
function newSeed() {
  return String(crypto.getRandomValues(new Uint32Array(1))[0]);
}
