//! The model of a notebook: texts as typed, and choices.
//!
//! A text cell holds exactly what was typed, even if it can't be read as a number: nothing typed is lost.
//! The unit a bare number is taken in stands beside each field.

use litemap::LiteMap;
#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::claim::Claim;
use super::handout::Handout;
use super::light::{Beam, Path};
use super::merged::MergedLog;
use super::note::Note;
use super::splice::Splice;
use super::uncertainty::{ErrorShape, UncertaintyKind, UncertaintyOf};
use crate::quantity::DecimalMark;
use slope_evidence::all_variants;
use slope_evidence::stored::{Estimator, Evidence, Grid, StoredFile};

/// Names a row for the life of the notebook.
pub type RowId = u32;
/// Names a rail for the life of the notebook.
pub type RailId = u32;
/// Names a time base setting for the life of the notebook.
pub type SettingId = u32;
/// Names a shared error stated by the user for the life of the notebook.
pub type SharedId = u32;
/// Names a planned position for the life of the notebook.
pub type PositionId = u32;

/// A notebook as it stands after its edits.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct NotebookState {
    /// What the notebook is called.
    pub title: String,
    /// How decimal numbers are written in it.
    pub decimal_mark: DecimalMark,
    /// The texts that describe the bench and the report.
    pub bench: LiteMap<BenchField, String>,
    /// Who said that the cautions were read, in order.
    pub cautions_read: Vec<CautionsRead>,
    /// Whether the carriage carries the detector or a mirror.
    pub path: Path,
    /// How the beam reaches what is on the carriage, where it makes an angle with the rails.
    pub beam: Beam,
    /// The rails, from the splitter outwards.
    pub rails: Vec<Rail>,
    /// The time base settings whose own uncertainty was stated.
    pub settings: Vec<Setting>,
    /// As what uncertainties are typed, where that was chosen.
    pub kinds: LiteMap<UncertaintyOf, UncertaintyKind>,
    /// Errors that several rows share and that no rail or setting accounts for.
    pub shared: Vec<SharedError>,
    /// Full covariance matrices stated for rows that give distances or delays directly; at most one of each kind.
    pub covariances: Vec<StatedCovariance>,
    /// The carriage positions planned before the run, in the order in which they stand.
    pub plan: Vec<PlannedPosition>,
    /// The rows, in the order in which they stand.
    pub rows: Vec<Row>,
    /// Free notes between the rows, in the order in which they were begun.
    pub notes: Vec<Note>,
    /// A photograph of the set-up.
    pub photo: Option<StoredFile>,
    /// Grids marked on pictures.
    pub grids: Vec<Grid>,
    /// How edges are timed on recorded traces.
    pub estimator: Estimator,
    /// Which uncertainty is claimed.
    pub claim: Claim,
    /// How the Monte Carlo trials are drawn.
    pub trials: TrialPlan,
    /// The seal over the result, if it was ever laid.
    pub seal: Option<Seal>,
    /// The seed of the simulated bench that the readings come from, where the notebook is a rehearsal.
    pub rehearsal: Option<u32>,
    /// What a teacher fixed, asked and asked for, and the answers.
    pub handout: Handout,
    /// The notebooks that were merged into this one, in order.
    pub merged: Vec<MergedLog>,
    /// The highest number given so far, also to what was taken away since.
    pub numbered: u32,
}

impl NotebookState {
    /// A text of the bench; empty where nothing was typed.
    pub fn text(&self, field: BenchField) -> &str {
        self.bench.get(&field).map_or("", String::as_str)
    }

    /// A number for a new row, rail, setting, shared error, planned position, grid or task. Neither it nor a higher one was
    /// ever given to anything of this notebook.
    pub fn new_number(&self) -> u32 {
        self.numbered.saturating_add(1)
    }

    /// A row by its number in the log.
    pub fn row(&self, id: RowId) -> Option<&Row> {
        self.rows.iter().find(|row| row.id == id)
    }

    /// A rail by its number in the log, with its place among the rails, from 0.
    pub fn rail(&self, id: RailId) -> Option<(usize, &Rail)> {
        self.rails.iter().enumerate().find(|(_, rail)| rail.id == id)
    }

    /// The numbers on the page, from 1, of the rows named.
    pub fn row_numbers(&self, rows: &[RowId]) -> Vec<usize> {
        let places = rows.iter().filter_map(|id| self.rows.iter().position(|row| row.id == *id));
        places.map(|place| place + 1).collect()
    }

    /// As what an uncertainty is typed.
    pub fn kind(&self, of: UncertaintyOf) -> UncertaintyKind {
        self.kinds.get(&of).copied().unwrap_or(of.usual())
    }

    /// How an error of the user's own is distributed, as its uncertainty was stated.
    pub fn shape(&self, error: &SharedError) -> ErrorShape {
        error.shape.stated_as(self.kind(UncertaintyOf::Shared(error.id)))
    }
}

/// That somebody said that the cautions were read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CautionsRead {
    /// The name given.
    pub name: String,
    /// When, as the page's clock said it (RFC 3339); empty if nobody said.
    pub at: String,
}

/// A carriage position planned before the run: texts as typed.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct PlannedPosition {
    /// Names the position for the life of the notebook.
    pub id: PositionId,
    /// Name of the rail; empty stands for the only one.
    #[serde(default)]
    pub rail: String,
    /// Rail reading, in the ruler's unit.
    #[serde(default)]
    pub reading: String,
    /// Time per division, ns; empty stands for the fastest whose screen holds the delay.
    #[serde(default)]
    pub time_base: String,
    /// How many rows are to be read there; empty stands for 1.
    #[serde(default)]
    pub repeats: String,
}

/// How the Monte Carlo trials are drawn.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct TrialPlan {
    /// The seed, a whole number; the same seed gives the same digits everywhere. Empty stands for 1.
    pub seed: String,
    /// The number of trials; empty leaves it to the adaptive procedure.
    pub wanted: String,
}

/// A seal over the result: until it is opened, every v and c shown carries a hidden factor.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Seal {
    /// What the hidden factor is made from: letters and digits drawn at random.
    pub salt: String,
    /// Whether it was opened, which can't be taken back.
    pub opened: bool,
}

/// A text of the bench or of the report. Bare numbers are in the unit named here.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum BenchField {
    /// Who measured.
    People,
    /// Student number.
    StudentNumber,
    /// Group.
    Group,
    /// Date.
    Date,
    /// How many rows a notebook handed in must have in the line, if readings are asked for.
    LeastRows,
    /// Where and when.
    Place,
    /// Rules of the laboratory, which stand above the cautions.
    LocalRules,
    /// Whom to ask, and to call when something happens.
    LocalContact,
    /// The instruments with their identities: source, detectors, screen or recorder.
    Instruments,
    /// The cables with their identities and lengths.
    Cables,
    /// The fixed arm: where its detector stands.
    FixedArm,
    /// On what the screen or the recorder triggers.
    Trigger,
    /// At which fraction of their height edges are read.
    EdgeFraction,
    /// Vacuum wavelength of the source, nm.
    Wavelength,
    /// Pulse rate of the source, Hz.
    PulseRate,
    /// Small divisions in one division of the screen.
    SmallDivisions,
    /// Uncertainty of an edge, in divisions; the half-width of the interval within which it is read, unless chosen
    /// otherwise ([`UncertaintyOf`], as for all that follow).
    EdgeHalfWidth,
    /// Why that half-width was chosen.
    EdgeReason,
    /// Divisions across the screen.
    ScreenWidth,
    /// Relative uncertainty of the time base; a standard one unless chosen otherwise; where a setting states none of its own.
    TimeBaseUncertainty,
    /// Air temperature, °C.
    Temperature,
    /// Air pressure, hPa.
    Pressure,
    /// Relative humidity, per cent.
    Humidity,
    /// Carbon dioxide, ppm.
    CarbonDioxide,
    /// The largest angle that the beam may make with the rails, mrad.
    BeamAngle,
    /// Coverage probability of the expanded uncertainty.
    Coverage,
    /// Uncertainty of one mark on a picture, pixels; a standard one unless chosen otherwise.
    MarkUncertainty,
    /// The level at which edges are timed on traces by a fixed level, volts over the baseline.
    TraceLevel,
    /// The fraction of its height at which an edge is timed on traces.
    TraceFraction,
    /// Report: what was to be found out.
    Aim,
    /// Report: how it was done.
    Method,
    /// Report: what the result means.
    Discussion,
}

/// One rail with its ruler.
#[derive(Clone, Debug, PartialEq)]
pub struct Rail {
    /// Names the rail for the life of the notebook.
    pub id: RailId,
    /// The unit of the ruler.
    pub unit: RulerUnit,
    /// Whether readings grow or fall as the carriage moves away.
    pub sense: Sense,
    /// Where the rail stands.
    pub splice: Splice,
    /// The texts that describe it.
    pub texts: LiteMap<RailField, String>,
    /// By what name its rows still call it, where the name it was given since is another rail's too.
    pub called: Option<String>,
}

impl Rail {
    /// What the rail is called in the readings: its name, or its number (from 1) while it has none. `index` is its
    /// place among the rails, from 0.
    pub fn name_or_number(&self, index: usize) -> String {
        match self.texts.get(&RailField::Name).map(|name| name.trim()) {
            Some(name) if !name.is_empty() => name.to_owned(),
            _ => (index + 1).to_string(),
        }
    }
}

/// The unit in which a ruler counts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum RulerUnit {
    /// Millimetre.
    Millimetre,
    /// Centimetre.
    #[default]
    Centimetre,
    /// Metre.
    Metre,
    /// Inch, 25.4 mm exactly.
    Inch,
}

/// The sense of a ruler.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Sense {
    /// Readings grow as the carriage moves away from the splitter.
    #[default]
    Grows,
    /// Readings fall as the carriage moves away from the splitter.
    Falls,
}

impl Sense {
    /// s in d = o + s·(r − m): +1 or −1.
    pub fn sign(self) -> f64 {
        match self {
            Self::Grows => 1.0,
            Self::Falls => -1.0,
        }
    }
}

/// A text that describes a rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum RailField {
    /// What the rail is called in the readings.
    Name,
    /// First readable mark, in the ruler's unit.
    From,
    /// Last readable mark, in the ruler's unit.
    To,
    /// Uncertainty of one reading, in the ruler's unit; a standard one unless chosen otherwise.
    ReadingUncertainty,
    /// Relative uncertainty of the ruler's scale; a standard one unless chosen otherwise.
    ScaleUncertainty,
}

all_variants!(RailField: Name, From, To, ReadingUncertainty, ScaleUncertainty);

/// A time base setting whose own uncertainty was stated.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Setting {
    /// Names the setting for the life of the notebook.
    pub id: SettingId,
    /// Time per division, ns.
    pub time_per_division: String,
    /// Relative uncertainty; a standard one unless chosen otherwise.
    pub uncertainty: String,
}

/// An error of the user's own, which several rows share, or which each of them has for itself.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct SharedError {
    /// Names it for the life of the notebook.
    pub id: SharedId,
    /// What it is called.
    pub name: String,
    /// Whether it acts on distances or on delays.
    pub acts_on: ActsOn,
    /// How it acts.
    pub effect: Effect,
    /// The rows that it moves.
    pub rows: Scope,
    /// Its uncertainty; a standard one unless chosen otherwise: metres or nanoseconds for an offset or noise, a ratio
    /// for a scale.
    pub uncertainty: String,
    /// How it is distributed.
    #[serde(default)]
    pub shape: ErrorShape,
    /// Degrees of freedom of its uncertainty; empty stands for many.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub degrees_of_freedom: String,
}

/// What a shared error acts on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ActsOn {
    /// The distances d.
    Distances,
    /// The delays Δt.
    Delays,
}

/// How a shared error acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Effect {
    /// The same amount on each row.
    Offset,
    /// The same fraction on each row.
    Scale,
    /// An amount of its own on each row.
    Noise,
}

/// The rows that share an error.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Scope {
    /// Every row.
    All,
    /// The rows read on one rail.
    Rail(RailId),
    /// The rows read at one time per division, as typed.
    TimeBase(String),
    /// These rows.
    Rows(Vec<RowId>),
}

/// Of what a covariance matrix is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum CovarianceOf {
    /// Of distances, m², instead of an uncertainty in each row.
    Distances,
    /// Of delays, ns², instead of an uncertainty in each row.
    Delays,
    /// Of the distance of each row (down) with the delay of each (across), m·ns, beside their uncertainties.
    Both,
}

all_variants!(CovarianceOf: Distances, Delays, Both);

/// A full covariance matrix of some rows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct StatedCovariance {
    /// Of what it is.
    pub acts_on: CovarianceOf,
    /// The rows, in the order of the matrix.
    pub rows: Vec<RowId>,
    /// The matrix, row after row, as typed.
    pub matrix: Vec<Vec<String>>,
}

/// One carriage position: texts as typed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Row {
    /// Names the row for the life of the notebook.
    pub id: RowId,
    /// The cells that hold something.
    pub cells: LiteMap<Cell, String>,
    /// What its delay is taken from, if it is not typed.
    pub evidence: Option<Evidence>,
    /// Why the row is struck out, if it is.
    pub struck: Option<String>,
}

impl Row {
    /// The text of a cell; empty where nothing was typed.
    pub fn text(&self, cell: Cell) -> &str {
        self.cells.get(&cell).map_or("", String::as_str)
    }
}

/// A cell of a row. Bare numbers are in the unit named here.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Cell {
    /// Name of the rail.
    Rail,
    /// Rail reading, in the ruler's unit.
    Reading,
    /// Time per division, ns.
    TimeBase,
    /// Edge A on the screen, in divisions; repeats separated by semicolons.
    EdgeA,
    /// Edge B on the screen, in divisions; repeats separated by semicolons.
    EdgeB,
    /// The distance itself, m, instead of a rail reading.
    Distance,
    /// Standard uncertainty of that distance, m.
    DistanceUncertainty,
    /// The delay itself, ns, instead of a screen reading.
    Delay,
    /// Standard uncertainty of that delay, ns.
    DelayUncertainty,
    /// A remark.
    Remark,
}

all_variants!(
    Cell: Rail, Reading, TimeBase, EdgeA, EdgeB, Distance, DistanceUncertainty, Delay, DelayUncertainty, Remark,
);
