//! Tables of the numbers behind the page, at full precision: `readings.csv`, `residuals.csv`, `line.csv` and `budget.csv`.
//!
//! A number is written with the fewest digits that read back to the same f64, with a decimal point, whatever
//! mark the notebook uses. Words have plain spaces; what was typed stays as it was.

use serde::Serialize;

use super::labels;
use super::shown::{ROW, outside, shown_rows, typed_cell};
use super::table::{Kind, Table, UnsaidColumn, columns};
use crate::analysis::{Analysis, BudgetComponent, LineAnalysis, Quantity, RowReading, Speed};
use crate::message;
use crate::notebook::Cell;
use crate::view::budget::ordered;
use crate::view::{ComponentView, RowView, View};
use crate::words::{Message, Words};

/// Words for programs: with plain spaces also where no line should end, so that a name is found by what one types.
struct Plain<'w>(&'w dyn Words);

impl Words for Plain<'_> {
    fn say(&self, message: &Message) -> String {
        self.0.say(message).replace(['\u{a0}', '\u{202f}'], " ")
    }
}

/// One row of the line. Lengths in metres, times in nanoseconds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ResidualRow {
    /// Number of the row on the page, from 1.
    pub number: usize,
    /// Distance.
    pub distance_m: f64,
    /// Its standard uncertainty, shared parts included; none where nothing was stated.
    pub u_distance_m: Option<f64>,
    /// Delay.
    pub delay_ns: f64,
    /// Its standard uncertainty, shared parts included; none where nothing was stated.
    pub u_delay_ns: Option<f64>,
    /// Delay less the line at that distance; none while the result is sealed, since delay less residual lies on the
    /// true line.
    pub residual_ns: Option<f64>,
    /// Residual over its standard uncertainty; none where that is not known.
    pub normalised: Option<f64>,
}

/// One figure of the line, such as its slope.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct FitFigure {
    /// Identifier, stable: `slope`, `intercept`, `chi_square`…
    pub id: &'static str,
    /// What it is called.
    pub name: Message,
    /// Its value.
    pub value: f64,
    /// Its standard uncertainty, if it has one.
    pub uncertainty: Option<f64>,
    /// Its unit; empty for pure numbers.
    pub unit: &'static str,
}

/// The rows of the line in `analysis`; none where there is no line.
pub fn residual_rows(analysis: &Analysis) -> Vec<ResidualRow> {
    let Ok(line) = &analysis.line else {
        return Vec::new();
    };
    let number = |id| analysis.rows.iter().find(|row| row.id == id).map(|row| row.number);
    let stated = |u: &f64| Some(*u).filter(|_| line.stated);
    let places = line.distance.iter().zip(&line.u_distance);
    let delays = line.delay.iter().zip(&line.u_delay);
    line.rows
        .iter()
        .zip(places.zip(delays).zip(&line.fit.rows))
        .filter_map(|(id, ((place, delay), fit))| {
            Some(ResidualRow {
                number: number(*id)?,
                distance_m: *place.0,
                u_distance_m: stated(place.1),
                delay_ns: *delay.0,
                u_delay_ns: stated(delay.1),
                residual_ns: Some(fit.residual).filter(|_| !analysis.sealed),
                normalised: fit.normalised,
            })
        })
        .collect()
}

/// The figures of the line in `analysis`, and of the speed; those that can't be told are left out.
pub fn fit_figures(analysis: &Analysis) -> Vec<FitFigure> {
    let line = analysis.line.as_deref().into_iter().flat_map(line_figures);
    let speed = analysis.speed.as_deref().into_iter().flat_map(speed_figures);
    line.chain(speed).collect()
}

fn line_figures(line: &LineAnalysis) -> Vec<FitFigure> {
    let fit = &line.fit;
    let u = fit.uncertainty;
    let ratio = |id, name, value| figure(id, name, value, None, "");
    let mut figures = vec![
        figure("slope", message!("figures-slope"), fit.slope, u.map(|u| u.slope), "ns/m"),
        figure("intercept", message!("figures-intercept"), fit.intercept, u.map(|u| u.intercept), "ns"),
    ];
    figures
        .extend(u.map(|u| figure("covariance", message!("figures-covariance"), u.covariance, None, "ns²/m")));
    figures.push(ratio(
        "degrees_of_freedom",
        message!("figures-degrees_of_freedom"),
        fit.degrees_of_freedom as f64,
    ));
    if line.stated {
        figures.push(ratio("chi_square", message!("figures-chi_square"), fit.chi_square));
        figures.extend(
            line.weights_degrees.map(|nu| ratio("weights_degrees", message!("figures-weights_degrees"), nu)),
        );
        figures.extend(line.p_value.map(|p| ratio("p_value", message!("figures-p_value"), p)));
        figures.extend(
            line.birge_ratio.map(|birge| ratio("birge_ratio", message!("figures-birge_ratio"), birge)),
        );
    } else {
        figures.push(figure("squares", message!("figures-squares"), fit.chi_square, None, "ns²"));
        figures.extend(fit.scatter().map(|s| figure("scatter", message!("figures-scatter"), s, None, "ns")));
    }
    figures
}

fn speed_figures(speed: &Speed) -> Vec<FitFigure> {
    let mut figures = vec![
        figure("v", message!("figures-v"), speed.v, Some(speed.u_v()), "m/s"),
        figure("group_index", message!("figures-group_index"), speed.group_index, None, ""),
        figure("c", message!("figures-c"), speed.c, Some(speed.u_c()), "m/s"),
        figure("coverage", message!("figures-coverage"), speed.budget.probability, None, ""),
    ];
    if let (Ok(k), Some(expanded)) = (&speed.budget.coverage_factor, speed.expanded()) {
        figures.push(figure("coverage_factor", message!("figures-coverage_factor"), *k, None, ""));
        figures.push(figure("expanded", message!("figures-expanded"), expanded, None, "m/s"));
    }
    if let Some(known) = speed.comparison {
        figures.push(figure("z", message!("figures-z"), known.z, None, ""));
        figures.extend(known.e_n.map(|e_n| figure("e_n", message!("figures-e_n"), e_n, None, "")));
        figures.push(figure(
            "relative_difference",
            message!("figures-relative_difference"),
            known.relative_difference,
            None,
            "",
        ));
    }
    figures
}

fn figure(
    id: &'static str,
    name: Message,
    value: f64,
    uncertainty: Option<f64>,
    unit: &'static str,
) -> FitFigure {
    FitFigure { id, name, value, uncertainty, unit }
}

/// `readings.csv`: every row that holds something, as typed, with the numbers that follow; struck ones with their
/// reasons. `view` is that of `analysis`.
pub fn readings_numbers(analysis: &Analysis, view: &View, words: &dyn Words) -> Table {
    let words = &Plain(words);
    let lines = residual_rows(analysis);
    let mut rows = Vec::new();
    for row in shown_rows(view) {
        let read = analysis.rows.iter().find(|read| read.id == row.id);
        let line = lines.iter().find(|line| line.number == row.number);
        rows.push(reading_cells(row, read, line, words));
    }
    let title = words.say(&message!("readings-title"));
    Table { name: "readings", title, columns: columns(READINGS_COLUMNS, words), rows }
}

fn reading_cells(
    row: &RowView,
    read: Option<&RowReading>,
    line: Option<&ResidualRow>,
    words: &dyn Words,
) -> Vec<String> {
    let typed = |cell| typed_cell(row, cell, words);
    let [distance, delay] = [read.and_then(|read| read.distance), read.and_then(|read| read.delay)];
    vec![
        row.number.to_string(),
        typed(Cell::Rail),
        typed(Cell::Reading),
        row.cells.get(&Cell::Reading).map_or_else(String::new, |field| field.unit.clone()),
        optional(read.and_then(|read| read.time_per_division)),
        typed(Cell::EdgeA),
        typed(Cell::EdgeB),
        optional(distance.map(|distance| distance.value)),
        optional(distance.and_then(|distance| distance.uncertainty)),
        optional(delay.map(|delay| delay.value)),
        optional(delay.and_then(|delay| delay.uncertainty)),
        optional(line.and_then(|line| line.normalised)),
        words.say(&labels::state(row.state)),
        outside(row, words),
        typed(Cell::Remark),
    ]
}

/// `budget.csv`: the budget of c, part by part, the largest first. `view` is that of `analysis`.
pub fn budget_numbers(analysis: &Analysis, view: &View, words: &dyn Words) -> Table {
    let words = &Plain(words);
    let mut rows = Vec::new();
    if let Ok(speed) = &analysis.speed {
        for (part, shown) in ordered(&speed.budget).into_iter().zip(&view.budget.components) {
            rows.push(part_cells(part, speed, shown, words));
        }
    }
    let title = words.say(&message!("tables-budget"));
    Table { name: "budget", title, columns: columns(BUDGET_COLUMNS, words), rows }
}

fn part_cells(
    part: &BudgetComponent,
    speed: &Speed,
    shown: &ComponentView,
    words: &dyn Words,
) -> Vec<String> {
    let contribution = speed.c * part.relative;
    vec![
        words.text(&shown.name),
        words.say(&shown.acts_on),
        optional(part.u),
        unit(part.quantity).into(),
        words.say(&shown.shape),
        number(part.degrees_of_freedom.unwrap_or(f64::INFINITY)),
        optional(part.u.filter(|u| *u > 0.0).map(|u| contribution / u)),
        number(contribution),
        number(part.share),
        words.say(&shown.remark),
    ]
}

/// The unit in which an uncertainty of a quantity is computed.
fn unit(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Length => "m",
        Quantity::Time => "ns",
        Quantity::Ratio => "",
        Quantity::Angle => "rad",
        Quantity::Pixel => "px",
        Quantity::Slope => "ns/m",
    }
}

/// `residuals.csv`: each row of the line with its residual.
pub fn residuals_table(rows: &[ResidualRow], words: &dyn Words) -> Table {
    let words = &Plain(words);
    Table {
        name: "residuals",
        title: words.say(&message!("tables-residuals")),
        columns: columns(RESIDUALS_COLUMNS, words),
        rows: rows.iter().map(residual_cells).collect(),
    }
}

fn residual_cells(row: &ResidualRow) -> Vec<String> {
    vec![
        row.number.to_string(),
        number(row.distance_m),
        optional(row.u_distance_m),
        number(row.delay_ns),
        optional(row.u_delay_ns),
        optional(row.residual_ns),
        optional(row.normalised),
    ]
}

/// `line.csv`: the figures of the line.
pub fn fit_table(figures: &[FitFigure], words: &dyn Words) -> Table {
    let words = &Plain(words);
    Table {
        name: "line",
        title: words.say(&message!("tables-fit")),
        columns: columns(LINE_COLUMNS, words),
        rows: figures.iter().map(|figure| fit_cells(figure, words)).collect(),
    }
}

fn fit_cells(figure: &FitFigure, words: &dyn Words) -> Vec<String> {
    vec![
        figure.id.into(),
        words.say(&figure.name),
        number(figure.value),
        optional(figure.uncertainty),
        figure.unit.into(),
    ]
}

/// A number with the fewest digits that read back the same; NaN and the infinities as XML Schema Part 2, 3.2.5,
/// writes them.
pub fn number(value: f64) -> String {
    if value.is_nan() {
        "NaN".into()
    } else if value.is_infinite() {
        if value > 0.0 { "INF".into() } else { "-INF".into() }
    } else if value == 0.0 || (1e-4..1e15).contains(&value.abs()) {
        format!("{value}")
    } else {
        format!("{value:e}")
    }
}

fn optional(value: Option<f64>) -> String {
    value.map_or_else(String::new, number)
}

const READINGS_COLUMNS: &[UnsaidColumn] = &[
    ROW,
    text_column("rail", message!("columns-readings-rail"), message!("columns-readings-rail-meaning")),
    text_column(
        "reading",
        message!("columns-readings-reading"),
        message!("columns-readings-reading-meaning"),
    ),
    text_column(
        "ruler_unit",
        message!("columns-readings-ruler_unit"),
        message!("columns-readings-ruler_unit-meaning"),
    ),
    number_column(
        "time_per_division_ns",
        message!("columns-readings-time_per_division"),
        "ns",
        message!("columns-readings-time_per_division-meaning"),
    ),
    text_in(
        "edge_a",
        message!("columns-readings-edge_a"),
        "div",
        message!("columns-readings-edge_a-meaning"),
    ),
    text_in(
        "edge_b",
        message!("columns-readings-edge_b"),
        "div",
        message!("columns-readings-edge_b-meaning"),
    ),
    DISTANCE,
    U_DISTANCE,
    DELAY,
    U_DELAY,
    NORMALIZED_RESIDUAL,
    text_column("state", message!("columns-readings-state"), message!("columns-readings-state-meaning")),
    text_column(
        "outside_because",
        message!("columns-readings-outside_because"),
        message!("columns-readings-outside_because-meaning"),
    ),
    text_column("remark", message!("columns-readings-remark"), message!("columns-readings-remark-meaning")),
];

const RESIDUALS_COLUMNS: &[UnsaidColumn] = &[
    ROW,
    DISTANCE,
    U_DISTANCE,
    DELAY,
    U_DELAY,
    number_column(
        "residual_ns",
        message!("columns-residuals-residual_ns"),
        "ns",
        message!("columns-residuals-residual_ns-meaning"),
    ),
    NORMALIZED_RESIDUAL,
];

const DISTANCE: UnsaidColumn = number_column(
    "distance_m",
    message!("columns-residuals-distance_m"),
    "m",
    message!("columns-residuals-distance_m-meaning"),
);
const U_DISTANCE: UnsaidColumn = number_column(
    "u_distance_m",
    message!("columns-residuals-u_distance_m"),
    "m",
    message!("columns-residuals-u_distance_m-meaning"),
);
const DELAY: UnsaidColumn = number_column(
    "delay_ns",
    message!("columns-residuals-delay_ns"),
    "ns",
    message!("columns-residuals-delay_ns-meaning"),
);
const U_DELAY: UnsaidColumn = number_column(
    "u_delay_ns",
    message!("columns-residuals-u_delay_ns"),
    "ns",
    message!("columns-residuals-u_delay_ns-meaning"),
);
const NORMALIZED_RESIDUAL: UnsaidColumn = number_column(
    "normalized_residual",
    message!("columns-residuals-normalized_residual"),
    "",
    message!("columns-residuals-normalized_residual-meaning"),
);

const LINE_COLUMNS: &[UnsaidColumn] = &[
    text_column("figure", message!("columns-line-figure"), message!("columns-line-figure-meaning")),
    text_column("name", message!("columns-line-name"), message!("columns-line-name-meaning")),
    number_column("value", message!("columns-line-value"), "", message!("columns-line-value-meaning")),
    number_column(
        "standard_uncertainty",
        message!("columns-line-standard_uncertainty"),
        "",
        message!("columns-line-standard_uncertainty-meaning"),
    ),
    text_column("unit", message!("columns-line-unit"), message!("columns-line-unit-meaning")),
];

const BUDGET_COLUMNS: &[UnsaidColumn] = &[
    text_column(
        "component",
        message!("columns-budget-component"),
        message!("columns-budget-component-meaning"),
    ),
    text_column("acts_on", message!("columns-budget-acts_on"), message!("columns-budget-acts_on-meaning")),
    number_column("u", message!("columns-budget-u"), "", message!("columns-budget-u-meaning")),
    text_column("unit", message!("columns-budget-unit"), message!("columns-budget-unit-meaning")),
    text_column("shape", message!("columns-budget-shape"), message!("columns-budget-shape-meaning")),
    number_column(
        "degrees_of_freedom",
        message!("columns-budget-degrees_of_freedom"),
        "",
        message!("columns-budget-degrees_of_freedom-meaning"),
    ),
    number_column(
        "sensitivity",
        message!("columns-budget-sensitivity"),
        "",
        message!("columns-budget-sensitivity-meaning"),
    ),
    number_column(
        "contribution_m_per_s",
        message!("columns-budget-contribution"),
        "m/s",
        message!("columns-budget-contribution-meaning"),
    ),
    number_column("share", message!("columns-budget-share"), "", message!("columns-budget-share-meaning")),
    text_column("remark", message!("columns-budget-remark"), message!("columns-budget-remark-meaning")),
];

const fn number_column(
    name: &'static str,
    title: Message,
    unit: &'static str,
    description: Message,
) -> UnsaidColumn {
    UnsaidColumn { name, title, unit, kind: Kind::Number, description: Some(description) }
}

const fn text_column(name: &'static str, title: Message, description: Message) -> UnsaidColumn {
    text_in(name, title, "", description)
}

/// Numbers as typed, with what belongs to them.
const fn text_in(
    name: &'static str,
    title: Message,
    unit: &'static str,
    description: Message,
) -> UnsaidColumn {
    UnsaidColumn { name, title, unit, kind: Kind::Text, description: Some(description) }
}

#[cfg(test)]
#[path = "exact_test.rs"]
mod tests;
