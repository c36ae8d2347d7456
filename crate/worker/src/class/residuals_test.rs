#![expect(clippy::panic, clippy::unwrap_used, reason = "a test stops where its data are wrong")]

use super::super::GivenFigure;
use super::*;

/// Eight rows on two rails at whole metres, each by `w` standard uncertainties of 0.1 ns off t = 1 ns + 4 ns/m · d.
fn given(w: [f64; 8]) -> Given {
    let figure = |id: &str, value| GivenFigure { id: id.into(), value, uncertainty: None };
    let row = |(index, w): (usize, f64)| {
        let (rail, mark, delay) = (index / 4, index % 4, 1.0 + 4.0 * index as f64 + 0.1 * w);
        format!("{rail}\t{w:.1}\t{index}.000\t{delay:.2}(10)\tcm\t{mark}00\n")
    };
    Given {
        figures: vec![figure("slope", 4.0), figure("intercept", 1.0)],
        rows: w.into_iter().enumerate().map(row).collect(),
        rails: vec!["near".into(), String::new()],
        ..Given::default()
    }
}

fn class(count: usize) -> Vec<Given> {
    (0..count).map(|_| given([0.5, -0.5, -1.0, 0.5, -0.5, 4.0, -1.5, -1.0])).collect()
}

#[test]
fn a_place_is_named_with_how_many_share_it() {
    let found = residuals(&class(6), &[], DecimalMark::Comma).unwrap();
    let by = message!("class-places-ns", ns = "0,40", u = "4,0");
    let place = message!("class-places-rail", rail = "2", mark = "100\u{a0}cm");
    let [one] = found.places.as_slice() else { panic!("{:?}", found.places) };
    let text = message!("class-places-above", place = place, together = 6_usize, n = 6_usize, by = by);
    assert_eq!(one.text, text);
    assert_eq!(
        (found.told, found.drawn),
        (
            message!("class-places-some", n = 1_usize),
            vec![message!("class-residuals-drawn", rows = 48_usize, n = 6_usize)]
        )
    );
    // 5 m between 0 and 7 m, with 3 % of them free at both ends.
    assert!((one.at - 100.0 * 5.21 / 7.42).abs() < 1e-9, "{}", one.at);
    let rails: Vec<&str> = found.rails.iter().map(|rail| rail.name.as_str()).collect();
    assert_eq!(rails, ["near", "2"]);
    assert!(found.rails[0].to < found.rails[1].from);
}

#[test]
fn the_drawings_hold_every_row() {
    let all = class(6);
    let found = residuals(&all, &[], DecimalMark::Point).unwrap();
    for drawing in [&found.normalized, found.nanoseconds.as_ref().unwrap()] {
        assert_eq!((drawing.dots.matches('M').count(), drawing.bars.matches('M').count()), (48, 8));
        assert_eq!(drawing.beyond, None);
        assert!(
            drawing.ticks.iter().any(|tick| tick.text == "0" || tick.text == "0.0")
                && drawing.ticks.len() >= 3,
            "{drawing:?}"
        );
    }
    // 5 m across; 4 of 5 up, since the scale reaches 1.25 times as far as the place that lies farthest off.
    assert!(found.normalized.bars.contains("M694 100h16"), "{}", found.normalized.bars);
    let mut far = all;
    far[0] = given([0.5, 90.0, -1.0, 0.5, -0.5, 4.0, -1.5, -1.0]);
    let found = residuals(&far, &[], DecimalMark::Point).unwrap();
    assert_eq!(found.normalized.beyond, Some(message!("class-residuals-beyond", n = 1_usize)));
}

#[test]
fn what_is_left_out_is_told() {
    let mut all = class(4);
    all[0].sealed = true;
    all[1].rows.push_str("0\t0.1\t1.000\t2.00(10)\tcm\tthe first");
    all.push(Given::default());
    let found = residuals(&all, &[], DecimalMark::Point).unwrap();
    let told = [
        message!("class-residuals-drawn", rows = 32_usize, n = 4_usize),
        message!("class-residuals-without", n = 1_usize),
        message!("class-residuals-unread", n = 1_usize),
        message!("class-residuals-sealed", n = 1_usize),
    ];
    assert_eq!(found.drawn, told);
    assert_eq!(found.normalized.dots.matches('M').count(), 32);
    assert_eq!(found.nanoseconds.unwrap().dots.matches('M').count(), 24);

    let mut sealed = class(2);
    for one in &mut sealed {
        one.sealed = true;
    }
    let found = residuals(&sealed, &[], DecimalMark::Point).unwrap();
    assert_eq!(found.nanoseconds, None);
}

/// What partners hand in says nothing twice.
#[test]
fn notebooks_that_share_readings_are_drawn_and_count_once() {
    let all = class(6);
    let others = |one: usize| (0..6).filter(move |other| *other != one);
    let alike: Vec<Vec<Alike>> =
        (0..6).map(|one| others(one).map(|notebook| Alike { notebook, rows: 8 }).collect()).collect();
    let found = residuals(&all, &alike, DecimalMark::Point).unwrap();
    assert_eq!(found.told, message!("class-places-none-shared"));
    assert_eq!(found.drawn[1], message!("class-residuals-shared", n = 5_usize));
    assert_eq!(found.normalized.dots.matches('M').count(), 48);

    // Two pairs of partners, and two by themselves: four that count.
    let pairs = [vec![1], vec![0], vec![3], vec![2], vec![], vec![]];
    let alike = pairs.map(|with: Vec<usize>| {
        with.into_iter().map(|notebook| Alike { notebook, rows: 8 }).collect::<Vec<_>>()
    });
    let found = residuals(&all, &alike, DecimalMark::Point).unwrap();
    let [one] = found.places.as_slice() else { panic!("{:?}", found.places) };
    assert_eq!(one.text.values[&"n"], Value::from(4_usize));
    assert_eq!(found.drawn[1], message!("class-residuals-shared", n = 2_usize));

    // One before it that has no line has no say either.
    let mut without = class(2);
    without[0] = Given::default();
    let alike = [vec![Alike { notebook: 1, rows: 8 }], vec![Alike { notebook: 0, rows: 8 }]];
    let drawn = residuals(&without, &alike, DecimalMark::Point).unwrap().drawn;
    assert!(!drawn.contains(&message!("class-residuals-shared", n = 1_usize)), "{drawn:?}");
}

#[test]
fn without_a_place_in_common_nothing_is_named() {
    let alone = residuals(&class(1), &[], DecimalMark::Point).unwrap();
    assert_eq!(alone.told, message!("class-places-none-shared"));
    let quiet = [given([0.5; 8]), given([-0.5; 8])];
    assert_eq!(residuals(&quiet, &[], DecimalMark::Point).unwrap().told, message!("class-places-none"));
    assert_eq!(residuals(&[Given::default()], &[], DecimalMark::Point), None);
    assert_eq!(residuals(&[], &[], DecimalMark::Point), None);
}

/// Of six notebooks alike, each place has six rows, whose residuals are one number; a row of the table says so.
#[test]
fn the_table_has_a_row_for_each_place() {
    let found = residuals(&class(6), &[], DecimalMark::Comma).unwrap();
    assert!(found.table.rows.iter().all(|row| row.len() == found.table.columns.len()));
    assert_eq!(found.table.rows.len(), 8);
    let place = message!("class-places-rail", rail = "2", mark = "100\u{a0}cm");
    let texts = ["4,0", "4,0", "4,0", "0,40"].map(Value::from);
    let [head, rest @ ..] = found.table.rows[5].as_slice() else { panic!("{:?}", found.table.rows) };
    assert_eq!(head, &Value::from(place));
    assert_eq!(rest, [&[Value::from("5,000"), Value::from(6_usize)][..], &texts].concat());
}

#[test]
fn a_sealed_line_tells_no_nanoseconds() {
    let sealed = Given { sealed: true, ..given([0.5, -0.5, -1.0, 0.5, -0.5, 4.0, -1.5, -1.0]) };
    let found = residuals(&[sealed], &[], DecimalMark::Comma).unwrap();
    assert_eq!(found.nanoseconds, None);
    assert!(found.table.rows.iter().all(|row| row.last() == Some(&Value::default())));
}
