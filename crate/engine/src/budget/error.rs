//! What a budget or a Monte Carlo run cannot be asked.

use thiserror::Error;

/// Why there is no coverage factor, or no summary of trials.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum BudgetError {
    /// Fewer degrees of freedom than one: the t interval would say nothing.
    #[error(
        "{got} degrees of freedom are too few for a coverage factor: it takes at least 1; say better how well the uncertainties are known"
    )]
    DegreesOfFreedom {
        /// Degrees of freedom given.
        got: f64,
    },
    /// A coverage probability that is none.
    #[error("a coverage probability lies between 0 and 1, and {got} does not")]
    Probability {
        /// Probability given.
        got: f64,
    },
    /// Trials whose result is not a finite number.
    #[error(
        "{without} of {trials} trials gave no value, so their distribution has no honest summary; smaller uncertainties or more readings would help"
    )]
    NoValue {
        /// Trials made.
        trials: usize,
        /// How many of them gave no finite value.
        without: usize,
    },
    /// Too few trials for an interval of that probability.
    #[error("{got} trials are too few for this coverage interval: it takes at least {needed}")]
    TooFewTrials {
        /// Trials made.
        got: usize,
        /// The least number with which the interval is defined, far below what makes it steady.
        needed: usize,
    },
    /// Values so large that their mean or scatter cannot be held in a double.
    #[error(
        "the values of the trials are too large for the arithmetic; use units that bring them nearer to 1"
    )]
    OutOfRange,
}
