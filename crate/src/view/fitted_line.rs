//! The line in figures and sentences.

use super::checks::checks;
use super::figures::{figure, p_text, probability, with_u};
use super::math::{Formula, bracket, equation, number, op, over, power, root, row, symbol, times};
use super::types::{Figure, LineView};
use crate::analysis::{Analysis, LineAnalysis, listed, row_numbers};
use crate::notebook::NotebookState;
use crate::quantity::{DecimalMark, fixed, plain};

/// The straight line.
pub fn line_view(page: &NotebookState, analysis: &Analysis) -> LineView {
    match &analysis.line {
        Err(refusal) => LineView { refusal: refusal.message.clone(), ..LineView::default() },
        Ok(line) => LineView {
            refusal: String::new(),
            method: method(line),
            figures: line_figures(page, line),
            checks: checks(page, line),
            summary: summary(page, line),
            residual_summary: residual_summary(page, line),
        },
    }
}

fn method(line: &LineAnalysis) -> String {
    let shared = !line.shared.is_empty();
    let both = line.u_distance.iter().any(|u| *u > 0.0);
    let how = match (line.stated, both, shared) {
        (false, ..) => {
            "Ordinary least squares: nothing was stated, so the uncertainties come from the scatter (JCGM 100:2008, H.3)."
        }
        (true, false, false) => {
            "Weighted least squares with the stated uncertainties of the delays (ISO/TS 28037:2010, clause 6)."
        }
        (true, true, false) => {
            "Least squares with stated uncertainties in distance and delay (ISO/TS 28037:2010, clause 7)."
        }
        (true, _, true) => {
            "Least squares with uncertainties in distance and delay, and with the errors that rows share (splices, scales, time bases) in the covariance (ISO/TS 28037:2010, clauses 9 and 10)."
        }
    };
    format!("{how} The delay at zero distance, t₀, is fitted and never taken as zero.")
}

fn line_figures(page: &NotebookState, line: &LineAnalysis) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let fit = &line.fit;
    let u = fit.uncertainty;
    let mut figures = vec![
        figure(
            "slope",
            "slope",
            "b",
            with_u(fit.slope, u.map(|u| u.slope), "ns/m", mark),
            "How much later the edge comes for each metre. The speed is the path factor divided by it. Anything that stretches all distances or all delays changes it by the same fraction.",
        )
        .by(model(fit.intercept, fit.slope, mark))
        .from("Least squares: ISO/TS 28037:2010"),
        figure(
            "intercept",
            "intercept",
            "t₀",
            with_u(fit.intercept, u.map(|u| u.intercept), "ns", mark),
            "The delay at zero distance: unequal arms, cables and detectors. Whatever shifts all distances or all delays by one amount ends up here and leaves the slope alone.",
        )
        .by(model(fit.intercept, fit.slope, mark))
        .from("Least squares: ISO/TS 28037:2010"),
    ];
    if let Some(u) = u {
        let correlation = u.covariance / (u.slope * u.intercept);
        figures.push(figure(
            "covariance",
            "covariance of the two",
            "cov(t₀, b)",
            format!("{} ns²/m (correlation {})", plain(u.covariance, 3, mark), fixed(correlation, -2, mark)),
            "The estimates of slope and intercept are correlated: if one is too large, the other tends to be too small.",
        )
        .by(equation(
            symbol("r"),
            over(symbol("cov"), times(symbol("u_t₀"), symbol("u_b"))),
            over(
                number(plain(u.covariance, 3, mark)),
                times(number(plain(u.intercept, 3, mark)), number(plain(u.slope, 3, mark))),
            ),
            fixed(correlation, -2, mark),
        ))
        .from("JCGM 100:2008, 5.2.2"));
    }
    figures.extend(goodness(line, mark));
    figures
}

/// The line with its numbers put in.
fn model(intercept: f64, slope: f64, mark: DecimalMark) -> Formula {
    let joined = |a, b| row(vec![a, op("+"), times(b, symbol("d"))]);
    row(vec![
        symbol("Δt"),
        op("="),
        joined(symbol("t₀"), symbol("b")),
        op("="),
        joined(number(plain(intercept, 5, mark) + " ns"), number(plain(slope, 6, mark) + " ns/m")),
    ])
}

fn goodness(line: &LineAnalysis, mark: DecimalMark) -> Vec<Figure> {
    let nu = line.fit.degrees_of_freedom;
    let mut figures = vec![degrees_of_freedom(line.rows.len(), nu)];
    if line.stated {
        let chi = line.fit.chi_square;
        figures.push(chi_square(chi, mark));
        figures.extend(line.p_value.map(|p| p_value(p, chi, nu, mark)));
        figures.extend(line.birge_ratio.map(|ratio| birge_ratio(ratio, chi, nu, mark)));
    } else {
        figures.extend(line.fit.scatter().map(|s| residual_deviation(s, line.fit.chi_square, nu, mark)));
    }
    figures
}

fn degrees_of_freedom(n: usize, nu: usize) -> Figure {
    figure(
        "degrees_of_freedom",
        "degrees of freedom",
        "ν",
        nu.to_string(),
        "Rows in the line, less the unknowns fitted.",
    )
    .by(equation(
        symbol("ν"),
        row(vec![symbol("N"), op("−"), symbol("p")]),
        row(vec![number(n.to_string()), op("−"), number((n - nu).to_string())]),
        nu.to_string(),
    ))
    .from("JCGM 100:2008, G.3.3")
}

fn chi_square(chi: f64, mark: DecimalMark) -> Figure {
    figure(
            "chi_square",
            "chi-square",
            "χ²",
            plain(chi, 4, mark),
            "The squared residuals in units of their stated uncertainties, added up. About as large as ν if those were stated well.",
        )
        .by(row(vec![
            power(symbol("χ"), "2"),
            op("="),
            row(vec![power(symbol("r"), "T"), power(symbol("V"), "−1"), symbol("r")]),
            op("="),
            number(plain(chi, 4, mark)),
        ]))
        .from("ISO/TS 28037:2010, 10.3; r are the residuals, V is their covariance")
}

fn p_value(p: f64, chi: f64, nu: usize, mark: DecimalMark) -> Figure {
    figure(
                "p_value",
                "p-value of χ²",
                "p",
                p_text(p, mark),
                "How often chance alone would give a larger χ². Below 0.05 the rows scatter more than stated, above 0.95 less.",
            )
            .by(equation(
                symbol("p"),
                probability(vec![power(symbol("χ"), "2"), bracket(symbol("ν"))], symbol("χ²")),
                probability(
                    vec![power(symbol("χ"), "2"), bracket(number(nu.to_string()))],
                    number(plain(chi, 4, mark)),
                ),
                p_text(p, mark),
            ))
            .from("ISO/TS 28037:2010, 6.3; the tail of the chi-square distribution with ν degrees of freedom")
}

fn birge_ratio(ratio: f64, chi: f64, nu: usize, mark: DecimalMark) -> Figure {
    figure(
        "birge_ratio",
        "Birge ratio",
        "√(χ²/ν)",
        plain(ratio, 3, mark),
        "How many times larger the scatter is than what was stated.",
    )
    .by(equation(
        symbol("R"),
        root(over(power(symbol("χ"), "2"), symbol("ν"))),
        root(over(number(plain(chi, 4, mark)), number(nu.to_string()))),
        plain(ratio, 3, mark),
    ))
    .from("R. T. Birge, Phys. Rev. 40 (1932) 207")
}

fn residual_deviation(s: f64, chi: f64, nu: usize, mark: DecimalMark) -> Figure {
    figure(
        "residual_deviation",
        "residual standard deviation",
        "s",
        format!("{} ns", plain(s, 3, mark)),
        "The scatter of the delays about the line.",
    )
    .by(equation(
        symbol("s"),
        root(over(row(vec![op("Σ"), power(symbol("r"), "2")]), symbol("ν"))),
        root(over(number(plain(chi, 4, mark) + " ns²"), number(nu.to_string()))),
        plain(s, 3, mark) + " ns",
    ))
    .from("JCGM 100:2008, H.3.2")
}

fn summary(page: &NotebookState, line: &LineAnalysis) -> String {
    let mark = page.decimal_mark;
    let range = |values: &[f64]| {
        let (low, high) = values
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(*v), high.max(*v)));
        format!("from {} to {}", plain(low, 4, mark), plain(high, 4, mark))
    };
    let sense = if line.fit.slope > 0.0 { "rises" } else { "falls" };
    format!(
        "{} rows; distance {} m, delay {} ns; the line {sense} by {} ns for each metre and meets zero distance at {} ns.",
        line.rows.len(),
        range(&line.distance),
        range(&line.delay),
        plain(line.fit.slope.abs(), 4, mark),
        plain(line.fit.intercept, 4, mark)
    )
}

fn residual_summary(page: &NotebookState, line: &LineAnalysis) -> String {
    let known =
        line.rows.iter().zip(&line.fit.rows).filter_map(|(row, fit)| fit.normalised.map(|w| (*row, w)));
    let largest = known.clone().max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()));
    let Some((row, w)) = largest else {
        return "No row is left over to show a residual.".to_owned();
    };
    let within = known.clone().filter(|(_, w)| w.abs() <= 2.0).count();
    let number = row_numbers(page, &[row]);
    format!(
        "{within} of {} residuals lie within two standard uncertainties; the largest is {} at row {}.",
        known.count(),
        fixed(w, -1, page.decimal_mark),
        listed(&number)
    )
}
