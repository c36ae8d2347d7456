/**
 * What teachers say of a notebook, kept as the files in which it came, beside the files of notebooks: it is no entry of the
 * log, which stays as it was handed in.
 */
import { keepFile, keptFile } from './file-store.js';

/** A file with comments. @typedef {{name: string, text: string}} KeptComments */

/** Called when something else is said of a notebook, with its identifier and the files of before. @type {Set<(notebook: string, before: KeptComments[]) => void>} */
export const onFeedback = new Set();

/** By what they are kept. `sweep.js` leaves it as long as its notebook is there. @param {string} notebook */
function placeOf(notebook) {
  return `feedback/${notebook}`;
}

/**
 * Keeps other files than were kept; ends when they are safely stored.
 * @param {string} notebook
 * @param {(kept: KeptComments[]) => KeptComments[] | Promise<KeptComments[]>} change what is to be kept, said last first, of what
 * is kept now, by whichever window
 */
export async function keepFeedback(notebook, change) {
  const before = await keptFeedback(notebook);
  const files = await change(before);
  const text = files.length > 0 ? JSON.stringify(files) : '';
  await keepFile(placeOf(notebook), { blob: new Blob([text], { type: 'application/json' }), name: '' });
  for (const hear of onFeedback) hear(notebook, before);
}

/** The files that are kept of a notebook, what was said last first. @param {string} notebook @returns {Promise<KeptComments[]>} */
export async function keptFeedback(notebook) {
  const kept = await keptFile(placeOf(notebook));
  if (!kept || kept.blob.size === 0) return [];
  const text = await kept.blob.text();
  /** @type {unknown} */
  const files = JSON.parse(text);
  // One file by itself is how it was kept when there could be no second.
  return Array.isArray(files) ? files : [{ name: kept.name, text }];
}
