/**
 * What a teacher says of a notebook, kept as the file in which it came, beside the files of notebooks: it is no entry of the
 * log, which stays as it was handed in.
 */
import { keepFile, keptFile } from './file-store.js';

/** Called when something else is said of a notebook, with its identifier. @type {Set<(notebook: string) => void>} */
export const onFeedback = new Set();

/** By what it is kept. `sweep.js` leaves it as long as its notebook is there. @param {string} notebook */
function placeOf(notebook) {
  return `feedback/${notebook}`;
}

/**
 * Keeps it in the place of what was said before, an empty text for nothing; ends when it is safely stored.
 * @param {string} notebook
 * @param {string} text
 * @param {string} name of the file
 */
export async function keepFeedback(notebook, text, name) {
  await keepFile(placeOf(notebook), { blob: new Blob([text], { type: 'application/json' }), name });
  for (const hear of onFeedback) hear(notebook);
}

/** The text that is kept of a notebook, with the name of its file; nothing where there is none. @param {string} notebook */
export async function keptFeedback(notebook) {
  const kept = await keptFile(placeOf(notebook));
  return kept && kept.blob.size > 0 ? { name: kept.name, text: await kept.blob.text() } : undefined;
}
