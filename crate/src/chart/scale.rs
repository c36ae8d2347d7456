//! Ranges of values, and the ticks that measure them.
//!
//! Ticks stand at 1, 2 or 5 times a power of ten (common practice, no source). Very large and very small values
//! are shown as multiples of a power of ten that stands in the axis title.

use crate::quantity::{DecimalMark, fixed, ten_to_the};

use super::labels::Title;
use crate::words::Words;

/// Values beyond this are not drawn: their differences would overflow.
const LARGEST: f64 = 1e300;

/// A range of values, `low` < `high`, both finite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Span {
    pub(super) low: f64,
    pub(super) high: f64,
}

/// Whether a value can be drawn.
pub(super) fn drawable(value: f64) -> bool {
    value.abs() <= LARGEST
}

impl Span {
    /// From the smallest to the largest value that can be drawn; none if there is none. Values that are equal,
    /// or all but equal, are given a range around them.
    pub(super) fn of(values: impl IntoIterator<Item = f64>) -> Option<Self> {
        let ends = values.into_iter().filter(|&value| drawable(value)).fold(None, |ends, value| match ends {
            None => Some((value, value)),
            Some((low, high)) => Some((value.min(low), value.max(high))),
        });
        ends.map(|(low, high): (f64, f64)| Self { low, high }.opened())
    }

    fn opened(self) -> Self {
        let size = self.low.abs().max(self.high.abs());
        if self.high - self.low > (1e-9 * size).max(1e-290) {
            return self;
        }
        let room = if size > 1e-280 { 0.1 * size } else { 1.0 };
        Self { low: self.low - room, high: self.high + room }
    }

    pub(super) fn width(self) -> f64 {
        self.high - self.low
    }

    /// Wider by a share of its width at either end.
    pub(super) fn padded(self, share: f64) -> Self {
        let room = share * self.width();
        Self { low: self.low - room, high: self.high + room }
    }

    /// The part of it between two shares of its width.
    pub(super) fn part(self, [from, to]: [f64; 2]) -> Self {
        // The whole, to the last bit.
        if [from, to] == [0.0, 1.0] {
            return self;
        }
        Self { low: self.low + from * self.width(), high: self.low + to * self.width() }
    }

    /// With zero in it, if zero is near: then the intercept can be read off.
    pub(super) fn reaching_for_zero(self) -> Self {
        if 0.0 < self.low && self.low < 0.5 * self.high { Self { low: 0.0, ..self } } else { self }
    }

    pub(super) fn joined(self, other: Self) -> Self {
        Self { low: self.low.min(other.low), high: self.high.max(other.high) }
    }

    pub(super) fn holds(self, value: f64) -> bool {
        self.low <= value && value <= self.high
    }

    pub(super) fn nearest(self, value: f64) -> f64 {
        value.clamp(self.low, self.high)
    }
}

/// A tick with its label.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct AxisTick {
    pub(super) value: f64,
    pub(super) label: String,
}

/// A range with ticks.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Axis {
    pub(super) span: Span,
    pub(super) ticks: Vec<AxisTick>,
    /// The labels count in 10 to this power.
    power: i32,
}

impl Axis {
    /// An axis with about `count` ticks, and never fewer than the two that it takes to measure anything.
    pub(super) fn new(span: Span, count: f64, decimal_mark: DecimalMark) -> Self {
        let axis = Self::with_about(span, count, decimal_mark);
        // A step is less than 2.5 times a part, so five parts hold two steps.
        if axis.ticks.len() < 2 { Self::with_about(span, 5.0, decimal_mark) } else { axis }
    }

    fn with_about(span: Span, count: f64, decimal_mark: DecimalMark) -> Self {
        let (multiple, exponent) = step(span.width() / count.max(1.0));
        let size = span.low.abs().max(span.high.abs());
        let power = label_power(size);
        let place = (exponent - power).clamp(-15, 0);
        let step = multiple * ten_to(exponent);
        let unit = multiple * ten_to(exponent - power);
        let mut ticks = Vec::new();
        // A tick that rounding has put just outside an end still belongs to it.
        let Span { low, high } = span.padded(1e-9);
        let mut index = (low / step).ceil();
        while index * step <= high && ticks.len() < 100 {
            // Adding zero turns −0 into 0.
            ticks.push(AxisTick {
                value: index * step,
                label: fixed(index * unit + 0.0, place, decimal_mark),
            });
            index += 1.0;
        }
        Self { span, ticks, power }
    }

    /// The title with the unit that the labels count in: "distance d / m", "delay Δt / 10³ ns".
    pub(super) fn title(&self, title: &Title, words: &dyn Words) -> String {
        let unit = match (self.power, title.unit) {
            (0, unit) => unit.to_owned(),
            (power, "") => ten_to_the(power),
            (power, unit) => format!("{} {unit}", ten_to_the(power)),
        };
        let name = words.say(&title.name);
        if unit.is_empty() { name } else { format!("{name} / {unit}") }
    }
}

/// The smallest step of 1, 2 or 5 times a power of ten that is at least `least`: multiple and exponent.
fn step(least: f64) -> (f64, i32) {
    let exponent = exponent_of(least);
    let lead = least / ten_to(exponent);
    [1.0, 2.0, 5.0]
        .into_iter()
        .find(|&multiple| lead <= multiple * (1.0 + 1e-9))
        .map_or((1.0, exponent + 1), |multiple| (multiple, exponent))
}

/// The power of ten that labels count in: 0 where plain numbers stay short.
fn label_power(size: f64) -> i32 {
    if (1e-2..1e5).contains(&size) || size <= 0.0 { 0 } else { exponent_of(size).div_euclid(3) * 3 }
}

/// The decimal exponent of a positive number.
#[expect(clippy::cast_possible_truncation, reason = "a decimal exponent of an f64 lies within ±324")]
fn exponent_of(size: f64) -> i32 {
    libm::log10(size).floor() as i32
}

fn ten_to(exponent: i32) -> f64 {
    10.0_f64.powi(exponent)
}

#[cfg(test)]
#[path = "scale_test.rs"]
mod tests;
