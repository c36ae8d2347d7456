//! Samples at jittered times, of traces that are known at every time.
#![expect(clippy::unwrap_used, reason = "tests")]

use std::fmt::Write as _;

use super::super::{Digits, Flag, Method, Recording, edge, read, recognise};
use super::*;

/// Times about 0.5 ns apart, which run up to 0.15 ns away from equal steps, by turns and in slow waves.
fn times(count: u32) -> Vec<f64> {
    let jitter =
        |at: u32| 0.1 * libm::sin(f64::from(at) / 7.0) + if at.is_multiple_of(2) { 0.05 } else { -0.05 };
    (0..count).map(|at| 7.0 + 0.5 * f64::from(at) + jitter(at)).collect()
}

#[test]
fn a_straight_line_stays_one() {
    let times = times(200);
    let line: Vec<f64> = times.iter().map(|time| 0.3 * time - 2.0).collect();
    let step = (times[199] - times[0]) / 199.0;
    for (place, found) in at_even_steps(&times, &line).into_iter().enumerate() {
        let expected = 0.3 * (times[0] + place as f64 * step) - 2.0;
        assert!((found - expected).abs() < 1e-12, "{place}: {found} {expected}");
    }
    assert_eq!(at_even_steps(&times[..2], &line[..2]), line[..2]);
}

#[test]
fn what_a_converter_can_not_give_does_not_appear() {
    // Steps of 1/16 V up to a limit of 1 V at which a pulse is cut off.
    let times = times(400);
    let level = |time: &f64| (8.0 * libm::sin(time / 12.0)).min(1.0);
    let samples: Vec<f64> = times.iter().map(|time| (16.0 * level(time)).round_ties_even() / 16.0).collect();
    let found = at_even_steps(&times, &samples);
    assert!(found.iter().all(|volts| (volts * 16.0 - (volts * 16.0).round_ties_even()).abs() < 1e-9));
    let most = |all: &[f64]| all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    assert_eq!(most(&found), most(&samples));
    assert_eq!(quantum(&found), quantum(&samples));
}

/// A straight rise of 20 ns from 100.3141 ns on, to 2 V or −2 V, as it is read from a file of samples at these times.
fn ramp(times: &[f64], turned: f64) -> Recording {
    let mut text = String::from("Time (ns),A (V)\n");
    for time in times {
        let volts = turned * 2.0 * ((time - 100.3141) / 20.0).clamp(0.0, 1.0) - 0.5;
        writeln!(text, "{time:.6},{volts:.7}").unwrap();
    }
    read("x", text.as_bytes(), &recognise("x", text.as_bytes()).unwrap()).unwrap()
}

/// A straight rise of 20 ns from 100.3141 ns on is crossed at half its height 10 ns later, whenever it was sampled: a
/// closed form. Counted in equal steps, the samples there would be up to 0.1 ns off in time.
#[test]
fn an_edge_is_timed_by_the_times_of_its_samples() {
    for turned in [1.0, -1.0] {
        let recording = ramp(&times(800), turned);
        let found = edge(&recording.waveform(0).unwrap(), &Method::default()).unwrap();
        assert!((found.time - 110.3141).abs() < 1e-3, "{}", found.time);
    }
}

/// Steps of 0.4 ns and 0.6 ns by turns lie a fifth of their mean off it: that is told with the edge, and its uncertainty is of
/// the widest step. Equal steps, and such that differ by less than a hundredth, are not told.
#[test]
fn unequal_steps_are_told_with_the_edge() {
    let by_turns = |off: f64| -> Vec<f64> {
        let late = |at: u32| if at.is_multiple_of(2) { 0.0 } else { off };
        (0..801).map(|at| 7.0 + 0.5 * f64::from(at) + late(at)).collect()
    };
    for (off, uneven, told) in [(0.1, 0.2, Some("20")), (0.002, 0.004, None), (0.0, 0.0, None)] {
        let recording = ramp(&by_turns(off), 1.0);
        assert!((recording.uneven - uneven).abs() < 1e-6, "{off}: {}", recording.uneven);
        let found = edge(&recording.waveform(0).unwrap(), &Method::default()).unwrap();
        let is_told = |flag: &&Flag| matches!(flag, Flag::UnevenSteps { .. });
        let percent = Digits::spelled(told.unwrap_or_default());
        let expected = percent.map(|percent| Flag::UnevenSteps { percent });
        assert_eq!(found.flags.iter().find(is_told), expected.as_ref(), "{off}");
        let (rise, widest) = (found.rise / recording.step, 1.0 + uneven);
        let between = 0.2 * widest * widest / (rise * rise) * recording.step;
        assert!(found.uncertainty > 0.999 * between && found.uncertainty < 1.01 * between, "{off}");
    }
}
