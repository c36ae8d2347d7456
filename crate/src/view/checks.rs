//! The side checks of the line, each in a figure.

use super::figures::{figure, probability, with_u};
use super::math::{Formula, bracket, equation, number, op, over, row, symbol, times};
use super::types::Figure;
use crate::analysis::{Checks, LineAnalysis, MeasuredValue, Tested};
use crate::line::diagnostics::RunsTest;
use crate::message;
use crate::notebook::NotebookState;
use crate::quantity::{DecimalMark, p_equation, p_text, plain, plus_minus};
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
    figures.extend(checks.theil_sen.map(|slope| theil_sen(slope, n, mark)));
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
    let line = |slope| row(vec![symbol("t_0"), op("+"), times(slope, symbol("d"))]);
    row(vec![symbol("Δt"), op("="), line(symbol("b")), op("="), line(number(slope_text(slope, mark)))])
}

fn through_zero(slope: &MeasuredValue, mark: DecimalMark) -> Figure {
    figure("through_zero", message!("figures-through_zero"), "b₀", measured(slope, mark))
        .means(message!("figures-through_zero-meaning"))
        .by(row(vec![
            symbol("Δt"),
            op("="),
            times(symbol("b_0"), symbol("d")),
            op("="),
            times(number(slope_text(slope.value, mark)), symbol("d")),
        ]))
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
    let twice = |size| row(vec![number("2"), op("·"), probability(vec![symbol(random)], size)]);
    let bars = |inner| row(vec![op("|"), inner, op("|")]);
    figure(
        "quadratic",
        message!("figures-quadratic"),
        "a₂",
        format!(
            "{} ({})",
            plus_minus(term.value, Some(term.uncertainty), "ns/m²", mark),
            p_equation(term.p_value, mark)
        ),
    )
    .means(message!("figures-quadratic-meaning"))
    .by(equation(
        symbol("p"),
        twice(over(bars(symbol("a_2")), symbol("u(a_2)"))),
        twice(over(
            number(plain(term.value.abs(), 3, mark) + " ns/m²"),
            number(plain(term.uncertainty, 3, mark) + " ns/m²"),
        )),
        p,
    ))
    .from(source)
}

fn theil_sen(slope: f64, n: usize, mark: DecimalMark) -> Figure {
    let difference =
        |what: &str| row(vec![symbol(&format!("{what}_j")), op("−"), symbol(&format!("{what}_i"))]);
    let median = |rows: Formula| {
        let pairs = row(vec![number("1"), op("≤"), symbol("i"), op("<"), symbol("j"), op("≤"), rows]);
        row(vec![symbol("med"), bracket(over(difference("Δt"), difference("d"))), op(","), pairs])
    };
    figure("theil_sen", message!("figures-theil_sen"), "b", slope_text(slope, mark))
        .means(message!("figures-theil_sen-meaning"))
        .by(equation(
            symbol("b"),
            median(symbol("N")),
            median(number(n.to_string())),
            slope_text(slope, mark),
        ))
        .from("P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379")
}

fn other_way(slope: f64, mark: DecimalMark) -> Figure {
    let line = |slope| row(vec![symbol("d_0"), op("+"), over(symbol("Δt"), slope)]);
    figure("other_way", message!("figures-other_way"), "b", slope_text(slope, mark))
        .means(message!("figures-other_way-meaning"))
        .by(row(vec![
            symbol("d"),
            op("="),
            line(symbol("b")),
            op("="),
            line(number(slope_text(slope, mark))),
        ]))
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
    let (few, p) = (runs.p_few <= runs.p_many, p_text(runs.p(), mark));
    let tail = |count: Formula, plus: Formula, minus: Formula| {
        let given = row(vec![op("|"), plus, op(","), minus]);
        let inside = row(vec![symbol("R"), op(if few { "≤" } else { "≥" }), count, given]);
        row(vec![number("2"), op("·"), symbol("P"), bracket(inside)])
    };
    let whole = |count: usize| number(count.to_string());
    figure("runs", message!("figures-runs"), "p", p.clone())
        .means(message!("figures-runs-meaning"))
        .by(equation(
            symbol("p"),
            tail(symbol("r"), symbol("n_+"), symbol("n_−")),
            tail(whole(runs.runs), whole(runs.plus), whole(runs.minus)),
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
    let expected = |rows: Formula| {
        times(
            rows,
            probability(
                vec![row(vec![op("|"), symbol("Z"), op("|")])],
                row(vec![op("|"), symbol("w"), op("|")]),
            ),
        )
    };
    Some(
        figure("suspects", message!("figures-suspects"), "", pointed)
            .means(message!("figures-suspects-meaning"))
            .by(row(vec![
                expected(symbol("N")),
                op("="),
                expected(number(n.to_string())),
                op("<"),
                over(number("1"), number("2")),
            ]))
            .from(message!("figures-suspects-source")),
    )
}
