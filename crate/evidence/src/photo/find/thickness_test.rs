//! A trace drawn by hand, of a known thickness.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::super::{Corner, PixelPoint};
use super::super::curve::SAMPLES;
use super::*;

/// A screen of 10 × 8 divisions that fills a picture of 600 × 480 pixels: 60 to a division.
const DIVISION: f64 = 60.0;

fn plane() -> Plane {
    let corner = |column: f64, row: f64| Corner {
        at: PixelPoint { x: DIVISION * column, y: DIVISION * row },
        column,
        row,
    };
    Plane::fit(&[corner(0.0, 0.0), corner(10.0, 0.0), corner(10.0, 8.0), corner(0.0, 8.0)], 0.0).unwrap()
}

#[expect(clippy::cast_possible_truncation, reason = "a level of colour")]
fn level(value: f64) -> f32 {
    value as f32
}

/// A level trace of so many pixels about row 5.25, over a ground with a slope of light, beside a line of the grid.
fn picture(thickness: f64) -> Reduced {
    let (width, height) = (600, 480);
    let pixel = |x: usize, y: usize| {
        let off = (y as f64 + 0.5 - 5.25 * DIVISION).abs();
        let covered = (0.5 * thickness - off + 0.5).clamp(0.0, 1.0);
        let ground = 40.0 + 0.02 * x as f64;
        let ground = if y == 300 { ground + 60.0 } else { ground };
        [0.2, 1.0, 0.4].map(|share| level(ground + covered * (200.0 * share - ground)))
    };
    let rgb = (0..height).flat_map(|y| (0..width).map(move |x| (x, y))).map(|(x, y)| pixel(x, y)).collect();
    Reduced { width, height, scale: 1.0, rgb }
}

/// Its path as it is followed, up to two samples off its middle.
fn curve(width: usize, off: usize) -> Curve {
    let rows = vec![21 * SAMPLES / 4 + off; width];
    Curve { rows, seen: 1.0, own: Vec::new(), width, colour: [0.0, 160.0, 40.0], meets: false }
}

fn edge(begins: f64) -> ScreenEdge {
    let (base, ends) = (5.25, [begins, begins + 0.2]);
    ScreenEdge {
        column: begins + 0.1,
        row: 4.0,
        base,
        peak: 2.75,
        ends,
        confidence: 1.0,
        is_level: true,
        is_alone: true,
    }
}

#[test]
fn a_trace_is_as_thick_as_it_was_drawn() {
    for drawn in [2.0, 3.0, 5.0, 8.0, 14.0] {
        for off in [0, 2] {
            let found = thickness(&picture(drawn), &plane(), &curve(400, off), &edge(4.0)).unwrap();
            assert!((found - drawn).abs() < 0.3, "{drawn} px, path off by {off}: {found}");
        }
    }
}

#[test]
fn what_is_not_seen_is_not_told() {
    // An edge at the screen's left side, a picture without a trace.
    assert_eq!(thickness(&picture(5.0), &plane(), &curve(400, 0), &edge(0.3)), None);
    assert_eq!(thickness(&picture(0.0), &plane(), &curve(400, 0), &edge(4.0)), None);
}
