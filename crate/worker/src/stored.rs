//! What a notebook keeps of a pair of traces: the files by their SHA-256, each estimator's delay as text, and what is to
//! be said of it. The shapes are those of `slope_of_light::notebook::Traces`.

use serde::{Deserialize, Serialize};
use slope_evidence::trace::{self, Delay, DelayMethod, Detector, Edge, Flag};

/// As `slope_of_light::notebook::Traces`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Traces {
    /// The file with both traces, or one each, A's first.
    pub files: Vec<StoredFile>,
    /// What each estimator gave.
    pub delays: Vec<TraceDelay>,
    /// Fixed level less constant fraction.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub walk: Option<TraceTime>,
}

/// A file by its content.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct StoredFile {
    /// SHA-256 of its bytes, 64 hexadecimal digits.
    pub sha256: String,
    /// What it was called.
    pub name: String,
    /// Its length, bytes.
    pub bytes: u32,
}

/// A time, ns, as text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct TraceTime {
    /// The shortest decimal that reads back to the same number.
    pub value: String,
    /// Standard uncertainty, rounded up to three digits.
    pub uncertainty: String,
}

/// What one estimator gave.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct TraceDelay {
    /// Which one, as the notebook spells it.
    pub estimator: &'static str,
    /// The delay, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub delay: Option<TraceTime>,
    /// By what it was taken and what to be wary of, or why there is none.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub remark: String,
}

/// Where the fixed level comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
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

/// The one level for all rows of a run: half its smallest pulse, V. `levels` holds half the lower pulse of each pair.
pub fn common_level(levels: &[f64]) -> Option<f64> {
    levels.iter().copied().filter(|level| *level > 0.0).reduce(f64::min)
}

impl Traces {
    /// What was measured on the traces of `files`; none where no estimator gave a delay.
    pub fn of(files: &[StoredFile], measured: &trace::Measured, level_of: LevelOf) -> Option<Self> {
        let delays = measured.outcomes.iter().map(|outcome| delay(files, outcome, level_of));
        let delays: Vec<TraceDelay> = delays.collect();
        delays.iter().any(|found| found.delay.is_some()).then(|| Self {
            files: files.to_vec(),
            delays,
            walk: measured.walk.and_then(|(value, u)| time(value, u)),
        })
    }
}

/// Why no estimator gives a delay: the file, the detector and the reason; empty where one does.
pub fn refusal(files: &[StoredFile], measured: &trace::Measured) -> String {
    if measured.outcomes.iter().any(|outcome| outcome.delay.is_some()) {
        return String::new();
    }
    measured.outcomes.iter().find_map(|outcome| refused(files, outcome)).unwrap_or_default()
}

fn refused(files: &[StoredFile], outcome: &trace::Outcome) -> Option<String> {
    let (detector, problem) = outcome.refused.as_ref()?;
    let file = match detector {
        Detector::A => files.first(),
        Detector::B => files.last(),
    };
    Some(format!("{}, trace {detector:?}: {problem}", file.map_or("", |file| file.name.as_str())))
}

fn delay(files: &[StoredFile], outcome: &trace::Outcome, level_of: LevelOf) -> TraceDelay {
    let estimator = match outcome.method {
        DelayMethod::FixedLevel { .. } => "fixed_level",
        DelayMethod::ConstantFraction { .. } => "constant_fraction",
        DelayMethod::EdgeLine => "edge_line",
        DelayMethod::CrossCorrelation { refined: false } => "cross_correlation",
        DelayMethod::CrossCorrelation { refined: true } => "shift_and_scale",
    };
    let found = outcome.delay.as_ref().and_then(|found| time(found.delay, found.uncertainty));
    let mut remarks = Vec::new();
    match &outcome.delay {
        Some(delay) => {
            remarks.extend(taken_at(outcome.method, level_of));
            remarks.extend(wary(delay));
        }
        None => remarks.extend(refused(files, outcome)),
    }
    TraceDelay { estimator, delay: found, remark: remarks.join(" ") }
}

/// At what level the edges were taken.
fn taken_at(method: DelayMethod, level_of: LevelOf) -> Option<String> {
    match method {
        DelayMethod::FixedLevel { volts } => {
            let whose = match level_of {
                LevelOf::Pair => "half of the smaller pulse",
                LevelOf::Run => "half of the smallest pulse of the run",
                LevelOf::Stated => "as stated",
            };
            Some(format!("Level: {} V over the baselines, {whose}.", short(volts)))
        }
        DelayMethod::ConstantFraction { fraction } => {
            Some(format!("Fraction: {} %.", short(100.0 * fraction)))
        }
        _ => None,
    }
}

/// What to be wary of on either edge.
fn wary(delay: &Delay) -> Vec<String> {
    let [a, b] = &delay.edges;
    let of = |detector: &str, edge: &Edge| {
        edge.flags.iter().map(|flag| format!("Trace {detector}: {}.", words(flag))).collect::<Vec<_>>()
    };
    of("A", a).into_iter().chain(of("B", b)).collect()
}

fn words(flag: &Flag) -> String {
    match flag {
        Flag::Inverted => "the pulse goes down, and was turned over".into(),
        Flag::Noisy => "the pulse is less than 5 times as high as the noise".into(),
        Flag::DoubleEdge { sample } => format!("a second edge crosses half the height at sample {sample}"),
        Flag::NotQuiet { sample } => format!("something stands out of the baseline at sample {sample}"),
        Flag::CorrelatedNoise { samples } => {
            format!("the noise goes on over {samples} samples, which the uncertainty takes into account")
        }
        Flag::FewOnEdge { samples } => {
            format!("only about {samples} samples lie on the edge, so sampling faster would help")
        }
        Flag::Rough => {
            "the uncertainty is more than a tenth of the rise, so it is itself known only roughly".into()
        }
        _ => "see the trace".into(),
    }
}

/// Three significant digits.
pub(crate) fn short(value: f64) -> String {
    match format!("{value:.2e}").parse::<f64>() {
        Ok(rounded) if rounded.is_finite() => format!("{rounded}"),
        _ => format!("{value}"),
    }
}

/// A time as the notebook keeps it; none where it is not finite.
fn time(value: f64, uncertainty: f64) -> Option<TraceTime> {
    let finite = value.is_finite() && uncertainty.is_finite() && uncertainty >= 0.0;
    finite.then(|| TraceTime { value: format!("{value}"), uncertainty: up(uncertainty) })
}

/// Three significant digits, rounded up: an uncertainty is not made smaller by writing it down.
fn up(value: f64) -> String {
    let nearest = format!("{value:.2e}");
    let Some((mantissa, exponent)) = nearest.split_once('e') else { return format!("{value}") };
    let (Ok(rounded), Ok(exponent)) = (nearest.parse::<f64>(), exponent.parse::<i32>()) else {
        return format!("{value}");
    };
    if rounded >= value {
        return format!("{rounded}");
    }
    // One unit of the last digit more, counted on the digits so that no power of ten is rounded.
    let digits: u32 =
        mantissa.chars().filter_map(|char| char.to_digit(10)).fold(0, |sum, digit| 10 * sum + digit);
    let larger = format!("{}e{}", digits + 1, exponent - 2).parse::<f64>().unwrap_or(value);
    format!("{larger}")
}

#[cfg(test)]
#[path = "stored_test.rs"]
mod tests;
