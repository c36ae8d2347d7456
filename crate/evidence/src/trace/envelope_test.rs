//! No sample of a stretch lies outside what is drawn of it.

use super::*;

#[test]
fn every_sample_lies_within_its_stretch() {
    let samples: Vec<f64> = (0..1_003).map(|at| f64::from((at * 37) % 101)).collect();
    let wave = Waveform { start: -10.0, step: 0.5, uneven: 0.0, samples: &samples };
    let drawn = envelope(&wave, -100.0, 1e6, 100);
    assert!(drawn.least.len() <= 100 && drawn.least.len() == drawn.greatest.len());
    assert_eq!(drawn.start, -10.0);
    for (at, sample) in samples.iter().enumerate() {
        let stretch = at / drawn.each;
        assert!((drawn.least[stretch]..=drawn.greatest[stretch]).contains(sample));
    }
}

#[test]
fn a_closer_look_shows_the_samples_themselves() {
    let samples: Vec<f64> = (0..100).map(f64::from).collect();
    let wave = Waveform { start: 0.0, step: 1.0, uneven: 0.0, samples: &samples };
    let drawn = envelope(&wave, 20.0, 30.0, 50);
    assert_eq!((drawn.each, drawn.start), (1, 19.0));
    assert_eq!(drawn.least, (19..32).map(f64::from).collect::<Vec<_>>());
    assert_eq!(drawn.least, drawn.greatest);
}

#[test]
fn nothing_to_draw() {
    let wave = Waveform { start: 0.0, step: 1.0, uneven: 0.0, samples: &[] };
    assert!(envelope(&wave, 0.0, 10.0, 50).least.is_empty());
    let samples = [1.0; 10];
    let wave = Waveform { start: 0.0, step: 1.0, uneven: 0.0, samples: &samples };
    assert!(envelope(&wave, f64::NAN, f64::NAN, 0).least.len() <= 2);
}
