//! What every notice looks at.

use crate::analysis::context::RowContext;
use crate::analysis::diagnosis::Found;
use crate::analysis::rows::{Rows, Typed};
use crate::analysis::types::{LineAnalysis, Speed, WalkAnalysis};
use crate::notebook::RowId;
use crate::quantity::{fixed, plain};
use crate::words::Message;

/// Everything the notices look at.
pub struct NoticeInput<'a> {
    /// What rows were read against.
    pub context: &'a RowContext<'a>,
    /// What the marked fields are called in whose place something else was taken.
    pub replaced: &'a [Message],
    /// The rows, read.
    pub rows: &'a Rows,
    /// The line, if there is one.
    pub line: Option<&'a LineAnalysis>,
    /// The speed, if there is one.
    pub speed: Option<&'a Speed>,
    /// What went wrong, as far as the readings tell it.
    pub found: &'a [Found],
    /// Whether that was not looked for, since too many rows vary together.
    pub undiagnosed: bool,
    /// What a fixed level would do to v, where rows were read from traces.
    pub walk: Option<&'a WalkAnalysis>,
}

impl NoticeInput<'_> {
    /// What was typed into the rows that are not struck.
    pub fn typed(&self) -> impl Iterator<Item = &Typed> {
        let is_struck = |id| self.context.page.row(id).is_some_and(|row| row.struck.is_some());
        self.rows.typed.iter().filter(move |typed| !is_struck(typed.row))
    }

    /// The numbers of rows on the page, to be listed.
    pub fn numbers(&self, rows: &[RowId]) -> Vec<usize> {
        self.context.page.row_numbers(rows)
    }

    /// A number to so many significant digits, as the notebook writes decimals.
    pub fn figure(&self, value: f64, significant: usize) -> String {
        plain(value, significant, self.context.page.decimal_mark)
    }

    /// A number to a place (the power of ten of its last digit), as the notebook writes decimals.
    pub fn fixed(&self, value: f64, place: i32) -> String {
        fixed(value, place, self.context.page.decimal_mark)
    }
}
