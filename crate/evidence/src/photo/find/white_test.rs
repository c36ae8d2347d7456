//! A bright spot beside an edge, upon it, and nowhere near.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::super::{Corner, PixelPoint};
use super::*;

/// 40 pixels to a division, 10 × 8 divisions, of one grey but for a disc of white, its middle and radius in divisions.
fn picture(ground: f32, [column, row]: [f64; 2], radius: f64) -> Reduced {
    let (width, height) = (400, 320);
    let pixel = |x: usize, y: usize| {
        let off = libm::hypot(x as f64 / 40.0 - column, y as f64 / 40.0 - row);
        if off < radius { [255.0; 3] } else { [ground; 3] }
    };
    let rgb = (0..height).flat_map(|y| (0..width).map(move |x| (x, y))).map(|(x, y)| pixel(x, y)).collect();
    Reduced { width, height, scale: 1.0, rgb }
}

#[test]
fn a_reflection_hides_the_edge_that_it_lies_upon() {
    let places = [[0.0, 0.0], [10.0, 0.0], [10.0, 8.0], [0.0, 8.0]];
    let corner =
        |[column, row]: [f64; 2]| Corner { at: PixelPoint { x: 40.0 * column, y: 40.0 * row }, column, row };
    let plane = Plane::fit(&places.map(corner), 0.0).unwrap();
    let edge = ScreenEdge {
        column: 4.0,
        row: 4.0,
        base: 6.0,
        peak: 2.0,
        ends: [3.8, 4.2],
        confidence: 0.6,
        is_level: true,
        is_alone: true,
    };
    let hidden = |ground, middle, radius| is_hidden(&picture(ground, middle, radius), &plane, &edge);
    assert!(hidden(60.0, [4.0, 4.0], 0.8) && hidden(60.0, [4.7, 3.0], 0.9));
    assert!(!hidden(60.0, [4.0, 4.0], 0.2) && !hidden(60.0, [7.0, 3.0], 1.5));
    // A light screen is no reflection, nor is a white one; a reflection over half of a screen is.
    assert!(!hidden(245.0, [9.0, 1.0], 0.1) && !hidden(255.0, [9.0, 1.0], 0.1));
    assert!(hidden(60.0, [4.0, 4.0], 4.0));
}
