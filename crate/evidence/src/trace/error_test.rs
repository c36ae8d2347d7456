//! Messages have figures that a person can read.

use super::*;

#[test]
fn figures_have_few_digits() {
    let no_pulse = |height| TraceError::NoPulse {
        height: Digits::of(height, 4),
        noise: Digits::of(0.009_876_543_21, 4),
        sample: 7,
    };
    let words = |height, mark| no_pulse(height).words(mark);
    assert_eq!(
        words(0.012_345_678, DecimalMark::Comma),
        "no pulse: the trace rises 0,01235 V over its baseline, less than 4 times its noise of 0,009877 V (largest at \
         sample 7)."
    );
    for (height, text) in
        [(0.0, " 0 V"), (-0.25, " −0.25 V"), (3e-7, " 3 × 10⁻⁷ V"), (f64::NAN, " not a number V")]
    {
        assert!(words(height, DecimalMark::Point).contains(text), "{height}");
    }
    assert_eq!(no_pulse(0.25).to_string(), words(0.25, DecimalMark::Point));
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
    assert_eq!(
        error.words(DecimalMark::Comma),
        "a.csv: line 20: the time is 1234,568 ns where equal steps of 0,2 ns lead to 1234,368 ns; unequal sampling can't be used."
    );
    assert!(error.to_string().contains("1234.568 ns"));
}
