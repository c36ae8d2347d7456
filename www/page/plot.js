/**
 * A canvas that the core draws on: sized in device pixels, redrawn when the notebook, its own size or the
 * theme changes, and only while it is in sight.
 */

/** @import { Paper } from './slope_of_light.js' */

/** All of them, and what else is drawn anew when the theme changes. @type {Set<{show(): void}>} */
const plots = new Set();

/** Draws something with the plots when the theme changes. @param {() => void} show */
export function redrawWith(show) {
  plots.add({ show });
}

/** Draws all anew, for another theme. */
export function redrawPlots() {
  for (const plot of plots) plot.show();
}

/** What the system may wish for. */
const [DARK, CONTRAST] = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)'];

/** Draws all anew whenever the system wishes for another theme. */
export function redrawAsWished() {
  for (const wish of [DARK, CONTRAST]) matchMedia(wish).addEventListener('change', redrawPlots);
}

export class Plot {
  /**
   * @param {HTMLCanvasElement} canvas
   * @param {(canvas: HTMLCanvasElement, paper: Paper, pixels: number) => void} draw
   *   `pixels`: device pixels to a CSS pixel
   * @param {(width: number) => number} [wanted] the height that the drawing wants at a width, in CSS pixels
   */
  constructor(canvas, draw, wanted) {
    this.canvas = canvas;
    this.wanted = wanted;
    this.draw = draw;
    this.due = true;
    this.inSight = false;
    this.width = 0;
    this.height = 0;
    this.ratio = devicePixelRatio;
    new IntersectionObserver((entries) => {
      this.inSight = entries.some((entry) => entry.isIntersecting);
      this.redraw();
    }, { rootMargin: '200px' }).observe(canvas);
    new ResizeObserver(() => {
      // Kept, because asking for the size at each drawing would have the whole page laid out at once; the ratio
      // with it, because a window can move to another screen.
      this.ratio = devicePixelRatio;
      this.width = Math.round(canvas.clientWidth * this.ratio);
      this.height = Math.round(canvas.clientHeight * this.ratio);
      this.show();
    }).observe(canvas);
    plots.add(this);
  }

  show() {
    this.due = true;
    this.fit();
    this.redraw();
  }

  /** Takes the drawing away; it comes back by `show`. */
  clear() {
    const { canvas } = this;
    this.due = false;
    canvas.getContext('2d')?.clearRect(0, 0, canvas.width, canvas.height);
  }

  fit() {
    if (!this.wanted || this.width === 0) return;
    const height = `${this.wanted(Math.round(this.width / this.ratio))}px`;
    if (this.canvas.style.blockSize !== height) this.canvas.style.blockSize = height;
  }

  redraw() {
    const { canvas, width, height } = this;
    if (!this.due || !this.inSight || width === 0 || height === 0) return;
    this.due = false;
    if (canvas.width !== width) canvas.width = width;
    if (canvas.height !== height) canvas.height = height;
    canvas.getContext('2d')?.clearRect(0, 0, width, height);
    try {
      this.draw(canvas, paperNow(), this.ratio);
    } catch {
      // A canvas too small to draw on stays empty; the words below it say the same.
    }
  }
}

/** What drawings stand on now, by the person's choice or the system's. @returns {Paper} */
export function paperNow() {
  const { theme, contrast } = document.documentElement.dataset;
  const isDark = theme === 'dark' || (theme !== 'light' && matchMedia(DARK).matches);
  if (contrast === 'more' || matchMedia(CONTRAST).matches) return isDark ? 'black' : 'white';
  return isDark ? 'dark' : 'light';
}
