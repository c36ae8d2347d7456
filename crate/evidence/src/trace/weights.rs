//! Estimates as linear functions of the samples, from which their uncertainties follow.

use super::Baseline;

/// How much each of some neighbouring samples counts.
#[derive(Clone, Debug, Default)]
pub(super) struct Weights {
    /// The first sample that counts.
    pub from: usize,
    pub values: Vec<f64>,
}

impl Weights {
    /// Adds a multiple of others.
    pub fn add(&mut self, other: &Self, factor: f64) {
        if self.values.is_empty() {
            self.from = other.from;
        }
        if other.from < self.from {
            self.values.splice(0..0, std::iter::repeat_n(0.0, self.from - other.from));
            self.from = other.from;
        }
        let offset = other.from - self.from;
        self.values.resize(self.values.len().max(offset + other.values.len()), 0.0);
        for (value, added) in self.values.iter_mut().skip(offset).zip(&other.values) {
            *value += factor * added;
        }
    }

    /// The sum of weighted samples.
    pub fn of(&self, samples: &[f64]) -> f64 {
        let samples = samples.get(self.from..).unwrap_or_default();
        self.values.iter().zip(samples).map(|(weight, sample)| weight * sample).sum()
    }

    /// The same times a factor.
    pub fn scaled(mut self, factor: f64) -> Self {
        for value in &mut self.values {
            *value *= factor;
        }
        self
    }

    /// Variance of the weighted sum of samples that are counted from the baseline: its error goes with the sum of the
    /// weights.
    pub fn variance(&self, noise: &Baseline) -> f64 {
        let own: f64 = self.values.iter().map(|weight| weight * weight).sum();
        let shared: f64 = noise
            .correlation
            .iter()
            .enumerate()
            .map(|(lag, correlation)| {
                let later = self.values.iter().skip(lag + 1);
                2.0 * correlation * self.values.iter().zip(later).map(|(one, other)| one * other).sum::<f64>()
            })
            .sum();
        let sum: f64 = self.values.iter().sum();
        // A correlation that was cut short can leave a difference below 0; a tenth of the white noise is the floor.
        noise.sigma * noise.sigma * (own + shared).max(0.1 * own)
            + sum * sum * noise.uncertainty * noise.uncertainty
    }
}
