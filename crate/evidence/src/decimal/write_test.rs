//! The corners of writing: noughts, carries, signs, extremes, and what is no number.
//! The published examples are in `tests/numbers/rounding.rs`.

use super::*;
use DecimalMark::{Comma, Point};

/// A text in which no line may end, here written with plain spaces.
fn whole(text: &str) -> String {
    text.replace(' ', "\u{a0}")
}

#[test]
fn plus_minus_and_short_form() {
    // Worked by hand from the rule at the head of `write.rs`.
    let cases: &[(f64, Option<f64>, &str, &str, &str)] = &[
        (2.987e8, Some(2.1e6), "m/s", "(2.987 ± 0.021) × 10⁸ m/s", "2.987(21) × 10⁸ m/s"),
        (3.336, Some(0.012), "ns/m", "3.336 ± 0.012 ns/m", "3.336(12) ns/m"),
        (-3.336, Some(0.012), "ns/m", "−3.336 ± 0.012 ns/m", "−3.336(12) ns/m"),
        (1.0, Some(0.0996), "m", "1.00 ± 0.10 m", "1.00(10) m"),
        (123.4, Some(9.96), "ns", "123 ± 10 ns", "123(10) ns"),
        (1234.0, Some(99.6), "ns", "1230 ± 100 ns", "1230(100) ns"),
        (0.0, Some(0.012), "ns", "0.000 ± 0.012 ns", "0.000(12) ns"),
        (0.3, Some(1.2), "ns", "0.3 ± 1.2 ns", "0.3(12) ns"),
        (-0.003, Some(1.2), "ns", "0.0 ± 1.2 ns", "0.0(12) ns"),
        (3.0, Some(120.0), "ns", "0 ± 120 ns", "0(120) ns"),
        (0.0, Some(1.2e-7), "s", "(0.0 ± 1.2) × 10⁻⁷ s", "0.0(12) × 10⁻⁷ s"),
        (99_999.97, Some(1.2), "m", "(1.000000 ± 0.000012) × 10⁵ m", "1.000000(12) × 10⁵ m"),
        (0.001, Some(0.000_12), "m", "0.00100 ± 0.00012 m", "0.00100(12) m"),
        (0.000_9, Some(0.000_12), "m", "(9.0 ± 1.2) × 10⁻⁴ m", "9.0(12) × 10⁻⁴ m"),
        (1e300, Some(1e298), "", "(1.000 ± 0.010) × 10³⁰⁰", "1.000(10) × 10³⁰⁰"),
        (1e-300, Some(2.5e-302), "", "(1.000 ± 0.025) × 10⁻³⁰⁰", "1.000(25) × 10⁻³⁰⁰"),
        (5.0, Some(0.5), "°", "5.00 ± 0.50°", "5.00(50)°"),
        (299_792_458.0, Some(0.0), "m/s", "2.99792458 × 10⁸ m/s", "2.99792458 × 10⁸ m/s"),
        (0.0, Some(0.0), "m", "0 m", "0 m"),
        (0.125, None, "m", "0.125 m", "0.125 m"),
        (1.0 / 3.0, None, "m", "0.333333 m", "0.333333 m"),
        (1.5, Some(f64::NAN), "m", "1.5 ± NaN m", "1.5 ± NaN m"),
        (1.5, Some(-1.0), "m", "1.5 ± NaN m", "1.5 ± NaN m"),
        (1.5, Some(f64::INFINITY), "m", "1.5 ± ∞ m", "1.5 ± ∞ m"),
        (f64::NAN, Some(1.0), "m", "NaN", "NaN"),
        (f64::INFINITY, None, "m", "∞", "∞"),
        (f64::NEG_INFINITY, Some(0.0), "m", "−∞", "−∞"),
    ];
    for &(value, u, unit, long, short) in cases {
        assert_eq!(plus_minus(value, u, unit, Point), whole(long));
        assert_eq!(short_form(value, u, unit, Point), whole(short));
    }
    assert_eq!(plus_minus(2.987e8, Some(2.1e6), "m/s", Comma), whole("(2,987 ± 0,021) × 10⁸ m/s"));
    assert_eq!(short_form(3.336, Some(0.012), "ns/m", Comma), whole("3,336(12) ns/m"));
}

#[test]
fn a_p_value_is_never_shown_as_nought() {
    assert_eq!(p_text(0.0321, Point), "0.032");
    assert_eq!(p_text(0.000_6, Point), "0.001");
    assert_eq!([0.000_4, 0.0].map(|p| p_text(p, Comma)), ["< 0,001", "< 0,001"]);
    assert_eq!([0.0321, 0.000_4].map(|p| p_equation(p, Point)), ["p = 0.032", "p < 0.001"]);
}

#[test]
fn plain_and_fixed() {
    assert_eq!(plain(2.718_9, 3, Point), "2.72");
    assert_eq!(plain(-2.718_9, 3, Comma), "−2,72");
    assert_eq!(plain(299_792_458.0, 4, Point), whole("2.998 × 10⁸"));
    assert_eq!(plain(12_345.0, 2, Point), whole("1.2 × 10⁴"));
    assert_eq!(plain(9_949.0, 2, Point), "9900");
    assert_eq!(plain(9_996.0, 2, Point), whole("1.0 × 10⁴"));
    assert_eq!(plain(99_996.0, 4, Point), whole("1.000 × 10⁵"));
    assert_eq!(plain(0.0, 3, Point), "0.00");
    assert_eq!(plain(2.0, 0, Point), "2");
    assert_eq!(plain(f64::NAN, 3, Point), "NaN");
    assert_eq!(fixed(1234.567, -2, Comma), "1234,57");
    assert_eq!(fixed(-0.001, -2, Point), "0.00");
    assert_eq!(fixed(1234.567, 2, Point), "1200");
    assert_eq!(fixed(f64::INFINITY, -2, Point), "∞");
}

#[test]
fn exact_digits_for_files() {
    let cases: &[(f64, &str)] = &[
        (1.0, "1"),
        (-0.125, "-0.125"),
        (0.1 + 0.2, "0.30000000000000004"),
        (299_792_458.0, "299792458"),
        (1e15, "1000000000000000"),
        (1e16, "1e16"),
        (1.25e-9, "1.25e-9"),
        (0.0, "0"),
        (f64::NAN, "NaN"),
        (f64::INFINITY, "INF"),
        (f64::NEG_INFINITY, "-INF"),
    ];
    for &(value, text) in cases {
        assert_eq!(exact(value), text);
    }
}

#[test]
fn no_more_digits_than_there_are() {
    assert_eq!(at_most(0.2, 3, Point), "0.2");
    assert_eq!(at_most(0.213_46, 4, Comma), "0,2135");
    assert_eq!(at_most(3.800_000_000_000_000_3, 7, Point), "3.8");
    assert_eq!(at_most(12_000.0, 4, Point), whole("1.2 × 10⁴"));
    assert_eq!(at_most(0.0, 4, Point), "0");
    assert_eq!(at_most(1.234_56e-5, 4, Point), whole("1.235 × 10⁻⁵"));
    assert_eq!(at_most(f64::INFINITY, 4, Point), "∞");
}

#[cfg(not(target_arch = "wasm32"))]
mod properties {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn exact_reads_back(value in prop::num::f64::ANY) {
            let read: f64 = exact(value).parse().unwrap_or(f64::NAN);
            prop_assert!(read.to_bits() == value.to_bits() || value.is_nan() || value == 0.0);
        }

        #[test]
        fn never_panics(value in prop::num::f64::ANY, u in prop::num::f64::ANY, n in any::<usize>(), place: i32) {
            plus_minus(value, Some(u), "m", Point);
            short_form(value, Some(u), "m", Point);
            plain(value, n, Point);
            fixed(value, place, Point);
        }
    }
}
