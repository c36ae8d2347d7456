//! What the notebook notices by itself.
//!
//! Each notice has a stable identifier, says what was seen and what to look at, and names the rows concerned. It
//! never changes a number. Thresholds are common practice (no source) unless a source is named.
//!
//! - `readings`: what the rows show by themselves.
//! - `delays`: what pictures and traces show.
//! - `line`: what the line and the speed show.

mod delays;
mod line;
mod readings;

use serde::Serialize;

use super::evidence::WalkAnalysis;
use super::rows::{Ground, Rows};
use super::types::{LineAnalysis, Speed};
use super::{listed, row_numbers};
use crate::notebook::{RailId, RowId};
use crate::quantity::plain;

/// How serious a notice is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
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
pub struct Notice {
    /// Identifier, stable.
    pub id: &'static str,
    /// How serious.
    pub weight: Weight,
    /// Where it stands.
    pub section: Section,
    /// What was noticed, in plain words.
    pub text: String,
    /// What to look at.
    pub look_at: &'static str,
    /// The rows concerned.
    pub rows: Vec<RowId>,
    /// The rail concerned.
    pub rail: Option<RailId>,
}

/// Everything the notices look at.
pub struct Seen<'a> {
    /// What rows were read against.
    pub ground: &'a Ground<'a>,
    /// The rows, read.
    pub rows: &'a Rows,
    /// The line, if there is one.
    pub line: Option<&'a LineAnalysis>,
    /// The speed, if there is one.
    pub speed: Option<&'a Speed>,
    /// What a fixed level would do to v, where rows were read from traces.
    pub walk: Option<&'a WalkAnalysis>,
}

/// All notices, the most serious first, otherwise in the order of the page.
pub fn notices(seen: &Seen) -> Vec<Notice> {
    let mut all = readings::notices(seen);
    all.extend(delays::notices(seen));
    if let Some(line) = seen.line {
        all.extend(line::notices(seen, line));
    }
    if let (Some(line), Some(speed)) = (seen.line, seen.speed) {
        all.extend(line::of_speed(seen, line, speed));
    }
    all.sort_by_key(|notice| notice.weight);
    all
}

impl Seen<'_> {
    fn numbers(&self, rows: &[RowId]) -> String {
        let word = if rows.len() == 1 { "row" } else { "rows" };
        format!("{word} {}", listed(&row_numbers(self.ground.page, rows)))
    }

    fn figure(&self, value: f64, significant: usize) -> String {
        plain(value, significant, self.ground.page.decimal_mark)
    }
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
