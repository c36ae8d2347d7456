//! The plan in words and digits.

use litemap::LiteMap;

use super::budget::{name, with_unit};
use super::figures::figure;
use super::types::{Field, Figure, LaneView, MoveView, NextView, OfferView, PlanView, PositionView};
use crate::analysis::read::ruler_unit;
use crate::analysis::{Analysis, C0, Origin, Part, listed};
use crate::notebook::{Cell, Edit, Notebook, Page, PlannedPosition, PositionId, Rail};
use crate::plan::ask::Prediction;
use crate::plan::next::{Next, Why};
use crate::plan::positions::{Position, spots};
use crate::plan::rehearsal::truth;
use crate::plan::spot::{Ground, Spot, first_row, position};
use crate::plan::{Plan, Proposal, To, Warning, forecast, moved, plan};
use crate::quantity::{DecimalMark, fixed, plain};

/// The plan.
pub fn plan_view(page: &Page, analysis: &Analysis) -> PlanView {
    let rehearsal = page.rehearsal.is_some();
    let (ground, found) = match Ground::of(page).and_then(|ground| Ok((ground, plan(page, analysis)?))) {
        Ok(both) => both,
        Err(refusal) => return PlanView { refusal: refusal.message, rehearsal, ..PlanView::default() },
    };
    let words = Words { page, ground: &ground };
    PlanView {
        refusal: String::new(),
        positions: words.positions(&found.positions),
        lanes: words.lanes(analysis),
        summary: words.summary(&found),
        figures: words.figures(&found, analysis),
        warnings: found.warnings.iter().map(|warning| words.warning(warning)).collect(),
        next: words.next(&found),
        offers: words.offers(&found),
        take: words.take(&found.positions),
        compared: words.compared(&found, analysis),
        rehearsal,
    }
}

/// What a handle shows while it moves; nothing if it can't move there. Changes nothing.
pub fn move_view(page: &Page, id: PositionId, to: To) -> MoveView {
    let Some((ground, spot)) = Ground::of(page).ok().zip(moved(page, id, to)) else {
        return MoveView::default();
    };
    let words = Words { page, ground: &ground };
    let mut changed = page.clone();
    for planned in changed.plan.iter_mut().filter(|planned| planned.id == id) {
        planned.reading.clone_from(&spot.reading);
    }
    let expected = forecast(&changed);
    let (at, thousandths) = words.along(&spot);
    MoveView {
        at,
        thousandths,
        spoken: words.place(&spot),
        expected: expected.map_or_else(|refusal| refusal.message, |found| words.expected(&found)),
        reading: spot.reading,
    }
}

/// What was really so in a rehearsal; nothing in any other notebook.
pub fn truth_view(notebook: &Notebook) -> Vec<Figure> {
    let (page, Some(truth)) = (notebook.page(), truth(notebook)) else { return Vec::new() };
    let mark = page.decimal_mark;
    let mut figures = vec![
        figure("c", "speed of light in vacuum", "c₀", format!("{C0} m/s"), ""),
        figure("t0", "delay at zero distance", "t₀", format!("{} ns", fixed(truth.t0, -3, mark)), ""),
    ];
    for (origin, error, u, quantity) in &truth.errors {
        let sign = if *error < 0.0 { "−" } else { "+" };
        let value = format!(
            "{sign}{} (u = {})",
            with_unit(error.abs(), *quantity, mark),
            with_unit(*u, *quantity, mark)
        );
        figures.push(figure(&origin.id(), &name(page, origin), "", value, ""));
    }
    for (rail, step) in &truth.steps {
        let value = format!("{} mm", fixed(1000.0 * step, -1, mark));
        let origin = Origin::Splice { rail: *rail };
        figures.push(figure(
            &format!("step-{rail}"),
            &format!("step at the {}", name(page, &origin)),
            "",
            value,
            "",
        ));
    }
    figures
}

fn percent(relative: f64, mark: DecimalMark) -> String {
    format!("{} %", plain(100.0 * relative, 2, mark))
}

/// What the words are about.
pub(super) struct Words<'a> {
    pub(super) page: &'a Page,
    pub(super) ground: &'a Ground<'a>,
}

impl Words<'_> {
    pub(super) fn mark(&self) -> DecimalMark {
        self.page.decimal_mark
    }

    pub(super) fn percent(&self, relative: f64) -> String {
        percent(relative, self.mark())
    }

    fn metres(&self, distance: f64) -> String {
        format!("{} m", fixed(distance, -2, self.mark()))
    }

    fn rail(&self, index: usize) -> String {
        self.page.rails.get(index).map_or_else(String::new, |rail| rail.name_or_number(index))
    }

    fn unit(&self, index: usize) -> &'static str {
        let rail = self.page.rails.get(index);
        rail.map_or("", |rail| ruler_unit(rail.unit).symbol())
    }

    /// "185 cm on rail near, 1.73 m from the splitter".
    fn place(&self, spot: &Spot) -> String {
        let reading = self.reading(spot);
        format!(
            "{reading} on rail {}, {} from the splitter",
            self.rail(spot.rail),
            self.metres(spot.distance)
        )
    }

    /// The reading with the ruler's unit, where it was typed without one.
    fn reading(&self, spot: &Spot) -> String {
        let bare = spot.reading.ends_with(|last: char| last.is_ascii_digit());
        if bare { format!("{} {}", spot.reading, self.unit(spot.rail)) } else { spot.reading.clone() }
    }

    /// Where along the lane of its rail a place is.
    fn along(&self, spot: &Spot) -> (String, String) {
        let Some((near, far)) = self.ground.ends(spot.rail) else { return Default::default() };
        let share = ((spot.distance - near) / (far - near)).clamp(0.0, 1.0);
        (share_text(share), fixed(1000.0 * share, 0, DecimalMark::Point))
    }

    fn positions(&self, positions: &[Position]) -> Vec<PositionView> {
        let each = self.page.plan.iter().zip(positions);
        each.map(|(typed, read)| self.position(typed, read)).collect()
    }

    fn position(&self, typed: &PlannedPosition, read: &Position) -> PositionView {
        let field = |cell: Cell, text: &str, unit: &str, default: &str| Field {
            text: text.to_owned(),
            problem: read
                .problems
                .iter()
                .find(|(at, _)| *at == cell)
                .map(|(_, why)| why.clone())
                .unwrap_or_default(),
            default: default.to_owned(),
            unit: unit.to_owned(),
        };
        let rail = self.page.rails.iter().position(|rail| Some(rail.id) == read.rail);
        let only = if self.page.rails.len() == 1 { self.rail(0) } else { String::new() };
        let fast = read.spot.as_ref().map_or("", |spot| spot.time_base.as_str());
        let (at, thousandths) = read.spot.as_ref().map(|spot| self.along(spot)).unwrap_or_default();
        PositionView {
            id: typed.id,
            rail: field(Cell::Rail, &typed.rail, "", &only),
            reading: field(Cell::Reading, &typed.reading, rail.map_or("", |rail| self.unit(rail)), ""),
            time_base: field(Cell::TimeBase, &typed.time_base, "ns", fast),
            repeats: field(Cell::Remark, &typed.repeats, "", "1"),
            distance: read.spot.as_ref().map_or_else(String::new, |spot| self.metres(spot.distance)),
            lane: read.spot.as_ref().and(read.rail).filter(|_| !at.is_empty()),
            at,
            thousandths,
            spoken: read.spot.as_ref().map_or_else(String::new, |spot| self.place(spot)),
        }
    }

    /// Every rail that has a place, between the splitter and the farthest end.
    fn lanes(&self, analysis: &Analysis) -> Vec<LaneView> {
        let ends = || (0..self.page.rails.len()).filter_map(|index| self.ground.ends(index));
        let low = ends().fold(0.0, |low: f64, (near, _)| low.min(near));
        let high = ends().fold(low, |high: f64, (_, far)| high.max(far));
        let lane = |(index, rail): (usize, &Rail)| {
            let (near, far) = self.ground.ends(index)?;
            let stand = self.ground.stands.get(index)?.as_ref()?;
            let unit = ruler_unit(rail.unit);
            let shown = |distance: f64| {
                format!(
                    "{} {}",
                    plain(unit.from_base(stand.reading(distance)), 4, self.mark()),
                    unit.symbol()
                )
            };
            let rows = analysis.rows.iter().filter(|row| row.rail == Some(rail.id) && row.part == Part::Used);
            let places =
                rows.filter_map(|row| row.distance).map(|distance| (distance.value - near) / (far - near));
            Some(LaneView {
                rail: rail.id,
                name: self.rail(index),
                from: share_text((near - low) / (high - low)),
                length: share_text((far - near) / (high - low)),
                ends: format!(
                    "{} at {}, {} at {}",
                    shown(near),
                    self.metres(near),
                    shown(far),
                    self.metres(far)
                ),
                taken: places.map(|share| share_text(share.clamp(0.0, 1.0))).collect(),
            })
        };
        self.page.rails.iter().enumerate().filter_map(lane).collect()
    }

    fn expected(&self, found: &Prediction) -> String {
        format!("Expected: u(v)/v = {} from {} rows.", self.percent(found.relative), found.rows)
    }

    pub(super) fn limit(&self, found: &Prediction) -> Option<String> {
        let (origin, share) = found.largest.as_ref()?;
        Some(format!(
            "{} ({} % of the variance)",
            name(self.page, origin),
            fixed(100.0 * share, 0, self.mark())
        ))
    }

    fn summary(&self, found: &Plan) -> String {
        match &found.predicted {
            Err(refusal) => refusal.message.clone(),
            Ok(prediction) => {
                let limit = self.limit(prediction).map(|limit| format!(" What limits it: {limit}."));
                self.expected(prediction) + &limit.unwrap_or_default()
            }
        }
    }

    fn compared(&self, found: &Plan, analysis: &Analysis) -> String {
        let (Ok(planned), Ok(speed)) = (&found.predicted, &analysis.speed) else { return String::new() };
        let ratio = speed.relative_v / planned.relative;
        let why = if ratio <= 1.15 {
            "The run keeps what the plan promised."
        } else if found.taken < planned.rows {
            "Rows are still missing."
        } else {
            "The readings scatter more, or stand elsewhere, than was planned: compare the budget’s parts."
        };
        format!(
            "Expected {} from {} rows; achieved {} from {}. {why}",
            self.percent(planned.relative),
            planned.rows,
            self.percent(speed.relative_v),
            found.taken
        )
    }

    fn warning(&self, warning: &Warning) -> String {
        let those = |numbers: &[usize]| {
            let word = if numbers.len() == 1 { "Position" } else { "Positions" };
            format!("{word} {}", listed(numbers))
        };
        match warning {
            Warning::OffRail(numbers) => format!("{}: off the rail.", those(numbers)),
            Warning::BeyondReach(numbers) => {
                format!(
                    "{}: the delay is longer than a pulse period, so the next pulse comes first.",
                    those(numbers)
                )
            }
            Warning::OffScreen(numbers) => {
                format!("{}: the delay finds no room on the screen at that time base.", those(numbers))
            }
            Warning::Side(rail, have) => format!(
                "Rail {} has {have} of the three positions or more that each side of a splice needs: fewer can’t show a step there.",
                self.rail(*rail)
            ),
            Warning::Cluster(spanned, whole) => format!(
                "All positions lie within {} of the {} there are: a short lever gives a poor slope.",
                self.metres(*spanned),
                self.metres(*whole)
            ),
            Warning::Few(rows) => {
                let have = if *rows == 1 { "1 row is" } else { &format!("{rows} rows are") };
                format!("{have} planned; with fewer than 5 nothing is left to judge the scatter by.")
            }
        }
    }

    fn cells(&self, spot: &Spot) -> LiteMap<Cell, String> {
        let PlannedPosition { rail, reading, time_base, .. } = position(self.page, 0, spot);
        LiteMap::from_iter([(Cell::Rail, rail), (Cell::Reading, reading), (Cell::TimeBase, time_base)])
    }

    fn take(&self, positions: &[Position]) -> Option<Edit> {
        let places = spots(positions);
        let row = |(row, spot): (u32, &Spot)| Edit::AddRow { row, after: None, cells: self.cells(spot) };
        (!places.is_empty()).then(|| Edit::Together((first_row(self.page)..).zip(&places).map(row).collect()))
    }

    fn free_position(&self) -> PositionId {
        self.page.plan.iter().map(|position| position.id).max().unwrap_or(0).saturating_add(1)
    }

    fn next(&self, found: &Plan) -> Vec<NextView> {
        let (best, honest) = &found.next;
        let both = [("best", best), ("honest", honest)];
        both.into_iter()
            .filter_map(|(id, next)| Some(self.next_view(id, next.as_ref()?, found.taken)))
            .collect()
    }

    fn next_view(&self, id: &str, next: &Next, taken: usize) -> NextView {
        let effect = next.effect.map(|(before, after)| {
            format!(": u(v)/v from {} to {}", self.percent(before), self.percent(after))
        });
        let small = next.effect.is_some_and(|(before, after)| after > 0.98 * before);
        let reason = match next.why {
            Why::First => "A line needs two places, the farther apart the better.".to_owned(),
            Why::Lever(_) if small => {
                "No single reading helps much any more: look at what limits the whole.".to_owned()
            }
            Why::Lever(arm) => format!(
                "Of all places this one lowers it most: {} from the middle of the {}, it turns the line most.",
                self.metres(arm),
                if taken > 0 { "readings so far" } else { "plan" }
            ),
            Why::Side(have) => format!(
                "Rail {} has {have} positions: with three or more the step at its splice can be tested.",
                self.rail(next.spot.rail)
            ),
            Why::Gap(gap) => format!(
                "The nearest reading is {} away: a bend or a step could hide there.",
                self.metres(gap)
            ),
        };
        NextView {
            id: id.to_owned(),
            text: format!("{}{}", self.place(&next.spot), effect.unwrap_or_default()),
            reason,
            row: Some(Edit::AddRow { row: first_row(self.page), after: None, cells: self.cells(&next.spot) }),
            position: Some(Edit::SetPosition(position(self.page, self.free_position(), &next.spot))),
        }
    }

    fn offers(&self, found: &Plan) -> Vec<OfferView> {
        let both = [
            ("spread", &found.spread, "spread over all rails: bends and splices can be tested"),
            ("ends", &found.ends, "half at either end: the longest lever, blind to bends and splices"),
        ];
        let offer = |(id, proposal, words): (&str, &Option<Proposal>, &str)| {
            let proposal = proposal.as_ref()?;
            let all = proposal.spots.len();
            Some(OfferView {
                id: id.to_owned(),
                text: format!("{all} rows {words}. Expected u(v)/v = {}.", self.percent(proposal.relative)),
                edit: Some(self.instead(&proposal.spots)),
            })
        };
        both.into_iter().filter_map(offer).collect()
    }

    /// These places instead of what is planned; rows at one place as repeats.
    fn instead(&self, spots: &[Spot]) -> Edit {
        let mut planned: Vec<(PlannedPosition, usize)> = Vec::new();
        for spot in spots {
            match planned.last_mut().filter(|(last, _)| last.reading == spot.reading) {
                Some((_, repeats)) => *repeats += 1,
                None => planned.push((position(self.page, 0, spot), 1)),
            }
        }
        let old = self.page.plan.iter().map(|position| Edit::RemovePosition(position.id));
        let new = (self.free_position()..).zip(planned).map(|(id, (position, repeats))| {
            let repeats = if repeats > 1 { repeats.to_string() } else { String::new() };
            Edit::SetPosition(PlannedPosition { id, repeats, ..position })
        });
        Edit::Together(old.chain(new).collect())
    }
}

/// A share as a length for the page: "48.20%".
fn share_text(share: f64) -> String {
    format!("{}%", fixed(100.0 * share, -2, DecimalMark::Point))
}

#[cfg(test)]
#[path = "plan_test.rs"]
mod tests;
