/**
 * The wall view: a second window, for a lecture's big screen, that follows this one live. Line, residuals, the last row and
 * c in letters that the last bench reads; pages further on the bench and the result. It holds no fields. This window draws
 * it, so it needs neither the network nor a turn to write, and goes when this one does.
 */
import { byId, el, setHidden, setText } from './dom.js';
import { paperNow, redrawWith } from './plot.js';
import { say, tell } from './words.js';
import { toast } from './toast.js';

/** @import { Book } from './book.js' */
/** @import { Paper } from './slope_of_light.js' */
/** @import { View } from './types.js' */

/** The height of a window, in CSS pixels, in which letters are as large as on the page: on a wall they grow with it. */
const NATURAL = 600;
/** The height that a plot needs for letters of that size, in CSS pixels. */
const NEEDED = 180;
/** By how much the bench may be enlarged, the most first, and the least width in which its names stand, in CSS pixels of the page. */
const [LARGER, NAMES] = [[4, 3.5, 3, 2.5, 2, 1.5], 560];

/** @typedef {'line' | 'bench' | 'result'} WallPage */
/** @type {WallPage[]} */
const PAGES = ['line', 'bench', 'result'];

export class Wall {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    /** @type {Window & typeof globalThis | null} */
    this.window = null;
    /** @type {WallPage} */
    this.page = 'line';
    this.title = el('h1');
    this.result = el('output');
    this.sealed = el('span', { class: 'sealed-mark' }, say('seal-mark'));
    this.row = el('p', { class: 'wall-row' });
    this.sentences = el('div', { class: 'wall-words' });
    this.canvases = { line: picture('line-plot'), residuals: picture('line-residuals'), bench: picture('apparatus-drawing') };
    this.pages = {
      line: el('section', {}, this.canvases.line, this.canvases.residuals, this.row),
      bench: el('section', {}, this.canvases.bench),
      result: el('section', {}, this.sentences),
    };
    this.buttons = PAGES.map((page) => el('button', { type: 'button', click: () => this.turnTo(page) }, say(`wall-${page}`)));
    byId('open-wall').addEventListener('click', () => this.open());
    addEventListener('pagehide', () => this.window?.close());
    redrawWith(() => this.show(book.current()));
  }

  open() {
    const wall = /** @type {Window & typeof globalThis | null} */ (window.open('', 'slope-of-light-wall', 'popup,width=1280,height=720'));
    if (!wall) {
      toast(say('wall-blocked'));
      return;
    }
    this.window = wall;
    const { document: there } = wall;
    there.documentElement.lang = document.documentElement.lang;
    const styles = [...document.querySelectorAll('link[rel="stylesheet"], style')].map((style) => {
      const copy = /** @type {HTMLElement} */ (there.importNode(style, true));
      if (style instanceof HTMLLinkElement) copy.setAttribute('href', style.href);
      copy.addEventListener('load', () => this.draw());
      return copy;
    });
    there.head.replaceChildren(el('meta', { name: 'viewport', content: 'width=device-width' }), ...styles);
    there.body.className = 'wall';
    there.body.dataset.ready = 'true';
    there.body.replaceChildren(
      el('header', {}, this.title, el('p', { class: 'wall-c' }, el('i', {}, 'c'), ' = ', this.result, ' ', this.sealed)),
      el('main', {}, ...PAGES.map((page) => this.pages[page])), el('nav', {}, ...this.buttons));
    wall.addEventListener('resize', () => this.draw());
    wall.addEventListener('keydown', (event) => this.pressed(event));
    this.turnTo(this.page);
    this.show(this.book.current());
    wall.focus();
  }

  /** @param {KeyboardEvent} event */
  pressed(event) {
    const by = { ArrowRight: 1, PageDown: 1, ArrowLeft: -1, PageUp: -1 }[event.key];
    const next = by === undefined ? undefined : PAGES[PAGES.indexOf(this.page) + by];
    if (next) this.turnTo(next);
  }

  /** @param {WallPage} page */
  turnTo(page) {
    this.page = page;
    PAGES.forEach((other, index) => {
      setHidden(this.pages[other], other !== page);
      this.buttons[index]?.setAttribute('aria-pressed', String(other === page));
    });
    this.draw();
  }

  /** @param {View} view */
  show(view) {
    if (!this.window || this.window.closed) return;
    this.window.document.title = `${view.title || say('untitled')} · ${say('wall')}`;
    const { theme, contrast } = document.documentElement.dataset;
    Object.assign(this.window.document.documentElement.dataset, { theme, contrast });
    setText(this.title, view.title || say('untitled'));
    setText(this.result, view.result.short || say('strip-no-c'));
    setHidden(this.sealed, !view.result.sealed);
    const last = view.rows.findLast((row) => row.state === 'used');
    setText(this.row, last ? say('wall-row', { n: last.number, d: last.distance, delay: last.delay }) : '');
    this.sentences.replaceChildren(...[view.result.refusal, ...view.result.sentences].filter((told) => told)
      .map((told) => el('p', {}, tell(told))));
    this.draw();
  }

  /** Draws the plots of the page that is up. */
  draw() {
    if (!this.window || this.window.closed) return;
    const { desk } = this.book;
    const { line, residuals, bench } = this.canvases;
    if (this.page === 'line') {
      paint(line, (on, paper, pixels) => desk.draw_line(on, paper, pixels, tell));
      paint(residuals, (on, paper, pixels) => desk.draw_residuals(on, paper, pixels, tell));
    }
    if (this.page === 'bench') paint(bench, (on, paper, pixels) => desk.draw_bench(on, paper, pixels, tell), this.benchScale());
  }

  /** By how much the bench is enlarged: as far as it fits its place, which it would else leave empty. */
  benchScale() {
    const { clientWidth: width, clientHeight: height } = this.canvases.bench;
    const fits = (/** @type {number} */ times) => (
      width / times >= NAMES && times * this.book.desk.bench_height(Math.round(width / times), tell) <= height);
    return LARGER.find(fits) ?? 1;
  }
}

/** @param {'line-plot' | 'line-residuals' | 'apparatus-drawing'} name */
function picture(name) {
  return el('canvas', { role: 'img', 'aria-label': say(name) });
}

/** By how much the letters of a plot are enlarged: as its window is higher. @param {HTMLCanvasElement} canvas */
function plotScale(canvas) {
  const { innerHeight: height } = canvas.ownerDocument.defaultView ?? window;
  return Math.max(1, Math.min(height / NATURAL, canvas.clientHeight / NEEDED));
}

/**
 * Fills a canvas. It is drawn on one that stays here: moved into another window a canvas may become of a class of that
 * window's, which the core's drawings don't take for a canvas.
 * @param {HTMLCanvasElement} canvas
 * @param {(on: HTMLCanvasElement, paper: Paper, pixels: number) => void} draw
 * @param {number} [scale] by how much it is enlarged
 */
function paint(canvas, draw, scale = plotScale(canvas)) {
  const { devicePixelRatio: ratio } = canvas.ownerDocument.defaultView ?? window;
  const drawn = el('canvas');
  for (const each of [canvas, drawn]) {
    each.width = Math.round(canvas.clientWidth * ratio);
    each.height = Math.round(canvas.clientHeight * ratio);
  }
  try {
    draw(drawn, paperNow(), ratio * scale);
    canvas.getContext('2d')?.drawImage(drawn, 0, 0);
  } catch {
    // Too small to draw on, or nothing to draw: it stays empty.
  }
}
