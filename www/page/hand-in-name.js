/**
 * What a file that is handed in is called, and what goes back for it.
 */
import { safeName } from './files.js';
import { say } from './words.js';

/** The most bytes of it: what a zip takes of a name has room for an ending too. */
const MOST = 160;

/**
 * Group, number, names and date, so that a folder of them sorts.
 * @param {...string} parts
 */
export function handInName(...parts) {
  const [group = '', ...others] = parts.map((part) => safeName(part, 40));
  // Group 2 comes before group 10.
  const sorted = group.replace(/\d+/g, (digits) => digits.padStart(2, '0'));
  const name = [sorted, ...others].filter((part) => part !== '').join('_') || safeName(say('untitled'), 40);
  // It counts whole letters alone.
  return name.slice(0, new TextEncoder().encodeInto(name, new Uint8Array(MOST)).read);
}
