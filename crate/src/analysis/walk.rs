//! What a fixed level on traces does to the delays of a run where the light weakens on the way.

use super::evidence::time;
use super::point::Point;
use super::types::{WalkAnalysis, WalkRow};
use crate::notebook::{Estimator, Evidence, NotebookState, RowId};
use crate::trace::compare_walk;

/// The walk of a run; none with traces at fewer than three places.
pub fn walk(page: &NotebookState, points: &[Point], slope: Option<f64>) -> Option<WalkAnalysis> {
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
    // The line itself is one of fixed levels where those were chosen.
    let slope = slope? - if page.estimator == Estimator::FixedLevel { line.slope } else { 0.0 };
    Some(WalkAnalysis { rows, line, shift: line.shift(slope) })
}

/// Fixed level less constant fraction of a row's traces, ns, with its standard uncertainty.
fn walk_of(page: &NotebookState, row: RowId) -> Option<(f64, f64)> {
    match &page.rows.iter().find(|known| known.id == row)?.evidence {
        Some(Evidence::Traces(traces)) => time(traces.walk.as_ref()?).filter(|(_, u)| *u > 0.0),
        _ => None,
    }
}
