//! Tables of what the page shows: texts as typed, and results rounded.

use super::labels;
use super::table::{Kind, Table, UnsaidColumn, columns};
use crate::message;
use crate::notebook::{Asks, Cell};
use crate::view::{ComponentView, Figure, RowState, RowView, TrialsView, View};
use crate::words::{Message, Value, Words};

/// `readings.csv`: every row that holds something, struck ones with their reasons.
pub fn readings_table(view: &View, words: &dyn Words) -> Table {
    Table {
        name: "readings",
        title: words.say(&message!("readings-title")),
        columns: columns(READINGS_COLUMNS, words),
        rows: shown_rows(view).map(|row| reading_cells(row, words)).collect(),
    }
}

/// The rows of [`readings_table`].
pub fn shown_rows(view: &View) -> impl Iterator<Item = &RowView> {
    view.rows.iter().filter(|row| row.state != RowState::Empty)
}

fn reading_cells(row: &RowView, words: &dyn Words) -> Vec<String> {
    let ruler_unit = row.cells.get(&Cell::Reading).map_or_else(String::new, |field| field.unit.clone());
    // As typed, or what is taken for it while it is empty.
    let typed = |cell| row.cells.get(&cell).map_or_else(String::new, |field| labels::taken(field, words));
    let lacks = row.lacks.as_ref().map_or_else(String::new, |lacks| words.say(lacks));
    let outside = if row.struck.is_empty() { lacks } else { row.struck.clone() };
    vec![
        row.number.to_string(),
        typed(Cell::Rail),
        typed(Cell::Reading),
        ruler_unit,
        typed(Cell::TimeBase),
        typed(Cell::EdgeA),
        typed(Cell::EdgeB),
        row.distance.clone(),
        row.delay.clone(),
        row.residual.clone(),
        words.say(&labels::state(row.state)),
        outside,
        typed(Cell::Remark),
    ]
}

/// The questions of a hand-out, with their answers.
pub fn answers_table(view: &View, words: &dyn Words) -> Table {
    let asked = view.handout.tasks.iter().filter(|task| task.asks != Asks::Nothing);
    Table {
        name: "answers",
        title: words.say(&message!("tables-answers")),
        columns: columns(ANSWERS_COLUMNS, words),
        rows: asked.map(|task| vec![task.text.clone(), task.answer.text.clone()]).collect(),
    }
}

/// The figures of the line.
pub fn line_table(view: &View, words: &dyn Words) -> Table {
    figures_table("line", &message!("tables-line"), &view.line.figures, words)
}

/// Other ways to look at the same rows.
pub fn checks_table(view: &View, words: &dyn Words) -> Table {
    figures_table("checks", &message!("tables-checks"), &view.line.checks, words)
}

/// The figures of the result.
pub fn result_table(view: &View, words: &dyn Words) -> Table {
    figures_table("result", &message!("result-title"), &view.result.figures, words)
}

/// The budget, line by line.
pub fn budget_table(view: &View, words: &dyn Words) -> Table {
    let cells = |part: &ComponentView| {
        vec![
            words.text(&part.name),
            words.say(&part.acts_on),
            part.u.clone(),
            words.say(&part.shape),
            part.degrees_of_freedom.clone(),
            part.sensitivity.clone(),
            part.contribution.clone(),
            part.share_text.clone(),
            words.say(&part.remark),
        ]
    };
    Table {
        name: "budget",
        title: words.say(&message!("tables-budget")),
        columns: columns(BUDGET_COLUMNS, words),
        rows: view.budget.components.iter().map(cells).collect(),
    }
}

/// What the budget adds up to.
pub fn budget_figures_table(view: &View, words: &dyn Words) -> Table {
    figures_table("budget_figures", &message!("tables-budget_figures"), &view.budget.figures, words)
}

/// What the trials gave.
pub fn trials_table(trials: &TrialsView, words: &dyn Words) -> Table {
    figures_table("trials", &message!("trials-title"), &trials.figures, words)
}

fn figures_table(name: &'static str, title: &Message, figures: &[Figure], words: &dyn Words) -> Table {
    let cells = |figure: &Figure| {
        let meaning = said(&figure.meaning, words);
        let meaning = match &figure.source {
            None => meaning,
            Some(source) => {
                words.say(&message!("tables-sourced", meaning = meaning, source = source.clone()))
            }
        };
        vec![words.text(&figure.name), figure.symbol.clone(), words.text(&figure.value), meaning]
    };
    Table {
        name,
        title: words.say(title),
        columns: columns(FIGURES_COLUMNS, words),
        rows: figures.iter().map(cells).collect(),
    }
}

/// Sentences that follow one another.
fn said(sentences: &[Value], words: &dyn Words) -> String {
    sentences.iter().map(|sentence| words.text(sentence)).collect::<Vec<_>>().join(" ")
}

const FIGURES_COLUMNS: &[UnsaidColumn] = &[
    text("name", message!("columns-figures-name"), "", message!("columns-figures-name-meaning")),
    UnsaidColumn {
        name: "symbol",
        title: message!("columns-figures-symbol"),
        unit: "",
        kind: Kind::Symbol,
        description: message!("columns-figures-symbol-meaning"),
    },
    text("value", message!("columns-figures-value"), "", message!("columns-figures-value-meaning")),
    text("meaning", message!("columns-figures-meaning"), "", message!("columns-figures-meaning-meaning")),
];

const BUDGET_COLUMNS: &[UnsaidColumn] = &[
    text("component", message!("columns-budget-component"), "", message!("columns-budget-component-meaning")),
    text("acts_on", message!("columns-budget-acts_on"), "", message!("columns-budget-acts_on-meaning")),
    text("u", message!("columns-budget-u"), "", message!("columns-budget-u-meaning")),
    text("shape", message!("columns-budget-shape"), "", message!("columns-budget-shape-meaning")),
    text(
        "degrees_of_freedom",
        message!("columns-budget-degrees_of_freedom"),
        "",
        message!("columns-budget-degrees_of_freedom-meaning"),
    ),
    text(
        "sensitivity",
        message!("columns-budget-sensitivity"),
        "",
        message!("columns-budget-sensitivity-meaning"),
    ),
    text(
        "contribution",
        message!("columns-budget-contribution"),
        "",
        message!("columns-budget-contribution-meaning"),
    ),
    text("share", message!("columns-budget-share"), "", message!("columns-budget-share-meaning")),
    text("remark", message!("columns-budget-remark"), "", message!("columns-budget-remark-meaning")),
];

/// The column by which the rows of different tables are matched.
pub(super) const ROW: UnsaidColumn = UnsaidColumn {
    name: "row",
    title: message!("columns-row"),
    unit: "",
    kind: Kind::Number,
    description: message!("columns-row-meaning"),
};

const READINGS_COLUMNS: &[UnsaidColumn] = &[
    ROW,
    text("rail", message!("columns-readings-rail"), "", message!("columns-readings-rail-meaning")),
    text("reading", message!("columns-readings-reading"), "", message!("columns-readings-reading-meaning")),
    text(
        "ruler_unit",
        message!("columns-readings-ruler_unit"),
        "",
        message!("columns-readings-ruler_unit-meaning"),
    ),
    text(
        "time_per_division",
        message!("columns-readings-time_per_division"),
        "ns",
        message!("columns-readings-time_per_division-meaning"),
    ),
    text("edge_a", message!("columns-readings-edge_a"), "div", message!("columns-readings-edge_a-meaning")),
    text("edge_b", message!("columns-readings-edge_b"), "div", message!("columns-readings-edge_b-meaning")),
    text(
        "distance_m",
        message!("columns-readings-distance_m"),
        "m",
        message!("columns-readings-distance_m-meaning"),
    ),
    text(
        "delay_ns",
        message!("columns-readings-delay_ns"),
        "ns",
        message!("columns-readings-delay_ns-meaning"),
    ),
    text(
        "normalized_residual",
        message!("columns-readings-normalized_residual"),
        "",
        message!("columns-readings-normalized_residual-meaning"),
    ),
    text("state", message!("columns-readings-state"), "", message!("columns-readings-state-meaning")),
    text(
        "outside_because",
        message!("columns-readings-outside_because"),
        "",
        message!("columns-readings-outside_because-meaning"),
    ),
    text("remark", message!("columns-readings-remark"), "", message!("columns-readings-remark-meaning")),
];

const ANSWERS_COLUMNS: &[UnsaidColumn] = &[
    text("question", message!("columns-answers-question"), "", message!("columns-answers-question-meaning")),
    text("answer", message!("columns-answers-answer"), "", message!("columns-answers-answer-meaning")),
];

const fn text(name: &'static str, title: Message, unit: &'static str, description: Message) -> UnsaidColumn {
    UnsaidColumn { name, title, unit, kind: Kind::Text, description }
}

#[cfg(test)]
#[path = "shown_test.rs"]
mod tests;
