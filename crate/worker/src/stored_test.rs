//! What the notebook keeps, held against the notebook's own reader.

#![expect(clippy::unwrap_used, reason = "tests")]

use slope_bench::record::{Bench, Style, both_as_text};
use slope_engine::budget::Random;
use slope_evidence::trace::Asked;
use slope_of_light::notebook::{Estimator, Traces as Stored};

use super::{LevelOf, common_level, short, up};
use crate::reading::Reading;

fn reading(delay: f64, light: f64) -> Reading {
    let recording = Bench::default().record(delay, light, &mut Random::new(11, 0));
    let mut reading = Reading::default();
    let text = both_as_text(&recording, &Style::default());
    reading.add("a 0450mm.csv", text.as_bytes(), None, &"0".repeat(64)).unwrap();
    reading
}

#[test]
fn the_notebook_reads_it() {
    let measured = reading(6.5, 0.5).measure(&Asked::default(), LevelOf::Run).unwrap();
    let traces = measured.evidence.as_ref().unwrap();
    let stored: Stored = serde_json::from_str(&serde_json::to_string(traces).unwrap()).unwrap();
    assert_eq!(stored.files[0].name, "a 0450mm.csv");
    assert_eq!(stored.files[0].sha256.len(), 64);
    for estimator in Estimator::ALL {
        let found = stored.delays.iter().find(|delay| delay.estimator == estimator).unwrap();
        let time = found.delay.as_ref().unwrap();
        let value: f64 = time.value.parse().unwrap();
        assert!((value - 6.5).abs() < 2.0, "{estimator:?} gives {value}");
        assert!(measured.outcomes.iter().any(|outcome| outcome.delay.as_ref().unwrap().delay == value));
    }
    let fixed = stored.delays.iter().find(|delay| delay.estimator == Estimator::FixedLevel).unwrap();
    assert!(fixed.remark.contains("half of the smallest pulse of the run"), "{}", fixed.remark);
    let walk: f64 = stored.walk.unwrap().value.parse().unwrap();
    assert_eq!(walk, measured.walk.unwrap().0);
    assert_eq!(measured.refusal, "");
}

#[test]
fn what_gives_no_delay_is_refused_with_file_trace_and_sample() {
    let measured = reading(6.5, 1e-6).measure(&Asked::default(), LevelOf::Pair).unwrap();
    assert!(measured.evidence.is_none());
    let refusal = &measured.refusal;
    assert!(
        refusal.starts_with("a 0450mm.csv, trace B: no pulse") && refusal.contains("sample"),
        "{refusal}"
    );
}

#[test]
fn one_level_serves_all() {
    assert_eq!(common_level(&[0.2, 0.05, 0.3]), Some(0.05));
    assert_eq!(common_level(&[]), None);
    assert_eq!(common_level(&[f64::NAN, 0.4]), Some(0.4));
}

#[test]
fn uncertainties_are_rounded_up() {
    for (value, text) in
        [(0.0, "0"), (0.012_345, "0.0124"), (0.012_3, "0.0123"), (9.991, "10"), (123.4, "124")]
    {
        assert_eq!(up(value), text);
    }
    assert_eq!(short(0.213_456), "0.213");
}
