/**
 * The run played back: line, residuals and c as they were after each step of the log. Nothing is changed by it.
 */
import { Book } from './book.js';
import { byId, el, setHidden, setText } from './dom.js';
import { fileName } from './files.js';
import { Plot } from './plot.js';
import { inBundle, saveButtons } from './plot-files.js';
import { flushAll } from './typing.js';
import { changed, placeName } from './undone.js';
import { dated, say, tell } from './words.js';

/** @import { LogStep, RowView, View } from './types.js' */

/** How long a step stands while the run plays, ms. */
const PACE = 900;

export class Replay {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** The notebook as it was. */
    this.run = new Book();
    /** @type {LogStep[]} */
    this.steps = [];
    this.timer = 0;

    this.told = el('p', { class: 'lead' });
    this.result = el('output');
    this.sealed = el('span', { class: 'sealed-mark' }, say('seal-mark'));
    this.line = el('canvas', { role: 'img', 'aria-label': say('line-plot') });
    this.residuals = el('canvas', { role: 'img', 'aria-label': say('line-residuals') });
    this.plots = [
      new Plot(this.line, (canvas, paper, pixels) => this.run.desk.draw_line(canvas, paper, pixels, tell)),
      new Plot(this.residuals, (canvas, paper, pixels) => this.run.desk.draw_residuals(canvas, paper, pixels, tell)),
    ];
    this.slider = el('input', {
      type: 'range', min: '0', 'aria-label': say('replay-step-name'), input: () => {
        this.pause();
        this.go(Number(this.slider.value));
      },
    });
    this.player = el('button', { type: 'button', class: 'main', click: () => (this.timer ? this.pause() : this.play()) }, say('replay-play'));
    const step = (/** @type {number} */ by) => () => {
      this.pause();
      this.go(this.step() + by);
    };
    this.dialog = el('dialog', { class: 'replay', 'aria-labelledby': 'replay-title', close: () => this.leave() },
      el('h2', { id: 'replay-title' }, say('replay')), el('p', { class: 'hint' }, say('replay-hint')), this.told,
      el('p', { class: 'replay-c' }, el('i', {}, 'c'), ' = ', this.result, ' ', this.sealed), this.line, this.residuals, this.slider,
      el('p', { class: 'actions' }, this.player,
        el('button', { type: 'button', click: step(-1) }, say('replay-back')),
        el('button', { type: 'button', click: step(1) }, say('replay-on')),
        el('button', { type: 'button', class: 'quiet', click: () => this.dialog.close() }, say('close'))),
      el('details', {}, el('summary', {}, say('report-take-plot')), ...this.saving('line', say('line-plot')), ...this.saving('residuals', say('line-residuals'))));
    document.body.append(this.dialog);
    byId('open-replay').addEventListener('click', () => this.open());
  }

  /** What saves a plot of the step that is shown. @param {'line' | 'residuals'} plot @param {string} name */
  saving(plot, name) {
    return [name, saveButtons(name, () => `${fileName(this.book)}-${plot}-${this.step() + 1}`, () => inBundle(this.run, plot))];
  }

  /** Opens it at the step of an entry of the log, by its number; else where the first row was entered. @param {number} [entry] */
  open(entry) {
    flushAll();
    this.steps = this.book.desk.steps();
    const first = this.steps.findIndex((step) => (entry === undefined ? step.begins_row : step.end >= entry));
    this.slider.max = String(this.steps.length - 1);
    this.dialog.showModal();
    this.go(Math.max(first, 0));
    this.player.focus();
  }

  /** The step that is shown. */
  step() {
    return Number(this.slider.value);
  }

  /** Shows a step. @param {number} step */
  go(step) {
    const place = Math.min(Math.max(step, 0), this.steps.length - 1);
    const before = this.after(place);
    const after = this.after(place + 1);
    const { result } = after;
    const when = dated(this.steps[place]?.at ?? '', { dateStyle: 'medium', timeStyle: 'short' });
    const told = [say('replay-step', { n: place + 1, all: this.steps.length }), when, what(before, after)].filter((text) => text).join(' · ');
    setText(this.told, told);
    setText(this.result, result.short || say('strip-no-c'));
    setHidden(this.sealed, !result.sealed);
    this.slider.value = String(place);
    this.slider.setAttribute('aria-valuetext', told);
    for (const plot of this.plots) plot.show();
  }

  /** The notebook after so many steps. @param {number} count @returns {View} */
  after(count) {
    const { run } = this;
    const old = run.desk;
    run.put(this.book.desk.after_steps(count));
    old.free();
    return run.current();
  }

  /** Keeps nothing of what was shown: a seal may be closed next. */
  leave() {
    this.pause();
    this.after(0);
    setText(this.result, '');
    for (const plot of this.plots) plot.clear();
  }

  play() {
    if (this.step() >= this.steps.length - 1) this.go(0);
    setText(this.player, say('replay-pause'));
    this.timer = window.setInterval(() => {
      this.go(this.step() + 1);
      if (this.step() >= this.steps.length - 1) this.pause();
    }, PACE);
  }

  pause() {
    clearInterval(this.timer);
    this.timer = 0;
    setText(this.player, say('replay-play'));
  }
}

/** What a step changed, in words. @param {View} before @param {View} after */
function what(before, after) {
  const place = changed(before, after);
  const row = after.rows.find(({ id }) => place === `row-${id}` || place?.startsWith(`cell-${id}-`));
  if (row) return say('replay-row', { n: row.number, texts: texts(row) });
  const there = place ? document.getElementById(place) : null;
  return there ? placeName(there) : say('replay-else');
}

/** The cells of a row, as typed. @param {RowView} row */
function texts(row) {
  return Object.values(row.cells).map(({ text }) => text).filter((text) => text).join(' · ');
}
