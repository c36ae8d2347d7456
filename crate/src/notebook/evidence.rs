//! What a row's delay is taken from when it is not typed: marks on a picture of the screen, or recorded traces.
//!
//! Pictures and trace files are kept beside the notebook, by their SHA-256; the notebook holds marks and measured
//! delays, and works without the files.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Names a marked grid for the life of the notebook.
pub type GridId = u32;

/// From what the delay of a row is taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Evidence {
    /// Marks on a picture of the screen.
    Picture(Picture),
    /// Recorded traces.
    Traces(Traces),
}

/// A file kept beside the notebook.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StoredFile {
    /// SHA-256 of its bytes, 64 hexadecimal digits.
    pub sha256: String,
    /// What it was called.
    pub name: String,
    /// Its length, bytes.
    pub bytes: u32,
}

/// The hash of every file that a text names: all runs of just 64 hexadecimal digits. The text of a notebook, or of
/// entries of its log, names the files that it refers to, and those to which an undo leads back.
pub fn hashes_in(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter: char| !letter.is_ascii_hexdigit()).filter(|run| run.len() == 64)
}

/// A place on a picture, x to the right and y downwards, in whole hundredths of a pixel; the middle of the first pixel
/// is at (50, 50).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
pub struct Spot(pub i32, pub i32);

/// The marks of a row on its picture.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Picture {
    /// The picture, as scaled down.
    pub file: StoredFile,
    /// Its width, pixels.
    pub width: u32,
    /// Its height, pixels.
    pub height: u32,
    /// The grid that its marks are read against.
    pub grid: GridId,
    /// Edge A, marked once or more.
    pub a: Vec<Spot>,
    /// Edge B, marked once or more.
    pub b: Vec<Spot>,
}

/// The grid of a screen as marked on a picture. One may serve all pictures that a camera took from one place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Grid {
    /// Names the grid for the life of the notebook.
    pub id: GridId,
    /// Divisions from the left corners to the right ones, along the time axis.
    pub columns: u32,
    /// Divisions from the upper corners to the lower ones.
    pub rows: u32,
    /// Upper left, upper right, lower right, lower left.
    pub corners: [Spot; 4],
    /// Crossings marked to see whether the lens bends the grid.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub checks: Vec<GridCheck>,
}

/// A crossing held against the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct GridCheck {
    /// Half divisions to the right of the upper left corner.
    pub half_columns: u32,
    /// Half divisions below it.
    pub half_rows: u32,
    /// Where it was marked.
    pub at: Spot,
}

/// What was measured on the traces of a row. Texts are decimal numbers with a point, in nanoseconds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Traces {
    /// The file with both channels, or one file each, A first.
    pub files: Vec<StoredFile>,
    /// What each estimator gave.
    pub delays: Vec<TraceDelay>,
    /// Fixed level less constant fraction, with its standard uncertainty, where both gave a delay.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub walk: Option<TraceTime>,
}

/// A time measured on traces.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TraceTime {
    /// The value, ns.
    pub value: String,
    /// Its standard uncertainty, ns.
    pub uncertainty: String,
}

/// What one estimator made of the traces of a row.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TraceDelay {
    /// Which estimator.
    pub estimator: Estimator,
    /// The delay; none where it gave none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub delay: Option<TraceTime>,
    /// Why it gave none, or what to be wary of.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub remark: String,
}

/// How an edge is timed on a trace.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema))]
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

    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::FixedLevel,
        Self::ConstantFraction,
        Self::EdgeLine,
        Self::CrossCorrelation,
        Self::ShiftAndScale,
    ];
}

#[cfg(test)]
#[path = "evidence_test.rs"]
mod tests;
