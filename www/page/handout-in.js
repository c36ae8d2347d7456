/**
 * Handing in, at the head of the report: who it is, what is fixed, what is still missing with a way to each of it, and one file whose name sorts.
 */
import { benchField } from './apparatus.js';
import { messageOf } from './core.js';
import { alike, byId, el, setHidden, setText } from './dom.js';
import { short } from './feedback-places.js';
import { takeDesk } from './files.js';
import { handInName } from './hand-in-name.js';
import { layerOf } from './handout-layer.js';
import { askToLeave, handedIn } from './leave.js';
import { reveal } from './leaves.js';
import { say } from './words.js';
import { toast } from './toast.js';
import { flushAll } from './typing.js';
import { reader } from './worker-slot.js';

/** @import { Book } from './book.js' */
/** @import { Desk } from './slope_of_light.js' */
/** @import { BenchField, Field, Piece, View } from './types.js' */
/** Where something missing is typed, and what it is called. @typedef {{id: string, text: string}} Way */

/** What tells a person apart from others. @type {(BenchField & Piece)[]} */
const WHO = ['student_number', 'group'];

/** Where what is asked for is typed. @type {Record<Piece, string>} */
const WAYS = {
  title: 'title',
  cautions: 'cautions-name',
  source: 'bench-wavelength',
  instruments: 'bench-instruments',
  rails: 'rails',
  screen: 'bench-small_divisions',
  time_bases: 'bench-time_base_uncertainty',
  air: 'bench-temperature',
  positions: 'plan',
  evidence: 'delays',
  uncertainty: 'shared',
  readings: 'readings',
  line: 'line',
  result: 'result',
  aim: 'bench-aim',
  method: 'bench-method',
  discussion: 'bench-discussion',
  people: 'bench-people',
  student_number: 'bench-student_number',
  group: 'bench-group',
  date: 'bench-date',
  answers: 'report',
};

export class HandIn {
  /** @param {Book} book */
  constructor(book) {
    this.book = book;
    this.who = WHO.map((name) => ({ name, field: benchField(book, name, { prose: true }) }));
    byId('bench-people').closest('.field')?.after(...this.who.map(({ field }) => field.root));
    this.digest = el('p', { class: 'hint', id: 'handout-digest' });
    this.fixed = el('p', { class: 'hint' });
    this.state = el('p', { class: 'lead', id: 'handin-state', role: 'status' });
    this.missing = el('ul', { id: 'handin-missing' });
    this.button = el('button', { type: 'button', id: 'hand-in', class: 'main', click: () => this.handIn() });
    this.root = el('div', { id: 'handin', hidden: true }, el('h3', {}, say('handin-title')), this.state, this.missing,
      el('p', { class: 'actions' }, this.button, el('button', { type: 'button', class: 'quiet', click: () => askToLeave() }, say('leave-ask'))),
      el('p', { class: 'hint' }, say('handin-hint')), this.fixed, this.digest);
    (document.querySelector('#report > .how') ?? byId('report-title')).after(this.root);
    /** What is missing, as shown. @type {Way[]} */
    this.shown = [];
  }

  /** @param {View} view */
  show({ bench, handout }) {
    const { entries, missing, fixed, needed } = handout;
    const isHanded = entries > 0;
    setHidden(this.root, !isHanded);
    for (const { name, field } of this.who) {
      setHidden(field.root, !isHanded && !fixed.includes(name) && !needed.includes(name) && bench[name].text === '');
      field.show(bench[name]);
    }
    if (!isHanded) return;
    const ways = missing.flatMap((piece) => (piece === 'answers' ? this.unanswered(handout) : [this.way(piece, bench.least_rows)]));
    setText(this.state, missing.length === 0 ? say('handin-complete') : say('handin-missing', { n: ways.length }));
    setText(this.button, say(missing.length === 0 ? 'handin-take' : 'handin-take-incomplete'));
    this.list(ways);
    // The help that belongs to the title may have come since.
    const how = this.root.nextElementSibling;
    if (how?.matches('details.how')) how.after(this.root);
    setText(this.fixed, fixed.length === 0 ? say('handin-nothing-fixed')
      : say('handin-fixed', { pieces: { all: fixed.map((piece) => say(`handout-pieces-${piece}`)) } }));
    void this.tellDigest(entries);
  }

  /** Shows what is missing; what is the same stays, and keeps the focus. @param {Way[]} ways */
  list(ways) {
    if (alike(ways, this.shown)) return;
    this.shown = ways;
    this.missing.replaceChildren(...ways.map(({ id, text }) => el('li', {}, link(id, text))));
  }

  /** @param {View['handout']} handout @returns {Way[]} */
  unanswered({ tasks }) {
    const open = tasks.filter(({ asks, answer }) => asks !== 'nothing' && (answer.text.trim() === '' || answer.problem));
    return open.map(({ id, text }) => ({ id: `task-${id}`, text: say('handin-answer', { question: short(text) }) }));
  }

  /** @param {Piece} piece @param {Field} least how many rows are asked for */
  way(piece, { text, default: taken }) {
    return { id: WAYS[piece], text: say('handin-lacks', { piece, name: say(`handout-pieces-${piece}`), rows: text || taken }) };
  }

  /** @param {number} entries */
  async tellDigest(entries) {
    const digest = await digestOf(this.book.desk, entries).catch(() => undefined);
    setText(this.digest, digest ? say('handout-digest', { digest }) : '');
  }

  async handIn() {
    flushAll();
    const { bench } = this.book.current();
    const name = handInName(bench.group.text, bench.student_number.text, bench.people.text, bench.date.text);
    try {
      await takeDesk(this.book.desk, name);
      handedIn();
    } catch (error) {
      toast(messageOf(error));
    }
  }
}

/**
 * The digest of the teacher's layer, SHA-256 of its entries: the same for all to whom it was handed out.
 * @param {Desk} desk
 * @param {number} entries
 */
export async function digestOf(desk, entries) {
  const digest = await reader.ask('digest', layerOf(desk, entries));
  return digest.slice(0, 16);
}

/** @param {string} id @param {string} text */
function link(id, text) {
  return el('a', { href: `#${id}`, click: (/** @type {Event} */ event) => {
    event.preventDefault();
    const place = byId(id);
    reveal(place);
    for (let box = place.closest('details'); box; box = box.parentElement?.closest('details') ?? null) box.open = true;
    place.scrollIntoView({ block: 'center' });
    place.focus({ preventScroll: true });
  } }, text);
}
