//! What a fixed level on traces does to the delays of a run where the light weakens on the way.

use super::evidence::time;
use super::point::Point;
use super::types::{WalkAnalysis, WalkRow};
use crate::notebook::{Estimator, Evidence, NotebookState, RowId};
use crate::trace::{Walk, compare_walk};

/// The walk of a run; none with traces at fewer than three places.
pub fn walk(page: &NotebookState, points: &[Point], slope: Option<f64>) -> Option<WalkAnalysis> {
    let (rows, line) = walk_line(page, points)?;
    // The line itself is one of fixed levels where those were chosen.
    let slope = slope? - if page.estimator == Estimator::FixedLevel { line.slope } else { 0.0 };
    Some(WalkAnalysis { rows, line, shift: line.shift(slope) })
}

/// What nothing corrects for where a fixed level was chosen, ns/m: the slope that it adds to the delays, together with how
/// well that is known, as a standard uncertainty (S. D. Phillips, K. R. Eberhardt and B. Parry, J. Res. NIST 102 (1997) 577;
/// from memory). None where nothing is known of it.
pub fn u_walk(page: &NotebookState, points: &[Point]) -> Option<f64> {
    if page.estimator != Estimator::FixedLevel {
        return None;
    }
    walk_line(page, points).map(|(_, line)| libm::hypot(line.slope, line.uncertainty))
}

/// The rows whose traces tell of walk, and the line of their differences; none with fewer than three of them.
fn walk_line(page: &NotebookState, points: &[Point]) -> Option<(Vec<WalkRow>, Walk)> {
    let row = |point: &Point| {
        let (difference, u) = walk_of(page, point.row)?;
        Some(WalkRow { row: point.row, distance: point.x, difference, u })
    };
    let rows: Vec<WalkRow> = points.iter().filter_map(row).collect();
    if rows.len() < 3 {
        return None;
    }
    let column = |of: fn(&WalkRow) -> f64| rows.iter().map(of).collect::<Vec<f64>>();
    let line =
        compare_walk(&column(|row| row.distance), &column(|row| row.difference), &column(|row| row.u))?;
    Some((rows, line))
}

/// Fixed level less constant fraction of a row's traces, ns, with its standard uncertainty.
fn walk_of(page: &NotebookState, row: RowId) -> Option<(f64, f64)> {
    match &page.row(row)?.evidence {
        Some(Evidence::Traces(traces)) => time(traces.walk.as_ref()?).filter(|(_, u)| *u > 0.0),
        _ => None,
    }
}
