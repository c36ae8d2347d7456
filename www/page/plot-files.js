/**
 * Plots as files, for a report or a poster: drawn by the core at the report's size, in the page's words.
 */
import { messageOf } from './core.js';
import { el, download } from './dom.js';
import { fileName } from './files.js';
import { toast } from './toast.js';
import { say, tell } from './words.js';

/** @import { Book } from './book.js' */

/** @typedef {'line' | 'residuals' | 'bench' | 'budget' | 'trials' | 'traces' | 'walk'} PlotName */
/** @typedef {'svg' | 'png'} PlotFormat */

/** @type {PlotFormat[]} */
const FORMATS = ['svg', 'png'];
/** Pixels to a CSS pixel in a PNG: at the width of a text column, some 300 to the inch. */
const FINENESS = 3;
/** How many pixels a canvas may have in every browser, and how many to a side (from memory): of a large class there are fewer to a CSS pixel. */
const [AREA, SIDE] = [16_777_216, 16_384];

/** What draws the plots that no bundle holds, as SVG; nothing where there is nothing to draw. @type {Map<PlotName, () => string | undefined>} */
const drawers = new Map();

/** Has a plot drawn by whoever shows it. @param {'traces' | 'walk'} plot @param {() => string | undefined} draw */
export function drawnBy(plot, draw) {
  drawers.set(plot, draw);
}

/**
 * Saves a plot; throws where there is nothing to draw yet.
 * @param {Book} book
 * @param {PlotName} plot
 * @param {PlotFormat} format
 */
export async function takePlot(book, plot, format) {
  const drawn = plot === 'traces' || plot === 'walk' ? drawers.get(plot)?.() : inBundle(book, plot);
  if (!drawn) throw new Error(nothing(plot));
  await savePlot(drawn, format, `${fileName(book)}-${plot}`);
}

/**
 * Buttons that save a drawing.
 * @param {string} plot what is drawn
 * @param {() => string} name of the file, without its ending
 * @param {() => string | undefined} draw as SVG; nothing where there is nothing to draw
 */
export function saveButtons(plot, name, draw) {
  const save = async (/** @type {PlotFormat} */ format) => {
    try {
      const drawn = draw();
      if (!drawn) throw new Error(say('report-no-plot'));
      await savePlot(drawn, format, name());
    } catch (error) {
      toast(messageOf(error));
    }
  };
  return el('p', { class: 'actions', role: 'group', 'aria-label': plot }, ...FORMATS.map((format) => (
    el('button', { type: 'button', class: 'quiet', click: () => void save(format) }, say('report-take-plot-as', { format: format.toUpperCase() })))));
}

/** @param {string} drawn as SVG @param {PlotFormat} format @param {string} name of the file, without its ending */
async function savePlot(drawn, format, name) {
  const svg = new Blob([drawn], { type: 'image/svg+xml' });
  download(format === 'svg' ? svg : await raster(svg), format === 'svg' ? svg.type : 'image/png', `${name}.${format}`);
}

/** A plot as a bundle holds it. @param {Book} book @param {PlotName} plot @returns {string | undefined} */
export function inBundle(book, plot) {
  const texts = book.desk.bundle(tell);
  const place = texts.indexOf(`${plot}.svg`);
  return place < 0 ? undefined : texts[place + 1];
}

/** Why there is nothing to draw, and what to do. @param {PlotName} plot */
function nothing(plot) {
  if (plot === 'trials' || plot === 'traces' || plot === 'walk') return say(`report-no-${plot}`);
  return say('report-no-plot');
}

/** @param {Blob} svg */
async function raster(svg) {
  const url = URL.createObjectURL(svg);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const { naturalWidth: width, naturalHeight: height } = image;
    const fineness = Math.min(FINENESS, SIDE / Math.max(width, height), Math.sqrt(AREA / (width * height)));
    const canvas = el('canvas', { width: String(Math.floor(width * fineness)), height: String(Math.floor(height * fineness)) });
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const png = await new Promise((/** @type {(png: Blob | null) => void} */ done) => canvas.toBlob(done, 'image/png'));
    if (!png) throw new Error(say('report-no-plot'));
    return png;
  } finally {
    URL.revokeObjectURL(url);
  }
}
