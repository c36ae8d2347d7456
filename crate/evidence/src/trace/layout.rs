//! How the numbers of a text file are set out: what is recognised, shown, and corrected by a person.

use crate::all_variants;
use crate::decimal::DecimalMark;
use serde::{Deserialize, Serialize};

/// How the numbers of a file are set out.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Layout {
    /// What stands between two fields.
    pub delimiter: Delimiter,
    /// How decimals are marked.
    pub decimal: DecimalMark,
    /// The first line that holds samples, counted from 1.
    pub first_line: usize,
    /// The columns of that line.
    pub columns: Vec<TraceColumn>,
    /// Time from sample to sample where no column gives it, ns.
    pub step: Option<f64>,
    /// The unit of that step stands nowhere: seconds were supposed. A person who states it states it in nanoseconds.
    #[serde(default)]
    pub is_step_supposed: bool,
    /// Time of the first sample where no column gives it, ns.
    pub start: Option<f64>,
    /// What the file says beside the samples.
    pub settings: Vec<FileSetting>,
}

/// Something that the file says beside its samples.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct FileSetting {
    /// What it is.
    pub name: String,
    /// Its value, as written.
    pub value: String,
}

/// One column.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct TraceColumn {
    /// What it holds.
    pub role: Role,
    /// Its unit.
    pub unit: ColumnUnit,
    /// The unit stands in the file; otherwise it was supposed, and wants a look.
    pub unit_stated: bool,
    /// As the header has it; may be empty.
    pub label: String,
}

/// What a column holds.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// The time of the row's samples.
    Time,
    /// Volts of the fixed detector.
    ChannelA,
    /// Volts of the far detector.
    ChannelB,
    /// Nothing that is needed: a running number, settings, nothing at all.
    Ignored,
}

/// What stands between two fields.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Delimiter {
    /// `\t`
    Tab,
    /// `;`
    Semicolon,
    /// `,`
    Comma,
    /// `|`
    Bar,
    /// One space or tab, or several.
    Space,
}

// The surest first.
all_variants!(Delimiter: Tab, Semicolon, Comma, Bar, Space);

impl Delimiter {
    pub(super) fn byte(self) -> u8 {
        match self {
            Self::Tab => b'\t',
            Self::Semicolon => b';',
            Self::Comma => b',',
            Self::Bar => b'|',
            Self::Space => b' ',
        }
    }
}

/// A unit of a column.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub enum ColumnUnit {
    /// Seconds.
    #[serde(rename = "s")]
    Second,
    /// Milliseconds.
    #[serde(rename = "ms")]
    Millisecond,
    /// Microseconds.
    #[serde(rename = "µs")]
    Microsecond,
    /// Nanoseconds.
    #[serde(rename = "ns")]
    Nanosecond,
    /// Picoseconds.
    #[serde(rename = "ps")]
    Picosecond,
    /// Volts.
    #[serde(rename = "V")]
    Volt,
    /// Millivolts.
    #[serde(rename = "mV")]
    Millivolt,
    /// None: a running number, or a column that is not read.
    #[serde(rename = "1")]
    One,
}

impl ColumnUnit {
    /// Those in which times are told.
    pub(super) const TIMES: [Self; 5] =
        [Self::Second, Self::Millisecond, Self::Microsecond, Self::Nanosecond, Self::Picosecond];

    /// The unit that a word spells.
    pub fn spelled(word: &str) -> Option<Self> {
        let word = word.trim();
        Some(match word {
            "V" => Self::Volt,
            "mV" => Self::Millivolt,
            _ => match word.to_lowercase().as_str() {
                "s" | "sec" | "second" | "seconds" => Self::Second,
                "ms" | "msec" | "milliseconds" => Self::Millisecond,
                "us" | "µs" | "μs" | "usec" | "microseconds" => Self::Microsecond,
                "ns" | "nsec" | "nanoseconds" => Self::Nanosecond,
                "ps" | "psec" | "picoseconds" => Self::Picosecond,
                "v" | "volt" | "volts" => Self::Volt,
                "millivolt" | "millivolts" => Self::Millivolt,
                _ => return None,
            },
        })
    }

    /// Whether times are told in it.
    pub fn is_time(self) -> bool {
        !matches!(self, Self::Volt | Self::Millivolt | Self::One)
    }

    /// Power of ten that leads to nanoseconds, or to volts.
    pub(super) fn power(self) -> i32 {
        match self {
            Self::Second => 9,
            Self::Millisecond => 6,
            Self::Microsecond => 3,
            Self::Picosecond | Self::Millivolt => -3,
            Self::Nanosecond | Self::Volt | Self::One => 0,
        }
    }

    /// Factor that leads to nanoseconds, or to volts.
    pub fn factor(self) -> f64 {
        match self.power() {
            9 => 1e9,
            6 => 1e6,
            3 => 1e3,
            -3 => 1e-3,
            _ => 1.0,
        }
    }
}
