//! Results of several people for one quantity, taken together: do they agree, and on what.
//!
//! | symbol | meaning |
//! | --- | --- |
//! | xᵢ, uᵢ | a result and its standard uncertainty |
//! | τ | standard deviation between those who measured, beyond what the uᵢ account for |
//! | wᵢ | 1/(uᵢ² + τ²), the weight |
//! | x̄ | Σ wᵢ·xᵢ/Σ wᵢ, with u(x̄) = 1/√Σ wᵢ |
//!
//! - With τ = 0 x̄ is the weighted mean, u(x̄) its internal uncertainty, and χ² = Σ wᵢ·(xᵢ − x̄)² about it tells whether the
//!   results agree; √(χ²/(n − 1)) is the Birge ratio (R. T. Birge, Phys. Rev. 40 (1932) 207).
//! - τ by moments: R. DerSimonian and N. Laird, Controlled Clinical Trials 7 (1986) 177.
//! - τ such that χ² with it is n − 1: R. C. Paule and J. Mandel, J. Res. Natl. Bur. Stand. 87 (1982) 377.
//!
//! Both τ are 0 where the results scatter no more than their uncertainties say. u(x̄) takes τ as known, as both papers do:
//! with few results it is too small.

use thiserror::Error;

use crate::distribution::chi_square_sf;

/// Newton's steps at most. Each that is short of the root by a factor at least doubles τ² + uᵢ²: twice the binades of a
/// double are more than it ever takes.
const MOST_STEPS: usize = 4200;

/// A result with its standard uncertainty, in the same unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The value.
    pub value: f64,
    /// Its standard uncertainty, above zero.
    pub u: f64,
}

/// Why results can't be taken together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum ConsensusError {
    /// Fewer than two results.
    #[error("at least two results are needed, not {got}")]
    TooFew {
        /// How many there are.
        got: usize,
    },
    /// A value that is not finite, or an uncertainty that is not finite and above zero.
    #[error("result {place} (from 0) has no finite value with a finite standard uncertainty above zero")]
    NotPositive {
        /// Its place, from 0.
        place: usize,
    },
    /// Squares beyond what a double can hold.
    #[error("the squares of these numbers are beyond what a double can hold")]
    OutOfRange,
}

/// How well results agree with their weighted mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Consistency {
    /// χ² about the weighted mean.
    pub chi_square: f64,
    /// n − 1.
    pub degrees_of_freedom: f64,
    /// Probability of such a χ² or a larger one, if the uncertainties are right and nothing else is at work.
    pub p_value: f64,
    /// √(χ²/(n − 1)).
    pub birge_ratio: f64,
}

/// A mean that allows for scatter beyond the stated uncertainties.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowing {
    /// τ, the standard deviation between those who measured; 0 where there is none.
    pub between: f64,
    /// The mean with it.
    pub mean: Estimate,
}

/// What results come to together.
#[derive(Clone, Debug, PartialEq)]
pub struct Consensus {
    /// The weighted mean with its internal standard uncertainty.
    pub weighted: Estimate,
    /// How well the results agree with it.
    pub consistency: Consistency,
    /// By DerSimonian and Laird.
    pub dersimonian_laird: Allowing,
    /// By Paule and Mandel.
    pub mandel_paule: Allowing,
}

/// Takes results together.
///
/// # Errors
/// Fewer than two, one that is not finite or has no uncertainty, or numbers out of range; never a NaN.
///
/// # Example
/// ```
/// use slope_engine::consensus::{Estimate, consensus};
///
/// let both = [Estimate { value: 1.0, u: 1.0 }, Estimate { value: 3.0, u: 1.0 }];
/// let found = consensus(&both)?;
/// assert_eq!((found.weighted.value, found.consistency.chi_square), (2.0, 2.0));
/// # Ok::<(), slope_engine::consensus::ConsensusError>(())
/// ```
pub fn consensus(results: &[Estimate]) -> Result<Consensus, ConsensusError> {
    if results.len() < 2 {
        return Err(ConsensusError::TooFew { got: results.len() });
    }
    let sound = |one: &Estimate| one.value.is_finite() && one.u.is_finite() && one.u > 0.0;
    if let Some(place) = results.iter().position(|one| !sound(one)) {
        return Err(ConsensusError::NotPositive { place });
    }
    let degrees_of_freedom = results.len() as f64 - 1.0;
    let weighted = WeightedSums::with(results, 0.0);
    let chi_square = weighted.squares;
    let found = Consensus {
        weighted: weighted.mean(),
        consistency: Consistency {
            chi_square,
            degrees_of_freedom,
            p_value: chi_square_sf(chi_square, degrees_of_freedom),
            birge_ratio: (chi_square / degrees_of_freedom).sqrt(),
        },
        dersimonian_laird: Allowing::with(results, by_moments(&weighted, degrees_of_freedom)),
        mandel_paule: Allowing::with(results, by_chi_square(results, degrees_of_freedom)),
    };
    if found.is_finite() { Ok(found) } else { Err(ConsensusError::OutOfRange) }
}

impl Consensus {
    /// How far a result lies from the mean by Paule and Mandel, in units of the standard uncertainty of that difference, as
    /// it follows from the stated uncertainties (law of propagation, JCGM 100:2008, 5.1.2). The result is one of those that
    /// made the mean: where τ is 0, u²(d) = u² − u²(x̄) (M. G. Cox, Metrologia 39 (2002) 589, for the weighted mean).
    pub fn apart(&self, results: &[Estimate]) -> Vec<f64> {
        let Allowing { between, mean } = self.mandel_paule;
        let share = |one: &Estimate| mean.u * mean.u / (one.u * one.u + between * between);
        let moved: f64 = results.iter().map(|one| (share(one) * one.u).powi(2)).sum();
        let each = results.iter().map(|one| {
            let variance = one.u * one.u * (1.0 - 2.0 * share(one)) + moved;
            (one.value - mean.value) / variance.sqrt()
        });
        each.collect()
    }

    fn is_finite(&self) -> bool {
        let Self { weighted, consistency, dersimonian_laird, mandel_paule } = self;
        let means = [*weighted, dersimonian_laird.mean, mandel_paule.mean];
        means.iter().all(|mean| mean.value.is_finite() && mean.u.is_finite() && mean.u > 0.0)
            && [consistency.p_value, consistency.birge_ratio].iter().all(|one| one.is_finite())
            && [dersimonian_laird.between, mandel_paule.between].iter().all(|one| one.is_finite())
    }
}

impl Allowing {
    /// The mean where the variance between is τ².
    fn with(results: &[Estimate], variance: f64) -> Self {
        Self { between: variance.sqrt(), mean: WeightedSums::with(results, variance).mean() }
    }
}

/// The sums over results with one τ².
struct WeightedSums {
    /// Σ wᵢ.
    weights: f64,
    /// Σ wᵢ².
    squared_weights: f64,
    /// x̄.
    mean: f64,
    /// Σ wᵢ·(xᵢ − x̄)².
    squares: f64,
    /// Σ wᵢ²·(xᵢ − x̄)².
    squares_again: f64,
}

impl WeightedSums {
    // Not inlined: the steps towards τ² spend all their time in it.
    #[inline(never)]
    fn with(results: &[Estimate], variance: f64) -> Self {
        let weight = |one: &Estimate| 1.0 / (one.u * one.u + variance);
        // From one of the values, so that many equal digits cost none.
        let origin = results.first().map_or(0.0, |one| one.value);
        let weights: f64 = results.iter().map(weight).sum();
        let moment: f64 = results.iter().map(|one| weight(one) * (one.value - origin)).sum();
        let mean = origin + moment / weights;
        let square = |one: &Estimate| (one.value - mean).powi(2);
        Self {
            weights,
            squared_weights: results.iter().map(|one| weight(one).powi(2)).sum(),
            mean,
            squares: results.iter().map(|one| weight(one) * square(one)).sum(),
            squares_again: results.iter().map(|one| weight(one).powi(2) * square(one)).sum(),
        }
    }

    fn mean(&self) -> Estimate {
        Estimate { value: self.mean, u: 1.0 / self.weights.sqrt() }
    }
}

/// τ² by moments, from the sums without it: (χ² − ν)/(Σw − Σw²/Σw).
fn by_moments(sums: &WeightedSums, degrees_of_freedom: f64) -> f64 {
    let spread = sums.weights - sums.squared_weights / sums.weights;
    ((sums.squares - degrees_of_freedom) / spread).max(0.0)
}

/// τ² for which χ² is ν. As a function of τ² χ² falls and is convex: Newton's steps from 0 never pass the root, and end where
/// rounding lets none go on.
fn by_chi_square(results: &[Estimate], degrees_of_freedom: f64) -> f64 {
    let mut variance = 0.0;
    for _ in 0..MOST_STEPS {
        let sums = WeightedSums::with(results, variance);
        let step = (sums.squares - degrees_of_freedom) / sums.squares_again;
        // A step that is not a number, of equal values, leads nowhere either.
        if step.is_nan() || variance + step <= variance {
            break;
        }
        variance += step;
    }
    variance
}

#[cfg(test)]
#[path = "consensus_test.rs"]
mod tests;
