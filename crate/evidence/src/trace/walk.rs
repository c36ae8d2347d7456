//! Walk: what a fixed level would do to the speed of light.
//!
//! A fixed level is crossed later on a smaller pulse. As the carriage moves away the light weakens, so the difference of
//! the two delays, fixed level less constant fraction, grows with d; its slope adds to the slope of the delay, and v
//! comes out too small.

use serde::{Deserialize, Serialize};

/// The line of the differences over distance.
#[derive(Clone, Copy, PartialEq, Debug, Serialize, Deserialize)]
pub struct Walk {
    /// Of the differences over d, ns/m.
    pub slope: f64,
    /// Where it meets d = 0, ns.
    pub intercept: f64,
    /// Standard uncertainty of the slope, from what was stated, ns/m.
    pub uncertainty: f64,
    /// χ² of the line.
    pub chi_square: f64,
    /// Rows less 2.
    pub degrees: usize,
}

impl Walk {
    /// By what fraction v from fixed levels lies off v from constant fractions, when the delay's own slope by constant
    /// fraction is `slope` (ns/m), and the standard uncertainty that it has from the walk: v goes as 1/slope.
    pub fn shift(&self, slope: f64) -> (f64, f64) {
        let fixed = slope + self.slope;
        (slope / fixed - 1.0, (slope * self.uncertainty / (fixed * fixed)).abs())
    }
}

/// Weighted line through the differences (fixed level less constant fraction, ns) with standard uncertainties `u` (ns)
/// at the distances `d` (m). Nothing for fewer than 2 places, or for uncertainties that are not above 0.
pub fn compare_walk(d: &[f64], difference: &[f64], u: &[f64]) -> Option<Walk> {
    if d.len() != difference.len() || d.len() != u.len() || d.len() < 2 {
        return None;
    }
    if u.iter().any(|u| u.is_nan() || *u <= 0.0) {
        return None;
    }
    let rows = || d.iter().zip(difference).zip(u).map(|((d, y), u)| (*d, *y, 1.0 / (u * u)));
    let sum = |of: &dyn Fn(f64, f64) -> f64| rows().map(|(d, y, weight)| weight * of(d, y)).sum::<f64>();
    let total = sum(&|_, _| 1.0);
    let (mean_d, mean_y) = (sum(&|d, _| d) / total, sum(&|_, y| y) / total);
    let spread = sum(&|d, _| (d - mean_d) * (d - mean_d));
    let slope = sum(&|d, y| (d - mean_d) * (y - mean_y)) / spread;
    let uncertainty = 1.0 / spread.sqrt();
    let chi_square = sum(&|d, y| {
        let off = y - mean_y - slope * (d - mean_d);
        off * off
    });
    (slope.is_finite() && uncertainty.is_finite()).then_some(Walk {
        slope,
        intercept: mean_y - slope * mean_d,
        uncertainty,
        chi_square,
        degrees: d.len() - 2,
    })
}

#[cfg(test)]
#[path = "walk_test.rs"]
mod tests;
