//! The next reading that would help most, and the one that would show most.

use super::ask::{ExpectedRows, ask};
use super::stop::{Model, PlanContext, PlannedStop, first_row, with_rows};
use crate::notebook::Row;

/// Places looked at on each rail.
const PLACES: usize = 41;
/// Rows fitted at most, over all places looked at: so that a long run does not hold up the page.
const EFFORT: usize = 8_000;
/// Rows wanted on each side of a splice (common practice, no source).
pub const SIDE: usize = 3;

/// A reading not taken yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Next {
    /// Where.
    pub stop: PlannedStop,
    /// u(v)/v without it and with it; none while there is no line yet.
    pub effect: Option<(f64, f64)>,
    /// Why there.
    pub why: Why,
}

/// Why a reading is proposed at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Why {
    /// There is no line yet: two places far apart are what it needs.
    First,
    /// It lies so far, in metres, from the middle of the others, and so turns the line most.
    Lever(f64),
    /// Its rail has only so many positions: too few to test the splice.
    Side(usize),
    /// It lies this far from the nearest of the others, m: a bend could hide there.
    Gap(f64),
}

/// The rows that there are so far, with their distances, m.
pub struct RowsSoFar {
    /// The rows.
    pub rows: Vec<Row>,
    /// Place of the rail and distance of each.
    pub places: Vec<(Option<usize>, f64)>,
    /// The line that they lie on.
    pub model: Model,
}

impl RowsSoFar {
    /// The middle of their distances, m; 0 where there are none.
    fn middle(&self) -> f64 {
        let mut middle = 0.0;
        for (_, distance) in &self.places {
            middle += distance / self.rows.len() as f64;
        }
        middle
    }

    /// How far a distance lies from the nearest of theirs, m.
    fn room(&self, distance: f64) -> f64 {
        let mut room = f64::INFINITY;
        for (_, other) in &self.places {
            room = room.min((other - distance).abs());
        }
        room
    }
}

/// The places that are looked at: fewer the more rows there are, each with the time base of the rows near it.
fn places(context: &PlanContext, so_far: &RowsSoFar) -> Vec<PlannedStop> {
    let each = EFFORT / so_far.rows.len().max(1) / context.rails.len().max(1);
    let mut stops = context.everywhere(each.clamp(7, PLACES));
    for stop in &mut stops {
        if let Some(time_base) = near_time_base(context, so_far, stop.distance) {
            stop.time_base = time_base;
        }
    }
    stops
}

/// The reading that would lower u(v)/v most; and, where it is another one, the reading that would show most of what
/// the line can't tell yet.
pub fn next(context: &PlanContext, so_far: &RowsSoFar) -> Vec<Next> {
    let count = so_far.rows.len();
    let (stops, middle) = (places(context, so_far), so_far.middle());
    let asked = asked(context, so_far, &stops);
    let with = |more: Option<usize>| {
        let mut rows: Vec<usize> = (0..count).collect();
        rows.extend(more.map(|place| count + place));
        asked.as_ref()?.with(&rows)
    };
    let before = with(None);
    // Without a line yet: far from the middle of what there is, and at the near end to begin with.
    let mut best: Option<(Next, f64)> = None;
    let mut honest: Option<(Next, f64)> = None;
    let poor = poor_side(context, so_far, &stops);
    for (place, stop) in stops.iter().enumerate() {
        let lever = (stop.distance - middle).abs();
        let after = before.and_then(|_| with(Some(place)));
        let effect = before.zip(after);
        let (why, worth) = match after {
            Some(after) => (Why::Lever(lever), -after),
            None => (Why::First, if count == 0 { -stop.distance } else { lever }),
        };
        if before.is_some() == after.is_some() {
            keep(&mut best, worth, stop, effect, why);
        }
        let room = so_far.room(stop.distance);
        if effect.is_some() && poor.is_none_or(|(rail, _)| rail == stop.rail) {
            let why = poor.map_or(Why::Gap(room), |(_, have)| Why::Side(have));
            keep(&mut honest, room, stop, effect, why);
        }
    }
    let mut both = Vec::new();
    for (next, _) in [best, honest].into_iter().flatten() {
        if both.iter().all(|other: &Next| other.stop != next.stop) {
            both.push(next);
        }
    }
    both
}

fn keep(
    best: &mut Option<(Next, f64)>,
    worth: f64,
    stop: &PlannedStop,
    effect: Option<(f64, f64)>,
    why: Why,
) {
    if best.as_ref().is_none_or(|best| worth > best.1) {
        *best = Some((Next { stop: stop.clone(), effect, why }, worth));
    }
}

/// All rows so far and, behind them, one at each place looked at.
fn asked(context: &PlanContext, so_far: &RowsSoFar, stops: &[PlannedStop]) -> Option<ExpectedRows> {
    let last_id = so_far.rows.iter().map(|row| row.id).max().unwrap_or(0);
    let first = first_row(context.page).max(last_id.saturating_add(1));
    let rows = (first..).zip(stops).map(|(id, stop)| context.row(id, stop, &so_far.model));
    let all: Vec<Row> = so_far.rows.iter().cloned().chain(rows).collect();
    let expected = all.len();
    ask(&with_rows(context.page, all, Vec::new())).ok().filter(|asked| asked.prediction.rows == expected)
}

/// The time base of the nearest row, if the delay finds room on the screen at it.
fn near_time_base(context: &PlanContext, so_far: &RowsSoFar, distance: f64) -> Option<String> {
    let from = |place: &(Option<usize>, f64)| (place.1 - distance).abs();
    let near = so_far.rows.iter().zip(&so_far.places).min_by(|a, b| from(a.1).total_cmp(&from(b.1)))?.0;
    let text = near.text(crate::notebook::Cell::TimeBase).trim();
    let time = context.time(text)?;
    context.holds(distance, time).then(|| text.to_owned())
}

/// The first rail, if there are several, with too few positions to test its splice, and how many it has.
fn poor_side(context: &PlanContext, so_far: &RowsSoFar, stops: &[PlannedStop]) -> Option<(usize, usize)> {
    let rails = 0..context.rails.len();
    if rails.clone().filter(|rail| context.ends(*rail).is_some()).count() < 2 {
        return None;
    }
    rails
        .map(|rail| (rail, distinct(&so_far.places, rail)))
        .find(|(rail, have)| *have < SIDE && stops.iter().any(|stop| stop.rail == *rail))
}

/// How many positions, a centimetre apart or more, there are on a rail.
pub fn distinct(places: &[(Option<usize>, f64)], rail: usize) -> usize {
    /// Nearer than this two positions are one, m.
    const APART: f64 = 0.01;
    let mut on_it: Vec<f64> = places.iter().filter(|(on, _)| *on == Some(rail)).map(|(_, d)| *d).collect();
    on_it.sort_unstable_by(f64::total_cmp);
    on_it.dedup_by(|a, b| *a - *b < APART);
    on_it.len()
}
