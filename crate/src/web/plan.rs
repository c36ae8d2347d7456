//! The plan, and rehearsals of it.

use wasm_bindgen::prelude::*;

use super::desk::Desk;
use super::{thrown, to_js};
use crate::plan::{To, rehearsal};
use crate::view::plan::{move_view, plan_view, truth_view};

#[wasm_bindgen]
impl Desk {
    /// The plan: what the run is expected to give, what limits it and what would help.
    pub fn plan(&self) -> JsValue {
        to_js(&plan_view(self.notebook.page(), &self.analysis))
    }

    /// What the handle of a planned position shows at a share (0 … 1) of its rail. Changes nothing.
    pub fn at_share(&self, position: u32, share: f64) -> JsValue {
        to_js(&move_view(self.notebook.page(), position, To::Share(share)))
    }

    /// What it shows so many round readings farther out. Changes nothing.
    pub fn at_steps(&self, position: u32, steps: f64) -> JsValue {
        to_js(&move_view(self.notebook.page(), position, To::Steps(steps)))
    }

    /// Readings of the plan simulated on a copy of the bench: rail, reading, time base and both edges of each row.
    ///
    /// # Errors
    /// `{kind: "plan", message}` when there is no bench to rehearse on yet.
    pub fn rehearse(&self, seed: u32) -> Result<JsValue, JsValue> {
        let rows = rehearsal::rehearse(self.notebook.page(), seed);
        rows.map(|rows| to_js(&rows)).map_err(|refusal| thrown("plan", &refusal.message))
    }

    /// What was really so in a rehearsal; nothing in any other notebook.
    pub fn truth(&self) -> JsValue {
        to_js(&truth_view(&self.notebook))
    }
}
