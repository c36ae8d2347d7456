//! The plan in words, figures and places, rounded and with units.

mod types;

mod figures;

use super::budget::{name, with_unit};
use super::figures::figure;
use super::types::Figure;
use crate::analysis::read::ruler_unit;
use crate::analysis::{Analysis, Origin, RowPart};
use crate::message;
use crate::notebook::{Cell, Notebook, NotebookState, PositionId};
use crate::plan::ask::Prediction;
use crate::plan::next::{Next, Why};
use crate::plan::rehearsal::{DrawnError, RehearsalTruth, truth};
use crate::plan::stop::{PlanContext, PlannedStop};
use crate::plan::{Plan, ProposedStops, To, Warning, forecast, moved, plan};
use crate::quantity::{DecimalMark, fixed, plain};
use crate::words::Message;

use types::ColumnProblem;
pub use types::{PlaceView, PlanView, PositionView, ProposedView, TrackView};

/// The plan.
pub fn plan_view(page: &NotebookState, analysis: &Analysis) -> PlanView {
    let rehearsal = page.rehearsal.is_some();
    let mut view = PlanView { rehearsal, ..PlanView::default() };
    let (context, found) =
        match PlanContext::of(page).and_then(|context| Ok((context, plan(page, analysis)?))) {
            Ok(both) => both,
            Err(refusal) => return PlanView { refusal: Some(refusal.message), ..view },
        };
    let teller = Teller { page, context: &context };
    for (typed, read) in page.plan.iter().zip(&found.positions) {
        view.positions.push(PositionView {
            typed: typed.clone(),
            place: read.stop.as_ref().map(|stop| teller.place(stop)),
            rows: read.repeats,
            problems: read
                .problems
                .iter()
                .map(|(cell, why)| ColumnProblem { column: column(*cell).into(), problem: why.clone() })
                .collect(),
        });
    }
    view.tracks = teller.tracks(analysis);
    match &found.predicted {
        Err(refusal) => view.lacks = Some(refusal.message.clone()),
        Ok(expected) => {
            view.expected = teller.expected(expected);
            view.compared = teller.compared(&found, expected, analysis);
        }
    }
    view.figures = teller.figures(&found, analysis);
    view.warnings = found.warnings.iter().map(|warning| teller.warning(warning)).collect();
    view.next = found.next.iter().map(|next| teller.next(next)).collect();
    let spread = found.spread.as_ref().map(|proposal| teller.spread(proposal));
    view.offers =
        spread.into_iter().chain(found.ends.as_ref().map(|proposal| teller.ends(proposal))).collect();
    view
}

/// Where a handle would stand, and what would be expected of the plan then; nothing if it can't move there. Changes
/// nothing.
pub fn move_view(page: &NotebookState, id: PositionId, to: To) -> ProposedView {
    let Some((context, stop)) = PlanContext::of(page).ok().zip(moved(page, id, to)) else {
        return ProposedView::default();
    };
    let teller = Teller { page, context: &context };
    let mut changed = page.clone();
    for planned in &mut changed.plan {
        if planned.id == id {
            planned.reading.clone_from(&stop.reading);
        }
    }
    let places = vec![(teller.place(&stop), 1)];
    match forecast(&changed) {
        Ok(found) => ProposedView { said: Some(teller.promised(&found)), places, ..ProposedView::default() },
        Err(refusal) => ProposedView { lacks: Some(refusal.message), places, ..ProposedView::default() },
    }
}

/// What was really so in a rehearsal; nothing in any other notebook.
pub fn truth_view(notebook: &Notebook) -> Vec<Figure> {
    truth(notebook).map(|truth| truth_figures(notebook.state(), &truth)).unwrap_or_default()
}

/// What was really so on the bench of `page`: c₀, t₀, then each error with its name and its uncertainty as stated.
pub fn truth_figures(page: &NotebookState, truth: &RehearsalTruth) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let mut all = vec![
        figure("c", message!("figures-c"), "c₀", "299\u{202f}792\u{202f}458\u{a0}m/s"),
        figure("t0", message!("figures-intercept"), "t₀", format!("{}\u{a0}ns", fixed(truth.t0, -3, mark))),
    ];
    for DrawnError { origin, size, u, quantity } in &truth.errors {
        let sign = if *size < 0.0 { "−" } else { "+" };
        let value = format!("{sign}{}", with_unit(size.abs(), *quantity, mark));
        let stated = message!("plan-stated", value = value, u = with_unit(*u, *quantity, mark));
        all.push(figure(&origin.id(), name(page, origin), "", stated));
    }
    for (rail, step) in &truth.steps {
        let origin = Origin::Splice { rail: *rail };
        let value = format!("{}\u{a0}mm", fixed(1000.0 * step, -1, mark));
        all.push(figure(&format!("{}-step", origin.id()), name(page, &origin), "", value));
    }
    all
}

/// The text of a planned position that is read as this cell of a row.
fn column(cell: Cell) -> &'static str {
    match cell {
        Cell::Rail => "rail",
        Cell::Reading => "reading",
        Cell::TimeBase => "time_base",
        _ => "repeats",
    }
}

/// A share as a length for the page: "48.20%".
fn share_text(share: f64) -> String {
    format!("{}%", fixed(100.0 * share, -2, DecimalMark::Point))
}

/// Tells places and figures of one notebook.
struct Teller<'a> {
    page: &'a NotebookState,
    context: &'a PlanContext<'a>,
}

impl Teller<'_> {
    fn percent(&self, relative: f64) -> String {
        format!("{}\u{a0}%", plain(100.0 * relative, 2, self.page.decimal_mark))
    }

    fn metres(&self, distance: f64) -> String {
        format!("{}\u{a0}m", fixed(distance, -2, self.page.decimal_mark))
    }

    fn place(&self, stop: &PlannedStop) -> PlaceView {
        let Some(rail) = self.page.rails.get(stop.rail) else { return PlaceView::default() };
        let (near, far) = self.context.ends(stop.rail).unwrap_or((stop.distance, stop.distance + 1.0));
        let share = ((stop.distance - near) / (far - near)).clamp(0.0, 1.0);
        let mut shown = stop.reading.clone();
        // A reading may be typed with its unit.
        if shown.ends_with(|last: char| last.is_ascii_digit()) {
            shown = format!("{shown}\u{a0}{}", ruler_unit(rail.unit).symbol());
        }
        PlaceView {
            track: rail.id,
            rail: rail.name_or_number(stop.rail),
            reading: stop.reading.clone(),
            shown,
            time_base: stop.time_base.clone(),
            distance: self.metres(stop.distance),
            at: share_text(share),
            thousandths: fixed(1000.0 * share, 0, DecimalMark::Point),
        }
    }

    /// Every rail that has a place, between the splitter and the farthest end.
    fn tracks(&self, analysis: &Analysis) -> Vec<TrackView> {
        let (mut low, mut high): (f64, f64) = (0.0, 0.0);
        for index in 0..self.page.rails.len() {
            if let Some((near, far)) = self.context.ends(index) {
                (low, high) = (low.min(near), high.max(far));
            }
        }
        let mut tracks = Vec::new();
        for (index, rail) in self.page.rails.iter().enumerate() {
            let stand = self.context.stands.get(index).and_then(Option::as_ref);
            let Some(((near, far), stand)) = self.context.ends(index).zip(stand) else { continue };
            let unit = ruler_unit(rail.unit);
            let mut ends = Vec::new();
            for distance in [near, far] {
                let reading = unit.from_base(stand.reading(distance));
                // Less than a thousandth of a unit is rounding.
                let reading = fixed((reading * 1000.0).round() / 1000.0, -3, self.page.decimal_mark);
                let reading = reading.trim_end_matches('0').trim_end_matches(['.', ',']);
                ends.extend([format!("{reading}\u{a0}{}", unit.symbol()), self.metres(distance)]);
            }
            let mut taken = Vec::new();
            for row in &analysis.rows {
                if let (Some(distance), RowPart::Used) = (row.distance, &row.part)
                    && row.rail == Some(rail.id)
                {
                    taken.push(share_text(((distance.value - near) / (far - near)).clamp(0.0, 1.0)));
                }
            }
            tracks.push(TrackView {
                rail: rail.id,
                name: rail.name_or_number(index),
                from: share_text((near - low) / (high - low)),
                length: share_text((far - near) / (high - low)),
                ends,
                taken,
            });
        }
        tracks
    }

    fn warning(&self, warning: &Warning) -> Message {
        match warning {
            Warning::OffRail(numbers) => {
                message!("plan-warnings-off_rail", n = numbers.len(), positions = numbers.clone())
            }
            Warning::BeyondReach(numbers) => {
                message!("plan-warnings-beyond_reach", n = numbers.len(), positions = numbers.clone())
            }
            Warning::OffScreen(numbers) => {
                message!("plan-warnings-off_screen", n = numbers.len(), positions = numbers.clone())
            }
            Warning::Side(rail, have) => {
                let name = self.page.rails.get(*rail).map(|typed| typed.name_or_number(*rail));
                message!("plan-warnings-side", rail = name.unwrap_or_default(), have = *have)
            }
            Warning::Cluster(spanned, whole) => {
                message!("plan-warnings-cluster", length = self.metres(*spanned), whole = self.metres(*whole))
            }
            Warning::Few(rows) => message!("plan-warnings-few", rows = *rows),
        }
    }

    /// A reading proposed, why, and what it would change.
    fn next(&self, next: &Next) -> ProposedView {
        let said = match next.why {
            Why::First => message!("plan-reasons-first"),
            Why::Lever(_) if next.effect.is_some_and(|(before, after)| after > 0.98 * before) => {
                message!("plan-reasons-little")
            }
            Why::Lever(arm) => message!("plan-reasons-lever", arm = self.metres(arm)),
            Why::Side(have) => message!("plan-reasons-side", have = have),
            Why::Gap(gap) => message!("plan-reasons-gap", gap = self.metres(gap)),
        };
        // A digit more than elsewhere, since one reading among many changes little.
        let fine = |u: f64| format!("{}\u{a0}%", plain(100.0 * u, 3, self.page.decimal_mark));
        ProposedView {
            said: Some(said),
            effect: next.effect.map(|(before, after)| (fine(before), fine(after))),
            places: vec![(self.place(&next.stop), 1)],
            lacks: None,
        }
    }

    fn spread(&self, proposal: &ProposedStops) -> ProposedView {
        let u = self.percent(proposal.relative);
        self.offer(proposal, message!("plan-offers-spread", rows = proposal.stops.len(), u = u))
    }

    fn ends(&self, proposal: &ProposedStops) -> ProposedView {
        let u = self.percent(proposal.relative);
        self.offer(proposal, message!("plan-offers-ends", rows = proposal.stops.len(), u = u))
    }

    /// Positions that may be planned, each with how many rows are read there.
    fn offer(&self, proposal: &ProposedStops, said: Message) -> ProposedView {
        let mut places: Vec<(PlaceView, usize)> = Vec::new();
        for place in proposal.stops.iter().map(|stop| self.place(stop)) {
            match places.last_mut() {
                Some((last, rows)) if *last == place => *rows += 1,
                _ => places.push((place, 1)),
            }
        }
        ProposedView { said: Some(said), places, ..ProposedView::default() }
    }

    /// What is expected, in a sentence.
    fn promised(&self, expected: &Prediction) -> Message {
        message!("plan-expected", u = self.percent(expected.relative), rows = expected.rows)
    }

    /// What is expected, and what limits it.
    fn expected(&self, expected: &Prediction) -> Vec<Message> {
        let limit = expected.largest.as_ref().map(|(origin, share)| {
            let share = fixed(100.0 * share, 0, self.page.decimal_mark);
            message!("plan-limits", name = name(self.page, origin), share = share)
        });
        [Some(self.promised(expected)), limit].into_iter().flatten().collect()
    }

    /// How the rows so far turned out; nothing while they give no result.
    fn compared(&self, found: &Plan, expected: &Prediction, analysis: &Analysis) -> Vec<Message> {
        let Ok(speed) = &analysis.speed else { return Vec::new() };
        let compared = message!(
            "plan-compared",
            planned = self.percent(expected.relative),
            rows = expected.rows,
            achieved = self.percent(speed.relative_v),
            taken = found.rows_read,
        );
        let turned_out = if speed.relative_v <= 1.15 * expected.relative {
            message!("plan-turned-out-kept")
        } else if found.rows_read < expected.rows {
            message!("plan-turned-out-missing")
        } else {
            message!("plan-turned-out-worse")
        };
        vec![compared, turned_out]
    }
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
