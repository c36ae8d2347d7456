//! What the page asks of a pair of traces: every delay or why there is none, and what to draw.

use serde::{Deserialize, Serialize};

use super::delay::{between, flags_of_pair};
use super::{
    Delay, DelayMethod, Detector, Envelope, Flag, Pulse, Recording, TraceError, Waveform, difference,
    envelope,
};

/// What is asked.
#[derive(Clone, Copy, PartialEq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Asked {
    /// The fixed level over the baseline, V; without one, half the lower of the two pulses.
    pub level: Option<f64>,
    /// The constant fraction, 0.1 to 0.9.
    pub fraction: f64,
    /// Stretches that a drawing of a trace may have; 0 for no drawing.
    pub points: usize,
}

impl Default for Asked {
    fn default() -> Self {
        Self { level: None, fraction: 0.5, points: 1_000 }
    }
}

/// What is found of a pair of traces.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Measured {
    /// Each method's delay or refusal: fixed level, constant fraction, edge line, cross-correlation refined and by
    /// parabola.
    pub outcomes: Vec<Outcome>,
    /// The fixed level that was taken, V over the baseline; none if a trace has no pulse.
    pub level: Option<f64>,
    /// Fixed level less constant fraction, ns, and its standard uncertainty.
    pub walk: Option<(f64, f64)>,
    /// A and B.
    pub sides: [Side; 2],
}

/// One method's delay, or why it gives none.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Outcome {
    /// The method.
    pub method: DelayMethod,
    /// The delay.
    pub delay: Option<Delay>,
    /// The trace that is refused, and why.
    pub refused: Option<(Detector, TraceError)>,
}

/// One of the two traces.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Side {
    /// What is seen on it; none if it has no pulse.
    pub drawn: Option<Drawn>,
    /// Why it has none.
    pub refused: Option<TraceError>,
    /// About the pulse, or the whole record.
    pub envelope: Option<Envelope>,
}

/// Baseline, levels and places to draw over a trace: times in ns, levels in V as on the trace.
#[derive(Clone, Copy, PartialEq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Drawn {
    /// From and to of the quiet part.
    pub quiet: [f64; 2],
    /// Its level.
    pub baseline: f64,
    /// Its standard deviation.
    pub sigma: f64,
    /// Level of the top.
    pub top_level: f64,
    /// From and to of the samples from which the height was taken.
    pub top: [f64; 2],
    /// Height over the baseline, V, above 0.
    pub height: f64,
    /// From and to of what is worth a look.
    pub region: [f64; 2],
}

/// Everything of a pair of traces. `b` may be the same recording as `a`; a recording with one channel is taken for the
/// detector it stands for here.
pub fn measure(a: &Recording, b: &Recording, asked: &Asked) -> Measured {
    let waves = [wave(a, Detector::A), wave(b, Detector::B)];
    let found = waves.map(|wave| match wave {
        Some(wave) => Pulse::find(&wave),
        None => Err(TraceError::FewSamples { samples: 0, needed: 32 }),
    });
    let level = match &found {
        [Ok(a), Ok(b)] => Some(asked.level.unwrap_or(0.5 * a.height.min(b.height))),
        _ => None,
    };
    let fixed = DelayMethod::FixedLevel { volts: level.or(asked.level).unwrap_or(0.0) };
    let fraction = DelayMethod::ConstantFraction { fraction: asked.fraction };
    let methods = [
        fixed,
        fraction,
        DelayMethod::EdgeLine,
        DelayMethod::CrossCorrelation { refined: true },
        DelayMethod::CrossCorrelation { refined: false },
    ];
    let flags = flags(&found, [a, b]);
    let outcomes = methods.map(|method| outcome(&found, method, &flags));
    let walk = match &found {
        [Ok(a), Ok(b)] => difference(a, b, fixed, fraction).ok(),
        _ => None,
    };
    let region = region(&found);
    let [first, second] = found;
    let sides = [side(first, waves[0], region, asked.points), side(second, waves[1], region, asked.points)];
    Measured { outcomes: outcomes.into(), level, walk, sides }
}

/// What is to be known of both pulses together, and of each trace whose unit of time was supposed.
fn flags(found: &[Result<Pulse<'_>, TraceError>; 2], of: [&Recording; 2]) -> [Vec<Flag>; 2] {
    let mut all = match found {
        [Ok(a), Ok(b)] => flags_of_pair(a, b),
        _ => Default::default(),
    };
    for (flags, recording) in all.iter_mut().zip(of) {
        flags.extend(recording.is_unit_supposed.then_some(Flag::SupposedUnit));
    }
    all
}

/// The delay by one method, with the flags of both edges; or the trace that has no pulse.
fn outcome(
    found: &[Result<Pulse<'_>, TraceError>; 2],
    method: DelayMethod,
    flags: &[Vec<Flag>; 2],
) -> Outcome {
    let result = match found {
        [Ok(a), Ok(b)] => between(a, b, method).map(|(delay, _)| delay.with(flags)),
        [Err(error), _] => Err((Detector::A, error.clone())),
        [_, Err(error)] => Err((Detector::B, error.clone())),
    };
    match result {
        Ok(delay) => Outcome { method, delay: Some(delay), refused: None },
        Err(refused) => Outcome { method, delay: None, refused: Some(refused) },
    }
}

/// One trace as it is shown, in so many `points`: about the pulses, or whole where neither trace has one.
fn side(
    found: Result<Pulse<'_>, TraceError>,
    wave: Option<Waveform<'_>>,
    region: Option<[f64; 2]>,
    points: usize,
) -> Side {
    let envelope = wave.filter(|_| points > 0).map(|wave| {
        let whole = [wave.start, wave.time(wave.samples.len() as f64)];
        let [from, to] = region.unwrap_or(whole);
        envelope(&wave, from, to, points)
    });
    match found {
        Ok(pulse) => Side { drawn: Some(drawn(&pulse, region)), refused: None, envelope },
        Err(error) => Side { drawn: None, refused: Some(error), envelope },
    }
}

fn wave(recording: &Recording, detector: Detector) -> Option<Waveform<'_>> {
    match recording.channels.len() {
        1 => recording.waveform(0),
        _ => recording.detector(detector),
    }
}

/// From well before the first edge to well behind the last, ns.
fn region(found: &[Result<Pulse<'_>, TraceError>; 2]) -> Option<[f64; 2]> {
    found.iter().flatten().map(span).reduce(|one, other| [one[0].min(other[0]), one[1].max(other[1])])
}

fn span(pulse: &Pulse<'_>) -> [f64; 2] {
    let top = pulse.top[1] - pulse.middle;
    let reach = 4.0 * pulse.rise + 2.0 * top;
    [pulse.wave.time(pulse.middle - reach), pulse.wave.time(pulse.middle + 2.0 * reach)]
}

fn drawn(pulse: &Pulse<'_>, region: Option<[f64; 2]>) -> Drawn {
    let sign = if pulse.inverted { -1.0 } else { 1.0 };
    Drawn {
        quiet: [pulse.wave.start, pulse.wave.time(pulse.quiet as f64)],
        baseline: pulse.baseline.level,
        sigma: pulse.baseline.sigma,
        top_level: pulse.baseline.level + sign * pulse.height,
        top: pulse.top.map(|place| pulse.wave.time(place)),
        height: pulse.height,
        region: region.unwrap_or_else(|| span(pulse)),
    }
}

#[cfg(test)]
#[path = "measure_test.rs"]
mod tests;
