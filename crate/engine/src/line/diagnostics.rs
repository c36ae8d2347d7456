//! What the residuals tell: runs, influence, and two old criteria for doubtful rows, as advice only.
//!
//! Sources: A. Wald and J. Wolfowitz, Ann. Math. Stat. 11 (1940) 147 (runs); R. D. Cook, Technometrics 19 (1977) 15
//! (distance); W. Chauvenet, *A Manual of Spherical and Practical Astronomy* (1863), vol. 2 (his criterion);
//! B. Peirce, Astron. J. 2 (1852) 161, with the equations of B. A. Gould, Astron. J. 4 (1855) 81 (Peirce's).

use std::f64::consts::FRAC_1_SQRT_2;

use super::result::{Fit, RowFit};
use crate::distribution::normal_sf;

impl RowFit {
    /// Cook's distance: how far the row pulls the line, as the squared move of its `unknowns` (2 for a plain line) in
    /// units of their covariance, over their number. Exact where x has no errors, a good guide elsewhere.
    pub fn cooks_distance(&self, unknowns: usize) -> Option<f64> {
        let normalised = self.normalised?;
        Some(normalised * normalised * self.leverage / (1.0 - self.leverage) / unknowns as f64)
    }
}

impl Fit {
    /// Runs of the signs of the residuals, in the order of the rows given: by distance, or as they were taken.
    pub fn runs(&self, order: &[usize]) -> Option<RunsTest> {
        let residuals: Vec<f64> =
            order.iter().filter_map(|row| self.rows.get(*row)).map(|row| row.residual).collect();
        RunsTest::of(&residuals)
    }
}

/// The Wald–Wolfowitz test: do equal signs cluster (a bend, a drift), or alternate too well?
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct RunsTest {
    /// Values above zero.
    pub plus: usize,
    /// Values below zero.
    pub minus: usize,
    /// Stretches of equal sign.
    pub runs: usize,
    /// Runs expected of values in random order.
    pub expected: f64,
    /// Standard deviation of their number; 0 where there is but one of each.
    pub deviation: f64,
    /// Probability of so few runs or fewer.
    pub p_few: f64,
    /// Probability of so many runs or more.
    pub p_many: f64,
}

impl RunsTest {
    /// Up to so many values the probabilities are exact; beyond, normal without continuity correction.
    pub const EXACT_UP_TO: usize = 40;

    /// Counts the runs of sign; zeros have none and are left out. `None` unless both signs occur.
    pub fn of(values: &[f64]) -> Option<Self> {
        let signs: Vec<bool> = values
            .iter()
            .filter(|value| **value != 0.0 && !value.is_nan())
            .map(|value| *value > 0.0)
            .collect();
        let plus = signs.iter().filter(|sign| **sign).count();
        let minus = signs.len() - plus;
        if plus == 0 || minus == 0 {
            return None;
        }
        let runs = 1 + signs.windows(2).filter(|pair| pair[0] != pair[1]).count();
        let n = signs.len() as f64;
        let twice = 2.0 * plus as f64 * minus as f64;
        let expected = 1.0 + twice / n;
        let deviation = (twice * (twice - n) / (n * n * (n - 1.0))).sqrt();
        let (p_few, p_many) = if signs.len() <= Self::EXACT_UP_TO {
            let sum = |range: std::ops::RangeInclusive<usize>| {
                range.map(|r| runs_probability(plus, minus, r)).sum()
            };
            (sum(2..=runs), sum(runs..=signs.len()))
        } else {
            let z = (runs as f64 - expected) / deviation;
            (normal_sf(-z), normal_sf(z))
        };
        Some(RunsTest { plus, minus, runs, expected, deviation, p_few, p_many })
    }

    /// (runs − expected)/deviation.
    pub fn z(&self) -> f64 {
        (self.runs as f64 - self.expected) / self.deviation
    }

    /// Probability of a number of runs so far out on either side: twice the smaller tail, at most 1.
    pub fn p(&self) -> f64 {
        (2.0 * self.p_few.min(self.p_many)).min(1.0)
    }
}

/// Probability of `runs` runs among `plus` and `minus` values in random order.
pub fn runs_probability(plus: usize, minus: usize, runs: usize) -> f64 {
    if plus == 0 || minus == 0 || runs < 2 {
        return 0.0;
    }
    let ways = |k: usize, l: usize| choose(plus - 1, k - 1) * choose(minus - 1, l - 1);
    let half = runs / 2;
    let count = if runs.is_multiple_of(2) {
        2.0 * ways(half, half)
    } else {
        ways(half + 1, half) + ways(half, half + 1)
    };
    count / choose(plus + minus, plus)
}

fn choose(n: usize, k: usize) -> f64 {
    if k > n {
        return 0.0;
    }
    // Each partial product is a binomial coefficient, so the division is exact as long as doubles hold it.
    (1..=k.min(n - k)).fold(1.0, |product, i| product * (n + 1 - i) as f64 / i as f64)
}

/// How many of `n` normal values would be expected to deviate by `deviation` standard deviations or more.
/// Chauvenet's criterion calls a value doubtful when this is below one half.
pub fn expected_beyond(n: usize, deviation: f64) -> f64 {
    n as f64 * 2.0 * normal_sf(deviation.abs())
}

/// Places of the values that Chauvenet's criterion calls doubtful; `deviations` in standard deviations.
pub fn chauvenet(deviations: &[f64]) -> Vec<usize> {
    let doubtful = |value: f64| expected_beyond(deviations.len(), value) < 0.5;
    (0..).zip(deviations).filter(|(_, value)| doubtful(**value)).map(|(place, _)| place).collect()
}

/// The deviation, in standard deviations, beyond which Peirce's criterion allows `doubtful` of `n` values to be
/// called so, when `unknowns` were fitted to them. `None` where the equations have no answer.
pub fn peirce_limit(n: usize, doubtful: usize, unknowns: usize) -> Option<f64> {
    /// The walk has settled when the ratio moves by less than this share.
    const SETTLED: f64 = 1e-14;
    if doubtful == 0 || n <= doubtful + unknowns {
        return None;
    }
    let (total, k, m) = (n as f64, doubtful as f64, unknowns as f64);
    let kept = total - k;
    // Gould's (B): ln Qᴺ = k ln k + (N − k) ln (N − k) − N ln N.
    let ln_q = k * libm::log(k) + kept * libm::log(kept) - total * libm::log(total);
    let mut ratio = 1.0_f64;
    for _ in 0..10_000 {
        // Gould's (A), (C) and (D), walked round until they agree.
        let lambda = libm::exp((ln_q - k * libm::log(ratio)) / kept);
        // On the way the square may fall below zero; an answer there is none.
        let square = (1.0 + (kept - m) / k * (1.0 - lambda * lambda)).max(0.0);
        let next = libm::exp(0.5 * (square - 1.0)) * libm::erfc(square.sqrt() * FRAC_1_SQRT_2);
        if (next - ratio).abs() <= SETTLED * ratio {
            return (square > 0.0).then(|| square.sqrt());
        }
        ratio = next;
    }
    None
}

/// Places of the values that Peirce's criterion calls doubtful, the farthest first: one is assumed doubtful, then two,
/// and so on until no more are found. `deviations` in standard deviations of all values.
pub fn peirce(deviations: &[f64], unknowns: usize) -> Vec<usize> {
    let mut order: Vec<usize> = (0..deviations.len()).collect();
    let size = |place: usize| deviations[place].abs();
    order.sort_by(|a, b| size(*b).total_cmp(&size(*a)));
    let mut found = 0;
    while let Some(limit) = peirce_limit(deviations.len(), found + 1, unknowns) {
        let beyond = order.iter().take_while(|place| size(**place) > limit).count();
        if beyond <= found {
            break;
        }
        found = beyond;
    }
    order.truncate(found);
    order
}
