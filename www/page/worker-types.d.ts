// Made from the Rust types by `cargo run -p slope-worker --example worker_declarations > www/page/worker-types.d.ts`. Change those, and run it again.

/** That readings are the same, digit for digit, in another notebook. */
export type Alike = {
/** The place of the other. */
notebook: number,
/** How many rows are the same. */
rows: number, };

/** A result with its expanded uncertainty, in percent of the scale; where it reaches beyond, it is cut off. */
export type Bar = {
/** Its lower end. */
from: number,
/** The result. */
at: number,
/** Its upper end. */
to: number,
/** Whether the result itself lies beyond the scale. */
beyond: boolean, };

/** A class. */
export type Class = {
/** Each notebook, in the order given. */
notebooks: Array<Compared>,
/** What the results come to together; empty where nothing can be said. */
figures: Array<ClassFigure>,
/** Why nothing can be said of them together. */
refusal: Message | null,
/** Their mean with its expanded uncertainty among them; none where there is none. */
mean: Bar | null,
/** Marks of the scale on which they stand. */
ticks: Array<Tick>,
/** The residuals of all by position; none where there is none. */
residuals: Residuals | null,
/** The components of all budgets, the one with the largest share in the middle first. */
lost: Array<Lost>,
/** How many budgets there are. */
budgets: number, };

/** A figure of the class. */
export type ClassFigure = {
/** Identifier, stable. */
id: string,
/** What it is called. */
name: Message,
/** Its symbol; empty where it has none. */
symbol: string,
/** Its value. */
value: Value,
/** What it is, and what to look at. */
meaning: Message,
/** Where it is laid down. */
source: string, };

/** How well a line fits. */
export type ClassFit = {
/** χ². */
chi_square: number,
/** Its degrees of freedom. */
degrees_of_freedom: number,
/** Its p-value, if it has one. */
p_value: number | null, };

/** A result of a class. Speeds in m/s. */
export type ClassResult = {
/** c. */
c: number,
/** Its standard uncertainty. */
u: number,
/** Its expanded uncertainty, if it has one. */
expanded: number | null,
/** (c − c₀)/u. */
z: number | null, };

/** A unit of a column. */
export type ColumnUnit = "s" | "ms" | "µs" | "ns" | "ps" | "V" | "mV" | "1";

/** What is said of one place. */
export type Comment = {
/** What it is about. */
place: CommentPlace,
/** The words. */
text: string, };

/** A place of a notebook. */
export type CommentPlace = { "section": ReportSection } | { "row": number } | { "task": number };

/** One notebook beside the others. Texts are empty where there is nothing to tell. */
export type Compared = {
/** Its result, if it has one that is not sealed. */
result: ClassResult | null,
/** How well its line fits. */
fit: ClassFit | null,
/** c with its standard uncertainty and unit. */
c: string,
/** Expanded uncertainty, m/s. */
expanded: string,
/** Distance from c₀ in standard uncertainties. */
z: string,
/** Distance from the mean of the class in standard uncertainties. */
apart: string,
/** The same as a number. */
apart_value: number | null,
/** χ² with its degrees of freedom: "18.3/21". */
chi_square: string,
/** Its p-value. */
p_value: string,
/** Its result with its expanded uncertainty among the others. */
bar: Bar | null,
/** The figures that came with it and are not those computed here. */
differs: Array<string>,
/** The notebooks with which it shares readings. */
alike: Array<Alike>,
/** Whether its intervals cover the truth, by the key in which its data set is; none where it is in none. */
key: Covered | null, };

/** A marked grid crossing. */
export type Corner = {
/** Where it was marked. */
at: PixelPoint,
/** Its column: divisions along the time axis. */
column: number,
/** Its row: divisions downwards. */
row: number, };

/** Whether intervals cover what is really so in a data set. */
export type Covered = {
/** That of c, where there is a result that is not sealed. */
c: boolean | null,
/** That of the delay at zero distance. */
t0: boolean | null, };

/** The sign between whole and fraction, one for a whole notebook. */
export type DecimalMark = "point" | "comma";

/** A delay of B behind A. */
export type Delay = {
/** ns. */
delay: number,
/** Its standard uncertainty, from the noise of both traces and from what lies between their samples, ns. Time base and
 * channel skew come on top. */
uncertainty: number,
/** The edges of A and of B. */
edges: [Edge, Edge], };

/** How a delay is taken.
 *
 * Constant fraction, fixed level and cross-correlation by least squares claim noise of up to 20 % of the height, the
 * parabola up to 10 %, the line through the edge up to 5 %, each as long as no edge is flagged as rough. The project's
 * tests hold them to that: unbiased, and within 1.96 stated uncertainties in 93 to 97 of 100 traces of the simulated bench.
 * On edges of other shapes these are 93 to 99, fewest by constant fraction where a pulse begins at once, with a corner in its
 * edge, and most by the parabola there. */
export type DelayMethod = { "method": "fixed_level",
/** Over the baseline, V. */
volts: number, } | { "method": "constant_fraction",
/** From 0.1 to 0.9. */
fraction: number, } | { "method": "edge_line" } | { "method": "cross_correlation",
/** By least squares; otherwise by a parabola through the best lags. */
refined: boolean, };

/** What stands between two fields. */
export type Delimiter = "tab" | "semicolon" | "comma" | "bar" | "space";

/** One of the two detectors. */
export type Detector = "A" | "B";

/** A number rounded to the digits that a message tells of it, as a text with a decimal point: so it is also stored, and
 * what is read back is told in the same words. */
export type Digits = string;

/** A drawing, as paths of SVG in a box of 1000 by 1000. */
export type DotPlot = {
/** A dot for each row. */
dots: string,
/** A bar for each place with several rows, at their median. */
bars: string,
/** Marks of its scale, in percent from above. */
ticks: Array<Tick>,
/** That rows lie beyond the scale, and stand at its end. */
beyond: Message | null, };

/** Why a proposal is to be looked at before it is taken. */
export type Doubt = "lines" | "border" | "cut" | "turned" | "edge" | "meet" | "order";

/** Baseline, levels and places to draw over a trace: times in ns, levels in V as on the trace. */
export type Drawn = {
/** From and to of the quiet part. */
quiet: [number, number],
/** Its level. */
baseline: number,
/** Its standard deviation. */
sigma: number,
/** Level of the top. */
top_level: number,
/** From and to of the samples from which the height was taken. */
top: [number, number],
/** Height over the baseline, V, above 0. */
height: number,
/** From and to of what is worth a look. */
region: [number, number], };

/** The time of an edge. */
export type Edge = {
/** ns. */
time: number,
/** Its standard uncertainty, from the noise of the trace and from what lies between its samples, ns. */
uncertainty: number,
/** dV/dt at the crossing of the upright pulse, V/ns. */
slope: number,
/** Noise of one sample over that slope, ns: the jitter of a single crossing (common practice in nuclear timing). */
jitter: number,
/** Level crossed, V, as on the trace. */
level: number,
/** Baseline, V. */
baseline: number,
/** Standard deviation of the noise, V. */
sigma: number,
/** Height over the baseline, V. */
height: number,
/** Its standard uncertainty, V. */
height_uncertainty: number,
/** From 10 to 90 %, ns. */
rise: number,
/** The sample nearest to the crossing. */
sample: number,
/** What else is to be known. */
flags: Array<Flag>, };

/** A trace as it is drawn. */
export type Envelope = {
/** Time of the first stretch's first sample, ns. */
start: number,
/** From one stretch to the next, ns. */
step: number,
/** Samples in a stretch; with 1 the two lists are the same. */
each: number,
/** Least sample of each stretch, V. */
least: Array<number>,
/** Greatest, V. */
greatest: Array<number>, };

/** How an edge is timed on a trace. */
export type Estimator = "fixed_level" | "constant_fraction" | "edge_line" | "cross_correlation" | "shift_and_scale";

/** What a teacher says of a notebook. All texts are plain. */
export type Feedback = {
/** The notebook that was handed in. */
of: HandedNotebook,
/** Who says it, as typed. */
from: string,
/** When it was written to a file (RFC 3339). */
at: string,
/** Words on all of it. */
general: string,
/** The mark, as typed. */
mark: string,
/** What is said of its places. */
comments: Array<Comment>, };

/** Something that the file says beside its samples. */
export type FileSetting = {
/** What it is. */
name: string,
/** Its value, as written. */
value: string, };

/** What is to be known of an edge beside its time. Samples count from 0. */
export type Flag = { "flag": "inverted" } | { "flag": "noisy" } | { "flag": "double_edge",
/** Where. */
sample: number, } | { "flag": "not_quiet",
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

/** A notebook of a class, as far as it is compared. */
export type Given = {
/** Whether a closed seal covers its result, which then is not told. */
sealed: boolean,
/** The figures of its line and its speed, computed here. */
figures: Array<GivenFigure>,
/** The table of these figures that came with it (`line.csv`). */
stored: string | null,
/** What was read for each row of its line: a number for each text, from 0, the same for the same text in all notebooks. */
readings: Array<number>,
/** The teacher's layer, its entries one a line; empty where it was not handed out, or where no key is at hand. */
layer: string,
/** The rows of its line, one a line: the place of its rail from 0, normalized residual, distance, delay, unit and reading,
 * with tabs between them. */
rows: string,
/** What its rails are called, from the splitter on; empty where one has no name. */
rails: Array<string>,
/** The components of its budget, the largest first. */
parts: Array<GivenPart>, };

/** A figure with all its digits. */
export type GivenFigure = {
/** Identifier, as in `line.csv`. */
id: string,
/** Its value. */
value: number,
/** Its standard uncertainty, if it has one. */
uncertainty: number | null, };

/** A component of a notebook's budget. */
export type GivenPart = {
/** What it is: a number for each name, from 0, the same for the same name in all notebooks. */
component: number,
/** Its share of u²(c), as the page draws it: "51.13%". */
share: string, };

/** A notebook as it was handed in, and what tells a person which it is. */
export type HandedNotebook = {
/** The count of entries of its log. */
entries: number,
/** The chained SHA-256 of the last of them, in hexadecimal digits. */
digest: string,
/** Its title. */
title: string,
/** Who measured. */
people: string,
/** Student number. */
student_number: string,
/** Group. */
group: string,
/** Date. */
date: string, };

/** The data sets of a class. */
export type Key = {
/** The title of the notebook that was handed out. */
title: string,
/** What all secrets come of, in hexadecimal digits. */
seed: string,
/** Each data set. */
sets: Array<KeySet>, };

/** A data set as its key tells it. */
export type KeySet = {
/** Its number, from 1. */
number: number,
/** For whom it was drawn; empty where no name was given. */
name: string,
/** What its file is called. */
file: string,
/** SHA-256 of the teacher's layer, its entries one a line, in hexadecimal digits. */
digest: string,
/** What is really so in it. */
truth: KeyTruth, };

/** What is really so in a data set. */
export type KeyTruth = {
/** Delay at zero distance, ns, as it is told: "1.234 ns", to a thousandth. */
t0: string,
/** Each error that rows share, in words. */
errors: Array<string>, };

/** What a person knows of a file's layout. */
export type Known = {
/** The sign between fields. */
delimiter?: Delimiter,
/** How decimal numbers are written. */
decimal?: DecimalMark, };

/** How the numbers of a file are set out. */
export type Layout = {
/** What stands between two fields. */
delimiter: Delimiter,
/** How decimals are marked. */
decimal: DecimalMark,
/** The first line that holds samples, counted from 1. */
first_line: number,
/** The columns of that line. */
columns: Array<TraceColumn>,
/** Time from sample to sample where no column gives it, ns. */
step: number | null,
/** The unit of that step stands nowhere: seconds were supposed. A person who states it states it in nanoseconds. */
is_step_supposed: boolean,
/** Time of the first sample where no column gives it, ns. */
start: number | null,
/** What the file says beside the samples. */
settings: Array<FileSetting>, };

/** Crossings seen near the plane of corners that a person has put. */
export type LensChecks = {
/** Those of the middle, the left and the right side that are seen. */
seen: Array<Corner>,
/** Whether they are to be looked at before they are taken: too few of the grid's lines are seen there, or they go on
 * beyond it. */
is_doubted: boolean, };

/** Where the fixed level comes from. */
export type LevelOf = "pair" | "run" | "stated";

/** A component over all budgets of a class. */
export type Lost = {
/** Which, as given. */
component: number,
/** The median of its share of u²(c), percent; of a budget that does not have it, 0. */
share: number,
/** The same as written. */
text: string,
/** In how many budgets it is the largest. */
largest: number, };

/** A picture on which a person has marked both edges, with what was found on it. */
export type MarkedBefore = {
/** The edges found. */
edges: [ProposedEdge | null, ProposedEdge | null],
/** A mark on edge A. */
a: PixelPoint,
/** A mark on edge B. */
b: PixelPoint, };

/** What is found of a pair, with the words of what is refused. Fields as in [`trace::Measured`]. */
export type Measured = { outcomes: Array<Outcome>, level: number | null, walk: [number, number] | null, sides: [Side, Side],
/** The same as a notebook keeps it; none where no method gives a delay. */
evidence: Traces | null,
/** Why no method gives a delay; none where one does. */
refusal: Message | null, };

/** Something to be said. */
export type Message = {
/** The identifier of its text in the tables. */
id: string,
/** What fills the text, by the names that stand there. */
values: Record<string, Value>, };

/** What a file's name tells of where its trace was taken. */
export type Named = {
/** The reading with its unit, `123.5 cm`; only where exactly one stands in the name. */
reading: string | null,
/** The rail: one whose name is known and stands there, else what follows the word "rail", else the one letter before
 * the reading. */
rail: string | null,
/** A or B: the one letter behind the reading, or what follows "ch" or "channel" (1 is A, 2 is B). */
channel: string | null, };

/** A place where the class lies off its lines. */
export type NamedPlace = {
/** Where it stands, in percent of the width. */
at: number,
/** What is to be said of it. */
text: Message, };

/** One method's delay, or why it gives none; by `estimator` the notebook knows the method. */
export type Outcome = { estimator: Estimator, method: DelayMethod, delay: Delay | null, refused: Refused | null, };

/** The files of one position: one that holds both traces, or one for each. */
export type Pair = {
/** Index of the file with A, or with both. */
a: number,
/** Index of the file with B, if it is another. */
b: number | null, };

/** A place in the picture, pixels: x to the right, y downwards. */
export type PixelPoint = {
/** To the right. */
x: number,
/** Downwards. */
y: number, };

/** What stands in a column of a [`PlotTable`]. */
export type PlotColumn = {
/** What it is called. */
name: Message,
/** Its unit; empty for texts and pure numbers. */
unit: string, };

/** What a drawing shows, as a table. */
export type PlotTable = {
/** The columns; the first one names the rows. */
columns: Array<PlotColumn>,
/** A text for each column. */
rows: Array<Array<Value>>, };

/** Marks proposed. */
export type Proposal = {
/** The grid's corners: from the top left along the time axis, and round. */
corners: [Corner, Corner, Corner, Corner],
/** The crossing in the grid's middle, or next to it, for a check of the lens. */
centre: Corner,
/** Crossings in the middle of the left and of the right side, or next to it, where a lens shows more. */
sides: [Corner, Corner],
/** How sure the corners are, 0 to 1: the share of the grid's lines that was seen. */
confidence: number,
/** Whether corners and checks are to be looked at before they are taken. */
is_doubted: boolean,
/** The edges of A and of B, where a picture before tells them apart; else the earlier one first. None where no trace
 * with an edge was found. */
edges: [ProposedEdge | null, ProposedEdge | null],
/** Why the grid or an edge is in doubt. */
doubts: Array<Doubt>, };

/** An edge proposed. */
export type ProposedEdge = {
/** Where the trace crosses half of its own height, pixels. */
at: PixelPoint,
/** The same in divisions: column and row. */
divisions: [number, number],
/** Row of the trace's baseline, divisions. */
base: number,
/** Row of its peak, divisions. */
peak: number,
/** Where the edge leaves the baseline and where it reaches the peak, pixels. */
ends: [PixelPoint, PixelPoint],
/** How thick the trace is before its edge, whole pixels; none where too little of it is seen there. */
thickness: number | null,
/** The trace's colour over the ground: red, green and blue. */
colour: [number, number, number],
/** From 0, a guess, to 1. */
confidence: number,
/** Whether it is to be looked at before it is taken. */
is_doubted: boolean, };

/** A rail where it lies. */
export type RailSpan = {
/** What it is called, or its number. */
name: string,
/** Where rows on it begin, in percent of the width. */
from: number,
/** Where they end. */
to: number, };

/** Which trace is refused, and why. */
export type Refused = {
/** Whose trace. */
detector: Detector,
/** Why. */
problem: TraceError,
/** The same, to be told. */
message: Message, };

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

/** A section of a notebook's report. */
export type ReportSection = "cautions" | "aim" | "method" | "apparatus" | "readings" | "line" | "uncertainty" | "result" | "discussion";

/** The residuals of a class. */
export type Residuals = {
/** How many rows of how many notebooks are drawn, and what is left out. */
drawn: Array<Message>,
/** What is to be said of the places together. */
told: Message,
/** Where the class lies off its lines beyond chance, the place that stands out most first. */
places: Array<NamedPlace>,
/** Marks of the distance from the splitter, m. */
ticks: Array<Tick>,
/** The rails where they lie. */
rails: Array<RailSpan>,
/** In standard uncertainties. */
normalized: DotPlot,
/** In nanoseconds; none where seals cover all lines. */
nanoseconds: DotPlot | null,
/** Both as a table, a row for each place. */
table: PlotTable, };

/** What a column holds. */
export type Role = "time" | "channel_a" | "channel_b" | "ignored";

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

/** One of the two traces. */
export type Side = { drawn: Drawn | null, refused: Refused | null, envelope: Envelope | null, };

/** Pixels to the right and downwards, as stored; a picture may be turned when it is shown. */
export type Size = {
/** Pixels to the right. */
width: number,
/** Pixels downwards. */
height: number, };

/** As [`photo::Standing`], with the verdict. */
export type Standing = { shift: [number, number], largest: number, divisions: number, seen: number,
/** The marks serve this picture too. */
holds: boolean, };

/** A file kept beside the notebook. */
export type StoredFile = {
/** SHA-256 of its bytes, 64 hexadecimal digits. */
sha256: string,
/** What it was called. */
name: string,
/** Its length, bytes. */
bytes: number, };

/** What the page catches. */
export type Thrown = {
/** A stable identifier of what failed. */
kind: string,
/** What failed and what to do, for a person; a text where a library or the browser says it. */
message: Value, };

/** A mark of a scale. */
export type Tick = {
/** Where it stands, in percent of the scale. */
at: number,
/** Its number; of the scale of results, 10⁶ m/s. */
text: string, };

/** One column. */
export type TraceColumn = {
/** What it holds. */
role: Role,
/** Its unit. */
unit: ColumnUnit,
/** The unit stands in the file; otherwise it was supposed, and wants a look. */
unit_stated: boolean,
/** As the header has it; may be empty. */
label: string, };

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

/** What fills a text, or stands where a text may stand. */
export type Value = number | string | Message | {
/** Each of them. */
all: Array<Value>, };

/** What is asked of a pair. */
export type Wanted = {
/** Where the fixed level comes from. */
level_of?: LevelOf,
/** The fixed level over the baseline, V; without one, half the lower of the two pulses. */
level: number | null,
/** The constant fraction, 0.1 to 0.9. */
fraction: number,
/** Stretches that a drawing of a trace may have; 0 for no drawing. */
points: number, };
