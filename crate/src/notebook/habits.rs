//! What a row goes on with from the rows before it.

use super::state::{Cell, Row};

/// Rail and time base that a row behind these goes on with where it states none of its own: those of the nearest row
/// that is not struck out and states one. Only such as there are.
pub fn habits(before: &[Row]) -> impl Iterator<Item = (Cell, &str)> {
    [Cell::Rail, Cell::TimeBase].into_iter().filter_map(|cell| {
        let texts = before.iter().rev().filter(|row| row.struck.is_none()).map(|row| row.text(cell));
        texts.map(str::trim).find(|text| !text.is_empty()).map(|text| (cell, text))
    })
}

#[cfg(test)]
#[path = "habits_test.rs"]
mod tests;
