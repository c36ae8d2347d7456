//! What changed along the run, along the distance, with the setting of the screen, or with the rail.

use super::case::{Hearing, Hypothesis, least};
use super::cause::Cause;
use super::single::RATIOS;
use super::weighed::{Change, add, weigh};

use crate::analysis::Clock;
use crate::analysis::checks::ordered;
use crate::rail::Source;

/// So many of the nearest are fitted anew.
const ANEW: usize = 6;

/// Rows whose delays may have been read at another time base: what that costs, what their delays weigh, and which.
type RowStretch<'a> = (f64, Change, &'a [usize]);

/// Every explanation by a change that many rows share.
pub(super) fn hypotheses(hearing: &mut Hearing) {
    in_order(hearing);
    bends(hearing);
    by_setting(hearing);
    by_rail(hearing);
    restarts(hearing);
}

/// A change by any amount.
fn any(hearing: &mut Hearing, cause: Cause, cost: f64, change: &Change, rows: &[usize], rail: Option<usize>) {
    let Some((line, _)) = hearing.null.freed(change) else { return };
    let odd = hearing.case.odd_as_read + hearing.case.odd_slope(line.slope);
    hearing.hear(&Hypothesis { cause, cost, unknowns: 1.0, line, odd, rows, rail });
}

/// A bend all along; or one at the near end, that of light which spreads: its height falls with the square of the distance,
/// measured here by the mean distance, and what lags by the height levels off with it.
fn bends(hearing: &mut Hearing) {
    let case = hearing.case;
    let bend: Vec<f64> = case.columns[1].iter().map(|x| x * x).collect();
    any(hearing, Cause::Curvature, 2.5, &hearing.null.change(&bend), &[], None);
    let distances = || case.x.iter().map(|x| x.abs());
    let mean = distances().sum::<f64>() / case.x.len() as f64;
    let height = |x: f64| 1.0 / ((1.0 + x / mean) * (1.0 + x / mean));
    let heights: Vec<f64> = distances().map(height).collect();
    any(hearing, Cause::Curvature, 3.0, &hearing.null.change(&heights), &[], None);
}

/// From one row on, in the order in which they were taken; or all along.
fn in_order(hearing: &mut Hearing) {
    let (case, null) = (hearing.case, hearing.null);
    let n = case.points.len();
    let all: Vec<usize> = (0..n).collect();
    let tries = libm::log(n as f64);
    let mut stretches: Vec<RowStretch> = Vec::new();
    let (mut step, mut delays) = (null.unchanged(), null.unchanged());
    for from in (1..n).rev() {
        null.alter(&mut step, from, 1.0);
        null.alter(&mut delays, from, case.y[from]);
        if from >= 2 && from + 2 <= n {
            any(hearing, Cause::ChangeFromRow, 4.0 + tries, &step, &all[from..], None);
            stretches.push((3.0 + tries, delays.clone(), &all[from..]));
        }
        if let Some(rate) = case.context.bench.pulse_rate {
            let cost = 3.0 + tries + std::f64::consts::LN_2;
            for period in [1e9 / rate, -1e9 / rate] {
                hearing.hear_of(Cause::BeyondAPeriod, cost, 0.0, null.with(&step, period), &all[from..]);
            }
        }
    }
    let mut delays = null.unchanged();
    for to in 1..n.saturating_sub(1) {
        null.alter(&mut delays, to - 1, case.y[to - 1]);
        if to >= 2 {
            stretches.push((3.0 + tries, delays.clone(), &all[..to]));
        }
    }
    other_bases(hearing, &stretches);
    let order: Vec<f64> = (0..n).map(|row| row as f64).collect();
    any(hearing, Cause::Drift, 3.0, &null.change(&order), &[], None);
}

fn by_setting(hearing: &mut Hearing) {
    let (case, null) = (hearing.case, hearing.null);
    let n = case.points.len();
    let clock = |row: usize| case.points[row].time_base.map(|base| base.clock);
    let mut clocks: Vec<Clock> = Vec::new();
    for clock in (0..n).filter_map(clock) {
        if !clocks.contains(&clock) {
            clocks.push(clock);
        }
    }
    if clocks.len() < 2 {
        return;
    }
    let tries = libm::log(clocks.len() as f64);
    let mut stretches: Vec<RowStretch> = Vec::new();
    let rows_at = |own: &Clock| -> Vec<usize> { (0..n).filter(|row| clock(*row) == Some(*own)).collect() };
    let settings: Vec<Vec<usize>> = clocks.iter().map(rows_at).collect();
    for rows in &settings {
        // Of two settings the one with fewer rows is told.
        let told = clocks.len() > 2 || 2 * rows.len() <= n;
        if !told || rows.len() < 2 || rows.len() + 2 > n {
            continue;
        }
        let (mut step, mut delays) = (null.unchanged(), null.unchanged());
        for row in rows {
            null.alter(&mut step, *row, 1.0);
            null.alter(&mut delays, *row, case.y[*row]);
        }
        any(hearing, Cause::TimeBaseOff, 3.5 + tries, &step, rows, None);
        // A time base is off by per cents; beyond that it is another one.
        if null.freed(&delays).is_some_and(|(_, by)| by.abs() < 0.3) {
            any(hearing, Cause::TimeBaseOff, 3.5 + tries, &delays, rows, None);
        }
        stretches.push((3.0 + tries, delays, rows));
    }
    other_bases(hearing, &stretches);
}

/// A rail that stands elsewhere, or whose ruler is stretched.
fn by_rail(hearing: &mut Hearing) {
    let (case, null) = (hearing.case, hearing.null);
    let rails = case.context.rails.len();
    let tries = libm::log(rails as f64);
    for (rail, stand) in case.context.stands.iter().enumerate() {
        let Some(stand) = stand else { continue };
        let (mut stretch, mut step) = (null.unchanged(), null.unchanged());
        let mut own = false;
        for (row, point) in case.points.iter().enumerate() {
            if point.rail == Some(rail) {
                own = true;
                null.alter(&mut stretch, row, case.x[row] - stand.offset);
            }
            if point.effects.iter().any(|(source, _)| *source == Source::Splice(rail)) {
                null.alter(&mut step, row, 1.0);
            }
        }
        if own && rails > 1 {
            any(hearing, Cause::RulerScale, 3.0 + tries, &stretch, &[], Some(rail));
        }
        if rail > 0 && !stand.free.contains(&rail) {
            any(hearing, Cause::StepAtSplice, 2.0 + tries, &step, &[], Some(rail));
        }
    }
}

/// A ruler that starts again: sorted by their delays, the readings of a rail fall back where the next one begins, by
/// no more than it is long.
fn restarts(hearing: &mut Hearing) {
    let case = hearing.case;
    for (rail, numbers) in case.context.rails.iter().enumerate() {
        let mut rows = ordered(&case.y);
        rows.retain(|row| case.points[*row].rail == Some(rail));
        let fall = |place: usize| case.x[rows[place - 1]] - case.x[rows[place]];
        let falls: Vec<usize> =
            (2..rows.len().saturating_sub(1)).filter(|place| fall(*place) > 0.05).collect();
        let places = rows.iter().map(|row| case.x[*row]);
        let (near, far) = places.fold((f64::MAX, f64::MIN), |(near, far), x| (near.min(x), far.max(x)));
        let length = numbers.span.map_or(f64::INFINITY, |(from, to)| (to - from).abs());
        let longest = 1.3 * length.max(far - near) + 0.5;
        let tries = libm::log(falls.len().max(1) as f64);
        for place in falls.iter().take(20) {
            let mut behind = vec![false; case.points.len()];
            for row in &rows[*place..] {
                behind[*row] = true;
            }
            let first = behind.clone();
            let Some((change, farther)) = settled(hearing, &mut behind, &rows) else { continue };
            let moved = first.iter().zip(&behind).filter(|(a, b)| a != b).count();
            let behind: Vec<usize> = (0..behind.len()).filter(|row| behind[*row]).collect();
            let some = behind.len() >= 2 && behind.len() + 2 <= rows.len();
            if some && farther > 0.7 * fall(*place) && farther < longest {
                let cost = 2.0 + tries + moved as f64 * (1.0 + libm::log(rows.len() as f64));
                any(hearing, Cause::RulerRestarts, cost, &change, &behind, Some(rail));
            }
        }
    }
}

/// The step of the rows `behind`, of which each of `rows` is one that lies nearer the line so; and how much farther out
/// they stand than read, m.
fn settled(hearing: &Hearing, behind: &mut [bool], rows: &[usize]) -> Option<(Change, f64)> {
    let (case, null) = (hearing.case, hearing.null);
    for _ in 0..4 {
        let step: Vec<f64> = behind.iter().map(|behind| f64::from(u8::from(*behind))).collect();
        let change = null.change(&step);
        let (line, by) = null.freed(&change)?;
        let mut y = case.y.clone();
        add(&mut y, &step, by);
        let fitted = weigh(&case.columns, case.free, &case.weights, &y)?;
        let mut moved = false;
        for row in rows {
            let off = fitted.pull[*row] / case.weights[*row];
            let other = if behind[*row] { off - by } else { off + by };
            if other.abs() < off.abs() {
                behind[*row] ^= true;
                moved = true;
            }
        }
        if !moved {
            return Some((change, -by / line.slope));
        }
    }
    None
}

/// Another time base for some rows, of which those that come nearest are fitted anew: with the delays their
/// uncertainties are multiplied, too.
fn other_bases(hearing: &mut Hearing, stretches: &[RowStretch]) {
    let (case, null) = (hearing.case, hearing.null);
    let each = |(_, delays, _): &RowStretch| RATIOS.map(|ratio| null.with(delays, ratio - 1.0).chi_square);
    let near: Vec<Option<f64>> = stretches.iter().flat_map(each).map(Some).collect();
    for place in least(&near, ANEW) {
        let (cost, _, rows) = &stretches[place / RATIOS.len()];
        let ratio = RATIOS[place % RATIOS.len()];
        let (mut y, mut weights) = (case.y.clone(), case.weights.clone());
        for row in *rows {
            y[*row] *= ratio;
            weights[*row] /= ratio * ratio;
        }
        let Some(new) = weigh(&case.columns, case.free, &weights, &y) else { continue };
        let cost = cost + libm::log(RATIOS.len() as f64);
        hearing.hear_of(Cause::TimeBaseSlip, cost, 0.0, new.line, rows);
    }
}
