//! Tops that are cut off, that may be, and that are not.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::trace::noise::baseline;

/// What is said of a top.
#[derive(PartialEq, Debug)]
enum Said {
    Cut,
    Perhaps,
    Nothing,
}

/// Numbers with a standard deviation of about 1 that repeat after 101 samples and come in no order.
fn ripple(at: usize) -> f64 {
    (((at * at * 37 + at * 11) % 101) as f64 - 50.0) / 29.2
}

/// 400 quiet samples, then a straight rise over 20 and a top of 1 V that falls by `fall` a sample; cut at `limit` and rounded
/// to steps of `quantum`.
fn said(noise: f64, fall: f64, limit: f64, quantum: f64) -> Said {
    let samples: Vec<f64> = (0..500)
        .map(|at| {
            let since = at as f64 - 400.0;
            let level = (since / 20.0).clamp(0.0, 1.0) - fall * (since - 20.0).max(0.0);
            let sample = (level + noise * ripple(at)).min(limit);
            if quantum > 0.0 { (sample / quantum).round() * quantum } else { sample }
        })
        .collect();
    let mut noise = baseline(&samples[..400]).unwrap();
    noise.quantum = quantum;
    let limit = Limit::of(&samples, [418.0, 458.0], &noise);
    match (limit.cuts(), limit.may_cut()) {
        (true, _) => Said::Cut,
        (false, true) => Said::Perhaps,
        (false, false) => Said::Nothing,
    }
}

#[test]
fn noise_that_stops_at_a_level_is_cut_off() {
    for quantum in [0.0, 0.001, 0.01] {
        for noise in [0.01, 0.03] {
            assert_eq!(said(noise, 0.0, 0.9, quantum), Said::Cut, "noise {noise}, step {quantum}");
            assert_eq!(said(noise, 0.0, 2.0, quantum), Said::Nothing, "noise {noise}, step {quantum}");
        }
    }
}

#[test]
fn flanks_that_point_beyond_a_flat_top_cut_it_off() {
    assert_eq!(said(0.001, 0.01, 0.9, 0.01), Said::Cut);
    assert_eq!(said(0.001, 0.01, 2.0, 0.01), Said::Nothing);
}

/// A step of 0.02 V swallows noise of 0.002 V: a top at 1 V and one cut off at 0.9 V look alike.
#[test]
fn a_top_that_is_flat_to_the_last_digit_may_be_cut_off() {
    assert_eq!(said(0.002, 0.0, 2.0, 0.02), Said::Perhaps);
    assert_eq!(said(0.002, 0.0, 0.9, 0.02), Said::Perhaps);
}
