//! `csv-metadata.json`: what every column of every table in a bundle means.
//!
//! Follows the W3C Recommendation "Metadata Vocabulary for Tabular Data" (17 December 2015). Descriptions are
//! Dublin Core terms; units are given as schema.org's `unitText`.

use serde_json::{Value, json};

use crate::report::{Column, Kind, Table};

/// The name under which a reader looks for the metadata of the CSV files beside it (W3C, "Model for Tabular Data
/// and Metadata on the Web", 5.3).
pub const METADATA: &str = "csv-metadata.json";

/// What a reader of the tables has to know of the rule in [`crate::report::csv`].
const APOSTROPHES: &str = "So that no spreadsheet runs a text as a formula, an apostrophe stands before a text \
    that starts like one or with an apostrophe, also after a semicolon, a tab or a line end inside a cell. \
    Leave out one apostrophe at each of these places to have the text as it was typed.";

/// The file of a table.
pub(super) fn file_name(table: &Table) -> String {
    format!("{}.csv", table.name)
}

/// The metadata of `tables`.
pub(super) fn describe(tables: &[&Table]) -> String {
    let tables: Vec<Value> = tables.iter().map(|table| describe_table(table)).collect();
    let group = json!({
        "@context": ["http://www.w3.org/ns/csvw", { "@language": "en" }],
        "dc:description": APOSTROPHES,
        "tables": tables,
    });
    format!("{group:#}\n")
}

fn describe_table(table: &Table) -> Value {
    let columns: Vec<Value> = table.columns.iter().map(describe_column).collect();
    json!({
        "url": file_name(table),
        "dc:title": table.title,
        "tableSchema": { "columns": columns },
    })
}

fn describe_column(column: &Column) -> Value {
    let datatype = match column.kind {
        Kind::Number => "number",
        Kind::Text => "string",
    };
    let mut described = json!({
        "name": column.name,
        "titles": column.head(),
        "dc:description": column.description,
        "datatype": datatype,
    });
    if !column.unit.is_empty() {
        described["schema:unitText"] = column.unit.into();
    }
    described
}

#[cfg(test)]
#[path = "metadata_test.rs"]
mod tests;
