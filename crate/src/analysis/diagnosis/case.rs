//! The readings as a case to be explained, and what is said of an explanation.

use super::cause::Cause;
use super::weighed::{Weighed, WeighedLine, weigh};
use crate::analysis::Clock;
use crate::analysis::context::RowContext;
use crate::analysis::point::Point;
use crate::analysis::rows::{Rows, Typed};
use crate::analysis::setup::Setup;
use crate::analysis::speed::C0;
use crate::line::{FreeColumn, Noise, Stated};

/// Rows of a notebook in which some vary together: what each hypothesis costs goes with the square of their number.
const MOST_TOGETHER: usize = 100;
/// Group index of air, closely enough to tell a factor.
const AIR: f64 = 1.0003;

/// The readings, ready to be fitted in many ways.
pub(super) struct Case<'a> {
    pub context: &'a RowContext<'a>,
    pub points: &'a [Point],
    /// What was typed of each point.
    pub typed: Vec<&'a Typed>,
    pub x: Vec<f64>,
    pub y: Vec<f64>,
    pub weights: Vec<f64>,
    /// 1, distance, unknown steps, shared errors.
    pub columns: Vec<Vec<f64>>,
    /// How many of them are not known beforehand.
    pub free: usize,
    /// The slope of light, ns/m; none while a seal covers on which side of it the line lies.
    pub expected: Option<f64>,
    stated: bool,
    unknowns: f64,
    /// What speaks against the line as it is, beside its scatter.
    pub odd_line: f64,
    /// The same with the readings as they are.
    pub odd_as_read: f64,
    chi_square: f64,
}

/// One explanation: what went wrong, and what the line is without it.
pub(super) struct Hypothesis<'r> {
    pub cause: Cause,
    /// How rarely it is so, and in how many ways it could have been: in nats.
    pub cost: f64,
    /// Amounts that were fitted for it.
    pub unknowns: f64,
    /// The line with it mended.
    pub line: WeighedLine,
    /// What speaks against it beside χ².
    pub odd: f64,
    /// The rows that are wrong, by place.
    pub rows: &'r [usize],
    /// The rail that is wrong, or on which a row should be, by place.
    pub rail: Option<usize>,
}

/// An explanation and how much speaks for it, in nats.
pub(super) struct Explanation {
    pub cause: Cause,
    pub evidence: f64,
    pub rows: Vec<usize>,
    pub rail: Option<usize>,
    /// The slope with it mended.
    pub slope: f64,
}

/// The hearing of hypotheses, which keeps the best one of each cause.
pub(super) struct Hearing<'a> {
    pub case: &'a Case<'a>,
    /// The line as the readings are.
    pub null: &'a Weighed<'a>,
    pub best: Vec<Explanation>,
}

impl Hearing<'_> {
    /// Weighs one more.
    pub fn hear(&mut self, of: &Hypothesis) {
        let evidence = self.case.evidence(of);
        let known = self.best.iter().position(|known| known.cause == of.cause);
        let better = known.is_none_or(|place| evidence > self.best[place].evidence);
        if !evidence.is_finite() || !better {
            return;
        }
        let new = Explanation {
            cause: of.cause,
            evidence,
            rows: of.rows.to_vec(),
            rail: of.rail,
            slope: of.line.slope,
        };
        match known {
            Some(place) => self.best[place] = new,
            None => self.best.push(new),
        }
    }

    /// Weighs one that leaves distances and rails as they are.
    pub fn hear_of(&mut self, cause: Cause, cost: f64, unknowns: f64, line: WeighedLine, rows: &[usize]) {
        let odd = self.case.odd_as_read + self.case.odd_slope(line.slope);
        self.hear(&Hypothesis { cause, cost, unknowns, line, odd, rows, rail: None });
    }
}

impl<'a> Case<'a> {
    /// The case of rows; none where a matrix of many rows was stated, or there is no line.
    pub fn new(context: &'a RowContext, rows: &'a Rows, setup: &Setup, sealed: bool) -> Option<Self> {
        if too_many_together(setup) {
            return None;
        }
        let points = rows.points.as_slice();
        let data = &setup.data;
        let nominal = context.page.path.factor() * AIR * 1e9 / C0;
        let n = points.len();
        let mut all = rows.typed.iter();
        // Both are in the order of the page.
        let typed: Vec<&Typed> = points.iter().filter_map(|p| all.find(|typed| typed.row == p.row)).collect();
        if typed.len() != n {
            return None;
        }
        let mut columns = vec![vec![1.0; n], centred(&data.x)];
        for column in &data.free {
            let (FreeColumn::InX(entries) | FreeColumn::InY(entries)) = column;
            columns.push(entries.clone());
        }
        let free = columns.len();
        let weights = match &data.noise {
            Noise::Unstated => vec![1.0; n],
            Noise::Stated(stated) => {
                let (variances, together) = together(stated, nominal, n)?;
                columns.extend(together);
                for shared in &stated.shared {
                    columns.push((0..n).map(|i| shared.y_at(i) - nominal * shared.x_at(i)).collect());
                }
                let steps = edge_step(context, rows).unwrap_or(0.0) / libm::sqrt(6.0);
                let of = |i: usize| {
                    let by_stated = (nominal * stated.ux_at(i), stated.uy_at(i));
                    own_variance(by_stated, (typed[i], &points[i]), nominal, steps) + variances[i]
                };
                (0..n).map(|i| 1.0 / of(i)).collect()
            }
        };
        let mut case = Case {
            context,
            points,
            typed,
            x: data.x.clone(),
            y: data.y.clone(),
            weights,
            free,
            expected: (!sealed).then_some(nominal),
            stated: data.noise != Noise::Unstated,
            unknowns: n as f64 - free as f64,
            columns,
            odd_line: 0.0,
            odd_as_read: 0.0,
            chi_square: 0.0,
        };
        let null = weigh(&case.columns, free, &case.weights, &case.y)?;
        let odd = case.odd(&null, &case.x, &case.y);
        let chi_square = null.line.chi_square;
        (case.chi_square, case.odd_line) = (chi_square, odd);
        case.odd_as_read = odd + case.odd_readings(&[]);
        (case.unknowns >= 1.0).then_some(case)
    }

    /// The line as the readings are.
    pub fn null(&self) -> Option<Weighed<'_>> {
        weigh(&self.columns, self.free, &self.weights, &self.y)
    }

    /// The line with other places and delays, and what speaks against it.
    pub fn mended(&self, x: &[f64], y: &[f64]) -> Option<(WeighedLine, f64)> {
        let mut columns = self.columns.clone();
        columns[1] = centred(x);
        let new = weigh(&columns, self.free, &self.weights, y)?;
        Some((new.line, self.odd(&new, x, y) + self.odd_slope(new.line.slope)))
    }

    /// What speaks against a line beside its χ²: a slope that no light has, places behind the splitter, B before A.
    pub fn odd(&self, line: &Weighed, x: &[f64], y: &[f64]) -> f64 {
        let on_rail = self.points.iter().all(|p| p.rail.is_some());
        let behind = x.iter().filter(|x| on_rail && **x < -0.05).count() as f64;
        let early = y.iter().filter(|y| **y < 0.0).count() as f64;
        let falls = line.line.slope.min(0.0);
        (10.0 * behind + 3.0 * early) / x.len() as f64
            + (falls * falls / line.slope_variance() / 2.0).min(30.0)
    }

    /// What speaks against an explanation whose slope is not light's: where two do as well, this tells them apart. Of the
    /// readings as they are it is not counted: that a slope becomes light's is no evidence for anything.
    pub fn odd_slope(&self, slope: f64) -> f64 {
        let off = self.expected.map_or(0.0, |expected| libm::fabs(libm::log(slope.abs() / expected)));
        (8.0 * (off - 0.1)).max(0.0)
    }

    /// What speaks against readings beyond the ends of their rails, with some rows read otherwise, or nowhere.
    pub fn odd_readings(&self, otherwise: &[(usize, Option<f64>)]) -> f64 {
        let off = |(place, typed): (usize, &&Typed)| {
            let Some(rail) = typed.rail else { return false };
            let other = otherwise.iter().find(|(row, _)| *row == place).map(|(_, reading)| *reading);
            let Some(reading) = other.unwrap_or(typed.reading.map(|r| r.value)) else { return false };
            let span = self.context.rails.get(rail).and_then(|rail| rail.span);
            span.is_some_and(|(from, to)| reading < from.min(to) - 0.01 || reading > from.max(to) + 0.01)
        };
        (3.0 * self.typed.iter().enumerate().filter(|row| off(*row)).count() as f64).min(15.0)
    }

    /// How badly a χ² fits, in nats; where it may be taken that errors are larger than stated, too.
    fn misfit(&self, chi_square: f64) -> f64 {
        let nu = self.unknowns;
        if !self.stated {
            let least = 1e-9 * self.chi_square.max(1e-12);
            return (nu - 1.0) / 2.0 * libm::log(chi_square.max(least));
        }
        let loose = if chi_square > nu { self.scaled(chi_square) } else { f64::INFINITY };
        (chi_square / 2.0).min(loose)
    }

    /// How badly a χ² fits where the stated uncertainties are all wrong by one factor, in nats.
    fn scaled(&self, chi_square: f64) -> f64 {
        let nu = self.unknowns;
        nu / 2.0 * (1.0 + libm::log(chi_square.max(1e-9) / nu)) + libm::log(2.0 * nu) / 2.0 + 3.2
    }

    /// By how many nats a hypothesis explains the readings better than that nothing went wrong.
    pub fn evidence(&self, of: &Hypothesis) -> f64 {
        let as_it_is = if self.stated { self.chi_square / 2.0 } else { self.misfit(self.chi_square) };
        let gain = (as_it_is - self.misfit(of.line.chi_square)).max(0.0);
        // An amount fitted could have been of any size: with a prior even in its logarithm it costs that of its relative
        // uncertainty.
        let fitted = of.unknowns * (1.0 + libm::log((2.0 * gain / of.unknowns.max(1.0)).max(1.0)) / 2.0);
        as_it_is - self.misfit(of.line.chi_square) + self.odd_as_read - of.odd - of.cost - fitted
    }

    /// The same of uncertainties that are all wrong by one factor; none where nothing was stated.
    pub fn evidence_of_scale(&self) -> Option<(f64, bool)> {
        let evidence = self.chi_square / 2.0 - self.scaled(self.chi_square);
        self.stated.then_some((evidence, self.chi_square > self.unknowns))
    }
}

/// Whether so many rows stand beside a matrix that no mistake is looked for among them.
pub fn too_many_together(setup: &Setup) -> bool {
    setup.joint().is_some() && setup.data.x.len() > MOST_TOGETHER
}

/// Errors stated together, as a variance for each row and errors that rows share; none where they can't be parted.
fn together(stated: &Stated, nominal: f64, n: usize) -> Option<(Vec<f64>, Vec<Vec<f64>>)> {
    if stated.dense.is_empty() {
        return Some((vec![0.0; n], Vec::new()));
    }
    stated.dense.parted(nominal, n)
}

/// The variance of a row's own delay. Rounding is an error, too, whatever was stated.
fn own_variance((ux, uy): (f64, f64), (typed, point): (&Typed, &Point), nominal: f64, steps: f64) -> f64 {
    let digit = typed.reading.map_or(0.0, |reading| reading.step());
    let base = match point.time_base.map(|base| base.clock) {
        Some(Clock::Screen(base)) => base,
        _ => 0.0,
    };
    let (ux_digit, uy_digit) = (nominal * digit / libm::sqrt(12.0), steps * base);
    (ux * ux).max(ux_digit * ux_digit) + (uy * uy).max(uy_digit * uy_digit)
}

/// About their mean.
fn centred(x: &[f64]) -> Vec<f64> {
    let mean = x.iter().sum::<f64>() / x.len() as f64;
    x.iter().map(|x| x - mean).collect()
}

/// The distance of the marks on which all edges stand, divisions; none where they stand on none, or are too few to tell.
pub fn edge_step(context: &RowContext, rows: &Rows) -> Option<f64> {
    let edges: Vec<f64> = rows.typed.iter().flat_map(|typed| typed.edges.iter().copied()).collect();
    let small = 1.0 / context.bench.small_divisions;
    let on_marks = |step: &f64| edges.iter().all(|q| libm::fabs(q / step - libm::rint(q / step)) < 1e-6);
    let step = [1.0, 0.5, small, 0.1, 0.05].into_iter().find(on_marks);
    step.filter(|_| edges.len() >= 8)
}

/// The places of the smallest, the smallest first; not of what there is none of, or is no number.
pub(super) fn least(of: &[Option<f64>], count: usize) -> Vec<usize> {
    let mut all: Vec<usize> = Vec::new();
    while all.len() < count {
        let mut next: Option<usize> = None;
        for place in 0..of.len() {
            let is_number = of[place].is_some_and(|value| !value.is_nan());
            if is_number && !all.contains(&place) && next.is_none_or(|next| of[place] < of[next]) {
                next = Some(place);
            }
        }
        let Some(next) = next else { break };
        all.push(next);
    }
    all
}

#[cfg(test)]
#[path = "case_test.rs"]
mod tests;
