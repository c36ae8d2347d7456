//! JSON written. What this program makes always has that form; a value that had not would be a slip of ours, and must not
//! pass for an empty text where a notebook is stored.

use serde::Serialize;

/// A value as the text of a JSON document (RFC 8259), in one line.
///
/// # Panics
/// At a value without such a form: a map whose keys are no texts.
///
/// # Example
/// ```
/// use slope_evidence::border::to_json;
/// assert_eq!(to_json(&("a", [1, 2])), r#"["a",[1,2]]"#);
/// ```
pub fn to_json<T: Serialize + ?Sized>(value: &T) -> String {
    written(serde_json::to_string(value))
}

/// The same over several lines, each indented.
///
/// # Panics
/// As [`to_json`] does.
pub fn to_json_lines<T: Serialize + ?Sized>(value: &T) -> String {
    written(serde_json::to_string_pretty(value))
}

#[expect(
    clippy::panic,
    reason = "nothing that a person or a file does leads here, and to go on would lose work"
)]
fn written(text: serde_json::Result<String>) -> String {
    text.unwrap_or_else(|error| panic!("a value that has no JSON form: {error}"))
}

#[cfg(test)]
#[path = "written_test.rs"]
mod tests;
