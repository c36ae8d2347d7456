//! Drawn traces as SVG text, and in words.

#![expect(clippy::unwrap_used, reason = "tests")]

use crate::chart::{Drawing, Theme, TracesPicture, svg, traces_words};
use crate::quantity::DecimalMark;
use crate::words::{WordTable, Words};

/// A rising edge of A at 2 ns, and of B at 5 ns with half the height, a sample each nanosecond.
fn picture(marks: &[f64]) -> TracesPicture {
    let trace = |edge: f64, height: f64| {
        let volts = |at: f64| height * (0.5 * (at - edge) + 0.5).clamp(0.0, 1.0);
        let bounds = (0..10).flat_map(|at| [volts(f64::from(at)), volts(f64::from(at)) + 0.01]);
        [0.0, 1.0].into_iter().chain(bounds).collect::<Vec<f64>>()
    };
    TracesPicture::of([&trace(2.0, 0.8), &trace(5.0, 0.4)], marks, DecimalMark::Point)
}

fn english() -> WordTable {
    WordTable::english().unwrap()
}

fn told(picture: &TracesPicture) -> String {
    traces_words(picture).iter().map(|message| english().say(message)).collect::<Vec<_>>().join(" ")
}

fn drawn(picture: &TracesPicture) -> String {
    svg((900, 450), "a test", Drawing::Traces(picture), &Theme::light(), &english()).unwrap()
}

const MARKS: [f64; 12] = [0.0, 9.0, 0.0, 0.8, 0.4, 2.0, 0.05, 0.0, 0.4, 0.2, 5.0, 0.1];

#[test]
fn both_traces_are_drawn_and_told() {
    let picture = picture(&MARKS);
    let svg = drawn(&picture);
    for word in ["trace A", "trace B", "level of the crossing", "time / ns", "voltage / V"] {
        assert!(svg.contains(word), "{word} is missing");
    }
    let told = told(&picture);
    assert!(told.starts_with("Both traces from 0"), "{told}");
    assert!(told.contains("the edge crosses 0.400\u{a0}V at 2.000(50)\u{a0}ns"), "{told}");
    assert!(told.contains("Trace B: baseline at 0"), "{told}");
}

#[test]
fn a_trace_without_a_pulse_is_drawn_all_the_same() {
    let mut marks = MARKS;
    marks[7..].fill(f64::NAN);
    let picture = picture(&marks);
    assert!(!drawn(&picture).contains("NaN"));
    assert!(told(&picture).ends_with("Trace B shows no pulse."));
}

#[test]
fn a_look_beside_the_record_says_so() {
    let mut marks = MARKS;
    marks[..2].copy_from_slice(&[100.0, 200.0]);
    assert!(drawn(&picture(&marks)).contains("No samples of either trace"));
    // Nothing at all neither.
    assert!(drawn(&TracesPicture::default()).contains("No samples"));
}
