/**
 * The section Plan: positions on the rails, typed or moved by their handles; what they are expected to give; the next
 * reading that would help most; and rehearsals on a simulated bench.
 *
 * The plan is worked out only while it is in sight, a moment after the last change, so that readings typed elsewhere
 * don't wait for it.
 */
import { now } from './book.js';
import { messageOf } from './core.js';
import { byId, el, Keyed, setHidden, setOptional, setText } from './dom.js';
import { Figures } from './figures.js';
import { focusCell } from './grid.js';
import { RailTracks } from './rail-tracks.js';
import { placeText } from './planned.js';
import { PositionLine, COLUMNS } from './position.js';
import { inWords, say, tell } from './words.js';
import { toast } from './toast.js';
import { flushAll, listen } from './typing.js';

/** @import { Book } from './book.js' */
/** @import { Desk } from './slope_of_light.js' */
/** @import { Edit, PlaceView, PlanView, PlannedPosition, PositionView, ProposedView, View } from './types.js' */

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
    this.tracks = new RailTracks(byId('plan-tracks'), byId('plan-moving'), book, (id, reading) => this.lineOf(id)?.send({ reading }));
    this.warnings = new Keyed(byId('plan-warnings'), (/** @type {string} */ warning) => warning, (warning) => {
      const root = el('li', {}, warning);
      return { root, show: () => {} };
    });
    this.positions = this.table();
    this.next = new Keyed(byId('plan-next'), (/** @type {ProposedView & {key: string}} */ { key }) => key,
      ({ key }) => new NextLine(this, key));
    this.nextBox = byId('plan-next-box');
    this.offers = new Keyed(byId('plan-offers'), (/** @type {ProposedView} */ { said }) => said?.id ?? '',
      ({ said }) => new OfferLine(this, said?.id ?? ''));
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
    const table = byId('plan-table');
    const head = el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, say('plan-position')),
      ...COLUMNS.map((column) => el('th', { scope: 'col' }, say(`plan-columns-${column}`))),
      el('th', { scope: 'col', class: 'distance' }, say('plan-distance')), el('td')));
    table.append(el('caption', { class: 'unseen' }, say('plan-caption')), head);
    listen(table, (box, text) => this.lineOf(Number(box.dataset.position))?.send({ [box.dataset.column ?? '']: text }));
    return new Keyed(table, (/** @type {PositionView} */ { typed }) => String(typed.id),
      ({ typed }) => new PositionLine(this.book, typed.id), head);
  }

  /** @param {number} id */
  lineOf(id) {
    return this.positions.parts.get(String(id));
  }

  /** @param {View} _ */
  show(_) {
    // What was so in one notebook is nothing to another.
    if (this.desk !== this.book.desk) this.truth.show([]);
    this.due = true;
    this.later();
  }

  later() {
    // Out of sight nothing is drawn but in the place of what was so in another notebook.
    const isOther = this.desk !== undefined && this.desk !== this.book.desk;
    if (!this.due || !(this.inSight || isOther)) return;
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.draw(), PATIENCE);
  }

  /** Works the plan out and shows it. */
  draw() {
    clearTimeout(this.timer);
    if (!this.due) return;
    this.due = false;
    const { desk } = this.book;
    this.desk = desk;
    const plan = desk.plan();
    this.plan = plan;
    setOptional(this.refusal, tell(plan.refusal));
    setHidden(this.box, plan.refusal !== null);
    setText(this.summary, inWords(plan.lacks ?? plan.expected));
    setOptional(this.compared, inWords(plan.compared));
    this.tracks.show(plan);
    this.warnings.show(plan.warnings.map((warning) => tell(warning)));
    this.positions.show(plan.positions);
    this.next.show(plan.next.map((next, place) => ({ ...next, key: String(place) })));
    setHidden(this.nextBox, plan.next.length === 0);
    this.offers.show(plan.offers);
    this.figures.show(plan.figures);
    setHidden(this.take, !plan.positions.some(({ place }) => place));
    setHidden(this.truthBox, !plan.rehearsal);
  }

  /** Begins a position on the rail of the last one. */
  add() {
    flushAll();
    const last = this.plan?.positions.at(-1)?.typed;
    const id = this.book.newNumber();
    const text = { id, rail: last?.rail ?? '', reading: '', time_base: last?.time_base ?? '', repeats: '' };
    if (!this.book.edit({ set_position: text })) return;
    this.book.draw();
    this.draw();
    document.getElementById(`position-${id}-${text.rail ? 'reading' : 'rail'}`)?.focus();
  }

  /** The places as positions to plan. @param {[PlaceView, number][]} places @returns {PlannedPosition[]} */
  positionsAt(places) {
    const numbers = this.book.desk.new_numbers(places.length);
    return places.map(([{ rail, reading, time_base }, rows], place) => (
      { id: numbers[place] ?? 0, rail, reading, time_base, repeats: rows > 1 ? String(rows) : '' }));
  }

  /** The plan as rows of the readings. */
  takeAll() {
    flushAll();
    this.due = true;
    this.draw();
    const places = (this.plan?.positions ?? []).flatMap(({ place, rows }) => (
      place ? /** @type {PlaceView[]} */ (Array(rows).fill(place)) : []));
    const numbers = this.book.desk.new_numbers(places.length);
    const edits = places.map((place, at) => rowAt(place, numbers[at] ?? 0));
    if (this.book.edit({ together: edits })) this.book.onUndoable(say('plan-taken'));
  }

  /** @param {(desk: Desk) => Promise<void>} keep */
  async rehearse(keep) {
    flushAll();
    this.due = true;
    this.draw();
    const { positions = [], offers = [] } = this.plan ?? {};
    const planned = positions.length > 0 ? positions.map(({ typed }) => typed) : this.positionsAt(offers[0]?.places ?? []);
    try {
      const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
      const title = say('plan-rehearsal-of', { title: this.book.current().title || say('untitled') });
      await keep(this.book.desk.rehearsal(title, planned, seed, now()));
      toast(say('plan-rehearsing'));
    } catch (error) {
      toast(messageOf(error));
    }
  }
}

/** @param {PlaceView} place @param {number} row @returns {{add_row: {row: number, cells: Record<string, string>}}} */
function rowAt({ rail, reading, time_base }, row) {
  return { add_row: { row, cells: { rail, reading, time_base } } };
}

class NextLine {
  /** @param {Plan} plan @param {string} key */
  constructor(plan, key) {
    const about = `plan-next-${key}`;
    /** @type {[PlaceView, number][]} */
    this.places = [];
    this.text = el('strong', { id: about });
    this.reason = el('p');
    this.root = el('li', {}, this.text, this.reason, el('p', { class: 'actions' },
      el('button', { type: 'button', 'aria-describedby': about, click: () => {
        const { book } = plan;
        const row = book.newNumber();
        const [first] = this.places;
        if (!first || !book.edit(rowAt(first[0], row))) return;
        book.draw();
        focusCell(document.getElementById(`row-${row}`), 'edge_a');
      } }, say('plan-add-row')),
      el('button', { type: 'button', class: 'quiet', 'aria-describedby': about, click: () => {
        const [position] = plan.positionsAt(this.places);
        if (position) plan.book.edit({ set_position: position });
      } }, say('plan-add-to-plan'))));
  }

  /** @param {ProposedView} next */
  show({ said, effect, places }) {
    this.places = places;
    const [first] = places;
    setText(this.text, first ? placeText(first[0], effect) : '');
    setText(this.reason, tell(said));
  }
}

class OfferLine {
  /** @param {Plan} plan @param {string} id */
  constructor(plan, id) {
    const about = `plan-offer-${id}`;
    /** @type {[PlaceView, number][]} */
    this.places = [];
    this.text = el('span', { id: about });
    const use = el('button', { type: 'button', class: 'quiet', 'aria-describedby': about, click: () => {
      /** @type {Edit[]} */
      const old = (plan.plan?.positions ?? []).map(({ typed }) => ({ remove_position: typed.id }));
      const edits = [...old, ...plan.positionsAt(this.places).map((position) => ({ set_position: position }))];
      if (plan.book.edit({ together: edits })) plan.book.onUndoable(say('plan-planned'));
    } }, say('plan-use'));
    this.root = el('li', {}, this.text, ' ', use);
  }

  /** @param {ProposedView} offer */
  show({ said, places }) {
    this.places = places;
    setText(this.text, tell(said));
  }
}
