//! Messages have figures that a person can read.

use super::*;

#[test]
fn figures_have_few_digits() {
    for (value, text) in [
        (0.0, "0"),
        (1.0, "1"),
        (-0.012_345_678, "-0.01235"),
        (123.456_789, "123.457"),
        (0.25, "0.25"),
        (3e-7, "3.000e-7"),
        (2.5e12, "2.500e12"),
        (f64::NAN, "NaN"),
    ] {
        assert_eq!(shown(&value), text);
    }
    let error = TraceError::NoPulse { height: 0.012_345_678, noise: 0.009_876_543_21, sample: 7 };
    assert_eq!(
        error.to_string(),
        "no pulse: the trace rises 0.01235 V over its baseline, less than 4 times its noise of 0.009877 V (largest at \
         sample 7)."
    );
}
