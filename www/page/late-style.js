/**
 * The look of what comes later: a sheet that the page names last, and that comes when it is asked for. The one file holds it
 * packed.
 */
import { unpacked } from './packed.js';

/** Names it: a sheet whose link is disabled is not fetched (HTML Standard, link type “stylesheet”). @type {HTMLLinkElement | null} */
const named = document.querySelector('link[disabled]');

/** The sheet, on its way or at hand. @type {Promise<void> | undefined} */
let style;

/** Has the look at hand that only later scripts need; asked for again where it could not be had. */
export function loadLateStyle() {
  style ??= (globalThis.SLOPE_LATE_STYLE ? held(globalThis.SLOPE_LATE_STYLE) : fetched()).catch((error) => {
    style = undefined;
    throw error;
  });
  return style;
}

/** @param {string} inside */
async function held(inside) {
  const sheet = document.createElement('style');
  sheet.textContent = await unpacked(inside, 'text/css').text();
  document.head.append(sheet);
}

/** @returns {Promise<void>} */
function fetched() {
  return new Promise((resolve, reject) => {
    if (!named) return resolve();
    const link = /** @type {HTMLLinkElement} */ (named.cloneNode());
    link.disabled = false;
    link.addEventListener('load', () => resolve());
    link.addEventListener('error', () => {
      link.remove();
      reject(new Error(link.href));
    });
    named.after(link);
  });
}
