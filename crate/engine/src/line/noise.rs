//! The two forms of noise a line is fitted under, as the fit sees them: what whitens a column of y-effects at a
//! given slope b, and what the residuals then say about the errors in x.
//!
//! W(b) = Vyy + b² Vxx − b (Vxy + Vyx) is the covariance of y − a − b x (ISO/TS 28037:2010, clauses 7 and 10).
//! Everything here is in the scaled units of [`Problem`](super::problem::Problem).

use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

use super::error::LineError;

/// What the fit asks of a noise form. Methods after [`at_slope`](NoiseForm::at_slope) hold for that slope.
pub(super) trait NoiseForm: core::fmt::Debug {
    /// Sets W for slope `b`.
    fn at_slope(&mut self, b: f64) -> Result<(), LineError>;
    /// Multiplies a column by L⁻¹, where W = L Lᵀ.
    fn whiten(&self, column: &mut [f64]);
    /// Gives e = L⁻ᵀ of a whitened residual, so that e = W⁻¹ r.
    fn weigh(&self, whitened: &[f64], e: &mut [f64]);
    /// With Q = Vxy − b Vxx: writes the estimated errors in x, Q e, and their mirror image Qᵀ e;
    /// gives eᵀ Vxx e.
    fn errors_in_x(&self, e: &[f64], errors: &mut [f64], mirrored: &mut [f64]) -> f64;
    /// The diagonal of W⁻¹.
    fn information(&self) -> Vec<f64>;
    /// A weight for each row, for choosing the centre of the data: 1/Wii.
    fn weights(&self) -> Vec<f64>;
}

/// Rows independent of one another: W is diagonal. Empty lists stand for zeros.
#[derive(Debug, Clone)]
pub(super) struct Independent {
    /// Variance of y, for each row.
    pub var_y: Vec<f64>,
    /// Variance of x.
    pub var_x: Vec<f64>,
    /// Covariance of x and y.
    pub cov_xy: Vec<f64>,
    pub(super) slope: f64,
    /// 1/√Wii at the slope.
    pub(super) root_weight: Vec<f64>,
}

impl Independent {
    pub fn new(var_x: Vec<f64>, var_y: Vec<f64>, cov_xy: Vec<f64>) -> Self {
        let root_weight = vec![0.0; var_y.len()];
        Independent { var_y, var_x, cov_xy, slope: 0.0, root_weight }
    }
}

impl NoiseForm for Independent {
    fn at_slope(&mut self, b: f64) -> Result<(), LineError> {
        self.slope = b;
        self.root_weight.copy_from_slice(&self.var_y);
        for (variance, var_x) in self.root_weight.iter_mut().zip(&self.var_x) {
            *variance += b * b * var_x;
        }
        for (variance, cov_xy) in self.root_weight.iter_mut().zip(&self.cov_xy) {
            *variance -= 2.0 * b * cov_xy;
        }
        let mut usable = true;
        for variance in &mut self.root_weight {
            let weight = 1.0 / *variance;
            usable &= *variance > 0.0 && weight > 0.0 && weight < f64::INFINITY;
            *variance = weight.sqrt();
        }
        if usable {
            return Ok(());
        }
        let without: Vec<usize> =
            (0..).zip(&self.root_weight).filter(|(_, w)| !w.is_finite()).map(|(row, _)| row).collect();
        if without.is_empty() {
            Err(LineError::OutOfRange)
        } else {
            Err(LineError::ZeroUncertainty { rows: without })
        }
    }

    fn whiten(&self, column: &mut [f64]) {
        for (value, weight) in column.iter_mut().zip(&self.root_weight) {
            *value *= weight;
        }
    }

    fn weigh(&self, whitened: &[f64], e: &mut [f64]) {
        for ((e, value), weight) in e.iter_mut().zip(whitened).zip(&self.root_weight) {
            *e = value * weight;
        }
    }

    fn errors_in_x(&self, e: &[f64], errors: &mut [f64], mirrored: &mut [f64]) -> f64 {
        errors.fill(0.0);
        let mut in_x = 0.0;
        for ((error, e), var_x) in errors.iter_mut().zip(e).zip(&self.var_x) {
            *error = -self.slope * var_x * e;
            in_x += e * e * var_x;
        }
        for ((error, e), cov_xy) in errors.iter_mut().zip(e).zip(&self.cov_xy) {
            *error += cov_xy * e;
        }
        mirrored.copy_from_slice(errors);
        in_x
    }

    fn information(&self) -> Vec<f64> {
        self.weights()
    }

    fn weights(&self) -> Vec<f64> {
        self.root_weight.iter().map(|root| root * root).collect()
    }
}

/// A full covariance matrix over all x and y.
#[derive(Debug, Clone)]
pub(super) struct JointNoise {
    pub yy: DMatrix<f64>,
    /// Covariance of x; `None` where x is exact.
    pub xx: Option<DMatrix<f64>>,
    /// Covariance of `x_i` (row) with `y_j` (column); `None` for zeros.
    pub xy: Option<DMatrix<f64>>,
    slope: f64,
    factor: Option<Cholesky<f64, Dyn>>,
}

impl JointNoise {
    pub fn new(xx: Option<DMatrix<f64>>, yy: DMatrix<f64>, xy: Option<DMatrix<f64>>) -> Self {
        JointNoise { yy, xx, xy, slope: 0.0, factor: None }
    }

    fn lower(&self) -> Option<&DMatrix<f64>> {
        self.factor.as_ref().map(Cholesky::l_dirty)
    }
}

impl NoiseForm for JointNoise {
    fn at_slope(&mut self, b: f64) -> Result<(), LineError> {
        self.slope = b;
        let depends_on_slope = self.xx.is_some() || self.xy.is_some();
        if self.factor.is_some() && !depends_on_slope {
            return Ok(());
        }
        let mut w = self.yy.clone();
        if let Some(xx) = &self.xx {
            w += xx * (b * b);
        }
        if let Some(xy) = &self.xy {
            w -= (xy + xy.transpose()) * b;
        }
        let factor = Cholesky::new(w.clone());
        self.factor = Some(factor.ok_or_else(|| not_positive(w))?);
        Ok(())
    }

    fn whiten(&self, column: &mut [f64]) {
        let Some(l) = self.lower() else { return };
        for j in 0..l.nrows().min(column.len()) {
            let (head, tail) = column.split_at_mut(j + 1);
            head[j] /= l[(j, j)];
            for (value, below) in tail.iter_mut().zip(l.column(j).iter().skip(j + 1)) {
                *value -= below * head[j];
            }
        }
    }

    fn weigh(&self, whitened: &[f64], e: &mut [f64]) {
        let Some(l) = self.lower() else { return };
        for j in (0..l.nrows()).rev() {
            let known: f64 = l.column(j).iter().zip(e.iter()).skip(j + 1).map(|(below, e)| below * e).sum();
            e[j] = (whitened[j] - known) / l[(j, j)];
        }
    }

    fn errors_in_x(&self, e: &[f64], errors: &mut [f64], mirrored: &mut [f64]) -> f64 {
        errors.fill(0.0);
        mirrored.fill(0.0);
        let e = DVector::from_column_slice(e);
        let mut in_x = 0.0;
        if let Some(xx) = &self.xx {
            let spread = xx * &e;
            in_x = e.dot(&spread);
            for (i, value) in spread.iter().enumerate() {
                errors[i] -= self.slope * value;
                mirrored[i] -= self.slope * value;
            }
        }
        if let Some(xy) = &self.xy {
            errors.iter_mut().zip((xy * &e).iter()).for_each(|(error, value)| *error += value);
            mirrored.iter_mut().zip((xy.tr_mul(&e)).iter()).for_each(|(error, value)| *error += value);
        }
        in_x
    }

    fn information(&self) -> Vec<f64> {
        self.factor
            .as_ref()
            .map_or_else(Vec::new, |factor| factor.inverse().diagonal().iter().copied().collect())
    }

    fn weights(&self) -> Vec<f64> {
        let Some(l) = self.lower() else { return vec![] };
        let variance = |i: usize| l.row(i).iter().take(i + 1).map(|value| value * value).sum::<f64>();
        (0..l.nrows()).map(|i| 1.0 / variance(i)).collect()
    }
}

/// Names the rows of a matrix that is not positive definite: those with a large part in the eigenvector of the
/// least eigenvalue of its correlation form. Rows at or beyond the number of readings belong to y and are folded back.
pub(super) fn not_positive(matrix: DMatrix<f64>) -> LineError {
    let zero: Vec<usize> =
        (0..).zip(matrix.diagonal().iter()).filter(|(_, value)| **value == 0.0).map(|(row, _)| row).collect();
    if !zero.is_empty() {
        return LineError::ZeroUncertainty { rows: zero };
    }
    if matrix.iter().any(|value| !value.is_finite()) {
        return LineError::OutOfRange;
    }
    LineError::Indefinite { rows: least_direction(correlation(matrix)) }
}

/// A covariance matrix with its rows and columns divided by the standard deviations.
pub(super) fn correlation(mut matrix: DMatrix<f64>) -> DMatrix<f64> {
    let roots: Vec<f64> = matrix.diagonal().iter().map(|value| value.abs().sqrt()).collect();
    for ((i, j), root) in (0..roots.len())
        .flat_map(|j| (0..roots.len()).map(move |i| (i, j)))
        .zip(roots.iter().flat_map(|a| roots.iter().map(move |b| a * b)))
    {
        if root > 0.0 {
            matrix[(i, j)] /= root;
        }
    }
    matrix
}

/// Names the rows of a matrix that is not positive definite: those with a large part in the direction in which it has
/// no positive variance. Cholesky's triangle is built until a pivot fails, or else to its least pivot; the direction is
/// what that row is against the best mixture of those before it.
pub(super) fn least_direction(matrix: DMatrix<f64>) -> Vec<usize> {
    /// A row with less than this share of the largest part is not named.
    const NAMED: f64 = 0.1;
    let mut l = matrix;
    let (mut least, mut row) = (f64::INFINITY, 0);
    for k in 0..l.nrows() {
        for j in 0..k {
            let known: f64 = (0..j).map(|m| l[(k, m)] * l[(j, m)]).sum();
            l[(k, j)] = (l[(k, j)] - known) / l[(j, j)];
        }
        let pivot = l[(k, k)] - (0..k).map(|m| l[(k, m)] * l[(k, m)]).sum::<f64>();
        if pivot < least {
            (least, row) = (pivot, k);
        }
        if pivot <= 0.0 {
            break;
        }
        l[(k, k)] = pivot.sqrt();
    }
    let mut direction = vec![0.0; row];
    for j in (0..row).rev() {
        let known: f64 = (j + 1..row).map(|m| l[(m, j)] * direction[m]).sum();
        direction[j] = -(l[(row, j)] + known) / l[(j, j)];
    }
    direction.push(1.0);
    let largest = direction.iter().fold(0.0, |largest: f64, part| largest.max(part.abs()));
    (0..).zip(direction).filter(|(_, part)| part.abs() > NAMED * largest).map(|(row, _)| row).collect()
}
