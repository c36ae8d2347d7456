/**
 * The drawings of a class as SVG at the size of the report's plots, black on white: what stands in percent on the page, in
 * pixels.
 */
import { messageOf } from './core.js';
import { el } from './dom.js';
import { savePlot } from './plot-files.js';
import { toast } from './toast.js';
import { say } from './words.js';

/** @import { PlotFormat } from './plot-files.js' */
/** @import { Bar, Class, Drawing, Residuals } from './worker-types.js' */

/** @type {PlotFormat[]} */
const FORMATS = ['svg', 'png'];
const SPACE = 'http://www.w3.org/2000/svg';
/** What no document in XML can hold, not even escaped (XML 1.0, 5th edition, 2.2): a name may hold it. */
const NO_CHARACTERS = /[^\t\n\r\x20-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;
/** How wide a drawing is, what is free at its right end, and where the names of results end, in pixels. */
const [WIDE, FREE, NAMES] = [760, 16, 150];
/** Where the residuals are drawn, in pixels. */
const PLACE = { x: 48, y: 28, width: WIDE - 48 - FREE, height: 240 };
/** The height of a line with a result, in pixels. */
const LINE = 20;
/** The page's accent on white paper. */
const ACCENT = '#7d2f52';

/**
 * An element of SVG.
 * @param {string} name
 * @param {Record<string, string | number>} [attributes]
 * @param {...(Node | string)} children
 */
export function drawn(name, attributes = {}, ...children) {
  const node = document.createElementNS(SPACE, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, String(value));
  node.append(...children);
  return node;
}

/**
 * Buttons that save a drawing.
 * @param {string} name of the file
 * @param {() => Element | undefined} draw
 */
export function saveButtons(name, draw) {
  const save = async (/** @type {PlotFormat} */ format) => {
    const drawing = draw();
    if (!drawing) return;
    try {
      await savePlot(new XMLSerializer().serializeToString(drawing).replace(NO_CHARACTERS, ''), format, name);
    } catch (error) {
      toast(messageOf(error));
    }
  };
  return el('p', { class: 'actions' }, ...FORMATS.map((format) => (
    el('button', { type: 'button', class: 'quiet', click: () => void save(format) }, say('class-take-plot', { format: format.toUpperCase() })))));
}

/**
 * The residuals of a class, in one of their units.
 * @param {Residuals} told
 * @param {Drawing} drawing
 * @param {string} unit what it is called
 */
export function residualsDrawing(told, drawing, unit) {
  const { x, y, width, height } = PLACE;
  const along = (/** @type {number} */ at) => x + width * at / 100;
  const foot = y + height;
  const thin = { fill: 'none', 'vector-effect': 'non-scaling-stroke' };
  return sheet(foot + 72, say('class-residuals'),
    words(unit, { x: 4, y: 16 }),
    drawn('rect', { ...PLACE, fill: 'none', stroke: '#888' }),
    drawn('svg', { ...PLACE, viewBox: '0 0 1000 1000', preserveAspectRatio: 'none' },
      drawn('path', { d: 'M0 500h1000', stroke: '#000', ...thin }),
      drawn('path', { d: drawing.dots, stroke: '#000', 'stroke-width': 4, 'stroke-linecap': 'round', opacity: 0.5, ...thin }),
      drawn('path', { d: drawing.bars, stroke: ACCENT, 'stroke-width': 3, ...thin })),
    ...drawing.ticks.map(({ at, text }) => words(text, { x: x - 6, y: y + height * at / 100 + 4, 'text-anchor': 'end' })),
    ...told.places.map(({ at }, index) => words(String(index + 1), { x: along(at), y: y - 6, 'text-anchor': 'middle', fill: ACCENT, 'font-weight': 'bold' })),
    ...told.ticks.map(({ at, text }) => words(text, { x: along(at), y: foot + 18, 'text-anchor': 'middle' })),
    ...told.rails.flatMap(({ name, from, to }) => [
      drawn('path', { d: `M${along(from)} ${foot + 28}H${along(to)}`, stroke: '#888', 'stroke-width': 2 }),
      words(name, { x: along((from + to) / 2), y: foot + 44, 'text-anchor': 'middle' })]),
    words(`${say('chart-distance')} / m`, { x: WIDE - FREE, y: foot + 64, 'text-anchor': 'end' }));
}

/**
 * The results of a class, one below the other.
 * @param {{name: string, bar: Bar}[]} all
 * @param {Class} [told]
 */
export function resultsDrawing(all, told) {
  const mean = told?.mean;
  const along = (/** @type {number} */ at) => NAMES + (WIDE - FREE - NAMES) * at / 100;
  const foot = all.length * LINE + 8;
  const band = mean ? [drawn('rect', { x: along(mean.from), y: 8, width: along(mean.to) - along(mean.from), height: foot - 8, fill: ACCENT, opacity: 0.2 })] : [];
  return sheet(foot + 44, say('class-plot'), ...band,
    ...all.flatMap(({ name, bar: { from, at, to } }, index) => {
      const middle = 8 + LINE * (index + 0.5);
      // A name that is longer is cut off where its own drawing ends.
      return [drawn('svg', { x: 4, width: NAMES - 12, height: LINE, y: middle - LINE / 2 }, words(name, { y: LINE / 2 + 4 })),
        drawn('path', { d: `M${along(from)} ${middle}H${along(to)}`, stroke: '#000', 'stroke-width': 2 }),
        drawn('circle', { cx: along(at), cy: middle, r: 4 })];
    }),
    drawn('path', { d: `M${NAMES} ${foot}H${WIDE - FREE}`, stroke: '#888' }),
    ...(told?.ticks ?? []).map(({ at, text }) => words(text, { x: along(at), y: foot + 16, 'text-anchor': 'middle' })),
    words('c / (10⁶ m/s)', { x: WIDE - FREE, y: foot + 36, 'text-anchor': 'end' }));
}

/** White paper with a title for those who do not see it. @param {number} height @param {string} title @param {...Element} all */
function sheet(height, title, ...all) {
  return drawn('svg', { width: WIDE, height, viewBox: `0 0 ${WIDE} ${height}`, role: 'img', 'font-family': 'sans-serif', 'font-size': 13 },
    drawn('title', {}, title), drawn('rect', { width: WIDE, height, fill: '#fff' }), ...all);
}

/** @param {string} text @param {Record<string, string | number>} place */
function words(text, place) {
  return drawn('text', place, text);
}
