//! What the line and the speed show: scatter, bends, steps, rows that decide, a speed that can't be.

use super::input::NoticeInput;
use crate::analysis::notice::{Notice, Section, Weight};
use crate::analysis::origin::Clock;
use crate::analysis::speed::C0;
use crate::analysis::types::{Entry, LineAnalysis, Speed};
use crate::quantity::fixed;

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
        text: format!("Only {n} rows are included in the line: too few to test linearity."),
        look_at: "Take more positions; at least three on each side of a splice.",
        rows: Vec::new(),
        rail: None,
    })
}

fn chi_square(input: &NoticeInput, line: &LineAnalysis) -> Option<Notice> {
    let p = line.p_value?;
    let chi = input.figure(line.fit.chi_square, 3);
    let nu = line.fit.degrees_of_freedom;
    let (id, text, look_at, weight): (_, String, _, _) = if p < 0.05 {
        (
            "scatter_too_large",
            format!(
                "The rows scatter more than their stated uncertainties allow (χ² = {chi} with {nu} degrees of freedom)."
            ),
            "A row that went wrong, a step at a splice, or uncertainties that were stated too small. Choose under Result which uncertainty is claimed, and say why.",
            if p < 0.001 { Weight::Grave } else { Weight::Look },
        )
    } else if p > 0.95 {
        (
            "scatter_too_small",
            format!(
                "The rows scatter less than their stated uncertainties lead to expect (χ² = {chi} with {nu} degrees of freedom): they may be too large."
            ),
            "Whether the limits of reading were stated too wide.",
            Weight::Know,
        )
    } else {
        return None;
    };
    Some(Notice { id, weight, section: Section::Line, text, look_at, rows: Vec::new(), rail: None })
}

fn steps(input: &NoticeInput, line: &LineAnalysis) -> Vec<Notice> {
    let off = line.checks.steps.iter().filter(|check| check.step.p_value < 0.01);
    off.map(|check| {
        let name = input.context.page.rails.iter().enumerate().find(|(_, rail)| rail.id == check.rail);
        let name = name.map_or_else(String::new, |(index, rail)| rail.name_or_number(index));
        let mark = input.context.page.decimal_mark;
        Notice {
            id: "step_at_splice",
            weight: Weight::Grave,
            section: Section::Apparatus,
            text: format!(
                "The readings show a step of {} mm (standard uncertainty {} mm) at the splice of rail {name}.",
                fixed(check.step.value * 1000.0, 0, mark),
                fixed(check.step.uncertainty * 1000.0, 0, mark)
            ),
            look_at: "The marks, the gap and the sense written for that splice.",
            rows: Vec::new(),
            rail: Some(check.rail),
        }
    })
    .collect()
}

fn settings_off(input: &NoticeInput, line: &LineAnalysis) -> Vec<Notice> {
    let off = line.checks.settings.iter().filter(|check| check.offset.p_value < 0.01);
    off.map(|check| {
        let rows = match check.clock {
            Clock::Recorder => "timed by the recorder".to_owned(),
            Clock::Screen(time) => format!("read at {} ns a division", input.figure(time, 3)),
        };
        Notice {
            id: "time_base_off",
            weight: Weight::Look,
            section: Section::Readings,
            text: format!(
                "The rows {rows} are offset from the other rows by {} ns (standard uncertainty {} ns).",
                input.figure(check.offset.value, 2),
                input.figure(check.offset.uncertainty, 2)
            ),
            look_at: "Whether that time base was noted rightly for each of them.",
            rows: check.rows.clone(),
            rail: None,
        }
    })
    .collect()
}

fn curvature(line: &LineAnalysis) -> Option<Notice> {
    line.checks.quadratic.filter(|term| term.p_value < 0.01).map(|_| Notice {
        id: "curvature",
        weight: Weight::Look,
        section: Section::Line,
        text: "The rows follow a curve rather than a straight line.".into(),
        look_at: "Edges read at different heights as the light grows weaker, or a time base that is not even across the screen.",
        rows: Vec::new(),
        rail: None,
    })
}

fn runs(line: &LineAnalysis) -> Option<Notice> {
    line.checks.runs.filter(|runs| runs.p() < 0.05).map(|_| Notice {
        id: "runs",
        weight: Weight::Know,
        section: Section::Line,
        text: "The residual signs are not random (runs test).".into(),
        look_at: "The residual plot: a wave, a step at a splice, or a change between two parts of the run.",
        rows: Vec::new(),
        rail: None,
    })
}

fn decisive_row(input: &NoticeInput, line: &LineAnalysis) -> Option<Notice> {
    let (row, slope) = line.checks.decisive_row?;
    let u = line.fit.uncertainty?.slope;
    let moved = (slope - line.fit.slope).abs() / u;
    (moved > 1.0 && line.rows.len() > 3).then(|| Notice {
        id: "decisive_row",
        weight: Weight::Look,
        section: Section::Line,
        text: format!(
            "One row decides the slope: without {} it would move by {} standard uncertainties.",
            input.numbers(&[row]),
            input.figure(moved, 2)
        ),
        look_at: "That row, and whether more positions near it can be read.",
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
            text: "The result exceeds the defined c by more than 4 u.".into(),
            look_at: "The path factor (detector or mirror on the carriage), the time base, and each splice.",
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
            text: format!(
                "The whole run spans only {} times the uncertainty of one delay.",
                input.figure((delays.1 - delays.0) / typical, 2)
            ),
            look_at: "Whether the carriage can go farther, or the screen be set faster.",
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
        text: format!(
            "The standard uncertainty is {} % of c: too large for a useful result.",
            input.figure(100.0 * speed.relative, 2)
        ),
        look_at: "The first lines of the budget, and the unit of each number typed there.",
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
        text: format!(
            "One shared component is {} % of u²(c); repeats do not reduce it.",
            input.figure(100.0 * largest.share, 2)
        ),
        look_at: "The first line of the budget: that error alone decides the uncertainty.",
        rows: Vec::new(),
        rail: None,
    })
}
