/**
 * A button that asks for files, and the order of files. The browser's own control speaks the browser's language, so it lies
 * unseen over words of ours: it takes the press, the keyboard and what is dropped on it.
 */
import { el } from './dom.js';

/** Of one language whatever the browser's is: rows stand in the order of their files, and results may hang on that. */
const NAMES = new Intl.Collator('en', { numeric: true });

/** @param {File} a @param {File} b */
export function byName(a, b) {
  return NAMES.compare(a.name, b.name);
}

/**
 * @param {string} label
 * @param {Record<string, string | boolean>} attributes of the control
 * @param {(files: File[]) => void} take
 */
export function filePicker(label, attributes, take) {
  const input = el('input', { type: 'file', multiple: true, ...attributes, change: () => {
    const files = [...input.files ?? []];
    input.value = '';
    take(files);
  } });
  return el('label', { class: 'picker' }, label, input);
}
