//! The wasm boundary: what the page may call. The only module that knows a browser.
//!
//! - `canvas`: where drawings go.
//! - [`desk`]: one open notebook.
//! - `evidence`: delays that come from pictures and traces.
//! - `plan`: the plan, and rehearsals.
//! - [`trials`]: Monte Carlo trials, shared between workers.
//! - [`shelf`]: the notebooks kept in local storage, and the settings.
//!
//! Whatever is thrown to the page is an object `{kind, message}`.

mod canvas;
pub mod trials;
pub mod desk;
mod plan;
mod evidence;
pub mod shelf;

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

/// A value as plain JavaScript objects, arrays and strings: through JSON, which browsers read faster than they make
/// objects one by one at our bidding, and whose writer is here already.
fn to_js<T: Serialize>(value: &T) -> JsValue {
    from_json(&to_json(value))
}

/// A value as JSON. What crosses the boundary are strings, numbers, lists and records, which always have that form.
fn to_json<T: Serialize>(value: &T) -> String {
    serde_json::to_string(value).unwrap_or_else(|_| "null".into())
}

fn from_json(text: &str) -> JsValue {
    js_sys::JSON::parse(text).unwrap_or(JsValue::NULL)
}
