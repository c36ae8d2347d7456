/**
 * Photographs of the screen: taking them in, one open at a time, its marks proposed, accepted and moved.
 * The notebook's log is the only state; what is held here is what nobody has accepted yet.
 */
import { keptFile } from './attic.js';
import { byId, el, setAttribute, setHidden, setOptional, setText } from './dom.js';
import { TextField } from './field.js';
import { Figures } from './figures.js';
import { Board, nameOf } from './picture-board.js';
import { isPicture, takeIn } from './picture-intake.js';
import { isMarked, pictureOf, Proposer, seriesFor, takenSheet } from './picture-series.js';
import { words } from './strings.js';
import { tell } from './tell.js';
import { textBox } from './typing.js';

/** @import { Book } from './book.js' */
/** @import { Evidence } from './evidence.js' */
/** @import { Place } from './picture-sheet.js' */
/** @import { Cell, Edit, RowView, View } from './types.js' */

/** Cells of a row that stand beside its picture. */
const FIELDS = /** @type {const} */ (['rail', 'reading', 'time_base']);
/** Those that a row takes from the one before while they are empty. */
const INHERITED = /** @type {const} */ (['rail', 'time_base']);

export class Pictures {
  /** @param {Book} book @param {Evidence} evidence */
  constructor(book, evidence) {
    this.book = book;
    this.evidence = evidence;
    this.proposer = new Proposer(evidence);
    /** The row whose picture is open. @type {number | undefined} */
    this.row = undefined;
    /** Counts what was opened, so that what comes late is told apart. */
    this.turn = 0;
    this.desk = book.desk;
    this.inSight = false;
    this.busy = false;
    /** The picture on the board. @type {{sha256: string, bitmap: ImageBitmap | undefined} | undefined} */
    this.seen = undefined;
    this.build();
    new IntersectionObserver((entries) => {
      this.inSight = entries.some(({ isIntersecting }) => isIntersecting);
      if (this.inSight) book.redraw();
    }).observe(byId('delays'));
    this.listen();
  }

  build() {
    const t = words.pictures;
    const { book } = this;
    const size = (/** @type {string} */ id, /** @type {string} */ value) => el('input',
      { type: 'number', id, min: '1', max: '100', step: '1', value, change: () => this.resized() });
    this.input = el('input', {
      type: 'file', id: 'picture-files', accept: 'image/*', multiple: true,
      change: () => {
        const files = [...this.input.files ?? []];
        this.input.value = '';
        this.take(files, undefined);
      },
    });
    this.columns = size('grid-columns', '10');
    this.rows = size('grid-rows', '8');
    const field = (/** @type {HTMLInputElement} */ box, /** @type {string} */ label) => el('div', { class: 'field' },
      el('label', { for: box.id }, label), el('span', { class: 'box' }, box));
    this.status = el('p', { role: 'status', class: 'plot-words' });
    this.refused = el('ul', { class: 'problems', id: 'picture-refused' });
    this.choice = el('select', { id: 'picture-choice', change: () => this.open(Number(this.choice.value)) });
    this.count = el('p', { class: 'plot-words', id: 'picture-count' });
    this.board = new Board({
      set: (place) => this.set(place),
      accept: () => this.accept(),
      drop: (place) => this.drop(place),
      moved: () => this.tellState(),
    });
    this.said = el('div', { class: 'picture-said', role: 'status' });
    this.problem = el('p', { class: 'problem', id: 'picture-problem', hidden: true });
    /** @type {[typeof FIELDS[number], TextField][]} */
    this.fields = FIELDS.map((cell) => [cell, new TextField({ id: `picture-${cell}`, label: t.fields[cell], prose: cell === 'rail' },
      (text) => { if (this.row !== undefined) book.edit({ set_cell: { row: this.row, cell, text } }); })]);
    const button = (/** @type {string} */ id, /** @type {string} */ text, /** @type {() => void} */ press, kind = '') => el(
      'button', { type: 'button', id, class: kind, click: press }, text);
    this.acceptButton = button('picture-accept', t.accept, () => this.accept(), 'main');
    this.againA = button('picture-again-a', t.markAgain(t.marks.a), () => this.again('a'));
    this.againB = button('picture-again-b', t.markAgain(t.marks.b), () => this.again('b'));
    this.dropButton = button('picture-drop-mark', t.dropMark, () => this.drop(this.board.active));
    this.own = button('picture-own', t.ownCorners, () => this.ownCorners());
    this.off = button('picture-off', t.takeOff, () => this.takeOff(), 'quiet');
    const list = el('dl', { class: 'figures', id: 'picture-figures' });
    this.figures = new Figures(list);
    this.work = el('div', { class: 'picture-work', hidden: true },
      el('div', {}, this.board.root, el('p', { class: 'hint' }, t.how)),
      el('div', { class: 'picture-side' }, this.said, this.problem,
        el('div', { class: 'actions' }, this.acceptButton),
        el('div', { class: 'fields' }, ...this.fields.map(([, { root }]) => root)), list,
        el('div', { class: 'actions' }, this.againA, this.againB, this.dropButton, this.own, this.off)));
    this.chooser = el('div', { class: 'picture-chooser', hidden: true },
      el('div', { class: 'field' }, el('label', { for: this.choice.id }, t.choose), el('span', { class: 'box' }, this.choice)),
      this.count);
    const written = (/** @type {(Node | string)[]} */ ...parts) => el('fieldset', { class: 'bare', role: 'none', 'data-written': true },
      ...parts);
    byId('pictures').append(el('h3', {}, t.title), el('p', { class: 'hint' }, t.hint),
      written(el('div', { class: 'fields' }, field(this.input, t.add), field(this.columns, t.columns), field(this.rows, t.rows))),
      this.status, this.refused, this.chooser, written(this.work));
    this.input.closest('.field')?.classList.add('picture-files');
  }

  listen() {
    document.addEventListener('dropped', (event) => {
      const { files, target } = /** @type {CustomEvent<{files: File[], target: EventTarget | null}>} */ (event).detail;
      const pictures = files.filter((file) => isPicture(file));
      for (const file of pictures) files.splice(files.indexOf(file), 1);
      if (pictures.length > 0) this.take(pictures, rowAt(target));
    });
    document.addEventListener('paste', (event) => {
      const pictures = [...event.clipboardData?.files ?? []].filter((file) => isPicture(file));
      if (pictures.length === 0) return;
      event.preventDefault();
      this.take(pictures, rowAt(textBox(event.target) ?? null));
    });
    document.addEventListener('evidence', (event) => {
      const row = /** @type {CustomEvent<number>} */ (event).detail;
      if (!pictureOf(this.book, row)) return;
      byId('pictures').scrollIntoView();
      this.inSight = true;
      this.open(row).then(() => this.acceptButton.focus({ preventScroll: true }));
    });
  }

  /**
   * Takes pictures in, and opens the first.
   * @param {File[]} files
   * @param {number | undefined} into
   */
  async take(files, into) {
    if (files.length === 0 || this.book.readOnly) return;
    const t = words.pictures;
    byId('pictures').scrollIntoView({ block: 'nearest' });
    const { rows, refused } = await takeIn(this.book, this.evidence, files, into, (done, all) => {
      setText(this.status, done < all ? t.progress(done, all) : '');
    });
    setText(this.status, rows.length > 0 ? t.added(rows.length) : '');
    this.refused.replaceChildren(...refused.map((why) => el('li', {}, why)));
    const [first] = rows;
    if (first === undefined) return;
    this.book.draw();
    const open = this.row !== undefined && this.board.sheet?.isOpen();
    if (!open) await this.open(first);
    this.acceptButton.focus({ preventScroll: true });
  }

  /** @param {View} view */
  show(view) {
    const t = words.pictures;
    const held = view.rows.filter(({ evidence }) => evidence === 'picture');
    if (this.desk !== this.book.desk) {
      this.desk = this.book.desk;
      this.close();
      this.refused.replaceChildren();
      setText(this.status, '');
    }
    setHidden(this.chooser, held.length === 0);
    if (!this.inSight && this.row === undefined) return;
    const all = held.flatMap((row) => {
      const evidence = pictureOf(this.book, row.id);
      return evidence ? [{ row, evidence, marked: isMarked(evidence.picture) }] : [];
    });
    const options = all.map(({ row, evidence, marked }) => ({
      value: String(row.id), text: t.option(row.number, evidence.picture.file.name, marked),
    }));
    offer(this.choice, options);
    setText(this.count, t.left(all.filter(({ marked }) => marked).length, all.length));
    const here = all.find(({ row }) => row.id === this.row);
    if (here) {
      this.choice.value = String(here.row.id);
      this.refresh(here.row, here.evidence);
    } else {
      this.close();
      const next = all.find(({ marked }) => !marked) ?? all[0];
      if (next && this.inSight) this.open(next.row.id);
    }
  }

  /** Closes what is open. */
  close() {
    this.turn += 1;
    this.row = undefined;
    this.seen?.bitmap?.close();
    this.seen = undefined;
    this.board.clear();
    setHidden(this.work, true);
  }

  /** @param {number} row */
  async open(row) {
    const { book } = this;
    const evidence = pictureOf(book, row);
    if (!evidence) return;
    const { picture } = evidence;
    this.turn += 1;
    const { turn } = this;
    this.row = row;
    this.busy = true;
    this.choice.value = String(row);
    this.say([words.pictures.loading]);
    const kept = await keptFile(picture.file.sha256);
    const bitmap = kept && await decoded(kept.blob);
    if (turn !== this.turn) {
      bitmap?.close();
      return;
    }
    this.seen?.bitmap?.close();
    this.seen = { sha256: picture.file.sha256, bitmap };
    setHidden(this.work, false);
    await this.lay(row, kept?.blob, turn);
  }

  /**
   * Lays the marks on the board: those taken, or proposed ones.
   * @param {number} row
   * @param {Blob | undefined} blob
   * @param {number} turn
   */
  async lay(row, blob, turn) {
    const t = words.pictures;
    const evidence = pictureOf(this.book, row);
    if (!evidence) return;
    const { picture } = evidence;
    const { name } = picture.file;
    const bitmap = this.seen?.bitmap;
    const broken = blob && !bitmap ? [t.broken(name)] : [];
    const taken = takenSheet(row, evidence);
    if (taken) {
      this.busy = false;
      this.board.show(taken, bitmap);
      this.say(blob ? broken : [t.missing(name)]);
    } else if (!blob || !bitmap) {
      this.busy = false;
      this.board.clear();
      this.say(blob ? broken : [t.missingMarks(name)]);
    } else {
      this.busy = true;
      this.say([t.loading]);
      const size = { columns: whole(this.columns, 10), rows: whole(this.rows, 8) };
      const { sheet, said } = await this.proposer.propose(row, picture, blob, size, seriesFor(this.book, picture));
      if (turn !== this.turn) return;
      this.busy = false;
      this.board.show(sheet, bitmap);
      this.say(said);
    }
    this.refreshNow();
  }

  refreshNow() {
    const row = this.book.current().rows.find(({ id }) => id === this.row);
    const evidence = row && pictureOf(this.book, row.id);
    if (row && evidence) this.refresh(row, evidence);
  }

  /**
   * Follows the notebook: fields, figures, and marks that were moved, undone or redone.
   * @param {RowView} row
   * @param {NonNullable<ReturnType<typeof pictureOf>>} evidence
   */
  refresh(row, evidence) {
    const t = words.pictures;
    const marked = isMarked(evidence.picture);
    for (const [cell, field] of this.fields) {
      const standIn = this.inherited(row, cell);
      field.show(standIn ? { ...row.cells[cell], default: standIn } : row.cells[cell]);
    }
    this.figures.show(marked ? evidence.figures : []);
    if (this.seen && this.seen.sha256 !== evidence.picture.file.sha256) {
      this.open(row.id);
      return;
    }
    const { sheet } = this.board;
    if (!this.busy && !this.board.drag && sheet) {
      const taken = takenSheet(row.id, evidence);
      const was = sheet.marks.some(({ kind, state }) => kind === 'a' && state === 'taken');
      if (taken) {
        const fresh = was && sheet.row === row.id ? sheet.marks.filter(({ kind, state }) => (kind === 'a' || kind === 'b') && state !== 'taken') : [];
        taken.marks.push(...fresh.map((mark) => ({ ...mark, index: taken.spots(mark.kind).length })));
        this.board.show(taken, this.seen?.bitmap);
        if (!was) this.say([]);
      } else if (was) {
        // Undone: the marks are proposed again.
        void this.open(row.id);
        return;
      }
    }
    const users = this.book.view.delays.grids.find(({ id }) => id === evidence.picture.grid)?.rows.length ?? 0;
    setOptional(this.problem, marked && evidence.problem ? evidence.problem : '');
    for (const node of [this.againA, this.againB]) setHidden(node, !marked);
    setHidden(this.own, !marked || users < 2);
    setAttribute(this.own, 'title', users > 1 ? t.shared(users) : undefined);
    this.tellState();
  }

  /**
   * What an empty cell of a row takes from the row before it.
   * @param {RowView} row
   * @param {Cell} cell
   */
  inherited(row, cell) {
    if (row.cells[cell].text !== '' || !INHERITED.some((name) => name === cell)) return '';
    const { rows } = this.book.view;
    const before = rows.slice(0, rows.findIndex(({ id }) => id === row.id)).reverse();
    return before.find(({ cells, state }) => state !== 'struck' && cells[cell].text !== '')?.cells[cell].text ?? '';
  }

  /** What can be done now. */
  tellState() {
    const { sheet, problem } = this.board;
    const t = words.pictures;
    const open = this.busy || (sheet?.hasOwnGrid() || sheet?.spots('a').length === 0 || this.isProposed());
    setText(this.acceptButton, open ? t.accept : t.next);
    setHidden(this.acceptButton, !open && this.nextOpen() === undefined);
    setAttribute(this.acceptButton, 'aria-disabled', this.busy ? 'true' : undefined);
    if (sheet && this.isProposed()) setOptional(this.problem, problem);
    const { kind } = this.board.active;
    const repeats = sheet?.spots(kind).length ?? 0;
    setHidden(this.dropButton, !(kind === 'a' || kind === 'b') || repeats < 2);
  }

  /** Whether the marks on the board are yet to be accepted. */
  isProposed() {
    const { sheet } = this.board;
    return sheet !== undefined && !sheet.marks.some(({ kind, state }) => kind === 'a' && state === 'taken');
  }

  /** @param {string[]} lines */
  say(lines) {
    this.said.replaceChildren(...lines.map((line) => el('p', {}, line)));
  }

  /** The next row whose picture is to be marked. */
  nextOpen() {
    const { rows } = this.book.view;
    const place = rows.findIndex(({ id }) => id === this.row);
    const order = [...rows.slice(place + 1), ...rows.slice(0, place + 1)];
    return order.find(({ id, evidence }) => {
      if (evidence !== 'picture' || id === this.row) return false;
      const found = pictureOf(this.book, id);
      return found !== undefined && !isMarked(found.picture);
    })?.id;
  }

  /** Takes the marks into the notebook, and opens the next picture. */
  async accept() {
    const t = words.pictures;
    const { book, row } = this;
    const { sheet, problem } = this.board;
    if (this.busy || row === undefined) return;
    const number = book.current().rows.find(({ id }) => id === row)?.number ?? 0;
    if (this.isProposed() && sheet) {
      const sought = sheet.sought();
      if (sought.length > 0) return tell(t.stillSought(sought.map((mark) => nameOf(mark)).join(', ')));
      if (problem) return tell(t.gridWrong(problem));
      if (sheet.gridId === 0) sheet.gridId = this.newGrid();
      const edits = [...this.takenFromBefore(row), ...(sheet.hasOwnGrid() ? [{ set_grid: sheet.grid() }] : []),
        { set_evidence: { row, evidence: { picture: sheet.edges() } } }];
      if (!book.edit({ together: edits })) return;
      for (const mark of sheet.marks) mark.state = 'taken';
      book.draw();
      setText(this.status, t.accepted(number));
    }
    const next = this.nextOpen();
    if (next === undefined) setText(this.status, t.allMarked);
    else await this.open(next);
    return undefined;
  }

  /** @param {number} row @returns {Edit[]} */
  takenFromBefore(row) {
    const view = this.book.view.rows.find(({ id }) => id === row);
    return INHERITED.flatMap((cell) => {
      const text = view && this.inherited(view, cell);
      return text ? [{ set_cell: { row, cell, text } }] : [];
    });
  }

  /** A number that no grid of this notebook has had. */
  newGrid() {
    return Math.max(this.book.newNumber(), ...this.book.view.delays.grids.map(({ id }) => id + 1));
  }

  /** A mark was let go: a mark of the notebook follows at once. @param {Place} place */
  set({ kind, index }) {
    const { book, row } = this;
    const { sheet } = this.board;
    const mark = sheet?.mark({ kind, index });
    if (!sheet || !mark || row === undefined || this.isProposed()) return;
    mark.state = 'taken';
    if (kind === 'corner' || kind === 'check') book.edit({ set_grid: sheet.grid() });
    else book.edit({ set_evidence: { row, evidence: { picture: this.settled() } } });
  }

  /** The picture with those marks of its edges that count. */
  settled() {
    const sheet = /** @type {NonNullable<Board['sheet']>} */ (this.board.sheet);
    const spots = (/** @type {'a' | 'b'} */ kind) => sheet.marks
      .filter((mark) => mark.kind === kind && mark.state === 'taken').map(({ at }) => at);
    return { ...sheet.picture, grid: sheet.gridId, a: spots('a'), b: spots('b') };
  }

  /** Offers one more mark of an edge; it counts once it was moved. @param {'a' | 'b'} kind */
  again(kind) {
    const { sheet } = this.board;
    if (!sheet || this.isProposed()) return;
    const waiting = sheet.marks.find((mark) => mark.kind === kind && mark.state !== 'taken');
    const index = waiting?.index ?? sheet.spots(kind).length;
    if (!waiting) {
      // Apart from the others, so that it is set anew and not left where they are.
      const [x, y] = sheet.spots(kind)[0] ?? [0, 0];
      sheet.marks.push({ kind, index, at: [x > 3000 ? x - 2500 : x + 2500, y], state: 'sought' });
    }
    this.say([words.pictures.moveFirst]);
    this.board.focus({ kind, index });
  }

  /** Removes a repeated mark. @param {Place} place */
  drop(place) {
    const { book, row } = this;
    const { sheet } = this.board;
    const mark = sheet?.mark(place);
    if (!sheet || !mark || row === undefined || this.isProposed()) return;
    if ((place.kind !== 'a' && place.kind !== 'b') || sheet.spots(place.kind).length < 2) return;
    sheet.marks = sheet.marks.filter((other) => other !== mark);
    if (mark.state === 'taken') book.edit({ set_evidence: { row, evidence: { picture: this.settled() } } });
    else this.board.redraw();
    this.board.focus({ kind: place.kind, index: 0 });
  }

  /** Gives the picture corner marks that serve no other. */
  ownCorners() {
    const { row } = this;
    const { sheet } = this.board;
    if (!sheet || row === undefined) return;
    const id = this.newGrid();
    this.book.edit({ together: [
      { set_grid: { ...sheet.grid(), id } },
      { set_evidence: { row, evidence: { picture: { ...this.settled(), grid: id } } } },
    ] });
  }

  takeOff() {
    const { row, book } = this;
    if (row === undefined) return;
    const number = book.current().rows.find(({ id }) => id === row)?.number ?? 0;
    if (!book.edit({ set_evidence: { row } })) return;
    tell(words.pictures.takenOff(number), { label: words.undo, run: () => book.undo() });
  }

  /** The size of the grid was changed: it is proposed anew, or the grid of the notebook follows. */
  resized() {
    const { sheet } = this.board;
    const { row, book } = this;
    if (!sheet || row === undefined) return;
    const [columns, rows] = [whole(this.columns, sheet.columns), whole(this.rows, sheet.rows)];
    if (this.isProposed()) void this.open(row);
    else book.edit({ set_grid: { ...sheet.grid(), columns, rows } });
  }
}

/** @param {HTMLInputElement} box @param {number} otherwise */
function whole(box, otherwise) {
  const { valueAsNumber: value } = box;
  return box.validity.valid && value >= 1 ? value : otherwise;
}

/** @param {Blob} blob */
async function decoded(blob) {
  try {
    return await createImageBitmap(blob);
  } catch {
    return undefined;
  }
}

/**
 * Puts options into a list, unless they are there already.
 * @param {HTMLSelectElement} list
 * @param {{value: string, text: string}[]} options
 */
function offer(list, options) {
  options.forEach(({ value, text }, index) => {
    const option = list.options[index] ?? list.appendChild(el('option'));
    if (option.value !== value) option.value = value;
    setText(option, text);
  });
  list.options.length = options.length;
}

/** The row of the readings in which something is. @param {EventTarget | null} target */
function rowAt(target) {
  const row = target instanceof Element ? target.closest('tbody')?.dataset.row : undefined;
  return row && row !== 'new' ? Number(row) : undefined;
}
