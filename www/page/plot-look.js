/**
 * The plots of line and residuals as one can question them: a closer look by wheel, two fingers, dragging, buttons and keys,
 * at the same distances in both; and whose a mark is, by pointing at it. The row in hand is ringed in both.
 */
import { byId, el, setAttribute, setHidden, setText } from './dom.js';
import { focusCell } from './grid.js';
import { say, tell } from './words.js';

/** @import { Book } from './book.js' */
/** @import { Charts } from './charts.js' */
/** @import { Plot } from './plot.js' */
/** @import { MarkPlace, PlotPlaces, RowView, View } from './types.js' */

/** @typedef {'line' | 'residuals'} PlotName */
/** From and to of what is looked at, in shares of the whole. @typedef {[number, number]} Part */

/** By what one step narrows what is seen, and what share of it one step to the side goes. */
const [NARROWER, ASIDE] = [0.7, 0.25];
/** The least share of the whole that is looked at. */
const LEAST = 0.01;
/** How near a pointer or a finger must come to a mark, and how far it must go to drag, in CSS pixels. */
const [NEAR, NEAR_FINGER, DRAG] = [14, 24, 4];

export class PlotLook {
  /** @param {Book} book @param {Charts} charts */
  constructor(book, charts) {
    this.book = book;
    this.charts = charts;
    /** The distances that are looked at. @type {Part} */
    this.across = [0, 1];
    /** The row in hand, or the point that has the focus. @type {number | undefined} */
    this.inHand = undefined;
    const [line, residuals] = charts.plots;
    this.sides = [new Side(this, 'line', line, byId('line-figure')), new Side(this, 'residuals', residuals, byId('residual-figure'))];
    document.addEventListener('focusin', ({ target }) => this.hold(target));
  }

  /** @param {View} view */
  show({ rows }) {
    this.rows = rows;
    for (const side of this.sides) side.settle();
  }

  /** @param {number | undefined} id */
  row(id) {
    return this.rows?.find((row) => row.id === id);
  }

  /** Keeps in hand the row that has the focus, or whose point has it. @param {EventTarget | null} target */
  hold(target) {
    if (!(target instanceof Element)) return;
    const name = target.closest('[id^="row-"]')?.id ?? target.closest('#points a')?.getAttribute('href')?.slice(1);
    const id = Number(name?.replace('row-', '') || NaN);
    if (Number.isNaN(id) || id === this.inHand) return;
    this.inHand = id;
    for (const side of this.sides) side.ring();
  }

  /** Looks at other parts, and draws both plots anew. */
  look() {
    for (const side of this.sides) {
      const [left, right] = this.across;
      const [low, high] = side.up;
      const isWhole = left === 0 && right === 1 && low === 0 && high === 1;
      this.charts.windows[side.name] = isWhole ? undefined : Float64Array.of(left, right, low, high);
      side.plot.show();
      side.settle(isWhole);
    }
  }
}

/** One of the plots. */
class Side {
  /** @param {PlotLook} both @param {PlotName} name @param {Plot | undefined} plot @param {HTMLElement} figure */
  constructor(both, name, plot, figure) {
    if (!plot) throw new Error(`there is no plot ${name}`);
    this.both = both;
    this.name = name;
    this.plot = plot;
    /** What is looked at of what stands upright. @type {Part} */
    this.up = [0, 1];
    /** Where the marks stand, until something changes. @type {PlotPlaces | undefined} */
    this.known = undefined;
    /** Fingers, or the mouse, that are down, and where. @type {Map<number, {x: number, y: number}>} */
    this.down = new Map();
    this.dragged = false;
    /** Whether what is told of a point stays until it is dismissed. */
    this.pinned = false;
    this.marked = el('span', { class: 'ring', hidden: true });
    this.panel = el('div', { class: 'point', role: 'status', hidden: true });
    this.stage = /** @type {HTMLElement} */ (plot.canvas.parentElement);
    this.stage.append(this.marked, this.panel);
    this.stage.tabIndex = 0;
    setAttribute(this.stage, 'role', 'group');
    setAttribute(this.stage, 'aria-label', say(`plot-keys-${name}`));
    const button = (/** @type {string} */ sign, /** @type {string} */ label, /** @type {() => void} */ work) => (
      el('button', { type: 'button', class: 'quiet', 'aria-label': label, title: label, click: work }, sign));
    this.whole = el('button', { type: 'button', class: 'quiet', hidden: true, click: () => this.reset() }, say('plot-whole'));
    figure.querySelector('figcaption')?.append(' ', el('span', { class: 'plot-tools' }, this.whole,
      button('−', say('plot-wider'), () => this.zoom(1 / NARROWER)), button('+', say('plot-closer'), () => this.zoom(NARROWER))));
    this.listen();
  }

  listen() {
    const { stage } = this;
    // With the focus on the plot the wheel zooms; else it scrolls the page, as everywhere.
    stage.addEventListener('wheel', (event) => {
      if (!event.ctrlKey && document.activeElement !== stage) return;
      event.preventDefault();
      this.zoom(event.deltaY < 0 ? NARROWER : 1 / NARROWER, this.within(event));
    }, { passive: false });
    stage.addEventListener('keydown', (event) => this.key(event));
    stage.addEventListener('pointerdown', (event) => this.press(event));
    stage.addEventListener('pointermove', (event) => this.move(event));
    stage.addEventListener('pointerleave', (event) => {
      this.down.delete(event.pointerId);
      if (!this.pinned) this.tell();
    });
    stage.addEventListener('pointerup', (event) => this.lift(event));
    stage.addEventListener('pointercancel', (event) => this.down.delete(event.pointerId));
  }

  /** After the plot was drawn anew. @param {boolean} [isWhole] whether all of it is seen, where that may have changed */
  settle(isWhole) {
    this.known = undefined;
    if (isWhole !== undefined) {
      setHidden(this.whole, isWhole);
      this.stage.classList.toggle('part', !isWhole);
    }
    if (!this.panel.hidden) this.tell();
    this.ring();
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

  /** Rings the mark of the row in hand. */
  ring() {
    const { both, marked } = this;
    const row = both.inHand === undefined || !this.plot.inSight ? undefined : both.row(both.inHand);
    const mark = row && this.places()?.marks.find(({ number }) => number === row.number);
    setHidden(marked, !mark);
    if (mark) put(marked, mark);
  }

  /** A place in the frame, in shares from its left and its foot. @param {{clientX: number, clientY: number}} at */
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

  /** @param {number} factor @param {{x: number, y: number}} [still] what stays where it is */
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

  reset() {
    this.both.across = [0, 1];
    for (const side of this.both.sides) side.up = [0, 1];
    this.both.look();
    // The button goes, and the focus with it.
    if (document.activeElement === document.body) this.stage.focus({ preventScroll: true });
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    if (event.ctrlKey || event.altKey || event.metaKey || event.target !== this.stage) return;
    /** @type {Record<string, () => void>} */
    const keys = {
      '+': () => this.zoom(NARROWER), '=': () => this.zoom(NARROWER), '-': () => this.zoom(1 / NARROWER),
      ArrowLeft: () => this.aside(-ASIDE, 0), ArrowRight: () => this.aside(ASIDE, 0),
      ArrowDown: () => this.aside(0, -ASIDE), ArrowUp: () => this.aside(0, ASIDE), 0: () => this.reset(), Home: () => this.reset(),
      Escape: () => this.tell(),
    };
    const work = keys[event.key];
    if (!work || (event.key.startsWith('Arrow') && this.whole.hidden)) return;
    event.preventDefault();
    work();
  }

  /** @param {PointerEvent} event */
  press(event) {
    if (this.panel.contains(/** @type {Node} */ (event.target)) || event.button !== 0) return;
    this.down.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (this.down.size === 1) this.dragged = false;
  }

  /** @param {PointerEvent} event */
  move(event) {
    const before = this.down.get(event.pointerId);
    if (!before) {
      if (event.pointerType === 'mouse') this.hover(event);
      return;
    }
    const now = { x: event.clientX, y: event.clientY };
    const other = [...this.down].find(([id]) => id !== event.pointerId)?.[1];
    if (other) {
      this.pinch(before, now, other);
    } else if (!this.whole.hidden) {
      if (!this.dragged && apart(before, now) < DRAG) return;
      this.stage.setPointerCapture(event.pointerId);
      this.drag(before, now);
    } else {
      return;
    }
    this.dragged = true;
    this.down.set(event.pointerId, now);
  }

  /** @param {{x: number, y: number}} before @param {{x: number, y: number}} now */
  drag(before, now) {
    const [from, to] = [before, now].map(({ x, y }) => this.within({ clientX: x, clientY: y }));
    if (from && to) this.aside(from.x - to.x, from.y - to.y);
  }

  /** @param {{x: number, y: number}} before @param {{x: number, y: number}} now @param {{x: number, y: number}} other */
  pinch(before, now, other) {
    const middle = { clientX: (now.x + other.x) / 2, clientY: (now.y + other.y) / 2 };
    this.zoom(apart(before, other) / Math.max(1, apart(now, other)), this.within(middle));
  }

  /** @param {PointerEvent} event */
  lift(event) {
    const pressed = this.down.delete(event.pointerId);
    if (!pressed || this.dragged || this.down.size > 0) return;
    const mark = this.nearest(event, event.pointerType === 'mouse' ? NEAR : NEAR_FINGER);
    this.pinned = mark !== undefined;
    this.tell(mark);
  }

  /** @param {PointerEvent} event */
  hover(event) {
    if (this.pinned || this.panel.contains(/** @type {Node} */ (event.target))) return;
    const mark = this.nearest(event, NEAR);
    if (mark?.number !== this.told) this.tell(mark);
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
    this.told = row && mark.number;
    this.pinned = row !== undefined && this.pinned;
    setHidden(this.panel, !row);
    if (!row) {
      this.ring();
      return;
    }
    this.panel.replaceChildren(...this.about(row));
    this.panel.classList.toggle('leftwards', mark.x > 0.5);
    this.panel.classList.toggle('upwards', mark.y > 0.5);
    put(this.panel, mark);
    setHidden(this.marked, false);
    put(this.marked, mark);
  }

  /** The row with a way to it, what it holds, and how its delay came. @param {RowView} row */
  about({ id, number: n, distance, delay, residual, struck: reason }) {
    const link = el('a', { href: `#row-${id}`, click: (/** @type {MouseEvent} */ event) => {
      event.preventDefault();
      focusCell(byId(`row-${id}`), 'rail');
    } });
    setText(link, reason ? say('points-struck', { n, distance, delay, reason })
      : say('points-point', { n, distance, delay, residual: residual || '–' }));
    const how = this.both.book.desk.row_work(id).find((figure) => figure.id === 'row_delay')?.meaning ?? [];
    return [el('p', {}, link), ...how.map((meaning) => el('p', { class: 'hint' }, tell(meaning)))];
  }
}

/** @param {HTMLElement} node @param {{x: number, y: number}} at shares of the plot */
function put(node, { x, y }) {
  node.style.setProperty('--x', `${100 * x}%`);
  node.style.setProperty('--y', `${100 * y}%`);
}

/** @param {Part} part @param {number} factor @param {number} still the share of it that stays where it is @returns {Part} */
function scaled([from, to], factor, still) {
  const width = Math.min(1, Math.max(LEAST, factor * (to - from)));
  const at = from + still * (to - from);
  return kept(at - still * width, width);
}

/** @param {Part} part @param {number} share of its width @returns {Part} */
function moved([from, to], share) {
  return kept(from + share * (to - from), to - from);
}

/** A part of a width that lies within the whole. @param {number} from @param {number} width @returns {Part} */
function kept(from, width) {
  const start = Math.min(1 - width, Math.max(0, from));
  return [start, Math.min(1, start + width)];
}

/** @param {{x: number, y: number}} a @param {{x: number, y: number}} b */
function apart(a, b) {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
