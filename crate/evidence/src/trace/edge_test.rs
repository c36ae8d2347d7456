//! Times of edges that are known, without noise and with a little.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

/// A straight rise of 40 samples from 100.3141 on, to a flat top of 2 V, over a baseline of −0.5 V; samples of 0.5 ns.
fn ramp() -> Vec<f64> {
    (0..400).map(|at| 2.0 * ((f64::from(at) - 100.3141) / 40.0).clamp(0.0, 1.0) - 0.5).collect()
}

fn wave(samples: &[f64]) -> Waveform<'_> {
    Waveform { start: 7.0, step: 0.5, uneven: 0.0, samples }
}

/// Where the ramp has a share of its height, ns.
fn at(share: f64) -> f64 {
    7.0 + 0.5 * (100.3141 + 40.0 * share)
}

#[test]
fn a_straight_edge_is_crossed_where_it_is_crossed() {
    let samples = ramp();
    for fraction in [0.2, 0.3, 0.5, 0.7, 0.8] {
        let found = edge(&wave(&samples), &Method::ConstantFraction { fraction }).unwrap();
        assert!((found.time - at(fraction)).abs() < 1e-9, "{fraction}: {} {}", found.time, at(fraction));
        assert!((found.level - (2.0 * fraction - 0.5)).abs() < 1e-9);
        let level = edge(&wave(&samples), &Method::FixedLevel { volts: 2.0 * fraction }).unwrap();
        assert!((level.time - found.time).abs() < 1e-9);
    }
    let found = edge(&wave(&samples), &Method::default()).unwrap();
    assert!((found.slope - 2.0 / 20.0).abs() < 1e-9, "2 V in 20 ns: {}", found.slope);
    assert!((found.baseline + 0.5).abs() < 1e-12 && (found.height - 2.0).abs() < 1e-9);
    assert_eq!(found.sample, 120);
    // Without noise only what lies between the samples is left.
    let Waveform { step, .. } = wave(&samples);
    let rise = found.rise / step;
    assert!((found.uncertainty - 0.2 / (rise * rise) * step).abs() < 1e-15 && found.jitter == 0.0);
}

#[test]
fn a_line_through_a_straight_edge_meets_the_baseline_where_it_begins() {
    let samples = ramp();
    let found = edge(&wave(&samples), &Method::EdgeLine).unwrap();
    assert!((found.time - at(0.0)).abs() < 1e-6, "{} {}", found.time, at(0.0));
    assert!((found.level + 0.5).abs() < 1e-12);
}

#[test]
fn levels_off_the_edge_are_refused() {
    let samples = ramp();
    for volts in [-0.1, 0.0, 0.01, 1.99, 2.5, f64::NAN] {
        let found = edge(&wave(&samples), &Method::FixedLevel { volts });
        assert!(matches!(found, Err(TraceError::Level { .. })), "{volts}: {found:?}");
    }
    for fraction in [0.0, 0.05, 0.95, 1.0, f64::NAN] {
        let found = edge(&wave(&samples), &Method::ConstantFraction { fraction });
        assert!(matches!(found, Err(TraceError::Fraction { .. })), "{fraction}");
    }
}

#[test]
fn an_edge_between_two_samples_is_crossed_on_the_straight_line_between_them() {
    let mut samples = vec![0.0; 100];
    samples.extend((0..100).map(|at| libm::exp(-f64::from(at) / 1e4)));
    let found = edge(&wave(&samples), &Method::default()).unwrap();
    assert!((found.time - (7.0 + 0.5 * 99.5)).abs() < 1e-3, "{}", found.time);
    assert!(found.flags.contains(&Flag::FewOnEdge { samples: 1 }));
    let line = edge(&wave(&samples), &Method::EdgeLine);
    assert!(matches!(line, Err(TraceError::FewOnEdge { .. })), "{line:?}");
}

/// The stated uncertainty is the change that the noise makes: each sample moved by σ, one after another, adds its
/// square.
#[test]
fn the_uncertainty_is_that_of_every_sample_together() {
    let smooth = |x: f64| 1.0 / (1.0 + libm::exp(-x / 6.0));
    let ripple = |at: usize| 0.01 * ((((at * 37) % 97) as f64 - 48.0) / 28.0);
    let samples: Vec<f64> =
        (0..600).map(|at| smooth(at as f64 - 300.3) + if at < 200 { ripple(at) } else { 0.0 }).collect();
    for method in
        [Method::default(), Method::ConstantFraction { fraction: 0.3 }, Method::FixedLevel { volts: 0.4 }]
    {
        let found = edge(&wave(&samples), &method).unwrap();
        let mut sum = 0.0;
        for moved in 200..600 {
            let mut samples = samples.clone();
            samples[moved] += 0.01 * found.sigma;
            let change = edge(&wave(&samples), &method).unwrap().time - found.time;
            sum += change * change * 1e4;
        }
        // The baseline's own part is not in the sum; correlation of the made-up ripple is not in it either.
        let ratio = found.uncertainty / sum.sqrt();
        assert!((0.7..1.3).contains(&ratio), "{method:?}: {ratio}");
    }
}
