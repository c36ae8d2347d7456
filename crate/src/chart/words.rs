//! Everything that the drawings say, in one place.

pub(super) const DISTANCE: Title = Title { name: "distance d", unit: "m" };
pub(super) const DELAY: Title = Title { name: "delay Δt", unit: "ns" };
pub(super) const WALK: Title = Title { name: "fixed level less constant fraction", unit: "ns" };
pub(super) const RESIDUAL: Title = Title { name: "residual / its standard uncertainty", unit: "" };
pub(super) const BENCH_DISTANCE: Title = Title { name: "distance from the splitter d", unit: "m" };

pub(super) const SPEED: Title = Title { name: "speed of light c", unit: "Mm/s" };
pub(super) const DENSITY: Title = Title { name: "probability density", unit: "s/Mm" };

pub(super) const TIME: Title = Title { name: "time", unit: "ns" };
pub(super) const VOLTAGE: Title = Title { name: "voltage", unit: "V" };

pub(super) const NO_SAMPLES: &str = "No samples of either trace lie here.";
pub(super) const NO_READINGS: &str = "No row has both a distance and a delay yet.";
pub(super) const NO_RESIDUALS: &str = "No residuals yet: they come with the fitted line.";
pub(super) const NO_RAILS: &str = "No rail has a place yet: say where the first one stands.";

pub(super) const NO_BUDGET: &str = "No budget yet: it comes with the result.";
pub(super) const NO_TRIALS: &str = "No trials yet, or all with the same result.";

pub(super) const TRACE_A: &str = "trace A";
pub(super) const TRACE_B: &str = "trace B";
pub(super) const LEVEL_CROSSED: &str = "level crossed";
pub(super) const STRUCK: &str = "struck out";
pub(super) const TRIALS: &str = "trials";
pub(super) const BUDGET_CURVE: &str = "distribution from the budget";
pub(super) const ENDS: &str = "ends of the trials’ interval";
pub(super) const LINE: &str = "fitted line";
pub(super) const LINE_IN_BAND: &str = "line, 95 % band";
pub(super) const BARS: &str = "bars: ± 1 u";
pub(super) const TWO_U: &str = "± 2 u";
pub(super) const CARRIAGE: &str = "carriage position";
pub(super) const GROWS: &str = "readings grow";
pub(super) const SPLICE: &str = "splice";
pub(super) const SPLITTER: &str = "splitter";
pub(super) const START: &str = "detector A";
pub(super) const SOURCE: &str = "source";

/// What an axis shows.
#[derive(Clone, Copy)]
pub(super) struct Title {
    /// Name and symbol of the quantity.
    pub(super) name: &'static str,
    /// Its unit; empty for a pure number.
    pub(super) unit: &'static str,
}

/// The label of a row.
pub(super) fn row(number: usize) -> String {
    format!("row {number}")
}

/// The label of a row whose mark stands at the edge because it lies beyond, in the sense of the arrow.
pub(super) fn row_beyond(number: usize, arrow: char) -> String {
    format!("row {number}, beyond {arrow}")
}

/// The rails that could not be drawn.
pub(super) fn unplaced(names: &[String]) -> String {
    format!("place not known yet: {}", names.join(", "))
}
