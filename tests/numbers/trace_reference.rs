//! Delays and crossings of sampled pulses beside scipy and numpy: `reference/traces.json`, made by `make_traces.py`, which
//! says what was asked of them.
//!
//! The pulses are band-limited and without noise, so the delay that was put in is the truth to all digits; resampling 32
//! times as finely by scipy finds it to 5·10⁻⁸ of a sample. Parabola and straight line are of the curve's third
//! derivative, and differ from it as is said at each tolerance.
#![expect(clippy::unwrap_used, reason = "tests")]

use slope_evidence::trace::{DelayMethod, Method, Waveform, delay, edge};

use crate::reference::{number, numbers, read, rows};

fn wave(samples: &[f64]) -> Waveform<'_> {
    Waveform { start: 0.0, step: 1.0, uneven: 0.0, samples }
}

#[test]
fn the_delay_between_samples_is_that_of_scipy() {
    for case in rows(&read("traces.json")["cases"]) {
        let (a, b) = (numbers(&case["a"]), numbers(&case["b"]));
        let place = format!("{} {} {}", case["kind"], case["width"], case["truth"]);
        let found = |method| delay(&wave(&a), &wave(&b), method).unwrap().delay;
        let resampled = number(case, "resampled");
        assert!((resampled - number(case, "truth")).abs() < 5e-8);

        // Least squares. What is left comes from the heights: the more, the fewer samples the pulse has.
        let refined = found(DelayMethod::CrossCorrelation { refined: true });
        assert!((refined - resampled).abs() < 0.01, "{place}: refined {refined}");
        // Ours is over the edge, scipy's over the whole pulse; a parabola through three lags is off by some hundredths
        // of a sample either way.
        let parabola = found(DelayMethod::CrossCorrelation { refined: false });
        assert!((parabola - number(case, "parabola")).abs() < 0.02, "{place}: parabola {parabola}");
        // From the heights as well.
        let fraction = found(DelayMethod::ConstantFraction { fraction: 0.5 });
        assert!((fraction - resampled).abs() < 0.01, "{place}: constant fraction {fraction}");
    }
}

/// A trace without noise is crossed where the straight line between two samples is.
#[test]
fn a_crossing_is_that_of_numpy_interp() {
    for case in rows(&read("traces.json")["cases"]) {
        let a = numbers(&case["a"]);
        let found = edge(&wave(&a), &Method::FixedLevel { volts: number(case, "level") }).unwrap();
        let expected = number(case, "crossing");
        // The window's half-width is a few tenths of a sample here: the line's corner within it is what is left.
        assert!(
            (found.time - expected).abs() < 0.02,
            "{} {}: {} {expected}",
            case["kind"],
            case["width"],
            found.time
        );
    }
}
