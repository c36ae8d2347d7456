/**
 * The section Plan: positions on the rails, typed or moved by their handles; what they are expected to give; the next
 * reading that would help most; and rehearsals on a simulated bench.
 *
 * The plan is worked out only while it is in sight, a moment after the last change, so that readings typed elsewhere
 * don't wait for it.
 */
import { messageOf } from './core.js';
import { byId, el, Keyed, setHidden, setOptional, setText } from './dom.js';
import { Figures } from './figures.js';
import { focusCell } from './grid.js';
import { Lanes } from './lanes.js';
import { PositionLine, COLUMNS } from './position.js';
import { words } from './strings.js';
import { tell } from './tell.js';
import { flushAll, listen } from './typing.js';

/** @import { Book } from './book.js' */
/** @import { Desk, Edit, NextView, OfferView, PlanView, PositionView, View } from './types.js' */

/** How long the plan waits for another change, in ms. */
const PATIENCE = 60;

export class Plan {
  /**
   * @param {Book} book
   * @param {(desk: Desk) => Promise<void>} keep keeps a notebook as a new one and opens it
   */
  constructor(book, keep) {
    this.book = book;
    this.refusal = byId('plan-refusal');
    this.box = byId('plan-box');
    this.summary = byId('plan-summary');
    this.compared = byId('plan-compared');
    this.lanes = new Lanes(byId('plan-lanes'), byId('plan-moving'), book, (id, reading) => this.lineOf(id)?.send({ reading }));
    this.warnings = new Keyed(byId('plan-warnings'), (/** @type {string} */ text) => text, (text) => said(el('li', {}, text)));
    this.positions = this.table();
    this.next = new Keyed(byId('plan-next'), (/** @type {NextView} */ next) => next.id, ({ id }) => new NextLine(book, id));
    this.nextBox = byId('plan-next-box');
    this.offers = new Keyed(byId('plan-offers'), (/** @type {OfferView} */ offer) => offer.id, ({ id }) => new OfferLine(book, id));
    this.figures = new Figures(byId('plan-figures'));
    this.truth = new Figures(byId('plan-truth'));
    this.truthBox = byId('plan-truth-box');
    this.take = /** @type {HTMLButtonElement} */ (byId('plan-take'));
    this.take.addEventListener('click', () => this.takeAll());
    byId('plan-add').addEventListener('click', () => this.add());
    byId('plan-rehearse').addEventListener('click', () => this.rehearse(keep));
    byId('plan-show-truth').addEventListener('click', () => this.truth.show(book.desk.truth()));
    this.inSight = false;
    this.timer = 0;
    /** The desk whose plan was worked out last. @type {Desk | undefined} */
    this.desk = undefined;
    /** @type {PlanView | undefined} */
    this.plan = undefined;
    new IntersectionObserver((entries) => {
      this.inSight = entries.some((entry) => entry.isIntersecting);
      this.later();
    }, { rootMargin: '300px' }).observe(byId('plan'));
  }

  table() {
    const t = words.plan;
    const table = byId('plan-table');
    const head = el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, t.position),
      ...COLUMNS.map((column) => el('th', { scope: 'col' }, t.columns[column])),
      el('th', { scope: 'col', class: 'distance' }, t.distance), el('td')));
    table.append(el('caption', { class: 'unseen' }, t.caption), head);
    listen(table, (box, text) => this.lineOf(Number(box.dataset.position))?.send({ [box.dataset.column ?? '']: text }));
    return new Keyed(table, (/** @type {PositionView} */ { id }) => String(id), ({ id }) => new PositionLine(this.book, id), head);
  }

  /** @param {number} id */
  lineOf(id) {
    return this.positions.parts.get(String(id));
  }

  /** @param {View} _ */
  show(_) {
    this.due = true;
    this.later();
  }

  later() {
    const other = this.desk !== this.book.desk;
    if (!this.due || !(this.inSight || other)) return;
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.draw(), PATIENCE);
  }

  /** Works the plan out and shows it. */
  draw() {
    clearTimeout(this.timer);
    if (!this.due) return;
    this.due = false;
    const { desk } = this.book;
    if (this.desk !== desk) this.truth.show([]);
    this.desk = desk;
    const plan = desk.plan();
    this.plan = plan;
    setOptional(this.refusal, plan.refusal);
    setHidden(this.box, plan.refusal !== '');
    setText(this.summary, plan.summary);
    setOptional(this.compared, plan.compared);
    this.lanes.show(plan);
    this.warnings.show(plan.warnings);
    this.positions.show(plan.positions);
    this.next.show(plan.next);
    setHidden(this.nextBox, plan.next.length === 0);
    this.offers.show(plan.offers);
    this.figures.show(plan.figures);
    setHidden(this.take, plan.take === null);
    setHidden(this.truthBox, !plan.rehearsal);
  }

  /** Begins a position on the rail of the last one. */
  add() {
    flushAll();
    const last = this.plan?.positions.at(-1);
    const id = Math.max(this.book.current().entries, ...(this.plan?.positions ?? []).map((each) => each.id)) + 1;
    const text = { id, rail: last?.rail.text ?? '', reading: '', time_base: last?.time_base.text ?? '', repeats: '' };
    if (!this.book.edit({ set_position: text })) return;
    this.book.draw();
    this.draw();
    document.getElementById(`position-${id}-${text.rail ? 'reading' : 'rail'}`)?.focus();
  }

  takeAll() {
    flushAll();
    this.due = true;
    this.draw();
    const edit = this.plan?.take;
    if (edit && this.book.edit(edit)) undoable(words.plan.taken);
  }

  /** @param {(desk: Desk) => Promise<void>} keep */
  async rehearse(keep) {
    flushAll();
    try {
      const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
      await keep(this.book.desk.rehearse(words.plan.rehearsalOf(this.book.current().title || words.untitled), seed));
      tell(words.plan.rehearsing);
    } catch (error) {
      tell(messageOf(error));
    }
  }
}

class NextLine {
  /** @param {Book} book @param {string} id */
  constructor(book, id) {
    const t = words.plan;
    const about = `plan-next-${id}`;
    /** @type {NextView | undefined} */
    this.next = undefined;
    this.text = el('strong', { id: about });
    this.reason = el('p');
    this.root = el('li', {}, this.text, this.reason, el('p', { class: 'actions' },
      el('button', { type: 'button', 'aria-describedby': about, click: () => {
        const edit = this.next?.row;
        if (!edit || typeof edit !== 'object' || !('add_row' in edit) || !book.edit(edit)) return;
        book.draw();
        focusCell(document.getElementById(`row-${edit.add_row.row}`), 'edge_a');
      } }, t.addRow),
      el('button', { type: 'button', class: 'quiet', 'aria-describedby': about, click: () => {
        if (this.next?.position) book.edit(this.next.position);
      } }, t.addToPlan)));
  }

  /** @param {NextView} next */
  show(next) {
    this.next = next;
    setText(this.text, next.text);
    setText(this.reason, next.reason);
  }
}

class OfferLine {
  /** @param {Book} book @param {string} id */
  constructor(book, id) {
    const about = `plan-offer-${id}`;
    /** @type {Edit | null} */
    this.edit = null;
    this.text = el('span', { id: about });
    const use = el('button', { type: 'button', class: 'quiet', 'aria-describedby': about, click: () => {
      if (this.edit && book.edit(this.edit)) undoable(words.plan.planned);
    } }, words.plan.use);
    this.root = el('li', {}, this.text, ' ', use);
  }

  /** @param {OfferView} offer */
  show({ text, edit }) {
    this.edit = edit;
    setText(this.text, text);
  }
}

/** @param {string} text */
function undoable(text) {
  document.dispatchEvent(new CustomEvent('undoable', { detail: text }));
}

/** @param {HTMLElement} root */
function said(root) {
  return { root, show: () => {} };
}
