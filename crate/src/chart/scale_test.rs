//! Ranges and ticks, at ordinary and extreme values.

#![expect(clippy::unwrap_used, reason = "tests")]

use proptest::prelude::*;

use super::super::labels;
use super::*;
use crate::words::WordTable;

fn labels(low: f64, high: f64, count: f64) -> Vec<String> {
    let axis = Axis::new(Span { low, high }, count, DecimalMark::Point);
    axis.ticks.into_iter().map(|tick| tick.label).collect()
}

#[test]
fn ticks_are_round_numbers() {
    // Worked by hand: the smallest of 1, 2, 5 × 10ⁿ that is at least width / count.
    assert_eq!(labels(0.0, 9.0, 5.0), ["0", "2", "4", "6", "8"]);
    assert_eq!(labels(-0.25, 0.3, 6.0), ["−0.2", "−0.1", "0.0", "0.1", "0.2", "0.3"]);
    assert_eq!(labels(0.35, 0.371, 4.0), ["0.35", "0.36", "0.37"]);
    assert_eq!(labels(1000.0, 1020.0, 4.0), ["1000", "1005", "1010", "1015", "1020"]);
}

#[test]
fn large_and_small_values_count_in_powers_of_ten() {
    let words = WordTable::english().unwrap();
    let large = Axis::new(Span { low: 0.0, high: 2e7 }, 2.0, DecimalMark::Point);
    assert_eq!(large.title(&labels::DISTANCE, &words), "distance d / 10⁶ m");
    assert_eq!(large.ticks.iter().map(|tick| tick.label.as_str()).collect::<Vec<_>>(), ["0", "10", "20"]);
    let small = Axis::new(Span { low: 0.0, high: 2e-7 }, 2.0, DecimalMark::Point);
    assert_eq!(small.title(&labels::DELAY, &words), "delay Δt / 10⁻⁹ ns");
    let plain = Axis::new(Span { low: 0.0, high: 9.0 }, 2.0, DecimalMark::Point);
    assert_eq!(plain.title(&labels::DELAY, &words), "delay Δt / ns");
}

#[test]
fn decimal_mark_is_the_notebooks() {
    let axis = Axis::new(Span { low: -1.5, high: 0.4 }, 4.0, DecimalMark::Comma);
    let labels: Vec<_> = axis.ticks.iter().map(|tick| tick.label.as_str()).collect();
    assert_eq!(labels, ["−1,5", "−1,0", "−0,5", "0,0"]);
}

#[test]
fn equal_values_get_a_range_around_them() {
    for value in [0.0, 5.0, -5.0, 1e300, -1e300, 1e-300, f64::MIN_POSITIVE, 5e-324] {
        let span = Span::of([value, value]).map(|span| span.padded(0.1));
        assert!(span.is_some_and(|span| span.low < value && value < span.high), "{value}: {span:?}");
    }
}

#[test]
fn what_cannot_be_drawn_is_left_out() {
    assert_eq!(Span::of([f64::NAN, f64::INFINITY, -f64::INFINITY, 1e301]), None);
    assert_eq!(Span::of([f64::NAN, 1.0, 2.0]), Some(Span { low: 1.0, high: 2.0 }));
}

proptest! {
    #[test]
    fn every_range_has_a_few_ticks_inside_it(
        lead in -10.0..10.0_f64,
        power in -299..299_i32,
        ratio in 0.0..4.0_f64,
        count in 0.5..12.0_f64,
    ) {
        let value = lead * 10.0_f64.powi(power);
        let span = Span::of([value, value * ratio]).unwrap_or(Span { low: 0.0, high: 1.0 });
        let axis = Axis::new(span, count, DecimalMark::Point);
        prop_assert!(axis.ticks.len() >= 2 && axis.ticks.len() <= 14, "{axis:?}");
        for tick in &axis.ticks {
            prop_assert!(tick.value.is_finite());
            prop_assert!(span.padded(2e-9).holds(tick.value), "{axis:?}");
        }
        let mut labels: Vec<&str> = axis.ticks.iter().map(|tick| tick.label.as_str()).collect();
        labels.dedup();
        prop_assert_eq!(labels.len(), axis.ticks.len());
    }
}
