//! Rounding on the decimal expansion, at the places where a shortcut would go wrong.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

fn at(value: f64, place: i32) -> String {
    Decimal::at_place(value, place).unwrap().positional('-', DecimalMark::Point)
}

/// Expected strings by hand from the exact expansions, which the comments give where they matter.
#[test]
fn rounds_half_to_even_on_the_exact_expansion() {
    let cases = [
        (0.125, -2, "0.12"),
        (0.375, -2, "0.38"),
        (2.5, 0, "2"),
        (3.5, 0, "4"),
        (-2.5, 0, "-2"),
        (0.5, 0, "0"),
        (1.5, 0, "2"),
        // 0.1499999999999999944…
        (0.15, -1, "0.1"),
        // 0.0500000000000000027…
        (0.05, -1, "0.1"),
        // 1.00499999999999989…
        (1.005, -2, "1.00"),
        (25.0, 1, "20"),
        (35.0, 1, "40"),
        (5.0, 1, "0"),
        (5.000_000_000_000_001, 1, "10"),
        (49.0, 2, "0"),
        (51.0, 2, "100"),
        (-51.0, 2, "-100"),
        (4.0, 2, "0"),
        (99.96, -1, "100.0"),
        (9.96, -1, "10.0"),
        (9.96, 0, "10"),
        (-0.04, -1, "0.0"),
        (0.0, -3, "0.000"),
        (0.0, 3, "0"),
    ];
    for (value, place, expected) in cases {
        assert_eq!(at(value, place), expected, "{value} at 10^{place}");
    }
}

/// The double nearest to 10²³ is 99 999 999 999 999 991 611 392, though its shortest form is 1e23.
#[test]
fn digits_come_from_the_expansion_not_from_the_shortest_form() {
    assert_eq!(at(1e23, 0), "99999999999999991611392");
    assert_eq!(at(1e23, 7), "99999999999999990000000");
    assert_eq!(at(1e23, 8), "100000000000000000000000");
    assert_eq!(at(1e23, 22), "100000000000000000000000");
    assert_eq!(at(1e23, 23), "100000000000000000000000");
    assert_eq!(at(1e23, 24), "0");
}

#[test]
fn uncertainty_keeps_two_digits_when_it_carries() {
    let place = |u| rounded(1.0, u).unwrap().place;
    assert_eq!(place(0.0996), -2);
    assert_eq!(place(0.0994), -3);
    assert_eq!(place(9.96), 0);
    assert_eq!(place(99.6), 1);
}

#[test]
fn nothing_is_rounded_to_an_uncertainty_that_is_none() {
    for u in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(rounded(1.0, u), None);
    }
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(rounded(value, 1.0), None);
    }
}

#[test]
fn extreme_places_neither_hang_nor_panic() {
    for value in [f64::MAX, f64::MIN_POSITIVE, 5e-324, -1.0, 0.0] {
        for place in [i32::MIN, -1074, 0, 308, i32::MAX] {
            assert!(Decimal::at_place(value, place).is_some());
        }
    }
}

#[test]
fn reads_what_files_hold() {
    let read = |text: &str| Decimal::read(text).map(|decimal| decimal.positional('-', DecimalMark::Point));
    for (text, same) in [
        ("-0.0125", "-0.0125"),
        ("1.25e-2", "0.0125"),
        ("3.000e-7", "0.0000003000"),
        ("12", "12"),
        ("-0", "0"),
    ] {
        assert_eq!(read(text).as_deref(), Some(same));
    }
    for text in ["", ".", "-", "1,5", "NaN", "1e", "1e9999999999", "1e400000", "--1", "1.2.3", "0x1"] {
        assert_eq!(read(text), None, "{text}");
    }
}

#[test]
fn rounds_up_and_carries() {
    for (value, expected) in
        [(0.012_345, "0.0124"), (0.012_3, "0.0123"), (9.991, "10.00"), (123.4, "124"), (0.0, "0.00")]
    {
        assert_eq!(Decimal::significant_up(value, 3).unwrap().positional('-', DecimalMark::Point), expected);
    }
}

#[cfg(not(target_arch = "wasm32"))]
proptest::proptest! {
    #[test]
    fn rounded_up_is_never_below_nor_a_unit_above(value in 1e-300..1e300, digits in 1_usize..6) {
        let up = Decimal::significant_up(value, digits).unwrap().to_f64();
        let unit = Decimal::significant(value, digits).map_or(0.0, |d| 10_f64.powi(d.place()));
        proptest::prop_assert!(up >= value && up - value <= 1.000_001 * unit, "{value} {up}");
    }

    #[test]
    fn shortest_digits_read_back(value in proptest::num::f64::ANY) {
        if let Some(decimal) = Decimal::shortest(value) {
            proptest::prop_assert_eq!(Some(decimal.to_f64()), Some(value));
        }
    }

    /// A second way to the same digits: the standard library's fixed notation, for places it can write.
    #[test]
    fn agrees_with_fixed_notation(value in -1e12..1e12, decimals in 0_usize..12) {
        let text = at(value, -i32::try_from(decimals).unwrap());
        let expected = format!("{value:.decimals$}");
        let nought = expected.bytes().all(|b| b"-0.".contains(&b));
        proptest::prop_assert_eq!(text, if nought { expected.replace('-', "") } else { expected });
    }
}
