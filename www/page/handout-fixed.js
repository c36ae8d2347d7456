/**
 * What a hand-out fixes, shown as such: it can be read and not typed in, and says so in words. The core refuses it in any
 * case; this spares a person the try.
 */
import { byId, el, setAttribute } from './dom.js';
import { DIRECT } from './row.js';
import { say } from './words.js';

/** @import { Cell, Piece, View } from './types.js' */

/** Where each piece stands on the page. @type {Partial<Record<Piece, string[]>>} */
const STANDS = {
  title: ['#title'],
  source: ['#path', '#bench-wavelength', '#bench-pulse_rate', '#bench-beam_angle', '#beam'],
  instruments: ['#apparatus-instruments'],
  rails: ['#rails'],
  screen: ['#bench-small_divisions', '#bench-screen_width', '#bench-edge_half_width', '#bench-edge_reason', '#bench-mark_uncertainty',
    '#bench-trace_level', '#bench-trace_fraction', '#picture-fraction'],
  time_bases: ['#bench-time_base_uncertainty', '#settings'],
  air: ['#apparatus-air'],
  uncertainty: ['#shared'],
  result: ['#bench-coverage'],
  aim: ['#bench-aim'],
  method: ['#bench-method'],
  discussion: ['#bench-discussion'],
  people: ['#bench-people'],
  student_number: ['#bench-student_number'],
  group: ['#bench-group'],
  date: ['#bench-date'],
  readings: ['#row-new'],
};
/** Which cells of the rows handed out each piece fixes. @type {Partial<Record<Piece, Cell[]>>} */
const CELLS = {
  positions: ['rail', 'reading', 'distance', 'distance_uncertainty'],
  time_bases: ['time_base'],
  readings: ['edge_a', 'edge_b', 'delay', 'delay_uncertainty'],
};

/** @typedef {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement | HTMLButtonElement} Control */

export class FixedMarks {
  constructor() {
    /** What is marked, and how it was before. @type {Map<Control, () => void>} */
    this.marked = new Map();
    /** The words beside it. @type {Map<Element, HTMLElement>} */
    this.told = new Map();
    this.rows = el('p', { class: 'hint', hidden: true });
    byId('readings-table').parentElement?.before(this.rows);
  }

  /** @param {View} view */
  show({ handout: { entries, given, fixed: ruled }, rows }) {
    const fixed = entries === 0 ? [] : ruled;
    // The rules of the laboratory are the teacher's in any case.
    const stands = [...(entries > 0 ? ['#cautions-local-fields'] : []), ...fixed.flatMap((piece) => STANDS[piece] ?? [])];
    const places = stands.flatMap((place) => document.querySelector(place) ?? []);
    const cells = fixed.flatMap((piece) => CELLS[piece] ?? []);
    const handed = rows.filter(({ id }) => given !== null && id <= given);
    const boxes = handed.flatMap(({ id }) => cells.flatMap((cell) => document.getElementById(`cell-${id}-${cell}`) ?? []));
    this.mark([...places, ...boxes].flatMap(controls));
    this.tell(places);
    const columns = cells.filter((cell) => !DIRECT.includes(cell)).map((cell) => say(`readings-columns-${cell}`));
    this.rows.hidden = handed.length === 0 || columns.length === 0;
    if (!this.rows.hidden) this.rows.textContent = say('handout-fixed-rows', { columns: { all: columns }, n: handed.length });
  }

  /** @param {Control[]} controls */
  mark(controls) {
    const wanted = new Set(controls);
    for (const [control, back] of this.marked) {
      if (wanted.has(control) && control.isConnected) continue;
      back();
      this.marked.delete(control);
    }
    for (const control of wanted) if (!this.marked.has(control)) this.marked.set(control, held(control));
  }

  /** @param {Element[]} places */
  tell(places) {
    const wanted = new Set(places);
    for (const [place, words] of this.told) {
      if (wanted.has(place) && words.isConnected) continue;
      words.remove();
      this.told.delete(place);
    }
    for (const place of wanted) {
      if (this.told.has(place) || place.id === 'row-new' || place.id === 'title') continue;
      const words = el('p', { class: 'hint' }, say('handout-fixed'));
      const field = place.closest('.field');
      if (field) field.append(words);
      else place.prepend(words);
      this.told.set(place, words);
    }
  }
}

/** @param {Element} place @returns {Control[]} */
function controls(place) {
  const found = place.matches('input, textarea, select, button') ? [place] : [...place.querySelectorAll('input, textarea, select, button')];
  return /** @type {Control[]} */ (found);
}

/** Has a control be read only; gives what undoes that. @param {Control} control */
function held(control) {
  const title = control.getAttribute('title') ?? undefined;
  control.dataset.fixed = '';
  setAttribute(control, 'title', say('handout-fixed'));
  const isText = control instanceof HTMLTextAreaElement || control instanceof HTMLInputElement && control.type === 'text';
  if (isText) control.readOnly = true;
  else control.disabled = true;
  return () => {
    delete control.dataset.fixed;
    setAttribute(control, 'title', title);
    if (isText) control.readOnly = false;
    else control.disabled = false;
  };
}
