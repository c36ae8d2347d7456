//! The result in figures and sentences.

use super::figures::{degrees_of_freedom, figure, per_cent};
use super::math::{Formula, bracket, equation, number, op, over, power, row, symbol, times};
use super::types::{Figure, ResultView};
use crate::air::extrapolated;
use crate::analysis::{Analysis, C0, Comparison, Speed};
use crate::notebook::{Basis, NotebookState, Path};
use crate::quantity::{DecimalMark, fixed, plain, plus_minus, short_form};

/// What stands where a figure would give away what a closed seal hides.
const SEALED: &str = "shown when the seal is opened";

/// The result.
pub fn result_view(page: &NotebookState, analysis: &Analysis) -> ResultView {
    let claim = |view: ResultView| ResultView {
        basis: page.claim.basis,
        reason: page.claim.reason.clone(),
        sealed: analysis.sealed,
        may_seal: page.seal.is_none(),
        ..view
    };
    match &analysis.speed {
        Err(refusal) => claim(ResultView { refusal: refusal.message.clone(), ..ResultView::default() }),
        Ok(speed) => claim(ResultView {
            short: short_form(speed.c, Some(speed.u_c()), "m/s", page.decimal_mark),
            figures: result_figures(page, analysis, speed),
            sentences: sentences(page, analysis, speed),
            choice: choice(page, analysis, speed),
            ..ResultView::default()
        }),
    }
}

fn result_figures(page: &NotebookState, analysis: &Analysis, speed: &Speed) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let mut figures = vec![
        speed_in_air(page, analysis, speed),
        group_index(analysis, speed, mark),
        figure(
            "c",
            "speed of light in vacuum",
            "c = n_g·v",
            plus_minus(speed.c, Some(speed.u_c()), "m/s", mark),
            "With its standard uncertainty, to two significant digits.",
        )
        .by(equation(
            symbol("c"),
            times(symbol("n_g"), symbol("v")),
            times(number(fixed(speed.group_index, -6, mark)), number(plain(speed.v, 7, mark) + " m/s")),
            plain(speed.c, 7, mark) + " m/s",
        ))
        .from("Rounding: JCGM 100:2008, 7.2.6"),
        figure(
            "short_form",
            "the same, short form",
            "c",
            short_form(speed.c, Some(speed.u_c()), "m/s", mark),
            "The digits in brackets are the standard uncertainty in the last places.",
        )
        .by(row(vec![
            symbol("c"),
            op("±"),
            symbol("u_c"),
            op("="),
            number(plus_minus(speed.c, Some(speed.u_c()), "m/s", mark)),
        ]))
        .from("JCGM 100:2008, 7.2.2"),
        expanded(speed, mark),
    ];
    figures.extend(comparison(speed, mark));
    if speed.second_order > 0.01 * speed.relative {
        figures.push(
            figure(
                "second_order",
                "second-order term of 1/b",
                "(u(b)/b)²",
                format!("{} %", plain(speed.second_order * 100.0, 2, mark)),
                "1/b is not a linear function of b: its expectation is larger by this fraction, which here exceeds a hundredth of the uncertainty.",
            )
            .by(second_order(analysis, speed, mark))
            .from("JCGM 100:2008, 5.1.2, note"),
        );
    }
    figures
}

fn second_order(analysis: &Analysis, speed: &Speed, mark: DecimalMark) -> Formula {
    let slope = analysis.line.as_ref().map_or(f64::NAN, |line| line.fit.slope);
    let u = libm::sqrt(speed.second_order) * slope.abs();
    let unit = |value: f64, digits| number(plain(value, digits, mark) + " ns/m");
    equation(
        symbol("δ"),
        power(bracket(over(symbol("u(b)"), symbol("b"))), "2"),
        power(bracket(over(unit(u, 3), unit(slope, 5))), "2"),
        format!("{} %", plain(speed.second_order * 100.0, 2, mark)),
    )
}

fn speed_in_air(page: &NotebookState, analysis: &Analysis, speed: &Speed) -> Figure {
    let mark = page.decimal_mark;
    let factor = match page.path {
        Path::Detector => "The path factor is 1: the detector rides on the carriage.",
        Path::Mirror => "The path factor is 2: a mirror on the carriage sends the light back.",
    };
    let v =
        figure("v", "speed in air", "v = f/b", plus_minus(speed.v, Some(speed.u_v()), "m/s", mark), factor)
            .from("Δt = t₀ + f·d/v");
    let Ok(line) = &analysis.line else { return v };
    let slope = line.fit.slope;
    v.by(equation(
        symbol("v"),
        over(symbol("f"), symbol("b")),
        over(number(plain(page.path.factor(), 1, mark)), number(plain(slope, 7, mark) + " ns/m")),
        plain(speed.v, 7, mark) + " m/s",
    ))
}

fn group_index(analysis: &Analysis, speed: &Speed, mark: DecimalMark) -> Figure {
    let u = analysis.air.u_group_index;
    let meaning = if extrapolated(analysis.air.wavelength_nm) {
        "A pulse travels at the group velocity, c over the group index; n is the phase index and σ the vacuum wavenumber. At this wavelength the small share of water vapour is extrapolated."
    } else {
        "A pulse travels at the group velocity, c over the group index; n is the phase index and σ the vacuum wavenumber."
    };
    figure(
        "group_index",
        "group index of the air",
        "n_g",
        format!(
            "{} (adds {} % to v{})",
            fixed(speed.group_index, -6, mark),
            plain((speed.group_index - 1.0) * 100.0, 2, mark),
            u.map_or_else(String::new, |u| format!("; u = {}", plain(u, 2, mark)))
        ),
        meaning,
    )
    .by(row(vec![
        symbol("n_g"),
        op("="),
        symbol("n"),
        op("+"),
        times(symbol("σ"), over(symbol("dn"), symbol("dσ"))),
        op("="),
        number(fixed(speed.group_index, -6, mark)),
    ]))
    .from("P. E. Ciddor, Appl. Opt. 35 (1996) 1566, differentiated")
}

fn expanded(speed: &Speed, mark: DecimalMark) -> Figure {
    let budget = &speed.budget;
    let p = per_cent(budget.probability, mark);
    let name = format!("expanded uncertainty at {p}");
    let nu = degrees_of_freedom(budget.degrees_of_freedom, mark);
    match (&budget.coverage_factor, speed.expanded()) {
        (Ok(k), Some(u)) => figure(
            "expanded",
            &name,
            "U = k·u",
            format!("{} m/s (k = {}, ν = {nu})", plain(u, 2, mark), fixed(*k, -2, mark)),
            &format!("Coverage interval c ± U for a coverage probability of {p}."),
        )
        .by(equation(
            symbol("U"),
            times(symbol("k"), symbol("u_c")),
            times(number(fixed(*k, -2, mark)), number(plain(speed.u_c(), 3, mark) + " m/s")),
            plain(u, 2, mark) + " m/s",
        ))
        .from("JCGM 100:2008, 6.2 and G.3"),
        (Err(why), _) => figure("expanded", &name, "U", "none".into(), &why.to_string()),
        (Ok(_), None) => figure("expanded", &name, "U", "none".into(), ""),
    }
}

fn comparison(speed: &Speed, mark: DecimalMark) -> Vec<Figure> {
    let known = speed.comparison;
    let shown = |text: &dyn Fn(Comparison) -> String| known.map_or_else(|| SEALED.to_owned(), text);
    let difference = || row(vec![symbol("c"), op("−"), symbol("c_0")]);
    let numbers = || bracket(number(format!("{} m/s", plain(speed.c - C0, 3, mark))));
    let mut z = figure(
        "z",
        "difference in standard uncertainties",
        "(c − c₀)/u",
        shown(&|known| fixed(known.z, -2, mark)),
        "c₀ = 299 792 458 m/s exactly.",
    )
    .from("SI Brochure, 9th edition, 2.2");
    let mut e_n = figure(
        "e_n",
        "difference in expanded uncertainties",
        "E_n",
        shown(&|known| known.e_n.map_or_else(|| "not available: no U".into(), |e_n| fixed(e_n, -2, mark))),
        "Between −1 and 1 the two agree.",
    )
    .from("ISO 13528");
    if let Some(known) = known {
        let u_c = || number(plain(speed.u_c(), 3, mark) + " m/s");
        z = z.by(equation(
            symbol("z"),
            over(difference(), symbol("u_c")),
            over(numbers(), u_c()),
            fixed(known.z, -2, mark),
        ));
        if let (Some(value), Some(u)) = (known.e_n, speed.expanded()) {
            e_n = e_n.by(equation(
                symbol("E_n"),
                over(difference(), symbol("U")),
                over(numbers(), number(plain(u, 3, mark) + " m/s")),
                fixed(value, -2, mark),
            ));
        }
    }
    let per_cent = |known: Comparison| format!("{} %", plain(known.relative_difference * 100.0, 2, mark));
    let mut relative = figure(
        "per_cent",
        "difference in per cent",
        "(c − c₀)/c₀",
        shown(&per_cent),
        "A percentage alone says nothing about agreement: compare it with the uncertainty.",
    )
    .from("SI Brochure, 9th edition, 2.2");
    if let Some(known) = known {
        let defined = number("299\u{2009}792\u{2009}458 m/s");
        relative = relative.by(equation(
            symbol("δ"),
            over(difference(), symbol("c_0")),
            over(numbers(), defined),
            per_cent(known),
        ));
    }
    vec![z, e_n, relative]
}

fn sentences(page: &NotebookState, analysis: &Analysis, speed: &Speed) -> Vec<String> {
    let mark = page.decimal_mark;
    let rows = analysis.line.as_ref().map_or(0, |line| line.rows.len());
    let basis = match speed.basis {
        Basis::Stated => "from the stated uncertainties",
        Basis::Scatter => "from the scatter about the line",
    };
    let expanded = match (&speed.budget.coverage_factor, speed.expanded()) {
        (Ok(k), Some(u)) => format!(
            "the expanded uncertainty is U = {} m/s (k = {}, {})",
            plain(u, 2, mark),
            fixed(*k, -2, mark),
            per_cent(speed.budget.probability, mark)
        ),
        _ => "no expanded uncertainty can be given".into(),
    };
    let result = format!(
        "From {rows} rows, the speed of light in vacuum is c = {}, with a standard uncertainty {basis}; {expanded}.",
        plus_minus(speed.c, Some(speed.u_c()), "m/s", mark)
    );
    let Some(known) = speed.comparison else {
        let sealed =
            "The result is sealed: v and c carry a hidden factor within ±8 % until the seal is opened.";
        return vec![sealed.into(), result];
    };
    let apart = fixed(known.z.abs(), -1, mark);
    let side = if speed.c < C0 { "below" } else { "above" };
    let lies = format!("the result lies {apart} u {side} the defined value, 299 792 458 m/s");
    let verdict = match known.e_n {
        None => format!("Without an expanded uncertainty: {lies}."),
        Some(e_n) if e_n.abs() <= 1.0 => {
            format!("The difference is within the expanded uncertainty: {lies}.")
        }
        Some(_) => format!(
            "The difference is larger than the expanded uncertainty: {lies}. An effect may be missing from the budget; see the notices and checks."
        ),
    };
    vec![result, verdict]
}

/// Both uncertainties, where they tell different tales.
fn choice(page: &NotebookState, analysis: &Analysis, speed: &Speed) -> String {
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
#[path = "result_test.rs"]
mod tests;
