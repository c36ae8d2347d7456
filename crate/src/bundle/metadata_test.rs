#![expect(clippy::unwrap_used, reason = "tests")]

use serde_json::Value;

use super::*;
use crate::report::exact::{fit_table, residuals_table};
use crate::report::sample::english;

fn described() -> Value {
    serde_json::from_str(&describe(
        &[residuals_table(&[], &english()), fit_table(&[], &english())],
        &english(),
    ))
    .unwrap()
}

#[test]
fn it_says_what_it_is_and_names_the_files() {
    // W3C, "Metadata Vocabulary for Tabular Data", 5.2 (top-level properties) and 5.3 (table groups).
    let metadata = described();
    assert_eq!(metadata["@context"][0], "http://www.w3.org/ns/csvw");
    let urls: Vec<&Value> =
        metadata["tables"].as_array().unwrap().iter().map(|table| &table["url"]).collect();
    assert_eq!(urls, ["residuals.csv", "line.csv"]);
}

#[test]
fn titles_are_the_heads_of_the_csv() {
    // The same, 5.6: a column's title is compatible with the file if it is the head there.
    let metadata = described();
    let heads = residuals_table(&[], &english()).to_csv().unwrap();
    let titles: Vec<&str> = metadata["tables"][0]["tableSchema"]["columns"]
        .as_array()
        .unwrap()
        .iter()
        .map(|column| column["titles"].as_str().unwrap())
        .collect();
    assert_eq!(heads, titles.join(",") + "\r\n");
}

#[test]
fn names_are_unique_and_of_the_permitted_letters() {
    // The same, 5.6: a name is a URI template variable (RFC 6570, 2.3) and does not start with an underscore.
    let metadata = described();
    for table in metadata["tables"].as_array().unwrap() {
        let columns = table["tableSchema"]["columns"].as_array().unwrap();
        let mut names: Vec<&str> = columns.iter().map(|column| column["name"].as_str().unwrap()).collect();
        for name in &names {
            assert!(name.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'_'), "{name}");
            assert!(!name.starts_with('_'), "{name}");
        }
        let count = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), count);
    }
}

#[test]
fn every_column_is_described_and_has_a_datatype() {
    // The same, 5.11.1: "number" and "string" are built-in datatypes.
    for table in described()["tables"].as_array().unwrap() {
        for column in table["tableSchema"]["columns"].as_array().unwrap() {
            assert!(!column["dc:description"].as_str().unwrap().is_empty());
            assert!(["number", "string"].contains(&column["datatype"].as_str().unwrap()));
        }
    }
    let delay = &described()["tables"][0]["tableSchema"]["columns"][3];
    assert_eq!(delay["schema:unitText"], "ns");
}
