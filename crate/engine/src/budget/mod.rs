//! Uncertainty budgets: errors with their distributions, combined by the law of propagation (JCGM 100, the GUM)
//! and checked by Monte Carlo (JCGM 101, its Supplement 1).
//!
//! This module knows numbers and models, not notebooks; the units of an estimate and of its uncertainty are the
//! caller's, and the same.
//!
//! | symbol | meaning | where |
//! | --- | --- | --- |
//! | u, ν | standard uncertainty of an input, and its degrees of freedom | [`Component`] |
//! | c | sensitivity ∂y/∂x of the result y to the input x, units of y over units of x | [`sensitivities`] |
//! | u_c(y), ν_eff | combined standard uncertainty, effective degrees of freedom | [`combine()`], [`propagate()`] |
//! | k, p | coverage factor and coverage probability: U = k·u_c | [`coverage_factor`] |
//! | M | number of Monte Carlo trials | [`summarise`], [`Adaptive`] |
//! | δ | numerical tolerance of an uncertainty of so many significant digits | [`tolerance`] |
//!
//! A Monte Carlo run draws each input by [`Shape::draw`] from a [`Random`], puts them through the model, and hands
//! the list of results to [`summarise`]; [`validate`] then says whether the budget's interval may be quoted.
//! The same seed gives the same bits natively and in every browser: exponentials, logarithms and sines are those
//! of the `libm` crate, the rest is exact arithmetic.
//!
//! Sources: JCGM 100:2008 (GUM), JCGM 101:2008; clauses stand beside what they govern.

mod error;
mod combine;
mod monte_carlo;
mod propagate;
mod ziggurat;
mod random;
mod shape;
mod redraw;

pub use combine::{Combined, Component, combine, coverage_factor};
pub use error::BudgetError;
pub use monte_carlo::{
    Adaptive, Histogram, Step, Summary, Validation, histogram, summarise, tolerance, validate,
};
pub use propagate::{propagate, sensitivities};
pub use random::Random;
pub use redraw::{CommonError, OwnErrors, Quotient, Redraw};
pub use shape::Shape;
