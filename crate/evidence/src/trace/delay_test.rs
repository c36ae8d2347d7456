//! Delays of edges that are known.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::Detector;
use super::*;

const METHODS: [DelayMethod; 5] = [
    DelayMethod::FixedLevel { volts: 0.3 },
    DelayMethod::ConstantFraction { fraction: 0.5 },
    DelayMethod::EdgeLine,
    DelayMethod::CrossCorrelation { refined: true },
    DelayMethod::CrossCorrelation { refined: false },
];

/// A parabola through three lags is one of a curve that is none, and a line through a bent edge hangs on where it ends:
/// good to two hundredths of a sample of 0.2 ns. Without noise the others have windows of few samples, and are good to a
/// hundredth.
fn allowed(method: DelayMethod) -> f64 {
    match method {
        DelayMethod::CrossCorrelation { refined: false } | DelayMethod::EdgeLine => 4e-3,
        _ => 2e-3,
    }
}

/// A smooth pulse from a place on, of a height, over 1,000 samples.
fn pulse(begin: f64, height: f64) -> Vec<f64> {
    let level = |at: usize| {
        let x = (at as f64 - begin) / 10.0;
        height * libm::exp(-0.5 * x * x)
    };
    (0..1_000).map(level).collect()
}

fn wave(samples: &[f64], start: f64) -> Waveform<'_> {
    Waveform { start, step: 0.2, uneven: 0.0, samples }
}

#[test]
fn every_method_finds_a_delay_between_samples() {
    let a = pulse(400.0, 1.0);
    for part in [0.0, 0.1, 0.37, 0.5, 0.81] {
        let b = pulse(437.0 + part, 1.0);
        for method in METHODS {
            let found = delay(&wave(&a, -5.0), &wave(&b, -3.0), method).unwrap();
            // The records themselves begin 2 ns apart.
            let expected = 2.0 + 0.2 * (37.0 + part);
            let off = found.delay - expected;
            assert!(off.abs() < allowed(method), "{method:?} {part}: {off}");
        }
    }
}

/// A weaker pulse crosses a fixed level later; nothing else minds.
#[test]
fn only_a_fixed_level_walks() {
    let (a, b) = (pulse(400.0, 1.0), pulse(437.25, 0.5));
    for method in METHODS {
        let off = delay(&wave(&a, 0.0), &wave(&b, 0.0), method).unwrap().delay - 7.45;
        if matches!(method, DelayMethod::FixedLevel { .. }) {
            // exp(−x²/2) is 0.3 at 1.5518 and 0.6 at 1.0108. Where the edge is bent, the mean over the window of a
            // crossing lies off the level itself: some per cent of the walk.
            assert!((off - 2.0 * (1.5518 - 1.0108)).abs() < 0.06, "{off}");
        } else {
            assert!(off.abs() < allowed(method), "{method:?}: {off}");
        }
    }
}

#[test]
fn a_delay_the_other_way_round_is_its_opposite() {
    let (a, b) = (pulse(400.0, 1.0), pulse(377.6, 0.7));
    let methods = METHODS.iter().filter(|method| !matches!(method, DelayMethod::FixedLevel { .. }));
    for method in methods {
        let found = delay(&wave(&a, 0.0), &wave(&b, 0.0), *method).unwrap().delay;
        let back = delay(&wave(&b, 0.0), &wave(&a, 0.0), *method).unwrap().delay;
        let allowed = allowed(*method);
        assert!(
            (found + 4.48).abs() < allowed && (found + back).abs() < allowed,
            "{method:?}: {found} {back}"
        );
    }
}

#[test]
fn what_is_refused_names_the_trace() {
    let (a, flat) = (pulse(400.0, 1.0), vec![0.0; 1_000]);
    for method in METHODS {
        let found = delay(&wave(&a, 0.0), &wave(&flat, 0.0), method);
        assert!(matches!(found, Err((Detector::B, TraceError::NoPulse { .. }))), "{found:?}");
        let found = delay(&wave(&flat, 0.0), &wave(&a, 0.0), method);
        assert!(matches!(found, Err((Detector::A, TraceError::NoPulse { .. }))), "{found:?}");
    }
    let slow = Waveform { start: 0.0, step: 0.4, uneven: 0.0, samples: &a };
    let found = delay(&wave(&a, 0.0), &slow, DelayMethod::CrossCorrelation { refined: true });
    assert!(matches!(found, Err((_, TraceError::UnequalSteps { .. }))), "{found:?}");
    assert!(delay(&wave(&a, 0.0), &slow, DelayMethod::ConstantFraction { fraction: 0.5 }).is_ok());
}

#[test]
fn the_difference_of_two_methods_is_less_uncertain_than_either() {
    let ripple = |at: usize| 0.01 * ((((at * at * 7 + at * 37) % 101) as f64 - 50.0) / 29.0);
    let noisy = |samples: Vec<f64>| -> Vec<f64> {
        samples.iter().enumerate().map(|(at, sample)| sample + ripple(at)).collect()
    };
    let (a, b) = (noisy(pulse(400.0, 1.0)), noisy(pulse(437.0, 0.9)));
    let (a, b) = (Pulse::find(&wave(&a, 0.0)).unwrap(), Pulse::find(&wave(&b, 0.0)).unwrap());
    let [one, other] = [0.45, 0.5].map(|fraction| DelayMethod::ConstantFraction { fraction });
    let (differs, u) = difference(&a, &b, one, other).unwrap();
    let [first, second] = [one, other].map(|method| between(&a, &b, method).unwrap().0);
    assert!((differs - (first.delay - second.delay)).abs() < 1e-12);
    assert!(u > 0.0 && u < 0.5 * first.uncertainty.min(second.uncertainty), "{u} {}", first.uncertainty);
    assert_eq!(difference(&a, &b, one, one).unwrap(), (0.0, 0.0));
}

/// Whatever samples come, there is a finite answer or a refusal.
#[test]
fn no_samples_whatever_stop_it() {
    let mut state = 9_u64;
    let mut next = |below: usize| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(state >> 33).unwrap() % below
    };
    let mut given = 0;
    for _ in 0..3_000 {
        let count = 20 + next(200);
        let (begin, rise, top) = (next(count), 1 + next(40), [1.0, -3.0, 1e-6, 1e200, 0.0][next(5)]);
        let noise = [0.0, 0.01, 0.2, 1.0][next(4)];
        let mut one = || -> Vec<f64> {
            let level = |at: usize| ((at as f64 - begin as f64) / rise as f64).clamp(0.0, 1.0);
            let mut samples: Vec<f64> = (0..count)
                .map(|at| top * (level(at) + noise * (next(1_000) as f64 / 1_000.0 - 0.5)))
                .collect();
            for _ in 0..next(3) {
                let (at, value) = (next(count), [0.0, 1e300, -1.0, f64::NAN, f64::MIN_POSITIVE][next(5)]);
                samples[at] = value;
            }
            samples
        };
        let (a, b) = (one(), one());
        for method in METHODS {
            if let Ok(found) = delay(&wave(&a, 0.0), &wave(&b, 0.0), method) {
                given += 1;
                assert!(found.delay.is_finite() && found.uncertainty.is_finite() && found.uncertainty >= 0.0);
            }
        }
    }
    assert!(given > 500, "{given}");
}

/// The edge of two low-passes about sample 400, a step of 0.2 ns, with what follows it by so many samples and parts of its height.
fn low_passed(slower: f64, echo: Option<(f64, f64)>) -> Vec<f64> {
    let answer = |at: f64| {
        let x = (at - 400.0).max(0.0) / (6.0 * slower);
        1.0 - (1.0 + x) * libm::exp(-x)
    };
    let level = |at: f64| answer(at) + echo.map_or(0.0, |(late, height)| height * answer(at - late));
    (0..1_000).map(|at| level(f64::from(at)) + 0.004 * (f64::from((at * 37) % 97) - 48.0) / 28.0).collect()
}

/// From 10 to 90 % it takes 3.36 × 6 samples: half of that later an echo of a fifth is in the edge, and a detector slower by a fifth
/// is another one; one slower by a fiftieth is one of a kind.
#[test]
fn edges_of_two_shapes_are_told() {
    let sound = low_passed(1.0, None);
    let told = |other: &[f64]| {
        let found = delay(&wave(&sound, 0.0), &wave(other, 0.0), METHODS[1]).unwrap();
        let is = |flag: &Flag| matches!(flag, Flag::UnlikeEdge { .. });
        found.edges.map(|edge| edge.flags.iter().any(is))
    };
    for other in [low_passed(1.0, Some((10.0, 0.2))), low_passed(1.2, None), low_passed(0.8, None)] {
        assert_eq!(told(&other), [false, true]);
    }
    for other in [low_passed(1.0, None), low_passed(1.02, None)] {
        assert_eq!(told(&other), [false, false]);
    }
}
