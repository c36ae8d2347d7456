//! One row that went wrong, or two.

use super::case::{Case, Hypothesis};
use super::weighed::{Weighed, weigh};
use crate::analysis::Clock;

/// Rows looked at closely: those that a move would mend most.
const CLOSELY: usize = 4;
/// Rows that may have been exchanged, or copied.
const WIDELY: usize = 12;
/// What a time base may have been taken for.
pub(super) const RATIOS: [f64; 8] = [2.0, 0.5, 2.5, 0.4, 5.0, 0.2, 10.0, 0.1];

/// Every explanation by one row or two.
pub(super) fn hypotheses(case: &Case, null: &Weighed) -> Vec<Hypothesis> {
    let n = case.points.len();
    let mut all = Vec::new();
    let mut moved: Vec<(usize, (f64, f64, f64))> = Vec::new();
    for row in 0..n {
        moved.extend(null.freed(&alone(n, &[(row, 1.0)])).map(|line| (row, line)));
    }
    moved.sort_by(|a, b| a.1.0.total_cmp(&b.1.0));
    let odd = null_odd(case, null);
    let tries = libm::log(n as f64);
    for (row, (chi_square, slope, _)) in moved.iter().take(CLOSELY) {
        let now = case.odd_readings(&[(*row, f64::NAN)]);
        let mut off = Hypothesis::new(
            "row_off",
            1.5 + tries,
            (*chi_square, *slope),
            odd + now + case.odd_slope(*slope),
        );
        off.unknowns = 1.0;
        off.rows = vec![*row];
        if case.y[*row] == 0.0 && case.x[*row].abs() < 0.05 {
            (off.cause, off.cost, off.unknowns) = ("forced_zero", 2.0, 0.0);
        }
        all.push(off);
        all.extend(mended(case, *row, odd, tries).into_iter().flatten());
    }
    let likely: Vec<usize> = moved.iter().take(WIDELY).map(|(row, _)| *row).collect();
    for (place, i) in likely.iter().enumerate() {
        for j in &likely[place + 1..] {
            let by = case.y[*j] - case.y[*i];
            let line = null.shifted(&alone(n, &[(*i, by), (*j, -by)]));
            // Neighbours are exchanged as often as all others.
            let ways = if i.abs_diff(*j) == 1 { 2.0 * n as f64 } else { (n * n) as f64 };
            let mut exchanged = Hypothesis::new("rows_exchanged", 3.0 + libm::log(ways), line, odd);
            exchanged.odd += case.odd_readings(&[]) + case.odd_slope(line.1);
            exchanged.rows = vec![*i, *j];
            all.push(exchanged);
        }
    }
    all.extend(copied(case, odd));
    all
}

/// What speaks against the line as it is, its readings aside.
pub(super) fn null_odd(case: &Case, null: &Weighed) -> f64 {
    case.odd(null, &case.x, &case.y)
}

/// A change of some rows alone.
pub(super) fn alone(n: usize, rows: &[(usize, f64)]) -> Vec<f64> {
    let mut change = vec![0.0; n];
    for (row, by) in rows {
        change[*row] = *by;
    }
    change
}

/// What a row would have to have been: its distance and delay, and how that came.
struct Mended {
    cause: &'static str,
    cost: f64,
    x: f64,
    y: f64,
    /// The reading then.
    reading: f64,
}

fn mended(case: &Case, row: usize, odd: f64, tries: f64) -> Option<Vec<Hypothesis>> {
    let mut weights = case.weights.clone();
    weights[row] = 0.0;
    let without = weigh(&case.columns, case.free, &weights, &case.y)?;
    let features: Vec<f64> = case.columns.iter().map(|column| column[row]).collect();
    let made = repairs(case, row).into_iter().map(|repair| {
        let mut features = features.clone();
        features[1] += repair.x - case.x[row];
        let chi_square = without.chi_square + without.beyond(&features, repair.y, case.weights[row]);
        let odd = odd + case.odd_readings(&[(row, repair.reading)]) + case.odd_slope(without.slope());
        let line = (chi_square, without.slope());
        let mut of = Hypothesis::new(repair.cause, repair.cost + tries, line, odd);
        of.rows = vec![row];
        of
    });
    Some(made.collect())
}

fn repairs(case: &Case, row: usize) -> Vec<Mended> {
    let (typed, point) = (case.typed[row], &case.points[row]);
    let (x, y) = (case.x[row], case.y[row]);
    let reading = typed.reading.map_or(f64::NAN, |reading| reading.value);
    let mut all = Vec::new();
    let mut late = |cause, cost, y| all.push(Mended { cause, cost, x, y, reading });
    late("edges_swapped", 4.0, -y);
    if let Some(Clock::Screen(_)) = point.time_base.map(|base| base.clock) {
        for ratio in RATIOS {
            late("time_base_slip", 7.0, y * ratio);
        }
    }
    for ten in [10.0, 0.1] {
        if let [a, b] = typed.edges[..] {
            let base = y / (b - a);
            late("slipped_decimal", 6.0, (b * ten - a) * base);
            late("slipped_decimal", 6.0, (b - a * ten) * base);
        } else {
            late("slipped_decimal", 6.0, y * ten);
        }
    }
    if let Some(rate) = case.context.bench.pulse_rate {
        late("beyond_a_period", 4.0, y - 1e9 / rate);
        late("beyond_a_period", 4.0, y + 1e9 / rate);
    }
    for (rail, stand) in case.context.stands.iter().enumerate() {
        let Some(stand) = stand else { continue };
        let mut read = |cause, cost, reading: f64| {
            if reading.is_finite() {
                all.push(Mended { cause, cost, x: stand.distance(reading), y, reading });
            }
        };
        if typed.rail == Some(rail) {
            for ten in [10.0, 0.1, 100.0, 0.01] {
                read("slipped_decimal", 6.0, reading * ten);
            }
        } else {
            read("wrong_rail", 6.0, reading);
        }
    }
    if typed.reading.is_none() {
        for ten in [10.0, 0.1] {
            all.push(Mended { cause: "slipped_decimal", cost: 6.0, x: x * ten, y, reading });
        }
    }
    all
}

/// Rows that have the edges of another row to the last digit, at another place.
fn copied(case: &Case, odd: f64) -> Vec<Hypothesis> {
    let n = case.points.len();
    let same = |i: usize, j: usize| {
        let (a, b) = (case.typed[i], case.typed[j]);
        a.edges.len() == 2 && a.edges == b.edges && case.y[i] == case.y[j] && case.y[i] != 0.0
    };
    let mut all = Vec::new();
    for first in 0..n {
        let twins: Vec<usize> = (0..n).filter(|row| *row != first && same(first, *row)).collect();
        let apart = twins.iter().any(|row| (case.x[*row] - case.x[first]).abs() > 0.03);
        if !apart || 2 * twins.len() > n {
            continue;
        }
        let mut weights = case.weights.clone();
        for row in &twins {
            weights[*row] = 0.0;
        }
        let line = weigh(&case.columns, case.free, &weights, &case.y);
        all.extend(line.map(|line| {
            let line = (line.chi_square, line.slope());
            let mut of = Hypothesis::new(
                "copied_rows",
                3.0,
                line,
                odd + case.odd_readings(&[]) + case.odd_slope(line.1),
            );
            of.rows = twins;
            of
        }));
    }
    let tries = libm::log(all.len().max(1) as f64);
    for of in &mut all {
        of.cost += tries;
    }
    all
}
