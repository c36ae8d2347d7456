/**
 * A section whose script comes once the page is open. Its place is there from the start; what is asked of it before its
 * script has come waits, and is done then.
 */
import { messageOf } from './core.js';
import { byId, el, setHidden, setText } from './dom.js';
import { isUp, reveal } from './leaves.js';
import { say } from './words.js';
import { toast } from './toast.js';

/** @import { Book } from './book.js' */
/** @import { Desk } from './slope_of_light.js' */
/** @import { Part } from './book.js' */

/** @typedef {'cautions' | 'apparatus' | 'delays' | 'line' | 'uncertainty' | 'plan' | 'result' | 'report' | 'class'} SectionId */

/** @template {Part} T */
export class LateSection {
  /**
   * @param {Book} book
   * @param {SectionId} id of its place in the page
   * @param {() => Promise<T>} bring brings its script, and makes it
   * @param {() => unknown} again what trying again does
   */
  constructor(book, id, bring, again) {
    this.book = book;
    this.place = byId(id);
    this.name = say(`${id}-title`);
    this.bring = bring;
    /** @type {T | undefined} */
    this.part = undefined;
    this.loading = false;
    /** What was asked of it, and in which notebook. @type {{desk: Desk, work: (part: T) => void}[]} */
    this.waiting = [];
    this.state = el('p', { class: 'hint' });
    this.again = el('button', { type: 'button', click: again }, say('section-again'));
    this.box = el('div', { class: 'late', role: 'status' }, this.state, el('p', { class: 'actions' }, this.again));
    byId(`${id}-title`).after(this.box);
    this.say(say('section-loading'), false);
  }

  /** Brings it; where that fails, it says so in its place, and offers to try again. */
  async load() {
    if (this.part || this.loading) return;
    this.loading = true;
    this.say(say('section-loading'), false);
    try {
      this.part = await this.bring();
      this.book.add(this.part, () => isUp(this.place));
      this.book.current();
      this.book.drawParts(true);
      this.box.remove();
    } catch (error) {
      this.say(say('section-failed', { name: this.name, why: messageOf(error) }), true);
    }
    this.loading = false;
    if (this.part) this.doWhatWaits(this.part);
  }

  /**
   * Does something with the section, or has it wait.
   * @param {(part: T) => void} work
   */
  ask(work) {
    if (this.part) {
      work(this.part);
      return;
    }
    this.waiting.push({ desk: this.book.desk, work });
    reveal(this.place);
    this.place.scrollIntoView({ block: 'nearest' });
    void this.load();
  }

  /** @param {T} part */
  doWhatWaits(part) {
    const here = this.waiting.filter(({ desk }) => desk === this.book.desk);
    if (here.length < this.waiting.length) toast(say('section-other-notebook', { name: this.name }));
    this.waiting = [];
    for (const { work } of here) work(part);
  }

  /** @param {string} text @param {boolean} failed */
  say(text, failed) {
    setText(this.state, text);
    this.state.className = failed ? 'refusal' : 'hint';
    setHidden(this.again, !failed);
  }
}
