//! A notebook to be handed out, and data sets for it.

use slope_evidence::row_truth::RowTruth;
use wasm_bindgen::prelude::*;

use super::desk::Desk;
use super::{from_js, thrown, to_js, to_json};
use crate::notebook::PlannedPosition;
use crate::plan::rehearsal::{SetForm, data_set};
use crate::view::Figure;
use crate::view::plan::truth_figures;

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

    /// A data set on the same bench, with the positions planned, drawn from a secret.
    ///
    /// # Errors
    /// `{kind: "plan", message}` when there is no bench to draw on yet.
    pub fn data_set(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Types.PlannedPosition[]")] planned: JsValue,
        secret: &str,
        #[wasm_bindgen(unchecked_param_type = "Types.SetForm")] form: JsValue,
    ) -> Result<DataSet, JsValue> {
        let page = self.notebook.state();
        let planned = from_js::<Vec<PlannedPosition>>(planned, "plan")?;
        let set = data_set(page, page.title.clone(), planned, secret, from_js::<SetForm>(form, "plan")?)
            .map_err(|refusal| thrown("plan", refusal.message))?;
        Ok(DataSet { edit: to_json(&set.edit), rows: set.rows, truth: truth_figures(page, &set.truth) })
    }
}

/// A data set, and what is really so in it.
#[wasm_bindgen]
pub struct DataSet {
    edit: String,
    rows: Vec<RowTruth>,
    truth: Vec<Figure>,
}

#[wasm_bindgen]
impl DataSet {
    /// The text of the edit that is all of its notebook, but for pictures and traces.
    pub fn edit(&self) -> String {
        self.edit.clone()
    }

    /// What is really so at each row.
    #[wasm_bindgen(unchecked_return_type = "Types.RowTruth[]")]
    pub fn rows(&self) -> JsValue {
        to_js::<Vec<RowTruth>>(&self.rows)
    }

    /// What is really so in all of it: c₀, t₀, then each error.
    #[wasm_bindgen(unchecked_return_type = "Types.Figure[]")]
    pub fn truth(&self) -> JsValue {
        to_js::<Vec<Figure>>(&self.truth)
    }
}
