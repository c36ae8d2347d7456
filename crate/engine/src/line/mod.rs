//! The straight line y = a + b ξ through readings (x, y), with errors in both variables, errors shared by many
//! rows, and unknown steps.
//!
//! Model: `y_i = a + b ξ_i + ε_i`, `x_i = ξ_i + δ_i`. χ² is minimised over the intercept a, the slope b and the true
//! positions ξ; its least value, with the covariance of (ε, δ) as stated, is what the fit reports. The cases of
//! ISO/TS 28037:2010 (weighted least squares, clause 6; errors in both variables, clauses 7 and 8; correlated
//! rows, clauses 9 and 10) and ordinary least squares (GUM H.3) are its limits.
//!
//! The covariance of the rows is a diagonal plus a few *shared columns*: one standard deviation of a shared error
//! moves each row by its entry. A *free column* is the same with no stated size: an unknown step, a curvature.
//!
//! Inside the notebook x are distances in metres and y are delays in nanoseconds; the fit itself knows no units.
//! It centres and scales, so that neither offsets nor units cost digits, takes the readings as the exact doubles they
//! are, and forms in pairs of doubles what would cancel to few digits. Where the readings tell no slope it says why.
//!
//! Standard uncertainties come from the Gauss–Newton information at the adjusted positions, as in ISO/TS 28037 and
//! D. York et al., Am. J. Phys. 72 (2004) 367. Stated uncertainties are never scaled in silence; see
//! [`Fit::scaled_by_scatter`].

mod basis;
pub mod checks;
pub mod diagnostics;
mod error;
mod input;
mod nodes;
mod noise;
mod pair;
mod problem;
mod profile;
mod refit;
mod result;
mod search;

pub use error::LineError;
pub use input::{Column, Data, Dense, FreeColumn, Noise, Stated};
pub use refit::Refit;
pub use result::{Estimate, Fit, RowFit, Uncertainty, bias_of_reciprocal};

use nalgebra::DMatrix;

use noise::{Independent, Joint};
use problem::{Frame, Problem};

/// Fits the line.
///
/// # Errors
/// Every input that cannot give a line is named: see [`LineError`]. No input makes this panic.
///
/// # Example
/// ```
/// use slope_engine::line::{Data, Noise, fit};
/// let data = Data { x: vec![1.0, 2.0, 3.0], y: vec![5.0, 7.0, 9.0], noise: Noise::Unstated, free: vec![] };
/// let line = fit(&data)?;
/// assert!((line.slope - 2.0).abs() < 1e-14 && (line.intercept - 3.0).abs() < 1e-14);
/// # Ok::<(), slope_engine::line::LineError>(())
/// ```
pub fn fit(data: &Data) -> Result<Fit, LineError> {
    fit_by(data, Search::Everywhere)
}

/// Where the least χ² is looked for, when χ² may have more than one valley.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Search {
    /// Over all slopes.
    Everywhere,
    /// In the valley that begins at the slope of the rows themselves.
    Near,
}

fn fit_by(data: &Data, search: Search) -> Result<Fit, LineError> {
    input::check(data)?;
    let frame = Frame::around(data)?;
    // One form of the code for both forms of noise: each call of it works on a whole column.
    let noise: Box<dyn noise::Noise> = match &data.noise {
        Noise::Unstated => Box::new(Independent::new(vec![], vec![1.0; data.x.len()], vec![])),
        Noise::Stated(stated) => Box::new(independent(stated, &frame)),
        Noise::Dense(dense) => Box::new(joint(dense, data.x.len(), &frame)),
    };
    solve(data, frame, noise, search)
}

fn solve(
    data: &Data,
    frame: Frame,
    mut noise: Box<dyn noise::Noise>,
    search: Search,
) -> Result<Fit, LineError> {
    let (frame, start) = frame.centred(data, noise.as_mut())?;
    let problem = Problem::new(data, frame, noise.as_ref(), start)?;
    let mut profile = profile::Profile::new(&problem, noise);
    let best = search::least(&mut profile, data, start, search)?;
    profile.complete()?;
    result::assemble(data, &profile, &best)
}

fn independent(stated: &Stated, frame: &Frame) -> Independent {
    let variances = |list: &[f64], scale: f64| {
        let per_unit = 1.0 / scale;
        list.iter().map(|u| (u * per_unit) * (u * per_unit)).collect()
    };
    let var_x =
        if stated.ux.iter().any(|u| *u > 0.0) { variances(&stated.ux, frame.x_scale) } else { vec![] };
    let cov_xy = stated.cov_xy.iter().map(|cov| cov / frame.x_scale / frame.y_scale).collect();
    Independent::new(var_x, variances(&stated.uy, frame.y_scale), cov_xy)
}

fn joint(dense: &Dense, n: usize, frame: &Frame) -> Joint {
    let block = |list: &[f64], a: f64, b: f64| {
        let stated = list.iter().any(|value| *value != 0.0);
        stated.then(|| DMatrix::from_row_iterator(n, n, list.iter().map(|value| value / a / b)))
    };
    let (x, y) = (frame.x_scale, frame.y_scale);
    let yy = block(&dense.yy, y, y).unwrap_or_else(|| DMatrix::zeros(n, n));
    Joint::new(block(&dense.xx, x, x), yy, block(&dense.xy, x, y))
}
