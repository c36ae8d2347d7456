/**
 * The person's settings: language, light or dark, contrast; and the notebook's decimal mark.
 */
import { core } from './core.js';
import { byId, el } from './dom.js';
import { Radios } from './field.js';
import { keepLanguage } from './language.js';
import { LANGUAGES } from './languages.js';
import { redrawAsWished, redrawPlots } from './plot.js';
import { toast } from './toast.js';
import { each, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Preferences {
  /**
   * @param {Book} book
   * @param {() => Promise<boolean>} settle stores everything typed; whether the page may be loaded anew
   */
  constructor(book, settle) {
    this.settle = settle;
    const dialog = /** @type {HTMLDialogElement} */ (byId('settings-dialog'));
    this.theme = new Radios({
      name: 'theme',
      legend: say('preferences-theme'),
      options: each(['auto', 'light', 'dark'], (key) => say(`preferences-themes-${key}`)),
    }, (theme) => {
      keep('theme', theme);
      this.wear(theme);
    });
    this.contrast = new Radios({
      name: 'contrast',
      legend: say('preferences-contrast'),
      options: each(['auto', 'more'], (key) => say(`preferences-contrasts-${key}`)),
    }, (contrast) => {
      keep('contrast', contrast);
      this.set(contrast);
    });
    this.language = new Radios({
      name: 'language',
      legend: say('preferences-language'),
      options: LANGUAGES,
    }, (language) => this.speak(language));
    this.language.show(say('language'));
    this.mark = new Radios({
      name: 'decimal-mark',
      legend: say('preferences-mark'),
      options: each(['point', 'comma'], (key) => say(`preferences-marks-${key}`)),
    }, (mark) => {
      book.edit({ set_decimal_mark: mark });
    });
    this.mark.root.append(el('p', { class: 'hint' }, say('preferences-mark-hint')));
    dialog.append(el('h2', { id: 'settings-title' }, say('strip-settings')), this.language.root, this.mark.root,
      this.theme.root, this.contrast.root,
      el('p', { class: 'actions' }, el('button', { type: 'button', click: () => dialog.close() }, say('close'))));
    byId('open-settings').addEventListener('click', () => dialog.showModal());
    this.wear(recall('theme') ?? 'auto');
    this.set(recall('contrast') ?? 'auto');
    redrawAsWished();
  }

  /** @param {View} view */
  show(view) {
    this.mark.show(view.decimal_mark);
  }

  /** Loads the page anew in a language, once what was typed is stored. @param {string} language */
  async speak(language) {
    if (await this.settle() && isKept(language)) location.reload();
    else this.language.show(say('language'));
  }

  /** @param {string} theme */
  wear(theme) {
    document.documentElement.dataset.theme = theme;
    this.theme.show(theme);
    redrawPlots();
  }

  /** @param {string} contrast */
  set(contrast) {
    document.documentElement.dataset.contrast = contrast;
    this.contrast.show(contrast);
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

/** Keeps the language chosen; says so where the browser does not let it. @param {string} language */
function isKept(language) {
  try {
    keepLanguage(language);
    return true;
  } catch {
    toast(say('preferences-language-not-kept'));
    return false;
  }
}
