//! A page read in one sequence, up to what its line starts from.

use super::air_state;
use super::context::RowContext;
use super::matrices;
use super::parts::WhatIf;
use super::place::EntryProblem;
use super::read::{self, Reader};
use super::rows::{self, Rows};
use super::setup::{Setup, setup};
use super::types::Refusal;
use crate::notebook::NotebookState;

/// A page read up to what its line starts from, without fit, checks and notices: trials, and plans, which ask often,
/// need no more.
pub struct PreparedPage<'a> {
    /// What its rows were read against.
    pub context: RowContext<'a>,
    /// The rows.
    pub rows: Rows,
    /// What goes into the fit, or why nothing does.
    pub setup: Result<Setup, Refusal>,
    /// Coverage probability.
    pub probability: f64,
    /// By what share of the distances the way of the light may be longer at most; negative where it is shorter.
    pub lengthening: f64,
    /// What can't be read.
    pub problems: Vec<EntryProblem>,
}

/// Reads a page up to what its line starts from, with one source of uncertainty made larger or smaller if asked.
pub fn prepare<'a>(page: &'a NotebookState, what_if: Option<&WhatIf>) -> PreparedPage<'a> {
    let mut reader = Reader::new(page.decimal_mark);
    let context = RowContext::read(page, &mut reader);
    let mut rows = rows::read(&context, &mut reader);
    let joint = matrices::read(page, &mut rows, &mut reader);
    let setup = setup(&context, &rows, joint, what_if, &mut reader);
    let probability = read::coverage(page, &mut reader);
    let lengthening = page.beam.lengthening(read::beam_angle(page, &mut reader));
    // Wanted when traces are measured, which is elsewhere; what is wrong with them is noted here.
    read::trace_wishes(page, &mut reader);
    air_state::note_air(&context.bench, &mut reader);
    PreparedPage { context, rows, setup, probability, lengthening, problems: reader.problems }
}
