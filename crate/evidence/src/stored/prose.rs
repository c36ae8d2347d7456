//! Remarks as the first format stored them: English sentences of fixed templates, read back to what they say.
//!
//! The templates are those that were written then, and stay as they are whatever the words of today become. What none of
//! them fits stays in the words that it was stored in.

use super::remark::file_of;
use super::{LevelOf, Remark, StoredFile};
use crate::trace::{Detector, Digits, Flag, Parts, TraceError};

/// The remarks that a text says of traces in `files`.
pub(super) fn remarks(text: &str, files: &[StoredFile]) -> Vec<Remark> {
    if text.is_empty() {
        return Vec::new();
    }
    let read = refusal(text, files).map(|refusal| vec![refusal]).or_else(|| sentences(text));
    read.unwrap_or_else(|| vec![Remark::Words(text.to_owned())])
}

/// Why there is no delay: file, trace, and reason.
fn refusal(text: &str, files: &[StoredFile]) -> Option<Remark> {
    [Detector::A, Detector::B].into_iter().find_map(|trace| {
        let told = text.strip_prefix(file_of(files, trace))?;
        let problem = told.strip_prefix(match trace {
            Detector::A => ", trace A: ",
            Detector::B => ", trace B: ",
        })?;
        let problem = PROBLEMS.iter().find_map(|(kind, template)| {
            TraceError::of(kind, &Parts::new(fields(problem, template)?)).ok()
        })?;
        Some(Remark::Refused { trace, problem })
    })
}

/// By what the delay was taken, and what to be wary of: one sentence after the other.
fn sentences(text: &str) -> Option<Vec<Remark>> {
    let mut remarks = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        // A sentence ends at a stop with a space after it, or with the text.
        let end = rest.find(". ").map_or(rest.len(), |stop| stop + 1);
        let (sentence, after) = rest.split_at(end);
        remarks.push(level(sentence).or_else(|| wary(sentence))?);
        rest = after.strip_prefix(' ').unwrap_or(after);
    }
    Some(remarks)
}

fn level(sentence: &str) -> Option<Remark> {
    let of = |template, of| Some(Remark::Level { volts: only(sentence, template)?, of });
    of("Level: {number} V over the baselines, half of the smaller pulse.", LevelOf::Pair)
        .or_else(|| {
            of("Level: {number} V over the baselines, half of the smallest pulse of the run.", LevelOf::Run)
        })
        .or_else(|| of("Level: {number} V over the baselines, as stated.", LevelOf::Stated))
        .or_else(|| Some(Remark::Fraction { percent: only(sentence, "Fraction: {number} %.")? }))
}

fn wary(sentence: &str) -> Option<Remark> {
    let (trace, told) = match sentence.strip_prefix("Trace A: ") {
        Some(told) => (Detector::A, told),
        None => (Detector::B, sentence.strip_prefix("Trace B: ")?),
    };
    let flag = FLAGS
        .iter()
        .find_map(|(kind, template)| Flag::of(kind, &Parts::new(fields(told, template)?)).ok())?;
    Some(Remark::Edge { trace, flag })
}

/// What each kind of refusal was told in, with the places of its numbers.
const PROBLEMS: [(&str, &str); 13] = [
    ("few_samples", "{samples} samples are too few for a baseline and an edge: it takes at least {needed}."),
    ("not_finite", "sample {sample} has no finite value: record the trace again."),
    ("step", "the time from sample to sample is {step} ns, and must be above 0."),
    (
        "no_pulse",
        "no pulse: the trace rises {height} V over its baseline, less than 4 times its noise of {noise} V (largest at sample {sample}).",
    ),
    (
        "clipped",
        "clipped: from sample {sample} the top is flat at {limit} V for {samples} samples; record with a larger range.",
    ),
    (
        "no_baseline",
        "the pulse begins at sample {sample}, with no quiet part before it on the record: record more time before the trigger.",
    ),
    (
        "no_top",
        "the record ends at sample {last} before the pulse has shown its top: record more time after the trigger.",
    ),
    (
        "level",
        "a level of {level} V over the baseline is not on the edge: it must lie between {lowest} V and {highest} V here.",
    ),
    ("fraction", "a fraction of {fraction} is not on the edge: it must lie between 0.1 and 0.9."),
    (
        "hidden",
        "the noise hides the crossing near sample {sample}: its uncertainty of {uncertainty} ns is more than a quarter of the rise of {rise} ns; average more pulses.",
    ),
    (
        "few_on_edge",
        "only {samples} samples lie on the edge near sample {sample}, and a line takes {needed}: sample faster, or take a constant fraction.",
    ),
    (
        "unequal_steps",
        "the two traces have steps of {first} ns and {second} ns: cross-correlation takes equal ones.",
    ),
    (
        "no_lag",
        "the two edges can't be laid over one another near sample {sample}: their shapes differ too much, or the record ends.",
    ),
];

/// What each kind of flag was told in, with the place of its number.
const FLAGS: [(&str, &str); 7] = [
    ("inverted", "the pulse goes down, and was turned over."),
    ("noisy", "the pulse is less than 5 times as high as the noise."),
    ("rough", "the uncertainty is more than a tenth of the rise, so it is itself known only roughly."),
    ("double_edge", "a second edge crosses half the height at sample {sample}."),
    ("not_quiet", "something stands out of the baseline at sample {sample}."),
    (
        "correlated_noise",
        "the noise goes on over {samples} samples, which the uncertainty takes into account.",
    ),
    ("few_on_edge", "only about {samples} samples lie on the edge, so sampling faster would help."),
];

/// The number in the one place that a template leaves open.
fn only(text: &str, template: &str) -> Option<Digits> {
    let [(_, found)] = <[_; 1]>::try_from(fields(text, template)?).ok()?;
    Some(Digits::stored(&found))
}

/// The numbers in the places that a template leaves open, by the places' names; none where the rest of the text is not
/// the template's. What was not finite was told as "NaN" or "inf", and is no number here.
fn fields(text: &str, template: &str) -> Option<Vec<(String, String)>> {
    let (start, places) = template.split_once('{').unwrap_or((template, ""));
    let mut rest = text.strip_prefix(start)?;
    let mut found = Vec::new();
    for place in places.split('{').filter(|place| !place.is_empty()) {
        let (name, after) = place.split_once('}')?;
        let at = if after.is_empty() { rest.len() } else { rest.find(after)? };
        let number = rest.get(..at)?;
        Digits::spelled(number)?;
        found.push((name.to_owned(), number.to_owned()));
        rest = rest.get(at + after.len()..)?;
    }
    rest.is_empty().then_some(found)
}

#[cfg(test)]
#[path = "prose_test.rs"]
mod tests;
