//! What was measured on recorded traces.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Remark, StoredFile};
use crate::all_variants;
use crate::trace::DelayMethod;

/// What was measured on the traces of a row. Texts are decimal numbers with a point, in nanoseconds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS), schemars(deny_unknown_fields))]
pub struct Traces {
    /// The file with both channels, or one file each, A first.
    pub files: Vec<StoredFile>,
    /// What each estimator gave.
    pub delays: Vec<TraceDelay>,
    /// Fixed level less constant fraction, with its standard uncertainty, where both gave a delay.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional))]
    pub walk: Option<TraceTime>,
    /// The layout of each file, in their order, where a person stated it, as JSON, which is read only where the file is; empty
    /// for a file that was read as it was recognised. None at all where all were.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(not(target_arch = "wasm32"), schemars(default), ts(optional, as = "Option<_>"))]
    pub layouts: Vec<String>,
}

/// A time measured on traces.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct TraceTime {
    /// The value, ns.
    pub value: String,
    /// Its standard uncertainty, ns.
    pub uncertainty: String,
}

/// What one estimator made of the traces of a row.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS), schemars(deny_unknown_fields))]
pub struct TraceDelay {
    /// Which estimator.
    pub estimator: Estimator,
    /// The delay; none where it gave none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(not(target_arch = "wasm32"), ts(optional))]
    pub delay: Option<TraceTime>,
    /// By what it was taken and what to be wary of, or why there is none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(not(target_arch = "wasm32"), schemars(default), ts(optional, as = "Option<_>"))]
    pub remarks: Vec<Remark>,
}

/// How an edge is timed on a trace.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Estimator {
    /// Where it crosses the same level on both.
    FixedLevel,
    /// Where it crosses the same fraction of its own height.
    #[default]
    ConstantFraction,
    /// Where the line through its middle meets the baseline.
    EdgeLine,
    /// By how much the two have to be shifted to lie on each other.
    CrossCorrelation,
    /// The same, with their heights fitted too.
    ShiftAndScale,
}

impl From<DelayMethod> for Estimator {
    fn from(method: DelayMethod) -> Self {
        match method {
            DelayMethod::FixedLevel { .. } => Self::FixedLevel,
            DelayMethod::ConstantFraction { .. } => Self::ConstantFraction,
            DelayMethod::EdgeLine => Self::EdgeLine,
            DelayMethod::CrossCorrelation { refined: false } => Self::CrossCorrelation,
            DelayMethod::CrossCorrelation { refined: true } => Self::ShiftAndScale,
        }
    }
}

impl Estimator {
    /// What the notebook's format calls it.
    pub const fn id(self) -> &'static str {
        match self {
            Self::FixedLevel => "fixed_level",
            Self::ConstantFraction => "constant_fraction",
            Self::EdgeLine => "edge_line",
            Self::CrossCorrelation => "cross_correlation",
            Self::ShiftAndScale => "shift_and_scale",
        }
    }
}

all_variants!(Estimator: FixedLevel, ConstantFraction, EdgeLine, CrossCorrelation, ShiftAndScale);

#[cfg(test)]
#[path = "traces_test.rs"]
mod tests;
