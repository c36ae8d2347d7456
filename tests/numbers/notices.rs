//! The study of the notices: planted mistakes against what is said first, and sound notebooks.

#![expect(clippy::expect_used, reason = "tests")]

use slope_bench::written::drawn::{HELD_BACK, Ranges, STUDIED};

use crate::said_first::study;

/// The least share of right notices that stand first, and the largest of sound notebooks with a serious notice and with
/// any notice of something wrong.
struct Bars(f64, f64, f64);

fn holds(ranges: &'static Ranges, (each, sound, seed): (u64, u64, u64), bars: &Bars) {
    let study = study(ranges, each, sound, seed).expect("sheets make notebooks");
    println!("{}", study.table());
    assert!(study.mistakes.iter().all(|(_, tally)| tally.planted as u64 == each), "a mistake found no bench");
    assert!(study.right_first() >= bars.0, "right first in {}", study.right_first());
    assert!(study.serious() <= bars.1, "a serious notice in {} of sound notebooks", study.serious());
    assert!(study.false_alarms() <= bars.2, "a notice in {} of sound notebooks", study.false_alarms());
}

#[test]
fn a_sample_of_the_study() {
    holds(&STUDIED, (8, 100, 1), &Bars(0.88, 0.03, 0.08));
}

#[test]
#[ignore = "half a minute: `cargo verify long` draws two hundred notebooks for each mistake, any other run eight"]
fn the_whole_study() {
    holds(&STUDIED, (200, 2_000, 1), &Bars(0.95, 0.01, 0.05));
}

#[test]
#[ignore = "half a minute: `cargo verify long` holds the notices against benches that nothing was tuned on"]
fn the_study_on_other_benches() {
    holds(&HELD_BACK, (200, 2_000, 500_000), &Bars(0.92, 0.01, 0.05));
}
