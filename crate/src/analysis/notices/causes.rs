//! What went wrong, in words: the cause first, with what it would do to c if mended, and the signs of it under it.

use super::input::NoticeInput;
use super::results;
use crate::analysis::diagnosis::Found;
use crate::analysis::notice::{Notice, Section, Weight};
use crate::message;
use crate::words::Message;

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

/// Puts the signs under the cause, and the cause first.
pub(super) fn ordered(mut causes: Vec<Notice>, mut others: Vec<Notice>) -> Vec<Notice> {
    others.sort_by_key(|notice| notice.weight);
    // What the digits by themselves explain is no other cause.
    if causes.iter().all(|cause| cause.id.starts_with("scatter"))
        && let Some(place) = others.iter().position(|notice| OF_SCATTER.contains(&notice.id))
    {
        let digits = others.remove(place);
        others.retain(|notice| causes.iter().all(|cause| cause.id != notice.id));
        others.extend(std::mem::replace(&mut causes, vec![digits]));
    }
    let Some(first) = causes.first_mut() else { return others };
    let others = others.into_iter().filter_map(|other| {
        let shared = other.rows.is_empty() || other.rows.iter().any(|row| first.rows.contains(row));
        // What is said of a rail is no sign of what concerns all rows alike.
        let of_rail = other.rail.is_none() || !first.rows.is_empty() || first.rail.is_some();
        let under = SIGNS.contains(&other.id)
            && of_rail
            && (shared || first.rows.is_empty() || OF_SCATTER.contains(&first.id));
        if under && other.id != first.id {
            first.signs.push(other.text);
            return None;
        }
        (!under).then_some(other)
    });
    let others: Vec<Notice> = others.collect();
    let told: Vec<&str> = causes.iter().map(|cause| cause.id).collect();
    let others: Vec<Notice> = others.into_iter().filter(|other| !told.contains(&other.id)).collect();
    causes.extend(others);
    causes
}

fn notice(input: &NoticeInput, found: &Found) -> Notice {
    let (section, weight, text, look_at) = words(input, found);
    let mended = found.mends.zip(input.speed).map(|(mends, speed)| input.figure(speed.c * mends / 1e8, 4));
    let text = match mended {
        Some(c) => message!("notice-mended", what = text, cause = found.cause, c = c),
        None => text,
    };
    Notice {
        id: found.cause,
        weight: if found.sure { weight } else { weight.max(Weight::Look) },
        section,
        text,
        look_at,
        rows: found.rows.clone(),
        rail: found.rail,
        signs: Vec::new(),
    }
}

fn words(input: &NoticeInput, found: &Found) -> (Section, Weight, Message, Message) {
    use Section::{Apparatus, Line, Readings};
    use Weight::{Grave, Know, Look};
    let page = input.context.page;
    let rails = page.rails.iter().enumerate();
    let name = || {
        let rail = rails.clone().find(|(_, rail)| Some(rail.id) == found.rail);
        rail.map_or_else(String::new, |(index, rail)| rail.name_or_number(index))
    };
    let rows = input.numbers(&found.rows);
    let row = message!("notice-row_off-look");
    match found.cause {
        "row_off" => (Readings, Grave, message!("notice-row_off", rows = rows), row),
        "forced_zero" => {
            (Readings, Grave, message!("notice-forced_zero"), message!("notice-forced_zero-look"))
        }
        "rows_exchanged" => (Readings, Grave, message!("notice-rows_exchanged", rows = rows), row),
        "copied_rows" => {
            (Readings, Grave, message!("notice-copied_rows"), message!("notice-copied_rows-look"))
        }
        "edges_swapped" if rows.is_empty() => (Readings, Grave, message!("notice-edges_swapped-all"), row),
        "edges_swapped" => (Readings, Grave, message!("notice-edges_swapped", rows = rows), row),
        "slipped_decimal" => (Readings, Grave, message!("notice-slipped_decimal", rows = rows), row),
        "time_base_slip" => {
            (Readings, Grave, message!("notice-time_base_slip"), message!("notice-time_base_off-look"))
        }
        "wrong_rail" => (Readings, Grave, message!("notice-wrong_rail", rows = rows), row),
        "beyond_a_period" => (
            Readings,
            Grave,
            message!("notice-beyond_a_period-told"),
            message!("notice-beyond_a_period-look"),
        ),
        "change_from_row" => {
            (Readings, Grave, message!("notice-change_from_row"), message!("notice-disagreeing_places-look"))
        }
        "drift" => (Line, Look, message!("notice-drift"), message!("notice-drift-look")),
        "curvature" => (Line, Look, message!("notice-curvature"), message!("notice-curvature-look")),
        "time_base_off" => {
            (Readings, Look, results::setting(input, &found.rows), message!("notice-time_base_off-look"))
        }
        "ruler_scale" => (
            Apparatus,
            Look,
            message!("notice-ruler_scale", rail = name()),
            message!("notice-ruler_scale-look"),
        ),
        "step_at_splice" => (
            Apparatus,
            Grave,
            results::step(input, found.rail, name()),
            message!("notice-step_at_splice-look"),
        ),
        "ruler_restarts" => {
            let told = message!("notice-ruler_restarts", rail = name());
            (Readings, Grave, told, message!("notice-ruler_restarts-look"))
        }
        "wrong_sense" if found.rail.is_none() => {
            (Apparatus, Grave, message!("notice-wrong_sense-all"), message!("notice-delay_falls-look"))
        }
        "wrong_sense" => (
            Apparatus,
            Grave,
            message!("notice-wrong_sense", rail = name()),
            message!("notice-delay_falls-look"),
        ),
        "overlap_turned" => (
            Apparatus,
            Grave,
            message!("notice-overlap_turned", rail = name()),
            message!("notice-step_at_splice-look"),
        ),
        "rail_unit" => (
            Apparatus,
            Grave,
            message!("notice-rail_unit", rail = name()),
            message!("notice-off_the_rail-look"),
        ),
        "scatter_too_small" => {
            (Line, Know, results::scatter(input, false), message!("notice-scatter_too_small-look"))
        }
        _ => (Line, Grave, results::scatter(input, true), message!("notice-scatter_too_large-look")),
    }
}
