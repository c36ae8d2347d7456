/**
 * The places of a notebook of which a teacher can say something, and what each is called.
 */
import { say } from './words.js';

/** @import { View } from './types.js' */
/** @import { CommentPlace, Feedback, ReportSection } from './worker-types.js' */
/** @import { AllOf } from './words.js' */

/** The longest piece of a question by which it is named. */
const SHORT = 60;
/** Marks of emphasis and of code, with what stands in them: where a text is only named, they say nothing. */
const EMPHASIS = /(?<!\\)(\*{1,2}|`)(?=\S)(.+?)\1/gu;

/** The sections, in the order in which the report has them. */
export const SECTIONS = /** @type {const} */ (['cautions', 'aim', 'method', 'apparatus', 'readings', 'line', 'uncertainty', 'result', 'discussion']);
/** @typedef {AllOf<ReportSection, typeof SECTIONS>} AllSections */

/** Sections that are one text, which may be missing. @type {ReportSection[]} */
export const TEXTS = ['aim', 'method', 'discussion'];

/** @param {ReportSection} section */
export function sectionName(section) {
  switch (section) {
    case 'aim':
    case 'method':
    case 'discussion': return say(`fields-${section}`);
    default: return say(`${section}-title`);
  }
}

/** What a place is called in a notebook, also where it is no longer there. @param {CommentPlace} place @param {View} view */
export function placeName(place, { rows, handout }) {
  if ('section' in place) return sectionName(place.section);
  if ('row' in place) {
    const row = rows.find(({ id }) => id === place.row);
    return row ? say('notices-row', { n: row.number }) : say('history-row-gone');
  }
  const task = handout.tasks.find(({ id }) => id === place.task);
  return task ? say('handin-answer', { question: short(task.text) }) : say('feedback-question-gone');
}

/** Whether nothing is said. @param {Feedback} feedback */
export function isEmpty({ general, mark, comments }) {
  return [general, mark, ...comments.map(({ text }) => text)].every((text) => text.trim() === '');
}

/** The beginning of a text, as it is read. @param {string} text */
export function short(text) {
  const line = (text.trim().split('\n')[0] ?? '').replaceAll(EMPHASIS, '$2');
  return line.length > SHORT ? `${line.slice(0, SHORT - 1)}…` : line;
}
