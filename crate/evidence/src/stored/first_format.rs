//! Traces as any format of the notebook has stored them: format 1 had what is to be said of a delay in words.

use serde::{Deserialize, Deserializer};

use super::{Estimator, Remark, StoredFile, TraceDelay, TraceTime, Traces, prose};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct AnyTraces {
    files: Vec<StoredFile>,
    delays: Vec<AnyDelay>,
    #[serde(default)]
    walk: Option<TraceTime>,
    #[serde(default)]
    layouts: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct AnyDelay {
    estimator: Estimator,
    #[serde(default)]
    delay: Option<TraceTime>,
    #[serde(default)]
    remarks: Vec<Remark>,
    /// Format 1.
    #[serde(default)]
    remark: String,
}

impl<'de> Deserialize<'de> for Traces {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let AnyTraces { files, delays, walk, layouts } = AnyTraces::deserialize(reader)?;
        let delays = delays.into_iter().map(|AnyDelay { estimator, delay, mut remarks, remark }| {
            remarks.extend(prose::remarks(&remark, &files));
            TraceDelay { estimator, delay, remarks }
        });
        Ok(Self { delays: delays.collect(), files, walk, layouts })
    }
}
