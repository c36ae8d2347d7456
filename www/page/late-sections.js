/**
 * The sections that are not in sight when a notebook opens, and what else can wait: one script, which comes once it is open.
 */
export { Apparatus } from './apparatus.js';
export { Cautions } from './cautions.js';
export { Delays } from './delays.js';
export { History } from './history.js';
export { KeptFocus } from './kept-focus.js';
export { Keys } from './keys.js';
export { Line } from './line.js';
export { NextStep } from './next-step.js';
export { Plan } from './plan.js';
export { Points } from './points.js';
export { Print } from './print.js';
export { Replay } from './replay.js';
export { Report } from './report.js';
export { Result } from './result.js';
export { RowPad } from './row-pad.js';
export { RowWork } from './row-work.js';
export { Tour } from './tour.js';
export { Uncertainty } from './uncertainty.js';
export { Wall } from './wall.js';
