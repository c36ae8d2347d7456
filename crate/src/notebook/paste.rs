//! A block copied from a spreadsheet, to the edits that put it into the rows.
//!
//! A spreadsheet hands over lines of cells with tabs between them, and puts a cell that holds a tab, a newline or
//! a quote into quotes (the conventions of RFC 4180 with a tab for the comma). Numbers stay as they are written:
//! the notebook's own decimal mark decides how they are read.

use litemap::LiteMap;

use super::edit::Edit;
use super::page::{Cell, Page, Row, RowId};

/// The columns that a block runs over when it starts among the rail and screen cells.
const READ: [Cell; 6] = [Cell::Rail, Cell::Reading, Cell::TimeBase, Cell::EdgeA, Cell::EdgeB, Cell::Remark];

/// The columns that a block runs over when it starts among the direct values.
const DIRECT: [Cell; 5] =
    [Cell::Distance, Cell::DistanceUncertainty, Cell::Delay, Cell::DelayUncertainty, Cell::Remark];

/// The edits that put `block` into the rows, from `cell` of the row `start` on; with new rows behind the last as
/// needed, or for all of it where `start` is none. Cells too many in a line are kept in the remark.
pub fn paste(page: &Page, start: Option<RowId>, cell: Cell, block: &str) -> Edit {
    let columns = columns_from(cell);
    let lines = lines(block);
    let first = start.and_then(|id| page.rows.iter().position(|row| row.id == id));
    let first = first.unwrap_or(page.rows.len());
    let mut next = page.rows.iter().map(|row| row.id).max().unwrap_or(0) + 1;
    let mut edits = Vec::new();
    for (offset, line) in lines.iter().enumerate() {
        let texts = spread(columns, line);
        if let Some(row) = page.rows.get(first + offset) {
            edits.extend(texts.into_iter().map(|(cell, text)| Edit::SetCell { row: row.id, cell, text }));
        } else {
            edits.push(Edit::AddRow { row: next, after: None, cells: with_habits(page.rows.last(), texts) });
            next += 1;
        }
    }
    Edit::Together(edits)
}

fn columns_from(cell: Cell) -> &'static [Cell] {
    let within = |all: &'static [Cell]| all.iter().position(|c| *c == cell).and_then(|i| all.get(i..));
    within(&READ).or_else(|| within(&DIRECT)).unwrap_or(&[Cell::Remark])
}

/// The lines of a block, each cut into cells. Lines that hold nothing are left out.
fn lines(block: &str) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(b'\t')
        .has_headers(false)
        .flexible(true)
        .from_reader(block.as_bytes());
    // The text is UTF-8 already and held in memory: no line can fail to be read.
    let records = reader.records().filter_map(Result::ok);
    let cells = records.map(|record| record.iter().map(|cell| cell.trim().to_owned()).collect::<Vec<_>>());
    cells.filter(|cells| cells.iter().any(|cell| !cell.is_empty())).collect()
}

/// Texts of one line by column; what runs over the last column is joined to it.
fn spread(columns: &[Cell], line: &[String]) -> LiteMap<Cell, String> {
    let mut texts: LiteMap<Cell, String> = LiteMap::new();
    for (index, text) in line.iter().enumerate() {
        let Some(cell) = columns.get(index).or(columns.last()) else { continue };
        let slot = texts.entry(*cell).or_default();
        if !slot.is_empty() && !text.is_empty() {
            slot.push(' ');
        }
        slot.push_str(text);
    }
    texts
}

/// A new row goes on with the rail and the time base of the last one where the block says nothing of them.
fn with_habits(last: Option<&Row>, mut texts: LiteMap<Cell, String>) -> LiteMap<Cell, String> {
    if texts.contains_key(&Cell::Distance) || texts.contains_key(&Cell::Delay) {
        return texts;
    }
    for cell in [Cell::Rail, Cell::TimeBase] {
        if let Some(text) = last.map(|row| row.text(cell)).filter(|text| !text.is_empty()) {
            texts.entry(cell).or_insert_with(|| text.to_owned());
        }
    }
    texts
}
