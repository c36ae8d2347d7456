//! What rows are expected to give: the engine that analyses is asked before there is anything to analyse.
//!
//! The weights of a fit hang on what is stated and on where the rows stand, not on what they will read. So rows that
//! lie exactly on the line expected give the very u(b) that real ones will.

use super::stop::{PlanContext, PlannedStop, first_row, with_rows};
use crate::analysis::budget::{BeyondFit, budget};
use crate::analysis::{HowEntered, LineAnalysis, Origin, PreparedPage, Refusal, line_fit, prepare};
use crate::line::{Data, Noise, fit};
use crate::message;
use crate::notebook::{Basis, NotebookState, Row};

/// What rows are expected to give.
#[derive(Clone, Debug, PartialEq)]
pub struct Prediction {
    /// u(v)/v.
    pub relative: f64,
    /// The part of it that each row has for itself, which more rows reduce.
    pub readings: f64,
    /// The part that rows share, and what stands beside the fit.
    pub shared: f64,
    /// The origin of the largest part, and its share of the variance.
    pub largest: Option<(Origin, f64)>,
    /// How many rows.
    pub rows: usize,
}

/// Rows as they are expected, ready to be asked about.
pub struct ExpectedRows {
    /// What they are expected to give.
    pub prediction: Prediction,
    /// What goes into their fit.
    data: Data,
    /// u²(v)/v² beside the fit.
    beside: f64,
}

/// Asks what the rows of a page are expected to give.
///
/// # Errors
/// Why they give no line.
pub fn ask(page: &NotebookState) -> Result<ExpectedRows, Refusal> {
    let PreparedPage { rows, setup, lengthening, .. } = prepare(page, None);
    let mut setup = setup?;
    let line = line_fit::fit(page, &rows.points, &setup)?;
    let (prediction, beside) = predicted(&line, lengthening)
        .ok_or_else(|| Refusal::new("no_uncertainty", message!("plan-no_uncertainty")))?;
    // Straightened: else one reading more would also move the slope that u(b) is taken relative to.
    setup.data.y = setup.data.x.iter().map(|x| line.fit.at(*x)).collect();
    Ok(ExpectedRows { prediction, data: setup.data, beside })
}

fn predicted(line: &LineAnalysis, lengthening: f64) -> Option<(Prediction, f64)> {
    let beyond = BeyondFit { u_air: None, lengthening, probability: 0.95, what_if: None };
    let parts = budget(line, 1.0, Basis::Stated, &beyond).filter(|_| line.stated)?;
    let of = |own: bool| -> f64 {
        let parts = parts.components.iter().filter(|part| (part.entry == HowEntered::Rows) == own);
        parts.map(|part| part.relative * part.relative).sum()
    };
    let largest = parts.components.iter().max_by(|a, b| a.share.total_cmp(&b.share));
    let relative = parts.relative_v();
    let slope = line.fit.uncertainty?.slope / line.fit.slope;
    let prediction = Prediction {
        relative,
        readings: of(true).sqrt(),
        shared: of(false).sqrt(),
        largest: largest.map(|part| (part.origin.clone(), part.share)),
        rows: line.rows.len(),
    };
    Some((prediction, (relative * relative - slope * slope).max(0.0)))
}

impl ExpectedRows {
    /// u(v)/v with only these of the rows, each as often as it is named; none where they give no line.
    pub fn with(&self, rows: &[usize]) -> Option<f64> {
        self.relative(&among(&self.data, rows))
    }

    /// What no repeat can buy: u(v)/v with every row read so often that its own errors vanish.
    pub fn floor(&self) -> Option<f64> {
        /// A million readings for each.
        const REPEATED: f64 = 1e-3;
        let mut data = self.data.clone();
        let Noise::Stated(stated) = &mut data.noise else { return None };
        stated.ux.iter_mut().chain(&mut stated.uy).for_each(|u| *u *= REPEATED);
        stated.dense.scale(REPEATED * REPEATED);
        self.relative(&data)
    }

    fn relative(&self, data: &Data) -> Option<f64> {
        let fit = fit(data).ok()?;
        let slope = fit.uncertainty?.slope / fit.slope;
        Some((slope * slope + self.beside).sqrt()).filter(|u| u.is_finite())
    }
}

/// Some of the rows; a step that none of them stands behind is no unknown of theirs.
fn among(data: &Data, rows: &[usize]) -> Data {
    let mut data = data.only(rows);
    data.free.retain(|column| column.entries().iter().any(|entry| *entry != 0.0));
    data
}

/// Asks about rows at these places, on the line expected before anything is measured.
///
/// # Errors
/// Why they give no line.
pub fn ask_stops(context: &PlanContext, stops: &[PlannedStop]) -> Result<ExpectedRows, Refusal> {
    let rows: Vec<Row> = (first_row(context.page)..)
        .zip(stops)
        .map(|(id, stop)| context.row(id, stop, &context.model))
        .collect();
    ask(&with_rows(context.page, rows, Vec::new()))
}
