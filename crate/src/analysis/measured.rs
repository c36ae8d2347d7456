//! Measured traces to the edits that put them into rows: where they stood is told by the names of their files.

use litemap::LiteMap;
use serde::Deserialize;

use super::read::ruler_unit;
use super::types::RowReading;
use crate::notebook::{Cell, Edit, Evidence, NotebookState, Row, RowId, Traces};
use crate::quantity::parse;

/// Traces that were measured, with what is known of their place.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct MeasuredTraces {
    /// The row, where they were measured again.
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
    /// What was measured.
    pub traces: Traces,
}

/// One edit that puts all of them into rows. Each goes into the row that it was measured for, or that holds the same
/// files; else into one at the same reading that has no delay yet; else into a new one behind the last.
pub fn take(page: &NotebookState, readings: &[RowReading], all: Vec<MeasuredTraces>) -> Edit {
    let mut next = page.new_number();
    let mut used: Vec<RowId> = Vec::new();
    let mut edits = Vec::new();
    for taken in all {
        let (rail, reading) = place_texts(page, &taken);
        let row = known_row(page, &taken, &used)
            .or_else(|| waiting_row(page, readings, (&rail, &reading), &used))
            .unwrap_or_else(|| {
                let mut cells: LiteMap<Cell, String> = LiteMap::new();
                let remark = if reading.is_empty() { names(&taken.traces) } else { String::new() };
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
        edits.push(Edit::SetEvidence { row, evidence: Some(Evidence::Traces(taken.traces)) });
    }
    Edit::Together(edits)
}

/// Rail and reading. Where the name of the file tells no rail, the only one is meant.
fn place_texts(page: &NotebookState, taken: &MeasuredTraces) -> (String, String) {
    let rail = match (&taken.rail, page.rails.as_slice()) {
        (Some(rail), _) => rail.clone(),
        (None, [only]) => only.name_or_number(0),
        (None, _) => String::new(),
    };
    (rail, taken.reading.clone().unwrap_or_default())
}

/// What the files are called.
fn names(traces: &Traces) -> String {
    traces.files.iter().map(|file| file.name.as_str()).collect::<Vec<_>>().join(", ")
}

fn known_row(page: &NotebookState, taken: &MeasuredTraces, used: &[RowId]) -> Option<RowId> {
    let holds = |row: &&Row| {
        let held =
            matches!(&row.evidence, Some(Evidence::Traces(traces)) if traces.files == taken.traces.files);
        held && !used.contains(&row.id)
    };
    taken.row.or_else(|| page.rows.iter().find(holds).map(|row| row.id))
}

/// A row at the same reading of the same rail that waits for a delay.
fn waiting_row(
    page: &NotebookState,
    readings: &[RowReading],
    (rail, reading): (&str, &str),
    used: &[RowId],
) -> Option<RowId> {
    let place = page.rails.iter().enumerate().find_map(|(index, known)| {
        known.name_or_number(index).eq_ignore_ascii_case(rail.trim()).then_some(known)
    })?;
    let at = parse(reading, page.decimal_mark, ruler_unit(place.unit)).ok()?.value;
    let same = |told: f64| (told - at).abs() <= 1e-9 * at.abs().max(1.0);
    let waits = |id: RowId| {
        let row = page.rows.iter().find(|row| row.id == id);
        let untold = |cell: &Cell| row.is_some_and(|row| row.text(*cell).trim().is_empty());
        row.is_some_and(|row| row.evidence.is_none() && row.struck.is_none())
            && [Cell::EdgeA, Cell::EdgeB, Cell::Delay].iter().all(untold)
    };
    let found = readings.iter().find(|told| {
        told.rail == Some(place.id)
            && told.reading.is_some_and(same)
            && !used.contains(&told.id)
            && waits(told.id)
    });
    found.map(|told| told.id)
}

#[cfg(test)]
#[path = "measured_test.rs"]
mod tests;
