/**
 * The section Cautions: local rules above ours, what to watch for, and who has read it. It is open in each notebook until
 * somebody has said there that it was read.
 */
import { benchField } from './apparatus.js';
import { alike, byId, el, setAttribute, setHidden, setOptional } from './dom.js';
import { say, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { CautionGroup, View } from './types.js' */

export class Cautions {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    this.box = /** @type {HTMLDetailsElement} */ (byId('cautions-box'));
    this.list = byId('cautions-list');
    this.readers = byId('cautions-readers');
    /** @type {CautionGroup[]} */
    this.shown = [];
    /** Whose cautions are shown, and whether somebody has read them. @type {{desk?: object, read: boolean}} */
    this.of = { read: false };
    this.name = /** @type {HTMLInputElement} */ (byId('cautions-name'));
    this.problem = byId('cautions-name-problem');
    byId('cautions-read').addEventListener('click', () => this.read());
    this.name.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return;
      // It would go on to what has the focus next, and press that.
      event.preventDefault();
      this.read();
    });
    this.local = byId('cautions-local');
    this.rules = benchField(book, 'local_rules', { lines: 4 });
    this.contact = benchField(book, 'local_contact', { prose: true });
    byId('cautions-local-fields').append(this.rules.root, this.contact.root);
  }

  /** Says, by the name typed, that the cautions were read. */
  read() {
    const name = this.name.value.trim();
    setOptional(this.problem, name ? '' : say('cautions-name-needed'));
    setAttribute(this.name, 'aria-invalid', name ? undefined : 'true');
    setAttribute(this.name, 'aria-describedby', name ? undefined : this.problem.id);
    if (!name) {
      this.name.focus();
      return;
    }
    if (!this.book.edit({ read_cautions: name })) return;
    this.name.value = '';
    this.book.draw();
    this.box.open = false;
    this.box.querySelector('summary')?.focus();
  }

  /** @param {View} view */
  show({ bench, cautions: { groups, read } }) {
    this.rules.show(bench.local_rules);
    this.contact.show(bench.local_contact);
    const { text: rules } = bench.local_rules;
    const { text: contact } = bench.local_contact;
    setHidden(this.local, !rules && !contact);
    setOptional(byId('cautions-local-rules'), rules);
    setOptional(byId('cautions-local-contact'), contact ? say('cautions-contact', { contact }) : '');
    this.showGroups(groups);
    this.showReaders(read.map(tell));
  }

  /** @param {CautionGroup[]} groups */
  showGroups(groups) {
    if (alike(groups, this.shown)) return;
    this.shown = groups;
    this.list.replaceChildren(...groups.flatMap((group) => [
      el('h3', {}, tell(group.title)),
      el('ul', {}, ...group.cautions.map((caution) => el('li', {}, tell(caution)))),
    ]));
  }

  /** @param {string[]} readers */
  showReaders(readers) {
    const { desk } = this.book;
    const read = readers.length > 0;
    if (desk !== this.of.desk || read !== this.of.read) this.box.open = !read;
    this.of = { desk, read };
    const told = this.readers.children;
    if (told.length === readers.length && readers.every((reader, place) => told[place]?.textContent === reader)) return;
    this.readers.replaceChildren(...readers.map((reader) => el('li', {}, reader)));
    setHidden(this.readers, !read);
  }
}
