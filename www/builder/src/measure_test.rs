//! Names of rows, as people give them to `cargo measure`.

use super::{ROWS, chosen};

fn named(names: &[&str]) -> Result<Vec<&'static str>, String> {
    let names: Vec<String> = names.iter().map(|name| (*name).to_owned()).collect();
    let rows = chosen(&names).map_err(|error| error.to_string())?;
    Ok(rows.into_iter().map(|(name, _)| name).collect())
}

#[test]
fn no_name_stands_for_every_row() {
    assert_eq!(named(&[]), Ok(ROWS.map(|(name, _)| name).to_vec()));
}

#[test]
fn rows_come_in_their_own_order() {
    assert_eq!(named(&["save_edit_ms", "wasm_gzip_bytes"]), Ok(vec!["wasm_gzip_bytes", "save_edit_ms"]));
}

#[test]
fn a_name_of_no_row_is_refused_with_those_there_are() {
    let refusal = named(&["wasm_gzip_bytes", "wasm_gzip"]).err().unwrap_or_default();
    assert!(refusal.starts_with("there is no row \"wasm_gzip\"; there are wasm_gzip_bytes, "), "{refusal}");
    assert!(ROWS.last().is_some_and(|(last, _)| refusal.ends_with(&format!(", {last}"))), "{refusal}");
}
