/**
 * What a teacher says of the notebooks of a class: held here for as long as the page is open, and taken away as one file for
 * each notebook. Such files, chosen again together with the notebooks, bring it back where they bear one's own name; what
 * bears another, or none, is shown beside it, until a person says that it is theirs.
 */
import { now } from './book.js';
import { chainOf } from './class-merged.js';
import { core, messageOf } from './core.js';
import { alike, download, el, setHidden, setText } from './dom.js';
import { isEmpty } from './feedback-places.js';
import { safeName } from './files.js';
import { handInName } from './hand-in-name.js';
import { toast } from './toast.js';
import { say } from './words.js';
import { reader } from './worker-slot.js';

/** @import { ClassEntry, Handed } from './class-pool.js' */
/** @import { Feedback, HandedNotebook } from './worker-types.js' */

export class ClassFeedback {
  /** @param {(handed: Handed) => void} changed told of each notebook of which something else is said now */
  constructor(changed) {
    this.changed = changed;
    /** @type {Map<Handed, Feedback>} */
    this.all = new Map();
    /** What others say of them, to be read. @type {Map<Handed, Feedback[]>} */
    this.others = new Map();
    /** Of which notebooks what is said is in no file. @type {Set<Handed>} */
    this.unsaved = new Set();
    /** Of which notebooks something was written here, beside what was read. @type {Set<Handed>} */
    this.written = new Set();
    /** What was read and has no place yet: it is of no notebook here, or what stands there is written on. @type {{one: Feedback, handed: Handed | undefined}[]} */
    this.waiting = [];
    this.from = el('input', { type: 'text', id: 'class-feedback-from', autocomplete: 'name', input: () => {
      for (const handed of this.all.keys()) this.unsaved.add(handed);
      this.tell();
    }, change: () => {
      // What bears no name is not anybody's who clears the field; a new name, or another spelling, is that of all one wrote.
      const name = this.from.value.trim();
      if (name !== '' && this.isRead(name)) this.beCalled(name);
    } });
    /** The names that may be one's own, and those who gave none. */
    this.names = el('p', { class: 'actions' });
    this.state = el('p', { class: 'hint', role: 'status' });
    this.button = el('button', { type: 'button', id: 'class-take-feedback', click: () => void this.takeAll() }, say('class-feedback-take'));
    this.root = el('fieldset', { class: 'group', id: 'class-feedback' }, el('legend', {}, say('class-feedback')),
      el('p', { class: 'hint' }, say('class-feedback-hint')),
      el('div', { class: 'field words' }, el('label', { for: 'class-feedback-from' }, say('class-feedback-from')), el('span', { class: 'box' }, this.from)), this.names,
      el('p', { class: 'actions' }, this.button), this.state);
    window.addEventListener('beforeunload', (event) => {
      if (this.unsaved.size > 0) event.preventDefault();
    });
    this.tell();
  }

  /** Those of whom something is said. */
  said() {
    return [...this.all].filter(([, feedback]) => !isEmpty(feedback));
  }

  /**
   * What is said of a notebook, to be written on; nothing where there is nothing in it.
   * @param {Handed} handed
   * @param {string} text of the notebook
   */
  async of(handed, text) {
    if (this.all.has(handed)) return this.all.get(handed);
    const of = await aboutText(text);
    // It may have been read from a file meanwhile.
    if (!of || this.all.has(handed)) return this.all.get(handed);
    const feedback = { of, from: '', at: '', general: '', mark: '', comments: [] };
    this.all.set(handed, feedback);
    return feedback;
  }

  /** Something else is said of a notebook now. @param {Handed} handed */
  write(handed) {
    this.unsaved.add(handed);
    this.written.add(handed);
    this.tell();
    this.changed(handed);
  }

  /**
   * Has what was read find its notebooks.
   * @param {Feedback[]} read
   * @param {ClassEntry[]} entries
   * @returns {Promise<number>} how many of those read now belong to none
   */
  async match(read, entries) {
    const waiting = [...this.waiting.map(({ one }) => one), ...read];
    this.waiting = [];
    for (const one of waiting) this.waiting.push({ one, handed: await this.notebookOf(one, entries) });
    this.placeWaiting();
    this.tell();
    return this.waiting.filter(({ one }) => read.includes(one)).length;
  }

  /** Has what waits take its place, by the name that one has now. */
  placeWaiting() {
    const name = this.from.value.trim();
    this.waiting = this.waiting.filter(({ one, handed }) => {
      const from = one.from.trim();
      return !handed || !this.place(handed, one, from !== '' && from === name);
    });
  }

  /**
   * Puts what was read where it belongs: one's own is to be written on, where nothing is written yet; any other is to be read, in
   * the place of what was said under its name before. Who gives no name may be anybody.
   * @param {Handed} handed
   * @param {Feedback} one
   * @param {boolean} isOwn
   * @returns {boolean} whether it has a place: what is written on already is kept
   */
  place(handed, one, isOwn) {
    if (isOwn) {
      const written = this.all.get(handed);
      if (written && !isEmpty(written)) return false;
      // In a notebook that is open, what stands here is written on, with comments that are empty still: all of it stays the same.
      this.all.set(handed, written ? Object.assign(written, one, { comments: [...written.comments, ...one.comments] }) : one);
      this.changed(handed);
      return true;
    }
    const from = one.from.trim();
    const isOther = (/** @type {Feedback} */ other) => !alike(other, one) && (from === '' || other.from.trim() !== from);
    this.others.set(handed, [...(this.others.get(handed) ?? []).filter(isOther), one]);
    this.changed(handed);
    return true;
  }

  /** The names under which something is to be read, an empty one where there is none. @returns {string[]} */
  namesOfOthers() {
    const names = new Set([...this.others.values()].flat().map(({ from }) => from.trim()));
    return [...names].filter((name) => name === '' || name !== this.from.value.trim()).sort();
  }

  /** Whether something is to be read under this name. @param {string} name */
  isRead(name) {
    return [...this.others.values()].flat().some(({ from }) => from.trim() === name);
  }

  /**
   * What was read under this name is one's own, and written on where nothing is written yet. Of several without a name for one
   * notebook none is: nobody can tell which.
   * @param {string} from
   */
  takeUp(from) {
    let doubtful = 0;
    for (const [handed, others] of this.others) {
      const [one, ...more] = others.filter((other) => other.from.trim() === from);
      if (more.length > 0) doubtful += 1;
      else if (one && this.place(handed, one, true)) this.others.set(handed, others.filter((other) => other !== one));
      this.changed(handed);
    }
    if (doubtful > 0) toast(say('class-feedback-doubtful', { n: doubtful }));
    this.placeWaiting();
    this.tell();
  }

  /**
   * A person says that one of the names that were read is theirs. What they took up under another one before was not: it is to be
   * read again, unless they wrote on it. Then it bears the new name, and they are told.
   * @param {string} name empty for those who gave none: one's own stays what it is
   */
  beCalled(name) {
    if (name !== '') {
      const before = this.from.value.trim();
      this.from.value = name;
      let renamed = 0;
      for (const [handed, feedback] of this.all) {
        const from = feedback.from.trim();
        if (this.written.has(handed) || ['', name].includes(from)) {
          if (!isEmpty(feedback) && !['', name].includes(from || before)) renamed += 1;
          continue;
        }
        this.all.delete(handed);
        this.unsaved.delete(handed);
        this.place(handed, feedback, false);
      }
      for (const handed of this.all.keys()) this.unsaved.add(handed);
      if (renamed > 0) toast(say('class-feedback-renamed', { from: name, n: renamed }));
    }
    this.takeUp(name);
  }

  /** The notebook of which something is said that is in a file. @param {Feedback} one @param {ClassEntry[]} entries */
  async notebookOf({ of }, entries) {
    for (const { handed, row } of entries) {
      if (row?.entries === of.entries && (await chainOf(handed)).has(of.digest)) return handed;
    }
    return undefined;
  }

  /** Of how many notebooks something was written here that is in no file. */
  unsavedWork() {
    return this.said().filter(([handed]) => this.unsaved.has(handed) && this.written.has(handed)).length;
  }

  clear() {
    this.all.clear();
    this.others.clear();
    this.unsaved.clear();
    this.written.clear();
    this.waiting = [];
    this.tell();
  }

  tell() {
    const n = this.said().length;
    const unsaved = this.said().filter(([handed]) => this.unsaved.has(handed)).length;
    const names = this.namesOfOthers();
    setHidden(this.names, names.length === 0);
    this.names.replaceChildren(...names.map((from) => el('button', { type: 'button', click: () => {
      this.beCalled(from);
      this.from.focus();
    } }, from === '' ? say('class-feedback-mine-unnamed') : say('class-feedback-mine', { from }))));
    this.button.disabled = n === 0;
    setHidden(this.state, n === 0);
    setText(this.state, say('class-feedback-state', { n, unsaved }));
  }

  /** Takes the file for one notebook away. @param {Handed} handed */
  async take(handed) {
    const feedback = this.all.get(handed);
    if (!feedback) return;
    try {
      // What is written while the file is made is not in it.
      this.unsaved.delete(handed);
      download(await this.fileFor(feedback), 'application/json', `${nameFor(feedback)}.json`);
    } catch (error) {
      this.unsaved.add(handed);
      toast(messageOf(error));
    }
    this.tell();
  }

  /** Takes the files for all away, in one zip. */
  async takeAll() {
    const said = this.said();
    try {
      /** @type {Map<string, string>} */
      const names = new Map();
      const contents = [];
      for (const [handed, feedback] of said) {
        this.unsaved.delete(handed);
        contents.push(/** @type {Uint8Array<ArrayBuffer>} */ (new TextEncoder().encode(await this.fileFor(feedback))));
        const name = nameFor(feedback);
        let free = name;
        // Where a file system makes no difference between capitals and small letters, they are unpacked side by side too.
        for (let n = 2; names.has(free.toLowerCase()); n += 1) free = `${name}-${n}`;
        names.set(free.toLowerCase(), `${free}.json`);
      }
      download(await reader.ask('pack', [...names.values()], contents), 'application/zip', `${safeName(say('class-feedback-file'), 40)}.zip`);
    } catch (error) {
      for (const [handed] of said) this.unsaved.add(handed);
      toast(messageOf(error));
    }
    this.tell();
  }

  /** @param {Feedback} feedback */
  fileFor(feedback) {
    const comments = feedback.comments.filter(({ text }) => text.trim() !== '');
    return reader.ask('write_feedback', { ...feedback, comments, from: this.from.value.trim(), at: now() });
  }
}

/** What a file that goes back is called, without its ending: as that which came, so that both sort alike. @param {Feedback} feedback */
function nameFor({ of: { group, student_number, people, date, title } }) {
  const who = [group, student_number, people, date];
  return `${handInName(...(who.some((part) => part.trim() !== '') ? who : [title]))}_${safeName(say('class-feedback-file'), 40)}`;
}

/** Which notebook it is, by its text; none where there is nothing in it. @param {string} text @returns {Promise<HandedNotebook | undefined>} */
async function aboutText(text) {
  const desk = core.Desk.open(text);
  try {
    const entries = desk.entries(0);
    const digest = (await reader.ask('chain', entries)).at(-1);
    if (digest === undefined) return undefined;
    const { title, bench: { people, student_number, group, date } } = desk.news().view;
    return {
      entries: entries.length, digest, title, people: people.text, student_number: student_number.text, group: group.text, date: date.text,
    };
  } finally {
    desk.free();
  }
}
