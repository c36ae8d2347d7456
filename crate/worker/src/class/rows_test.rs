#![expect(clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::*;

fn given<'a>(mark: &'a str, unit: &'a str) -> ShownRow<'a> {
    ShownRow { rail: "1", residual: "−0,8", distance: "0,5000(30)", delay: "3.600(40)", unit, mark }
}

const LINE: NotebookLine = NotebookLine { slope: 4.0, intercept: 1.5, sealed: false };

#[test]
fn a_row_is_read_as_the_page_shows_it() {
    let row = given("12.5", "cm").read(LINE).unwrap();
    assert_eq!((row.place, row.mark, row.unit), (BenchPlace { rail: Some(1), centimetre: 13 }, 12.5, "cm"));
    assert_eq!((row.distance, row.delay, row.normalized), (0.5, 3.6, -0.8));
    // √(0.040² + (4 · 0.0030)²), and 3.6 − 1.5 − 4 · 0.5.
    assert!((row.u - 0.041_761_226).abs() < 1e-8, "{}", row.u);
    assert!((row.residual.unwrap() - 0.1).abs() < 1e-12);
    assert_eq!(given("12.5", "cm").read(NotebookLine { sealed: true, ..LINE }).unwrap().residual, None);
}

#[test]
fn one_mark_is_one_place_however_it_was_typed() {
    let forms = [
        ("12.5", "cm"),
        ("12,50", "cm"),
        ("125", "mm"),
        ("0.125 m", "cm"),
        ("125 mm", "cm"),
        ("12.5(3)", "cm"),
        ("12.5 ± 0.1 cm", "mm"),
        ("12.5; 12.6", "cm"),
        ("+12.5\u{a0}cm", "in"),
        ("13.4", "cm"),
        ("4.92126", "in"),
        ("4.92126″", "cm"),
        ("4.92126 \"", "cm"),
        ("4.92126 inches", "mm"),
    ];
    for (mark, unit) in forms {
        let place = given(mark, unit).read(LINE).map(|row| row.place);
        assert_eq!(place, Some(BenchPlace { rail: Some(1), centimetre: 13 }), "{mark} {unit}");
    }
    assert_eq!(given("−0,4", "cm").read(LINE).unwrap().place.centimetre, 0);
    assert_eq!(given("1 234", "mm").read(LINE).unwrap().place.centimetre, 123);
}

#[test]
fn what_is_no_plain_number_is_no_row() {
    for (mark, unit) in [
        ("", "cm"),
        ("here", "cm"),
        ("1.2.3", "cm"),
        ("12.5e1", "cm"),
        ("1.25 x 10^1", "cm"),
        ("1.25·10¹ cm", "cm"),
        ("1.25*10^1", "cm"),
        ("12.5", ""),
        ("12.5 yd", "cm"),
    ] {
        assert_eq!(given(mark, unit).read(LINE), None, "{mark} {unit}");
    }
    let given = given("12.5", "cm");
    assert_eq!(ShownRow { residual: "", ..given }.read(LINE), None);
    assert_eq!(ShownRow { distance: "1.2(3) × 10⁶", ..given }.read(LINE), None);
    assert_eq!(ShownRow { delay: "∞", ..given }.read(LINE), None);
}

#[test]
fn a_row_crosses_as_a_line() {
    let line = "1\t−0,8\t0,5000(30)\t3.600(40)\tcm\t12.5\tand more";
    assert_eq!(ShownRow::of(line), Some(given("12.5\tand more", "cm")));
    assert_eq!(ShownRow::of("1\t−0,8"), None);
    assert_eq!(ShownRow { rail: "", ..given("1", "m") }.read(LINE).unwrap().place.rail, None);
}
