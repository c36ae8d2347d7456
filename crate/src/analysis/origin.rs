//! From where an error comes, and what kind of quantity it is.

use std::cmp::Ordering;

use serde::{Serialize, Serializer};

use crate::notebook::{GridId, RailId, SharedId};

/// By what a delay is timed: rows of one clock share its error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Clock {
    /// The recorder of traces.
    Recorder,
    /// A screen, at so many ns a division.
    Screen(f64),
}

impl Clock {
    /// The recorder first, then screens from the fastest on.
    pub fn order(&self, other: &Self) -> Ordering {
        self.stored().total_cmp(&other.stored())
    }

    /// The number that stands for it in what is written: the time per division, ns, which a recorder has none of.
    fn stored(self) -> f64 {
        match self {
            Self::Recorder => 0.0,
            Self::Screen(time_per_division) => time_per_division,
        }
    }
}

impl Serialize for Clock {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.stored().serialize(serializer)
    }
}

/// From where an error comes.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "from", rename_all = "snake_case")]
pub enum Origin {
    /// The mark at the splitter, or the splice, of a rail.
    Splice {
        /// The rail.
        rail: RailId,
    },
    /// The scale of a ruler.
    RulerScale {
        /// The rail.
        rail: RailId,
    },
    /// The time base of one clock.
    TimeBase {
        /// By what the delays are timed.
        #[serde(rename = "time_per_division")]
        clock: Clock,
    },
    /// The corners of the grid on pictures.
    Grid {
        /// The grid.
        grid: GridId,
    },
    /// Stated by the user.
    Stated {
        /// Which.
        shared: SharedId,
    },
    /// Reading the rulers.
    RailReadings,
    /// Distances given with an uncertainty of their own.
    Distances,
    /// The limit to which edges are read on the screen.
    ScreenLimit,
    /// The scatter of repeated screen readings.
    ScreenScatter,
    /// Marking edges on pictures.
    PictureMarks,
    /// The noise of recorded traces.
    Traces,
    /// The walk of delays timed on traces at a fixed level.
    Walk,
    /// Delays given with an uncertainty of their own.
    Delays,
    /// Stated covariance matrices, where they say something of rows together.
    Matrices,
    /// The scatter of the rows about the line.
    Scatter,
    /// The angle between beam and rails.
    BeamAngle,
    /// The index of air.
    Air,
    /// The skew between the two channels, which moves only t₀.
    ChannelSkew,
}

impl Origin {
    /// A name for it that stays as long as what it is about.
    pub fn id(&self) -> String {
        match self {
            Self::Splice { rail } => format!("splice-{rail}"),
            Self::RulerScale { rail } => format!("ruler-scale-{rail}"),
            Self::TimeBase { clock } => format!("time-base-{}", clock.stored()),
            Self::Grid { grid } => format!("grid-{grid}"),
            Self::Stated { shared } => format!("stated-{shared}"),
            Self::RailReadings => "rail-readings".into(),
            Self::Distances => "distances".into(),
            Self::ScreenLimit => "screen-limit".into(),
            Self::ScreenScatter => "screen-scatter".into(),
            Self::PictureMarks => "picture-marks".into(),
            Self::Traces => "traces".into(),
            Self::Walk => "walk".into(),
            Self::Delays => "delays".into(),
            Self::Matrices => "matrices".into(),
            Self::Scatter => "scatter".into(),
            Self::BeamAngle => "beam-angle".into(),
            Self::Air => "air".into(),
            Self::ChannelSkew => "channel-skew".into(),
        }
    }
}

/// The kind of quantity that an error is, which fixes its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// A length, m.
    Length,
    /// A time, ns.
    Time,
    /// A ratio.
    Ratio,
    /// An angle, rad.
    Angle,
    /// A length on a picture, pixels.
    Pixel,
    /// A slope, ns/m.
    Slope,
}
