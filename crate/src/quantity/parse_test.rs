//! One row for every way of writing a number, and one for every way of not writing one.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::super::in_unit;
use super::*;
use crate::words::in_english;
use DecimalMark::{Comma, Point};

#[test]
fn reads_what_people_write() {
    let cases: &[(&str, DecimalMark, Unit, f64, Option<f64>)] = &[
        ("12.5", Point, Unit::METRE, 12.5, None),
        ("12,5", Comma, Unit::METRE, 12.5, None),
        ("12.5", Point, Unit::CENTIMETRE, 0.125, None),
        ("12.5 cm", Point, Unit::METRE, 0.125, None),
        ("12.5cm", Point, Unit::METRE, 0.125, None),
        ("0.1 mm", Point, Unit::METRE, 1e-4, None),
        ("  7 ", Point, Unit::ONE, 7.0, None),
        ("+7", Point, Unit::ONE, 7.0, None),
        ("-7", Point, Unit::ONE, -7.0, None),
        ("−7", Point, Unit::ONE, -7.0, None),
        ("–7", Point, Unit::ONE, -7.0, None),
        ("− 7", Point, Unit::ONE, -7.0, None),
        ("-0", Point, Unit::ONE, 0.0, None),
        (".5", Point, Unit::ONE, 0.5, None),
        ("5.", Point, Unit::ONE, 5.0, None),
        ("299 792 458", Point, Unit::METRE_PER_SECOND, 299_792_458.0, None),
        ("299\u{a0}792\u{202f}458 m/s", Point, Unit::METRE_PER_SECOND, 299_792_458.0, None),
        ("299\u{2009}792,458 km/s", Comma, Unit::METRE_PER_SECOND, 299_792_458.0, None),
        ("0.123 456 7", Point, Unit::ONE, 0.123_456_7, None),
        ("2.987e8", Point, Unit::METRE_PER_SECOND, 2.987e8, None),
        ("2.987E+8", Point, Unit::METRE_PER_SECOND, 2.987e8, None),
        ("2,987 e8", Comma, Unit::METRE_PER_SECOND, 2.987e8, None),
        ("2.987×10^8", Point, Unit::METRE_PER_SECOND, 2.987e8, None),
        ("2.987 × 10⁸ m/s", Point, Unit::METRE_PER_SECOND, 2.987e8, None),
        ("2.987·10⁸", Point, Unit::METRE_PER_SECOND, 2.987e8, None),
        ("1.5 x 10^-3", Point, Unit::ONE, 1.5e-3, None),
        ("1.5 × 10^−3", Point, Unit::ONE, 1.5e-3, None),
        ("1.5 * 10⁻³", Point, Unit::ONE, 1.5e-3, None),
        ("3 µs", Point, Unit::NANOSECOND, 3000.0, None),
        ("3 μs", Point, Unit::NANOSECOND, 3000.0, None),
        ("3us", Point, Unit::NANOSECOND, 3000.0, None),
        ("3 ps", Point, Unit::NANOSECOND, 0.003, None),
        ("20", Point, Unit::NANOSECOND_PER_DIVISION, 20.0, None),
        ("20 ns", Point, Unit::NANOSECOND_PER_DIVISION, 20.0, None),
        ("0.1 µs/div", Point, Unit::NANOSECOND_PER_DIVISION, 100.0, None),
        ("3.2 div", Point, Unit::DIVISION, 3.2, None),
        ("1 in", Point, Unit::METRE, 0.0254, None),
        ("10.5″", Point, Unit::METRE, 0.2667, None),
        ("5 %", Point, Unit::ONE, 0.05, None),
        ("5", Point, Unit::PERCENT, 0.05, None),
        ("25 ppm", Point, Unit::ONE, 25e-6, None),
        ("10 kHz", Point, Unit::HERTZ, 1e4, None),
        ("20.1 °C", Point, Unit::CELSIUS, 20.1, None),
        ("1013.25 hPa", Point, Unit::PASCAL, 101_325.0, None),
        ("0.633 µm", Point, Unit::NANOMETRE, 633.0, None),
        ("2 mrad", Point, Unit::RADIAN, 0.002, None),
        ("180°", Point, Unit::RADIAN, PI, None),
        ("12.5 ± 0.3 cm", Point, Unit::METRE, 0.125, Some(0.003)),
        ("12.5±0.3", Point, Unit::CENTIMETRE, 0.125, Some(0.003)),
        ("12.5 +/- 0.3", Point, Unit::CENTIMETRE, 0.125, Some(0.003)),
        ("12,5 +- 0,3", Comma, Unit::CENTIMETRE, 0.125, Some(0.003)),
        ("(12.5 ± 0.3) cm", Point, Unit::METRE, 0.125, Some(0.003)),
        ("12.5(3) cm", Point, Unit::METRE, 0.125, Some(0.003)),
        ("12.5(0.3) cm", Point, Unit::METRE, 0.125, Some(0.003)),
        ("12.5(12) cm", Point, Unit::METRE, 0.125, Some(0.012)),
        ("2.987(21)e8", Point, Unit::METRE_PER_SECOND, 2.987e8, Some(2.1e6)),
        ("2.987(21) × 10⁸ m/s", Point, Unit::METRE_PER_SECOND, 2.987e8, Some(2.1e6)),
        ("(2.987 ± 0.021) × 10⁸ m/s", Point, Unit::METRE_PER_SECOND, 2.987e8, Some(2.1e6)),
        ("2.987e8 ± 2.1e6", Point, Unit::METRE_PER_SECOND, 2.987e8, Some(2.1e6)),
        ("12.5 ± 0", Point, Unit::METRE, 12.5, Some(0.0)),
        ("0e999999999999", Point, Unit::METRE, 0.0, None),
    ];
    for &(text, mark, default, value, uncertainty) in cases {
        let number = parse(text, mark, default);
        assert_eq!(number.as_ref().map(|n| (n.value, n.uncertainty)), Ok((value, uncertainty)), "{text:?}");
        assert!(number.is_ok_and(|n| n.value.is_sign_positive() || n.value != 0.0), "{text:?}");
    }
}

/// GUM 7.2.2: forms 2, 3 and 4 of one statement (a mass of 100,021 47 g, u = 0,35 mg).
#[test]
fn the_forms_of_the_guide_mean_one_thing() {
    for text in ["100,021 47(35)", "100,021 47(0,000 35)", "(100,021 47 ± 0,000 35)"] {
        let number = parse(text, Comma, Unit::ONE).unwrap();
        assert_eq!((number.value, number.uncertainty), (100.021_47, Some(0.000_35)), "{text}");
    }
}

#[test]
fn refuses_what_is_doubtful() {
    let cases: &[(&str, DecimalMark, Unit, &str)] = &[
        ("", Point, Unit::METRE, "empty"),
        (" \u{a0}\t", Point, Unit::METRE, "empty"),
        ("1,234", Point, Unit::METRE, "other_mark"),
        ("1.234", Comma, Unit::METRE, "other_mark"),
        ("1,234.5", Point, Unit::METRE, "other_mark"),
        ("12.5(0,3)", Point, Unit::METRE, "other_mark"),
        ("1.2.3", Point, Unit::METRE, "several_marks"),
        ("1,2,3", Comma, Unit::METRE, "several_marks"),
        ("12, 13", Comma, Unit::METRE, "grouping"),
        ("1 2", Point, Unit::METRE, "grouping"),
        ("1234 567", Point, Unit::METRE, "grouping"),
        ("12 .5", Point, Unit::METRE, "grouping"),
        ("1'234", Point, Unit::METRE, "unexpected"),
        ("12 5/8 in", Point, Unit::METRE, "grouping"),
        ("1/2", Point, Unit::METRE, "unexpected"),
        ("12; 13", Point, Unit::METRE, "unexpected"),
        ("12.5 (3", Point, Unit::METRE, "unexpected"),
        ("(12.5) cm", Point, Unit::METRE, "unexpected"),
        ("12.5 ± 0.3 ± 0.1", Point, Unit::METRE, "unexpected"),
        ("12.5(3) ± 0.1", Point, Unit::METRE, "unexpected"),
        ("nan", Point, Unit::METRE, "not_a_number"),
        ("inf", Point, Unit::METRE, "not_a_number"),
        ("-∞", Point, Unit::METRE, "not_a_number"),
        ("about 12", Point, Unit::METRE, "not_a_number"),
        ("-", Point, Unit::METRE, "not_a_number"),
        (".", Point, Unit::METRE, "not_a_number"),
        ("12 ±", Point, Unit::METRE, "not_a_number"),
        ("٣", Point, Unit::METRE, "not_a_number"),
        ("5e", Point, Unit::METRE, "exponent"),
        ("5 × 10", Point, Unit::METRE, "exponent"),
        ("5 × 8", Point, Unit::METRE, "exponent"),
        ("5 × 10^", Point, Unit::METRE, "exponent"),
        ("2.987 ± 0.021 × 10⁸", Point, Unit::METRE, "shared_exponent"),
        ("12.5 ± -0.3", Point, Unit::METRE, "negative_uncertainty"),
        ("12.5 furlongs", Point, Unit::METRE, "unknown_unit"),
        ("12.5 em", Point, Unit::METRE, "unknown_unit"),
        ("12.5 cm ± 3 mm", Point, Unit::METRE, "unknown_unit"),
        ("12.5 ns", Point, Unit::METRE, "wrong_dimension"),
        ("12.5 ± 2 %", Point, Unit::METRE, "wrong_dimension"),
        ("5 mm", Point, Unit::ONE, "wrong_dimension"),
        ("1e400", Point, Unit::METRE, "too_large"),
        ("1e308 km", Point, Unit::METRE, "too_large"),
        ("1e99999999999999999999", Point, Unit::METRE, "too_large"),
        ("1e-400", Point, Unit::METRE, "too_small"),
        ("1 ± 1e-400", Point, Unit::METRE, "too_small"),
    ];
    for &(text, mark, default, kind) in cases {
        let error = serde_json::to_value(parse(text, mark, default).unwrap_err()).unwrap();
        assert_eq!(error["kind"], kind, "{text:?} gave {error}");
    }
    let long = "1".repeat(LONGEST + 1);
    assert!(matches!(parse(&long, Point, Unit::METRE), Err(NumberError::TooLong { .. })));
}

#[test]
fn messages_say_what_to_do() {
    let message = |text, unit| in_english(&parse(text, Point, unit).unwrap_err().message());
    assert_eq!(
        message("1,234", Unit::METRE),
        "“1,234” has a comma, but this notebook uses a decimal point. Write a point, and a space between thousands. \
         Before the first number is typed, the comma can be chosen in the settings."
    );
    assert_eq!(
        message("3 ns", Unit::CENTIMETRE),
        "“ns” is a unit of another quantity: time. Here the quantity is: length. These units can be used: m, cm, mm, \
         µm, km, and in."
    );
    assert_eq!(
        message("12 divs.", Unit::DIVISION),
        "“divs.” is not a unit of this field. These can be used: div. Write one of them, once, after the number."
    );
}

#[test]
fn the_last_typed_digit_is_kept() {
    for (text, last_place) in [("12.50", -2), ("12", 0), ("1200", 0), ("1.5e8", 7), ("12.50(3) cm", -2)] {
        assert_eq!(parse(text, Point, Unit::METRE).unwrap().last_place, last_place, "{text}");
    }
    let step = parse("12.50 cm", Point, Unit::METRE).unwrap().step();
    assert!((step - 1e-4).abs() < f64::EPSILON * 1e-4);
}

#[test]
fn repeats_share_a_cell() {
    let values = |text| {
        parse_list(text, Comma, Unit::CENTIMETRE)
            .map(|numbers| numbers.iter().map(|number| number.value).collect::<Vec<_>>())
    };
    assert_eq!(values("12,5; 12,6;12,4"), Ok(vec![0.125, 0.126, 0.124]));
    assert_eq!(values("12,5 cm; 126 mm"), Ok(vec![0.125, 0.126]));
    assert_eq!(values("12,5; 126 mm"), Err(NumberError::MixedUnits));
    assert_eq!(values("12,5;; 12,6"), Err(NumberError::EmptyRepeat { position: 2 }));
    assert_eq!(values("12,5;"), Err(NumberError::EmptyRepeat { position: 2 }));
    assert_eq!(values("  "), Err(NumberError::Empty));
    assert!(matches!(values("12,5; x"), Err(NumberError::NotANumber { .. })));
}

#[cfg(not(target_arch = "wasm32"))]
mod properties {
    use super::*;
    use proptest::prelude::*;

    fn any_unit() -> impl Strategy<Value = Unit> {
        prop::sample::select(vec![
            Unit::METRE,
            Unit::CENTIMETRE,
            Unit::NANOSECOND,
            Unit::SECOND,
            Unit::NANOSECOND_PER_DIVISION,
            Unit::PPM,
            Unit::HECTOPASCAL,
            Unit::ONE,
        ])
    }

    fn any_mark() -> impl Strategy<Value = DecimalMark> {
        prop::sample::select(vec![Point, Comma])
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2000))]

        #[test]
        fn never_panics(text in any::<String>(), mark in any_mark(), unit in any_unit()) {
            let _ = parse_list(&text, mark, unit);
        }

        #[test]
        fn never_panics_on_nearly_numbers(
            text in "[0-9 .,eE×x*·^⁰¹²⁸⁻+/±()−a-dm%°µ;-]{0,24}", mark in any_mark(), unit in any_unit(),
        ) {
            for result in [parse(&text, mark, unit), parse(&text, mark, Unit::INCH)] {
                match result {
                    Ok(number) => prop_assert!(number.value.is_finite()),
                    Err(error) => prop_assert!(in_english(&error.message()).ends_with('.')),
                }
            }
        }

        #[test]
        fn what_is_written_reads_back(
            value in prop::num::f64::NORMAL, mark in any_mark(), unit in any_unit(),
        ) {
            let text = in_unit(value, unit, mark);
            let number = parse(&text, mark, unit);
            prop_assert_eq!(number.map(|number| number.value), Ok(value), "{}", text);
        }

        #[test]
        fn the_compiler_agrees(digits in 0_u64..1_000_000_000_000, places in 0_i32..12) {
            let text = format!("{digits}e-{places}");
            let expected: f64 = text.parse().unwrap();
            prop_assert_eq!(parse(&text, Point, Unit::METRE).map(|number| number.value), Ok(expected));
        }
    }
}
