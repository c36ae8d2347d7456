//! What can be wrong with a file or with a trace. Each message names the place and says what to do.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Why a file was not read.
#[derive(Debug, Clone, PartialEq, Error, Serialize, Deserialize)]
#[error("{file}: {problem}")]
pub struct ReadError {
    /// The file's name.
    pub file: String,
    /// What is wrong with it.
    pub problem: ReadProblem,
}

/// What is wrong with a file. Lines count from 1, fields too.
#[derive(Debug, Clone, PartialEq, Error, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "kind")]
#[non_exhaustive]
pub enum ReadProblem {
    /// Not a byte, or nothing but blank lines.
    #[error("the file is empty: save the trace again.")]
    Empty,
    /// Bytes that no text has.
    #[error("byte {at} is none of a text, so this is a binary file: save the trace as delimited text.")]
    Binary {
        /// The byte's place, counted from 1.
        at: usize,
    },
    /// No rows of numbers under one another.
    #[error(
        "no columns of numbers were found: choose the delimiter and the decimal mark, or save the trace as delimited text."
    )]
    NoColumns,
    /// Nothing tells when the samples were taken.
    #[error(
        "there is no time column, and no setting that gives the time from sample to sample: state that step."
    )]
    NoTime,
    /// Columns, but none of volts.
    #[error("no column is taken as a channel: say which column holds the voltage.")]
    NoChannel,
    /// Too few rows.
    #[error(
        "there are only {rows} rows of samples, and it takes at least {needed}: check the first line of samples."
    )]
    FewRows {
        /// Rows found.
        rows: usize,
        /// Rows needed.
        needed: usize,
    },
    /// A row that ends before a column that is needed.
    #[error("line {line} ends before column {column}: the file may be cut off, or the delimiter another.")]
    MissingField {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
    },
    /// A field that is no number.
    #[error(
        "line {line}, column {column}: “{found}” is not a number; check the decimal mark and the first line of samples."
    )]
    NotANumber {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// The field.
        found: String,
    },
    /// A mark that stands for a sample without a value.
    #[error(
        "line {line}, column {column}: “{found}” stands for a sample without a value (overflow or none); record the trace again with a larger range."
    )]
    NoValue {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// The field.
        found: String,
    },
    /// Time that does not advance by equal steps.
    #[error(
        "line {line}: the time is {found} ns where equal steps of {step} ns lead to {expected} ns; unequal sampling can't be used.",
        found = shown(.found), expected = shown(.expected), step = shown(.step)
    )]
    Unequal {
        /// The line.
        line: usize,
        /// Time found, ns.
        found: f64,
        /// Time expected, ns.
        expected: f64,
        /// The mean step, ns.
        step: f64,
    },
    /// Two columns of times that do not agree.
    #[error(
        "column {column} has other times than the first column of times: the channels were not sampled together; save them in a file each."
    )]
    OtherTimes {
        /// The second column of times.
        column: usize,
    },
    /// Time that stands still or runs backwards.
    #[error(
        "the time does not grow from the first row (line {first}) to the last (line {last}): check which column is the time."
    )]
    NoAdvance {
        /// First line of samples.
        first: usize,
        /// Last line of samples.
        last: usize,
    },
}

/// Why a trace gives no time. Samples count from 0.
#[derive(Debug, Clone, PartialEq, Error, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "kind")]
#[non_exhaustive]
pub enum TraceError {
    /// Fewer samples than a baseline and an edge take.
    #[error("{samples} samples are too few for a baseline and an edge: it takes at least {needed}.")]
    FewSamples {
        /// Samples there are.
        samples: usize,
        /// Samples needed.
        needed: usize,
    },
    /// A sample that is no number.
    #[error("sample {sample} has no finite value: record the trace again.")]
    NotFinite {
        /// The sample.
        sample: usize,
    },
    /// A step from sample to sample that is not above 0.
    #[error(
        "the time from sample to sample is {step} ns, and must be above 0.",
        step = shown(.step)
    )]
    Step {
        /// As given, ns.
        step: f64,
    },
    /// Nothing stands out of the noise.
    #[error(
        "no pulse: the trace rises {height} V over its baseline, less than 4 times its noise of {noise} V (largest at sample {sample}).",
        height = shown(.height), noise = shown(.noise)
    )]
    NoPulse {
        /// What was found of a height, V.
        height: f64,
        /// Standard deviation of the quiet part, V.
        noise: f64,
        /// Where.
        sample: usize,
    },
    /// The converter's limit cuts the top off.
    #[error(
        "clipped: from sample {sample} the top is flat at {limit} V for {samples} samples; record with a larger range.",
        limit = shown(.limit)
    )]
    Clipped {
        /// The first sample at the limit.
        sample: usize,
        /// How many there are.
        samples: usize,
        /// The limit, V.
        limit: f64,
    },
    /// The pulse stands where there is nothing quiet before it.
    #[error(
        "the pulse begins at sample {sample}, with no quiet part before it on the record: record more time before the trigger."
    )]
    NoBaseline {
        /// Where the pulse begins.
        sample: usize,
    },
    /// The record ends before the pulse has reached its top.
    #[error(
        "the record ends at sample {last} before the pulse has shown its top: record more time after the trigger."
    )]
    NoTop {
        /// The last sample.
        last: usize,
    },
    /// A level that the edge does not cross, or only in the noise of baseline or top.
    #[error(
        "a level of {level} V over the baseline is not on the edge: it must lie between {lowest} V and {highest} V here.",
        level = shown(.level), lowest = shown(.lowest), highest = shown(.highest)
    )]
    Level {
        /// The level asked for, V.
        level: f64,
        /// The lowest that the noise allows, V.
        lowest: f64,
        /// The highest, V.
        highest: f64,
    },
    /// A fraction outside 0.1 to 0.9.
    #[error("a fraction of {fraction} is not on the edge: it must lie between 0.1 and 0.9.")]
    Fraction {
        /// As asked.
        fraction: f64,
    },
    /// So noisy an edge that the linear law of propagation does not hold.
    #[error(
        "the noise hides the crossing near sample {sample}: its uncertainty of {uncertainty} ns is more than a quarter of the rise of {rise} ns; average more pulses.",
        uncertainty = shown(.uncertainty), rise = shown(.rise)
    )]
    Hidden {
        /// Near where.
        sample: usize,
        /// Standard uncertainty found, ns.
        uncertainty: f64,
        /// From 10 to 90 %, ns.
        rise: f64,
    },
    /// Too few samples on the edge for a line.
    #[error(
        "only {samples} samples lie on the edge near sample {sample}, and a line takes {needed}: sample faster, or take a constant fraction."
    )]
    FewOnEdge {
        /// Near where.
        sample: usize,
        /// Samples there are.
        samples: usize,
        /// Samples needed.
        needed: usize,
    },
    /// Traces that were not sampled alike can't be laid over one another.
    #[error(
        "the two traces have steps of {first} ns and {second} ns: cross-correlation takes equal ones.",
        first = shown(.first), second = shown(.second)
    )]
    UnequalSteps {
        /// Of A, ns.
        first: f64,
        /// Of B, ns.
        second: f64,
    },
    /// No lag lays one edge on the other.
    #[error(
        "the two edges can't be laid over one another near sample {sample}: their shapes differ too much, or the record ends."
    )]
    NoLag {
        /// Of the first trace.
        sample: usize,
    },
}

/// A figure with four digits that count, for a message.
#[expect(clippy::trivially_copy_pass_by_ref, reason = "the error's derive hands out references")]
fn shown(value: &f64) -> String {
    let size = value.abs();
    if size != 0.0 && !(1e-4..1e6).contains(&size) {
        return format!("{value:.3e}");
    }
    let mut decimals = 3;
    let mut limit = 1.0;
    while size < limit && decimals < 8 {
        limit /= 10.0;
        decimals += 1;
    }
    let text = format!("{value:.decimals$}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
#[path = "error_test.rs"]
mod tests;
