/**
 * The notices that still stand in the notebooks of a class, those first that stand in most of them, each with the notebooks and
 * a way to them in the table.
 */
import { whoOf } from './class-table.js';
import { el, setHidden, setText } from './dom.js';
import { SHAPES, WEIGHTS } from './notices.js';
import { say, tell } from './words.js';

/** @import { Member } from './class-table.js' */
/** @import { Notice } from './types.js' */

/** A notice with the notebooks in which it stands, and as it stands in each. @typedef {{first: Notice, found: {member: Member, notice: Notice}[]}} StandingNotice */

export class ClassNotices {
  /** @param {(notice: string) => void} only shows those notebooks alone in which a notice stands */
  constructor(only) {
    this.only = only;
    this.lead = el('p', { class: 'hint' });
    this.list = el('ul', { class: 'plain' });
    this.root = el('section', { id: 'class-notices', 'aria-labelledby': 'class-notices-title', hidden: true },
      el('h3', { id: 'class-notices-title' }, say('class-standing')), this.lead, this.list);
  }

  /** @param {Member[]} members */
  show(members) {
    const read = members.filter(({ row }) => row).length;
    setHidden(this.root, read === 0);
    const all = standing(members);
    setText(this.lead, all.length > 0 ? say('class-standing-hint') : say('class-standing-none'));
    this.list.replaceChildren(...all.map((one) => this.item(one, read)));
  }

  /** @param {StandingNotice} one @param {number} read how many notebooks were read */
  item({ first, found }, read) {
    const count = say('class-standing-count', { n: found.length, all: read });
    const button = el('button', { type: 'button', 'aria-label': say('class-standing-show-of', { notice: tell(first.text) }),
      click: () => this.only(first.id) }, say('class-standing-show'));
    return el('li', { 'data-notice': first.id },
      el('p', {}, `${SHAPES[first.weight]} `, el('strong', {}, count), ` ${found.length > 1 ? tell(first.text) : found.map(inOne).join()}`),
      ...(found.length > 1 ? [where(found)] : []), el('p', { class: 'actions' }, button));
  }
}

/** Where a notice stands, and as it stands there. @param {StandingNotice['found']} found */
function where(found) {
  const list = el('ul');
  const details = el('details', {}, el('summary', {}, say('class-standing-where')), list);
  details.addEventListener('toggle', () => list.replaceChildren(...found.map((one) => el('li', {}, inOne(one)))));
  return details;
}

/** @param {StandingNotice['found'][number]} one */
function inOne({ member, notice }) {
  return say('class-standing-in', { name: whoOf(member), notice: tell(notice.text) });
}

/** @param {Member[]} members */
function standing(members) {
  /** @type {Map<string, StandingNotice>} */
  const all = new Map();
  for (const member of members) {
    /** @type {Set<string>} */
    const told = new Set();
    for (const notice of member.row?.notices ?? []) {
      if (told.has(notice.id)) continue;
      told.add(notice.id);
      const one = all.get(notice.id);
      if (one) one.found.push({ member, notice });
      else all.set(notice.id, { first: notice, found: [{ member, notice }] });
    }
  }
  return [...all.values()].sort((one, other) => (
    WEIGHTS.indexOf(one.first.weight) - WEIGHTS.indexOf(other.first.weight) || other.found.length - one.found.length));
}
