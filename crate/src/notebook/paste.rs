//! A block copied from a spreadsheet, to the edits that put it into the rows.
//!
//! A spreadsheet hands over lines of cells with tabs between them, and puts a cell that holds a tab, a newline or
//! a quote into quotes (the conventions of RFC 4180 with a tab for the comma). Numbers stay as they are written, but
//! for the decimal mark: a block from a spreadsheet that has the other one is told by its numbers, and turned. A line of
//! headings above the numbers is left out.

use litemap::LiteMap;

use super::block;
use super::edit::Edit;
use super::habits::habits;
use super::state::{Cell, NotebookState, Row, RowId};
use crate::quantity::DecimalMark;

/// The columns that a block runs over when it starts among the rail and screen cells.
const READ: [Cell; 6] = [Cell::Rail, Cell::Reading, Cell::TimeBase, Cell::EdgeA, Cell::EdgeB, Cell::Remark];

/// The columns that a block runs over when it starts among the direct values.
const DIRECT: [Cell; 5] =
    [Cell::Distance, Cell::DistanceUncertainty, Cell::Delay, Cell::DelayUncertainty, Cell::Remark];

/// What becomes of a block.
pub struct Pasted {
    /// What puts it into the rows.
    pub edit: Edit,
    /// Its decimal marks were turned into the notebook's.
    pub turned: bool,
    /// The headings that were left out; empty without such.
    pub headings: String,
}

/// Puts `block` into the rows, from `cell` of the row `start` on; with new rows behind the last as needed, or for all of
/// it where `start` is none. Cells too many in a line are kept in the remark.
pub fn paste(page: &NotebookState, start: Option<RowId>, cell: Cell, block: &str) -> Pasted {
    let columns = columns_from(cell);
    let mut lines = lines(block);
    let headings = if is_headed(columns, &lines) { lines.remove(0).join(" ") } else { String::new() };
    let turned = has_other_marks(columns, &lines, page.decimal_mark);
    let first = start.and_then(|id| page.rows.iter().position(|row| row.id == id));
    let first = first.unwrap_or(page.rows.len());
    let mut next = page.new_number();
    let mut edits = Vec::new();
    for (offset, line) in lines.iter().enumerate() {
        let mut texts = spread(columns, line);
        if turned {
            turn(&mut texts, page.decimal_mark);
        }
        if let Some(row) = page.rows.get(first + offset) {
            edits.extend(texts.into_iter().map(|(cell, text)| Edit::SetCell { row: row.id, cell, text }));
        } else {
            edits.push(Edit::AddRow { row: next, after: None, cells: with_habits(&page.rows, texts) });
            next = next.saturating_add(1);
        }
    }
    Pasted { edit: Edit::Together(edits), turned, headings }
}

/// The texts of a line that should be numbers, as bytes.
fn numbers<'a>(columns: &'a [Cell], line: &'a [String]) -> impl Iterator<Item = &'a [u8]> {
    let texts = line.iter().zip(columns);
    texts.filter(|(text, cell)| !text.is_empty() && !is_wordy(**cell)).map(|(text, _)| text.as_bytes())
}

/// Whether a cell holds words.
fn is_wordy(cell: Cell) -> bool {
    matches!(cell, Cell::Rail | Cell::Remark)
}

/// Whether the first line has words where the next has numbers. A word with a digit in it is taken for a number
/// mistyped, which must not be lost.
fn is_headed(columns: &[Cell], lines: &[Vec<String>]) -> bool {
    let [first, second, ..] = lines else { return false };
    let has_digit = |text: &[u8]| text.iter().any(u8::is_ascii_digit);
    let mut words = false;
    for text in numbers(columns, first) {
        if has_digit(text) {
            return false;
        }
        words = true;
    }
    words && numbers(columns, second).any(has_digit)
}

/// Whether the block's numbers have the other decimal mark: at least one shows it beyond doubt, and none has the
/// notebook's own. `1,234` by itself may mean thousands, and is left for its cell to refuse.
fn has_other_marks(columns: &[Cell], lines: &[Vec<String>], own: DecimalMark) -> bool {
    let mut shown = false;
    for line in lines {
        for text in numbers(columns, line) {
            if text.contains(&own.byte()) {
                return false;
            }
            shown |= text.split(|byte| *byte == b';').any(|text| is_decimal(text, own.other().byte()));
        }
    }
    shown
}

/// Whether a mark can't part thousands in a number: it is the only one, and has not just three digits behind it, or
/// more than three or a nought before it.
fn is_decimal(text: &[u8], mark: u8) -> bool {
    let Some(at) = text.iter().position(|byte| *byte == mark) else { return false };
    let (before, after) = (text.get(..at).unwrap_or_default(), text.get(at + 1..).unwrap_or_default());
    let part = after.iter().take_while(|byte| byte.is_ascii_digit()).count();
    let whole = before.iter().rev().take_while(|byte| byte.is_ascii_digit()).count();
    let nought = before.get(at - whole) == Some(&b'0');
    part > 0 && !after.contains(&mark) && (part != 3 || !(1..=3).contains(&whole) || nought)
}

fn columns_from(cell: Cell) -> &'static [Cell] {
    let within = |all: &'static [Cell]| all.iter().position(|c| *c == cell).and_then(|i| all.get(i..));
    within(&READ).or_else(|| within(&DIRECT)).unwrap_or(&[Cell::Remark])
}

/// The lines of a block, each cut into cells. Lines that hold nothing are left out.
fn lines(block: &str) -> Vec<Vec<String>> {
    let mut lines = block::lines(block);
    for cell in lines.iter_mut().flatten() {
        *cell = in_one_line(cell);
    }
    lines.retain(|cells| cells.iter().any(|cell| !cell.is_empty()));
    lines
}

/// A cell's text in one line, as its field shows it: a field that is one line high leaves breaks out without a space.
fn in_one_line(cell: &str) -> String {
    let parts = cell.split(['\r', '\n']).map(str::trim).filter(|part| !part.is_empty());
    parts.collect::<Vec<_>>().join(" ")
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

/// Gives numbers the notebook's own decimal mark in place of the other.
fn turn(texts: &mut LiteMap<Cell, String>, own: DecimalMark) {
    for (cell, text) in texts.iter_mut() {
        if !is_wordy(*cell) {
            *text = text.chars().map(|c| if c == own.other().char() { own.char() } else { c }).collect();
        }
    }
}

/// A new row goes on as the rows before it where the block says nothing of rail and time base; one that states its
/// distance or delay needs neither.
fn with_habits(before: &[Row], mut texts: LiteMap<Cell, String>) -> LiteMap<Cell, String> {
    if texts.contains_key(&Cell::Distance) || texts.contains_key(&Cell::Delay) {
        return texts;
    }
    for (cell, text) in habits(before) {
        texts.entry(cell).or_insert_with(|| text.to_owned());
    }
    texts
}
