//! The readings in units of their own spans and counted from their weighted mean. The scales are powers of two, so
//! that scaling costs no digit, and multiplying by their reciprocals is the same as dividing, but quicker.

use super::{
    basis::dot,
    error::LineError,
    input::{self, Data, FreeColumn, SharedColumn, Stated},
    noise::{Independent, JointNoise, NoiseForm},
    pair::DoubleDouble,
};

/// Positions that span less than this share of their own size are one place: their differences are a few roundings.
const ONE_PLACE: f64 = 1.0 / (1_u64 << 46) as f64;

/// A column that keeps less than this share of its length beside the columns before it is not told apart from them:
/// so close, a rounding of the data in the last place would move the answer in its ninth digit.
pub(super) const DISTINCT: f64 = 1e-7;

/// Where the scaled units stand: x = `x_origin` + `x_scale` · x′, and so for y.
#[derive(Debug, Clone, Copy)]
pub(super) struct ScaledFrame {
    pub x_origin: f64,
    pub y_origin: f64,
    pub x_scale: f64,
    pub y_scale: f64,
}

impl ScaledFrame {
    /// Scales from the spans; the origin at the first row for now.
    pub fn around(data: &Data) -> Result<Self, LineError> {
        let (x_span, y_span) = (span(&data.x), span(&data.y));
        if !(x_span.is_finite() && y_span.is_finite()) {
            return Err(LineError::OutOfRange);
        }
        if x_span <= ONE_PLACE * size(&data.x) {
            return Err(LineError::AllPositionsEqual);
        }
        let y_size = if y_span > 0.0 { y_span } else { size(&data.y) };
        let [x_origin, y_origin] = [&data.x, &data.y].map(|list| list.first().copied().unwrap_or(0.0));
        Ok(ScaledFrame { x_origin, y_origin, x_scale: power_of_two(x_span), y_scale: power_of_two(y_size) })
    }

    /// The origin at the weighted mean, with the weights of a first rough slope; gives that slope too.
    pub fn centred(self, data: &Data, noise: &mut dyn NoiseForm) -> Result<(Self, f64), LineError> {
        let plain = Moments::of(&self, data, &vec![1.0; data.x.len()]);
        noise.at_slope(plain.slope())?;
        let weighted = Moments::of(&self, data, &noise.weights());
        let frame = ScaledFrame {
            x_origin: self.x_origin + self.x_scale * weighted.x,
            y_origin: self.y_origin + self.y_scale * weighted.y,
            ..self
        };
        Ok((frame, weighted.slope()))
    }

    pub fn x(&self, x: f64) -> f64 {
        (x - self.x_origin) * (1.0 / self.x_scale)
    }

    pub fn y(&self, y: f64) -> f64 {
        (y - self.y_origin) * (1.0 / self.y_scale)
    }

    /// As [`x`](Self::x), without rounding.
    pub fn x_closely(&self, x: f64) -> DoubleDouble {
        DoubleDouble::difference(x, self.x_origin).over(self.x_scale)
    }

    /// As [`y`](Self::y), without rounding.
    pub fn y_closely(&self, y: f64) -> DoubleDouble {
        DoubleDouble::difference(y, self.y_origin).over(self.y_scale)
    }

    /// The rows' own noise, in the scaled units. One form of the code for both forms of it: each call works on a whole
    /// column.
    pub fn noise(&self, data: &Data) -> Box<dyn NoiseForm> {
        let n = data.x.len();
        match &data.noise {
            input::Noise::Unstated => Box::new(Independent::new(vec![], vec![1.0; n], vec![])),
            input::Noise::Stated(stated) if stated.dense.is_empty() => Box::new(self.independent(stated, n)),
            input::Noise::Stated(stated) => Box::new(self.joint(stated, n)),
        }
    }

    /// The errors that each of `n` rows has by itself, in the scaled units.
    pub fn independent(&self, stated: &Stated, n: usize) -> Independent {
        let variances = |list: &[f64], scale: f64| -> Vec<f64> {
            let per_unit = 1.0 / scale;
            list.iter().map(|u| (u * per_unit) * (u * per_unit)).collect()
        };
        let var_x =
            if stated.ux.iter().any(|u| *u > 0.0) { variances(&stated.ux, self.x_scale) } else { vec![] };
        let cov_xy = stated.cov_xy.iter().map(|cov| cov / self.x_scale / self.y_scale).collect();
        let mut var_y = variances(&stated.uy, self.y_scale);
        var_y.resize(n, 0.0);
        Independent::new(var_x, var_y, cov_xy)
    }

    /// The same with the covariances of `n` rows.
    fn joint(&self, stated: &Stated, n: usize) -> JointNoise {
        let own = self.independent(stated, n);
        let block = |own: &[f64], dense: &[f64], a: f64, b: f64| {
            let mut block = vec![];
            add(&mut block, dense, a, b);
            if own.iter().any(|value| *value != 0.0) {
                block.resize(n * n, 0.0);
                for (sum, own) in block.iter_mut().step_by(n + 1).zip(own) {
                    *sum += own;
                }
            }
            block
        };
        let (x, y) = (self.x_scale, self.y_scale);
        let xx = block(&own.var_x, &stated.dense.xx, x, x);
        let yy = block(&own.var_y, &stated.dense.yy, y, y);
        JointNoise::new(xx, yy, block(&own.cov_xy, &stated.dense.xy, x, y), n)
    }
}

/// Adds what is stated, in units of `a` · `b`, to a list in which none at all stand for zeros.
fn add(list: &mut Vec<f64>, stated: &[f64], a: f64, b: f64) {
    if stated.iter().any(|value| *value != 0.0) {
        list.resize(stated.len(), 0.0);
        for (sum, value) in list.iter_mut().zip(stated) {
            *sum += value / a / b;
        }
    }
}

/// Weighted means of the scaled values, and the sums that give a rough slope.
struct Moments {
    x: f64,
    y: f64,
    xx: f64,
    xy: f64,
}

impl Moments {
    fn of(frame: &ScaledFrame, data: &Data, weights: &[f64]) -> Self {
        let rows = || data.x.iter().zip(&data.y).map(|(x, y)| (frame.x(*x), frame.y(*y))).zip(weights);
        let mut total = 0.0;
        let (mut x, mut y) = (0.0, 0.0);
        for ((xi, yi), weight) in rows() {
            total += weight;
            x += weight * xi;
            y += weight * yi;
        }
        x /= total;
        y /= total;
        let (mut xx, mut xy) = (0.0, 0.0);
        for ((xi, yi), weight) in rows() {
            xx += weight * (xi - x) * (xi - x);
            xy += weight * (xi - x) * (yi - y);
        }
        Moments { x, y, xx, xy }
    }

    fn slope(&self) -> f64 {
        let slope = self.xy / self.xx;
        if slope.is_finite() { slope } else { 1.0 }
    }
}

/// Readings, shared effects and free columns in scaled units.
#[derive(Debug, Clone)]
pub(super) struct Problem {
    pub frame: ScaledFrame,
    pub x: Vec<f64>,
    pub y: Vec<f64>,
    pub shared: Vec<CentredColumn>,
    /// The free columns, as regressors of y.
    pub free: Vec<Centred>,
}

impl Problem {
    /// `slope` in scaled units, roughly.
    pub fn new(
        data: &Data,
        frame: ScaledFrame,
        noise: &dyn NoiseForm,
        slope: f64,
    ) -> Result<Self, LineError> {
        let shared = data.shared();
        let weights = if shared.is_empty() && data.free.is_empty() { vec![] } else { noise.weights() };
        let mean = WeightedMean { total: weights.iter().sum(), weights };
        let free = |(column, unknown): (usize, &FreeColumn)| {
            Centred::free(unknown.entries(), &mean).ok_or(LineError::UndeterminedColumn { column })
        };
        let problem = Problem {
            frame,
            x: data.x.iter().map(|x| frame.x(*x)).collect(),
            y: data.y.iter().map(|y| frame.y(*y)).collect(),
            shared: shared.iter().map(|column| CentredColumn::new(column, &frame, &mean, slope)).collect(),
            free: data.free.iter().enumerate().map(free).collect::<Result<_, _>>()?,
        };
        let finite = problem.x.iter().chain(&problem.y).all(|value| value.is_finite());
        if finite { Ok(problem) } else { Err(LineError::OutOfRange) }
    }
}

struct WeightedMean {
    weights: Vec<f64>,
    total: f64,
}

impl WeightedMean {
    fn of(&self, list: &[f64]) -> f64 {
        dot(&self.weights, list) / self.total
    }
}

/// A list counted from an origin: entry = (`origin` + `effect`) · `unit`. What the origin does, the intercept does as
/// well, so that a column far from zero need not be told from it by its last digits.
#[derive(Debug, Clone)]
pub(super) struct Centred {
    pub effect: Vec<f64>,
    pub origin: f64,
    /// The unit of the entries, a power of two.
    pub unit: f64,
}

impl Centred {
    fn new(entries: &[f64], origin: f64, unit: f64) -> Self {
        let per_unit = 1.0 / unit;
        let effect = entries.iter().map(|entry| (entry - origin) * per_unit).collect();
        Centred { effect, origin: origin * per_unit, unit }
    }

    /// A free column, counted from its mean and brought to a size near 1; `None` if it is the same in all rows.
    fn free(entries: &[f64], mean: &WeightedMean) -> Option<Self> {
        let origin = mean.of(entries);
        let largest = entries.iter().fold(0.0, |largest: f64, entry| largest.max((entry - origin).abs()));
        let same = largest <= DISTINCT * size(entries);
        (!same).then(|| Centred::new(entries, origin, power_of_two(largest)))
    }

    /// The effect of an entry, without rounding.
    pub fn closely(&self, entry: f64) -> DoubleDouble {
        DoubleDouble::difference(entry / self.unit, self.origin)
    }
}

/// How one shared error moves the rows.
#[derive(Debug, Clone)]
pub(super) struct CentredColumn {
    pub x: Centred,
    pub y: Centred,
}

impl CentredColumn {
    /// Counted from its mean, if that is so large beside the rows' own uncertainties that digits are at stake.
    fn new(column: &SharedColumn, frame: &ScaledFrame, mean: &WeightedMean, slope: f64) -> Self {
        /// In standard uncertainties of the rows' mean: of sixteen digits, its square is lost.
        const LARGE: f64 = 1e3;
        let [x, y] = [&column.x, &column.y].map(|list| mean.of(list));
        let level = (y / frame.y_scale).abs() + (slope * x / frame.x_scale).abs();
        let [x, y] = if level * mean.total.sqrt() > LARGE { [x, y] } else { [0.0; 2] };
        CentredColumn {
            x: Centred::new(&column.x, x, frame.x_scale),
            y: Centred::new(&column.y, y, frame.y_scale),
        }
    }

    /// What one standard deviation moves y − a − b x by in all rows alike.
    pub fn origin(&self, slope: f64) -> f64 {
        self.y.origin - slope * self.x.origin
    }

    /// Writes the rest of the effect of one standard deviation on y − a − b x to zeroed storage.
    pub fn write_effect(&self, slope: f64, out: &mut [f64]) {
        for (out, effect) in out.iter_mut().zip(&self.y.effect) {
            *out = *effect;
        }
        for (out, effect) in out.iter_mut().zip(&self.x.effect) {
            *out -= slope * effect;
        }
    }
}

fn size(list: &[f64]) -> f64 {
    list.iter().fold(0.0, |size, value| size.max(value.abs()))
}

fn span(list: &[f64]) -> f64 {
    let (low, high) = list
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(*value), high.max(*value)));
    high - low
}

/// The power of two just above `size`; 1 for zero.
fn power_of_two(size: f64) -> f64 {
    if size > 0.0 { libm::ldexp(1.0, libm::frexp(size).1.clamp(-1021, 1023)) } else { 1.0 }
}
