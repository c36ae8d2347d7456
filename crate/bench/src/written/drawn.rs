//! Benches over wide ranges, and the sheet of a run on one: every stated uncertainty is true.

use super::{Sheet, SheetRail, SheetRow};
use crate::chance::Chance;
use crate::rails::{Joint, Rail, Rig, Stop};

/// The ranges that benches are drawn over.
#[derive(Clone, Copy, Debug)]
pub struct Ranges {
    /// Fewest and most rows.
    pub rows: (usize, usize),
    /// Most rails.
    pub rails: usize,
    /// Length of a rail, m.
    pub length: (f64, f64),
    /// Half-width within which an edge is read, divisions.
    pub half_width: (f64, f64),
    /// Standard uncertainty of a joint, m.
    pub u_joint: (f64, f64),
    /// Standard uncertainty of a reading, m.
    pub u_reading: (f64, f64),
    /// Delay at zero distance, ns.
    pub t0: (f64, f64),
    /// Times per division that the screen has, ns.
    pub time_bases: &'static [f64],
}

/// The ranges that the study is made over.
pub const STUDIED: Ranges = Ranges {
    rows: (5, 40),
    rails: 4,
    length: (0.6, 2.5),
    half_width: (0.02, 0.1),
    u_joint: (0.001, 0.012),
    u_reading: (0.0002, 0.0015),
    t0: (-2.0, 5.0),
    time_bases: &[1.0, 2.0, 2.5, 5.0, 10.0, 20.0],
};

/// Other ranges, held back: nothing is tuned on them.
pub const HELD_BACK: Ranges = Ranges {
    rows: (6, 32),
    rails: 3,
    length: (1.0, 4.0),
    half_width: (0.03, 0.15),
    u_joint: (0.002, 0.02),
    u_reading: (0.0005, 0.003),
    t0: (-8.0, 12.0),
    time_bases: &[0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0],
};

/// What a bench must have.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Needs {
    /// Steps of 10 cm at 1 ns a division.
    pub small_steps: bool,
    /// Overlaps at all joints.
    pub overlaps: bool,
}

const METRE: f64 = 1.0;
const UNITS: [f64; 6] = [0.001, 0.01, 0.01, 0.01, METRE, 0.0254];
const GROUP_INDEX: f64 = 1.000_28;
const C0: f64 = 299_792_458.0;

fn between(chance: &mut Chance, (low, high): (f64, f64)) -> f64 {
    low + (high - low) * chance.unit()
}

/// A number below `below`.
pub(super) fn pick(chance: &mut Chance, below: usize) -> usize {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small and not negative")]
    let drawn = (chance.unit() * below as f64) as usize;
    drawn.min(below.saturating_sub(1))
}

/// The sheet of a run on a bench drawn from `seed`.
pub fn sheet(ranges: &Ranges, needs: Needs, seed: u64) -> Sheet {
    let mut chance = Chance::stream(seed, 7);
    let chance = &mut chance;
    let mirror = chance.unit() < 0.25;
    let rails = rails(ranges, needs, chance);
    let rows = ranges.rows.0 + pick(chance, ranges.rows.1 - ranges.rows.0 + 1);
    let half_width = between(chance, ranges.half_width);
    // Whole small divisions on a coarse screen, or finer by eye or cursor.
    let step = (chance.unit() < 0.15 && ranges.half_width.1 >= 0.1).then_some(0.2);
    let half_width = if step.is_some() { 0.1 } else { (half_width * 1000.0).round() / 1000.0 };
    let t0 = between(chance, ranges.t0);
    let screen_width = [8.0, 10.0, 12.0, 14.0][pick(chance, 4)];
    let per_metre = GROUP_INDEX / C0 * 1e9 * if mirror { 2.0 } else { 1.0 };
    let one_setting = chance.unit() < 0.3;
    let u_time_base = [2e-5, 1e-4, 1e-3, 3e-3][pick(chance, 4)];
    let mut rig = Rig {
        rails,
        c: if mirror { C0 / 2.0 } else { C0 },
        group_index: GROUP_INDEX,
        t0,
        half_width,
        step,
        u_time_base,
        u_walk: 0.0,
        stops: Vec::new(),
    };
    rig.stops = stops(&rig, needs, rows, chance);
    let distance = |rig: &Rig<f64>, stop: &Stop| {
        let rail = &rig.rails[stop.rail];
        rail.believed + if rail.grows { 1.0 } else { -1.0 } * (stop.aim - rail.mark)
    };
    let farthest = rig.stops.iter().map(|stop| distance(&rig, stop)).fold(0.0, f64::max);
    let bases = if needs.small_steps { &[1.0][..] } else { ranges.time_bases };
    let fits = |delay: f64| {
        let held = bases.iter().find(|base| delay.abs() / **base + 2.0 < screen_width);
        held.or(bases.last()).copied().unwrap_or(1.0)
    };
    for place in 0..rig.stops.len() {
        let d = if one_setting { farthest } else { distance(&rig, &rig.stops[place]) };
        rig.stops[place].time_base = fits(t0 + per_metre * d);
    }
    let middle = if chance.unit() < 0.15 { screen_width / 2.0 } else { 0.0 };
    let period = ((t0.abs() + per_metre * farthest) * between(chance, (1.5, 12.0)) / 10.0).ceil() * 10.0;
    write(&rig, seed, |sheet| {
        sheet.mirror = mirror;
        sheet.screen_width = screen_width;
        sheet.period = period;
        for row in &mut sheet.rows {
            // The picture is shifted until both edges are on the screen; some count from its middle.
            let shift = (0.4 - row.a.min(row.b)).max(0.0).ceil() - middle;
            row.a += shift;
            row.b += shift;
            row.edge_decimals = if step.is_some() { 1 } else { 3 };
        }
    })
}

fn write(rig: &Rig<f64>, seed: u64, finish: impl FnOnce(&mut Sheet)) -> Sheet {
    let run = rig.run(seed);
    let rails = rig.rails.iter().zip(run.joints).map(|(rail, joint)| SheetRail {
        unit: rail.label,
        unit_written: rail.label,
        grows: rail.grows,
        span: rail.span,
        u_reading: rail.u_reading,
        u_scale: rail.u_scale,
        mark: rail.mark,
        joint,
    });
    let rows = run.rows.iter().zip(&run.truth.distances).map(|(row, distance)| {
        let (unit, u) = rig.rails.get(row.rail).map_or((1.0, 1.0), |rail| (rail.label, rail.u_reading));
        SheetRow {
            rail: row.rail,
            reading: row.reading / unit,
            reading_decimals: decimals(u / unit),
            time_base: row.time_base,
            a: row.a,
            b: row.b,
            edge_decimals: 3,
            distance: *distance,
        }
    });
    let mut sheet = Sheet {
        rails: rails.collect(),
        rows: rows.collect(),
        mirror: false,
        small: 5.0,
        half_width: rig.half_width,
        screen_width: 10.0,
        period: 1e3,
        u_time_base: rig.u_time_base,
        u_clock: None,
        stated: true,
    };
    finish(&mut sheet);
    sheet
}

/// Decimals that a reading of this standard uncertainty is written with: to a third of it or finer.
fn decimals(u: f64) -> usize {
    let mut step = 1.0;
    let mut decimals = 0;
    while step > u / 3.0 && decimals < 6 {
        step /= 10.0;
        decimals += 1;
    }
    decimals
}

fn rails(ranges: &Ranges, needs: Needs, chance: &mut Chance) -> Vec<Rail<f64>> {
    let count = if needs.overlaps { 2 } else { 1 };
    let count = count + pick(chance, ranges.rails - count + 1);
    let same = chance.unit() < 0.7;
    let first = UNITS[pick(chance, UNITS.len())];
    let mut end: f64 = 0.0;
    let mut length_before = 0.0;
    let mut all = Vec::new();
    for index in 0..count {
        let unit = if same { first } else { UNITS[pick(chance, UNITS.len())] };
        let length = (between(chance, ranges.length) / 0.1).round() * 0.1;
        let grows = chance.unit() < 0.75;
        let overlap = needs.overlaps || chance.unit() < 0.2;
        // Marks where a ruler has them: whole centimetres.
        let shared = if index > 0 && overlap { 0.2 } else { 0.0 };
        let near = (chance.unit() * 10.0).round() / 100.0;
        let believed = if index == 0 { 0.0 } else { end + 0.03 - shared };
        let mark = if grows { near } else { length - near };
        let u = between(chance, ranges.u_joint);
        let u = (u * 1e4).round() / 1e4;
        let joint = match (index, chance.unit()) {
            (0, _) => Joint::AtSplitter(0.001),
            _ if overlap => {
                let at = |share: f64| mark + if grows { share } else { -share };
                Joint::Overlap(vec![at(0.02), at(0.07), at(0.12)])
            }
            (_, share) if share < 0.45 => Joint::Stated(u),
            (_, share) if share < 0.9 || length_before == 0.0 => Joint::Meeting { gap: 0.03, u },
            _ => Joint::Free,
        };
        let u_reading = between(chance, ranges.u_reading);
        all.push(Rail {
            label: unit,
            grows,
            span: (0.0, length),
            u_reading: (u_reading * 1e5).round() / 1e5,
            u_scale: [0.0, 1e-4, 5e-4][pick(chance, 3)],
            mark,
            believed,
            joint,
        });
        end = believed + length - near;
        length_before = length;
    }
    all
}

/// Where the carriage is set, in an order that people take.
fn stops(rig: &Rig<f64>, needs: Needs, rows: usize, chance: &mut Chance) -> Vec<Stop> {
    let count = rig.rails.len();
    let rows = rows.max(2 * count);
    let mut stops = Vec::new();
    for (index, rail) in rig.rails.iter().enumerate() {
        let here = rows / count + usize::from(index < rows % count);
        let length = rail.span.1;
        for place in 0..here {
            let share = if needs.small_steps {
                0.1 + 0.1 * place as f64
            } else {
                let even = (place as f64 + 0.5) / here as f64;
                (even + chance.uniform(0.2 / here as f64)) * length
            };
            if share > length {
                continue;
            }
            let aim = if rail.grows { share } else { length - share };
            // The carriage is put to a centimetre's mark.
            stops.push(Stop { rail: index, aim: (aim * 100.0).round() / 100.0, time_base: 1.0 });
        }
    }
    if chance.unit() < 0.2 {
        let again = pick(chance, stops.len());
        stops.insert(again, stops[again]);
    }
    match chance.unit() {
        // Outwards; or back; or out and back; or in any order.
        _ if needs.small_steps => {}
        share if share < 0.6 => {}
        share if share < 0.7 => stops.reverse(),
        share if share < 0.8 => {
            let back: Vec<Stop> = stops.iter().skip(1).step_by(2).rev().copied().collect();
            stops = stops.into_iter().step_by(2).chain(back).collect();
        }
        _ => {
            for place in (1..stops.len()).rev() {
                stops.swap(place, pick(chance, place + 1));
            }
        }
    }
    stops
}
