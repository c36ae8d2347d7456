//! What is taken shows what is really so, to whoever measures it, and nothing else of it.
#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use slope_evidence::photo::{Hint, Pixels, Plane, propose};
use slope_evidence::stored::Estimator;

use super::*;
use crate::reading::{Reading, Wanted};

const SECRET: &str = "6b927a6875bb4d69800fc2e9a9300f2366e2a16bfc0edcaf71b5059e58c5224a";

fn at(row: u32, distance: f64, delay: f64, time_base: f64) -> RowTruth {
    RowTruth { row, distance, delay, time_base, screen_width: 10.0 }
}

/// The delay by the constant fraction, and its standard uncertainty, ns.
fn measured(text: &str, mark: DecimalMark) -> (f64, f64) {
    let mut reading = Reading::new(mark);
    reading.add("01.csv", text.as_bytes(), None, "").unwrap();
    let found = reading.measure(&Wanted::default()).unwrap();
    let outcome = found.outcomes.iter().find(|found| found.estimator == Estimator::ConstantFraction).unwrap();
    let delay = outcome.delay.as_ref().unwrap();
    (delay.delay, delay.uncertainty)
}

/// Delays from a few to hundreds of nanoseconds, with either decimal mark, within four standard uncertainties (of 10 that are
/// normal, one misses that in 1600 such tests).
#[test]
fn traces_have_the_delay() {
    for mark in [DecimalMark::Point, DecimalMark::Comma] {
        for (row, delay) in (1..).zip([1.3, 7.918_273, 33.3, 146.2, 611.7]) {
            let text = traces(SECRET, &at(row, delay * 0.3, delay, 5.0), mark).unwrap();
            let (found, u) = measured(&text, mark);
            assert!(u < 0.2 && (found - delay).abs() < 4.0 * u, "{found} ± {u}, not {delay}");
        }
    }
}

/// The digits of the delay stand nowhere in the file, nor the secret, nor anything else that is the same in another set's.
#[test]
fn traces_tell_nothing_but_what_is_measured() {
    let so = at(3, 2.1, 7.918_273, 5.0);
    let text = traces(SECRET, &so, DecimalMark::Point).unwrap();
    for told in ["7.918", "2.1000", SECRET] {
        for part in told.as_bytes().windows(told.len().min(8)) {
            assert!(!text.contains(std::str::from_utf8(part).unwrap()), "{told}");
        }
    }
    let other = traces(&SECRET.replace('6', "7"), &so, DecimalMark::Point).unwrap();
    let another = traces(SECRET, &RowTruth { row: 4, ..so }, DecimalMark::Point).unwrap();
    let samples = |text: &str| -> Vec<String> {
        text.lines().filter_map(|line| line.split(';').nth(2)).map(str::to_owned).collect()
    };
    for against in [other, another] {
        let same = samples(&text).iter().zip(&samples(&against)).filter(|(one, other)| one == other).count();
        // Samples are rounded to 1/512 V under a noise of 4 mV: a good tenth of them agree by chance.
        assert!(same < samples(&text).len() / 2, "{same}");
    }
}

/// Where the marks are proposed on a photograph, its edges lie as far apart as they should, to a seventh of a division; those of
/// one set stand before one camera.
#[test]
fn photographs_have_the_delay() {
    let mut corners = Vec::new();
    for so in [at(1, 0.4, 4.1, 1.0), at(2, 2.2, 9.3, 2.0), at(3, 5.0, 18.2, 5.0), at(4, 8.0, 39.0, 5.0)] {
        let picture = photograph(SECRET, &so).unwrap();
        let pixels = Pixels::of(&picture.rgba, picture.width, picture.height);
        let found = propose(pixels, Hint { columns: 10, rows: 8 }, None).unwrap();
        let plane = Plane::fit(&found.corners, 1.0).unwrap();
        let [a, b] = found.edges.map(|edge| plane.divisions(edge.unwrap().at)[0]);
        let apart = so.delay / so.time_base;
        assert!((b - a - apart).abs() < 0.15, "{} divisions, not {apart}", b - a);
        corners.push(found.corners[0].at);
    }
    let moved = corners.iter().map(|corner| (corner.x - corners[0].x).hypot(corner.y - corners[0].y));
    assert!(moved.fold(0.0, f64::max) < 3.0, "{corners:?}");
}

/// One set's camera stands otherwise than another's, and the noise of its pictures is another.
#[test]
fn photographs_of_two_sets_differ() {
    let so = at(1, 0.4, 4.1, 1.0);
    let [one, other] = [SECRET, "other"].map(|secret| photograph(secret, &so).unwrap());
    assert_eq!(one, photograph(SECRET, &so).unwrap());
    let same = one.rgba.iter().zip(&other.rgba).filter(|(one, other)| one == other).count();
    assert!(same < one.rgba.len() * 3 / 4, "{same} of {}", one.rgba.len());
    assert_ne!(camera(SECRET), camera("other"));
}

#[test]
fn what_does_not_fit_is_refused_by_its_row() {
    let off_screen = Err(message!("sets-off_screen", row = 7_usize));
    for (delay, time_base, screen_width) in
        [(9.5, 1.0, 10.0), (-1.0, 1.0, 10.0), (4.0, 1.0, 4.0), (4.0, 1.0, 1e9), (f64::NAN, 1.0, 10.0)]
    {
        let so = RowTruth { screen_width, ..at(7, 1.0, delay, time_base) };
        assert_eq!(photograph(SECRET, &so).map(|_| ()), off_screen, "{so:?}");
    }
    for delay in [-30.0, 1e4, f64::NAN, f64::INFINITY] {
        let refused = traces(SECRET, &at(7, 1.0, delay, 1.0), DecimalMark::Point);
        assert_eq!(refused, Err(message!("sets-too_late", row = 7_usize)), "{delay}");
    }
}
