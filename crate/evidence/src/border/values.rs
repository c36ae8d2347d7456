//! Values across the border, as JSON that the browser parses and writes.

use std::fmt::Display;

use js_sys::JSON;
use serde::Serialize;
use serde::de::DeserializeOwned;
use wasm_bindgen::JsValue;

use super::Thrown;

/// A value as plain JavaScript objects, lists, texts and numbers: maps as objects, none as `null`.
///
/// What crosses always has that form. A map whose keys are no texts has not, and becomes `null`.
pub fn to_js<T: Serialize + ?Sized>(value: &T) -> JsValue {
    let text = serde_json::to_string(value).unwrap_or_else(|_| "null".into());
    JSON::parse(&text).unwrap_or(JsValue::NULL)
}

/// A value that the page hands over; `undefined` reads as none.
///
/// # Errors
/// A [`Thrown`] of the kind named, for a value of another form.
pub fn from_js<T: DeserializeOwned>(value: JsValue, kind: &'static str) -> Result<T, JsValue> {
    let value = if value.is_undefined() { JsValue::NULL } else { value };
    let text = JSON::stringify(&value).map(String::from)?;
    serde_json::from_str(&text).map_err(|error| thrown(kind, &error))
}

/// An error as the page catches it: a [`Thrown`].
pub fn thrown(kind: &'static str, error: &dyn Display) -> JsValue {
    to_js(&Thrown { kind, message: error.to_string() })
}
