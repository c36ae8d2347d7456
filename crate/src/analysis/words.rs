//! Rows in words: their numbers on the page, listed as one says them.

use crate::notebook::{NotebookState, RowId};

/// The numbers on the page, from 1, of the rows named.
pub fn row_numbers(page: &NotebookState, rows: &[RowId]) -> Vec<usize> {
    rows.iter().filter_map(|id| page.rows.iter().position(|row| row.id == *id)).map(|i| i + 1).collect()
}

/// "1", "1 and 2", "1, 2 and 3".
pub fn listed(numbers: &[usize]) -> String {
    let texts: Vec<String> = numbers.iter().map(ToString::to_string).collect();
    match texts.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} and {last}", rest.join(", ")),
    }
}
