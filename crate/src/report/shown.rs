//! Tables of what the page shows: texts as typed, and results rounded.

use super::table::{Column, Kind, Table};
use super::words;
use crate::notebook::Cell;
use crate::view::{ComponentView, Figure, RowState, RowView, TrialsView, View};

/// `readings.csv`: every row that holds something, struck ones with their reasons.
pub fn readings_table(view: &View) -> Table {
    Table {
        name: "readings",
        title: "Readings",
        columns: READING_COLUMNS.to_vec(),
        rows: shown_rows(view).map(reading_cells).collect(),
    }
}

/// The rows of [`readings_table`].
pub fn shown_rows(view: &View) -> impl Iterator<Item = &RowView> {
    view.rows.iter().filter(|row| row.state != RowState::Empty)
}

fn reading_cells(row: &RowView) -> Vec<String> {
    let ruler_unit = row.cells.get(&Cell::Reading).map_or_else(String::new, |field| field.unit.clone());
    let outside = if row.struck.is_empty() { &row.lacks } else { &row.struck };
    vec![
        row.number.to_string(),
        typed(row, Cell::Rail),
        typed(row, Cell::Reading),
        ruler_unit,
        typed(row, Cell::TimeBase),
        typed(row, Cell::EdgeA),
        typed(row, Cell::EdgeB),
        row.distance.clone(),
        row.delay.clone(),
        row.residual.clone(),
        words::state(row.state).into(),
        outside.clone(),
        typed(row, Cell::Remark),
    ]
}

/// A cell as typed, or what is taken for it while it is empty.
fn typed(row: &RowView, cell: Cell) -> String {
    row.cells.get(&cell).map_or_else(String::new, |field| words::taken(field).to_owned())
}

/// The figures of the line.
pub fn line_table(view: &View) -> Table {
    figures_table("line", "The straight line", &view.line.figures)
}

/// Other ways to look at the same rows.
pub fn checks_table(view: &View) -> Table {
    figures_table("checks", "Side checks", &view.line.checks)
}

/// The figures of the result.
pub fn result_table(view: &View) -> Table {
    figures_table("result", "Result", &view.result.figures)
}

/// The budget, line by line.
pub fn budget_table(view: &View) -> Table {
    let cells = |part: &ComponentView| {
        vec![
            part.name.clone(),
            part.acts_on.clone(),
            part.u.clone(),
            part.shape.clone(),
            part.degrees_of_freedom.clone(),
            part.sensitivity.clone(),
            part.contribution.clone(),
            part.share_text.clone(),
            part.remark.clone(),
        ]
    };
    Table {
        name: "budget",
        title: "Uncertainty budget of c",
        columns: BUDGET_COLUMNS.to_vec(),
        rows: view.budget.components.iter().map(cells).collect(),
    }
}

/// What the budget adds up to.
pub fn budget_figures_table(view: &View) -> Table {
    figures_table("budget_figures", "The budget added up", &view.budget.figures)
}

/// What the trials gave.
pub fn trials_table(trials: &TrialsView) -> Table {
    figures_table("trials", "Monte Carlo trials", &trials.figures)
}

fn figures_table(name: &'static str, title: &'static str, figures: &[Figure]) -> Table {
    let cells = |figure: &Figure| {
        let meaning = match figure.source.as_str() {
            "" => figure.meaning.clone(),
            source => format!("{} ({source})", figure.meaning.trim_end_matches('.')),
        };
        vec![figure.name.clone(), figure.symbol.clone(), figure.value.clone(), meaning]
    };
    Table { name, title, columns: FIGURE_COLUMNS.to_vec(), rows: figures.iter().map(cells).collect() }
}

const FIGURE_COLUMNS: &[Column] = &[
    text("name", "quantity", "", "Name of the quantity."),
    text("symbol", "symbol", "", "Its symbol."),
    text("value", "value", "", "Value, standard uncertainty and unit, rounded."),
    text("meaning", "meaning", "", "What it is and where it comes from."),
];

const BUDGET_COLUMNS: &[Column] = &[
    text("component", "component", "", "From where the error comes."),
    text("acts_on", "acts on", "", "Which distances or delays it moves."),
    text("u", "u", "", "Its standard uncertainty with unit, rounded."),
    text("shape", "distribution", "", "How it is distributed."),
    text("degrees_of_freedom", "ν", "", "Its degrees of freedom."),
    text("sensitivity", "sensitivity", "", "Change of c for one unit of it."),
    text("contribution", "contribution", "", "The standard uncertainty of c that it causes."),
    text("share", "share", "", "Its share of the variance of c."),
    text("remark", "remark", "", "How it came into the budget, or why it can’t matter."),
];

/// The column by which the rows of different tables are matched.
pub(super) const ROW: Column = Column {
    name: "row",
    title: "row",
    unit: "",
    kind: Kind::Number,
    description: "Number of the row in the notebook, from 1.",
};

const READING_COLUMNS: &[Column] = &[
    ROW,
    text("rail", "rail", "", "Name of the rail on which the position was read."),
    text("reading", "reading", "", "Rail reading as typed; a bare number is in the unit of the ruler."),
    text("ruler_unit", "ruler unit", "", "Unit in which the ruler of that rail counts."),
    text("time_per_division", "time per division", "ns", "As typed; a bare number is in nanoseconds."),
    text("edge_a", "edge A", "div", "Edge A on the screen, as typed; repeats are separated by semicolons."),
    text("edge_b", "edge B", "div", "Edge B on the screen, as typed; repeats are separated by semicolons."),
    text("distance_m", "distance", "m", "Distance from the splitter with its standard uncertainty, rounded."),
    text("delay_ns", "delay", "ns", "Delay of edge B after edge A with its standard uncertainty, rounded."),
    text("standardised_residual", "residual over u", "", "Residual over its standard uncertainty, rounded."),
    text("state", "state", "", "Whether the row is in the line, struck out, or incomplete."),
    text("outside_because", "why not in the line", "", "Why the row is struck out, or what it lacks."),
    text("remark", "remark", "", "Remark as typed."),
];

const fn text(
    name: &'static str,
    title: &'static str,
    unit: &'static str,
    description: &'static str,
) -> Column {
    Column { name, title, unit, kind: Kind::Text, description }
}

#[cfg(test)]
#[path = "shown_test.rs"]
mod tests;
