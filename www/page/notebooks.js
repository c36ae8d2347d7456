/**
 * The list of notebooks: open, make, rename, duplicate, delete and put back.
 */
import { messageOf } from './core.js';
import { byId, el, setHidden } from './dom.js';
import { dated, say } from './words.js';
import { toast } from './toast.js';

/** @import { StoredNotebook } from './types.js' */
/** @import { Shelf } from './shelf.js' */

/**
 * What the list asks of the page.
 * @typedef {object} Keeping
 * @property {Shelf} shelf
 * @property {() => string} current the id of the open notebook
 * @property {() => Promise<unknown>} settle stores everything typed
 * @property {() => void} chooseFile has a person choose a file to open
 * @property {(id: string) => Promise<boolean>} open
 * @property {() => Promise<void>} blank opens a new blank notebook
 * @property {() => Promise<void>} demo opens a new copy of the demo
 * @property {() => Promise<void>} tour leads through the demo that is open
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
    this.keeping = keeping;
    this.dialog = /** @type {HTMLDialogElement} */ (byId('notebooks-dialog'));
    this.list = el('ul', { class: 'shelf', id: 'notebook-list' });
    this.bin = el('ul', { class: 'shelf', id: 'bin-list' });
    this.binBox = el('details', {}, el('summary', {}, say('notebooks-bin')), this.bin);
    // Closed first: under an open dialog nothing else takes the focus.
    const go = (/** @type {() => Promise<unknown>} */ work) => () => this.run(() => {
      this.dialog.close();
      return work();
    });
    this.dialog.append(el('h2', { id: 'notebooks-title' }, say('strip-notebooks')),
      el('p', { class: 'hint', id: 'nothing-kept', hidden: keeping.shelf.outlivesVisit() }, say('notebooks-nothing-kept')),
      el('p', { class: 'actions' },
        el('button', { type: 'button', id: 'choose-file', class: 'main', click: () => {
          this.dialog.close();
          keeping.chooseFile();
        } }, say('notebooks-file')),
        el('button', { type: 'button', id: 'new-blank', click: go(keeping.blank) }, say('notebooks-blank')),
        el('button', { type: 'button', id: 'new-demo', click: go(keeping.demo) }, say('notebooks-demo')),
        el('button', { type: 'button', click: () => this.run(async () => {
          await keeping.demo();
          this.dialog.close();
          await keeping.tour();
        }) }, say('tour')),
        ...SETS.map((set) => el('button', { type: 'button', hidden: !keeping.demoSet, click: go(async () => keeping.demoSet?.(set)) },
          say(`notebooks-demo-sets-${set}`)))),
      el('p', { class: 'hint' }, say('notebooks-file-hint')),
      this.list, this.binBox,
      el('p', { class: 'actions' },
        el('button', { type: 'button', id: 'close-notebooks', click: () => this.dialog.close() }, say('close'))));
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
    const { shelf, open } = this.keeping;
    const renaming = this.renaming(item);
    const buttons = [
      action(say('notebooks-rename'), item, () => {
        renaming.hidden = false;
        renaming.querySelector('input')?.select();
      }),
      action(say('notebooks-duplicate'), item, () => this.run(async () => {
        await shelf.duplicate(item.id);
        this.fill();
      })),
      action(say('notebooks-delete'), item, () => this.run(() => this.delete(item, isOpen))),
    ];
    if (!isOpen) {
      buttons.unshift(action(say('notebooks-open'), item, () => this.run(async () => {
        if (await open(item.id)) this.dialog.close();
      })));
    }
    return el('li', { 'data-notebook': item.id },
      el('span', { class: 'shelf-title' }, name(item), ...(isOpen ? [' ', el('em', {}, say('notebooks-current'))] : [])),
      el('time', { datetime: item.changed }, dated(item.changed, { dateStyle: 'medium', timeStyle: 'short' })),
      el('span', { class: 'actions' }, ...buttons), renaming);
  }

  /** @param {StoredNotebook} item */
  renaming(item) {
    const id = `rename-${item.id}`;
    const box = el('input', { type: 'text', id, value: item.title, autocomplete: 'off' });
    const form = el('form', { class: 'renaming', submit: (/** @type {Event} */ event) => {
      event.preventDefault();
      this.run(async () => {
        const done = await this.keeping.rename(item.id, box.value);
        if (!done) toast(say('notebooks-busy'));
        this.fill();
      });
    } }, el('label', { for: id }, say('notebooks-new-name')), box, el('button', {}, say('notebooks-keep-name')));
    form.hidden = true;
    return form;
  }

  /** @param {StoredNotebook} item @param {boolean} isOpen */
  async delete(item, isOpen) {
    const { shelf, openNext } = this.keeping;
    shelf.bin(item.id, true);
    if (isOpen) await openNext();
    this.fill();
    toast(say('notebooks-deleted', { title: name(item) }), { label: say('strip-undo'), run: () => {
      shelf.bin(item.id, false);
      this.fill();
    } });
  }

  /** @param {StoredNotebook} item */
  binnedLine(item) {
    const { shelf } = this.keeping;
    let sure = false;
    const forget = action(say('notebooks-forget'), item, () => {
      if (sure) {
        this.run(async () => {
          await shelf.forget(item.id);
          this.fill();
        });
        return;
      }
      sure = true;
      forget.textContent = say('notebooks-forget-sure');
      forget.removeAttribute('aria-label');
    });
    return el('li', { 'data-notebook': item.id }, el('span', { class: 'shelf-title' }, name(item)),
      el('span', { class: 'actions' }, action(say('notebooks-put-back'), item, () => {
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
  const label = say('notebooks-action', { action: text, title: name(item) });
  return el('button', { type: 'button', class: 'quiet', 'aria-label': label, click }, text);
}

/** @param {StoredNotebook} item */
function name(item) {
  return item.title || say('untitled');
}
