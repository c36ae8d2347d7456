/**
 * The person's settings: light or dark; and the notebook's decimal mark.
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

/** @param {string} name @param {string} value */
export function keep(name, value) {
  try {
    core.setting_write(name, value);
  } catch {
    // A setting that can't be kept holds until the page is closed.
  }
}

/** @param {string} name */
export function recall(name) {
  try {
    return core.setting_read(name);
  } catch {
    return undefined;
  }
}
