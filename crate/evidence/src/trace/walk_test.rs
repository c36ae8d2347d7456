//! The line of the differences, and what it does to v.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

/// Weighted line by hand: d = 0, 1, 3, differences 0, 0.1, 0.3 lie on a line of 0.1.
#[test]
fn a_straight_walk() {
    let walk = compare_walk(&[0.0, 1.0, 3.0], &[0.0, 0.1, 0.3], &[0.1, 0.1, 0.1]).unwrap();
    assert!((walk.slope - 0.1).abs() < 1e-12 && walk.chi_square < 1e-20);
    assert_eq!(walk.degrees, 1);
    // Σ(d − 4/3)² = 14/3.
    assert!((walk.uncertainty - 0.1 / (14.0_f64 / 3.0).sqrt()).abs() < 1e-12);
    // A delay of 3.3 ns/m becomes 3.4 ns/m, and v smaller by 1 in 34.
    let (shift, u) = walk.shift(3.3);
    assert!((shift + 0.1 / 3.4).abs() < 1e-12);
    assert!((u - 3.3 * walk.uncertainty / (3.4 * 3.4)).abs() < 1e-12);
}

#[test]
fn what_is_no_line() {
    assert_eq!(compare_walk(&[1.0], &[0.0], &[0.1]), None);
    assert_eq!(compare_walk(&[1.0, 1.0], &[0.0, 0.1], &[0.1, 0.1]), None);
    assert_eq!(compare_walk(&[1.0, 2.0], &[0.0, 0.1], &[0.1, 0.0]), None);
    assert_eq!(compare_walk(&[1.0, 2.0], &[0.0], &[0.1, 0.1]), None);
}
