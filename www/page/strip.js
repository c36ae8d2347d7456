/**
 * The strip that stays in sight: title, whether all is saved, the result so far, undo and redo; with it the outline, by
 * which the leaves are turned.
 */
import { byId, el, setAttribute, setHidden, setText } from './dom.js';
import { leaves, leavesOf, reveal, watchLeaves } from './leaves.js';
import { counted, gravest } from './notices.js';
import { say } from './words.js';
import { isTyping, listen, put } from './typing.js';
import { redo, undo } from './undone.js';

/** @import { Book } from './book.js' */
/** @import { View } from './types.js' */

export class Strip {
  /** @param {Book} book */
  constructor(book) {
    this.title = /** @type {HTMLInputElement} */ (byId('title'));
    setAttribute(this.title, 'placeholder', say('strip-title-hint'));
    listen(byId('strip'), (_, text) => { book.edit({ set_title: text }); });
    this.result = byId('strip-result');
    this.sealed = byId('strip-sealed');
    this.rows = byId('strip-rows');
    this.notices = byId('strip-notices');
    this.notices.addEventListener('click', (event) => {
      event.preventDefault();
      book.drawParts(true);
      goToNotice(book.view.notices[0]?.id ?? '');
    });
    this.undo = /** @type {HTMLButtonElement} */ (byId('undo'));
    this.redo = /** @type {HTMLButtonElement} */ (byId('redo'));
    this.undo.addEventListener('click', () => undo(book));
    this.redo.addEventListener('click', () => redo(book));
    document.addEventListener('keydown', (event) => this.pressed(event, book));
    this.outline = new Outline(byId('outline-list'));
  }

  /** @param {View} view */
  show(view) {
    put(this.title, view.title);
    document.title = `${view.title || say('untitled')} · ${say('app')}`;
    setText(this.result, view.result.short || say('strip-no-c'));
    setHidden(this.sealed, !view.result.sealed);
    const used = view.rows.filter((row) => row.state === 'used').length;
    setText(this.rows, say('strip-rows', { used, all: view.rows.length }));
    const first = gravest(view.notices);
    setText(this.notices, first ? counted(view.notices, say('strip-notices', { n: view.notices.length })) : say('strip-no-notices'));
    setAttribute(this.notices, 'href', first ? `#${first.section}` : undefined);
    setAttribute(this.notices, 'class', first?.weight);
    this.able(this.undo, view.can_undo);
    this.able(this.redo, view.can_redo);
    this.outline.show(view);
  }

  /**
   * A button that can't be used now keeps its place in the tab order, so that the focus is not lost.
   * @param {HTMLButtonElement} button
   * @param {boolean} able
   */
  able(button, able) {
    setAttribute(button, 'aria-disabled', able ? undefined : 'true');
  }

  /** @param {KeyboardEvent} event @param {Book} book */
  pressed(event, book) {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping()) return;
    if (document.querySelector('dialog[open]')) return;
    const key = event.key.toLowerCase();
    const again = key === 'y' || (key === 'z' && event.shiftKey);
    if (!again && key !== 'z') return;
    event.preventDefault();
    if (again) redo(book);
    else undo(book);
  }
}

/** The leaves by name, each with how many notices stand on it. */
class Outline {
  /** @param {HTMLElement} root */
  constructor(root) {
    this.links = leaves().map((leaf) => {
      const name = leaf.dataset.leaf ?? '';
      const count = el('span', { class: 'count', hidden: true });
      const link = el('a', { href: `#${name}` }, leaf.getAttribute('aria-label') ?? '', ' ', count);
      return { name, link, count };
    });
    root.append(...this.links.map(({ link }) => el('li', {}, link)));
    watchLeaves((current) => {
      for (const { name, link } of this.links) setAttribute(link, 'aria-current', name === current ? 'page' : undefined);
    });
  }

  /** @param {View} view */
  show(view) {
    for (const { name, count } of this.links) {
      const here = view.notices.filter(({ section }) => leavesOf(byId(section))[0] === name);
      setHidden(count, here.length === 0);
      setText(count, counted(here));
      const text = say('strip-notices', { n: here.length });
      setAttribute(count, 'title', text);
    }
  }
}

/** @param {string} id */
function goToNotice(id) {
  const notice = document.querySelector(`li[data-notice="${CSS.escape(id)}"]`);
  if (!(notice instanceof HTMLElement)) return;
  reveal(notice);
  notice.scrollIntoView({ block: 'center' });
  notice.focus({ preventScroll: true });
}
