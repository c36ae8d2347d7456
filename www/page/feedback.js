/**
 * What teachers say of the open notebook: each comment beside what it is about, all of them with the mark at the head of the
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
/** @import { KeptComments } from './feedback-kept.js' */
/** @import { Comment, CommentPlace, Feedback } from './worker-types.js' */

export class FeedbackBeside {
  /** @param {Book} book @param {Keeper} keeper */
  constructor(book, keeper) {
    this.book = book;
    this.keeper = keeper;
    /** The desk of which something is said, or may be. @type {Book['desk'] | undefined} */
    this.desk = undefined;
    /** The files that are kept of it, what was said last first. @type {KeptComments[]} */
    this.kept = [];
    /** What each of them says. @type {Said[]} */
    this.all = [];
    this.list = el('div');
    this.root = el('div', { id: 'feedback', class: 'start', tabindex: '-1', role: 'group', 'aria-labelledby': 'feedback-title', hidden: true },
      el('h3', { id: 'feedback-title' }, say('feedback-title')), this.list);
    byId('report-title').after(this.root);
    behindHelp(this.root);
    onFeedback.add((notebook, before) => void this.heard(notebook, before));
    this.show(book.current());
  }

  /** @param {View} view */
  show(view) {
    if (this.desk !== this.book.desk) {
      this.desk = this.book.desk;
      this.put([], []);
      void this.load();
    }
    this.lay(view);
  }

  /** Reads what is kept of the open notebook. */
  async load() {
    const { desk } = this.book;
    try {
      const kept = await keptFeedback(this.keeper.id);
      const all = await Promise.all(kept.map(({ name, text }) => reader.ask('read_feedback', name, text)));
      if (desk === this.book.desk) this.put(kept, all);
    } catch (error) {
      toast(messageOf(error));
    }
  }

  /** Something else is said of a notebook now. @param {string} notebook @param {KeptComments[]} before */
  async heard(notebook, before) {
    if (notebook !== this.keeper.id) return;
    await this.load();
    // Another notebook may have been opened meanwhile.
    if (notebook !== this.keeper.id) return;
    const [last] = this.all;
    // Where some were removed, nothing is said that was not there.
    if (!last || this.kept.every(({ text }) => before.some((one) => one.text === text)) && before.length > this.kept.length) return;
    reveal(this.root);
    this.root.scrollIntoView({ block: 'nearest' });
    this.root.focus({ preventScroll: true });
    const { from, comments } = last.feedback;
    const isGone = before.some(({ text }) => !this.kept.some((kept) => kept.text === text));
    if (isGone) this.offerBack(notebook, say('feedback-replaced', { from: from || say('feedback-teacher') }), before, this.kept);
    else toast(say('feedback-opened', { n: comments.length }));
  }

  /** @param {KeptComments[]} kept @param {(Feedback | undefined)[]} all what each says */
  put(kept, all) {
    for (const said of this.all) said.remove();
    this.kept = kept;
    this.all = kept.flatMap((file, place) => {
      const feedback = all[place];
      return feedback ? [new Said(feedback, () => void this.remove(file))] : [];
    });
    this.list.replaceChildren(...this.all.map(({ root }) => root));
    setHidden(this.root, this.all.length === 0);
    this.lay(this.book.current());
  }

  /** @param {View} view */
  lay(view) {
    if (this.all.length === 0) return;
    behindHelp(this.root);
    for (const said of this.all) said.lay(view, this.book.desk.length());
  }

  /** @param {KeptComments} file */
  async remove(file) {
    const { kept, keeper: { id } } = this;
    const left = (/** @type {KeptComments[]} */ all) => without(all, [file]);
    if (await this.keep(id, left)) this.offerBack(id, say('feedback-removed'), kept, left(kept));
  }

  /** Keeps other files than there were; says so where it can't. @param {string} notebook @param {(kept: KeptComments[]) => KeptComments[]} change */
  async keep(notebook, change) {
    try {
      await keepFeedback(notebook, change);
      return true;
    } catch (error) {
      toast(messageOf(error));
      return false;
    }
  }

  /**
   * Tells what was done, and offers to take it back. What another window keeps since stays.
   * @param {string} notebook
   * @param {string} text
   * @param {KeptComments[]} before
   * @param {KeptComments[]} after
   */
  offerBack(notebook, text, before, after) {
    toast(text, { label: say('strip-undo'), run: () => void this.keep(notebook, (kept) => [...before, ...without(kept, [...before, ...after])]) });
  }
}

/** Files but for some, told apart by what they say. @param {KeptComments[]} files @param {KeptComments[]} some */
function without(files, some) {
  return files.filter(({ text }) => !some.some((one) => one.text === text));
}

/** What one file says. */
class Said {
  /** @param {Feedback} feedback @param {() => void} remove */
  constructor(feedback, remove) {
    this.feedback = feedback;
    this.about = el('p', { class: 'hint' });
    this.since = el('p', { class: 'hint' });
    this.mark = el('p', { class: 'lead', dir: 'auto' });
    this.general = el('p', { class: 'typed', dir: 'auto' });
    this.boxes = feedback.comments.map((comment) => new CommentBox(comment, feedback.from));
    this.root = el('div', {}, this.about, this.since, this.mark, this.general, el('ul', {}, ...this.boxes.map(({ line }) => line)),
      el('p', { class: 'actions' }, el('button', { type: 'button', class: 'quiet', click: remove }, say('feedback-remove'))));
  }

  /** @param {View} view @param {number} length of the log now */
  lay(view, length) {
    const { of: { entries }, from, at, mark, general } = this.feedback;
    setText(this.about, say('feedback-about', { from: from || say('feedback-teacher'), date: dated(at, { dateStyle: 'long' }) || at, n: entries }));
    setText(this.since, length > entries ? say('feedback-since', { n: length - entries }) : '');
    setText(this.mark, mark.trim() && say('feedback-mark', { mark }));
    setText(this.general, general);
    for (const part of [this.since, this.mark, this.general]) setHidden(part, part.textContent === '');
    for (const box of this.boxes) box.show(view);
  }

  remove() {
    for (const box of this.boxes) box.remove();
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

/** Puts a comment beside a place, if it is there. @param {CommentPlace} place @param {HTMLElement} node */
function putAt(place, node) {
  if ('row' in place) document.getElementById(`row-${place.row}`)?.append(node);
  else if ('task' in place) document.getElementById(`task-${place.task}-box`)?.append(node);
  else if (place.section === 'aim' || place.section === 'method' || place.section === 'discussion') {
    byId(`bench-${place.section}`).closest('.field')?.lastElementChild?.append(node);
  } else byId(`${place.section}-title`).after(node);
}
