//! What changed along the run, along the distance, with the setting of the screen, or with the rail.

use super::case::{Case, Hypothesis};
use super::single::{RATIOS, null_odd};
use super::weighed::{Weighed, add, weigh};

use crate::analysis::Clock;
use crate::rail::Source;

/// So many of the nearest are fitted anew.
const ANEW: usize = 6;

/// What every explanation here has in common.
struct Along<'a> {
    case: &'a Case<'a>,
    null: &'a Weighed<'a>,
    odd: f64,
    all: Vec<Hypothesis>,
}

/// Every explanation by a change that many rows share.
pub(super) fn hypotheses(case: &Case, null: &Weighed) -> Vec<Hypothesis> {
    let odd = null_odd(case, null) + case.odd_readings(&[]);
    let mut along = Along { case, null, odd, all: Vec::new() };
    along.in_order();
    along.over_distance();
    along.by_setting();
    along.by_rail();
    along.restarts();
    along.all
}

impl Along<'_> {
    /// By any amount.
    fn any(&mut self, cause: &'static str, cost: f64, change: &[f64], rows: Vec<usize>, rail: Option<usize>) {
        let Some((chi_square, slope, _)) = self.null.freed(change) else { return };
        let odd = self.odd_with(slope);
        let new = Hypothesis::new(cause, cost, (chi_square, slope), odd);
        self.all.push(Hypothesis { unknowns: 1.0, rows, rail, ..new });
    }

    /// By some amounts only, each with the number of ways.
    fn some(&mut self, cause: &'static str, cost: f64, change: &[f64], amounts: &[f64], rows: &[usize]) {
        for amount in amounts {
            let change: Vec<f64> = change.iter().map(|by| by * amount).collect();
            let line = self.null.shifted(&change);
            let odd = self.odd_with(line.1);
            let new = Hypothesis::new(cause, cost + libm::log(amounts.len() as f64), line, odd);
            self.all.push(Hypothesis { rows: rows.to_vec(), ..new });
        }
    }

    /// What speaks against the line with another slope.
    fn odd_with(&self, slope: f64) -> f64 {
        self.odd + self.case.odd_slope(slope)
    }

    /// From one row on, in the order in which they were taken; or all along.
    fn in_order(&mut self) {
        let case = self.case;
        let n = case.points.len();
        let tries = libm::log(n as f64);
        let periods = case.context.bench.pulse_rate.map(|rate| [1e9 / rate, -1e9 / rate]);
        let mut sets = Vec::new();
        for from in 1..n {
            let after: Vec<usize> = (from..n).collect();
            let step: Vec<f64> = (0..n).map(|row| if row < from { 0.0 } else { 1.0 }).collect();
            if from >= 2 && from + 2 <= n {
                self.any("change_from_row", 4.0 + tries, &step, after.clone(), None);
                sets.push((3.0 + tries, after.clone()));
                sets.push((3.0 + tries, (0..from).collect()));
            }
            if let Some(periods) = &periods {
                self.some("beyond_a_period", 3.0 + tries, &step, periods, &after);
            }
        }
        self.other_bases(&sets);
        let order: Vec<f64> = (0..n).map(|row| row as f64).collect();
        self.any("drift", 3.0, &order, Vec::new(), None);
    }

    fn over_distance(&mut self) {
        let bend: Vec<f64> = self.case.columns[1].iter().map(|x| x * x).collect();
        self.any("curvature", 2.5, &bend, Vec::new(), None);
    }

    fn by_setting(&mut self) {
        let case = self.case;
        let mut clocks: Vec<Clock> =
            case.points.iter().filter_map(|p| p.time_base.map(|b| b.clock)).collect();
        clocks.sort_by(Clock::order);
        clocks.dedup();
        if clocks.len() < 2 {
            return;
        }
        let clock_count = clocks.len();
        let tries = libm::log(clock_count as f64);
        let mut sets = Vec::new();
        for clock in clocks {
            let at = |row: usize| case.points[row].time_base.is_some_and(|base| base.clock == clock);
            let rows: Vec<usize> = (0..case.points.len()).filter(|row| at(*row)).collect();
            // Of two settings the one with fewer rows is told.
            let told = clock_count > 2 || 2 * rows.len() <= case.points.len();
            if !told || rows.len() < 2 || rows.len() + 2 > case.points.len() {
                continue;
            }
            let picked = |of: &dyn Fn(usize) -> f64| -> Vec<f64> {
                (0..case.points.len()).map(|row| if at(row) { of(row) } else { 0.0 }).collect()
            };
            let delays = picked(&|row| case.y[row]);
            self.any("time_base_off", 3.5 + tries, &picked(&|_| 1.0), rows.clone(), None);
            // A time base is off by per cents; beyond that it is another one.
            if self.null.freed(&delays).is_some_and(|(_, _, by)| by.abs() < 0.3) {
                self.any("time_base_off", 3.5 + tries, &delays, rows.clone(), None);
            }
            sets.push((3.0 + tries, rows));
        }
        self.other_bases(&sets);
    }

    /// A rail that stands elsewhere, or whose ruler is stretched.
    fn by_rail(&mut self) {
        let case = self.case;
        let rails = case.context.rails.len();
        let tries = libm::log(rails as f64);
        for (rail, stand) in case.context.stands.iter().enumerate() {
            let Some(stand) = stand else { continue };
            let own = |p: &&crate::analysis::point::Point| p.rail == Some(rail);
            if case.points.iter().any(|p| own(&p)) && rails > 1 {
                let stretch: Vec<f64> = (case.points.iter().zip(&case.x))
                    .map(|(p, x)| if own(&p) { x - stand.offset } else { 0.0 })
                    .collect();
                self.any("ruler_scale", 3.0 + tries, &stretch, Vec::new(), Some(rail));
            }
            if rail > 0 && !stand.free.contains(&rail) {
                let behind = |p: &crate::analysis::point::Point| {
                    p.effects.iter().any(|(source, _)| *source == Source::Splice(rail))
                };
                let step: Vec<f64> = case.points.iter().map(|p| if behind(p) { 1.0 } else { 0.0 }).collect();
                self.any("step_at_splice", 2.0 + tries, &step, Vec::new(), Some(rail));
            }
        }
    }

    /// A ruler that starts again: sorted by their delays, the readings of a rail fall back where the next one begins, by
    /// no more than it is long.
    fn restarts(&mut self) {
        let case = self.case;
        for (rail, numbers) in case.context.rails.iter().enumerate() {
            let mut rows: Vec<usize> =
                (0..case.points.len()).filter(|row| case.points[*row].rail == Some(rail)).collect();
            rows.sort_by(|a, b| case.y[*a].total_cmp(&case.y[*b]));
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
                let Some((step, farther)) = self.settled(&mut behind, &rows) else { continue };
                let moved = first.iter().zip(&behind).filter(|(a, b)| a != b).count();
                let behind: Vec<usize> = (0..behind.len()).filter(|row| behind[*row]).collect();
                let some = behind.len() >= 2 && behind.len() + 2 <= rows.len();
                if some && farther > 0.7 * fall(*place) && farther < longest {
                    let cost = 2.0 + tries + moved as f64 * (1.0 + libm::log(rows.len() as f64));
                    self.any("ruler_restarts", cost, &step, behind, Some(rail));
                }
            }
        }
    }

    /// The step of the rows `behind`, of which each of `rows` is one that lies nearer the line so; and how much farther out
    /// they stand than read, m.
    fn settled(&self, behind: &mut [bool], rows: &[usize]) -> Option<(Vec<f64>, f64)> {
        let case = self.case;
        for _ in 0..4 {
            let step: Vec<f64> = behind.iter().map(|behind| f64::from(u8::from(*behind))).collect();
            let (_, slope, by) = self.null.freed(&step)?;
            let mut y = case.y.clone();
            add(&mut y, &step, by);
            let line = weigh(&case.columns, case.free, &case.weights, &y)?;
            let mut moved = false;
            for row in rows {
                let off = line.pull[*row] / case.weights[*row];
                let other = if behind[*row] { off - by } else { off + by };
                if other.abs() < off.abs() {
                    behind[*row] ^= true;
                    moved = true;
                }
            }
            if !moved {
                return Some((step, -by / slope));
            }
        }
        None
    }

    /// Another time base for some rows, of which those that come nearest are fitted anew: with the delays their
    /// uncertainties are multiplied, too.
    fn other_bases(&mut self, sets: &[(f64, Vec<usize>)]) {
        let case = self.case;
        let mut all = Vec::new();
        for (set, (cost, rows)) in sets.iter().enumerate() {
            let mut delays = vec![0.0; case.points.len()];
            for row in rows {
                delays[*row] = case.y[*row];
            }
            let change = self.null.change(&delays);
            let cost = cost + libm::log(RATIOS.len() as f64);
            all.extend(RATIOS.iter().map(|ratio| (change.by(ratio - 1.0).0, cost, set, *ratio)));
        }
        all.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (_, cost, set, ratio) in all.into_iter().take(ANEW) {
            let rows = &sets[set].1;
            let (mut y, mut weights) = (case.y.clone(), case.weights.clone());
            for row in rows {
                y[*row] *= ratio;
                weights[*row] /= ratio * ratio;
            }
            let Some(line) = weigh(&case.columns, case.free, &weights, &y) else { continue };
            let odd = self.odd_with(line.slope());
            let new = Hypothesis::new("time_base_slip", cost, (line.chi_square, line.slope()), odd);
            self.all.push(Hypothesis { rows: rows.clone(), ..new });
        }
    }
}
