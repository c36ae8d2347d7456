//! The wasm boundary: what the page may call. The only module that knows a browser.
//!
//! - [`desk`]: one open notebook.
//! - [`trials`]: Monte Carlo trials, shared between workers.
//! - [`shelf`]: the notebooks kept in local storage, and the settings.
//!
//! Whatever is thrown to the page is an object `{kind, message}`.

pub mod desk;
pub mod shelf;
pub mod trials;

use serde::Serialize;
use wasm_bindgen::prelude::*;

/// The version of this program.
#[wasm_bindgen]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}

/// What the page catches.
#[derive(Serialize)]
struct Thrown<'a> {
    kind: &'a str,
    message: String,
}

/// An error as the page catches it.
fn thrown(kind: &str, error: &dyn std::fmt::Display) -> JsValue {
    to_js(&Thrown { kind, message: error.to_string() })
}

/// A value as plain JavaScript objects, arrays and strings.
fn to_js<T: Serialize>(value: &T) -> JsValue {
    value.serialize(&serde_wasm_bindgen::Serializer::json_compatible()).unwrap_or(JsValue::NULL)
}
