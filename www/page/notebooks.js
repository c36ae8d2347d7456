/**
 * The list of notebooks: open, make, rename, duplicate, delete and put back.
 */
import { messageOf } from './core.js';
import { byId, el, setHidden } from './dom.js';
import { words } from './strings.js';
import { toast } from './toast.js';

/** @import { StoredNotebook } from './types.js' */
/** @import { Shelf } from './shelf.js' */

/**
 * What the list asks of the page.
 * @typedef {object} Keeping
 * @property {Shelf} shelf
 * @property {() => string} current the id of the open notebook
 * @property {() => Promise<unknown>} settle stores everything typed
 * @property {(id: string) => Promise<boolean>} open
 * @property {() => Promise<void>} blank opens a new blank notebook
 * @property {() => Promise<void>} demo opens a new copy of the demo
 * @property {((set: 'photographs' | 'traces') => Promise<void>) | undefined} demoSet opens a copy of a demo with files;
 *   absent where the page has none beside it
 * @property {() => Promise<void>} openNext opens another notebook than the one deleted
 * @property {(id: string, title: string) => Promise<boolean>} rename whether it could be done
 */

/** Demos with files. @type {('photographs' | 'traces')[]} */
const SETS = ['photographs', 'traces'];

export class Notebooks {
  /** @param {Keeping} keeping */
  constructor(keeping) {
    const t = words.notebooks;
    this.keeping = keeping;
    this.dialog = /** @type {HTMLDialogElement} */ (byId('notebooks-dialog'));
    this.list = el('ul', { class: 'shelf', id: 'notebook-list' });
    this.bin = el('ul', { class: 'shelf', id: 'bin-list' });
    this.binBox = el('details', {}, el('summary', {}, t.bin), this.bin);
    const go = (/** @type {() => Promise<unknown>} */ work) => () => this.run(async () => {
      await work();
      this.dialog.close();
    });
    this.dialog.append(el('h2', { id: 'notebooks-title' }, t.title),
      el('p', { class: 'hint', id: 'nothing-kept', hidden: keeping.shelf.outlivesVisit() }, t.nothingKept),
      el('p', { class: 'actions' },
        el('button', { type: 'button', id: 'new-blank', class: 'main', click: go(keeping.blank) }, t.blank),
        el('button', { type: 'button', id: 'new-demo', click: go(keeping.demo) }, t.demo),
        ...SETS.map((set) => el('button', { type: 'button', hidden: !keeping.demoSet, click: go(async () => keeping.demoSet?.(set)) },
          t.demoSets[set]))),
      this.list, this.binBox,
      el('p', { class: 'actions' },
        el('button', { type: 'button', id: 'close-notebooks', click: () => this.dialog.close() }, t.close)));
    byId('open-notebooks').addEventListener('click', () => this.run(async () => {
      await keeping.settle();
      this.fill();
      this.dialog.showModal();
    }));
  }

  fill() {
    const { shelf, current } = this.keeping;
    const open = current();
    this.list.replaceChildren(...shelf.list(false).map((item) => this.line(item, item.id === open)));
    const binned = shelf.list(true);
    this.bin.replaceChildren(...binned.map((item) => this.binnedLine(item)));
    setHidden(this.binBox, binned.length === 0);
  }

  /** @param {StoredNotebook} item @param {boolean} isOpen */
  line(item, isOpen) {
    const t = words.notebooks;
    const { shelf, open } = this.keeping;
    const renaming = this.renaming(item);
    const buttons = [
      action(t.rename, item, () => {
        renaming.hidden = false;
        renaming.querySelector('input')?.select();
      }),
      action(t.duplicate, item, () => this.run(async () => {
        await shelf.duplicate(item.id);
        this.fill();
      })),
      action(t.delete, item, () => this.run(() => this.delete(item, isOpen))),
    ];
    if (!isOpen) {
      buttons.unshift(action(t.open, item, () => this.run(async () => {
        if (await open(item.id)) this.dialog.close();
      })));
    }
    return el('li', { 'data-notebook': item.id },
      el('span', { class: 'shelf-title' }, name(item), ...(isOpen ? [' ', el('em', {}, t.current)] : [])),
      el('time', { datetime: item.changed }, when(item.changed)),
      el('span', { class: 'actions' }, ...buttons), renaming);
  }

  /** @param {StoredNotebook} item */
  renaming(item) {
    const t = words.notebooks;
    const id = `rename-${item.id}`;
    const box = el('input', { type: 'text', id, value: item.title, autocomplete: 'off' });
    const form = el('form', { class: 'renaming', submit: (/** @type {Event} */ event) => {
      event.preventDefault();
      this.run(async () => {
        const done = await this.keeping.rename(item.id, box.value);
        if (!done) toast(t.busy);
        this.fill();
      });
    } }, el('label', { for: id }, t.newName), box, el('button', {}, t.keepName));
    form.hidden = true;
    return form;
  }

  /** @param {StoredNotebook} item @param {boolean} isOpen */
  async delete(item, isOpen) {
    const { shelf, openNext } = this.keeping;
    shelf.bin(item.id, true);
    if (isOpen) await openNext();
    this.fill();
    toast(words.notebooks.deleted(name(item)), { label: words.undo, run: () => {
      shelf.bin(item.id, false);
      this.fill();
    } });
  }

  /** @param {StoredNotebook} item */
  binnedLine(item) {
    const t = words.notebooks;
    const { shelf } = this.keeping;
    let sure = false;
    const forget = action(t.forget, item, () => {
      if (sure) {
        this.run(async () => {
          await shelf.forget(item.id);
          this.fill();
        });
        return;
      }
      sure = true;
      forget.textContent = t.forgetSure;
      forget.removeAttribute('aria-label');
    });
    return el('li', { 'data-notebook': item.id }, el('span', { class: 'shelf-title' }, name(item)),
      el('span', { class: 'actions' }, action(t.putBack, item, () => {
        shelf.bin(item.id, false);
        this.fill();
      }), forget));
  }

  /** @param {() => Promise<unknown>} work */
  async run(work) {
    try {
      await work();
    } catch (error) {
      toast(messageOf(error));
    }
  }
}

/** @param {string} text @param {StoredNotebook} item @param {() => void} click */
function action(text, item, click) {
  const label = words.notebooks.action(text, name(item));
  return el('button', { type: 'button', class: 'quiet', 'aria-label': label, click }, text);
}

/** @param {StoredNotebook} item */
function name(item) {
  return item.title || words.untitled;
}

/** @param {string} changed */
function when(changed) {
  const date = new Date(changed);
  return Number.isNaN(date.getTime()) ? '' : date.toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });
}
