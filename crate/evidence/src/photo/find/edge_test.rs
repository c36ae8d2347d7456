//! Edges of a trace that is drawn by hand.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

/// A trace of 10 × 8 divisions that lies at row 6, rises straight from column 4 to column 4.4 up to row 2, and stays there.
fn ramp() -> Curve {
    drawn(|_| None)
}

/// The same, but at other rows in columns where another row is told.
fn drawn(other: impl Fn(f64) -> Option<f64>) -> Curve {
    let (width, height) = (10 * SAMPLES, 8 * SAMPLES);
    let row = |x: usize| {
        let share = (x.saturating_sub(4 * SAMPLES) as f64 / (0.4 * SAMPLES as f64)).min(1.0);
        other(x as f64 / SAMPLES as f64).unwrap_or(6.0 - 4.0 * share) * SAMPLES as f64
    };
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "rows of the screen")]
    let rows: Vec<usize> = (0..width).map(|x| row(x) as usize).collect();
    let mut own = vec![0.0; width * height];
    for x in 1..width {
        for y in rows[x].min(rows[x - 1])..=rows[x].max(rows[x - 1]) {
            own[y * width + x] = 1.0;
        }
    }
    Curve { rows, seen: 1.0, own, width, colour: [0.0, 200.0, 0.0], meets: false }
}

#[test]
fn an_edge_ends_where_it_leaves_its_baseline_and_reaches_its_top() {
    let found = edge(&ramp()).unwrap();
    assert!((found.column - 4.2).abs() < 0.04 && (found.row - 4.0).abs() < 0.04, "{found:?}");
    assert!((found.base - 6.0).abs() < 0.04 && (found.peak - 2.0).abs() < 0.04, "{found:?}");
    let [begins, ends] = found.ends;
    assert!((begins - 4.0).abs() < 0.04 && (ends - 4.4).abs() < 0.04, "{found:?}");
}

/// Back at row 6 from column 6 on, and at another row from column 6.6 on.
fn echo(column: f64, top: f64) -> Option<f64> {
    (column >= 6.0).then_some(if column < 6.6 { 6.0 } else { top })
}

#[test]
fn another_pulse_beside_an_edge_is_told() {
    let is_alone = |other: fn(f64) -> Option<f64>| {
        let found = edge(&drawn(other)).unwrap();
        assert!((found.column - 4.2).abs() < 0.1 && found.is_level, "{found:?}");
        found.is_alone
    };
    assert!(is_alone(|_| None));
    // Half as high, half a division wide, before it; and a speck.
    assert!(!is_alone(|column| (1.5..2.0).contains(&column).then_some(4.0)));
    assert!(is_alone(|column| (1.5..1.55).contains(&column).then_some(4.0)));
    // After it, a higher one; and one that is as high.
    assert!(!is_alone(|column| echo(column, 0.5)));
    assert!(is_alone(|column| echo(column, 2.0)));
    // A step on top of it.
    assert!(!is_alone(|column| (column >= 5.5).then_some(1.0)));
    assert!(is_alone(|column| (column >= 5.5).then_some(1.8)));
}
