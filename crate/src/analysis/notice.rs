//! What a notice is: something the notebook noticed by itself. What raises them stands in [`notices`](super::notices).

use serde::Serialize;

use crate::notebook::{RailId, RowId};
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
        Self { id, weight, section, text, look_at, rows: Vec::new(), rail: None, signs: Vec::new() }
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
}
