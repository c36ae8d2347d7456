/**
 * What a teacher writes beside the places of a report: a button at each, and what is said of it below.
 */
import { alike, el, setHidden } from './dom.js';
import { SECTIONS, TEXTS, placeName, sectionName } from './feedback-places.js';
import { say } from './words.js';

/** @import { View } from './types.js' */
/** @import { Comment, CommentPlace, Feedback } from './worker-types.js' */
/** A place of the report: where its button goes, and where what is said of it. @typedef {{place: CommentPlace, button: (node: Element) => void, box: (node: HTMLElement) => void}} CommentSpot */

/** The report lies in a tree of its own, in the colours of paper. @type {Record<string, Partial<CSSStyleDeclaration>>} */
const STYLES = {
  '.spot': { font: 'inherit', fontSize: '9pt', padding: '.1rem .5rem', border: '1px solid #888', borderRadius: '4px', background: '#fff', color: '#7d2f52', cursor: 'pointer' },
  'td > .spot': { marginInlineStart: '.4rem' },
  'td.number:has(.spot)': { whiteSpace: 'nowrap' },
  '.said': { margin: '.3rem 0', padding: '.4rem .6rem', borderInlineStart: '4px solid #7d2f52', background: '#f3e7e6', textAlign: 'start' },
  '.said > p': { margin: '.2rem 0 0', whiteSpace: 'pre-wrap' },
  '.said > label': { display: 'block', fontWeight: '600', fontSize: '9pt' },
  '.said > label > textarea': { display: 'block', inlineSize: '100%', boxSizing: 'border-box', marginBlock: '.2rem', font: 'inherit', fontWeight: 'normal' },
  ':focus-visible': { outline: '2px solid #7d2f52', outlineOffset: '1px' },
};

/**
 * Makes the places of a report ones that can be written beside, and shows what was written.
 * @param {HTMLElement} report its body
 * @param {View} view of the notebook, with its rows
 * @param {Feedback} feedback what is written goes in there
 * @param {Feedback[]} others what others say, to be read
 * @param {() => void} changed
 */
export function layComments(report, view, feedback, others, changed) {
  for (const { place, button, box } of spotsOf(report, view)) {
    const name = placeName(place, view);
    const write = (/** @type {Comment} */ comment) => {
      const written = new Written(name, comment, changed, () => {
        feedback.comments.splice(feedback.comments.indexOf(comment), 1);
        setHidden(open, false);
        open.focus();
        changed();
      });
      box(written.root);
      setHidden(open, true);
      return written;
    };
    const open = el('button', { type: 'button', class: 'spot', 'aria-label': say('class-comment-on', { place: name }), click: () => {
      const comment = { place, text: '' };
      feedback.comments.push(comment);
      write(comment).text.focus();
    } }, 'row' in place ? '+' : say('class-comment'));
    button(open);
    for (const other of others) {
      for (const comment of other.comments) if (alike(comment.place, place)) box(saidBy(other, comment.text));
    }
    for (const comment of feedback.comments) if (alike(comment.place, place)) write(comment);
  }
}

/** What somebody else says, to be read. @param {Feedback} other @param {...string} texts */
export function saidBy({ from }, ...texts) {
  return el('div', { class: 'said', role: 'note' }, el('strong', { dir: 'auto' }, from.trim() || say('class-colleague')),
    ...texts.filter((text) => text.trim()).map((text) => el('p', { class: 'typed', dir: 'auto' }, text)));
}

/** The style of what was laid, for the tree in which the report lies. */
export function commentStyles() {
  const sheet = new CSSStyleSheet();
  for (const [selector, style] of Object.entries(STYLES)) {
    const rule = sheet.cssRules[sheet.insertRule(`${selector} {}`, sheet.cssRules.length)];
    if (rule instanceof CSSStyleRule) Object.assign(rule.style, style);
  }
  return sheet;
}

/** One comment, as it is written. */
class Written {
  /** @param {string} name @param {Comment} comment @param {() => void} changed @param {() => void} gone */
  constructor(name, comment, changed, gone) {
    this.text = el('textarea', { rows: '2', dir: 'auto', input: () => {
      comment.text = this.text.value;
      changed();
    } });
    this.text.value = comment.text;
    this.root = el('div', { class: 'said' }, el('label', {}, say('class-comment-on', { place: name }), this.text),
      el('button', { type: 'button', class: 'spot', click: () => {
        (this.root.closest('tr.said-row') ?? this.root).remove();
        gone();
      } }, say('remove')));
  }
}

/** The places of a report. @param {HTMLElement} report @param {View} view @returns {CommentSpot[]} */
function spotsOf(report, view) {
  const heads = /** @type {NodeListOf<HTMLElement>} */ (report.querySelectorAll('section > h2'));
  const head = (/** @type {string} */ text) => [...heads].find((one) => one.textContent === text);
  const sections = SECTIONS.flatMap((section) => {
    const title = sectionName(section);
    const found = head(title) ?? (TEXTS.includes(section) ? missing(report, title) : undefined);
    return found ? [besideHead({ section }, found)] : [];
  });
  const rows = linesBelow(head(sectionName('readings'))).flatMap((line) => {
    const row = view.rows.find(({ number }) => String(number) === line.cells[0]?.textContent);
    return row ? [inLine({ row: row.id }, line)] : [];
  });
  const asked = view.handout.tasks.filter(({ asks }) => asks !== 'nothing');
  const tasks = linesBelow(head(say('tables-answers'))).flatMap((line, index) => {
    const task = asked[index];
    return task ? [inLine({ task: task.id }, line)] : [];
  });
  return [...sections, ...rows, ...tasks];
}

/** A section that the notebook has nothing for: that is often what there is to say. @param {HTMLElement} report @param {string} title */
function missing(report, title) {
  const head = el('h2', {}, title);
  (report.querySelector('main') ?? report).append(el('section', {}, head, el('p', {}, say('report-not-given'))));
  return head;
}

/** The lines of the first table of a section. @param {HTMLElement | undefined} head */
function linesBelow(head) {
  return [...head?.parentElement?.querySelector('table')?.tBodies[0]?.rows ?? []];
}

/** @param {CommentPlace} place @param {HTMLElement} head @returns {CommentSpot} */
function besideHead(place, head) {
  const line = el('p');
  return {
    place,
    button: (node) => {
      line.append(node);
      head.after(line);
    },
    box: (node) => line.after(node),
  };
}

/** @param {CommentPlace} place @param {HTMLTableRowElement} line @returns {CommentSpot} */
function inLine(place, line) {
  return {
    place,
    button: (node) => line.cells[0]?.append(node),
    box: (node) => line.after(el('tr', { class: 'said-row' }, el('td', { colspan: String(line.cells.length) }, node))),
  };
}
