//! The run played back.

use wasm_bindgen::prelude::*;

use super::desk::Desk;
use super::{thrown, to_js};
use crate::notebook::{LogStep, after_steps, steps};

#[wasm_bindgen]
impl Desk {
    /// The steps of the log; under a closed seal none from before it.
    #[wasm_bindgen(unchecked_return_type = "Types.LogStep[]")]
    pub fn steps(&self) -> JsValue {
        to_js::<Vec<LogStep>>(&steps(&self.notebook))
    }

    /// The notebook as it was after so many of them.
    ///
    /// # Errors
    /// `{kind: "edit", message}` when the log does not replay that far.
    pub fn after_steps(&self, count: usize) -> Result<Desk, JsValue> {
        after_steps(&self.notebook, count).map(Self::holding).map_err(|error| thrown("edit", error.message()))
    }
}
