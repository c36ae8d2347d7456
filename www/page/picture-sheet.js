/**
 * The marks of one picture while they are worked on: those of the notebook, or proposed ones that a person has yet to
 * accept. Nothing here is computed but pixels to hundredths of a pixel.
 */

/** @import { Corner, LensChecks, PixelPoint, Proposal, ProposedEdge } from './worker-types.js' */
/** @import { EdgeHeights, Grid, GridCheck, Picture, Spot } from './types.js' */

/** @typedef {typeof ENDS[number]} End */
/** Which mark: a corner, a check of the grid, a repeat of an edge, or an end of one, by its place in its list.
 * @typedef {'corner' | 'check' | 'a' | 'b' | End} Kind */
/** @typedef {{kind: Kind, index: number}} MarkKey */
/**
 * - `proposed`: found by the worker. `doubted`: found, and to be looked at before it is taken; then it is `looked`.
 * - `sought`: not found, so it stands anywhere. `set`: put there by a person.
 * - `taken`: in the notebook.
 * @typedef {'proposed' | 'doubted' | 'looked' | 'sought' | 'set' | 'taken'} MarkState
 */
/** @typedef {{kind: Kind, index: number, at: Spot, state: MarkState, half?: [number, number]}} Mark half: of a check */

/** The ends of the edges: where each leaves its baseline, and where it reaches its top. */
const ENDS = /** @type {const} */ (['a-baseline', 'a-top', 'b-baseline', 'b-top']);
/** How far from its edge an end is put that was not found, and how near to it what was found must be, pixels. */
const BESIDE = 40;
/** How thick a trace is where that was neither found nor stated, pixels (common practice, no source). */
const THICKNESS = 3;

/** @param {Kind} kind @returns {kind is End} */
export function isEnd(kind) {
  return ENDS.some((end) => end === kind);
}

/** The thickness of the thicker trace, pixels, as far as it was found. @param {(ProposedEdge | null)[]} edges */
export function thickest(edges) {
  const found = edges.flatMap((edge) => edge?.thickness ?? []);
  return found.length > 0 ? Math.max(...found) : undefined;
}

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
    /** Whether the ends of the edges are marked, stated as off the screen, or about to be. */
    this.hasEnds = picture.heights !== undefined;
    /** How thick the traces are where that was not stated, pixels. */
    this.thickness = THICKNESS;
  }

  /** @param {MarkKey} place */
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
    const heights = this.openEnd() ? this.picture.heights : this.heights();
    return { ...new Sheet({ ...this, marks }).edges(), ...(heights && { heights }) };
  }

  /** Between which ends the edges rise, as the marks stand. @returns {EdgeHeights | undefined} */
  heights() {
    if (!this.hasEnds) return undefined;
    const at = (/** @type {End} */ kind) => this.mark({ kind, index: 0 })?.at ?? null;
    return {
      a: { baseline: at('a-baseline'), top: at('a-top') },
      b: { baseline: at('b-baseline'), top: at('b-top') },
      thickness: this.picture.heights?.thickness ?? this.thickness,
    };
  }

  /** The first end that a person has yet to move or to look at. */
  openEnd() {
    return this.marks.find(({ kind, state }) => isEnd(kind) && (state === 'sought' || state === 'doubted'));
  }

  /** Whether no end is off the screen. */
  hasAllEnds() {
    return ENDS.every((kind) => this.mark({ kind, index: 0 }));
  }

  /**
   * Puts the ends that are not there where they were found, for a person to look at, or beside their edges, to be moved.
   * @param {(ProposedEdge | null)[]} edges found on the picture
   */
  addEnds(edges) {
    this.hasEnds = true;
    this.thickness = thickest(edges) ?? THICKNESS;
    for (const kind of ENDS) {
      if (this.mark({ kind, index: 0 })) continue;
      const { x, y } = point(this.spots(kind.startsWith('a') ? 'a' : 'b')[0] ?? [0, 0]);
      const isTop = kind.endsWith('top');
      const found = edges.find((edge) => edge && Math.hypot(edge.at.x - x, edge.at.y - y) < BESIDE)?.ends[isTop ? 1 : 0];
      const way = isTop ? BESIDE : -BESIDE;
      const at = spot(found ?? { x: x + way, y: y - way }, this.picture);
      this.marks.push({ kind, index: 0, at, state: found ? 'doubted' : 'sought' });
    }
  }

  /** Takes the ends away. */
  dropEnds() {
    const { heights, ...picture } = this.picture;
    this.picture = picture;
    this.hasEnds = false;
    this.marks = this.marks.filter(({ kind }) => !isEnd(kind));
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

  /** Goes on with repeats and ends of another sheet of this row that are not in the notebook yet. @param {Sheet} other */
  addRepeats(other) {
    this.thickness = other.thickness;
    for (const mark of other.marks) {
      const { kind, state } = mark;
      if (state === 'taken') continue;
      if (kind === 'a' || kind === 'b') this.marks.push({ ...mark, index: this.spots(kind).length });
      if (!isEnd(kind) || this.mark(mark)) continue;
      this.hasEnds = true;
      this.marks.push({ ...mark });
    }
  }

  /** Puts the marks of a grid in place of those there are. @param {Mark[]} grid */
  lay(grid) {
    this.marks = [...grid, ...this.marks.filter(({ kind }) => kind !== 'corner' && kind !== 'check')];
  }

  /**
   * Moves a mark.
   * @param {MarkKey} place
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
 * The marks of the edges in the notebook, and of their ends.
 * @param {Picture} picture
 * @returns {Mark[]}
 */
export function edgeMarks({ a, b, heights }) {
  const end = (/** @type {End} */ kind, /** @type {Spot | null | undefined} */ at) => (
    at ? [/** @type {Mark} */ ({ kind, index: 0, at, state: 'taken' })] : []);
  const of = (/** @type {'a' | 'b'} */ kind, /** @type {Spot[]} */ spots) => spots.map((at, index) => (
    /** @type {Mark} */ ({ kind, index, at, state: 'taken' })));
  return [...of('a', a), ...of('b', b), ...end('a-baseline', heights?.a.baseline), ...end('a-top', heights?.a.top),
    ...end('b-baseline', heights?.b.baseline), ...end('b-top', heights?.b.top)];
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
