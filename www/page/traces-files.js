/**
 * The names and the order of trace files.
 */
import { byName } from './file-picker.js';

/** Files in a folder that are of the system's own making. */
const SYSTEM = /^(\.|Thumbs\.db$|desktop\.ini$)/i;

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
  return [...files].filter((file) => !SYSTEM.test(bare(file))).sort(byName);
}
