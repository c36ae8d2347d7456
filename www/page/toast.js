/**
 * Short messages at the foot of the page, with what can be done about them.
 */
import { byId, el } from './dom.js';
import { say } from './words.js';

/** How long a message stays, in ms; one that offers something, or has more to be read, stays longer. */
const STAY = 6_000;
const STAY_WITH_ACTION = 20_000;
const STAY_PER_LETTER = 80;

let timer = 0;

document.addEventListener('close', () => document.body.append(byId('told')), { capture: true });

/**
 * @param {string} text
 * @param {{label: string, run: () => void}} [action]
 * @returns {() => void} takes this message away, if it still stands
 */
export function toast(text, action) {
  const place = byId('told');
  // Under an open dialog the rest of the page can't be reached, so the message goes into the dialog.
  const host = document.querySelector('dialog[open]') ?? document.body;
  if (place.parentElement !== host) host.append(place);
  clearTimeout(timer);
  const close = () => place.replaceChildren();
  const parts = [el('span', {}, text)];
  const buttons = [];
  if (action) {
    buttons.push(el('button', { type: 'button', id: 'told-action', click: () => { close(); action.run(); } },
      action.label));
  }
  buttons.push(el('button', { type: 'button', class: 'quiet', 'aria-label': say('saving-dismiss'), click: close }, '×'));
  const box = el('div', { class: 'told-box' }, ...parts, ...buttons);
  place.replaceChildren(box);
  const wait = () => {
    if (place.contains(document.activeElement)) timer = window.setTimeout(wait, STAY);
    else close();
  };
  timer = window.setTimeout(wait, Math.max(action ? STAY_WITH_ACTION : STAY, text.length * STAY_PER_LETTER));
  return () => box.remove();
}
