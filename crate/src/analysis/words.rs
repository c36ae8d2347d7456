//! Rows by their numbers on the page.

use crate::notebook::{NotebookState, RowId};

/// The numbers on the page, from 1, of the rows named.
pub fn row_numbers(page: &NotebookState, rows: &[RowId]) -> Vec<usize> {
    rows.iter().filter_map(|id| page.rows.iter().position(|row| row.id == *id)).map(|i| i + 1).collect()
}
