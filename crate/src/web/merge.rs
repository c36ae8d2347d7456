//! A partner's notebook, to be merged.

use wasm_bindgen::prelude::*;

use super::desk::Desk;
use super::{thrown, to_js_by_text};
use crate::notebook::Merge;

#[wasm_bindgen]
impl Desk {
    /// What a partner's notebook would bring into this one. Changes nothing.
    ///
    /// # Errors
    /// `{kind: "merge", message}`.
    #[wasm_bindgen(unchecked_return_type = "Types.Merge")]
    pub fn merge(&self, partner: &Desk) -> Result<JsValue, JsValue> {
        let merge = self.notebook.merge(&partner.notebook);
        merge.map(|merge| to_js_by_text::<Merge>(&merge)).map_err(|error| thrown("merge", error.message()))
    }
}
