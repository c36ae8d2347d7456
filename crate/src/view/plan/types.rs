//! What the page shows of a plan, in types.

use serde::Serialize;

use super::super::types::Figure;
use crate::notebook::{PlannedPosition, RailId};
use crate::words::Message;

/// The plan in words, figures and places.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct PlanView {
    /// Why there is nothing to plan on and what to do; empty if there is.
    pub refusal: Option<Message>,
    /// Why nothing can be expected yet and what to do; empty if it can.
    pub lacks: Option<Message>,
    /// The planned positions.
    pub positions: Vec<PositionView>,
    /// The rails to scale, each as a track of its own.
    pub tracks: Vec<TrackView>,
    /// What is expected, and what limits it: one sentence after the other.
    pub expected: Vec<Message>,
    /// How it turned out, as far as rows were read: one sentence after the other.
    pub compared: Vec<Message>,
    /// What is expected, what would change it, how far and how fine one can go.
    pub figures: Vec<Figure>,
    /// What is unwise about the positions.
    pub warnings: Vec<Message>,
    /// The next reading that would help most, and the one that would show most.
    pub next: Vec<ProposedView>,
    /// Positions that may be planned instead.
    pub offers: Vec<ProposedView>,
    /// Whether the readings are a rehearsal's.
    pub rehearsal: bool,
}

/// A planned position.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct PositionView {
    /// As typed.
    pub typed: PlannedPosition,
    /// Where that is; none while it can't be told.
    pub place: Option<PlaceView>,
    /// How many rows are to be read there.
    pub rows: usize,
    /// What is wrong with it.
    pub problems: Vec<ColumnProblem>,
}

/// What is wrong with a text of a planned position.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ColumnProblem {
    /// Which text: "rail", "reading", "time_base" or "repeats".
    pub column: String,
    /// What is wrong and what to do.
    pub problem: Message,
}

/// A place on a rail.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct PlaceView {
    /// The rail.
    pub track: RailId,
    /// Name of the rail.
    pub rail: String,
    /// The reading as it is typed.
    pub reading: String,
    /// The same with its unit.
    pub shown: String,
    /// Time per division.
    pub time_base: String,
    /// Distance from the splitter.
    pub distance: String,
    /// Where along its track: "48.2%".
    pub at: String,
    /// The same as a whole number of thousandths.
    pub thousandths: String,
}

/// A rail to scale.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct TrackView {
    /// The rail.
    pub rail: RailId,
    /// Its name.
    pub name: String,
    /// Where it begins between the splitter and the farthest end: "12.5%".
    pub from: String,
    /// How long it is: "30%".
    pub length: String,
    /// What its ruler shows at the near end, where that is; the same at the far end.
    pub ends: Vec<String>,
    /// Where along it rows have been read.
    pub taken: Vec<String>,
}

/// Positions proposed.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct ProposedView {
    /// Why nothing speaks for them, and what to do; none where something does.
    pub lacks: Option<Message>,
    /// What speaks for them.
    pub said: Option<Message>,
    /// u(v)/v as it is, and as it would be with them; of the next reading, where it can be told.
    pub effect: Option<(String, String)>,
    /// The places, and how many rows at each.
    pub places: Vec<(PlaceView, usize)>,
}
