//! Side checks: other lines through the same readings, to set beside the main one. None of them is a result.

use std::f64::consts::{FRAC_1_SQRT_2, SQRT_2};

use super::{
    error::LineError,
    input::{Data, Dense, FreeColumn, Noise, SharedColumn, Stated, finite, full},
    result::{Fit, FittedValue},
    search::Search,
    solve::fit_by,
};
use crate::rank::median;

/// A line to set beside the main one: as [`fit`](super::fit), but without a look for other valleys of χ² over all slopes.
/// Lines held away from their rows leave χ² far from a parabola, and that look would take most of the time of an
/// analysis, for lines that are no results.
///
/// # Errors
/// As [`fit`](super::fit).
pub fn beside(data: &Data) -> Result<Fit, LineError> {
    fit_by(data, Search::Near)
}

/// A line through the origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThroughZero {
    /// y for one unit of x.
    pub slope: f64,
    /// Its standard uncertainty; `None` if nothing was stated and there is no scatter to judge by.
    pub u_slope: Option<f64>,
    /// Least χ², as in [`Fit::chi_square`].
    pub chi_square: f64,
    /// Rows less one, less the free columns.
    pub degrees_of_freedom: usize,
}

/// The line with its intercept held at zero. On a time-of-flight bench the intercept is never zero by itself (arms,
/// cables and detectors differ), so this line is biased: show it with that warning.
///
/// The best line through the origin is the best line through the readings and their mirror images (−x, −y): the
/// intercept vanishes by symmetry, χ² doubles and variances halve.
///
/// # Errors
/// As [`beside`].
pub fn through_zero(data: &Data) -> Result<ThroughZero, LineError> {
    let n = data.x.len();
    let needed = 1 + data.free.len();
    if n < needed {
        return Err(LineError::TooFewRows { got: n, needed });
    }
    let doubled = beside(&mirrored(data))?;
    let degrees_of_freedom = n - needed;
    let chi_square = if degrees_of_freedom == 0 { 0.0 } else { doubled.chi_square / 2.0 };
    // The doubled fit counts its own degrees of freedom, so its scatter is taken out again.
    let unit = match doubled.scatter() {
        _ if doubled.stated => Some(1.0),
        Some(own) if own > 0.0 && degrees_of_freedom > 0 => {
            Some((chi_square / degrees_of_freedom as f64).sqrt() / own)
        }
        Some(_) if degrees_of_freedom > 0 => Some(0.0),
        _ => None,
    };
    let u_slope = doubled.uncertainty.zip(unit).map(|(u, unit)| u.slope * unit * SQRT_2);
    Ok(ThroughZero { slope: doubled.slope, u_slope, chi_square, degrees_of_freedom })
}

fn mirrored(data: &Data) -> Data {
    let both = |list: &[f64], sign: f64| list.iter().copied().chain(list.iter().map(|v| sign * v)).collect();
    let twice = |list: &[f64]| both(list, 1.0);
    let opposed = |list: &[f64]| both(list, -1.0);
    // A shared error counts once, but its rows count twice: half the variance sets that right.
    let shared = |list: &[f64]| opposed(&list.iter().map(|v| v * FRAC_1_SQRT_2).collect::<Vec<_>>());
    let noise = match &data.noise {
        Noise::Unstated => Noise::Unstated,
        Noise::Stated(stated) => Noise::Stated(Stated {
            ux: twice(&stated.ux),
            uy: twice(&stated.uy),
            cov_xy: twice(&stated.cov_xy),
            shared: stated.shared.iter().map(|c| SharedColumn { x: shared(&c.x), y: shared(&c.y) }).collect(),
            dense: stated.dense.each(|list| block_twice(list, data.x.len())),
        }),
    };
    let free = data.free.iter().map(|column| column.with(opposed(column.entries()))).collect();
    Data { x: opposed(&data.x), y: opposed(&data.y), noise, free }
}

/// A matrix of n × n twice along the diagonal of one of 2n × 2n.
fn block_twice(block: &[f64], n: usize) -> Vec<f64> {
    let mut twice = vec![0.0; 4 * block.len()];
    for (i, row) in block.chunks_exact(n).enumerate() {
        for shift in [0, n] {
            let start = (i + shift) * 2 * n + shift;
            twice[start..start + n].copy_from_slice(row);
        }
    }
    twice
}

/// The line through some of the rows alone, as through one rail's; without the free columns, which such a part cannot
/// tell from its intercept.
///
/// # Errors
/// As [`beside`].
pub fn part(data: &Data, rows: &[usize]) -> Result<Fit, LineError> {
    beside(&Data { free: vec![], ..data.only(rows) })
}

/// The step that the rows themselves show where `beyond` begins to hold: an unknown added to each x (a splice) of
/// those rows, beside all that is stated. Compare it with zero by its own uncertainty.
///
/// # Errors
/// As [`beside`]; [`LineError::UndeterminedColumn`] if the step cannot be told from the line.
pub fn step(data: &Data, beyond: &[bool]) -> Result<FittedValue, LineError> {
    let entries = beyond.iter().map(|beyond| f64::from(u8::from(*beyond))).collect();
    with_unknown(data, FreeColumn::InX(entries))
}

/// The coefficient of x² that the rows show if the line may bend; in units of y over x squared. Positions are squared
/// as read.
///
/// # Errors
/// As [`beside`].
pub fn quadratic_term(data: &Data) -> Result<FittedValue, LineError> {
    // Counting from the middle changes intercept and slope only, and keeps the column apart from both.
    let middle = data.x.iter().sum::<f64>() / data.x.len() as f64;
    with_unknown(data, FreeColumn::InY(data.x.iter().map(|x| (x - middle) * (x - middle)).collect()))
}

/// What the rows say of one more unknown, beside the line and all that is stated.
///
/// # Errors
/// As [`beside`]; [`LineError::UndeterminedColumn`] if it cannot be told from the line.
pub fn with_unknown(data: &Data, column: FreeColumn) -> Result<FittedValue, LineError> {
    let mut wider = data.clone();
    wider.free.push(column);
    let line = beside(&wider)?;
    line.free.last().copied().ok_or(LineError::UndeterminedColumn { column: data.free.len() })
}

/// A line told without its rows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reversed {
    /// The line at x = 0.
    pub intercept: f64,
    /// Change of y for one unit of x.
    pub slope: f64,
    /// Standard uncertainty of the slope.
    pub u_slope: Option<f64>,
}

/// Regresses x on y, and gives that line as y over x again. With uncertainties stated it is the same line, which checks
/// the arithmetic; with none stated the scatter is laid to x instead of y, and the two slopes bracket the truth.
///
/// # Errors
/// As [`beside`], with x and y changed about: [`LineError::AllPositionsEqual`] if all y are equal.
pub fn reversed(data: &Data) -> Result<Reversed, LineError> {
    let noise = match &data.noise {
        Noise::Unstated => Noise::Unstated,
        Noise::Stated(stated) => Noise::Stated(Stated {
            ux: stated.uy.clone(),
            uy: stated.ux.clone(),
            cov_xy: stated.cov_xy.clone(),
            shared: stated.shared.iter().map(|c| SharedColumn { x: c.y.clone(), y: c.x.clone() }).collect(),
            dense: turned(&stated.dense, data.x.len()),
        }),
    };
    let free = data.free.iter().map(|column| match column {
        FreeColumn::InX(entries) => FreeColumn::InY(entries.clone()),
        FreeColumn::InY(entries) => FreeColumn::InX(entries.clone()),
    });
    let line = beside(&Data { x: data.y.clone(), y: data.x.clone(), noise, free: free.collect() })?;
    if line.slope == 0.0 {
        return Err(LineError::NoConvergence);
    }
    let slope = 1.0 / line.slope;
    let u_slope = line.uncertainty.map(|u| u.slope * slope * slope);
    Ok(Reversed { intercept: line.centre - line.at_centre * slope, slope, u_slope })
}

/// With x and y changed about.
fn turned(dense: &Dense, n: usize) -> Dense {
    let xy = (0..dense.xy.len()).filter_map(|at| dense.xy.get(at % n * n + at / n).copied()).collect();
    Dense { xx: dense.yy.clone(), yy: dense.xx.clone(), xy }
}

/// The median of the slopes of all pairs of rows with unequal x, which single wild rows cannot move: the estimator of
/// H. Theil (Proc. K. Ned. Akad. Wet. A 53 (1950) 386). It costs n² in time and memory.
///
/// # Errors
/// [`LineError::NotFinite`], [`LineError::LengthMismatch`], [`LineError::AllPositionsEqual`].
pub fn theil_sen(x: &[f64], y: &[f64]) -> Result<f64, LineError> {
    finite("x", x)?;
    full("y", y, x.len())?;
    let rows = || x.iter().zip(y);
    let mut slopes: Vec<f64> = rows()
        .enumerate()
        .flat_map(|(i, (xi, yi))| rows().skip(i + 1).map(move |(xj, yj)| (xj - xi, yj - yi)))
        .filter(|(dx, _)| *dx != 0.0)
        .map(|(dx, dy)| dy / dx)
        .collect();
    median(&mut slopes).ok_or(LineError::AllPositionsEqual)
}
