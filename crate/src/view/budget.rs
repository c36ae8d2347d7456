//! The uncertainty budget in words and digits.

use super::figures::{degrees_of_freedom, figure, per_cent, undivided};
use super::math::{Formula, equation, formula};
use super::types::{BudgetView, ComponentView, Figure};
use crate::analysis::types::not_given;
use crate::analysis::{Analysis, Budget, BudgetComponent, Clock, HowEntered, Origin, Quantity, Speed};
use crate::message;
use crate::notebook::{ActsOn, Effect, ErrorShape, NotebookState, RailId, Scope, SharedError};
use crate::quantity::{DecimalMark, Unit, fixed, plain};
use crate::words::{Message, Value};

/// The budget of c.
pub fn budget_view(page: &NotebookState, analysis: &Analysis) -> BudgetView {
    match &analysis.speed {
        Err(refusal) => BudgetView { refusal: Some(refusal.message.clone()), ..BudgetView::default() },
        Ok(speed) => {
            let components = ordered(&speed.budget);
            BudgetView {
                refusal: None,
                components: components.iter().map(|part| component(page, speed, part)).collect(),
                figures: budget_figures(page, speed),
                summary: Some(summary(page, speed, components.first().copied())),
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
        shape: shape(part.shape),
        degrees_of_freedom: degrees_of_freedom(part.degrees_of_freedom, mark),
        sensitivity: sensitivity.map_or_else(|| "0".into(), |c| sensitivity_text(c, part.quantity, mark)),
        contribution: if contribution > 0.0 {
            format!("{}\u{a0}m/s", plain(contribution, 2, mark))
        } else {
            "0".into()
        },
        bar: format!("{}%", fixed(100.0 * part.share, -2, DecimalMark::Point)),
        share_text: share(part.share, mark),
        remark: remark(part),
    }
}

fn share(share: f64, mark: DecimalMark) -> String {
    match share * 100.0 {
        0.0 => "0\u{a0}%".into(),
        tiny if tiny < 0.05 => format!("< {}\u{a0}%", fixed(0.1, -1, mark)),
        per_cent => format!("{}\u{a0}%", fixed(per_cent, -1, mark)),
    }
}

fn rail(page: &NotebookState, id: RailId) -> Message {
    page.rail(id).map_or_else(
        || message!("budget-removed-rail"),
        |(index, rail)| message!("budget-rail", name = rail.name_or_number(index)),
    )
}

fn stated(page: &NotebookState, id: u32) -> Option<&SharedError> {
    page.shared.iter().find(|shared| shared.id == id)
}

/// What a component is called.
pub fn name(page: &NotebookState, origin: &Origin) -> Value {
    let first = page.rails.first().map(|rail| rail.id);
    let named = match origin {
        Origin::Splice { rail: id } if Some(*id) == first => {
            message!("budget-names-splitter", rail = rail(page, *id))
        }
        Origin::Splice { rail: id } => message!("budget-names-splice", rail = rail(page, *id)),
        Origin::RulerScale { rail: id } => message!("budget-names-scale", rail = rail(page, *id)),
        Origin::TimeBase { clock: Clock::Recorder } => message!("budget-names-recorder"),
        Origin::TimeBase { clock: Clock::Screen(time) } => {
            message!("budget-names-time_base", time = undivided(*time, Unit::NANOSECOND, page.decimal_mark))
        }
        Origin::Grid { .. } => message!("budget-names-grid"),
        Origin::Stated { shared } => match stated(page, *shared) {
            Some(shared) if !shared.name.trim().is_empty() => return shared.name.trim().into(),
            _ => message!("budget-names-unnamed"),
        },
        Origin::RailReadings => message!("budget-names-rulers"),
        Origin::Distances => message!("budget-names-distances"),
        Origin::ScreenLimit => message!("budget-names-screen"),
        Origin::ScreenScatter => message!("budget-names-repeats"),
        Origin::PictureMarks => message!("budget-names-marks"),
        Origin::Traces => message!("budget-names-traces"),
        Origin::Walk => message!("budget-names-walk"),
        Origin::Delays => message!("budget-names-delays"),
        Origin::Matrices => message!("budget-names-matrices"),
        Origin::Scatter => message!("budget-names-scatter"),
        Origin::BeamAngle => message!("budget-names-beam"),
        Origin::Air => message!("budget-names-air"),
        Origin::ChannelSkew => message!("budget-names-skew"),
    };
    named.into()
}

fn acts_on(page: &NotebookState, origin: &Origin) -> Message {
    match origin {
        Origin::Splice { rail: id } => message!("budget-acts-beyond", rail = rail(page, *id)),
        Origin::RulerScale { rail: id } => message!("budget-acts-rail", rail = rail(page, *id)),
        Origin::TimeBase { .. } => message!("budget-acts-setting"),
        Origin::Stated { shared } => stated(page, *shared)
            .map_or_else(|| message!("budget-acts-removed"), |shared| of_stated(page, shared)),
        Origin::RailReadings | Origin::Distances => message!("budget-acts-each_distance"),
        Origin::ScreenLimit
        | Origin::ScreenScatter
        | Origin::PictureMarks
        | Origin::Traces
        | Origin::Delays => message!("budget-acts-each_delay"),
        Origin::Walk => message!("budget-acts-walk"),
        Origin::Grid { .. } => message!("budget-acts-grid"),
        Origin::Matrices => message!("budget-acts-both"),
        Origin::Scatter => message!("budget-acts-slope"),
        Origin::BeamAngle => message!("budget-acts-all_distances"),
        Origin::Air => message!("budget-acts-c"),
        Origin::ChannelSkew => message!("budget-acts-all_delays"),
    }
}

fn of_stated(page: &NotebookState, shared: &SharedError) -> Message {
    let rows = match &shared.rows {
        Scope::All => message!("shared-all"),
        Scope::Rail(id) => message!("budget-rows-rail", rail = rail(page, *id)),
        Scope::TimeBase(text) => message!("shared-time-base", text = text.trim()),
        Scope::Rows(rows) => message!("budget-rows-chosen", n = rows.len()),
    };
    message!("budget-acts-stated", acts = acts(shared.acts_on), rows = rows, effect = effect(shared.effect))
}

/// What a component of the user's own moves.
pub fn acts(on: ActsOn) -> Message {
    match on {
        ActsOn::Distances => message!("shared-acts-distances"),
        ActsOn::Delays => message!("shared-acts-delays"),
    }
}

/// How a component of the user's own moves it.
pub fn effect(effect: Effect) -> Message {
    match effect {
        Effect::Offset => message!("shared-effects-offset"),
        Effect::Scale => message!("shared-effects-scale"),
        Effect::Noise => message!("shared-effects-noise"),
    }
}

fn shape(shape: ErrorShape) -> Message {
    match shape {
        ErrorShape::Normal => message!("shared-shapes-normal"),
        ErrorShape::Rectangular => message!("shared-shapes-rectangular"),
        ErrorShape::Triangular => message!("shared-shapes-triangular"),
        ErrorShape::Arcsine => message!("shared-shapes-arcsine"),
        ErrorShape::Student => message!("shared-shapes-student"),
    }
}

/// An uncertainty in the unit that suits its size.
pub fn with_unit(u: f64, quantity: Quantity, mark: DecimalMark) -> String {
    let in_unit = |unit: Unit| format!("{}\u{a0}{}", plain(unit.from_base(u), 2, mark), unit.symbol());
    match quantity {
        Quantity::Length => in_unit(Unit::MILLIMETRE),
        Quantity::Time => in_unit(Unit::NANOSECOND),
        Quantity::Ratio if u < 1e-4 => in_unit(Unit::PPM),
        Quantity::Ratio => in_unit(Unit::PERCENT),
        Quantity::Angle => in_unit(Unit::MILLIRADIAN),
        Quantity::Pixel => in_unit(Unit::PIXEL),
        Quantity::Slope => format!("{}\u{a0}ns/m", plain(u, 2, mark)),
    }
}

/// Change of c for one unit of an error, in the unit in which the error is shown.
fn sensitivity_text(c: f64, quantity: Quantity, mark: DecimalMark) -> String {
    let per = |unit: Unit| format!("{} (m/s)/{}", plain(c * unit.to_base(1.0), 2, mark), unit.symbol());
    match quantity {
        Quantity::Length => per(Unit::MILLIMETRE),
        Quantity::Time => per(Unit::NANOSECOND),
        Quantity::Ratio => per(Unit::PERCENT),
        Quantity::Angle => per(Unit::MILLIRADIAN),
        Quantity::Pixel => per(Unit::PIXEL),
        Quantity::Slope => format!("{} (m/s)/(ns/m)", plain(c, 2, mark)),
    }
}

fn remark(part: &BudgetComponent) -> Message {
    if part.degrees_of_freedom.is_some_and(|nu| nu <= 2.0) {
        return message!("budget-remarks-no_deviation");
    }
    match (part.entry, &part.origin) {
        (HowEntered::ShiftsOnly, Origin::ChannelSkew) => message!("budget-remarks-skew"),
        (HowEntered::ShiftsOnly, _) => message!("budget-remarks-shift"),
        (_, Origin::BeamAngle) if part.u.is_none() => message!("budget-remarks-no_angle"),
        (_, Origin::BeamAngle) => message!("budget-remarks-angle"),
        (_, Origin::Air) if part.u.is_none() => message!("budget-remarks-air"),
        (_, Origin::Walk) => message!("budget-remarks-walk"),
        (HowEntered::Shared, _) => message!("budget-remarks-shared"),
        (HowEntered::Rows, Origin::Scatter) => message!("budget-remarks-scatter"),
        (HowEntered::Rows, Origin::Matrices) => message!("budget-remarks-matrices"),
        (HowEntered::Rows, _) => message!("budget-remarks-rows"),
        (HowEntered::Beside, _) => message!("budget-remarks-beside"),
    }
}

fn budget_figures(page: &NotebookState, speed: &Speed) -> Vec<Figure> {
    let mark = page.decimal_mark;
    let budget = &speed.budget;
    let acting = budget.components.iter().filter(|part| part.share > 0.0).count();
    let u_c = plain(speed.u_c(), 2, mark) + "\u{a0}m/s";
    let nu = degrees_of_freedom(budget.degrees_of_freedom, mark);
    let combined = format!("{u_c} ({}\u{a0}%)", plain(100.0 * speed.relative, 2, mark));
    let mut figures = vec![
        figure("combined", message!("figures-combined"), "u_c", combined)
            .means(message!("figures-combined-meaning"))
            .by(formula(&format!("u_c = √{{{}}} = #", sum_of_squares(acting)), vec![u_c]))
            .from("JCGM 100:2008, 5.1.2"),
        figure("effective_degrees", message!("figures-effective_degrees"), "ν_eff", nu.clone())
            .means(message!("figures-effective_degrees-meaning"))
            .by(welch_satterthwaite(budget.degrees_of_freedom.map(|_| nu)))
            .from("Welch–Satterthwaite, JCGM 100:2008, G.4.1"),
    ];
    let p = per_cent(budget.probability, mark);
    match (&budget.coverage_factor, speed.expanded()) {
        (Ok(k), Some(expanded)) => {
            let (k, expanded) = (fixed(*k, -2, mark), plain(expanded, 2, mark) + "\u{a0}m/s");
            figures.push(
                figure("coverage_factor", message!("figures-coverage_factor"), "k", k.clone())
                    .means(message!("figures-coverage_factor-meaning", p = p.clone()))
                    .from("JCGM 100:2008, G.3.2"),
            );
            figures.push(
                figure("expanded", message!("figures-expanded"), "U", expanded.clone())
                    .means(message!("figures-expanded-meaning", p = p))
                    .by(equation(
                        "U",
                        "k·u_c",
                        "#·#",
                        vec![k, plain(speed.u_c(), 3, mark) + "\u{a0}m/s"],
                        expanded,
                    ))
                    .from("JCGM 100:2008, 6.2.1"),
            );
        }
        (Err(why), _) => figures.push(
            figure("expanded", message!("figures-expanded"), "U", message!("figures-none"))
                .means(not_given(why, mark)),
        ),
        (Ok(_), None) => {}
    }
    figures
}

/// ν_eff by its formula, and its value where it has one.
fn welch_satterthwaite(value: Option<String>) -> Formula {
    match value {
        Some(value) => formula("ν_eff = u_c^4/{Σ u_i^4/ν_i} = #", vec![value]),
        None => formula("ν_eff = u_c^4/{Σ u_i^4/ν_i}", vec![]),
    }
}

/// So many squares added up, as the text of a formula.
fn sum_of_squares(parts: usize) -> String {
    match parts {
        0 | 1 => "u_1^2".into(),
        2 => "u_1^2 + u_2^2".into(),
        many => format!("u_1^2 + … + u_{many}^2"),
    }
}

fn summary(page: &NotebookState, speed: &Speed, largest: Option<&BudgetComponent>) -> Message {
    let mark = page.decimal_mark;
    let (u, percent) = (plain(speed.u_c(), 2, mark), plain(100.0 * speed.relative, 2, mark));
    match largest {
        Some(part) if part.share > 0.0 => message!(
            "budget-summary",
            name = name(page, &part.origin),
            share = share(part.share, mark),
            u = u,
            percent = percent
        ),
        _ => message!("budget-summary-bare", u = u, percent = percent),
    }
}

#[cfg(test)]
#[path = "budget_test.rs"]
mod tests;
