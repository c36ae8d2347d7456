/**
 * What a teacher says of the open notebook: each comment beside what it is about, all of them with the mark at the head of the
 * report's leaf. It can be read and removed, not changed, and belongs to no report.
 */
import { byId, el, setHidden, setText } from './dom.js';
import { messageOf } from './core.js';
import { keepFeedback, keptFeedback, onFeedback } from './feedback-kept.js';
import { placeName } from './feedback-places.js';
import { reveal } from './leaves.js';
import { toast } from './toast.js';
import { dated, say } from './words.js';
import { reader } from './worker-slot.js';

/** @import { Book } from './book.js' */
/** @import { Keeper } from './keeper.js' */
/** @import { View } from './types.js' */
/** @import { Comment, Feedback, Place } from './worker-types.js' */
/** @typedef {Awaited<ReturnType<typeof keptFeedback>>} Kept */

export class FeedbackBeside {
  /** @param {Book} book @param {Keeper} keeper */
  constructor(book, keeper) {
    this.book = book;
    this.keeper = keeper;
    /** The desk of which something is said, or may be. @type {Book['desk'] | undefined} */
    this.desk = undefined;
    /** @type {Kept} */
    this.kept = undefined;
    /** @type {Feedback | undefined} */
    this.said = undefined;
    /** @type {CommentBox[]} */
    this.boxes = [];
    this.about = el('p', { class: 'hint' });
    this.since = el('p', { class: 'hint' });
    this.mark = el('p', { class: 'lead', dir: 'auto' });
    this.general = el('p', { class: 'typed', dir: 'auto' });
    this.list = el('ul');
    this.root = el('div', { id: 'feedback', class: 'start', tabindex: '-1', role: 'group', 'aria-labelledby': 'feedback-title', hidden: true },
      el('h3', { id: 'feedback-title' }, say('feedback-title')), this.about, this.since, this.mark, this.general, this.list,
      el('p', { class: 'actions' }, el('button', { type: 'button', class: 'quiet', click: () => void this.remove() }, say('feedback-remove'))));
    byId('report-title').after(this.root);
    onFeedback.add((notebook) => void this.heard(notebook));
    this.show(book.current());
  }

  /** @param {View} view */
  show(view) {
    if (this.desk !== this.book.desk) {
      this.desk = this.book.desk;
      this.put(undefined, undefined);
      void this.load();
    }
    if (this.said) this.lay(this.said, view);
  }

  /** Reads what is kept of the open notebook. */
  async load() {
    const { desk } = this.book;
    try {
      const kept = await keptFeedback(this.keeper.id);
      const said = kept && await reader.ask('read_feedback', kept.name, kept.text);
      if (desk === this.book.desk) this.put(kept, said);
    } catch (error) {
      toast(messageOf(error));
    }
  }

  /** Something else is said of a notebook now. @param {string} notebook */
  async heard(notebook) {
    if (notebook !== this.keeper.id) return;
    const before = this.kept;
    await this.load();
    if (!this.said) return;
    reveal(this.root);
    this.root.scrollIntoView({ block: 'nearest' });
    this.root.focus({ preventScroll: true });
    if (!before || before.text === this.kept?.text) toast(say('feedback-opened', { n: this.said.comments.length }));
    else this.offerBack(say('feedback-replaced'), before);
  }

  /** @param {Kept} kept @param {Feedback | undefined} said */
  put(kept, said) {
    for (const box of this.boxes) box.remove();
    [this.kept, this.said] = [kept, said];
    this.boxes = said?.comments.map((comment) => new CommentBox(comment, said.from)) ?? [];
    this.list.replaceChildren(...this.boxes.map(({ line }) => line));
    setHidden(this.root, !said);
    if (said) this.lay(said, this.book.current());
  }

  /** @param {Feedback} said @param {View} view */
  lay(said, view) {
    const { of: { entries }, from, at, mark, general } = said;
    setText(this.about, say('feedback-about', { from: from || say('feedback-teacher'), date: dated(at, { dateStyle: 'long' }) || at, n: entries }));
    const since = this.book.desk.length() - entries;
    setText(this.since, since > 0 ? say('feedback-since', { n: since }) : '');
    setText(this.mark, mark.trim() && say('feedback-mark', { mark }));
    setText(this.general, general);
    for (const part of [this.since, this.mark, this.general]) setHidden(part, part.textContent === '');
    behindHelp(this.root);
    for (const box of this.boxes) box.show(view);
  }

  async remove() {
    const { kept } = this;
    if (!kept) return;
    await keepFeedback(this.keeper.id, '', '');
    this.offerBack(say('feedback-removed'), kept);
  }

  /** Tells what was done, and offers to take it back. @param {string} text @param {NonNullable<Kept>} before */
  offerBack(text, before) {
    const { id } = this.keeper;
    toast(text, { label: say('strip-undo'), run: () => void keepFeedback(id, before.text, before.name) });
  }
}

/** A comment: beside what it is about, and as a line that leads there. */
class CommentBox {
  /** @param {Comment} comment @param {string} from */
  constructor({ place, text }, from) {
    this.place = place;
    const words = el('span', { class: 'typed', dir: 'auto' }, text);
    this.root = el('div', { class: 'said', role: 'note' }, el('strong', {}, from || say('feedback-teacher')), ' ', words);
    this.shell = 'row' in place ? el('tr', { role: 'row', class: 'below' }, el('td', { role: 'gridcell', class: 'told' }, this.root)) : this.root;
    this.way = el('a', { href: '#feedback', click: (/** @type {Event} */ event) => {
      event.preventDefault();
      reveal(this.root);
      this.root.scrollIntoView({ block: 'center' });
    } });
    this.line = el('li', {}, this.way, ' ', words.cloneNode(true));
  }

  /** @param {View} view */
  show(view) {
    setText(this.way, placeName(this.place, view));
    if (!this.shell.isConnected) putAt(this.place, this.shell);
    behindHelp(this.shell);
    // What leads nowhere is no link.
    if (this.shell.isConnected) this.way.setAttribute('href', '#feedback');
    else this.way.removeAttribute('href');
  }

  remove() {
    this.shell.remove();
  }
}

/** Puts behind the help that belongs to a title, which may have come since. @param {HTMLElement} node */
function behindHelp(node) {
  const how = node.nextElementSibling;
  if (how?.matches('details.how')) how.after(node);
}

/** Puts a comment beside a place, if it is there. @param {Place} place @param {HTMLElement} node */
function putAt(place, node) {
  if ('row' in place) document.getElementById(`row-${place.row}`)?.append(node);
  else if ('task' in place) document.getElementById(`task-${place.task}-box`)?.append(node);
  else if (place.section === 'aim' || place.section === 'method' || place.section === 'discussion') {
    byId(`bench-${place.section}`).closest('.field')?.lastElementChild?.append(node);
  } else byId(`${place.section}-title`).after(node);
}
