//! The engine's refusals as messages of the notebook: rows by their numbers on the page, rails by their names.

use super::point::Point;
use super::setup::Setup;
use super::types::Refusal;
use crate::line::LineError;
use crate::message;
use crate::notebook::{NotebookState, RowId};
use crate::words::{Message, Value};

/// Why there is no line. The engine counts rows among the points, and unknowns among the rails left to the line.
pub(super) fn refusal(error: &LineError, page: &NotebookState, points: &[Point], setup: &Setup) -> Refusal {
    let ids = |places: &[usize]| -> Vec<RowId> {
        places.iter().filter_map(|place| points.get(*place)).map(|p| p.row).collect()
    };
    let named = |id, places: &[usize], message: fn(usize, Vec<usize>) -> Message| {
        let rows = ids(places);
        let numbers = page.row_numbers(&rows);
        Refusal::new(id, message(numbers.len(), numbers)).of_rows(rows)
    };
    match error {
        LineError::TooFewRows { got, needed } => {
            Refusal::new("too_few_rows", message!("refusal-too_few_rows", got = *got, needed = *needed))
        }
        LineError::AllPositionsEqual => {
            Refusal::new("all_positions_equal", message!("refusal-all_positions_equal"))
        }
        LineError::ZeroUncertainty { rows } => named("zero_uncertainty", rows, |n, rows| {
            message!("refusal-zero_uncertainty", n = n, rows = rows)
        }),
        LineError::Indefinite { rows } => {
            named("indefinite", rows, |n, rows| message!("refusal-indefinite", n = n, rows = rows))
        }
        LineError::Singular { rows } => {
            named("singular", rows, |_, rows| message!("refusal-singular", rows = rows))
        }
        LineError::NotSymmetric { rows: (a, b) } => {
            named("not_symmetric", &[*a, *b], |_, rows| message!("refusal-not_symmetric", rows = rows))
        }
        LineError::NotFinite { row, .. } => {
            named("not_finite", &[*row], |_, rows| message!("refusal-not_finite", rows = rows))
        }
        LineError::NegativeUncertainty { row } => named("negative_uncertainty", &[*row], |n, rows| {
            message!("refusal-negative_uncertainty", n = n, rows = rows)
        }),
        LineError::UndeterminedColumn { column } => {
            let rails = rails(page, setup.free.get(*column..=*column).unwrap_or_default());
            Refusal::new("undetermined_rail", message!("refusal-undetermined_rail", rails = rails))
        }
        LineError::UndeterminedSlope => {
            let rails = rails(page, &setup.free);
            Refusal::new("undetermined_slope", message!("refusal-undetermined_slope", rails = rails))
        }
        LineError::OutOfRange => Refusal::new("out_of_range", message!("refusal-out_of_range")),
        LineError::NoConvergence => Refusal::new("no_convergence", message!("refusal-no_convergence")),
        LineError::LengthMismatch { .. } => {
            Refusal::new("length_mismatch", message!("refusal-length_mismatch"))
        }
    }
}

/// The names of rails left to the line.
fn rails(page: &NotebookState, free: &[usize]) -> Vec<Value> {
    let names = free.iter().filter_map(|index| Some(page.rails.get(*index)?.name_or_number(*index)));
    names.map(|name| message!("rail-named", name = name).into()).collect()
}

#[cfg(test)]
#[path = "refusal_test.rs"]
mod tests;
