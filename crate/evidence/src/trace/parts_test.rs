//! What is written of every kind reads back.

use std::fmt::Debug;

use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::trace::{Digits, Flag, TraceError};

fn reads_back<T: Serialize + DeserializeOwned + PartialEq + Debug>(all: impl IntoIterator<Item = T>) {
    for each in all {
        let json = serde_json::to_string(&each).unwrap_or_default();
        assert_eq!(serde_json::from_str::<T>(&json).ok(), Some(each), "{json}");
    }
}

#[test]
fn every_kind_reads_back() {
    let number = || Digits::of(-0.0125, 3);
    reads_back([
        Flag::Inverted,
        Flag::Noisy,
        Flag::DoubleEdge { sample: 1 },
        Flag::UnlikeEdge { time: number() },
        Flag::NotQuiet { sample: 2 },
        Flag::Drift { volts: number() },
        Flag::CorrelatedNoise { samples: 3 },
        Flag::FewOnEdge { samples: 4 },
        Flag::FlatTop { volts: number() },
        Flag::UnevenSteps { percent: number() },
        Flag::SupposedUnit,
        Flag::Rough,
    ]);
    reads_back([
        TraceError::FewSamples { samples: 1, needed: 2 },
        TraceError::NotFinite { sample: 3 },
        TraceError::Step { step: number() },
        TraceError::NoPulse { height: number(), noise: Digits::of(7.0, 3), sample: 4 },
        TraceError::Clipped { sample: 5, samples: 6, limit: number() },
        TraceError::NoBaseline { sample: 7 },
        TraceError::NoTop { last: 8 },
        TraceError::Level { level: number(), lowest: Digits::of(1.0, 3), highest: Digits::of(2.0, 3) },
        TraceError::Fraction { fraction: number() },
        TraceError::Hidden { sample: 9, uncertainty: number(), rise: Digits::of(3.0, 3) },
        TraceError::FewOnEdge { sample: 10, samples: 11, needed: 12 },
        TraceError::UnequalSteps { first: number(), second: Digits::of(4.0, 3) },
        TraceError::NoLag { sample: 13 },
    ]);
}

#[test]
fn what_is_not_whole_is_refused_by_its_name() {
    for (json, told) in [
        (r#"{"kind":"no_sun","sample":1}"#, "unknown variant `no_sun`"),
        (r#"{"sample":1}"#, "“kind” is missing"),
        (r#"{"kind":"no_lag"}"#, "“sample” is missing"),
        (r#"{"kind":"no_lag","sample":-1}"#, "“sample” is missing, or is no such number"),
        (r#"{"kind":"no_lag","sample":1.5}"#, "a text or a whole number"),
    ] {
        let error = serde_json::from_str::<TraceError>(json).err().map(|error| error.to_string());
        assert!(error.as_deref().is_some_and(|error| error.contains(told)), "{json}: {error:?}");
    }
}
