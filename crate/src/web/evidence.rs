//! Delays that come from pictures and traces.

use js_sys::Function;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

use super::canvas::draw;
use super::desk::Desk;
use super::words::PageWords;
use super::{from_js, to_js, to_js_by_text};
use crate::analysis::taken::{TakenEvidence, take};
use crate::chart::{self, Drawing, PlotTable, TracePicture, TracesPicture};
use crate::drawings::{traces_chart, walk_chart, walk_picture};
use crate::notebook::{EdgeHeights, Grid, hashes_in as hashes};
use crate::view::evidence::{EvidenceView, GridLines, evidence_view, grid_lines, level_lines};
use crate::words::Message;

/// Where the page says what was found on a trace. Plain numbers, since the core has no reader of doubles in JSON.
#[wasm_bindgen(typescript_custom_section)]
const MARKS: &str =
    "/** What was found on a trace: its pulse, V, and the edge of that, V and ns; nothing of what was not. */
export type TraceMarks = [] | [baseline: number, top: number]
  | [baseline: number, top: number, level: number, edge: number, uncertainty: number];";

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
        to_js_by_text::<Option<EvidenceView>>(&evidence_view(self.notebook.state(), row))
    }

    /// Draws fixed level less constant fraction against the distance; nothing where there is no walk to draw.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_walk(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "Paper")] paper: &str,
        pixels: f64,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<(), JsValue> {
        let Some(walk) = &self.analysis.walk else { return Ok(()) };
        let picture = walk_picture(self.notebook.state(), walk);
        draw(canvas, paper, pixels, Drawing::Line(&picture), say)
    }

    /// The same as SVG, at the size of the report's plots; nothing where there is no walk.
    pub fn walk_svg(
        &self,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Option<String> {
        let walk = self.analysis.walk.as_ref()?;
        Some(walk_chart(self.notebook.state(), walk, &PageWords(say)))
    }

    /// The same as a table; `null` where there is no walk.
    #[wasm_bindgen(unchecked_return_type = "Types.PlotTable | null")]
    pub fn walk_table(&self) -> JsValue {
        let picture = self.analysis.walk.as_ref().map(|walk| walk_picture(self.notebook.state(), walk));
        to_js::<Option<PlotTable>>(&picture.as_ref().map(chart::walk_table))
    }

    /// The levels at which the edges of a picture are timed, drawn over it.
    ///
    /// # Errors
    /// `{kind: "grid", message}` for an object that is no grid, or no heights.
    #[wasm_bindgen(unchecked_return_type = "Types.GridLines")]
    pub fn lines_of_levels(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Types.Grid")] grid: JsValue,
        #[wasm_bindgen(unchecked_param_type = "Types.EdgeHeights")] heights: JsValue,
    ) -> Result<JsValue, JsValue> {
        let (grid, heights) = (from_js::<Grid>(grid, "grid")?, from_js::<EdgeHeights>(heights, "grid")?);
        Ok(to_js::<GridLines>(&level_lines(self.notebook.state(), &grid, &heights)))
    }

    /// Draws two recorded traces from a time to another, ns, given as [`TracePicture::of`] takes them.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_traces(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "Paper")] paper: &str,
        pixels: f64,
        from: f64,
        to: f64,
        a: &[f64],
        b: &[f64],
        #[wasm_bindgen(unchecked_param_type = "TraceMarks")] marks_a: &[f64],
        #[wasm_bindgen(unchecked_param_type = "TraceMarks")] marks_b: &[f64],
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<(), JsValue> {
        let traces = [TracePicture::of(a, marks_a), TracePicture::of(b, marks_b)];
        let picture = self.traces_picture([from, to], traces);
        draw(canvas, paper, pixels, Drawing::Traces(&picture), say)
    }

    /// The same as SVG, at the size of the report's plots.
    pub fn traces_svg(
        &self,
        from: f64,
        to: f64,
        a: &[f64],
        b: &[f64],
        #[wasm_bindgen(unchecked_param_type = "TraceMarks")] marks_a: &[f64],
        #[wasm_bindgen(unchecked_param_type = "TraceMarks")] marks_b: &[f64],
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> String {
        let traces = [TracePicture::of(a, marks_a), TracePicture::of(b, marks_b)];
        traces_chart(&self.traces_picture([from, to], traces), &PageWords(say))
    }

    /// The same in words.
    #[wasm_bindgen(unchecked_return_type = "Types.Message[]")]
    pub fn traces_words(
        &self,
        from: f64,
        to: f64,
        #[wasm_bindgen(unchecked_param_type = "TraceMarks")] marks_a: &[f64],
        #[wasm_bindgen(unchecked_param_type = "TraceMarks")] marks_b: &[f64],
    ) -> JsValue {
        let traces = [marks_a, marks_b].map(|marks| TracePicture::of(&[], marks));
        to_js::<Vec<Message>>(&chart::traces_words(&self.traces_picture([from, to], traces)))
    }

    /// What was found on two traces, as a table.
    #[wasm_bindgen(unchecked_return_type = "Types.PlotTable")]
    pub fn traces_table(
        &self,
        #[wasm_bindgen(unchecked_param_type = "TraceMarks")] marks_a: &[f64],
        #[wasm_bindgen(unchecked_param_type = "TraceMarks")] marks_b: &[f64],
    ) -> JsValue {
        let traces = [marks_a, marks_b].map(|marks| TracePicture::of(&[], marks));
        to_js::<PlotTable>(&chart::traces_table(&self.traces_picture([0.0, 1.0], traces)))
    }
}

impl Desk {
    fn traces_picture(&self, span: [f64; 2], traces: [TracePicture; 2]) -> TracesPicture {
        TracesPicture { traces, span, decimal_mark: self.notebook.state().decimal_mark }
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
