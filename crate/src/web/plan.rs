//! The plan, and rehearsals of it.

use wasm_bindgen::prelude::*;

use super::desk::Desk;
use super::{from_js, thrown, to_js};
use crate::notebook::PlannedPosition;
use crate::plan::To;
use crate::plan::rehearsal::rehearsal;
use crate::view::plan::{move_view, plan_view, truth_view};
use crate::view::{Figure, PlanView, ProposedView};

#[wasm_bindgen]
impl Desk {
    /// The plan: what the run is expected to give, what limits it and what would help.
    #[wasm_bindgen(unchecked_return_type = "Types.PlanView")]
    pub fn plan(&self) -> JsValue {
        to_js::<PlanView>(&plan_view(self.notebook.state(), &self.analysis))
    }

    /// What the handle of a planned position shows at a share (0 … 1) of its rail. Changes nothing.
    #[wasm_bindgen(unchecked_return_type = "Types.ProposedView")]
    pub fn at_share(&self, position: u32, share: f64) -> JsValue {
        to_js::<ProposedView>(&move_view(self.notebook.state(), position, To::Share(share)))
    }

    /// What it shows so many round readings farther out. Changes nothing.
    #[wasm_bindgen(unchecked_return_type = "Types.ProposedView")]
    pub fn at_steps(&self, position: u32, steps: f64) -> JsValue {
        to_js::<ProposedView>(&move_view(self.notebook.state(), position, To::Steps(steps)))
    }

    /// The notebook of a rehearsal: the same bench, the positions planned, and readings drawn from a seed, at the time `at`
    /// (RFC 3339).
    ///
    /// # Errors
    /// `{kind: "plan", message}` when there is no bench to rehearse on yet.
    pub fn rehearsal(
        &self,
        title: String,
        #[wasm_bindgen(unchecked_param_type = "Types.PlannedPosition[]")] planned: JsValue,
        seed: u32,
        at: &str,
    ) -> Result<Desk, JsValue> {
        let planned = from_js::<Vec<PlannedPosition>>(planned, "plan")?;
        let edit = rehearsal(self.notebook.state(), title, planned, seed)
            .map_err(|refusal| thrown("plan", refusal.message))?;
        let mut desk = Desk::blank();
        desk.do_edit(edit, at)?;
        Ok(desk)
    }

    /// What was really so in a rehearsal; nothing in any other notebook.
    #[wasm_bindgen(unchecked_return_type = "Types.Figure[]")]
    pub fn truth(&self) -> JsValue {
        to_js::<Vec<Figure>>(&truth_view(&self.notebook))
    }
}
