//! Samples that were taken at jittered times, as they would have been at equal steps.
//!
//! Each place takes the sample nearest to it, carried there along the line through that sample's two neighbours. On a straight
//! part of an edge that is exact, on a bent one off by the bend over less than half a step, as a straight line between two
//! samples is. The noise of a sample stays what it was to a few per cent, where an interpolation between samples averages it
//! away and has a quiet part look quieter than the edge: `tests/numbers/trace_coverage.rs` holds how often delays are covered.

use super::noise::quantum;

/// The samples at equal steps from the first of the `times` to the last, as many as there are; the times advance.
///
/// A converter's steps, and the highest and the lowest level that it knows, stay those of its samples.
pub(super) fn at_even_steps(times: &[f64], samples: &[f64]) -> Vec<f64> {
    let last = times.len().min(samples.len()).saturating_sub(1);
    if last < 2 {
        return samples.to_vec();
    }
    let step = (times[last] - times[0]) / last as f64;
    let lowest = samples.iter().copied().fold(f64::INFINITY, f64::min);
    let highest = samples.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let quantum = quantum(samples);
    let rounded = |volts: f64| {
        if quantum > 0.0 { lowest + ((volts - lowest) / quantum).round_ties_even() * quantum } else { volts }
    };
    let mut nearest = 0;
    let carried = (0..=last).map(|place| {
        let time = times[0] + place as f64 * step;
        let off = |sample: usize| (times[sample] - time).abs();
        while nearest < last && off(nearest + 1) <= off(nearest) {
            nearest += 1;
        }
        let middle = nearest.clamp(1, last - 1);
        let (before, after) = (middle - 1, middle + 1);
        let slope = (samples[after] - samples[before]) / (times[after] - times[before]);
        rounded(samples[middle] + slope * (time - times[middle])).clamp(lowest, highest)
    });
    carried.collect()
}

#[cfg(test)]
#[path = "even_steps_test.rs"]
mod tests;
