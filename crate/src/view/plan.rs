//! The plan in figures and places, rounded and with units; the page has the words that go around them.

use super::budget::{name, with_unit};
use super::plan_types::{ColumnProblem, LaneView, PlaceView, PlanView, PositionView, ProposedView, Said};
use crate::analysis::read::ruler_unit;
use crate::analysis::{Analysis, Origin, Part, Quantity, listed};
use crate::notebook::{Cell, Notebook, NotebookState, PositionId};
use crate::plan::next::Why;
use crate::plan::rehearsal::truth;
use crate::plan::spot::{PlanContext, Spot};
use crate::plan::{Plan, To, Warning, forecast, moved, plan};
use crate::quantity::{DecimalMark, fixed, plain};
use crate::words::Value;

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
            place: read.spot.as_ref().map(|spot| teller.place(spot)),
            rows: read.repeats,
            problems: read
                .problems
                .iter()
                .map(|(cell, why)| ColumnProblem { column: column(*cell).into(), problem: why.clone() })
                .collect(),
        });
    }
    view.lanes = teller.lanes(analysis);
    match &found.predicted {
        Err(refusal) => view.lacks = Some(refusal.message.clone()),
        Ok(_) => view.figures = teller.figures(&found, analysis),
    }
    teller.reach(&found, &mut view.figures);
    view.warnings = found.warnings.iter().map(|warning| teller.warning(warning)).collect();
    for next in &found.next {
        let (id, with) = match next.why {
            Why::First => ("first", String::new()),
            Why::Lever(_) if next.effect.is_some_and(|(before, after)| after > 0.98 * before) => {
                ("little", String::new())
            }
            Why::Lever(arm) => ("lever", teller.metres(arm)),
            Why::Side(have) => ("side", have.to_string()),
            Why::Gap(gap) => ("gap", teller.metres(gap)),
        };
        let mut with = vec![with];
        if let Some((before, after)) = next.effect {
            // A digit more than elsewhere, since one reading among many changes little.
            with.extend([before, after].map(|u| format!("{} %", plain(100.0 * u, 3, page.decimal_mark))));
        }
        view.next.push(ProposedView {
            said: said(id, with),
            places: vec![(teller.place(&next.spot), 1)],
            lacks: None,
        });
    }
    for (id, proposal) in [("spread", &found.spread), ("ends", &found.ends)] {
        let Some(proposal) = proposal else { continue };
        let mut places: Vec<(PlaceView, usize)> = Vec::new();
        for place in proposal.spots.iter().map(|spot| teller.place(spot)) {
            match places.last_mut() {
                Some((last, rows)) if *last == place => *rows += 1,
                _ => places.push((place, 1)),
            }
        }
        let with = vec![proposal.spots.len().to_string(), teller.percent(proposal.relative)];
        view.offers.push(ProposedView { said: said(id, with), places, lacks: None });
    }
    view
}

/// Where a handle would stand, and what would be expected of the plan then; nothing if it can't move there. Changes
/// nothing.
pub fn move_view(page: &NotebookState, id: PositionId, to: To) -> ProposedView {
    let Some((context, spot)) = PlanContext::of(page).ok().zip(moved(page, id, to)) else {
        return ProposedView::default();
    };
    let teller = Teller { page, context: &context };
    let mut changed = page.clone();
    for planned in &mut changed.plan {
        if planned.id == id {
            planned.reading.clone_from(&spot.reading);
        }
    }
    let places = vec![(teller.place(&spot), 1)];
    match forecast(&changed) {
        Ok(found) => {
            let with = vec![teller.percent(found.relative), found.rows.to_string()];
            ProposedView { said: said("moving", with), places, ..ProposedView::default() }
        }
        Err(refusal) => ProposedView { lacks: Some(refusal.message), places, ..ProposedView::default() },
    }
}

/// What was really so in a rehearsal: t₀, then each error with its name and its uncertainty as stated. Nothing in any
/// other notebook.
pub fn truth_view(notebook: &Notebook) -> Vec<Said> {
    let (page, Some(truth)) = (notebook.state(), truth(notebook)) else { return Vec::new() };
    let mark = page.decimal_mark;
    let mut all = vec![said("t0", vec![format!("{} ns", fixed(truth.t0, -3, mark))])];
    for (origin, error, u, quantity) in &truth.errors {
        let sign = if *error < 0.0 { "−" } else { "+" };
        let value = format!("{sign}{}", with_unit(error.abs(), *quantity, mark));
        all.push(named(&origin.id(), vec![value, with_unit(*u, *quantity, mark)], name(page, origin)));
    }
    for (rail, step) in &truth.steps {
        let origin = Origin::Splice { rail: *rail };
        let value = format!("{} mm", fixed(1000.0 * step, -1, mark));
        all.push(named(&origin.id(), vec![value], name(page, &origin)));
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

fn said(id: &str, with: Vec<String>) -> Said {
    Said { id: id.to_owned(), with, name: None }
}

fn named(id: &str, with: Vec<String>, name: Value) -> Said {
    Said { name: Some(name), ..said(id, with) }
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
        format!("{} %", plain(100.0 * relative, 2, self.page.decimal_mark))
    }

    fn metres(&self, distance: f64) -> String {
        format!("{} m", fixed(distance, -2, self.page.decimal_mark))
    }

    fn place(&self, spot: &Spot) -> PlaceView {
        let Some(rail) = self.page.rails.get(spot.rail) else { return PlaceView::default() };
        let (near, far) = self.context.ends(spot.rail).unwrap_or((spot.distance, spot.distance + 1.0));
        let share = ((spot.distance - near) / (far - near)).clamp(0.0, 1.0);
        let mut shown = spot.reading.clone();
        // A reading may be typed with its unit.
        if shown.ends_with(|last: char| last.is_ascii_digit()) {
            shown = format!("{shown} {}", ruler_unit(rail.unit).symbol());
        }
        PlaceView {
            lane: rail.id,
            rail: rail.name_or_number(spot.rail),
            reading: spot.reading.clone(),
            shown,
            time_base: spot.time_base.clone(),
            distance: self.metres(spot.distance),
            at: share_text(share),
            thousandths: fixed(1000.0 * share, 0, DecimalMark::Point),
        }
    }

    /// Every rail that has a place, between the splitter and the farthest end.
    fn lanes(&self, analysis: &Analysis) -> Vec<LaneView> {
        let (mut low, mut high): (f64, f64) = (0.0, 0.0);
        for index in 0..self.page.rails.len() {
            if let Some((near, far)) = self.context.ends(index) {
                (low, high) = (low.min(near), high.max(far));
            }
        }
        let mut lanes = Vec::new();
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
                ends.extend([format!("{reading} {}", unit.symbol()), self.metres(distance)]);
            }
            let mut taken = Vec::new();
            for row in &analysis.rows {
                if let (Some(distance), Part::Used) = (row.distance, &row.part)
                    && row.rail == Some(rail.id)
                {
                    taken.push(share_text(((distance.value - near) / (far - near)).clamp(0.0, 1.0)));
                }
            }
            lanes.push(LaneView {
                rail: rail.id,
                name: rail.name_or_number(index),
                from: share_text((near - low) / (high - low)),
                length: share_text((far - near) / (high - low)),
                ends,
                taken,
            });
        }
        lanes
    }

    fn warning(&self, warning: &Warning) -> Said {
        let (id, with) = match warning {
            Warning::OffRail(numbers) => ("off_rail", vec![listed(numbers)]),
            Warning::BeyondReach(numbers) => ("beyond_reach", vec![listed(numbers)]),
            Warning::OffScreen(numbers) => ("off_screen", vec![listed(numbers)]),
            Warning::Side(rail, have) => {
                let name = self.page.rails.get(*rail).map(|typed| typed.name_or_number(*rail));
                ("side", vec![name.unwrap_or_default(), have.to_string()])
            }
            Warning::Cluster(spanned, whole) => ("cluster", vec![self.metres(*spanned), self.metres(*whole)]),
            Warning::Few(rows) => ("few", vec![rows.to_string()]),
        };
        said(id, with)
    }

    fn figures(&self, found: &Plan, analysis: &Analysis) -> Vec<Said> {
        let Ok(expected) = &found.predicted else { return Vec::new() };
        let mut with = vec![
            self.percent(expected.relative),
            self.percent(expected.readings),
            self.percent(expected.shared),
            expected.rows.to_string(),
        ];
        if let Some((_, share)) = &expected.largest {
            with.push(fixed(100.0 * share, 0, self.page.decimal_mark));
        }
        let limit = expected.largest.as_ref().map(|(origin, _)| name(self.page, origin));
        let mut all = vec![Said { name: limit, ..said("expected", with) }];
        if let Ok(speed) = &analysis.speed {
            let missing = found.taken < expected.rows;
            let turned_out = if speed.relative_v <= 1.15 * expected.relative {
                "kept"
            } else if missing {
                "missing"
            } else {
                "worse"
            };
            all.push(said(
                "compared",
                vec![
                    turned_out.to_owned(),
                    self.percent(expected.relative),
                    expected.rows.to_string(),
                    self.percent(speed.relative_v),
                    found.taken.to_string(),
                ],
            ));
        }
        let what_if = &found.what_if;
        let floor = what_if.floor.filter(|floor| *floor > 1e-6);
        for (id, value) in [("again", what_if.again), ("rail", what_if.rail), ("floor", floor)] {
            all.extend(value.map(|value| said(id, vec![self.percent(value)])));
        }
        if let Some((value, rows)) = what_if.faster {
            all.push(said("faster", vec![self.percent(value), rows.to_string()]));
        }
        all
    }

    /// How far the pulse rate lets one go, and how fine the screen tells apart.
    fn reach(&self, found: &Plan, all: &mut Vec<Said>) {
        let mark = self.page.decimal_mark;
        let factor = self.page.path.factor();
        let speed = format!("{} m/ns", plain(factor / self.context.model.slope, 4, mark));
        let factor = fixed(factor, 0, mark);
        if let Some((period, reach)) = found.reach {
            let period = format!("{} ns", plain(period, 4, mark));
            all.push(said("reach", vec![self.metres(reach), speed.clone(), period, factor.clone()]));
        }
        if let Some((time, u, step)) = found.step {
            let (u, time) = (with_unit(u, Quantity::Time, mark), plain(time, 3, mark));
            all.push(said("step", vec![with_unit(step, Quantity::Length, mark), u, speed, factor, time]));
        }
    }
}

#[cfg(test)]
#[path = "plan_test.rs"]
mod tests;
