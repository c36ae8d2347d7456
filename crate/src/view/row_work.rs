//! How one row was worked out: its distance, its delay, and how far it lies from the line.

use super::figures::{figure, measured};
use super::math::{equation, formula};
use super::types::Figure;
use crate::analysis::read::ruler_unit;
use crate::analysis::{Analysis, MeasuredValue, RowReading};
use crate::message;
use crate::notebook::{Evidence, NotebookState, Row, RowId};
use crate::quantity::{DecimalMark, Unit, fixed, in_unit, plain};

/// The figures of a row, each with its formula and the numbers put in; those that it does not have yet are left out.
pub fn row_work(page: &NotebookState, analysis: &Analysis, id: RowId) -> Vec<Figure> {
    let Some(typed) = page.row(id) else { return Vec::new() };
    let Some(read) = analysis.rows.iter().find(|row| row.id == id) else { return Vec::new() };
    let mut figures = Vec::new();
    figures.extend(read.distance.as_ref().map(|d| distance(page, analysis, read, d)));
    figures.extend(read.delay.as_ref().map(|t| delay(page, typed, read, t)));
    figures.extend(residual(page, analysis, id));
    figures
}

fn distance(page: &NotebookState, analysis: &Analysis, read: &RowReading, d: &MeasuredValue) -> Figure {
    let mark = page.decimal_mark;
    let found =
        figure("row_distance", message!("readings-output-names-distance"), "d", measured(Some(d), "m", mark))
            .means(message!("row-work-distance"))
            .from(message!("row-work-distance-source"));
    let rail = read.rail.and_then(|rail| page.rail(rail)).map(|(_, rail)| rail);
    let stand = analysis.rails.iter().find(|stand| Some(stand.id) == read.rail);
    let placed = rail.zip(stand.and_then(|stand| stand.mark.as_ref())).zip(read.reading);
    let metres = |value| format!("{}\u{a0}m", plain(value, 6, mark));
    let Some(((rail, (at, place)), reading)) = placed else {
        return found.by(formula("d = #", vec![metres(d.value)]));
    };
    let ruler = |value| in_unit(value, ruler_unit(rail.unit), mark);
    let in_numbers = if rail.sense.sign() > 0.0 { "# + (# − #)" } else { "# − (# − #)" };
    let numbers = vec![metres(place.value), ruler(reading), ruler(*at)];
    found.by(equation("d", "o + {s·(r − m)}", in_numbers, numbers, metres(d.value)))
}

fn delay(page: &NotebookState, typed: &Row, read: &RowReading, t: &MeasuredValue) -> Figure {
    let mark = page.decimal_mark;
    let (meaning, source) = match &typed.evidence {
        Some(Evidence::Traces(_)) => (message!("row-work-traces"), message!("figures-traces-source")),
        Some(Evidence::Picture(_)) => (message!("row-work-picture"), message!("row-work-picture-source")),
        None if read.time_per_division.is_some() => {
            (message!("row-work-screen"), message!("row-work-screen-source"))
        }
        None => (message!("row-work-typed"), message!("row-work-typed-source")),
    };
    let name = message!("readings-output-names-delay");
    let found = figure("row_delay", name, "Δt", measured(Some(t), "ns", mark)).means(meaning).from(source);
    let whole = format!("{}\u{a0}ns", plain(t.value, 6, mark));
    match read.time_per_division {
        Some(time) if time > 0.0 => found.by(equation(
            "Δt",
            "(q_B − q_A)·S",
            "#·#",
            vec![
                format!("{}\u{a0}div", plain(t.value / time, 6, mark)),
                in_unit(time, Unit::NANOSECOND_PER_DIVISION, mark),
            ],
            whole,
        )),
        _ => found.by(formula("Δt = #", vec![whole])),
    }
}

fn residual(page: &NotebookState, analysis: &Analysis, id: RowId) -> Option<Figure> {
    let mark: DecimalMark = page.decimal_mark;
    // With the slope shown, the row would seem to lie off the line by what the seal hides.
    if analysis.sealed {
        return None;
    }
    let line = analysis.line.as_ref().ok()?;
    let place = line.rows.iter().position(|row| *row == id)?;
    let fit = line.fit.rows.get(place)?;
    let (d, t, w) = (line.distance.get(place)?, line.delay.get(place)?, fit.normalised?);
    let ns = |value: f64| format!("{}\u{a0}ns", plain(value, 5, mark));
    let expected = line.fit.intercept + line.fit.slope * d;
    Some(
        figure("row_residual", message!("row-work-residual"), "w", fixed(w, -1, mark))
            .means(message!("row-work-residual-meaning"))
            .by(equation(
                "w",
                "{Δt − (t_0 + {b·d})}/`u(e)`",
                "{# − #}/`u(e)`",
                vec![ns(*t), ns(expected)],
                fixed(w, -1, mark),
            ))
            .from(message!("row-work-residual-source")),
    )
}

#[cfg(test)]
#[path = "row_work_test.rs"]
mod tests;
