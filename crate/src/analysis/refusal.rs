//! Why there is no line, in the words of the notebook.

use super::point::Point;
use super::types::Refusal;
use super::words::say_rows;
use crate::line::LineError;
use crate::notebook::{Page, RowId};

/// The engine's refusal in the words of the notebook, with the rows by their numbers on the page.
pub fn refusal(error: &LineError, page: &Page, points: &[Point]) -> Refusal {
    let ids = |places: &[usize]| -> Vec<RowId> {
        places.iter().filter_map(|place| points.get(*place)).map(|p| p.row).collect()
    };
    let named = |id: &str, places: &[usize], rest: &str, one: &str, many: &str| {
        let rows = ids(places);
        let message = format!("{} {rest}", say_rows(page, &rows, one, many));
        Refusal { id: id.into(), rows, message }
    };
    let plain = |id: &str, message: String| Refusal { id: id.into(), rows: Vec::new(), message };
    match error {
        LineError::TooFewRows { got, needed } => plain("too_few_rows", too_few(*got, *needed)),
        LineError::AllPositionsEqual => plain(
            "all_positions_equal",
            "all rows stand at the same distance, so the line has no slope: take readings at other places"
                .into(),
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
        other => plain("no_line", other.to_string()),
    }
}

fn too_few(got: usize, needed: usize) -> String {
    let have = match got {
        0 => "no row has both a distance and a delay yet".to_owned(),
        1 => "one row alone fixes no line".to_owned(),
        n => format!("{n} rows are not enough here"),
    };
    format!("{have}: {needed} rows at different places are needed, five or more are better")
}
