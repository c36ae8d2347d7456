//! What a notice is: something the notebook noticed by itself. What raises them stands in [`notices`](super::notices).

use serde::Serialize;

use crate::notebook::{Edit, RailId, RowId};
use crate::words::Message;

/// How serious a notice is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Weight {
    /// The result is likely wrong while this stands.
    Grave,
    /// Look at it before handing in.
    Look,
    /// Good to know.
    Know,
}

/// The section beside which a notice stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Section {
    /// Apparatus.
    Apparatus,
    /// Readings.
    Readings,
    /// Delays.
    Delays,
    /// Line.
    Line,
    /// Uncertainty.
    Uncertainty,
    /// Result.
    Result,
}

/// Something noticed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Notice {
    /// Identifier, stable.
    pub id: &'static str,
    /// How serious.
    pub weight: Weight,
    /// Where it stands.
    pub section: Section,
    /// What was noticed.
    pub text: Message,
    /// What to look at.
    pub look_at: Message,
    /// The rows concerned.
    pub rows: Vec<RowId>,
    /// The rail concerned.
    pub rail: Option<RailId>,
    /// What else was noticed that is nothing but a sign of it.
    pub signs: Vec<Message>,
    /// What would mend it, where that is one edit.
    pub repair: Option<Repair>,
}

/// An edit that mends a mistake: offered, never made by itself.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Repair {
    /// What it does.
    pub does: Message,
    /// The edit.
    pub edit: Edit,
    /// The reason that is missing in it, of a row that it strikes out.
    pub reason: Option<Message>,
}

impl Notice {
    /// A notice about the notebook as a whole.
    pub(super) fn new(
        id: &'static str,
        weight: Weight,
        section: Section,
        text: Message,
        look_at: Message,
    ) -> Self {
        let (rows, signs) = (Vec::new(), Vec::new());
        Self { id, weight, section, text, look_at, rows, rail: None, signs, repair: None }
    }

    /// The same about some rows.
    pub(super) fn of_rows(mut self, rows: Vec<RowId>) -> Self {
        self.rows = rows;
        self
    }

    /// The same about a rail.
    pub(super) fn of_rail(mut self, rail: Option<RailId>) -> Self {
        self.rail = rail;
        self
    }

    /// The same with what would mend it.
    pub(super) fn mended_by(mut self, repair: Option<Repair>) -> Self {
        self.repair = repair;
        self
    }
}
