//! Other ways to look at the same rows. Each is left out where the rows can't tell it.

use super::goodness::weights_degrees;
use super::point::{Point, TimeBase, time_bases};
use super::setup::Setup;
use super::types::{Checks, MeasuredValue, SettingCheck, StepCheck, Tested};
use crate::distribution::student_t_sf;
use crate::line::checks::{
    beside, part, quadratic_term, reversed, step, theil_sen, through_zero, with_unknown,
};
use crate::line::diagnostics::{chauvenet, peirce};
use crate::line::{Data, Fit, FittedValue, FreeColumn, Noise, RowFit};
use crate::notebook::{NotebookState, RailId, RowId};
use crate::rail::Source;

/// Rows up to which the median slope of all pairs is taken: more are no bench's, and the slopes of ten thousand rows would fill
/// 400 MB, which a page does not give back.
pub const MOST_PAIRED: usize = 2_000;
/// Rows tried for leaving out: the ones that pull most by Cook's distance. Trying all costs a fit for each.
const CANDIDATES: usize = 3;

/// All side checks.
pub fn checks(page: &NotebookState, points: &[Point], setup: &Setup, fit: &Fit) -> Checks {
    let data = &setup.data;
    let deviations = deviations(fit);
    let unknowns = 2 + data.free.len();
    let ids = |places: Vec<usize>| places.into_iter().filter_map(|place| row_at(points, place)).collect();
    let judged = fit.degrees_of_freedom > 1;
    let known = weights_degrees(setup, fit).unwrap_or(f64::INFINITY);
    Checks {
        through_zero: through_zero(data)
            .ok()
            .map(|line| MeasuredValue { value: line.slope, uncertainty: line.u_slope }),
        rails_alone: rails_alone(page, points, data),
        steps: steps(page, points, setup, known),
        settings: settings(points, data, known),
        quadratic: quadratic_term(data).ok().and_then(|term| tested(&term, data, known)),
        theil_sen: if data.x.len() > MOST_PAIRED { None } else { theil_sen(&data.x, &data.y).ok() },
        decisive_row: decisive_row(points, data, fit),
        other_way: reversed(&Data { noise: Noise::Unstated, free: Vec::new(), ..data.clone() })
            .ok()
            .map(|line| line.slope),
        runs: fit.runs(&ordered(&data.x)).filter(|_| judged),
        chauvenet: if judged { ids(chauvenet(&deviations)) } else { Vec::new() },
        peirce: if judged { ids(peirce(&deviations, unknowns)) } else { Vec::new() },
    }
}

/// The residuals in units of the scatter of the rows themselves, as both criteria for doubtful rows take them, whatever was
/// stated; a row that the line must go through has none to speak of.
fn deviations(fit: &Fit) -> Vec<f64> {
    // Where nothing was stated they are in units of the scatter already.
    let scatter = fit.scatter().filter(|scatter| fit.stated && *scatter > 0.0).unwrap_or(1.0);
    let of = |row: &RowFit| row.normalised.map_or(0.0, |w| w * (1.0 - row.leverage).sqrt() / scatter);
    fit.rows.iter().map(of).collect()
}

fn row_at(points: &[Point], place: usize) -> Option<RowId> {
    points.get(place).map(|point| point.row)
}

/// The places of the values, from the smallest on.
pub(super) fn ordered(values: &[f64]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|a, b| values[*a].total_cmp(&values[*b]));
    order
}

/// An unknown against zero, by Student's t: with the degrees of freedom by which stated uncertainties are known, which is the
/// normal distribution where they are known for good; where nothing was stated, with those of the scatter.
fn tested(estimate: &FittedValue, data: &Data, known: f64) -> Option<Tested> {
    let uncertainty = estimate.u.filter(|u| *u > 0.0 && u.is_finite())?;
    let size = (estimate.value / uncertainty).abs();
    let nu = data.x.len().checked_sub(3 + data.free.len())?;
    let p_value = 2.0 * student_t_sf(size, if is_stated(data) { known } else { nu as f64 });
    Some(Tested { value: estimate.value, uncertainty, p_value })
}

fn rails_alone(page: &NotebookState, points: &[Point], data: &Data) -> Vec<(RailId, Option<MeasuredValue>)> {
    let mut alone = Vec::new();
    for (index, rail) in page.rails.iter().enumerate() {
        let rows: Vec<usize> =
            (0..points.len()).filter(|i| points.get(*i).is_some_and(|p| p.rail == Some(index))).collect();
        if rows.is_empty() || rows.len() == points.len() {
            continue;
        }
        let slope = part(data, &rows)
            .ok()
            .map(|fit| MeasuredValue { value: fit.slope, uncertainty: fit.uncertainty.map(|u| u.slope) });
        alone.push((rail.id, slope));
    }
    alone
}

/// The step at each splice that some rows stand behind and others before.
fn steps(page: &NotebookState, points: &[Point], setup: &Setup, known: f64) -> Vec<StepCheck> {
    let mut found = Vec::new();
    for (index, rail) in page.rails.iter().enumerate() {
        let behind: Vec<bool> = points
            .iter()
            .map(|p| p.effects.iter().any(|(source, _)| *source == Source::Splice(index)))
            .collect();
        if setup.free.contains(&index) || behind.iter().all(|b| *b) || !behind.iter().any(|b| *b) {
            continue;
        }
        let tested = step(&setup.data, &behind).ok().and_then(|e| tested(&e, &setup.data, known));
        found.extend(tested.map(|step| StepCheck { rail: rail.id, step }));
    }
    found
}

fn is_stated(data: &Data) -> bool {
    data.noise != Noise::Unstated
}

/// Each time base against the rest, where there are several.
fn settings(points: &[Point], data: &Data, known: f64) -> Vec<SettingCheck> {
    let clocks = time_bases(points);
    if clocks.len() < 2 {
        return Vec::new();
    }
    let check = |TimeBase { clock, .. }: TimeBase| {
        let at = |p: &&Point| p.time_base.is_some_and(|base| base.clock == clock);
        let entries = points.iter().map(|p| if at(&p) { 1.0 } else { 0.0 }).collect();
        let estimate = with_unknown(data, FreeColumn::InY(entries)).ok()?;
        let offset = tested(&estimate, data, known)?;
        let rows = points.iter().filter(at).map(|p| p.row).collect();
        Some(SettingCheck { clock, offset, rows })
    };
    // Of two settings, each is off from the other by the same amount: one check says it.
    let needed = if clocks.len() == 2 { 1 } else { clocks.len() };
    clocks.into_iter().rev().take(needed).filter_map(check).collect()
}

/// The row that moves the slope most when left out, among those that pull most.
fn decisive_row(points: &[Point], data: &Data, fit: &Fit) -> Option<(RowId, f64)> {
    let unknowns = 2 + data.free.len();
    let pull = |row: &RowFit| row.cooks_distance(unknowns).unwrap_or(f64::INFINITY);
    // Their negatives, so that those that pull most come first.
    let pulls: Vec<f64> = fit.rows.iter().map(|row| -pull(row)).collect();
    let left_out = ordered(&pulls).into_iter().take(CANDIDATES).filter_map(|place| {
        let others: Vec<usize> = (0..points.len()).filter(|other| *other != place).collect();
        let slope = beside(&data.only(&others)).ok()?.slope;
        Some((row_at(points, place)?, slope))
    });
    left_out.max_by(|a, b| (a.1 - fit.slope).abs().total_cmp(&(b.1 - fit.slope).abs()))
}
