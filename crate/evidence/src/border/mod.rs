//! The border to the page, for the core's wasm and the worker's alike.
//!
//! Values cross as plain JavaScript objects, lists, texts and numbers, as serde forms them. What the page may expect of
//! them is declared in TypeScript, made from the types themselves.

#[cfg(not(target_arch = "wasm32"))]
mod declarations;
mod records;
mod written;
#[cfg(target_arch = "wasm32")]
mod values;

use serde::Serialize;

use crate::words::Value;

#[cfg(not(target_arch = "wasm32"))]
pub use declarations::Declarations;
pub use records::from_json;
#[cfg(target_arch = "wasm32")]
pub use values::{from_js, thrown, to_js, to_js_by_text};
pub use written::{to_json, to_json_lines};

/// What the page catches.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Thrown {
    /// A stable identifier of what failed.
    pub kind: &'static str,
    /// What failed and what to do, for a person; a text where a library or the browser says it.
    pub message: Value,
}
