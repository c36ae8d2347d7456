/**
 * What a worker with the core does: it starts the core that it is handed, and then either opens a notebook and runs the
 * blocks of trials that it is asked for, or recomputes the notebooks of a class. Packed, it is a classic script.
 */
import { rowOf } from './class-row.js';
import { initSync, Trials } from './slope_of_light.js';

/** @import { TrialAnswer, TrialTask } from './trial-pool.js' */
/** @import { NotebookText, Recompute, Recomputed, RowOutcome } from './class-pool.js' */

/** @type {{onmessage: unknown, postMessage(answer: TrialAnswer | Recomputed, options?: {transfer: Transferable[]}): void}} */
const here = globalThis;

/** @type {Trials} */
let trials;

/** The row of a notebook; a trap is thrown on. @param {NotebookText} text @returns {RowOutcome} */
function outcomeOf({ text, line }) {
  try {
    return { row: rowOf(text), stored: line };
  } catch (error) {
    if (error instanceof Error) throw error;
    return { refused: /** @type {import('./types.js').Thrown} */ (error).message };
  }
}

here.onmessage = (/** @type {MessageEvent<TrialTask | Recompute>} */ { data }) => {
  try {
    if ('texts' in data) {
      here.postMessage({ rows: data.texts.map(outcomeOf) });
    } else if ('core' in data) {
      initSync({ module: data.core });
      if (data.text !== undefined) trials = Trials.of(data.text);
    } else {
      const values = trials.run(data.block);
      here.postMessage({ block: data.block, values }, { transfer: [values.buffer] });
    }
  } catch (error) {
    here.postMessage({ why: error && typeof error === 'object' && 'message' in error ? error.message : '' });
  }
};
