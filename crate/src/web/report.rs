//! What is taken out of a notebook: tables, reports, what a bundle holds.

use js_sys::Function;
use wasm_bindgen::prelude::*;

use super::desk::Desk;
use super::thrown;
use super::words::PageWords;
use crate::bundle;
use crate::drawings::{ChartForm, Charts, charts};
use crate::message;
use crate::notebook::Imprint;
use crate::report::exact::readings_numbers;
use crate::report::shown::{answers_table, readings_table};
use crate::report::{Document, Table};
use crate::view::view;

impl Desk {
    fn charts(&self, form: ChartForm, say: &Function) -> Charts {
        charts(self.notebook.state(), &self.judged(), self.outcome(), form, &PageWords(say))
    }

    fn document(&self, charts: &Charts, say: &Function) -> Document {
        let view = view(&self.notebook, &self.judged());
        let imprint = Imprint::of(&self.notebook);
        Document::of(&view, charts, self.trials_view().as_ref(), &imprint, &PageWords(say))
    }
}

/// All of it in the page's words.
#[wasm_bindgen]
impl Desk {
    /// The readings, and the answers to the questions of a hand-out, as tables: "csv" (the readings alone), "latex" or "markdown", in the page's words.
    ///
    /// # Errors
    /// `{kind: "table", message}` for another kind, or a table that can't be written.
    pub fn table(
        &self,
        #[wasm_bindgen(unchecked_param_type = "'csv' | 'latex' | 'markdown'")] kind: &str,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<String, JsValue> {
        let analysis = self.judged();
        let view = view(&self.notebook, &analysis);
        let table = readings_table(&view, &PageWords(say));
        let answers = Some(answers_table(&view, &PageWords(say))).filter(|answers| !answers.rows.is_empty());
        let both = |form: fn(&Table) -> String| {
            form(&table)
                + &answers.as_ref().map_or_else(String::new, |answers| format!("\n{}", form(answers)))
        };
        match kind {
            "csv" => {
                let numbers = readings_numbers(&analysis, &view, &PageWords(say));
                numbers.to_csv().map_err(|error| thrown("table", error.message()))
            }
            "latex" => Ok(both(Table::to_latex)),
            "markdown" => Ok(both(Table::to_markdown)),
            other => Err(thrown("table", message!("table-kind", kind = other))),
        }
    }

    /// The printable report, a whole HTML document, in the page's words.
    pub fn report(
        &self,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> String {
        self.document(&self.charts(ChartForm::Svg, say), say).html()
    }

    /// The report to go on writing, in the page's words: name and text of each file in turn. "latex" is one file,
    /// "markdown" one with its charts.
    ///
    /// # Errors
    /// `{kind: "table", message}` for another form.
    pub fn report_files(
        &self,
        #[wasm_bindgen(unchecked_param_type = "'latex' | 'markdown'")] form: &str,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<Vec<String>, JsValue> {
        match form {
            "latex" => {
                let text = self.document(&self.charts(ChartForm::Latex, say), say).latex();
                Ok(vec!["report.tex".into(), text])
            }
            "markdown" => {
                let charts = self.charts(ChartForm::Svg, say);
                let drawn = charts.named().flat_map(|(name, svg)| [format!("{name}.svg"), svg.to_owned()]);
                let text = self.document(&charts, say).markdown();
                Ok(["report.md".to_owned(), text].into_iter().chain(drawn).collect())
            }
            other => Err(thrown("table", message!("table-kind", kind = other))),
        }
    }

    /// What the bundle holds beside the files that the notebook rests on: name and text of each entry in turn; the report
    /// in the page's words.
    ///
    /// # Errors
    /// `{kind: "bundle", message}`.
    pub fn bundle(
        &self,
        #[wasm_bindgen(unchecked_param_type = "(message: Types.Message) => string")] say: &Function,
    ) -> Result<Vec<String>, JsValue> {
        let analysis = self.judged();
        let charts = self.charts(ChartForm::Svg, say);
        let view = view(&self.notebook, &analysis);
        let texts = bundle::texts(
            &self.notebook,
            &analysis,
            &view,
            &charts,
            self.trials_view().as_ref(),
            &PageWords(say),
        )
        .map_err(|error| thrown("bundle", error.message()))?;
        let mut all = Vec::with_capacity(2 * texts.len());
        for entry in texts {
            all.push(entry.name);
            all.push(String::from_utf8(entry.bytes).map_err(|error| thrown("bundle", error.to_string()))?);
        }
        Ok(all)
    }
}
