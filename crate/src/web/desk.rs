//! One open notebook, as the page holds it.

use js_sys::{Array, Uint8Array};
use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, IntoDrawingArea};
use plotters_canvas::CanvasBackend;
use serde::Serialize;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

use super::trials::Tally;
use super::{from_json, thrown, to_js, to_json};
use crate::analysis::taken::{Taken, take};
use crate::analysis::trials::Outcome;
use crate::analysis::{Analysis, WhatIf, analyse, analyse_page};
use crate::bundle::{self, Entry};
use crate::chart::{self, ChartError, Theme, TracesPicture};
use crate::notebook::{Cell, Edit, Grid, LogEntry, Notebook, file, paste, read};
use crate::plan::{To, rehearsal};
use crate::report::pictures::{bench_picture, charts, line_picture, walk_picture};
use crate::report::{self, shown::readings_table};
use crate::view::budget::budget_view;
use crate::view::evidence::{evidence_view, grid_lines};
use crate::view::plan::{move_view, plan_view, truth_view};
use crate::view::trials::trials_view;
use crate::view::{Figure, RowView, TrialsView, view};

/// One open notebook: its log, and what was computed from it last.
#[wasm_bindgen]
pub struct Desk {
    notebook: Notebook,
    analysis: Analysis,
    /// The rows as they were last handed over by [`Desk::news`].
    told: Vec<RowView>,
    /// What trials gave, and how long the log was then.
    trials: Option<(usize, Outcome)>,
}

impl Desk {
    fn holding(notebook: Notebook) -> Self {
        let analysis = analyse(&notebook);
        Self { notebook, analysis, told: Vec::new(), trials: None }
    }

    fn do_edit(&mut self, edit: Edit, at: &str) -> Result<(), JsValue> {
        self.notebook.apply(edit, at).map_err(|error| thrown("edit", &error))?;
        self.analysis = analyse(&self.notebook);
        Ok(())
    }

    /// What trials gave, while the notebook is as it was then.
    fn outcome(&self) -> Option<&Outcome> {
        self.trials
            .as_ref()
            .filter(|(length, _)| *length == self.notebook.log().len())
            .map(|(_, outcome)| outcome)
    }

    fn trials_view(&self) -> Option<TrialsView> {
        self.outcome().map(|outcome| trials_view(self.notebook.page(), &Ok(outcome.clone())))
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
        read(text).map(Self::holding).map_err(|error| thrown("file", &error))
    }

    /// Does an edit, given as an object, at the time `at` (RFC 3339).
    ///
    /// # Errors
    /// `{kind: "edit", message}`; the notebook is then as before.
    pub fn apply(&mut self, edit: &JsValue, at: &str) -> Result<(), JsValue> {
        // Through JSON: the reader of stored notebooks is there already, a second one would only add weight.
        let text = String::from(js_sys::JSON::stringify(edit)?);
        let edit: Edit = serde_json::from_str(&text).map_err(|error| thrown("edit", &error))?;
        self.do_edit(edit, at)
    }

    /// Puts a block copied from a spreadsheet into the rows, from a cell on; into new rows if `row` is absent.
    ///
    /// # Errors
    /// `{kind: "edit", message}`; the notebook is then as before.
    pub fn paste(&mut self, row: Option<u32>, cell: &str, block: &str, at: &str) -> Result<(), JsValue> {
        let cell: Cell =
            serde_json::from_value(serde_json::Value::from(cell)).map_err(|error| thrown("edit", &error))?;
        let edit = paste(self.notebook.page(), row, cell, block);
        self.do_edit(edit, at)
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

    /// Everything the page shows.
    pub fn view(&self) -> JsValue {
        to_js(&view(&self.notebook, &self.analysis))
    }

    /// Everything the page shows, with `null` for each row that is as it was when this was last asked, and the outputs
    /// alone where nothing else changed.
    pub fn news(&mut self) -> JsValue {
        let mut view = view(&self.notebook, &self.analysis);
        let rows = std::mem::take(&mut view.rows);
        let rest = to_json(&view);
        let each = rows.iter().enumerate().map(|(place, row)| match self.told.get(place) {
            Some(told) if told == row => "null".to_owned(),
            Some(told) => row.outputs_since(told).map_or_else(|| to_json(row), |outputs| to_json(&outputs)),
            None => to_json(row),
        });
        let list: Vec<String> = each.collect();
        // Of two members of one name the last one counts (ECMA-262, JSON.parse): the rows left out above come here.
        let open = rest.strip_suffix('}').unwrap_or("{\"title\":\"\"");
        let news = from_json(&format!("{open},\"rows\":[{}]}}", list.join(",")));
        self.told = rows;
        news
    }

    /// The budget's figures with one component, by its identifier, so many times as large. Changes nothing.
    pub fn what_if(&self, component: &str, factor: f64) -> JsValue {
        let page = self.notebook.page();
        let what_if = WhatIf { origin: component.to_owned(), factor };
        let view = budget_view(page, &analyse_page(page, Some(&what_if)));
        to_js(&Changed { refusal: view.refusal, figures: view.figures })
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

    /// A tally for Monte Carlo trials of the notebook as it stands now.
    ///
    /// # Errors
    /// `{kind: "trials", message}` when none can be drawn.
    pub fn tally(&self) -> Result<Tally, JsValue> {
        Tally::of(self.notebook.page(), &self.analysis).map_err(|why| thrown("trials", &why))
    }

    /// Keeps what trials gave for report and bundle, as long as the notebook stays as it is.
    pub fn keep_trials(&mut self, tally: &Tally) {
        self.trials = tally.outcome().map(|outcome| (self.notebook.log().len(), outcome.clone()));
    }

    /// The title as typed.
    pub fn title(&self) -> String {
        self.notebook.page().title.clone()
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
        let rest = self.notebook.log().get(from..).unwrap_or_default();
        // A log entry holds strings and choices only, which always have a JSON form.
        rest.iter().map(|entry| serde_json::to_string(entry).unwrap_or_default()).collect()
    }

    /// Appends log entries, each as JSON, such as a journal kept.
    ///
    /// # Errors
    /// `{kind: "edit", message}` at the first entry that can't be read or applied; those before it hold.
    pub fn replay(&mut self, entries: Vec<String>) -> Result<(), JsValue> {
        for text in entries {
            let entry: LogEntry = serde_json::from_str(&text).map_err(|error| thrown("edit", &error))?;
            self.notebook.apply(entry.edit, &entry.at).map_err(|error| thrown("edit", &error))?;
        }
        self.analysis = analyse(&self.notebook);
        Ok(())
    }
}

/// What is seen, on a canvas whose size is set in device pixels, with `pixels` of them to a CSS pixel.
#[wasm_bindgen]
impl Desk {
    /// Draws the delay against the distance.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_line(&self, canvas: HtmlCanvasElement, dark: bool, pixels: f64) -> Result<(), JsValue> {
        let picture = line_picture(self.notebook.page(), &self.analysis);
        draw(canvas, dark, pixels, |area, theme| chart::line(area, &picture, theme))
    }

    /// Draws the residuals against the distance.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_residuals(&self, canvas: HtmlCanvasElement, dark: bool, pixels: f64) -> Result<(), JsValue> {
        let picture = line_picture(self.notebook.page(), &self.analysis);
        draw(canvas, dark, pixels, |area, theme| chart::residuals(area, &picture, theme))
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

    /// Draws the bench to scale.
    ///
    /// # Errors
    /// `{kind: "chart", message}` if the canvas is too small to draw on.
    pub fn draw_bench(&self, canvas: HtmlCanvasElement, dark: bool, pixels: f64) -> Result<(), JsValue> {
        let picture = bench_picture(self.notebook.page(), &self.analysis);
        draw(canvas, dark, pixels, |area, theme| chart::bench(area, &picture, theme))
    }

    /// Height that the drawing of the bench wants at a width, both in CSS pixels.
    pub fn bench_height(&self, width: u32) -> u32 {
        chart::bench_height(width, &bench_picture(self.notebook.page(), &self.analysis), &Theme::light())
    }

    /// The readings as a table: "csv", "latex" or "markdown".
    ///
    /// # Errors
    /// `{kind: "table", message}` for another kind, or a table that can't be written.
    pub fn table(&self, kind: &str) -> Result<String, JsValue> {
        let table = readings_table(&view(&self.notebook, &self.analysis));
        match kind {
            "csv" => table.to_csv().map_err(|error| thrown("table", &error)),
            "latex" => Ok(table.to_latex()),
            "markdown" => Ok(table.to_markdown()),
            other => Err(thrown("table", &format!("“{other}” is no kind of table: csv, latex or markdown"))),
        }
    }

    /// The printable report, a whole HTML document.
    pub fn report(&self) -> String {
        let charts = charts(self.notebook.page(), &self.analysis, self.outcome());
        report::html(&view(&self.notebook, &self.analysis), &charts, self.trials_view().as_ref())
    }

    /// The bundle, a zip, with pictures: the name of each, and its bytes in the same place.
    ///
    /// # Errors
    /// `{kind: "bundle", message}`.
    pub fn bundle(&self, names: Vec<String>, pictures: Vec<Uint8Array>) -> Result<Vec<u8>, JsValue> {
        let pictures = names.into_iter().zip(pictures);
        let pictures = pictures.map(|(name, bytes)| Entry { name, bytes: bytes.to_vec() }).collect();
        let charts = charts(self.notebook.page(), &self.analysis, self.outcome());
        let view = view(&self.notebook, &self.analysis);
        bundle::of(&self.notebook, &self.analysis, &view, &charts, self.trials_view().as_ref(), pictures)
            .map_err(|error| thrown("bundle", &error))
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

/// The text of the `notebook.json` in a bundle, and after it name and bytes of each picture in turn.
///
/// # Errors
/// `{kind: "bundle", message}`, naming the entry.
#[wasm_bindgen]
pub fn read_bundle(bytes: &[u8]) -> Result<Array, JsValue> {
    let contents = bundle::read(bytes).map_err(|error| thrown("bundle", &error))?;
    let all = Array::of1(&contents.notebook_text.into());
    for Entry { name, bytes } in contents.pictures {
        all.push(&name.into());
        all.push(&Uint8Array::from(bytes.as_slice()));
    }
    Ok(all)
}

/// What a what-if shows.
#[derive(Serialize)]
struct Changed {
    refusal: String,
    figures: Vec<Figure>,
}

/// Paints on a canvas whose size is set in device pixels.
///
/// # Errors
/// `{kind: "chart", message}` if the canvas is too small to draw on, or gives nothing to draw with.
pub(super) fn draw(
    canvas: HtmlCanvasElement,
    dark: bool,
    pixels: f64,
    paint: impl FnOnce(&DrawingArea<CanvasBackend, Shift>, &Theme) -> Result<(), ChartError>,
) -> Result<(), JsValue> {
    let theme = if dark { Theme::dark() } else { Theme::light() };
    let backend = CanvasBackend::with_canvas_object(canvas)
        .ok_or_else(|| thrown("chart", &"this browser gives no canvas to draw on"))?;
    paint(&backend.into_drawing_area(), &theme.scaled(pixels)).map_err(|error| thrown("chart", &error))
}
