//! One row that went wrong, or two.

use super::case::{Case, Hearing, Hypothesis, least};
use super::cause::Cause;
use super::weighed::{Change, Weighed, weigh};
use crate::analysis::Clock;

/// Rows looked at closely: those that a move would mend most.
const CLOSELY: usize = 4;
/// Rows that may have been exchanged.
const WIDELY: usize = 12;
/// What a time base may have been taken for: its neighbours by one to three places, in steps of 1, 2, 5 or 1, 2.5, 5.
pub(super) const RATIOS: [f64; 10] = [2.0, 0.5, 2.5, 0.4, 4.0, 0.25, 5.0, 0.2, 10.0, 0.1];

/// Every explanation by one row or two.
pub(super) fn hypotheses(hearing: &mut Hearing) {
    let (case, null) = (hearing.case, hearing.null);
    let n = case.points.len();
    let moved: Vec<_> = (0..n).map(|row| null.freed(&altered(null, &[(row, 1.0)]))).collect();
    let left: Vec<Option<f64>> = moved.iter().map(|line| line.map(|(line, _)| line.chi_square)).collect();
    let likely = least(&left, WIDELY);
    let tries = libm::log(n as f64);
    for row in likely.iter().take(CLOSELY).copied() {
        if let Some((line, _)) = moved[row] {
            let zero = case.y[row] == 0.0 && case.x[row].abs() < 0.05;
            let (cause, cost, unknowns) =
                if zero { (Cause::ForcedZero, 2.0, 0.0) } else { (Cause::RowOff, 1.5 + tries, 1.0) };
            let odd = case.odd_line + case.odd_readings(&[(row, None)]) + case.odd_slope(line.slope);
            hearing.hear(&Hypothesis { cause, cost, unknowns, line, odd, rows: &[row], rail: None });
        }
        mended(hearing, row, tries);
    }
    for (place, i) in likely.iter().enumerate() {
        for j in &likely[place + 1..] {
            let by = case.y[*j] - case.y[*i];
            let line = null.with(&altered(null, &[(*i, by), (*j, -by)]), 1.0);
            // Neighbours are exchanged as often as all others.
            let ways = if i.abs_diff(*j) == 1 { 2.0 * n as f64 } else { (n * n) as f64 };
            hearing.hear_of(Cause::RowsExchanged, 3.0 + libm::log(ways), 0.0, line, &[*i, *j]);
        }
    }
    copied(hearing);
}

/// A change of some rows alone.
fn altered(null: &Weighed, rows: &[(usize, f64)]) -> Change {
    let mut change = null.unchanged();
    for (row, by) in rows {
        null.alter(&mut change, *row, *by);
    }
    change
}

/// What a row would have to have been: its distance and delay, and how that came.
struct Mended {
    cause: Cause,
    cost: f64,
    x: f64,
    y: f64,
    /// The reading then; none of a distance that was typed.
    reading: Option<f64>,
    /// The rail, where it is another than the one named, by place.
    rail: Option<usize>,
}

fn mended(hearing: &mut Hearing, row: usize, tries: f64) {
    let case = hearing.case;
    let mut weights = case.weights.clone();
    weights[row] = 0.0;
    let Some(without) = weigh(&case.columns, case.free, &weights, &case.y) else { return };
    let mut features: Vec<f64> = case.columns.iter().map(|column| column[row]).collect();
    let at = features[1] - case.x[row];
    for repair in repairs(case, row) {
        features[1] = at + repair.x;
        let mut line = without.line;
        line.chi_square += without.beyond(&features, repair.y, case.weights[row]);
        let odd = case.odd_line + case.odd_readings(&[(row, repair.reading)]) + case.odd_slope(line.slope);
        let (cause, cost, rail) = (repair.cause, repair.cost + tries, repair.rail);
        hearing.hear(&Hypothesis { cause, cost, unknowns: 0.0, line, odd, rows: &[row], rail });
    }
}

fn repairs(case: &Case, row: usize) -> Vec<Mended> {
    let (typed, point) = (case.typed[row], &case.points[row]);
    let (x, y) = (case.x[row], case.y[row]);
    let reading = typed.reading.map(|reading| reading.value);
    let ten = [10.0, 0.1];
    let mut delays = vec![(Cause::EdgesSwapped, 4.0, -y)];
    if let Some(Clock::Screen(_)) = point.time_base.map(|base| base.clock) {
        delays.extend(RATIOS.map(|ratio| (Cause::TimeBaseSlip, 7.0, y * ratio)));
    }
    if let [a, b] = typed.edges[..] {
        let base = y / (b - a);
        delays.extend(ten.map(|ten| (Cause::SlippedDecimal, 6.0, (b * ten - a) * base)));
        delays.extend(ten.map(|ten| (Cause::SlippedDecimal, 6.0, (b - a * ten) * base)));
    } else {
        delays.extend(ten.map(|ten| (Cause::SlippedDecimal, 6.0, y * ten)));
    }
    if let Some(rate) = case.context.bench.pulse_rate {
        delays.extend([1e9, -1e9].map(|period| (Cause::BeyondAPeriod, 4.0, y + period / rate)));
    }
    let mut all: Vec<Mended> = delays
        .into_iter()
        .map(|(cause, cost, y)| Mended { cause, cost, x, y, reading, rail: None })
        .collect();
    for (rail, stand) in case.context.stands.iter().enumerate() {
        let (Some(stand), Some(read)) = (stand, reading.filter(|read| read.is_finite())) else { continue };
        let (cause, other, factors): (_, _, &[f64]) = if typed.rail == Some(rail) {
            (Cause::SlippedDecimal, None, &[10.0, 0.1, 100.0, 0.01])
        } else {
            (Cause::WrongRail, Some(rail), &[1.0])
        };
        all.extend(factors.iter().map(|factor| {
            let reading = read * factor;
            let x = stand.distance(reading);
            Mended { cause, cost: 6.0, x, y, reading: Some(reading), rail: other }
        }));
    }
    if typed.reading.is_none() {
        let cause = Cause::SlippedDecimal;
        all.extend(ten.map(|ten| Mended { cause, cost: 6.0, x: x * ten, y, reading, rail: None }));
    }
    all
}

/// Rows that have the edges of another row to the last digit, at another place.
fn copied(hearing: &mut Hearing) {
    let case = hearing.case;
    let n = case.points.len();
    let same = |i: usize, j: usize| {
        let (a, b) = (case.typed[i], case.typed[j]);
        case.y[i] == case.y[j] && case.y[i] != 0.0 && a.edges.len() == 2 && a.edges == b.edges
    };
    let mut all = Vec::new();
    for first in 0..n {
        let twins: Vec<usize> = (0..n).filter(|row| *row != first && same(first, *row)).collect();
        let apart = twins.iter().any(|row| (case.x[*row] - case.x[first]).abs() > 0.03);
        if apart && 2 * twins.len() <= n {
            all.push(twins);
        }
    }
    let cost = 3.0 + libm::log(all.len() as f64);
    for twins in all {
        let mut weights = case.weights.clone();
        for row in &twins {
            weights[*row] = 0.0;
        }
        if let Some(without) = weigh(&case.columns, case.free, &weights, &case.y) {
            hearing.hear_of(Cause::CopiedRows, cost, 0.0, without.line, &twins);
        }
    }
}
