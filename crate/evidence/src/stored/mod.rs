//! What a notebook stores of evidence: what a row's delay is taken from when it is not typed, marks on a picture of the
//! screen or recorded traces.
//!
//! Pictures and trace files are kept beside the notebook, by their SHA-256; the notebook holds marks and measured
//! delays, and works without the files. The page's core reads and writes these types, the worker makes them.

// Files beside the notebook.
mod file;

// Marks on pictures.
mod picture;

// What is to be said of a delay; delays.
mod remark;
mod traces;

// The same as the first format stored it.
mod prose;
mod first_format;

// What was measured on traces, as it is stored.
mod measured;

pub use file::{StoredFile, hashes_in};
pub use measured::{common_level, refusal};
pub use picture::{EdgeHeight, EdgeHeights, Grid, GridCheck, GridId, Picture, Spot};
pub use remark::{LevelOf, Remark};
pub use traces::{Estimator, TraceDelay, TraceTime, Traces};

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// From what the delay of a row is taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Evidence {
    /// Marks on a picture of the screen.
    Picture(Picture),
    /// Recorded traces.
    Traces(Traces),
}

impl Evidence {
    /// The files that it rests on.
    pub fn files(&self) -> &[StoredFile] {
        match self {
            Self::Picture(picture) => std::slice::from_ref(&picture.file),
            Self::Traces(traces) => &traces.files,
        }
    }
}
