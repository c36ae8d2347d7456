//! The shape of an [`Analysis`].

use serde::{Serialize, Serializer};

use super::notice::Notice;
use super::origin::{Clock, Origin, Quantity};
use super::place::EntryProblem;
use super::row_error::RowError;
use super::seal::Shown;
use crate::air::AirError;
use crate::budget::BudgetError;
use crate::message;
use crate::notebook::{Basis, ErrorShape, RailId, RowId};
use crate::quantity::{DecimalMark, plain};
use crate::words::Message;

/// A value with its standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct MeasuredValue {
    /// The value.
    pub value: f64,
    /// Its standard uncertainty; none where nothing was stated.
    pub uncertainty: Option<f64>,
}

/// Everything computed from a notebook.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Analysis {
    /// What can't be read or used, in the order of the page.
    pub problems: Vec<EntryProblem>,
    /// Where each rail stands.
    pub rails: Vec<RailStand>,
    /// What each row says, in the order of the page.
    pub rows: Vec<RowReading>,
    /// The air and its index.
    pub air: AirReading,
    /// The straight line, or why there is none.
    pub line: Result<Shown<LineAnalysis>, Refusal>,
    /// The speed, or why there is none.
    pub speed: Result<Shown<Speed>, Refusal>,
    /// What a fixed level would do to v, where rows were read from traces.
    pub walk: Option<WalkAnalysis>,
    /// What was noticed, the most serious first.
    pub notices: Vec<Notice>,
    /// The line among the readings as they are, for drawings and plans.
    #[serde(skip)]
    pub drawn: Option<DrawnLine>,
    /// Whether v, c and slopes carry the hidden factor of a closed seal.
    #[serde(skip)]
    pub sealed: bool,
    /// Whether checks and notices are of the notebook as it is, rather than as it was an edit ago.
    #[serde(skip)]
    pub judged: bool,
}

/// The line as drawings show it: among the readings as they are, sealed or not. It is no number to be read, so nothing
/// may put it into digits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawnLine {
    /// Delay at zero distance, ns.
    pub intercept: f64,
    /// Slope, ns/m.
    pub slope: f64,
    /// Its uncertainties.
    pub uncertainty: Option<crate::line::Uncertainty>,
}

/// Why something can't be computed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Refusal {
    /// A stable identifier: "too_few_rows", "all_positions_equal", "no_uncertainty"…
    pub id: &'static str,
    /// The rows concerned.
    pub rows: Vec<RowId>,
    /// What is missing and what to do.
    pub message: Message,
}

impl Refusal {
    /// A refusal that names no rows.
    pub(crate) fn new(id: &'static str, message: Message) -> Self {
        Self { id, rows: Vec::new(), message }
    }

    /// The same, of these rows.
    #[must_use]
    pub(crate) fn of_rows(self, rows: Vec<RowId>) -> Self {
        Self { rows, ..self }
    }
}

/// Where a rail stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RailStand {
    /// The rail.
    pub id: RailId,
    /// Its name in the readings.
    pub name: String,
    /// Distance of the near end of its span from the splitter, m; none while it can't be told.
    pub near: Option<f64>,
    /// Distance of the far end of its span, m.
    pub far: Option<f64>,
    /// Its reference mark in metres of ruler, and the distance of that mark with its standard uncertainty.
    pub mark: Option<(f64, MeasuredValue)>,
    /// Whether the step at its splice is an unknown of the fit.
    pub free: bool,
}

/// How a row takes part.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "state", rename_all = "snake_case")]
pub enum RowPart {
    /// Nothing typed yet.
    Empty,
    /// Something is missing or can't be read.
    Incomplete {
        /// What, and what to do.
        lacks: RowError,
    },
    /// Struck out by hand.
    Struck,
    /// In the line.
    Used,
}

// Not by `==`, whose way to compare what is lacking takes 2 KB of the core.
impl RowPart {
    /// Whether the row is in the line.
    pub fn is_used(&self) -> bool {
        matches!(self, Self::Used)
    }

    /// Whether it is struck out.
    pub fn is_struck(&self) -> bool {
        matches!(self, Self::Struck)
    }
}

/// What a row says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RowReading {
    /// The row.
    pub id: RowId,
    /// Its number on the page, from 1.
    pub number: usize,
    /// How it takes part.
    pub part: RowPart,
    /// The rail it was read on.
    pub rail: Option<RailId>,
    /// Rail reading in metres of ruler.
    pub reading: Option<f64>,
    /// Time per division, ns.
    pub time_per_division: Option<f64>,
    /// Distance, m, with its full standard uncertainty (shared parts included).
    pub distance: Option<MeasuredValue>,
    /// Delay, ns, with its full standard uncertainty.
    pub delay: Option<MeasuredValue>,
}

/// The air and its index.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AirReading {
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Pressure, Pa.
    pub pressure_pa: f64,
    /// Relative humidity, per cent.
    pub humidity_percent: f64,
    /// Carbon dioxide, ppm.
    pub co2_ppm: f64,
    /// Vacuum wavelength, nm.
    pub wavelength_nm: f64,
    /// Group index, or why there is none.
    #[serde(serialize_with = "index_or_why")]
    pub group_index: Result<f64, NoIndex>,
    /// Its standard uncertainty; none where there is no index.
    pub u_group_index: Option<f64>,
}

/// Why the air has no index.
#[derive(Clone, Debug, PartialEq)]
pub struct NoIndex {
    /// What is wrong with its state or with the wavelength.
    pub error: AirError,
    /// How the notebook writes numbers.
    pub mark: DecimalMark,
}

impl NoIndex {
    /// What is wrong and what to look at.
    pub fn message(&self) -> Message {
        self.error.message(self.mark)
    }
}

fn index_or_why<S: Serializer>(value: &Result<f64, NoIndex>, serializer: S) -> Result<S::Ok, S::Error> {
    value.as_ref().map_err(NoIndex::message).serialize(serializer)
}

fn factor_or_why<S: Serializer>(value: &Result<f64, BudgetError>, serializer: S) -> Result<S::Ok, S::Error> {
    value.as_ref().map_err(|why| not_given(why, DecimalMark::Point)).serialize(serializer)
}

/// Why a budget or its trials don't give what was asked of them.
pub fn not_given(error: &BudgetError, mark: DecimalMark) -> Message {
    match error {
        BudgetError::DegreesOfFreedom { got } => message!("budget-few_degrees", got = plain(*got, 3, mark)),
        BudgetError::Probability { got } => message!("budget-no_probability", got = plain(*got, 3, mark)),
        BudgetError::NoValue { trials, without } => {
            message!("trials-no_value", without = *without, trials = *trials)
        }
        BudgetError::TooFewTrials { got, needed } => message!("trials-too_few", got = *got, needed = *needed),
        BudgetError::OutOfRange => message!("trials-out_of_range"),
    }
}

/// One part of the slope's variance.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SlopePart {
    /// From where it comes.
    pub origin: Origin,
    /// Standard uncertainty of the error itself, in the unit of `quantity`; the root mean square over the rows where
    /// they differ.
    pub u: f64,
    /// What kind of quantity the error is.
    pub quantity: Quantity,
    /// Standard uncertainty of the slope that it causes, ns/m.
    pub slope: f64,
    /// Degrees of freedom; none means many.
    pub degrees_of_freedom: Option<f64>,
    /// How it is distributed.
    pub shape: ErrorShape,
    /// Whether each row has an error of its own, rather than all the same.
    pub independent: bool,
}

/// The straight line Δt = t₀ + b·d and what goes with it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LineAnalysis {
    /// The rows in the line, in the order of the arrays in `fit`.
    pub rows: Vec<RowId>,
    /// Distances as read, m.
    pub distance: Vec<f64>,
    /// Delays as read, ns.
    pub delay: Vec<f64>,
    /// Full standard uncertainty of each distance, m.
    pub u_distance: Vec<f64>,
    /// Full standard uncertainty of each delay, ns.
    pub u_delay: Vec<f64>,
    /// Whether uncertainties were stated (else the fit is ordinary least squares, scatter-based).
    pub stated: bool,
    /// The fit: slope in ns/m, intercept in ns.
    pub fit: crate::line::Fit,
    /// Degrees of freedom of what was stated, as χ² weighs it; none means many.
    pub weights_degrees: Option<f64>,
    /// p-value of χ²; none with no degree of freedom or nothing stated.
    pub p_value: Option<f64>,
    /// √(χ²/ν); none with no degree of freedom.
    pub birge_ratio: Option<f64>,
    /// The origins of the shared errors, in the order of `fit.shared`.
    pub shared: Vec<Origin>,
    /// What the slope's variance is made of, as stated.
    pub parts: Vec<SlopePart>,
    /// The rails whose step is free, in the order of `fit.free`.
    pub free: Vec<RailId>,
    /// Side checks.
    pub checks: Checks,
}

/// Other ways to look at the same rows. Each is none where it can't be told.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Checks {
    /// Slope of the line forced through zero, ns/m.
    pub through_zero: Option<MeasuredValue>,
    /// Slope on each rail alone, ns/m.
    pub rails_alone: Vec<(RailId, Option<MeasuredValue>)>,
    /// The step that the readings show at each splice, m, with its p-value against zero.
    pub steps: Vec<StepCheck>,
    /// The offset of the rows of each time base against the others, ns; only where there are several.
    pub settings: Vec<SettingCheck>,
    /// Quadratic term, ns/m², with its p-value against zero.
    pub quadratic: Option<Tested>,
    /// Theil–Sen slope, ns/m.
    pub theil_sen: Option<f64>,
    /// The row that moves the slope most when left out, and the slope then, ns/m.
    pub decisive_row: Option<(RowId, f64)>,
    /// Slope from regressing distance on delay, ns/m.
    pub other_way: Option<f64>,
    /// Runs of the signs of the residuals, along the distance.
    pub runs: Option<crate::line::diagnostics::RunsTest>,
    /// Rows that Chauvenet's criterion points at.
    pub chauvenet: Vec<RowId>,
    /// Rows that Peirce's criterion points at.
    pub peirce: Vec<RowId>,
}

/// A quantity that should be zero.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Tested {
    /// Its value.
    pub value: f64,
    /// Its standard uncertainty.
    pub uncertainty: f64,
    /// Two-sided p-value against zero.
    pub p_value: f64,
}

/// The step at one splice, as the readings show it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StepCheck {
    /// The rail behind the splice.
    pub rail: RailId,
    /// By how much the rail stands farther out than stated, m.
    pub step: Tested,
}

/// The offset of the rows read at one time base against the others.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SettingCheck {
    /// The time base.
    #[serde(rename = "time_per_division")]
    pub clock: Clock,
    /// By how much its rows lie above the others' line, ns.
    pub offset: Tested,
    /// Its rows.
    pub rows: Vec<RowId>,
}

/// The speed of light from the line.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Speed {
    /// Group velocity in air, m/s.
    pub v: f64,
    /// c = n_g·v, m/s.
    pub c: f64,
    /// Group index used.
    pub group_index: f64,
    /// From what the claimed uncertainty comes.
    pub basis: Basis,
    /// Relative standard uncertainty claimed of c.
    pub relative: f64,
    /// The same of v, which the air is no part of.
    pub relative_v: f64,
    /// Relative standard uncertainty of c from what was stated, if anything was.
    pub relative_stated: Option<f64>,
    /// Relative standard uncertainty of c from the scatter, if there is a degree of freedom.
    pub relative_scatter: Option<f64>,
    /// The budget of the claimed uncertainty.
    pub budget: Budget,
    /// Beside c₀; none while the result is sealed.
    pub comparison: Option<Comparison>,
    /// Relative bias of v from 1/b to second order, (u(b)/b)².
    pub second_order: f64,
    /// Whether the figures carry the hidden factor of a closed seal.
    pub sealed: bool,
}

/// c beside the defined value c₀.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Comparison {
    /// (c − c₀)/u.
    pub z: f64,
    /// E_n = (c − c₀)/U with U at 95 % (ISO 13528:2015, 9.7; clause from memory); none without U.
    pub e_n: Option<f64>,
    /// (c − c₀)/c₀.
    pub relative_difference: f64,
}

impl Speed {
    /// Standard uncertainty of c, m/s.
    pub fn u_c(&self) -> f64 {
        self.c * self.relative
    }

    /// Standard uncertainty of v, m/s.
    pub fn u_v(&self) -> f64 {
        self.v * self.relative_v
    }

    /// Expanded uncertainty of c, m/s; none where the budget gives no coverage factor.
    pub fn expanded(&self) -> Option<f64> {
        self.budget.coverage_factor.as_ref().ok().map(|k| k * self.u_c())
    }
}

/// What the standard uncertainty of c is made of (JCGM 100:2008, clause 8 and annex G).
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Budget {
    /// The components: those of the fit, those beside it, and those that can't matter.
    pub components: Vec<BudgetComponent>,
    /// Effective degrees of freedom (Welch–Satterthwaite); none means many.
    pub degrees_of_freedom: Option<f64>,
    /// Coverage probability.
    pub probability: f64,
    /// Coverage factor k, or why there is none.
    #[serde(serialize_with = "factor_or_why")]
    pub coverage_factor: Result<f64, BudgetError>,
}

/// One line of the budget.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BudgetComponent {
    /// From where it comes.
    pub origin: Origin,
    /// Standard uncertainty, in the unit of `quantity`; none where it needs no number.
    pub u: Option<f64>,
    /// What kind of quantity it is.
    pub quantity: Quantity,
    /// How it is distributed.
    pub shape: ErrorShape,
    /// Degrees of freedom; none means many.
    pub degrees_of_freedom: Option<f64>,
    /// Standard uncertainty of c that it causes, relative to c.
    pub relative: f64,
    /// Its share of the variance of c, 0 … 1.
    pub share: f64,
    /// How it came in.
    pub entry: HowEntered,
}

/// How a component came into the budget.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum HowEntered {
    /// Row by row, through the fit's covariance.
    Rows,
    /// As an error that rows share, through the fit's covariance.
    Shared,
    /// Beside the fit.
    Beside,
    /// It shifts all distances or all delays alike, so it moves t₀ and not the slope.
    ShiftsOnly,
}

/// What a fixed level does to the delay of one row. Written as a list of its four members.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(into = "(RowId, f64, f64, f64)")]
pub struct WalkRow {
    /// The row.
    pub row: RowId,
    /// Distance, m.
    pub distance: f64,
    /// Delay by a fixed level less that by a constant fraction, ns.
    pub difference: f64,
    /// Standard uncertainty of the difference, ns.
    pub u: f64,
}

impl From<WalkRow> for (RowId, f64, f64, f64) {
    fn from(one: WalkRow) -> Self {
        (one.row, one.distance, one.difference, one.u)
    }
}

/// What a fixed level does to the delays of a run, and would do to v.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WalkAnalysis {
    /// The rows whose traces tell it.
    pub rows: Vec<WalkRow>,
    /// The line of the differences over distance.
    pub line: crate::trace::Walk,
    /// By what fraction v would lie off with a fixed level, and the standard uncertainty of that.
    pub shift: (f64, f64),
}
