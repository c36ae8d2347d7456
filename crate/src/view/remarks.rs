//! What is to be said of a delay measured on traces, as messages.

use crate::message;
use crate::notebook::{LevelOf, Remark, StoredFile};
use crate::quantity::DecimalMark;
use crate::trace::{Detector, Flag};
use crate::words::{Message, Value};

/// A remark on a row whose traces stand in `files`; numbers with the notebook's decimal mark. What an earlier version
/// stored in words stays in its words.
pub fn remark(remark: &Remark, files: &[StoredFile], mark: DecimalMark) -> Value {
    let message = match remark {
        Remark::Level { volts, of } => {
            let volts = volts.written(mark);
            match of {
                LevelOf::Pair => message!("remarks-level-pair", volts = volts),
                LevelOf::Run => message!("remarks-level-run", volts = volts),
                LevelOf::Stated => message!("remarks-level-stated", volts = volts),
            }
        }
        Remark::Fraction { percent } => message!("remarks-fraction", percent = percent.written(mark)),
        Remark::Edge { trace, flag } => flagged(letter(*trace), flag, mark),
        // Why a trace is refused is told by the reader of traces.
        Remark::Refused { .. } | Remark::Words(_) => return remark.words(files, mark).into(),
    };
    message.into()
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
        Flag::NotQuiet { sample } => message!("remarks-not_quiet", trace = trace, sample = *sample),
        Flag::Drift { volts } => message!("remarks-drift", trace = trace, volts = volts.written(mark)),
        Flag::CorrelatedNoise { samples } => {
            message!("remarks-correlated_noise", trace = trace, n = *samples)
        }
        Flag::FewOnEdge { samples } => message!("remarks-few_on_edge", trace = trace, n = *samples),
        Flag::Rough => message!("remarks-rough", trace = trace),
    }
}
