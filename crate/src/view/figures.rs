//! The line and the result in figures and sentences.

use super::build::p_text;
use super::types::{Figure, LineView, ResultView};
use crate::air::extrapolated;
use crate::analysis::{Analysis, C0, LineAnalysis, Measured, Speed, listed, row_numbers};
use crate::notebook::{Basis, Page, Path};
use crate::quantity::{DecimalMark, fixed, plain, plus_minus, short_form};

/// The straight line.
pub fn line_view(page: &Page, analysis: &Analysis) -> LineView {
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

fn figure(id: &str, name: &str, symbol: &str, value: String, meaning: &str) -> Figure {
    Figure {
        id: id.to_owned(),
        name: name.to_owned(),
        symbol: symbol.to_owned(),
        value,
        meaning: meaning.to_owned(),
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

fn with_u(value: f64, u: Option<f64>, unit: &str, mark: DecimalMark) -> String {
    match u {
        Some(u) => plus_minus(value, Some(u), unit, mark),
        None => format!("{} {unit}", plain(value, 6, mark)),
    }
}

fn line_figures(page: &Page, line: &LineAnalysis) -> Vec<Figure> {
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
        ),
        figure(
            "intercept",
            "intercept",
            "t₀",
            with_u(fit.intercept, u.map(|u| u.intercept), "ns", mark),
            "The delay at zero distance: unequal arms, cables and detectors. Whatever shifts all distances or all delays by one amount ends up here and leaves the slope alone.",
        ),
    ];
    if let Some(u) = u {
        let correlation = u.covariance / (u.slope * u.intercept);
        figures.push(figure(
            "covariance",
            "covariance of the two",
            "cov(t₀, b)",
            format!("{} ns²/m (correlation {})", plain(u.covariance, 3, mark), fixed(correlation, -2, mark)),
            "Slope and intercept lean on each other: if one is too large, the other tends to be too small.",
        ));
    }
    figures.extend(goodness(line, mark));
    figures
}

fn goodness(line: &LineAnalysis, mark: DecimalMark) -> Vec<Figure> {
    let fit = &line.fit;
    let nu = fit.degrees_of_freedom;
    let mut figures = vec![figure(
        "degrees_of_freedom",
        "degrees of freedom",
        "ν",
        nu.to_string(),
        "Rows in the line, less the unknowns fitted.",
    )];
    if line.stated {
        figures.push(figure(
            "chi_square",
            "chi-square",
            "χ²",
            plain(fit.chi_square, 4, mark),
            "The squared residuals in units of their stated uncertainties, added up. About as large as ν if those were stated well.",
        ));
        if let Some(p) = line.p_value {
            figures.push(figure(
                "p_value",
                "probability of a larger one",
                "p",
                p_text(p, mark),
                "How often chance alone would give a larger χ². Below 0.05 the rows scatter more than stated, above 0.95 less.",
            ));
        }
        if let Some(ratio) = line.birge_ratio {
            figures.push(figure(
                "birge_ratio",
                "Birge ratio",
                "√(χ²/ν)",
                plain(ratio, 3, mark),
                "How many times larger the scatter is than what was stated (R. T. Birge, Phys. Rev. 40 (1932) 207).",
            ));
        }
    } else if let Some(s) = fit.scatter() {
        figures.push(figure(
            "residual_deviation",
            "residual standard deviation",
            "s",
            format!("{} ns", plain(s, 3, mark)),
            "The scatter of the delays about the line (JCGM 100:2008, H.3.2).",
        ));
    }
    figures
}

fn checks(page: &Page, line: &LineAnalysis) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let slope = |m: &Measured| with_u(m.value, m.uncertainty, "ns/m", mark);
    let checks = &line.checks;
    let mut figures = Vec::new();
    if let Some(zero) = &checks.through_zero {
        figures.push(figure(
            "through_zero",
            "slope of a line forced through zero",
            "b₀",
            slope(zero),
            "Only for comparison. It is right only if the arms, cables and detectors were exactly alike; otherwise the forced line puts their difference into the speed.",
        ));
    }
    for (rail, alone) in &checks.rails_alone {
        let index = page.rails.iter().position(|r| r.id == *rail).unwrap_or(0);
        let name = page.rails.get(index).map_or_else(String::new, |rail| rail.name_or_number(index));
        let value = alone.as_ref().map_or_else(|| "too few rows".to_owned(), slope);
        figures.push(figure(
            &format!("rail_alone_{rail}"),
            &format!("slope on rail {name} alone"),
            "b",
            value,
            "No splice can spoil it. If the rails alone agree with each other but not with the whole line, a splice is wrong.",
        ));
    }
    if let Some(term) = &checks.quadratic {
        figures.push(figure(
            "quadratic",
            "quadratic term",
            "a₂",
            format!(
                "{} (p = {})",
                plus_minus(term.value, Some(term.uncertainty), "ns/m²", mark),
                p_text(term.p_value, mark)
            ),
            "Zero for a straight line.",
        ));
    }
    if let Some(b) = checks.theil_sen {
        figures.push(figure(
            "theil_sen",
            "median slope (Theil–Sen)",
            "b",
            format!("{} ns/m", plain(b, 5, mark)),
            "The median of the slopes of all pairs of rows: a few bad rows hardly move it (P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379).",
        ));
    }
    if let Some(b) = checks.other_way {
        figures.push(figure(
            "other_way",
            "slope, distance on delay",
            "b",
            format!("{} ns/m", plain(b, 5, mark)),
            "Ordinary least squares with the roles of the two changed. It lies far from the others only where the rows scatter widely.",
        ));
    }
    if let Some((row, b)) = checks.decisive_row {
        let number = row_numbers(page, &[row]);
        figures.push(figure(
            "decisive_row",
            &format!("slope without row {}, which moves it most", listed(&number)),
            "b",
            format!("{} ns/m", plain(b, 5, mark)),
            "If one row decides the slope, look at that row again.",
        ));
    }
    if let Some(p) = checks.runs_p {
        figures.push(figure(
            "runs",
            "runs test of the residuals",
            "p",
            p_text(p, mark),
            "How often chance would mix the signs of the residuals no better (A. Wald and J. Wolfowitz, Ann. Math. Stat. 11 (1940) 147).",
        ));
    }
    let suspects: Vec<String> = [("Chauvenet", &checks.chauvenet), ("Peirce", &checks.peirce)]
        .into_iter()
        .filter(|(_, rows)| !rows.is_empty())
        .map(|(who, rows)| {
            let numbers = row_numbers(page, rows);
            format!("{who}: row {}", listed(&numbers))
        })
        .collect();
    if !suspects.is_empty() {
        figures.push(figure(
            "suspects",
            "rows that a criterion points at",
            "",
            suspects.join("; "),
            "Advice only. A row is struck out by a person, with a reason that can be told.",
        ));
    }
    figures
}

fn summary(page: &Page, line: &LineAnalysis) -> String {
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

fn residual_summary(page: &Page, line: &LineAnalysis) -> String {
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

/// The result.
pub fn result_view(page: &Page, analysis: &Analysis) -> ResultView {
    let claim =
        |view: ResultView| ResultView { basis: page.claim.basis, reason: page.claim.reason.clone(), ..view };
    match &analysis.speed {
        Err(refusal) => claim(ResultView { refusal: refusal.message.clone(), ..ResultView::default() }),
        Ok(speed) => claim(ResultView {
            short: short_form(speed.c, Some(speed.u_c()), "m/s", page.decimal_mark),
            figures: result_figures(page, speed, analysis.air.wavelength_nm),
            sentences: sentences(page, analysis, speed),
            choice: choice(page, analysis, speed),
            ..ResultView::default()
        }),
    }
}

fn result_figures(page: &Page, speed: &Speed, wavelength_nm: f64) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let factor = match page.path {
        Path::Detector => "The path factor is 1: the detector rides on the carriage.",
        Path::Mirror => "The path factor is 2: a mirror on the carriage sends the light back.",
    };
    let of_air = if extrapolated(wavelength_nm) {
        "A pulse travels at the group velocity c/n_g (P. E. Ciddor, Appl. Opt. 35 (1996) 1566, differentiated). At this wavelength the small share of water vapour is extrapolated."
    } else {
        "A pulse travels at the group velocity c/n_g (P. E. Ciddor, Appl. Opt. 35 (1996) 1566, differentiated)."
    };
    let nu = speed.degrees_of_freedom.map_or_else(|| "many".to_owned(), |nu| nu.to_string());
    let mut figures = vec![
        figure("v", "speed in air", "v = f/b", plus_minus(speed.v, Some(speed.u_v()), "m/s", mark), factor),
        figure(
            "group_index",
            "group index of the air",
            "n_g",
            format!(
                "{} (adds {} %)",
                fixed(speed.group_index, -6, mark),
                plain((speed.group_index - 1.0) * 100.0, 2, mark)
            ),
            of_air,
        ),
        figure(
            "c",
            "speed of light in vacuum",
            "c = n_g·v",
            plus_minus(speed.c, Some(speed.u_c()), "m/s", mark),
            "With its standard uncertainty, to two significant digits (JCGM 100:2008, 7.2.6).",
        ),
        figure(
            "short_form",
            "the same, short form",
            "c",
            short_form(speed.c, Some(speed.u_c()), "m/s", mark),
            "The digits in brackets are the standard uncertainty in the last places (JCGM 100:2008, 7.2.2).",
        ),
        figure(
            "expanded",
            "expanded uncertainty at 95 %",
            "U = k·u",
            format!(
                "{} m/s (k = {}, ν = {nu})",
                plain(speed.expanded(), 2, mark),
                fixed(speed.coverage_factor, -2, mark)
            ),
            "About 95 of 100 such intervals hold the true value (JCGM 100:2008, 6.2 and G.3).",
        ),
    ];
    figures.extend(comparison(speed, mark));
    figures
}

fn comparison(speed: &Speed, mark: DecimalMark) -> Vec<Figure> {
    let mut figures = vec![
        figure(
            "z",
            "difference in standard uncertainties",
            "(c − c₀)/u",
            fixed(speed.z, -2, mark),
            "c₀ = 299 792 458 m/s exactly (SI Brochure, 9th edition).",
        ),
        figure(
            "e_n",
            "difference in expanded uncertainties",
            "E_n",
            fixed(speed.e_n, -2, mark),
            "Between −1 and 1 the two agree (ISO 13528).",
        ),
        figure(
            "per_cent",
            "difference in per cent",
            "(c − c₀)/c₀",
            format!("{} %", plain(speed.relative_difference * 100.0, 2, mark)),
            "A percentage alone says nothing about agreement: compare it with the uncertainty.",
        ),
    ];
    if speed.second_order > 0.01 * speed.relative {
        figures.push(figure(
            "second_order",
            "second-order term of 1/b",
            "(u(b)/b)²",
            format!("{} %", plain(speed.second_order * 100.0, 2, mark)),
            "1/b is bent: in the mean it comes out too large by this fraction. It exceeds a hundredth of the uncertainty here (JCGM 100:2008, 5.1.2, note).",
        ));
    }
    figures
}

fn sentences(page: &Page, analysis: &Analysis, speed: &Speed) -> Vec<String> {
    let mark = page.decimal_mark;
    let rows = analysis.line.as_ref().map_or(0, |line| line.rows.len());
    let basis = match speed.basis {
        Basis::Stated => "from the stated uncertainties",
        Basis::Scatter => "from the scatter about the line",
    };
    let mut sentences = vec![format!(
        "From {rows} rows, the speed of light in vacuum is c = {}, with a standard uncertainty {basis}; the expanded uncertainty is U = {} m/s (k = {}, 95 %).",
        plus_minus(speed.c, Some(speed.u_c()), "m/s", mark),
        plain(speed.expanded(), 2, mark),
        fixed(speed.coverage_factor, -2, mark)
    )];
    let apart = fixed(speed.z.abs(), -1, mark);
    let side = if speed.c < C0 { "below" } else { "above" };
    let distance = format!(
        "the defined value, 299 792 458 m/s: the result lies {apart} standard uncertainties {side} it"
    );
    sentences.push(if speed.e_n.abs() <= 1.0 {
        format!("This agrees with {distance}, within the expanded uncertainty.")
    } else {
        format!("This does not agree with {distance}, outside the expanded uncertainty. Something is at work that the uncertainty does not hold yet; the notices and the checks of the line say where to look.")
    });
    sentences
}

/// Both uncertainties, where they tell different tales.
fn choice(page: &Page, analysis: &Analysis, speed: &Speed) -> String {
    let mark = page.decimal_mark;
    let (Some(stated), Some(scatter)) = (speed.relative_stated, speed.relative_scatter) else {
        return String::new();
    };
    let p = analysis.line.as_ref().ok().and_then(|line| line.p_value);
    let tale = match p {
        Some(p) if p < 0.05 => "The rows scatter more than was stated.",
        Some(p) if p > 0.95 => "The rows scatter less than was stated.",
        _ => "The scatter fits what was stated.",
    };
    format!(
        "{tale} As stated, u(c) = {} m/s; from the scatter, u(c) = {} m/s. Which of the two is claimed, and why?",
        plain(speed.c * stated, 2, mark),
        plain(speed.c * scatter, 2, mark)
    )
}

#[cfg(test)]
#[path = "figures_test.rs"]
mod tests;
