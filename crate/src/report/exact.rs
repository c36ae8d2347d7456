//! Tables of the numbers behind the page, at full precision: `residuals.csv` and `line.csv`.
//!
//! A number is written with the fewest digits that read back to the same f64, with a decimal point, whatever
//! mark the notebook uses.

use serde::Serialize;

use super::shown::ROW;
use super::table::{Kind, Table, UnsaidColumn, columns};
use crate::analysis::{Analysis, LineAnalysis, Speed};
use crate::message;
use crate::words::{Message, Words};

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

/// `residuals.csv`: each row of the line with its residual.
pub fn residuals_table(rows: &[ResidualRow], words: &dyn Words) -> Table {
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

const RESIDUALS_COLUMNS: &[UnsaidColumn] = &[
    ROW,
    UnsaidColumn {
        name: "distance_m",
        title: message!("columns-residuals-distance_m"),
        unit: "m",
        kind: Kind::Number,
        description: message!("columns-residuals-distance_m-meaning"),
    },
    UnsaidColumn {
        name: "u_distance_m",
        title: message!("columns-residuals-u_distance_m"),
        unit: "m",
        kind: Kind::Number,
        description: message!("columns-residuals-u_distance_m-meaning"),
    },
    UnsaidColumn {
        name: "delay_ns",
        title: message!("columns-residuals-delay_ns"),
        unit: "ns",
        kind: Kind::Number,
        description: message!("columns-residuals-delay_ns-meaning"),
    },
    UnsaidColumn {
        name: "u_delay_ns",
        title: message!("columns-residuals-u_delay_ns"),
        unit: "ns",
        kind: Kind::Number,
        description: message!("columns-residuals-u_delay_ns-meaning"),
    },
    UnsaidColumn {
        name: "residual_ns",
        title: message!("columns-residuals-residual_ns"),
        unit: "ns",
        kind: Kind::Number,
        description: message!("columns-residuals-residual_ns-meaning"),
    },
    UnsaidColumn {
        name: "normalized_residual",
        title: message!("columns-residuals-normalized_residual"),
        unit: "",
        kind: Kind::Number,
        description: message!("columns-residuals-normalized_residual-meaning"),
    },
];

const LINE_COLUMNS: &[UnsaidColumn] = &[
    UnsaidColumn {
        name: "figure",
        title: message!("columns-line-figure"),
        unit: "",
        kind: Kind::Text,
        description: message!("columns-line-figure-meaning"),
    },
    UnsaidColumn {
        name: "name",
        title: message!("columns-line-name"),
        unit: "",
        kind: Kind::Text,
        description: message!("columns-line-name-meaning"),
    },
    UnsaidColumn {
        name: "value",
        title: message!("columns-line-value"),
        unit: "",
        kind: Kind::Number,
        description: message!("columns-line-value-meaning"),
    },
    UnsaidColumn {
        name: "standard_uncertainty",
        title: message!("columns-line-standard_uncertainty"),
        unit: "",
        kind: Kind::Number,
        description: message!("columns-line-standard_uncertainty-meaning"),
    },
    UnsaidColumn {
        name: "unit",
        title: message!("columns-line-unit"),
        unit: "",
        kind: Kind::Text,
        description: message!("columns-line-unit-meaning"),
    },
];

#[cfg(test)]
#[path = "exact_test.rs"]
mod tests;
