//! χ² of rows about a line, and what changes of the rows would make of it, each in a few operations.
//!
//! Errors that rows share are unknowns that are stated to be 0 ± 1 (C. R. Rao, Linear Statistical Inference, 2nd ed.,
//! 1973, section 4a: a prior as further observations), so that rows stay independent beside them. What the engine
//! computes is a result; this is a comparison, at fixed weights.

/// Columns, weights and readings, solved.
pub(super) struct Weighed<'a> {
    columns: &'a [Vec<f64>],
    weights: &'a [f64],
    /// χ².
    pub chi_square: f64,
    /// Each column's unknown.
    pub solution: Vec<f64>,
    inverse: Vec<Vec<f64>>,
    /// The weighted residuals.
    pub pull: Vec<f64>,
}

/// A column is told apart from those before it by more than this share of it.
const DISTINCT: f64 = 1e-10;

/// The least χ² of `y` by the columns, of which the first `free` are not known beforehand; none where they can't be told
/// apart.
pub(super) fn weigh<'a>(
    columns: &'a [Vec<f64>],
    free: usize,
    weights: &'a [f64],
    y: &[f64],
) -> Option<Weighed<'a>> {
    let size = columns.len();
    let dot = |a: &[f64], b: &[f64]| -> f64 {
        a.iter().zip(b).zip(weights).map(|((a, b), weight)| a * b * weight).sum()
    };
    let mut normal: Vec<Vec<f64>> =
        columns.iter().map(|a| columns.iter().map(|b| dot(a, b)).collect()).collect();
    for (place, row) in normal.iter_mut().enumerate().skip(free) {
        row[place] += 1.0;
    }
    let inverse = inverted(normal)?;
    let on: Vec<f64> = columns.iter().map(|column| dot(column, y)).collect();
    let solution: Vec<f64> =
        inverse.iter().map(|row| row.iter().zip(&on).map(|(a, b)| a * b).sum()).collect();
    let mut pull = y.to_vec();
    for (column, unknown) in columns.iter().zip(&solution) {
        add(&mut pull, column, -unknown);
    }
    let mut chi_square: f64 = solution.iter().skip(free).map(|z| z * z).sum();
    for (residual, weight) in pull.iter_mut().zip(weights) {
        chi_square += *residual * *residual * weight;
        *residual *= weight;
    }
    (size >= 2).then_some(Weighed { columns, weights, chi_square, solution, inverse, pull })
}

/// Adds a multiple.
pub(super) fn add(to: &mut [f64], list: &[f64], times: f64) {
    for (to, value) in to.iter_mut().zip(list) {
        *to += times * value;
    }
}

/// The inverse of a positive definite matrix, by Gauss and Jordan; none where a pivot vanishes.
fn inverted(mut from: Vec<Vec<f64>>) -> Option<Vec<Vec<f64>>> {
    let size = from.len();
    let least: Vec<f64> = (0..size).map(|k| from[k][k] * DISTINCT).collect();
    let mut to: Vec<Vec<f64>> =
        (0..size).map(|i| (0..size).map(|j| if i == j { 1.0 } else { 0.0 }).collect()).collect();
    for k in 0..size {
        let pivot = from[k][k];
        if pivot.is_nan() || pivot <= least[k] {
            return None;
        }
        let (row, side) = (from[k].clone(), to[k].clone());
        for i in 0..size {
            let factor = if i == k { (pivot - 1.0) / pivot } else { from[i][k] / pivot };
            add(&mut from[i], &row, -factor);
            add(&mut to[i], &side, -factor);
        }
    }
    Some(to)
}

impl Weighed<'_> {
    /// The slope.
    pub fn slope(&self) -> f64 {
        self.solution[1]
    }

    /// The variance of the slope.
    pub fn slope_variance(&self) -> f64 {
        self.inverse[1][1]
    }

    /// What the unknowns take up of a change of the readings, by how much each grows, and what is left of it, weighed.
    fn taken(&self, change: &[f64]) -> (f64, f64) {
        let weighed: Vec<f64> = change.iter().zip(self.weights).map(|(h, weight)| h * weight).collect();
        let dot = |list: &[f64]| -> f64 { list.iter().zip(&weighed).map(|(a, b)| a * b).sum() };
        let on: Vec<f64> = self.columns.iter().map(|column| dot(column)).collect();
        let by = |row: &Vec<f64>| -> f64 { row.iter().zip(&on).map(|(a, b)| a * b).sum() };
        let whole = dot(change);
        let left = whole - self.inverse.iter().zip(&on).map(|(row, on)| by(row) * on).sum::<f64>();
        (by(&self.inverse[1]), if left > DISTINCT * whole { left } else { 0.0 })
    }

    /// What a change of the readings does, by any multiple of it.
    pub fn change(&self, change: &[f64]) -> Change {
        let (slope, left) = self.taken(change);
        let pull = self.pull.iter().zip(change).map(|(pull, by)| pull * by).sum();
        Change { line: (self.chi_square, self.slope()), slope, left, pull }
    }

    /// χ² and slope if the readings changed so.
    pub fn shifted(&self, change: &[f64]) -> (f64, f64) {
        self.change(change).by(1.0)
    }

    /// χ² and slope if the readings may change by any multiple of this, and that multiple; none where it can't be told.
    pub fn freed(&self, change: &[f64]) -> Option<(f64, f64, f64)> {
        let change = self.change(change);
        let times = -change.pull / change.left;
        let (chi_square, slope) = change.by(times);
        (change.left > 0.0).then_some((chi_square, slope, times))
    }

    /// The squared distance of a reading from the line, where it took no part in it, in units of its variance.
    pub fn beyond(&self, features: &[f64], y: f64, weight: f64) -> f64 {
        let dot = |list: &[f64]| -> f64 { list.iter().zip(features).map(|(a, b)| a * b).sum() };
        let off = y - dot(&self.solution);
        let variance: f64 = self.inverse.iter().zip(features).map(|(row, f)| f * dot(row)).sum();
        off * off / (1.0 / weight + variance)
    }
}

/// What a change of the readings does.
pub(super) struct Change {
    line: (f64, f64),
    slope: f64,
    left: f64,
    pull: f64,
}

impl Change {
    /// χ² and slope with so many times the change.
    pub fn by(&self, times: f64) -> (f64, f64) {
        let (chi_square, slope) = self.line;
        (chi_square + (2.0 * self.pull + self.left * times) * times, slope + self.slope * times)
    }
}
