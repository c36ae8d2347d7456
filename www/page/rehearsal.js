/**
 * A rehearsal: a new notebook with the bench and the plan of the open one, and readings that the core simulates. All of
 * it is one entry of its log, so that the readings never stand without the word that they are a rehearsal's.
 */
import { core } from './core.js';
import { now } from './book.js';
import { words } from './strings.js';

/** @import { Desk, Edit, PlannedText, View } from './types.js' */

/** The cells of a simulated row, in their order. @type {import('./types.js').Cell[]} */
const CELLS = ['rail', 'reading', 'time_base', 'edge_a', 'edge_b'];

/**
 * @param {Desk} desk
 * @param {View} view
 * @param {PlannedText[]} plan
 * @returns {Desk}
 */
export function rehearsalOf(desk, view, plan) {
  const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
  const rows = desk.rehearse(seed);
  /** @type {Edit[]} */
  const edits = [
    { set_title: words.plan.rehearsalOf(view.title || words.untitled) },
    { set_rehearsal: seed },
    { set_decimal_mark: view.decimal_mark },
    { set_path: view.path },
    ...entries(view.bench).map(([field, { text }]) => ({ set_bench: { field, text } })),
    ...view.rails.flatMap(({ id: rail, fields, unit, sense, splice }) => [
      { add_rail: rail }, { set_ruler_unit: { rail, unit } }, { set_sense: { rail, sense } },
      { set_splice: { rail, splice } },
      ...entries(fields).map(([field, { text }]) => ({ set_rail: { rail, field, text } })),
    ]),
    ...view.settings.map(({ id, time_per_division, uncertainty }) => (
      { set_setting: { id, time_per_division: time_per_division.text, uncertainty: uncertainty.text } })),
    // An error of chosen rows has no rows here.
    ...view.shared.filter(({ rows: scope }) => typeof scope === 'string' || !('rows' in scope)).map((shared) => (
      { set_shared: { ...shared, uncertainty: shared.uncertainty.text, degrees_of_freedom: shared.degrees_of_freedom.text } })),
    ...plan.map((position) => ({ set_position: position })),
    ...rows.map((texts, place) => (
      { add_row: { row: place + 1, cells: Object.fromEntries(CELLS.map((cell, at) => [cell, texts[at] ?? ''])) } })),
  ];
  const rehearsal = core.Desk.blank();
  rehearsal.apply({ together: edits }, now());
  return rehearsal;
}

/**
 * @template {string} Key
 * @template Value
 * @param {Record<Key, Value>} record
 */
function entries(record) {
  return /** @type {[Key, Value][]} */ (Object.entries(record));
}
