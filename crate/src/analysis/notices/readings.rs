//! What the rows show by themselves: slips of reading and typing, and uncertainties that nobody stated.

use super::input::NoticeInput;
use crate::analysis::Clock;
use crate::analysis::diagnosis::edge_step;
use crate::analysis::notice::{Notice, Section, Weight};
use crate::analysis::point::{DelaySource, Point};
use crate::analysis::read::ruler_unit;
use crate::analysis::row_error::RowError;
use crate::analysis::rows::{Typed, full_ux};
use crate::analysis::types::{RowPart, RowReading};
use crate::message;
use crate::notebook::{ActsOn, BenchField, CovarianceOf, Effect, RailField, RowId, Scope, SharedError};
use crate::quantity::{Unit, in_unit};
use crate::rail::Source;
use crate::words::{Message, Value};

/// Every notice about the readings, in the order of the page.
pub(super) fn notices(input: &NoticeInput) -> Vec<Notice> {
    let found = [
        rail_unplaced(input),
        off_the_rail(input),
        edge_off_screen(input),
        edges_rounded(input),
        coarse_figures(input),
        fine_figures(input),
        disagreeing_places(input),
        delay_falls(input),
        delay_below_uncertainty(input),
        beyond_a_period(input),
        defaults_only(input),
        treated_as_exact(input),
        uncertainty_missing(input),
        rehearsal(input),
        entry_replaced(input),
    ];
    found.into_iter().flatten().chain(vague_splices(input)).chain(vague_readings(input)).collect()
}

/// A result that does not rest on what stands in a field, since that can't be used.
fn entry_replaced(input: &NoticeInput) -> Option<Notice> {
    (input.speed.is_some() && !input.replaced.is_empty()).then(|| {
        Notice::new(
            "entry_replaced",
            Weight::Grave,
            Section::Result,
            message!("notice-entry_replaced", fields = input.replaced.to_vec()),
            message!("notice-entry_replaced-look"),
        )
    })
}

/// Rows that only the place of their rail keeps from the line, while there is one through others.
fn rail_unplaced(input: &NoticeInput) -> Option<Notice> {
    let waits = |row: &&RowReading| matches!(row.part, RowPart::Incomplete { lacks: RowError::RailUnplaced });
    let rows: Vec<RowId> = input.rows.readings.iter().filter(waits).map(|row| row.id).collect();
    (input.line.is_some() && !rows.is_empty()).then(|| {
        Notice::new(
            "rail_unplaced",
            Weight::Grave,
            Section::Apparatus,
            message!("notice-rail_unplaced", n = rows.len(), rows = input.numbers(&rows)),
            message!("notice-rail_unplaced-look"),
        )
        .of_rows(rows)
    })
}

/// Rulers read no better than to a twentieth of their own length, which is more likely a slip with a unit.
fn vague_readings(input: &NoticeInput) -> Vec<Notice> {
    let rails = input.context.rails.iter().zip(&input.context.page.rails).enumerate();
    let each = rails.filter_map(|(index, (numbers, typed))| {
        let (first, last) = numbers.span?;
        let rows = input.rows.points.iter().filter(|point| point.rail == Some(index));
        let rows: Vec<RowId> = rows.map(|point| point.row).collect();
        if rows.is_empty() || numbers.u_reading <= (last - first).abs() / 20.0 {
            return None;
        }
        let unit = ruler_unit(typed.unit);
        let u = format!("{}\u{a0}{}", input.figure(unit.from_base(numbers.u_reading), 3), unit.symbol());
        Some(
            Notice::new(
                "vague_reading",
                Weight::Look,
                Section::Apparatus,
                message!("notice-vague_reading", rail = typed.name_or_number(index), u = u),
                message!("notice-vague_reading-look"),
            )
            .of_rows(rows)
            .of_rail(Some(typed.id)),
        )
    });
    each.collect()
}

/// Rails placed no better than to a twentieth of their own length, which is more likely a slip with a unit.
fn vague_splices(input: &NoticeInput) -> Vec<Notice> {
    let rails = input.context.rails.iter().zip(&input.context.stands).enumerate();
    let each = rails.filter_map(|(index, (numbers, stand))| {
        let (first, last) = numbers.span?;
        let length = (last - first).abs();
        let own = Source::Splice(index);
        let u = stand.as_ref()?.shift_by(own);
        if u <= length / 20.0 {
            return None;
        }
        let beyond = input.rows.points.iter().filter(|p| p.effects.iter().any(|(source, _)| *source == own));
        let typed = input.context.page.rails.get(index)?;
        let in_ruler = |value: f64| {
            let unit = ruler_unit(typed.unit);
            format!("{}\u{a0}{}", input.figure(unit.from_base(value), 3), unit.symbol())
        };
        Some(
            Notice::new(
                "vague_splice",
                Weight::Look,
                Section::Apparatus,
                message!(
                    "notice-vague_splice",
                    rail = typed.name_or_number(index),
                    u = in_ruler(u),
                    length = in_ruler(length)
                ),
                message!("notice-vague_splice-look"),
            )
            .of_rows(beyond.map(|p| p.row).collect())
            .of_rail(Some(typed.id)),
        )
    });
    each.collect()
}

/// Readings that nobody took.
fn rehearsal(input: &NoticeInput) -> Option<Notice> {
    input.context.page.rehearsal.map(|_| {
        Notice::new(
            "rehearsal",
            Weight::Know,
            Section::Result,
            message!("notice-rehearsal"),
            message!("notice-rehearsal-look"),
        )
    })
}

/// Points in the order of their distance.
fn by_distance<'a>(input: &NoticeInput<'a>) -> Vec<&'a Point> {
    let mut points: Vec<&Point> = input.rows.points.iter().collect();
    points.sort_by(|a, b| a.x.total_cmp(&b.x));
    points
}

fn u_of(point: &Point) -> f64 {
    point.full_uy().unwrap_or(0.0)
}

fn in_quadrature(a: f64, b: f64) -> f64 {
    (a * a + b * b).sqrt()
}

/// How well the distance from one row to another is known, m: an error that both share moves both alike.
fn u_between(a: &Point, b: &Point) -> f64 {
    let full = |p: &Point| full_ux(p.ux, &p.effects).unwrap_or(0.0);
    let pairs = a.effects.iter().flat_map(|one| b.effects.iter().map(move |other| (one, other)));
    let alike: f64 = pairs.filter(|(one, other)| one.0 == other.0).map(|(one, other)| one.1 * other.1).sum();
    (full(a) * full(a) + full(b) * full(b) - 2.0 * alike).max(0.0).sqrt()
}

/// The slope of the line, ns/m; 0 where there is none.
fn slope(input: &NoticeInput) -> f64 {
    input.line.map_or(0.0, |line| line.fit.slope)
}

/// A reading outside the span of its ruler by more than it is known.
fn off_the_rail(input: &NoticeInput) -> Option<Notice> {
    let rows: Vec<RowId> = input
        .typed()
        .filter(|typed| {
            let rail = typed.rail.and_then(|i| input.context.rails.get(i));
            let span = rail.and_then(|rail| Some((rail.span?, 3.0 * rail.u_reading)));
            typed.reading.zip(span).is_some_and(|(reading, ((from, to), beyond))| {
                reading.value < from.min(to) - beyond || reading.value > from.max(to) + beyond
            })
        })
        .map(|typed| typed.row)
        .collect();
    (!rows.is_empty()).then(|| {
        Notice::new(
            "off_the_rail",
            Weight::Grave,
            Section::Readings,
            message!("notice-off_the_rail", n = rows.len(), rows = input.numbers(&rows)),
            message!("notice-off_the_rail-look"),
        )
        .of_rows(rows)
    })
}

/// An edge read beyond the screen by more than its limit. Some count from the screen's left side, some from its middle:
/// whichever fits more rows.
fn edge_off_screen(input: &NoticeInput) -> Option<Notice> {
    let (width, limit) = (input.context.bench.screen_width, input.context.bench.half_width);
    let off = |from: f64| -> Vec<RowId> {
        let beyond = |q: &f64| *q < from - limit || *q > from + width + limit;
        let rows = input.typed().filter(|typed| typed.edges.iter().any(beyond));
        rows.map(|typed| typed.row).collect()
    };
    let (left, middle) = (off(0.0), off(-width / 2.0));
    let rows = if middle.len() < left.len() { middle } else { left };
    (!rows.is_empty()).then(|| {
        Notice::new(
            "edge_off_screen",
            Weight::Look,
            Section::Readings,
            message!(
                "notice-edge_off_screen",
                n = rows.len(),
                rows = input.numbers(&rows),
                width = in_unit(width, Unit::DIVISION, input.context.page.decimal_mark)
            ),
            message!("notice-edge_off_screen-look"),
        )
        .of_rows(rows)
    })
}

/// Edges that all stand on marks farther apart than the limit to which they are said to be read.
fn edges_rounded(input: &NoticeInput) -> Option<Notice> {
    let bench = &input.context.bench;
    let step = edge_step(input.context, input.rows)?;
    (bench.half_width_stated && step > 2.5 * bench.half_width).then(|| {
        Notice::new(
            "edges_rounded",
            Weight::Look,
            Section::Readings,
            message!(
                "notice-edges_rounded",
                step = input.figure(step, 2),
                limit = input.figure(bench.half_width, 2)
            ),
            message!("notice-edges_rounded-look"),
        )
    })
}

/// Digits far beyond what could be read.
fn fine_figures(input: &NoticeInput) -> Option<Notice> {
    let fine = |typed: &&Typed| {
        let rail = typed.rail.and_then(|i| input.context.rails.get(i));
        typed.reading.zip(rail).is_some_and(|(reading, rail)| reading.step() < rail.u_reading / 500.0)
    };
    let rows: Vec<RowId> = input.typed().filter(fine).map(|typed| typed.row).collect();
    (rows.len() >= 3 && 2 * rows.len() > input.typed().count()).then(|| {
        Notice::new(
            "fine_figures",
            Weight::Know,
            Section::Readings,
            message!("notice-fine_figures"),
            message!("notice-fine_figures-look"),
        )
        .of_rows(rows)
    })
}

/// Rail readings typed to a place far coarser than the uncertainty stated for them.
fn coarse_figures(input: &NoticeInput) -> Option<Notice> {
    let rows: Vec<RowId> = input
        .typed()
        .filter(|typed| {
            let rail = typed.rail.and_then(|i| input.context.rails.get(i));
            typed
                .reading
                .zip(rail)
                .is_some_and(|(reading, rail)| rail.u_reading > 0.0 && reading.step() > 5.0 * rail.u_reading)
        })
        .map(|typed| typed.row)
        .collect();
    (rows.len() >= 3).then(|| {
        Notice::new(
            "coarse_figures",
            Weight::Know,
            Section::Readings,
            message!("notice-coarse_figures", rows = input.numbers(&rows)),
            message!(
                "notice-coarse_figures-look",
                finer = input.fixed(120.0, -1),
                coarse = input.fixed(120.0, 0)
            ),
        )
        .of_rows(rows)
    })
}

/// Two readings at one place whose delays differ by more than four times what is known of both and of the way between.
fn disagreeing_places(input: &NoticeInput) -> Option<Notice> {
    let points = by_distance(input);
    let mut pairs = Vec::new();
    for pair in points.windows(2) {
        if let [a, b] = pair {
            let u_x = in_quadrature(a.ux.unwrap_or(0.0), b.ux.unwrap_or(0.0));
            let u_y = in_quadrature(in_quadrature(u_of(a), u_of(b)), slope(input) * u_between(a, b));
            let together = (b.x - a.x).abs() <= 2.0 * u_x || a.x == b.x;
            let off = b.y - a.y - slope(input) * (b.x - a.x);
            if together && u_y > 0.0 && off.abs() > 4.0 * u_y {
                pairs.push([a.row, b.row]);
            }
        }
    }
    (!pairs.is_empty()).then(|| {
        let rows = pairs.concat();
        let numbers = input.numbers(&rows);
        let told = numbers
            .chunks_exact(2)
            .map(|pair| message!("notice-pair", one = pair[0], other = pair[1]).into());
        Notice::new(
            "disagreeing_places",
            Weight::Look,
            Section::Readings,
            message!("notice-disagreeing_places", pairs = Value::All { all: told.collect() }),
            message!("notice-disagreeing_places-look"),
        )
        .of_rows(rows)
    })
}

/// The delay falls while the distance grows, by more than what is known of both explains.
fn delay_falls(input: &NoticeInput) -> Option<Notice> {
    let points = by_distance(input);
    let u_of_both = |a: &Point, b: &Point| u_of(a) + u_of(b) + slope(input).abs() * u_between(a, b);
    let mut falling: Vec<RowId> = points
        .windows(2)
        .filter_map(|pair| match pair {
            // Which of the two is wrong can't be told from them.
            [a, b] if a.y - b.y > 4.0 * u_of_both(a, b) && u_of(a) + u_of(b) > 0.0 => Some([a.row, b.row]),
            _ => None,
        })
        .flatten()
        .collect();
    falling.sort_unstable();
    falling.dedup();
    let whole = input.line.is_some_and(|line| line.fit.slope < 0.0);
    if falling.is_empty() && !whole {
        return None;
    }
    let text = if whole {
        message!("notice-delay_falls-throughout")
    } else {
        message!("notice-delay_falls", n = falling.len(), rows = input.numbers(&falling))
    };
    Some(
        Notice::new(
            "delay_falls",
            Weight::Grave,
            Section::Readings,
            text,
            message!("notice-delay_falls-look"),
        )
        .of_rows(falling),
    )
}

/// A delay that its own uncertainty swallows.
fn delay_below_uncertainty(input: &NoticeInput) -> Option<Notice> {
    let small = |p: &&Point| u_of(p) > 0.0 && p.y.abs() < u_of(p);
    let rows: Vec<RowId> = input.rows.points.iter().filter(small).map(|p| p.row).collect();
    // Near zero distance a delay may well be near zero: the arms are about equal there.
    (2 * rows.len() > input.rows.points.len()).then(|| {
        Notice::new(
            "delay_below_uncertainty",
            Weight::Know,
            Section::Readings,
            message!("notice-delay_below_uncertainty", n = rows.len(), rows = input.numbers(&rows)),
            message!("notice-delay_below_uncertainty-look"),
        )
        .of_rows(rows)
    })
}

/// A delay of more than one pulse period is known only up to whole periods.
fn beyond_a_period(input: &NoticeInput) -> Option<Notice> {
    let period = 1e9 / input.context.bench.pulse_rate?;
    let rows: Vec<RowId> = input.rows.points.iter().filter(|p| p.y.abs() >= period).map(|p| p.row).collect();
    (!rows.is_empty()).then(|| {
        Notice::new(
            "beyond_a_period",
            Weight::Grave,
            Section::Readings,
            message!(
                "notice-beyond_a_period",
                n = rows.len(),
                rows = input.numbers(&rows),
                period = input.figure(period, 4)
            ),
            message!("notice-beyond_a_period-look"),
        )
        .of_rows(rows)
    })
}

/// Nobody stated the uncertainty of what moves c one for one, so it is taken as zero.
fn treated_as_exact(input: &NoticeInput) -> Option<Notice> {
    let (context, points) = (input.context, &input.rows.points);
    input.line?;
    let scaled = |acts_on| {
        let all = |shared: &&SharedError| shared.effect == Effect::Scale && shared.rows == Scope::All;
        context.page.shared.iter().filter(all).any(|shared| shared.acts_on == acts_on)
    };
    let own = |time| context.settings.iter().any(|s| s.time_per_division == time && s.uncertainty.is_some());
    let timed_by = |p: &Point| match p.time_base.map(|base| base.clock) {
        Some(Clock::Screen(time)) => !own(time),
        Some(Clock::Recorder) => true,
        None => p.delay_source == DelaySource::ByTraces,
    };
    let time_base = context.page.text(BenchField::TimeBaseUncertainty).trim().is_empty()
        && !scaled(ActsOn::Delays)
        && points.iter().any(timed_by);
    let time_base = time_base.then(|| message!("notice-treated_as_exact-time-base"));
    let rails = context.page.rails.iter().enumerate().filter(|(index, rail)| {
        let text = rail.texts.get(&RailField::ScaleUncertainty).map_or("", String::as_str);
        text.trim().is_empty() && !scaled(ActsOn::Distances) && points.iter().any(|p| p.rail == Some(*index))
    });
    let scales = rails
        .map(|(index, rail)| message!("notice-treated_as_exact-scale", rail = rail.name_or_number(index)));
    let what: Vec<Message> = time_base.into_iter().chain(scales).collect();
    (!what.is_empty()).then(|| {
        Notice::new(
            "treated_as_exact",
            Weight::Know,
            Section::Apparatus,
            message!("notice-treated_as_exact", what = what),
            message!("notice-treated_as_exact-look"),
        )
    })
}

/// No row states an uncertainty of its distance, or none of its delay, so that all of them are taken as exact; where only
/// some state none there is no line.
fn uncertainty_missing(input: &NoticeInput) -> Option<Notice> {
    let (page, points) = (input.context.page, &input.rows.points);
    let elsewhere = |acts_on| {
        let matrix = match acts_on {
            ActsOn::Distances => CovarianceOf::Distances,
            ActsOn::Delays => CovarianceOf::Delays,
        };
        page.covariances.iter().any(|stated| stated.acts_on == matrix)
            || page.shared.iter().any(|shared| shared.effect == Effect::Noise && shared.acts_on == acts_on)
    };
    let text = if points.iter().all(|p| p.uy.is_none()) && !elsewhere(ActsOn::Delays) {
        message!("notice-uncertainty_missing-delays")
    } else if points.iter().all(|p| p.ux.is_none()) && !elsewhere(ActsOn::Distances) {
        message!("notice-uncertainty_missing-distances")
    } else {
        return None;
    };
    input.line?.stated.then(|| {
        Notice::new(
            "uncertainty_missing",
            Weight::Look,
            Section::Readings,
            text,
            message!("notice-uncertainty_missing-look"),
        )
    })
}

/// Nothing was said about uncertainties: all figures rest on what the notebook took.
fn defaults_only(input: &NoticeInput) -> Option<Notice> {
    let screen = input.rows.points.iter().any(|p| p.delay_source == DelaySource::OnScreen);
    let on_rail = input.rows.points.iter().any(|p| p.rail.is_some());
    let bench = &input.context.page.bench;
    let screen_said = bench.contains_key(&BenchField::EdgeHalfWidth)
        || bench.contains_key(&BenchField::SmallDivisions)
        || input.rows.scatter.is_some();
    let rails_said = input.context.rails.iter().any(|r| r.u_reading_stated || r.u_joint_stated);
    let untold = (screen && !screen_said || on_rail && !rails_said)
        && !(screen && screen_said || on_rail && rails_said);
    (untold && input.rows.points.len() > 1).then(|| {
        Notice::new(
            "defaults_only",
            Weight::Look,
            Section::Apparatus,
            message!("notice-defaults_only"),
            message!("notice-defaults_only-look"),
        )
    })
}
