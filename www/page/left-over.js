/**
 * What a window had not stored when it was closed. A page that is being closed hears of nothing any more: whether its
 * turn still holds, or whether the journal took something, and the browser breaks off what is under way there. So it
 * lies in local storage, which takes it at once, until a window opens the notebook.
 */
const PLACE = 'slope-of-light/left/';

/**
 * @typedef {object} LeftOver
 * @property {string} key where it lies
 * @property {string} apart the identifier of the notebook that it becomes where it has to be kept apart: one, however
 *   many windows find it
 * @property {number} from number of the first entry
 * @property {string[]} entries
 */

/**
 * Leaves entries of a notebook for the window that opens it next.
 * @param {string} notebook
 * @param {string} apart the identifier of the notebook that they become where they have to be kept apart
 * @param {number} from number of the first
 * @param {string[]} entries
 */
export function leave(notebook, apart, from, entries) {
  try {
    localStorage.setItem(`${PLACE}${notebook}/${apart}`, JSON.stringify({ from, entries }));
  } catch {
    // Storage is full or forbidden, which the banner says, and nobody can be told any more.
  }
}

/**
 * What closed windows left of a notebook.
 * @param {string} notebook
 * @returns {LeftOver[]}
 */
export function leftOversOf(notebook) {
  return keysOf(notebook).flatMap((key) => {
    try {
      const { from, entries } = JSON.parse(localStorage.getItem(key) ?? '');
      const apart = key.slice(key.lastIndexOf('/') + 1);
      return Array.isArray(entries) ? [{ key, apart, from, entries: entries.map(String) }] : [];
    } catch {
      return [];
    }
  });
}

/** @param {LeftOver} leftOver */
export function removeLeftOver({ key }) {
  localStorage.removeItem(key);
}

/** Drops all that was left of a notebook. @param {string} notebook */
export function dropLeftOversOf(notebook) {
  for (const key of keysOf(notebook)) localStorage.removeItem(key);
}

/** @param {string} notebook @returns {string[]} */
function keysOf(notebook) {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(`${PLACE}${notebook}/`));
  } catch {
    return [];
  }
}
