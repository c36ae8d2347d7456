//! A table, and its forms: CSV, LaTeX, Markdown, HTML.
//!
//! A column head names the quantity and, after a slash, its unit, as quotients of quantity and unit are written
//! (SI Brochure, 9th ed., 5.4.1).

use std::fmt::Write as _;
use std::iter::once;

use super::csv::{self, TableError};
use super::escape::{html_text, latex_text, markdown_text};
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
    /// Its rows, each with one cell a column.
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
    /// Symbols, of which the part behind an underscore stands low.
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

    /// The table as a plain LaTeX `tabular`.
    pub fn to_latex(&self) -> String {
        let sides: String = self.columns.iter().map(|column| column.kind.choose('r', 'l')).collect();
        let heads = self.columns.iter().map(|column| latex_text(&column.head()));
        let mut text = format!("\\begin{{tabular}}{{{sides}}}\n\\hline\n");
        let _ = writeln!(text, "{} \\\\\n\\hline", join(heads, " & "));
        for row in &self.rows {
            let cells = self.columns.iter().zip(row).map(|(column, cell)| column.kind.latex(cell));
            let _ = writeln!(text, "{} \\\\", join(cells, " & "));
        }
        text.push_str("\\hline\n\\end{tabular}\n");
        text
    }

    /// The table as a pipe table, as Markdown has it (common practice, no source).
    pub fn to_markdown(&self) -> String {
        let line = |cells: Vec<String>| format!("| {} |\n", cells.join(" | "));
        let mut text = line(self.columns.iter().map(|column| markdown_text(&column.head())).collect());
        text += &line(self.columns.iter().map(|column| column.kind.choose("---:", ":---").into()).collect());
        for row in &self.rows {
            let cells = self.columns.iter().zip(row);
            text += &line(cells.map(|(column, cell)| column.kind.markdown(cell)).collect());
        }
        text
    }

    /// The table as an HTML fragment, with its title as caption.
    pub fn to_html(&self) -> String {
        self.to_html_struck(|_, _| false)
    }

    /// As [`Table::to_html`], with each cell of the class `struck` of which `struck` says so, by its row (from 0) and
    /// its column.
    pub fn to_html_struck(&self, struck: impl Fn(usize, &Column) -> bool) -> String {
        let mut text = format!("<table>\n<caption>{}</caption>\n<thead><tr>", html_text(&self.title));
        for column in &self.columns {
            let _ = write!(text, "<th scope=\"col\">{}</th>", html_text(&column.head()));
        }
        text.push_str("</tr></thead>\n<tbody>\n");
        for (place, row) in self.rows.iter().enumerate() {
            text.push_str("<tr>");
            for (column, cell) in self.columns.iter().zip(row) {
                let class = match (column.kind, struck(place, column)) {
                    (Kind::Number, false) => " class=\"number\"",
                    (Kind::Number, true) => " class=\"number struck\"",
                    (_, false) => "",
                    (_, true) => " class=\"struck\"",
                };
                let _ = write!(text, "<td{class}>{}</td>", column.kind.html(cell));
            }
            text.push_str("</tr>\n");
        }
        text.push_str("</tbody>\n</table>\n");
        text
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
    fn choose<T>(self, number: T, text: T) -> T {
        match self {
            Self::Number => number,
            Self::Text | Self::Symbol => text,
        }
    }

    fn html(self, cell: &str) -> String {
        self.lowered(cell, html_text, ["<sub>", "</sub>"])
    }

    fn markdown(self, cell: &str) -> String {
        self.lowered(cell, markdown_text, ["<sub>", "</sub>"])
    }

    /// A cell in LaTeX; the sign of a number is a minus there, not a hyphen.
    fn latex(self, cell: &str) -> String {
        match (self, cell.strip_prefix('-')) {
            (Self::Number, Some(size)) => format!("$-${}", latex_text(size)),
            _ => self.lowered(cell, latex_text, ["\\textsubscript{", "}"]),
        }
    }

    /// A cell as `escape` writes text, the low part of a symbol within `low`.
    fn lowered(self, cell: &str, escape: fn(&str) -> String, [open, close]: [&str; 2]) -> String {
        match (self, cell.split_once('_')) {
            (Self::Symbol, Some((letter, low))) => [&escape(letter), open, &escape(low), close].concat(),
            _ => escape(cell),
        }
    }
}

fn join(cells: impl Iterator<Item = String>, between: &str) -> String {
    cells.collect::<Vec<_>>().join(between)
}

#[cfg(test)]
#[path = "table_test.rs"]
mod tests;
