//! The reader of numbers beside that of the standard library.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

fn point(text: &str) -> Option<f64> {
    number(text.as_bytes(), false)
}

#[test]
fn odd_ways_to_write_a_number() {
    for (text, value) in [
        ("1.5", 1.5),
        (" 1.5 ", 1.5),
        ("+1.5", 1.5),
        ("-1.5", -1.5),
        ("- 1.5", -1.5),
        ("\u{2212}1.5", -1.5),
        (".5", 0.5),
        ("5.", 5.0),
        ("0001.50", 1.5),
        ("1.5E+03", 1500.0),
        ("1.5e3", 1500.0),
        ("-.5E-01", -0.05),
        ("0", 0.0),
        ("0e999999999", 0.0),
        ("1e-400", 0.0),
        ("1e400", f64::INFINITY),
    ] {
        assert_eq!(point(text), Some(value), "{text}");
    }
    assert_eq!(number(b"-1,25e-3", true), Some(-1.25e-3));
    assert!(point("-0.0").unwrap().is_sign_negative());
}

#[test]
fn what_is_no_number() {
    for text in [
        "", " ", "-", "+", ".", "e5", "nan", "inf", "1.5V", "1,5", "1.2.3", "1 2", "--1", "1e", "1e+", "0x10",
    ] {
        assert_eq!(point(text), None, "{text:?}");
    }
}

/// Linear congruential numbers (D. E. Knuth's MMIX), to write digits with.
fn next(state: &mut u64) -> u64 {
    *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    *state >> 11
}

/// As the standard library reads them: to the last bit up to 15 digits and powers of ten up to 22, which is what files of
/// samples hold; to one unit in the last place anywhere.
#[test]
fn the_nearest_double() {
    let mut state = 7;
    let mut off = 0;
    for round in 0..200_000_u64 {
        let digits = next(&mut state) % 10_u64.pow(1 + u32::try_from(next(&mut state) % 15).unwrap());
        let power = i64::try_from(next(&mut state) % 23).unwrap() - 22;
        let text = if round % 2 == 0 {
            format!("{digits}e{power}")
        } else {
            let decimals = usize::try_from(next(&mut state) % 12).unwrap();
            format!("{:.decimals$}", digits as f64 / 1e7)
        };
        let expected: f64 = text.parse().unwrap();
        let found = point(&text).unwrap();
        let counted = text.bytes().filter(u8::is_ascii_digit).count();
        if counted <= 17 && round % 2 == 0 {
            assert_eq!(found, expected, "{text}");
        }
        off += u32::from(found != expected);
    }
    assert_eq!(off, 0);
    let mut wrong = 0;
    for _ in 0..100_000 {
        let power = i64::try_from(next(&mut state) % 560).unwrap() - 290;
        let digits = next(&mut state) % 10_u64.pow(16);
        let text = format!("{}.{digits}e{power}", next(&mut state) % 1_000);
        let (found, expected) = (point(&text).unwrap(), text.parse::<f64>().unwrap());
        let apart = found.to_bits().abs_diff(expected.to_bits());
        assert!(apart <= 1, "{text}: {found:e} {expected:e}");
        wrong += apart;
    }
    assert!(wrong < 10, "{wrong} of 100,000 long numbers are off by one in the last place");
    for _ in 0..10_000 {
        let text = format!("{}{}.{}", next(&mut state), next(&mut state), next(&mut state));
        let (found, expected) = (point(&text).unwrap(), text.parse::<f64>().unwrap());
        assert!(found.to_bits().abs_diff(expected.to_bits()) <= 1, "{text}");
    }
}

#[test]
fn the_place_of_the_last_digit_tells_how_finely_it_is_written() {
    for (text, place) in [("1.50", -2), ("15", 0), ("1.50E-7", -9), ("1e3", 3)] {
        assert_eq!(prefix(text.as_bytes(), 0, b'.').unwrap().place, place, "{text}");
    }
    assert_eq!(prefix(b"xx 1.5;2", 3, b'.').unwrap().end, 6);
}

/// The way for most numbers finds the same as the one for all, or leaves the number to it.
#[test]
fn plain_numbers_are_read_the_same_either_way() {
    let mut state = 11;
    let mut taken = 0;
    for _ in 0..200_000 {
        let mut any = |kinds: u64| next(&mut state) % kinds;
        let sign = ["", "-", "+", " ", "- "][usize::try_from(any(12)).unwrap().saturating_sub(7)];
        let digits = |count: u64, random: u64| {
            format!("{random:020}").chars().rev().take(usize::try_from(count).unwrap()).collect::<String>()
        };
        let (whole, behind) = (any(4), any(18));
        let choice = |words: &[&'static str], random: u64| words[usize::try_from(random).unwrap()];
        let whole = digits(whole, any(u64::MAX));
        let decimals = if any(8) > 0 { format!(".{}", digits(behind, any(u64::MAX))) } else { String::new() };
        let power = if any(2) > 0 {
            format!("{}{}{}", choice(&["e", "E"], any(2)), choice(&["", "-", "+"], any(3)), any(30))
        } else {
            String::new()
        };
        let after = choice(&[";1", "\n", "", "e", "x1234567", "é", " 12345678"], any(7));
        let text = format!("{sign}{whole}{decimals}{power}{after}");
        let text = text.as_bytes();
        if let Some(found) = plain(text, 0, b'.') {
            let expected = prefix(text, 0, b'.').unwrap();
            assert_eq!(found.value.to_bits(), expected.value.to_bits(), "{}", text.escape_ascii());
            assert_eq!(found, expected, "{}", text.escape_ascii());
            taken += 1;
        }
    }
    assert!(taken > 50_000, "{taken} of 200,000");
}

#[test]
fn what_is_not_plainly_written_is_left_to_the_other_way() {
    for text in [
        "+1.5;",
        " 1.5;",
        ".5;",
        "5.;",
        "1.5e;",
        "1.5e100;",
        "1e-30;",
        "0.1234567890123456;",
        "9007199254740993;",
        "x",
    ] {
        let text = format!("{text}1234567890");
        assert_eq!(plain(text.as_bytes(), 0, b'.'), None, "{text}");
    }
    // Without eight bytes to be looked at behind the mark.
    assert_eq!(plain(b"1.5;2\n", 0, b'.'), None);
    assert_eq!(plain("−1.5;12345678".as_bytes(), 0, b'.'), None);
}
