//! What went wrong, in words: the cause first, with what it would do to c if mended, and the signs of it under it.

use super::input::NoticeInput;
use super::{repairs, results};
use crate::analysis::diagnosis::{Cause, Found};
use crate::analysis::notice::{Notice, Section, Weight};
use crate::message;
use crate::words::{Message, Value};

/// Notices that may be nothing but signs of a cause that is told.
const SIGNS: [&str; 14] = [
    "off_the_rail",
    "edge_off_screen",
    "disagreeing_places",
    "delay_falls",
    "delay_below_uncertainty",
    "beyond_a_period",
    "scatter_too_large",
    "scatter_too_small",
    "runs",
    "decisive_row",
    "faster_than_light",
    "scale_off",
    "short_span",
    "vague_splice",
];

/// What the digits by themselves are the cause of.
const OF_SCATTER: [&str; 3] = ["edges_rounded", "coarse_figures", "defaults_only"];

/// What went wrong, each with its words.
pub(super) fn notices(input: &NoticeInput) -> Vec<Notice> {
    input.found.iter().map(|found| notice(input, found)).collect()
}

/// Puts the signs under the cause, and the cause first; where only the scatter or the digits are told of, what takes the place of
/// an entry.
pub(super) fn ordered(mut causes: Vec<Notice>, mut others: Vec<Notice>) -> Vec<Notice> {
    others.sort_by_key(|notice| notice.weight);
    others.retain(|notice| causes.iter().all(|cause| cause.id != notice.id));
    // That all uncertainties are wrong by one factor is how the rows scatter, not what made them.
    let is_told = causes.iter().any(|cause| !cause.id.starts_with("scatter"));
    // What the digits by themselves explain is no other cause.
    if !is_told && let Some(place) = others.iter().position(|notice| OF_SCATTER.contains(&notice.id)) {
        let digits = others.remove(place);
        others.extend(std::mem::replace(&mut causes, vec![digits]));
    }
    let Some(first) = causes.first_mut() else { return others };
    let digits = OF_SCATTER.contains(&first.id);
    others.retain_mut(|other| {
        let shared = other.rows.is_empty() || other.rows.iter().any(|row| first.rows.contains(row));
        // What is said of a rail is no sign of what concerns all rows alike.
        let alike = first.rows.is_empty() && (other.rail.is_none() || first.rail.is_some());
        let local = !first.rows.is_empty() && shared;
        let under = SIGNS.contains(&other.id) && (alike || local || digits && other.rail.is_none());
        if under {
            first.signs.push(std::mem::replace(&mut other.text, Message::of("")));
        }
        !under
    });
    causes.extend(others);
    if !is_told {
        // How the rows scatter is judged by what takes the place of an entry, too.
        causes.sort_by_key(|notice| notice.id != "entry_replaced");
    }
    causes
}

/// What a cause is called, where it stands, how serious it is, and what to look at.
fn told(cause: Cause) -> (&'static str, Section, Weight, Message) {
    use Section::{Apparatus, Line, Readings};
    use Weight::{Grave, Know, Look};
    let row = message!("notice-row_off-look");
    let splice = message!("notice-step_at_splice-look");
    let base = message!("notice-time_base_off-look");
    match cause {
        Cause::RowOff => ("row_off", Readings, Grave, row),
        Cause::ForcedZero => ("forced_zero", Readings, Grave, message!("notice-forced_zero-look")),
        Cause::RowsExchanged => ("rows_exchanged", Readings, Grave, row),
        Cause::CopiedRows => ("copied_rows", Readings, Grave, message!("notice-copied_rows-look")),
        Cause::EdgesSwapped => ("edges_swapped", Readings, Grave, row),
        Cause::SlippedDecimal => ("slipped_decimal", Readings, Grave, row),
        Cause::TimeBaseSlip => ("time_base_slip", Readings, Grave, base),
        Cause::WrongRail => ("wrong_rail", Readings, Grave, row),
        Cause::BeyondAPeriod => ("beyond_a_period", Readings, Grave, message!("notice-beyond_a_period-look")),
        Cause::ChangeFromRow => {
            ("change_from_row", Readings, Grave, message!("notice-disagreeing_places-look"))
        }
        Cause::Drift => ("drift", Line, Look, message!("notice-drift-look")),
        Cause::Curvature => ("curvature", Line, Look, message!("notice-curvature-look")),
        Cause::TimeBaseOff => ("time_base_off", Readings, Look, base),
        Cause::RulerScale => ("ruler_scale", Apparatus, Look, message!("notice-ruler_scale-look")),
        Cause::StepAtSplice => ("step_at_splice", Apparatus, Grave, splice),
        Cause::RulerRestarts => ("ruler_restarts", Readings, Grave, message!("notice-ruler_restarts-look")),
        Cause::WrongSense => ("wrong_sense", Apparatus, Grave, message!("notice-delay_falls-look")),
        Cause::OverlapTurned => ("overlap_turned", Apparatus, Grave, splice),
        Cause::RailUnit => ("rail_unit", Apparatus, Grave, message!("notice-off_the_rail-look")),
        Cause::ScatterTooLarge => {
            ("scatter_too_large", Line, Grave, message!("notice-scatter_too_large-look"))
        }
        Cause::ScatterTooSmall => {
            ("scatter_too_small", Line, Know, message!("notice-scatter_too_small-look"))
        }
    }
}

/// What went wrong, with the rows or the rail by name.
fn said(input: &NoticeInput, found: &Found, rows: Value, rail: String) -> Message {
    match found.cause {
        Cause::RowOff => message!("notice-row_off", rows = rows),
        Cause::ForcedZero => message!("notice-forced_zero"),
        Cause::RowsExchanged => message!("notice-rows_exchanged", rows = rows),
        Cause::CopiedRows => message!("notice-copied_rows"),
        Cause::EdgesSwapped if found.rows.is_empty() => message!("notice-edges_swapped-all"),
        Cause::EdgesSwapped => message!("notice-edges_swapped", rows = rows),
        Cause::SlippedDecimal => message!("notice-slipped_decimal", rows = rows),
        Cause::TimeBaseSlip => message!("notice-time_base_slip"),
        Cause::WrongRail => message!("notice-wrong_rail", rows = rows),
        Cause::BeyondAPeriod => message!("notice-beyond_a_period-told"),
        Cause::ChangeFromRow => message!("notice-change_from_row"),
        Cause::Drift => message!("notice-drift"),
        Cause::Curvature => message!("notice-curvature"),
        Cause::TimeBaseOff => results::setting(input, &found.rows),
        Cause::RulerScale => message!("notice-ruler_scale", rail = rail),
        Cause::StepAtSplice => results::step(input, found.rail, rail),
        Cause::RulerRestarts => message!("notice-ruler_restarts", rail = rail),
        Cause::WrongSense if found.rail.is_none() => message!("notice-wrong_sense-all"),
        Cause::WrongSense => message!("notice-wrong_sense", rail = rail),
        Cause::OverlapTurned => message!("notice-overlap_turned", rail = rail),
        Cause::RailUnit => message!("notice-rail_unit", rail = rail),
        Cause::ScatterTooLarge => results::scatter(input, true),
        Cause::ScatterTooSmall => results::scatter(input, false),
    }
}

fn notice(input: &NoticeInput, found: &Found) -> Notice {
    let (id, section, weight, look_at) = told(found.cause);
    let rail = found.rail.and_then(|rail| input.context.page.rail(rail));
    let rail = rail.map_or_else(String::new, |(index, rail)| rail.name_or_number(index));
    let rows = Value::from(input.numbers(&found.rows));
    let text = said(input, found, rows.clone(), rail.clone());
    let repair = repairs::repair(input.context.page, found, &text, rows, rail);
    let mended = found.mends.zip(input.speed).map(|(mends, speed)| input.figure(speed.c * mends / 1e8, 4));
    let text = match mended {
        Some(c) => message!("notice-mended", what = text, cause = id, c = c),
        None => text,
    };
    let weight = if found.sure { weight } else { weight.max(Weight::Look) };
    let notice = Notice::new(id, weight, section, text, look_at);
    notice.of_rows(found.rows.clone()).of_rail(found.rail).mended_by(repair)
}
