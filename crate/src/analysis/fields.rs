//! What the fields beside the rows are called, and which of them are marked.

use super::place::{Place, Problem, SplicePart};
use super::types::Refusal;
use crate::notebook::{ActsOn, BenchField, NotebookState, RailField, RailId, Splice};

/// What a text of the bench is called.
pub fn bench_label(field: BenchField) -> &'static str {
    match field {
        BenchField::People => "Names",
        BenchField::Place => "Place and date",
        BenchField::LocalRules => "Rules of this laboratory",
        BenchField::LocalContact => "Contact",
        BenchField::Wavelength => "Wavelength in vacuum",
        BenchField::PulseRate => "Pulse rate",
        BenchField::SmallDivisions => "Small divisions per division",
        BenchField::EdgeHalfWidth => "Uncertainty of one edge reading",
        BenchField::EdgeReason => "Reason for this limit",
        BenchField::ScreenWidth => "Divisions across the screen",
        BenchField::TimeBaseUncertainty => "Time base: relative uncertainty",
        BenchField::Temperature => "Air temperature",
        BenchField::Pressure => "Air pressure",
        BenchField::Humidity => "Relative humidity",
        BenchField::CarbonDioxide => "Carbon dioxide",
        BenchField::BeamAngle => "Largest possible angle between beam and rail",
        BenchField::Coverage => "Coverage probability",
        BenchField::MarkUncertainty => "Uncertainty of one mark on a photograph",
        BenchField::TraceLevel => "Threshold (fixed level) above the baseline",
        BenchField::TraceFraction => "Constant fraction of the amplitude",
        BenchField::Aim => "Aim",
        BenchField::Method => "Method",
        BenchField::Discussion => "Discussion",
    }
}

/// What a text of a rail is called.
pub fn rail_label(field: RailField) -> &'static str {
    match field {
        RailField::Name => "Name used in the readings",
        RailField::From => "First mark",
        RailField::To => "Last mark",
        RailField::ReadingUncertainty => "Uncertainty of a ruler reading",
        RailField::ScaleUncertainty => "Relative uncertainty of the scale",
    }
}

/// The marked fields beside the rows, by what they are called: first all in which something stands, then those in
/// whose place something else was taken. A row with a marked cell waits outside the line, and says so itself; so do
/// the rows on a rail whose place can't be told.
pub fn marked(page: &NotebookState, problems: &[Problem]) -> (Vec<String>, Vec<String>) {
    let (mut all, mut replaced) = (Vec::new(), Vec::new());
    for problem in problems {
        let Some((name, takes_another)) = named(page, &problem.place) else { continue };
        if !all.contains(&name) {
            all.push(name.clone());
            if takes_another {
                replaced.push(name);
            }
        }
    }
    (all, replaced)
}

/// What a marked field is called, and whether something else is taken in its place; none for a row's cell, and for a
/// field that is marked because it is empty.
fn named(page: &NotebookState, place: &Place) -> Option<(String, bool)> {
    match place {
        Place::Cell { .. } => None,
        Place::Bench { field } => Some((quoted(bench_label(*field)), true)),
        Place::Rail { rail, field } => {
            let spans = matches!(field, RailField::From | RailField::To);
            Some((format!("{} of rail {}", quoted(rail_label(*field)), rail_name(page, *rail)), !spans))
        }
        Place::Splice { rail, part } => {
            let (label, text) = part_of(&page.rails.iter().find(|typed| typed.id == *rail)?.splice, *part)?;
            let replaced = matches!(part, SplicePart::Gap | SplicePart::Uncertainty);
            (!text.trim().is_empty())
                .then(|| (format!("the {label} at the splice of rail {}", rail_name(page, *rail)), replaced))
        }
        Place::Setting { setting, .. } => {
            let index = page.settings.iter().position(|typed| typed.id == *setting)?;
            Some((format!("time base setting {}", index + 1), true))
        }
        Place::Shared { shared, .. } => {
            let index = page.shared.iter().position(|typed| typed.id == *shared)?;
            Some((format!("other error {}", index + 1), true))
        }
        Place::Covariance { acts_on: ActsOn::Distances } => {
            Some(("the covariance matrix of distances".into(), true))
        }
        Place::Covariance { acts_on: ActsOn::Delays } => {
            Some(("the covariance matrix of delays".into(), true))
        }
    }
}

/// A part of a splice: what it is called and what stands in it.
fn part_of(splice: &Splice, part: SplicePart) -> Option<(&'static str, &str)> {
    match (splice, part) {
        (
            Splice::AtSplitter { mark, .. }
            | Splice::AtDistance { mark, .. }
            | Splice::Joined { mark, .. }
            | Splice::Free { mark },
            SplicePart::Mark,
        ) => Some(("mark on this rail", mark)),
        (
            Splice::AtSplitter { uncertainty, .. }
            | Splice::AtDistance { uncertainty, .. }
            | Splice::Joined { uncertainty, .. },
            SplicePart::Uncertainty,
        ) => Some(("uncertainty", uncertainty)),
        (Splice::AtDistance { distance, .. }, SplicePart::Distance) => Some(("distance", distance)),
        (Splice::Joined { mark_before, .. }, SplicePart::MarkBefore) => {
            Some(("mark on the rail before", mark_before))
        }
        (Splice::Joined { gap, .. }, SplicePart::Gap) => Some(("gap", gap)),
        (Splice::Overlap { pairs }, _) => {
            let pair = pairs.iter().find(|pair| !pair.here.is_empty() || !pair.before.is_empty())?;
            Some((
                "positions read on both rails",
                if pair.here.is_empty() { &pair.before } else { &pair.here },
            ))
        }
        _ => None,
    }
}

fn rail_name(page: &NotebookState, rail: RailId) -> String {
    let index = page.rails.iter().position(|typed| typed.id == rail);
    let name = index.and_then(|index| Some(page.rails.get(index)?.name_or_number(index)));
    quoted(&name.unwrap_or_default())
}

fn quoted(name: &str) -> String {
    format!("“{name}”")
}

impl Refusal {
    /// The same, naming the marked fields, which may be why.
    pub(super) fn beside(mut self, marked: &[String]) -> Self {
        if !marked.is_empty() {
            self.message = format!("{} (marked: {})", self.message, marked.join(", "));
        }
        self
    }
}

#[cfg(test)]
#[path = "fields_test.rs"]
mod tests;
