//! A line or a parabola through the samples between two places.
//!
//! Samples at the ends count by how much of them lies between, so that what is fitted moves smoothly with the places.

use super::weights::Weights;
use super::whole;

/// The samples between two places, and the straight line through them.
pub(super) struct Stretch {
    pub from: usize,
    /// How much of each sample lies between the places.
    shares: Vec<f64>,
    pub total: f64,
    /// Mean place.
    pub middle: f64,
    /// Level of the line there.
    pub mean: f64,
    /// Volts a sample.
    pub slope: f64,
    /// Sum of squared distances from the mean place.
    pub spread: f64,
}

impl Stretch {
    pub fn of(samples: &[f64], low: f64, high: f64) -> Self {
        let last = samples.len().saturating_sub(1);
        let (from, to) = (whole((low + 0.5).max(0.0)).min(last), whole((high + 0.5).max(0.0)).min(last));
        let share = |at: usize| ((at as f64 + 0.5).min(high) - (at as f64 - 0.5).max(low)).max(0.0);
        let shares: Vec<f64> = (from..=to).map(share).collect();
        let rows = || {
            shares.iter().zip(&samples[from..=to]).enumerate().map(|(i, (s, y))| ((from + i) as f64, *s, *y))
        };
        let total: f64 = shares.iter().sum();
        let middle = rows().map(|(x, share, _)| share * x).sum::<f64>() / total;
        let mean = rows().map(|(_, share, y)| share * y).sum::<f64>() / total;
        let spread: f64 = rows().map(|(x, share, _)| share * (x - middle) * (x - middle)).sum();
        let slope = rows().map(|(x, share, y)| share * (x - middle) * y).sum::<f64>() / spread;
        Self { from, shares, total, middle, mean, slope, spread }
    }

    /// By how much each sample counts in the mean level.
    pub fn mean_weights(&self) -> Weights {
        self.weights(|_| 1.0 / self.total)
    }

    /// By how much each sample counts in the slope.
    pub fn slope_weights(&self) -> Weights {
        self.weights(|x| x / self.spread)
    }

    /// By how much each sample counts in the level of the parabola at a place.
    pub fn parabola_at(&self, place: f64) -> Weights {
        let cubes = self.sum(|x| x * x * x);
        let bent = |x: f64| x * x - cubes / self.spread * x - self.spread / self.total;
        let bend = self.sum(|x| bent(x) * bent(x));
        let at = place - self.middle;
        let curved = if bend > 0.0 { bent(at) / bend } else { 0.0 };
        self.weights(|x| 1.0 / self.total + x * at / self.spread + bent(x) * curved)
    }

    /// Sum over the samples of a function of their distance from the mean place.
    fn sum(&self, of: impl Fn(f64) -> f64) -> f64 {
        let rows = self.shares.iter().enumerate();
        rows.map(|(index, share)| share * of((self.from + index) as f64 - self.middle)).sum()
    }

    fn weights(&self, of: impl Fn(f64) -> f64) -> Weights {
        let rows = self.shares.iter().enumerate();
        let values = rows.map(|(index, share)| share * of((self.from + index) as f64 - self.middle));
        Weights { from: self.from, values: values.collect() }
    }
}
