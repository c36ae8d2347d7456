/**
 * The person's settings: light or dark, cautions read; and the notebook's decimal mark.
 */
import { core } from './core.js';
import { byId, el } from './dom.js';
import { Radios } from './field.js';
import { redrawPlots } from './plot.js';
import { each, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Preferences {
  /** @param {Book} book */
  constructor(book) {
    const dialog = /** @type {HTMLDialogElement} */ (byId('settings-dialog'));
    this.theme = new Radios({
      name: 'theme',
      legend: say('preferences-theme'),
      options: each(['auto', 'light', 'dark'], (key) => say(`preferences-themes-${key}`)),
    }, (theme) => {
      keep('theme', theme);
      this.wear(theme);
    });
    this.mark = new Radios({
      name: 'decimal-mark',
      legend: say('preferences-mark'),
      options: each(['point', 'comma'], (key) => say(`preferences-marks-${key}`)),
    }, (mark) => {
      book.edit({ set_decimal_mark: mark });
    });
    dialog.append(el('h2', { id: 'settings-title' }, say('preferences-title')), this.mark.root, this.theme.root,
      el('p', { class: 'actions' }, el('button', { type: 'button', click: () => dialog.close() }, say('preferences-close'))));
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

/** The cautions, in the order in which they are read. */
const CAUTIONS = /** @type {const} */ ([
  'eyes', 'height', 'reflections', 'eyewear', 'skin', 'alignment',
  'voltage', 'gas', 'room', 'stop', 'rules',
]);

/** The cautions stay open until they were read, and as they were left after that. */
function watchCautions() {
  const box = /** @type {HTMLDetailsElement} */ (byId('cautions-box'));
  const read = byId('cautions-read');
  byId('cautions-list').append(...CAUTIONS.map((caution) => el('li', {}, say(`cautions-${caution}`))));
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
