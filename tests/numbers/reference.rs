//! Reading the files in `reference/`, and comparing with them.
#![expect(clippy::panic, reason = "a test stops where its data are wrong")]

use std::fmt::Display;

use serde_json::Value;

/// One file of published values.
pub fn read(name: &str) -> Value {
    let path = format!("{}/../tests/numbers/reference/{name}", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// The elements of a list, of which there must be some.
pub fn rows(list: &Value) -> &[Value] {
    match list.as_array() {
        Some(rows) if !rows.is_empty() => rows,
        _ => panic!("a list with rows was expected, not {list}"),
    }
}

/// A number.
pub fn sole(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("a number, not {value}"))
}

/// The numbers of a list, which may be empty.
pub fn numbers(list: &Value) -> Vec<f64> {
    let list = list.as_array().unwrap_or_else(|| panic!("a list of numbers, not {list}"));
    list.iter().map(sole).collect()
}

/// A named number of an object.
pub fn number(object: &Value, name: &str) -> f64 {
    object[name].as_f64().unwrap_or_else(|| panic!("no number {name} in {object}"))
}

/// Relative, without an absolute floor: `expected` zero asks for zero.
#[track_caller]
pub fn assert_close(found: f64, expected: f64, relative: f64, place: impl Display) {
    let allowed = expected.abs() * relative;
    assert!(
        (found - expected).abs() <= allowed,
        "{place}: found {found:e}, expected {expected:e}, relative difference {:e} > {relative:e}",
        (found - expected).abs() / expected.abs()
    );
}
