//! `csv-metadata.json`: what every column of every table in a bundle means.
//!
//! Follows the W3C Recommendation "Metadata Vocabulary for Tabular Data" (17 December 2015). Descriptions are
//! Dublin Core terms; units are given as schema.org's `unitText`.

use serde::Serialize;
use slope_evidence::border::to_json_lines;

use crate::message;
use crate::report::{Column, Kind, Table};
use crate::words::Words;

/// The name under which a reader looks for the metadata of the CSV files beside it (W3C, "Model for Tabular Data
/// and Metadata on the Web", 5.3).
pub const METADATA: &str = "csv-metadata.json";

/// The file of a table.
pub(super) fn file_name(table: &Table) -> String {
    format!("{}.csv", table.name)
}

/// Properties are written in the order in which they stand here.
#[derive(Serialize)]
struct TableGroup {
    #[serde(rename = "@context")]
    context: (&'static str, Language),
    /// What a reader of the tables has to know: [`crate::report::csv`].
    #[serde(rename = "dc:description")]
    description: String,
    tables: Vec<DescribedTable>,
}

#[derive(Serialize)]
struct Language {
    #[serde(rename = "@language")]
    language: String,
}

#[derive(Serialize)]
struct DescribedTable {
    url: String,
    #[serde(rename = "dc:title")]
    title: String,
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
    #[serde(rename = "dc:description", skip_serializing_if = "Option::is_none")]
    description: Option<String>,
    datatype: &'static str,
    #[serde(rename = "schema:unitText", skip_serializing_if = "str::is_empty")]
    unit: &'static str,
}

/// The metadata of `tables`, in the words in which they are written.
pub(super) fn describe(tables: &[Table], words: &dyn Words) -> String {
    let group = TableGroup {
        context: ("http://www.w3.org/ns/csvw", Language { language: words.say(&message!("language")) }),
        description: words.say(&message!("tables-note")),
        tables: tables.iter().map(describe_table).collect(),
    };
    to_json_lines(&group) + "\n"
}

fn describe_table(table: &Table) -> DescribedTable {
    DescribedTable {
        url: file_name(table),
        title: table.title.clone(),
        schema: Schema { columns: table.columns.iter().map(describe_column).collect() },
    }
}

fn describe_column(column: &Column) -> DescribedColumn {
    DescribedColumn {
        name: column.name,
        titles: column.head(),
        description: column.description.clone(),
        datatype: match column.kind {
            Kind::Number => "number",
            Kind::Text | Kind::Symbol => "string",
        },
        unit: column.unit,
    }
}

#[cfg(test)]
#[path = "metadata_test.rs"]
mod tests;
