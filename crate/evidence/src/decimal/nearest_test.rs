//! Held to the reader of the standard library, which is correctly rounded (Rust reference, `f64::from_str`).

#![expect(clippy::unwrap_used, reason = "tests")]

use proptest::prelude::*;

use super::*;

fn library(digits: &str, place: i32) -> f64 {
    format!("{digits}e{place}").parse().unwrap()
}

#[test]
fn ends_and_middles_are_the_librarys() {
    let long = "9".repeat(900);
    let cases = [
        ("0", 5),
        ("000", -400),
        ("1", 0),
        ("17976931348623157", 292),
        ("17976931348623158", 292),
        ("17976931348623159", 292),
        ("1", 309),
        ("1", 310),
        ("5", -324),
        ("24703282292062327208", -343),
        ("24703282292062327209", -343),
        ("22250738585072011", -324),
        ("22250738585072014", -324),
        ("9007199254740993", 0),
        ("90071992547409930000000000000000000000000000000000001", -37),
        ("9007199254740991", 1),
        ("123456789012345", 22),
        ("123456789012345", 23),
        ("3", -23),
        (long.as_str(), -900),
        (long.as_str(), -600),
        (long.as_str(), -1200),
    ];
    for (digits, place) in cases {
        let (found, expected) = (nearest(false, digits, place), library(digits, place));
        assert_eq!(found.to_bits(), expected.to_bits(), "{digits}e{place}: {found:e}, not {expected:e}");
        assert_eq!(nearest(true, digits, place).to_bits(), (-expected).to_bits());
    }
}

/// A midpoint between two doubles goes to the even one; a digit 700 places on decides otherwise.
#[test]
fn the_last_digit_counts() {
    let midpoint = "9007199254740993";
    assert_eq!(nearest(false, midpoint, 0), 9_007_199_254_740_992.0);
    let above = format!("{midpoint}{}1", "0".repeat(900));
    assert_eq!(nearest(false, &above, -901), 9_007_199_254_740_994.0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn digits_at_random(digits in "[0-9]{1,40}", place in -360_i32..320) {
        prop_assert_eq!(nearest(false, &digits, place).to_bits(), library(&digits, place).to_bits());
    }

    #[test]
    fn every_double_comes_back(bits in 0_u64..0x7ff0_0000_0000_0000) {
        let value = f64::from_bits(bits);
        let text = format!("{value:e}");
        let (mantissa, exponent) = text.split_once('e').unwrap();
        let decimals = mantissa.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let place = exponent.parse::<i32>().unwrap() - i32::try_from(decimals).unwrap();
        prop_assert_eq!(nearest(false, &mantissa.replace('.', ""), place).to_bits(), bits);
    }
}
