//! Numbers as the unevaluated sum of two doubles, some 32 digits, for the few sums that cancel too far for 16.
//!
//! Error-free sum: D. E. Knuth, *The Art of Computer Programming*, vol. 2, section 4.2.2. Error-free product:
//! T. J. Dekker, Numer. Math. 18 (1971) 224. Both hold for values far from the ends of the range of a double, which the
//! scaled units of [`problem`](super::problem) see to.

use std::ops::{Add, Mul, Neg, Sub};

/// high + low, where low is less than a rounding of high.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct DoubleDouble {
    pub high: f64,
    pub low: f64,
}

impl DoubleDouble {
    /// a + b, without rounding.
    pub fn sum(a: f64, b: f64) -> Self {
        let high = a + b;
        let of_b = high - a;
        DoubleDouble { high, low: (a - (high - of_b)) + (b - of_b) }
    }

    /// a − b, without rounding.
    pub fn difference(a: f64, b: f64) -> Self {
        DoubleDouble::sum(a, -b)
    }

    /// a · b, without rounding.
    pub fn product(a: f64, b: f64) -> Self {
        let ([a_top, a_rest], [b_top, b_rest]) = (halves(a), halves(b));
        let high = a * b;
        let low = a_rest * b_rest - (((high - a_top * b_top) - a_rest * b_top) - a_top * b_rest);
        DoubleDouble { high, low }
    }

    /// The nearest double.
    pub fn value(self) -> f64 {
        self.high + self.low
    }

    /// Over a power of two.
    pub fn over(self, power: f64) -> Self {
        DoubleDouble { high: self.high / power, low: self.low / power }
    }

    /// The same with low made as small as it can be.
    fn settled(high: f64, low: f64) -> Self {
        let sum = high + low;
        DoubleDouble { high: sum, low: low - (sum - high) }
    }
}

impl From<f64> for DoubleDouble {
    fn from(high: f64) -> Self {
        DoubleDouble { high, low: 0.0 }
    }
}

impl Add for DoubleDouble {
    type Output = DoubleDouble;
    fn add(self, other: DoubleDouble) -> DoubleDouble {
        let high = DoubleDouble::sum(self.high, other.high);
        DoubleDouble::settled(high.high, high.low + (self.low + other.low))
    }
}

impl Neg for DoubleDouble {
    type Output = DoubleDouble;
    fn neg(self) -> DoubleDouble {
        DoubleDouble { high: -self.high, low: -self.low }
    }
}

impl Sub for DoubleDouble {
    type Output = DoubleDouble;
    fn sub(self, other: DoubleDouble) -> DoubleDouble {
        self + -other
    }
}

impl Mul for DoubleDouble {
    type Output = DoubleDouble;
    fn mul(self, other: DoubleDouble) -> DoubleDouble {
        let high = DoubleDouble::product(self.high, other.high);
        DoubleDouble::settled(high.high, high.low + (self.high * other.low + self.low * other.high))
    }
}

/// A double as the sum of two with half the digits.
fn halves(value: f64) -> [f64; 2] {
    /// 2²⁷ + 1.
    const SPLIT: f64 = 134_217_729.0;
    let raised = SPLIT * value;
    let top = raised - (raised - value);
    [top, value - top]
}

#[cfg(test)]
#[path = "pair_test.rs"]
mod tests;
