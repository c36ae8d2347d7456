//! What a list of Monte Carlo results says, when there are enough of them, and whether they bear out the budget.

use super::BudgetError;

/// Mean, standard uncertainty and coverage intervals of a list of trials, in the units of the result.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Summary {
    /// M, the number of trials.
    pub trials: usize,
    /// q, how many of them the intervals span (JCGM 101, 7.7.2).
    pub covered: usize,
    /// Their mean (JCGM 101, 7.6, eq. 16).
    pub mean: f64,
    /// Their standard deviation, with M − 1 (JCGM 101, 7.6, eq. 17).
    pub u: f64,
    /// Ends of the interval with as much probability below as above it (JCGM 101, 7.7.2).
    pub symmetric: (f64, f64),
    /// Ends of the shortest interval (JCGM 101, 7.7.3). Of equally short ones, the lowest.
    pub shortest: (f64, f64),
}

/// Sorts the results of the trials and summarises them (JCGM 101, 7.5 to 7.7), with coverage intervals of
/// `probability`.
///
/// The intervals reach from the r-th to the (r + q)-th value, with q the integer nearest to pM. Mean and
/// standard deviation are of two passes over the sorted values with compensated sums: they keep their digits where
/// the scatter is a tiny part of the mean, and do not depend on the order in which the trials were made.
///
/// # Errors
/// [`BudgetError::NoValue`] when any value is not finite: leaving failed trials out would narrow the interval in
/// silence. [`BudgetError::TooFewTrials`] when the intervals are not defined; JCGM 101, 7.2, asks for 10⁴/(1 − p) or
/// so. [`BudgetError::Probability`], [`BudgetError::OutOfRange`].
pub fn summarise(values: &mut [f64], probability: f64) -> Result<Summary, BudgetError> {
    if !(probability > 0.0 && probability < 1.0) {
        return Err(BudgetError::Probability { got: probability });
    }
    let trials = values.len();
    let without = values.iter().filter(|value| !value.is_finite()).count();
    if without > 0 {
        return Err(BudgetError::NoValue { trials, without });
    }
    values.sort_unstable_by(f64::total_cmp);
    let covered = covered(probability, trials);
    if covered == 0 || covered >= trials {
        return Err(BudgetError::TooFewTrials { got: trials, needed: needed(probability) });
    }
    let interval = |from: usize| Some((*values.get(from)?, *values.get(from + covered)?));
    // The standard's r counts from 1.
    let symmetric = interval((trials - covered).div_ceil(2) - 1);
    let shortest = shortest(values, covered);
    let (mean, u) = moments(values);
    match (symmetric, shortest) {
        (Some(symmetric), Some(shortest)) if mean.is_finite() && u.is_finite() => {
            Ok(Summary { trials, covered, mean, u, symmetric, shortest })
        }
        _ => Err(BudgetError::OutOfRange),
    }
}

/// q, the integer nearest to pM.
const fn covered(probability: f64, trials: usize) -> usize {
    whole(probability * trials as f64 + 0.5)
}

/// The least M with 1 ≤ q < M. Of the estimate and its neighbours, for the estimate is rounded as q is not.
fn needed(probability: f64) -> usize {
    let below_all = whole(0.5 / (1.0 - probability)).saturating_add(1);
    let above_none = whole((0.5 / probability).ceil());
    let estimate = below_all.max(above_none);
    (estimate.saturating_sub(1)..=estimate.saturating_add(1))
        .find(|trials| (1..*trials).contains(&covered(probability, *trials)))
        .unwrap_or(estimate)
}

/// The whole part of a count: 0 below nought and for what is not a number, and the most there is when larger.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the cast does what is said")]
const fn whole(count: f64) -> usize {
    count as usize
}

/// The shortest of the intervals from one sorted value to the one `covered` places after it.
fn shortest(sorted: &[f64], covered: usize) -> Option<(f64, f64)> {
    let intervals = sorted.iter().zip(sorted.get(covered..)?);
    let shortest = intervals.min_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)))?;
    Some((*shortest.0, *shortest.1))
}

/// Mean and standard deviation. The sum of the deviations, nought but for the rounding of the mean, takes that rounding
/// out of their squares.
fn moments(values: &[f64]) -> (f64, f64) {
    let n = values.len() as f64;
    let mean = sum(values.iter().copied()) / n;
    let shift = sum(values.iter().map(|value| value - mean)) / n;
    let squares = sum(values.iter().map(|value| (value - mean) * (value - mean)));
    let variance = (squares - n * shift * shift) / (n - 1.0);
    // Not by `max`, which would turn what is not a number into nought.
    let variance = if variance < 0.0 { 0.0 } else { variance };
    (mean, variance.sqrt())
}

/// A sum that keeps what rounding loses and adds it at the end (A. Neumaier, Z. Angew. Math. Mech. 54 (1974) 39).
fn sum(terms: impl Iterator<Item = f64>) -> f64 {
    let (total, lost) = terms.fold((0.0_f64, 0.0), |(total, lost), term| {
        let next = total + term;
        let rest = if total.abs() >= term.abs() { (total - next) + term } else { (term - next) + total };
        (next, lost + rest)
    });
    total + lost
}

/// δ, the numerical tolerance of a standard uncertainty `u` of which so many significant digits count: half a unit
/// of the last of them (JCGM 101, 7.9.2). One or two digits are usual; none counts as one.
///
/// In the units of `u`; nought when `u` is, and not a number when it is not finite.
pub fn tolerance(u: f64, digits: u32) -> f64 {
    if u == 0.0 {
        return 0.0;
    }
    // More digits than a double has would be zeros.
    let after_the_first = digits.clamp(1, 17) - 1;
    let written = format!("{:.*e}", after_the_first as usize, u.abs());
    let exponent = written.split_once('e').and_then(|(_, exponent)| exponent.parse::<i32>().ok());
    exponent.map_or(f64::NAN, |exponent| {
        let place = exponent - after_the_first.cast_signed() - 1;
        let power = (0..place.unsigned_abs()).fold(1.0, |power, _| power * 10.0);
        if place < 0 { 5.0 / power } else { 5.0 * power }
    })
}

/// When there have been enough trials: the adaptive procedure of JCGM 101, 7.9.4.
///
/// Trials are made in blocks. After each, the standard deviations of the averages over the blocks of mean, standard
/// uncertainty and both ends of the (symmetric) interval are compared with δ; when twice each is no larger, the
/// result is stable. All trials of all blocks together then give the result.
///
/// Two blocks that agree by luck also end it: the standard asks for no more.
///
/// # Example
/// ```
/// use slope_engine::budget::{Adaptive, Random, Shape, Step, summarise};
/// let (mut random, mut results) = (Random::new(1, 0), vec![]);
/// let mut adaptive = Adaptive::new(0.95, 1, 1_000_000);
/// loop {
///     let mut block: Vec<f64> =
///         (0..adaptive.block_size()).map(|_| Shape::Rectangular.draw(&mut random).powi(2)).collect();
///     let step = adaptive.take(&summarise(&mut block, 0.95)?);
///     results.append(&mut block);
///     if step != Step::More {
///         break;
///     }
/// }
/// let result = summarise(&mut results, 0.95)?;
/// assert!((result.mean - 1.0).abs() < 0.05);
/// # Ok::<(), slope_engine::budget::BudgetError>(())
/// ```
#[derive(Clone, Debug)]
pub struct Adaptive {
    block_size: usize,
    digits: u32,
    most_trials: usize,
    trials: usize,
    /// Sum over the blocks of (M − 1)u².
    within: f64,
    mean: Running,
    u: Running,
    low: Running,
    high: Running,
}

/// What to do after a block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Make another block of trials.
    More,
    /// Enough: all figures are steady to within δ.
    Stable,
    /// Not steady, and another block would pass the most trials allowed.
    OutOfTrials,
}

impl Adaptive {
    /// For intervals of `probability` and an uncertainty of which so many significant `digits` count, with no more
    /// than `most_trials` in all.
    pub fn new(probability: f64, digits: u32, most_trials: usize) -> Self {
        // Lessened by a little, lest the rounding of 1 − p add a trial.
        let for_the_ends = whole((100.0 / (1.0 - probability) * (1.0 - 1e-12)).ceil());
        Self {
            block_size: for_the_ends.max(10_000).min(most_trials),
            digits,
            most_trials,
            trials: 0,
            within: 0.0,
            mean: Running::default(),
            u: Running::default(),
            low: Running::default(),
            high: Running::default(),
        }
    }

    /// Trials in each block: max(⌈100/(1 − p)⌉, 10⁴) (JCGM 101, 7.9.4 b), or the most allowed if that is less.
    pub const fn block_size(&self) -> usize {
        self.block_size
    }

    /// Trials taken so far.
    pub const fn trials(&self) -> usize {
        self.trials
    }

    /// Takes the summary of one block of [`block_size`](Self::block_size) trials, and says what to do next.
    pub fn take(&mut self, block: &Summary) -> Step {
        self.trials += block.trials;
        self.within += (block.trials as f64 - 1.0) * block.u * block.u;
        self.mean.add(block.mean);
        self.u.add(block.u);
        self.low.add(block.symmetric.0);
        self.high.add(block.symmetric.1);
        let tolerance = tolerance(self.u_of_all(block.trials), self.digits);
        let figures = [&self.mean, &self.u, &self.low, &self.high];
        if figures.iter().all(|figure| 2.0 * figure.u_of_mean() <= tolerance) {
            Step::Stable
        } else if self.trials.saturating_add(self.block_size) > self.most_trials {
            Step::OutOfTrials
        } else {
            Step::More
        }
    }

    /// The standard deviation of all trials, from the blocks' own and the scatter of their means.
    fn u_of_all(&self, block: usize) -> f64 {
        ((self.within + block as f64 * self.mean.squares) / (self.trials as f64 - 1.0)).sqrt()
    }
}

/// Mean and sum of squared deviations, kept up as values come (B. P. Welford, Technometrics 4 (1962) 419).
#[derive(Clone, Copy, Debug, Default)]
struct Running {
    count: f64,
    mean: f64,
    squares: f64,
}

impl Running {
    fn add(&mut self, value: f64) {
        self.count += 1.0;
        let deviation = value - self.mean;
        self.mean += deviation / self.count;
        self.squares += deviation * (value - self.mean);
    }

    /// The standard deviation of the mean: infinite for one value.
    fn u_of_mean(&self) -> f64 {
        if self.count < 2.0 {
            f64::INFINITY
        } else {
            (self.squares / (self.count * (self.count - 1.0))).sqrt()
        }
    }
}

/// How far two intervals differ, and whether that matters (JCGM 101, 8.1).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Validation {
    /// d_low, the distance between the lower ends.
    pub low: f64,
    /// d_high, the distance between the upper ends.
    pub high: f64,
    /// δ.
    pub tolerance: f64,
    /// Neither distance is larger than δ: the interval of the budget may be quoted. If not, quote that of the trials.
    pub agrees: bool,
}

/// Compares the interval y ± U of a budget with the one of the trials (JCGM 101, 8.1).
///
/// δ follows from `u`, the standard uncertainty of the budget, of which so many significant `digits` count. The
/// trials should be steady to δ/5 (JCGM 101, 8.2), as they are where [`Adaptive`] is asked for one digit more.
pub fn validate(budget: (f64, f64), trials: (f64, f64), u: f64, digits: u32) -> Validation {
    let (low, high) = ((budget.0 - trials.0).abs(), (budget.1 - trials.1).abs());
    let tolerance = tolerance(u, digits);
    Validation { low, high, tolerance, agrees: low <= tolerance && high <= tolerance }
}

/// Counts in bins of equal width.
#[derive(Clone, Debug, PartialEq)]
pub struct Histogram {
    /// Where the first bin begins, in the units of the values.
    pub from: f64,
    /// Width of each bin, in the same units.
    pub width: f64,
    /// Values in each bin; a value on an edge belongs to the bin above it, the largest to the last bin.
    pub counts: Vec<usize>,
}

/// Sorted values counted in so many bins from the least to the largest.
///
/// One bin of no width when all values are equal; no bins when there are no values, or none are asked for. Of a
/// distribution with long tails, hand in a slice from the middle.
pub fn histogram(sorted: &[f64], bins: usize) -> Histogram {
    let (Some(from), Some(to), 1..) = (sorted.first(), sorted.last(), bins) else {
        return Histogram { from: 0.0, width: 0.0, counts: vec![] };
    };
    let width = (to - from) / bins as f64;
    let mut counts = vec![0; if width > 0.0 { bins } else { 1 }];
    let last = counts.len() - 1;
    for value in sorted {
        let bin = whole((value - from) / width);
        if let Some(count) = counts.get_mut(bin.min(last)) {
            *count += 1;
        }
    }
    Histogram { from: *from, width, counts }
}
