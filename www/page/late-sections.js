/**
 * The sections that are not in sight when a notebook opens, and what else can wait: one script, which comes once it is open.
 */
import { byId } from './dom.js';
import { FeedbackBeside } from './feedback.js';
import { HistorySection } from './history.js';
import { KeptFocus } from './kept-focus.js';
import { Keys } from './keys.js';
import { Leave } from './leave.js';
import { isUp } from './leaves.js';
import { NextStep } from './next-step.js';
import { PlotLook } from './plot-look.js';
import { Points } from './points.js';
import { Print } from './print.js';
import { Replay } from './replay.js';
import { RowNotes } from './row-notes.js';
import { RowPad } from './row-pad.js';
import { RowWork } from './row-work.js';
import { SaidResult } from './said-result.js';
import { Wall } from './wall.js';

/** @import { Book } from './book.js' */
/** @import { Charts } from './charts.js' */
/** @import { Keeper } from './keeper.js' */

export { Apparatus } from './apparatus.js';
export { Cautions } from './cautions.js';
export { Delays } from './delays.js';
export { Line } from './line.js';
export { Plan } from './plan.js';
export { Report } from './report.js';
export { Result } from './result.js';
export { Tour } from './tour.js';
export { Uncertainty } from './uncertainty.js';

/** What shows nothing until it is asked, or where there is something to show. @param {Book} book @param {Keeper} keeper @param {Charts} charts */
export function onCall(book, keeper, charts) {
  const wall = new Wall(book);
  const replay = new Replay(book);
  book.add(new PlotLook(book, charts), () => isUp(byId('line-figure')));
  for (const part of [wall, new NextStep(book), new Points(book), new FeedbackBeside(book, keeper), new RowNotes(book), new SaidResult(book)]) book.add(part);
  const history = new HistorySection(book, (entry) => replay.open(entry));
  return [history, new KeptFocus(), new Keys(), new Leave(keeper), new Print(book), new RowPad(), new RowWork(book), replay, wall];
}
