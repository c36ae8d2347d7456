//! The uncertainty budget in words and digits.

use super::figures::{degrees_of_freedom, figure, per_cent};
use super::math::{Formula, equation, number, op, over, power, root, row, symbol};
use super::types::{BudgetView, ComponentView, Figure};
use crate::analysis::{Analysis, Budget, BudgetComponent, Clock, Entry, Origin, Quantity, Speed};
use crate::notebook::{ActsOn, Effect, ErrorShape, NotebookState, RailId, Scope, SharedError};
use crate::quantity::{DecimalMark, Unit, fixed, in_unit, plain};

/// The budget of c.
pub fn budget_view(page: &NotebookState, analysis: &Analysis) -> BudgetView {
    match &analysis.speed {
        Err(refusal) => BudgetView { refusal: refusal.message.clone(), ..BudgetView::default() },
        Ok(speed) => {
            let components = ordered(&speed.budget);
            BudgetView {
                refusal: String::new(),
                components: components.iter().map(|part| component(page, speed, part)).collect(),
                figures: budget_figures(page, speed),
                summary: summary(page, speed, components.first().copied()),
            }
        }
    }
}

/// The components in the order in which they are shown: the largest first.
pub fn ordered(budget: &Budget) -> Vec<&BudgetComponent> {
    let mut components: Vec<&BudgetComponent> = budget.components.iter().collect();
    // Stable, so that equal shares keep the order of the apparatus.
    components.sort_by(|a, b| b.share.total_cmp(&a.share));
    components
}

fn component(page: &NotebookState, speed: &Speed, part: &BudgetComponent) -> ComponentView {
    let mark = page.decimal_mark;
    let contribution = speed.c * part.relative;
    let sensitivity = part.u.filter(|u| *u > 0.0 && part.relative > 0.0).map(|u| contribution / u);
    ComponentView {
        id: part.origin.id(),
        name: name(page, &part.origin),
        acts_on: acts_on(page, &part.origin),
        u: part.u.map_or_else(|| "—".into(), |u| with_unit(u, part.quantity, mark)),
        shape: shape(part.shape).into(),
        degrees_of_freedom: degrees_of_freedom(part.degrees_of_freedom, mark),
        sensitivity: sensitivity.map_or_else(|| "0".into(), |c| sensitivity_text(c, part.quantity, mark)),
        contribution: if contribution > 0.0 {
            format!("{} m/s", plain(contribution, 2, mark))
        } else {
            "0".into()
        },
        bar: format!("{}%", fixed(100.0 * part.share, -2, DecimalMark::Point)),
        share_text: share(part.share, mark),
        remark: remark(part).into(),
    }
}

fn share(share: f64, mark: DecimalMark) -> String {
    match share * 100.0 {
        0.0 => "0 %".into(),
        tiny if tiny < 0.05 => format!("below {} %", fixed(0.1, -1, mark)),
        per_cent => format!("{} %", fixed(per_cent, -1, mark)),
    }
}

fn rail(page: &NotebookState, id: RailId) -> String {
    let found = page.rails.iter().enumerate().find(|(_, rail)| rail.id == id);
    found.map_or_else(
        || "a removed rail".into(),
        |(index, rail)| format!("rail {}", rail.name_or_number(index)),
    )
}

fn stated(page: &NotebookState, id: u32) -> Option<&SharedError> {
    page.shared.iter().find(|shared| shared.id == id)
}

/// What a component is called.
pub fn name(page: &NotebookState, origin: &Origin) -> String {
    let first = page.rails.first().map(|rail| rail.id);
    match origin {
        Origin::Splice { rail: id } if Some(*id) == first => {
            format!("position of the splitter mark, {}", rail(page, *id))
        }
        Origin::Splice { rail: id } => format!("splice of {}", rail(page, *id)),
        Origin::RulerScale { rail: id } => format!("ruler’s scale, {}", rail(page, *id)),
        Origin::TimeBase { clock: Clock::Recorder } => "time base of the recorder".into(),
        Origin::TimeBase { clock: Clock::Screen(time) } => {
            format!("time base at {} per division", in_unit(*time, Unit::NANOSECOND, page.decimal_mark))
        }
        Origin::Grid { .. } => "corners of the grid on pictures".into(),
        Origin::Stated { shared } => match stated(page, *shared) {
            Some(shared) if !shared.name.trim().is_empty() => shared.name.trim().to_owned(),
            _ => "unnamed component".into(),
        },
        Origin::RailReadings => "reading the rulers".into(),
        Origin::Distances => "distances given".into(),
        Origin::ScreenLimit => "reading the screen".into(),
        Origin::ScreenScatter => "scatter of repeats on the screen".into(),
        Origin::PictureMarks => "marking edges on pictures".into(),
        Origin::Traces => "noise of the traces".into(),
        Origin::Delays => "delays given".into(),
        Origin::Matrices => "stated covariance, with all else in the fit".into(),
        Origin::Scatter => "scatter about the line".into(),
        Origin::BeamAngle => "angle of the beam".into(),
        Origin::Air => "index of the air".into(),
        Origin::ChannelSkew => "skew between the channels".into(),
    }
}

fn acts_on(page: &NotebookState, origin: &Origin) -> String {
    match origin {
        Origin::Splice { rail: id } => format!("distances on {} and behind it", rail(page, *id)),
        Origin::RulerScale { rail: id } => format!("distances on {}", rail(page, *id)),
        Origin::TimeBase { .. } => "delays at that setting".into(),
        Origin::Stated { shared } => {
            stated(page, *shared).map_or_else(String::new, |shared| of_stated(page, shared))
        }
        Origin::RailReadings | Origin::Distances => "each distance".into(),
        Origin::ScreenLimit
        | Origin::ScreenScatter
        | Origin::PictureMarks
        | Origin::Traces
        | Origin::Delays => "each delay".into(),
        Origin::Grid { .. } => "delays read against that grid".into(),
        Origin::Matrices => "distances and delays".into(),
        Origin::Scatter => "the slope".into(),
        Origin::BeamAngle => "all distances".into(),
        Origin::Air => "c only".into(),
        Origin::ChannelSkew => "all delays".into(),
    }
}

fn of_stated(page: &NotebookState, shared: &SharedError) -> String {
    let what = match shared.acts_on {
        ActsOn::Distances => "distances",
        ActsOn::Delays => "delays",
    };
    let rows = match &shared.rows {
        Scope::All => format!("all {what}"),
        Scope::Rail(id) => format!("{what} on {}", rail(page, *id)),
        Scope::TimeBase(text) => format!("{what} at {} ns per division", text.trim()),
        Scope::Rows(rows) => format!("{what} of {} rows", rows.len()),
    };
    match shared.effect {
        Effect::Offset => format!("{rows}, alike"),
        Effect::Scale => format!("{rows}, common scale factor"),
        Effect::Noise => format!("{rows}, independent for each row"),
    }
}

fn shape(shape: ErrorShape) -> &'static str {
    match shape {
        ErrorShape::Normal => "normal",
        ErrorShape::Rectangular => "rectangular",
        ErrorShape::Triangular => "triangular",
        ErrorShape::Arcsine => "arcsine",
        ErrorShape::Student => "Student’s t",
    }
}

/// An uncertainty in the unit that suits its size.
pub fn with_unit(u: f64, quantity: Quantity, mark: DecimalMark) -> String {
    let in_unit = |unit: Unit| format!("{} {}", plain(unit.from_base(u), 2, mark), unit.symbol());
    match quantity {
        Quantity::Length => in_unit(Unit::MILLIMETRE),
        Quantity::Time => in_unit(Unit::NANOSECOND),
        Quantity::Ratio if u < 1e-4 => in_unit(Unit::PPM),
        Quantity::Ratio => in_unit(Unit::PERCENT),
        Quantity::Angle => in_unit(Unit::MILLIRADIAN),
        Quantity::Pixel => in_unit(Unit::PIXEL),
        Quantity::Slope => format!("{} ns/m", plain(u, 2, mark)),
    }
}

/// Change of c for one unit of an error, in the unit in which the error is shown.
fn sensitivity_text(c: f64, quantity: Quantity, mark: DecimalMark) -> String {
    let per = |unit: Unit| format!("{} m/s per {}", plain(c * unit.to_base(1.0), 2, mark), unit.symbol());
    match quantity {
        Quantity::Length => per(Unit::MILLIMETRE),
        Quantity::Time => per(Unit::NANOSECOND),
        Quantity::Ratio => per(Unit::PERCENT),
        Quantity::Angle => per(Unit::MILLIRADIAN),
        Quantity::Pixel => per(Unit::PIXEL),
        Quantity::Slope => format!("{} m/s per ns/m", plain(c, 2, mark)),
    }
}

fn remark(part: &BudgetComponent) -> &'static str {
    if part.degrees_of_freedom.is_some_and(|nu| nu <= 2.0) {
        return "With two degrees of freedom or fewer this error has no finite standard deviation: what is shown is the scale of its distribution. Quote the interval of the trials.";
    }
    match (part.entry, &part.origin) {
        (Entry::ShiftsOnly, Origin::ChannelSkew) => {
            "It shifts every delay by the same amount, so it moves only t₀: nothing of it reaches the slope."
        }
        (Entry::ShiftsOnly, _) => {
            "It shifts every distance or every delay in the line by the same amount, so it moves only t₀: nothing of it reaches the slope."
        }
        (_, Origin::BeamAngle) if part.u.is_none() => "No angle was stated.",
        (_, Origin::BeamAngle) => {
            "The distances fall short by θ²/2. Half of the largest shortfall is corrected for, and the rest is as likely anywhere in between."
        }
        (_, Origin::Air) if part.u.is_none() => {
            "The air is so near the end of the range of its equations that its uncertainty can’t be told."
        }
        (Entry::Shared, _) => {
            "Part of the fit’s covariance: all its rows move together, so repeats don’t reduce it."
        }
        (Entry::Rows, Origin::Scatter) => "Taken from the residuals in place of what each row states.",
        (Entry::Rows, _) => "Part of the fit’s covariance: each row has its own, so more rows reduce it.",
        (Entry::Beside, _) => "Not part of the fit; added to the budget.",
    }
}

fn budget_figures(page: &NotebookState, speed: &Speed) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let budget = &speed.budget;
    let acting = budget.components.iter().filter(|part| part.share > 0.0).count();
    let u_c = plain(speed.u_c(), 2, mark) + " m/s";
    let nu = degrees_of_freedom(budget.degrees_of_freedom, mark);
    let mut figures = vec![
        figure(
            "combined",
            "combined standard uncertainty of c",
            "u_c",
            format!("{u_c} ({} %)", plain(100.0 * speed.relative, 2, mark)),
            "Root sum of squares of the contributions: the largest few decide it.",
        )
        .by(row(vec![symbol("u_c"), op("="), root_of_sum(acting), op("="), number(u_c)]))
        .from("JCGM 100:2008, 5.1.2"),
        figure(
            "effective_degrees",
            "effective degrees of freedom",
            "ν_eff",
            nu.clone(),
            "How well the uncertainty itself is known. “Many” where nothing in it was estimated from few readings.",
        )
        .by(row(welch_satterthwaite(budget.degrees_of_freedom.map(|_| nu))))
        .from("Welch–Satterthwaite, JCGM 100:2008, G.4.1"),
    ];
    match (&budget.coverage_factor, speed.expanded()) {
        (Ok(k), Some(expanded)) => {
            let (k, expanded) = (fixed(*k, -2, mark), plain(expanded, 2, mark) + " m/s");
            figures.push(
                figure(
                    "coverage_factor",
                    &format!("coverage factor for {}", per_cent(budget.probability, mark)),
                    "k",
                    k.clone(),
                    "The quantile of Student’s t for these degrees of freedom; of the normal distribution where they are many.",
                )
                .from("JCGM 100:2008, G.3.2"),
            );
            figures.push(
                figure(
                    "expanded",
                    "expanded uncertainty of c",
                    "U",
                    expanded.clone(),
                    "c ± U is the interval to state.",
                )
                .by(equation(
                    symbol("U"),
                    super::math::times(symbol("k"), symbol("u_c")),
                    super::math::times(number(k), number(plain(speed.u_c(), 3, mark) + " m/s")),
                    expanded,
                ))
                .from("JCGM 100:2008, 6.2.1"),
            );
        }
        (Err(why), _) => {
            figures.push(figure(
                "expanded",
                "expanded uncertainty of c",
                "U",
                "none".into(),
                &why.to_string(),
            ));
        }
        (Ok(_), None) => {}
    }
    figures
}

/// ν_eff by its formula, and its value where it has one.
fn welch_satterthwaite(value: Option<String>) -> Vec<Formula> {
    let mut formula = vec![
        symbol("ν_eff"),
        op("="),
        over(power(symbol("u_c"), "4"), row(vec![op("Σ"), over(power(symbol("u_i"), "4"), symbol("ν_i"))])),
    ];
    formula.extend(value.into_iter().flat_map(|value| [op("="), number(value)]));
    formula
}

/// The root of so many squares added up.
fn root_of_sum(parts: usize) -> Formula {
    let term = |index: &str| power(symbol(&format!("u_{index}")), "2");
    root(match parts {
        0 | 1 => term("1"),
        2 => row(vec![term("1"), op("+"), term("2")]),
        many => row(vec![term("1"), op("+"), op("…"), op("+"), term(&many.to_string())]),
    })
}

fn summary(page: &NotebookState, speed: &Speed, largest: Option<&BudgetComponent>) -> String {
    let mark = page.decimal_mark;
    let total = format!(
        "Combined: u(c) = {} m/s, {} % of c.",
        plain(speed.u_c(), 2, mark),
        plain(100.0 * speed.relative, 2, mark)
    );
    match largest {
        Some(part) if part.share > 0.0 => format!(
            "The largest part is {}: {} of the variance. {total}",
            name(page, &part.origin),
            share(part.share, mark)
        ),
        _ => total,
    }
}

#[cfg(test)]
#[path = "budget_test.rs"]
mod tests;
