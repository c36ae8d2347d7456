//! Bundles that are packed entry by entry, where all entries together are too much to lie here.

use slope_archive::Entry;
use slope_evidence::border::thrown;
use wasm_bindgen::prelude::*;

use crate::refusals::archive;

/// A bundle on the way: its bytes are what `add` gives, in turn, and then `end`.
#[wasm_bindgen]
pub struct Packing(slope_archive::Packing);

#[wasm_bindgen]
impl Packing {
    /// Begins one.
    ///
    /// # Errors
    /// `{kind: "bundle", message}`.
    pub fn begin() -> Result<Packing, JsValue> {
        slope_archive::Packing::begin().map(Packing).map_err(|error| thrown("bundle", archive(&error)))
    }

    /// The next bytes, with an entry in them.
    ///
    /// # Errors
    /// `{kind: "bundle", message}`, naming the entry.
    #[wasm_bindgen(unchecked_return_type = "Uint8Array<ArrayBuffer>")]
    pub fn add(&mut self, name: String, bytes: Vec<u8>) -> Result<Vec<u8>, JsValue> {
        self.0.add(&Entry { name, bytes }).map_err(|error| thrown("bundle", archive(&error)))
    }

    /// The last bytes.
    ///
    /// # Errors
    /// `{kind: "bundle", message}`.
    #[wasm_bindgen(unchecked_return_type = "Uint8Array<ArrayBuffer>")]
    pub fn end(self) -> Result<Vec<u8>, JsValue> {
        self.0.end().map_err(|error| thrown("bundle", archive(&error)))
    }
}
