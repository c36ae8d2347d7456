//! Echoes that run into the top of a trace, and tops that climb by themselves.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::Waveform;
use super::*;

/// Small numbers that repeat after 97 samples, with a standard deviation of about 1.
fn ripple(at: usize) -> f64 {
    (((at * 37) % 97) as f64 - 48.0) / 28.0
}

/// A logistic edge about sample 400 that takes 20 samples from 10 to 90 %, and a fall by the factor e in so many.
fn answer(at: f64, fall: f64) -> f64 {
    let behind = at - 400.0;
    libm::exp(-behind.max(0.0) / fall) / (1.0 + libm::exp(-behind / 4.55))
}

fn trace(fall: f64, height: f64, noise: f64, late: f64) -> Vec<f64> {
    let level = |at: f64| answer(at, fall) + height * answer(at - late, fall);
    (0..1_000).map(|at| level(at as f64) + noise * ripple(at)).collect()
}

fn told(one: &[f64], other: &[f64]) -> Option<usize> {
    let wave = |samples| Waveform { start: 0.0, step: 0.2, uneven: 0.0, samples };
    echo(&Pulse::find(&wave(one)).unwrap(), &Pulse::find(&wave(other)).unwrap())
}

#[test]
fn an_echo_on_one_top_is_told_there_and_one_on_both_is_not() {
    for noise in [0.0, 0.01] {
        let sound = trace(1e9, 0.0, noise, 0.0);
        for late in [25.0, 35.0, 50.0] {
            let echoed = trace(1e9, 0.2, noise, late);
            let sample = told(&echoed, &sound).unwrap() as f64;
            assert!((sample - 400.0 - late).abs() < 20.0, "{late}: {sample}");
            assert_eq!(told(&sound, &echoed), None, "{late}");
            assert_eq!(told(&echoed, &echoed), None, "{late}");
        }
    }
}

/// Detectors that fall otherwise, and a top that climbs on as one low-pass does, on both traces.
#[test]
fn tops_of_other_detectors_are_no_echo() {
    let (slow, fast) = (trace(400.0, 0.0, 0.005, 0.0), trace(100.0, 0.0, 0.005, 0.0));
    assert_eq!((told(&slow, &fast), told(&fast, &slow)), (None, None));
    let low_pass = |lasts: f64| -> Vec<f64> {
        let level = |at: usize| 1.0 - libm::exp(-(at as f64 - 400.0).max(0.0) / lasts);
        (0..1_000).map(|at| level(at) + 0.005 * ripple(at)).collect()
    };
    assert_eq!((told(&low_pass(9.0), &low_pass(14.0)), told(&low_pass(14.0), &low_pass(9.0))), (None, None));
}
