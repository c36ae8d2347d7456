//! The next reading that would help most, and the one that would show most.

use super::ask::{Asked, ask};
use super::spot::{Ground, Model, Spot, first_row, with_rows};
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
    pub spot: Spot,
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
pub struct Taken {
    /// The rows.
    pub rows: Vec<Row>,
    /// Place of the rail and distance of each.
    pub places: Vec<(Option<usize>, f64)>,
    /// The line that they lie on.
    pub model: Model,
}

/// The reading that would lower u(v)/v most; and, where it is another one, the reading that would show most of what
/// the line can't tell yet.
pub fn next(ground: &Ground, taken: &Taken) -> (Option<Next>, Option<Next>) {
    let places = |count: usize| -> Vec<Spot> {
        (0..ground.rails.len()).flat_map(|rail| ground.along(rail, count)).collect()
    };
    let rows = taken.rows.len().max(1);
    let mut spots = places((EFFORT / rows / ground.rails.len().max(1)).clamp(7, PLACES));
    for spot in &mut spots {
        if let Some(time_base) = near_time_base(ground, taken, spot.distance) {
            spot.time_base = time_base;
        }
    }
    let asked = asked(ground, taken, &spots);
    let count = taken.rows.len();
    let so_far: Vec<usize> = (0..count).collect();
    let before = asked.as_ref().and_then(|asked| asked.with(&so_far));
    let after = |place: usize| {
        let with_it: Vec<usize> = so_far.iter().copied().chain([count + place]).collect();
        asked.as_ref()?.with(&with_it)
    };
    let middle = taken.places.iter().map(|place| place.1).sum::<f64>() / rows as f64;
    let chosen =
        |place: usize, effect, why| spots.get(place).map(|spot| Next { spot: spot.clone(), effect, why });
    let Some(before) = before else {
        // Far from the middle of what there is; at the near end to begin with.
        let far = |place: &usize| spots.get(*place).map_or(0.0, |spot| (spot.distance - middle).abs());
        let place =
            if count == 0 { Some(0) } else { (0..spots.len()).max_by(|a, b| far(a).total_cmp(&far(b))) };
        return (place.and_then(|place| chosen(place, None, Why::First)), None);
    };
    let effects: Vec<(usize, f64)> =
        (0..spots.len()).filter_map(|place| Some((place, after(place)?))).collect();
    let best = effects.iter().min_by(|a, b| a.1.total_cmp(&b.1));
    let best = best.and_then(|(place, u)| {
        let lever = spots.get(*place)?.distance - middle;
        chosen(*place, Some((before, *u)), Why::Lever(lever.abs()))
    });
    let honest = honest(ground, taken, &spots).and_then(|(place, why)| {
        let u = effects.iter().find(|(at, _)| *at == place)?.1;
        chosen(place, Some((before, u)), why)
    });
    let other = honest.filter(|honest| best.as_ref().is_none_or(|best| best.spot != honest.spot));
    (best, other)
}

/// All rows taken and, behind them, one at each place looked at.
fn asked(ground: &Ground, taken: &Taken, spots: &[Spot]) -> Option<Asked> {
    let taken_last = taken.rows.iter().map(|row| row.id).max().unwrap_or(0);
    let first = first_row(ground.page).max(taken_last.saturating_add(1));
    let rows = (first..).zip(spots).map(|(id, spot)| ground.row(id, spot, &taken.model));
    let all: Vec<Row> = taken.rows.iter().cloned().chain(rows).collect();
    let expected = all.len();
    ask(&with_rows(ground.page, all, Vec::new())).ok().filter(|asked| asked.prediction.rows == expected)
}

/// The time base of the nearest row, if the delay finds room on the screen at it.
fn near_time_base(ground: &Ground, taken: &Taken, distance: f64) -> Option<String> {
    let from = |place: &(Option<usize>, f64)| (place.1 - distance).abs();
    let near = taken.rows.iter().zip(&taken.places).min_by(|a, b| from(a.1).total_cmp(&from(b.1)))?.0;
    let text = near.text(crate::notebook::Cell::TimeBase).trim();
    let time = ground.time(text)?;
    ground.holds(distance, time).then(|| text.to_owned())
}

/// On the first rail with too few positions to test its splice; else in the middle of the widest gap.
fn honest(ground: &Ground, taken: &Taken, spots: &[Spot]) -> Option<(usize, Why)> {
    let several = (0..ground.rails.len()).filter(|rail| ground.ends(*rail).is_some()).count() > 1;
    let poor = (0..ground.rails.len())
        .filter(|rail| several && spots.iter().any(|spot| spot.rail == *rail))
        .map(|rail| (rail, distinct(&taken.places, rail)))
        .find(|(_, have)| *have < SIDE);
    let room = |spot: &Spot| {
        let from = taken.places.iter().map(|place| (place.1 - spot.distance).abs());
        from.fold(f64::INFINITY, f64::min)
    };
    let open = spots.iter().enumerate().filter(|(_, spot)| poor.is_none_or(|(rail, _)| spot.rail == rail));
    let (place, spot) = open.max_by(|a, b| room(a.1).total_cmp(&room(b.1)))?;
    Some((place, poor.map_or_else(|| Why::Gap(room(spot)), |(_, have)| Why::Side(have))))
}

/// How many positions, a centimetre apart or more, there are on a rail.
pub fn distinct(places: &[(Option<usize>, f64)], rail: usize) -> usize {
    /// Nearer than this two positions are one, m.
    const APART: f64 = 0.01;
    let mut on_it: Vec<f64> = places.iter().filter(|(on, _)| *on == Some(rail)).map(|(_, d)| *d).collect();
    on_it.sort_by(f64::total_cmp);
    on_it.dedup_by(|a, b| *a - *b < APART);
    on_it.len()
}
