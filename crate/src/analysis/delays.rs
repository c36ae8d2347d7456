//! How late the second edge came: from two edges on a screen, a picture of one, recorded traces, or as typed.

use super::cells::Cells;
use super::context::RowContext;
use super::evidence::{CornerShift, Marked, traced};
use super::origin::Clock;
use super::point::{DelaySource, TimeBase};
use super::read::BenchNumbers;
use super::row_error::RowError;
use crate::message;
use crate::notebook::{Cell, Evidence};
use crate::quantity::Unit;
use crate::screen::{Edges, Scatter};

/// What a row says of its delay; the scatter of repeats is pooled over all rows before it becomes one.
pub(super) enum Timing {
    Screen { edges: Edges, setting: SettingInUse },
    Picture { marked: Box<Marked>, setting: SettingInUse },
    Traces { y: f64, uy: f64, recorder: Option<TimeBase> },
    Direct { y: f64, uy: Option<f64> },
}

/// The setting of the screen that a row was read at.
#[derive(Clone, Copy)]
pub(super) struct SettingInUse {
    /// Time per division, ns.
    pub(super) time_per_division: f64,
    /// Its relative standard uncertainty.
    pub(super) relative: f64,
}

impl SettingInUse {
    fn time_base(self) -> TimeBase {
        TimeBase { clock: Clock::Screen(self.time_per_division), relative: self.relative }
    }
}

/// Reads what a row says of its delay, and its edges on a screen, divisions.
pub(super) fn timing(cells: &mut Cells, context: &RowContext) -> (Vec<f64>, Result<Timing, RowError>) {
    let on_screen = cells.has(Cell::EdgeA) || cells.has(Cell::EdgeB);
    if cells.has(Cell::DelayUncertainty)
        && !cells.has(Cell::Delay)
        && (on_screen || cells.row.evidence.is_some())
    {
        cells.note(Cell::DelayUncertainty, message!("row-delay_uncertainty_idle"));
    }
    if let Some(evidence) = &cells.row.evidence {
        for cell in [Cell::Delay, Cell::EdgeA, Cell::EdgeB] {
            if cells.has(cell) {
                cells.note(cell, message!("row-delay_twice_evidence"));
                return (Vec::new(), Err(RowError::DelayTwice));
            }
        }
        return (Vec::new(), from_evidence(cells, context, evidence));
    }
    if cells.has(Cell::Delay) {
        if on_screen {
            cells.note(Cell::Delay, RowError::DelayTwice.message());
            return (Vec::new(), Err(RowError::DelayTwice));
        }
        let timing = cells
            .measured(Cell::Delay, Cell::DelayUncertainty, Unit::NANOSECOND)
            .map(|(y, uy)| Timing::Direct { y, uy })
            .ok_or(RowError::DelayUnreadable);
        return (Vec::new(), timing);
    }
    let before = cells.reader.problems.len();
    let mut edges = |cell| cells.reader.edges(cells.place(cell), cells.row.text(cell));
    let (a, b) = (edges(Cell::EdgeA), edges(Cell::EdgeB));
    let unreadable = cells.reader.problems.len() > before;
    let all = a.iter().chain(&b).copied().collect();
    let setting = setting_in_use(cells, context);
    let timing = if unreadable {
        Err(RowError::EdgeUnreadable)
    } else if !on_screen {
        Err(RowError::NoDelay)
    } else {
        match Edges::pair(&a, &b) {
            Err(error) => Err(RowError::Edges(error)),
            Ok(edges) => setting.map(|setting| Timing::Screen { edges, setting }),
        }
    };
    (all, timing)
}

fn from_evidence(cells: &mut Cells, context: &RowContext, evidence: &Evidence) -> Result<Timing, RowError> {
    match evidence {
        Evidence::Picture(picture) => {
            let marked = Box::new(context.marks.read(picture).map_err(RowError::Marks)?);
            Ok(Timing::Picture { marked, setting: setting_in_use(cells, context)? })
        }
        Evidence::Traces(traces) => {
            let (y, uy) = traced(context.page, traces).map_err(RowError::Traces)?;
            let relative = context.bench.u_time_base.filter(|u| *u > 0.0);
            let recorder = relative.map(|relative| TimeBase { clock: Clock::Recorder, relative });
            Ok(Timing::Traces { y, uy, recorder })
        }
    }
}

/// The setting that a row was read at; the only one if the row names none.
fn setting_in_use(cells: &mut Cells, context: &RowContext) -> Result<SettingInUse, RowError> {
    let time = if cells.has(Cell::TimeBase) {
        let text = cells.row.text(Cell::TimeBase);
        let place = cells.place(Cell::TimeBase);
        cells.reader.positive(place, text, Unit::NANOSECOND).ok_or(RowError::TimeBaseUnreadable)?
    } else if let [only] = context.settings.as_slice() {
        only.time_per_division
    } else {
        return Err(RowError::NoTimeBase);
    };
    let own = context.settings.iter().find(|s| s.time_per_division == time).and_then(|s| s.uncertainty);
    Ok(SettingInUse { time_per_division: time, relative: own.or(context.bench.u_time_base).unwrap_or(0.0) })
}

/// What a timing comes to: the fields of [`Point`](super::point::Point) that are about the delay.
pub(super) struct RowDelay {
    pub(super) y: f64,
    pub(super) uy: Option<f64>,
    pub(super) type_a: f64,
    pub(super) time_base: Option<TimeBase>,
    pub(super) delay_source: DelaySource,
    pub(super) corners: Vec<(CornerShift, f64)>,
}

pub(super) fn delay(timing: &Timing, bench: &BenchNumbers, scatter: Option<Scatter>) -> RowDelay {
    let plain = |y, uy, delay_source| RowDelay {
        y,
        uy,
        type_a: 0.0,
        time_base: None,
        delay_source,
        corners: Vec::new(),
    };
    match timing {
        Timing::Direct { y, uy } => plain(*y, *uy, DelaySource::Directly),
        Timing::Traces { y, uy, recorder } => {
            RowDelay { time_base: *recorder, ..plain(*y, Some(*uy), DelaySource::ByTraces) }
        }
        Timing::Screen { edges, setting } => {
            let delay = edges.delay(setting.time_per_division, bench.half_width, scatter);
            RowDelay {
                type_a: delay.type_a,
                time_base: Some(setting.time_base()),
                ..plain(delay.value, Some(delay.uncertainty()), DelaySource::OnScreen)
            }
        }
        Timing::Picture { marked, setting } => RowDelay {
            time_base: Some(setting.time_base()),
            corners: marked
                .corners
                .iter()
                .map(|(corner, by)| (*corner, by * setting.time_per_division))
                .collect(),
            ..plain(
                marked.separation.value * setting.time_per_division,
                Some(marked.own() * setting.time_per_division),
                DelaySource::OnPicture,
            )
        },
    }
}
