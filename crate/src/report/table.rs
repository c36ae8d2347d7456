//! A table, and its form for programs, CSV; [`super::html`], [`super::latex`] and [`super::markdown`] write the others.
//!
//! A column head names the quantity and, after a slash, its unit, as quotients of quantity and unit are written
//! (SI Brochure, 9th ed., 5.4.1).

use std::iter::once;

use super::csv::{self, TableError};
use crate::words::{Message, Words};

/// A table with described columns.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// Short name: the CSV file of this table is called `{name}.csv`.
    pub name: &'static str,
    /// What the table shows, in a few words.
    pub title: String,
    /// Its columns.
    pub columns: Vec<Column>,
    /// Its rows, each with one cell a column; beside people's tables, too, rows of one cell alone, which reaches over all.
    pub rows: Vec<Vec<String>>,
}

/// One column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// Name for programs: lower-case letters, digits and underscores, with the unit where there is one.
    pub name: &'static str,
    /// Name for people, without the unit.
    pub title: String,
    /// Unit; empty for words and for pure numbers.
    pub unit: &'static str,
    /// What the cells hold.
    pub kind: Kind,
    /// What the column means, in a sentence, where programs are told.
    pub description: Option<String>,
}

/// A column before it is put into words; the fields are those of [`Column`].
pub(super) struct UnsaidColumn {
    pub name: &'static str,
    pub title: Message,
    pub unit: &'static str,
    pub kind: Kind,
    pub description: Option<Message>,
}

/// Columns in the words of a table of words.
pub(super) fn columns(all: &[UnsaidColumn], words: &dyn Words) -> Vec<Column> {
    let said = all.iter().map(|UnsaidColumn { name, title, unit, kind, description }| Column {
        name,
        title: words.say(title),
        unit,
        kind: *kind,
        description: description.as_ref().map(|description| words.say(description)),
    });
    said.collect()
}

/// What the cells of a column hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Numbers with a decimal point, or nothing.
    Number,
    /// Text.
    Text,
    /// Symbols, of which the part behind an underscore stands low, up to a factor.
    Symbol,
}

impl Column {
    /// The head of the column, with its unit.
    pub fn head(&self) -> String {
        if self.unit.is_empty() { self.title.clone() } else { format!("{} / {}", self.title, self.unit) }
    }
}

impl Table {
    /// The table as CSV (RFC 4180, with the heads in the first record), safe to open in a spreadsheet.
    ///
    /// # Errors
    /// A row that has not one cell a column.
    pub fn to_csv(&self) -> Result<String, TableError> {
        let heads: Vec<String> = self.columns.iter().map(Column::head).collect();
        let records: Vec<&[String]> = once(&heads).chain(&self.rows).map(Vec::as_slice).collect();
        csv::write_csv(&records)
    }

    /// What a row says over all columns, if it is such a row.
    pub(super) fn over_all<'a>(&self, row: &'a [String]) -> Option<&'a str> {
        match row {
            [text] if self.columns.len() > 1 => Some(text),
            _ => None,
        }
    }

    /// The table without those of the named columns in which no row has anything.
    #[must_use]
    pub fn without_empty(mut self, names: &[&str]) -> Self {
        for name in names {
            let Some(place) = self.columns.iter().position(|known| known.name == *name) else { continue };
            if self.rows.iter().all(|row| row.get(place).is_none_or(String::is_empty)) {
                self.columns.remove(place);
                for row in self.rows.iter_mut().filter(|row| row.len() > place) {
                    row.remove(place);
                }
            }
        }
        self
    }

    /// The cells of one column, by its name for programs.
    pub fn cells(&self, column: &str) -> Vec<&str> {
        let place = self.columns.iter().position(|known| known.name == column);
        place.map_or_else(Vec::new, |place| {
            self.rows.iter().filter_map(|row| row.get(place)).map(String::as_str).collect()
        })
    }
}

impl Kind {
    /// A cell as `written` writes text, the low part of a symbol, up to a factor behind it, within `low`.
    pub(super) fn lowered(self, cell: &str, written: fn(&str) -> String, [open, close]: [&str; 2]) -> String {
        match (self, cell.split_once('_')) {
            (Self::Symbol, Some((letter, rest))) => {
                let (low, factor) = rest.split_at(rest.find('·').unwrap_or(rest.len()));
                [&written(letter), open, &written(low), close, &written(factor)].concat()
            }
            _ => written(cell),
        }
    }
}

#[cfg(test)]
#[path = "table_test.rs"]
mod tests;
