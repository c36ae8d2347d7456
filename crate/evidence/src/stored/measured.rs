//! What was measured on a pair of traces, as a notebook stores it: the files by their SHA-256, each estimator's delay as
//! text, and what is to be said of it.

use crate::decimal::{Decimal, DecimalMark, exact};

use super::remark::refused;
use super::{LevelOf, Remark, StoredFile, TraceDelay, TraceTime, Traces};
use crate::trace::{self, Delay, DelayMethod, Detector, Digits};
use crate::words::Message;

/// The one level for all rows of a run: half its smallest pulse, V. `levels` holds half the lower pulse of each pair.
pub fn common_level(levels: &[f64]) -> Option<f64> {
    levels.iter().copied().filter(|level| *level > 0.0).reduce(f64::min)
}

impl Traces {
    /// What was measured on the traces of `files`, each as it was recognised; none where no estimator gave a delay.
    pub fn of(files: &[StoredFile], measured: &trace::Measured, level_of: LevelOf) -> Option<Self> {
        let delays = measured.outcomes.iter().map(|outcome| delay(outcome, level_of));
        let delays: Vec<TraceDelay> = delays.collect();
        delays.iter().any(|found| found.delay.is_some()).then(|| Self {
            files: files.to_vec(),
            delays,
            walk: measured.walk.and_then(|(value, u)| time(value, u)),
            layouts: vec![],
        })
    }
}

/// Why no estimator gives a delay: the file, the detector and the reason, numbers with a decimal mark; none where one
/// does.
pub fn refusal(files: &[StoredFile], measured: &trace::Measured, mark: DecimalMark) -> Option<Message> {
    if measured.outcomes.iter().any(|outcome| outcome.delay.is_some()) {
        return None;
    }
    let (trace, problem) = measured.outcomes.iter().find_map(|outcome| outcome.refused.as_ref())?;
    Some(refused(files, *trace, problem, mark))
}

fn delay(outcome: &trace::Outcome, level_of: LevelOf) -> TraceDelay {
    let remarks = match (&outcome.delay, &outcome.refused) {
        (Some(delay), _) => taken_at(outcome.method, level_of).into_iter().chain(wary(delay)).collect(),
        (None, Some((trace, problem))) => vec![Remark::Refused { trace: *trace, problem: problem.clone() }],
        (None, None) => Vec::new(),
    };
    let found = outcome.delay.as_ref().and_then(|found| time(found.delay, found.uncertainty));
    TraceDelay { estimator: outcome.method.into(), delay: found, remarks }
}

/// At what level the edges were taken.
fn taken_at(method: DelayMethod, of: LevelOf) -> Option<Remark> {
    match method {
        DelayMethod::FixedLevel { volts } => Some(Remark::Level { volts: Digits::of(volts, 3), of }),
        DelayMethod::ConstantFraction { fraction } => {
            Some(Remark::Fraction { percent: Digits::of(100.0 * fraction, 3) })
        }
        _ => None,
    }
}

/// What to be wary of on either edge.
fn wary(delay: &Delay) -> impl Iterator<Item = Remark> {
    let both = [Detector::A, Detector::B].into_iter().zip(&delay.edges);
    both.flat_map(|(trace, edge)| {
        edge.flags.iter().map(move |flag| Remark::Edge { trace, flag: flag.clone() })
    })
}

/// A time as the notebook stores it; none where it is not finite.
fn time(value: f64, uncertainty: f64) -> Option<TraceTime> {
    let finite = value.is_finite() && uncertainty.is_finite() && uncertainty >= 0.0;
    finite.then(|| TraceTime { value: exact(value), uncertainty: up(uncertainty) })
}

/// Three significant digits, rounded up: an uncertainty is not made smaller by writing it down.
fn up(value: f64) -> String {
    Decimal::significant_up(value, 3).map_or_else(|| exact(value), |decimal| exact(decimal.to_f64()))
}

#[cfg(test)]
#[path = "measured_test.rs"]
mod tests;
