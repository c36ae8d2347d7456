//! Values with their uncertainties as published, from a double and its uncertainty back to the printed form.

use slope_of_light::quantity::{DecimalMark, Unit, fixed, parse, plus_minus, rounded, short_form};

/// A text in which no line may end, here written with plain spaces.
fn whole(text: &str) -> String {
    text.replace(' ', "\u{a0}")
}

/// JCGM 100:2008 (GUM), 7.2.2: the mass standard of nominally 100 g, u = 0,35 mg, in forms 2 and 4
/// (grouping spaces left out, as everywhere in the notebook). Recalled from memory.
#[test]
fn gum_7_2_2_mass_standard() {
    let (value, u) = (100.021_47, Some(0.000_35));
    assert_eq!(short_form(value, u, "g", DecimalMark::Comma), whole("100,02147(35) g"));
    assert_eq!(plus_minus(value, u, "g", DecimalMark::Comma), whole("100,02147 ± 0,00035 g"));
}

/// JCGM 100:2008 (GUM), 7.2.6: y = 10,057 62 Ω with u = 27 mΩ is rounded to 10,058 Ω. From memory.
#[test]
fn gum_7_2_6_value_follows_the_uncertainty() {
    let pair = rounded(10.057_62, 0.027).map(|pair| (pair.place, pair.value.to_f64()));
    assert_eq!(pair, Some((-3, 10.058)));
    assert_eq!(plus_minus(10.057_62, Some(0.027), "Ω", DecimalMark::Comma), whole("10,058 ± 0,027 Ω"));
    assert_eq!(fixed(10.057_62, -3, DecimalMark::Comma), "10,058");
}

/// CODATA 2018 recommended values in concise form (grouping spaces left out), as in the table of NIST that scipy 1.17 keeps
/// (`scipy.constants`, `txt2018`). Each is read from that form and written again. (The fine-structure constant is published
/// with × 10⁻³; the notebook's rule writes powers of ten only below that.)
#[test]
fn codata_2018_concise_forms() {
    let cases = [
        (6.674_30e-11, 0.000_15e-11, "m³ kg⁻¹ s⁻²", "6.67430(15) × 10⁻¹¹ m³ kg⁻¹ s⁻²"),
        (9.109_383_701_5e-31, 0.000_000_002_8e-31, "kg", "9.1093837015(28) × 10⁻³¹ kg"),
        (1.672_621_923_69e-27, 0.000_000_000_51e-27, "kg", "1.67262192369(51) × 10⁻²⁷ kg"),
        (7.297_352_569_3e-3, 0.000_000_001_1e-3, "", "0.0072973525693(11)"),
        (137.035_999_084, 0.000_000_021, "", "137.035999084(21)"),
        (10_973_731.568_160, 0.000_021, "m⁻¹", "1.0973731568160(21) × 10⁷ m⁻¹"),
        (8.854_187_812_8e-12, 0.000_000_001_3e-12, "F/m", "8.8541878128(13) × 10⁻¹² F/m"),
    ];
    for (value, u, unit, text) in cases {
        assert_eq!(short_form(value, Some(u), unit, DecimalMark::Point).replace('\u{a0}', " "), text);
        let number = text.strip_suffix(unit).unwrap_or(text);
        let read = parse(number, DecimalMark::Point, Unit::ONE).map(|n| (n.value, n.uncertainty));
        assert_eq!(read, Ok((value, Some(u))), "{text}");
    }
}

/// SI Brochure, 9th ed., 2.3.1: c = 299 792 458 m/s exactly. The text with its grouping spaces gives it.
#[test]
fn si_brochure_speed_of_light() {
    for text in ["299 792 458 m/s", "299\u{2009}792\u{2009}458", "2.997 924 58 × 10⁸ m/s", "299 792.458 km/s"]
    {
        let c = parse(text, DecimalMark::Point, Unit::METRE_PER_SECOND).map(|n| n.value);
        assert_eq!(c, Ok(299_792_458.0), "{text}");
    }
}
