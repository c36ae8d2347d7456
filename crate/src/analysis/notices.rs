//! What the notebook notices by itself.
//!
//! Each notice has a stable identifier, says what was seen and what to look at, and names the rows concerned. It
//! never changes a number. Thresholds are common practice (no source) unless a source is named.

use serde::Serialize;

use super::rows::{Ground, Point, Rows, full_uy};
use super::seal;
use super::speed::C0;
use super::types::{Entry, LineAnalysis, Speed};
use super::{listed, row_numbers};
use crate::notebook::{BenchField, RailId, RowId};
use crate::quantity::{fixed, plain};

/// How serious a notice is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Weight {
    /// The result is likely wrong while this stands.
    Grave,
    /// Look at it before handing in.
    Look,
    /// Good to know.
    Know,
}

/// The section beside which a notice stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Section {
    /// Apparatus.
    Apparatus,
    /// Readings.
    Readings,
    /// Line.
    Line,
    /// Uncertainty.
    Uncertainty,
    /// Result.
    Result,
}

/// Something noticed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Notice {
    /// Identifier, stable.
    pub id: &'static str,
    /// How serious.
    pub weight: Weight,
    /// Where it stands.
    pub section: Section,
    /// What was noticed, in plain words.
    pub text: String,
    /// What to look at.
    pub look_at: &'static str,
    /// The rows concerned.
    pub rows: Vec<RowId>,
    /// The rail concerned.
    pub rail: Option<RailId>,
}

/// Everything the notices look at.
pub struct Seen<'a> {
    /// What rows were read against.
    pub ground: &'a Ground<'a>,
    /// The rows, read.
    pub rows: &'a Rows,
    /// The line, if there is one.
    pub line: Option<&'a LineAnalysis>,
    /// The speed, if there is one.
    pub speed: Option<&'a Speed>,
}

/// All notices, the most serious first, otherwise in the order of the page.
pub fn notices(seen: &Seen) -> Vec<Notice> {
    let mut all = Vec::new();
    all.extend(off_the_rail(seen));
    all.extend(restarted_count(seen));
    all.extend(edge_off_screen(seen));
    all.extend(coarse_figures(seen));
    all.extend(disagreeing_places(seen));
    all.extend(delay_falls(seen));
    all.extend(delay_below_uncertainty(seen));
    all.extend(beyond_a_period(seen));
    all.extend(defaults_only(seen));
    if let Some(line) = seen.line {
        all.extend(about_the_line(seen, line));
    }
    if let (Some(line), Some(speed)) = (seen.line, seen.speed) {
        all.extend(about_the_speed(seen, line, speed));
    }
    all.sort_by_key(|notice| notice.weight);
    all
}

impl Seen<'_> {
    fn numbers(&self, rows: &[RowId]) -> String {
        let word = if rows.len() == 1 { "row" } else { "rows" };
        format!("{word} {}", listed(&row_numbers(self.ground.page, rows)))
    }

    fn figure(&self, value: f64, significant: usize) -> String {
        plain(value, significant, self.ground.page.decimal_mark)
    }

    /// Points in the order of their distance.
    fn by_distance(&self) -> Vec<&Point> {
        let mut points: Vec<&Point> = self.rows.points.iter().collect();
        points.sort_by(|a, b| a.x.total_cmp(&b.x));
        points
    }
}

fn u_of(point: &Point) -> f64 {
    full_uy(point.y, point.uy, point.time_base).unwrap_or(0.0)
}

fn in_quadrature(a: f64, b: f64) -> f64 {
    (a * a + b * b).sqrt()
}

/// A reading outside the span of its ruler.
fn off_the_rail(seen: &Seen) -> Option<Notice> {
    let rows: Vec<RowId> = seen
        .rows
        .typed
        .iter()
        .filter(|typed| {
            let span = typed.rail.and_then(|i| seen.ground.rails.get(i)).and_then(|rail| rail.span);
            typed.reading.zip(span).is_some_and(|(reading, (from, to))| {
                reading.value < from.min(to) || reading.value > from.max(to)
            })
        })
        .map(|typed| typed.row)
        .collect();
    (!rows.is_empty()).then(|| Notice {
        id: "off_the_rail",
        weight: Weight::Grave,
        section: Section::Readings,
        text: format!("The reading of {} lies outside the span of its rail.", seen.numbers(&rows)),
        look_at: "The number typed, its unit, the rail named, and the span given for that rail.",
        rows,
        rail: None,
    })
}

/// Readings that start again although the delay goes on growing, with no change of rail.
fn restarted_count(seen: &Seen) -> Option<Notice> {
    let pairs = seen.rows.points.windows(2).filter_map(|pair| match pair {
        [a, b] if a.rail.is_some() && a.rail == b.rail => Some((a, b)),
        _ => None,
    });
    let rows: Vec<RowId> = pairs
        .filter(|(a, b)| {
            let later = b.y - a.y > 4.0 * (u_of(a) + u_of(b));
            // Half a nanosecond of light is 15 cm: a step back of more than that is no slip of the hand.
            later && a.x - b.x > 0.15
        })
        .map(|(_, b)| b.row)
        .collect();
    (!rows.is_empty() && 2 * rows.len() < seen.rows.points.len()).then(|| Notice {
        id: "restarted_count",
        weight: Weight::Grave,
        section: Section::Readings,
        text: format!(
            "At {} the rail reading starts again while the delay goes on growing, but the rail named is the same.",
            seen.numbers(&rows)
        ),
        look_at: "Whether the carriage had passed onto the next rail, whose ruler counts from its own end.",
        rows,
        rail: None,
    })
}

/// An edge read beyond the screen.
fn edge_off_screen(seen: &Seen) -> Option<Notice> {
    let width = seen.ground.bench.screen_width;
    let off = |q: &f64| *q < 0.0 || *q > width;
    let rows: Vec<RowId> =
        seen.rows.typed.iter().filter(|typed| typed.edges.iter().any(off)).map(|typed| typed.row).collect();
    (!rows.is_empty()).then(|| Notice {
        id: "edge_off_screen",
        weight: Weight::Look,
        section: Section::Readings,
        text: format!(
            "An edge of {} lies off the screen, which is {} divisions wide.",
            seen.numbers(&rows),
            seen.figure(width, 3)
        ),
        look_at: "The number typed, and the width of the screen given under Apparatus.",
        rows,
        rail: None,
    })
}

/// Rail readings typed to a place far coarser than the uncertainty stated for them.
fn coarse_figures(seen: &Seen) -> Option<Notice> {
    let rows: Vec<RowId> =
        seen.rows
            .typed
            .iter()
            .filter(|typed| {
                let rail = typed.rail.and_then(|i| seen.ground.rails.get(i));
                typed.reading.zip(rail).is_some_and(|(reading, rail)| {
                    rail.u_reading > 0.0 && reading.step() > 8.0 * rail.u_reading
                })
            })
            .map(|typed| typed.row)
            .collect();
    (rows.len() >= 3).then(|| Notice {
        id: "coarse_figures",
        weight: Weight::Know,
        section: Section::Readings,
        text: format!(
            "The rail readings of {} are typed with fewer digits than their stated uncertainty.",
            seen.numbers(&rows)
        ),
        look_at: "Whether the ruler was read finer than was written down: write 120.0, not 120, if it was.",
        rows,
        rail: None,
    })
}

/// Two readings at one place whose delays differ by more than four times their uncertainty.
fn disagreeing_places(seen: &Seen) -> Option<Notice> {
    let points = seen.by_distance();
    let mut rows = Vec::new();
    for pair in points.windows(2) {
        if let [a, b] = pair {
            let u_x = in_quadrature(a.ux.unwrap_or(0.0), b.ux.unwrap_or(0.0));
            let u_y = in_quadrature(u_of(a), u_of(b));
            let together = (b.x - a.x).abs() <= 2.0 * u_x || a.x == b.x;
            if together && u_y > 0.0 && (b.y - a.y).abs() > 4.0 * u_y {
                rows.extend([a.row, b.row]);
            }
        }
    }
    (!rows.is_empty()).then(|| Notice {
        id: "disagreeing_places",
        weight: Weight::Look,
        section: Section::Readings,
        text: format!(
            "The {} stand at one place, but their delays differ by more than four times their uncertainty.",
            seen.numbers(&rows)
        ),
        look_at: "Whether the time base, the trigger or the rail changed between the two.",
        rows,
        rail: None,
    })
}

/// The delay falls while the distance grows.
fn delay_falls(seen: &Seen) -> Option<Notice> {
    let points = seen.by_distance();
    let falling: Vec<RowId> = points
        .windows(2)
        .filter_map(|pair| match pair {
            [a, b] if a.y - b.y > 4.0 * (u_of(a) + u_of(b)) && u_of(a) + u_of(b) > 0.0 => Some(b.row),
            _ => None,
        })
        .collect();
    let whole = seen.line.is_some_and(|line| line.fit.slope < 0.0);
    if falling.is_empty() && !whole {
        return None;
    }
    let text = if whole {
        "The delay falls while the distance grows, over the whole run.".to_owned()
    } else {
        format!("The delay falls at {} although the distance grows.", seen.numbers(&falling))
    };
    Some(Notice {
        id: "delay_falls",
        weight: Weight::Grave,
        section: Section::Readings,
        text,
        look_at: "The sense of the ruler, and whether edges A and B were swapped.",
        rows: falling,
        rail: None,
    })
}

/// A delay that its own uncertainty swallows.
fn delay_below_uncertainty(seen: &Seen) -> Option<Notice> {
    let small = |p: &&Point| u_of(p) > 0.0 && p.y.abs() < u_of(p);
    let rows: Vec<RowId> = seen.rows.points.iter().filter(small).map(|p| p.row).collect();
    (!rows.is_empty()).then(|| Notice {
        id: "delay_below_uncertainty",
        weight: Weight::Know,
        section: Section::Readings,
        text: format!("The delay of {} is smaller than its own uncertainty.", seen.numbers(&rows)),
        look_at: "Whether a faster time base would spread the two edges farther apart.",
        rows,
        rail: None,
    })
}

/// A delay of more than one pulse period is known only up to whole periods.
fn beyond_a_period(seen: &Seen) -> Option<Notice> {
    let period = 1e9 / seen.ground.bench.pulse_rate?;
    let rows: Vec<RowId> = seen.rows.points.iter().filter(|p| p.y.abs() >= period).map(|p| p.row).collect();
    (!rows.is_empty()).then(|| Notice {
        id: "beyond_a_period",
        weight: Weight::Grave,
        section: Section::Readings,
        text: format!(
            "The delay of {} is longer than one pulse period, {} ns: a delay is known only up to whole periods.",
            seen.numbers(&rows),
            seen.figure(period, 4)
        ),
        look_at: "Which edge of B belongs to which pulse of A, and the pulse rate given under Apparatus.",
        rows,
        rail: None,
    })
}

/// Nothing was said about uncertainties: all figures rest on what the notebook took.
fn defaults_only(seen: &Seen) -> Option<Notice> {
    let screen = seen.rows.points.iter().any(|p| p.time_base.is_some());
    let on_rail = seen.rows.points.iter().any(|p| p.rail.is_some());
    let bench = &seen.ground.page.bench;
    let screen_said = bench.contains_key(&BenchField::EdgeHalfWidth)
        || bench.contains_key(&BenchField::SmallDivisions)
        || seen.rows.scatter.is_some();
    let rails_said = seen.ground.rails.iter().any(|r| r.u_reading_stated || r.u_joint_stated);
    let untold = (screen && !screen_said || on_rail && !rails_said)
        && !(screen && screen_said || on_rail && rails_said);
    (untold && seen.rows.points.len() > 1).then(|| Notice {
        id: "defaults_only",
        weight: Weight::Look,
        section: Section::Apparatus,
        text: "Every uncertainty is the one that the notebook took by itself.".into(),
        look_at: "How well you could really read the ruler, the joints and the edges: write that down.",
        rows: Vec::new(),
        rail: None,
    })
}

fn about_the_line(seen: &Seen, line: &LineAnalysis) -> Vec<Notice> {
    let mut all = Vec::new();
    all.extend(few_rows(line));
    all.extend(chi_square(seen, line));
    all.extend(steps(seen, line));
    all.extend(settings_off(seen, line));
    all.extend(curvature(line));
    all.extend(runs(line));
    all.extend(decisive_row(seen, line));
    all
}

fn few_rows(line: &LineAnalysis) -> Option<Notice> {
    let n = line.rows.len();
    (n < 5).then(|| Notice {
        id: "few_rows",
        weight: Weight::Look,
        section: Section::Line,
        text: format!("Only {n} rows are in the line: they can hardly show whether it is straight."),
        look_at: "Take more positions; at least three on each side of a splice.",
        rows: Vec::new(),
        rail: None,
    })
}

fn chi_square(seen: &Seen, line: &LineAnalysis) -> Option<Notice> {
    let p = line.p_value?;
    let chi = seen.figure(line.fit.chi_square, 3);
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
                "The rows scatter less than their stated uncertainties lead to expect (χ² = {chi} with {nu} degrees of freedom): those look too big."
            ),
            "Whether the limits of reading were stated too wide.",
            Weight::Know,
        )
    } else {
        return None;
    };
    Some(Notice { id, weight, section: Section::Line, text, look_at, rows: Vec::new(), rail: None })
}

fn steps(seen: &Seen, line: &LineAnalysis) -> Vec<Notice> {
    let off = line.checks.steps.iter().filter(|check| check.step.p_value < 0.01);
    off.map(|check| {
        let name = seen.ground.page.rails.iter().enumerate().find(|(_, rail)| rail.id == check.rail);
        let name = name.map_or_else(String::new, |(index, rail)| rail.name_or_number(index));
        let mark = seen.ground.page.decimal_mark;
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

fn settings_off(seen: &Seen, line: &LineAnalysis) -> Vec<Notice> {
    let off = line.checks.settings.iter().filter(|check| check.offset.p_value < 0.01);
    off.map(|check| Notice {
        id: "time_base_off",
        weight: Weight::Look,
        section: Section::Readings,
        text: format!(
            "The rows read at {} ns a division lie off from the others by {} ns (standard uncertainty {} ns).",
            seen.figure(check.time_per_division, 3),
            seen.figure(check.offset.value, 2),
            seen.figure(check.offset.uncertainty, 2)
        ),
        look_at: "Whether that time base was noted rightly for each of them.",
        rows: check.rows.clone(),
        rail: None,
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
    line.checks.runs_p.filter(|p| *p < 0.05).map(|_| Notice {
        id: "runs",
        weight: Weight::Know,
        section: Section::Line,
        text: "The signs of the residuals are not mixed as chance would mix them.".into(),
        look_at: "The residual plot: a wave, a step at a splice, or a change between two parts of the run.",
        rows: Vec::new(),
        rail: None,
    })
}

fn decisive_row(seen: &Seen, line: &LineAnalysis) -> Option<Notice> {
    let (row, slope) = line.checks.decisive_row?;
    let u = line.fit.uncertainty?.slope;
    let moved = (slope - line.fit.slope).abs() / u;
    (moved > 1.0 && line.rows.len() > 3).then(|| Notice {
        id: "decisive_row",
        weight: Weight::Look,
        section: Section::Line,
        text: format!(
            "One row decides the slope: without {} it would move by {} standard uncertainties.",
            seen.numbers(&[row]),
            seen.figure(moved, 2)
        ),
        look_at: "That row, and whether more positions near it can be read.",
        rows: vec![row],
        rail: None,
    })
}

fn about_the_speed(seen: &Seen, line: &LineAnalysis, speed: &Speed) -> Vec<Notice> {
    let mut all = Vec::new();
    let sealed = seal::factor(seen.ground.page.seal.as_ref()).is_some();
    // While the result is sealed, nothing may tell on which side of c₀ it lies.
    if !sealed && speed.c - C0 > 4.0 * speed.u_c() {
        all.push(Notice {
            id: "faster_than_light",
            weight: Weight::Grave,
            section: Section::Result,
            text: "The speed lies above the speed of light by more than four standard uncertainties.".into(),
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
                seen.figure((delays.1 - delays.0) / typical, 2)
            ),
            look_at: "Whether the carriage can go farther, or the screen be set faster.",
            rows: Vec::new(),
            rail: None,
        });
    }
    all.extend(dominant(seen, speed));
    all
}

/// One error of the apparatus over four fifths of the budget.
fn dominant(seen: &Seen, speed: &Speed) -> Option<Notice> {
    let largest = speed.budget.components.iter().find(|c| c.share > 0.8 && c.entry != Entry::Rows)?;
    Some(Notice {
        id: "dominant_component",
        weight: Weight::Know,
        section: Section::Uncertainty,
        text: format!(
            "One error that no repeat can reduce is {} % of the variance of c.",
            seen.figure(100.0 * largest.share, 2)
        ),
        look_at: "The first line of the budget: that error alone decides the uncertainty.",
        rows: Vec::new(),
        rail: None,
    })
}

#[cfg(test)]
#[path = "notices_test.rs"]
mod tests;
