/**
 * Files that come into the page by hand, dropped or pasted: each kind goes where it belongs.
 */
import { byId } from './dom.js';
import { textBox } from './typing.js';
import { reader } from './worker-slot.js';

/**
 * @typedef {object} Takers who takes which kind of file
 * @property {(files: File[], row: number | undefined) => void} pictures `row`: the one they were dropped on
 * @property {(files: File[]) => void} traces
 * @property {(file: File) => void} notebook
 * @property {(files: File[]) => boolean} all takes them all, whatever they are, where they were dropped on a class
 */

/** Endings of files that are opened as notebooks or pictures. */
const OTHER = /\.(zip|json|jpe?g|png|gif|webp|avif|bmp|hei[cf]|tiff?|svg)$/i;
/** Endings of videos, of which some browsers know no type. */
const VIDEO = /\.(mp4|m4v|mov|webm|mkv|avi|ogv)$/i;
/** Files of a drop, at most: what is more is not looked for. */
const MOST = 20_000;

/** Whether a file says of itself that it is a picture, or a video, whose frames are. @param {File} file */
function isPicture(file) {
  return file.type.startsWith('image/') || isVideo(file);
}

/** @param {File} file whether it is a video */
export function isVideo({ name, type }) {
  return type ? type.startsWith('video/') : VIDEO.test(name);
}

/**
 * Those of some files that are pictures: by their type, or, where a phone gave none, by their first bytes. An ending of
 * another kind is believed.
 * @param {File[]} files
 */
async function picturesAmong(files) {
  const unsaid = files.filter(({ name, type }) => !type && (OTHER.test(name) || !/\.\w+$/.test(name)));
  // Where they can't be looked at, their names alone count.
  const found = unsaid.length > 0 ? await reader.ask('are_pictures', unsaid).catch(() => []) : [];
  return new Set(files.filter((file) => isPicture(file) || found[unsaid.indexOf(file)]));
}

/** @param {File} file whether it may be a trace file: anything but a notebook, a picture or a video */
export function isTrace(file) {
  return !OTHER.test(file.name) && !isPicture(file);
}

/**
 * Listens from the start, since a browser would leave the page for a file that nobody takes.
 * @param {Promise<Takers>} opening who takes them, once a notebook is open; until then they wait
 */
export function listenForFiles(opening) {
  // A page that could not open has said so, and takes nothing.
  const takers = opening.catch(() => undefined);
  const sign = byId('drop-sign');
  const hasFiles = (/** @type {DragEvent} */ event) => event.dataTransfer?.types.includes('Files') ?? false;
  window.addEventListener('dragover', (event) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    sign.hidden = false;
  });
  window.addEventListener('dragleave', (event) => {
    if (!event.relatedTarget) sign.hidden = true;
  });
  window.addEventListener('drop', (event) => {
    sign.hidden = true;
    if (!hasFiles(event)) return;
    event.preventDefault();
    void hand(takers, droppedFiles(event.dataTransfer), event.target);
  });
  document.addEventListener('paste', (event) => {
    const pictures = [...event.clipboardData?.files ?? []].filter(isPicture);
    if (pictures.length === 0) return;
    event.preventDefault();
    void hand(takers, Promise.resolve(pictures), textBox(event.target) ?? null);
  });
}

/**
 * @param {Promise<Takers | undefined>} opening
 * @param {Promise<File[]>} coming
 * @param {EventTarget | null} target
 */
async function hand(opening, coming, target) {
  const row = rowAt(target);
  const files = await coming;
  const takers = await opening;
  if (!takers || takers.all(files)) return;
  const pictures = await picturesAmong(files);
  const rest = files.filter((file) => !pictures.has(file));
  const traces = rest.filter(isTrace);
  if (pictures.size > 0) takers.pictures([...pictures], row);
  if (traces.length > 0) takers.traces(traces);
  for (const file of rest) if (!isTrace(file)) takers.notebook(file);
}

/** The row of the readings in which something is. @param {EventTarget | null} target */
function rowAt(target) {
  const row = target instanceof Element ? target.closest('tbody')?.dataset.row : undefined;
  return row && row !== 'new' ? Number(row) : undefined;
}

/**
 * All files of a drop, those of folders with the folder's name before theirs. Asked for while the event is at hand.
 * @param {DataTransfer | null} transfer
 * @returns {Promise<File[]>}
 */
async function droppedFiles(transfer) {
  const plain = [...transfer?.files ?? []];
  const entries = [...transfer?.items ?? []].map((item) => item.webkitGetAsEntry?.() ?? null);
  if (!entries.some((entry) => entry?.isDirectory)) return plain;
  /** @type {File[]} */
  const files = [];
  for (const entry of entries) if (entry) await gather(entry, files);
  return files;
}

/** @param {FileSystemEntry} entry @param {File[]} files */
async function gather(entry, files) {
  if (files.length >= MOST) return;
  try {
    if (entry.isFile) {
      /** @type {File} */
      const file = await new Promise((resolve, reject) => (
        /** @type {FileSystemFileEntry} */ (entry).file(resolve, reject)));
      const path = entry.fullPath.replace(/^\//, '');
      files.push(path === file.name ? file : new File([file], path, { type: file.type }));
      return;
    }
    const reader = /** @type {FileSystemDirectoryEntry} */ (entry).createReader();
    for (;;) {
      /** A part of the folder at a time, until none is left. @type {FileSystemEntry[]} */
      const some = await new Promise((resolve, reject) => reader.readEntries(resolve, reject));
      if (some.length === 0) return;
      for (const one of some) await gather(one, files);
    }
  } catch {
    // What can't be read any more is left out, as if it had not been dropped.
  }
}
