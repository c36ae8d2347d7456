//! A trace as it is drawn: least and greatest sample of each stretch, so that no spike is lost.

use serde::{Deserialize, Serialize};

use super::{Waveform, whole};

/// A trace as it is drawn.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Envelope {
    /// Time of the first stretch's first sample, ns.
    pub start: f64,
    /// From one stretch to the next, ns.
    pub step: f64,
    /// Samples in a stretch; with 1 the two lists are the same.
    pub each: usize,
    /// Least sample of each stretch, V.
    pub least: Vec<f64>,
    /// Greatest, V.
    pub greatest: Vec<f64>,
}

/// The trace from one time to another (ns), in at most `points` stretches, with one more sample to either side.
pub fn envelope(wave: &Waveform<'_>, from: f64, to: f64, points: usize) -> Envelope {
    let last = wave.samples.len().saturating_sub(1);
    let place = |time: f64| whole(((time - wave.start) / wave.step).max(0.0)).min(last);
    let (first, end) = (place(from).saturating_sub(1), (place(to) + 2).min(last + 1));
    let samples = wave.samples.get(first..end).unwrap_or_default();
    let each = samples.len().div_ceil(points.max(1)).max(1);
    let bound = |of: fn(f64, f64) -> f64| {
        samples.chunks(each).map(move |chunk| chunk.iter().copied().fold(f64::NAN, of))
    };
    Envelope {
        start: wave.time(first as f64),
        step: wave.step * each as f64,
        each,
        least: bound(f64::min).collect(),
        greatest: bound(f64::max).collect(),
    }
}

#[cfg(test)]
#[path = "envelope_test.rs"]
mod tests;
