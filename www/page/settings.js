/**
 * Time base settings that have an uncertainty of their own.
 */
import { el, Keyed, setText } from './dom.js';
import { TextField } from './field.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Setting, SettingView, View } from './types.js' */

export class Settings {
  /**
   * @param {HTMLElement} root
   * @param {Book} book
   */
  constructor(root, book) {
    const list = el('div', { class: 'lines' });
    this.lines = new Keyed(list, (/** @type {SettingView} */ setting) => String(setting.id),
      (setting) => new SettingLine(book, setting.id));
    const add = el('button', { type: 'button', id: 'add-setting', click: () => {
      const id = book.newNumber();
      if (!book.edit({ set_setting: { id, time_per_division: '', uncertainty: '' } })) return;
      book.draw();
      document.getElementById(`setting-${id}-time_per_division`)?.focus();
    } }, say('settings-add'));
    root.append(list, el('p', { class: 'actions' }, add));
  }

  /** @param {View} view */
  show(view) {
    this.lines.show(view.settings);
  }
}

class SettingLine {
  /**
   * @param {Book} book
   * @param {number} id
   */
  constructor(book, id) {
    /** @type {Setting} */
    this.setting = { id, time_per_division: '', uncertainty: '' };
    const send = (/** @type {Partial<Setting>} */ change) => {
      this.setting = { ...this.setting, ...change };
      book.edit({ set_setting: this.setting });
    };
    this.time = new TextField({ id: `setting-${id}-time_per_division`, label: say('settings-time') },
      (text) => send({ time_per_division: text }));
    this.uncertainty = new TextField({ id: `setting-${id}-uncertainty`, label: say('settings-uncertainty') },
      (text) => send({ uncertainty: text }), book.setKind);
    this.legend = el('legend');
    const remove = el('button', { type: 'button', class: 'quiet', click: () => {
      book.edit({ remove_setting: id });
      document.getElementById('add-setting')?.focus();
    } }, say('remove'));
    this.root = el('fieldset', { class: 'line', id: `setting-${id}` }, this.legend,
      el('div', { class: 'fields' }, this.time.root, this.uncertainty.root, remove));
  }

  /** @param {SettingView} setting @param {number} place */
  show(setting, place) {
    const { id, time_per_division: time, uncertainty } = setting;
    this.setting = { id, time_per_division: time.text, uncertainty: uncertainty.text };
    setText(this.legend, say('settings-legend', { n: place + 1 }));
    this.time.show(time);
    this.uncertainty.show(uncertainty);
  }
}
