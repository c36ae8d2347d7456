//! The slope of a line whose readings are redrawn again and again, for Monte Carlo: the noise model stays, only the
//! readings change, so all that hangs on the noise is worked out once (see [`nodes`](super::nodes)).
//!
//! [`Refit::slope`] gives the slope that [`fit`](super::fit()) would, within 10⁻⁷ of its standard uncertainty. That bound
//! is not proved but measured: the quick way is tried out against the engine's own gradient when it is made, and refused
//! if it is off. A trial it was not made for goes to [`fit`](super::fit()) itself: a slope more than four standard
//! uncertainties from the nominal one, χ² so bent that there may be a second valley, readings all but at one place.
//! Where the nominal line leads far enough before any other valley,
//! the engine looks at its own valley alone: √χ² of a slope is a distance of the readings from a set in units of their
//! uncertainties, so errors move the lead by more than t with a probability of at most 2 exp(−t²/8) (Gaussian
//! concentration of a function of Lipschitz constant 2: Boucheron, Lugosi and Massart, Concentration Inequalities, 2013,
//! theorem 5.6; from memory).
//!
//! Trials run side by side, each in a lane of its own. No lane's sums hang on another's and nothing is added in
//! another order, so one trial gives the same bits alone, in any lane, natively and in a browser.

use super::{
    chebyshev::cosine,
    input::{Data, Noise, SharedColumn},
    nodes::{LeastOfEach, MOST_COEFFICIENTS, Nodes, Resolution, RowLanes},
    noise::{Independent, NoiseForm},
    problem::{Problem, ScaledFrame},
    profile::Profile,
    result::Fit,
    search::Search,
    solve::{fit, fit_by, lead},
};

/// How far the slopes foreseen reach, in standard uncertainties as stated, or as the scatter has them if
/// that is more: of normal trials one in 16 000 lies beyond.
const REACH: f64 = 4.0;
/// How far an interpolated slope may be off where it is tried out, in standard uncertainties.
const CLOSE: f64 = 4e-8;
/// The last step of Newton's method, in units of the reach; the next would be less than its square.
const SETTLED: f64 = 1e-4;
/// As in the engine's search: where the curvature is off by more than this share, there may be a second valley.
const BENT: f64 = 0.1;
/// How far the nominal line leads in √χ² when hardly a trial has its least in another valley: at most 7·10⁻⁶ of normal
/// ones, by the bound above; as much more as the readings scatter more than stated.
const LEAD: f64 = 10.0;
/// Readings keep more than this share of the nominal information, or the engine looks at them.
const INFORMATION: f64 = 1e-3;

/// A line to be fitted to many sets of readings under one noise model.
#[derive(Debug, Clone)]
pub struct Refit {
    /// What the engine is asked where the quick way does not do; its readings are overwritten.
    data: Data,
    /// How it looks for the least χ² then.
    search: Search,
    quick: Option<Quick>,
    /// Work space: the rows of the trials at hand.
    rows: Vec<f64>,
}

impl Refit {
    /// Prepares for refits of `data`, whose line is `fit`. Takes as long as some tens of fits.
    ///
    /// # Example
    /// ```
    /// use slope_engine::line::{Data, Noise, Refit, fit};
    /// let data = Data { x: vec![1.0, 2.0, 3.0], y: vec![5.0, 7.0, 9.0], noise: Noise::Unstated, free: vec![] };
    /// let mut refit = Refit::new(&data, &fit(&data)?);
    /// assert!((refit.slope(&[1.0, 2.0, 3.0], &[5.0, 8.0, 11.0]) - 3.0).abs() < 1e-14);
    /// # Ok::<(), slope_engine::line::LineError>(())
    /// ```
    pub fn new(data: &Data, fit: &Fit) -> Refit {
        let leads = lead(data).is_ok_and(|lead| lead >= LEAD * excess(fit));
        let search = if leads { Search::At(fit.slope) } else { Search::Everywhere };
        Refit { data: data.clone(), search, quick: Quick::new(data, fit), rows: vec![] }
    }

    /// The slope with these readings in place of the nominal ones, row by row. NaN where [`fit`](super::fit()) gives an
    /// error, or the number of rows is another.
    pub fn slope(&mut self, x: &[f64], y: &[f64]) -> f64 {
        let [slope] = self.slopes(x.as_chunks().0, y.as_chunks().0);
        slope
    }

    /// The slopes of `L` trials at once, `x[row][trial]` and `y[row][trial]`: the same bits as one by one, and quicker.
    /// Eight are quickest. Nothing is allocated after the first call, unless the engine is asked.
    pub fn slopes<const L: usize>(&mut self, x: &[[f64; L]], y: &[[f64; L]]) -> [f64; L] {
        let n = self.data.x.len();
        let mut slopes = [f64::NAN; L];
        if x.len() != n || y.len() != n {
            return slopes;
        }
        if let Some(quick) = &self.quick {
            self.rows.resize(2 * n * L, 0.0);
            slopes = quick.slopes(x, y, self.rows.as_chunks_mut().0.as_chunks_mut().0);
        }
        for (l, slope) in slopes.iter_mut().enumerate() {
            if slope.is_nan() {
                *slope = self.by_the_engine(x.iter().map(|x| x[l]), y.iter().map(|y| y[l]));
            }
        }
        slopes
    }

    #[cold]
    fn by_the_engine(&mut self, x: impl Iterator<Item = f64>, y: impl Iterator<Item = f64>) -> f64 {
        self.data.x.iter_mut().zip(x).for_each(|(place, x)| *place = x);
        self.data.y.iter_mut().zip(y).for_each(|(place, y)| *place = y);
        let line = fit_by(&self.data, self.search).or_else(|_| fit(&self.data));
        line.map_or(f64::NAN, |line| line.slope)
    }
}

/// How much more than stated the readings scatter; 1 if less.
fn excess(fit: &Fit) -> f64 {
    fit.scatter().filter(|_| fit.stated).map_or(1.0, |scatter| scatter.max(1.0))
}

/// The quick way.
#[derive(Debug, Clone)]
struct Quick {
    nodes: Nodes,
    anchors: Anchors,
    /// How far s may lie from 0.
    limit: f64,
    /// The least information, in units of s.
    least_information: f64,
}

/// From where readings are counted.
#[derive(Debug, Clone)]
enum Anchors {
    /// x and y of the weighted mean.
    One([f64; 2]),
    /// The origin of y; for each row its nominal x, and the nominal line with the free columns there.
    Each(f64, Vec<[f64; 2]>),
}

impl Quick {
    /// The cheapest that is close enough; `None` if none is.
    fn new(data: &Data, fit: &Fit) -> Option<Self> {
        const MOST_NODES: usize = 8;
        let nominal = NominalLine::new(data, fit)?;
        let more = [2, 4, MOST_COEFFICIENTS - MOST_NODES];
        (1..=MOST_NODES)
            .flat_map(|nodes| more.map(|more| Resolution { nodes, coefficients: (nodes + more).max(4) }))
            .find_map(|resolution| nominal.quick(resolution))
    }

    /// NaN for the engine.
    fn slopes<const L: usize>(&self, x: &[[f64; L]], y: &[[f64; L]], rows: &mut [RowLanes<L>]) -> [f64; L] {
        self.write_rows(x, y, rows);
        let LeastOfEach { s, step, curvature, information } = self.nodes.gradient(rows).zero();
        let mut slopes = [f64::NAN; L];
        for l in 0..L {
            let sound = s[l].abs() <= self.limit
                && step[l].abs() <= SETTLED
                && (curvature[l] - information[l]).abs() <= BENT * information[l]
                && information[l] >= self.least_information;
            slopes[l] = if sound { self.nodes.nominal + self.nodes.reach * s[l] } else { f64::NAN };
        }
        slopes
    }

    fn write_rows<const L: usize>(&self, x: &[[f64; L]], y: &[[f64; L]], rows: &mut [RowLanes<L>]) {
        let nominal = self.nodes.nominal;
        match &self.anchors {
            Anchors::One([x_origin, y_origin]) => {
                for (([along, off], x), y) in rows.iter_mut().zip(x).zip(y) {
                    for l in 0..L {
                        along[l] = x[l] - x_origin;
                        off[l] = (y[l] - y_origin) - nominal * along[l];
                    }
                }
            }
            Anchors::Each(y_origin, anchors) => {
                for ((([along, off], [anchor, level]), x), y) in rows.iter_mut().zip(anchors).zip(x).zip(y) {
                    for l in 0..L {
                        along[l] = x[l] - anchor;
                        off[l] = ((y[l] - y_origin) - level) - nominal * along[l];
                    }
                }
            }
        }
    }
}

/// The nominal line in its own units, from the weighted mean of the readings.
struct NominalLine<'a> {
    data: &'a Data,
    fit: &'a Fit,
    noise: Box<dyn NoiseForm>,
    /// What of it each row has by itself; the rest, as errors independent of one another.
    own: Independent,
    joint: Vec<SharedColumn>,
    problem: Problem,
    /// Whether the covariance of the rows hangs on the slope.
    leaning: bool,
    /// u(slope), with the excess; or any slope where nothing hangs on it.
    u: f64,
    /// How much more than stated the readings scatter; 1 if less.
    excess: f64,
}

impl<'a> NominalLine<'a> {
    fn new(data: &'a Data, fit: &'a Fit) -> Option<Self> {
        let around = ScaledFrame::around(data).ok()?;
        // Sums of squares are held without a scale of their own.
        let middling = |scale: f64| (1e-60..1e60).contains(&scale);
        if !(middling(around.x_scale) && middling(around.y_scale)) {
            return None;
        }
        let own_units = ScaledFrame { x_scale: 1.0, y_scale: 1.0, ..around };
        let n = data.x.len();
        let (own, joint) = match &data.noise {
            Noise::Unstated => (Independent::new(vec![], vec![1.0; n], vec![]), vec![]),
            Noise::Stated(stated) => {
                let joint = if stated.dense.is_empty() { vec![] } else { stated.dense.columns(n) };
                (own_units.independent(stated, n), joint)
            }
        };
        let mut noise = own_units.noise(data);
        let (frame, _) = own_units.centred(data, noise.as_mut()).ok()?;
        let some = |list: &[f64]| list.iter().any(|value| *value != 0.0);
        let leaning = noise.leans() || data.shared().iter().any(|column| some(&column.x));
        let excess = excess(fit);
        let u = match (leaning, fit.uncertainty) {
            (true, Some(u)) => u.slope * excess,
            _ => around.y_scale / around.x_scale,
        };
        let problem = Problem::new(data, frame, noise.as_ref(), fit.slope).ok()?;
        Some(NominalLine { data, fit, noise, own, joint, problem, leaning, u, excess })
    }

    /// The quick way of this resolution, if it is close enough.
    fn quick(&self, resolution: Resolution) -> Option<Quick> {
        let problem = &self.problem;
        let ScaledFrame { x_origin, y_origin, .. } = problem.frame;
        let plain = problem.shared.is_empty() && problem.free.is_empty();
        let (places, anchors) = if plain {
            (None, Anchors::One([x_origin, y_origin]))
        } else {
            let each = self.data.x.iter().enumerate().map(|(i, x)| [*x, self.level(i)]);
            (Some(&*problem.x), Anchors::Each(y_origin, each.collect()))
        };
        let nodes =
            Nodes::new(problem, self.noise.as_ref(), (self.fit.slope, REACH * self.u), resolution, places)?;
        let limit = if self.leaning { 1.0 } else { f64::MAX };
        let mut quick = Quick { nodes, anchors, limit, least_information: 0.0 };
        let rows = quick.rows_of(problem);
        quick.least_information = INFORMATION * quick.nodes.gradient(&rows).zero().information[0];
        (self.data.noise == Noise::Unstated || self.tried(&quick, resolution)).then_some(quick)
    }

    /// The nominal line and free columns in row `i`, from the origin of y.
    fn level(&self, i: usize) -> f64 {
        self.problem.y[i] - self.fit.rows[i].residual
    }

    /// Whether the gradients of χ² agree with the engine's in some trials, at the slopes where interpolation is worst.
    fn tried(&self, quick: &Quick, resolution: Resolution) -> bool {
        const TRIALS: usize = 8;
        let mut signs = Signs(1);
        (0..TRIALS).all(|trial| {
            let problem = self.redrawn(&mut signs, trial == 0);
            let rows = quick.rows_of(&problem);
            let mut exact = Profile::new(&problem, self.noise.boxed());
            (0..=resolution.nodes).all(|k| {
                let s = cosine(std::f64::consts::PI * k as f64 / resolution.nodes as f64);
                let Ok(point) = exact.at(self.fit.slope + quick.nodes.reach * s) else { return false };
                let off = (quick.nodes.gradient_at(s, &rows) - point.gradient) / point.information;
                off.abs() <= CLOSE * self.u
            })
        })
    }

    /// The nominal readings, each of whose errors grew or fell by one standard deviation; shared ones all grew if
    /// `together`, so that like ones do not happen to make up for each other in every trial.
    fn redrawn(&self, signs: &mut Signs, together: bool) -> Problem {
        let mut problem = self.problem.clone();
        let own = |signs: &mut Signs, variance: f64| signs.next() * self.excess * variance.sqrt();
        add(&mut problem.x, &self.own.var_x, |variance| own(signs, variance));
        add(&mut problem.y, &self.own.var_y, |variance| own(signs, variance));
        for column in &self.joint {
            let size = signs.next() * self.excess;
            add(&mut problem.x, &column.x, |effect| size * effect);
            add(&mut problem.y, &column.y, |effect| size * effect);
        }
        for column in &self.problem.shared {
            let sign = if together { 1.0 } else { signs.next() };
            for (list, column) in [(&mut problem.x, &column.x), (&mut problem.y, &column.y)] {
                add(list, &column.effect, |effect| sign * (column.origin + effect));
            }
        }
        // As readings they are rounded at their distance from zero.
        let ScaledFrame { x_origin, y_origin, .. } = problem.frame;
        problem.x.iter_mut().for_each(|x| *x = (x_origin + *x) - x_origin);
        problem.y.iter_mut().for_each(|y| *y = (y_origin + *y) - y_origin);
        problem
    }
}

impl Quick {
    /// The readings of `problem`, which is in its own units, as the quick way counts them.
    fn rows_of(&self, problem: &Problem) -> Vec<RowLanes<1>> {
        let from = |origin: f64, list: &[f64]| list.iter().map(|value| [origin + value]).collect::<Vec<_>>();
        let (x, y) = (from(problem.frame.x_origin, &problem.x), from(problem.frame.y_origin, &problem.y));
        let mut rows = vec![[[0.0]; 2]; x.len()];
        self.write_rows(&x, &y, &mut rows);
        rows
    }
}

fn add(list: &mut [f64], errors: &[f64], mut error: impl FnMut(f64) -> f64) {
    for (value, of) in list.iter_mut().zip(errors) {
        *value += error(*of);
    }
}

/// Plus and minus one without order, by D. E. Knuth's linear congruential generator (MMIX).
struct Signs(u64);

impl Signs {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        if self.0 >> 63 == 0 { 1.0 } else { -1.0 }
    }
}

#[cfg(test)]
#[path = "refit_test.rs"]
mod tests;
