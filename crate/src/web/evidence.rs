//! Delays that come from pictures and traces.

use js_sys::Function;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

use super::canvas::draw;
use super::desk::Desk;
use super::words::PageWords;
use super::{from_js, to_js};
use crate::analysis::taken::{TakenEvidence, take};
use crate::chart::{self, Drawing, TracesPicture};
use crate::drawings::walk_picture;
use crate::notebook::{Grid, hashes_in as hashes};
use crate::view::evidence::{EvidenceView, GridLines, evidence_view, grid_lines};
use crate::words::Message;

#[wasm_bindgen]
impl Desk {
    /// Puts traces and pictures into rows, by one edit.
    ///
    /// # Errors
    /// `{kind: "edit", message}`; the notebook is then as before.
    pub fn take_evidence(
        &mut self,
        #[wasm_bindgen(unchecked_param_type = "Types.TakenEvidence[]")] all: JsValue,
        at: &str,
    ) -> Result<(), JsValue> {
        let all = from_js::<Vec<TakenEvidence>>(all, "edit")?;
        let edit = take(self.notebook.state(), &self.analysis.rows, all);
        self.do_edit(edit, at)
    }

    /// The picture or the traces of a row, with what follows from them; `null` where its delay is typed.
    #[wasm_bindgen(unchecked_return_type = "Types.EvidenceView | null")]
    pub fn evidence(&self, row: u32) -> JsValue {
        to_js::<Option<EvidenceView>>(&evidence_view(self.notebook.state(), row))
    }

    /// Draws fixed level less constant fraction against the distance; nothing where there is no walk to draw.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_walk(
        &self,
        canvas: HtmlCanvasElement,
        dark: bool,
        pixels: f64,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<(), JsValue> {
        let Some(walk) = &self.analysis.walk else { return Ok(()) };
        let picture = walk_picture(self.notebook.state(), walk);
        draw(canvas, dark, pixels, Drawing::Line(&picture), say)
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
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<(), JsValue> {
        let picture = TracesPicture::of([a, b], marks, self.notebook.state().decimal_mark);
        draw(canvas, dark, pixels, Drawing::Traces(&picture), say)
    }

    /// The same in words.
    #[wasm_bindgen(unchecked_return_type = "Types.Message[]")]
    pub fn traces_words(&self, marks: &[f64]) -> JsValue {
        let picture = TracesPicture::of([&[], &[]], marks, self.notebook.state().decimal_mark);
        to_js::<Vec<Message>>(&chart::traces_words(&picture))
    }
}

/// The lines of a grid drawn back over its picture.
///
/// # Errors
/// `{kind: "grid", message}` for an object that is no grid.
#[wasm_bindgen(unchecked_return_type = "Types.GridLines")]
pub fn lines_of_grid(
    #[wasm_bindgen(unchecked_param_type = "Types.Grid")] grid: JsValue,
) -> Result<JsValue, JsValue> {
    let grid = from_js::<Grid>(grid, "grid")?;
    Ok(to_js::<GridLines>(&grid_lines(&grid)))
}

/// The hash of every file that a text names: a notebook's own text, or some of its log.
#[wasm_bindgen]
pub fn hashes_in(text: &str) -> Vec<String> {
    hashes(text).map(str::to_owned).collect()
}
