//! Pairs against sums and products that are exact in binary by construction.

use super::*;

const TINY: f64 = 1.0 / (1_u64 << 60) as f64;

#[test]
fn sums_keep_what_a_double_drops() {
    assert_eq!(DoubleDouble::sum(1.0, TINY), DoubleDouble { high: 1.0, low: TINY });
    assert_eq!(DoubleDouble::sum(TINY, 1.0), DoubleDouble { high: 1.0, low: TINY });
    // 10¹⁶ + 1 lies half-way between two doubles.
    assert_eq!(DoubleDouble::sum(1e16, 1.0), DoubleDouble { high: 1e16, low: 1.0 });
    assert_eq!(DoubleDouble::difference(1e16, -1.0).value(), 1e16);
}

#[test]
fn products_keep_what_a_double_drops() {
    // (1 + 2⁻³⁰)² = 1 + 2⁻²⁹ + 2⁻⁶⁰.
    let root = 1.0 + 2.0_f64.powi(-30);
    assert_eq!(DoubleDouble::product(root, root), DoubleDouble { high: 1.0 + 2.0_f64.powi(-29), low: TINY });
    // (2⁵³ − 1)² = 2¹⁰⁶ − 2⁵⁴ + 1.
    let largest = 2.0_f64.powi(53) - 1.0;
    assert_eq!(
        DoubleDouble::product(largest, largest),
        DoubleDouble { high: 2.0_f64.powi(106) - 2.0_f64.powi(54), low: 1.0 }
    );
}

#[test]
fn what_cancels_leaves_the_rest_exact() {
    let third = DoubleDouble::from(1.0 / 3.0);
    // 3 · fl(1/3) = 1 − 2⁻⁵⁴: 1/3 rounds down by 2⁻⁵⁴/3.
    assert_eq!((third * 3.0.into() - 1.0.into()).value(), -(2.0_f64.powi(-54)));
    let large = DoubleDouble::sum(1e9, 1e-9);
    assert_eq!((large - 1e9.into()).value(), 1e-9);
    assert_eq!((large * large - (1e18).into()).value(), 2.0);
    assert_eq!((-large + large).value(), 0.0);
    assert_eq!(large.over(4.0), DoubleDouble { high: 2.5e8, low: 2.5e-10 });
}
