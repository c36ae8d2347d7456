//! The line in figures and sentences.

use super::checks::checks;
use super::figures::{figure, with_u};
use super::math::{Formula, equation, formula};
use super::types::{Figure, LineView};
use crate::analysis::{Analysis, LineAnalysis, Origin};
use crate::message;
use crate::notebook::NotebookState;
use crate::quantity::{DecimalMark, fixed, p_text, plain};
use crate::words::Message;

/// The straight line.
pub fn line_view(page: &NotebookState, analysis: &Analysis) -> LineView {
    match &analysis.line {
        Err(refusal) => LineView { refusal: Some(refusal.message.clone()), ..LineView::default() },
        Ok(line) => LineView {
            refusal: None,
            method: Some(method(line)),
            figures: line_figures(page, line),
            checks: checks(page, line),
            summary: Some(summary(page, line)),
            residual_summary: Some(residual_summary(page, line)),
        },
    }
}

fn method(line: &LineAnalysis) -> Message {
    let stated_together = line.parts.iter().any(|part| part.origin == Origin::Matrices);
    let shared = stated_together || !line.shared.is_empty();
    let some = |all: &[f64]| all.iter().any(|u| *u > 0.0);
    let how = match (some(&line.u_distance), some(&line.u_delay)) {
        _ if !line.stated => message!("line-method-ordinary"),
        _ if shared => message!("line-method-shared"),
        (false, _) => message!("line-method-weighted"),
        (true, false) => message!("line-method-distances"),
        (true, true) => message!("line-method-both"),
    };
    message!("line-method", how = how)
}

fn line_figures(page: &NotebookState, line: &LineAnalysis) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let fit = &line.fit;
    let u = fit.uncertainty;
    let mut figures = vec![
        figure("slope", message!("figures-slope"), "b", with_u(fit.slope, u.map(|u| u.slope), "ns/m", mark))
            .means(message!("figures-slope-meaning"))
            .by(model(fit.intercept, fit.slope, mark))
            .from(message!("figures-line-source")),
        figure(
            "intercept",
            message!("figures-intercept"),
            "t₀",
            with_u(fit.intercept, u.map(|u| u.intercept), "ns", mark),
        )
        .means(message!("figures-intercept-meaning"))
        .by(model(fit.intercept, fit.slope, mark))
        .from(message!("figures-line-source")),
    ];
    if let Some(u) = u {
        let correlation = u.covariance / (u.slope * u.intercept);
        let r = fixed(correlation, -2, mark);
        let value =
            message!("figures-covariance-value", covariance = plain(u.covariance, 3, mark), r = r.clone());
        figures.push(
            figure("covariance", message!("figures-covariance"), "cov(t₀, b)", value)
                .means(if correlation < 0.0 {
                    message!("figures-covariance-opposite")
                } else {
                    message!("figures-covariance-alike")
                })
                .by(equation(
                    "r",
                    "cov/{u_t₀·u_b}",
                    "#/{#·#}",
                    [u.covariance, u.intercept, u.slope].map(|found| plain(found, 3, mark)).into(),
                    r,
                ))
                .from("JCGM 100:2008, 5.2.2"),
        );
    }
    figures.extend(goodness(line, mark));
    figures
}

/// The line with its numbers put in.
fn model(intercept: f64, slope: f64, mark: DecimalMark) -> Formula {
    formula(
        "Δt = {t₀ + {b·d}} = {# + {#·d}}",
        vec![plain(intercept, 5, mark) + " ns", plain(slope, 6, mark) + " ns/m"],
    )
}

fn goodness(line: &LineAnalysis, mark: DecimalMark) -> Vec<Figure> {
    let nu = line.fit.degrees_of_freedom;
    let mut figures = vec![degrees_of_freedom(line.rows.len(), nu)];
    if line.stated {
        let chi = line.fit.chi_square;
        figures.push(chi_square(chi, mark));
        figures.extend(line.p_value.map(|p| match line.weights_degrees {
            Some(below) => p_value_of_few(p, chi, (nu, below), mark),
            None => p_value(p, chi, nu, mark),
        }));
        figures.extend(line.birge_ratio.map(|ratio| birge_ratio(ratio, chi, nu, mark)));
    } else {
        figures.extend(line.fit.scatter().map(|s| residual_deviation(s, line.fit.chi_square, nu, mark)));
    }
    figures
}

fn degrees_of_freedom(n: usize, nu: usize) -> Figure {
    figure("degrees_of_freedom", message!("figures-degrees_of_freedom"), "ν", nu.to_string())
        .means(message!("figures-degrees_of_freedom-meaning"))
        .by(equation("ν", "N − p", "# − #", vec![n.to_string(), (n - nu).to_string()], nu.to_string()))
        .from("JCGM 100:2008, G.3.3")
}

fn chi_square(chi: f64, mark: DecimalMark) -> Figure {
    figure("chi_square", message!("figures-chi_square"), "χ²", plain(chi, 4, mark))
        .means(message!("figures-chi_square-meaning"))
        .by(formula("χ^2 = {r^T V^`−1` r} = #", vec![plain(chi, 4, mark)]))
        .from(message!("figures-chi_square-source"))
}

fn p_figure(p: f64, mark: DecimalMark) -> Figure {
    let bound = |p| fixed(p, -2, mark);
    figure("p_value", message!("figures-p_value"), "p", p_text(p, mark)).means(message!(
        "figures-p_value-meaning",
        low = bound(0.05),
        high = bound(0.95)
    ))
}

/// The p-value where some uncertainties come from few repeats: ν of the line, and ν₂ of what was stated.
fn p_value_of_few(p: f64, chi: f64, (nu, below): (usize, f64), mark: DecimalMark) -> Figure {
    let (nu, below) = (nu.to_string(), plain(below, 3, mark));
    p_figure(p, mark)
        .means(message!("figures-p_value-few", below = below.clone()))
        .by(equation(
            "p",
            "P(F (ν, ν_2) ≥ χ^2/ν)",
            "P(F (#, #) ≥ #/#)",
            vec![nu.clone(), below, plain(chi, 4, mark), nu],
            p_text(p, mark),
        ))
        .from(message!("figures-p_value-few-source"))
}

fn p_value(p: f64, chi: f64, nu: usize, mark: DecimalMark) -> Figure {
    p_figure(p, mark)
        .by(equation(
            "p",
            "P(χ^2 (ν) ≥ χ²)",
            "P(χ^2 (#) ≥ #)",
            vec![nu.to_string(), plain(chi, 4, mark)],
            p_text(p, mark),
        ))
        .from(message!("figures-p_value-source"))
}

fn birge_ratio(ratio: f64, chi: f64, nu: usize, mark: DecimalMark) -> Figure {
    figure("birge_ratio", message!("figures-birge_ratio"), "√(χ²/ν)", plain(ratio, 3, mark))
        .means(message!("figures-birge_ratio-meaning"))
        .by(equation(
            "R",
            "√{χ^2/ν}",
            "√{#/#}",
            vec![plain(chi, 4, mark), nu.to_string()],
            plain(ratio, 3, mark),
        ))
        .from("R. T. Birge, Phys. Rev. 40 (1932) 207")
}

fn residual_deviation(s: f64, chi: f64, nu: usize, mark: DecimalMark) -> Figure {
    figure("residual_deviation", message!("figures-scatter"), "s", format!("{}\u{a0}ns", plain(s, 3, mark)))
        .means(message!("figures-scatter-meaning"))
        .by(equation(
            "s",
            "√{{Σ r^2}/ν}",
            "√{#/#}",
            vec![plain(chi, 4, mark) + " ns²", nu.to_string()],
            plain(s, 3, mark) + " ns",
        ))
        .from("JCGM 100:2008, H.3.2")
}

fn summary(page: &NotebookState, line: &LineAnalysis) -> Message {
    let mark = page.decimal_mark;
    let ends = |values: &[f64]| {
        let (low, high) = values
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(*v), high.max(*v)));
        (plain(low, 4, mark), plain(high, 4, mark))
    };
    let (near, far) = ends(&line.distance);
    let (least, most) = ends(&line.delay);
    let course = if line.fit.slope > 0.0 {
        message!("line-rises", slope = plain(line.fit.slope, 4, mark))
    } else {
        message!("line-falls", slope = plain(-line.fit.slope, 4, mark))
    };
    message!(
        "line-summary",
        n = line.rows.len(),
        near = near,
        far = far,
        least = least,
        most = most,
        course = course,
        intercept = plain(line.fit.intercept, 4, mark)
    )
}

fn residual_summary(page: &NotebookState, line: &LineAnalysis) -> Message {
    let known =
        line.rows.iter().zip(&line.fit.rows).filter_map(|(row, fit)| fit.normalised.map(|w| (*row, w)));
    let largest = known.clone().max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()));
    let Some((row, w)) = largest else { return message!("line-no-residuals") };
    let within = known.clone().filter(|(_, w)| w.abs() <= 2.0).count();
    message!(
        "line-residual-summary",
        within = within,
        n = known.count(),
        largest = fixed(w, -1, page.decimal_mark),
        row = page.row_numbers(&[row])
    )
}

#[cfg(test)]
#[path = "fitted_line_test.rs"]
mod tests;
