// Made from the Rust types by `cargo run -p slope-of-light --example declarations > www/page/types.d.ts`. Change those, and run it again.

/** What a shared error acts on. */
export type ActsOn = "distances" | "delays";

/** What a task asks for. */
export type Asks = "nothing" | "words" | "number";

/** What may be on another rail after a merge: only one of the notebooks has its rail, or its name is not its alone, and what it
 * calls that may be another one's name. Which was meant nobody can tell. */
export type Astray = {
/** The rows. */
rows: Array<number>,
/** The planned positions, as their notebook has them. */
positions: Array<PlannedPosition>, };

/** From what an uncertainty comes. */
export type Basis = "stated" | "scatter";

/** How a beam that makes the angle θ with the rails reaches what is on the carriage, at the reading r. */
export type Beam = "wide" | "followed";

/** The uncertainty of a value behind which one may be typed. */
export type Behind = {
/** The limit ±a that is taken where none is typed; empty where one is. */
limit: string,
/** The standard uncertainty, as typed or u = a/√3. */
u: string, };

/** A text of the bench or of the report. Bare numbers are in the unit named here. */
export type BenchField = "people" | "student_number" | "group" | "date" | "least_rows" | "place" | "local_rules" | "local_contact" | "instruments" | "cables" | "fixed_arm" | "trigger" | "edge_fraction" | "wavelength" | "pulse_rate" | "small_divisions" | "edge_half_width" | "edge_reason" | "screen_width" | "time_base_uncertainty" | "temperature" | "pressure" | "humidity" | "carbon_dioxide" | "beam_angle" | "coverage" | "mark_uncertainty" | "trace_level" | "trace_fraction" | "aim" | "method" | "discussion";

/** The uncertainty budget of c, or why there is none. */
export type BudgetView = {
/** Why there is no budget and what to do; empty if there is one. */
refusal: Message | null,
/** Its lines, the largest first, those that can't matter last. */
components: Array<ComponentView>,
/** Combined uncertainty, degrees of freedom, coverage factor, expanded uncertainty. */
figures: Array<Figure>,
/** The budget in words; none where there is no budget. */
summary: Message | null, };

/** Cautions that belong together. */
export type CautionGroup = {
/** What they are about. */
title: Message,
/** Each of them. */
cautions: Array<Message>, };

/** What is to be read before the beam is on. */
export type CautionsView = {
/** The cautions, in the order in which they are read. */
groups: Array<CautionGroup>,
/** Who said that they were read, and when; one message each. */
read: Array<Message>, };

/** A cell of a row. Bare numbers are in the unit named here. */
export type Cell = "rail" | "reading" | "time_base" | "edge_a" | "edge_b" | "distance" | "distance_uncertainty" | "delay" | "delay_uncertainty" | "remark";

/** Which uncertainty is claimed, and why. */
export type Claim = {
/** From what the uncertainty comes. */
basis: Basis,
/** The reason given for that choice. */
reason: string, };

/** Something that both changed, each otherwise. */
export type Clash = {
/** As it is here, so far as it differs. */
ours: Array<Edit>,
/** What makes it the partner's. */
theirs: Array<Edit>,
/** What adds the partner's beside it; nothing where there is no room for two. */
both: Array<Edit>, };

/** What is wrong with a text of a planned position. */
export type ColumnProblem = {
/** Which text: "rail", "reading", "time_base" or "repeats". */
column: string,
/** What is wrong and what to do. */
problem: Message, };

/** One line of the budget. */
export type ComponentView = {
/** Identifier, stable. */
id: string,
/** What it is called: in the table's words, or as the person who stated it calls it. */
name: Value,
/** What it acts on. */
acts_on: Message,
/** Its standard uncertainty with its unit. */
u: string,
/** How it is distributed. */
shape: Message,
/** Degrees of freedom. */
degrees_of_freedom: string,
/** Change of c for one unit of it, with its unit. */
sensitivity: string,
/** The standard uncertainty of c that it causes, m/s. */
contribution: string,
/** Its share of the variance as the length of a bar: "51.13%". */
bar: string,
/** The same as written. */
share_text: string,
/** How it came in, or why it can't matter. */
remark: Message, };

/** Of what a covariance matrix is. */
export type CovarianceOf = "distances" | "delays" | "both";

/** The sign between whole and fraction, one for a whole notebook. */
export type DecimalMark = "point" | "comma";

/** What all pictures and traces of a notebook come to. */
export type DelaysView = {
/** How edges are timed on traces. */
estimator: Estimator,
/** The fixed level as stated, V; none for half of the smallest pulse. */
level: number | null,
/** The constant fraction. */
fraction: number,
/** The grids marked on pictures. */
grids: Array<GridView>,
/** On which rows the heights of edges were marked on pictures, and at which fraction of them these are timed. */
heights: Message | null,
/** What a fixed level would do to v. */
walk: Array<Figure>,
/** The drawing of the walk in words; none where there is none. */
walk_summary: Message | null, };

/** One of the two detectors. */
export type Detector = "A" | "B";

/** A number rounded to the digits that a message tells of it, as a text with a decimal point: so it is also stored, and
 * what is read back is told in the same words. */
export type Digits = string;

/** The ends of an edge; nothing for one that is off the screen. */
export type EdgeHeight = {
/** Where the trace leaves its baseline. */
baseline: Spot | null,
/** Where it reaches its top. */
top: Spot | null, };

/** The heights of both edges of a picture. */
export type EdgeHeights = {
/** Of edge A. */
a: EdgeHeight,
/** Of edge B. */
b: EdgeHeight,
/** How thick the trace is, whole pixels. */
thickness: number, };

/** One thing a person did.
 *
 * Its JSON form is the edit's name holding what it carries, as in `{"set_title": "Tuesday"}` or `{"set_cell": {"row": 3,
 * "cell": "reading", "text": "12.5"}}`, and the bare word for `"undo"` and `"redo"`. */
export type Edit = { "set_title": string } | { "set_decimal_mark": DecimalMark } | { "set_bench": {
/** Which. */
field: BenchField,
/** What was typed. */
text: string, } } | { "read_cautions": string } | { "copied": string } | { "set_path": Path } | { "set_beam": Beam } | { "add_rail": number } | { "set_rail": {
/** Which rail. */
rail: number,
/** Which text. */
field: RailField,
/** What was typed. */
text: string, } } | { "rename_rail": {
/** Which rail. */
rail: number,
/** What was typed. */
name: string, } } | { "set_ruler_unit": {
/** Which rail. */
rail: number,
/** The unit. */
unit: RulerUnit, } } | { "set_sense": {
/** Which rail. */
rail: number,
/** The sense. */
sense: Sense, } } | { "set_splice": {
/** Which rail. */
rail: number,
/** How it is joined. */
splice: Splice, } } | { "remove_rail": number } | { "set_setting": Setting } | { "remove_setting": number } | { "set_kind": {
/** Which uncertainty. */
of: UncertaintyOf,
/** As a limit, or as a standard uncertainty. */
kind: UncertaintyKind, } } | { "set_shared": SharedError } | { "remove_shared": number } | { "set_covariance": StatedCovariance } | { "remove_covariance": CovarianceOf } | { "set_position": PlannedPosition } | { "remove_position": number } | { "set_rehearsal": number } | { "add_row": {
/** A number no row of this notebook had before. */
row: number,
/** The row it stands behind; at the end if absent. */
after?: number | null,
/** What its cells hold to begin with. */
cells?: { [key in Cell]?: string }, } } | { "set_cell": {
/** Which row. */
row: number,
/** Which cell. */
cell: Cell,
/** What was typed. */
text: string, } } | { "strike_row": {
/** Which row. */
row: number,
/** Why. */
reason: string, } } | { "restore_row": number } | { "set_photo": StoredFile | null } | { "set_note": Note } | { "remove_note": number } | { "set_grid": Grid } | { "set_evidence": {
/** Which row. */
row: number,
/** From what its delay is taken. */
evidence?: Evidence | null, } } | { "set_estimator": Estimator } | { "set_claim": Claim } | { "set_trials": TrialPlan } | { "seal": string } | "open_seal" | { "set_piece": [Piece, Rule] } | { "set_task": [number, Piece, Asks, string] } | { "remove_task": number } | { "answer": [number, string] } | "hand_out" | { "merged": MergedLog } | { "together": Array<Edit> } | "undo" | "redo";

/** How a shared error acts. */
export type Effect = "offset" | "scale" | "noise";

/** How an error is distributed (JCGM 101:2008, table 1). */
export type ErrorShape = "normal" | "rectangular" | "triangular" | "arcsine" | "student";

/** How an edge is timed on a trace. */
export type Estimator = "fixed_level" | "constant_fraction" | "edge_line" | "cross_correlation" | "shift_and_scale";

/** From what the delay of a row is taken. */
export type Evidence = { "picture": Picture } | { "traces": Traces };

/** From what the delay of a row is taken. */
export type EvidenceKind = "" | "picture" | "traces";

/** The picture or the traces of one row, with what follows from them. */
export type EvidenceView = { "kind": "picture",
/** The picture with the marks of its edges. */
picture: Picture,
/** Its grid. */
grid: Grid | null,
/** What is wrong with the marks; empty if nothing is. */
problem: Message | null,
/** Rail and time base that the row goes on with where it states none. */
habits: { [key in Cell]?: string },
/** Divisions, and what their uncertainty is made of. */
figures: Array<Figure>, } | { "kind": "traces",
/** The files and what was measured. */
traces: Traces,
/** What is wrong; empty if nothing is. */
problem: Message | null,
/** Each estimator's delay. */
figures: Array<Figure>, };

/** A text as typed, what is wrong with it, and what stands in for it while it is empty. */
export type Field = {
/** As typed. */
text: string,
/** What is wrong, in one sentence, and what to do; empty if nothing is. */
problem: Message | null,
/** What is taken while the field is empty; an empty text if nothing is. */
default: Value,
/** The unit of a bare number, typed or taken; empty for words. */
unit: string,
/** As what it is meant, where it is an uncertainty whose kind can be chosen. */
meant?: Meant,
/** The uncertainty of a value behind which one may be typed. */
behind?: Behind, };

/** A number with its name, its unit and where it comes from. */
export type Figure = {
/** Identifier, stable: "slope", "intercept", "chi_square"… */
id: string,
/** What it is called. */
name: Value,
/** Its symbol. */
symbol: string,
/** Value, uncertainty and unit. */
value: Value,
/** What it is, in a few sentences. */
meaning: Array<Value>,
/** The formula, and the same with the numbers put in. */
formula: Formula | null,
/** Where it is laid down; none where the meaning says it. */
source: Value | null, };

/** One figure of the line, such as its slope. */
export type FitFigure = {
/** Identifier, stable: `slope`, `intercept`, `chi_square`… */
id: string,
/** What it is called. */
name: Message,
/** Its value. */
value: number,
/** Its standard uncertainty, if it has one. */
uncertainty: number | null,
/** Its unit; empty for pure numbers. */
unit: string, };

/** What is to be known of an edge beside its time. Samples count from 0. */
export type Flag = { "flag": "inverted" } | { "flag": "noisy" } | { "flag": "double_edge",
/** Where. */
sample: number, } | { "flag": "unlike_edge",
/** By how much it differs between 20 and 80 % of the heights, ns, above 0. */
time: Digits, } | { "flag": "not_quiet",
/** Where. */
sample: number, } | { "flag": "drift",
/** Its last third less its first, V. */
volts: Digits, } | { "flag": "correlated_noise",
/** How far, in samples. */
samples: number, } | { "flag": "few_on_edge",
/** About how many there are. */
samples: number, } | { "flag": "flat_top",
/** Which, V. */
volts: Digits, } | { "flag": "uneven_steps",
/** By how much a step differs from the mean one at most, per cent of that. */
percent: Digits, } | { "flag": "supposed_unit" } | { "flag": "rough" };

/** An element of a formula. Its JSON form is `{"tag": "mi", "text": "c"}` or `{"tag": "mrow", "children": […]}`. */
export type Formula = {
/** Its name: mi, mn, mo or mtext. */
tag: string,
/** The text. */
text: string, } | {
/** Its name: mrow, mfrac, msub, msup, msqrt, mtable, mtr or mtd. */
tag: string,
/** What it holds. */
children: Array<Formula>, };

/** The grid of a screen as marked on a picture. One may serve all pictures that a camera took from one place. */
export type Grid = {
/** Names the grid for the life of the notebook. */
id: number,
/** Divisions from the left corners to the right ones, along the time axis. */
columns: number,
/** Divisions from the upper corners to the lower ones. */
rows: number,
/** Upper left, upper right, lower right, lower left. */
corners: [Spot, Spot, Spot, Spot],
/** Crossings marked to see whether the lens bends the grid. */
checks?: Array<GridCheck>, };

/** A crossing held against the grid. */
export type GridCheck = {
/** Half divisions to the right of the upper left corner. */
half_columns: number,
/** Half divisions below it. */
half_rows: number,
/** Where it was marked. */
at: Spot, };

/** A grid drawn back over its picture. */
export type GridLines = {
/** From x, y to x, y, pixels; columns first. */
lines: Array<[number, number, number, number]>,
/** What is wrong with its marks; empty if nothing is. */
problem: Message | null, };

/** One marked grid. */
export type GridView = {
/** The grid. */
id: number,
/** The rows read against it. */
rows: Array<number>,
/** What is wrong with its marks; empty if nothing is. */
problem: Message | null, };

/** The teacher's layer of a notebook, prepared or handed out. */
export type HandoutView = {
/** How many entries of the log are the teacher's; 0 while it is prepared, and in any other notebook. */
entries: number,
/** The highest number of a row that was handed out; none where nothing was. */
given: number | null,
/** What is fixed, or to be fixed. */
fixed: Array<Piece>,
/** What is asked for. */
needed: Array<Piece>,
/** Texts and questions, in their order. */
tasks: Array<TaskView>,
/** What is asked for and not there; questions without an answer are told beside each of them. */
missing: Array<Piece>, };

/** Where the fixed level comes from. */
export type LevelOf = "pair" | "run" | "stated";

/** The straight line, or why there is none. */
export type LineView = {
/** Why there is no line and what to do; empty if there is one. */
refusal: Message | null,
/** How the line was fitted. */
method: Message | null,
/** Slope, intercept and how well it fits. */
figures: Array<Figure>,
/** Other ways to look at the same rows. */
checks: Array<Figure>,
/** The picture in words, for those who can't see it. */
summary: Message | null,
/** The residual plot in words. */
residual_summary: Message | null, };

/** What followed one another in one row, rail or field. */
export type LogStep = {
/** How many entries the log had after it. */
end: number,
/** When it was done (RFC 3339); empty if nobody said. */
at: string,
/** Whether a row was begun. */
begins_row: boolean, };

/** Where the mark of a reading stands: see [`PlotPlaces`]. */
export type MarkPlace = {
/** Number of the row, from 1. */
number: number,
/** Share of the width. */
x: number,
/** Share of the height. */
y: number, };

/** As what an uncertainty is meant, and what follows. */
export type Meant = {
/** Which uncertainty; none where its text itself says as what it is meant. */
of: UncertaintyOf | null,
/** As a limit, or as a standard uncertainty. */
kind: UncertaintyKind,
/** The standard uncertainty that follows from a limit, u = a/√`under_root`; empty where there is none. */
u: string,
/** What stands under that root, which the distribution decides. */
under_root: number,
/** Whether nothing was typed and nothing is taken: the quantity is treated as exact. */
exact: boolean, };

/** What a partner's notebook would bring. Done together, `kept`, `taken`, what is chosen of each clash, and `log` are the merge. */
export type Merge = {
/** The log that is merged, as the merge names it. */
log: MergedLog,
/** After how many of its entries it goes on otherwise than the state of it that was merged before, if it does. What was
 * begun in it since is new here. */
parted: number | null,
/** After how many entries of this log the partner has merged another state of it than this one, if so. What was begun
 * there since is new here. */
behind: number | null,
/** The time base by which rows here are read that name none, where there may be others after the merge. */
kept: Array<Edit>,
/** What the partner alone changed. */
taken: Array<Edit>,
/** What both changed, each otherwise. */
clashes: Array<Clash>,
/** What may be on another rail afterwards. */
astray: Astray, };

/** A log that was merged: which it was, and which number here is whose there. */
export type MergedLog = {
/** The count of its entries. */
entries: number,
/** The chained SHA-256 of the last of them, in hexadecimal digits. */
digest: string,
/** That of the first entry that it does not share with this one: by it the log is known again, however it goes on. */
own: string,
/** Who measured, as it says. */
people: string,
/** What came from it: the number of each there, and here. */
numbers: Array<[number, number]>,
/** Of each of its entries from `own` on the highest number given up to it, and the first 32 bits of its digest: by them
 * another log is known that left it on the way. The first builds kept none. */
trail?: Array<[number, number]>, };

/** Something to be said. */
export type Message = {
/** The identifier of its text in the tables. */
id: string,
/** What fills the text, by the names that stand there. */
values: Record<string, Value>, };

/** What a new row would begin with. */
export type NewRow = {
/** A number for it. */
row: number,
/** The cells. */
cells: { [key in Cell]?: string }, };

/** A view whose rows are told apart from it. */
export type News = {
/** The view without its rows. */
view: Omit<View, 'rows'>,
/** What is new of each row; none where it is as it was. */
rows: Array<RowNews | null>, };

/** A note. */
export type Note = {
/** Names it for the life of the notebook. */
id: number,
/** The row behind which it stands, by its number; before all rows if absent. */
after?: number | null,
/** What was typed. */
text: string,
/** When it was written (RFC 3339). Empty in an edit that writes it: it is then of the time of its entry in the log. */
at?: string, };

/** Something noticed. */
export type Notice = {
/** Identifier, stable. */
id: string,
/** How serious. */
weight: Weight,
/** Where it stands. */
section: Section,
/** What was noticed. */
text: Message,
/** What to look at. */
look_at: Message,
/** The rows concerned. */
rows: Array<number>,
/** The rail concerned. */
rail: number | null,
/** What else was noticed that is nothing but a sign of it. */
signs: Array<Message>,
/** What would mend it, where that is one edit. */
repair: Repair | null, };

/** What follows from a row. */
export type Outputs = {
/** As [`RowView::distance`]. */
distance: string,
/** As [`RowView::delay`]. */
delay: string,
/** As [`RowView::residual`]. */
residual: string, };

/** One carriage position, read on two rails. */
export type OverlapPair = {
/** The reading on this rail, in its unit. */
here: string,
/** The reading on the rail before, in that rail's unit. */
before: string, };

/** What the carriage carries. The light goes along the rail once, or there and back. */
export type Path = "detector" | "mirror";

/** The marks of a row on its picture. */
export type Picture = {
/** The picture, as scaled down. */
file: StoredFile,
/** Its width, pixels. */
width: number,
/** Its height, pixels. */
height: number,
/** The grid that its marks are read against. */
grid: number,
/** Edge A, marked once or more. */
a: Array<Spot>,
/** Edge B, marked once or more. */
b: Array<Spot>,
/** Between which ends the edges rise, where that was marked. */
heights?: EdgeHeights, };

/** A piece of the notebook that a teacher can fix or ask for. */
export type Piece = "title" | "cautions" | "source" | "instruments" | "rails" | "screen" | "time_bases" | "air" | "positions" | "evidence" | "uncertainty" | "readings" | "line" | "result" | "aim" | "method" | "discussion" | "people" | "student_number" | "group" | "date" | "answers";

/** A place on a rail. */
export type PlaceView = {
/** The rail. */
track: number,
/** Name of the rail. */
rail: string,
/** The reading as it is typed. */
reading: string,
/** The same with its unit. */
shown: string,
/** Time per division. */
time_base: string,
/** Distance from the splitter. */
distance: string,
/** Where along its track: "48.2%". */
at: string,
/** The same as a whole number of thousandths. */
thousandths: string, };

/** The plan in words, figures and places. */
export type PlanView = {
/** Why there is nothing to plan on and what to do; empty if there is. */
refusal: Message | null,
/** Why nothing can be expected yet and what to do; empty if it can. */
lacks: Message | null,
/** The planned positions. */
positions: Array<PositionView>,
/** The rails to scale, each as a track of its own. */
tracks: Array<TrackView>,
/** What is expected, and what limits it: one sentence after the other. */
expected: Array<Message>,
/** How it turned out, as far as rows were read: one sentence after the other. */
compared: Array<Message>,
/** What is expected, what would change it, how far and how fine one can go. */
figures: Array<Figure>,
/** What is unwise about the positions. */
warnings: Array<Message>,
/** The next reading that would help most, and the one that would show most. */
next: Array<ProposedView>,
/** Positions that may be planned instead. */
offers: Array<ProposedView>,
/** Whether the readings are a rehearsal's. */
rehearsal: boolean, };

/** A carriage position planned before the run: texts as typed. */
export type PlannedPosition = {
/** Names the position for the life of the notebook. */
id: number,
/** Name of the rail; empty stands for the only one. */
rail: string,
/** Rail reading, in the ruler's unit. */
reading: string,
/** Time per division, ns; empty stands for the fastest whose screen holds the delay. */
time_base: string,
/** How many rows are to be read there; empty stands for 1. */
repeats: string, };

/** What stands in a column of a [`PlotTable`]. */
export type PlotColumn = {
/** What it is called. */
name: Message,
/** Its unit; empty for texts and pure numbers. */
unit: string, };

/** Where on a plot things stand, in shares of its width from the left and of its height from the top. */
export type PlotPlaces = {
/** Left, top, right and bottom of the frame around the readings. */
frame: [number, number, number, number],
/** The marks of the readings. */
marks: Array<MarkPlace>, };

/** What a drawing shows, as a table. */
export type PlotTable = {
/** The columns; the first one names the rows. */
columns: Array<PlotColumn>,
/** A text for each column. */
rows: Array<Array<Value>>, };

/** A planned position. */
export type PositionView = {
/** As typed. */
typed: PlannedPosition,
/** Where that is; none while it can't be told. */
place: PlaceView | null,
/** How many rows are to be read there. */
rows: number,
/** What is wrong with it. */
problems: Array<ColumnProblem>, };

/** How far the trials have come. */
export type ProgressView = {
/** How many are drawn. */
done: number,
/** How many are needed at most. */
most: number,
/** The same in words. */
text: Message, };

/** Positions proposed. */
export type ProposedView = {
/** Why nothing speaks for them, and what to do; none where something does. */
lacks: Message | null,
/** What speaks for them. */
said: Message | null,
/** u(v)/v as it is, and as it would be with them; of the next reading, where it can be told. */
effect: [string, string] | null,
/** The places, and how many rows at each. */
places: Array<[PlaceView, number]>, };

/** A text that describes a rail. */
export type RailField = "name" | "from" | "to" | "reading_uncertainty" | "scale_uncertainty";

/** One rail. */
export type RailView = {
/** The rail. */
id: number,
/** Its texts, each field present. */
fields: Record<RailField, Field>,
/** The unit of its ruler. */
unit: RulerUnit,
/** That unit's symbol. */
unit_symbol: string,
/** The sense of its ruler. */
sense: Sense,
/** How it is joined, as typed. */
splice: Splice,
/** What is wrong with the splice, by the name of its part ("mark", "distance", "pairs.0.here", …; "splice"
 * for the whole). */
splice_problems: { [key in string]: Message },
/** The uncertainty of its place; empty where the splice states none. */
splice_uncertainty: Field,
/** Where the rail lies; none where it can't be told. */
stands: Message | null,
/** The step that the readings themselves show at its splice; none where it can't be told. */
step: Message | null,
/** How many rows were read on it. */
rows: number, };

/** By what a delay was taken, what to be wary of, or why there is none. */
export type Remark = { "level": {
/** V. */
volts: Digits,
/** Where it came from. */
of: LevelOf, } } | { "fraction": {
/** Per cent. */
percent: Digits, } } | { "edge": {
/** Whose trace. */
trace: Detector,
/** What. */
flag: Flag, } } | { "refused": {
/** Whose trace is refused. */
trace: Detector,
/** Why. */
problem: TraceError, } } | { "words": string };

/** An edit that mends a mistake: offered, never made by itself. */
export type Repair = {
/** What it does. */
does: Message,
/** The edit. */
edit: Edit,
/** The reason that is missing in it, of a row that it strikes out. */
reason: Message | null, };

/** The result, or why there is none. */
export type ResultView = {
/** Why there is no result and what to do; empty if there is one. */
refusal: Message | null,
/** c with its standard uncertainty, short form, for the strip that stays in sight. */
short: string,
/** v, n_g, c, U, comparison… */
figures: Array<Figure>,
/** One to three sentences that can go into a report. */
sentences: Array<Message>,
/** From what the claimed uncertainty comes. */
basis: Basis,
/** The reason as typed. */
reason: string,
/** Both uncertainties side by side, where they differ; none where there is nothing to choose. */
choice: Message | null,
/** Whether a closed seal covers the result. */
sealed: boolean,
/** Whether the result may still be sealed: once only. */
may_seal: boolean, };

/** What is new of a row. */
export type RowNews = RowView | Outputs;

/** A notice as the rows show it that it names. */
export type RowNotice = {
/** How serious. */
weight: Weight,
/** What was noticed. */
text: Message,
/** Whether it is told below the row, not only marked in it. */
told: boolean, };

/** How a row takes part. */
export type RowState = "empty" | "incomplete" | "used" | "struck";

/** What is really so at a row of a data set: before this a camera or a recorder would stand. It goes into no file. */
export type RowTruth = {
/** The row. */
row: number,
/** Distance from the splitter, m. */
distance: number,
/** How late B's edge comes after A's, as the row's clock counts it, ns. */
delay: number,
/** Time per division of the screen, ns. */
time_base: number,
/** Divisions across the screen. */
screen_width: number, };

/** One row. */
export type RowView = {
/** The row. */
id: number,
/** Its number on the page, from 1. */
number: number,
/** How it takes part. */
state: RowState,
/** Its cells, each present. */
cells: Record<Cell, Field>,
/** From what its delay is taken. */
evidence: EvidenceKind,
/** Why it is struck out; empty if it is not. */
struck: string,
/** What keeps it out of the line, in one sentence; empty if nothing does. */
lacks: Message | null,
/** Distance with its standard uncertainty, in metres; the head of the column holds the unit. */
distance: string,
/** Delay with its standard uncertainty, in nanoseconds; the head of the column holds the unit. */
delay: string,
/** Residual in units of its standard uncertainty. */
residual: string,
/** The notices that name this row and few others. */
notices: Array<RowNotice>, };

/** What a teacher rules of a piece. So nothing can be fixed and asked for at once. */
export type Rule = "open" | "fixed" | "needed";

/** The unit in which a ruler counts. */
export type RulerUnit = "millimetre" | "centimetre" | "metre" | "inch";

/** The rows that share an error. */
export type Scope = "all" | { "rail": number } | { "time_base": string } | { "rows": Array<number> };

/** The section beside which a notice stands. */
export type Section = "apparatus" | "readings" | "delays" | "line" | "uncertainty" | "result";

/** The sense of a ruler. */
export type Sense = "grows" | "falls";

/** As what the delays of a data set are handed over. */
export type SetForm = "typed" | "photographs" | "traces";

/** A time base setting whose own uncertainty was stated. */
export type Setting = {
/** Names the setting for the life of the notebook. */
id: number,
/** Time per division, ns. */
time_per_division: string,
/** Relative uncertainty; a standard one unless chosen otherwise. */
uncertainty: string, };

/** One time base setting. */
export type SettingView = {
/** The setting. */
id: number,
/** Time per division. */
time_per_division: Field,
/** Relative uncertainty. */
uncertainty: Field, };

/** An error of the user's own, which several rows share, or which each of them has for itself. */
export type SharedError = {
/** Names it for the life of the notebook. */
id: number,
/** What it is called. */
name: string,
/** Whether it acts on distances or on delays. */
acts_on: ActsOn,
/** How it acts. */
effect: Effect,
/** The rows that it moves. */
rows: Scope,
/** Its uncertainty; a standard one unless chosen otherwise: metres or nanoseconds for an offset or noise, a ratio
 * for a scale. */
uncertainty: string,
/** How it is distributed. */
shape: ErrorShape,
/** Degrees of freedom of its uncertainty; empty stands for many. */
degrees_of_freedom?: string, };

/** One shared error. */
export type SharedView = {
/** The shared error. */
id: number,
/** What it is called. */
name: string,
/** What it acts on. */
acts_on: ActsOn,
/** How it acts. */
effect: Effect,
/** On which rows. */
rows: Scope,
/** Its uncertainty. */
uncertainty: Field,
/** How it is distributed, as its uncertainty was stated. */
shape: ErrorShape,
/** Its degrees of freedom. */
degrees_of_freedom: Field, };

/** Where a rail stands. All bare numbers are in the unit of the rail's ruler, but for readings on the rail before. */
export type Splice = "unsaid" | { "at_splitter": {
/** The reading at the splitter. */
mark: string,
/** Its standard uncertainty. */
uncertainty: string, } } | { "at_distance": {
/** A reading on this rail. */
mark: string,
/** Its distance from the splitter. */
distance: string,
/** Standard uncertainty of that distance. */
uncertainty: string, } } | { "joined": {
/** A reading on this rail. */
mark: string,
/** A reading on the rail before, in that rail's unit. */
mark_before: string,
/** From `mark_before` to `mark`, away from the splitter. */
gap: string,
/** Standard uncertainty of the joint. */
uncertainty: string, } } | { "overlap": {
/** The pairs of readings. */
pairs: Array<OverlapPair>, } } | { "free": {
/** A reading on this rail. */
mark: string, } };

/** A place on a picture, x to the right and y downwards, in whole hundredths of a pixel; the middle of the first pixel
 * is at (50, 50). */
export type Spot = [number, number];

/** A full covariance matrix of some rows. */
export type StatedCovariance = {
/** Of what it is. */
acts_on: CovarianceOf,
/** The rows, in the order of the matrix. */
rows: Array<number>,
/** The matrix, row after row, as typed. */
matrix: Array<Array<string>>, };

/** A file kept beside the notebook. */
export type StoredFile = {
/** SHA-256 of its bytes, 64 hexadecimal digits. */
sha256: string,
/** What it was called. */
name: string,
/** Its length, bytes. */
bytes: number, };

/** A notebook on the shelf. */
export type StoredNotebook = {
/** Names it among the notebooks of a browser. */
id: string,
/** Its title as typed. */
title: string,
/** When it was last changed (RFC 3339). */
changed: string,
/** Deleted, but not for good yet. */
binned: boolean, };

/** Traces or a picture, with what is known of their place. */
export type TakenEvidence = {
/** The row, where it is known: traces that were measured again, a picture dropped on it. */
row?: number | null,
/** The rail that the file's name tells. */
rail?: string | null,
/** The reading with its unit that the file's name tells. */
reading?: string | null,
/** What is taken. */
evidence: Evidence, };

/** A text or question, with its answer. */
export type TaskView = {
/** Its number. */
id: number,
/** What it is about. */
at: Piece,
/** What it asks for. */
asks: Asks,
/** The text. */
text: string,
/** The answer as typed, and what is wrong with it. */
answer: Field, };

/** What the page catches. */
export type Thrown = {
/** A stable identifier of what failed. */
kind: string,
/** What failed and what to do, for a person; a text where a library or the browser says it. */
message: Value, };

/** What one estimator made of the traces of a row. */
export type TraceDelay = {
/** Which estimator. */
estimator: Estimator,
/** The delay; none where it gave none. */
delay?: TraceTime,
/** By what it was taken and what to be wary of, or why there is none. */
remarks?: Array<Remark>, };

/** Why a trace gives no time, as it is told and as it is stored. Samples count from 0. */
export type TraceError = { "kind": "few_samples",
/** Samples there are. */
samples: number,
/** Samples needed. */
needed: number, } | { "kind": "not_finite",
/** The sample. */
sample: number, } | { "kind": "step",
/** As given, ns. */
step: Digits, } | { "kind": "no_pulse",
/** What was found of a height, V. */
height: Digits,
/** Standard deviation of the quiet part, V. */
noise: Digits,
/** Where. */
sample: number, } | { "kind": "clipped",
/** The first sample at the limit. */
sample: number,
/** How many there are. */
samples: number,
/** The limit, V. */
limit: Digits, } | { "kind": "no_baseline",
/** Where the pulse begins. */
sample: number, } | { "kind": "no_top",
/** The last sample. */
last: number, } | { "kind": "level",
/** The level asked for, V. */
level: Digits,
/** The lowest that the noise allows, V. */
lowest: Digits,
/** The highest, V. */
highest: Digits, } | { "kind": "fraction",
/** As asked. */
fraction: Digits, } | { "kind": "hidden",
/** Near where. */
sample: number,
/** Standard uncertainty found, ns. */
uncertainty: Digits,
/** From 10 to 90 %, ns. */
rise: Digits, } | { "kind": "few_on_edge",
/** Near where. */
sample: number,
/** Samples there are. */
samples: number,
/** Samples needed. */
needed: number, } | { "kind": "unequal_steps",
/** Of A, ns. */
first: Digits,
/** Of B, ns. */
second: Digits, } | { "kind": "no_lag",
/** Of the first trace. */
sample: number, };

/** A time measured on traces. */
export type TraceTime = {
/** The value, ns. */
value: string,
/** Its standard uncertainty, ns. */
uncertainty: string, };

/** What was measured on the traces of a row. Texts are decimal numbers with a point, in nanoseconds. */
export type Traces = {
/** The file with both channels, or one file each, A first. */
files: Array<StoredFile>,
/** What each estimator gave. */
delays: Array<TraceDelay>,
/** Fixed level less constant fraction, with its standard uncertainty, where both gave a delay. */
walk?: TraceTime,
/** The layout of each file, in their order, where a person stated it, as JSON, which is read only where the file is; empty
 * for a file that was read as it was recognised. None at all where all were. */
layouts?: Array<string>, };

/** A rail to scale. */
export type TrackView = {
/** The rail. */
rail: number,
/** Its name. */
name: string,
/** Where it begins between the splitter and the farthest end: "12.5%". */
from: string,
/** How long it is: "30%". */
length: string,
/** What its ruler shows at the near end, where that is; the same at the far end. */
ends: Array<string>,
/** Where along it rows have been read. */
taken: Array<string>, };

/** How the Monte Carlo trials are drawn. */
export type TrialPlan = {
/** The seed, a whole number; the same seed gives the same digits everywhere. Empty stands for 1. */
seed: string,
/** The number of trials; empty leaves it to the adaptive procedure. */
wanted: string, };

/** The Monte Carlo trials, as they are to be drawn. */
export type TrialPlanView = {
/** The seed. */
seed: string,
/** How many are wanted. */
wanted: Field,
/** Why none can be drawn; empty if they can. */
refusal: Message | null, };

/** What the trials gave, or why they gave nothing. */
export type TrialsView = {
/** Why there is no result; empty if there is one. */
refusal: Message | null,
/** Mean, standard uncertainty, intervals. */
figures: Array<Figure>,
/** Whether the budget's interval may be quoted (JCGM 101:2008, clause 8). */
verdict: Message | null,
/** The histogram in words. */
summary: Message | null, };

/** A number as read. */
export type TypedNumber = {
/** Its value; none where it can't be read or used. */
value: number | null,
/** What is wrong and what to do; none if nothing is. */
problem: Message | null, };

/** As what an uncertainty is typed. */
export type UncertaintyKind = "limit" | "standard";

/** A field that holds an uncertainty and leaves its kind to choose. */
export type UncertaintyOf = "edge" | "time_base" | "mark" | { "setting": number } | { "ruler_reading": number } | { "ruler_scale": number } | { "splice": number } | { "shared": number };

/** What fills a text, or stands where a text may stand. */
export type Value = number | string | Message | {
/** Each of them. */
all: Array<Value>, };

/** Everything the page shows of one notebook. */
export type View = {
/** The title as typed. */
title: string,
/** How decimal numbers are written. */
decimal_mark: DecimalMark,
/** What the carriage carries. */
path: Path,
/** How the beam reaches it. */
beam: Beam,
/** Whether something can be taken back. */
can_undo: boolean,
/** Whether something can be done again. */
can_redo: boolean,
/** How many entries the log holds. */
entries: number,
/** What is to be read before the beam is on, and who read it. */
cautions: CautionsView,
/** Every text of the bench and the report, each field present. */
bench: Record<BenchField, Field>,
/** What a teacher fixed, asked and asked for. */
handout: HandoutView,
/** The rails, from the splitter outwards. */
rails: Array<RailView>,
/** Time base settings with their own uncertainty. */
settings: Array<SettingView>,
/** Errors shared by rows, stated by the user. */
shared: Array<SharedView>,
/** The rows, as they stand. */
rows: Array<RowView>,
/** Free notes between the rows, in the order in which they were begun. */
notes: Array<Note>,
/** A photograph of the set-up. */
photo: StoredFile | null,
/** What the next row would begin with. */
proposal: NewRow,
/** Pictures and traces. */
delays: DelaysView,
/** The straight line. */
line: LineView,
/** The uncertainty budget. */
budget: BudgetView,
/** The Monte Carlo trials, as they are to be drawn. */
trials: TrialPlanView,
/** The result. */
result: ResultView,
/** Everything noticed, the most serious first. */
notices: Array<Notice>, };

/** How serious a notice is. */
export type Weight = "grave" | "look" | "know";

/** What the budget comes to with one component another size. */
export type WhatIfView = {
/** Why there is no budget and what to do; empty if there is one. */
refusal: Message | null,
/** As [`BudgetView::figures`]. */
figures: Array<Figure>, };
