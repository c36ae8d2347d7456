//! Edges of a trace that is drawn by hand.
#![expect(clippy::unwrap_used, reason = "tests")]

use super::*;

/// A trace of 10 × 8 divisions that lies at row 6, rises straight from column 4 to column 4.4 up to row 2, and stays there.
fn ramp() -> Curve {
    let (width, height) = (10 * SAMPLES, 8 * SAMPLES);
    let row = |x: usize| {
        let share = (x.saturating_sub(4 * SAMPLES) as f64 / (0.4 * SAMPLES as f64)).min(1.0);
        (6.0 - 4.0 * share) * SAMPLES as f64
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
