//! What the line and the speed show: scatter, bends, steps, rows that decide, a speed that can't be.

use super::input::NoticeInput;
use crate::analysis::notice::{Notice, Section, Weight};
use crate::analysis::origin::Clock;
use crate::analysis::speed::C0;
use crate::analysis::types::{Entry, LineAnalysis, Speed};
use crate::message;
use crate::notebook::RowId;

/// How rarely a sound notebook shows what is told of a splice, of a setting or as a bend: each of them is one of several
/// things looked at, so that together they stay below one of a hundred.
const ONE_OF_A_THOUSAND: f64 = 0.001;

/// Every notice about the line.
pub(super) fn notices(input: &NoticeInput, line: &LineAnalysis) -> Vec<Notice> {
    let mut all = Vec::new();
    all.extend(few_rows(line));
    all.extend(chi_square(input, line));
    all.extend(steps(input, line));
    all.extend(settings_off(input, line));
    all.extend(curvature(line));
    all.extend(runs(line));
    all.extend(decisive_row(input, line));
    all
}

fn few_rows(line: &LineAnalysis) -> Option<Notice> {
    let n = line.rows.len();
    (n < 5).then(|| Notice {
        id: "few_rows",
        weight: Weight::Look,
        section: Section::Line,
        text: message!("notice-few_rows", n = n),
        look_at: message!("notice-few_rows-look"),
        rows: Vec::new(),
        rail: None,
    })
}

fn chi_square(input: &NoticeInput, line: &LineAnalysis) -> Option<Notice> {
    let p = line.p_value?;
    let chi = input.figure(line.fit.chi_square, 3);
    let nu = line.fit.degrees_of_freedom;
    let (id, text, look_at, weight) = if p < 0.01 {
        (
            "scatter_too_large",
            message!("notice-scatter_too_large", chi = chi, nu = nu),
            message!("notice-scatter_too_large-look"),
            if p < 0.001 { Weight::Grave } else { Weight::Look },
        )
    } else if p > 0.99 {
        (
            "scatter_too_small",
            message!("notice-scatter_too_small", chi = chi, nu = nu),
            message!("notice-scatter_too_small-look"),
            Weight::Know,
        )
    } else {
        return None;
    };
    Some(Notice { id, weight, section: Section::Line, text, look_at, rows: Vec::new(), rail: None })
}

fn steps(input: &NoticeInput, line: &LineAnalysis) -> Vec<Notice> {
    let off = line.checks.steps.iter().filter(|check| check.step.p_value < ONE_OF_A_THOUSAND);
    off.map(|check| {
        let name = input.context.page.rails.iter().enumerate().find(|(_, rail)| rail.id == check.rail);
        let name = name.map_or_else(String::new, |(index, rail)| rail.name_or_number(index));
        Notice {
            id: "step_at_splice",
            weight: Weight::Grave,
            section: Section::Apparatus,
            text: message!(
                "notice-step_at_splice",
                rail = name,
                step = input.fixed(check.step.value * 1000.0, 0),
                u = input.fixed(check.step.uncertainty * 1000.0, 0)
            ),
            look_at: message!("notice-step_at_splice-look"),
            rows: Vec::new(),
            rail: Some(check.rail),
        }
    })
    .collect()
}

fn settings_off(input: &NoticeInput, line: &LineAnalysis) -> Vec<Notice> {
    let off = line.checks.settings.iter().filter(|check| check.offset.p_value < ONE_OF_A_THOUSAND);
    off.map(|check| {
        let offset = input.figure(check.offset.value, 2);
        let u = input.figure(check.offset.uncertainty, 2);
        let text = match check.clock {
            Clock::Recorder => message!("notice-time_base_off-recorder", offset = offset, u = u),
            Clock::Screen(time) => {
                message!("notice-time_base_off", base = input.figure(time, 3), offset = offset, u = u)
            }
        };
        Notice {
            id: "time_base_off",
            weight: Weight::Look,
            section: Section::Readings,
            text,
            look_at: message!("notice-time_base_off-look"),
            rows: check.rows.clone(),
            rail: None,
        }
    })
    .collect()
}

fn curvature(line: &LineAnalysis) -> Option<Notice> {
    line.checks.quadratic.filter(|term| term.p_value < ONE_OF_A_THOUSAND).map(|_| Notice {
        id: "curvature",
        weight: Weight::Look,
        section: Section::Line,
        text: message!("notice-curvature"),
        look_at: message!("notice-curvature-look"),
        rows: Vec::new(),
        rail: None,
    })
}

fn runs(line: &LineAnalysis) -> Option<Notice> {
    line.checks.runs.filter(|runs| runs.p() < 0.005).map(|_| Notice {
        id: "runs",
        weight: Weight::Know,
        section: Section::Line,
        text: message!("notice-runs"),
        look_at: message!("notice-runs-look"),
        rows: Vec::new(),
        rail: None,
    })
}

/// A row without which the slope would be known half as well or worse. That hangs on where rows stand, not on chance: of
/// rows spread evenly none does it, from four on.
fn decisive_row(input: &NoticeInput, line: &LineAnalysis) -> Option<Notice> {
    let u = line.fit.uncertainty?.slope;
    let own = |row: &RowId| {
        let point = input.rows.points.iter().find(|point| point.row == *row)?;
        let across = line.fit.slope * point.ux.unwrap_or(0.0);
        let scatter = line.fit.chi_square / line.fit.degrees_of_freedom.max(1) as f64;
        let along = point.uy.map_or(if line.stated { 0.0 } else { scatter }, |uy| uy * uy);
        Some(across * across + along)
    };
    // Left out, the row's distance from the line of the others adds to the slope's variance: they are independent.
    let without = line.fit.rows.iter().zip(&line.rows).filter_map(|(fit, row)| {
        let added = fit.influence * fit.influence * own(row)? / (1.0 - fit.leverage);
        Some((*row, libm::sqrt(1.0 + added / (u * u))))
    });
    let (row, times) = without.max_by(|a, b| a.1.total_cmp(&b.1))?;
    (times > 2.0 && line.rows.len() > 3).then(|| Notice {
        id: "decisive_row",
        weight: Weight::Look,
        section: Section::Line,
        text: message!("notice-decisive_row", row = input.numbers(&[row]), times = input.figure(times, 2)),
        look_at: message!("notice-decisive_row-look"),
        rows: vec![row],
        rail: None,
    })
}

/// Every notice about the speed and what it was taken from.
pub(super) fn of_speed(input: &NoticeInput, line: &LineAnalysis, speed: &Speed) -> Vec<Notice> {
    let mut all = Vec::new();
    // While the result is sealed, nothing may tell on which side of c₀ it lies.
    if !speed.sealed && speed.c - C0 > 4.0 * speed.u_c() {
        all.push(Notice {
            id: "faster_than_light",
            weight: Weight::Grave,
            section: Section::Result,
            text: message!("notice-faster_than_light"),
            look_at: message!("notice-faster_than_light-look"),
            rows: Vec::new(),
            rail: None,
        });
    }
    let delays = line
        .delay
        .iter()
        .copied()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| (low.min(y), high.max(y)));
    let typical = line.u_delay.iter().sum::<f64>() / line.u_delay.len() as f64;
    if typical > 0.0 && delays.1 - delays.0 < 10.0 * typical {
        all.push(Notice {
            id: "short_span",
            weight: Weight::Look,
            section: Section::Line,
            text: message!("notice-short_span", times = input.figure((delays.1 - delays.0) / typical, 2)),
            look_at: message!("notice-short_span-look"),
            rows: Vec::new(),
            rail: None,
        });
    }
    all.extend(dominant(input, speed));
    all.extend(vague(input, speed));
    all
}

/// An uncertainty so large that 1/b is no longer straight over it.
fn vague(input: &NoticeInput, speed: &Speed) -> Option<Notice> {
    (speed.relative > 0.2).then(|| Notice {
        id: "vague_result",
        weight: Weight::Grave,
        section: Section::Uncertainty,
        text: message!("notice-vague_result", percent = input.figure(100.0 * speed.relative, 2)),
        look_at: message!("notice-vague_result-look"),
        rows: Vec::new(),
        rail: None,
    })
}

/// One error of the apparatus over four fifths of the budget.
fn dominant(input: &NoticeInput, speed: &Speed) -> Option<Notice> {
    let largest = speed.budget.components.iter().find(|c| c.share > 0.8 && c.entry != Entry::Rows)?;
    Some(Notice {
        id: "dominant_component",
        weight: Weight::Know,
        section: Section::Uncertainty,
        text: message!("notice-dominant_component", percent = input.figure(100.0 * largest.share, 2)),
        look_at: message!("notice-dominant_component-look"),
        rows: Vec::new(),
        rail: None,
    })
}
