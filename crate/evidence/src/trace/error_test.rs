//! Messages have figures that a person can read.

use super::*;

#[test]
fn figures_have_few_digits() {
    let no_pulse = |height| TraceError::NoPulse {
        height: Digits::of(height, 4),
        noise: Digits::of(0.009_876_543_21, 4),
        sample: 7,
    };
    assert_eq!(
        no_pulse(0.012_345_678).message(DecimalMark::Comma),
        message!("trace-no_pulse", height = "0,01235", noise = "0,009877", sample = "7")
    );
    for (height, text) in [(0.0, "0"), (-0.25, "−0.25"), (3e-7, "3\u{a0}×\u{a0}10⁻⁷"), (f64::NAN, "NaN")]
    {
        let told = no_pulse(height).message(DecimalMark::Point);
        assert_eq!(told.values.get("height"), Some(&text.into()), "{height}");
    }
}

/// What is stored of an error reads back to the same words, also where a number is none.
#[test]
fn what_is_stored_reads_back() {
    for step in [0.2, 1.0 / 3.0, -0.0, 1e300, f64::NAN, f64::NEG_INFINITY] {
        let error = TraceError::Step { step: Digits::of(step, 4) };
        let json = serde_json::to_string(&error).unwrap_or_default();
        assert_eq!(serde_json::from_str::<TraceError>(&json).ok(), Some(error), "{json}");
    }
}

#[test]
fn times_of_unequal_samples_show_the_jump() {
    let problem = ReadProblem::Unequal { line: 20, found: 1_234.567_8, expected: 1_234.367_8, step: 0.2 };
    let error = ReadError { file: "a.csv".into(), problem };
    let jump = |found: &str, step: &str, expected: &str| {
        let why = message!("read-unequal", line = "20", found = found, step = step, expected = expected);
        message!("read-file", file = "a.csv", why = why)
    };
    assert_eq!(error.message(DecimalMark::Comma), jump("1234,568", "0,2", "1234,368"));
    assert_eq!(error.message(DecimalMark::Point), jump("1234.568", "0.2", "1234.368"));
}
