/**
 * The shapes that cross the border between the notebook's core (wasm) and the page. They mirror the core's
 * view, notebook and notices; the page shows them as they are and computes nothing from them.
 */

export type DecimalMark = 'point' | 'comma';
export type Path = 'detector' | 'mirror';
export type RulerUnit = 'millimetre' | 'centimetre' | 'metre' | 'inch';
export type Sense = 'grows' | 'falls';
export type Basis = 'stated' | 'scatter';
export type ActsOn = 'distances' | 'delays';
export type Effect = 'offset' | 'scale' | 'noise';
export type Shape = 'normal' | 'rectangular' | 'triangular' | 'arcsine' | 'student';
export type Scope = 'all' | { rail: number } | { time_base: string } | { rows: number[] };
export type Weight = 'grave' | 'look' | 'know';
export type SectionName = 'apparatus' | 'readings' | 'delays' | 'line' | 'uncertainty' | 'result';
export type RowState = 'empty' | 'incomplete' | 'used' | 'struck';

export type BenchField =
  | 'people' | 'place' | 'wavelength' | 'pulse_rate' | 'beam_angle' | 'small_divisions' | 'edge_half_width'
  | 'edge_reason' | 'screen_width' | 'time_base_uncertainty' | 'temperature' | 'pressure' | 'humidity'
  | 'carbon_dioxide' | 'coverage' | 'mark_uncertainty' | 'trace_level' | 'trace_fraction' | 'aim' | 'method' | 'discussion';
export type RailField = 'name' | 'from' | 'to' | 'reading_uncertainty' | 'scale_uncertainty';
export type Cell =
  | 'rail' | 'reading' | 'time_base' | 'edge_a' | 'edge_b' | 'distance' | 'distance_uncertainty' | 'delay'
  | 'delay_uncertainty' | 'remark';

export interface OverlapPair { here: string; before: string }
export type Splice =
  | { kind: 'unsaid' }
  | { kind: 'at_splitter'; mark: string; uncertainty: string }
  | { kind: 'at_distance'; mark: string; distance: string; uncertainty: string }
  | { kind: 'joined'; mark: string; mark_before: string; gap: string; uncertainty: string }
  | { kind: 'overlap'; pairs: OverlapPair[] }
  | { kind: 'free'; mark: string };
export type SpliceKind = Splice['kind'];
/** A splice as the notebook stores it: its kind, holding its texts. */
export type StoredSplice = 'unsaid' | { [Kind in Exclude<SpliceKind, 'unsaid'>]?: Record<string, unknown> };

/** A text as typed, what is wrong with it, what stands in for it while empty, the unit of a bare number. */
export interface Field { text: string; problem: string; default: string; unit: string }

export interface RailView {
  id: number;
  fields: Record<RailField, Field>;
  unit: RulerUnit;
  unit_symbol: string;
  sense: Sense;
  splice: StoredSplice;
  splice_problems: Record<string, string>;
  stands: string;
  step: string;
  rows: number;
}
export interface SettingView { id: number; time_per_division: Field; uncertainty: Field }
export interface SharedView {
  id: number; name: string; acts_on: ActsOn; effect: Effect; rows: Scope; shape: Shape; degrees_of_freedom: Field;
  uncertainty: Field;
}
export interface RowView {
  id: number;
  number: number;
  state: RowState;
  cells: Record<Cell, Field>;
  /** From what its delay is taken; empty where it is typed. */
  evidence: '' | 'picture' | 'traces';
  struck: string;
  lacks: string;
  distance: string;
  delay: string;
  residual: string;
  notices: string[];
}
export interface Proposal { row: number; cells: Partial<Record<Cell, string>> }
/** A formula in presentation MathML, as data. */
export type MathNode = { tag: string; text: string } | { tag: string; children: MathNode[] };
export interface Figure {
  id: string; name: string; symbol: string; value: string; meaning: string;
  /** What the value is worked out by, and the same with the numbers put in, a line each. */
  formula: MathNode | null;
  /** Where the formula stands; empty where there is none. */
  source: string;
}
/** A file kept beside the notebook, by the SHA-256 of its bytes. */
export interface StoredFile { sha256: string; name: string; bytes: number }
/** A place on a picture, in whole hundredths of a pixel. */
export type Spot = [number, number];
export interface Grid {
  id: number;
  /** Divisions between the corners, along the time axis and down. */
  columns: number;
  rows: number;
  /** Upper left, upper right, lower right, lower left. */
  corners: [Spot, Spot, Spot, Spot];
  /** Crossings held against the grid, to see whether the lens bends it. */
  checks?: { half_columns: number; half_rows: number; at: Spot }[];
}
export interface Picture { file: StoredFile; width: number; height: number; grid: number; a: Spot[]; b: Spot[] }
export type Estimator = 'fixed_level' | 'constant_fraction' | 'edge_line' | 'cross_correlation' | 'shift_and_scale';
/** Decimal numbers with a point, ns. */
export interface TraceTime { value: string; uncertainty: string }
export interface Traces {
  files: StoredFile[];
  delays: { estimator: Estimator; delay?: TraceTime; remarks?: object[] }[];
  walk?: TraceTime;
}
export type Evidence = { picture: Picture } | { traces: Traces };
/** The picture or the traces of a row, with what follows from them. */
export type EvidenceView =
  | {
    kind: 'picture'; picture: Picture; grid: Grid | null; problem: string; figures: Figure[];
    /** What the row goes on with where its own cell is empty. */
    habits: Partial<Record<Cell, string>>;
  }
  | { kind: 'traces'; traces: Traces; problem: string; figures: Figure[] };
export interface GridLines { lines: [number, number, number, number][]; problem: string }
/** Traces that were measured, with what is known of their place. */
export interface Taken { row?: number; rail?: string | null; reading?: string | null; traces: Traces }
export interface DelaysView {
  estimator: Estimator;
  /** The fixed level as stated, V. */
  level: number | null;
  fraction: number;
  grids: { id: number; rows: number[]; problem: string }[];
  /** What a fixed level would do to v. */
  walk: Figure[];
  walk_summary: string;
}
export interface LineView {
  refusal: string; method: string; figures: Figure[]; checks: Figure[]; summary: string; residual_summary: string;
}
export interface ComponentView {
  id: string; name: string; acts_on: string; u: string; shape: string; degrees_of_freedom: string;
  sensitivity: string; contribution: string;
  /** From 0 to 1, for the length of the bar. */
  /** Length of the bar that shows its share, such as 51.13%. */
  bar: string;
  share_text: string;
  /** Why it is as it is; empty where there is nothing to say. */
  remark: string;
}
/** Components: the largest first, those of no account last. */
export interface BudgetView { refusal: string; components: ComponentView[]; figures: Figure[]; summary: string }
/** What a run of trials begins from. */
export interface TrialsStart {
  seed: string;
  /** How many; empty: as many as it takes. */
  wanted: Field;
  refusal: string;
}
/** What came of a run of trials. */
export interface TrialsView {
  refusal: string; figures: Figure[]; verdict: string;
  /** The histogram in words. */
  summary: string;
}
/** A carriage position planned, as typed. */
export interface PlannedText { id: number; rail: string; reading: string; time_base: string; repeats: string }
/** Something to be said: what, and the figures and names, rounded and with units, that go into it. */
export interface Said { id: string; with: string[] }
/** A place on a rail. `shown`: the reading with its unit; `at`: where along its lane, such as 48.20%. */
export interface PlaceView {
  lane: number; rail: string; reading: string; shown: string; time_base: string; distance: string; at: string;
  thousandths: string;
}
export interface PositionView { typed: PlannedText; place: PlaceView | null; rows: number; problems: Said[] }
/** A rail to scale. `ends`: reading and distance at the near end and at the far one; `taken`: where rows were read. */
export interface LaneView { rail: number; name: string; from: string; length: string; ends: string[]; taken: string[] }
/** Places proposed, with how many rows at each. */
export interface ProposedView { said: Said; places: [PlaceView, number][] }
export interface PlanView {
  refusal: string; lacks: string; positions: PositionView[]; lanes: LaneView[]; figures: Said[]; warnings: Said[];
  next: ProposedView[]; offers: ProposedView[]; rehearsal: boolean;
}
export interface ResultView {
  refusal: string; short: string; figures: Figure[]; sentences: string[]; basis: Basis; reason: string;
  choice: string; sealed: boolean; may_seal: boolean;
}
export interface Notice {
  id: string; weight: Weight; section: SectionName; text: string; look_at: string; rows: number[];
  rail: number | null | undefined;
}
export interface View {
  title: string;
  decimal_mark: DecimalMark;
  path: Path;
  can_undo: boolean;
  can_redo: boolean;
  entries: number;
  bench: Record<BenchField, Field>;
  rails: RailView[];
  settings: SettingView[];
  shared: SharedView[];
  rows: RowView[];
  proposal: Proposal;
  delays: DelaysView;
  line: LineView;
  budget: BudgetView;
  trials: TrialsStart;
  result: ResultView;
  notices: Notice[];
}

export interface SettingText { id: number; time_per_division: string; uncertainty: string }
export interface SharedText {
  id: number; name: string; acts_on: ActsOn; effect: Effect; rows: Scope; shape: Shape; degrees_of_freedom: string;
  uncertainty: string;
}
/** One thing a person does. */
export type Edit =
  | { set_title: string }
  | { set_decimal_mark: DecimalMark }
  | { set_bench: { field: BenchField; text: string } }
  | { set_path: Path }
  | { add_rail: number }
  | { set_rail: { rail: number; field: RailField; text: string } }
  | { set_ruler_unit: { rail: number; unit: RulerUnit } }
  | { set_sense: { rail: number; sense: Sense } }
  | { set_splice: { rail: number; splice: StoredSplice } }
  | { remove_rail: number }
  | { set_setting: SettingText }
  | { remove_setting: number }
  | { set_shared: SharedText }
  | { remove_shared: number }
  | { set_position: PlannedText }
  | { remove_position: number }
  | { set_rehearsal: number }
  | { add_row: { row: number; after?: number; cells: Partial<Record<Cell, string>> } }
  | { set_cell: { row: number; cell: Cell; text: string } }
  | { strike_row: { row: number; reason: string } }
  | { restore_row: number }
  | { set_grid: Grid }
  | { set_evidence: { row: number; evidence?: Evidence } }
  | { set_estimator: Estimator }
  | { set_claim: { basis: Basis; reason: string } }
  | { set_trials: { seed: string; wanted: string } }
  | { seal: string }
  | 'open_seal'
  | { together: Edit[] }
  | 'undo'
  | 'redo';

export type TableKind = 'csv' | 'latex' | 'markdown';

/** One open notebook. What can fail throws `{kind, message}` and changes nothing. */
export interface Desk {
  apply(edit: Edit, at: string): void;
  /** Puts measured traces into rows, by one edit. */
  take_traces(all: Taken[], at: string): void;
  /** Gives whether the decimal marks were turned into the notebook's, and the headings left out. */
  paste(row: number | undefined, cell: Cell, block: string, at: string): [boolean, string];
  view(): View;
  /** The view, with nothing for each row that is as it was when this was last asked, and its outputs alone where
   * nothing else changed. */
  news(): Omit<View, 'rows'> & { rows: (Partial<RowView> | null)[] };
  title(): string;
  length(): number;
  can_undo(): boolean;
  can_redo(): boolean;
  text(): string;
  entries(from: number): string[];
  replay(entries: string[]): void;
  draw_line(canvas: HTMLCanvasElement, dark: boolean, pixels: number): void;
  draw_residuals(canvas: HTMLCanvasElement, dark: boolean, pixels: number): void;
  draw_bench(canvas: HTMLCanvasElement, dark: boolean, pixels: number): void;
  /** For each trace start, step, least and greatest of each stretch; from, to, and for each trace baseline, top, level,
   * edge and its uncertainty. */
  draw_traces(
    canvas: HTMLCanvasElement, dark: boolean, pixels: number, a: Float64Array, b: Float64Array, marks: Float64Array,
  ): void;
  traces_words(marks: Float64Array): string;
  draw_walk(canvas: HTMLCanvasElement, dark: boolean, pixels: number): void;
  evidence(row: number): EvidenceView | null;
  /** How a row was worked out. */
  row_work(row: number): Figure[];
  /** The height that the drawing of the bench wants at a width, both in CSS pixels. */
  bench_height(width: number): number;
  table(kind: TableKind): string;
  report(): string;
  /** Pictures by name and bytes, in the same order. */
  /** What a bundle holds beside pictures and traces: name and text of each entry in turn. */
  bundle(): string[];
  /** The files that the rows rest on, by their names in a bundle. */
  files(): [string, StoredFile][];
  /** The figures with one component's uncertainty times a factor. Nothing in the notebook changes. */
  what_if(component: string, factor: number): { refusal: string; figures: Figure[] };
  plan(): PlanView;
  /** Where a planned position would be at a share, 0 to 1, of its rail, and what would be expected; no place where it
   * can't go there. Nothing in the notebook changes. */
  at_share(position: number, share: number): ProposedView;
  /** The same so many round readings farther out. */
  at_steps(position: number, steps: number): ProposedView;
  /** Readings of the plan simulated on the bench described: rail, reading, time base and both edges of each row. */
  rehearse(seed: number): string[][];
  /** What was really so in a rehearsal; empty for any other notebook. */
  truth(): Said[];
  /** A run of trials of the notebook as it stands now. */
  tally(): Tally;
  /** Lets report and bundle hold what came of a run, as long as the notebook stays the same. */
  keep_trials(tally: Tally): void;
  free(): void;
}
/** A run of trials, gathered from blocks that {@link Trials} run. */
export interface Tally {
  block_size(): number;
  /** Takes the results of the blocks, in their order; true when no more are needed. */
  take(values: Float64Array): boolean;
  /** `most`: how many are needed at most. */
  progress(): { done: number; most: number; text: string };
  /** What comes of all that was taken. */
  finish(): TrialsView;
  /** Draws the histogram; after `finish`. */
  draw(canvas: HTMLCanvasElement, dark: boolean, pixels: number): void;
  free(): void;
}
/** What runs the trials of a notebook, a block at a time; the same block gives the same results. */
export interface Trials { run(block: number): Float64Array<ArrayBuffer>; free(): void }
export interface ShelfItem { id: string; title: string; changed: string; binned: boolean }

/** What the core offers to the page. */
export interface Core {
  /** `open_bundled`: of a text out of a bundle, which its refusal says. */
  Desk: { blank(): Desk; open(text: string): Desk; open_bundled(text: string): Desk };
  Trials: { of(text: string): Trials };
  lines_of_grid(grid: Grid): GridLines;
  /** The hash of every file that a text names: a notebook's own text, or an entry of its log. */
  hashes_in(text: string): string[];
  /** The notebook's text, then name and bytes of each picture in turn. */
  version(): string;
  /** Whether notebooks and settings outlive the visit. */
  shelf_outlives_visit(): boolean;
  shelf_list(): ShelfItem[];
  shelf_read(id: string): string | undefined;
  /** A kept log entry as this version writes it: to be compared with those of a desk. */
  entry_now(text: string): string;
  shelf_write(id: string, title: string, changed: string, text: string): void;
  shelf_bin(id: string, binned: boolean): void;
  shelf_forget(id: string): void;
  setting_read(name: string): string | undefined;
  setting_write(name: string, value: string): void;
}

/** A part of the page that is redrawn from the view. */
export interface Part { show(view: View): void }
