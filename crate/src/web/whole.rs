//! What sections need that are not in sight when the page opens: the plan, pictures and traces.
//!
//! The page opens on a core without them, and changes to the whole one when they are asked for.

use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

use super::desk::{Desk, draw};
use super::{thrown, to_js};
use crate::analysis::taken::{Taken, take};
use crate::chart::{self, TracesPicture};
use crate::notebook::{Grid, hashes_in as hashes};
use crate::plan::{To, rehearsal};
use crate::report::pictures::walk_picture;
use crate::view::evidence::{evidence_view, grid_lines};
use crate::view::plan::{move_view, plan_view, truth_view};
use crate::view::row_work::row_work;

#[wasm_bindgen]
impl Desk {
    /// How a row was worked out: its figures, each with its formula.
    pub fn row_work(&self, row: u32) -> JsValue {
        to_js(&row_work(self.notebook.page(), &self.analysis, row))
    }

    /// Puts measured traces (a list of `{row, rail, reading, traces}`) into rows, by one edit.
    ///
    /// # Errors
    /// `{kind: "edit", message}`; the notebook is then as before.
    pub fn take_traces(&mut self, all: &JsValue, at: &str) -> Result<(), JsValue> {
        let text = String::from(js_sys::JSON::stringify(all)?);
        let all: Vec<Taken> = serde_json::from_str(&text).map_err(|error| thrown("edit", &error))?;
        let edit = take(self.notebook.page(), &self.analysis.rows, all);
        self.do_edit(edit, at)
    }

    /// The picture or the traces of a row, with what follows from them; `null` where its delay is typed.
    pub fn evidence(&self, row: u32) -> JsValue {
        to_js(&evidence_view(self.notebook.page(), row))
    }

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

    /// Draws fixed level less constant fraction against the distance; nothing where there is no walk to draw.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_walk(&self, canvas: HtmlCanvasElement, dark: bool, pixels: f64) -> Result<(), JsValue> {
        let Some(walk) = &self.analysis.walk else { return Ok(()) };
        let picture = walk_picture(self.notebook.page(), walk);
        draw(canvas, dark, pixels, |area, theme| chart::line(area, &picture, theme))
    }

    /// Draws two recorded traces, given as [`chart::TracesPicture::of`] takes them.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_traces(
        &self,
        canvas: HtmlCanvasElement,
        dark: bool,
        pixels: f64,
        a: &[f64],
        b: &[f64],
        marks: &[f64],
    ) -> Result<(), JsValue> {
        let picture = TracesPicture::of([a, b], marks, self.notebook.page().decimal_mark);
        draw(canvas, dark, pixels, |area, theme| chart::traces(area, &picture, theme))
    }

    /// The same in words.
    pub fn traces_words(&self, marks: &[f64]) -> String {
        chart::traces_words(&TracesPicture::of([&[], &[]], marks, self.notebook.page().decimal_mark))
    }
}

/// The lines of a grid, given as an object, drawn back over its picture.
///
/// # Errors
/// `{kind: "grid", message}` for an object that is no grid.
#[wasm_bindgen]
pub fn lines_of_grid(grid: &JsValue) -> Result<JsValue, JsValue> {
    let text = String::from(js_sys::JSON::stringify(grid)?);
    let grid: Grid = serde_json::from_str(&text).map_err(|error| thrown("grid", &error))?;
    Ok(to_js(&grid_lines(&grid)))
}

/// The hash of every file that a text names: a notebook's own text, or some of its log.
#[wasm_bindgen]
pub fn hashes_in(text: &str) -> Vec<String> {
    hashes(text).map(str::to_owned).collect()
}
