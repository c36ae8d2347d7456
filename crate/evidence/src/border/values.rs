//! Values across the border: out of the wasm by serde-wasm-bindgen, but for what is handed over at every edit; that, and
//! what comes in, as JSON that the browser writes and parses.

use js_sys::JSON;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::{JsValue, throw_val};

use super::{Thrown, from_json, to_json};
use crate::words::Value;

/// A value as plain JavaScript objects, lists, texts and numbers: maps as objects, none as `null`.
///
/// What crosses always has that form. What has not (a map whose keys are no texts) is a slip of ours: it is thrown, and
/// does not pass for none.
pub fn to_js<T: Serialize + ?Sized>(value: &T) -> JsValue {
    value.serialize(&Serializer::json_compatible()).unwrap_or_else(|error| throw_val(error.into()))
}

/// The same by way of a text that the browser parses, for a large value that is made often.
pub fn to_js_by_text<T: Serialize + ?Sized>(value: &T) -> JsValue {
    JSON::parse(&to_json(value)).unwrap_or_else(|error| throw_val(error))
}

/// A value that the page hands over; `undefined` reads as none.
///
/// # Errors
/// A [`Thrown`] of the kind named, for a value of another form.
pub fn from_js<T: DeserializeOwned>(value: JsValue, kind: &'static str) -> Result<T, JsValue> {
    let value = if value.is_undefined() { JsValue::NULL } else { value };
    let text = JSON::stringify(&value).map(String::from)?;
    from_json(&text).map_err(|error| thrown(kind, error.to_string()))
}

/// An error as the page catches it: a [`Thrown`].
pub fn thrown(kind: &'static str, message: impl Into<Value>) -> JsValue {
    to_js(&Thrown { kind, message: message.into() })
}
