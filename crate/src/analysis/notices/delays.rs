//! What pictures and traces show: walk, what may have moved an edge, marks that don't fit their grid.

use super::input::NoticeInput;
use super::repairs;
use crate::analysis::notice::{Notice, Section, Weight};
use crate::analysis::origin::Origin;
use crate::analysis::point::{DelaySource, Point};
use crate::analysis::types::SlopePart;
use crate::message;
use crate::notebook::{ActsOn, Estimator, Evidence, Remark, Row, RowId, Scope, SharedError};
use crate::words::{Message, Value};
use slope_evidence::trace::Flag;

/// Beyond so many standard uncertainties something is there.
const SEEN: f64 = 2.0;

/// Every notice about pictures and traces.
pub(super) fn notices(input: &NoticeInput) -> Vec<Notice> {
    let walks = walk(input).into_iter().chain(walk_twice(input));
    walks.chain(doubtful(input)).chain(height_unknown(input)).chain(bent(input)).collect()
}

/// Delays by a fixed level, where the light weakens on the way.
fn walk(input: &NoticeInput) -> Option<Notice> {
    let walk = input.walk.filter(|_| input.context.page.estimator == Estimator::FixedLevel)?;
    let (shift, _) = walk.shift;
    (walk.line.slope.abs() > SEEN * walk.line.uncertainty).then(|| {
        Notice::new(
            "walk",
            Weight::Grave,
            Section::Delays,
            message!("notice-walk", percent = input.figure(100.0 * shift, 2)),
            message!("notice-walk-look"),
        )
        .of_rows(walk.rows.iter().map(|row| row.row).collect())
        .mended_by(repairs::by_constant_fraction(input.context.page))
    })
}

/// Errors of the delays that were stated beside the budget's own line for walk, and act on the slope too: one that stands
/// for the walk, as it had to before there was that line, counts twice. Which it is only a person knows.
fn walk_twice(input: &NoticeInput) -> Option<Notice> {
    /// A share of the slope so small is rounding.
    const NOTHING: f64 = 1e-9;
    let line = input.line?;
    let acts = |origin: &Origin| {
        let of = |part: &SlopePart| part.origin == *origin && part.slope > NOTHING * line.fit.slope.abs();
        line.parts.iter().any(of)
    };
    // What rows share that were read at one time base of a screen is no walk of traces, nor what rows without them share.
    let has_traces = |rows: &Scope| match rows {
        Scope::All | Scope::Rail(_) => true,
        Scope::TimeBase(_) => false,
        Scope::Rows(rows) => {
            let is_one = |p: &Point| p.delay_source == DelaySource::ByTraces && rows.contains(&p.row);
            input.rows.points.iter().any(is_one)
        }
    };
    let may_be_walk = |shared: &&SharedError| {
        shared.acts_on == ActsOn::Delays
            && has_traces(&shared.rows)
            && acts(&Origin::Stated { shared: shared.id })
    };
    let stated: Vec<&SharedError> = input.context.page.shared.iter().filter(may_be_walk).collect();
    if stated.is_empty() || !acts(&Origin::Walk) {
        return None;
    }
    let names: Vec<Value> = stated.iter().map(|shared| name(shared)).collect();
    let text = message!("notice-walk_twice", n = stated.len(), names = names);
    let look = message!("notice-walk_twice-look");
    Some(Notice::new("walk_twice", Weight::Know, Section::Uncertainty, text, look))
}

/// What the budget calls an error that was stated.
fn name(shared: &SharedError) -> Value {
    match shared.name.trim() {
        "" => message!("budget-names-unnamed").into(),
        name => name.into(),
    }
}

/// What traces show that may have moved an edge by more than its uncertainty: each kind with its rows.
fn doubtful(input: &NoticeInput) -> Vec<Notice> {
    let of = |is: fn(&Flag) -> bool| -> Vec<RowId> {
        let used = input.rows.points.iter().map(|point| point.row);
        used.filter(|id| {
            let row = input.context.page.row(*id);
            row.is_some_and(|row| flags(row, input.context.page.estimator).any(is))
        })
        .collect()
    };
    let told = |id, weight, rows: Vec<RowId>, text: fn(usize, Vec<usize>) -> Message, look| {
        (!rows.is_empty()).then(|| {
            let text = text(rows.len(), input.numbers(&rows));
            Notice::new(id, weight, Section::Delays, text, look).of_rows(rows)
        })
    };
    [
        told(
            "second_pulse",
            Weight::Look,
            of(|flag| matches!(flag, Flag::DoubleEdge { .. })),
            |n, rows| message!("notice-second_pulse", n = n, rows = rows),
            message!("notice-second_pulse-look"),
        ),
        told(
            "unlike_edges",
            Weight::Look,
            of(|flag| matches!(flag, Flag::UnlikeEdge { .. })),
            |n, rows| message!("notice-unlike_edges", n = n, rows = rows),
            message!("notice-unlike_edges-look"),
        ),
        told(
            "signal_before",
            Weight::Look,
            of(|flag| matches!(flag, Flag::NotQuiet { .. })),
            |n, rows| message!("notice-signal_before", n = n, rows = rows),
            message!("notice-signal_before-look"),
        ),
        told(
            "not_level",
            Weight::Look,
            of(|flag| matches!(flag, Flag::Drift { .. })),
            |n, rows| message!("notice-not_level", n = n, rows = rows),
            message!("notice-not_level-look"),
        ),
        told(
            "few_on_edge",
            Weight::Look,
            of(|flag| matches!(flag, Flag::FewOnEdge { .. })),
            |n, rows| message!("notice-few_on_edge", n = n, rows = rows),
            message!("notice-few_on_edge-look"),
        ),
        told(
            "flat_top",
            Weight::Look,
            of(|flag| matches!(flag, Flag::FlatTop { .. })),
            |n, rows| message!("notice-flat_top", n = n, rows = rows),
            message!("notice-flat_top-look"),
        ),
        told(
            "rough",
            Weight::Look,
            of(|flag| matches!(flag, Flag::Rough | Flag::Noisy)),
            |n, rows| message!("notice-rough", n = n, rows = rows),
            message!("notice-rough-look"),
        ),
        told(
            "supposed_unit",
            Weight::Know,
            of(|flag| matches!(flag, Flag::SupposedUnit)),
            |n, rows| message!("notice-supposed_unit", n = n, rows = rows),
            message!("notice-supposed_unit-look"),
        ),
        told(
            "uneven_steps",
            Weight::Know,
            of(|flag| matches!(flag, Flag::UnevenSteps { .. })),
            |n, rows| message!("notice-uneven_steps", n = n, rows = rows),
            message!("notice-uneven_steps-look"),
        ),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// What to be wary of on the traces of a row, as far as the delay in use rests on it.
fn flags(row: &Row, estimator: Estimator) -> impl Iterator<Item = &Flag> {
    let delays = match &row.evidence {
        Some(Evidence::Traces(traces)) => traces.delays.as_slice(),
        _ => &[],
    };
    let used = delays.iter().filter(move |delay| delay.estimator == estimator);
    used.flat_map(|delay| &delay.remarks).filter_map(|remark| match remark {
        Remark::Edge { flag, .. } => Some(flag),
        _ => None,
    })
}

/// Edges that leave the screen, so that no fraction of their height is known.
fn height_unknown(input: &NoticeInput) -> Option<Notice> {
    let used = input.rows.points.iter().map(|point| point.row);
    let rows: Vec<RowId> = used
        .filter(|id| {
            let row = input.context.page.row(*id);
            let Some(Evidence::Picture(picture)) = row.and_then(|row| row.evidence.as_ref()) else {
                return false;
            };
            picture.heights.is_some_and(|heights| heights.a.is_unknown() || heights.b.is_unknown())
        })
        .collect();
    (!rows.is_empty()).then(|| {
        let text = message!("notice-height_unknown", n = rows.len(), rows = input.numbers(&rows));
        let look = message!("notice-height_unknown-look");
        Notice::new("height_unknown", Weight::Look, Section::Delays, text, look).of_rows(rows)
    })
}

/// Crossings that lie off the plane of their grid by more than their marking explains.
fn bent(input: &NoticeInput) -> Option<Notice> {
    let off = input.context.marks.grids.iter().flat_map(|grid| &grid.checks).filter(|check| {
        let pairs = check.residual.divisions.iter().zip(check.uncertainty);
        pairs.clone().any(|(residual, u)| residual.abs() > 3.0 * u)
    });
    let largest = off.flat_map(|check| check.residual.divisions).map(f64::abs).fold(0.0, f64::max);
    (largest > 0.0).then(|| {
        Notice::new(
            "grid_bent",
            Weight::Look,
            Section::Delays,
            message!("notice-grid_bent", off = input.figure(largest, 2)),
            message!("notice-grid_bent-look"),
        )
    })
}
