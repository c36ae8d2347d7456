/**
 * The ends of the edges on a picture: baseline and top of each, marked or stated as off the screen, and the level that follows.
 * They go into the notebook together, once none of them stands anywhere.
 */
import { el, setHidden, setOptional } from './dom.js';
import { plain, TextField } from './field.js';
import { isEnd, thickest } from './picture-sheet.js';
import { say } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Board } from './picture-board.js' */
/** @import { Proposer } from './picture-series.js' */
/** @import { Sheet } from './picture-sheet.js' */
/** @import { Picture } from './types.js' */

/** The thickest trace, pixels. */
const THICKEST = 200;

/** The open picture: its sheet once its edges are marked. @typedef {{sheet: () => Sheet | undefined, blob: () => Blob | undefined}} OpenSheet */

export class Ends {
  /** @param {Book} book @param {Board} board @param {Proposer} proposer @param {OpenSheet} open */
  constructor(book, board, proposer, open) {
    this.book = book;
    this.board = board;
    this.proposer = proposer;
    this.open = open;
    const button = (/** @type {string} */ id, /** @type {string} */ text, /** @type {() => void} */ work, kind = '') => (
      el('button', { type: 'button', id, class: kind, click: work }, text));
    this.begin = button('picture-ends', say('pictures-ends-mark'), () => void this.mark());
    this.right = button('picture-end-right', say('pictures-ends-right'), () => this.confirm());
    this.off = button('picture-end-off', say('pictures-ends-off'), () => this.leaveOff());
    this.drop = button('picture-ends-drop', say('pictures-ends-drop'), () => this.remove(), 'quiet');
    this.told = el('p', { class: 'hint', role: 'status', hidden: true });
    this.fraction = new TextField({ id: 'picture-fraction', label: say('pictures-fraction'), term: 'constant-fraction' }, (text) => {
      book.edit({ set_bench: { field: 'trace_fraction', text } });
    });
    this.thickness = new TextField({ id: 'picture-thickness', label: say('pictures-thickness') }, (text) => {
      const { value, problem } = book.desk.typed_whole_number(text, 0, THICKEST);
      this.thickness.show(plain(text, problem));
      const sheet = this.open.sheet();
      const { heights } = sheet?.picture ?? {};
      if (!sheet || value === null || !heights || value === heights.thickness) return;
      sheet.picture = { ...sheet.picture, heights: { ...heights, thickness: value } };
      this.send(sheet);
    });
    /** How thick the traces are on a photo, by its hash, as far as that was looked for. @type {Map<string, number>} */
    this.found = new Map();
    this.measured = el('p', { class: 'hint', hidden: true });
    this.thickness.root.append(this.measured);
    this.fields = el('div', { class: 'fields' }, this.fraction.root, this.thickness.root);
    /** What is done with the chosen end: it stands below the picture, so that both are in sight. */
    this.chosen = el('div', { hidden: true }, el('p', { class: 'actions' }, this.right, this.off), this.told);
    board.tools.after(this.chosen);
    this.root = el('details', {}, el('summary', {}, say('pictures-ends-title')), el('p', { class: 'hint' }, say('pictures-ends-hint')),
      el('p', { class: 'actions' }, this.begin, this.drop), this.fields);
  }

  /** Puts the ends that are not there; they count once all were looked at, moved, or stated as off the screen. */
  async mark() {
    const sheet = this.open.sheet();
    const blob = this.open.blob();
    if (!sheet) return;
    const { row, picture, columns, rows } = sheet;
    const answer = blob && await this.proposer.found(picture, blob, columns, rows);
    const now = this.open.sheet();
    if (now?.row !== row || now.picture.file.sha256 !== picture.file.sha256) return;
    const edges = answer?.found?.edges ?? [];
    const thick = thickest(edges);
    if (thick !== undefined) this.found.set(picture.file.sha256, thick);
    now.addEnds(edges);
    this.goOn(now);
  }

  /** The chosen end was looked at, and stays where it was found. */
  confirm() {
    const sheet = this.open.sheet();
    const mark = sheet?.mark(this.board.active);
    if (!sheet || !mark) return;
    if (mark.state === 'doubted') mark.state = 'looked';
    if (sheet.openEnd()) this.goOn(sheet);
    else if (mark.state === 'looked') this.settle(sheet);
  }

  /** The chosen end lies off the screen. */
  leaveOff() {
    const sheet = this.open.sheet();
    const mark = isEnd(this.board.active.kind) ? sheet?.mark(this.board.active) : undefined;
    if (!sheet || !mark) return;
    sheet.remove(mark);
    if (sheet.openEnd()) this.goOn(sheet);
    else this.settle(sheet);
  }

  /** Takes all ends away: the edges are where they were marked. */
  remove() {
    const sheet = this.open.sheet();
    if (!sheet) return;
    const isInNotebook = sheet.picture.heights !== undefined;
    sheet.dropEnds();
    if (isInNotebook) this.send(sheet);
    else this.board.redraw();
  }

  /** An end was looked at, moved or left off: the last one takes them all into the notebook. @param {Sheet} sheet */
  settle(sheet) {
    if (sheet.openEnd()) return;
    for (const mark of sheet.marks) if (isEnd(mark.kind)) mark.state = 'taken';
    this.send(sheet);
    // The button that was pressed is gone.
    if (document.activeElement === document.body) this.board.focus({ kind: 'a', index: 0 });
  }

  /** Leads to the next end that is to be moved or looked at. @param {Sheet} sheet */
  goOn(sheet) {
    const next = sheet.openEnd();
    setOptional(this.told, next ? say(next.state === 'doubted' ? 'pictures-ends-look' : 'pictures-ends-move') : '');
    if (!next) return;
    this.board.focus(next);
    for (const part of [this.chosen, this.board.root]) part.scrollIntoView({ block: 'nearest' });
  }

  /** @param {Sheet} sheet */
  send(sheet) {
    this.book.edit({ set_evidence: { row: sheet.row, evidence: { picture: sheet.settled() } } });
  }

  /** @param {Picture} picture of the open row @param {boolean} marked whether its edges are */
  show({ heights, file }, marked) {
    const { book } = this;
    const found = this.found.get(file.sha256);
    setOptional(this.measured, found === undefined ? '' : say('pictures-thickness-found', { n: book.desk.number_text(found) }));
    setHidden(this.root, !marked);
    this.fraction.show(book.view.bench.trace_fraction);
    setHidden(this.fields, !heights);
    if (heights && document.activeElement !== this.thickness.box) this.thickness.show(plain(book.desk.number_text(heights.thickness)));
  }

  /** What can be done now. */
  tellState() {
    const sheet = this.open.sheet();
    const end = isEnd(this.board.active.kind) ? sheet?.mark(this.board.active) : undefined;
    const isOpen = sheet?.openEnd() !== undefined;
    if (!isOpen) setOptional(this.told, '');
    setHidden(this.chosen, !end && !isOpen);
    setHidden(this.begin, !sheet || sheet.hasAllEnds());
    setHidden(this.right, end?.state !== 'doubted');
    setHidden(this.off, !end);
    setHidden(this.drop, !sheet?.hasEnds);
  }
}
