//! Everything that the drawings say, in one place.

use crate::message;
use crate::words::{Message, Value};

pub(super) const DISTANCE: Title = Title { name: message!("chart-distance"), unit: "m" };
pub(super) const DELAY: Title = Title { name: message!("chart-delay"), unit: "ns" };
pub(super) const WALK: Title = Title { name: message!("chart-walk"), unit: "ns" };
pub(super) const RESIDUAL: Title = Title { name: message!("chart-residual"), unit: "" };
pub(super) const BENCH_DISTANCE: Title = Title { name: message!("chart-bench-distance"), unit: "m" };

pub(super) const SPEED: Title = Title { name: message!("chart-speed"), unit: "Mm/s" };
pub(super) const DENSITY: Title = Title { name: message!("chart-density"), unit: "s/Mm" };

pub(super) const TIME: Title = Title { name: message!("chart-time"), unit: "ns" };
pub(super) const VOLTAGE: Title = Title { name: message!("chart-voltage"), unit: "V" };

pub(super) const NO_SAMPLES: Message = message!("chart-no-samples");
pub(super) const NO_READINGS: Message = message!("chart-no-readings");
pub(super) const NO_RESIDUALS: Message = message!("chart-no-residuals");
pub(super) const NO_RAILS: Message = message!("chart-no-rails");

pub(super) const NO_BUDGET: Message = message!("chart-no-budget");
pub(super) const NO_TRIALS: Message = message!("chart-no-trials");

pub(super) const TRACE_A: Message = message!("traces-layout-roles-channel_a");
pub(super) const TRACE_B: Message = message!("traces-layout-roles-channel_b");
pub(super) const THRESHOLD: Message = message!("chart-threshold");
pub(super) const STRUCK: Message = message!("tables-states-struck");
pub(super) const TRIALS: Message = message!("chart-trials");
pub(super) const BUDGET_CURVE: Message = message!("chart-budget-curve");
pub(super) const ENDS: Message = message!("chart-ends");
pub(super) const LINE: Message = message!("chart-line");
pub(super) const LINE_IN_BAND: Message = message!("chart-line-in-band");
pub(super) const BARS: Message = message!("chart-bars");
pub(super) const TWO: Message = message!("chart-two");
pub(super) const CARRIAGE: Message = message!("chart-carriage");
pub(super) const GROWS: Message = message!("chart-grows");
pub(super) const SPLICE: Message = message!("chart-splice");
pub(super) const SPLITTER: Message = message!("chart-splitter");
pub(super) const START: Message = message!("chart-start");
pub(super) const SOURCE: Message = message!("chart-source");

pub(super) const TYPED: Message = message!("chart-typed");

pub(super) const BENCH_COLUMNS: [Title; 6] = [
    Title { name: message!("readings-columns-rail"), unit: "" },
    Title { name: message!("chart-from"), unit: "m" },
    Title { name: message!("chart-to"), unit: "m" },
    Title { name: message!("chart-ruler-from"), unit: "" },
    Title { name: message!("chart-ruler-to"), unit: "" },
    Title { name: message!("chart-carriages"), unit: "m" },
];
pub(super) const TRIALS_COLUMNS: [Title; 4] = [
    Title { name: message!("chart-from"), unit: "Mm/s" },
    Title { name: message!("chart-to"), unit: "Mm/s" },
    Title { name: TRIALS, unit: "%" },
    Title { name: BUDGET_CURVE, unit: "%" },
];
pub(super) const WALK_COLUMNS: [Title; 3] =
    [Title { name: message!("readings-row"), unit: "" }, DISTANCE, WALK];
pub(super) const TRACE_COLUMNS: [Title; 5] = [
    Title { name: message!("chart-trace"), unit: "" },
    Title { name: message!("chart-baseline"), unit: "V" },
    Title { name: message!("chart-top"), unit: "V" },
    Title { name: THRESHOLD, unit: "V" },
    Title { name: message!("chart-crossing"), unit: "ns" },
];

/// What an axis or a column of a table shows.
#[derive(Clone)]
pub(super) struct Title {
    /// Name and symbol of the quantity.
    pub(super) name: Message,
    /// Its unit; empty for a pure number.
    pub(super) unit: &'static str,
}

/// The label of a row.
pub(super) fn row(number: usize) -> Message {
    message!("notices-row", n = number)
}

/// The label of a row whose mark stands at the edge because it lies beyond, in the sense of the arrow.
pub(super) fn row_beyond(number: usize, arrow: char) -> Message {
    message!("chart-row-beyond", n = number, arrow = arrow.to_string())
}

/// The rails that could not be drawn.
pub(super) fn unplaced(names: &[String]) -> Message {
    message!("chart-unplaced", names = names.iter().map(String::as_str).collect::<Vec<_>>())
}

/// The name of a rail with a word on its splice.
pub(super) fn noted(name: &str, note: &Value) -> Message {
    message!("chart-rail", name = name, note = note.clone())
}
