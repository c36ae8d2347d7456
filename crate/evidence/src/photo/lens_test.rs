#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

const HINT: Hint = Hint { columns: 10, rows: 8 };
const STEP: f64 = 45.0;

/// A grid of thin bright lines from (83, 61) on, ten divisions of 45 pixels to the right and eight downwards.
fn picture() -> Shrinking {
    let lines = |x: usize, y: usize| {
        let inside = (83..=533).contains(&x) && (61..=421).contains(&y);
        inside && ((x - 83).is_multiple_of(45) || (y - 61).is_multiple_of(45))
    };
    let level = |at: usize| if lines(at % 640, at / 640) { 120 } else { 40 };
    let pixels: Vec<u8> = (0..640 * 480).flat_map(|at| [level(at), level(at), level(at), 255]).collect();
    let mut picture = Shrinking::of(640, 480);
    picture.add(&pixels);
    picture
}

/// The plane of corners off their places by so many pixels: from the upper left round.
fn plane(off: [[f64; 2]; 4]) -> Plane {
    let places = [[0.0, 0.0], [10.0, 0.0], [10.0, 8.0], [0.0, 8.0]];
    let corner = |([column, row], [x, y]): ([f64; 2], [f64; 2])| Corner {
        at: PixelPoint { x: 83.5 + STEP * column + x, y: 61.5 + STEP * row + y },
        column,
        row,
    };
    let corners: Vec<Corner> = places.into_iter().zip(off).map(corner).collect();
    Plane::fit(&corners, 1.0).unwrap()
}

fn is_at(check: &Corner, x: f64, y: f64) {
    assert!((check.at.x - x).abs() < 0.5 && (check.at.y - y).abs() < 0.5, "{check:?}");
}

#[test]
fn crossings_are_seen_near_corners_that_a_hand_put() {
    let found =
        lens_checks(&plane([[2.0, -1.0], [-1.0, 2.0], [1.0, 1.0], [0.0, -2.0]]), &picture(), HINT).unwrap();
    let [centre, left, right]: [Corner; 3] = found.seen.clone().try_into().unwrap();
    is_at(&centre, 308.5, 241.5);
    is_at(&left, 83.5, 241.5);
    is_at(&right, 533.5, 241.5);
    assert!(!found.is_doubted);
}

#[test]
fn where_no_grid_is_seen_there_are_none() {
    let away = plane([[300.0, 0.0], [80.0, 0.0], [80.0, 40.0], [320.0, 44.0]]);
    assert_eq!(lens_checks(&away, &picture(), HINT).unwrap().seen, []);
}

/// Corners proposed a division too far to the right, and corrected: the checks go with them, but for one that was set.
#[test]
fn checks_that_nobody_set_go_with_the_corners() {
    let picture = picture();
    let (wrong, right) = (plane([[STEP, 0.0]; 4]), plane([[0.0; 2]; 4]));
    let mut checks = lens_checks(&wrong, &picture, HINT).unwrap().seen;
    assert_eq!(
        (checks.first().map(|c| c.column), checks.len()),
        (Some(5.0), 2),
        "the right side is beyond the grid"
    );
    is_at(&checks[0], 353.5, 241.5);
    let set = Corner { at: PixelPoint { x: 130.0, y: 245.0 }, column: 0.0, row: 4.0 };
    checks[1] = set;
    let followed = follow(&checks, &wrong, &right, &picture, HINT).unwrap();
    assert_eq!(followed.len(), 2);
    is_at(&followed[0], 308.5, 241.5);
    assert_eq!(followed[1], set);
    // Where the corners lie on no grid, it goes.
    let away = plane([[300.0, 0.0], [80.0, 0.0], [80.0, 40.0], [320.0, 44.0]]);
    assert_eq!(follow(&checks, &wrong, &away, &picture, HINT).unwrap(), [set]);
}
