//! The whole way, step by step: from a page to everything computed from it.

use super::air_state::air_limits;
use super::budget::{self, BeyondFit};
use super::checks::checks;
use super::context::RowContext;
use super::diagnosis::{diagnose, too_many_together};
use super::fields::marked;
use super::line_fit;
use super::notices::{NoticeInput, notices};
use super::parts::WhatIf;
use super::prepare::{PreparedPage, prepare};
use super::read::BenchNumbers;
use super::seal::Shown;
use super::speed;
use super::types::{
    AirReading, Analysis, DrawnLine, LineAnalysis, MeasuredValue, NoIndex, RailStand, Refusal, Speed,
};
use super::walk::walk;
use crate::air;
use crate::notebook::{Notebook, NotebookState, Seal};
use crate::rail;

/// Computes everything from a notebook.
pub fn analyse(notebook: &Notebook) -> Analysis {
    analyse_page(notebook.state(), None)
}

/// Computes everything from a page, with one source of uncertainty made larger or smaller if asked.
pub fn analyse_page(page: &NotebookState, what_if: Option<&WhatIf>) -> Analysis {
    computed(page, what_if, None)
}

/// Computes the rows, the line and the speed of a page; what is thought of the line (checks and notices, two thirds of the
/// work) stays as it was `before`, until [`analyse_page`] has been asked. Under a closed seal, everything at once, so that
/// nothing said before the seal was closed stays.
pub fn analyse_line(page: &NotebookState, before: &Analysis) -> Analysis {
    let sealed = is_closed(page.seal.as_ref());
    computed(page, None, Some(before).filter(|before| !(sealed || before.sealed)))
}

fn computed(page: &NotebookState, what_if: Option<&WhatIf>, before: Option<&Analysis>) -> Analysis {
    let prepared = prepare(page, what_if);
    let points = prepared.rows.points.as_slice();
    let air = air_reading(page, &prepared.context.bench);
    let mut line = line_of(&prepared);
    if let (Ok(line), Ok(setup)) = (&mut line, &prepared.setup) {
        line.checks = match before {
            Some(before) => before.line.as_ref().map(|line| line.checks.clone()).unwrap_or_default(),
            None => checks(page, points, setup, &line.fit),
        };
    }
    let seal = page.seal.as_ref();
    let speed = speed_of(&prepared, &line, &air, what_if).map(|speed| Shown::of(speed, seal));
    let drawn = line.as_ref().ok().map(drawn);
    let slope = line.as_ref().ok().map(|line| line.fit.slope);
    // From here on nothing but what may be shown.
    let line = line.map(|line| Shown::of(line, seal));
    let (marked, replaced) = marked(page, &prepared.problems);
    let walk = walk(page, points, line.as_ref().ok().map(|line| line.fit.slope));
    let sealed = is_closed(seal);
    let noticed = || {
        let found = match (&prepared.setup, slope) {
            (Ok(setup), Some(slope)) => diagnose(&prepared.context, &prepared.rows, setup, slope, sealed),
            _ => Vec::new(),
        };
        notices(&NoticeInput {
            context: &prepared.context,
            replaced: &replaced,
            rows: &prepared.rows,
            line: line.as_deref().ok(),
            speed: speed.as_deref().ok(),
            found: &found,
            undiagnosed: prepared.setup.as_ref().is_ok_and(too_many_together),
            walk: walk.as_ref(),
        })
    };
    let notices = before.map_or_else(noticed, |before| before.notices.clone());
    Analysis {
        rails: rail_stands(&prepared.context),
        problems: prepared.problems,
        rows: prepared.rows.readings,
        air,
        line: line.map_err(|why| why.beside(&marked)),
        speed: speed.map_err(|why| why.beside(&marked)),
        walk,
        notices,
        drawn,
        sealed,
        judged: before.is_none(),
    }
}

fn is_closed(seal: Option<&Seal>) -> bool {
    seal.is_some_and(|seal| !seal.opened)
}

fn drawn(line: &LineAnalysis) -> DrawnLine {
    DrawnLine { intercept: line.fit.intercept, slope: line.fit.slope, uncertainty: line.fit.uncertainty }
}

/// The line of a page, without the side checks.
pub(super) fn line_of(prepared: &PreparedPage) -> Result<LineAnalysis, Refusal> {
    let setup = prepared.setup.as_ref().map_err(Clone::clone)?;
    line_fit::fit(prepared.context.page, &prepared.rows.points, setup)
}

/// The speed from the line of a page.
pub(super) fn speed_of(
    prepared: &PreparedPage,
    line: &Result<LineAnalysis, Refusal>,
    air: &AirReading,
    what_if: Option<&WhatIf>,
) -> Result<Speed, Refusal> {
    let beyond = BeyondFit {
        u_air: air.u_group_index,
        lengthening: prepared.lengthening,
        probability: prepared.probability,
        what_if,
    };
    speed::speed(prepared.context.page, line.as_ref().map_err(Clone::clone)?, air, &beyond)
}

/// The air and its index.
pub(super) fn air_reading(page: &NotebookState, bench: &BenchNumbers) -> AirReading {
    let group_index = air::group_index(&bench.air, bench.wavelength_nm)
        .map_err(|error| NoIndex { error, mark: page.decimal_mark });
    AirReading {
        temperature_c: bench.air.temperature_c,
        pressure_pa: bench.air.pressure_pa,
        humidity_percent: bench.air.humidity_percent,
        co2_ppm: bench.air.co2_ppm,
        wavelength_nm: bench.wavelength_nm,
        u_group_index: group_index.is_ok().then(|| budget::u_air(bench, &air_limits(page))).flatten(),
        group_index,
    }
}

fn rail_stands(context: &RowContext) -> Vec<RailStand> {
    let each = context.page.rails.iter().zip(&context.rails).zip(&context.stands).enumerate();
    each.map(|(index, ((typed, numbers), stand))| {
        let placed = numbers.rail.as_ref().zip(stand.as_ref());
        RailStand {
            id: typed.id,
            name: typed.name_or_number(index),
            near: placed.and_then(|(rail, stand)| rail::near_end(rail, stand)),
            far: placed.and_then(|(rail, stand)| rail::far_end(rail, stand)),
            mark: stand.as_ref().map(|stand| {
                (stand.mark, MeasuredValue { value: stand.offset, uncertainty: Some(stand.u_offset()) })
            }),
            free: stand.as_ref().is_some_and(|stand| stand.free.contains(&index)),
        }
    })
    .collect()
}
