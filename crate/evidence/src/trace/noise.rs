//! Baseline and noise of a quiet part.
//!
//! Median and median absolute deviation say which samples belong to the quiet part (those within 4 robust standard
//! deviations); mean and standard deviation of these are then used, because the median of samples from a converter of
//! few bits is stuck to one of its steps. The factor 1.4826 makes the deviation that of a normal distribution; the
//! cut at 4 takes 0.0011 of its variance away, which is put back.
//!
//! Where neighbouring samples share their noise (a slow input, hum), their correlation is taken from the quiet part too.

use std::cmp::Ordering;
use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::simd_sums::{least, totals};
use slope_engine::rank::select;

/// Baseline and noise of a quiet part.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Baseline {
    /// Mean level, V.
    pub level: f64,
    /// Standard uncertainty of that mean, V.
    pub uncertainty: f64,
    /// Standard deviation of one sample, V; at least that of the converter's rounding.
    pub sigma: f64,
    /// The converter's step, V; 0 where samples are not seen to lie whole steps apart.
    pub quantum: f64,
    /// Samples it was taken from.
    pub samples: usize,
    /// Correlation of the noise with that of the next sample, of the one after it, and so on; empty for white noise.
    pub correlation: Vec<f64>,
}

/// Robust limit beyond which a sample is not of the quiet part, in standard deviations.
const CUT: f64 = 4.0;
/// Variance of a normal distribution cut at ±4, over its whole variance: 1 − 8φ(4)/(2Φ(4) − 1).
const KEPT: f64 = 0.998_93;
/// Longest correlation looked for, in samples.
const LAGS: usize = 64;

/// Baseline and noise of samples that hold nothing else; nothing for fewer than 8 samples.
pub fn baseline(samples: &[f64]) -> Option<Baseline> {
    baseline_of(samples, quantum(samples))
}

/// The same with the step of the converter as it is seen on the whole trace; 0 if there is none.
pub(super) fn baseline_of(samples: &[f64], quantum: f64) -> Option<Baseline> {
    if samples.len() < 8 {
        return None;
    }
    // They only say what belongs; some hundreds of samples from all over the part say it well enough.
    let mut some: Vec<f64> = samples.iter().copied().step_by(samples.len() / 500 + 1).collect();
    let median = median(&mut some);
    for sample in &mut some {
        *sample = (*sample - median).abs();
    }
    let spread = self::median(&mut some) * 1.4826;
    let limit = CUT * spread.max(0.5 * quantum);
    let [count, sum, squares] = totals(samples, samples, |sample, _| {
        let off = sample - median;
        let (one, off) = if off.abs() <= limit { (1.0, off) } else { (0.0, 0.0) };
        [one, off, off * off]
    });
    let number = count.max(1.0);
    let mean = sum / number;
    let variance = (squares - number * mean * mean).max(0.0) / (number - 1.0).max(1.0) / KEPT;
    // Rounding to steps of q adds q²/12; a quiet part within one step shows none of it.
    let sigma = variance.max(quantum * quantum / 12.0).sqrt();
    let level = median + mean;
    let correlation = correlation(samples, level, limit);
    let shared = 1.0 + 2.0 * correlation.iter().sum::<f64>();
    let averaged = sigma * (shared.max(0.1) / number).sqrt();
    // Noise far smaller than a step q of the converter does not average the rounding away: without any, the mean lies up
    // to q/2 off. The error that stays falls as exp(−2π²σ²/q²) (B. Widrow and I. Kollár, "Quantization Noise", 2008; from
    // memory). A level between two steps shows a variance of up to q²/4 by itself, which is taken for no noise here.
    let stuck = if quantum > 0.0 {
        let noise = (variance / (quantum * quantum) - 0.25).max(0.0);
        quantum * quantum / 12.0 * libm::exp(-4.0 * PI * PI * noise)
    } else {
        0.0
    };
    let uncertainty = (averaged * averaged + stuck).sqrt();
    Some(Baseline { level, uncertainty, sigma, quantum, samples: samples.len(), correlation })
}

/// Of at least one sample.
fn median(samples: &mut [f64]) -> f64 {
    let middle = samples.len() / 2;
    let even = samples.len().is_multiple_of(2);
    // A plain comparison is what a processor does soonest. What is no number is as large as any; its trace is refused.
    let Some((below, upper)) =
        select(samples, middle, |one, other| one.partial_cmp(other).unwrap_or(Ordering::Equal))
    else {
        return f64::NAN;
    };
    let lower = below.iter().copied().max_by(f64::total_cmp).filter(|_| even);
    lower.map_or(upper, |lower| f64::midpoint(lower, upper))
}

/// The step of the converter: the smallest difference of neighbours, if all samples lie whole numbers of it apart; else 0.
pub(super) fn quantum(samples: &[f64]) -> f64 {
    let [low, lowest] = least(samples, samples, |sample, _| [sample, -sample]);
    let high = -lowest;
    let tiny = 1e-9 * (high - low);
    let [smallest] = least(samples, samples.get(1..).unwrap_or_default(), |one, next| {
        let step = (next - one).abs();
        [if step > tiny { step } else { f64::INFINITY }]
    });
    if !smallest.is_finite() {
        return 0.0;
    }
    // The whole span tells the step more exactly than one difference of printed numbers does.
    let step = (high - low) / ((high - low) / smallest).round();
    let whole = |sample: &f64| {
        let steps = (sample - low) / step;
        // A half, where the two ways of rounding differ, is no whole number by either.
        (steps - steps.round_ties_even()).abs() < 0.05
    };
    if samples.iter().all(whole) { step } else { 0.0 }
}

/// Autocorrelation up to where it vanishes in its own noise; empty unless it stands out at the first lag.
fn correlation(samples: &[f64], level: f64, limit: f64) -> Vec<f64> {
    let off = |sample: f64| (sample - level).clamp(-limit, limit);
    let later = |lag: usize| samples.get(lag..).unwrap_or_default();
    // Nearly always the first lag says that there is none.
    let [squares, first] = totals(samples, later(1), |one, next| [off(one) * off(one), off(one) * off(next)]);
    let total = squares + samples.last().map_or(0.0, |last| off(*last) * off(*last));
    let chance = 1.0 / (samples.len() as f64).sqrt();
    let at = |lag: usize| totals(samples, later(lag), |one, other| [off(one) * off(other)])[0] / total;
    if total <= 0.0 || first / total < 4.0 * chance {
        return Vec::new();
    }
    (1..LAGS.min(samples.len() / 4)).map(at).take_while(|correlation| *correlation > 2.0 * chance).collect()
}

#[cfg(test)]
#[path = "noise_test.rs"]
mod tests;
