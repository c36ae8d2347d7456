/**
 * Free notes between the rows of the readings: what happened at the bench, each with when it was written.
 */
import { byId, el, setHidden, setOptional, setText } from './dom.js';
import { dated, say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Note, View } from './types.js' */

/** What is chosen for a note before all rows. */
const FIRST = '';

export class RowNotes {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** @type {Map<number, NoteLine>} */
    this.lines = new Map();
    /** The note in hand; none while a new one is written. @type {Note | undefined} */
    this.note = undefined;
    /** The notebook in which it is written. */
    this.desk = book.desk;
    /** The row in which the focus was last. @type {string | undefined} */
    this.row = undefined;
    this.first = el('div');
    const table = byId('readings-table');
    table.addEventListener('focusin', ({ target }) => {
      if (target instanceof Element) this.row = target.closest('tbody')?.dataset.row;
    });
    table.parentElement?.before(this.first);
    // At the end, where it moves nothing as it comes.
    table.closest('fieldset')?.append(el('p', { class: 'actions' },
      el('button', { type: 'button', id: 'add-note', class: 'quiet', click: () => this.ask() }, say('notes-add'))));
    this.after = el('select', { id: 'note-after' });
    this.text = el('textarea', { id: 'note-text', rows: '4', autocomplete: 'off', 'aria-describedby': 'note-problem' });
    this.problem = el('p', { class: 'problem', id: 'note-problem', role: 'alert', hidden: true });
    this.remove = el('button', { type: 'button', class: 'quiet', click: () => this.take() }, say('notes-remove'));
    this.dialog = el('dialog', { id: 'note-dialog', 'aria-labelledby': 'note-title' },
      el('form', { submit: (/** @type {Event} */ event) => this.confirm(event) },
        el('h2', { id: 'note-title' }, say('notes-title')), el('p', { class: 'hint' }, say('notes-hint')),
        el('div', { class: 'field wide' }, el('label', { for: 'note-text' }, say('notes-text')),
          el('span', { class: 'box' }, this.text), el('div', {}, this.problem)),
        el('div', { class: 'field' }, el('label', { for: 'note-after' }, say('notes-after')), el('span', { class: 'box' }, this.after)),
        el('p', { class: 'actions' }, el('button', { class: 'main' }, say('notes-write')), this.remove,
          el('button', { type: 'button', click: () => this.dialog.close() }, say('notes-cancel')))));
    document.body.append(this.dialog);
    this.show(book.current());
  }

  /** Asks for a note; for a new one, behind the row in hand or the last. @param {Note} [note] */
  ask(note) {
    const { rows } = this.book.current();
    this.note = note;
    this.desk = this.book.desk;
    const behind = rows.map(({ id, number }) => el('option', { value: String(id) }, say('notes-behind', { n: number })));
    this.after.replaceChildren(el('option', { value: FIRST }, say('notes-first')), ...behind);
    const inHand = rows.find(({ id }) => String(id) === this.row) ?? rows.at(-1);
    const at = note ? rows.find(({ id }) => id === note.after) : inHand;
    this.after.value = at ? String(at.id) : FIRST;
    this.text.value = note?.text ?? '';
    setHidden(this.remove, !note);
    setOptional(this.problem, '');
    this.dialog.showModal();
    this.text.focus();
  }

  /** @param {Event} event */
  confirm(event) {
    event.preventDefault();
    const text = this.text.value.trim();
    setOptional(this.problem, text === '' ? say('notes-needed') : '');
    if (text === '' || !this.isHere()) return;
    const id = this.note?.id ?? this.book.newNumber();
    const after = this.after.value === FIRST ? null : Number(this.after.value);
    // What is refused is not lost.
    if (this.book.edit({ set_note: { id, after, text } })) this.dialog.close();
  }

  take() {
    if (!this.isHere()) return;
    this.dialog.close();
    if (this.note && this.book.edit({ remove_note: this.note.id })) this.book.onUndoable(say('notes-removed'));
  }

  /** Whether the notebook is open in which the note is written; says so where another one is, whose numbers are others. */
  isHere() {
    const isHere = this.desk === this.book.desk;
    if (!isHere) setOptional(this.problem, say('notes-other-notebook'));
    return isHere;
  }

  /** @param {View} view */
  show({ notes }) {
    const old = this.lines;
    this.lines = new Map();
    /** @type {Map<Element, HTMLElement[]>} */
    const standing = new Map();
    for (const note of notes) {
      const line = old.get(note.id) ?? new NoteLine((one) => this.ask(one));
      old.delete(note.id);
      this.lines.set(note.id, line);
      line.show(note);
      const row = document.getElementById(`row-${note.after}`);
      standing.set(row ?? this.first, [...standing.get(row ?? this.first) ?? [], line.among(row !== null)]);
    }
    for (const line of old.values()) line.away();
    for (const [place, nodes] of standing) {
      const last = [...place.children].slice(-nodes.length);
      if (nodes.some((node, index) => last[index] !== node)) place.append(...nodes);
    }
  }
}

class NoteLine {
  /** @param {(note: Note) => void} change */
  constructor(change) {
    /** @type {Note | undefined} */
    this.note = undefined;
    this.at = el('strong');
    this.words = el('span', { class: 'typed', dir: 'auto' });
    this.change = el('button', { type: 'button', class: 'quiet', click: () => {
      if (this.note) change(this.note);
    } }, say('notes-change'));
    this.box = el('p', { role: 'note' }, this.at, ' ', this.words, ' ', this.change);
    this.cell = el('td', { role: 'gridcell', class: 'told' });
    this.shell = el('tr', { role: 'row', class: 'below' }, this.cell);
  }

  /** @param {Note} note */
  show(note) {
    this.note = note;
    const at = dated(note.at ?? '', { dateStyle: 'medium', timeStyle: 'short' });
    setText(this.at, at);
    setText(this.words, note.text);
    this.change.setAttribute('aria-label', say('notes-change-of', { at: at || note.text }));
  }

  /** What stands among the rows, as a line below one, or before them. @param {boolean} inRow */
  among(inRow) {
    if (!inRow) {
      this.shell.remove();
      return this.box;
    }
    if (this.box.parentElement !== this.cell) this.cell.append(this.box);
    return this.shell;
  }

  away() {
    this.shell.remove();
    this.box.remove();
  }
}
