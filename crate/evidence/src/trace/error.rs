//! What can be wrong with a file or with a trace. Each message names the place and says what to do; as an error, each is
//! written as what it is.

use crate::decimal::{DecimalMark, at_most};
#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Digits, Parts, PartsError};
use crate::words::Message;
use crate::{errors_as_data, message};

/// Why a file was not read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ReadError {
    /// The file's name.
    pub file: String,
    /// What is wrong with it.
    pub problem: ReadProblem,
}

errors_as_data!(ReadError, TraceError);

impl ReadError {
    /// What is wrong with which file, its numbers with a decimal mark.
    pub fn message(&self, mark: DecimalMark) -> Message {
        message!("read-file", file = self.file.as_str(), why = self.problem.message(mark))
    }
}

/// What is wrong with a file. Lines count from 1, fields too.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "kind")]
#[non_exhaustive]
pub enum ReadProblem {
    /// Not a byte, or nothing but blank lines.
    Empty,
    /// Bytes that no text has.
    Binary {
        /// The byte's place, counted from 1.
        at: usize,
    },
    /// No rows of numbers under one another.
    NoColumns,
    /// Nothing tells when the samples were taken.
    NoTime,
    /// Columns, but none of volts.
    NoChannel,
    /// Too few rows.
    FewRows {
        /// Rows found.
        rows: usize,
        /// Rows needed.
        needed: usize,
    },
    /// A row that ends before a column that is needed.
    MissingField {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
    },
    /// A field that is no number.
    NotANumber {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// The field.
        found: String,
    },
    /// A mark that stands for a sample without a value.
    NoValue {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// The field.
        found: String,
    },
    /// Time that does not advance by equal steps.
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
    OtherTimes {
        /// The second column of times.
        column: usize,
    },
    /// Time that stands still or runs backwards.
    NoAdvance {
        /// First line of samples.
        first: usize,
        /// Last line of samples.
        last: usize,
    },
}

impl ReadProblem {
    /// What is wrong, its numbers with a decimal mark.
    pub fn message(&self, mark: DecimalMark) -> Message {
        let whole = |number: usize| number.to_string();
        match self {
            Self::Empty => message!("read-empty"),
            Self::Binary { at } => message!("read-binary", at = whole(*at)),
            Self::NoColumns => message!("read-no_columns"),
            Self::NoTime => message!("read-no_time"),
            Self::NoChannel => message!("read-no_channel"),
            Self::FewRows { rows, needed } => message!("read-few_rows", rows = *rows, needed = *needed),
            Self::MissingField { line, column } => {
                message!("read-missing_field", line = whole(*line), column = whole(*column))
            }
            Self::NotANumber { line, column, found } => message!(
                "read-not_a_number",
                line = whole(*line),
                column = whole(*column),
                found = found.as_str()
            ),
            Self::NoValue { line, column, found } => message!(
                "read-no_value",
                line = whole(*line),
                column = whole(*column),
                found = found.as_str()
            ),
            Self::Unequal { line, found, expected, step } => {
                let [found, step, expected] = [found, step, expected].map(|time| at_most(*time, 7, mark));
                message!("read-unequal", line = whole(*line), found = found, step = step, expected = expected)
            }
            Self::OtherTimes { column } => message!("read-other_times", column = whole(*column)),
            Self::NoAdvance { first, last } => {
                message!("read-no_advance", first = whole(*first), last = whole(*last))
            }
        }
    }
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
    pub fn message(&self, mark: DecimalMark) -> Message {
        let whole = |number: usize| number.to_string();
        match self {
            Self::FewSamples { samples, needed } => {
                message!("trace-few_samples", samples = *samples, needed = *needed)
            }
            Self::NotFinite { sample } => message!("trace-not_finite", sample = whole(*sample)),
            Self::Step { step } => message!("trace-step", step = step.written(mark)),
            Self::NoPulse { height, noise, sample } => {
                let [height, noise] = [height, noise].map(|it| it.written(mark));
                message!("trace-no_pulse", height = height, noise = noise, sample = whole(*sample))
            }
            Self::Clipped { sample, samples, limit } => message!(
                "trace-clipped",
                sample = whole(*sample),
                samples = *samples,
                limit = limit.written(mark)
            ),
            Self::NoBaseline { sample } => message!("trace-no_baseline", sample = whole(*sample)),
            Self::NoTop { last } => message!("trace-no_top", last = whole(*last)),
            Self::Level { level, lowest, highest } => {
                let [level, lowest, highest] = [level, lowest, highest].map(|it| it.written(mark));
                message!("trace-level", level = level, lowest = lowest, highest = highest)
            }
            Self::Fraction { fraction } => message!("trace-fraction", fraction = fraction.written(mark)),
            Self::Hidden { sample, uncertainty, rise } => {
                let [u, rise] = [uncertainty, rise].map(|it| it.written(mark));
                message!("trace-hidden", sample = whole(*sample), u = u, rise = rise)
            }
            Self::FewOnEdge { sample, samples, needed } => {
                message!("trace-few_on_edge", sample = whole(*sample), samples = *samples, needed = *needed)
            }
            Self::UnequalSteps { first, second } => {
                let [first, second] = [first, second].map(|it| it.written(mark));
                message!("trace-unequal_steps", first = first, second = second)
            }
            Self::NoLag { sample } => message!("trace-no_lag", sample = whole(*sample)),
        }
    }
}

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
