//! What a line is fitted to, and the checks that the input makes sense before any arithmetic.

use nalgebra::{Cholesky, DMatrix};

use super::{
    error::LineError,
    noise::{correlation, least_direction},
};

/// Readings and what is known of their errors.
#[derive(Debug, Clone, PartialEq)]
pub struct Data {
    /// Positions.
    pub x: Vec<f64>,
    /// Readings at the positions.
    pub y: Vec<f64>,
    /// What is known of the errors of x and y.
    pub noise: Noise,
    /// Unknowns beside intercept and slope.
    pub free: Vec<FreeColumn>,
}

impl Data {
    /// The shared errors stated.
    pub(super) fn shared(&self) -> &[SharedColumn] {
        match &self.noise {
            Noise::Stated(stated) => &stated.shared,
            Noise::Unstated | Noise::Dense(_) => &[],
        }
    }

    /// These rows alone, with all that is known of them. Rows that do not exist are passed over.
    #[must_use]
    pub fn only(&self, rows: &[usize]) -> Data {
        let pick =
            |list: &[f64]| -> Vec<f64> { rows.iter().filter_map(|row| list.get(*row).copied()).collect() };
        let n = self.x.len();
        let block = |list: &[f64]| -> Vec<f64> {
            rows.iter().flat_map(|i| pick(list.get(i * n..(i + 1) * n).unwrap_or_default())).collect()
        };
        let noise = match &self.noise {
            Noise::Unstated => Noise::Unstated,
            Noise::Stated(stated) => Noise::Stated(Stated {
                ux: pick(&stated.ux),
                uy: pick(&stated.uy),
                cov_xy: pick(&stated.cov_xy),
                shared: stated.shared.iter().map(|c| SharedColumn { x: pick(&c.x), y: pick(&c.y) }).collect(),
            }),
            Noise::Dense(dense) => {
                Noise::Dense(Dense { xx: block(&dense.xx), yy: block(&dense.yy), xy: block(&dense.xy) })
            }
        };
        let free = self.free.iter().map(|column| column.with(pick(column.entries()))).collect();
        Data { x: pick(&self.x), y: pick(&self.y), noise, free }
    }
}

/// What is known of the errors of the readings.
#[derive(Debug, Clone, PartialEq)]
pub enum Noise {
    /// Nothing: x are exact, all y alike, and their scatter about the line is all there is to judge by
    /// (ordinary least squares; GUM H.3).
    Unstated,
    /// Standard uncertainties row by row, plus errors shared by several rows.
    Stated(Stated),
    /// A full covariance matrix.
    Dense(Dense),
}

/// Standard uncertainties row by row, plus errors shared by several rows. In `ux`, `uy` and `cov_xy` an empty list
/// stands for zeros; zero means exact. No row may be exact in both.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stated {
    /// Standard uncertainty of each x.
    pub ux: Vec<f64>,
    /// Standard uncertainty of each y.
    pub uy: Vec<f64>,
    /// Covariance of x and y within each row.
    pub cov_xy: Vec<f64>,
    /// The effects of shared errors, each of one standard deviation.
    pub shared: Vec<SharedColumn>,
}

impl Stated {
    /// Standard uncertainty of the x of a row that there is.
    pub fn ux_at(&self, row: usize) -> f64 {
        entry(&self.ux, row)
    }

    /// Standard uncertainty of the y of a row that there is.
    pub fn uy_at(&self, row: usize) -> f64 {
        entry(&self.uy, row)
    }
}

/// How one shared error, of one standard deviation, moves each x and each y. An empty list stands for zeros.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SharedColumn {
    /// Effect on each x.
    pub x: Vec<f64>,
    /// Effect on each y.
    pub y: Vec<f64>,
}

impl SharedColumn {
    /// Effect on the x of a row that there is.
    pub fn x_at(&self, row: usize) -> f64 {
        entry(&self.x, row)
    }

    /// Effect on the y of a row that there is.
    pub fn y_at(&self, row: usize) -> f64 {
        entry(&self.y, row)
    }
}

/// An entry of a list in which none at all stand for zeros. Any other that is missing would be a slip of ours, which
/// must not pass for a smaller uncertainty.
pub(super) fn entry(list: &[f64], place: usize) -> f64 {
    if list.is_empty() { 0.0 } else { list[place] }
}

/// How one unit of an unknown moves each row.
#[derive(Debug, Clone, PartialEq)]
pub enum FreeColumn {
    /// The unknown moves each x: reading = true position + unknown × entry.
    InX(Vec<f64>),
    /// The unknown moves each y.
    InY(Vec<f64>),
}

impl FreeColumn {
    /// The entries, one for each row.
    pub fn entries(&self) -> &[f64] {
        match self {
            FreeColumn::InX(entries) | FreeColumn::InY(entries) => entries,
        }
    }

    pub(super) fn is_in_x(&self) -> bool {
        matches!(self, FreeColumn::InX(_))
    }

    /// The same kind of unknown with other entries.
    #[must_use]
    pub fn with(&self, entries: Vec<f64>) -> Self {
        match self {
            FreeColumn::InX(_) => FreeColumn::InX(entries),
            FreeColumn::InY(_) => FreeColumn::InY(entries),
        }
    }
}

/// A full covariance matrix in blocks of n × n, row after row; an empty block stands for zeros.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Dense {
    /// Covariance of `x_i` and `x_j`.
    pub xx: Vec<f64>,
    /// Covariance of `y_i` and `y_j`.
    pub yy: Vec<f64>,
    /// Covariance of `x_i` and `y_j`.
    pub xy: Vec<f64>,
}

/// Checks lengths, finiteness and signs, and that a stated covariance can exist.
pub(super) fn check(data: &Data) -> Result<(), LineError> {
    let n = data.x.len();
    let needed = 2 + data.free.len();
    if n < needed {
        return Err(LineError::TooFewRows { got: n, needed });
    }
    finite("x", &data.x)?;
    full("y", &data.y, n)?;
    for free in &data.free {
        full("a free column", free.entries(), n)?;
    }
    match &data.noise {
        Noise::Unstated => Ok(()),
        Noise::Stated(stated) => check_stated(stated, n),
        Noise::Dense(dense) => check_dense(dense, n),
    }
}

fn check_stated(stated: &Stated, n: usize) -> Result<(), LineError> {
    for (which, list) in [("u(x)", &stated.ux), ("u(y)", &stated.uy)] {
        empty_or_full(which, list, n)?;
        if let Some(row) = list.iter().position(|u| *u < 0.0) {
            return Err(LineError::NegativeUncertainty { row });
        }
    }
    empty_or_full("the covariance of x and y", &stated.cov_xy, n)?;
    for shared in &stated.shared {
        empty_or_full("a shared error's effect on x", &shared.x, n)?;
        empty_or_full("a shared error's effect on y", &shared.y, n)?;
    }
    let bare = |row: &usize| entry(&stated.ux, *row) == 0.0 && entry(&stated.uy, *row) == 0.0;
    let rows: Vec<usize> = (0..n).filter(bare).collect();
    if !rows.is_empty() {
        return Err(LineError::ZeroUncertainty { rows });
    }
    let impossible = |row: &usize| {
        let (ux, uy) = (entry(&stated.ux, *row), entry(&stated.uy, *row));
        entry(&stated.cov_xy, *row).abs() > ux * uy * (1.0 + 1e-12)
    };
    let rows: Vec<usize> = (0..n).filter(impossible).collect();
    if rows.is_empty() { Ok(()) } else { Err(LineError::Indefinite { rows }) }
}

fn check_dense(dense: &Dense, n: usize) -> Result<(), LineError> {
    for (which, block) in [("cov(x, x)", &dense.xx), ("cov(y, y)", &dense.yy), ("cov(x, y)", &dense.xy)] {
        if !(block.is_empty() || block.len() == n * n) {
            return Err(LineError::LengthMismatch { which, got: block.len(), expected: n * n });
        }
        if let Some(place) = block.iter().position(|value| !value.is_finite()) {
            return Err(LineError::NotFinite { row: place / n, which });
        }
    }
    symmetric(&dense.xx, n)?;
    symmetric(&dense.yy, n)?;
    possible(dense, n)
}

fn symmetric(block: &[f64], n: usize) -> Result<(), LineError> {
    /// Rounding of a printed matrix.
    const ALIKE: f64 = 1e-9;
    let at = |i: usize, j: usize| entry(block, i * n + j);
    for i in 0..n {
        for j in 0..i {
            if (at(i, j) - at(j, i)).abs() > ALIKE * at(i, j).abs().max(at(j, i).abs()) {
                return Err(LineError::NotSymmetric { rows: (j, i) });
            }
        }
    }
    Ok(())
}

/// A covariance matrix of all x and y must have no negative variance in any direction.
fn possible(dense: &Dense, n: usize) -> Result<(), LineError> {
    /// Negative by rounding only.
    const ROUNDING: f64 = 1e-10;
    let at = |block: &[f64], i: usize, j: usize| entry(block, i * n + j);
    let exact_x = dense.xx.is_empty() && dense.xy.is_empty();
    let offset = if exact_x { 0 } else { n };
    let full = DMatrix::from_fn(n + offset, n + offset, |i, j| match (i < offset, j < offset) {
        (true, true) => at(&dense.xx, i, j),
        (true, false) => at(&dense.xy, i, j - offset),
        (false, true) => at(&dense.xy, j, i - offset),
        (false, false) => at(&dense.yy, i - offset, j - offset),
    });
    if let Some(place) = full.diagonal().iter().position(|variance| *variance < 0.0) {
        return Err(LineError::Indefinite { rows: vec![place % n] });
    }
    let mut shape = correlation(full);
    for i in 0..shape.nrows() {
        shape[(i, i)] += ROUNDING;
    }
    if Cholesky::new(shape.clone()).is_some() {
        return Ok(());
    }
    let mut rows: Vec<usize> = least_direction(shape).into_iter().map(|place| place % n).collect();
    rows.sort_unstable();
    rows.dedup();
    Err(LineError::Indefinite { rows })
}

pub(super) fn finite(which: &'static str, list: &[f64]) -> Result<(), LineError> {
    match list.iter().position(|value| !value.is_finite()) {
        Some(row) => Err(LineError::NotFinite { row, which }),
        None => Ok(()),
    }
}

pub(super) fn full(which: &'static str, list: &[f64], n: usize) -> Result<(), LineError> {
    if list.len() != n {
        return Err(LineError::LengthMismatch { which, got: list.len(), expected: n });
    }
    finite(which, list)
}

fn empty_or_full(which: &'static str, list: &[f64], n: usize) -> Result<(), LineError> {
    if list.is_empty() { Ok(()) } else { full(which, list, n) }
}
