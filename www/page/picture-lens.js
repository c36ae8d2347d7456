/**
 * A picture, or a part of it, drawn to fit its place, with the grid drawn back over it, and a magnified view of one place on it.
 */

/** @import { PictureLook } from './picture-look.js' */
/** @import { GridLines, Spot } from './types.js' */

/** CSS pixels of the lens for one of the picture. */
const POWER = 8;

/**
 * @param {HTMLCanvasElement} canvas
 * @param {ImageBitmap} picture
 * @param {GridLines['lines']} lines
 * @param {PictureLook} look what of it is seen
 */
export function drawPicture(canvas, picture, lines, { left, top, share }) {
  const context = fitted(canvas);
  if (!context) return;
  const [x, y, width, height] = [left * picture.width, top * picture.height, share * picture.width, share * picture.height];
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, x, y, width, height, 0, 0, canvas.width, canvas.height);
  stroke(context, lines, canvas.width / width, [x, y]);
}

/**
 * @param {HTMLCanvasElement} canvas
 * @param {ImageBitmap} picture
 * @param {GridLines['lines']} lines
 * @param {Spot} at
 */
export function drawLens(canvas, picture, lines, [x, y]) {
  const context = fitted(canvas);
  if (!context) return;
  const { width, height } = canvas;
  const power = POWER * devicePixelRatio;
  const [left, top] = [x / 100 - width / 2 / power, y / 100 - height / 2 / power];
  context.imageSmoothingEnabled = false;
  context.fillStyle = '#777';
  context.fillRect(0, 0, width, height);
  context.drawImage(picture, left, top, width / power, height / power, 0, 0, width, height);
  stroke(context, lines, power, [left, top]);
  for (const [colour, thick] of /** @type {const} */ ([['#000', 3], ['#fff', 1]])) {
    context.setLineDash([]);
    context.strokeStyle = colour;
    context.lineWidth = thick * devicePixelRatio;
    context.beginPath();
    // A hair cross that leaves its middle free.
    for (const [from, to] of /** @type {const} */ ([[0, 0.44], [0.56, 1]])) {
      context.moveTo(width * from, height / 2);
      context.lineTo(width * to, height / 2);
      context.moveTo(width / 2, height * from);
      context.lineTo(width / 2, height * to);
    }
    context.stroke();
  }
}

/** The pixels of a picture; nothing where the browser can't decode it. @param {Blob} blob */
export async function decoded(blob) {
  try {
    return await createImageBitmap(blob);
  } catch {
    return undefined;
  }
}

/** Makes a canvas as fine as the screen. @param {HTMLCanvasElement} canvas */
function fitted(canvas) {
  const [width, height] = [canvas.clientWidth, canvas.clientHeight].map((side) => Math.round(side * devicePixelRatio));
  if (!width || !height) return undefined;
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  return canvas.getContext('2d', { alpha: false }) ?? undefined;
}

/**
 * Lines that show on any ground: light dashes on dark ones.
 * @param {CanvasRenderingContext2D} context
 * @param {GridLines['lines']} lines
 * @param {number} scale
 * @param {[number, number]} origin
 */
function stroke(context, lines, scale, [left, top]) {
  const fine = devicePixelRatio;
  for (const [colour, thick, dash] of /** @type {[string, number, number[]][]} */ ([
    ['rgb(0 0 0 / .6)', 2.5, []], ['rgb(255 225 90 / .95)', 1.25, [5 * fine, 5 * fine]],
  ])) {
    context.strokeStyle = colour;
    context.lineWidth = thick * fine;
    context.setLineDash(dash);
    context.beginPath();
    for (const [x1, y1, x2, y2] of lines) {
      context.moveTo((x1 - left) * scale, (y1 - top) * scale);
      context.lineTo((x2 - left) * scale, (y2 - top) * scale);
    }
    context.stroke();
  }
}
