//! How the light goes from the splitter to the carriage.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the carriage carries. The light goes along the rail once, or there and back.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Path {
    /// Detector B rides on the carriage: path factor 1.
    #[default]
    Detector,
    /// A mirror rides on the carriage and sends the light back: path factor 2.
    Mirror,
}

impl Path {
    /// The path factor f in Δt = t₀ + f·d/v.
    pub fn factor(self) -> f64 {
        match self {
            Self::Detector => 1.0,
            Self::Mirror => 2.0,
        }
    }
}

/// How a beam that makes the angle θ with the rails reaches what is on the carriage, at the reading r.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Beam {
    /// A beam wider than the detector: the front that meets it has gone r·cos θ.
    #[default]
    Wide,
    /// A thin beam that the detector follows across the rail: it has gone r/cos θ.
    Followed,
}

impl Beam {
    /// By what share of the reading the way of a beam at a small angle, in radians, is longer: ±θ²/2, to within θ⁴/4.
    pub fn lengthening(self, angle: f64) -> f64 {
        let share = angle * angle / 2.0;
        match self {
            Self::Wide => -share,
            Self::Followed => share,
        }
    }
}
