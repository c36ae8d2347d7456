/**
 * One data set for each student: hand-outs of this notebook, each with readings of its own from a simulated copy of the bench,
 * and the key that tells what is really so in each. What they are drawn from is in the key alone, and forgotten here.
 */
import { core, messageOf } from './core.js';
import { download, el, setHidden, setText } from './dom.js';
import { plain, TextField } from './field.js';
import { safeName } from './files.js';
import { layerOf } from './handout-layer.js';
import { flushAll } from './typing.js';
import { say, worded } from './words.js';
import { reader } from './worker-slot.js';

/** @import { Book } from './book.js' */
/** @import { Desk } from './slope_of_light.js' */
/** @import { Edit, Message, Piece, View } from './types.js' */
/** @import { KeySet } from './worker-types.js' */
/** @typedef {{number: number, name: string}} Student the name is empty where it is not known */

/** The most data sets that are made at once. */
const MOST = 500;
/** What was drawn, and is fixed. @type {Piece[]} */
const DRAWN = ['positions', 'time_bases', 'readings'];

export class DataSets {
  /** @param {Book} book @param {() => boolean} sealed whether the results start sealed */
  constructor(book, sealed) {
    this.book = book;
    this.sealed = sealed;
    this.text = '';
    this.desk = book.desk;
    /** What was made last. @type {{name: string, zip: Uint8Array<ArrayBuffer>, key: string} | undefined} */
    this.made = undefined;
    this.names = new TextField({ id: 'sets-names', label: say('sets-names'), lines: 5 }, (text) => {
      this.text = text;
      this.tell(null);
      this.forget();
    });
    this.button = el('button', { type: 'button', id: 'sets-make', click: () => this.make() }, say('sets-make'));
    // What is announced: that it begins, and how it ended. How far it is, the bar shows.
    this.state = el('p', { id: 'sets-state', role: 'status' });
    this.progress = el('progress', { id: 'sets-progress', 'aria-labelledby': this.state.id, hidden: true });
    this.files = el('p', { class: 'actions', hidden: true },
      el('button', { type: 'button', id: 'sets-take', class: 'main', click: () => this.takeSets() }, say('sets-take')),
      el('button', { type: 'button', id: 'sets-take-key', click: () => this.takeKey() }, say('sets-take-key')));
    this.root = el('fieldset', { class: 'group' }, el('legend', {}, say('sets-title')), el('p', { class: 'hint' }, say('sets-hint')),
      el('p', { class: 'hint' }, say('sets-protects')), this.names.root, el('p', { class: 'actions' }, this.button), this.state, this.progress, this.files);
  }

  /** What was made belongs to the notebook and the names that it was made of. */
  show() {
    if (this.desk !== this.book.desk) this.forget();
    this.desk = this.book.desk;
  }

  forget() {
    this.made = undefined;
    setHidden(this.files, true);
    this.state.className = '';
    setText(this.state, '');
  }

  /** @param {string} why */
  refuse(why) {
    this.state.className = 'problem';
    setText(this.state, why);
  }

  /** Shows what was typed, and what is wrong with it. @param {Message | null} problem */
  tell(problem) {
    this.names.show(plain(this.text, problem));
  }

  /** For whom, by names or by their number; nobody where that can't be told. @returns {Student[]} */
  students() {
    const names = this.text.split('\n').map((name) => name.trim()).filter((name) => name !== '');
    const [only = ''] = names;
    // What begins with a digit and stands alone is how many, or meant so.
    const isCount = names.length < 2 && /^\d|^$/u.test(only);
    const { value, problem } = this.book.desk.typed_whole_number(isCount ? only : String(names.length), 1, MOST);
    this.tell(problem);
    return Array.from({ length: value ?? 0 }, (_, place) => ({ number: place + 1, name: isCount ? '' : names[place] ?? '' }));
  }

  async make() {
    flushAll();
    this.forget();
    const students = this.students();
    if (students.length === 0) return;
    // Left out, it would be a reading less than was meant.
    if (this.book.desk.plan().positions.some(({ problems }) => problems.length > 0)) {
      this.refuse(say('sets-position'));
      return;
    }
    this.button.disabled = true;
    setText(this.state, say('sets-making', { n: students.length }));
    this.progress.max = students.length;
    this.progress.value = 0;
    setHidden(this.progress, false);
    const { text, book: { desk } } = this;
    try {
      const made = await this.makeFor(students);
      // To other names or another notebook than it was made of it does not belong.
      if (text === this.text && desk === this.book.desk) {
        this.made = made;
        setHidden(this.files, false);
        setText(this.state, say('sets-made', { n: students.length }));
      }
    } catch (error) {
      this.refuse(messageOf(error));
    }
    setHidden(this.progress, true);
    this.button.disabled = false;
  }

  /** @param {Student[]} students */
  async makeFor(students) {
    const view = this.book.current();
    const desk = core.Desk.open(this.book.desk.text());
    try {
      const title = desk.title() || say('untitled');
      const seed = hex(crypto.getRandomValues(new Uint8Array(32)));
      /** @type {KeySet[]} */
      const sets = [];
      const texts = [];
      for (const { number, name } of students) {
        this.progress.value = sets.length;
        const secret = await reader.ask('set_secret', seed, number);
        const salt = this.sealed() ? (await reader.ask('digest', `${secret}\nseal`)).slice(0, 32) : '';
        const { text, layer, truth } = dataSet(desk, view, { number, name }, secret, salt);
        const file = `${String(number).padStart(String(students.length).length, '0')}${name && '_'}${inFileName(name)}.json`;
        sets.push({ number, name, file, digest: await reader.ask('digest', layer), truth });
        texts.push(/** @type {Uint8Array<ArrayBuffer>} */ (new TextEncoder().encode(text)));
      }
      const zip = await reader.ask('pack', sets.map(({ file }) => file), texts);
      return { name: safeName(title, 60), zip, key: await reader.ask('write_key', { title, seed, sets }) };
    } finally {
      desk.free();
    }
  }

  takeSets() {
    if (this.made) download(this.made.zip, 'application/zip', `${this.made.name}-${safeName(say('sets-file'), 20)}.zip`);
  }

  takeKey() {
    if (this.made) download(this.made.key, 'application/json', `${this.made.name}-${safeName(say('sets-key-file'), 20)}.json`);
  }
}

/**
 * A rehearsal from a secret as a hand-out, its teacher's layer, and what is really so in it.
 * @param {Desk} teacher
 * @param {View} view of the same
 * @param {Student} student
 * @param {string} secret
 * @param {string} salt empty where the result starts open
 */
function dataSet(teacher, view, student, secret, salt) {
  // The time of the last change, as of any hand-out.
  const { at = '' } = JSON.parse(teacher.entries(teacher.length() - 1)[0] ?? '{}');
  const planned = teacher.plan().positions.map(({ typed }) => typed);
  const run = teacher.rehearsal(teacher.title(), planned, student.number, secret, at);
  const set = core.Desk.blank();
  try {
    /** @type {{edit: {together: Edit[]}}} */
    const { edit: { together } } = JSON.parse(run.entries(0)[0] ?? '');
    const [task = 0] = teacher.new_numbers(1);
    const edits = [...together.filter((edit) => !staysBehind(edit)), ...prepared(view, student, task)];
    set.replay(edits.map((edit) => JSON.stringify({ at, edit })));
    set.hand_out(salt);
    const [, t0, ...errors] = run.truth(secret);
    const told = errors.map(({ name, value }) => say('sets-error', { name: worded(name), value: worded(value) }));
    return { text: set.text(), layer: layerOf(set, set.length()), truth: { t0: worded(t0?.value), errors: told } };
  } finally {
    run.free();
    set.free();
  }
}

/**
 * The seed is the key's alone, and who prepared the hand-out measured nothing in it.
 * @param {Edit} edit
 */
function staysBehind(edit) {
  return typeof edit === 'object' && ('set_rehearsal' in edit || ('set_bench' in edit && edit.set_bench.field === 'people'));
}

/**
 * What the teacher prepared, with what was drawn fixed, and for whom it was.
 * @param {View} view
 * @param {Student} student
 * @param {number} task a number for the text that says so
 * @returns {Edit[]}
 */
function prepared({ result: { basis, reason }, handout: { fixed, needed, tasks } }, { number, name }, task) {
  const note = say('sets-note', { who: name || say('sets-number', { number: String(number) }) });
  return [
    { set_claim: { basis, reason } },
    ...needed.map((piece) => /** @type {Edit} */ ({ set_piece: [piece, 'needed'] })),
    ...[...fixed, ...DRAWN].map((piece) => /** @type {Edit} */ ({ set_piece: [piece, 'fixed'] })),
    ...tasks.map(({ id, at, asks, text }) => /** @type {Edit} */ ({ set_task: [id, at, asks, text] })),
    { set_task: [task, 'readings', 'nothing', note] },
    ...(name ? /** @type {Edit[]} */ ([{ set_piece: ['people', 'fixed'] }, { set_bench: { field: 'people', text: name } }]) : []),
  ];
}

/** @param {Uint8Array} bytes */
function hex(bytes) {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** A name as a part of a file's name: what file systems refuse becomes a hyphen, and no letter is changed. @param {string} name */
function inFileName(name) {
  const kept = name.normalize('NFC').replace(/[\\/:*?"<>|\p{Cc}\p{Cf}]+/gu, '-');
  return [...kept].slice(0, 40).join('').replace(/[. ]+$/u, '');
}
