/**
 * The section Line: the line's figures, and the checks of it.
 */
import { byId, setHidden, setOptional } from './dom.js';
import { Figures } from './figures.js';
import { NoticeList, ofSection } from './notices.js';
import { setTold, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Line {
  /** @param {Book} book */
  constructor(book) {
    this.notices = new NoticeList(book, byId('line-notices'), ofSection('line'));
    this.refusal = byId('line-refusal');
    this.method = byId('line-method');
    this.box = byId('line-box');
    this.checks = byId('line-checks-box');
    this.figures = new Figures(byId('line-figures'));
    this.checkFigures = new Figures(byId('line-checks'));
  }

  /** @param {View} view */
  show(view) {
    const { line } = view;
    this.notices.show(view);
    setOptional(this.refusal, tell(line.refusal));
    setTold(this.method, line.method);
    this.figures.show(line.figures);
    this.checkFigures.show(line.checks);
    setHidden(this.box, line.figures.length === 0);
    setHidden(this.checks, line.checks.length === 0);
  }
}
