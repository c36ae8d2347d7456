//! The side checks of the line, each in a figure.

use super::figures::{figure, p_text, probability, with_u};
use super::math::{Formula, bracket, equation, number, op, over, row, symbol, times};
use super::types::Figure;
use crate::analysis::{Checks, LineAnalysis, Measured, Tested, listed, row_numbers};
use crate::line::diagnostics::RunsTest;
use crate::notebook::NotebookState;
use crate::quantity::{DecimalMark, plain, plus_minus};

/// The checks that the rows allow.
pub(super) fn checks(page: &NotebookState, line: &LineAnalysis) -> Vec<Figure> {
    let checks = &line.checks;
    let mark = page.decimal_mark;
    let n = line.rows.len();
    let mut figures = Vec::new();
    figures.extend(checks.through_zero.as_ref().map(|slope| through_zero(slope, mark)));
    figures.extend(rails_alone(page, checks));
    figures.extend(checks.quadratic.as_ref().map(|term| quadratic(term, line.stated, mark)));
    figures.extend(checks.theil_sen.map(|slope| theil_sen(slope, n, mark)));
    figures.extend(checks.other_way.map(|slope| other_way(slope, mark)));
    figures.extend(decisive_row(page, checks, n));
    figures.extend(checks.runs.as_ref().map(|runs| runs_test(runs, mark)));
    figures.extend(suspects(page, checks, n));
    figures
}

fn slope_text(slope: f64, mark: DecimalMark) -> String {
    format!("{} ns/m", plain(slope, 5, mark))
}

fn measured(slope: &Measured, mark: DecimalMark) -> String {
    with_u(slope.value, slope.uncertainty, "ns/m", mark)
}

/// Δt = t₀ + b·d, and the same with the slope put in.
fn model(slope: f64, mark: DecimalMark) -> Formula {
    let line = |slope| row(vec![symbol("t_0"), op("+"), times(slope, symbol("d"))]);
    row(vec![symbol("Δt"), op("="), line(symbol("b")), op("="), line(number(slope_text(slope, mark)))])
}

fn through_zero(slope: &Measured, mark: DecimalMark) -> Figure {
    figure(
        "through_zero",
        "slope of a line forced through zero",
        "b₀",
        measured(slope, mark),
        "Only for comparison. It is right only if the arms, cables and detectors were exactly alike; otherwise the forced line puts their difference into the speed.",
    )
    .by(row(vec![
        symbol("Δt"),
        op("="),
        times(symbol("b_0"), symbol("d")),
        op("="),
        times(number(slope_text(slope.value, mark)), symbol("d")),
    ]))
    .from("Least squares as for the line, with t₀ held at zero")
}

fn rails_alone(page: &NotebookState, checks: &Checks) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let alone = checks.rails_alone.iter().map(|(rail, alone)| {
        let named = page.rails.iter().enumerate().find(|(_, one)| one.id == *rail);
        let name = named.map_or_else(String::new, |(index, rail)| rail.name_or_number(index));
        let found = figure(
            &format!("rail_alone_{rail}"),
            &format!("slope on rail {name} alone"),
            "b",
            alone.as_ref().map_or_else(|| "too few rows".to_owned(), |slope| measured(slope, mark)),
            "No splice can spoil it. If the rails alone agree with each other but not with the whole line, a splice is wrong.",
        )
        .from("Least squares as for the line, with the rows of this rail");
        match alone {
            Some(slope) => found.by(model(slope.value, mark)),
            None => found,
        }
    });
    alone.collect()
}

fn quadratic(term: &Tested, stated: bool, mark: DecimalMark) -> Figure {
    let p = p_text(term.p_value, mark);
    let twice = |size| {
        row(vec![number("2"), op("·"), probability(vec![symbol(if stated { "Z" } else { "t_ν" })], size)])
    };
    let bars = |inner| row(vec![op("|"), inner, op("|")]);
    figure(
        "quadratic",
        "quadratic term",
        "a₂",
        format!("{} (p = {p})", plus_minus(term.value, Some(term.uncertainty), "ns/m²", mark)),
        "Coefficient a₂ of d² when a quadratic term is added; zero for a straight line. The p-value is the probability of one as large by chance.",
    )
    .by(equation(
        symbol("p"),
        twice(over(bars(symbol("a_2")), symbol("u(a_2)"))),
        twice(over(
            number(plain(term.value.abs(), 3, mark) + " ns/m²"),
            number(plain(term.uncertainty, 3, mark) + " ns/m²"),
        )),
        p,
    ))
    .from(if stated {
        "Least squares as for the line, with a term in d²; Z is standard normal"
    } else {
        "Least squares as for the line, with a term in d²; t is Student’s with the degrees of freedom left"
    })
}

fn theil_sen(slope: f64, n: usize, mark: DecimalMark) -> Figure {
    let difference =
        |what: &str| row(vec![symbol(&format!("{what}_j")), op("−"), symbol(&format!("{what}_i"))]);
    let median = |rows: Formula| {
        let pairs = row(vec![number("1"), op("≤"), symbol("i"), op("<"), symbol("j"), op("≤"), rows]);
        row(vec![symbol("med"), bracket(over(difference("Δt"), difference("d"))), op(","), pairs])
    };
    figure(
        "theil_sen",
        "median slope (Theil–Sen)",
        "b",
        slope_text(slope, mark),
        "The median of the slopes of all pairs of rows: a few bad rows hardly move it.",
    )
    .by(equation(symbol("b"), median(symbol("N")), median(number(n.to_string())), slope_text(slope, mark)))
    .from("P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379")
}

fn other_way(slope: f64, mark: DecimalMark) -> Figure {
    let line = |slope| row(vec![symbol("d_0"), op("+"), over(symbol("Δt"), slope)]);
    figure(
        "other_way",
        "slope, distance on delay",
        "b",
        slope_text(slope, mark),
        "Ordinary least squares with the roles of the two changed. It lies far from the others only where the rows scatter widely.",
    )
    .by(row(vec![symbol("d"), op("="), line(symbol("b")), op("="), line(number(slope_text(slope, mark)))]))
    .from("JCGM 100:2008, H.3, with the roles changed")
}

fn decisive_row(page: &NotebookState, checks: &Checks, n: usize) -> Option<Figure> {
    let mark = page.decimal_mark;
    let (row, slope) = checks.decisive_row?;
    let found = figure(
        "decisive_row",
        &format!("slope without row {}, which moves it most", listed(&row_numbers(page, &[row]))),
        "b",
        slope_text(slope, mark),
        "If one row decides the slope, look at that row again.",
    );
    Some(
        found
            .by(model(slope, mark))
            .from(&format!("Least squares as for the line, with the other {} rows", n.saturating_sub(1))),
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
    figure(
        "runs",
        "runs test of the residuals",
        "p",
        p.clone(),
        "A run is a stretch of residuals of one sign, along the distance; there are r of them among n₊ above and n₋ below the line. The p-value is the probability of so few, or so many, runs by chance.",
    )
    .by(equation(
        symbol("p"),
        tail(symbol("r"), symbol("n_+"), symbol("n_−")),
        tail(whole(runs.runs), whole(runs.plus), whole(runs.minus)),
        p,
    ))
    .from("A. Wald and J. Wolfowitz, Ann. Math. Stat. 11 (1940) 147")
}

fn suspects(page: &NotebookState, checks: &Checks, n: usize) -> Option<Figure> {
    let named = [("Chauvenet", &checks.chauvenet), ("Peirce", &checks.peirce)];
    let pointed: Vec<String> = named
        .into_iter()
        .filter(|(_, rows)| !rows.is_empty())
        .map(|(who, rows)| format!("{who}: row {}", listed(&row_numbers(page, rows))))
        .collect();
    if pointed.is_empty() {
        return None;
    }
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
        figure(
            "suspects",
            "rows that a criterion points at",
            "",
            pointed.join("; "),
            "Advice only. A row is struck out by a person, with a reason that can be told. Chauvenet points at a residual w (in units of its standard uncertainty) of which fewer than ½ are expected among all rows (Chauvenet’s criterion); the formula is his.",
        )
        .by(row(vec![
            expected(symbol("N")),
            op("="),
            expected(number(n.to_string())),
            op("<"),
            over(number("1"), number("2")),
        ]))
        .from("W. Chauvenet, Manual of Spherical and Practical Astronomy (1863); B. Peirce, Astron. J. 2 (1852) 161"),
    )
}
