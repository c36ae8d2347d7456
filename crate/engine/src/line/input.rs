//! What a line is fitted to, and the checks that the input makes sense before any arithmetic.

use super::{error::LineError, noise::JointNoise, triangle::Triangle};

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
            Noise::Unstated => &[],
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
                dense: stated.dense.each(|list| block(list)),
            }),
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
    /// Standard uncertainties row by row, covariances between rows, and errors shared by several rows.
    Stated(Stated),
}

/// Standard uncertainties row by row, covariances between rows, and errors shared by several rows, all independent of one
/// another. In `ux`, `uy` and `cov_xy` an empty list stands for zeros; zero means exact. No row may be exact in all.
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
    /// A stated covariance matrix.
    pub dense: Dense,
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

impl Dense {
    /// Whether nothing is stated.
    pub fn is_empty(&self) -> bool {
        [&self.xx, &self.yy, &self.xy].iter().all(|block| block.is_empty())
    }

    /// The same with each block made anew.
    #[must_use]
    pub(super) fn each(&self, make: impl Fn(&[f64]) -> Vec<f64>) -> Dense {
        Dense { xx: make(&self.xx), yy: make(&self.yy), xy: make(&self.xy) }
    }

    /// The same as errors independent of one another, each of one standard deviation, of `n` rows: the columns of the
    /// matrix's triangle.
    pub fn columns(&self, n: usize) -> Vec<SharedColumn> {
        let (triangle, in_x) = self.triangle(n);
        let some = |column: &&[f64]| column.iter().any(|entry| *entry != 0.0);
        let parted = |column: &[f64]| {
            let (x, y) = column.split_at(in_x);
            SharedColumn { x: x.to_vec(), y: y.to_vec() }
        };
        triangle.columns().filter(some).map(parted).collect()
    }

    /// The covariance of y − `slope` · x as a variance for each row and errors of several rows together, of one standard
    /// deviation each; `None` where a combination of rows has no variance.
    pub fn parted(&self, slope: f64, n: usize) -> Option<(Vec<f64>, Vec<Vec<f64>>)> {
        /// Halved so often, what is left of a row's variance is lost in rounding.
        const HALVED: i32 = 23;
        let whole = JointNoise::new(self.xx.clone(), self.yy.clone(), self.xy.clone(), n).at(slope);
        let variances: Vec<f64> = (0..n).map(|row| whole[row * (n + 1)]).collect();
        for halved in 1..=HALVED {
            let share = libm::ldexp(1.0, -halved);
            let mut rest = whole.clone();
            for (row, variance) in variances.iter().enumerate() {
                // Rows of which nothing is stated stand apart here, and are left out again.
                rest[row * (n + 1)] = if *variance > 0.0 { variance - share * variance } else { 1.0 };
            }
            let triangle = Triangle::of(rest, n);
            if triangle.indefinite().is_none() && triangle.singular().is_none() {
                let stated = |(column, variance): (&[f64], &f64)| (*variance > 0.0).then(|| column.to_vec());
                let columns = triangle.columns().zip(&variances).filter_map(stated).collect();
                return Some((variances.iter().map(|variance| share * variance).collect(), columns));
            }
        }
        None
    }

    /// The same, so many times as large.
    pub fn scale(&mut self, by: f64) {
        for block in [&mut self.xx, &mut self.yy, &mut self.xy] {
            for covariance in block {
                *covariance *= by;
            }
        }
    }

    /// The triangle of the matrix of all x, where any covariance of one is stated, and all y; with the number of x in it.
    fn triangle(&self, n: usize) -> (Triangle, usize) {
        let in_x = if self.xx.is_empty() && self.xy.is_empty() { 0 } else { n };
        let size = n + in_x;
        let at = |block: &[f64], i: usize, j: usize| entry(block, i * n + j);
        let of = |place: usize| {
            let (i, j) = (place / size, place % size);
            match (i < in_x, j < in_x) {
                (true, true) => at(&self.xx, i, j),
                (true, false) => at(&self.xy, i, j - in_x),
                (false, true) => at(&self.xy, j, i - in_x),
                (false, false) => at(&self.yy, i - in_x, j - in_x),
            }
        };
        (Triangle::of((0..size * size).map(of).collect(), size), in_x)
    }
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
    check_dense(&stated.dense, n)?;
    let bare = |row: &usize| {
        let own = [&stated.ux, &stated.uy].iter().all(|list| entry(list, *row) == 0.0);
        own && [&stated.dense.xx, &stated.dense.yy].iter().all(|block| entry(block, *row * (n + 1)) == 0.0)
    };
    let rows: Vec<usize> = (0..n).filter(bare).collect();
    if !rows.is_empty() {
        return Err(LineError::ZeroUncertainty { rows });
    }
    let impossible = |(row, covariance): (usize, &f64)| {
        let possible = entry(&stated.ux, row) * entry(&stated.uy, row);
        (covariance.abs() > possible * (1.0 + 1e-12)).then_some(row)
    };
    let rows: Vec<usize> = stated.cov_xy.iter().enumerate().filter_map(impossible).collect();
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
    [&dense.xx, &dense.yy].into_iter().try_for_each(|block| symmetric(block, n))
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
pub(super) fn check_possible(data: &Data) -> Result<(), LineError> {
    let n = data.x.len();
    let Noise::Stated(Stated { dense, .. }) = &data.noise else { return Ok(()) };
    if dense.is_empty() {
        return Ok(());
    }
    let Some(places) = dense.triangle(n).0.indefinite() else { return Ok(()) };
    let mut rows: Vec<usize> = places.into_iter().map(|place| place % n).collect();
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
