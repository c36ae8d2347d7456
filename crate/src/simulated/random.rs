//! Benches at random: rails of every joint, unit and sense, for tests that want variety.

use slope_bench::chance::Chance;
use slope_bench::rails::{Joint, Rail, Rig, Stop};

use super::described::{Described, Ruler};
use crate::analysis::C0;
use crate::analysis::read::ruler_unit;
use crate::notebook::{BenchField, RulerUnit};
use crate::quantity::DecimalMark;

/// A bench drawn from `seed`: one to four rails, four to twelve stops on each.
pub fn bench(seed: u64) -> Described {
    let mut chance = Chance::seeded(seed);
    let mut rails = Vec::new();
    let mut stops = Vec::new();
    let mut end = 0.0;
    let count = 1 + pick(&mut chance, 4);
    for index in 0..count {
        let rail = rail(index, end, &mut chance);
        let unit = ruler_unit(rail.label.unit);
        let length = length(rail.label.unit);
        let places = 4 + pick(&mut chance, 9);
        let time_base = [1.0, 2.0, 2.5, 5.0][pick(&mut chance, 4)];
        for place in 0..places {
            let share = (place as f64 + 0.5) / places as f64;
            let aim = if rail.grows { share * length } else { length - share * length };
            // Aimed at quarters of the ruler's unit.
            stops.push(Stop { rail: index, aim: unit.to_base((aim * 4.0).round() / 4.0), time_base });
        }
        end += rail.span.1 + 0.05;
        rails.push(rail);
    }
    let half_width = 0.02 + 0.08 * chance.unit();
    let texts = vec![
        (BenchField::EdgeHalfWidth, format!("{half_width:.3}")),
        (BenchField::TimeBaseUncertainty, "0.01 %".into()),
        (BenchField::Wavelength, format!("{:.0} nm", 400.0 + 500.0 * chance.unit())),
    ];
    Described {
        title: format!("Bench drawn from {seed}"),
        mark: DecimalMark::Point,
        edge_place: -3,
        texts,
        rig: Rig {
            rails,
            c: C0,
            group_index: 1.000_28,
            t0: chance.uniform(3.0),
            half_width,
            step: None,
            u_time_base: 1e-4,
            u_walk: 0.0,
            stops,
        },
    }
}

fn pick(chance: &mut Chance, below: usize) -> usize {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small and not negative")]
    let drawn = (chance.unit() * below as f64) as usize;
    drawn.min(below - 1)
}

fn rail(index: usize, end: f64, chance: &mut Chance) -> Rail<Ruler> {
    let unit =
        [RulerUnit::Millimetre, RulerUnit::Centimetre, RulerUnit::Metre, RulerUnit::Inch][pick(chance, 4)];
    let grows = chance.unit() < 0.5;
    let last = ruler_unit(unit).to_base(length(unit));
    let u = 0.001 + 0.01 * chance.unit();
    let joint = if index == 0 {
        Joint::AtSplitter(u)
    } else {
        match pick(chance, 3) {
            0 => Joint::Stated(u),
            1 => Joint::Meeting { gap: 0.05, u },
            _ => Joint::Free,
        }
    };
    Rail {
        label: Ruler { name: ["one", "two", "three", "four"][index.min(3)], unit },
        grows,
        span: (0.0, last),
        u_reading: 0.0005,
        u_scale: 0.0001,
        mark: if grows { 0.0 } else { last },
        believed: end,
        joint,
    }
}

/// Length of a rail whose ruler has this unit, in it.
fn length(unit: RulerUnit) -> f64 {
    match unit {
        RulerUnit::Millimetre => 1500.0,
        RulerUnit::Centimetre => 200.0,
        RulerUnit::Metre => 1.75,
        RulerUnit::Inch => 60.0,
    }
}
