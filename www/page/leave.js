/**
 * Leaving a computer that others use too: everything that this browser keeps of the notebooks is removed at one wish, which is
 * asked for by itself after handing in where the computer is said to be shared.
 */
import { messageOf } from './core.js';
import { byId, el, setText } from './dom.js';
import { Radios } from './field.js';
import { removeFiles } from './file-store.js';
import { keep, recall } from './preferences.js';
import { isAlone } from './sweep.js';
import { toast } from './toast.js';
import { each, say } from './words.js';

/** @import { Keeper } from './keeper.js' */

/** The setting that says whose the computer is, the one thing that stays. */
const COMPUTER = 'computer';
/** What this page's keys in the browser's stores begin with. */
const OURS = 'slope-of-light/';

/** @type {Leave | undefined} */
let leave;

/** A file was handed in. */
export function handedIn() {
  if (isShared()) leave?.ask();
}

/** Asks whether everything shall be removed. */
export function askToLeave() {
  leave?.ask();
}

function isShared() {
  return recall(COMPUTER) === 'shared';
}

export class Leave {
  /** @param {Keeper} keeper */
  constructor(keeper) {
    this.keeper = keeper;
    this.computer = new Radios({
      name: COMPUTER,
      legend: say('leave-computer'),
      options: each(['own', 'shared'], (key) => say(`leave-computers-${key}`)),
    }, (computer) => keep(COMPUTER, computer));
    this.computer.show(isShared() ? 'shared' : 'own');
    this.computer.root.append(el('p', { class: 'hint' }, say('leave-hint')));
    byId('settings-dialog').lastElementChild?.before(this.computer.root,
      el('p', { class: 'actions' }, el('button', { type: 'button', class: 'quiet', click: () => this.ask() }, say('leave-ask'))));
    this.what = el('p');
    this.dialog = el('dialog', { id: 'leave', 'aria-labelledby': 'leave-title' },
      el('h2', { id: 'leave-title' }, say('leave-title')), this.what, el('p', {}, say('leave-before')),
      el('p', { class: 'actions' },
        el('button', { type: 'button', click: () => this.dialog.close() }, say('leave-keep')),
        el('button', { type: 'button', click: () => void this.remove() }, say('leave-remove'))));
    document.body.append(this.dialog);
    leave = this;
  }

  ask() {
    const { shelf } = this.keeper;
    setText(this.what, say('leave-what', { n: shelf.list(false).length + shelf.list(true).length }));
    /** @type {HTMLDialogElement} */ (byId('settings-dialog')).close();
    this.dialog.showModal();
  }

  async remove() {
    try {
      // Another window would store its notebook anew.
      if (navigator.locks && !await isAlone()) {
        this.dialog.close();
        toast(say('leave-windows'));
        return;
      }
      await removeFiles();
      await this.keeper.abandon();
      forgetKeys(isShared());
      location.replace(location.pathname);
    } catch (error) {
      toast(messageOf(error));
    }
  }
}

/** Removes what this page keeps by key, but for whose the computer is. @param {boolean} shared */
function forgetKeys(shared) {
  for (const store of [localStorage, sessionStorage]) {
    for (const key of Object.keys(store)) if (key.startsWith(OURS)) store.removeItem(key);
  }
  if (shared) keep(COMPUTER, 'shared');
}
