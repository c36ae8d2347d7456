/**
 * Plots as files, for a report or a poster: drawn by the core at the report's size, in the page's words.
 */
import { el, download } from './dom.js';
import { fileName } from './files.js';
import { say, tell } from './words.js';

/** @import { Book } from './book.js' */

/** @typedef {'line' | 'residuals' | 'bench' | 'budget' | 'trials'} PlotName */
/** @typedef {'svg' | 'png'} PlotFormat */

/** Pixels to a CSS pixel in a PNG: at the width of a text column, some 300 to the inch. */
const FINENESS = 3;

/**
 * Saves a plot; throws where there is nothing to draw yet.
 * @param {Book} book
 * @param {PlotName} plot
 * @param {PlotFormat} format
 */
export async function takePlot(book, plot, format) {
  const texts = book.desk.bundle(tell);
  const place = texts.indexOf(`${plot}.svg`);
  const svg = new Blob([texts[place + 1] ?? ''], { type: 'image/svg+xml' });
  if (place < 0) throw new Error(say(plot === 'trials' ? 'report-no-trials' : 'report-no-plot'));
  download(format === 'svg' ? svg : await raster(svg), format === 'svg' ? svg.type : 'image/png', `${fileName(book)}-${plot}.${format}`);
}

/** @param {Blob} svg */
async function raster(svg) {
  const url = URL.createObjectURL(svg);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = el('canvas', { width: String(image.naturalWidth * FINENESS), height: String(image.naturalHeight * FINENESS) });
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const png = await new Promise((/** @type {(png: Blob | null) => void} */ done) => canvas.toBlob(done, 'image/png'));
    if (!png) throw new Error(say('report-no-plot'));
    return png;
  } finally {
    URL.revokeObjectURL(url);
  }
}
