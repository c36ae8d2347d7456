//! Monte Carlo: every input drawn anew from its distribution, the whole analysis done again (JCGM 101:2008).
//!
//! A trial takes each reading plus an error drawn from what is stated about it, adds the errors that rows share,
//! each drawn once, fits the line again under the same weights and covariance, and corrects for beam and air. What
//! is drawn is what the budget lists: nothing more, nothing less.
//!
//! Where the scatter is claimed, the rows' own errors are normal with the scatter of the fit, which is itself drawn:
//! √(ν/χ²_ν) is common to all rows of a trial, so that the slope follows Student's t (JCGM 101:2008, 6.4.9.2). The
//! same holds for any error whose uncertainty has degrees of freedom of its own.
//!
//! Trials come in blocks, each from a stream of its own of the notebook's seed. So the digits don't depend on how
//! many workers share the blocks, and are the same natively and in every browser.

use super::parts::{Noise as Source, Shared};
use super::types::{Origin, Refusal, Speed};
use super::{analyse_page, setup_of};
use crate::budget::{
    Adaptive, BudgetError, Histogram, Random, Shape, Step, Summary, Validation, histogram, summarise,
    validate,
};
use crate::line::{Column, Data, Noise, Refit};
use crate::notebook::{Basis, ErrorShape, Page};
use crate::quantity::{DecimalMark, Unit, parse};

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
/// Trials fitted side by side. Part of what a seed means: another number would draw in another order.
const LANES: usize = 4;
/// Bars of the histogram.
const BINS: usize = 60;

/// How the trials are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Plan {
    /// Seed of the random numbers.
    pub seed: u64,
    /// How many trials; none leaves it to the adaptive procedure.
    pub wanted: Option<usize>,
}

/// Reads how the trials are to be drawn.
///
/// # Errors
/// What is wrong with the number of trials or with the seed, and what to do.
pub fn plan(page: &Page) -> Result<Plan, String> {
    let seed = match page.trials.seed.trim() {
        "" => 1,
        text => text.parse().map_err(|_| {
            format!("“{text}” is no seed: write a whole number from 0 to {}, or leave it empty", u64::MAX)
        })?,
    };
    Ok(Plan { seed, wanted: wanted(&page.trials.wanted, page.decimal_mark)? })
}

fn wanted(text: &str, mark: DecimalMark) -> Result<Option<usize>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let range = || format!("a whole number of trials from {} to {} is needed", ASKED.start(), ASKED.end());
    let number = parse(text, mark, Unit::ONE).map_err(|error| format!("{error}; {}", range()))?;
    let whole = number.value.fract() == 0.0 && number.value >= 0.0 && number.value <= *ASKED.end() as f64;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and within the range")]
    let count = if whole { number.value as usize } else { 0 };
    if ASKED.contains(&count) { Ok(Some(count)) } else { Err(format!("“{}”: {}", text.trim(), range())) }
}

/// Errors drawn for each row alone.
#[derive(Clone, Debug)]
struct Own {
    /// Standard uncertainty of each distance, m; empty for zeros.
    x: Vec<f64>,
    /// Standard uncertainty of each delay, ns; empty for zeros.
    y: Vec<f64>,
    shape: Shape,
    /// Degrees of freedom that the rows of one trial have in common.
    degrees_of_freedom: Option<f64>,
}

/// An error drawn once for all rows that share it.
#[derive(Clone, Debug)]
struct Common {
    column: Column,
    shape: Shape,
}

/// Everything that a trial needs.
#[derive(Clone, Debug)]
pub struct Trials {
    refit: Refit,
    x: Vec<f64>,
    y: Vec<f64>,
    own: Vec<Own>,
    common: Vec<Common>,
    /// c·b without the errors of beam and air, m/s · ns/m.
    product: f64,
    /// Relative standard uncertainty of the air's index.
    u_air: f64,
    /// Largest relative shortfall of the distances, θ²/2.
    shortfall: f64,
    seed: u64,
    block: usize,
}

impl Trials {
    /// Prepares the trials of a page.
    ///
    /// # Errors
    /// Why there is nothing to draw: no result yet, or a plan that can't be read.
    pub fn of(page: &Page) -> Result<Self, Refusal> {
        let refuse = |id: &str, message: String| Refusal { id: id.into(), rows: Vec::new(), message };
        let plan = plan(page).map_err(|message| refuse("no_trial_plan", message))?;
        let analysis = analyse_page(page, None);
        let speed = analysis.speed?;
        let line = analysis.line?;
        let (setup, beam_angle) = setup_of(page)?;
        if setup.shared.len() != line.fit.shared.len() || matches!(setup.data.noise, Noise::Dense(_)) {
            let message = "trials are not drawn from a stated covariance matrix yet: state the errors that rows share one by one, or quote the budget";
            return Err(refuse("matrices", message.into()));
        }
        let own = match speed.basis {
            Basis::Stated => setup.noises.iter().map(own).collect(),
            Basis::Scatter => from_scatter(&setup.data, &line.fit),
        };
        let common = setup.shared.iter().map(common).collect();
        let shortfall = beam_angle * beam_angle / 2.0;
        let u_air = part(&speed, &Origin::Air);
        Ok(Self {
            product: speed.c * line.fit.slope / (1.0 - shortfall / 2.0),
            refit: Refit::new(&setup.data, &line.fit),
            x: setup.data.x,
            y: setup.data.y,
            own,
            common,
            u_air,
            shortfall,
            seed: plan.seed,
            block: Tally::block_for(plan, speed.budget.probability),
        })
    }

    /// The c of each trial of a block, m/s, in the order of the trials; NaN where the line gave none.
    pub fn run(&mut self, block: u64) -> Vec<f64> {
        let mut random = Random::new(self.seed, block);
        let mut results = Vec::with_capacity(self.block + LANES);
        let n = self.x.len();
        let mut x = vec![[0.0; LANES]; n];
        let mut y = vec![[0.0; LANES]; n];
        while results.len() < self.block {
            reset(&mut x, &self.x);
            reset(&mut y, &self.y);
            for own in &self.own {
                own.draw(&mut random, &mut x, &mut y);
            }
            for common in &self.common {
                common.draw(&mut random, &mut x, &mut y);
            }
            for slope in self.refit.slopes(&x, &y) {
                let air = if self.u_air > 0.0 { 1.0 + self.u_air * random.normal() } else { 1.0 };
                let beam = if self.shortfall > 0.0 { 1.0 - self.shortfall * random.unit() } else { 1.0 };
                results.push(self.product * air * beam / slope);
            }
        }
        results.truncate(self.block);
        results
    }
}

/// The relative uncertainty of c that one origin causes.
fn part(speed: &Speed, origin: &Origin) -> f64 {
    let found = speed.budget.components.iter().find(|component| component.origin == *origin);
    found.map_or(0.0, |component| component.relative)
}

fn shape(shape: ErrorShape, degrees_of_freedom: Option<f64>) -> Shape {
    match shape {
        ErrorShape::Normal => Shape::Normal,
        ErrorShape::Rectangular => Shape::Rectangular,
        ErrorShape::Triangular => Shape::Triangular,
        ErrorShape::Arcsine => Shape::Arcsine,
        ErrorShape::Student => degrees_of_freedom.map_or(Shape::Normal, Shape::Student),
    }
}

fn own(noise: &Source) -> Own {
    let shape = shape(noise.shape, noise.degrees_of_freedom);
    // Student's t holds its degrees of freedom already.
    let degrees_of_freedom = noise.degrees_of_freedom.filter(|_| !matches!(shape, Shape::Student(_)));
    Own { x: noise.x.clone(), y: noise.y.clone(), shape, degrees_of_freedom }
}

fn common(shared: &Shared) -> Common {
    let shape = match (shared.shape, shared.degrees_of_freedom) {
        // A normal error whose uncertainty is itself an estimate is one of Student's.
        (ErrorShape::Normal, Some(nu)) => Shape::Student(nu),
        (stated, nu) => shape(stated, nu),
    };
    Common { column: shared.column.clone(), shape }
}

/// The rows' own errors as the scatter has them.
fn from_scatter(data: &Data, fit: &crate::line::Fit) -> Vec<Own> {
    let Some(scatter) = fit.scatter() else { return Vec::new() };
    let degrees_of_freedom = Some(fit.degrees_of_freedom as f64);
    let scaled = |list: &[f64]| list.iter().map(|u| u * scatter).collect();
    let (x, y) = match &data.noise {
        Noise::Stated(stated) => (scaled(&stated.ux), scaled(&stated.uy)),
        _ => (Vec::new(), vec![scatter; data.y.len()]),
    };
    [(x, Vec::new()), (Vec::new(), y)]
        .into_iter()
        .map(|(x, y)| Own { x, y, shape: Shape::Normal, degrees_of_freedom })
        .collect()
}

fn reset(lanes: &mut [[f64; LANES]], values: &[f64]) {
    for (lanes, value) in lanes.iter_mut().zip(values) {
        *lanes = [*value; LANES];
    }
}

impl Own {
    fn draw(&self, random: &mut Random, x: &mut [[f64; LANES]], y: &mut [[f64; LANES]]) {
        let factor = self
            .degrees_of_freedom
            .map_or([1.0; LANES], |nu| std::array::from_fn(|_| (nu / random.chi_square(nu)).sqrt()));
        for (list, lanes) in [(&self.x, x), (&self.y, y)] {
            // Told apart here, once, rather than at each number.
            match self.shape {
                Shape::Normal => scatter(list, lanes, factor, || random.normal()),
                shape => scatter(list, lanes, factor, || shape.draw(random)),
            }
        }
    }
}

fn scatter(list: &[f64], lanes: &mut [[f64; LANES]], factor: [f64; LANES], mut draw: impl FnMut() -> f64) {
    for (u, lanes) in list.iter().zip(lanes) {
        if *u > 0.0 {
            for (lane, factor) in lanes.iter_mut().zip(factor) {
                *lane += u * factor * draw();
            }
        }
    }
}

impl Common {
    fn draw(&self, random: &mut Random, x: &mut [[f64; LANES]], y: &mut [[f64; LANES]]) {
        let z: [f64; LANES] = std::array::from_fn(|_| self.shape.draw(random));
        for (effects, lanes) in [(&self.column.x, x), (&self.column.y, y)] {
            for (effect, lanes) in effects.iter().zip(lanes) {
                for (lane, z) in lanes.iter_mut().zip(z) {
                    *lane += effect * z;
                }
            }
        }
    }
}

/// The trials gathered so far, block by block.
#[derive(Clone, Debug)]
pub struct Tally {
    plan: Plan,
    adaptive: Adaptive,
    probability: f64,
    /// c, U, u and ν of the budget to compare with.
    budget: Result<(f64, f64, f64, Option<f64>), String>,
    values: Vec<f64>,
    no_deviation: bool,
    failure: Option<BudgetError>,
    settled: bool,
}

/// What the trials gave.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Mean, standard uncertainty and intervals, m/s.
    pub summary: Summary,
    /// Whether the budget's interval holds against that of the trials; why not, if it can't be told.
    pub validation: Result<Validation, String>,
    /// The trials counted in bins, without the outermost of them.
    pub histogram: Histogram,
    /// c and u of the budget and its degrees of freedom, for the curve over the histogram.
    pub curve: (f64, f64, Option<f64>),
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

impl Tally {
    /// A tally for the trials of a page with the result `speed`.
    ///
    /// # Errors
    /// What is wrong with the plan.
    pub fn new(page: &Page, speed: &Speed) -> Result<Self, String> {
        let plan = plan(page)?;
        let budget = &speed.budget;
        let probability = budget.probability;
        let compared = match (&budget.coverage_factor, speed.expanded()) {
            (Ok(_), Some(expanded)) => Ok((speed.c, expanded, speed.u_c(), budget.degrees_of_freedom)),
            (Err(why), _) => Err(why.clone()),
            (Ok(_), None) => Err("there is no expanded uncertainty".to_owned()),
        };
        Ok(Self {
            plan,
            adaptive: Adaptive::new(probability, STEADY_DIGITS, MOST),
            probability,
            budget: compared,
            no_deviation: budget
                .components
                .iter()
                .any(|part| part.share > 0.0 && part.degrees_of_freedom.is_some_and(|nu| nu <= 2.0)),
            values: Vec::new(),
            failure: None,
            settled: false,
        })
    }

    fn block_for(plan: Plan, probability: f64) -> usize {
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
    pub fn outcome(&self) -> Result<Outcome, String> {
        let mut values = self.values.clone();
        let summary = summarise(&mut values, self.probability).map_err(|error| error.to_string())?;
        let validation = self.budget.clone().map(|(c, expanded, u, _)| {
            validate((c - expanded, c + expanded), summary.symmetric, u, TESTED_DIGITS)
        });
        let curve =
            self.budget.as_ref().map_or((summary.mean, summary.u, None), |(c, _, u, nu)| (*c, *u, *nu));
        // One trial in a thousand on either side is left out, lest a far one flatten the picture.
        let aside = values.len() / 1000;
        let middle = values.get(aside..values.len() - aside).unwrap_or_default();
        Ok(Outcome {
            summary,
            validation,
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

/// Runs all trials that a page asks for, one block after the other.
///
/// # Errors
/// Why there is no outcome.
pub fn outcome(page: &Page) -> Result<Outcome, String> {
    let speed = analyse_page(page, None).speed.map_err(|refusal| refusal.message)?;
    let mut trials = Trials::of(page).map_err(|refusal| refusal.message)?;
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
