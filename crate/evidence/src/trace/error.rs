//! What can be wrong with a file or with a trace. Each message names the place and says what to do.

use std::fmt;

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use slope_engine::decimal::{DecimalMark, at_most};
use thiserror::Error;

use super::{Digits, Parts, PartsError};

/// Why a file was not read.
#[derive(Debug, Clone, PartialEq, Error, Serialize, Deserialize)]
#[error("{file}: {problem}")]
pub struct ReadError {
    /// The file's name.
    pub file: String,
    /// What is wrong with it.
    pub problem: ReadProblem,
}

impl ReadError {
    /// What is wrong with which file, its numbers with a decimal mark.
    pub fn words(&self, mark: DecimalMark) -> String {
        format!("{}: {}", self.file, self.problem.words(mark))
    }
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
    #[error("{}", unequal(*.line, [*.found, *.step, *.expected], DecimalMark::Point))]
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

impl ReadProblem {
    /// What is wrong, its numbers with a decimal mark.
    pub fn words(&self, mark: DecimalMark) -> String {
        match self {
            Self::Unequal { line, found, expected, step } => unequal(*line, [*found, *step, *expected], mark),
            other => other.to_string(),
        }
    }
}

fn unequal(line: usize, times: [f64; 3], mark: DecimalMark) -> String {
    let [found, step, expected] = times.map(|time| at_most(time, 7, mark));
    format!(
        "line {line}: the time is {found} ns where equal steps of {step} ns lead to {expected} ns; unequal sampling can't be used."
    )
}

/// Why a trace gives no time, as it is told and as it is stored. Samples count from 0.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS), schemars(!try_from))]
#[serde(rename_all = "snake_case", tag = "kind", try_from = "Parts")]
pub enum TraceError {
    /// Fewer samples than a baseline and an edge take.
    FewSamples {
        /// Samples there are.
        samples: usize,
        /// Samples needed.
        needed: usize,
    },
    /// A sample that is no number.
    NotFinite {
        /// The sample.
        sample: usize,
    },
    /// A step from sample to sample that is not above 0.
    Step {
        /// As given, ns.
        step: Digits,
    },
    /// Nothing stands out of the noise.
    NoPulse {
        /// What was found of a height, V.
        height: Digits,
        /// Standard deviation of the quiet part, V.
        noise: Digits,
        /// Where.
        sample: usize,
    },
    /// The converter's limit cuts the top off.
    Clipped {
        /// The first sample at the limit.
        sample: usize,
        /// How many there are.
        samples: usize,
        /// The limit, V.
        limit: Digits,
    },
    /// The pulse stands where there is nothing quiet before it.
    NoBaseline {
        /// Where the pulse begins.
        sample: usize,
    },
    /// The record ends before the pulse has reached its top.
    NoTop {
        /// The last sample.
        last: usize,
    },
    /// A level that the edge does not cross, or only in the noise of baseline or top.
    Level {
        /// The level asked for, V.
        level: Digits,
        /// The lowest that the noise allows, V.
        lowest: Digits,
        /// The highest, V.
        highest: Digits,
    },
    /// A fraction outside 0.1 to 0.9.
    Fraction {
        /// As asked.
        fraction: Digits,
    },
    /// So noisy an edge that the linear law of propagation does not hold.
    Hidden {
        /// Near where.
        sample: usize,
        /// Standard uncertainty found, ns.
        uncertainty: Digits,
        /// From 10 to 90 %, ns.
        rise: Digits,
    },
    /// Too few samples on the edge for a line.
    FewOnEdge {
        /// Near where.
        sample: usize,
        /// Samples there are.
        samples: usize,
        /// Samples needed.
        needed: usize,
    },
    /// Traces that were not sampled alike can't be laid over one another.
    UnequalSteps {
        /// Of A, ns.
        first: Digits,
        /// Of B, ns.
        second: Digits,
    },
    /// No lag lays one edge on the other.
    NoLag {
        /// Of the first trace.
        sample: usize,
    },
}

impl TraceError {
    /// What is wrong, its numbers with a decimal mark.
    pub fn words(&self, mark: DecimalMark) -> String {
        match self {
            Self::FewSamples { samples, needed } => format!(
                "{samples} samples are too few for a baseline and an edge: it takes at least {needed}."
            ),
            Self::NotFinite { sample } => {
                format!("sample {sample} has no finite value: record the trace again.")
            }
            Self::Step { step } => {
                let step = step.written(mark);
                format!("the time from sample to sample is {step} ns, and must be above 0.")
            }
            Self::NoPulse { height, noise, sample } => {
                let [height, noise] = [height, noise].map(|it| it.written(mark));
                format!(
                    "no pulse: the trace rises {height} V over its baseline, less than 4 times its noise of {noise} V (largest at sample {sample})."
                )
            }
            Self::Clipped { sample, samples, limit } => {
                let limit = limit.written(mark);
                format!(
                    "clipped: from sample {sample} the top is flat at {limit} V for {samples} samples; record with a larger range."
                )
            }
            Self::NoBaseline { sample } => format!(
                "the pulse begins at sample {sample}, with no quiet part before it on the record: record more time before the trigger."
            ),
            Self::NoTop { last } => format!(
                "the record ends at sample {last} before the pulse has shown its top: record more time after the trigger."
            ),
            Self::Level { level, lowest, highest } => {
                let [level, lowest, highest] = [level, lowest, highest].map(|it| it.written(mark));
                format!(
                    "a level of {level} V over the baseline is not on the edge: it must lie between {lowest} V and {highest} V here."
                )
            }
            Self::Fraction { fraction } => {
                let fraction = fraction.written(mark);
                format!("a fraction of {fraction} is not on the edge: it must lie between 0.1 and 0.9.")
            }
            Self::Hidden { sample, uncertainty, rise } => {
                let [uncertainty, rise] = [uncertainty, rise].map(|it| it.written(mark));
                format!(
                    "the noise hides the crossing near sample {sample}: its uncertainty of {uncertainty} ns is more than a quarter of the rise of {rise} ns; average more pulses."
                )
            }
            Self::FewOnEdge { sample, samples, needed } => format!(
                "only {samples} samples lie on the edge near sample {sample}, and a line takes {needed}: sample faster, or take a constant fraction."
            ),
            Self::UnequalSteps { first, second } => {
                let [first, second] = [first, second].map(|it| it.written(mark));
                format!(
                    "the two traces have steps of {first} ns and {second} ns: cross-correlation takes equal ones."
                )
            }
            Self::NoLag { sample } => format!(
                "the two edges can't be laid over one another near sample {sample}: their shapes differ too much, or the record ends."
            ),
        }
    }
}

impl fmt::Display for TraceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(DecimalMark::Point))
    }
}

impl std::error::Error for TraceError {}

impl TraceError {
    /// Of a kind, by the name that it is stored under.
    ///
    /// # Errors
    /// See [`PartsError`].
    pub fn of(kind: &str, parts: &Parts) -> Result<Self, PartsError> {
        let whole = |name| parts.whole(name);
        let digits = |name| parts.digits(name);
        Ok(match kind {
            "few_samples" => Self::FewSamples { samples: whole("samples")?, needed: whole("needed")? },
            "not_finite" => Self::NotFinite { sample: whole("sample")? },
            "step" => Self::Step { step: digits("step")? },
            "no_pulse" => {
                Self::NoPulse { height: digits("height")?, noise: digits("noise")?, sample: whole("sample")? }
            }
            "clipped" => Self::Clipped {
                sample: whole("sample")?,
                samples: whole("samples")?,
                limit: digits("limit")?,
            },
            "no_baseline" => Self::NoBaseline { sample: whole("sample")? },
            "no_top" => Self::NoTop { last: whole("last")? },
            "level" => Self::Level {
                level: digits("level")?,
                lowest: digits("lowest")?,
                highest: digits("highest")?,
            },
            "fraction" => Self::Fraction { fraction: digits("fraction")? },
            "hidden" => Self::Hidden {
                sample: whole("sample")?,
                uncertainty: digits("uncertainty")?,
                rise: digits("rise")?,
            },
            "few_on_edge" => Self::FewOnEdge {
                sample: whole("sample")?,
                samples: whole("samples")?,
                needed: whole("needed")?,
            },
            "unequal_steps" => Self::UnequalSteps { first: digits("first")?, second: digits("second")? },
            "no_lag" => Self::NoLag { sample: whole("sample")? },
            other => return Err(PartsError::UnknownKind(other.to_owned())),
        })
    }
}

impl TryFrom<Parts> for TraceError {
    type Error = PartsError;

    fn try_from(parts: Parts) -> Result<Self, PartsError> {
        Self::of(parts.text("kind")?, &parts)
    }
}

#[cfg(test)]
#[path = "error_test.rs"]
mod tests;
