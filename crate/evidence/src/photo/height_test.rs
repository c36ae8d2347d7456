//! Levels of edges whose shape is known, on a screen seen from the front and from the side.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::{Corner, Marking, separation};
use super::*;

/// 10 × 8 divisions, with their corners at these places.
fn plane(corners: [[f64; 2]; 4]) -> Plane {
    let places = [[0.0, 0.0], [10.0, 0.0], [10.0, 8.0], [0.0, 8.0]];
    let marks: Vec<Corner> = corners
        .iter()
        .zip(places)
        .map(|([x, y], [column, row])| Corner { at: PixelPoint { x: *x, y: *y }, column, row })
        .collect();
    Plane::fit(&marks, 1.0).unwrap()
}

/// 100 pixels to a division.
fn front() -> Plane {
    plane([[0.0, 0.0], [1000.0, 0.0], [1000.0, 800.0], [0.0, 800.0]])
}

fn side() -> Plane {
    plane([[210.0, 183.0], [1388.0, 251.0], [1340.0, 1017.0], [184.0, 1103.0]])
}

/// Edges marked once each, without an uncertainty along the time axis.
fn found(plane: &Plane, a: [f64; 2], b: [f64; 2]) -> Separation {
    separation(plane, &[plane.pixel(a)], &[plane.pixel(b)], Marking::Stated(0.0), &[]).unwrap()
}

fn height(plane: &Plane, baseline: [f64; 2], top: [f64; 2]) -> MarkedHeight {
    MarkedHeight { baseline: plane.pixel(baseline), top: plane.pixel(top) }
}

/// A rises from row 6 to row 2 within 0.4 columns, and is marked a tenth of a row below its half height. By hand: S = −0.1,
/// δ = −0.1, so S δ/2 = 0.005; marks of 2 pixels are 0.02 rows, u(δ)² = (0.25 + 0.25 + 1)·0.0004 = 0.0006, and
/// u² = 0.01·(0.01/12 + 0.0006/3).
#[test]
fn a_mark_beside_the_level_is_carried_to_it() {
    let plane = front();
    let before = found(&plane, [4.2, 4.1], [8.0, 4.0]);
    let ends = [Some(height(&plane, [4.0, 6.0], [4.4, 2.0])), None];
    let reading = LevelReading { fraction: 0.5, u_pixels: 2.0 };
    let after = before.at_levels(&plane, ends, reading).unwrap();
    assert!((after.a.column - 4.205).abs() < 1e-9 && (after.value - 3.795).abs() < 1e-9, "{after:?}");
    let expected = (0.01 * (0.01 / 12.0 + 0.0006 / 3.0_f64)).sqrt();
    assert!((after.levels - expected).abs() < 1e-9, "{} {expected}", after.levels);
    let all = (before.uncertainty * before.uncertainty + expected * expected).sqrt();
    assert!((after.uncertainty - all).abs() < 1e-9);
    assert_eq!(before.at_levels(&plane, [None, None], reading).unwrap(), before);
}

/// A straight edge and one of the shape ∫cos² cross their levels within √3 of the stated uncertainties of where they are
/// found, wherever they were marked: √3 standard uncertainties are the limits of a rectangular distribution.
#[test]
fn edges_of_known_shapes_cross_within_the_limits() {
    // Share of the height at a share of the time from end to end.
    let straight: fn(f64) -> f64 = |time| time;
    let smooth: fn(f64) -> f64 =
        |time| time - libm::sin(std::f64::consts::TAU * time) / std::f64::consts::TAU;
    for shape in [straight, smooth] {
        // The time of a share, by halving.
        let time = |share: f64| {
            let half = |(low, high): (f64, f64), _| {
                let middle = f64::midpoint(low, high);
                if shape(middle) < share { (middle, high) } else { (low, middle) }
            };
            (0..60).fold((0.0, 1.0), half).0
        };
        for plane in [front(), side()] {
            for (fraction, marked) in [(0.5, 0.5), (0.5, 0.4), (0.5, 0.65), (0.3, 0.35), (0.7, 0.6)] {
                let at = |share: f64| [3.0 + 0.8 * time(share), 6.5 - 5.0 * share];
                let ends = Some(height(&plane, [3.0, 6.5], [3.8, 1.5]));
                let reading = LevelReading::new(fraction, 0.0, 0.0);
                let before = found(&plane, at(marked), [9.0, 4.0]);
                let after = before.at_levels(&plane, [ends, None], reading).unwrap();
                let off = (after.a.column - at(fraction)[0]).abs();
                let limit = 3.0_f64.sqrt() * after.levels + 1e-9;
                assert!(off <= limit, "{fraction} marked at {marked}: {off} beyond {limit}");
            }
        }
    }
}

#[test]
fn the_level_lies_at_its_fraction_in_the_picture() {
    let plane = side();
    let [left, right] = height(&plane, [3.0, 7.0], [3.6, 2.0]).level(&plane, 0.2, 10.0).unwrap();
    for (end, column) in [(left, 0.0), (right, 10.0)] {
        let [q, r] = plane.divisions(end);
        assert!((q - column).abs() < 1e-6 && (r - 6.0).abs() < 1e-6, "{q} {r}");
    }
}

#[test]
fn a_thick_trace_hides_where_its_middle_is() {
    let LevelReading { u_pixels, .. } = LevelReading::new(0.5, 1.0, 12.0);
    assert!((u_pixels - 13.0_f64.sqrt()).abs() < 1e-12, "1 + 144/12: {u_pixels}");
}

#[test]
fn a_jump_whose_ends_are_marked_in_either_order_needs_no_level() {
    let plane = front();
    let before = found(&plane, [4.2, 4.3], [8.0, 4.0]);
    for (begins, ends) in [(4.2, 4.2), (4.21, 4.2)] {
        let ends = Some(height(&plane, [begins, 6.0], [ends, 2.0]));
        let after = before.at_levels(&plane, [ends, None], LevelReading::new(0.5, 1.0, 0.0)).unwrap();
        assert!((after.value - before.value).abs() < 1e-9 && after.levels < 1e-9, "{after:?}");
    }
}

#[test]
fn edges_outside_of_their_ends_are_refused() {
    let plane = front();
    let reading = LevelReading::new(0.5, 1.0, 2.0);
    let pair = found(&plane, [4.2, 4.0], [8.0, 4.0]);
    let good = Some(height(&plane, [4.0, 6.0], [4.4, 2.0]));
    for (baseline, top) in [
        // The top before the baseline; both before the edge; no height.
        ([4.4, 6.0], [4.0, 2.0]),
        ([3.0, 6.0], [3.4, 2.0]),
        ([4.0, 4.0], [4.4, 4.01]),
    ] {
        let bad = Some(height(&plane, baseline, top));
        assert_eq!(
            pair.at_levels(&plane, [bad, None], reading),
            Err(SeparationError::NotBetween { edge: 'A' })
        );
        assert_eq!(
            pair.at_levels(&plane, [good, bad], reading),
            Err(SeparationError::NotBetween { edge: 'B' })
        );
    }
}
