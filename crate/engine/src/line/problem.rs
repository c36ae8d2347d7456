//! The readings in units of their own spans and counted from their weighted mean. The scales are powers of two, so
//! that scaling costs no digit.

use super::{
    error::LineError,
    input::{Column, Data, FreeColumn},
    noise::Noise,
};

/// Where the scaled units stand: x = `x_origin` + `x_scale` · x′, and so for y.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    pub x_origin: f64,
    pub y_origin: f64,
    pub x_scale: f64,
    pub y_scale: f64,
}

impl Frame {
    /// Scales from the spans; the origin at the first row for now.
    pub fn around(data: &Data) -> Result<Self, LineError> {
        let (x_span, y_span) = (span(&data.x), span(&data.y));
        if x_span == 0.0 {
            return Err(LineError::AllPositionsEqual);
        }
        if !(x_span.is_finite() && y_span.is_finite()) {
            return Err(LineError::OutOfRange);
        }
        let y_size =
            if y_span > 0.0 { y_span } else { data.y.iter().fold(0.0, |size: f64, y| size.max(y.abs())) };
        let [x_origin, y_origin] = [&data.x, &data.y].map(|list| list.first().copied().unwrap_or(0.0));
        Ok(Frame { x_origin, y_origin, x_scale: power_of_two(x_span), y_scale: power_of_two(y_size) })
    }

    /// The origin at the weighted mean, with the weights of a first rough slope; gives that slope too.
    pub fn centred<N: Noise>(self, data: &Data, noise: &mut N) -> Result<(Self, f64), LineError> {
        let plain = Moments::of(&self, data, &vec![1.0; data.x.len()]);
        noise.at_slope(plain.slope())?;
        let weighted = Moments::of(&self, data, &noise.weights());
        let frame = Frame {
            x_origin: self.x_origin + self.x_scale * weighted.x,
            y_origin: self.y_origin + self.y_scale * weighted.y,
            ..self
        };
        Ok((frame, weighted.slope()))
    }

    pub fn x(&self, x: f64) -> f64 {
        (x - self.x_origin) / self.x_scale
    }

    pub fn y(&self, y: f64) -> f64 {
        (y - self.y_origin) / self.y_scale
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
    fn of(frame: &Frame, data: &Data, weights: &[f64]) -> Self {
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
    pub frame: Frame,
    pub x: Vec<f64>,
    pub y: Vec<f64>,
    pub shared: Vec<Column>,
    pub free: Vec<Free>,
}

/// A free column as a regressor of y, brought to a size near 1.
#[derive(Debug, Clone)]
pub(super) struct Free {
    pub effect: Vec<f64>,
    pub scale: f64,
}

impl Problem {
    pub fn new(data: &Data, shared: &[Column], frame: Frame) -> Result<Self, LineError> {
        let problem = Problem {
            frame,
            x: data.x.iter().map(|x| frame.x(*x)).collect(),
            y: data.y.iter().map(|y| frame.y(*y)).collect(),
            shared: shared.iter().map(|column| column.divided(frame.x_scale, frame.y_scale)).collect(),
            free: data.free.iter().map(Free::new).collect(),
        };
        let finite = problem.x.iter().chain(&problem.y).all(|value| value.is_finite());
        if finite { Ok(problem) } else { Err(LineError::OutOfRange) }
    }
}

impl Column {
    fn divided(&self, x_scale: f64, y_scale: f64) -> Column {
        let divide = |list: &[f64], scale: f64| list.iter().map(|value| value / scale).collect();
        Column { x: divide(&self.x, x_scale), y: divide(&self.y, y_scale) }
    }

    /// Writes the effect of one standard deviation on y − a − b x to zeroed storage.
    pub(super) fn write_effect(&self, slope: f64, out: &mut [f64]) {
        for (out, effect) in out.iter_mut().zip(&self.y) {
            *out = *effect;
        }
        for (out, effect) in out.iter_mut().zip(&self.x) {
            *out -= slope * effect;
        }
    }
}

impl Free {
    fn new(column: &FreeColumn) -> Self {
        let entries = column.entries();
        let scale = power_of_two(entries.iter().fold(0.0, |size: f64, value| size.max(value.abs())));
        Free { effect: entries.iter().map(|value| value / scale).collect(), scale }
    }
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
