//! What rows are read by and do not name, written out: where they are merged there may be others of its kind.

use litemap::LiteMap;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::habits::habits;
use super::state::{Cell, NotebookState, Row};

/// Writes out by which time base each row is read that is not as it was on the page on which both began, where it names none
/// and there is only one: there may be others where it is taken over. So it is done with the rail of a row that was begun
/// since, and with what such a row goes on with from the rows before it, where others stand before it.
pub(super) fn write_out(page: &mut NotebookState, began: &NotebookState) {
    let (rail, time_base) = (only_rail(page), only_time_base(page));
    for place in 0..page.rows.len() {
        let (before, rest) = page.rows.split_at_mut(place);
        let Some(row) = rest.first_mut().filter(|row| !is_as_on(began, row)) else { continue };
        name(row, Cell::TimeBase, time_base.as_deref());
        if row.id > began.numbered {
            name(row, Cell::Rail, rail.as_deref());
            row.cells = with_habits(row, before);
        }
    }
}

/// Whether a row is as it was on a page. What its delay is taken from is compared as it is written.
fn is_as_on(page: &NotebookState, row: &Row) -> bool {
    page.row(row.id).is_some_and(|Row { id: _, cells, evidence, struck }| {
        *cells == row.cells && *struck == row.struck && to_json(evidence) == to_json(&row.evidence)
    })
}

/// Writes what a cell is read as, where it is empty.
fn name(row: &mut Row, cell: Cell, text: Option<&str>) {
    if let Some(text) = text.filter(|_| row.text(cell).trim().is_empty()) {
        row.cells.insert(cell, text.to_owned());
    }
}

/// What keeps rows of `ours` read by the only time base there is, which they don't name, where `theirs` has others, or
/// another one. A row that is as it was on the page on which both `began` follows where the only one is changed.
pub(super) fn kept(ours: &NotebookState, theirs: &NotebookState, began: &NotebookState) -> Vec<Edit> {
    let (here, there) = (only_time_base(ours), only_time_base(theirs));
    let Some(text) = here.filter(|text| there.as_ref() != Some(text)) else { return vec![] };
    let is_unnamed = |row: &&Row| row.text(Cell::TimeBase).trim().is_empty();
    let stays = |row: &&Row| there.is_none() || !is_as_on(began, row);
    let rows = ours.rows.iter().filter(is_unnamed).filter(stays);
    let named = rows.map(|row| Edit::SetCell { row: row.id, cell: Cell::TimeBase, text: text.clone() });
    named.filter(|edit| edit.may_reach(ours).is_ok()).collect()
}

/// The rail by which a row is read that names none: the only one on the page.
fn only_rail(page: &NotebookState) -> Option<String> {
    if let [rail] = page.rails.as_slice() { Some(rail.name_or_number(0)) } else { None }
}

/// The time base by which a row is read that names none: the only one on the page.
fn only_time_base(page: &NotebookState) -> Option<String> {
    let [setting] = page.settings.as_slice() else { return None };
    Some(setting.time_per_division.clone()).filter(|text| !text.trim().is_empty())
}

/// The cells of a row, and what it goes on with from the rows `before` it.
pub(super) fn with_habits(row: &Row, before: &[Row]) -> LiteMap<Cell, String> {
    let mut cells = row.cells.clone();
    for (cell, text) in habits(before) {
        if row.text(cell).trim().is_empty() {
            cells.insert(cell, text.to_owned());
        }
    }
    cells
}
