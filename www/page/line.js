/**
 * The section Line: the two plots, in pictures and in words, the line's figures and the checks beside it.
 */
import { byId, setHidden, setOptional } from './dom.js';
import { Figures } from './figures.js';
import { NoticeList, ofSection } from './notices.js';
import { Plot } from './plot.js';
import { setTold, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Line {
  /** @param {Book} book */
  constructor(book) {
    this.notices = new NoticeList(byId('line-notices'), ofSection('line'));
    this.refusal = byId('line-refusal');
    this.method = byId('line-method');
    this.summary = byId('line-summary');
    this.residualSummary = byId('residual-summary');
    this.box = byId('line-box');
    this.checks = byId('line-checks-box');
    this.lineFigure = byId('line-figure');
    this.residualFigure = byId('residual-figure');
    this.figures = new Figures(byId('line-figures'));
    this.checkFigures = new Figures(byId('line-checks'));
    this.plots = [
      new Plot(/** @type {HTMLCanvasElement} */ (byId('line-plot')), (canvas, dark, pixels) => {
        book.desk.draw_line(canvas, dark, pixels, tell);
      }),
      new Plot(/** @type {HTMLCanvasElement} */ (byId('residual-plot')), (canvas, dark, pixels) => {
        book.desk.draw_residuals(canvas, dark, pixels, tell);
      }),
    ];
  }

  /** @param {View} view */
  show(view) {
    const { line } = view;
    // Before the document changes: to set a canvas's font, the browser settles the styles of all that changed.
    for (const plot of this.plots) plot.show();
    this.notices.show(view);
    setOptional(this.refusal, tell(line.refusal));
    setTold(this.method, line.method);
    setTold(this.summary, line.summary);
    setTold(this.residualSummary, line.residual_summary);
    this.figures.show(line.figures);
    this.checkFigures.show(line.checks);
    setHidden(this.box, line.figures.length === 0);
    setHidden(this.checks, line.checks.length === 0);
    setHidden(this.lineFigure, !view.rows.some((row) => row.state === 'used'));
    setHidden(this.residualFigure, line.residual_summary === null);
  }
}
