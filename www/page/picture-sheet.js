/**
 * The marks of one picture while they are worked on: those of the notebook, or proposed ones that a person has yet to
 * accept. Nothing here is computed but pixels to hundredths of a pixel.
 */

/** @import { Corner, LensChecks, PixelPoint, Proposal } from './worker-types.js' */
/** @import { Grid, GridCheck, Picture, Spot } from './types.js' */

/** Which mark: a corner, a check of the grid, or a repeat of an edge, by its place in its list.
 * @typedef {'corner' | 'check' | 'a' | 'b'} Kind */
/** @typedef {{kind: Kind, index: number}} MarkPlace */
/**
 * - `proposed`: found by the worker. `doubted`: found, and to be looked at before it is taken; then it is `looked`.
 * - `sought`: not found, so it stands anywhere. `set`: put there by a person.
 * - `taken`: in the notebook.
 * @typedef {'proposed' | 'doubted' | 'looked' | 'sought' | 'set' | 'taken'} MarkState
 */
/** @typedef {{kind: Kind, index: number, at: Spot, state: MarkState, half?: [number, number]}} Mark half: of a check */

/** A row's picture with all its marks. */
export class Sheet {
  /**
   * @param {{row: number, picture: Picture, columns: number, rows: number, gridId: number, marks: Mark[]}} about
   */
  constructor({ row, picture, columns, rows, gridId, marks }) {
    this.row = row;
    this.picture = picture;
    this.columns = columns;
    this.rows = rows;
    this.gridId = gridId;
    this.marks = marks;
  }

  /** @param {MarkPlace} place */
  mark({ kind, index }) {
    return this.marks.find((mark) => mark.kind === kind && mark.index === index);
  }

  /** @param {Kind} kind @returns {Spot[]} */
  spots(kind) {
    return this.marks.filter((mark) => mark.kind === kind).map(({ at }) => at);
  }

  /** The grid as it would go into the notebook. @returns {Grid} */
  grid() {
    const checks = this.marks.flatMap(({ kind, half, at }) => (kind === 'check' && half
      ? [{ half_columns: half[0], half_rows: half[1], at }] : []));
    const corners = /** @type {Grid['corners']} */ (this.spots('corner'));
    return { id: this.gridId, columns: this.columns, rows: this.rows, corners, checks };
  }

  /** The picture with its edges as it would go into the notebook. @returns {Picture} */
  edges() {
    return { ...this.picture, grid: this.gridId, a: this.spots('a'), b: this.spots('b') };
  }

  /** The same with those marks only that were accepted. @returns {Picture} */
  settled() {
    const marks = this.marks.filter(({ state }) => state === 'taken');
    return new Sheet({ ...this, marks }).edges();
  }

  /** Whether some mark is not in the notebook. */
  isOpen() {
    return this.marks.some(({ state }) => state !== 'taken');
  }

  /** Whether the grid is not in the notebook. */
  hasOwnGrid() {
    return this.marks.some(({ kind, state }) => kind === 'corner' && state !== 'taken');
  }

  /** Marks that stand anywhere. */
  sought() {
    return this.marks.filter(({ state }) => state === 'sought');
  }

  /** Marks that a person has yet to look at. */
  doubted() {
    return this.marks.filter(({ state }) => state === 'doubted');
  }

  /** Gives the edges each other's names. */
  exchange() {
    for (const mark of this.marks) {
      if (mark.kind === 'a' || mark.kind === 'b') mark.kind = mark.kind === 'a' ? 'b' : 'a';
    }
    this.marks.sort((one, other) => Number(one.kind === 'b') - Number(other.kind === 'b'));
  }

  /** Puts checks that go with the corners in place of those that nobody set. @param {LensChecks | undefined} found */
  layChecks(found) {
    const kept = this.marks.filter(({ kind, state }) => kind !== 'check' || state === 'set');
    const isFree = (/** @type {Mark} */ { index }) => !kept.some((mark) => mark.kind === 'check' && mark.index === index);
    const checks = checkMarks(found?.seen ?? [], this, found?.is_doubted ?? false).filter(isFree);
    const edges = kept.findIndex(({ kind }) => kind === 'a');
    this.marks = [...kept.slice(0, edges), ...checks, ...kept.slice(edges)];
  }

  /** Takes a mark away; those of its kind are counted anew. @param {Mark} mark */
  remove(mark) {
    this.marks = this.marks.filter((other) => other !== mark);
    this.marks.filter(({ kind }) => kind === mark.kind).forEach((other, index) => { other.index = index; });
  }

  /** Goes on with the repeats of another sheet of this row that are not in the notebook yet. @param {Sheet} other */
  addRepeats(other) {
    for (const mark of other.marks) {
      const { kind, state } = mark;
      if ((kind === 'a' || kind === 'b') && state !== 'taken') this.marks.push({ ...mark, index: this.spots(kind).length });
    }
  }

  /** Puts the marks of a grid in place of those there are. @param {Mark[]} grid */
  lay(grid) {
    this.marks = [...grid, ...this.marks.filter(({ kind }) => kind === 'a' || kind === 'b')];
  }

  /**
   * Moves a mark.
   * @param {MarkPlace} place
   * @param {Spot} at
   */
  move(place, at) {
    const mark = this.mark(place);
    if (!mark) return;
    mark.at = at;
    if (mark.state !== 'taken') mark.state = 'set';
  }
}

/** A place that stays within the picture, in whole hundredths. @param {PixelPoint} at @param {Picture} picture @returns {Spot} */
export function spot({ x, y }, { width, height }) {
  const within = (/** @type {number} */ value, /** @type {number} */ most) => Math.min(Math.max(Math.round(value * 100), 0), most * 100);
  return [within(x, width), within(y, height)];
}

/** @param {Spot} at @returns {PixelPoint} */
export function point([x, y]) {
  return { x: x / 100, y: y / 100 };
}

/** The corners of a grid with their places in divisions. @param {Grid} grid @returns {Corner[]} */
export function corners({ columns, rows, corners: spots }) {
  const places = [[0, 0], [columns, 0], [columns, rows], [0, rows]];
  return spots.map((at, index) => {
    const [column = 0, row = 0] = places[index] ?? [];
    return { at: point(at), column, row };
  });
}

/** The checks of a grid, likewise. @param {Grid} grid @returns {Corner[]} */
export function checkPlaces({ checks = [] }) {
  return checks.map(({ at, half_columns, half_rows }) => ({ at: point(at), column: half_columns / 2, row: half_rows / 2 }));
}

/** Checks as they go into the notebook. @param {Corner[]} checks @param {Picture} picture @returns {GridCheck[]} */
export function gridChecks(checks, picture) {
  return checks.map(({ at, column, row }) => ({ half_columns: 2 * column, half_rows: 2 * row, at: spot(at, picture) }));
}

/**
 * The marks of a grid of the notebook.
 * @param {Grid} grid
 * @returns {Mark[]}
 */
export function gridMarks({ corners: spots, checks = [] }) {
  return [
    ...spots.map((at, index) => /** @type {Mark} */ ({ kind: 'corner', index, at, state: 'taken' })),
    ...checks.map(({ at, half_columns: right, half_rows: down }, index) => /** @type {Mark} */ (
      { kind: 'check', index, at, state: 'taken', half: [right, down] })),
  ];
}

/**
 * The marks of the edges in the notebook.
 * @param {Picture} picture
 * @returns {Mark[]}
 */
export function edgeMarks({ a, b }) {
  const of = (/** @type {'a' | 'b'} */ kind, /** @type {Spot[]} */ spots) => spots.map((at, index) => (
    /** @type {Mark} */ ({ kind, index, at, state: 'taken' })));
  return [...of('a', a), ...of('b', b)];
}

/**
 * The grid that was found, or one that stands anywhere.
 * @param {Proposal | undefined} found
 * @param {Picture} picture
 * @returns {Mark[]}
 */
export function proposedGrid(found, picture) {
  if (!found) {
    const { width, height } = picture;
    const anywhere = [[0.2, 0.2], [0.8, 0.2], [0.8, 0.8], [0.2, 0.8]];
    return anywhere.map(([x = 0, y = 0], index) => (
      { kind: 'corner', index, at: spot({ x: x * width, y: y * height }, picture), state: 'sought' }));
  }
  const { is_doubted, corners: [, right] } = found;
  return [
    ...found.corners.map(({ at }, index) => /** @type {Mark} */ (
      { kind: 'corner', index, at: spot(at, picture), state: stateOf(is_doubted) })),
    ...checkMarks([found.centre, ...found.sides], { picture, columns: right.column }, is_doubted),
  ];
}

/**
 * Checks that were found; each of the three has its number.
 * @param {Corner[]} checks
 * @param {{picture: Picture, columns: number}} on
 * @param {boolean} isDoubted
 * @returns {Mark[]}
 */
function checkMarks(checks, { picture, columns }, isDoubted) {
  return checks.map(({ at, column, row }) => ({
    kind: 'check', index: column === 0 ? 1 : column === columns ? 2 : 0, at: spot(at, picture),
    state: stateOf(isDoubted), half: [2 * column, 2 * row],
  }));
}

/** @param {boolean} isDoubted @returns {MarkState} of a mark that was found */
function stateOf(isDoubted) {
  return isDoubted ? 'doubted' : 'proposed';
}

/**
 * The edges that were found; one that was not stands anywhere.
 * @param {Proposal | undefined} found
 * @param {Picture} picture
 * @returns {Mark[]}
 */
export function proposedEdges(found, picture) {
  return (/** @type {const} */ (['a', 'b'])).map((kind, which) => {
    const edge = found?.edges[which];
    const { width, height } = picture;
    return edge
      ? { kind, index: 0, at: spot(edge.at, picture), state: stateOf(edge.is_doubted) }
      : { kind, index: 0, at: spot({ x: width * (0.4 + 0.2 * which), y: height / 2 }, picture), state: 'sought' };
  });
}
