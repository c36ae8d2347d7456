/**
 * The list of keys, opened by `?` and from the settings.
 */
import { byId, el } from './dom.js';
import { say } from './words.js';

/** What is done by keys, by where. */
const KEYS = /** @type {const} */ ([
  ['everywhere', ['undo', 'redo', 'leaf', 'list']],
  ['readings', ['next', 'before', 'up-down', 'tab', 'beside', 'edit']],
  ['points', ['point', 'ends', 'to-row']],
  ['plots', ['reading', 'to-row', 'closer', 'move', 'all', 'untell']],
  ['plan', ['position', 'far', 'give-up']],
  ['marks', ['mark', 'fine', 'coarse', 'closer', 'all', 'accept']],
  ['traces', ['zoom', 'aside', 'whole']],
]);

export class Keys {
  constructor() {
    const groups = KEYS.map(([place, names]) => el('section', {}, el('h3', {}, say(`keys-${place}`)),
      el('dl', { class: 'keys' }, ...names.flatMap((name) => [
        el('dt', {}, el('kbd', {}, say(`keys-press-${name}`))), el('dd', {}, say(`keys-does-${name}`))]))));
    const title = el('h2', { id: 'keys-title', tabindex: '-1' }, say('keys'));
    const dialog = el('dialog', { 'aria-labelledby': 'keys-title' }, title, ...groups,
      el('p', { class: 'actions' }, el('button', { type: 'button', click: () => dialog.close() }, say('close'))));
    document.body.append(dialog);
    const settings = /** @type {HTMLDialogElement} */ (byId('settings-dialog'));
    const show = () => {
      settings.close();
      dialog.showModal();
      title.focus();
    };
    const open = el('button', { type: 'button', click: show }, say('keys'));
    settings.lastElementChild?.append(' ', open);
    document.addEventListener('keydown', (event) => {
      const { target } = event;
      if (event.key !== '?' || document.querySelector('dialog[open]')) return;
      if (target instanceof Element && target.matches('input:not([type="checkbox"], [type="radio"]), textarea, select')) return;
      event.preventDefault();
      show();
    });
  }
}
