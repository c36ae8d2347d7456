/**
 * Photographs of the screen: taking them in, one open at a time, its marks proposed, accepted and moved.
 * The notebook's log is the only state; what is held here is what nobody has accepted yet.
 */
import { keptFile } from './file-store.js';
import { byId, el, setAttribute, setHidden, setOptional, setText } from './dom.js';
import { reveal } from './leaves.js';
import { markName } from './picture-board.js';
import { Checks } from './picture-checks.js';
import { Ends } from './picture-ends.js';
import { decoded } from './picture-lens.js';
import { gridMarks, isEnd } from './picture-sheet.js';
import { questionFor, takeIn } from './picture-intake.js';
import { Chooser, IntakeBox, Workplace } from './picture-place.js';
import { isMarked, markedNear, pictureOf, Proposer, seriesFor, takenSheet } from './picture-series.js';
import { inWords, say, tell } from './words.js';
import { toast } from './toast.js';
import { undo } from './undone.js';

/** @import { Book } from './book.js' */
/** @import { EvidenceWorkers } from './evidence.js' */
/** @import { Action } from './picture-place.js' */
/** @import { Mark, MarkKey } from './picture-sheet.js' */
/** @import { Cell, Edit, RowView, View } from './types.js' */

/** How long the picture has been out of sight when its pixels are let go, ms. */
const REST = 5000;

export class Pictures {
  /** @param {Book} book @param {EvidenceWorkers} evidence */
  constructor(book, evidence) {
    this.book = book;
    this.evidence = evidence;
    this.proposer = new Proposer(evidence);
    /** The row whose picture is open. @type {number | undefined} */
    this.row = undefined;
    /** Counts what was opened, so that what comes late is told apart. */
    this.turn = 0;
    this.desk = book.desk;
    /** The rows with pictures, as last shown. @type {{id: number, marked: boolean}[]} */
    this.held = [];
    this.inSight = false;
    this.busy = false;
    /** The picture on the board; `rests` while its pixels are let go. @type {{sha256: string, blob: Blob | undefined, bitmap: ImageBitmap | undefined, rests?: boolean} | undefined} */
    this.seen = undefined;
    this.timer = 0;
    this.intake = new IntakeBox(book, {
      take: (files, into) => void this.take(files, into), resize: () => this.resized(),
    });
    this.chooser = new Chooser((row) => void this.open(row));
    this.place = new Workplace({
      press: (action) => this.press(action),
      set: (was) => this.set(was),
      drop: (place) => this.drop(place),
      moved: () => this.tellState(),
      write: (value) => book.desk.number_text(value),
      levels: (grid, heights) => book.desk.lines_of_levels(grid, heights).lines,
      type: (cell, text) => {
        if (this.row !== undefined) book.edit({ set_cell: { row: this.row, cell, text } });
      },
    });
    this.board = this.place.board;
    this.checks = new Checks(book, evidence, this.board, {
      blob: () => this.seen?.blob, isProposed: () => this.isProposed(), say: (text) => this.place.say([text]),
    });
    const open = { sheet: () => (this.isProposed() ? undefined : this.sheet()), blob: () => this.seen?.blob };
    this.ends = new Ends(book, this.board, this.proposer, open);
    this.place.ends.append(this.ends.root);
    const written = (/** @type {Node} */ part) => el('fieldset', { class: 'bare', role: 'none', 'data-written': true }, part);
    byId('pictures').append(el('h3', {}, say('pictures-title')), el('p', { class: 'hint' }, say('pictures-hint')), written(this.intake.fields),
      this.intake.status, this.intake.refused, this.chooser.root, written(this.place.root));
    new IntersectionObserver((entries) => {
      this.inSight = entries.at(-1)?.isIntersecting ?? false;
      clearTimeout(this.timer);
      if (this.inSight) {
        book.redraw();
        void this.wake();
      } else {
        this.timer = window.setTimeout(() => this.rest(), REST);
      }
    }).observe(byId('delays'));
  }

  /** @param {Action} action */
  press(action) {
    const does = {
      accept: () => this.accept(), exchange: () => this.exchange(), againA: () => this.again('a'), againB: () => this.again('b'),
      drop: () => this.drop(this.board.active), own: () => this.ownCorners(), off: () => this.takeOff(),
    };
    void does[action]();
  }

  /** Goes to the picture of a row. @param {number} row */
  goTo(row) {
    reveal(byId('pictures'));
    byId('pictures').scrollIntoView();
    this.inSight = true;
    this.open(row).then(() => this.place.accept.focus({ preventScroll: true }));
  }

  /**
   * Takes pictures in, and opens the first; videos are looked through for frames first.
   * @param {File[]} chosen
   * @param {number | undefined} into the row for the first of them
   * @param {boolean} [isSure] that row is to get it whatever it has
   */
  async take(chosen, into, isSure = false) {
    const files = this.book.readOnly ? [] : this.intake.frames.setAside(chosen, into);
    if (files.length === 0) return;
    const question = into === undefined || isSure ? '' : await questionFor(this.book, this.evidence, files, into);
    if (question) {
      toast(question, { label: say('pictures-use-it'), run: () => void this.take(files, into, true) });
      return;
    }
    reveal(byId('pictures'));
    byId('pictures').scrollIntoView({ block: 'nearest' });
    const { rows, refused, last } = await takeIn(this.book, this.evidence, files, into, (done, all) => {
      this.intake.say(done < all ? say('pictures-progress', { n: done + 1, all }) : '');
    });
    const added = [say('pictures-added', { n: rows.length }), ...(last ? [] : [say('only-here')])];
    this.intake.say(inWords(rows.length > 0 ? added : []));
    this.intake.refuse(refused);
    const [first] = rows;
    if (first === undefined) return;
    this.book.draw();
    const open = this.row !== undefined && this.board.sheet?.isOpen();
    if (!open) await this.open(first);
    this.place.accept.focus({ preventScroll: true });
  }

  /** @param {View} view */
  show(view) {
    const held = view.rows.filter(({ evidence }) => evidence === 'picture');
    if (this.desk !== this.book.desk) {
      this.desk = this.book.desk;
      this.held = [];
      this.proposer.left.clear();
      this.close();
      this.intake.clear();
    }
    setHidden(this.chooser.root, held.length === 0);
    // Looked at again when it comes in sight: every edit anywhere leads here.
    if (!this.inSight) return;
    const all = held.flatMap((row) => {
      const evidence = pictureOf(this.book, row.id);
      return evidence ? [{ row, evidence, marked: isMarked(evidence.picture) }] : [];
    });
    this.held = all.map(({ row, marked }) => ({ id: row.id, marked }));
    const options = all.map(({ row, evidence, marked }) => ({
      value: String(row.id),
      text: say(marked ? 'pictures-option' : 'pictures-option-unmarked', { n: row.number, name: evidence.picture.file.name }),
    }));
    this.chooser.show(options, say('pictures-left', { marked: all.filter(({ marked }) => marked).length, all: all.length }));
    const here = all.find(({ row }) => row.id === this.row);
    if (here) {
      this.chooser.choose(here.row.id);
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
    this.busy = false;
    this.row = undefined;
    this.seen?.bitmap?.close();
    this.seen = undefined;
    this.board.clear();
    setHidden(this.place.root, true);
  }

  /** Lets the pixels of a picture go that is out of sight; what is drawn of it stays. */
  rest() {
    const { seen } = this;
    if (this.busy) {
      this.timer = window.setTimeout(() => this.rest(), REST);
    } else if (seen?.bitmap) {
      seen.bitmap.close();
      seen.bitmap = undefined;
      seen.rests = true;
      this.board.bitmap = undefined;
    }
  }

  /** Has them again. */
  async wake() {
    const { seen } = this;
    if (!seen?.rests) return;
    seen.rests = false;
    const kept = await keptFile(seen.sha256).catch(() => undefined);
    const bitmap = kept && await decoded(kept.blob);
    if (seen !== this.seen) {
      bitmap?.close();
      return;
    }
    seen.bitmap = bitmap;
    if (this.board.sheet) this.board.show(this.board.sheet, bitmap);
  }

  /** @param {number} row */
  async open(row) {
    const { book } = this;
    const evidence = pictureOf(book, row);
    if (!evidence) return;
    const { picture } = evidence;
    if (this.isProposed()) this.proposer.keep(this.board.sheet, row);
    this.turn += 1;
    const { turn } = this;
    this.row = row;
    this.busy = true;
    this.chooser.choose(row);
    this.place.say([say('pictures-loading')]);
    const kept = await keptFile(picture.file.sha256).catch(() => undefined);
    const bitmap = kept && await decoded(kept.blob);
    if (turn !== this.turn) {
      bitmap?.close();
      return;
    }
    this.seen?.bitmap?.close();
    this.seen = { sha256: picture.file.sha256, blob: kept?.blob, bitmap };
    setHidden(this.place.root, false);
    await this.lay(row, kept?.blob, turn);
  }

  /**
   * Lays the marks on the board: those taken, or proposed ones.
   * @param {number} row
   * @param {Blob | undefined} blob
   * @param {number} turn
   */
  async lay(row, blob, turn) {
    const evidence = pictureOf(this.book, row);
    if (!evidence) return;
    const { picture, picture: { file: { name } } } = evidence;
    const bitmap = this.seen?.bitmap;
    const broken = blob && !bitmap ? [say('pictures-broken', { name })] : [];
    const taken = takenSheet(row, evidence);
    if (taken) {
      this.busy = false;
      this.board.show(taken, bitmap);
      this.intake.showSize(taken);
      this.place.say(blob ? broken : [say('pictures-missing', { name })]);
    } else if (!blob || !bitmap) {
      this.busy = false;
      this.board.clear();
      this.place.say(blob ? broken : [say('pictures-missing-marks', { name })]);
    } else {
      this.busy = true;
      this.place.say([say('pictures-loading')]);
      const { sheet, said } = await this.proposer.propose(
        row, picture, blob, this.intake.size(), seriesFor(this.book, picture), markedNear(this.book, row));
      if (turn !== this.turn) return;
      this.busy = false;
      this.board.show(sheet, bitmap);
      this.intake.showSize(sheet);
      this.place.say(said);
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
    const marked = isMarked(evidence.picture);
    for (const { cell, field } of this.place.fields) {
      const standIn = row.cells[cell].text === '' && evidence.habits[cell];
      field.show(standIn ? { ...row.cells[cell], default: standIn } : row.cells[cell]);
    }
    this.place.figures.show(marked ? evidence.figures : []);
    this.ends.show(evidence.picture, marked);
    if (!this.busy && !this.follow(row.id, evidence)) {
      void this.open(row.id);
      return;
    }
    const users = this.book.view.delays.grids.find(({ id }) => id === evidence.picture.grid)?.rows.length ?? 0;
    setOptional(this.place.problem, marked ? tell(evidence.problem) : '');
    setOptional(this.place.lacks, marked && row.state === 'incomplete' && !evidence.problem ? tell(row.lacks) : '');
    for (const node of [this.place.againA, this.place.againB]) setHidden(node, !marked);
    setHidden(this.place.own, !marked || users < 2);
    setOptional(this.place.shared, marked && users > 1 ? say('pictures-shared', { n: users }) : '');
    this.tellState();
  }

  /**
   * Lets the board follow the notebook.
   * @param {number} row
   * @param {NonNullable<ReturnType<typeof pictureOf>>} evidence
   * @returns {boolean} whether it can; else the picture is to be opened anew
   */
  follow(row, evidence) {
    if (this.seen && this.seen.sha256 !== evidence.picture.file.sha256) return false;
    const { sheet } = this.board;
    if (!sheet || this.board.drag) return true;
    const taken = takenSheet(row, evidence);
    if (taken) {
      if (this.isProposed()) this.place.say([]);
      else if (sheet.row === row) taken.addRepeats(sheet);
      this.board.show(taken, this.seen?.bitmap);
      return true;
    }
    // Undone: the marks are proposed again.
    if (!this.isProposed()) return false;
    if (sheet.gridId === 0) return true;
    // The corner marks are those of other rows, and may have been moved there.
    const series = seriesFor(this.book, evidence.picture);
    if (series?.grid.id !== sheet.gridId) return false;
    sheet.lay(gridMarks(series.grid));
    return true;
  }

  /** What can be done now. */
  tellState() {
    const { sheet, problem } = this.board;
    const open = this.busy || (sheet?.hasOwnGrid() || sheet?.spots('a').length === 0 || this.isProposed());
    setText(this.place.accept, open ? say('pictures-accept') : say('pictures-next'));
    setHidden(this.place.accept, !open && this.nextOpen() === undefined);
    setAttribute(this.place.accept, 'aria-disabled', this.busy ? 'true' : undefined);
    const isProposed = sheet !== undefined && this.isProposed();
    const doubted = isProposed ? sheet.doubted().length : 0;
    setOptional(this.place.doubt, doubted > 0 ? say('pictures-doubted', { n: doubted }) : '');
    setHidden(this.place.exchange, !isProposed || this.busy);
    if (isProposed) setOptional(this.place.problem, tell(problem));
    this.ends.tellState();
    const { kind } = this.board.active;
    const repeats = sheet?.spots(kind).length ?? 0;
    setHidden(this.place.drop, !(kind === 'a' || kind === 'b') || repeats < 2);
  }

  /** Whether the marks on the board are yet to be accepted. */
  isProposed() {
    const { sheet } = this.board;
    return sheet !== undefined && !sheet.marks.some(({ kind, state }) => kind === 'a' && state === 'taken');
  }

  /** The marks of the open row, once they are there. */
  sheet() {
    const { sheet } = this.board;
    return sheet?.row === this.row && !this.busy ? sheet : undefined;
  }

  /** The next row whose picture is to be marked. */
  nextOpen() {
    const { held } = this;
    const place = held.findIndex(({ id }) => id === this.row);
    const order = [...held.slice(place + 1), ...held.slice(0, place + 1)];
    return order.find(({ id, marked }) => !marked && id !== this.row)?.id;
  }

  /** Takes the marks into the notebook, and opens the next picture. */
  async accept() {
    const { book, row } = this;
    if (this.busy || row === undefined) return;
    if (this.sheet()?.openEnd()) return this.ends.confirm();
    if (this.isProposed()) await this.checks.following;
    if (this.busy || row !== this.row) return;
    const { sheet, problem } = this.board;
    let said = /** @type {string[]} */ ([]);
    if (this.isProposed() && sheet) {
      const sought = sheet.sought();
      if (sought.length > 0) return toast(say('pictures-still-sought', { names: { all: sought.map((mark) => markName(mark)) } }));
      if (problem) return toast(say('pictures-grid-wrong', { why: problem }));
      const [doubted] = sheet.doubted();
      if (doubted) return this.lookAt(doubted);
      if (sheet.gridId === 0) sheet.gridId = this.book.newNumber();
      const edits = [...this.takenFromBefore(row), ...(sheet.hasOwnGrid() ? [{ set_grid: sheet.grid() }] : []),
        { set_evidence: { row, evidence: { picture: sheet.edges() } } }];
      if (!book.edit({ together: edits })) return;
      for (const mark of sheet.marks) mark.state = 'taken';
      this.place.say([]);
      book.draw();
      const { number = 0, state, lacks = null } = book.current().rows.find(({ id }) => id === row) ?? {};
      said = [state === 'incomplete'
        ? say('pictures-accepted-unused', { n: number, lacks: tell(lacks) }) : say('pictures-accepted', { n: number })];
      this.intake.say(inWords(said));
    }
    const next = this.nextOpen();
    if (next === undefined) this.intake.say(inWords([...said, say('pictures-all-marked')]));
    else await this.open(next);
    return undefined;
  }

  /** Shows a mark that is in doubt through the lens. @param {Mark} mark */
  lookAt(mark) {
    mark.state = 'looked';
    this.board.focus(mark);
    for (const part of [this.place.accept, this.board.root]) part.scrollIntoView({ block: 'nearest' });
  }

  /** Gives the proposed edges each other's names. */
  exchange() {
    const sheet = this.sheet();
    if (!sheet || !this.isProposed()) return;
    sheet.exchange();
    this.board.trail = [];
    this.board.redraw();
  }

  /** What the row's empty cells go on with from the rows before. @param {number} row @returns {Edit[]} */
  takenFromBefore(row) {
    const cells = this.book.view.rows.find(({ id }) => id === row)?.cells;
    const habits = Object.entries(pictureOf(this.book, row)?.habits ?? {});
    return habits.flatMap(([name, text]) => {
      const cell = /** @type {Cell} */ (name);
      return cells?.[cell].text === '' ? [{ set_cell: { row, cell, text } }] : [];
    });
  }

  /** A mark was let go: a mark of the notebook follows at once, and checks go with the corners. @param {Mark} was */
  set(was) {
    const { book, row } = this;
    const { kind } = was;
    const sheet = this.sheet();
    const mark = sheet?.mark(was);
    if (!sheet || !mark || row === undefined) return;
    if (this.isProposed() && mark.state !== 'taken') {
      if (kind === 'corner') this.checks.find(sheet);
      return;
    }
    if (!isEnd(kind)) mark.state = 'taken';
    if (isEnd(kind)) {
      this.ends.settle(sheet);
    } else if (kind === 'corner' || kind === 'check') {
      const grid = sheet.grid();
      book.edit({ set_grid: grid });
      if (kind === 'corner') this.checks.follow(sheet, grid, was);
    } else {
      book.edit({ set_evidence: { row, evidence: { picture: sheet.settled() } } });
    }
  }

  /** Offers one more mark of an edge; it counts once it was moved. @param {'a' | 'b'} kind */
  again(kind) {
    const sheet = this.sheet();
    if (!sheet || this.isProposed()) return;
    const waiting = sheet.marks.find((mark) => mark.kind === kind && mark.state !== 'taken');
    const index = waiting?.index ?? sheet.spots(kind).length;
    if (!waiting) {
      // Apart from the others, so that it is set anew and not left where they are.
      const [x, y] = sheet.spots(kind)[0] ?? [0, 0];
      sheet.marks.push({ kind, index, at: [x > 3000 ? x - 2500 : x + 2500, y], state: 'sought' });
    }
    this.place.say([say('pictures-move-first')]);
    this.board.focus({ kind, index });
  }

  /** Removes a repeated mark. @param {MarkKey} place */
  drop(place) {
    const { book, row } = this;
    const sheet = this.sheet();
    const mark = sheet?.mark(place);
    if (!sheet || !mark || row === undefined || this.isProposed()) return;
    if ((place.kind !== 'a' && place.kind !== 'b') || sheet.spots(place.kind).length < 2) return;
    sheet.remove(mark);
    if (mark.state === 'taken') book.edit({ set_evidence: { row, evidence: { picture: sheet.settled() } } });
    else this.board.redraw();
    this.board.focus({ kind: place.kind, index: 0 });
  }

  /** Gives the picture corner marks that serve no other. */
  ownCorners() {
    const { row } = this;
    const sheet = this.sheet();
    if (!sheet || row === undefined) return;
    const id = this.book.newNumber();
    this.book.edit({ together: [
      { set_grid: { ...sheet.grid(), id } },
      { set_evidence: { row, evidence: { picture: { ...sheet.settled(), grid: id } } } },
    ] });
  }

  takeOff() {
    const { row, book } = this;
    if (row === undefined) return;
    const number = book.current().rows.find(({ id }) => id === row)?.number ?? 0;
    if (!book.edit({ set_evidence: { row } })) return;
    toast(say('pictures-taken-off', { n: number }), { label: say('strip-undo'), run: () => undo(book) });
  }

  /** The size of the grid was changed: it is proposed anew, or the grid of the notebook follows. */
  resized() {
    const sheet = this.sheet();
    const { row, book } = this;
    if (!sheet || row === undefined) return;
    if (this.isProposed()) void this.open(row);
    else book.edit({ set_grid: { ...sheet.grid(), ...this.intake.size() } });
  }
}
