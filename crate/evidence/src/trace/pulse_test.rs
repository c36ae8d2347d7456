//! Pulses that are found, and such that are refused with the sample.
#![expect(clippy::unwrap_used, clippy::panic, reason = "tests")]

use super::*;

/// Small numbers that repeat after 97 samples, with a standard deviation of about 1.
fn ripple(at: usize) -> f64 {
    (((at * 37) % 97) as f64 - 48.0) / 28.0
}

/// A pulse from sample `begin`: 20 samples of a smooth rise, then a decay over 200.
fn pulse(count: usize, begin: usize, height: f64, noise: f64) -> Vec<f64> {
    (0..count)
        .map(|at| {
            let x = at as f64 - begin as f64;
            let rise = (x / 20.0).clamp(0.0, 1.0);
            let edge = rise * rise * (3.0 - 2.0 * rise);
            let decay = if x > 0.0 { libm::exp(-x / 200.0) } else { 1.0 };
            0.1 + height * edge * decay + noise * ripple(at)
        })
        .collect()
}

fn find(samples: &[f64]) -> Result<Pulse<'_>, TraceError> {
    Pulse::find(&Waveform { start: 0.0, step: 0.5, uneven: 0.0, samples })
}

#[track_caller]
fn refused(samples: &[f64]) -> TraceError {
    find(samples).err().unwrap()
}

#[test]
fn height_rise_and_baseline() {
    let samples = pulse(1_000, 400, 0.8, 0.01);
    let found = find(&samples).unwrap();
    let highest = 0.8 * libm::exp(-20.0 / 200.0);
    assert!((found.height / highest - 1.0).abs() < 0.03, "{}", found.height);
    assert!((found.baseline.level - 0.1).abs() < 1e-3 && (found.baseline.sigma / 0.01 - 1.0).abs() < 0.1);
    // 3x² − 2x³ takes 0.608 of its way from 10 to 90 %.
    assert!((found.rise / 12.2 - 1.0).abs() < 0.15, "{}", found.rise);
    assert!(found.quiet > 300 && found.quiet < 400);
    assert!(!found.inverted && found.flags.iter().all(|flag| matches!(flag, Flag::CorrelatedNoise { .. })));
}

#[test]
fn a_pulse_that_goes_down_is_turned_over_and_said_to_be() {
    let upright = pulse(1_000, 400, 0.8, 0.01);
    let down: Vec<f64> = upright.iter().map(|sample| -sample).collect();
    let (one, other) = (find(&upright).unwrap(), find(&down).unwrap());
    assert!(other.inverted && other.flags.contains(&Flag::Inverted));
    assert!((one.height - other.height).abs() < 1e-12 && (one.middle - other.middle).abs() < 1e-9);
}

/// A Lorentz pulse is all roundness: its height is found as it is however many samples its edge has, and wherever they lie.
#[test]
fn the_height_of_a_round_pulse_does_not_hang_on_the_samples() {
    for rise in [5.5, 6.5, 8.0, 12.0] {
        // From 10 to 90 % of it lie 8/3 of its half width at half height.
        let half_width = rise * 3.0 / 8.0;
        for phase in 0..20 {
            let level = |at: usize| {
                let x = (at as f64 - 400.0 - 0.05 * f64::from(phase)) / half_width;
                1.0 / (1.0 + x * x) + 0.003 * ripple(at)
            };
            let samples: Vec<f64> = (0..800).map(level).collect();
            let height = find(&samples).unwrap().height;
            assert!((0.93..1.02).contains(&height), "{rise}, {phase}: {height}");
        }
    }
}

fn volts(told: &Digits) -> f64 {
    told.written(crate::decimal::DecimalMark::Point).replace('−', "-").parse().unwrap()
}

#[test]
fn no_pulse_says_how_little_there_is() {
    let TraceError::NoPulse { height, noise, .. } = refused(&pulse(1_000, 400, 0.0, 0.01)) else { panic!() };
    let [height, noise] = [height, noise].map(|told| volts(&told));
    assert!(height < 4.0 * noise && (noise / 0.01 - 1.0).abs() < 0.15);
    assert!(matches!(refused(&[0.25; 500]), TraceError::NoPulse { .. }));
}

#[test]
fn clipped_tops_name_the_first_sample_and_the_limit() {
    for noise in [0.0, 0.002, 0.02] {
        let samples: Vec<f64> = pulse(1_000, 400, 0.8, noise).iter().map(|sample| sample.min(0.6)).collect();
        let TraceError::Clipped { sample, samples, limit } = refused(&samples) else { panic!("{noise}") };
        assert!(
            (410..420).contains(&sample) && samples > 20 && (volts(&limit) - 0.6).abs() < 1e-12,
            "{noise}: {sample} {samples}"
        );
    }
    // Going down, with the limit as it is on the trace.
    let down: Vec<f64> = pulse(1_000, 400, 0.8, 0.01).iter().map(|sample| -sample.min(0.6)).collect();
    let TraceError::Clipped { limit, .. } = refused(&down) else { panic!() };
    assert!((volts(&limit) + 0.6).abs() < 1e-12);
}

/// A converter of few bits makes flat tops that are none of its limit.
#[test]
fn rounded_tops_are_not_clipped() {
    for noise in [0.0, 0.001, 0.01] {
        for quantum in [0.01, 0.03] {
            let rounded: Vec<f64> = pulse(1_000, 400, 0.8, noise)
                .iter()
                .map(|sample| (sample / quantum).round() * quantum)
                .collect();
            let found = find(&rounded);
            assert!(found.is_ok(), "noise {noise}, step {quantum}: {:?}", found.err());
        }
    }
}

#[test]
fn pulses_off_the_record() {
    assert!(matches!(refused(&pulse(1_000, 5, 0.8, 0.01)), TraceError::NoBaseline { .. }));
    assert!(matches!(refused(&pulse(400, 390, 0.8, 0.01)), TraceError::NoTop { last: 399 }));
    // Begun before the record.
    let late = pulse(1_000, 400, 0.8, 0.01);
    assert!(find(&late[412..]).is_err());
}

#[test]
fn what_is_no_trace() {
    assert_eq!(refused(&[1.0; 31]), TraceError::FewSamples { samples: 31, needed: 32 });
    let mut samples = pulse(1_000, 400, 0.8, 0.01);
    samples[77] = f64::NAN;
    assert_eq!(refused(&samples), TraceError::NotFinite { sample: 77 });
    let wave = Waveform { start: 0.0, step: 0.0, uneven: 0.0, samples: &samples };
    assert_eq!(Pulse::find(&wave).err(), Some(TraceError::Step { step: Digits::of(0.0, 4) }));
}

#[test]
fn a_second_edge_is_flagged_with_its_sample() {
    let sum = |second: f64, begin: usize| -> Vec<f64> {
        let (one, other) = (pulse(2_000, 400, 0.8, 0.005), pulse(2_000, begin, second, 0.0));
        one.iter().zip(&other).map(|(one, other)| one + other - 0.1).collect()
    };
    let edges = |samples: &[f64]| -> Vec<usize> {
        let flags = find(samples).unwrap().flags;
        flags
            .iter()
            .filter_map(|flag| if let Flag::DoubleEdge { sample } = flag { Some(*sample) } else { None })
            .collect()
    };
    assert_eq!(edges(&pulse(2_000, 400, 0.8, 0.005)), [] as [usize; 0]);
    let after = edges(&sum(0.7, 900));
    assert!(after.len() == 1 && (905..925).contains(&after[0]), "{after:?}");
    // Something smaller before the pulse.
    let mut samples = pulse(2_000, 400, 0.8, 0.005);
    for sample in &mut samples[150..180] {
        *sample += 0.2;
    }
    let flags = find(&samples).unwrap().flags;
    assert!(flags.iter().any(|flag| matches!(flag, Flag::NotQuiet { .. })), "{flags:?}");
}

/// Of two pulses the first is taken, be the second as high or higher, and the second is told.
#[test]
fn the_first_of_two_pulses_is_taken() {
    let one = find(&pulse(2_000, 400, 0.8, 0.005)).unwrap().middle;
    for second in [0.8, 0.92, 1.3] {
        let (first, later) = (pulse(2_000, 400, 0.8, 0.005), pulse(2_000, 900, second, 0.0));
        let both: Vec<f64> = first.iter().zip(&later).map(|(one, other)| one + other - 0.1).collect();
        let found = find(&both).unwrap();
        assert!((found.middle - one).abs() < 0.5, "{second}: {} for {one}", found.middle);
        assert!(found.flags.iter().any(|flag| matches!(flag, Flag::DoubleEdge { sample } if *sample > 900)));
    }
}

/// The pulse rises from what an earlier one of three eighths left, too near before it to stand in the quiet part: its edge is
/// taken from a baseline that is not its own, and that is told. An edge by itself is not, however much noise it has.
#[test]
fn a_pulse_on_the_tail_of_a_smaller_one_is_told() {
    let stands_out = |samples: &[f64]| -> Vec<usize> {
        let flags = find(samples).unwrap().flags;
        flags
            .iter()
            .filter_map(|flag| if let Flag::NotQuiet { sample } = flag { Some(*sample) } else { None })
            .collect()
    };
    for noise in [0.0, 0.005, 0.02] {
        let (before, main) = (pulse(2_000, 340, 0.3, 0.0), pulse(2_000, 400, 0.8, noise));
        let both: Vec<f64> = before.iter().zip(&main).map(|(one, other)| one + other - 0.1).collect();
        let told = stands_out(&both);
        assert!(told.len() == 1 && (330..365).contains(&told[0]), "{noise}: {told:?}");
    }
    for noise in [0.0, 0.005, 0.02, 0.05] {
        assert_eq!(stands_out(&pulse(2_000, 400, 0.8, noise)), [] as [usize; 0], "{noise}");
    }
}

/// A spike as high as the pulse is none.
#[test]
fn a_spike_is_no_pulse() {
    let mut samples = pulse(2_000, 400, 0.8, 0.005);
    let one = find(&samples).unwrap().middle;
    for sample in &mut samples[200..203] {
        *sample += 0.9;
    }
    let found = find(&samples).unwrap();
    assert!((found.middle - one).abs() < 0.5 && !found.flags.is_empty(), "{}", found.middle);
}

#[test]
fn a_quiet_part_that_is_not_level_is_flagged() {
    let drifts = |slope: f64| {
        let samples: Vec<f64> = pulse(1_000, 400, 0.8, 0.002)
            .iter()
            .enumerate()
            .map(|(at, sample)| sample + slope * at as f64)
            .collect();
        find(&samples).unwrap().flags.iter().any(|flag| matches!(flag, Flag::Drift { .. }))
    };
    assert!(!drifts(0.0) && drifts(1e-4));
}
