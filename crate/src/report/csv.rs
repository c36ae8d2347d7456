//! CSV as RFC 4180 has it (comma, CRLF, double quotes), in UTF-8, safe to open in a spreadsheet.
//!
//! A spreadsheet runs a cell as a formula when it starts with `=`, `+`, `-`, `@` or a control character (OWASP,
//! "CSV Injection"); and one set to another separator begins new cells inside ours. So on export an apostrophe
//! goes before each **start** that looks like a formula or is itself an apostrophe; who reads it back takes one apostrophe
//! from each start that has one. A start is the beginning of the cell, or the place after a semicolon, a
//! tab or a line end inside it. A number, such as -1.5 or +2e3, is no formula and stays as it is.
//!
//! So every text comes back as it was: after export, an apostrophe at a start is always one that export put there.

use crate::words::Message;
use crate::{errors_as_data, message};

/// Why a table can't be written: records that differ in length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TableError {
    /// Which record, from 1.
    pub record: u64,
    /// Cells in it.
    pub found: u64,
    /// Cells in the first record.
    pub expected: u64,
}

errors_as_data!(TableError);

impl TableError {
    /// Why, and what to do.
    pub fn message(&self) -> Message {
        message!(
            "table-ragged",
            record = self.record.to_string(),
            found = self.found.to_string(),
            expected = self.expected.to_string()
        )
    }
}

/// What a file of a table begins with (Unicode 16.0, 23.8): without it common spreadsheets take UTF-8 for the encoding of
/// the machine (common practice, no source).
pub const UTF8_MARK: char = '\u{feff}';

/// Characters with which a formula starts; the last four are their full-width forms.
const FORMULA: &[char] = &['=', '+', '-', '@', '＝', '＋', '－', '＠'];

/// Characters that a spreadsheet may skip at the beginning of a cell; the last is the byte order mark.
const SKIPPED: &[char] = &['\t', '\r', '\n', '\u{feff}'];

/// Characters after which a spreadsheet may begin a new cell inside one of ours.
const BREAKS: &[char] = &[';', '\t', '\r', '\n'];

/// Records of cells as CSV.
///
/// # Errors
/// Records that differ in length.
pub fn write_csv(records: &[&[String]]) -> Result<String, TableError> {
    let mut text = String::new();
    let mut expected = None;
    for (place, record) in (1..).zip(records) {
        let found = record.len() as u64;
        let expected = *expected.get_or_insert(found);
        if found != expected {
            return Err(TableError { record: place, found, expected });
        }
        let cells: Vec<String> = record.iter().map(|cell| quoted(&neutral(cell))).collect();
        // A record of one empty cell would be a blank line, which readers pass over.
        let line = if found == 1 && cells.concat().is_empty() { "\"\"".to_owned() } else { cells.join(",") };
        text += &line;
        text += "\r\n";
    }
    Ok(text)
}

/// A cell in double quotes, where it holds what ends a cell or a line (RFC 4180, 2.6 and 2.7).
///
/// The writer of the csv crate does the same, but holds a reader of doubles for another style of quoting, 12 KB of
/// the page.
fn quoted(cell: &str) -> String {
    if cell.contains([',', '"', '\r', '\n']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell.to_owned()
    }
}

/// `cell` with nothing in it that a spreadsheet would run.
pub fn neutral(cell: &str) -> String {
    let mut text = String::with_capacity(cell.len() + 1);
    if cell.starts_with(SKIPPED) {
        text.push('\'');
    }
    for piece in cell.split_inclusive(BREAKS) {
        if needs_apostrophe(piece) {
            text.push('\'');
        }
        text.push_str(piece);
    }
    text
}

fn needs_apostrophe(piece: &str) -> bool {
    let bare = piece.trim_start_matches('"');
    piece.starts_with('\'') || (bare.starts_with(FORMULA) && !is_number(piece.trim_end_matches(BREAKS)))
}

/// Whether `text` is a number as spreadsheets take it: sign, digits with at most one mark, exponent.
fn is_number(text: &str) -> bool {
    let unsigned = text.strip_prefix(['+', '-']).unwrap_or(text);
    let (digits, exponent) = match unsigned.split_once(['e', 'E']) {
        Some((digits, exponent)) => (digits, Some(exponent.strip_prefix(['+', '-']).unwrap_or(exponent))),
        None => (unsigned, None),
    };
    let (whole, part) = digits.split_once(['.', ',']).unwrap_or((digits, ""));
    let all_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    all_digits(whole)
        && all_digits(part)
        && !(whole.is_empty() && part.is_empty())
        && exponent.is_none_or(|exponent| !exponent.is_empty() && all_digits(exponent))
}

#[cfg(test)]
#[path = "csv_test.rs"]
mod tests;
