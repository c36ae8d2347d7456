//! What a fixed level on traces does to the delays of a run where the light weakens on the way.

use super::evidence::time;
use super::point::Point;
use super::types::WalkAnalysis;
use crate::notebook::{Estimator, Evidence, Page, RowId};
use crate::trace::compare_walk;

/// The walk of a run; none with traces at fewer than three places.
pub fn walk(page: &Page, points: &[Point], slope: Option<f64>) -> Option<WalkAnalysis> {
    let rows: Vec<(RowId, f64, f64, f64)> = points
        .iter()
        .filter_map(|point| walk_of(page, point.row).map(|(value, u)| (point.row, point.x, value, u)))
        .collect();
    if rows.len() < 3 {
        return None;
    }
    let column = |of: fn(&(RowId, f64, f64, f64)) -> f64| rows.iter().map(of).collect::<Vec<f64>>();
    let line = compare_walk(&column(|row| row.1), &column(|row| row.2), &column(|row| row.3))?;
    // The line itself is one of fixed levels where those were chosen.
    let slope = slope? - if page.estimator == Estimator::FixedLevel { line.slope } else { 0.0 };
    Some(WalkAnalysis { rows, line, shift: line.shift(slope) })
}

/// Fixed level less constant fraction of a row's traces, ns, with its standard uncertainty.
fn walk_of(page: &Page, row: RowId) -> Option<(f64, f64)> {
    match &page.rows.iter().find(|known| known.id == row)?.evidence {
        Some(Evidence::Traces(traces)) => time(traces.walk.as_ref()?).filter(|(_, u)| *u > 0.0),
        _ => None,
    }
}
