/**
 * What a file that is handed in is called, and what goes back for it.
 */
import { safeName } from './files.js';
import { say } from './words.js';

/**
 * Group, number, names and date, so that a folder of them sorts.
 * @param {...string} parts
 */
export function handInName(...parts) {
  const [group = '', ...others] = parts.map((part) => safeName(part, 40));
  // Group 2 comes before group 10.
  const sorted = group.replace(/\d+/g, (digits) => digits.padStart(2, '0'));
  return [sorted, ...others].filter((part) => part !== '').join('_') || safeName(say('untitled'), 40);
}
