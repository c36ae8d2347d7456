/**
 * A canvas that the core draws on: sized in device pixels, redrawn when the notebook, its own size or the
 * theme changes, and only while it is in sight.
 */

export class Plot {
  /**
   * @param {HTMLCanvasElement} canvas
   * @param {(canvas: HTMLCanvasElement, dark: boolean) => void} draw
   */
  constructor(canvas, draw) {
    this.canvas = canvas;
    this.draw = draw;
    this.due = true;
    this.inSight = false;
    this.width = 0;
    this.height = 0;
    new IntersectionObserver((entries) => {
      this.inSight = entries.some((entry) => entry.isIntersecting);
      this.redraw();
    }, { rootMargin: '200px' }).observe(canvas);
    new ResizeObserver(() => {
      // Kept, because asking for the size at each drawing would have the whole page laid out at once.
      this.width = Math.round(canvas.clientWidth * devicePixelRatio);
      this.height = Math.round(canvas.clientHeight * devicePixelRatio);
      this.show();
    }).observe(canvas);
    document.addEventListener('theme', () => this.show());
  }

  show() {
    this.due = true;
    this.redraw();
  }

  redraw() {
    const { canvas, width, height } = this;
    if (!this.due || !this.inSight || width === 0 || height === 0) return;
    this.due = false;
    if (canvas.width !== width) canvas.width = width;
    if (canvas.height !== height) canvas.height = height;
    canvas.getContext('2d')?.clearRect(0, 0, width, height);
    this.draw(canvas, isDark());
  }
}

/** Whether the page is dark now, by the person's choice or the system's. */
export function isDark() {
  const { theme } = document.documentElement.dataset;
  return theme === 'dark' || (theme !== 'light' && matchMedia('(prefers-color-scheme: dark)').matches);
}
