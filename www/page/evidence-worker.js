/**
 * What an evidence worker does: it starts the wasm that it is handed, and then does what it is asked for, one thing
 * after the other. It keeps the traces that were measured last and the picture that was looked at last, so that a
 * closer look needs no reading. Its refusals are messages of the wasm, or a kind and a file's name; the page has the
 * words for both. Packed, it is a classic script.
 */
import * as wasm from './slope_worker.js';

/** @import { Answer, Asked, Asking, Call, CallOutcome, Content, FilePart, Found, PictureSource, Refusal, Task, TraceFile } from './evidence-types.js' */
/** @import { Look, Packing, Reading } from './slope_worker.js' */

/** @type {{onmessage: unknown, postMessage(answer: Answer): void}} */
const here = globalThis;

/** Rows of samples that are shown beside the layout of a file. */
const ROWS_SHOWN = 4;
/** In which the header of most pictures ends. */
const HEADER = 1 << 20;
/** Bytes that tell whether a file is a picture. */
const START = 32;
/** Rows of a picture's copy that are made at once. */
const BAND = 32;
/** The longer side of a picture as it is kept, at most, pixels. */
const LONGEST = 2400;
/** Of the JPEG as which it is kept, 0 to 1. */
const QUALITY = 0.85;
/** Of the JPEG of a photograph of a data set: such ones are many, and show nothing small. */
const SET_QUALITY = 0.6;

/** The traces that were measured last. @type {Reading | undefined} */
let reading;
/** The picture that was looked at last, and its number. @type {{number: number, look: Look} | undefined} */
let seen;
/** The bundle that is packed entry by entry. @type {Packing | undefined} */
let packing;
/** What the trace files of pairs hold that are read before it is their turn. @type {WeakMap<object, Promise<Content[][]>>} */
const ahead = new WeakMap();
/** What is asked for comes to an end before the next begins. @type {Promise<void>} */
let work = Promise.resolve();

/** What this script refuses, for the page to put into words. */
class RefusedCall {
  /** @param {Refusal} kind @param {string} [name] */
  constructor(kind, name = '') {
    this.kind = kind;
    this.name = name;
    this.message = '';
  }
}

/** @type {{[C in Call]: (...values: Asking<C>['values']) => CallOutcome<C> | Promise<CallOutcome<C>>}} */
const calls = {
  async look_at(file, known, layout) {
    const bytes = await bytesOf(file);
    const found = layout ?? wasm.recognise_by(file.name, bytes, known);
    return { layout: found, rows: wasm.first_rows(bytes, found, ROWS_SHOWN) };
  },

  common_level: (levels) => wasm.common_level(new Float64Array(levels)) ?? null,

  async measure(files, asked, keep) {
    const [contents = []] = await (ahead.get(files) ?? contentsOf(files));
    return measured(contents, asked, keep);
  },

  async measure_all(whole, pairs, asked) {
    const all = await (ahead.get(pairs) ?? partsOf(whole, pairs));
    return all.map((contents) => {
      try {
        return { found: measured(contents, asked, false), thrown: null };
      } catch (error) {
        return { found: null, thrown: refusalIn(error) };
      }
    });
  },

  envelope: (side, from, to, points) => kept().envelope(side, from, to, points),
  pair: (names) => wasm.pair(names),
  rail_reading: (names, rails, decimal) => names.map((name) => wasm.rail_reading(name, rails, decimal)),

  pack: (names, contents) => wasm.pack(names, contents),

  pack_begin() {
    packing?.free();
    packing = wasm.Packing.begin();
    return undefined;
  },

  pack_entry: (name, content) => begun().add(name, content),

  pack_end() {
    const all = begun();
    packing = undefined;
    return all.end();
  },

  async unpack(bundle) {
    return pairsOf(wasm.unpack(await bytesOf(bundle)));
  },

  async hand_in(whole, parts) {
    const all = await bytesOf(whole);
    let end = 0;
    return parts.map(({ name, size }) => {
      const bytes = all.subarray(end, end + size);
      end += size;
      try {
        return { found: handedIn(name, bytes), thrown: null };
      } catch (error) {
        return { found: null, thrown: refusalIn(error) };
      }
    });
  },

  handed_in_by_name: (names) => Array.from(wasm.handed_in_by_name(names), Boolean),
  class_of: (all, keys, names, decimal) => wasm.class_of(all, keys, names, decimal),
  set_secret: (seed, number) => wasm.set_secret(seed, number),
  write_key: (key) => wasm.write_key(key),

  async traces_of(secret, so, decimal) {
    const bytes = /** @type {Uint8Array<ArrayBuffer>} */ (new TextEncoder().encode(wasm.traces_of(secret, so, decimal)));
    return { bytes, sha256: await hash(bytes) };
  },

  async photograph_of(secret, so) {
    const pixels = new ImageData(new Uint8ClampedArray(wasm.photograph_of(secret, so).buffer), wasm.photograph_width());
    const { width, height } = pixels;
    const { canvas, context } = blank(width, height);
    context.putImageData(pixels, 0, 0);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: SET_QUALITY });
    release(canvas);
    const bytes = await bytesOf(blob);
    return { bytes, sha256: await hash(bytes), width, height };
  },

  write_feedback: (feedback) => wasm.write_feedback(feedback),
  read_feedback: (name, text) => wasm.read_feedback(name, text),
  digest: digestOf,

  async chain(texts) {
    /** @type {string[]} */
    const digests = [];
    for (const text of texts) digests.push(await digestOf(`${digests.at(-1) ?? ''}\n${text}`));
    return digests;
  },

  are_pictures: (files) => Promise.all(files.map(async (file) => {
    // One that can't be read is refused by those who take it.
    const start = await file.slice(0, START).arrayBuffer().catch(() => undefined);
    return start !== undefined && wasm.is_picture(new Uint8Array(start));
  })),

  async shrink(file) {
    const { canvas } = drawn(await decoded(file), LONGEST);
    const { width, height } = canvas;
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
    release(canvas);
    return { blob, width, height, sha256: await hash(await bytesOf(blob)) };
  },

  async propose(picture, number, columns, rows, before) {
    return (await look(picture, number)).propose(columns, rows, before);
  },

  async lens_checks(picture, number, corners, columns, rows) {
    return (await look(picture, number)).lens_checks(corners, columns, rows);
  },

  async follow(picture, number, checks, from, to, columns, rows) {
    return (await look(picture, number)).follow(checks, from, to, columns, rows);
  },

  async check_series(picture, number, corners, u_pixels, columns, rows) {
    return (await look(picture, number)).check_series(corners, u_pixels, columns, rows);
  },
};

/** Name and bytes of each entry. @param {(string | Uint8Array<ArrayBuffer>)[]} all both in turn */
function pairsOf(all) {
  return Array.from({ length: all.length / 2 }, (_, place) => (
    /** @type {[string, Uint8Array<ArrayBuffer>]} */ ([all[2 * place], all[2 * place + 1]])));
}

/** @param {string} name @param {Uint8Array} bytes @returns {Found} */
function handedIn(name, bytes) {
  const handed = wasm.HandedIn.of(name, bytes);
  try {
    const [text, key, feedback] = [handed.text(), handed.key(), handed.feedback()];
    if (key) return { key };
    if (feedback) return { feedback };
    return text === undefined ? { files: pairsOf(handed.files()) } : { text, line: handed.line() };
  } finally {
    handed.free();
  }
}

/** The bundle that is packed; where this worker was started since it was begun, nothing is left of it. */
function begun() {
  if (!packing) throw new RefusedCall('stopped');
  return packing;
}

/** The traces that were measured last. */
function kept() {
  if (!reading) throw new RefusedCall('nothing_kept');
  return reading;
}

/** @param {Blob} file */
async function bytesOf(file) {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    throw new RefusedCall('file', blobName(file));
  }
}

/** @param {string} text */
function digestOf(text) {
  return hash(/** @type {Uint8Array<ArrayBuffer>} */ (new TextEncoder().encode(text)));
}

/**
 * SHA-256 in hexadecimal digits: by the browser, which is far faster, where it lets a page have it (over a secure
 * connection, from this machine, from the disk).
 * @param {Uint8Array<ArrayBuffer>} bytes
 */
async function hash(bytes) {
  if (!globalThis.crypto?.subtle) return wasm.sha256(bytes);
  const digest = await crypto.subtle.digest('SHA-256', bytes);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** What the trace files of one pair hold, with their hashes. @param {TraceFile[]} files @returns {Promise<Content[][]>} */
async function contentsOf(files) {
  return [await Promise.all(files.map(async ({ file, layout }) => {
    const bytes = await bytesOf(file);
    return { name: file.name, layout, bytes, sha256: await hash(bytes) };
  }))];
}

/**
 * The same of many pairs, the files of all handed over one after the other as a whole: a browser takes far longer over
 * many reads than over one as long as all of them.
 * @param {Blob} whole
 * @param {FilePart[][]} pairs
 * @returns {Promise<Content[][]>}
 */
async function partsOf(whole, pairs) {
  const all = await bytesOf(whole);
  let end = 0;
  return Promise.all(pairs.map((files) => Promise.all(files.map(async ({ name, layout, size }) => {
    const bytes = all.subarray(end, end + size);
    end += size;
    return { name, layout, bytes, sha256: await hash(bytes) };
  }))));
}

/**
 * What comes of a pair's files; its traces stay here if they are to be kept.
 * @param {Content[]} contents
 * @param {Asked} asked
 * @param {boolean} keep
 */
function measured(contents, asked, keep) {
  const fresh = new wasm.Reading(asked.decimal);
  /** @type {Reading | undefined} */
  let spare = fresh;
  try {
    const layouts = contents.map(({ name, layout, bytes, sha256 }) => fresh.add(name, bytes, layout, sha256));
    const found = fresh.measure(asked);
    if (keep) {
      spare = reading;
      reading = fresh;
    }
    const held = contents.map(({ name, bytes: { length }, sha256 }) => ({ name, size: length, sha256 }));
    return { files: held, layouts, measured: found };
  } finally {
    spare?.free();
  }
}

/** @param {Blob} file */
function blobName(file) {
  return file instanceof File ? file.name : '';
}

/** @param {Uint8ClampedArray} data */
function bytes(data) {
  return new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
}

/** A picture as it was looked at last, or anew. @param {PictureSource} picture @param {number} number */
async function look(picture, number) {
  if (seen?.number !== number) {
    seen?.look.free();
    seen = undefined;
    const { canvas, context } = drawn(picture instanceof ImageBitmap ? picture : await decoded(picture));
    const { width, height } = canvas;
    const fresh = new wasm.Look(width, height);
    const band = BAND * fresh.rows();
    for (let top = 0; top < height; top += band) {
      fresh.add(bytes(context.getImageData(0, top, width, Math.min(band, height - top)).data));
    }
    release(canvas);
    seen = { number, look: fresh };
  }
  return seen.look;
}

/** The picture decoded and upright, if it is one, and not too large. @param {Blob} file */
async function decoded(file) {
  const name = blobName(file);
  const start = await bytesOf(file.slice(0, HEADER));
  const more = file.size > HEADER;
  if (!wasm.check_picture(name, start, more)) wasm.check_picture(name, await bytesOf(file), false);
  // Not every browser refuses to decode what is cut off. The start suffices for kinds that don't tell, and for small files.
  if (!wasm.is_whole_picture(start) && !wasm.is_whole_picture(await bytesOf(file))) throw new RefusedCall('decode', name);
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw new RefusedCall('decode', name);
  }
}

/**
 * The picture drawn, its longer side no longer than asked for.
 * @param {ImageBitmap} bitmap
 * @param {number} [longest]
 */
function drawn(bitmap, longest = Infinity) {
  const scale = Math.min(1, longest / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [bitmap.width, bitmap.height].map((side) => Math.max(1, Math.round(side * scale)));
  const { canvas, context } = blank(width ?? 1, height ?? 1);
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return { canvas, context };
}

/** A canvas to draw on. @param {number} width @param {number} height */
function blank(width, height) {
  if (typeof OffscreenCanvas === 'undefined') throw new RefusedCall('no_canvas');
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { alpha: false, willReadFrequently: true });
  if (!context) throw new RefusedCall('no_canvas');
  return { canvas, context };
}

/** Lets the pixels of a canvas go now, not when it is collected. @param {OffscreenCanvas} canvas */
function release(canvas) {
  canvas.width = 0;
  canvas.height = 0;
}

/** @template {Call} C @param {Asking<C>} asking */
async function answer({ id, call, values }) {
  try {
    here.postMessage({ id, value: await calls[call](...values) });
  } catch (error) {
    try {
      here.postMessage({ id, thrown: refusalIn(error) });
    } catch (unforeseen) {
      fail(unforeseen);
    }
  }
}

/**
 * What the wasm or this script refuses, both by plain objects. An error is one that nobody foresaw, such as a trap, and
 * is thrown on.
 * @param {unknown} error
 */
function refusalIn(error) {
  if (error instanceof Error || typeof error !== 'object' || error === null) throw error;
  const { kind, message, name } = /** @type {RefusedCall} */ (error);
  return { kind, message, name };
}

/** @param {unknown} error */
function fail(error) {
  here.postMessage({ crashed: true, why: error instanceof Error ? error.message : '' });
}

/** @param {object} files @param {Promise<Content[][]>} contents */
function readAhead(files, contents) {
  // A refusal is looked at when it is these files' turn.
  contents.catch(() => {});
  ahead.set(files, contents);
}

here.onmessage = (/** @type {MessageEvent<Task>} */ { data }) => {
  if ('core' in data) {
    try {
      wasm.initSync({ module: data.core });
      here.postMessage({ started: true });
    } catch (error) {
      fail(error);
    }
  } else {
    if (data.call === 'measure') {
      const [files] = data.values;
      readAhead(files, contentsOf(files));
    } else if (data.call === 'measure_all') {
      const [whole, pairs] = data.values;
      readAhead(pairs, partsOf(whole, pairs));
    }
    work = work.then(() => answer(data));
  }
};
