//! What went wrong, where the readings tell it.
//!
//! Each mistake is a hypothesis about the readings: one row moved, two exchanged, a ruler that starts again, a sense
//! turned. The line is fitted under each, and its evidence against the readings as they are is taken: half of what χ² falls
//! by, less what the hypothesis costs beforehand. That is how rarely it happens, in how many ways it could have been (the
//! logarithm of the number of tries), and for an amount that was fitted, how much finer it is told than it could have
//! been. A repair by an exact factor or a pulse period has no such amount, so it is preferred where it does as well.
//!
//! The costs are the logarithms of weights whose sum is about one. So for readings that are as stated, evidence of more than
//! ln(1/α) for anything comes in a share of at most α, however many hypotheses are tried and however alike they are:
//! a likelihood ratio is 1 in the mean, and Markov's inequality does the rest (G. Shafer et al., Statist. Sci. 26 (2011) 84).
//! Hypotheses also compete with one another, and with that all uncertainties are wrong by one factor: one is named only
//! where it wins.
//!
//! One more hypothesis is one more entry in `single`, `along` or `rails`, and its words in the notices.

// What can go wrong.
mod cause;

// χ² at fixed weights.
mod weighed;

// The readings, and an explanation of them.
mod case;

// One row or two.
mod single;

// What many rows share.
mod along;

// How a rail is described.
mod rails;

use super::context::RowContext;
use super::rows::Rows;
use super::setup::Setup;
use crate::notebook::{RailId, RowId};
use case::{Case, Hearing};

pub use cause::Cause;

pub(super) use case::{edge_step, too_many_together};

/// Evidence for which something is said: false in at most one of twenty sound notebooks.
const SEEN: f64 = 2.3;
/// Evidence for which it is said to be serious: false in at most one of a hundred.
const SURE: f64 = 4.6;
/// Another explanation that comes as near is said, too.
const NEAR: f64 = 2.3;

/// What went wrong.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// What it is.
    pub cause: Cause,
    /// The rows that are wrong.
    pub rows: Vec<RowId>,
    /// The rail that is wrong, or on which a row should be.
    pub rail: Option<RailId>,
    /// Whether it is as good as certain.
    pub sure: bool,
    /// The slope as it is fitted over that with the fault mended: what c would have to be multiplied by. A ratio, so that it says
    /// nothing that a seal covers.
    pub mends: Option<f64>,
}

/// The explanations that win; none where nothing is wrong, or nothing that is known of explains it, or where
/// `too_many_together` says that none is looked for. `slope` is that of the fit: the diagnosis weighs rows otherwise, and where
/// a mistake is large, its own line is another one.
pub fn diagnose(context: &RowContext, rows: &Rows, setup: &Setup, slope: f64, sealed: bool) -> Vec<Found> {
    Case::new(context, rows, setup, sealed).and_then(|case| best(&case, slope)).unwrap_or_default()
}

fn best(case: &Case, slope: f64) -> Option<Vec<Found>> {
    let null = case.null()?;
    let mut hearing = Hearing { case, null: &null, best: Vec::new() };
    single::hypotheses(&mut hearing);
    along::hypotheses(&mut hearing);
    rails::hypotheses(&mut hearing);
    let mut explanations = hearing.best;
    explanations.sort_by(|a, b| b.evidence.total_cmp(&a.evidence));
    let most = explanations.first()?.evidence;
    let (scale, larger) = case.evidence_of_scale().unwrap_or((f64::NEG_INFINITY, true));
    if most > SEEN && most > scale + SEEN {
        let near = explanations.iter().take_while(|of| of.evidence > most - NEAR);
        let found = near.map(|of| Found {
            cause: of.cause,
            rows: of.rows.iter().map(|row| case.points[*row].row).collect(),
            rail: of.rail.and_then(|rail| case.context.page.rails.get(rail)).map(|rail| rail.id),
            sure: of.evidence > SURE,
            mends: (of.slope > 0.0).then(|| slope / of.slope),
        });
        return Some(found.collect());
    }
    let cause = if larger { Cause::ScatterTooLarge } else { Cause::ScatterTooSmall };
    let found = Found { cause, rows: Vec::new(), rail: None, sure: scale > SURE, mends: None };
    Some(if scale > SEEN { vec![found] } else { Vec::new() })
}
