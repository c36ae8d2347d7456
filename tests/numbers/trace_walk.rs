//! Walk: by how much a fixed level moves the speed of light as the light weakens with distance, and that a constant
//! fraction does not.
//!
//! What is to be expected of a fixed level follows from the shape of the pulse alone: the place where the shape reaches
//! the level's share of each height, found by halving on the formula itself.
#![expect(clippy::unwrap_used, reason = "tests")]

use slope_bench::chance::Chance;
use slope_bench::record::{Bench, DetectorResponse};
use slope_evidence::trace::{Asked, DelayMethod, Detector, compare_walk, measure};

/// ns/m of light in vacuum.
const SLOPE: f64 = 1e9 / 299_792_458.0;

/// When the pulse of a detector reaches a level under weakened light, ns.
fn crosses(detector: &DetectorResponse, level: f64, light: f64) -> f64 {
    let (mut low, mut high) = (-10.0, 3.0);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if detector.level(middle, light) < level { low = middle } else { high = middle }
    }
    low
}

/// Slope of the plain least-squares line.
fn slope(x: &[f64], y: &[f64]) -> f64 {
    let mean = |list: &[f64]| list.iter().sum::<f64>() / list.len() as f64;
    let (mean_x, mean_y) = (mean(x), mean(y));
    let spread: f64 = x.iter().map(|x| (x - mean_x) * (x - mean_x)).sum();
    x.iter().zip(y).map(|(x, y)| (x - mean_x) * (y - mean_y)).sum::<f64>() / spread
}

#[test]
fn a_fixed_level_moves_v_as_predicted_and_a_constant_fraction_does_not() {
    let mut bench = Bench { fall_off: 12.0, ..Bench::default() };
    bench.digitiser.noise = 0.004;
    let level = 0.2;
    let mut chance = Chance::seeded(41);
    let places: Vec<f64> = (0..14).map(|at| 0.5 + 0.4 * f64::from(at)).collect();
    let (mut by_level, mut by_fraction, mut walk, mut u, mut predicted) =
        (vec![], vec![], vec![], vec![], vec![]);
    for d in &places {
        let light = bench.light(*d);
        let recording = bench.record(2.0 + SLOPE * d, light, &mut chance);
        let asked = Asked { level: Some(level), points: 0, ..Asked::default() };
        let measured = measure(&recording, &recording, &asked);
        let found = |wanted: DelayMethod| {
            let outcome = measured.outcomes.iter().find(|outcome| outcome.method == wanted).unwrap();
            outcome.delay.as_ref().unwrap().delay
        };
        by_level.push(found(DelayMethod::FixedLevel { volts: level }));
        by_fraction.push(found(DelayMethod::ConstantFraction { fraction: 0.5 }));
        let (difference, uncertainty) = measured.walk.unwrap();
        walk.push(difference);
        u.push(uncertainty);
        predicted.push(crosses(&bench.b, level, light) - crosses(&bench.a, level, 1.0));
    }
    assert!(recording_is_of(&bench));

    let expected = slope(&places, &predicted);
    let shift = SLOPE / (SLOPE + expected) - 1.0;
    assert!(shift < -0.05, "the walk of this bench is no trifle: {shift}");

    // The fixed level: v is off by what the shape foretells.
    let seen = SLOPE / slope(&places, &by_level) - 1.0;
    assert!((seen - shift).abs() < 0.1 * shift.abs(), "{seen} for {shift}");
    // The constant fraction: v is not off beyond its own uncertainty, here some 0.05 %.
    let seen = SLOPE / slope(&places, &by_fraction) - 1.0;
    assert!(seen.abs() < 0.002, "{seen}");
    // The line of the differences says so beforehand.
    let line = compare_walk(&places, &walk, &u).unwrap();
    let (told, uncertainty) = line.shift(slope(&places, &by_fraction));
    assert!(
        (told - shift).abs() < 0.1 * shift.abs() && uncertainty < 0.01,
        "{told} ± {uncertainty} for {shift}"
    );
}

/// The far detector is the one taken as B.
fn recording_is_of(bench: &Bench) -> bool {
    let recording = bench.record(5.0, 1.0, &mut Chance::seeded(1));
    recording.channels.len() == 2
        && recording.channels[0].detector == Some(Detector::A)
        && recording.channels[1].detector == Some(Detector::B)
}
