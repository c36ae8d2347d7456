//! A notebook of a class as the page hands it over.

use serde::Deserialize;

use super::stored::GivenFigure;

/// A notebook of a class, as far as it is compared.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Given {
    /// Whether a closed seal covers its result, which then is not told.
    pub sealed: bool,
    /// The figures of its line and its speed, computed here.
    pub figures: Vec<GivenFigure>,
    /// The table of these figures that came with it (`line.csv`).
    pub stored: Option<String>,
    /// What was read for each row of its line: a number for each text, from 0, the same for the same text in all notebooks.
    pub readings: Vec<usize>,
    /// The teacher's layer, its entries one a line; empty where it was not handed out, or where no key is at hand.
    pub layer: String,
    /// The rows of its line, one a line: the place of its rail from 0, normalized residual, distance, delay, unit and reading,
    /// with tabs between them.
    pub rows: String,
    /// What its rails are called, from the splitter on; empty where one has no name.
    pub rails: Vec<String>,
    /// The components of its budget, the largest first.
    pub parts: Vec<GivenPart>,
}

/// A component of a notebook's budget.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct GivenPart {
    /// What it is: a number for each name, from 0, the same for the same name in all notebooks.
    pub component: usize,
    /// Its share of u²(c), as the page draws it: "51.13%".
    pub share: String,
}

impl Given {
    pub(super) fn figure(&self, id: &str) -> Option<&GivenFigure> {
        self.figures.iter().find(|figure| figure.id == id)
    }

    pub(super) fn value(&self, id: &str) -> Option<f64> {
        self.figure(id).map(|figure| figure.value)
    }
}
