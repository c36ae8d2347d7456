//! What is to be known of a pulse or its edge beside its numbers.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Digits, Parts, PartsError};

/// What is to be known of an edge beside its time. Samples count from 0.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS), schemars(!try_from))]
#[serde(rename_all = "snake_case", tag = "flag", try_from = "Parts")]
pub enum Flag {
    /// The pulse goes down; it was turned over.
    Inverted,
    /// The height is below 5 standard deviations of the noise, though not beyond doubt.
    Noisy,
    /// Another edge crosses half the height, or runs into the top of this trace and not into that of the other.
    DoubleEdge {
        /// Where.
        sample: usize,
    },
    /// The edge has another shape than that of the other trace: the delay hangs on where on the edges it is taken.
    UnlikeEdge {
        /// By how much it differs between 20 and 80 % of the heights, ns, above 0.
        time: Digits,
    },
    /// Something stands out of the part before the pulse.
    NotQuiet {
        /// Where.
        sample: usize,
    },
    /// The quiet part is not level: hum or drift goes on under the pulse.
    Drift {
        /// Its last third less its first, V.
        volts: Digits,
    },
    /// Neighbouring samples share their noise; the uncertainties take it into account.
    CorrelatedNoise {
        /// How far, in samples.
        samples: usize,
    },
    /// Fewer than 3 samples lie between 10 and 90 %: the crossing hangs on the straight line between two.
    FewOnEdge {
        /// About how many there are.
        samples: usize,
    },
    /// The top is all one value: whether the pulse ends there or is cut off by the converter's limit can't be told.
    FlatTop {
        /// Which, V.
        volts: Digits,
    },
    /// The samples were taken at unequal steps, and carried to equal ones by the times in the file.
    UnevenSteps {
        /// By how much a step differs from the mean one at most, per cent of that.
        percent: Digits,
    },
    /// The unit of its times, or of their step, stands nowhere in the file: it was supposed.
    SupposedUnit,
    /// The uncertainty is over a tenth of the rise: how well it is known itself begins to suffer.
    Rough,
}

impl Flag {
    /// Of a kind, by the name that it is stored under.
    ///
    /// # Errors
    /// See [`PartsError`].
    pub fn of(kind: &str, parts: &Parts) -> Result<Self, PartsError> {
        Ok(match kind {
            "inverted" => Self::Inverted,
            "noisy" => Self::Noisy,
            "double_edge" => Self::DoubleEdge { sample: parts.whole("sample")? },
            "unlike_edge" => Self::UnlikeEdge { time: parts.digits("time")? },
            "not_quiet" => Self::NotQuiet { sample: parts.whole("sample")? },
            "drift" => Self::Drift { volts: parts.digits("volts")? },
            "correlated_noise" => Self::CorrelatedNoise { samples: parts.whole("samples")? },
            "few_on_edge" => Self::FewOnEdge { samples: parts.whole("samples")? },
            "flat_top" => Self::FlatTop { volts: parts.digits("volts")? },
            "uneven_steps" => Self::UnevenSteps { percent: parts.digits("percent")? },
            "supposed_unit" => Self::SupposedUnit,
            "rough" => Self::Rough,
            other => return Err(PartsError::UnknownKind(other.to_owned())),
        })
    }
}

impl TryFrom<Parts> for Flag {
    type Error = PartsError;

    fn try_from(parts: Parts) -> Result<Self, PartsError> {
        Self::of(parts.text("flag")?, &parts)
    }
}
