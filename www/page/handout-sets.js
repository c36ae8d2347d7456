/**
 * One data set for each student: hand-outs of this notebook, each with readings, photographs or traces of its own from a
 * simulated copy of the bench, and the key that tells what is really so in each. What they are drawn from is in the key alone,
 * and forgotten here; no file of a student's is kept here either.
 */
import { randomDigits } from './chance.js';
import { core, messageOf } from './core.js';
import { download, el, setHidden, setText } from './dom.js';
import { plain, Radios, TextField } from './field.js';
import { keptFile } from './file-store.js';
import { safeName } from './files.js';
import { layerOf } from './handout-layer.js';
import { toast } from './toast.js';
import { flushAll } from './typing.js';
import { each, say, worded } from './words.js';
import { reader, WorkerSlot } from './worker-slot.js';

/** @import { Book } from './book.js' */
/** @import { DataSet, Desk } from './slope_of_light.js' */
/** @import { DecimalMark, Edit, Evidence, Message, Piece, PlannedPosition, RowTruth, SetForm, StoredFile, View } from './types.js' */
/** @import { AllOf } from './words.js' */
/** @import { TakenFile } from './evidence-types.js' */
/** @import { KeySet } from './worker-types.js' */
/** @typedef {{number: number, name: string}} Student the name is empty where it is not known */
/** What all files of a student are made of. @typedef {{form: SetForm, secret: string, salt: string}} Draw the salt is empty where the result starts open */
/** @typedef {{edit: Edit, file: TakenFile}} TakenRow what gives a row its picture or traces, and the file of it */
/** What is the same for every student. @typedef {{desk: Desk, view: View, photo: Photo | undefined}} Teacher */
/** A photograph of the set-up, with its bytes. @typedef {{stored: StoredFile, bytes: Uint8Array<ArrayBuffer>}} Photo */

/** The most data sets that are made at once. */
const MOST = 500;
const FORMS = /** @type {const} */ (['typed', 'photographs', 'traces']);
/** @typedef {AllOf<SetForm, typeof FORMS>} AllForms */
/** What was drawn, and is fixed: of pictures and traces, which they are. @type {Record<SetForm, Piece[]>} */
const DRAWN = {
  typed: ['positions', 'time_bases', 'readings'],
  photographs: ['positions', 'time_bases', 'evidence'],
  traces: ['positions', 'time_bases', 'evidence'],
};
/** The grid of a picture on which none is marked yet; no grid has this number. */
const NO_GRID = 0;
/** Takes pictures and traces. A picture takes much room: it is let go when none has been taken for so long, ms. */
const bench = new WorkerSlot(5000);

export class DataSets {
  /** @param {Book} book @param {() => boolean} sealed whether the results start sealed */
  constructor(book, sealed) {
    this.book = book;
    this.sealed = sealed;
    this.text = '';
    /** @type {SetForm} */
    this.form = 'typed';
    this.desk = book.desk;
    /** Whether what is being made is to end. */
    this.isStopped = false;
    /** What was made last, and which of it was taken. @type {{name: string, zip: Blob, key: string, lacksPhoto: boolean, zipTaken: boolean, keyTaken: boolean} | undefined} */
    this.made = undefined;
    this.names = new TextField({ id: 'sets-names', label: say('sets-names'), lines: 5 }, (text) => {
      this.text = text;
      this.tell(null);
      this.forget();
    });
    this.forms = new Radios({ name: 'sets-form', legend: say('sets-form'), options: each(FORMS, (form) => say(`sets-forms-${form}`)) },
      (/** @type {SetForm} */ form) => {
        this.form = form;
        this.forget();
      });
    this.forms.show(this.form);
    this.button = el('button', { type: 'button', id: 'sets-make', click: () => this.make() }, say('sets-make'));
    // What is announced: that it begins, and how it ended. How far it is, the bar shows.
    this.state = el('p', { id: 'sets-state', role: 'status' });
    this.progress = el('progress', { id: 'sets-progress', 'aria-labelledby': this.state.id, hidden: true });
    this.stop = el('button', { type: 'button', id: 'sets-stop', hidden: true, click: () => {
      this.isStopped = true;
    } }, say('stop'));
    this.files = el('p', { class: 'actions', hidden: true },
      el('button', { type: 'button', id: 'sets-take', class: 'main', click: () => this.takeSets() }, say('sets-take')),
      el('button', { type: 'button', id: 'sets-take-key', click: () => this.made && takeKey(this.made) }, say('sets-take-key')));
    window.addEventListener('beforeunload', (event) => {
      if (this.made && owesKey(this.made)) event.preventDefault();
    });
    this.root = el('fieldset', { class: 'group' }, el('legend', {}, say('sets-title')), el('p', { class: 'hint' }, say('sets-hint')),
      el('p', { class: 'hint' }, say('sets-protects')), this.forms.root, this.names.root,
      el('p', { class: 'actions' }, this.button, this.stop), this.state, this.progress, this.files);
  }

  /** What was made belongs to the notebook and the names that it was made of. */
  show() {
    if (this.desk !== this.book.desk) this.forget();
    this.desk = this.book.desk;
  }

  forget() {
    const { made } = this;
    if (made && owesKey(made)) toast(say('sets-key-left'), { label: say('sets-take-key'), run: () => takeKey(made) });
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
    if (this.book.desk.plan().positions.some(({ problems }) => problems.some(({ column }) => matters(column, this.form)))) {
      this.refuse(say('sets-position'));
      return;
    }
    this.begin(students.length);
    const { text, form, book: { desk } } = this;
    const isSealed = this.sealed();
    try {
      const made = await this.makeFor(students, isSealed);
      // To other names, choices or another notebook than it was made of it does not belong.
      if (text === this.text && form === this.form && isSealed === this.sealed() && desk === this.book.desk) {
        this.made = made;
        setHidden(this.files, !made);
        const told = made ? say('sets-made', { n: students.length }) : say('sets-stopped');
        setText(this.state, made?.lacksPhoto ? `${told} ${say('sets-no-photo')}` : told);
      }
    } catch (error) {
      this.refuse(messageOf(error));
    }
    setHidden(this.progress, true);
    setHidden(this.stop, true);
    this.button.disabled = false;
  }

  /** @param {number} sets how many are to be made */
  begin(sets) {
    this.isStopped = false;
    this.button.disabled = true;
    setText(this.state, say('sets-making', { n: sets }));
    this.progress.max = sets;
    this.progress.value = 0;
    setHidden(this.progress, false);
    setHidden(this.stop, false);
  }

  /** @param {Student[]} students @param {boolean} isSealed @returns {Promise<DataSets['made']>} nothing where it was stopped */
  async makeFor(students, isSealed) {
    const { form } = this;
    const view = this.book.current();
    const desk = core.Desk.open(this.book.desk.text());
    try {
      const title = desk.title() || say('untitled');
      const photo = await photoOf(view);
      const seed = randomDigits(32);
      /** @type {KeySet[]} */
      const sets = [];
      // What lies in this page and in the worker is bounded by what one student gets: all that was packed before is with the
      // browser as parts of a file, which it may lay on the disk.
      /** @type {Blob[]} */
      const parts = [];
      await reader.ask('pack_begin');
      for (const student of students) {
        const secret = await reader.ask('set_secret', seed, student.number);
        const salt = isSealed ? (await reader.ask('digest', `${secret}\nseal`)).slice(0, 32) : '';
        const made = await dataSet({ desk, view, photo }, student, { form, secret, salt }, (share) => {
          this.progress.value = sets.length + share;
          return !this.isStopped;
        });
        if (!made) return undefined;
        const { number, name } = student;
        const file = `${fileName(student, students.length)}.${made.isBundle ? 'zip' : 'json'}`;
        parts.push(new Blob([await reader.ask('pack_entry', file, made.bytes)]));
        sets.push({ number, name, file, digest: await reader.ask('digest', made.layer), truth: made.truth });
      }
      parts.push(new Blob([await reader.ask('pack_end')]));
      const key = await reader.ask('write_key', { title, seed, sets });
      return { name: safeName(title, 60), zip: new Blob(parts), key, lacksPhoto: view.photo !== null && !photo, zipTaken: false, keyTaken: false };
    } finally {
      desk.free();
    }
  }

  takeSets() {
    const { made } = this;
    if (!made) return;
    made.zipTaken = true;
    download(made.zip, 'application/zip', `${made.name}-${safeName(say('sets-file'), 20)}.zip`);
  }
}

/** Whether data sets were taken without the key to them, which is nowhere else. @param {NonNullable<DataSets['made']>} made */
function owesKey({ zipTaken, keyTaken }) {
  return zipTaken && !keyTaken;
}

/** @param {NonNullable<DataSets['made']>} made */
function takeKey(made) {
  made.keyTaken = true;
  download(made.key, 'application/json', `${made.name}-${safeName(say('sets-key-file'), 20)}.json`);
}

/**
 * A data set as a hand-out: its file, its teacher's layer, and what is really so in it. Nothing where it is to end.
 * @param {Teacher} teacher
 * @param {Student} student
 * @param {Draw} draw
 * @param {(share: number) => boolean} goesOn told which share is done; whether to go on
 */
async function dataSet({ desk, view, photo }, student, draw, goesOn) {
  // The time of the last change, as of any hand-out.
  const { at = '' } = JSON.parse(desk.entries(desk.length() - 1)[0] ?? '{}');
  const drawn = desk.data_set(positionsOf(desk, draw.form), draw.secret, draw.form);
  const set = core.Desk.blank();
  try {
    const taken = await takenOf(drawn, draw, view.decimal_mark, goesOn);
    if (!taken) return undefined;
    /** @type {{together: Edit[]}} */
    const { together } = JSON.parse(drawn.edit());
    const [task = 0] = desk.new_numbers(1);
    const setUp = photo ? [/** @type {Edit} */ ({ set_photo: photo.stored })] : [];
    const edits = [...together, ...setUp, ...taken.map(({ edit }) => edit), ...prepared(view, student, draw.form, task)];
    set.replay(edits.map((edit) => JSON.stringify({ at, edit })));
    set.hand_out(draw.salt);
    const [, t0, ...errors] = drawn.truth();
    const told = errors.map(({ name, value }) => say('sets-error', { name: worded(name), value: worded(value) }));
    const truth = { t0: worded(t0?.value), errors: told };
    const contents = new Map(taken.map(({ file: { sha256, bytes } }) => [sha256, bytes]));
    if (photo) contents.set(photo.stored.sha256, photo.bytes);
    return { bytes: await fileOf(set, contents), isBundle: contents.size > 0, layer: layerOf(set, set.length()), truth };
  } finally {
    drawn.free();
    set.free();
  }
}

/**
 * The pictures or traces of all rows, one after the other. Nothing where it is to end.
 * @param {DataSet} drawn
 * @param {Draw} draw
 * @param {DecimalMark} mark
 * @param {(share: number) => boolean} goesOn
 * @returns {Promise<TakenRow[] | undefined>}
 */
async function takenOf(drawn, { form, secret }, mark, goesOn) {
  if (form === 'typed') return goesOn(0) ? [] : undefined;
  const rows = drawn.rows();
  /** @type {TakenRow[]} */
  const taken = [];
  for (const so of rows) {
    if (!goesOn(taken.length / rows.length)) return undefined;
    taken.push(await (form === 'traces' ? recorded(so, secret, mark) : photographed(so, secret)));
  }
  return taken;
}

/** @param {RowTruth} so @param {string} secret @param {DecimalMark} mark @returns {Promise<TakenRow>} */
async function recorded(so, secret, mark) {
  const file = await bench.ask('traces_of', secret, so, mark);
  return withEvidence(so, file, { traces: { files: [stored(so, file, 'csv')], delays: [] } });
}

/** @param {RowTruth} so @param {string} secret @returns {Promise<TakenRow>} */
async function photographed(so, secret) {
  const file = await bench.ask('photograph_of', secret, so);
  const { width, height } = file;
  return withEvidence(so, file, { picture: { file: stored(so, file, 'jpg'), width, height, grid: NO_GRID, a: [], b: [] } });
}

/** @param {RowTruth} so @param {TakenFile} file @param {Evidence} evidence @returns {TakenRow} */
function withEvidence({ row }, file, evidence) {
  return { edit: { set_evidence: { row, evidence } }, file };
}

/** A file as the notebook keeps hold of it: its name is the row's number. @param {RowTruth} so @param {TakenFile} file @param {string} ending */
function stored({ row }, { bytes, sha256 }, ending) {
  return { sha256, name: `${String(row).padStart(2, '0')}.${ending}`, bytes: bytes.length };
}

/**
 * The photograph of the set-up; nothing where there is none, or its file is not kept here.
 * @param {View} view
 * @returns {Promise<Photo | undefined>}
 */
async function photoOf({ photo }) {
  const kept = photo ? await keptFile(photo.sha256).catch(() => undefined) : undefined;
  const bytes = await kept?.blob.arrayBuffer().catch(() => undefined);
  return photo && bytes ? { stored: photo, bytes: new Uint8Array(bytes) } : undefined;
}

/** Whether what can't be read in a column of the plan is needed: traces have no time base. @param {string} column @param {SetForm} form */
function matters(column, form) {
  return form !== 'traces' || column !== 'time_base';
}

/**
 * The planned positions, without what can't be read and is not needed.
 * @param {Desk} desk
 * @param {SetForm} form
 * @returns {PlannedPosition[]}
 */
function positionsOf(desk, form) {
  return desk.plan().positions.map(({ typed, problems }) => (
    problems.some(({ column }) => !matters(column, form)) ? { ...typed, time_base: '' } : typed));
}

/**
 * What a student gets: the notebook alone, or a bundle of it with its files.
 * @param {Desk} set
 * @param {Map<string, Uint8Array<ArrayBuffer>>} contents of the files, by their SHA-256
 */
async function fileOf(set, contents) {
  const notebook = /** @type {Uint8Array<ArrayBuffer>} */ (new TextEncoder().encode(set.text()));
  if (contents.size === 0) return notebook;
  const files = set.files().flatMap(([place, { sha256 }]) => {
    const bytes = contents.get(sha256);
    return bytes ? [{ place, bytes }] : [];
  });
  return reader.ask('pack', ['notebook.json', ...files.map(({ place }) => place)], [notebook, ...files.map(({ bytes }) => bytes)]);
}

/**
 * What the teacher prepared, with what was drawn fixed, and for whom it was.
 * @param {View} view
 * @param {Student} student
 * @param {SetForm} form
 * @param {number} task a number for the text that says so
 * @returns {Edit[]}
 */
function prepared({ result: { basis, reason }, handout: { fixed, needed, tasks } }, { number, name }, form, task) {
  const note = say(`sets-notes-${form}`, { who: name || say('sets-number', { number: String(number) }) });
  return [
    { set_claim: { basis, reason } },
    ...needed.map((piece) => /** @type {Edit} */ ({ set_piece: [piece, 'needed'] })),
    ...[...fixed, ...DRAWN[form]].map((piece) => /** @type {Edit} */ ({ set_piece: [piece, 'fixed'] })),
    // What is read off a picture or a trace is the student's work.
    ...(form === 'typed' ? [] : /** @type {Edit[]} */ ([{ set_piece: ['readings', 'needed'] }])),
    ...tasks.map(({ id, at, asks, text }) => /** @type {Edit} */ ({ set_task: [id, at, asks, text] })),
    { set_task: [task, 'readings', 'nothing', note] },
    ...(name ? /** @type {Edit[]} */ ([{ set_piece: ['people', 'fixed'] }, { set_bench: { field: 'people', text: name } }]) : []),
  ];
}

/** What a student's file is called, without its ending. @param {Student} student @param {number} all how many there are */
function fileName({ number, name }, all) {
  return `${String(number).padStart(String(all).length, '0')}${name && '_'}${inFileName(name)}`;
}

/** A name as a part of a file's name: what file systems refuse becomes a hyphen, and no letter is changed. @param {string} name */
function inFileName(name) {
  const kept = name.normalize('NFC').replace(/[\\/:*?"<>|\p{Cc}\p{Cf}]+/gu, '-');
  return [...kept].slice(0, 40).join('').replace(/[. ]+$/u, '');
}
