//! The page's table of words, for what is put into words here: the report, and the charts in it.

use js_sys::Function;
use wasm_bindgen::prelude::*;

use super::to_js;
use crate::words::{Message, Words};

/// The page's own way to put a message into words.
pub(super) struct PageWords<'f>(pub &'f Function);

impl Words for PageWords<'_> {
    /// The text of a message; its identifier where the page has none, so that the slip is seen and nothing else is lost.
    fn say(&self, message: &Message) -> String {
        let said = self.0.call1(&JsValue::NULL, &to_js(message));
        said.ok().and_then(|text| text.as_string()).unwrap_or_else(|| message.id.to_owned())
    }
}
