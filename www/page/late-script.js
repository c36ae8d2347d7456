/**
 * Scripts that come once the page is open, with the words and the look that only such scripts need.
 */
import { loadLateStyle } from './late-style.js';
import { loadLateWords } from './words.js';

/**
 * What brings such a script: once for all who ask, and again where it could not be had.
 * @template T
 * @param {() => Promise<T>} bring
 * @returns {() => Promise<T>}
 */
export function lateScript(bring) {
  let next = bring;
  let failures = 0;
  /** The script, on its way or at hand. @type {Promise<T> | undefined} */
  let coming;
  return async () => {
    coming ??= next().catch((error) => {
      coming = undefined;
      failures += 1;
      // A browser may remember that nothing came from an address, which it tells then: the next try is made at another one.
      const [address] = /https?:[^?]+\.js/.exec(String(error)) ?? [];
      if (address) next = () => import(`${address}?${failures}`);
      throw error;
    });
    const [script] = await Promise.all([coming, loadLateWords(), loadLateStyle()]);
    return script;
  };
}
