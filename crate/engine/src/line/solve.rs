//! From readings to the fitted line: scale them, look for the least χ², and tell what it says.

use super::error::LineError;
use super::input::{self, Data};
use super::noise;
use super::problem::{Problem, ScaledFrame};
use super::profile::Profile;
use super::result::{self, Fit};
use super::search::{self, Search};

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
    input::check(data)?;
    input::check_possible(data)?;
    solve(data, Search::Everywhere)
}

/// Fits the line, with the least χ² looked for as `search` says; of stated covariances it is known that they can exist.
pub(super) fn fit_by(data: &Data, search: Search) -> Result<Fit, LineError> {
    input::check(data)?;
    solve(data, search)
}

/// By how much √χ² of the line is lower than that of any other slope that fits the rows better than its neighbours do.
pub(super) fn lead(data: &Data) -> Result<f64, LineError> {
    input::check(data)?;
    let (frame, mut noise) = scaled(data)?;
    let (frame, start) = frame.centred(data, noise.as_mut())?;
    let problem = Problem::new(data, frame, noise.as_ref(), start)?;
    let mut profile = Profile::new(&problem, noise);
    let best = search::least(&mut profile, data, start, Search::Everywhere)?;
    Ok(search::lead(&mut profile, &best.point))
}

/// The scales of the readings, and their noise.
fn scaled(data: &Data) -> Result<(ScaledFrame, Box<dyn noise::NoiseForm>), LineError> {
    let frame = ScaledFrame::around(data)?;
    let noise = frame.noise(data);
    Ok((frame, noise))
}

fn solve(data: &Data, search: Search) -> Result<Fit, LineError> {
    let (frame, mut noise) = scaled(data)?;
    let (frame, of_rows) = frame.centred(data, noise.as_mut())?;
    let start = match search {
        Search::At(slope) => slope * (frame.x_scale / frame.y_scale),
        Search::Everywhere | Search::Near => of_rows,
    };
    let problem = Problem::new(data, frame, noise.as_ref(), start)?;
    let mut profile = Profile::new(&problem, noise);
    let best = search::least(&mut profile, data, start, search)?;
    profile.complete()?;
    result::assemble(data, &profile, &best)
}
