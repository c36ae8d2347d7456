//! `csv-metadata.json`: what every column of every table in a bundle means.
//!
//! Follows the W3C Recommendation "Metadata Vocabulary for Tabular Data" (17 December 2015). Descriptions are
//! Dublin Core terms; units are given as schema.org's `unitText`.

use serde::Serialize;

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

/// Properties are written in the order in which they stand here.
#[derive(Serialize)]
struct TableGroup {
    #[serde(rename = "@context")]
    context: (&'static str, Language),
    #[serde(rename = "dc:description")]
    description: &'static str,
    tables: Vec<DescribedTable>,
}

#[derive(Serialize)]
struct Language {
    #[serde(rename = "@language")]
    language: &'static str,
}

#[derive(Serialize)]
struct DescribedTable {
    url: String,
    #[serde(rename = "dc:title")]
    title: &'static str,
    #[serde(rename = "tableSchema")]
    schema: Schema,
}

#[derive(Serialize)]
struct Schema {
    columns: Vec<DescribedColumn>,
}

#[derive(Serialize)]
struct DescribedColumn {
    name: &'static str,
    titles: String,
    #[serde(rename = "dc:description")]
    description: &'static str,
    datatype: &'static str,
    #[serde(rename = "schema:unitText", skip_serializing_if = "str::is_empty")]
    unit: &'static str,
}

/// The metadata of `tables`.
pub(super) fn describe(tables: &[&Table]) -> String {
    let group = TableGroup {
        context: ("http://www.w3.org/ns/csvw", Language { language: "en" }),
        description: APOSTROPHES,
        tables: tables.iter().map(|table| describe_table(table)).collect(),
    };
    // Strings always have a JSON form.
    serde_json::to_string_pretty(&group).unwrap_or_default() + "\n"
}

fn describe_table(table: &Table) -> DescribedTable {
    DescribedTable {
        url: file_name(table),
        title: table.title,
        schema: Schema { columns: table.columns.iter().map(describe_column).collect() },
    }
}

fn describe_column(column: &Column) -> DescribedColumn {
    DescribedColumn {
        name: column.name,
        titles: column.head(),
        description: column.description,
        datatype: match column.kind {
            Kind::Number => "number",
            Kind::Text => "string",
        },
        unit: column.unit,
    }
}

#[cfg(test)]
#[path = "metadata_test.rs"]
mod tests;
