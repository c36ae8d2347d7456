#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;
use crate::photo::{Plane, check_series};

const HINT: Hint = Hint { columns: 10, rows: 8 };

/// A grid of thin lines, straight and without traces.
fn bare_grid(width: usize, height: usize, left: usize, top: usize, step: usize) -> Vec<u8> {
    let mut grey = vec![40; width * height];
    for y in 0..height {
        for x in 0..width {
            let inside = (left..=left + 10 * step).contains(&x) && (top..=top + 8 * step).contains(&y);
            if inside && ((x - left).is_multiple_of(step) || (y - top).is_multiple_of(step)) {
                grey[y * width + x] = 120;
            }
        }
    }
    grey
}

#[test]
fn a_bare_grid_gives_corners_and_no_edges() {
    let grey = bare_grid(640, 480, 83, 61, 45);
    let found = propose(Pixels::of(&grey, 640, 480), HINT, None).unwrap();
    let expected = [(83.5, 61.5), (533.5, 61.5), (533.5, 421.5), (83.5, 421.5)];
    for (corner, (x, y)) in found.corners.iter().zip(expected) {
        assert!((corner.at.x - x).abs() < 0.5 && (corner.at.y - y).abs() < 0.5, "{corner:?}");
    }
    assert!(found.confidence > 0.95 && found.doubts.is_empty(), "{found:?}");
    assert_eq!(found.edges, [None, None]);
    // Nothing is random.
    assert_eq!(propose(Pixels::of(&grey, 640, 480), HINT, None).unwrap(), found);
}

#[test]
fn a_camera_that_moved_is_seen() {
    let grey = bare_grid(640, 480, 83, 61, 45);
    let plane = Plane::fit(&propose(Pixels::of(&grey, 640, 480), HINT, None).unwrap().corners, 1.0).unwrap();
    let at = |left, top| {
        check_series(&plane, Pixels::of(&bare_grid(640, 480, left, top, 45), 640, 480), HINT).unwrap()
    };
    let still = at(83, 61);
    assert!(still.holds(1.0) && still.largest < 0.3, "{still:?}");
    let nudged = at(89, 58);
    assert!(!nudged.holds(1.0), "{nudged:?}");
    assert!((nudged.shift[0] - 6.0).abs() < 0.3 && (nudged.shift[1] + 3.0).abs() < 0.3, "{nudged:?}");
    // By a whole division, so that most lines fall on lines.
    let jumped = at(83 + 45, 61);
    assert!(!jumped.holds(1.0) && (jumped.shift[0] - 45.0).abs() < 0.5, "{jumped:?}");
    assert!((jumped.divisions - 1.0).abs() < 0.02);
    assert!(check_series(&plane, Pixels::of(&vec![0; 640 * 480], 640, 480), HINT).is_err());
}

#[test]
fn pictures_without_a_grid_are_refused_and_never_panic() {
    let none = ProposeError::NoGrid { columns: 10, rows: 8 };
    assert_eq!(propose(Pixels::of(&vec![0; 400 * 300], 400, 300), HINT, None).unwrap_err(), none);
    assert_eq!(propose(Pixels::of(&vec![255; 400 * 300 * 4], 400, 300), HINT, None).unwrap_err(), none);
    // Noise: a plain generator of J. E. Gentle's kind, x → 1664525 x + 1013904223.
    let mut state = 1_u32;
    let noise: Vec<u8> = (0..400 * 300)
        .map(|_| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            state.to_be_bytes()[0]
        })
        .collect();
    assert_eq!(propose(Pixels::of(&noise, 400, 300), HINT, None).unwrap_err(), none);
    for (width, height) in [(0, 0), (1, 500), (500, 1), (63, 64), (8, 8), (64, 64), (65, 3000), (3000, 65)] {
        for value in [0, 90, 255] {
            assert!(propose(Pixels::of(&vec![value; width * height], width, height), HINT, None).is_err());
            assert!(
                propose(Pixels::of(&vec![value; width * height * 4], width, height), HINT, None).is_err()
            );
        }
        let part = noise.iter().cycle().take(width * height).copied().collect::<Vec<u8>>();
        let _ = propose(Pixels::of(&part, width, height), HINT, None);
        let stripes: Vec<u8> = (0..width * height).map(|i| if i % 7 == 0 { 255 } else { 0 }).collect();
        for hint in [HINT, Hint { columns: 3, rows: 24 }, Hint { columns: 24, rows: 3 }] {
            let _ = propose(Pixels::of(&stripes, width, height), hint, None);
        }
    }
    for (columns, rows) in [(0, 0), (2, 8), (10, 25), (u32::MAX, u32::MAX)] {
        let refused = propose(Pixels::of(&noise, 400, 300), Hint { columns, rows }, None).unwrap_err();
        assert_eq!(refused, ProposeError::Divisions { columns, rows });
    }
    assert_eq!(none.message(), message!("propose-no_grid", columns = "10", rows = "8"));
}

#[test]
fn a_screen_that_is_only_partly_on_the_picture_does_not_panic() {
    for (left, top) in [(300, 61), (0, 0), (83, 300)] {
        let _ = propose(Pixels::of(&bare_grid(640, 480, left, top, 45), 640, 480), HINT, None);
    }
}
