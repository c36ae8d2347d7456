/**
 * One picture with its marks, which are moved by mouse, finger or keys. The mark that is active is seen through a lens; the
 * whole is looked at more closely by wheel, two fingers, buttons and keys.
 * While a mark moves, the grid follows; when it is let go, whoever owns the board is told once.
 */
import { core } from './core.js';
import { el, Keyed, setAttribute, setHidden, setText } from './dom.js';
import { Hands } from './hands.js';
import { drawLens, drawPicture } from './picture-lens.js';
import { PictureLook } from './picture-look.js';
import { isEnd, point, spot } from './picture-sheet.js';
import { say } from './words.js';

/** @import { UnitPoint } from './hands.js' */
/** @import { Mark, MarkKey, Sheet } from './picture-sheet.js' */
/** @import { EdgeHeights, Grid, GridLines, Message } from './types.js' */
/** @import { PixelPoint } from './worker-types.js' */

/** Where the arrow keys go. @type {Record<string, [number, number]>} */
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
/** What a finger presses in place of them. @type {['left' | 'up' | 'down' | 'right', string, [number, number]][]} */
const NUDGES = [['left', '←', [-1, 0]], ['up', '↑', [0, -1]], ['down', '↓', [0, 1]], ['right', '→', [1, 0]]];
/** A finger that moved less than this tapped, CSS pixels. */
const TAP = 6;
/** From where on a label beside its mark, up and to the right, might be cut off by the edge of what is seen. */
const [HIGH, FAR] = [0.15, 0.75];
/** The same of a label that is a name. */
const FAR_OF_NAME = 0.5;
/** By what one step narrows what is seen. */
const NARROWER = 0.7;

/**
 * What the owner of the board does; `write`: a number as the notebook writes it.
 * @typedef {{set: (was: Mark) => void, accept: () => void, drop: (place: MarkKey) => void, moved: () => void, write: (value: number) => string,
 *   levels: (grid: Grid, heights: EdgeHeights) => GridLines['lines']}} Owner
 */

export class Board {
  /** @param {Owner} owner */
  constructor(owner) {
    this.owner = owner;
    /** @type {Sheet | undefined} */
    this.sheet = undefined;
    /** @type {ImageBitmap | undefined} */
    this.bitmap = undefined;
    /** @type {MarkKey} */
    this.active = { kind: 'a', index: 0 };
    /** What is wrong with the grid as it stands. */
    /** @type {Message | null} */
    this.problem = null;
    /** @type {{apart: PixelPoint, begun: PixelPoint, moved: boolean, tap: boolean} | undefined} */
    this.drag = undefined;
    /** The mark that moves, as it was before. @type {Mark | undefined} */
    this.before = undefined;
    /** Marks as they were before each move that is not in the notebook. @type {Mark[]} */
    this.trail = [];
    this.frame = 0;
    this.look = new PictureLook();
    this.canvas = el('canvas', { class: 'board-picture', role: 'img', 'aria-label': say('pictures-picture') });
    this.lens = el('canvas', { class: 'board-lens', 'aria-hidden': 'true' });
    const marks = el('div', { class: 'board-marks', role: 'group', 'aria-label': say('pictures-mark-group') });
    this.marks = new Keyed(marks, (/** @type {Mark} */ mark) => key(mark), () => new MarkSpot(this));
    this.root = el('div', {
      class: 'board',
      pointerdown: (event) => this.seize(event),
      // The mark keeps the focus. Were the pointer's own event held back, a second finger would not be heard of in every browser.
      mousedown: (event) => spotAt(event) ?? event.preventDefault(),
      pointermove: (event) => this.pull(event),
      pointerup: (event) => this.letGo(event),
      pointercancel: () => this.giveUp(),
      keydown: (event) => this.undo(event),
    }, this.canvas, this.lens, marks);
    this.nudges = el('span', { class: 'nudges' }, ...NUDGES.map(([name, sign, by]) => (
      el('button', { type: 'button', 'aria-label': say(`pictures-nudges-${name}`), click: () => this.nudge(by) }, sign))));
    const button = (/** @type {string} */ sign, /** @type {string} */ label, /** @type {number} */ factor) => (
      el('button', { type: 'button', 'aria-label': label, title: label, click: () => this.zoom(factor) }, sign));
    this.whole = el('button', { type: 'button', click: () => this.seeWhole() }, say('pictures-whole'));
    // The mark keeps the focus, and the lens stays.
    this.tools = el('div', { class: 'board-tools', pointerdown: (event) => event.preventDefault() }, this.nudges,
      button('−', say('pictures-wider'), 1 / NARROWER), button('+', say('pictures-closer'), NARROWER), this.whole);
    new Hands(this.root, {
      within: (pointer) => this.within(pointer),
      zoom: (factor, still) => this.zoom(factor, still),
      aside: (x, y) => {
        this.look.aside(x, y);
        this.redraw();
      },
      isPart: () => !this.look.isWhole(),
      byTwo: true,
    });
    new ResizeObserver(() => this.redraw()).observe(this.root);
  }

  /**
   * Shows a picture with its marks.
   * @param {Sheet} sheet
   * @param {ImageBitmap | undefined} bitmap nothing where the picture is not at hand
   */
  show(sheet, bitmap) {
    if (sheet.row !== this.sheet?.row) {
      this.trail = [];
      this.look.reset();
    }
    this.sheet = sheet;
    this.bitmap = bitmap;
    if (!sheet.mark(this.active)) this.active = { kind: 'a', index: 0 };
    const { width, height } = sheet.picture;
    this.root.style.aspectRatio = `${width} / ${height}`;
    setHidden(this.lens, !bitmap);
    this.redraw();
  }

  /** Lets the pixels of the picture go. */
  clear() {
    this.giveUp();
    this.sheet = undefined;
    this.bitmap = undefined;
  }

  redraw() {
    if (!this.frame) this.frame = requestAnimationFrame(() => this.draw());
  }

  draw() {
    this.frame = 0;
    const { sheet, bitmap } = this;
    if (!sheet) return;
    const grid = sheet.grid();
    const heights = sheet.heights();
    const { lines: drawn, problem } = core.lines_of_grid(grid);
    const lines = [...drawn, ...(heights ? this.owner.levels(grid, heights) : [])];
    this.problem = problem;
    this.marks.show(sheet.marks);
    // Not hidden, so that nothing below it moves.
    setAttribute(this.whole, 'aria-disabled', this.look.isWhole() ? 'true' : undefined);
    const active = sheet.mark(this.active);
    if (bitmap) {
      drawPicture(this.canvas, bitmap, lines, this.look);
      if (active) {
        // On the side where it does not hide the mark.
        setAttribute(this.lens, 'data-side', this.seen(active).x > 0.5 ? 'left' : 'right');
        drawLens(this.lens, bitmap, lines, active.at);
      }
    }
    this.owner.moved();
  }

  /** @param {MarkKey} place */
  choose({ kind, index }) {
    this.active = { kind, index };
    this.reach();
    this.redraw();
  }

  /** Puts the focus on a mark. @param {MarkKey} place */
  focus(place) {
    this.choose(place);
    this.draw();
    this.marks.parts.get(key(place))?.root.focus({ preventScroll: true });
  }

  /** Where a pointer stands in what is seen. @param {{clientX: number, clientY: number}} pointer @returns {UnitPoint} */
  within({ clientX, clientY }) {
    const { left, top, width, height } = this.root.getBoundingClientRect();
    return { x: (clientX - left) / width, y: (clientY - top) / height };
  }

  /** Where an event is on the picture. @param {PointerEvent} event @returns {PixelPoint} */
  at(event) {
    const { width, height } = /** @type {Sheet} */ (this.sheet).picture;
    const { x, y } = this.look.place(this.within(event));
    return { x: x * width, y: y * height };
  }

  /** Where a mark is on the picture, in shares of it. @param {Mark} mark @returns {UnitPoint} */
  share({ at }) {
    const { width, height } = /** @type {Sheet} */ (this.sheet).picture;
    const { x, y } = point(at);
    return { x: x / width, y: y / height };
  }

  /** Where a mark is in what is seen. @param {Mark} mark */
  seen(mark) {
    return this.look.seen(this.share(mark));
  }

  /** @param {number} factor @param {UnitPoint} [still] what stays where it is; else the active mark, brought into sight */
  zoom(factor, still = this.middle()) {
    this.look.zoom(factor, still);
    this.redraw();
  }

  /** Where the active mark is in what is seen, once it is brought into sight; without one, the middle. */
  middle() {
    this.reach();
    const mark = this.sheet?.mark(this.active);
    return mark ? this.seen(mark) : { x: 0.5, y: 0.5 };
  }

  seeWhole() {
    this.look.reset();
    this.focus(this.active);
  }

  /** Brings the active mark into sight, but not while a pointer holds one. */
  reach() {
    const mark = this.sheet?.mark(this.active);
    if (!mark || this.drag) return;
    this.look.reach(this.share(mark));
    this.redraw();
  }

  /** @param {PointerEvent} event */
  seize(event) {
    const { sheet } = this;
    if (event.button !== 0 || !sheet || isDisabled(this.root)) return;
    if (!event.isPrimary) {
      // Two fingers look closer, and move no mark.
      this.giveUp();
      return;
    }
    const spot = spotAt(event);
    const chosen = sheet.marks.find((mark) => key(mark) === spot?.getAttribute('data-mark'));
    if (chosen) this.choose(chosen);
    const mark = sheet.mark(this.active);
    if (!mark) return;
    this.root.setPointerCapture(event.pointerId);
    const at = this.at(event);
    const from = point(mark.at);
    // A finger moves the mark from wherever it lies, so that it need not hide it; a mouse puts it where it points.
    const far = chosen !== undefined || event.pointerType === 'touch';
    this.drag = {
      apart: far ? { x: at.x - from.x, y: at.y - from.y } : { x: 0, y: 0 },
      begun: { x: event.clientX, y: event.clientY },
      moved: false,
      tap: chosen === undefined,
    };
    if (!far) {
      this.drag.moved = true;
      this.move(at);
    }
    if (!chosen) this.focus(this.active);
  }

  /** Moves the active mark by a pixel, which is less than a finger can. @param {[number, number]} by */
  nudge([right, down]) {
    const mark = this.sheet?.mark(this.active);
    if (!mark || isDisabled(this.root)) return;
    this.focus(this.active);
    const [x, y] = mark.at;
    this.move(point([x + 100 * right, y + 100 * down]));
    this.reach();
    this.release();
  }

  /** @param {PointerEvent} event */
  pull(event) {
    const { drag } = this;
    if (!drag) return;
    if (!drag.moved && Math.hypot(event.clientX - drag.begun.x, event.clientY - drag.begun.y) < TAP) return;
    drag.moved = true;
    const at = this.at(event);
    this.move({ x: at.x - drag.apart.x, y: at.y - drag.apart.y });
  }

  /** @param {PointerEvent} event */
  letGo(event) {
    const { drag } = this;
    this.drag = undefined;
    if (!drag) return;
    if (!drag.moved) {
      if (!drag.tap) return;
      this.move(this.at(event));
    }
    this.release();
  }

  /** Goes back to where the mark was. */
  giveUp() {
    this.drag = undefined;
    this.putBack(this.before);
    this.before = undefined;
  }

  /** @param {Mark | undefined} was */
  putBack(was) {
    const mark = was && this.sheet?.mark(was);
    if (!mark) return;
    Object.assign(mark, was);
    this.choose(mark);
  }

  /** Takes back a move that the notebook does not know of yet. @param {KeyboardEvent} event */
  undo(event) {
    if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.key.toLowerCase() !== 'z') return;
    if (this.trail.length === 0 || !this.sheet?.isOpen()) return;
    event.preventDefault();
    event.stopPropagation();
    const was = this.trail.pop();
    this.putBack(was);
    if (was?.kind === 'corner') this.owner.set(was);
  }

  /** @param {PixelPoint} to */
  move(to) {
    const { sheet } = this;
    const mark = sheet?.mark(this.active);
    if (!sheet || !mark) return;
    this.before ??= { ...mark };
    sheet.move(this.active, spot(to, sheet.picture));
    this.redraw();
  }

  /** @param {KeyboardEvent} event @param {MarkKey} place */
  press(event, place) {
    if (event.ctrlKey || event.metaKey || !this.sheet?.mark(place)) return;
    const drop = () => this.owner.drop(place);
    const closer = () => this.zoom(NARROWER);
    const whole = () => this.seeWhole();
    /** @type {Record<string, () => void>} */
    const keys = {
      '+': closer, '=': closer, '-': () => this.zoom(1 / NARROWER), 0: whole, Home: whole, Delete: drop, Backspace: drop,
      // A key held down looks at nothing.
      Enter: () => event.repeat || this.owner.accept(),
      Escape: () => this.giveUp(),
    };
    const arrow = ARROWS[event.key];
    const work = arrow ? () => this.step(event, place, arrow) : keys[event.key];
    if (!work) return;
    event.preventDefault();
    work();
  }

  /** Moves a mark by a pixel, a tenth of one or ten. @param {KeyboardEvent} event @param {MarkKey} place @param {[number, number]} way */
  step(event, place, [right, down]) {
    this.choose(place);
    const mark = this.sheet?.mark(place);
    if (!mark) return;
    const step = event.shiftKey ? 10 : event.altKey ? 1000 : 100;
    const [x, y] = mark.at;
    this.move(point([x + step * right, y + step * down]));
    this.reach();
  }

  /** Tells of a mark that has moved, once. */
  release() {
    const { before } = this;
    this.before = undefined;
    if (!before || this.drag) return;
    if (before.state !== 'taken') this.trail.push(before);
    this.owner.set(before);
  }
}

/** A mark on the picture: its kind is told by shape and label, its state by its line. */
class MarkSpot {
  /** @param {Board} board */
  constructor(board) {
    this.board = board;
    /** @type {Mark | undefined} */
    this.mark = undefined;
    this.label = el('span', { class: 'spot-label' });
    this.root = el('button', {
      type: 'button', role: 'slider', 'aria-valuemin': '0',
      focus: () => { if (this.mark) board.choose(this.mark); },
      keydown: (event) => { if (this.mark) board.press(event, this.mark); },
      keyup: (event) => { if (event.key in ARROWS) board.release(); },
      blur: () => board.release(),
    }, this.label);
  }

  /** @param {Mark} mark */
  show(mark) {
    const { kind, index, at, state } = mark;
    const { picture } = /** @type {Sheet} */ (this.board.sheet);
    this.mark = mark;
    const { active } = this.board;
    const chosen = active.kind === kind && active.index === index;
    setAttribute(this.root, 'class', `spot ${kind} ${state === 'taken' ? '' : state}${chosen ? ' chosen' : ''}`);
    setAttribute(this.root, 'data-mark', key(mark));
    setAttribute(this.root, 'aria-label', markName(mark));
    setAttribute(this.root, 'aria-valuemax', String(picture.width));
    setAttribute(this.root, 'aria-valuenow', String(at[0] / 100));
    const [x, y] = at.map((hundredths) => this.board.owner.write(hundredths / 100));
    setAttribute(this.root, 'aria-valuetext', say('pictures-place', { x, y, state: say(`pictures-states-${state}`) }));
    // The ends stand close together: only the one that is worked on has its whole name.
    const isNamed = chosen && isEnd(kind);
    setText(this.label, isNamed ? markName(mark) : `${labelOf(mark)}${state === 'sought' || state === 'doubted' ? '?' : ''}`);
    const seen = this.board.seen(mark);
    this.label.classList.toggle('under', seen.y < HIGH);
    this.label.classList.toggle('before', seen.x > (isEnd(kind) ? FAR_OF_NAME : FAR));
    this.root.style.insetInlineStart = `${100 * seen.x}%`;
    this.root.style.insetBlockStart = `${100 * seen.y}%`;
  }
}

/** @param {MarkKey} place */
function key({ kind, index }) {
  return `${kind}${index}`;
}

/** The corners, in the order of their marks. */
const CORNERS = /** @type {const} */ (['upper-left', 'upper-right', 'lower-right', 'lower-left']);

/** What a mark is called. @param {MarkKey} place */
export function markName({ kind, index }) {
  const corner = kind === 'corner' ? CORNERS[index] : undefined;
  if (corner) return say(`pictures-corners-${corner}`);
  if (kind === 'check') return say('pictures-check', { n: index + 1 });
  const name = say(`pictures-marks-${kind}`);
  return index === 0 ? name : say('pictures-again', { name, n: index + 1 });
}

/** @param {MarkKey} place */
function labelOf({ kind, index }) {
  if (kind === 'corner') return String(index + 1);
  if (kind === 'check') return '+';
  const edge = kind.charAt(0).toUpperCase();
  if (isEnd(kind)) return `${edge} ${kind.endsWith('top') ? say('chart-top') : say('chart-baseline')}`;
  return `${edge}${index === 0 ? '' : index + 1}`;
}

/** The mark that lies where an event is. @param {Event} event */
function spotAt({ target }) {
  return target instanceof Element ? target.closest('.spot') : null;
}

/** Whether another tab writes. @param {HTMLElement} node */
function isDisabled(node) {
  return node.closest('fieldset:disabled') !== null;
}
