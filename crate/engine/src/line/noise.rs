//! The rows' own noise as the fit sees it: what whitens a column of y-effects at a given slope b, and what the residuals
//! then say about the errors in x. Where each row varies by itself this is a list; where some were stated to vary together,
//! a matrix. All above it, shared errors among them, is one and the same.
//!
//! W(b) = Vyy + b² Vxx − b (Vxy + Vyx) is the covariance of y − a − b x (ISO/TS 28037:2010, clauses 7 and 10).
//! Everything here is in the scaled units of [`Problem`](super::problem::Problem).

use super::{basis::dot, error::LineError, triangle::Triangle};

/// What the fit asks of a noise form. Methods after [`at_slope`](NoiseForm::at_slope) hold for that slope.
pub(super) trait NoiseForm {
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
    /// Whether W hangs on the slope.
    fn leans(&self) -> bool;
    /// The diagonals of Vxx and Vxy; empty lists stand for zeros.
    fn in_x(&self) -> [Vec<f64>; 2];
    /// The diagonal of L⁻¹ where it has nothing beside it; else none.
    fn root_weights(&self) -> &[f64];
    /// The rows of L⁻¹, each up to the diagonal, where it is more than its diagonal; else none.
    fn inverse_root(&self) -> Vec<Vec<f64>>;
    /// The same again.
    fn boxed(&self) -> Box<dyn NoiseForm>;
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

    fn leans(&self) -> bool {
        self.var_x.iter().chain(&self.cov_xy).any(|value| *value != 0.0)
    }

    fn in_x(&self) -> [Vec<f64>; 2] {
        [self.var_x.clone(), self.cov_xy.clone()]
    }

    fn root_weights(&self) -> &[f64] {
        &self.root_weight
    }

    fn inverse_root(&self) -> Vec<Vec<f64>> {
        vec![]
    }

    fn boxed(&self) -> Box<dyn NoiseForm> {
        Box::new(self.clone())
    }
}

/// Some rows vary together: W is a full matrix.
#[derive(Debug, Clone)]
pub(super) struct JointNoise {
    n: usize,
    yy: Vec<f64>,
    /// Covariance of x; empty where x is exact.
    xx: Vec<f64>,
    /// Covariance of `x_i` (row) with `y_j` (column); empty for zeros.
    xy: Vec<f64>,
    slope: f64,
    triangle: Option<Triangle>,
}

impl JointNoise {
    /// From blocks of n × n, row after row; an empty one stands for zeros.
    pub fn new(xx: Vec<f64>, mut yy: Vec<f64>, xy: Vec<f64>, n: usize) -> Self {
        yy.resize(n * n, 0.0);
        JointNoise { n, yy, xx, xy, slope: 0.0, triangle: None }
    }

    /// The covariance matrix of y − a − b x.
    pub fn at(&self, b: f64) -> Vec<f64> {
        let mut w = self.yy.clone();
        for (w, xx) in w.iter_mut().zip(&self.xx) {
            *w += b * b * xx;
        }
        if !self.xy.is_empty() {
            for (place, w) in w.iter_mut().enumerate() {
                let mirrored = place % self.n * self.n + place / self.n;
                *w -= b * (self.xy[place] + self.xy[mirrored]);
            }
        }
        w
    }
}

impl NoiseForm for JointNoise {
    fn at_slope(&mut self, b: f64) -> Result<(), LineError> {
        self.slope = b;
        if self.triangle.is_some() && !self.leans() {
            return Ok(());
        }
        let w = self.at(b);
        if w.iter().any(|value| !value.is_finite()) {
            return Err(LineError::OutOfRange);
        }
        let triangle = Triangle::of(w, self.n);
        if let Some(rows) = triangle.indefinite() {
            return Err(LineError::Indefinite { rows });
        }
        if let Some(rows) = triangle.singular() {
            return Err(LineError::Singular { rows });
        }
        self.triangle = Some(triangle);
        Ok(())
    }

    fn whiten(&self, column: &mut [f64]) {
        if let Some(triangle) = &self.triangle {
            triangle.whiten(column);
        }
    }

    fn weigh(&self, whitened: &[f64], e: &mut [f64]) {
        if let Some(triangle) = &self.triangle {
            triangle.weigh(whitened, e);
        }
    }

    fn errors_in_x(&self, e: &[f64], errors: &mut [f64], mirrored: &mut [f64]) -> f64 {
        errors.fill(0.0);
        mirrored.fill(0.0);
        let mut in_x = 0.0;
        for (i, row) in self.xx.chunks_exact(self.n).enumerate() {
            let spread = dot(row, e);
            in_x += e[i] * spread;
            errors[i] -= self.slope * spread;
            mirrored[i] -= self.slope * spread;
        }
        for (i, row) in self.xy.chunks_exact(self.n).enumerate() {
            errors[i] += dot(row, e);
            for (mirrored, cov_xy) in mirrored.iter_mut().zip(row) {
                *mirrored += cov_xy * e[i];
            }
        }
        in_x
    }

    fn information(&self) -> Vec<f64> {
        let mut sums = vec![0.0; self.n];
        for row in self.inverse_root() {
            for (sum, value) in sums.iter_mut().zip(row) {
                *sum += value * value;
            }
        }
        sums
    }

    fn weights(&self) -> Vec<f64> {
        self.triangle.iter().flat_map(Triangle::variances).map(|variance| 1.0 / variance).collect()
    }

    fn leans(&self) -> bool {
        !(self.xx.is_empty() && self.xy.is_empty())
    }

    fn in_x(&self) -> [Vec<f64>; 2] {
        [&self.xx, &self.xy].map(|block| block.iter().step_by(self.n + 1).copied().collect())
    }

    fn root_weights(&self) -> &[f64] {
        &[]
    }

    fn inverse_root(&self) -> Vec<Vec<f64>> {
        self.triangle.as_ref().map_or(vec![], Triangle::inverse)
    }

    fn boxed(&self) -> Box<dyn NoiseForm> {
        Box::new(self.clone())
    }
}
