//! Where a rail stands, and what earlier versions wrote of it.
//!
//! A form that changes gets a new name, and the name alone tells which form it is. Entries lie in files and bundles,
//! in a browser's local storage and, one by one and with no format number beside them, in its journal: so each is read
//! rightly wherever it lies, and a program that knows the old form alone takes the new one for what it is, something of
//! a later version. The model has the new form only, and names the type that reads all of them by
//! `#[serde(from = "…")]`.
//!
//! Format 1 had `stated` and `meeting` splices, whose distance, gap and uncertainty were metres where they were bare.

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::quantity::{DecimalMark, Unit, parse};

/// Where a rail stands. All bare numbers are in the unit of the rail's ruler, but for readings on the rail before.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[cfg_attr(not(target_arch = "wasm32"), schemars(!from, deny_unknown_fields))]
#[serde(rename_all = "snake_case", from = "AnySplice")]
pub enum Splice {
    /// Not said yet.
    #[default]
    Unsaid,
    /// The reading `mark` lies at the splitter, where d = 0.
    AtSplitter {
        /// The reading at the splitter.
        mark: String,
        /// Its standard uncertainty.
        uncertainty: String,
    },
    /// The reading `mark` stands at a stated distance from the splitter.
    AtDistance {
        /// A reading on this rail.
        mark: String,
        /// Its distance from the splitter.
        distance: String,
        /// Standard uncertainty of that distance.
        uncertainty: String,
    },
    /// The reading `mark` here meets `mark_before` on the rail before, with a gap between.
    Joined {
        /// A reading on this rail.
        mark: String,
        /// A reading on the rail before, in that rail's unit.
        mark_before: String,
        /// From `mark_before` to `mark`, away from the splitter.
        gap: String,
        /// Standard uncertainty of the joint.
        uncertainty: String,
    },
    /// One carriage position read on both rails, once or more.
    Overlap {
        /// The pairs of readings.
        pairs: Vec<OverlapPair>,
    },
    /// The step is an unknown of the fit; `mark` is put at the end of the rail before to begin with.
    Free {
        /// A reading on this rail.
        mark: String,
    },
}

/// One carriage position, read on two rails.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct OverlapPair {
    /// The reading on this rail, in its unit.
    pub here: String,
    /// The reading on the rail before, in that rail's unit.
    pub before: String,
}

/// A splice as any version wrote it.
#[derive(Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum AnySplice {
    Unsaid,
    AtSplitter {
        mark: String,
        uncertainty: String,
    },
    AtDistance {
        mark: String,
        distance: String,
        uncertainty: String,
    },
    Joined {
        mark: String,
        mark_before: String,
        gap: String,
        uncertainty: String,
    },
    Overlap {
        pairs: Vec<OverlapPair>,
    },
    Free {
        mark: String,
    },
    /// Format 1.
    Stated {
        mark: String,
        distance: String,
        uncertainty: String,
    },
    /// Format 1.
    Meeting {
        mark: String,
        mark_before: String,
        gap: String,
        uncertainty: String,
    },
}

impl From<AnySplice> for Splice {
    fn from(any: AnySplice) -> Self {
        match any {
            AnySplice::Unsaid => Self::Unsaid,
            AnySplice::AtSplitter { mark, uncertainty } => Self::AtSplitter { mark, uncertainty },
            AnySplice::AtDistance { mark, distance, uncertainty } => {
                Self::AtDistance { mark, distance, uncertainty }
            }
            AnySplice::Joined { mark, mark_before, gap, uncertainty } => {
                Self::Joined { mark, mark_before, gap, uncertainty }
            }
            AnySplice::Overlap { pairs } => Self::Overlap { pairs },
            AnySplice::Free { mark } => Self::Free { mark },
            AnySplice::Stated { mark, distance, uncertainty } => Self::AtDistance {
                mark,
                distance: with_metres(distance),
                uncertainty: with_metres(uncertainty),
            },
            AnySplice::Meeting { mark, mark_before, gap, uncertainty } => Self::Joined {
                mark,
                mark_before,
                gap: with_metres(gap),
                uncertainty: with_metres(uncertainty),
            },
        }
    }
}

/// The text with its unit written out where it is a bare number, which was metres. Whether it is one does not hang on
/// the decimal mark, which an entry by itself does not tell; what can't be read stays as it was typed.
pub(super) fn with_metres(text: String) -> String {
    let taken_in = |unit| {
        let read = |mark| parse(&text, mark, unit).ok();
        read(DecimalMark::Point).or_else(|| read(DecimalMark::Comma)).map(|number| number.unit)
    };
    let bare = taken_in(Unit::METRE) != taken_in(Unit::MILLIMETRE);
    if bare { format!("{} {}", text.trim(), Unit::METRE.symbol()) } else { text }
}

#[cfg(test)]
#[path = "splice_test.rs"]
mod tests;
