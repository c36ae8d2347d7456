/**
 * Errors that no rail or setting accounts for: shared by several rows, or each row's own.
 */
import { el, Keyed, setHidden, setText } from './dom.js';
import { Choice, plain, TextField } from './field.js';
import { each, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { ErrorShape, Scope, SharedError, SharedView, View } from './types.js' */
/** @import { AllOf } from './words.js' */

/** Distributions with limits. */
const BOUNDED = /** @type {const} */ (['rectangular', 'triangular', 'arcsine']);
const SHAPES = /** @type {const} */ (['normal', ...BOUNDED, 'student']);
/** @typedef {AllOf<ErrorShape, typeof SHAPES>} AllShapes */

export class Shared {
  /**
   * @param {HTMLElement} root
   * @param {Book} book
   */
  constructor(root, book) {
    const list = el('div', { class: 'lines' });
    this.lines = new Keyed(list, (/** @type {SharedItem} */ item) => String(item.shared.id),
      (item) => new SharedLine(book, item.shared.id));
    const add = el('button', { type: 'button', id: 'add-shared', click: () => {
      const id = book.newNumber();
      if (!book.edit({ set_shared: blank(id) })) return;
      book.draw();
      document.getElementById(`shared-${id}-name`)?.focus();
    } }, say('shared-add'));
    root.append(list, el('p', { class: 'actions' }, add));
  }

  /** @param {View} view */
  show(view) {
    this.lines.show(view.shared.map((shared) => ({ shared, view })));
  }
}

/** @typedef {{shared: SharedView, view: View}} SharedItem */

class SharedLine {
  /**
   * @param {Book} book
   * @param {number} id
   */
  constructor(book, id) {
    const name = `shared-${id}`;
    this.shared = blank(id);
    const send = (/** @type {Partial<SharedError>} */ change) => {
      this.shared = { ...this.shared, ...change };
      book.edit({ set_shared: this.shared });
    };
    this.offered = '';
    this.legend = el('legend');
    this.name = new TextField({ id: `${name}-name`, label: say('shared-name'), prose: true }, (text) => send({ name: text }));
    this.actsOn = new Choice({
      id: `${name}-acts-on`,
      label: say('shared-acts-on'),
      options: each(['distances', 'delays'], (key) => say(`shared-acts-${key}`)),
    },
      (value) => send({ acts_on: value }));
    this.effect = new Choice({
      id: `${name}-effect`,
      label: say('shared-effect'),
      options: each(['offset', 'scale', 'noise'], (key) => say(`shared-effects-${key}`)),
    },
      (value) => send({ effect: value }));
    this.scope = new Choice({ id: `${name}-rows`, label: say('shared-rows'), options: {} },
      (value) => send({ rows: JSON.parse(value) }));
    this.rows = el('select', { multiple: true, id: `${name}-which`, size: '4', change: () => {
      send({ rows: { rows: [...this.rows.selectedOptions].map((option) => Number(option.value)) } });
    } });
    this.which = el('div', { class: 'field' }, el('label', { for: `${name}-which` }, say('shared-which')), this.rows);
    this.uncertainty = new TextField({ id: `${name}-uncertainty`, label: say('shared-uncertainty'), term: 'standard-uncertainty' },
      (text) => send({ uncertainty: text }), book.setKind);
    this.shape = new Choice({
      id: `${name}-shape`,
      label: say('shared-shape'),
      options: {},
      term: 'rectangular',
    }, (shape) => send({ shape }));
    this.freedom = new TextField({ id: `${name}-freedom`, label: say('shared-freedom'), term: 'degrees-of-freedom' },
      (text) => send({ degrees_of_freedom: text }));
    const remove = el('button', { type: 'button', class: 'quiet', click: () => {
      book.edit({ remove_shared: id });
      document.getElementById('add-shared')?.focus();
    } }, say('remove'));
    this.root = el('fieldset', { class: 'line', id: name }, this.legend, el('div', { class: 'fields' },
      this.name.root, this.actsOn.root, this.effect.root, this.scope.root, this.which, this.uncertainty.root,
      this.shape.root, this.freedom.root, remove));
  }

  /** @param {SharedItem} item @param {number} place */
  show({ shared, view }, place) {
    this.shared = { ...shared, uncertainty: shared.uncertainty.text, degrees_of_freedom: shared.degrees_of_freedom.text };
    setText(this.legend, say('shared-legend', { n: place + 1 }));
    this.name.show(plain(shared.name));
    this.actsOn.show(shared.acts_on);
    this.effect.show(shared.effect);
    const chosen = typeof shared.rows === 'object' && 'rows' in shared.rows ? shared.rows.rows : undefined;
    this.scope.offer(scopes(view, shared.rows));
    this.scope.show(JSON.stringify(chosen ? { rows: [] } : shared.rows));
    this.uncertainty.show(shared.uncertainty);
    this.shape.offer(each(shared.uncertainty.meant?.kind === 'limit' ? BOUNDED : SHAPES, (key) => say(`shared-shapes-${key}`)));
    this.shape.show(shared.shape);
    this.freedom.show(shared.degrees_of_freedom);
    setHidden(this.which, !chosen);
    if (chosen) this.showRows(view, chosen);
  }

  /** @param {View} view @param {number[]} chosen */
  showRows({ rows }, chosen) {
    const key = rows.map((row) => `${row.id}:${row.number}`).join();
    if (key !== this.offered) {
      this.offered = key;
      this.rows.replaceChildren(...rows.map((row) => el('option', { value: String(row.id) },
        say('notices-row', { n: row.number }))));
    }
    for (const option of this.rows.options) option.selected = chosen.includes(Number(option.value));
  }
}

/**
 * What an error may be shared by, as JSON.
 * @param {View} view
 * @param {Scope} now
 * @returns {Record<string, string>}
 */
function scopes({ rails, rows }, now) {
  const bases = new Set(rows.map((row) => row.cells.time_base.text).filter((text) => text !== ''));
  if (typeof now === 'object' && 'time_base' in now) bases.add(now.time_base);
  /** @type {[Scope, string][]} */
  const all = [
    ['all', say('shared-all')],
    ...rails.map((rail, place) => /** @type {[Scope, string]} */ (
      [{ rail: rail.id }, say('shared-rail', { name: rail.fields.name.text || say('rails-numbered', { n: place + 1 }) })])),
    ...[...bases].map((text) => /** @type {[Scope, string]} */ ([{ time_base: text }, say('shared-time-base', { text })])),
    [{ rows: [] }, say('shared-chosen')],
  ];
  return Object.fromEntries(all.map(([scope, text]) => [JSON.stringify(scope), text]));
}

/** @param {number} id @returns {SharedError} */
function blank(id) {
  return {
    id, name: '', acts_on: 'delays', effect: 'offset', rows: 'all', shape: 'normal', degrees_of_freedom: '',
    uncertainty: '',
  };
}
