//! The result in figures and sentences.

use super::figures::{degrees_of_freedom, figure, per_cent};
use super::math::{equation, formula};
use super::types::{Figure, ResultView};
use crate::air::extrapolated;
use crate::analysis::types::not_given;
use crate::analysis::{Analysis, C0, Comparison, Origin, Speed};
use crate::message;
use crate::notebook::{Basis, NotebookState, Path};
use crate::quantity::{DecimalMark, fixed, plain, plus_minus, short_form};
use crate::words::{Message, Value};

/// What differs by no more than this in proportion differs by rounding.
const ROUNDING: f64 = 1e-12;

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
        Err(refusal) => claim(ResultView { refusal: Some(refusal.message.clone()), ..ResultView::default() }),
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
        figure("c", message!("figures-c"), "c = n_g·v", short_form(speed.c, Some(speed.u_c()), "m/s", mark))
            .means(message!("figures-c-meaning"))
            .by(equation(
                "c",
                "n_g·v",
                "#·#",
                vec![fixed(speed.group_index, -6, mark), plain(speed.v, 7, mark) + "\u{a0}m/s"],
                plain(speed.c, 7, mark) + "\u{a0}m/s",
            ))
            .from(message!("figures-c-source")),
        expanded(speed, mark),
    ];
    figures.extend(interval(speed, mark));
    figures.extend(comparison(speed, mark));
    figures.extend(second_order(analysis, speed, mark));
    figures
}

/// What 1/b adds by its curvature, where it is more than a hundredth of the relative uncertainty.
fn second_order(analysis: &Analysis, speed: &Speed, mark: DecimalMark) -> Option<Figure> {
    let line = analysis.line.as_ref().ok().filter(|_| speed.second_order > 0.01 * speed.relative)?;
    let slope = line.fit.slope;
    let u = libm::sqrt(speed.second_order) * slope.abs();
    let unit = |value: f64, digits| plain(value, digits, mark) + "\u{a0}ns/m";
    let share = format!("{}\u{a0}%", plain(speed.second_order * 100.0, 2, mark));
    let found = figure("second_order", message!("figures-second_order"), "(u(b)/b)²", share.clone())
        .means(message!("figures-second_order-meaning"))
        .by(equation("δ", "(`u(b)`/b)^2", "(#/#)^2", vec![unit(u, 3), unit(slope, 5)], share))
        .from(message!("figures-second_order-source"));
    Some(found)
}

fn speed_in_air(page: &NotebookState, analysis: &Analysis, speed: &Speed) -> Figure {
    let mark = page.decimal_mark;
    let factor = match page.path {
        Path::Detector => message!("figures-v-detector"),
        Path::Mirror => message!("figures-v-mirror"),
    };
    let value = short_form(speed.v, Some(speed.u_v()), "m/s", mark);
    let v =
        |symbol| figure("v", message!("figures-v"), symbol, &*value).means(factor).from("Δt = t₀ + f·d/v");
    let Ok(line) = &analysis.line else { return v("v = f/b") };
    let (f, slope) = (page.path.factor(), line.fit.slope);
    // κ, which corrects for the beam's angle; m/ns to m/s.
    let correction = speed.v * slope / (f * 1e9);
    let [f, slope] = [plain(f, 1, mark), plain(slope, 7, mark) + "\u{a0}ns/m"];
    let found = plain(speed.v, 7, mark) + "\u{a0}m/s";
    if (correction - 1.0).abs() < ROUNDING {
        return v("v = f/b").by(equation("v", "f/b", "#/#", vec![f, slope], found));
    }
    let numbers = vec![fixed(correction, -7, mark), f, slope];
    v("v = κ·f/b").means(message!("budget-remarks-angle")).by(equation(
        "v",
        "{κ·f}/b",
        "{#·#}/#",
        numbers,
        found,
    ))
}

fn group_index(analysis: &Analysis, speed: &Speed, mark: DecimalMark) -> Figure {
    let u = analysis.air.u_group_index;
    let index = fixed(speed.group_index, -6, mark);
    let added = plain((speed.group_index - 1.0) * 100.0, 2, mark);
    let value = if let Some(u) = u {
        message!("figures-group_index-value", index = index, percent = added, u = plain(u, 2, mark))
    } else {
        message!("figures-group_index-bare", index = index, percent = added)
    };
    let mut found = figure("group_index", message!("figures-group_index"), "n_g", value)
        .means(message!("figures-group_index-meaning"));
    if extrapolated(analysis.air.wavelength_nm) {
        found = found.means(message!("figures-group_index-extrapolated"));
    }
    found
        .by(formula("n_g = n + {σ·dn/dσ} = #", vec![fixed(speed.group_index, -6, mark)]))
        .from(message!("figures-group_index-source"))
}

fn expanded(speed: &Speed, mark: DecimalMark) -> Figure {
    let budget = &speed.budget;
    let p = per_cent(budget.probability, mark);
    let name = message!("figures-expanded");
    let none = |name| figure("expanded", name, "U", message!("figures-none"));
    let nu = degrees_of_freedom(budget.degrees_of_freedom, mark);
    match (&budget.coverage_factor, speed.expanded()) {
        (Ok(k), Some(u)) => figure(
            "expanded",
            name,
            "U = k·u",
            format!("{}\u{a0}m/s (k = {}, ν = {nu})", plain(u, 2, mark), fixed(*k, -2, mark)),
        )
        .means(message!("figures-expanded-meaning", p = p))
        .by(equation(
            "U",
            "k·u_c",
            "#·#",
            vec![fixed(*k, -2, mark), plain(speed.u_c(), 3, mark) + "\u{a0}m/s"],
            plain(u, 2, mark) + "\u{a0}m/s",
        ))
        .from("JCGM 100:2008, 6.2, G.3"),
        (Err(why), _) => none(name).means(not_given(why, mark)),
        (Ok(_), None) => none(name),
    }
}

/// c with its expanded uncertainty, m/s, of which alone ± is said (JCGM 100:2008, 7.2.2 and 7.2.4).
fn with_expanded(speed: &Speed, mark: DecimalMark) -> Option<String> {
    Some(plus_minus(speed.c, Some(speed.expanded()?), "m/s", mark))
}

fn interval(speed: &Speed, mark: DecimalMark) -> Option<Figure> {
    let value = with_expanded(speed, mark)?;
    let found = figure("interval", message!("figures-interval"), "c ± U", value)
        .means(message!("figures-expanded-meaning", p = per_cent(speed.budget.probability, mark)))
        .from("JCGM 100:2008, 7.2.4");
    Some(found)
}

fn comparison(speed: &Speed, mark: DecimalMark) -> Vec<Figure> {
    vec![in_uncertainties(speed, mark), in_expanded(speed, mark), in_per_cent(speed, mark)]
}

/// What a figure of the comparison says; a closed seal has it say that it is sealed.
fn shown(speed: &Speed, value: &dyn Fn(Comparison) -> Value) -> Value {
    speed.comparison.map_or_else(|| message!("figures-sealed").into(), value)
}

fn difference(speed: &Speed, mark: DecimalMark) -> String {
    format!("{}\u{a0}m/s", plain(speed.c - C0, 3, mark))
}

fn in_uncertainties(speed: &Speed, mark: DecimalMark) -> Figure {
    let value = shown(speed, &|known| fixed(known.z, -2, mark).into());
    let z = figure("z", message!("figures-z"), "(c − c₀)/u", value)
        .means(message!("figures-z-meaning"))
        .from(message!("figures-c0-source"));
    let Some(known) = speed.comparison else { return z };
    z.by(equation(
        "z",
        "{c − c_0}/u_c",
        "(#)/#",
        vec![difference(speed, mark), plain(speed.u_c(), 3, mark) + "\u{a0}m/s"],
        fixed(known.z, -2, mark),
    ))
}

fn in_expanded(speed: &Speed, mark: DecimalMark) -> Figure {
    let value = shown(speed, &|known| {
        known.e_n.map_or_else(|| message!("figures-no_expanded").into(), |e_n| fixed(e_n, -2, mark).into())
    });
    let e_n = figure("e_n", message!("figures-e_n"), "E_n", value)
        .means(message!("figures-e_n-meaning"))
        .from("ISO 13528:2015, 9.7");
    let found = speed.comparison.and_then(|known| known.e_n);
    let Some((found, k)) = found.zip(speed.budget.factor_at_95()) else { return e_n };
    e_n.by(equation(
        "E_n",
        "{c − c_0}/U",
        "(#)/#",
        vec![difference(speed, mark), plain(k * speed.u_c(), 3, mark) + "\u{a0}m/s"],
        fixed(found, -2, mark),
    ))
}

fn in_per_cent(speed: &Speed, mark: DecimalMark) -> Figure {
    let per_cent =
        |known: Comparison| format!("{}\u{a0}%", plain(known.relative_difference * 100.0, 2, mark));
    let value = shown(speed, &|known| per_cent(known).into());
    let relative = figure("per_cent", message!("figures-relative_difference"), "(c − c₀)/c₀", value)
        .means(message!("figures-relative_difference-meaning"))
        .from(message!("figures-c0-source"));
    let Some(known) = speed.comparison else { return relative };
    relative.by(equation(
        "δ",
        "{c − c_0}/c_0",
        "(#)/#",
        vec![difference(speed, mark), "299\u{202f}792\u{202f}458\u{a0}m/s".into()],
        per_cent(known),
    ))
}

fn sentences(page: &NotebookState, analysis: &Analysis, speed: &Speed) -> Vec<Message> {
    let mark = page.decimal_mark;
    let n = analysis.line.as_ref().map_or(0, |line| line.rows.len());
    let c = short_form(speed.c, Some(speed.u_c()), "m/s", mark);
    let result = match speed.basis {
        Basis::Stated => message!("result-from-stated", n = n, c = c),
        Basis::Scatter if speed.relative_stated.is_none() => message!("result-from-scatter", n = n, c = c),
        Basis::Scatter if speed.budget.components.iter().any(|part| part.origin == Origin::Scatter) => {
            message!("result-from-both", n = n, c = c)
        }
        Basis::Scatter => message!("result-from-limits", n = n, c = c),
    };
    let expanded = match (&speed.budget.coverage_factor, with_expanded(speed, mark)) {
        (Ok(k), Some(c)) => message!(
            "result-expanded",
            c = c,
            k = fixed(*k, -2, mark),
            p = per_cent(speed.budget.probability, mark)
        ),
        _ => message!("result-no-expanded"),
    };
    let Some(known) = speed.comparison else { return vec![message!("result-sealed"), result, expanded] };
    let apart = fixed(known.z.abs(), -1, mark);
    let lies = if speed.c < C0 {
        message!("result-below", apart = apart)
    } else {
        message!("result-above", apart = apart)
    };
    let verdict =
        speed.budget.coverage_factor.as_ref().ok().map(|k| {
            if known.z.abs() <= *k { message!("result-within") } else { message!("result-outside") }
        });
    [result, expanded, lies].into_iter().chain(verdict).collect()
}

/// Both uncertainties, where there are two to choose from.
fn choice(page: &NotebookState, analysis: &Analysis, speed: &Speed) -> Option<Message> {
    let (stated, scatter) = (speed.relative_stated?, speed.relative_scatter?);
    let is_same = (stated - scatter).abs() <= ROUNDING * stated;
    let u = |relative: f64| plain(speed.c * relative, 2, page.decimal_mark);
    let (stated, scatter) = (u(stated), u(scatter));
    let p = analysis.line.as_ref().ok().and_then(|line| line.p_value);
    Some(match p {
        _ if is_same => message!("result-choice-same", stated = stated),
        Some(p) if p < 0.05 => message!("result-choice-more", stated = stated, scatter = scatter),
        Some(p) if p > 0.95 => message!("result-choice-less", stated = stated, scatter = scatter),
        _ => message!("result-choice-fits", stated = stated, scatter = scatter),
    })
}

#[cfg(test)]
#[path = "result_test.rs"]
mod tests;
