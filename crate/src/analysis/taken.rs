//! Traces that were measured and pictures, to the edits that put them into rows: where they stood is told by the names of
//! their files.

use litemap::LiteMap;
use serde::Deserialize;

use super::read::ruler_unit;
use super::types::RowReading;
use crate::notebook::{Cell, Edit, Evidence, NotebookState, Row, RowId};
use crate::quantity::parse;

/// Traces or a picture, with what is known of their place.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct TakenEvidence {
    /// The row, where it is known: traces that were measured again, a picture dropped on it.
    #[serde(default)]
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional = nullable))]
    pub row: Option<RowId>,
    /// The rail that the file's name tells.
    #[serde(default)]
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional = nullable))]
    pub rail: Option<String>,
    /// The reading with its unit that the file's name tells.
    #[serde(default)]
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional = nullable))]
    pub reading: Option<String>,
    /// What is taken.
    pub evidence: Evidence,
}

/// One edit that puts all of them into rows. Each goes into the row that it is for, or that holds the same
/// files; else into one at the same reading that has no delay yet; else into a new one behind the last.
pub fn take(page: &NotebookState, readings: &[RowReading], all: Vec<TakenEvidence>) -> Edit {
    let mut next = page.new_number();
    let mut used: Vec<RowId> = Vec::new();
    let mut edits = Vec::new();
    for taken in all {
        let (rail, reading) = place_texts(page, &taken);
        let row = known_row(page, &taken, &used)
            .or_else(|| waiting_row(page, readings, (&rail, &reading), &used))
            .unwrap_or_else(|| {
                let mut cells: LiteMap<Cell, String> = LiteMap::new();
                let remark = if reading.is_empty() { names(&taken.evidence) } else { String::new() };
                for (cell, text) in [(Cell::Rail, rail), (Cell::Reading, reading), (Cell::Remark, remark)] {
                    if !text.is_empty() {
                        cells.insert(cell, text);
                    }
                }
                let row = next;
                next = next.saturating_add(1);
                edits.push(Edit::AddRow { row, after: None, cells });
                row
            });
        used.push(row);
        edits.push(Edit::SetEvidence { row, evidence: Some(taken.evidence) });
    }
    Edit::Together(edits)
}

/// Rail and reading. Where the name of the file tells no rail, the only one is meant.
fn place_texts(page: &NotebookState, taken: &TakenEvidence) -> (String, String) {
    let rail = match (&taken.rail, page.rails.as_slice()) {
        (Some(rail), _) => rail.clone(),
        (None, [only]) => only.name_or_number(0),
        (None, _) => String::new(),
    };
    (rail, taken.reading.clone().unwrap_or_default())
}

/// What the files are called that evidence rests on.
fn names(evidence: &Evidence) -> String {
    let mut names = String::new();
    for file in evidence.files() {
        if !names.is_empty() {
            names.push_str(", ");
        }
        names.push_str(&file.name);
    }
    names
}

fn known_row(page: &NotebookState, taken: &TakenEvidence, used: &[RowId]) -> Option<RowId> {
    let holds = |row: &&Row| {
        row.evidence.as_ref().is_some_and(|held| held.files() == taken.evidence.files())
            && !used.contains(&row.id)
    };
    taken.row.or_else(|| page.rows.iter().find(holds).map(|row| row.id))
}

/// The row at the same reading of the same rail that waits for a delay. Where no rail is told, of any rail; of none where
/// rows of several rails wait at that reading.
fn waiting_row(
    page: &NotebookState,
    readings: &[RowReading],
    (rail, reading): (&str, &str),
    used: &[RowId],
) -> Option<RowId> {
    let mut found: Option<&RowReading> = None;
    for told in readings {
        if used.contains(&told.id) || !waits(page, told.id) || !is_meant(page, told, rail, reading) {
            continue;
        }
        match found {
            Some(first) if first.rail != told.rail => return None,
            Some(_) => {}
            None => found = Some(told),
        }
    }
    found.map(|told| told.id)
}

/// Whether a row was read where the name of a rail, if there is one, and a text say, in whatever unit.
fn is_meant(page: &NotebookState, told: &RowReading, named: &str, text: &str) -> bool {
    let place = told.rail.and_then(|rail| page.rail(rail));
    let (Some((index, rail)), Some(reading)) = (place, told.reading) else { return false };
    (named.is_empty() || rail.name_or_number(index).eq_ignore_ascii_case(named))
        && parse(text, page.decimal_mark, ruler_unit(rail.unit))
            .is_ok_and(|at| (reading - at.value).abs() <= 1e-9 * at.value.abs().max(1.0))
}

fn waits(page: &NotebookState, row: RowId) -> bool {
    page.row(row).is_some_and(|row| {
        row.evidence.is_none()
            && row.struck.is_none()
            && [Cell::EdgeA, Cell::EdgeB, Cell::Delay].iter().all(|cell| row.text(*cell).trim().is_empty())
    })
}

#[cfg(test)]
#[path = "taken_test.rs"]
mod tests;
