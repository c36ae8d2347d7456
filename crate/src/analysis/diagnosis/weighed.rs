//! χ² of rows about a line, and what changes of the rows would make of it, each in a few operations.
//!
//! Errors that rows share are unknowns that are stated to be 0 ± 1 (C. R. Rao, Linear Statistical Inference, 2nd ed.,
//! 1973, section 4a: a prior as further observations), so that rows stay independent beside them. What the engine
//! computes is a result; this is a comparison, at fixed weights.

/// What a fit is judged by.
#[derive(Clone, Copy)]
pub(super) struct WeighedLine {
    /// χ².
    pub chi_square: f64,
    /// Slope, ns/m.
    pub slope: f64,
}

/// Columns, weights and readings, solved.
pub(super) struct Weighed<'a> {
    columns: &'a [Vec<f64>],
    weights: &'a [f64],
    /// χ² and slope.
    pub line: WeighedLine,
    solution: Vec<f64>,
    inverse: Vec<Vec<f64>>,
    /// The weighted residuals.
    pub pull: Vec<f64>,
}

/// A change of the readings: its weighed products with each column, with itself, and with the residuals. They add up over
/// the rows that it touches.
#[derive(Clone)]
pub(super) struct Change {
    on: Vec<f64>,
    whole: f64,
    pull: f64,
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
    let mut normal = vec![vec![0.0; size]; size];
    let mut on = Vec::with_capacity(size);
    for (i, column) in columns.iter().enumerate() {
        let weighed: Vec<f64> = column.iter().zip(weights).map(|(a, weight)| a * weight).collect();
        for (j, other) in columns.iter().take(i + 1).enumerate() {
            let product = dot(&weighed, other);
            normal[i][j] = product;
            normal[j][i] = product;
        }
        on.push(dot(&weighed, y));
        if i >= free {
            normal[i][i] += 1.0;
        }
    }
    let inverse = inverted(normal)?;
    let solution: Vec<f64> = inverse.iter().map(|row| dot(row, &on)).collect();
    let mut pull = y.to_vec();
    for (column, unknown) in columns.iter().zip(&solution) {
        add(&mut pull, column, -unknown);
    }
    let known = &solution[free..];
    let mut chi_square = dot(known, known);
    for (residual, weight) in pull.iter_mut().zip(weights) {
        chi_square += *residual * *residual * weight;
        *residual *= weight;
    }
    let line = WeighedLine { chi_square, slope: solution[1] };
    Some(Weighed { columns, weights, line, solution, inverse, pull })
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
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
    let mut to = vec![vec![0.0; size]; size];
    for (k, row) in to.iter_mut().enumerate() {
        row[k] = 1.0;
    }
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
    /// The variance of the slope.
    pub fn slope_variance(&self) -> f64 {
        self.inverse[1][1]
    }

    /// No change.
    pub fn unchanged(&self) -> Change {
        Change { on: vec![0.0; self.columns.len()], whole: 0.0, pull: 0.0 }
    }

    /// Changes one more reading.
    pub fn alter(&self, change: &mut Change, row: usize, by: f64) {
        let weighed = by * self.weights[row];
        for (on, column) in change.on.iter_mut().zip(self.columns) {
            *on += column[row] * weighed;
        }
        change.whole += by * weighed;
        change.pull += by * self.pull[row];
    }

    /// A change of all readings.
    pub fn change(&self, by: &[f64]) -> Change {
        let mut change = self.unchanged();
        for (row, by) in by.iter().enumerate() {
            self.alter(&mut change, row, *by);
        }
        change
    }

    /// What the line takes up of a change: by how much the slope grows, and what is left of it, weighed.
    fn taken_up(&self, change: &Change) -> (f64, f64) {
        let taken_up: f64 =
            self.inverse.iter().zip(&change.on).map(|(row, on)| dot(row, &change.on) * on).sum();
        let left = change.whole - taken_up;
        let left = if left > DISTINCT * change.whole { left } else { 0.0 };
        (dot(&self.inverse[1], &change.on), left)
    }

    /// The line with so many times the change.
    pub fn with(&self, change: &Change, times: f64) -> WeighedLine {
        let (slope, left) = self.taken_up(change);
        WeighedLine {
            chi_square: self.line.chi_square + (2.0 * change.pull + left * times) * times,
            slope: self.line.slope + slope * times,
        }
    }

    /// The line if the readings may change by any multiple of this, and that multiple; none where it can't be told.
    pub fn freed(&self, change: &Change) -> Option<(WeighedLine, f64)> {
        let (_, left) = self.taken_up(change);
        let times = -change.pull / left;
        (left > 0.0).then(|| (self.with(change, times), times))
    }

    /// The squared distance of a reading from the line, where it took no part in it, in units of its variance.
    pub fn beyond(&self, features: &[f64], y: f64, weight: f64) -> f64 {
        let off = y - dot(&self.solution, features);
        let variance: f64 = self.inverse.iter().zip(features).map(|(row, f)| f * dot(row, features)).sum();
        off * off / (1.0 / weight + variance)
    }
}
