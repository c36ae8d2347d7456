/**
 * The plots of line and residuals as one can question them: a closer look by wheel, two fingers, dragging, buttons and keys,
 * at the same distances in both; and whose a mark is, by pointing at it, or by going from one to the next with the arrow keys.
 * The row in hand is ringed in both.
 */
import { byId, el, setAttribute, setHidden, setText } from './dom.js';
import { focusCell } from './grid.js';
import { Hands } from './hands.js';
import { inWords, say, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Charts } from './charts.js' */
/** @import { Pointer, UnitPoint } from './hands.js' */
/** @import { Plot } from './plot.js' */
/** @import { MarkPlace, PlotPlaces, RowView, View } from './types.js' */

/** @typedef {'line' | 'residuals'} ZoomedPlot */
/** From and to of what is looked at, in shares of the whole. @typedef {[number, number]} Span */

/** By what one step narrows what is seen, and what share of it one step to the side goes. */
const [NARROWER, ASIDE] = [0.7, 0.25];
/** The least share of the whole that is looked at, and the share that counts as all: steps out and in are no exact numbers. */
const [LEAST, NEARLY] = [0.01, 0.999];
/** How near a pointer or a finger must come to a mark, in CSS pixels. */
const [NEAR, NEAR_FINGER] = [14, 24];

export class PlotLook {
  /** @param {Book} book @param {Charts} charts */
  constructor(book, charts) {
    this.book = book;
    this.charts = charts;
    /** The distances that are looked at. @type {Span} */
    this.across = [0, 1];
    /** The row in hand, or the point that has the focus. @type {number | undefined} */
    this.inHand = undefined;
    this.sides = [new Side(this, 'line', charts.line, byId('line-figure')), new Side(this, 'residuals', charts.residuals, byId('residual-figure'))];
    document.addEventListener('focusin', ({ target }) => this.hold(target));
    // What is told at a pointer can be sent away without moving it (WCAG 2.2, 1.4.13).
    document.addEventListener('keydown', ({ key }) => {
      if (key === 'Escape') for (const side of this.sides) side.tell();
    });
    this.show(book.current());
  }

  /** @param {View} view */
  show({ rows }) {
    this.rows = rows;
    if (this.desk !== this.book.desk) this.begin();
    for (const side of this.sides) side.settle();
  }

  /** Another notebook is seen whole, and in hand is what has the focus. */
  begin() {
    this.desk = this.book.desk;
    this.inHand = undefined;
    this.hold(document.activeElement);
    if (this.sides.some(({ name }) => this.charts.windows[name])) this.reset();
  }

  /** @param {number | undefined} id */
  row(id) {
    return this.rows?.find((row) => row.id === id);
  }

  /** Keeps in hand the row that has the focus, or whose point has it; the row to come has none. @param {EventTarget | null} target */
  hold(target) {
    if (!(target instanceof Element)) return;
    const name = target.closest('tbody[data-row]')?.getAttribute('data-row')
      ?? target.closest('#points a')?.getAttribute('href')?.replace('#row-', '');
    if (!name) return;
    this.take(name === 'new' ? undefined : Number(name));
  }

  /** Takes a row in hand, or none. @param {number | undefined} id */
  take(id) {
    if (id === this.inHand) return;
    this.inHand = id;
    for (const side of this.sides) side.ring();
  }

  /** Looks at all. */
  reset() {
    this.across = [0, 1];
    for (const side of this.sides) side.up = [0, 1];
    this.look();
  }

  /** Looks at other parts, and draws both plots anew. */
  look() {
    for (const side of this.sides) {
      const [left, right] = this.across;
      const [low, high] = side.up;
      const isWhole = left === 0 && right === 1 && low === 0 && high === 1;
      this.charts.windows[side.name] = isWhole ? undefined : Float64Array.of(left, right, low, high);
      side.plot.show();
      side.see(isWhole);
    }
  }
}

/** One of the plots. */
class Side {
  /** @param {PlotLook} both @param {ZoomedPlot} name @param {Plot} plot @param {HTMLElement} figure */
  constructor(both, name, plot, figure) {
    this.both = both;
    this.name = name;
    this.plot = plot;
    /** What is looked at of what stands upright. @type {Span} */
    this.up = [0, 1];
    /** Where the marks stand, until something changes. @type {PlotPlaces | undefined} */
    this.known = undefined;
    this.figure = figure;
    /** The row of whose mark is told. @type {RowView | undefined} */
    this.told = undefined;
    /** Whether that stays until it is sent away. */
    this.pinned = false;
    this.marked = el('span', { class: 'ring', hidden: true });
    this.panel = el('div', { class: 'point', hidden: true });
    /** What is kept told, for those who do not see the plot. */
    this.said = el('span', { class: 'unseen', role: 'status' });
    this.stage = /** @type {HTMLElement} */ (plot.canvas.parentElement);
    this.stage.append(this.marked, this.panel, this.said);
    this.stage.tabIndex = 0;
    setAttribute(this.stage, 'role', 'group');
    setAttribute(this.stage, 'aria-label', say(`plot-keys-${name}`));
    const button = (/** @type {string} */ sign, /** @type {string} */ label, /** @type {() => void} */ work) => (
      el('button', { type: 'button', class: 'quiet', 'aria-label': label, title: label, click: work }, sign));
    this.whole = el('button', { type: 'button', class: 'quiet', hidden: true, click: () => both.reset() }, say('plot-whole'));
    figure.querySelector('figcaption')?.append(' ', el('span', { class: 'plot-tools' }, this.whole,
      button('−', say('plot-wider'), () => this.zoom(1 / NARROWER)), button('+', say('plot-closer'), () => this.zoom(NARROWER))));
    this.listen();
  }

  listen() {
    const { stage, plot } = this;
    this.hands = new Hands(stage, {
      within: (pointer) => this.within(pointer),
      zoom: (factor, still) => this.zoom(factor, still),
      aside: (x, y) => this.aside(x, y),
      isPart: () => !this.whole.hidden,
      press: (event) => this.pin(event),
    });
    // What is told is no part of the plot.
    this.panel.addEventListener('pointerdown', (event) => event.stopPropagation());
    stage.addEventListener('keydown', (event) => this.key(event));
    stage.addEventListener('focusout', ({ relatedTarget }) => {
      // Another window takes no focus from what has it in this one.
      if (![relatedTarget, document.activeElement].some((node) => stage.contains(/** @type {Node | null} */ (node)))) this.tell();
    });
    stage.addEventListener('pointermove', (event) => this.hover(event));
    stage.addEventListener('pointerleave', () => {
      if (!this.pinned) this.tell();
    });
    // After those of the plot itself, which were there before.
    new ResizeObserver(() => this.settle()).observe(plot.canvas);
    new IntersectionObserver(() => this.ring(), { rootMargin: '200px' }).observe(plot.canvas);
  }

  /** After another part of the plot was drawn. @param {boolean} isWhole whether all of it is seen */
  see(isWhole) {
    // The button goes, and the focus with it.
    if (isWhole && document.activeElement === this.whole) this.stage.focus({ preventScroll: true });
    setHidden(this.whole, isWhole);
    this.stage.classList.toggle('part', !isWhole);
    this.settle();
  }

  /** After the plot was drawn anew: what is told of a mark goes with it. */
  settle() {
    this.known = undefined;
    if (this.told) this.tell(this.markOf(this.told.number));
    else this.ring();
  }

  /** Where the marks stand. @returns {PlotPlaces | undefined} */
  places() {
    const { plot, both, name } = this;
    const [width, height] = [Math.round(plot.width / plot.ratio), Math.round(plot.height / plot.ratio)];
    if (width === 0 || height === 0) return undefined;
    try {
      this.known ??= both.book.desk.places(name, width, height, tell, both.charts.windows[name]);
    } catch {
      // A plot too small to draw has no marks.
    }
    return this.known;
  }

  /** @param {number} number of a row */
  markOf(number) {
    return this.places()?.marks.find((mark) => mark.number === number);
  }

  /** Rings the mark of which is told, or that of the row in hand. */
  ring() {
    const row = this.told ?? this.both.row(this.both.inHand);
    const mark = row && this.plot.inSight ? this.markOf(row.number) : undefined;
    setHidden(this.marked, !mark);
    if (mark) put(this.marked, mark);
  }

  /** A place in the frame, in shares from its left and its foot. @param {Pointer} pointer @returns {UnitPoint} */
  within({ clientX, clientY }) {
    const box = this.stage.getBoundingClientRect();
    const [left, top, right, bottom] = this.places()?.frame ?? [0, 0, 1, 1];
    const share = (/** @type {number} */ value, /** @type {number} */ from, /** @type {number} */ to) => (
      Math.min(1, Math.max(0, (value - from) / (to - from))));
    return {
      x: share((clientX - box.left) / box.width, left, right),
      y: 1 - share((clientY - box.top) / box.height, top, bottom),
    };
  }

  /** @param {number} factor @param {UnitPoint} [still] what stays where it is */
  zoom(factor, still = { x: 0.5, y: 0.5 }) {
    this.both.across = scaled(this.both.across, factor, still.x);
    this.up = scaled(this.up, factor, still.y);
    this.both.look();
  }

  /** @param {number} x @param {number} y shares of what is seen, to the right and up */
  aside(x, y) {
    this.both.across = moved(this.both.across, x);
    this.up = moved(this.up, y);
    this.both.look();
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    if (event.ctrlKey || event.altKey || event.metaKey || event.target !== this.stage) return;
    const isWhole = this.whole.hidden;
    /** @type {Record<string, () => void>} */
    const keys = {
      '+': () => this.zoom(NARROWER), '=': () => this.zoom(NARROWER), '-': () => this.zoom(1 / NARROWER),
      ArrowLeft: () => (isWhole ? this.step(-1) : this.aside(-ASIDE, 0)), ArrowRight: () => (isWhole ? this.step(1) : this.aside(ASIDE, 0)),
      ArrowDown: () => this.aside(0, -ASIDE), ArrowUp: () => this.aside(0, ASIDE), 0: () => this.both.reset(),
      Home: () => this.both.reset(), Enter: () => goToRow(this.told),
    };
    const work = keys[event.key];
    const isIdle = (isWhole && /^Arrow(Up|Down)$/.test(event.key)) || (event.key === 'Enter' && !this.told);
    if (!work || isIdle) return;
    event.preventDefault();
    work();
  }

  /** Tells of the next mark in the order of the distances, or of the one before. @param {1 | -1} by */
  step(by) {
    const marks = [...this.places()?.marks ?? []].sort((one, other) => one.x - other.x);
    const from = this.told ?? this.both.row(this.both.inHand);
    const place = marks.findIndex(({ number }) => number === from?.number);
    const mark = place < 0 ? marks.at(by > 0 ? 0 : -1) : marks[Math.min(Math.max(place + by, 0), marks.length - 1)];
    if (!mark) return;
    this.pinned = true;
    this.tell(mark);
    this.both.take(this.told?.id);
  }

  /** A press keeps told what it finds, or sends it away. @param {PointerEvent} event */
  pin(event) {
    const mark = this.nearest(event, event.pointerType === 'mouse' ? NEAR : NEAR_FINGER);
    this.pinned = mark !== undefined;
    this.tell(mark);
  }

  /** @param {PointerEvent} event */
  hover(event) {
    const isOver = event.pointerType === 'mouse' && !this.hands?.isHeld() && !this.panel.contains(/** @type {Node} */ (event.target));
    if (this.pinned || !isOver) return;
    const mark = this.nearest(event, NEAR);
    if (mark?.number !== this.told?.number) this.tell(mark);
  }

  /** The mark nearest to a pointer, where one is near. @param {PointerEvent} event @param {number} near CSS pixels */
  nearest({ clientX, clientY }, near) {
    const box = this.stage.getBoundingClientRect();
    const far = (/** @type {MarkPlace} */ { x, y }) => Math.hypot(x * box.width + box.left - clientX, y * box.height + box.top - clientY);
    const marks = this.places()?.marks ?? [];
    const best = marks.reduce((/** @type {MarkPlace | undefined} */ best, mark) => (!best || far(mark) <= far(best) ? mark : best), undefined);
    return best && far(best) <= near ? best : undefined;
  }

  /** Tells whose a mark is, or nothing. @param {MarkPlace} [mark] */
  tell(mark) {
    const row = mark && this.both.rows?.find(({ number }) => number === mark.number);
    if (row !== this.told) this.panel.replaceChildren(...(row ? this.about(row) : []));
    this.told = row;
    this.pinned &&= row !== undefined;
    setText(this.said, row && this.pinned ? textOf(row) : '');
    setHidden(this.panel, !row);
    // Out of its figure, and over the other one.
    this.figure.classList.toggle('telling', row !== undefined);
    if (mark) {
      this.panel.classList.toggle('upwards', mark.y > 0.5);
      put(this.panel, mark);
    }
    this.ring();
  }

  /** The row with a way to it, what it holds, and how its delay came. @param {RowView} row */
  about(row) {
    const link = el('a', { href: `#row-${row.id}`, click: (/** @type {MouseEvent} */ event) => {
      event.preventDefault();
      goToRow(row);
    } }, textOf(row));
    const how = this.both.book.desk.row_work(row.id).find((figure) => figure.id === 'row_delay')?.meaning ?? [];
    return [el('p', {}, link), ...how.map((meaning) => el('p', { class: 'hint' }, inWords(meaning)))];
  }
}

/** What a row holds, and how far off the line it lies. @param {RowView} row */
function textOf({ number: n, distance, delay, residual, struck: reason }) {
  return reason ? say('points-struck', { n, distance, delay, reason })
    : say('points-point', { n, distance, delay, residual: residual || '–' });
}

/** @param {RowView | undefined} row */
function goToRow(row) {
  if (row) focusCell(byId(`row-${row.id}`), 'rail');
}

/** @param {HTMLElement} node @param {{x: number, y: number}} at shares of the plot */
function put(node, { x, y }) {
  node.style.setProperty('--x', `${100 * x}%`);
  node.style.setProperty('--y', `${100 * y}%`);
}

/** @param {Span} part @param {number} factor @param {number} still the share of it that stays where it is @returns {Span} */
function scaled([from, to], factor, still) {
  const wanted = Math.max(LEAST, factor * (to - from));
  const width = wanted > NEARLY ? 1 : wanted;
  const at = from + still * (to - from);
  return kept(at - still * width, width);
}

/** @param {Span} part @param {number} share of its width @returns {Span} */
function moved([from, to], share) {
  return kept(from + share * (to - from), to - from);
}

/** A part of a width that lies within the whole. @param {number} from @param {number} width @returns {Span} */
function kept(from, width) {
  const start = Math.min(1 - width, Math.max(0, from));
  return [start, Math.min(1, start + width)];
}
