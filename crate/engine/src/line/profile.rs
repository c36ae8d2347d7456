//! χ² as a function of the slope alone.
//!
//! For a given slope b the model y = a + b ξ + Σ free + Σ shared is linear in everything else, so the intercept,
//! the free columns and the shared errors z (with their unit prior) follow from one small orthogonalisation.
//! What is left is a function of b, whose first and second derivatives are exact:
//!
//! ½ dχ²/db = −eᵀ ξ̂, with e = W⁻¹ r, r = y − a − b x − …, and the adjusted positions ξ̂ = x − x-effects of z − Q e;
//! ½ d²χ²/db² = tᵀ W⁻¹ t − eᵀ Vxx e − (what the other unknowns take up), with t = ξ̂ − Qᵀ e.
//!
//! Symbols: W, Q, Vxx as in [`noise`](super::noise); C(b) = `c_y` − b `c_x` is the effect of one standard deviation
//! of a shared error on r. Columns stand in the order: shared, free, constant, slope.

use super::{
    basis::{OrthonormalBasis, dot},
    error::LineError,
    input::{Data, entry},
    noise::NoiseForm,
    pair::DoubleDouble,
    problem::{Centred, DISTINCT, Problem},
};

/// χ² and its derivatives at one slope.
#[derive(Debug, Clone, Copy)]
pub(super) struct ProfileValue {
    pub slope: f64,
    pub chi_square: f64,
    /// ½ dχ²/db.
    pub gradient: f64,
    /// ½ d²χ²/db².
    pub curvature: f64,
    /// tᵀW⁻¹t after the other unknowns took their part; positive.
    pub information: f64,
}

/// The work space in which χ² is evaluated.
pub(super) struct Profile<'a> {
    pub problem: &'a Problem,
    pub noise: Box<dyn NoiseForm>,
    pub basis: OrthonormalBasis,
    /// Whitened residual, then the prior rows.
    pub residual: Vec<f64>,
    /// Shared, free and constant term, in scaled units.
    pub unknowns: Vec<f64>,
    /// What rounding took from them; empty until they are found in pairs.
    pub unknowns_low: Vec<f64>,
    /// W⁻¹ r.
    pub e: Vec<f64>,
    /// Adjusted positions.
    pub positions: Vec<f64>,
    errors: Vec<f64>,
    mirrored: Vec<f64>,
    tangent: Vec<f64>,
    coordinates: Vec<f64>,
    prior_pull: Vec<f64>,
}

impl<'a> Profile<'a> {
    pub fn new(problem: &'a Problem, noise: Box<dyn NoiseForm>) -> Self {
        let n = problem.x.len();
        let rows = n + problem.shared.len();
        let others = problem.shared.len() + problem.free.len() + 1;
        Profile {
            problem,
            noise,
            basis: OrthonormalBasis::new(rows, problem.shared.len(), others + 1),
            residual: vec![0.0; rows],
            unknowns: vec![0.0; others],
            unknowns_low: vec![],
            e: vec![0.0; n],
            positions: vec![0.0; n],
            errors: vec![0.0; n],
            mirrored: vec![0.0; n],
            tangent: vec![0.0; rows],
            coordinates: vec![0.0; others],
            prior_pull: vec![0.0; others],
        }
    }

    /// Evaluates χ² at a slope; the fields then hold the state there.
    pub fn at(&mut self, slope: f64) -> Result<ProfileValue, LineError> {
        self.noise.at_slope(slope)?;
        self.lay_columns(slope)?;
        self.fit_others(slope);
        self.point(slope)
    }

    /// Forgets the level found last, which is of no use at a slope far from there.
    pub fn forget(&mut self) {
        self.unknowns.fill(0.0);
    }

    /// Evaluates χ² at a slope close to the one before, with residuals formed in pairs: no digit is lost to what the
    /// unknowns take out of the readings, however much that is.
    pub fn closely_at(&mut self, data: &Data, slope: DoubleDouble) -> Result<ProfileValue, LineError> {
        self.noise.at_slope(slope.high)?;
        self.lay_columns(slope.high)?;
        self.fit_others_closely(data, slope);
        self.point(slope.high)
    }

    /// χ² and its derivatives, from the residual left by the other unknowns.
    fn point(&mut self, slope: f64) -> Result<ProfileValue, LineError> {
        let n = self.problem.x.len();
        self.noise.weigh(&self.residual[..n], &mut self.e);
        let in_x = self.adjust_positions();
        let taken = self.project_tangent()?;
        let information = taken.information;
        let along = dot(&self.residual, &self.tangent);
        let gradient = -(along + dot(&self.e, &self.mirrored));
        let point = ProfileValue {
            slope,
            chi_square: dot(&self.residual, &self.residual),
            gradient,
            curvature: information - in_x - taken.bending,
            information,
        };
        let finite = [point.chi_square, gradient, point.curvature].iter().all(|value| value.is_finite());
        if finite { Ok(point) } else { Err(LineError::OutOfRange) }
    }

    /// Adds the slope's own column at the adjusted positions, which completes R: its last two columns then give
    /// the covariance of the line (Gauss–Newton, as ISO/TS 28037 and York et al. 2004 define it).
    pub fn complete(&mut self) -> Result<(), LineError> {
        let Profile { basis, noise, positions, .. } = self;
        let distinct = basis.add(|column| {
            column[..positions.len()].copy_from_slice(positions);
            noise.whiten(&mut column[..positions.len()]);
        });
        if distinct > DISTINCT { Ok(()) } else { Err(LineError::UndeterminedSlope) }
    }

    /// The intercept in scaled units, at a slope and the other unknowns as they stand, and the largest of the terms
    /// that it is the sum of: the constant, less what the slope and the columns beside the line amount to between
    /// their origins and zero.
    pub fn intercept(&self, slope: DoubleDouble) -> (DoubleDouble, f64) {
        let frame = &self.problem.frame;
        let (high, low) = (&self.unknowns, &self.unknowns_low);
        let unknown = |k: usize| DoubleDouble { high: high[k], low: entry(low, k) };
        let level = DoubleDouble::from(frame.y_origin / frame.y_scale);
        let run = slope * (frame.x_origin / frame.x_scale).into();
        let mut sum = level + unknown(high.len() - 1) - run;
        let mut largest = level.high.abs().max(run.high.abs());
        let mut take = |step: DoubleDouble| {
            sum = sum - step;
            largest = largest.max(step.high.abs());
        };
        for (k, shared) in self.problem.shared.iter().enumerate() {
            take(unknown(k) * (DoubleDouble::from(shared.y.origin) - slope * shared.x.origin.into()));
        }
        for (k, free) in (self.problem.shared.len()..).zip(&self.problem.free) {
            take(unknown(k) * free.origin.into());
        }
        (sum, largest)
    }

    /// The effects of the shared errors with what they do to all rows alike; `None` where those on the basis are whole.
    pub fn whole_errors(&self, slope: f64) -> Option<OrthonormalBasis> {
        let Profile { problem, noise, .. } = self;
        if problem.shared.iter().all(|shared| shared.origin(slope) == 0.0) {
            return None;
        }
        let (n, count) = (problem.x.len(), problem.shared.len());
        let mut errors = OrthonormalBasis::new(n + count, 0, count);
        for (k, shared) in problem.shared.iter().enumerate() {
            errors.add(|column| {
                shared.write_effect(slope, &mut column[..n]);
                column[..n].iter_mut().for_each(|effect| *effect += shared.origin(slope));
                noise.whiten(&mut column[..n]);
                column[n + k] = 1.0;
            });
        }
        Some(errors)
    }

    fn lay_columns(&mut self, slope: f64) -> Result<(), LineError> {
        let Profile { problem, noise, basis, .. } = self;
        let n = problem.x.len();
        basis.clear();
        for (k, shared) in problem.shared.iter().enumerate() {
            basis.add(|column| {
                shared.write_effect(slope, &mut column[..n]);
                noise.whiten(&mut column[..n]);
                column[n + k] = 1.0;
            });
        }
        for (k, free) in problem.free.iter().enumerate() {
            let distinct = basis.add(|column| {
                column[..n].copy_from_slice(&free.effect);
                noise.whiten(&mut column[..n]);
            });
            if distinct <= DISTINCT {
                return Err(LineError::UndeterminedColumn { column: k });
            }
        }
        let distinct = basis.add(|column| {
            column[..n].fill(1.0);
            noise.whiten(&mut column[..n]);
        });
        match problem.free.len().checked_sub(1) {
            Some(column) if distinct <= DISTINCT => Err(LineError::UndeterminedColumn { column }),
            _ => Ok(()),
        }
    }

    fn fit_others(&mut self, slope: f64) {
        let n = self.problem.x.len();
        // Counting from the level found last keeps the residual small, and with it its rounding.
        let constant = self.unknowns.len() - 1;
        let level = self.unknowns[constant];
        for ((r, x), y) in self.residual.iter_mut().zip(&self.problem.x).zip(&self.problem.y) {
            *r = y - slope * x - level;
        }
        self.residual[n..].fill(0.0);
        self.noise.whiten(&mut self.residual[..n]);
        self.basis.project(&mut self.residual, &mut self.unknowns);
        self.basis.solve(&mut self.unknowns);
        self.unknowns[constant] += level;
    }

    /// As [`fit_others`](Self::fit_others), counting from all the unknowns found last.
    fn fit_others_closely(&mut self, data: &Data, slope: DoubleDouble) {
        let Profile { problem, residual, unknowns, unknowns_low, .. } = self;
        let (n, frame) = (data.x.len(), &problem.frame);
        unknowns_low.resize(unknowns.len(), 0.0);
        let known: Vec<DoubleDouble> = unknowns
            .iter()
            .zip(&*unknowns_low)
            .map(|(high, low)| DoubleDouble { high: *high, low: *low })
            .collect();
        let (shared, others) = known.split_at(problem.shared.len());
        for (i, r) in residual[..n].iter_mut().enumerate() {
            let mut position = frame.x_closely(data.x[i]);
            let mut left = frame.y_closely(data.y[i]);
            for ((column, centred), z) in data.shared().iter().zip(&problem.shared).zip(shared) {
                let effect = |list: &[f64], centred: &Centred| {
                    if list.is_empty() { DoubleDouble::default() } else { *z * centred.closely(list[i]) }
                };
                position = position - effect(&column.x, &centred.x);
                left = left - effect(&column.y, &centred.y);
            }
            for ((column, free), unknown) in data.free.iter().zip(&problem.free).zip(others) {
                left = left - *unknown * free.closely(column.entries()[i]);
            }
            *r = (left - others[others.len() - 1] - slope * position).value();
        }
        for (r, z) in residual[n..].iter_mut().zip(shared) {
            *r = -z.value();
        }
        self.noise.whiten(&mut self.residual[..n]);
        self.basis.project(&mut self.residual, &mut self.unknowns);
        self.basis.solve(&mut self.unknowns);
        for ((high, low), known) in self.unknowns.iter_mut().zip(&mut self.unknowns_low).zip(known) {
            let sum = known + DoubleDouble::from(*high);
            (*high, *low) = (sum.high, sum.low);
        }
    }

    fn adjust_positions(&mut self) -> f64 {
        let in_x = self.noise.errors_in_x(&self.e, &mut self.errors, &mut self.mirrored);
        for ((position, x), error) in self.positions.iter_mut().zip(&self.problem.x).zip(&self.errors) {
            *position = x - error;
        }
        self.prior_pull.fill(0.0);
        for (k, shared) in self.problem.shared.iter().enumerate() {
            for (position, effect) in self.positions.iter_mut().zip(&shared.x.effect) {
                *position -= effect * self.unknowns[k];
            }
            if !shared.x.effect.is_empty() {
                self.prior_pull[k] = dot(&self.e, &shared.x.effect);
            }
        }
        in_x
    }

    fn project_tangent(&mut self) -> Result<SlopeInformation, LineError> {
        let n = self.problem.x.len();
        for ((t, position), mirrored) in self.tangent.iter_mut().zip(&self.positions).zip(&self.mirrored) {
            *t = position - mirrored;
        }
        self.tangent[n..].fill(0.0);
        self.noise.whiten(&mut self.tangent[..n]);
        let projected = self.basis.project(&mut self.tangent, &mut self.coordinates);
        if projected.share <= DISTINCT {
            return Err(LineError::UndeterminedSlope);
        }
        let information = projected.left;
        if self.problem.shared.iter().all(|shared| shared.x.effect.is_empty()) {
            return Ok(SlopeInformation { information, bending: 0.0 });
        }
        self.basis.solve_transposed(&mut self.prior_pull);
        let v = &self.prior_pull;
        Ok(SlopeInformation { information, bending: 2.0 * dot(&self.coordinates, v) + dot(v, v) })
    }
}

/// What of the tangent is left for the slope, and what a slope-dependent shared effect adds.
struct SlopeInformation {
    information: f64,
    bending: f64,
}
