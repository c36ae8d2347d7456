/**
 * A text box with its label, unit, problem, and what stands in for it while it is empty.
 */
import { el, setAttribute, setOptional, setText } from './dom.js';
import { termLink } from './help.js';
import { each, say, tell } from './words.js';
import { listen, put } from './typing.js';

/** @import { Behind, Field, Meant, Message, UncertaintyKind, UncertaintyOf, Value } from './types.js' */

export class TextField {
  /**
   * @param {{id: string, label: string, lines?: number, prose?: boolean, wide?: boolean, term?: string}} about
   *   `prose`: words rather than a number; `lines`: more than one makes a text area; `term`: of the glossary
   * @param {(text: string) => void} send
   * @param {(of: UncertaintyOf, kind: UncertaintyKind) => void} [choose] called where the field holds an uncertainty and
   *   somebody chose as what it is meant
   */
  constructor(about, send, choose) {
    const { id, label, lines = 1, prose = lines > 1, wide = lines > 1, term } = about;
    this.box = lines > 1
      ? el('textarea', { id, rows: String(lines), autocomplete: 'off' })
      : el('input', { id, type: 'text', autocomplete: 'off', spellcheck: prose ? 'true' : 'false' });
    this.label = el('label', { for: id }, label);
    this.unit = el('span', { class: 'unit', id: `${id}-unit`, hidden: true });
    this.standIn = el('p', { class: 'hint', id: `${id}-if-empty`, hidden: true });
    this.problem = el('p', { class: 'problem', id: `${id}-problem`, hidden: true });
    this.root = el('div', { class: wide ? 'field wide' : prose ? 'field words' : 'field' },
      this.label, el('span', { class: 'box' }, this.box, this.unit), el('div', {}, this.problem, this.standIn, ...(term ? [termLink(term, label)] : [])));
    this.choose = choose;
    listen(this.root, (_, text) => send(text));
  }

  /** @param {Field} field */
  show(field) {
    put(this.box, field.text);
    setOptional(this.unit, field.unit);
    setOptional(this.problem, tell(field.problem));
    if (field.meant) this.showKind(field.meant);
    setOptional(this.standIn, standIn(field));
    setAttribute(this.box, 'aria-invalid', field.problem ? 'true' : undefined);
    const described = [this.unit, this.problem, this.standIn].filter((node) => !node.hidden).map((node) => node.id);
    setAttribute(this.box, 'aria-describedby', described.length > 0 ? described.join(' ') : undefined);
  }

  /**
   * As what an uncertainty is meant, to be chosen beside its number.
   * @param {Meant} meant
   */
  showKind({ of, kind }) {
    if (!this.kind) {
      const name = say('field-kind', { field: this.label.textContent ?? '' });
      this.kind = el('select', { id: `${this.box.id}-kind`, class: 'kind', 'aria-label': name, change: () => {
        if (of) this.choose?.(of, /** @type {UncertaintyKind} */ (this.kind?.value));
      } }, ...Object.entries(each(['limit', 'standard'], (key) => say(`field-kinds-${key}`)))
        .map(([value, text]) => el('option', { value }, text)));
      this.unit.after(this.kind);
    }
    if (this.kind.value !== kind) this.kind.value = kind;
  }

  /** @param {string} label */
  rename(label) {
    setText(this.label, label);
  }
}

/** What is taken while a field is empty; of a limit, the standard uncertainty that follows. @param {Field} field */
function standIn({ text, default: value, meant, behind }) {
  if (behind) return known(text === '' ? value : '', behind);
  const u = meant?.u;
  if (text !== '' || value === '') return u ? say('field-follows', { u, root: String(meant.under_root) }) : '';
  if (meant?.exact) return say('field-if-empty-exact');
  return u ? say('field-if-empty-limit', { value, u }) : say('field-if-empty', { value });
}

/** How well a value is known behind which its uncertainty may be typed. @param {Value} taken for the value @param {Behind} behind */
function known(taken, { limit, u }) {
  if (limit === '') return say('field-behind', { u });
  return taken === '' ? say('field-behind-limit', { limit, u }) : say('field-if-empty-behind', { value: taken, limit, u });
}

/** A choice among a few, by a list. */
export class Choice {
  /**
   * @param {{id: string, label: string, options: Record<string, string>, term?: string}} about `term`: of the glossary
   * @param {(value: any) => void} send
   */
  constructor({ id, label, options, term }, send) {
    this.box = el('select', { id, change: () => send(this.box.value) });
    this.root = el('div', { class: 'field' }, el('label', { for: id }, label), el('span', { class: 'box' }, this.box),
      ...(term ? [termLink(term, label)] : []));
    this.offered = '';
    this.offer(options);
  }

  /** @param {Record<string, string>} options */
  offer(options) {
    const offered = JSON.stringify(options);
    if (offered === this.offered) return;
    this.offered = offered;
    this.box.replaceChildren(...Object.entries(options).map(([value, text]) => el('option', { value }, text)));
  }

  /** @param {string} value */
  show(value) {
    if (this.box.value !== value) this.box.value = value;
  }
}

/** A choice among a few, all in sight. */
export class Radios {
  /**
   * @param {{name: string, legend: string, options: Record<string, string>}} about
   * @param {(value: any) => void} send
   */
  constructor({ name, legend, options }, send) {
    this.root = el('fieldset', { class: 'radios', id: name }, el('legend', {}, legend));
    /** @type {Map<string, HTMLInputElement>} */
    this.boxes = new Map();
    for (const [value, text] of Object.entries(options)) {
      const id = `${name}-${value}`;
      const box = el('input', { type: 'radio', name, id, value, change: () => send(value) });
      this.boxes.set(value, box);
      this.root.append(el('div', { class: 'radio' }, box, el('label', { for: id }, text)));
    }
  }

  /** @param {string} value */
  show(value) {
    const box = this.boxes.get(value);
    if (box && !box.checked) box.checked = true;
  }
}

/**
 * A field that has no problem, no unit and no stand-in of its own.
 * @param {string} text
 * @param {Message | null} [problem]
 * @param {string} [unit]
 * @returns {Field}
 */
export function plain(text, problem = null, unit = '') {
  return { text, problem, unit, default: '' };
}
