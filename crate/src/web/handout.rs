//! A notebook to be handed out.

use wasm_bindgen::prelude::*;

use super::desk::Desk;
use super::thrown;

#[wasm_bindgen]
impl Desk {
    /// Hands this notebook out, its result sealed where there is a `salt`: it becomes the hand-out, so it is a copy of which
    /// this is asked.
    ///
    /// # Errors
    /// `{kind: "edit", message}` when it was itself handed out; nothing is left of it then.
    pub fn hand_out(&mut self, salt: &str) -> Result<(), JsValue> {
        let notebook = std::mem::take(&mut self.notebook);
        let handed = notebook.hand_out(salt).map_err(|error| thrown("edit", error.message()))?;
        *self = Self::holding(handed);
        Ok(())
    }
}
