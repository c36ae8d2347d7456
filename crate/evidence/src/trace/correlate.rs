//! The delay at which one edge lies best upon the other: cross-correlation of the edges, normalised by their heights.
//!
//! Of B is sought the lag τ that makes Σ (b(t + τ)/H_B − a(t)/H_A)² least over the edge of A. Where the whole pulse is
//! in the sum this is the lag of the largest cross-correlation Σ a(t) b(t + τ), since the other terms do not change;
//! over an edge alone the cross-correlation by itself would be pulled towards the top.
//!
//! First by whole samples, then by a parabola through the least sums, then, if asked, by least squares: the normal
//! equation Σ g(t) (b(t + τ)/H_B − a(t)/H_A) = 0, with g the smoothed slope of A's edge. It is linear in the samples,
//! so noise does not shift it, and its uncertainty follows from its weights.

use super::sums::Sums;
use super::weights::Weights;
use super::{Digits, Pulse, TraceError, whole};

/// A lag, and what it hangs on.
pub(super) struct Lag {
    /// Samples from A's record to B's.
    pub samples: f64,
    /// By how much the samples of A count in it, and those of B.
    pub weights: [Weights; 2],
}

/// The lag of B's edge behind A's, counted in samples of each from the first.
pub(super) fn lag(a: &Pulse<'_>, b: &Pulse<'_>, refined: bool) -> Result<Lag, TraceError> {
    let (first, second) = (a.wave.step, b.wave.step);
    if (first - second).abs() > 1e-6 * first {
        return Err(TraceError::UnequalSteps { first: Digits::of(first, 7), second: Digits::of(second, 7) });
    }
    let none = TraceError::NoLag { sample: whole(a.middle) };
    let rise = a.rise.max(b.rise);
    let template = Template::of(a, rise).ok_or(none.clone())?;
    let squares = |lag: i64| template.squares(&a.sums, a.height, &b.sums, b.height, lag);
    let near = signed((b.middle - a.middle).round());
    let reach = signed((0.6 * rise).ceil()).max(2);
    let mut best = (f64::INFINITY, near);
    for lag in near - reach..=near + reach {
        if let Some(sum) = squares(lag).filter(|sum| *sum < best.0) {
            best = (sum, lag);
        }
    }
    let noise = a.baseline.sigma / a.height + b.baseline.sigma / b.height;
    let lags = signed((rise * (2.0 * noise).clamp(0.0, 0.3)).round()).max(1);
    let parabola = vertex(best.1, lags, squares).ok_or(none.clone())?;
    let root = template.root(a, b, parabola).ok_or(none)?;
    let samples = if refined { root.lag } else { parabola };
    Ok(Lag { samples, weights: root.weights })
}

#[expect(clippy::cast_possible_truncation, reason = "lags are far below 2⁵³; the cast saturates")]
fn signed(lag: f64) -> i64 {
    lag as i64
}

/// The least point of a parabola fitted to the sums at some lags to both sides of the least.
fn vertex(middle: i64, lags: i64, squares: impl Fn(i64) -> Option<f64>) -> Option<f64> {
    let count = (2 * lags + 1) as f64;
    let mean_square = (lags * (lags + 1)) as f64 / 3.0;
    let (mut tilt, mut curve, mut spread, mut bend) = (0.0, 0.0, 0.0, 0.0);
    for lag in -lags..=lags {
        let sum = squares(middle + lag)?;
        let x = lag as f64;
        let q = x * x - mean_square;
        tilt += x * sum;
        curve += q * sum;
        spread += x * x;
        bend += q * q;
    }
    let (tilt, curve) = (tilt / spread, curve / bend);
    let off = -tilt / (2.0 * curve);
    (curve > 0.0 && off.abs() <= count).then_some(middle as f64 + off)
}

/// The samples of A's edge, and their smoothed slope.
struct Template {
    from: usize,
    slope: Vec<f64>,
}

/// Zero of the normal equation.
struct Root {
    lag: f64,
    weights: [Weights; 2],
}

impl Template {
    fn of(a: &Pulse<'_>, rise: f64) -> Option<Self> {
        let half = whole((0.4 * rise).round()).max(1);
        let reach = rise + half as f64;
        let from = whole((a.middle - reach).max(0.0));
        let to = whole(a.middle + reach).min(a.sums.len() - 1);
        if from < half || to + half >= a.sums.len() {
            return None;
        }
        let scale = 1.0 / (half as f64 * a.height);
        let slope = |at: usize| (a.sums.mean(at + 1, at + 1 + half) - a.sums.mean(at - half, at)) * scale;
        // Up to where the edge has turned; what comes then belongs to the top.
        let turned = (whole(a.middle)..to).find(|at| slope(*at) < 0.0).unwrap_or(to);
        Some(Self { from, slope: (from..=turned).map(slope).collect() })
    }

    fn laid(&self, sums: &Sums, lag: i64) -> Option<usize> {
        let from = usize::try_from(i64::try_from(self.from).ok()? + lag).ok()?;
        (from + self.slope.len() <= sums.len()).then_some(from)
    }

    fn squares(&self, a: &Sums, height_a: f64, b: &Sums, height_b: f64, lag: i64) -> Option<f64> {
        let from = self.laid(b, lag)?;
        let count = self.slope.len();
        let (of_a, of_b) = (1.0 / height_a, 1.0 / height_b);
        let pairs = a.samples[self.from..self.from + count].iter().zip(&b.samples[from..from + count]);
        Some(pairs.map(|(a, b)| (b * of_b - a * of_a) * (b * of_b - a * of_a)).sum())
    }

    /// Sum of slope times level.
    fn against(&self, sums: &Sums, lag: i64) -> Option<f64> {
        let from = self.laid(sums, lag)?;
        let samples = &sums.samples[from..from + self.slope.len()];
        Some(self.slope.iter().zip(samples).map(|(slope, level)| slope * level).sum())
    }

    fn root(&self, a: &Pulse<'_>, b: &Pulse<'_>, near: f64) -> Option<Root> {
        let wanted = self.against(&a.sums, 0)? / a.height;
        let at = |lag: i64| Some(self.against(&b.sums, lag)? / b.height - wanted);
        // The sum grows with the lag, as the level does along the edge.
        let limit = self.slope.len();
        let mut low = signed(near.floor());
        for _ in 0..limit {
            if at(low)? < 0.0 {
                break;
            }
            low -= 1;
        }
        for _ in 0..limit {
            if at(low + 1)? >= 0.0 {
                break;
            }
            low += 1;
        }
        let values = [at(low - 1)?, at(low)?, at(low + 1)?, at(low + 2)?];
        let part = cubic_zero(values)?;
        // How fast the sum grows, over a stretch on which its noise tells little.
        let reach = signed((0.2 * a.rise.max(b.rise)).round()).max(1);
        let gain = (at(low + 1 + reach)? - at(low - reach)?) / (2 * reach + 1) as f64;
        if gain <= 0.0 {
            return None;
        }
        let slope = Weights { from: self.from, values: self.slope.clone() };
        let mut of_a = slope.clone().scaled(1.0 / (a.height * gain));
        of_a.add(&a.height_weights, -wanted / (a.height * gain));
        let from = self.laid(&b.sums, low)?;
        let mut of_b = Weights::default();
        for (from, share) in [(from, 1.0 - part), (from + 1, part)] {
            of_b.add(&Weights { from, values: self.slope.clone() }, -share / (b.height * gain));
        }
        of_b.add(&b.height_weights, wanted / (b.height * gain));
        Some(Root { lag: low as f64 + part, weights: [of_a, of_b] })
    }
}

/// Where the cubic through values at −1, 0, 1 and 2 is zero between 0 and 1.
fn cubic_zero([before, left, right, after]: [f64; 4]) -> Option<f64> {
    if left > 0.0 || right < 0.0 || left == right {
        return None;
    }
    // Newton's differences.
    let second = 0.5 * (before - 2.0 * left + right);
    let third = (after - 3.0 * right + 3.0 * left - before) / 6.0;
    let at = |x: f64| left + x * (right - left) + x * (x - 1.0) * (second + (x + 1.0) * third);
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..50 {
        let middle = f64::midpoint(low, high);
        if at(middle) < 0.0 { low = middle } else { high = middle }
    }
    Some(f64::midpoint(low, high))
}

#[cfg(test)]
#[path = "correlate_test.rs"]
mod tests;
