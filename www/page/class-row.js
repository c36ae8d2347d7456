/**
 * One notebook of a class as a row: what the core says of it and its figures with all their digits. Nothing is taken from what
 * the file says of itself.
 */
import { layerOf } from './handout-layer.js';
import { Desk } from './slope_of_light.js';

/** @import { BenchField, Cell, FitFigure, LineView, Notice, Piece, ResultView, RowView, Value, View } from './types.js' */

/**
 * @typedef {Object} ClassRow
 * @property {string} title as typed
 * @property {string} people as typed
 * @property {number} entries of its log
 * @property {number} used rows in the line
 * @property {number} struck
 * @property {number} incomplete
 * @property {boolean} sealed whether a closed seal covers the result
 * @property {boolean} scattered whether its uncertainty is claimed from the scatter of the residuals, and not as stated
 * @property {string} coverage its coverage probability as typed; empty where that is the usual one
 * @property {ResultView['refusal']} refusal why there is no result
 * @property {LineView['method']} method
 * @property {Notice[]} notices but those only good to know
 * @property {Piece[]} lacks what is asked for and is not there
 * @property {FitFigure[]} figures
 * @property {number | null} after_seal changes after a seal was opened
 * @property {string[]} merged of each partner's notebook that was merged the digest of the first entry that is its own
 * @property {string[]} readings what was read for each row in the line
 * @property {string} layer the teacher's; empty where it was not handed out
 * @property {string} rows those in the line, one a line: where they were read and how far they lie off it
 * @property {{name: Value, share: string}[]} parts the components of its budget, the largest first
 * @property {string[]} rails their names, from the splitter on; empty where one has none
 */

/** What a person is asked to write where no hand-out says what it asks for. @type {(BenchField & Piece)[]} */
const ASKED = ['people', 'aim', 'method', 'discussion'];

/** The coverage probability where none is typed. */
const USUAL_COVERAGE = 0.95;

/** The longest name of a rail that is drawn. */
const LONGEST = 100;

/** The cells that hold what was read. @type {Cell[]} */
const READ = ['rail', 'reading', 'time_base', 'edge_a', 'edge_b', 'distance', 'delay'];

/** @param {string} text a `notebook.json` @returns {ClassRow} */
export function rowOf(text) {
  const desk = Desk.open(text);
  try {
    const { view, rows } = desk.news();
    const all = rows.flatMap((row) => (row && 'cells' in row ? [row] : []));
    const used = all.filter(({ state }) => state === 'used');
    const figures = desk.figures();
    const rails = view.rails.map(({ fields }) => fields.name.text.trim());
    return {
      title: view.title,
      people: view.bench.people.text,
      entries: desk.length(),
      used: used.length,
      struck: all.filter(({ state }) => state === 'struck').length,
      incomplete: all.filter(({ state }) => state === 'incomplete').length,
      sealed: view.result.sealed,
      scattered: view.result.basis === 'scatter' && view.result.choice !== null,
      coverage: figures.some(({ id, value }) => id === 'coverage' && value !== USUAL_COVERAGE) ? view.bench.coverage.text.trim() : '',
      refusal: view.result.refusal,
      method: view.line.method,
      notices: view.notices.filter(({ weight }) => weight !== 'know'),
      lacks: lacking(view),
      figures,
      after_seal: desk.changes_after_seal() ?? null,
      merged: desk.merged(),
      readings: used.map(asRead),
      layer: layerOf(desk, view.handout.entries),
      rows: used.map((row) => asShown(row, rails)).join('\n'),
      rails: rails.map((name) => name.slice(0, LONGEST)),
      parts: view.budget.components.map(({ name, bar }) => ({ name, share: bar })),
    };
  } finally {
    desk.free();
  }
}

/** What is asked for and is not there, by the hand-out where there is one. @param {Omit<View, 'rows'>} view @returns {Piece[]} */
function lacking({ bench, handout: { entries, missing } }) {
  return entries > 0 ? missing : ASKED.filter((field) => bench[field].text.trim() === '');
}

/** What was read for a row, digit for digit; of a picture or a trace, the delay that came of it. @param {RowView} row */
function asRead({ cells, evidence, delay }) {
  return [...READ.map((cell) => cells[cell].text.trim()), evidence && delay].join('\t');
}

/** Where a row was read, and how far it lies off the line, as the page shows it. @param {RowView} row @param {string[]} rails */
function asShown({ cells, distance, delay, residual }, rails) {
  const typed = cells.distance.text.trim() !== '';
  const { text, unit } = typed ? cells.distance : cells.reading;
  const rail = typed ? '' : railOf(cells.rail.text.trim(), rails);
  return [rail, residual, distance, delay, unit, text.replaceAll(/\s+/g, ' ')].join('\t');
}

/** The place of the rail that a row names, by its name or its number; the only one there is if it names none. @param {string} name @param {string[]} rails */
function railOf(name, rails) {
  const called = rails.findIndex((rail, index) => (rail || String(index + 1)).toLowerCase() === name.toLowerCase());
  return Math.max(called, 0);
}
