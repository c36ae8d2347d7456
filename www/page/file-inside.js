/**
 * The program as one file with a notebook inside: what is posted to those who have no network. The notebook stands in it
 * as a data block, which no browser runs (HTML Standard, 4.12.1).
 */
import { say } from './words.js';

/** The element that holds the notebook. */
const INSIDE = 'posted';
/** The packed program beside the page. */
const PROGRAM = 'slope-of-light.html';

/** The notebook that this file holds. @returns {File | undefined} */
export function fileInside() {
  const block = document.getElementById(INSIDE);
  if (!(block instanceof HTMLScriptElement)) return undefined;
  try {
    const letters = atob(block.text);
    const bytes = new Uint8Array(letters.length);
    for (let place = 0; place < letters.length; place += 1) bytes[place] = letters.charCodeAt(place);
    return new File([bytes], block.dataset.name ?? '');
  } catch {
    throw new Error(say('posted-cut'));
  }
}

/**
 * The program with a notebook inside.
 * @param {string} name of the notebook's file: letters, digits, hyphens and dots
 * @param {Uint8Array<ArrayBuffer>} bytes
 */
export async function oneFileWith(name, bytes) {
  const page = await program();
  const end = page.lastIndexOf('</body>');
  const block = `<script type="text/plain" id="${INSIDE}" data-name="${name}">${await base64(bytes)}</script>`;
  return new Blob([page.slice(0, end), block, page.slice(end)], { type: 'text/html;charset=utf-8' });
}

/** The HTML of the program: in the one file its own, as it was before its script ran. @returns {Promise<string>} */
async function program() {
  if (globalThis.SLOPE_SOURCE) {
    const page = /** @type {HTMLElement} */ (globalThis.SLOPE_SOURCE.cloneNode(true));
    page.querySelector(`#${INSIDE}`)?.remove();
    return `<!doctype html>\n${page.outerHTML}`;
  }
  const answer = await fetch(new URL(PROGRAM, document.baseURI)).catch(() => undefined);
  const page = answer?.ok ? await answer.text() : '';
  // A host may send something else in place of what it has not.
  if (!page.includes('globalThis.SLOPE_CORE=')) throw new Error(say('handout-no-program', { name: PROGRAM }));
  return page;
}

/** @param {Uint8Array<ArrayBuffer>} bytes @returns {Promise<string>} */
function base64(bytes) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).split(',')[1] ?? '');
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(new Blob([bytes]));
  });
}
