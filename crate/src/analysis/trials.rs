//! Monte Carlo: every input drawn anew from its distribution, the whole analysis done again (JCGM 101:2008).
//!
//! A trial takes each reading plus an error drawn from what is stated about it, adds the errors that rows share,
//! each drawn once, fits the line again under the same weights and covariance, and corrects for beam and air. What
//! is drawn is what the budget lists: nothing more, nothing less.
//!
//! Where the scatter is claimed, the rows' own errors that give way to it ([`gives_way`]) are normal with the scatter of
//! the fit, which is itself drawn: √(ν/χ²_ν) is common to all rows of a trial, so that the slope follows Student's t
//! (JCGM 101:2008, 6.4.9.2). The same holds for any error whose uncertainty has degrees of freedom of its own.
//!
//! Trials come in blocks, each from a stream of its own of the notebook's seed. So the digits don't depend on how
//! many workers share the blocks, and are the same natively and in every browser.

use super::analyse::{air_reading, analyse_page, line_of, speed_of};
use super::origin::Origin;
use super::parts::{RowErrors, Shared, gives_way, total};
use super::point::Point;
use super::prepare::prepare;
use super::seal::Shown;
use super::setup::Setup;
use super::types::{Refusal, Speed, not_given};

use crate::budget::{
    Adaptive, BudgetError, CommonError, Histogram, OwnErrors, Quotient, Random, Redraw, Shape, Step, Summary,
    Validation, histogram, summarise, validate,
};
use crate::distribution::{normal_density, normal_quantile};
use crate::line::{Fit, Noise, SharedColumn};
use crate::message;
use crate::notebook::{ActsOn, Basis, ErrorShape, NotebookState};
use crate::quantity::{DecimalMark, NumberError, Unit, parse_alone};
use crate::words::Message;

/// Trials that the adaptive procedure makes at most.
pub const MOST: usize = 2_000_000;
/// Trials that may be asked for.
const ASKED: std::ops::RangeInclusive<usize> = 1_000..=10_000_000;
/// Trials in a block, where a number of them is asked for.
const BLOCK: usize = 10_000;
/// Significant digits of u to which the trials are made steady (JCGM 101:2008, 7.9.2).
const STEADY_DIGITS: u32 = 2;
/// Significant digits of u to which the budget's interval is held (JCGM 101:2008, 8.1). One fewer than the trials
/// are steady to, so that their own noise stays far below a fifth of what is tested (8.2).
const TESTED_DIGITS: u32 = 1;
/// Bars of the histogram.
const BINS: usize = 60;

/// How the trials are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TrialSettings {
    /// Seed of the random numbers.
    pub seed: u64,
    /// How many trials; none leaves it to the adaptive procedure.
    pub wanted: Option<usize>,
}

/// Why trials can't be drawn, or give nothing.
#[derive(Clone, Debug, PartialEq)]
pub enum TrialsError {
    /// The seed can't be read.
    Seed {
        /// As typed.
        text: String,
    },
    /// The number of trials is no number.
    Count {
        /// What is wrong with it.
        error: NumberError,
    },
    /// So many trials can't be drawn.
    CountOutOfRange {
        /// As typed.
        text: String,
    },
    /// There is no result to draw trials of.
    Refused(Refusal),
    /// The trials gave no figures.
    Figures(BudgetError),
}

impl From<Refusal> for TrialsError {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal)
    }
}

impl From<BudgetError> for TrialsError {
    fn from(error: BudgetError) -> Self {
        Self::Figures(error)
    }
}

impl TrialsError {
    /// What is wrong and what to do, with numbers as the notebook writes them.
    pub fn message(&self, mark: DecimalMark) -> Message {
        match self {
            Self::Seed { text } => message!("trials-no_seed", text = text.as_str()),
            Self::Count { error } => error.message(),
            Self::CountOutOfRange { text } => {
                message!("trials-no_count", text = text.as_str(), least = *ASKED.start(), most = *ASKED.end())
            }
            Self::Refused(refusal) => refusal.message.clone(),
            Self::Figures(error) => not_given(error, mark),
        }
    }
}

/// Reads how the trials are to be drawn.
///
/// # Errors
/// What is wrong with the number of trials or with the seed, and what to do.
pub fn trial_settings(page: &NotebookState) -> Result<TrialSettings, TrialsError> {
    let seed = match page.trials.seed.trim() {
        "" => 1,
        text => text.parse().map_err(|_| TrialsError::Seed { text: text.to_owned() })?,
    };
    Ok(TrialSettings { seed, wanted: wanted(&page.trials.wanted, page.decimal_mark)? })
}

fn wanted(text: &str, mark: DecimalMark) -> Result<Option<usize>, TrialsError> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let number = parse_alone(text, mark, Unit::ONE).map_err(|error| TrialsError::Count { error })?;
    let whole = number.fract() == 0.0 && number >= 0.0 && number <= *ASKED.end() as f64;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and within the range")]
    let count = if whole { number as usize } else { 0 };
    if ASKED.contains(&count) {
        Ok(Some(count))
    } else {
        Err(TrialsError::CountOutOfRange { text: text.trim().to_owned() })
    }
}

/// The trials of a page.
#[derive(Clone, Debug)]
pub struct Trials {
    redraw: Redraw,
    seed: u64,
    block: usize,
}

impl Trials {
    /// Prepares the trials of a page.
    ///
    /// # Errors
    /// Why there is nothing to draw: no result yet, or a plan that can't be read.
    pub fn of(page: &NotebookState) -> Result<Self, Refusal> {
        let plan = trial_settings(page)
            .map_err(|error| Refusal::new("no_trial_plan", error.message(page.decimal_mark)))?;
        let prepared = prepare(page, None);
        let air = air_reading(page, &prepared.context.bench);
        let line = line_of(&prepared);
        let speed = Shown::of(speed_of(&prepared, &line, &air, None)?, page.seal.as_ref());
        let (line, setup, lengthening) = (line?, prepared.setup?, prepared.lengthening);
        let joint = setup.joint().map(|joint| joint.columns(setup.data.x.len()));
        let own = match speed.basis {
            Basis::Stated => setup.noises.iter().map(own).chain(joint.map(of_joint)).collect(),
            Basis::Scatter => {
                from_scatter(&setup, &prepared.rows.points, joint.unwrap_or_default(), &line.fit)
            }
        };
        let common = setup.shared.iter().map(common).collect();
        let quotient = Quotient {
            // c·b without the correction for the beam, which is drawn.
            k: speed.c * line.fit.slope / (1.0 + lengthening / 2.0),
            relative: part(&speed, &Origin::Air),
            lengthening,
        };
        Ok(Self {
            redraw: Redraw::new(setup.data, &line.fit, own, common, quotient),
            seed: plan.seed,
            block: Tally::block_for(plan, speed.budget.probability),
        })
    }

    /// The c of each trial of a block, m/s, in the order of the trials; NaN where the line gave none.
    pub fn run(&mut self, block: u64) -> Vec<f64> {
        self.redraw.run(&mut Random::new(self.seed, block), self.block)
    }
}

/// The relative uncertainty of c that one origin causes.
fn part(speed: &Speed, origin: &Origin) -> f64 {
    let found = speed.budget.components.iter().find(|component| component.origin == *origin);
    found.map_or(0.0, |component| component.relative)
}

/// The shape from which an error is drawn.
pub fn shape(shape: ErrorShape, degrees_of_freedom: Option<f64>) -> Shape {
    match shape {
        ErrorShape::Normal => Shape::Normal,
        ErrorShape::Rectangular => Shape::Rectangular,
        ErrorShape::Triangular => Shape::Triangular,
        ErrorShape::Arcsine => Shape::Arcsine,
        ErrorShape::Student => degrees_of_freedom.map_or(Shape::Normal, Shape::Student),
    }
}

fn own(noise: &RowErrors) -> OwnErrors {
    let shape = shape(noise.shape, noise.degrees_of_freedom);
    // Student's t holds its degrees of freedom already.
    let degrees_of_freedom = noise.degrees_of_freedom.filter(|_| !matches!(shape, Shape::Student(_)));
    let (x, y) = match noise.acts_on {
        ActsOn::Distances => (noise.u.clone(), Vec::new()),
        ActsOn::Delays => (Vec::new(), noise.u.clone()),
    };
    OwnErrors { x, y, columns: Vec::new(), shape, degrees_of_freedom }
}

/// Errors that were stated of rows together.
fn of_joint(columns: Vec<SharedColumn>) -> OwnErrors {
    OwnErrors { x: Vec::new(), y: Vec::new(), columns, shape: Shape::Normal, degrees_of_freedom: None }
}

fn common(shared: &Shared) -> CommonError {
    let shape = match (shared.shape, shared.degrees_of_freedom) {
        // A normal error whose uncertainty is itself an estimate is one of Student's.
        (ErrorShape::Normal, Some(nu)) => Shape::Student(nu),
        (stated, nu) => shape(stated, nu),
    };
    CommonError { column: shared.column.clone(), shape }
}

/// The rows' own errors as the scatter has them, those stated of rows together among them, beside those that stay.
fn from_scatter(
    setup: &Setup,
    points: &[Point],
    mut columns: Vec<SharedColumn>,
    fit: &Fit,
) -> Vec<OwnErrors> {
    let Some(scatter) = fit.scatter() else { return Vec::new() };
    let (replaced, kept): (Vec<RowErrors>, Vec<RowErrors>) = setup
        .noises
        .iter()
        .cloned()
        .partition(|noise| gives_way(&noise.origin, noise.shape, noise.degrees_of_freedom, scatter));
    let scaled = |acts_on| total(points, &replaced, acts_on).into_iter().map(|u| u * scatter).collect();
    let (x, y) = match &setup.data.noise {
        Noise::Stated(_) => (scaled(ActsOn::Distances), scaled(ActsOn::Delays)),
        Noise::Unstated => (Vec::new(), vec![scatter; points.len()]),
    };
    for effect in columns.iter_mut().flat_map(|column| column.x.iter_mut().chain(&mut column.y)) {
        *effect *= scatter;
    }
    let degrees_of_freedom = Some(fit.degrees_of_freedom as f64);
    let scatter = OwnErrors { x, y, columns, shape: Shape::Normal, degrees_of_freedom };
    kept.iter().map(own).chain([scatter]).collect()
}

/// What the budget claims of c, to compare with; each in m/s.
#[derive(Clone, Debug)]
struct Claimed {
    c: f64,
    expanded: f64,
    u: f64,
    degrees_of_freedom: Option<f64>,
}

impl Claimed {
    fn of(speed: &Speed) -> Result<Self, BudgetError> {
        let (c, u, budget) = (speed.c, speed.u_c(), &speed.budget);
        let k = budget.coverage_factor.clone()?;
        Ok(Self { c, expanded: k * u, u, degrees_of_freedom: budget.degrees_of_freedom })
    }
}

/// The trials gathered so far, block by block.
#[derive(Clone, Debug)]
pub struct Tally {
    plan: TrialSettings,
    adaptive: Adaptive,
    probability: f64,
    budget: Result<Claimed, BudgetError>,
    values: Vec<f64>,
    no_deviation: bool,
    failure: Option<BudgetError>,
    settled: bool,
}

/// Whether the budget's interval may be quoted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Its ends are those of the trials, within the tolerance.
    Holds,
    /// They are not.
    Fails,
    /// The trials are too few to tell.
    Undecided,
}

/// Student's t distribution about c, or the normal one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DensityCurve {
    /// Its middle, m/s.
    pub c: f64,
    /// Its scale, m/s.
    pub u: f64,
    /// Its degrees of freedom; of the normal one there are none.
    pub degrees_of_freedom: Option<f64>,
}

/// What the trials gave.
#[derive(Clone, Debug, PartialEq)]
pub struct TrialsResult {
    /// Mean, standard uncertainty and intervals, m/s.
    pub summary: Summary,
    /// Whether the budget's interval holds against that of the trials; why not, if it can't be told.
    pub validation: Result<Validation, BudgetError>,
    /// How well the trials themselves know an end of their symmetric interval: its standard deviation, m/s.
    pub u_end: f64,
    /// The trials counted in bins, without the outermost of them.
    pub histogram: Histogram,
    /// The curve over the histogram: what the budget says, or, where it has no interval, the normal one of the trials.
    pub curve: DensityCurve,
    /// Seed.
    pub seed: u64,
    /// Coverage probability.
    pub probability: f64,
    /// Whether an error that counts has no finite standard deviation (two degrees of freedom or fewer), so that neither
    /// has the result.
    pub no_deviation: bool,
    /// Whether the adaptive procedure found the figures steady; none where a number was asked for or it was stopped.
    pub steady: Option<bool>,
}

impl TrialsResult {
    /// The verdict of the validation; none where there is nothing to validate. Twice the trials' own noise is allowed
    /// for on either side, since few trials can seem to agree or not by luck (JCGM 101:2008, 8.2, note 2).
    pub fn verdict(&self) -> Option<Verdict> {
        let found = self.validation.as_ref().ok()?;
        let (apart, noise) = (found.low.max(found.high), 2.0 * self.u_end);
        Some(if apart + noise <= found.tolerance {
            Verdict::Holds
        } else if apart - noise > found.tolerance {
            Verdict::Fails
        } else {
            Verdict::Undecided
        })
    }
}

impl Tally {
    /// A tally for the trials of a page with the result `speed`.
    ///
    /// # Errors
    /// What is wrong with the plan.
    pub fn new(page: &NotebookState, speed: &Speed) -> Result<Self, TrialsError> {
        let plan = trial_settings(page)?;
        let budget = &speed.budget;
        let probability = budget.probability;
        Ok(Self {
            plan,
            adaptive: Adaptive::new(probability, STEADY_DIGITS, MOST),
            probability,
            budget: Claimed::of(speed),
            no_deviation: budget
                .components
                .iter()
                .any(|part| part.share > 0.0 && part.degrees_of_freedom.is_some_and(|nu| nu <= 2.0)),
            values: Vec::new(),
            failure: None,
            settled: false,
        })
    }

    fn block_for(plan: TrialSettings, probability: f64) -> usize {
        match plan.wanted {
            Some(wanted) => BLOCK.min(wanted),
            None => Adaptive::new(probability, STEADY_DIGITS, MOST).block_size(),
        }
    }

    /// Trials in a block.
    pub fn block_size(&self) -> usize {
        Self::block_for(self.plan, self.probability)
    }

    /// Takes the results of the next block; whether no more are needed.
    pub fn take(&mut self, values: &[f64]) -> bool {
        if self.settled || self.failure.is_some() {
            return true;
        }
        let most = self.plan.wanted.unwrap_or(MOST);
        let room = most.saturating_sub(self.values.len());
        self.values.extend(values.iter().take(room));
        self.settled = match self.plan.wanted {
            Some(wanted) => self.values.len() >= wanted,
            None => match summarise(&mut values.to_vec(), self.probability) {
                Ok(block) => self.adaptive.take(&block) != Step::More,
                Err(error) => {
                    self.failure = Some(error);
                    true
                }
            },
        };
        self.settled
    }

    /// Trials taken.
    pub fn done(&self) -> usize {
        self.values.len()
    }

    /// Trials that may be needed at most.
    pub fn most(&self) -> usize {
        self.plan.wanted.unwrap_or(MOST)
    }

    /// What the trials taken so far give.
    ///
    /// # Errors
    /// When trials gave no value, or too few were taken.
    pub fn outcome(&self) -> Result<TrialsResult, TrialsError> {
        let mut values = self.values.clone();
        let summary = summarise(&mut values, self.probability)?;
        let validation = self.budget.as_ref().map_err(Clone::clone).map(|claimed| {
            let Claimed { c, expanded, u, .. } = *claimed;
            validate((c - expanded, c + expanded), summary.symmetric, u, TESTED_DIGITS)
        });
        let of_trials = DensityCurve { c: summary.mean, u: summary.u, degrees_of_freedom: None };
        let curve = self.budget.as_ref().map_or(of_trials, |claimed| {
            let Claimed { c, u, degrees_of_freedom, .. } = *claimed;
            DensityCurve { c, u, degrees_of_freedom }
        });
        // One trial in a thousand on either side is left out, lest a far one flatten the picture.
        let aside = values.len() / 1000;
        let middle = values.get(aside..values.len() - aside).unwrap_or_default();
        Ok(TrialsResult {
            summary,
            validation,
            u_end: u_of_end(&summary, self.probability),
            histogram: histogram(middle, BINS),
            curve,
            seed: self.plan.seed,
            probability: self.probability,
            no_deviation: self.no_deviation,
            steady: match self.plan.wanted {
                None if self.settled => Some(self.values.len() < MOST),
                _ => None,
            },
        })
    }
}

/// Standard deviation of an end of the symmetric interval: √(q(1 − q)/M) over the density there, taken as normal
/// (the spread of a sample quantile; M. G. Kendall and A. Stuart, The Advanced Theory of Statistics, vol. 1, 10.10;
/// from memory).
fn u_of_end(summary: &Summary, probability: f64) -> f64 {
    let q = 0.5 + probability / 2.0;
    (q * (1.0 - q) / summary.trials as f64).sqrt() * summary.u / normal_density(normal_quantile(q))
}

/// Runs all trials that a page asks for, one block after the other.
///
/// # Errors
/// Why there is no outcome.
pub fn outcome(page: &NotebookState) -> Result<TrialsResult, TrialsError> {
    let speed = analyse_page(page, None).speed?;
    let mut trials = Trials::of(page)?;
    let mut tally = Tally::new(page, &speed)?;
    let mut block = 0;
    while !tally.take(&trials.run(block)) {
        block += 1;
    }
    tally.outcome()
}

#[cfg(test)]
#[path = "trials_test.rs"]
mod tests;
