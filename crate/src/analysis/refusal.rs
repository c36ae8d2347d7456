//! The engine's refusals in the words of the notebook: rows by their numbers on the page, rails by their names.

use super::point::Point;
use super::setup::Setup;
use super::types::Refusal;
use super::words::say_rows;
use crate::line::LineError;
use crate::notebook::{NotebookState, RowId};

/// Why there is no line. The engine counts rows among the points, and unknowns among the rails left to the line.
pub(super) fn refusal(error: &LineError, page: &NotebookState, points: &[Point], setup: &Setup) -> Refusal {
    let ids = |places: &[usize]| -> Vec<RowId> {
        places.iter().filter_map(|place| points.get(*place)).map(|p| p.row).collect()
    };
    let named = |id: &str, places: &[usize], rest: &str, one: &str, many: &str| {
        let rows = ids(places);
        let message = format!("{} {rest}", say_rows(page, &rows, one, many));
        Refusal { id: id.into(), rows, message }
    };
    let plain =
        |id: &str, message: &str| Refusal { id: id.into(), rows: Vec::new(), message: message.into() };
    match error {
        LineError::TooFewRows { got, needed } => plain("too_few_rows", &too_few(*got, *needed)),
        LineError::AllPositionsEqual => plain(
            "all_positions_equal",
            "all rows stand at the same distance, so the line has no slope: take readings at other places",
        ),
        LineError::ZeroUncertainty { rows } => named(
            "zero_uncertainty",
            rows,
            "an uncertainty of zero in distance and in delay: a reading is never exact, state what it is worth",
            "states",
            "state",
        ),
        LineError::Indefinite { rows } => named(
            "indefinite",
            rows,
            "a covariance that can't exist (a variance would be negative): check that matrix",
            "is given",
            "are given",
        ),
        LineError::NotSymmetric { rows: (a, b) } => named(
            "not_symmetric",
            &[*a, *b],
            "a covariance that differs between the two places where the matrix has it: write the same in both",
            "is given",
            "are given",
        ),
        LineError::NotFinite { row, .. } => named(
            "not_finite",
            &[*row],
            "too large a number to compute with: look at its distance, its delay, their uncertainties and units",
            "comes to",
            "come to",
        ),
        LineError::NegativeUncertainty { row } => named(
            "negative_uncertainty",
            &[*row],
            "an uncertainty below zero: write it as zero or more",
            "states",
            "state",
        ),
        LineError::UndeterminedColumn { column } => plain(
            "undetermined_rail",
            &format!(
                "where {} stands can't be told from these readings: take some on both sides of its splice, at two \
             distances or more on one of them, or say where it stands",
                rails(page, setup.free.get(*column..=*column).unwrap_or_default())
            ),
        ),
        LineError::UndeterminedSlope => plain(
            "undetermined_slope",
            &format!(
                "the slope can't be told from the place of {}, which is left to the line: take readings at two distances \
             or more on one rail, or say where it stands",
                rails(page, &setup.free)
            ),
        ),
        LineError::OutOfRange => plain(
            "out_of_range",
            "distances, delays or uncertainties are too large or too small to compute with: look at their units",
        ),
        LineError::NoConvergence => plain(
            "no_convergence",
            "no slope fits best: within their uncertainties all rows could stand at one distance. Take readings \
             farther apart, and look at the uncertainties of distances",
        ),
        LineError::LengthMismatch { .. } => plain(
            "length_mismatch",
            "rows and uncertainties do not match in number, which is a fault of this page and not of your readings: \
             keep the bundle of this notebook and report it",
        ),
    }
}

/// "rail “B”", "rails “B” and “C”"; "a rail" where none is known.
fn rails(page: &NotebookState, free: &[usize]) -> String {
    let names: Vec<String> = free
        .iter()
        .filter_map(|index| Some(format!("“{}”", page.rails.get(*index)?.name_or_number(*index))))
        .collect();
    match names.split_last() {
        None => "a rail".into(),
        Some((one, [])) => format!("rail {one}"),
        Some((last, others)) => format!("rails {} and {last}", others.join(", ")),
    }
}

fn too_few(got: usize, needed: usize) -> String {
    let have = match got {
        0 => "no row has both a distance and a delay yet".to_owned(),
        1 => "one row is not enough for a line".to_owned(),
        n => format!("{n} rows are not enough here"),
    };
    format!("{have}: {needed} rows at different places are needed, five or more are better")
}

#[cfg(test)]
#[path = "refusal_test.rs"]
mod tests;
