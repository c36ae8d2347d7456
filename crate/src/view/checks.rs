//! The side checks of the line, each in a figure.

use super::figures::{figure, with_u};
use super::math::{Formula, equation, formula};
use super::types::Figure;
use crate::analysis::checks::MOST_PAIRED;
use crate::analysis::{Checks, LineAnalysis, MeasuredValue, Tested};
use crate::line::diagnostics::RunsTest;
use crate::message;
use crate::notebook::NotebookState;
use crate::quantity::{DecimalMark, p_equation, p_text, plain, short_form};
use crate::words::Value;

/// The checks that the rows allow.
pub(super) fn checks(page: &NotebookState, line: &LineAnalysis) -> Vec<Figure> {
    let checks = &line.checks;
    let mark = page.decimal_mark;
    let n = line.rows.len();
    let mut figures = Vec::new();
    figures.extend(checks.through_zero.as_ref().map(|slope| through_zero(slope, mark)));
    figures.extend(rails_alone(page, checks));
    figures.extend(checks.quadratic.as_ref().map(|term| quadratic(term, line, mark)));
    figures.extend(match checks.theil_sen {
        None if n > MOST_PAIRED => Some(median_left_out()),
        slope => slope.map(|slope| theil_sen(slope, n, mark)),
    });
    figures.extend(checks.other_way.map(|slope| other_way(slope, mark)));
    figures.extend(decisive_row(page, checks, n));
    figures.extend(checks.runs.as_ref().map(|runs| runs_test(runs, mark)));
    figures.extend(suspects(page, checks, n));
    figures
}

fn slope_text(slope: f64, mark: DecimalMark) -> String {
    format!("{}\u{a0}ns/m", plain(slope, 5, mark))
}

fn measured(slope: &MeasuredValue, mark: DecimalMark) -> String {
    with_u(slope.value, slope.uncertainty, "ns/m", mark)
}

/// Δt = t₀ + b·d, and the same with the slope put in.
fn model(slope: f64, mark: DecimalMark) -> Formula {
    formula("Δt = {t_0 + {b·d}} = {t_0 + {#·d}}", vec![slope_text(slope, mark)])
}

fn through_zero(slope: &MeasuredValue, mark: DecimalMark) -> Figure {
    figure("through_zero", message!("figures-through_zero"), "b₀", measured(slope, mark))
        .means(message!("figures-through_zero-meaning"))
        .by(formula("Δt = {b_0·d} = {#·d}", vec![slope_text(slope.value, mark)]))
        .from(message!("figures-through_zero-source"))
}

fn rails_alone(page: &NotebookState, checks: &Checks) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let alone = checks.rails_alone.iter().map(|(rail, alone)| {
        let name = page.rail(*rail).map_or_else(String::new, |(index, rail)| rail.name_or_number(index));
        let found = figure(
            &format!("rail_alone_{rail}"),
            message!("figures-rail_alone", rail = name),
            "b",
            alone.as_ref().map_or_else(
                || Value::from(message!("figures-too_few_rows")),
                |slope| measured(slope, mark).into(),
            ),
        )
        .means(message!("figures-rail_alone-meaning"))
        .from(message!("figures-rail_alone-source"));
        match alone {
            Some(slope) => found.by(model(slope.value, mark)),
            None => found,
        }
    });
    alone.collect()
}

fn quadratic(term: &Tested, line: &LineAnalysis, mark: DecimalMark) -> Figure {
    let p = p_text(term.p_value, mark);
    let (random, source) = match (line.stated, line.weights_degrees) {
        (true, None) => ("Z", message!("figures-quadratic-source-normal")),
        (true, Some(_)) => ("t_ν₂", message!("figures-quadratic-source-few")),
        (false, _) => ("t_ν", message!("figures-quadratic-source-student")),
    };
    let twice = |least: &str| format!("2·{{P({random} ≥ {least})}}");
    figure(
        "quadratic",
        message!("figures-quadratic"),
        "a₂",
        format!(
            "{} ({})",
            short_form(term.value, Some(term.uncertainty), "ns/m²", mark),
            p_equation(term.p_value, mark)
        ),
    )
    .means(message!("figures-quadratic-meaning"))
    .by(equation(
        "p",
        &twice("{|a_2|}/`u(a_2)`"),
        &twice("#/#"),
        vec![plain(term.value.abs(), 3, mark) + " ns/m²", plain(term.uncertainty, 3, mark) + " ns/m²"],
        p,
    ))
    .from(source)
}

fn theil_sen(slope: f64, n: usize, mark: DecimalMark) -> Figure {
    let median = |rows| format!("med({{Δt_j − Δt_i}}/{{d_j − d_i}}), {{1 ≤ i < j ≤ {rows}}}");
    figure("theil_sen", message!("figures-theil_sen"), "b", slope_text(slope, mark))
        .means(message!("figures-theil_sen-meaning"))
        .by(equation("b", &median("N"), &median("#"), vec![n.to_string()], slope_text(slope, mark)))
        .from("P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379")
}

/// In the place of the median slope, why it is not there.
fn median_left_out() -> Figure {
    let why = message!("figures-theil_sen-left_out", most = MOST_PAIRED);
    figure("theil_sen", message!("figures-theil_sen"), "b", "–").means(why)
}

fn other_way(slope: f64, mark: DecimalMark) -> Figure {
    figure("other_way", message!("figures-other_way"), "b", slope_text(slope, mark))
        .means(message!("figures-other_way-meaning"))
        .by(formula("d = {d_0 + Δt/b} = {d_0 + Δt/#}", vec![slope_text(slope, mark)]))
        .from(message!("figures-other_way-source"))
}

fn decisive_row(page: &NotebookState, checks: &Checks, n: usize) -> Option<Figure> {
    let mark = page.decimal_mark;
    let (row, slope) = checks.decisive_row?;
    let name = message!("figures-decisive_row", row = page.row_numbers(&[row]));
    Some(
        figure("decisive_row", name, "b", slope_text(slope, mark))
            .means(message!("figures-decisive_row-meaning"))
            .by(model(slope, mark))
            .from(message!("figures-decisive_row-source", n = n.saturating_sub(1))),
    )
}

fn runs_test(runs: &RunsTest, mark: DecimalMark) -> Figure {
    let p = p_text(runs.p(), mark);
    let relation = if runs.p_few <= runs.p_many { '≤' } else { '≥' };
    let tail = |count, given| format!("2·P(R {relation} {count} {{|{given}}})");
    figure("runs", message!("figures-runs"), "p", p.clone())
        .means(message!("figures-runs-meaning"))
        .by(equation(
            "p",
            &tail("r", "`n_+`, `n_−`"),
            &tail("#", "#, #"),
            [runs.runs, runs.plus, runs.minus].map(|count| count.to_string()).into(),
            p,
        ))
        .from(message!("figures-runs-source"))
}

fn suspects(page: &NotebookState, checks: &Checks, n: usize) -> Option<Figure> {
    let numbers = |rows| page.row_numbers(rows);
    let pointed = match (numbers(&checks.chauvenet), numbers(&checks.peirce)) {
        (chauvenet, peirce) if chauvenet.is_empty() && peirce.is_empty() => return None,
        (chauvenet, peirce) if peirce.is_empty() => {
            message!("figures-suspects-chauvenet", n = chauvenet.len(), rows = chauvenet)
        }
        (chauvenet, peirce) if chauvenet.is_empty() => {
            message!("figures-suspects-peirce", n = peirce.len(), rows = peirce)
        }
        (chauvenet, peirce) => message!(
            "figures-suspects-both",
            n = chauvenet.len(),
            rows = chauvenet,
            m = peirce.len(),
            others = peirce
        ),
    };
    Some(
        figure("suspects", message!("figures-suspects"), "", pointed)
            .means(message!("figures-suspects-meaning"))
            .by(formula("{N·{P({|Z|} ≥ {|r|}/s)}} = {#·{P({|Z|} ≥ {|r|}/s)}} < 1/2", vec![n.to_string()]))
            .from(message!("figures-suspects-source")),
    )
}
