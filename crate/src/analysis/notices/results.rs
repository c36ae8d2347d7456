//! What the line and the speed show: scatter, bends, steps, rows that decide, a speed that can't be.

use super::input::NoticeInput;
use super::repairs;
use crate::analysis::notice::{Notice, Section, Weight};
use crate::analysis::origin::{Clock, Origin};
use crate::analysis::speed::C0;
use crate::analysis::types::{HowEntered, LineAnalysis, Speed};
use crate::message;
use crate::notebook::{Path, RailId, RowId};
use crate::words::Message;

/// Every notice about the line.
pub(super) fn notices(input: &NoticeInput, line: &LineAnalysis) -> Vec<Notice> {
    let mut all = Vec::new();
    all.extend(few_rows(line));
    all.extend(not_diagnosed(input, line));
    all.extend(chi_square(input, line));
    all.extend(runs(line));
    all.extend(decisive_row(input, line));
    all
}

fn few_rows(line: &LineAnalysis) -> Option<Notice> {
    let n = line.rows.len();
    (n < 5).then(|| {
        Notice::new(
            "few_rows",
            Weight::Look,
            Section::Line,
            message!("notice-few_rows", n = n),
            message!("notice-few_rows-look"),
        )
    })
}

/// Silence that is no sign of sound readings.
fn not_diagnosed(input: &NoticeInput, line: &LineAnalysis) -> Option<Notice> {
    input.undiagnosed.then(|| {
        Notice::new(
            "not_diagnosed",
            Weight::Know,
            Section::Line,
            message!("notice-not_diagnosed", n = line.rows.len()),
            message!("notice-not_diagnosed-look"),
        )
    })
}

/// Scatter that stated uncertainties explain in one of a hundred sound notebooks. What a cause explains is a sign of it.
fn chi_square(input: &NoticeInput, line: &LineAnalysis) -> Option<Notice> {
    let p = line.p_value?;
    let (id, look_at, weight) = if p < 0.01 {
        let weight = if p < 0.001 { Weight::Grave } else { Weight::Look };
        ("scatter_too_large", message!("notice-scatter_too_large-look"), weight)
    } else if p > 0.99 {
        ("scatter_too_small", message!("notice-scatter_too_small-look"), Weight::Know)
    } else {
        return None;
    };
    Some(Notice::new(id, weight, Section::Line, scatter(input, p < 0.5), look_at))
}

/// That the rows scatter more or less than stated.
pub(super) fn scatter(input: &NoticeInput, more: bool) -> Message {
    let fit = input.line.map(|line| &line.fit);
    let chi = fit.map_or_else(String::new, |fit| input.figure(fit.chi_square, 3));
    let nu = fit.map_or(0, |fit| fit.degrees_of_freedom);
    if more {
        message!("notice-scatter_too_large", chi = chi, nu = nu)
    } else {
        message!("notice-scatter_too_small", chi = chi, nu = nu)
    }
}

/// The step at the splice of a rail.
pub(super) fn step(input: &NoticeInput, rail: Option<RailId>, name: String) -> Message {
    let mut checks = input.line.iter().flat_map(|line| &line.checks.steps);
    let step = checks.find(|check| Some(check.rail) == rail).map(|check| check.step);
    let millimetres =
        |value: Option<f64>| value.map_or_else(String::new, |value| input.fixed(value * 1000.0, 0));
    message!(
        "notice-step_at_splice",
        rail = name,
        step = millimetres(step.map(|step| step.value)),
        u = millimetres(step.map(|step| step.uncertainty))
    )
}

/// How far the rows of a setting lie off the others.
pub(super) fn setting(input: &NoticeInput, rows: &[RowId]) -> Message {
    let mut checks = input.line.iter().flat_map(|line| &line.checks.settings);
    let check = checks.find(|check| check.rows == rows);
    let Some(check) = check else { return message!("notice-time_base_off-some") };
    let offset = input.figure(check.offset.value, 2);
    let u = input.figure(check.offset.uncertainty, 2);
    match check.clock {
        Clock::Recorder => message!("notice-time_base_off-recorder", offset = offset, u = u),
        Clock::Screen(time) => {
            message!("notice-time_base_off", base = input.figure(time, 3), offset = offset, u = u)
        }
    }
}

fn runs(line: &LineAnalysis) -> Option<Notice> {
    line.checks.runs.filter(|runs| runs.p() < 0.005).map(|_| {
        Notice::new(
            "runs",
            Weight::Know,
            Section::Line,
            message!("notice-runs"),
            message!("notice-runs-look"),
        )
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
    (times > 2.0 && line.rows.len() > 3).then(|| {
        Notice::new(
            "decisive_row",
            Weight::Look,
            Section::Line,
            message!("notice-decisive_row", row = input.numbers(&[row]), times = input.figure(times, 2)),
            message!("notice-decisive_row-look"),
        )
        .of_rows(vec![row])
    })
}

/// Uncertainties of the air that reach where its index can't be computed, so that nothing of them is in u(c).
fn air_left_out(speed: &Speed) -> Option<Notice> {
    let air = speed.budget.components.iter().find(|component| component.origin == Origin::Air)?;
    air.u.is_none().then(|| {
        Notice::new(
            "air_left_out",
            Weight::Look,
            Section::Result,
            message!("notice-air_left_out"),
            message!("notice-air_left_out-look"),
        )
    })
}

/// How c lies beside c₀. Something that stretches all delays or all distances alike leaves a straight line, so that nothing
/// else tells. While the result is sealed, nothing may tell on which side of c₀ it lies.
fn beside_c0(input: &NoticeInput, speed: &Speed) -> Option<Notice> {
    let ratio = libm::log(speed.c.abs() / C0);
    let off = (speed.c - C0) / speed.u_c();
    let doubled = libm::fabs(libm::fabs(ratio) - std::f64::consts::LN_2);
    if speed.sealed || off.abs() < 2.5 {
        return None;
    }
    let percent = input.figure(100.0 * libm::fabs(speed.c / C0 - 1.0), 2);
    let times = input.figure(off.abs(), 2);
    let mirror = input.context.page.path == Path::Mirror;
    let (id, text, look_at) = if doubled < (3.0 * speed.relative).clamp(0.06, 0.2) && mirror == (ratio > 0.0)
    {
        ("path_factor", message!("notice-path_factor"), message!("notice-path_factor-look"))
    } else if off > 0.0 {
        let text = message!("notice-faster_than_light", percent = percent, times = times);
        ("faster_than_light", text, message!("notice-faster_than_light-look"))
    } else {
        let text = message!("notice-scale_off", percent = percent, times = times);
        ("scale_off", text, message!("notice-faster_than_light-look"))
    };
    let weight = if off.abs() > 4.0 { Weight::Grave } else { Weight::Look };
    let repair = (id == "path_factor").then(|| repairs::path(input.context.page));
    Some(Notice::new(id, weight, Section::Result, text, look_at).mended_by(repair))
}

/// Every notice about the speed and what it was taken from.
pub(super) fn of_speed(input: &NoticeInput, line: &LineAnalysis, speed: &Speed) -> Vec<Notice> {
    let mut all = Vec::new();
    all.extend(air_left_out(speed));
    all.extend(beside_c0(input, speed));
    let delays = line
        .delay
        .iter()
        .copied()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| (low.min(y), high.max(y)));
    let typical = line.u_delay.iter().sum::<f64>() / line.u_delay.len() as f64;
    if typical > 0.0 && delays.1 - delays.0 < 10.0 * typical {
        all.push(Notice::new(
            "short_span",
            Weight::Look,
            Section::Line,
            message!("notice-short_span", times = input.figure((delays.1 - delays.0) / typical, 2)),
            message!("notice-short_span-look"),
        ));
    }
    all.extend(dominant(input, speed));
    all.extend(vague(input, speed));
    all
}

/// An uncertainty so large that 1/b is no longer straight over it.
fn vague(input: &NoticeInput, speed: &Speed) -> Option<Notice> {
    (speed.relative > 0.2).then(|| {
        Notice::new(
            "vague_result",
            Weight::Grave,
            Section::Uncertainty,
            message!("notice-vague_result", percent = input.figure(100.0 * speed.relative, 2)),
            message!("notice-vague_result-look"),
        )
    })
}

/// One line of the budget over four fifths of it.
fn dominant(input: &NoticeInput, speed: &Speed) -> Option<Notice> {
    let largest = speed
        .budget
        .components
        .iter()
        .find(|c| c.share > 0.8 && (c.entry != HowEntered::Rows || speed.relative > 0.03))?;
    Some(Notice::new(
        "dominant_component",
        Weight::Know,
        Section::Uncertainty,
        if largest.entry == HowEntered::Rows {
            message!("notice-dominant_component-readings", percent = input.figure(100.0 * largest.share, 2))
        } else {
            message!("notice-dominant_component", percent = input.figure(100.0 * largest.share, 2))
        },
        message!("notice-dominant_component-look"),
    ))
}
