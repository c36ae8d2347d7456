//! The fitted line in the units of the readings.

use super::{
    error::LineError,
    input::{Data, FreeColumn, Noise},
    pair::DoubleDouble,
    problem::CentredColumn,
    profile::Profile,
    search::LeastChiSquare,
};

/// A row whose information is taken up by the fit to this share has no residual of its own.
const TAKEN: f64 = 1e-10;

/// A fitted line y = intercept + slope · x and what is known of it.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Fit {
    /// The line at x = 0.
    pub intercept: f64,
    /// Change of y for one unit of x.
    pub slope: f64,
    /// Uncertainties of the line: from what was stated, or from the scatter where nothing was.
    /// `None` if nothing was stated and no row is left over to judge the scatter by.
    pub uncertainty: Option<Uncertainty>,
    /// Least χ². Where no uncertainty was stated it is the sum of squared residuals, in squared units of y.
    pub chi_square: f64,
    /// ν: rows less the intercept, the slope and the free columns.
    pub degrees_of_freedom: usize,
    /// Whether uncertainties were stated; if not, they come from the scatter.
    pub stated: bool,
    /// Row by row, in the order given.
    pub rows: Vec<RowFit>,
    /// Each shared error as the rows tell it, in units of its stated standard deviation (which gives 0 ± 1 before).
    pub shared: Vec<FittedValue>,
    /// Each free column's unknown.
    pub free: Vec<FittedValue>,
    /// Where line and slope are uncorrelated: the line is best known here.
    pub centre: f64,
    /// The line at [`centre`](Fit::centre).
    pub at_centre: f64,
}

/// Standard uncertainties of a line.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Uncertainty {
    /// Of the intercept.
    pub intercept: f64,
    /// Of the slope.
    pub slope: f64,
    /// Covariance of intercept and slope.
    pub covariance: f64,
    /// x at which line and slope are uncorrelated.
    pub centre: f64,
    /// Of the line at the centre.
    pub at_centre: f64,
}

/// A fitted value beside the line.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct FittedValue {
    /// The value.
    pub value: f64,
    /// Its standard uncertainty; `None` as in [`Fit::uncertainty`].
    pub u: Option<f64>,
    /// Its covariance with the slope.
    pub covariance_with_slope: Option<f64>,
}

/// One row against the line.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct RowFit {
    /// The true position as the fit has it.
    pub true_x: f64,
    /// y less the line at the x given, less the free columns; in units of y.
    pub residual: f64,
    /// Residual in units of its own standard deviation, with the errors of the other rows and the leverage allowed
    /// for (W. Baarda's w; the internally studentised residual where rows are independent).
    /// `None` where the row has no residual of its own, or nothing was stated and there is no scatter.
    pub normalised: Option<f64>,
    /// The share, 0 … 1, of the row's own information that the line takes up.
    pub leverage: f64,
    /// The share, 0 … 1, of the row's own errors in the degrees of freedom: W. Baarda's redundancy number. Together with
    /// 1 − u² of each shared error they add up to ν.
    pub redundancy: f64,
    /// By how much the slope grows for one unit of this row's y, at the weights of the fit; for one unit of its x it
    /// falls by the slope times as much. The slope's variance is the sum of these squared times the row's variance,
    /// plus the squared covariances of the slope with each shared error.
    pub influence: f64,
}

impl Fit {
    /// The line at `x`.
    pub fn at(&self, x: f64) -> f64 {
        self.at_centre + self.slope * (x - self.centre)
    }

    /// Standard uncertainty of the line at `x`.
    pub fn band(&self, x: f64) -> Option<f64> {
        Some(self.uncertainty?.at(x))
    }

    /// s = √(χ²/ν). With uncertainties stated it is the Birge ratio, near 1 where they fit the scatter (R. T. Birge,
    /// Phys. Rev. 40 (1932) 207); else the standard deviation of y about the line. `None` for ν = 0.
    pub fn scatter(&self) -> Option<f64> {
        (self.degrees_of_freedom > 0).then(|| (self.chi_square / self.degrees_of_freedom as f64).sqrt())
    }
}

impl Uncertainty {
    /// Standard uncertainty of the line at `x`.
    pub fn at(&self, x: f64) -> f64 {
        libm::hypot(self.at_centre, (x - self.centre) * self.slope)
    }

    /// All standard uncertainties times `factor`.
    #[must_use]
    pub fn times(&self, factor: f64) -> Uncertainty {
        Uncertainty {
            intercept: self.intercept * factor,
            slope: self.slope * factor,
            covariance: self.covariance * factor * factor,
            at_centre: self.at_centre * factor,
            centre: self.centre,
        }
    }
}

/// By how much v = f/b comes out too large in the mean because b is uncertain: v·(u(b)/b)², the second-order term of
/// the series of 1/b (GUM 5.1.2, note). In the units of v.
pub fn bias_of_reciprocal(v: f64, slope: f64, u_slope: f64) -> f64 {
    let relative = u_slope / slope;
    v * relative * relative
}

/// Brings the state of `profile` at the least χ² back to the units of the readings.
pub(super) fn assemble(data: &Data, profile: &Profile<'_>, least: &LeastChiSquare) -> Result<Fit, LineError> {
    let Profile { problem, basis, .. } = profile;
    let frame = problem.frame;
    let y_per_x = frame.y_scale / frame.x_scale;
    let slope = least.slope.value() * y_per_x;
    let degrees_of_freedom = data.x.len() - 2 - data.free.len();
    let stated = data.noise != Noise::Unstated;
    let least_chi_square = least.point.chi_square;
    let chi_square = match (degrees_of_freedom, stated) {
        (0, _) => 0.0,
        (_, true) => least_chi_square,
        (_, false) => least_chi_square * frame.y_scale * frame.y_scale,
    };
    // What one unit of whitened residual is worth: 1 as stated, or as the scatter has it.
    let unit = match (stated, degrees_of_freedom) {
        (true, _) => Some(1.0),
        (false, 0) => None,
        (false, nu) => Some((least_chi_square / nu as f64).sqrt()),
    };
    let own = basis.r(basis.len() - 1, basis.len() - 1);
    let (lean, across) = level(profile, least.point.slope);
    let u_slope = y_per_x / own;
    let centre = frame.x_origin + frame.x_scale * lean;
    let at_centre = frame.y_scale * across;
    let uncertainty = Uncertainty {
        intercept: libm::hypot(at_centre, centre * u_slope),
        slope: u_slope,
        covariance: -centre * u_slope * u_slope,
        centre,
        at_centre,
    };
    if slope == 0.0
        && let Some(column) = data.free.iter().position(FreeColumn::is_in_x)
    {
        // Along a level line a step in x shows nothing.
        return Err(LineError::UndeterminedColumn { column });
    }
    let free = free_estimates(data, profile, slope, unit);
    let to_centre = least.slope * (DoubleDouble::from(frame.x_origin / frame.x_scale) + lean.into());
    let fit = Fit {
        intercept: frame.y_scale * least.intercept.value(),
        slope,
        uncertainty: unit.map(|unit| uncertainty.times(unit)),
        chi_square,
        degrees_of_freedom,
        stated,
        rows: rows(data, profile, least.point.slope, unit, &free),
        shared: (0..problem.shared.len())
            .map(|k| {
                let row = basis.inverse_row(k);
                estimate(profile.unknowns[k], &row, u_slope, unit)
            })
            .collect(),
        free,
        centre,
        at_centre: frame.y_scale * (least.intercept + to_centre).value(),
    };
    if fit.is_finite() { Ok(fit) } else { Err(LineError::OutOfRange) }
}

/// Where line and slope are uncorrelated, counted from the origin of x, and the standard uncertainty of the line there;
/// both in scaled units. The columns beside the line are counted from their origins, which belong to the line.
fn level(profile: &Profile<'_>, slope: f64) -> (f64, f64) {
    let Profile { problem, basis, unknowns, .. } = profile;
    let constant = basis.len() - 2;
    let own = basis.r(constant, constant);
    if problem.shared.is_empty() && problem.free.is_empty() {
        return (basis.r(constant, constant + 1) / own, 1.0 / own);
    }
    let mut row = basis.inverse_row(constant);
    let shared = problem.shared.iter().map(|shared| shared.origin(slope));
    let origins = shared.chain(problem.free.iter().map(|free| free.origin));
    for (place, origin) in origins.enumerate().filter(|(_, origin)| *origin != 0.0) {
        for (entry, part) in row.iter_mut().zip(basis.inverse_row(place)) {
            *entry -= origin * part;
        }
    }
    // Its last entry pairs with the slope's own.
    let with_slope = row[constant + 1] * basis.r(constant + 1, constant + 1);
    row.truncate(constant + 1);
    let shift: f64 = problem.shared.iter().zip(unknowns).map(|(shared, z)| shared.x.origin * z).sum();
    (-with_slope - shift, row.iter().map(|entry| entry * entry).sum::<f64>().sqrt())
}

impl Fit {
    fn is_finite(&self) -> bool {
        let line = [self.intercept, self.slope, self.chi_square, self.centre, self.at_centre];
        let spread = self.uncertainty.map_or([0.0; 3], |u| [u.intercept, u.slope, u.covariance]);
        let beside = self.shared.iter().chain(&self.free).map(|estimate| estimate.value);
        let rows = self.rows.iter().map(|row| row.true_x + row.residual);
        line.into_iter().chain(spread).chain(beside).chain(rows).all(f64::is_finite)
    }
}

/// An estimate from its row of R⁻¹, whose last entry pairs with the slope's own.
fn estimate(value: f64, row: &[f64], u_slope: f64, unit: Option<f64>) -> FittedValue {
    let variance: f64 = row.iter().map(|entry| entry * entry).sum();
    let with_slope = row[row.len() - 1] * u_slope;
    FittedValue {
        value,
        u: unit.map(|unit| variance.sqrt() * unit),
        covariance_with_slope: unit.map(|unit| with_slope * unit * unit),
    }
}

fn free_estimates(data: &Data, profile: &Profile<'_>, slope: f64, unit: Option<f64>) -> Vec<FittedValue> {
    let Profile { problem, basis, .. } = profile;
    let frame = problem.frame;
    let u_slope = frame.y_scale / frame.x_scale / basis.r(basis.len() - 1, basis.len() - 1);
    let first = problem.shared.len();
    let places = data.free.iter().zip(&problem.free).zip(&profile.unknowns[first..]).zip(first..);
    places
        .map(|(((column, free), effect), place)| {
            let scale = frame.y_scale / free.unit;
            let in_y = effect * scale;
            let mut row: Vec<f64> = basis.inverse_row(place).iter().map(|entry| entry * scale).collect();
            match column {
                FreeColumn::InY(_) => estimate(in_y, &row, u_slope, unit),
                FreeColumn::InX(_) => {
                    // A step in x shows as −slope times itself in y.
                    let value = -in_y / slope;
                    if let Some(last) = row.last_mut() {
                        *last += value * u_slope;
                    }
                    for entry in &mut row {
                        *entry /= -slope;
                    }
                    estimate(value, &row, u_slope, unit)
                }
            }
        })
        .collect()
}

fn rows(
    data: &Data,
    profile: &Profile<'_>,
    slope: f64,
    unit: Option<f64>,
    free: &[FittedValue],
) -> Vec<RowFit> {
    let problem = profile.problem;
    let frame = problem.frame;
    let n_shared = problem.shared.len();
    let (errors, beside) = profile.unknowns.split_at(n_shared);
    let moved = |origin: &dyn Fn(&CentredColumn) -> f64| -> f64 {
        problem.shared.iter().zip(errors).map(|(shared, z)| origin(shared) * z).sum()
    };
    let alpha = beside[beside.len() - 1] - moved(&|shared| shared.origin(slope));
    let shift = moved(&|shared| shared.x.origin);
    let (own, left) = information(profile, slope);
    let influence = influence(profile, frame.x_scale);
    let weights = profile.noise.weights();
    (0..problem.x.len())
        .map(|i| {
            let mut position = frame.x_origin + frame.x_scale * (profile.positions[i] - shift);
            let mut residual = problem.y[i] - slope * problem.x[i] - alpha;
            for (k, column) in data.free.iter().enumerate() {
                residual -= beside[k] * problem.free[k].effect[i];
                if let FreeColumn::InX(entries) = column {
                    position -= free[k].value * entries[i];
                }
            }
            let normalised = unit
                .filter(|unit| *unit > 0.0 && left[i] > TAKEN * own[i])
                .map(|unit| profile.e[i] / left[i].sqrt() / unit);
            let leverage = (1.0 - left[i] / own[i]).clamp(0.0, 1.0);
            RowFit {
                true_x: position,
                residual: residual * frame.y_scale,
                normalised,
                leverage,
                redundancy: (left[i] / weights[i]).clamp(0.0, 1.0),
                influence: influence[i],
            }
        })
        .collect()
}

/// Change of the slope for one unit of each y: the slope's own direction in the basis, brought back from the
/// whitened space.
fn influence(profile: &Profile<'_>, x_scale: f64) -> Vec<f64> {
    let slope = profile.basis.len() - 1;
    let mut weighed = vec![0.0; profile.e.len()];
    if let Some(direction) = profile.basis.columns().last() {
        profile.noise.weigh(direction, &mut weighed);
    }
    let length = profile.basis.r(slope, slope) * x_scale;
    weighed.iter().map(|value| value / length).collect()
}

/// The diagonals of V⁻¹, what each row tells by itself, and of the covariance of e = W⁻¹ r, which is V⁻¹ less what the
/// fit takes up. V is W with the shared errors.
fn information(profile: &Profile<'_>, slope: f64) -> (Vec<f64>, Vec<f64>) {
    let mut own = profile.noise.information();
    let mut weighed = vec![0.0; own.len()];
    let mut less = |column: &[f64], from: &mut [f64]| {
        profile.noise.weigh(column, &mut weighed);
        from.iter_mut().zip(&weighed).for_each(|(left, value)| *left -= value * value);
    };
    let mut left = own.clone();
    profile.basis.columns().for_each(|column| less(column, &mut left));
    let whole = profile.whole_errors(slope);
    let errors = whole.as_ref().unwrap_or(&profile.basis).columns();
    errors.take(profile.problem.shared.len()).for_each(|column| less(column, &mut own));
    (own, left)
}
