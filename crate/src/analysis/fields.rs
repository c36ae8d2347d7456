//! What the fields beside the rows are called, and which of them are marked.

use super::place::{EntryProblem, Place, SplicePart};
use super::types::Refusal;
use crate::message;
use crate::notebook::{BenchField, CovarianceOf, NotebookState, RailField, RailId, Splice};
use crate::words::Message;

/// What a text of the bench is called.
pub fn bench_field(field: BenchField) -> Message {
    match field {
        BenchField::People => message!("fields-people"),
        BenchField::StudentNumber => message!("fields-student_number"),
        BenchField::Group => message!("fields-group"),
        BenchField::Date => message!("fields-date"),
        BenchField::LeastRows => message!("fields-least_rows"),
        BenchField::Place => message!("fields-place"),
        BenchField::LocalRules => message!("fields-local_rules"),
        BenchField::LocalContact => message!("fields-local_contact"),
        BenchField::Instruments => message!("fields-instruments"),
        BenchField::Cables => message!("fields-cables"),
        BenchField::FixedArm => message!("fields-fixed_arm"),
        BenchField::Trigger => message!("fields-trigger"),
        BenchField::EdgeFraction => message!("fields-edge_fraction"),
        BenchField::Wavelength => message!("fields-wavelength"),
        BenchField::PulseRate => message!("fields-pulse_rate"),
        BenchField::SmallDivisions => message!("fields-small_divisions"),
        BenchField::EdgeHalfWidth => message!("fields-edge_half_width"),
        BenchField::EdgeReason => message!("fields-edge_reason"),
        BenchField::ScreenWidth => message!("fields-screen_width"),
        BenchField::TimeBaseUncertainty => message!("fields-time_base_uncertainty"),
        BenchField::Temperature => message!("fields-temperature"),
        BenchField::Pressure => message!("fields-pressure"),
        BenchField::Humidity => message!("fields-humidity"),
        BenchField::CarbonDioxide => message!("fields-carbon_dioxide"),
        BenchField::BeamAngle => message!("fields-beam_angle"),
        BenchField::Coverage => message!("fields-coverage"),
        BenchField::MarkUncertainty => message!("fields-mark_uncertainty"),
        BenchField::TraceLevel => message!("fields-trace_level"),
        BenchField::TraceFraction => message!("fields-trace_fraction"),
        BenchField::Aim => message!("fields-aim"),
        BenchField::Method => message!("fields-method"),
        BenchField::Discussion => message!("fields-discussion"),
    }
}

/// What a text of a rail is called.
pub fn rail_field(field: RailField) -> Message {
    match field {
        RailField::Name => message!("rails-fields-name"),
        RailField::From => message!("rails-fields-from"),
        RailField::To => message!("rails-fields-to"),
        RailField::ReadingUncertainty => message!("rails-fields-reading_uncertainty"),
        RailField::ScaleUncertainty => message!("rails-fields-scale_uncertainty"),
    }
}

/// The marked fields beside the rows, by what they are called: first all in which something stands, then those in
/// whose place something else was taken. A row with a marked cell waits outside the line, and says so itself; so do
/// the rows on a rail whose place can't be told.
pub fn marked(page: &NotebookState, problems: &[EntryProblem]) -> (Vec<Message>, Vec<Message>) {
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
fn named(page: &NotebookState, place: &Place) -> Option<(Message, bool)> {
    match place {
        Place::Cell { .. } => None,
        Place::Bench { field } => Some((message!("marked-bench", field = bench_field(*field)), true)),
        Place::Rail { rail, field } => {
            let spans = matches!(field, RailField::From | RailField::To);
            let name = message!("marked-rail", field = rail_field(*field), rail = rail_name(page, *rail));
            Some((name, !spans))
        }
        Place::Splice { rail, part } => {
            let (label, text) = part_of(&page.rail(*rail)?.1.splice, *part)?;
            let replaced = matches!(part, SplicePart::Gap | SplicePart::Uncertainty);
            (!text.trim().is_empty())
                .then(|| (message!("marked-splice", field = label, rail = rail_name(page, *rail)), replaced))
        }
        Place::Setting { setting, .. } => {
            let index = page.settings.iter().position(|typed| typed.id == *setting)?;
            Some((message!("marked-setting", n = index + 1), true))
        }
        Place::Shared { shared, .. } => {
            let index = page.shared.iter().position(|typed| typed.id == *shared)?;
            Some((message!("marked-shared", n = index + 1), true))
        }
        Place::Covariance { acts_on } => {
            let name = match acts_on {
                CovarianceOf::Distances => message!("marked-covariance-distances"),
                CovarianceOf::Delays => message!("marked-covariance-delays"),
                CovarianceOf::Both => message!("marked-covariance-both"),
            };
            Some((name, true))
        }
    }
}

/// A part of a splice: what it is called and what stands in it.
fn part_of(splice: &Splice, part: SplicePart) -> Option<(Message, &str)> {
    match (splice, part) {
        (
            Splice::AtSplitter { mark, .. }
            | Splice::AtDistance { mark, .. }
            | Splice::Joined { mark, .. }
            | Splice::Free { mark },
            SplicePart::Mark,
        ) => Some((message!("splice-mark"), mark)),
        (
            Splice::AtSplitter { uncertainty, .. }
            | Splice::AtDistance { uncertainty, .. }
            | Splice::Joined { uncertainty, .. },
            SplicePart::Uncertainty,
        ) => Some((message!("splice-uncertainty"), uncertainty)),
        (Splice::AtDistance { distance, .. }, SplicePart::Distance) => {
            Some((message!("splice-distance"), distance))
        }
        (Splice::Joined { mark_before, .. }, SplicePart::MarkBefore) => {
            Some((message!("splice-mark_before"), mark_before))
        }
        (Splice::Joined { gap, .. }, SplicePart::Gap) => Some((message!("splice-gap"), gap)),
        (Splice::Overlap { pairs }, _) => {
            let pair = pairs.iter().find(|pair| !pair.here.is_empty() || !pair.before.is_empty())?;
            let text = if pair.here.is_empty() { &pair.before } else { &pair.here };
            Some((message!("splice-kinds-overlap"), text))
        }
        _ => None,
    }
}

fn rail_name(page: &NotebookState, rail: RailId) -> String {
    page.rail(rail).map_or_else(String::new, |(index, rail)| rail.name_or_number(index))
}

impl Refusal {
    /// The same, naming the marked fields, which may be why.
    pub(super) fn beside(mut self, marked: &[Message]) -> Self {
        if !marked.is_empty() {
            self.message = message!("refusal-marked", refusal = self.message, fields = marked.to_vec());
        }
        self
    }
}

#[cfg(test)]
#[path = "fields_test.rs"]
mod tests;
