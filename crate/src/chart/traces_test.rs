//! Drawn traces as SVG text, and in words.

#![expect(clippy::unwrap_used, reason = "tests")]

use crate::chart::{Drawing, Theme, TracePicture, TracesPicture, svg, traces_words};
use crate::quantity::DecimalMark;
use crate::words::{WordTable, Words};

/// A rising edge of A at 2 ns, and of B at 5 ns with half the height, a sample each nanosecond.
fn picture(span: [f64; 2], [a, b]: [&[f64]; 2]) -> TracesPicture {
    let trace = |edge: f64, height: f64| {
        let volts = |at: f64| height * (0.5 * (at - edge) + 0.5).clamp(0.0, 1.0);
        let bounds = (0..10).flat_map(|at| [volts(f64::from(at)), volts(f64::from(at)) + 0.01]);
        [0.0, 1.0].into_iter().chain(bounds).collect::<Vec<f64>>()
    };
    TracesPicture {
        traces: [TracePicture::of(&trace(2.0, 0.8), a), TracePicture::of(&trace(5.0, 0.4), b)],
        span,
        decimal_mark: DecimalMark::Point,
    }
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

const SPAN: [f64; 2] = [0.0, 9.0];
/// Baseline, top, level of the crossing, edge and its uncertainty.
const MARKS: [&[f64]; 2] = [&[0.0, 0.8, 0.4, 2.0, 0.05], &[0.0, 0.4, 0.2, 5.0, 0.1]];

#[test]
fn both_traces_are_drawn_and_told() {
    let picture = picture(SPAN, MARKS);
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
    let picture = picture(SPAN, [MARKS[0], &[]]);
    assert!(!drawn(&picture).contains("NaN"));
    assert!(told(&picture).ends_with("Trace B shows no pulse."));
}

#[test]
fn a_pulse_whose_edge_was_not_found_has_its_levels_alone() {
    let picture = picture(SPAN, [MARKS[0], &[0.0, 0.4]]);
    assert!(drawn(&picture).contains("trace B"));
    assert!(
        told(&picture).ends_with("Trace B: baseline at 0.00\u{a0}V, top at 0.400\u{a0}V."),
        "{}",
        told(&picture)
    );
}

#[test]
fn a_look_beside_the_record_says_so() {
    assert!(drawn(&picture([100.0, 200.0], MARKS)).contains("No samples of either trace"));
    // Nothing at all neither.
    assert!(drawn(&TracesPicture::default()).contains("No samples"));
}
