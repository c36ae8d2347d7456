//! Pictures and traces in words and digits.

use litemap::LiteMap;
use serde::Serialize;

use super::figures::{figure, with_u};
use super::math::{equation, formula};
use super::types::{DelaysView, EvidenceKind, Figure, GridView, as_record};
use crate::analysis::evidence::{MarkContext, Marked, corners, ends, time, traced};
use crate::analysis::read::{Reader, mark_uncertainty, trace_wishes};
use crate::analysis::{Analysis, WalkAnalysis};
use crate::message;
use crate::notebook::{
    Cell, EdgeHeights, Estimator, Evidence, Grid, NotebookState, Picture, Row, RowId, Traces, habits,
};
use crate::photo::{MarkedHeight, Plane};
use crate::quantity::{DecimalMark, at_most, plain, short_form};
use crate::words::{Message, Value};

/// The picture or the traces of one row, with what follows from them.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum EvidenceView {
    /// A picture.
    Picture {
        /// The picture with the marks of its edges.
        picture: Picture,
        /// Its grid.
        grid: Option<Grid>,
        /// What is wrong with the marks; empty if nothing is.
        problem: Option<Message>,
        /// Rail and time base that the row goes on with where it states none.
        #[cfg_attr(not(target_arch = "wasm32"), ts(as = "std::collections::BTreeMap<Cell, String>"))]
        #[serde(serialize_with = "as_record")]
        habits: LiteMap<Cell, String>,
        /// Divisions, and what their uncertainty is made of.
        figures: Vec<Figure>,
    },
    /// Traces.
    Traces {
        /// The files and what was measured.
        traces: Traces,
        /// What is wrong; empty if nothing is.
        problem: Option<Message>,
        /// Each estimator's delay.
        figures: Vec<Figure>,
    },
}

/// A grid drawn back over its picture.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct GridLines {
    /// From x, y to x, y, pixels; columns first.
    pub lines: Vec<[f64; 4]>,
    /// What is wrong with its marks; empty if nothing is.
    pub problem: Option<Message>,
}

/// What all pictures and traces come to.
pub fn delays_view(page: &NotebookState, analysis: &Analysis) -> DelaysView {
    let (level, fraction) = trace_wishes(page, &mut Reader::new(page.decimal_mark));
    DelaysView {
        estimator: page.estimator,
        level,
        fraction,
        grids: page.grids.iter().map(|grid| grid_view(page, grid)).collect(),
        heights: heights_told(page, fraction),
        walk: walk_figures(page, analysis),
        walk_summary: analysis.walk.as_ref().map(|walk| {
            message!(
                "traces-walk-summary",
                n = walk.rows.len(),
                slope = plain(walk.line.slope, 2, page.decimal_mark)
            )
        }),
    }
}

fn grid_view(page: &NotebookState, grid: &Grid) -> GridView {
    let reads =
        |evidence: &Evidence| matches!(evidence, Evidence::Picture(picture) if picture.grid == grid.id);
    let rows = page.rows.iter().filter(|row| row.evidence.as_ref().is_some_and(reads));
    GridView { id: grid.id, rows: rows.map(|row| row.id).collect(), problem: grid_lines(grid).problem }
}

/// A grid drawn back over its picture.
pub fn grid_lines(grid: &Grid) -> GridLines {
    match Plane::fit(&corners(grid), 1.0) {
        Ok(plane) => GridLines {
            lines: plane.grid(grid.columns, grid.rows).iter().map(|[a, b]| [a.x, a.y, b.x, b.y]).collect(),
            problem: None,
        },
        Err(error) => GridLines { lines: Vec::new(), problem: Some(error.message()) },
    }
}

/// The levels at which the edges of a picture are timed, drawn over it as the lines of a grid are; those that are known.
pub fn level_lines(page: &NotebookState, grid: &Grid, heights: &EdgeHeights) -> GridLines {
    let (_, fraction) = trace_wishes(page, &mut Reader::new(page.decimal_mark));
    let plane = Plane::fit(&corners(grid), 1.0);
    let level = |height: MarkedHeight| {
        let [a, b] = height.level(plane.as_ref().ok()?, fraction, f64::from(grid.columns))?;
        Some([a.x, a.y, b.x, b.y])
    };
    GridLines { lines: ends(heights).into_iter().flatten().filter_map(level).collect(), problem: None }
}

/// The picture or the traces of a row; none where its delay is typed.
pub fn evidence_view(page: &NotebookState, id: RowId) -> Option<EvidenceView> {
    let place = page.rows.iter().position(|row| row.id == id)?;
    let (before, from) = page.rows.split_at(place);
    Some(match from.first()?.evidence.clone()? {
        Evidence::Picture(picture) => {
            let mut reader = Reader::new(page.decimal_mark);
            let u_mark = mark_uncertainty(page, &mut reader);
            let (_, fraction) = trace_wishes(page, &mut reader);
            let read = MarkContext::of(page, u_mark, fraction).read(&picture);
            EvidenceView::Picture {
                grid: page.grids.iter().find(|grid| grid.id == picture.grid).cloned(),
                figures: read.as_ref().map(|marked| of_marks(marked, page.decimal_mark)).unwrap_or_default(),
                problem: read.err().map(|error| error.message()),
                habits: habits(before).map(|(cell, text)| (cell, text.to_owned())).collect(),
                picture,
            }
        }
        Evidence::Traces(traces) => EvidenceView::Traces {
            figures: of_traces(&traces, page.decimal_mark),
            problem: traced(page, &traces).err().map(|error| error.message()),
            traces,
        },
    })
}

fn of_marks(marked: &Marked, mark: DecimalMark) -> Vec<Figure> {
    let found = &marked.separation;
    let divisions = |value: f64| plain(value, 4, mark) + "\u{a0}div";
    let (symbols, in_numbers, count) = if found.levels > 0.0 {
        ("√{u_1^2 + u_2^2 + u_3^2 + u_4^2}", "√{(#)^2 + (#)^2 + (#)^2 + (#)^2}", 4)
    } else {
        ("√{u_1^2 + u_2^2 + u_3^2}", "√{(#)^2 + (#)^2 + (#)^2}", 3)
    };
    let parts = [found.marks, found.corners, found.lens, found.levels];
    let parts = parts.into_iter().take(count).map(|part| plain(part, 2, mark) + "\u{a0}div");
    let uncertainty = figure(
        "separation_uncertainty",
        message!("figures-separation_uncertainty"),
        "u",
        plain(found.uncertainty, 2, mark) + "\u{a0}div",
    )
    .means(message!("figures-separation_uncertainty-meaning"))
    .by(equation("u", symbols, in_numbers, parts.collect(), plain(found.uncertainty, 2, mark) + "\u{a0}div"))
    .from("JCGM 100:2008, 5.2.2");
    let uncertainty = if found.levels > 0.0 {
        uncertainty.means(message!("figures-separation_levels"))
    } else {
        uncertainty
    };
    vec![
        figure(
            "separation",
            message!("figures-separation"),
            "q_B − q_A",
            short_form(found.value, Some(found.uncertainty), "div", mark),
        )
        .means(message!("figures-separation-meaning"))
        .by(equation(
            "q_B − q_A",
            "q_B − q_A",
            "# − #",
            vec![divisions(found.b.column), divisions(found.a.column)],
            divisions(found.value),
        ))
        .from(message!("figures-separation-source")),
        uncertainty,
    ]
}

/// On which rows the ends of the edges were marked, and at which fraction of their heights these are timed.
fn heights_told(page: &NotebookState, fraction: f64) -> Option<Message> {
    let has_ends = |row: &Row| match &row.evidence {
        Some(Evidence::Picture(picture)) => {
            picture.heights.as_ref().is_some_and(|heights| ends(heights).iter().any(Option::is_some))
        }
        _ => false,
    };
    let rows: Vec<usize> = (1..).zip(&page.rows).filter(|(_, row)| has_ends(row)).map(|(n, _)| n).collect();
    let percent = at_most(100.0 * fraction, 3, page.decimal_mark);
    (!rows.is_empty())
        .then(|| message!("report-delays-heights", n = rows.len(), rows = rows, percent = percent))
}

/// What an estimator is called.
pub fn estimator_name(estimator: Estimator) -> Message {
    match estimator {
        Estimator::FixedLevel => message!("figures-fixed_level"),
        Estimator::ConstantFraction => message!("figures-constant_fraction"),
        Estimator::EdgeLine => message!("figures-edge_line"),
        Estimator::CrossCorrelation => message!("figures-cross_correlation"),
        Estimator::ShiftAndScale => message!("figures-shift_and_scale"),
    }
}

fn meaning(estimator: Estimator) -> Message {
    match estimator {
        Estimator::FixedLevel => message!("figures-fixed_level-meaning"),
        Estimator::ConstantFraction => message!("figures-constant_fraction-meaning"),
        Estimator::EdgeLine => message!("figures-edge_line-meaning"),
        Estimator::CrossCorrelation => message!("figures-cross_correlation-meaning"),
        Estimator::ShiftAndScale => message!("figures-shift_and_scale-meaning"),
    }
}

fn of_traces(traces: &Traces, mark: DecimalMark) -> Vec<Figure> {
    let each = traces.delays.iter().map(|found| {
        let value = match found.delay.as_ref().and_then(time) {
            Some((value, u)) => short_form(value, Some(u).filter(|u| *u > 0.0), "ns", mark).into(),
            None => Value::from(message!("figures-none")),
        };
        let name = estimator_name(found.estimator);
        let told = figure(found.estimator.id(), name, "Δt", value)
            .means(meaning(found.estimator))
            .by(formula("Δt = t_B − t_A", vec![]))
            .from(message!("figures-traces-source"));
        found.remarks.iter().fold(told, |told, one| told.means(one.said(&traces.files, mark)))
    });
    each.collect()
}

fn walk_figures(page: &NotebookState, analysis: &Analysis) -> Vec<Figure> {
    let (Some(walk), Ok(line)) = (&analysis.walk, &analysis.line) else { return Vec::new() };
    let slope = line.fit.slope - if page.estimator == Estimator::FixedLevel { walk.line.slope } else { 0.0 };
    vec![walk_slope(walk, page.decimal_mark), walk_shift(walk, slope, page.decimal_mark)]
}

fn per_metre(value: f64, mark: DecimalMark) -> String {
    plain(value, 3, mark) + "\u{a0}ns/m"
}

fn walk_slope(walk: &WalkAnalysis, mark: DecimalMark) -> Figure {
    let w = with_u(walk.line.slope, Some(walk.line.uncertainty), "ns/m", mark);
    figure("walk_slope", message!("figures-walk_slope"), "w", w)
        .means(message!("figures-walk_slope-meaning", n = walk.rows.len()))
        .by(formula("w = {Δ (t_1 − t_2)}/{Δ d} = #", vec![per_metre(walk.line.slope, mark)]))
        .from(message!("figures-walk_slope-source"))
}

/// By what fraction v would lie off with a fixed level; `slope` is that of the line without walk.
fn walk_shift(walk: &WalkAnalysis, slope: f64, mark: DecimalMark) -> Figure {
    let (shift, u_shift) = walk.shift;
    let value = short_form(100.0 * shift, Some(100.0 * u_shift).filter(|u| *u > 0.0), "", mark);
    let b = per_metre(slope, mark);
    figure("walk_shift", message!("figures-walk_shift"), "Δv/v", format!("{}\u{a0}%", value.trim()))
        .means(message!("figures-walk_shift-meaning"))
        .by(equation(
            "Δv/v",
            "b/{b + w} − 1",
            "#/{# + #} − 1",
            vec![b.clone(), b, per_metre(walk.line.slope, mark)],
            format!("{}\u{a0}%", plain(100.0 * shift, 2, mark)),
        ))
        .from(message!("figures-walk_shift-source"))
}

/// From what the delay of a row is taken.
pub fn kind(row: &Row) -> EvidenceKind {
    match &row.evidence {
        Some(Evidence::Picture(_)) => EvidenceKind::Picture,
        Some(Evidence::Traces(_)) => EvidenceKind::Traces,
        None => EvidenceKind::Typed,
    }
}
