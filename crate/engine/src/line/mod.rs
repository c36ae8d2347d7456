//! The straight line y = a + b ξ through readings (x, y), with errors in both variables, errors shared by many
//! rows, and unknown steps.
//!
//! Model: `y_i = a + b ξ_i + ε_i`, `x_i = ξ_i + δ_i`. χ² is minimised over the intercept a, the slope b and the true
//! positions ξ; its least value, with the covariance of (ε, δ) as stated, is what the fit reports. The cases of
//! ISO/TS 28037:2010 (weighted least squares, clause 6; errors in both variables, clauses 7 and 8; correlated
//! rows, clauses 9 and 10) and ordinary least squares (GUM H.3) are its limits.
//!
//! The covariance of the rows is a diagonal plus a few *shared columns*: one standard deviation of a shared error
//! moves each row by its entry. A *free column* is the same with no stated size: an unknown step, a curvature. Where a
//! covariance matrix is stated it takes the diagonal's place, beside the same columns ([`Dense`]).
//!
//! Inside the notebook x are distances in metres and y are delays in nanoseconds; the fit itself knows no units.
//! It centres and scales, so that neither offsets nor units cost digits, takes the readings as the exact doubles they
//! are, and forms in pairs of doubles what would cancel to few digits. Where the readings tell no slope it says why.
//!
//! Standard uncertainties come from the Gauss–Newton information at the adjusted positions, as in ISO/TS 28037 and
//! D. York et al., Am. J. Phys. 72 (2004) 367. Stated uncertainties are never scaled in silence: by
//! how much the scatter would have them larger says [`Fit::scatter`], for a person to claim.

// Numbers in pairs of doubles.
mod pair;

// Chebyshev's places and polynomials through them.
mod chebyshev;

// Sums, and orthonormal bases.
mod basis;

// Why there is no line.
mod error;

// Covariance matrices as triangles.
mod triangle;

// The covariance of the rows.
mod noise;

// What a line is fitted to.
mod input;

// The readings in units of their own spans.
mod problem;

// χ² over the slope.
mod profile;

// The slope of the least χ².
mod search;

// The fitted line, in the units of the readings.
mod result;

// From readings to the fitted line.
mod solve;

// Tests on the residuals of a fit.
pub mod diagnostics;

// Other lines through the same readings.
pub mod checks;

// χ² of redrawn readings, interpolated between slopes.
mod nodes;

// The slope of redrawn readings.
mod refit;

pub use error::LineError;
pub use input::{Data, Dense, FreeColumn, Noise, SharedColumn, Stated};
pub use refit::Refit;
pub use result::{Fit, FittedValue, RowFit, Uncertainty, bias_of_reciprocal};
pub use solve::fit;
