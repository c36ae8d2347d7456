//! Every sentence that the first format could hold, as it was written then.

use super::super::{TraceDelay, Traces};
use super::*;
use crate::decimal::DecimalMark::Point;
use crate::words::{Message, Value};

fn files() -> Vec<StoredFile> {
    ["near. 1 m, trace B: x.csv", "b.csv"]
        .map(|name| StoredFile { name: name.into(), ..StoredFile::default() })
        .into()
}

const SENTENCES: [&str; 19] = [
    "Level: 0.213 V over the baselines, half of the smaller pulse.",
    "Level: 0.05 V over the baselines, half of the smallest pulse of the run.",
    "Level: 12 V over the baselines, as stated.",
    "Fraction: 50 %.",
    "Fraction: 33.3 %.",
    "Trace A: the pulse goes down, and was turned over.",
    "Trace B: the pulse is less than 5 times as high as the noise.",
    "Trace B: a second edge crosses half the height at sample 812.",
    "Trace A: something stands out of the baseline at sample 0.",
    "Trace A: the noise goes on over 3 samples, which the uncertainty takes into account.",
    "Trace B: only about 2 samples lie on the edge, so sampling faster would help.",
    "Trace A: the uncertainty is more than a tenth of the rise, so it is itself known only roughly.",
    "Level: 0.2 V over the baselines, as stated. Trace A: the pulse goes down, and was turned over. Trace B: a second edge crosses half the height at sample 9.",
    "Fraction: 12.5 %. Trace A: the pulse is less than 5 times as high as the noise. Trace A: the noise goes on over 10 samples, which the uncertainty takes into account. Trace B: the pulse is less than 5 times as high as the noise.",
    "near. 1 m, trace B: x.csv, trace A: 12 samples are too few for a baseline and an edge: it takes at least 32.",
    "b.csv, trace B: sample 77 has no finite value: record the trace again.",
    "b.csv, trace B: no pulse: the trace rises 0.01235 V over its baseline, less than 4 times its noise of 0.009877 V (largest at sample 7).",
    "b.csv, trace B: a level of 0.9 V over the baseline is not on the edge: it must lie between 0.01 V and 0.7841 V here.",
    "b.csv, trace B: the noise hides the crossing near sample 412: its uncertainty of 1.25 ns is more than a quarter of the rise of 4.1 ns; average more pulses.",
];

const REASONS: [&str; 8] = [
    "the time from sample to sample is -0.5 ns, and must be above 0.",
    "clipped: from sample 415 the top is flat at 0.6 V for 33 samples; record with a larger range.",
    "the pulse begins at sample 3, with no quiet part before it on the record: record more time before the trigger.",
    "the record ends at sample 399 before the pulse has shown its top: record more time after the trigger.",
    "a fraction of 0.95 is not on the edge: it must lie between 0.1 and 0.9.",
    "only 1 samples lie on the edge near sample 40, and a line takes 2: sample faster, or take a constant fraction.",
    "the two traces have steps of 0.1 ns and 0.2 ns: cross-correlation takes equal ones.",
    "the two edges can't be laid over one another near sample 40: their shapes differ too much, or the record ends.",
];

/// The numbers of a text, in their order.
fn numbers(text: &str) -> Vec<String> {
    let parts = text.split(|sign: char| !(sign.is_ascii_digit() || ".-e".contains(sign)));
    let parts = parts.filter(|part| part.contains(|sign: char| sign.is_ascii_digit()));
    parts.map(|part| part.trim_end_matches('.').to_owned()).collect()
}

/// The numbers that fill what is said, at any depth.
fn filled(said: &Value, found: &mut Vec<String>) {
    match said {
        Value::Message(Message { values, .. }) => {
            for value in values.values() {
                filled(value, found);
            }
        }
        Value::All { all } => {
            for value in all {
                filled(value, found);
            }
        }
        Value::Text(text) => found.extend(numbers(&text.replace('−', "-"))),
        Value::Number(number) => found.push(number.to_string()),
    }
}

#[test]
fn every_sentence_is_read_back_with_its_numbers() {
    let reasons = REASONS.map(|reason| format!("b.csv, trace B: {reason}"));
    for text in SENTENCES.into_iter().chain(reasons.iter().map(String::as_str)) {
        let read = remarks(text, &files());
        assert!(!read.iter().any(|remark| matches!(remark, Remark::Words(_))), "{text}");
        let mut told = Vec::new();
        for remark in &read {
            filled(&remark.said(&files(), Point), &mut told);
        }
        let mut wrote = numbers(text);
        // What every sentence of its kind says stands in the tables.
        let is_constant = |number: &String| ["0", "5", "4", "0.1", "0.9"].contains(&number.as_str());
        wrote.retain(|number| told.contains(number) || !is_constant(number));
        told.sort_unstable();
        wrote.sort_unstable();
        told.dedup();
        wrote.dedup();
        assert_eq!(told, wrote, "{text}");
    }
}

/// Very small and very large numbers were told with an `e`, and are told with a power of ten now.
#[test]
fn numbers_with_a_power_of_ten_stay_what_they_were() {
    let text = "b.csv, trace B: the time from sample to sample is -3.000e-7 ns, and must be above 0.";
    let read = remarks(text, &files());
    let told = read.first().map(|remark| format!("{:?}", remark.said(&files(), Point)));
    assert!(told.is_some_and(|told| told.contains(r"−3.000\u{a0}×\u{a0}10⁻⁷")), "{read:?}");
}

#[test]
fn what_no_template_fits_stays_as_it_is() {
    for text in [
        "Trace A: see the trace.",
        "Level: NaN V over the baselines, as stated.",
        "Level: 0.2 V over the baselines, as stated. And more.",
        "c.csv, trace B: sample 77 has no finite value: record the trace again.",
        "Fraction: 50 %",
        "a. b. c",
        " ",
        "…",
    ] {
        assert_eq!(remarks(text, &files()), [Remark::Words(text.to_owned())]);
        assert_eq!(Remark::Words(text.to_owned()).said(&files(), Point), text.into());
    }
    assert_eq!(remarks("", &files()), []);
}

/// Of either format, and what is written is the newer one.
#[test]
fn traces_of_both_formats_are_read() -> Result<(), serde_json::Error> {
    let old = r#"{"files":[],"delays":[{"estimator":"fixed_level","delay":{"value":"5.7","uncertainty":"0.03"},"remark":"Level: 0.16 V over the baselines, half of the smallest pulse of the run."},{"estimator":"edge_line"}]}"#;
    let traces: Traces = serde_json::from_str(old)?;
    let new = serde_json::to_string(&traces)?;
    assert!(new.contains(r#""remarks":[{"level":{"volts":"0.16","of":"run"}}]"#), "{new}");
    assert_eq!(serde_json::from_str::<Traces>(&new)?, traces);
    assert!(
        matches!(traces.delays.as_slice(), [TraceDelay { .. }, TraceDelay { remarks, .. }] if remarks.is_empty())
    );
    assert!(serde_json::from_str::<Traces>(r#"{"files":[],"delays":[],"more":1}"#).is_err());
    Ok(())
}
