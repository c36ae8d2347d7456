//! Monte Carlo trials: [`Trials`] runs blocks of them in a worker, [`Tally`] gathers them on the page.

use js_sys::Function;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

use super::canvas::draw;
use super::{thrown, to_js};
use crate::analysis::Analysis;
use crate::analysis::trials::{self, TrialsError, TrialsResult};
use crate::chart::{self, Drawing, PlotTable};
use crate::drawings::histogram_picture;
use crate::notebook::{NotebookState, read};
use crate::view::trials::{progress, trials_view};
use crate::view::{ProgressView, TrialsView};

/// The trials of one notebook.
#[wasm_bindgen]
pub struct Trials(trials::Trials);

#[wasm_bindgen]
impl Trials {
    /// The trials of the text of a `notebook.json`.
    ///
    /// # Errors
    /// `{kind: "trials", message}` when none can be drawn.
    pub fn of(text: &str) -> Result<Trials, JsValue> {
        let notebook = read(text).map_err(|error| thrown("trials", error.message()))?;
        trials::Trials::of(notebook.state()).map(Trials).map_err(|refusal| thrown("trials", refusal.message))
    }

    /// The c of each trial of a block, m/s.
    #[wasm_bindgen(unchecked_return_type = "Float64Array<ArrayBuffer>")]
    pub fn run(&mut self, block: u32) -> Vec<f64> {
        self.0.run(u64::from(block))
    }
}

/// The trials of one notebook, gathered block by block.
#[wasm_bindgen]
pub struct Tally {
    page: NotebookState,
    tally: trials::Tally,
    outcome: Option<Result<TrialsResult, TrialsError>>,
}

impl Tally {
    /// A tally for the trials of a page.
    pub(super) fn of(page: &NotebookState, analysis: &Analysis) -> Result<Self, TrialsError> {
        let speed = analysis.speed.as_ref().map_err(Clone::clone)?;
        Ok(Self { page: page.clone(), tally: trials::Tally::new(page, speed)?, outcome: None })
    }

    pub(super) fn outcome(&self) -> Option<&TrialsResult> {
        self.outcome.as_ref()?.as_ref().ok()
    }
}

#[wasm_bindgen]
impl Tally {
    /// Trials in a block.
    pub fn block_size(&self) -> usize {
        self.tally.block_size()
    }

    /// Takes the results of the next block, in the order of the blocks; whether no more are needed.
    pub fn take(&mut self, values: &[f64]) -> bool {
        self.tally.take(values)
    }

    /// How far the trials have come.
    #[wasm_bindgen(unchecked_return_type = "Types.ProgressView")]
    pub fn progress(&self) -> JsValue {
        to_js::<ProgressView>(&progress(&self.tally))
    }

    /// What the trials taken so far give.
    #[wasm_bindgen(unchecked_return_type = "Types.TrialsView")]
    pub fn finish(&mut self) -> JsValue {
        let outcome = self.tally.outcome();
        let view = trials_view(&self.page, &outcome);
        self.outcome = Some(outcome);
        to_js::<TrialsView>(&view)
    }

    /// Draws the histogram, with `pixels` device pixels to a CSS pixel; nothing before [`Tally::finish`].
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "Paper")] paper: &str,
        pixels: f64,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<(), JsValue> {
        let Some(outcome) = self.outcome() else { return Ok(()) };
        let picture = histogram_picture(outcome, self.page.decimal_mark);
        draw(canvas, paper, pixels, Drawing::Histogram(&picture), say)
    }

    /// The histogram as a table; `null` before [`Tally::finish`].
    #[wasm_bindgen(unchecked_return_type = "Types.PlotTable | null")]
    pub fn table(&self) -> JsValue {
        let picture = self.outcome().map(|outcome| histogram_picture(outcome, self.page.decimal_mark));
        to_js::<Option<PlotTable>>(&picture.as_ref().map(chart::trials_table))
    }
}
