//! The bench shows what its parts are said to do.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

#[test]
fn a_detector_rises_from_10_to_90_per_cent_in_its_rise() {
    let detector = DetectorResponse { rise: 3.0, decay: f64::INFINITY, gain: 2.0, offset: 0.5 };
    assert!((detector.level(0.0, 1.0) - 1.0).abs() < 1e-12);
    assert!((detector.level(-1.5, 1.0) - 0.2).abs() < 1e-3);
    assert!((detector.level(1.5, 0.5) - 0.9).abs() < 1e-3);
    assert_eq!(detector.level(-4.0, 1.0), 0.0);
    assert_eq!(detector.level(4.0, 1.0), 2.0);
}

#[test]
fn one_seed_gives_one_recording() {
    let bench = Bench::default();
    let record = |seed| bench.record(5.0, 0.5, &mut Chance::seeded(seed));
    assert_eq!(record(1), record(1));
    assert_ne!(record(1), record(2));
}

#[test]
fn light_falls_off_with_distance_if_it_is_said_to() {
    assert_eq!(Bench::default().light(9.0), 1.0);
    let bench = Bench { fall_off: 3.0, ..Bench::default() };
    assert_eq!((bench.light(0.0), bench.light(3.0)), (1.0, 0.25));
}

#[test]
fn the_digitiser_rounds_and_clips() {
    let digitiser = Digitiser { bits: 8, full_scale: 1.0, ..Digitiser::default() };
    let quantum = 1.0 / 128.0;
    assert_eq!(digitiser.rounded(0.4 * quantum), 0.0);
    assert_eq!(digitiser.rounded(0.6 * quantum), quantum);
    assert_eq!(digitiser.rounded(7.0), 127.0 * quantum);
    assert_eq!(digitiser.rounded(-7.0), -1.0);
}

#[test]
fn noise_hum_jitter_and_time_base_are_as_large_as_said() {
    let quiet = |digitiser: Digitiser| {
        let bench = Bench { digitiser, ..Bench::default() };
        let channel = bench.record(10.0, 1.0, &mut Chance::seeded(5)).channels.pop().unwrap();
        let spread = |samples: &[f64]| {
            let mean = samples.iter().sum::<f64>() / samples.len() as f64;
            (samples.iter().map(|sample| (sample - mean).powi(2)).sum::<f64>() / samples.len() as f64).sqrt()
        };
        spread(&channel.samples[..500])
    };
    let long = Digitiser { samples: 20_000, start: -1_900.0, step: 0.1, ..Digitiser::default() };
    assert!((quiet(Digitiser { noise: 0.02, ..long }) / 0.02 - 1.0).abs() < 0.1);
    assert!((quiet(Digitiser { noise: 0.02, memory: 0.5, ..long }) / 0.02 - 1.0).abs() < 0.2);
    // Samples 20 ms apart over 10 s: the hum of 50 Hz is seen at all its phases when they are 19 ms apart.
    let slow = Digitiser { noise: 0.0, hum: 0.1, step: 19e6, start: -1e10, ..long };
    assert!((quiet(slow) / (0.1 / 2.0_f64.sqrt()) - 1.0).abs() < 0.1);

    let bench = |time_base| Bench {
        digitiser: Digitiser { noise: 0.0, time_base, ..Digitiser::default() },
        a: DetectorResponse { decay: f64::INFINITY, ..DetectorResponse::default() },
        b: DetectorResponse { decay: f64::INFINITY, ..DetectorResponse::default() },
        ..Bench::default()
    };
    let half = |time_base: f64| {
        let recording = bench(time_base).record(50.0, 1.0, &mut Chance::seeded(5));
        let at = |channel: usize| {
            recording.channels[channel].samples.iter().position(|sample| *sample > 0.41).unwrap()
        };
        at(1) - at(0)
    };
    // 50 ns are 500 samples; on a time base whose nanosecond is 1 % longer, 495.
    assert_eq!((half(0.0), half(0.01)), (500, 495));
}
