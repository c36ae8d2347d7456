/**
 * The rails, one card each: the ruler, where it stands, and what was noticed about it.
 */
import { el, Keyed, setText } from './dom.js';
import { Choice, TextField } from './field.js';
import { NoticeList } from './notices.js';
import { SpliceEditor } from './splice.js';
import { each, say, setTold } from './words.js';

/** @import { Book } from './book.js' */
/** @import { RailField, RailView, View } from './types.js' */
/** @import { AllOf } from './words.js' */

const FIELDS = /** @type {const} */ (['name', 'from', 'to', 'reading_uncertainty', 'scale_uncertainty']);
/** @typedef {AllOf<RailField, typeof FIELDS>} AllFields */
/** The terms of the glossary that explain them. @type {Partial<Record<RailField, string>>} */
const TERMS = { reading_uncertainty: 'limit', scale_uncertainty: 'relative' };

export class Rails {
  /**
   * @param {HTMLElement} root
   * @param {Book} book
   */
  constructor(root, book) {
    const list = el('div', { class: 'cards' });
    this.cards = new Keyed(list, (/** @type {RailItem} */ item) => String(item.rail.id),
      (item) => new RailCard(book, item.rail.id));
    const add = el('button', { type: 'button', id: 'add-rail', click: () => this.add(book) }, say('rails-add'));
    root.append(list, el('p', { class: 'actions' }, add));
  }

  /** @param {Book} book */
  add(book) {
    const rail = book.newNumber();
    if (!book.edit({ add_rail: rail })) return;
    book.draw();
    document.getElementById(`rail-${rail}-name`)?.focus();
  }

  /** @param {View} view */
  show(view) {
    this.cards.show(view.rails.map((rail, place) => ({ rail, before: view.rails[place - 1], view })));
  }
}

/** @typedef {{rail: RailView, before: RailView | undefined, view: View}} RailItem */

class RailCard {
  /**
   * @param {Book} book
   * @param {number} rail
   */
  constructor(book, rail) {
    this.legend = el('legend');
    this.fields = FIELDS.map((field) => new TextField(
      { id: `rail-${rail}-${field}`, label: say(`rails-fields-${field}`), prose: field === 'name', term: TERMS[field] },
      (text) => {
        book.edit(field === 'name' ? { rename_rail: { rail, name: text } } : { set_rail: { rail, field, text } });
      },
      book.setKind,
    ));
    this.unit = new Choice({
      id: `rail-${rail}-unit`,
      label: say('rails-unit'),
      options: each(['millimetre', 'centimetre', 'metre', 'inch'], (key) => say(`rails-units-${key}`)),
    }, (unit) => {
      book.edit({ set_ruler_unit: { rail, unit } });
    });
    this.sense = new Choice({
      id: `rail-${rail}-sense`,
      label: say('rails-sense'),
      options: each(['grows', 'falls'], (key) => say(`rails-senses-${key}`)),
    }, (sense) => {
      book.edit({ set_sense: { rail, sense } });
    });
    this.splice = new SpliceEditor(book, rail);
    this.stands = el('p', { class: 'stands' });
    this.step = el('p', { class: 'stands' });
    const notices = el('ul', { class: 'notices' });
    this.notices = new NoticeList(book, notices, (notice) => notice.section === 'apparatus' && notice.rail === rail);
    this.remove = el('button', { type: 'button', class: 'quiet', click: () => this.take(book, rail) }, say('rails-remove'));
    const [name, from, to, reading, scale] = this.fields.map((field) => field.root);
    this.root = el('fieldset', { class: 'card', id: `rail-${rail}` }, this.legend, notices,
      el('div', { class: 'fields' }, ...nodes(name, this.unit.root, from, to, this.sense.root, reading, scale)),
      this.splice.root, this.stands, this.step, el('p', { class: 'actions' }, this.remove));
  }

  /** @param {RailItem} item @param {number} place */
  show({ rail, before, view }, place) {
    this.name = rail.fields.name.text || say('rails-numbered', { n: place + 1 });
    setText(this.legend, rail.fields.name.text
      ? say('rails-legend', { n: place + 1, name: rail.fields.name.text }) : say('rails-numbered', { n: place + 1 }));
    FIELDS.forEach((field, index) => this.fields[index]?.show(rail.fields[field]));
    this.unit.show(rail.unit);
    this.sense.show(rail.sense);
    this.splice.show(rail, before);
    setTold(this.stands, rail.stands);
    setTold(this.step, rail.step);
    this.notices.show(view);
  }

  /** @param {Book} book @param {number} rail */
  take(book, rail) {
    if (!book.edit({ remove_rail: rail })) return;
    book.onUndoable(say('rails-removed', { name: this.name ?? '' }));
    document.getElementById('add-rail')?.focus();
  }
}

/** @param {...(HTMLElement | undefined)} all */
function nodes(...all) {
  return all.filter((node) => node !== undefined);
}
