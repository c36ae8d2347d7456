/**
 * Files that are dropped: those in folders too, and which of them are taken for traces.
 */

/** Endings of files that are opened as notebooks or pictures. */
const OTHER = /\.(zip|json|jpe?g|png|gif|webp|avif|bmp|heic|tiff?|svg)$/i;
/** Files in a folder that are of the system's own making. */
const SYSTEM = /^(\.|Thumbs\.db$|desktop\.ini$)/i;
/** Files of a drop, at most: what is more is not looked for. */
const MOST = 20_000;

/** @param {File} file whether it may be a trace file: anything but a notebook or a picture */
export function isTrace({ name, type }) {
  return !OTHER.test(name) && !type.startsWith('image/');
}

/**
 * A file chosen with its folder is called by both, so that like names in two folders are told apart.
 * @param {File} file
 */
export function withFolder(file) {
  return file.webkitRelativePath ? new File([file], file.webkitRelativePath, { type: file.type }) : file;
}

/** @param {Iterable<File>} files those that are not of the system's own making, in the order of their names */
export function inOrder(files) {
  const bare = (/** @type {File} */ { name }) => name.slice(name.lastIndexOf('/') + 1);
  const collator = new Intl.Collator(undefined, { numeric: true });
  return [...files].filter((file) => !SYSTEM.test(bare(file))).sort((a, b) => collator.compare(a.name, b.name));
}

/**
 * All files of a drop, those of folders with the folder's name before theirs. Asked for while the event is at hand.
 * @param {DataTransfer | null} transfer
 * @returns {Promise<File[]>}
 */
export async function droppedFiles(transfer) {
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
