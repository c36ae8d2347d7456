//! The shape of a [`View`].

use litemap::LiteMap;

use serde::{Serialize, Serializer};

use super::cautions::CautionsView;
use super::math::Formula;
use crate::analysis::{Notice, Weight};
use crate::notebook::{
    ActsOn, Asks, Basis, Beam, BenchField, Cell, Effect, ErrorShape, Estimator, GridId, Note, Path, Piece,
    RailField, RailId, RowId, RulerUnit, Scope, Sense, SettingId, SharedId, Splice, StoredFile, TaskId,
    UncertaintyKind, UncertaintyOf,
};
use crate::quantity::DecimalMark;
use crate::words::{Message, Value};

/// A map as a record, also when it is empty: of an empty map litemap can't tell that its keys are texts.
pub(super) fn as_record<S: Serializer, K: Serialize, V: Serialize>(
    map: &LiteMap<K, V>,
    serializer: S,
) -> Result<S::Ok, S::Error> {
    serializer.collect_map(map.iter())
}

/// Everything the page shows of one notebook.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct View {
    /// The title as typed.
    pub title: String,
    /// How decimal numbers are written.
    pub decimal_mark: DecimalMark,
    /// What the carriage carries.
    pub path: Path,
    /// How the beam reaches it.
    pub beam: Beam,
    /// Whether something can be taken back.
    pub can_undo: bool,
    /// Whether something can be done again.
    pub can_redo: bool,
    /// How many entries the log holds.
    pub entries: usize,
    /// What is to be read before the beam is on, and who read it.
    pub cautions: CautionsView,
    /// Every text of the bench and the report, each field present.
    #[cfg_attr(not(target_arch = "wasm32"), ts(type = "Record<BenchField, Field>"))]
    #[serde(serialize_with = "as_record")]
    pub bench: LiteMap<BenchField, Field>,
    /// What a teacher fixed, asked and asked for.
    pub handout: HandoutView,
    /// The rails, from the splitter outwards.
    pub rails: Vec<RailView>,
    /// Time base settings with their own uncertainty.
    pub settings: Vec<SettingView>,
    /// Errors shared by rows, stated by the user.
    pub shared: Vec<SharedView>,
    /// The rows, as they stand.
    pub rows: Vec<RowView>,
    /// Free notes between the rows, in the order in which they were begun.
    pub notes: Vec<Note>,
    /// A photograph of the set-up.
    pub photo: Option<StoredFile>,
    /// What the next row would begin with.
    pub proposal: NewRow,
    /// Pictures and traces.
    pub delays: DelaysView,
    /// The straight line.
    pub line: LineView,
    /// The uncertainty budget.
    pub budget: BudgetView,
    /// The Monte Carlo trials, as they are to be drawn.
    pub trials: TrialPlanView,
    /// The result.
    pub result: ResultView,
    /// Everything noticed, the most serious first.
    pub notices: Vec<Notice>,
}

/// The teacher's layer of a notebook, prepared or handed out.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct HandoutView {
    /// How many entries of the log are the teacher's; 0 while it is prepared, and in any other notebook.
    pub entries: usize,
    /// The highest number of a row that was handed out; none where nothing was.
    pub given: Option<RowId>,
    /// What is fixed, or to be fixed.
    pub fixed: Vec<Piece>,
    /// What is asked for.
    pub needed: Vec<Piece>,
    /// Texts and questions, in their order.
    pub tasks: Vec<TaskView>,
    /// What is asked for and not there; questions without an answer are told beside each of them.
    pub missing: Vec<Piece>,
}

/// A text or question, with its answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct TaskView {
    /// Its number.
    pub id: TaskId,
    /// What it is about.
    pub at: Piece,
    /// What it asks for.
    pub asks: Asks,
    /// The text.
    pub text: String,
    /// The answer as typed, and what is wrong with it.
    pub answer: Field,
}

/// A text as typed, what is wrong with it, and what stands in for it while it is empty.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Field {
    /// As typed.
    pub text: String,
    /// What is wrong, in one sentence, and what to do; empty if nothing is.
    pub problem: Option<Message>,
    /// What is taken while the field is empty; an empty text if nothing is.
    pub default: Value,
    /// The unit of a bare number, typed or taken; empty for words.
    pub unit: String,
    /// As what it is meant, where it is an uncertainty whose kind can be chosen.
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional))]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub meant: Option<Meant>,
    /// The uncertainty of a value behind which one may be typed.
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional))]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub behind: Option<Behind>,
}

/// The uncertainty of a value behind which one may be typed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Behind {
    /// The limit ±a that is taken where none is typed; empty where one is.
    pub limit: String,
    /// The standard uncertainty, as typed or u = a/√3.
    pub u: String,
}

/// As what an uncertainty is meant, and what follows.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Meant {
    /// Which uncertainty; none where its text itself says as what it is meant.
    pub of: Option<UncertaintyOf>,
    /// As a limit, or as a standard uncertainty.
    pub kind: UncertaintyKind,
    /// The standard uncertainty that follows from a limit, u = a/√`under_root`; empty where there is none.
    pub u: String,
    /// What stands under that root, which the distribution decides.
    pub under_root: u8,
    /// Whether nothing was typed and nothing is taken: the quantity is treated as exact.
    pub exact: bool,
}

/// One rail.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct RailView {
    /// The rail.
    pub id: RailId,
    /// Its texts, each field present.
    #[cfg_attr(not(target_arch = "wasm32"), ts(type = "Record<RailField, Field>"))]
    #[serde(serialize_with = "as_record")]
    pub fields: LiteMap<RailField, Field>,
    /// The unit of its ruler.
    pub unit: RulerUnit,
    /// That unit's symbol.
    pub unit_symbol: String,
    /// The sense of its ruler.
    pub sense: Sense,
    /// How it is joined, as typed.
    pub splice: Splice,
    /// What is wrong with the splice, by the name of its part ("mark", "distance", "pairs.0.here", …; "splice"
    /// for the whole).
    #[cfg_attr(not(target_arch = "wasm32"), ts(as = "std::collections::BTreeMap<String, Message>"))]
    #[serde(serialize_with = "as_record")]
    pub splice_problems: LiteMap<String, Message>,
    /// The uncertainty of its place; empty where the splice states none.
    pub splice_uncertainty: Field,
    /// Where the rail lies; none where it can't be told.
    pub stands: Option<Message>,
    /// The step that the readings themselves show at its splice; none where it can't be told.
    pub step: Option<Message>,
    /// How many rows were read on it.
    pub rows: usize,
}

/// One time base setting.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct SettingView {
    /// The setting.
    pub id: SettingId,
    /// Time per division.
    pub time_per_division: Field,
    /// Relative uncertainty.
    pub uncertainty: Field,
}

/// One shared error.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct SharedView {
    /// The shared error.
    pub id: SharedId,
    /// What it is called.
    pub name: String,
    /// What it acts on.
    pub acts_on: ActsOn,
    /// How it acts.
    pub effect: Effect,
    /// On which rows.
    pub rows: Scope,
    /// Its uncertainty.
    pub uncertainty: Field,
    /// How it is distributed, as its uncertainty was stated.
    pub shape: ErrorShape,
    /// Its degrees of freedom.
    pub degrees_of_freedom: Field,
}

/// How a row takes part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum RowState {
    /// Nothing typed yet.
    Empty,
    /// Something is missing or can't be read.
    Incomplete,
    /// In the line.
    Used,
    /// Struck out by hand.
    Struck,
}

/// From what the delay of a row is taken.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum EvidenceKind {
    /// It is typed.
    #[default]
    #[serde(rename = "")]
    Typed,
    /// Marks on a picture.
    Picture,
    /// Recorded traces.
    Traces,
}

/// One row.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct RowView {
    /// The row.
    pub id: RowId,
    /// Its number on the page, from 1.
    pub number: usize,
    /// How it takes part.
    pub state: RowState,
    /// Its cells, each present.
    #[cfg_attr(not(target_arch = "wasm32"), ts(type = "Record<Cell, Field>"))]
    #[serde(serialize_with = "as_record")]
    pub cells: LiteMap<Cell, Field>,
    /// From what its delay is taken.
    pub evidence: EvidenceKind,
    /// Why it is struck out; empty if it is not.
    pub struck: String,
    /// What keeps it out of the line, in one sentence; empty if nothing does.
    pub lacks: Option<Message>,
    /// Distance with its standard uncertainty, in metres; the head of the column holds the unit.
    pub distance: String,
    /// Delay with its standard uncertainty, in nanoseconds; the head of the column holds the unit.
    pub delay: String,
    /// Residual in units of its standard uncertainty.
    pub residual: String,
    /// The notices that name this row and few others.
    pub notices: Vec<RowNotice>,
}

/// A notice as the rows show it that it names.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct RowNotice {
    /// How serious.
    pub weight: Weight,
    /// What was noticed.
    pub text: Message,
    /// Whether it is told below the row, not only marked in it.
    pub told: bool,
}

/// What a new row would begin with.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct NewRow {
    /// A number for it.
    pub row: RowId,
    /// The cells.
    #[cfg_attr(not(target_arch = "wasm32"), ts(as = "std::collections::BTreeMap<Cell, String>"))]
    #[serde(serialize_with = "as_record")]
    pub cells: LiteMap<Cell, String>,
}

/// A number with its name, its unit and where it comes from.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Figure {
    /// Identifier, stable: "slope", "intercept", "chi_square"…
    pub id: String,
    /// What it is called.
    pub name: Value,
    /// Its symbol.
    pub symbol: String,
    /// Value, uncertainty and unit.
    pub value: Value,
    /// What it is, in a few sentences.
    pub meaning: Vec<Value>,
    /// The formula, and the same with the numbers put in.
    pub formula: Option<Formula>,
    /// Where it is laid down; none where the meaning says it.
    pub source: Option<Value>,
}

/// The uncertainty budget of c, or why there is none.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct BudgetView {
    /// Why there is no budget and what to do; empty if there is one.
    pub refusal: Option<Message>,
    /// Its lines, the largest first, those that can't matter last.
    pub components: Vec<ComponentView>,
    /// Combined uncertainty, degrees of freedom, coverage factor, expanded uncertainty.
    pub figures: Vec<Figure>,
    /// The budget in words; none where there is no budget.
    pub summary: Option<Message>,
}

/// What the budget comes to with one component another size.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct WhatIfView {
    /// Why there is no budget and what to do; empty if there is one.
    pub refusal: Option<Message>,
    /// As [`BudgetView::figures`].
    pub figures: Vec<Figure>,
}

/// One line of the budget.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ComponentView {
    /// Identifier, stable.
    pub id: String,
    /// What it is called: in the table's words, or as the person who stated it calls it.
    pub name: Value,
    /// What it acts on.
    pub acts_on: Message,
    /// Its standard uncertainty with its unit.
    pub u: String,
    /// How it is distributed.
    pub shape: Message,
    /// Degrees of freedom.
    pub degrees_of_freedom: String,
    /// Change of c for one unit of it, with its unit.
    pub sensitivity: String,
    /// The standard uncertainty of c that it causes, m/s.
    pub contribution: String,
    /// Its share of the variance as the length of a bar: "51.13%".
    pub bar: String,
    /// The same as written.
    pub share_text: String,
    /// How it came in, or why it can't matter.
    pub remark: Message,
}

/// The Monte Carlo trials, as they are to be drawn.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct TrialPlanView {
    /// The seed.
    pub seed: String,
    /// How many are wanted.
    pub wanted: Field,
    /// Why none can be drawn; empty if they can.
    pub refusal: Option<Message>,
}

/// How far the trials have come.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ProgressView {
    /// How many are drawn.
    pub done: usize,
    /// How many are needed at most.
    pub most: usize,
    /// The same in words.
    pub text: Message,
}

/// What the trials gave, or why they gave nothing.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct TrialsView {
    /// Why there is no result; empty if there is one.
    pub refusal: Option<Message>,
    /// Mean, standard uncertainty, intervals.
    pub figures: Vec<Figure>,
    /// Whether the budget's interval may be quoted (JCGM 101:2008, clause 8).
    pub verdict: Option<Message>,
    /// The histogram in words.
    pub summary: Option<Message>,
}

/// What all pictures and traces of a notebook come to.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct DelaysView {
    /// How edges are timed on traces.
    pub estimator: Estimator,
    /// The fixed level as stated, V; none for half of the smallest pulse.
    pub level: Option<f64>,
    /// The constant fraction.
    pub fraction: f64,
    /// The grids marked on pictures.
    pub grids: Vec<GridView>,
    /// On which rows the heights of edges were marked on pictures, and at which fraction of them these are timed.
    pub heights: Option<Message>,
    /// What a fixed level would do to v.
    pub walk: Vec<Figure>,
    /// The drawing of the walk in words; none where there is none.
    pub walk_summary: Option<Message>,
}

/// One marked grid.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct GridView {
    /// The grid.
    pub id: GridId,
    /// The rows read against it.
    pub rows: Vec<RowId>,
    /// What is wrong with its marks; empty if nothing is.
    pub problem: Option<Message>,
}

/// The straight line, or why there is none.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct LineView {
    /// Why there is no line and what to do; empty if there is one.
    pub refusal: Option<Message>,
    /// How the line was fitted.
    pub method: Option<Message>,
    /// Slope, intercept and how well it fits.
    pub figures: Vec<Figure>,
    /// Other ways to look at the same rows.
    pub checks: Vec<Figure>,
    /// The picture in words, for those who can't see it.
    pub summary: Option<Message>,
    /// The residual plot in words.
    pub residual_summary: Option<Message>,
}

/// The result, or why there is none.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ResultView {
    /// Why there is no result and what to do; empty if there is one.
    pub refusal: Option<Message>,
    /// c with its standard uncertainty, short form, for the strip that stays in sight.
    pub short: String,
    /// v, n_g, c, U, comparison…
    pub figures: Vec<Figure>,
    /// One to three sentences that can go into a report.
    pub sentences: Vec<Message>,
    /// From what the claimed uncertainty comes.
    pub basis: Basis,
    /// The reason as typed.
    pub reason: String,
    /// Both uncertainties side by side, where they differ; none where there is nothing to choose.
    pub choice: Option<Message>,
    /// Whether a closed seal covers the result.
    pub sealed: bool,
    /// Whether the result may still be sealed: once only.
    pub may_seal: bool,
}
