//! What is to be said of a delay measured on traces: stored as what it is and its numbers, put into words when it is
//! shown.

use crate::decimal::DecimalMark;
#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::StoredFile;
use crate::message;
use crate::trace::{Detector, Digits, Flag, TraceError};
use crate::words::{Message, Value};

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
    /// What is said of a row whose traces stand in `files`; numbers with the notebook's decimal mark. What an earlier
    /// version stored in words stays in its words.
    pub fn said(&self, files: &[StoredFile], mark: DecimalMark) -> Value {
        let message = match self {
            Self::Level { volts, of } => {
                let volts = volts.written(mark);
                match of {
                    LevelOf::Pair => message!("remarks-level-pair", volts = volts),
                    LevelOf::Run => message!("remarks-level-run", volts = volts),
                    LevelOf::Stated => message!("remarks-level-stated", volts = volts),
                }
            }
            Self::Fraction { percent } => message!("remarks-fraction", percent = percent.written(mark)),
            Self::Edge { trace, flag } => flagged(letter(*trace), flag, mark),
            Self::Refused { trace, problem } => refused(files, *trace, problem, mark),
            Self::Words(words) => return words.as_str().into(),
        };
        message.into()
    }
}

/// Why a trace of these files, both traces' or A's and B's, gives no time.
pub fn refused(files: &[StoredFile], trace: Detector, problem: &TraceError, mark: DecimalMark) -> Message {
    message!(
        "trace-refused",
        file = file_of(files, trace),
        trace = letter(trace),
        why = problem.message(mark)
    )
}

/// The name of the file with a detector's trace.
pub(super) fn file_of(files: &[StoredFile], trace: Detector) -> &str {
    let file = match trace {
        Detector::A => files.first(),
        Detector::B => files.last(),
    };
    file.map_or("", |file| file.name.as_str())
}

fn letter(trace: Detector) -> &'static str {
    match trace {
        Detector::A => "A",
        Detector::B => "B",
    }
}

fn flagged(trace: &str, flag: &Flag, mark: DecimalMark) -> Message {
    match flag {
        Flag::Inverted => message!("remarks-inverted", trace = trace),
        Flag::Noisy => message!("remarks-noisy", trace = trace),
        Flag::DoubleEdge { sample } => message!("remarks-double_edge", trace = trace, sample = *sample),
        Flag::UnlikeEdge { time } => {
            message!("remarks-unlike_edge", trace = trace, time = time.written(mark))
        }
        Flag::NotQuiet { sample } => message!("remarks-not_quiet", trace = trace, sample = *sample),
        Flag::Drift { volts } => message!("remarks-drift", trace = trace, volts = volts.written(mark)),
        Flag::CorrelatedNoise { samples } => {
            message!("remarks-correlated_noise", trace = trace, n = *samples)
        }
        Flag::FewOnEdge { samples } => message!("remarks-few_on_edge", trace = trace, n = *samples),
        Flag::FlatTop { volts } => message!("remarks-flat_top", trace = trace, volts = volts.written(mark)),
        Flag::UnevenSteps { percent } => {
            message!("remarks-uneven_steps", trace = trace, percent = percent.written(mark))
        }
        Flag::SupposedUnit => message!("remarks-supposed_unit", trace = trace),
        Flag::Rough => message!("remarks-rough", trace = trace),
    }
}

#[cfg(test)]
#[path = "remark_test.rs"]
mod tests;
