//! Numbers as the unevaluated sum of two doubles, some 32 digits, for the few sums that cancel too far for 16.
//!
//! Error-free sum: D. E. Knuth, *The Art of Computer Programming*, vol. 2, section 4.2.2. Error-free product:
//! T. J. Dekker, Numer. Math. 18 (1971) 224. Both hold for values far from the ends of the range of a double, which the
//! scaled units of [`problem`](super::problem) see to.

use std::ops::{Add, Mul, Neg, Sub};

/// high + low, where low is less than a rounding of high.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Pair {
    pub high: f64,
    pub low: f64,
}

impl Pair {
    /// a + b, without rounding.
    pub fn sum(a: f64, b: f64) -> Self {
        let high = a + b;
        let of_b = high - a;
        Pair { high, low: (a - (high - of_b)) + (b - of_b) }
    }

    /// a − b, without rounding.
    pub fn difference(a: f64, b: f64) -> Self {
        Pair::sum(a, -b)
    }

    /// a · b, without rounding.
    pub fn product(a: f64, b: f64) -> Self {
        let ([a_top, a_rest], [b_top, b_rest]) = (halves(a), halves(b));
        let high = a * b;
        let low = a_rest * b_rest - (((high - a_top * b_top) - a_rest * b_top) - a_top * b_rest);
        Pair { high, low }
    }

    /// The nearest double.
    pub fn value(self) -> f64 {
        self.high + self.low
    }

    /// Over a power of two.
    pub fn over(self, power: f64) -> Self {
        Pair { high: self.high / power, low: self.low / power }
    }

    /// The same with low made as small as it can be.
    fn settled(high: f64, low: f64) -> Self {
        let sum = high + low;
        Pair { high: sum, low: low - (sum - high) }
    }
}

impl From<f64> for Pair {
    fn from(high: f64) -> Self {
        Pair { high, low: 0.0 }
    }
}

impl Add for Pair {
    type Output = Pair;
    fn add(self, other: Pair) -> Pair {
        let high = Pair::sum(self.high, other.high);
        Pair::settled(high.high, high.low + (self.low + other.low))
    }
}

impl Neg for Pair {
    type Output = Pair;
    fn neg(self) -> Pair {
        Pair { high: -self.high, low: -self.low }
    }
}

impl Sub for Pair {
    type Output = Pair;
    fn sub(self, other: Pair) -> Pair {
        self + -other
    }
}

impl Mul for Pair {
    type Output = Pair;
    fn mul(self, other: Pair) -> Pair {
        let high = Pair::product(self.high, other.high);
        Pair::settled(high.high, high.low + (self.high * other.low + self.low * other.high))
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
