/**
 * The person's settings: light or dark, cautions read; and the notebook's decimal mark.
 */
import { core } from './core.js';
import { byId, el } from './dom.js';
import { Radios } from './field.js';
import { redrawPlots } from './plot.js';
import { words } from './strings.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Preferences {
  /** @param {Book} book */
  constructor(book) {
    const t = words.preferences;
    const dialog = /** @type {HTMLDialogElement} */ (byId('settings-dialog'));
    this.theme = new Radios({ name: 'theme', legend: t.theme, options: t.themes }, (theme) => {
      keep('theme', theme);
      this.wear(theme);
    });
    this.mark = new Radios({ name: 'decimal-mark', legend: t.mark, options: t.marks }, (mark) => {
      book.edit({ set_decimal_mark: mark });
    });
    dialog.append(el('h2', { id: 'settings-title' }, t.title), this.mark.root, this.theme.root,
      el('p', { class: 'actions' }, el('button', { type: 'button', click: () => dialog.close() }, t.close)));
    byId('open-settings').addEventListener('click', () => dialog.showModal());
    this.wear(recall('theme') ?? 'auto');
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => redrawPlots());
    watchCautions();
  }

  /** @param {View} view */
  show(view) {
    this.mark.show(view.decimal_mark);
  }

  /** @param {string} theme */
  wear(theme) {
    document.documentElement.dataset.theme = theme;
    this.theme.show(theme);
    redrawPlots();
  }
}

/** The cautions stay open until they were read, and as they were left after that. */
function watchCautions() {
  const box = /** @type {HTMLDetailsElement} */ (byId('cautions-box'));
  const read = byId('cautions-read');
  byId('cautions-list').append(...words.cautions.items.map((text) => el('li', {}, text)));
  box.open = recall('cautions') !== 'read';
  box.addEventListener('toggle', () => keep('cautions', box.open ? 'open' : 'read'));
  read.addEventListener('click', () => {
    box.open = false;
    box.querySelector('summary')?.focus();
  });
}

/** @param {string} name @param {string} value */
function keep(name, value) {
  try {
    core.setting_write(name, value);
  } catch {
    // A setting that can't be kept holds until the page is closed.
  }
}

/** @param {string} name */
function recall(name) {
  try {
    return core.setting_read(name);
  } catch {
    return undefined;
  }
}
