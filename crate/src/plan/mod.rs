//! Before the lab, and between two readings: what a run is expected to give, what limits it, what would help.
//!
//! A plan is a notebook whose rows have a place and a time base but no screen readings yet. They are given those that
//! the expected line would show, and the very engine that analyses readings is asked for the uncertainty: splices,
//! scales, time bases and free steps count as they will afterwards ([`ask`](mod@ask)). With independent readings this
//! is u(b) = σ/√Σ(d_i − d̄)², σ² = u_t² + b²u_d² (ISO/TS 28037:2010, clauses 6 and 7), to which the tests hold it.
//!
//! | symbol | meaning | unit |
//! | --- | --- | --- |
//! | u(v)/v | relative standard uncertainty of the group velocity | 1 |
//! | b | slope expected, f·n_g/c₀ | ns/m |
//! | T | pulse period | ns |
//!
//! - [`stop`]: places on the rails, and the rows that would be read there.
//! - [`ask`](mod@ask): what rows are expected to give.
//! - [`next`](mod@next): the next reading that would help most.
//! - [`positions`]: the planned positions, read as rows are read.
//! - [`rehearsal`]: the whole lab on a simulated copy of the bench.

pub mod stop;
pub mod ask;
pub mod next;
pub mod positions;
pub mod rehearsal;

use crate::analysis::{Analysis, Refusal, RowPart};
use crate::message;
use crate::notebook::{Cell, NotebookState, PositionId, Rail, RailField, Row, Splice};
use crate::quantity::{Unit, in_unit};
use crate::rail::Joint;

use ask::{Prediction, ask_stops};
use next::{Next, RowsSoFar, SIDE, distinct, next};
use positions::Position;
use stop::{FINE, Model, PlanContext, PlannedStop};

/// Rows that a proposal has where nothing is planned yet: eight, or four on each of many rails.
fn rows_to_propose(context: &PlanContext) -> usize {
    (4 * context.rails.len()).max(8)
}

/// A plan, looked at from all sides.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The planned positions, in their order.
    pub positions: Vec<Position>,
    /// What they are expected to give.
    pub predicted: Result<Prediction, Refusal>,
    /// What would change it.
    pub what_if: WhatIfs,
    /// As many rows, half of them at either end: the longest lever, and blind to bends and splices.
    pub ends: Option<ProposedStops>,
    /// As many rows spread over all rails, three or more on each.
    pub spread: Option<ProposedStops>,
    /// How far the pulses let one go; none where no pulse rate is stated.
    pub farthest: Option<Farthest>,
    /// How fine the screen tells distances apart; none where no position has a time base.
    pub finest: Option<FinestStep>,
    /// What is unwise about the positions.
    pub warnings: Vec<Warning>,
    /// The next reading that would help most, and the one that would show most where it is another one.
    pub next: Vec<Next>,
    /// How many rows were read so far; the next reading is told from them, else from the plan.
    pub rows_read: usize,
}

/// u(v)/v if something were otherwise; none where it can't be told.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WhatIfs {
    /// Every position read once more.
    pub again: Option<f64>,
    /// One more rail like the last one behind it.
    pub rail: Option<f64>,
    /// Half the time per division wherever the delay still finds room on the screen.
    pub faster: Option<Faster>,
    /// Rows repeated without end: what no repeat can buy.
    pub floor: Option<f64>,
}

/// What faster time bases would give.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Faster {
    /// u(v)/v with them.
    pub relative: f64,
    /// At how many rows there is room for one.
    pub rows: usize,
}

/// The farthest that one pulse is told from the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Farthest {
    /// Pulse period, ns.
    pub period: f64,
    /// The farthest distance that it allows, m.
    pub distance: f64,
}

/// The shortest step in distance that is told apart at the fastest setting planned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FinestStep {
    /// Standard uncertainty of a delay there, ns.
    pub u_delay: f64,
    /// The step, m.
    pub distance: f64,
}

/// Positions that may be planned.
#[derive(Clone, Debug, PartialEq)]
pub struct ProposedStops {
    /// Where, once for each row.
    pub stops: Vec<PlannedStop>,
    /// u(v)/v expected of them.
    pub relative: f64,
}

/// What is unwise about positions. Numbers are those of the positions, from 1.
#[derive(Clone, Debug, PartialEq)]
pub enum Warning {
    /// Outside the span of their rail.
    OffRail(Vec<usize>),
    /// Beyond the reach of the pulse rate.
    BeyondReach(Vec<usize>),
    /// The delay finds no room on the screen at the time base planned.
    OffScreen(Vec<usize>),
    /// A rail (by place) with so few positions that its splice can't be tested.
    Side(usize, usize),
    /// All positions lie within this length of the length there is, m.
    Cluster(f64, f64),
    /// Fewer rows than a line should rest on.
    Few(usize),
}

/// Looks at the plan of a notebook, and at its rows so far.
///
/// # Errors
/// Why there is nothing to plan on, and what to do.
pub fn plan(page: &NotebookState, analysis: &Analysis) -> Result<Plan, Refusal> {
    let context = PlanContext::of(page)?;
    let positions = positions::read(&context);
    let stops = positions::stops(&positions);
    let predicted = expected(&context, &stops);
    let count = if stops.len() < 2 { rows_to_propose(&context) } else { stops.len() };
    let (spread, ends) = proposals(&context, count);
    let (so_far, rows_read) = rows_so_far(&context, analysis, &positions);
    let fastest = stops.iter().filter_map(|stop| context.time(&stop.time_base)).min_by(f64::total_cmp);
    Ok(Plan {
        what_if: what_ifs(&context, &positions, &stops),
        warnings: warnings(&context, &positions, stops.len()),
        next: next(&context, &so_far),
        rows_read,
        farthest: context
            .period()
            .zip(context.reach())
            .map(|(period, distance)| Farthest { period, distance }),
        finest: fastest.map(|time| {
            let u_delay = context.bench.half_width * (2.0_f64 / 3.0).sqrt() * time;
            FinestStep { u_delay, distance: 2.0 * 2.0_f64.sqrt() * u_delay / context.model.slope }
        }),
        positions,
        predicted,
        ends,
        spread,
    })
}

/// What the planned positions are expected to give.
///
/// # Errors
/// Why they give nothing yet.
pub fn forecast(page: &NotebookState) -> Result<Prediction, Refusal> {
    let context = PlanContext::of(page)?;
    expected(&context, &planned(&context))
}

fn expected(context: &PlanContext, stops: &[PlannedStop]) -> Result<Prediction, Refusal> {
    if stops.len() < 2 {
        return Err(Refusal::new("too_few_rows", message!("plan-too_few")));
    }
    ask_stops(context, stops).map(|asked| asked.prediction)
}

/// The places of the rows planned.
pub fn planned(context: &PlanContext) -> Vec<PlannedStop> {
    positions::stops(&positions::read(context))
}

/// Places spread over all rails, for a run of which nothing is planned.
pub fn spread(context: &PlanContext) -> Vec<PlannedStop> {
    proposals(context, rows_to_propose(context)).0.map_or_else(Vec::new, |proposal| proposal.stops)
}

/// Where a handle on a rail is moved to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum To {
    /// To a share, 0 … 1, of its rail from the near end.
    Share(f64),
    /// So many round readings outwards.
    Steps(f64),
}

/// The place that a planned position is moved to; none where it stands on no rail, or is of no number known.
pub fn moved(page: &NotebookState, id: PositionId, to: To) -> Option<PlannedStop> {
    let context = PlanContext::of(page).ok()?;
    let position = positions::read(&context).into_iter().find(|position| position.id == id)?;
    let rail = position.rail?;
    let (near, far) = context.ends(rail)?;
    match to {
        To::Share(share) => context.round_stop(rail, near + share * (far - near), FINE),
        To::Steps(steps) => {
            let from = position.stop.map_or(near, |stop| stop.distance);
            let step = context.fine_step(rail)?;
            context.round_stop(rail, from + steps * step, FINE)
        }
    }
}

/// The rows so far, also those whose place is written and whose screen is still to be read; or the rows planned while
/// there are none. And how many were read.
fn rows_so_far(context: &PlanContext, analysis: &Analysis, positions: &[Position]) -> (RowsSoFar, usize) {
    let count = analysis.rows.iter().filter(|reading| reading.part.is_used()).count();
    let model = model(context, analysis, count);
    let (mut rows, mut places) = (Vec::new(), Vec::new());
    for (row, reading) in context.page.rows.iter().zip(&analysis.rows) {
        let Some(distance) = reading.distance.map(|distance| distance.value) else { continue };
        let rail = reading.rail.and_then(|rail| context.page.rail(rail)).map(|(place, _)| place);
        match (&reading.part, rail) {
            (RowPart::Used, _) => rows.push(row.clone()),
            (RowPart::Incomplete { .. }, Some(rail)) => {
                rows.push(context.row(row.id, &open_stop(context, row, rail, distance), &model));
            }
            _ => continue,
        }
        places.push((rail, distance));
    }
    if rows.is_empty() {
        for (id, stop) in (stop::first_row(context.page)..).zip(positions::stops(positions)) {
            rows.push(context.row(id, &stop, &model));
            places.push((Some(stop.rail), stop.distance));
        }
    }
    (RowsSoFar { rows, places, model }, count)
}

/// The place of a row whose screen is still to be read.
fn open_stop(context: &PlanContext, row: &Row, rail: usize, distance: f64) -> PlannedStop {
    let time_base = row.text(Cell::TimeBase).trim();
    let time_base =
        if context.time(time_base).is_some() { time_base.to_owned() } else { context.fastest(distance) };
    PlannedStop { rail, reading: row.text(Cell::Reading).trim().to_owned(), distance, time_base }
}

/// The line that the rows so far lie on.
fn model(context: &PlanContext, analysis: &Analysis, count: usize) -> Model {
    match &analysis.drawn {
        Some(line) if count > 0 && line.slope > 0.0 => Model { t0: line.intercept, slope: line.slope },
        _ => context.model,
    }
}

fn what_ifs(context: &PlanContext, positions: &[Position], stops: &[PlannedStop]) -> WhatIfs {
    let Ok(asked) = ask_stops(context, stops) else { return WhatIfs::default() };
    // Each row once, and the first row of each position once more.
    let mut again: Vec<usize> = (0..stops.len()).collect();
    let mut first = 0;
    for position in positions.iter().filter(|position| position.stop.is_some()) {
        again.push(first);
        first += position.repeats;
    }
    WhatIfs {
        again: asked.with(&again),
        rail: one_more_rail(context, stops),
        faster: faster(context, stops),
        floor: asked.floor(),
    }
}

fn faster(context: &PlanContext, stops: &[PlannedStop]) -> Option<Faster> {
    let mut quick = stops.to_vec();
    let mut rows = 0;
    for stop in &mut quick {
        let half = context.time(&stop.time_base).map(|time| time / 2.0);
        if let Some(half) = half.filter(|half| context.holds(stop.distance, *half)) {
            stop.time_base = in_unit(half, Unit::NANOSECOND, context.page.decimal_mark);
            rows += 1;
        }
    }
    let asked = ask_stops(context, &quick).ok()?;
    Some(Faster { relative: asked.prediction.relative, rows })
}

/// One more rail of the last one's length, joined to its far end as well as that one is joined; positions on it
/// stand as on the last one, or three of them evenly.
fn one_more_rail(context: &PlanContext, stops: &[PlannedStop]) -> Option<f64> {
    let page = context.page;
    let last = page.rails.len().checked_sub(1)?;
    let (typed, rail) = (page.rails.get(last)?, context.rails.get(last)?.rail.as_ref()?);
    let (near, far) = context.ends(last)?;
    let stand = context.stands.get(last)?.as_ref()?;
    let uncertainty = match rail.joint {
        Joint::At { uncertainty, .. } | Joint::Meeting { uncertainty, .. } => uncertainty,
        Joint::Overlap { .. } | Joint::Free { .. } => stand.u_offset(),
    };
    let metres = |value: f64| in_unit(value, Unit::METRE, page.decimal_mark);
    let mut more = Rail {
        id: page.rails.iter().map(|rail| rail.id).max()?.checked_add(1)?,
        splice: Splice::Joined {
            mark: metres(stand.reading(near)),
            mark_before: metres(stand.reading(far)),
            gap: String::new(),
            uncertainty: metres(uncertainty),
        },
        ..typed.clone()
    };
    more.texts.insert(RailField::Name, NEW_RAIL.to_owned());
    let mut page = page.clone();
    page.rails.push(more);
    let context = PlanContext::of(&page).ok()?;
    let (from, to) = context.ends(last + 1)?;
    if context.reach().is_some_and(|reach| to > reach) {
        return None;
    }
    let mut all = stops.to_vec();
    for stop in stops.iter().filter(|stop| stop.rail == last) {
        let distance = stop.distance + from - near;
        let kept = context.time(&stop.time_base).is_some_and(|time| context.holds(distance, time));
        let time_base = if kept { stop.time_base.clone() } else { context.fastest(distance) };
        all.push(PlannedStop { rail: last + 1, distance, time_base, reading: stop.reading.clone() });
    }
    if all.len() == stops.len() {
        all.append(&mut context.along(last + 1, SIDE));
    }
    ask_stops(&context, &all).ok().map(|asked| asked.prediction.relative)
}

/// The name of a rail that is not there.
const NEW_RAIL: &str = "one more";

/// Rows spread over all rails, and as many at the two ends.
fn proposals(context: &PlanContext, count: usize) -> (Option<ProposedStops>, Option<ProposedStops>) {
    let length = |rail: usize| context.ends(rail).map_or(0.0, |(near, far)| (far - near.max(0.0)).max(0.0));
    let mut total = 0.0;
    for rail in 0..context.rails.len() {
        total += length(rail);
    }
    let mut spread: Vec<PlannedStop> = Vec::new();
    let (mut so_far, mut placed) = (0.0, 0);
    for rail in 0..context.rails.len() {
        so_far += length(rail);
        // Of the running sum, so that the parts add up to the count.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share of the count")]
        let until = (count as f64 * so_far / total).round() as usize;
        spread.append(&mut context.along(rail, (until - placed).max(SIDE)));
        placed = until;
    }
    let mut ends = Vec::new();
    if let Some(first) = spread.first() {
        let (mut near, mut far) = (first, first);
        for stop in &spread {
            near = if stop.distance < near.distance { stop } else { near };
            far = if stop.distance > far.distance { stop } else { far };
        }
        ends = vec![near.clone(); spread.len() / 2];
        ends.resize(spread.len(), far.clone());
    }
    (proposal(context, spread), proposal(context, ends))
}

fn proposal(context: &PlanContext, stops: Vec<PlannedStop>) -> Option<ProposedStops> {
    let relative = expected(context, &stops).ok()?.relative;
    Some(ProposedStops { stops, relative })
}

fn warnings(context: &PlanContext, positions: &[Position], rows: usize) -> Vec<Warning> {
    let (mut off, mut beyond, mut off_screen) = (Vec::new(), Vec::new(), Vec::new());
    let mut places = Vec::new();
    let reach = context.reach().unwrap_or(f64::INFINITY);
    for (number, position) in (1..).zip(positions) {
        let Some(stop) = &position.stop else { continue };
        places.push((Some(stop.rail), stop.distance));
        let (near, far) = context.ends(stop.rail).unwrap_or((f64::NEG_INFINITY, f64::INFINITY));
        if stop.distance < near - 1e-9 || stop.distance > far + 1e-9 {
            off.push(number);
        }
        if stop.distance >= reach {
            beyond.push(number);
        }
        let room = context.time(&stop.time_base).map(|time| time * context.bench.screen_width);
        if room.is_some_and(|room| context.model.delay(stop.distance) > room) {
            off_screen.push(number);
        }
    }
    let mut all = vec![Warning::OffRail(off), Warning::BeyondReach(beyond), Warning::OffScreen(off_screen)];
    all.retain(|warning| match warning {
        Warning::OffRail(numbers) | Warning::BeyondReach(numbers) | Warning::OffScreen(numbers) => {
            !numbers.is_empty()
        }
        _ => true,
    });
    if places.is_empty() {
        return all;
    }
    let mut used = Vec::new();
    for rail in 0..context.rails.len() {
        let have = distinct(&places, rail);
        if have > 0 {
            used.push((rail, have));
        }
    }
    if used.len() > 1 {
        for (rail, have) in used {
            if have < SIDE {
                all.push(Warning::Side(rail, have));
            }
        }
    }
    all.extend(cluster(context, &places, reach));
    if rows < FEW {
        all.push(Warning::Few(rows));
    }
    all
}

/// Rows that a line should rest on at least (common practice, no source).
const FEW: usize = 5;

/// All positions within a third of the length that there is.
fn cluster(context: &PlanContext, places: &[(Option<usize>, f64)], reach: f64) -> Option<Warning> {
    let (mut spanned, mut whole) = (Range::default(), Range::default());
    for (_, distance) in places {
        spanned.take(*distance);
    }
    for rail in 0..context.rails.len() {
        if let Some((near, far)) = context.ends(rail) {
            whole.take(near.max(0.0));
            whole.take(far.min(reach));
        }
    }
    let (spanned, whole) = (spanned.length(), whole.length());
    (spanned < whole / 3.0).then_some(Warning::Cluster(spanned, whole))
}

/// The least and the largest of some values.
struct Range(f64, f64);

impl Default for Range {
    fn default() -> Self {
        Self(f64::INFINITY, f64::NEG_INFINITY)
    }
}

impl Range {
    fn take(&mut self, value: f64) {
        *self = Self(self.0.min(value), self.1.max(value));
    }

    fn length(&self) -> f64 {
        self.1 - self.0
    }
}

#[cfg(test)]
#[path = "mod_test.rs"]
mod tests;
