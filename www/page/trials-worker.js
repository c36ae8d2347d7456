/**
 * What a worker of the trials does: it starts the core that it is handed, opens the notebook, and runs the blocks
 * that it is asked for. Packed, it is a classic script.
 */
import { initSync, Trials } from './slope_of_light.js';

/** @import { Answer, Task } from './trial-pool.js' */

/** @type {{onmessage: unknown, postMessage(answer: Answer, options?: {transfer: Transferable[]}): void}} */
const here = globalThis;

/** @type {Trials} */
let trials;

here.onmessage = (/** @type {MessageEvent<Task>} */ { data }) => {
  try {
    if ('core' in data) {
      initSync({ module: data.core });
      trials = Trials.of(data.text);
    } else {
      const values = trials.run(data.block);
      here.postMessage({ block: data.block, values }, { transfer: [values.buffer] });
    }
  } catch (error) {
    here.postMessage({ why: error && typeof error === 'object' && 'message' in error ? error.message : '' });
  }
};
