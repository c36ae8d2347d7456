//! Baseline and noise of made quiet parts.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

/// Sum of 12 uniform numbers less 6: nearly normal, variance 1.
fn noise(count: usize) -> Vec<f64> {
    let mut state = 1_u64;
    let mut unit = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 11) as f64 / (1_u64 << 53) as f64
    };
    (0..count).map(|_| (0..12).map(|_| unit()).sum::<f64>() - 6.0).collect()
}

#[test]
fn mean_and_deviation_of_white_noise() {
    let samples: Vec<f64> = noise(10_000).iter().map(|noise| 3.0 + 0.1 * noise).collect();
    let found = baseline(&samples).unwrap();
    assert!((found.level - 3.0).abs() < 4.0 * found.uncertainty);
    assert!((found.uncertainty / 0.001 - 1.0).abs() < 0.05);
    assert!((found.sigma / 0.1 - 1.0).abs() < 0.03, "{}", found.sigma);
    assert!(found.correlation.is_empty());
}

#[test]
fn a_few_wild_samples_change_little() {
    let mut samples = noise(1_000);
    let sound = baseline(&samples).unwrap();
    samples[100..130].fill(50.0);
    let found = baseline(&samples).unwrap();
    assert!((found.level - sound.level).abs() < 0.02 && (found.sigma / sound.sigma - 1.0).abs() < 0.05);
}

#[test]
fn a_converters_rounding_is_part_of_the_noise() {
    let quantum = 0.25;
    let rounded = |sigma: f64, level: f64| -> Vec<f64> {
        noise(4_000).iter().map(|noise| ((level + sigma * noise) / quantum).round() * quantum).collect()
    };
    let found = baseline(&rounded(0.5, 1.1)).unwrap();
    assert!((found.quantum - quantum).abs() < 1e-12);
    let expected = (0.5_f64 * 0.5 + quantum * quantum / 12.0).sqrt();
    assert!((found.sigma / expected - 1.0).abs() < 0.04, "{}", found.sigma);
    // Noise of a tenth of a step does not average the rounding away; the uncertainty says so.
    let stuck = baseline(&rounded(0.025, 1.1)).unwrap();
    assert!((stuck.level - 1.1).abs() < 2.0 * stuck.uncertainty && stuck.uncertainty > 0.05);
    // All samples alike.
    let flat = baseline(&[0.5; 100]).unwrap();
    assert_eq!((flat.level, flat.sigma, flat.uncertainty), (0.5, 0.0, 0.0));
}

#[test]
fn shared_noise_is_seen_and_makes_the_mean_less_certain() {
    let fresh = noise(10_000);
    let mut last = 0.0;
    let memory: f64 = 0.8;
    let samples: Vec<f64> = fresh
        .iter()
        .map(|noise| {
            last = memory * last + (1.0 - memory * memory).sqrt() * noise;
            last
        })
        .collect();
    let found = baseline(&samples).unwrap();
    assert!((found.correlation[0] - 0.8).abs() < 0.03 && (found.correlation[1] - 0.64).abs() < 0.05);
    // The variance of the mean is larger by (1 + ρ)/(1 − ρ) = 9.
    assert!((found.uncertainty / (found.sigma / 100.0) / 3.0 - 1.0).abs() < 0.1);
}

#[test]
fn too_few_samples() {
    assert_eq!(baseline(&[1.0; 7]), None);
}
