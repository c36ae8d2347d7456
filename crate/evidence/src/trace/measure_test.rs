//! One call gives every method's delay or its refusal, and what to draw.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::Channel;
use super::*;

fn recording(begin: f64, height: f64, detector: Detector) -> Recording {
    let level = |at: usize| {
        let x = (at as f64 - begin) / 10.0;
        height * libm::exp(-0.5 * x * x) + 0.001 * ((((at * at * 7 + at * 37) % 101) as f64 - 50.0) / 29.0)
    };
    let samples = (0..1_000).map(level).collect();
    let channels = vec![Channel { detector: Some(detector), label: String::new(), samples }];
    Recording {
        start: 0.0,
        is_start_told: true,
        is_unit_supposed: false,
        step: 0.2,
        uneven: 0.0,
        channels,
        settings: Vec::new(),
    }
}

#[test]
fn all_methods_and_the_walk() {
    let (a, b) = (recording(400.0, 1.0, Detector::A), recording(440.0, 0.5, Detector::B));
    let found = measure(&a, &b, &Asked::default());
    assert_eq!(found.outcomes.len(), 5);
    for outcome in &found.outcomes {
        let delay = outcome.delay.as_ref().unwrap();
        let walks = matches!(outcome.method, DelayMethod::FixedLevel { .. });
        assert_eq!((delay.delay - 8.0).abs() > 0.1, walks, "{:?} {}", outcome.method, delay.delay);
    }
    let (walk, u) = found.walk.unwrap();
    assert!(walk > 0.5 && u < 0.1 && u > 0.0);
    assert!((found.level.unwrap() - 0.25).abs() < 0.02);
    for side in &found.sides {
        let drawn = side.drawn.unwrap();
        let envelope = side.envelope.as_ref().unwrap();
        assert!(drawn.region[0] <= envelope.start + 0.41 && envelope.least.len() <= 1_000);
        assert!(
            drawn.quiet[1] < drawn.top[0] && drawn.region[0] < drawn.top[0] && drawn.top[1] < drawn.region[1]
        );
    }
}

#[test]
fn one_bad_trace_does_not_hide_the_other() {
    let (a, mut b) = (recording(400.0, 1.0, Detector::A), recording(440.0, 0.0, Detector::B));
    let found = measure(&a, &b, &Asked::default());
    assert!(found.sides[0].drawn.is_some() && found.sides[1].drawn.is_none());
    assert!(matches!(found.sides[1].refused, Some(TraceError::NoPulse { .. })));
    assert!(found.sides[1].envelope.is_some() && found.walk.is_none());
    assert!(found.outcomes.iter().all(|outcome| matches!(outcome.refused, Some((Detector::B, _)))));
    b.channels.clear();
    let found = measure(&a, &b, &Asked { points: 0, ..Asked::default() });
    assert!(found.sides[1].refused.is_some() && found.sides.iter().all(|side| side.envelope.is_none()));
}
