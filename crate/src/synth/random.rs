//! Benches at random: rails of every joint, unit and sense, for tests that want variety.

use super::chance::Chance;
use super::rig::{Rig, RigJoint, RigRail};
use crate::notebook::{BenchField, RulerUnit, Sense};

/// A bench drawn from `seed`: one to four rails, four to twelve stops on each.
pub fn rig(seed: u64) -> Rig {
    let mut chance = Chance::seeded(seed);
    let mut rails = Vec::new();
    let mut stops = Vec::new();
    let mut end = 0.0;
    let count = 1 + pick(&mut chance, 4);
    for index in 0..count {
        let rail = rail(index, end, &mut chance);
        let (low, high) = (rail.span.0.min(rail.span.1), rail.span.0.max(rail.span.1));
        let places = 4 + pick(&mut chance, 9);
        let time = [1.0, 2.0, 2.5, 5.0][pick(&mut chance, 4)];
        for place in 0..places {
            let share = (place as f64 + 0.5) / places as f64;
            let aim = match rail.sense {
                Sense::Grows => low + share * (high - low),
                Sense::Falls => high - share * (high - low),
            };
            stops.push((index, (aim * 4.0).round() / 4.0, time));
        }
        end += length(&rail) + 0.05;
        rails.push(rail);
    }
    let half_width = 0.02 + 0.08 * chance.unit();
    Rig {
        title: format!("Bench drawn from {seed}"),
        bench: vec![
            (BenchField::EdgeHalfWidth, format!("{half_width:.3}")),
            (BenchField::TimeBaseUncertainty, "0.01 %".into()),
            (BenchField::Wavelength, format!("{:.0} nm", 400.0 + 500.0 * chance.unit())),
        ],
        rails,
        half_width,
        u_time_base: 1e-4,
        group_index: 1.000_28,
        t0: chance.uniform(3.0),
        u_walk: 0.0,
        step: None,
        stops,
    }
}

fn pick(chance: &mut Chance, below: usize) -> usize {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small and not negative")]
    let drawn = (chance.unit() * below as f64) as usize;
    drawn.min(below - 1)
}

fn rail(index: usize, end: f64, chance: &mut Chance) -> RigRail {
    let unit =
        [RulerUnit::Millimetre, RulerUnit::Centimetre, RulerUnit::Metre, RulerUnit::Inch][pick(chance, 4)];
    let sense = if chance.unit() < 0.5 { Sense::Grows } else { Sense::Falls };
    let span = match unit {
        RulerUnit::Millimetre => (0.0, 1500.0),
        RulerUnit::Centimetre => (0.0, 200.0),
        RulerUnit::Metre => (0.0, 1.75),
        RulerUnit::Inch => (0.0, 60.0),
    };
    let mark = match sense {
        Sense::Grows => span.0,
        Sense::Falls => span.1,
    };
    let u = 0.001 + 0.01 * chance.unit();
    let joint = if index == 0 {
        RigJoint::AtSplitter(u)
    } else {
        match pick(chance, 3) {
            0 => RigJoint::Stated(u),
            1 => RigJoint::Meeting { gap: 0.05, u },
            _ => RigJoint::Free,
        }
    };
    RigRail {
        name: ["one", "two", "three", "four"][index.min(3)],
        unit,
        sense,
        span,
        u_reading: 0.0005,
        u_scale: 0.0001,
        mark,
        believed: end,
        joint,
    }
}

/// Length of a rail, m.
fn length(rail: &RigRail) -> f64 {
    let unit = crate::analysis::read::ruler_unit(rail.unit);
    unit.to_base((rail.span.1 - rail.span.0).abs())
}
