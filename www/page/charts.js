/**
 * The charts beside the readings and the line: the line and its residuals, in pictures and in words.
 */
import { byId, setHidden } from './dom.js';
import { Plot } from './plot.js';
import { setTold, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Charts {
  /** @param {Book} book */
  constructor(book) {
    this.summary = byId('line-summary');
    this.residualSummary = byId('residual-summary');
    this.nothing = byId('charts-nothing');
    this.lineFigure = byId('line-figure');
    this.residualFigure = byId('residual-figure');
    /** The part of each that is looked at: left, right, bottom and top in shares of the whole. @type {{line?: Float64Array, residuals?: Float64Array}} */
    this.windows = {};
    this.line = new Plot(/** @type {HTMLCanvasElement} */ (byId('line-plot')), (canvas, paper, pixels) => {
      book.desk.draw_line(canvas, paper, pixels, tell, this.windows.line);
    });
    this.residuals = new Plot(/** @type {HTMLCanvasElement} */ (byId('residual-plot')), (canvas, paper, pixels) => {
      book.desk.draw_residuals(canvas, paper, pixels, tell, this.windows.residuals);
    });
  }

  /** @param {View} view */
  show({ line, rows }) {
    // Before the document changes: to set a canvas's font, the browser settles the styles of all that changed.
    this.line.show();
    this.residuals.show();
    setTold(this.summary, line.summary);
    setTold(this.residualSummary, line.residual_summary);
    const isDrawn = rows.some((row) => row.state === 'used');
    setHidden(this.nothing, isDrawn);
    setHidden(this.lineFigure, !isDrawn);
    setHidden(this.residualFigure, line.residual_summary === null);
  }
}
