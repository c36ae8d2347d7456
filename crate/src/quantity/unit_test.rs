use super::super::{parse, plus_minus, short_form};
use super::*;
use DecimalMark::{Comma, Point};
use proptest::prelude::*;

#[test]
fn as_typed_in_a_unit() {
    assert_eq!(in_unit(0.125, Unit::CENTIMETRE, Point), "12.5 cm");
    assert_eq!(in_unit(-0.125, Unit::CENTIMETRE, Comma), "−12,5 cm");
    assert_eq!(in_unit(0.0254, Unit::INCH, Point), "1 in");
    assert_eq!(in_unit(25e-6, Unit::PPM, Point), "25 ppm");
    assert_eq!(in_unit(0.0, Unit::PPM, Point), "0 ppm");
    assert_eq!(in_unit(f64::NAN, Unit::PPM, Point), "NaN");
}

proptest! {
    #[test]
    fn both_forms_read_alike(value in -1e12_f64..1e12, relative in 1e-9_f64..10.0) {
        let u = (value * relative).abs();
        let long = parse(&plus_minus(value, Some(u), "m", Comma), Comma, Unit::METRE);
        let short = parse(&short_form(value, Some(u), "m", Comma), Comma, Unit::METRE);
        prop_assert_eq!(long.clone().map(|n| (n.value, n.uncertainty)), short.map(|n| (n.value, n.uncertainty)));
        let difference = (long.map_or(f64::NAN, |n| n.value) - value).abs();
        // Half a unit of the second digit is at most a twentieth of the rounded uncertainty (9.95 → 10).
        prop_assert!(difference <= 0.0503 * u);
    }
}
