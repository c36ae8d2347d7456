//! What a drawing shows, as a table, for those who do not see it: the same of the page's wasm and of the worker's.

use serde::Serialize;

use crate::words::{Message, Value};

/// What a drawing shows, as a table.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct PlotTable {
    /// The columns; the first one names the rows.
    pub columns: Vec<PlotColumn>,
    /// A text for each column.
    pub rows: Vec<Vec<Value>>,
}

/// What stands in a column of a [`PlotTable`].
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct PlotColumn {
    /// What it is called.
    pub name: Message,
    /// Its unit; empty for texts and pure numbers.
    pub unit: &'static str,
}
