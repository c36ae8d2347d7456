//! What a class is told of a notebook beside what the page shows of it.

use wasm_bindgen::prelude::*;

use super::desk::Desk;
use super::{thrown, to_js};
use crate::notebook::changes_after_seal;
use crate::report::csv::write_csv;
use crate::report::exact::{FitFigure, fit_figures, number};

#[wasm_bindgen]
impl Desk {
    /// The figures of the line and of the speed, with all their digits.
    #[wasm_bindgen(unchecked_return_type = "Types.FitFigure[]")]
    pub fn figures(&self) -> JsValue {
        to_js::<Vec<FitFigure>>(&fit_figures(&self.analysis))
    }

    /// Of each notebook of a partner that was merged into this one, the digest of the first entry that is its own.
    pub fn merged(&self) -> Vec<String> {
        self.notebook.state().merged.iter().map(|log| log.own.clone()).collect()
    }

    /// How many entries that the result may hang on follow the opening of a seal.
    pub fn changes_after_seal(&self) -> Option<usize> {
        changes_after_seal(&self.notebook)
    }
}

/// Cells, so many a record, as CSV: texts as they are, numbers with all their digits, nothing as an empty one.
///
/// # Errors
/// `{kind: "table", message}` where the last record lacks some.
#[wasm_bindgen]
pub fn csv(
    #[wasm_bindgen(unchecked_param_type = "(string | number | null | undefined)[]")] cells: Vec<JsValue>,
    columns: usize,
) -> Result<String, JsValue> {
    let written = |cell: &JsValue| cell.as_f64().map_or_else(|| cell.as_string().unwrap_or_default(), number);
    let cells: Vec<String> = cells.iter().map(written).collect();
    let records: Vec<&[String]> = cells.chunks(columns.max(1)).collect();
    write_csv(&records).map_err(|error| thrown("table", error.message()))
}
