//! How often the notebook says of a mistake first what is wrong, and how often it warns of sound work: shares from 0 to 1.

use std::sync::OnceLock;

use anyhow::{Context, Result};
use slope_bench::written::drawn::STUDIED;

use crate::effort::Effort;

// The study itself, as the tests have it.
#[path = "../../numbers/said_first.rs"]
mod said_first;

use said_first::{Study, study};

/// The study, made at the first call; its table stands on standard error.
fn made(effort: Effort) -> Result<&'static Study> {
    static MADE: OnceLock<Option<Study>> = OnceLock::new();
    let (each, sound) = effort.of((200, 2_000), (1, 2));
    let made = MADE.get_or_init(|| {
        let study = study(&STUDIED, each, sound, 1).ok()?;
        eprintln!("{}", study.table());
        Some(study)
    });
    made.as_ref().context("a sheet of the study makes no notebook")
}

/// The share of right notices that stand first, where the mistake moves v by more than its u.
pub fn right_first(effort: Effort) -> Result<f64> {
    Ok(made(effort)?.right_first())
}

/// The share of sound notebooks that are warned of something.
pub fn false_alarms(effort: Effort) -> Result<f64> {
    Ok(made(effort)?.false_alarms())
}
