//! One open notebook, as the page holds it.

use std::borrow::Cow;

use js_sys::Function;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

use super::canvas::draw;
use super::trials::Tally;
use super::words::PageWords;
use super::{from_js, thrown, to_js, to_js_by_text, to_json};
use crate::analysis::trials::TrialsResult;
use crate::analysis::{Analysis, WhatIf, analyse, analyse_line, analyse_page};
use crate::bundle::{self, notebook_refused};
use crate::chart::{self, Drawing, PlotTable, Theme};
use crate::drawings::bench_picture;
use crate::notebook::{Cell, Edit, Notebook, Pasted, StoredFile, file, paste, read, read_entry};
use crate::view::budget::budget_view;
use crate::view::row_work::row_work;
use crate::view::trials::trials_view;
use crate::view::typed::TypedNumber;
use crate::view::{
    BudgetView, Figure, News, PreviousView, TrialsView, WhatIfView, row_news, typed, view_after,
};

/// One open notebook: its log, and what was computed from it last.
#[wasm_bindgen]
pub struct Desk {
    pub(super) notebook: Notebook,
    pub(super) analysis: Analysis,
    /// The rows as they were last handed over by [`Desk::news`].
    told: PreviousView,
    /// What trials gave, and how long the log was then.
    trials: Option<(usize, TrialsResult)>,
}

impl Desk {
    pub(super) fn holding(notebook: Notebook) -> Self {
        let analysis = analyse(&notebook);
        Self { notebook, analysis, told: PreviousView::default(), trials: None }
    }

    pub(super) fn do_edit(&mut self, edit: Edit, at: &str) -> Result<(), JsValue> {
        self.notebook.apply(edit, at).map_err(|error| thrown("edit", error.message()))?;
        self.analysis = analyse_line(self.notebook.state(), &self.analysis);
        Ok(())
    }

    /// What was computed, with the checks and notices of the notebook as it is.
    pub(super) fn judged(&self) -> Cow<'_, Analysis> {
        if self.analysis.judged { Cow::Borrowed(&self.analysis) } else { Cow::Owned(analyse(&self.notebook)) }
    }

    /// What trials gave, while the notebook is as it was then.
    pub(super) fn outcome(&self) -> Option<&TrialsResult> {
        self.trials
            .as_ref()
            .filter(|(length, _)| *length == self.notebook.log().len())
            .map(|(_, outcome)| outcome)
    }

    pub(super) fn trials_view(&self) -> Option<TrialsView> {
        self.outcome().map(|outcome| trials_view(self.notebook.state(), &Ok(outcome.clone())))
    }
}

#[wasm_bindgen]
impl Desk {
    /// A blank notebook.
    pub fn blank() -> Desk {
        Self::holding(Notebook::new())
    }

    /// Opens the text of a `notebook.json`.
    ///
    /// # Errors
    /// `{kind: "file", message}`.
    pub fn open(text: &str) -> Result<Desk, JsValue> {
        read(text).map(Self::holding).map_err(|error| thrown("file", error.message()))
    }

    /// Does an edit at the time `at` (RFC 3339).
    ///
    /// # Errors
    /// `{kind: "edit", message}`; the notebook is then as before.
    pub fn apply(
        &mut self,
        #[wasm_bindgen(unchecked_param_type = "Types.Edit")] edit: JsValue,
        at: &str,
    ) -> Result<(), JsValue> {
        let edit = from_js::<Edit>(edit, "edit")?;
        self.do_edit(edit, at)
    }

    /// Puts a block copied from a spreadsheet into the rows, from a cell on; into new rows if `row` is absent. Gives
    /// whether its decimal marks were turned, and the headings left out.
    ///
    /// # Errors
    /// `{kind: "edit", message}`; the notebook is then as before.
    #[wasm_bindgen(unchecked_return_type = "[turned: boolean, headings: string]")]
    pub fn paste(
        &mut self,
        row: Option<u32>,
        #[wasm_bindgen(unchecked_param_type = "Types.Cell")] cell: JsValue,
        block: &str,
        at: &str,
    ) -> Result<JsValue, JsValue> {
        let cell = from_js::<Cell>(cell, "edit")?;
        let Pasted { edit, turned, headings } = paste(self.notebook.state(), row, cell, block);
        self.do_edit(edit, at)?;
        Ok(to_js(&(turned, headings)))
    }

    /// Computes the checks and notices that edits left as they were. Gives whether there were any.
    pub fn judge(&mut self) -> bool {
        let due = !self.analysis.judged;
        if due {
            self.analysis = analyse(&self.notebook);
        }
        due
    }

    /// Everything the page shows, of the rows only what is new since this was last asked.
    #[wasm_bindgen(unchecked_return_type = "Types.News")]
    pub fn news(&mut self) -> JsValue {
        let mut view = view_after(&self.notebook, &self.analysis, &self.told);
        let rows = std::mem::take(&mut view.rows);
        let news = to_js_by_text::<News>(&News { view: &view, rows: row_news(&rows, &self.told.rows) });
        let readings = self.analysis.rows.clone();
        self.told = PreviousView { readings, rows, decimal_mark: view.decimal_mark };
        news
    }

    /// How a row was worked out: its figures, each with its formula.
    #[wasm_bindgen(unchecked_return_type = "Types.Figure[]")]
    pub fn row_work(&self, row: u32) -> JsValue {
        to_js::<Vec<Figure>>(&row_work(self.notebook.state(), &self.analysis, row))
    }

    /// The budget's figures with one component, by its identifier, so many times as large. Changes nothing.
    #[wasm_bindgen(unchecked_return_type = "Types.WhatIfView")]
    pub fn what_if(&self, component: &str, factor: f64) -> JsValue {
        let page = self.notebook.state();
        let what_if = WhatIf { origin: component.to_owned(), factor };
        let BudgetView { refusal, figures, .. } = budget_view(page, &analyse_page(page, Some(&what_if)));
        to_js::<WhatIfView>(&WhatIfView { refusal, figures })
    }

    /// So many numbers for new rows, rails, settings, shared errors, planned positions or grids.
    #[wasm_bindgen(unchecked_return_type = "number[]")]
    pub fn new_numbers(&self, count: u32) -> JsValue {
        let first = self.notebook.state().new_number();
        to_js(&(0..count).map(|place| first.saturating_add(place)).collect::<Vec<_>>())
    }

    /// A time above zero typed beside the notebook, ns.
    #[wasm_bindgen(unchecked_return_type = "Types.TypedNumber")]
    pub fn typed_time(&self, text: &str) -> JsValue {
        to_js::<TypedNumber>(&typed::time(text, self.notebook.state().decimal_mark))
    }

    /// A whole number typed beside the notebook.
    #[wasm_bindgen(unchecked_return_type = "Types.TypedNumber")]
    pub fn typed_whole_number(&self, text: &str, least: u32, most: u32) -> JsValue {
        to_js::<TypedNumber>(&typed::whole_number(text, least, most))
    }

    /// A number as it would be typed.
    pub fn number_text(&self, value: f64) -> String {
        typed::number_text(value, self.notebook.state().decimal_mark)
    }

    /// A tally for Monte Carlo trials of the notebook as it stands now.
    ///
    /// # Errors
    /// `{kind: "trials", message}` when none can be drawn.
    pub fn tally(&self) -> Result<Tally, JsValue> {
        let page = self.notebook.state();
        Tally::of(page, &self.judged()).map_err(|why| thrown("trials", why.message(page.decimal_mark)))
    }

    /// Keeps what trials gave for report and bundle, as long as the notebook stays as it is.
    pub fn keep_trials(&mut self, tally: &Tally) {
        self.trials = tally.outcome().map(|outcome| (self.notebook.log().len(), outcome.clone()));
    }

    /// The title as typed.
    pub fn title(&self) -> String {
        self.notebook.state().title.clone()
    }

    /// How many entries the log holds.
    pub fn length(&self) -> usize {
        self.notebook.log().len()
    }

    /// Whether something can be taken back.
    pub fn can_undo(&self) -> bool {
        self.notebook.can_undo()
    }

    /// Whether something can be done again.
    pub fn can_redo(&self) -> bool {
        self.notebook.can_redo()
    }

    /// The notebook as the text of a `notebook.json`.
    pub fn text(&self) -> String {
        file::write(&self.notebook)
    }

    /// The log entries from number `from` (from 0) on, each as JSON.
    pub fn entries(&self, from: usize) -> Vec<String> {
        self.notebook.log().iter().skip(from).map(to_json).collect()
    }

    /// Appends log entries, each as JSON, such as a journal kept.
    ///
    /// # Errors
    /// `{kind: "edit", message}` at the first entry that can't be read or applied, `{kind: "later", message}` at the
    /// first that a later version made; those before it hold.
    pub fn replay(&mut self, entries: Vec<String>) -> Result<(), JsValue> {
        for text in entries {
            let entry = read_entry(&text).map_err(|error| {
                let kind = if error.is_later() { "later" } else { "edit" };
                thrown(kind, error.message())
            })?;
            self.notebook.apply(entry.edit, &entry.at).map_err(|error| thrown("edit", error.message()))?;
        }
        self.analysis = analyse(&self.notebook);
        Ok(())
    }
}

/// What is seen, on a canvas whose size is set in device pixels, with `pixels` of them to a CSS pixel.
#[wasm_bindgen]
impl Desk {
    /// Draws the bench to scale.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_bench(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "Paper")] paper: &str,
        pixels: f64,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<(), JsValue> {
        let picture = bench_picture(self.notebook.state(), &self.analysis);
        draw(canvas, paper, pixels, Drawing::Bench(&picture), say)
    }

    /// Height that the drawing of the bench wants at a width, both in CSS pixels.
    pub fn bench_height(
        &self,
        width: u32,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> u32 {
        let picture = bench_picture(self.notebook.state(), &self.analysis);
        chart::bench_height(width, &picture, &Theme::light(), &PageWords(say))
    }

    /// The bench as a table.
    #[wasm_bindgen(unchecked_return_type = "Types.PlotTable")]
    pub fn bench_table(&self) -> JsValue {
        to_js::<PlotTable>(&chart::bench_table(&bench_picture(self.notebook.state(), &self.analysis)))
    }

    /// The files that the notebook holds or its rows rest on, each with its name in a bundle.
    #[wasm_bindgen(unchecked_return_type = "[name: string, file: Types.StoredFile][]")]
    pub fn files(&self) -> JsValue {
        to_js(&bundle::kept(self.notebook.state()).iter().collect::<Vec<(&String, &&StoredFile)>>())
    }

    /// Opens the `notebook.json` of a bundle.
    ///
    /// # Errors
    /// `{kind: "bundle", message}`.
    pub fn open_bundled(text: &str) -> Result<Desk, JsValue> {
        let notebook = read(text).map_err(|reason| thrown("bundle", notebook_refused(&reason)))?;
        Ok(Self::holding(notebook))
    }
}

/// A log entry kept as JSON, such as a journal's, as this version writes it; what can't be read stays as it is. Old
/// forms are read as new ones, so only texts that went through this tell whether two entries are one.
#[wasm_bindgen]
pub fn entry_now(text: &str) -> String {
    read_entry(text).map_or_else(|_| text.to_owned(), |entry| to_json(&entry))
}
