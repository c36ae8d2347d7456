//! Remarks as the first format stored them: English sentences of fixed templates, read back to what they say.
//!
//! The templates are those that were written then, and stay as they are whatever the words of today become. What none of
//! them fits stays in the words that it was stored in.

use super::remark::file_of;
use super::{LevelOf, Remark, StoredFile};
use crate::trace::{Detector, Digits, Flag, TraceError};

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
        Some(Remark::Refused { trace, problem: self::problem(problem)? })
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
    of("Level: {} V over the baselines, half of the smaller pulse.", LevelOf::Pair)
        .or_else(|| {
            of("Level: {} V over the baselines, half of the smallest pulse of the run.", LevelOf::Run)
        })
        .or_else(|| of("Level: {} V over the baselines, as stated.", LevelOf::Stated))
        .or_else(|| Some(Remark::Fraction { percent: only(sentence, "Fraction: {} %.")? }))
}

fn wary(sentence: &str) -> Option<Remark> {
    let (trace, told) = match sentence.strip_prefix("Trace A: ") {
        Some(told) => (Detector::A, told),
        None => (Detector::B, sentence.strip_prefix("Trace B: ")?),
    };
    let count = |template| fields::<1>(told, template).and_then(|[found]| whole(found));
    let flag = match told {
        "the pulse goes down, and was turned over." => Flag::Inverted,
        "the pulse is less than 5 times as high as the noise." => Flag::Noisy,
        "the uncertainty is more than a tenth of the rise, so it is itself known only roughly." => {
            Flag::Rough
        }
        _ => count("a second edge crosses half the height at sample {}.")
            .map(|sample| Flag::DoubleEdge { sample })
            .or_else(|| {
                count("something stands out of the baseline at sample {}.")
                    .map(|sample| Flag::NotQuiet { sample })
            })
            .or_else(|| {
                count("the noise goes on over {} samples, which the uncertainty takes into account.")
                    .map(|samples| Flag::CorrelatedNoise { samples })
            })
            .or_else(|| {
                count("only about {} samples lie on the edge, so sampling faster would help.")
                    .map(|samples| Flag::FewOnEdge { samples })
            })?,
    };
    Some(Remark::Edge { trace, flag })
}

/// How a template's fields make a problem.
type Read = fn(&str) -> Option<TraceError>;

const PROBLEMS: [Read; 13] = [
    |text| {
        let [samples, needed] =
            fields(text, "{} samples are too few for a baseline and an edge: it takes at least {}.")?;
        Some(TraceError::FewSamples { samples: whole(samples)?, needed: whole(needed)? })
    },
    |text| {
        let [sample] = fields(text, "sample {} has no finite value: record the trace again.")?;
        Some(TraceError::NotFinite { sample: whole(sample)? })
    },
    |text| {
        let step = only(text, "the time from sample to sample is {} ns, and must be above 0.")?;
        Some(TraceError::Step { step })
    },
    |text| {
        let [height, noise, sample] = fields(
            text,
            "no pulse: the trace rises {} V over its baseline, less than 4 times its noise of {} V (largest at sample {}).",
        )?;
        let (height, noise) = (number(height)?, number(noise)?);
        Some(TraceError::NoPulse { height, noise, sample: whole(sample)? })
    },
    |text| {
        let [sample, limit, samples] = fields(
            text,
            "clipped: from sample {} the top is flat at {} V for {} samples; record with a larger range.",
        )?;
        Some(TraceError::Clipped { sample: whole(sample)?, samples: whole(samples)?, limit: number(limit)? })
    },
    |text| {
        let [sample] = fields(
            text,
            "the pulse begins at sample {}, with no quiet part before it on the record: record more time before the trigger.",
        )?;
        Some(TraceError::NoBaseline { sample: whole(sample)? })
    },
    |text| {
        let [last] = fields(
            text,
            "the record ends at sample {} before the pulse has shown its top: record more time after the trigger.",
        )?;
        Some(TraceError::NoTop { last: whole(last)? })
    },
    |text| {
        let [level, lowest, highest] = fields(
            text,
            "a level of {} V over the baseline is not on the edge: it must lie between {} V and {} V here.",
        )?;
        let (level, lowest) = (number(level)?, number(lowest)?);
        Some(TraceError::Level { level, lowest, highest: number(highest)? })
    },
    |text| {
        let fraction = only(text, "a fraction of {} is not on the edge: it must lie between 0.1 and 0.9.")?;
        Some(TraceError::Fraction { fraction })
    },
    |text| {
        let [sample, uncertainty, rise] = fields(
            text,
            "the noise hides the crossing near sample {}: its uncertainty of {} ns is more than a quarter of the rise of {} ns; average more pulses.",
        )?;
        let (uncertainty, rise) = (number(uncertainty)?, number(rise)?);
        Some(TraceError::Hidden { sample: whole(sample)?, uncertainty, rise })
    },
    |text| {
        let [samples, sample, needed] = fields(
            text,
            "only {} samples lie on the edge near sample {}, and a line takes {}: sample faster, or take a constant fraction.",
        )?;
        let (sample, samples) = (whole(sample)?, whole(samples)?);
        Some(TraceError::FewOnEdge { sample, samples, needed: whole(needed)? })
    },
    |text| {
        let [first, second] = fields(
            text,
            "the two traces have steps of {} ns and {} ns: cross-correlation takes equal ones.",
        )?;
        Some(TraceError::UnequalSteps { first: number(first)?, second: number(second)? })
    },
    |text| {
        let [sample] = fields(
            text,
            "the two edges can't be laid over one another near sample {}: their shapes differ too much, or the record ends.",
        )?;
        Some(TraceError::NoLag { sample: whole(sample)? })
    },
];

fn problem(text: &str) -> Option<TraceError> {
    PROBLEMS.iter().find_map(|read| read(text))
}

/// The number in the one place that a template leaves open.
fn only(text: &str, template: &str) -> Option<Digits> {
    let [found] = fields(text, template)?;
    number(found)
}

/// What stands in the places that a template leaves open; none where the rest of the text is not the template's.
fn fields<'a, const N: usize>(text: &'a str, template: &str) -> Option<[&'a str; N]> {
    let mut parts = template.split("{}");
    let mut rest = text.strip_prefix(parts.next()?)?;
    let mut found = Vec::with_capacity(N);
    for part in parts {
        let at = if part.is_empty() { rest.len() } else { rest.find(part)? };
        found.push(rest.get(..at)?);
        rest = rest.get(at + part.len()..)?;
    }
    if rest.is_empty() { found.try_into().ok() } else { None }
}

fn whole(text: &str) -> Option<usize> {
    text.parse().ok()
}

/// A number as it was told; what was not finite was told as "NaN" or "inf", and is no number here.
fn number(text: &str) -> Option<Digits> {
    Digits::spelled(text)
}

#[cfg(test)]
#[path = "prose_test.rs"]
mod tests;
