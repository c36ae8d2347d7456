//! What every notice looks at.

use crate::analysis::context::RowContext;
use crate::analysis::rows::Rows;
use crate::analysis::types::{LineAnalysis, Speed, WalkAnalysis};
use crate::analysis::words::{listed, row_numbers};
use crate::notebook::RowId;
use crate::quantity::plain;

/// Everything the notices look at.
pub struct NoticeInput<'a> {
    /// What rows were read against.
    pub context: &'a RowContext<'a>,
    /// What the marked fields are called in whose place something else was taken.
    pub replaced: &'a [String],
    /// The rows, read.
    pub rows: &'a Rows,
    /// The line, if there is one.
    pub line: Option<&'a LineAnalysis>,
    /// The speed, if there is one.
    pub speed: Option<&'a Speed>,
    /// What a fixed level would do to v, where rows were read from traces.
    pub walk: Option<&'a WalkAnalysis>,
}

impl NoticeInput<'_> {
    /// "row 3", "rows 3 and 5": the rows by their numbers on the page.
    pub fn numbers(&self, rows: &[RowId]) -> String {
        let word = if rows.len() == 1 { "row" } else { "rows" };
        format!("{word} {}", listed(&row_numbers(self.context.page, rows)))
    }

    /// A number to so many significant digits, as the notebook writes decimals.
    pub fn figure(&self, value: f64, significant: usize) -> String {
        plain(value, significant, self.context.page.decimal_mark)
    }
}
