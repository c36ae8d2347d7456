//! What is to be said of a delay measured on traces: stored as what it is and its numbers, put into words when it is
//! shown.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use slope_engine::decimal::DecimalMark;

use super::StoredFile;
use crate::trace::{Detector, Digits, Flag, TraceError};

/// By what a delay was taken, what to be wary of, or why there is none.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Remark {
    /// Both edges were taken at one level over their baselines.
    Level {
        /// V.
        volts: Digits,
        /// Where it came from.
        of: LevelOf,
    },
    /// Both edges were taken at one fraction of their own heights.
    Fraction {
        /// Per cent.
        percent: Digits,
    },
    /// What to be wary of on a trace.
    Edge {
        /// Whose trace.
        trace: Detector,
        /// What.
        flag: Flag,
    },
    /// There is no delay.
    Refused {
        /// Whose trace is refused.
        trace: Detector,
        /// Why.
        problem: TraceError,
    },
    /// What an earlier version of this program stored in words.
    Words(String),
}

/// Where the fixed level comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum LevelOf {
    /// Half the lower of these two pulses.
    #[default]
    Pair,
    /// Half the smallest pulse of the run.
    Run,
    /// The notebook states it.
    Stated,
}

impl Remark {
    /// In words, of a row whose traces stand in `files`; numbers with the notebook's decimal mark.
    pub fn words(&self, files: &[StoredFile], mark: DecimalMark) -> String {
        match self {
            Self::Level { volts, of } => {
                let whose = match of {
                    LevelOf::Pair => "half of the smaller pulse",
                    LevelOf::Run => "half of the smallest pulse of the run",
                    LevelOf::Stated => "as stated",
                };
                format!("Level: {} V over the baselines, {whose}.", volts.written(mark))
            }
            Self::Fraction { percent } => format!("Fraction: {} %.", percent.written(mark)),
            Self::Edge { trace, flag } => format!("Trace {trace:?}: {}.", flag_words(flag, mark)),
            Self::Refused { trace, problem } => refused_words(files, *trace, problem, mark),
            Self::Words(words) => words.clone(),
        }
    }
}

/// All remarks, as [`Remark::words`] has each.
pub fn remark_words(remarks: &[Remark], files: &[StoredFile], mark: DecimalMark) -> String {
    remarks.iter().map(|remark| remark.words(files, mark)).collect::<Vec<_>>().join(" ")
}

/// Why a trace of these files, both traces' or A's and B's, gives no time.
pub fn refused_words(
    files: &[StoredFile],
    trace: Detector,
    problem: &TraceError,
    mark: DecimalMark,
) -> String {
    format!("{}, trace {trace:?}: {}", file_of(files, trace), problem.words(mark))
}

/// The name of the file with a detector's trace.
pub(super) fn file_of(files: &[StoredFile], trace: Detector) -> &str {
    let file = match trace {
        Detector::A => files.first(),
        Detector::B => files.last(),
    };
    file.map_or("", |file| file.name.as_str())
}

fn flag_words(flag: &Flag, mark: DecimalMark) -> String {
    match flag {
        Flag::Inverted => "the pulse goes down, and was turned over".into(),
        Flag::Noisy => "the pulse is less than 5 times as high as the noise".into(),
        Flag::DoubleEdge { sample } => format!("a second edge crosses half the height at sample {sample}"),
        Flag::NotQuiet { sample } => format!("something stands out of the baseline at sample {sample}"),
        Flag::Drift { volts } => {
            format!("the baseline drifts by {} V before the pulse", volts.written(mark))
        }
        Flag::CorrelatedNoise { samples } => {
            format!("the noise goes on over {samples} samples, which the uncertainty takes into account")
        }
        Flag::FewOnEdge { samples } => {
            format!("only about {samples} samples lie on the edge, so sampling faster would help")
        }
        Flag::Rough => {
            "the uncertainty is more than a tenth of the rise, so it is itself known only roughly".into()
        }
    }
}

#[cfg(test)]
#[path = "remark_test.rs"]
mod tests;
