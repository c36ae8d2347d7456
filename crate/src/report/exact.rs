//! Tables of the numbers behind the page, at full precision: `residuals.csv` and `line.csv`.
//!
//! A number is written with the fewest digits that read back to the same f64, with a decimal point, whatever
//! mark the notebook uses.

use super::shown::ROW;
use super::table::{Column, Kind, Table};
use crate::analysis::{Analysis, LineAnalysis, Speed};

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
    /// Delay less the line at that distance.
    pub residual_ns: f64,
    /// Residual over its standard uncertainty; none where that is not known.
    pub standardised: Option<f64>,
}

/// One figure of the line, such as its slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FitFigure {
    /// Identifier, stable: `slope`, `intercept`, `chi_square`…
    pub id: &'static str,
    /// Its name in words.
    pub name: &'static str,
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
                residual_ns: fit.residual,
                standardised: fit.normalised,
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
        figure("slope", "slope", fit.slope, u.map(|u| u.slope), "ns/m"),
        figure("intercept", "delay at zero distance", fit.intercept, u.map(|u| u.intercept), "ns"),
    ];
    figures.extend(
        u.map(|u| figure("covariance", "covariance of intercept and slope", u.covariance, None, "ns²/m")),
    );
    figures.push(ratio("degrees_of_freedom", "degrees of freedom", fit.degrees_of_freedom as f64));
    if line.stated {
        figures.push(ratio("chi_square", "χ²", fit.chi_square));
        figures.extend(line.p_value.map(|p| ratio("p_value", "p-value of χ²", p)));
        figures.extend(line.birge_ratio.map(|birge| ratio("birge_ratio", "Birge ratio", birge)));
    } else {
        figures.push(figure("squares", "sum of squared residuals", fit.chi_square, None, "ns²"));
        let name = "standard deviation of the delays about the line";
        figures.extend(fit.scatter().map(|scatter| figure("scatter", name, scatter, None, "ns")));
    }
    figures
}

fn speed_figures(speed: &Speed) -> Vec<FitFigure> {
    let mut figures = vec![
        figure("v", "group velocity in air", speed.v, Some(speed.u_v()), "m/s"),
        figure("group_index", "group index of air", speed.group_index, None, ""),
        figure("c", "speed of light in vacuum", speed.c, Some(speed.u_c()), "m/s"),
        figure("coverage", "coverage probability", speed.budget.probability, None, ""),
    ];
    if let (Ok(k), Some(expanded)) = (&speed.budget.coverage_factor, speed.expanded()) {
        figures.push(figure("coverage_factor", "coverage factor", *k, None, ""));
        figures.push(figure("expanded", "expanded uncertainty of c", expanded, None, "m/s"));
    }
    if let Some(known) = speed.comparison {
        figures.push(figure("z", "(c − c₀)/u(c)", known.z, None, ""));
        figures.extend(known.e_n.map(|e_n| figure("e_n", "Eₙ = (c − c₀)/U(c)", e_n, None, "")));
        figures.push(figure("relative_difference", "(c − c₀)/c₀", known.relative_difference, None, ""));
    }
    figures
}

const fn figure(
    id: &'static str,
    name: &'static str,
    value: f64,
    uncertainty: Option<f64>,
    unit: &'static str,
) -> FitFigure {
    FitFigure { id, name, value, uncertainty, unit }
}

/// `residuals.csv`: each row of the line with its residual.
pub fn residuals_table(rows: &[ResidualRow]) -> Table {
    Table {
        name: "residuals",
        title: "Rows in the line and their residuals",
        columns: RESIDUAL_COLUMNS.to_vec(),
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
        number(row.residual_ns),
        optional(row.standardised),
    ]
}

/// `line.csv`: the figures of the line.
pub fn fit_table(figures: &[FitFigure]) -> Table {
    Table {
        name: "line",
        title: "The straight line: delay = intercept + slope × distance",
        columns: FIT_COLUMNS.to_vec(),
        rows: figures.iter().map(fit_cells).collect(),
    }
}

fn fit_cells(figure: &FitFigure) -> Vec<String> {
    vec![
        figure.id.into(),
        figure.name.into(),
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

const RESIDUAL_COLUMNS: &[Column] = &[
    ROW,
    Column {
        name: "distance_m",
        title: "distance",
        unit: "m",
        kind: Kind::Number,
        description: "Distance of the carriage from the splitter along the rails.",
    },
    Column {
        name: "u_distance_m",
        title: "standard uncertainty of the distance",
        unit: "m",
        kind: Kind::Number,
        description: "Standard uncertainty of that distance, parts shared with other rows included.",
    },
    Column {
        name: "delay_ns",
        title: "delay",
        unit: "ns",
        kind: Kind::Number,
        description: "Delay of edge B after edge A.",
    },
    Column {
        name: "u_delay_ns",
        title: "standard uncertainty of the delay",
        unit: "ns",
        kind: Kind::Number,
        description: "Standard uncertainty of that delay, parts shared with other rows included.",
    },
    Column {
        name: "residual_ns",
        title: "residual",
        unit: "ns",
        kind: Kind::Number,
        description: "Delay less the line's delay at that distance.",
    },
    Column {
        name: "standardised_residual",
        title: "residual over its standard uncertainty",
        unit: "",
        kind: Kind::Number,
        description: "Residual divided by its standard uncertainty.",
    },
];

const FIT_COLUMNS: &[Column] = &[
    Column {
        name: "figure",
        title: "figure",
        unit: "",
        kind: Kind::Text,
        description: "Identifier of the figure, the same in every notebook.",
    },
    Column {
        name: "name",
        title: "name",
        unit: "",
        kind: Kind::Text,
        description: "The figure's name in words.",
    },
    Column {
        name: "value",
        title: "value",
        unit: "",
        kind: Kind::Number,
        description: "Its value, in the unit that the last column names.",
    },
    Column {
        name: "standard_uncertainty",
        title: "standard uncertainty",
        unit: "",
        kind: Kind::Number,
        description: "Its standard uncertainty, in the same unit; empty where it has none.",
    },
    Column {
        name: "unit",
        title: "unit",
        unit: "",
        kind: Kind::Text,
        description: "Unit of value and uncertainty; empty for a pure number.",
    },
];

#[cfg(test)]
#[path = "exact_test.rs"]
mod tests;
