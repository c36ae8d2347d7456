//! Tables of what the page shows: texts as typed, and results rounded.

use super::labels;
use super::table::{Column, Kind, Table, UnsaidColumn, columns};
use crate::message;
use crate::notebook::{Asks, Cell};
use crate::view::{ComponentView, Figure, RowState, RowView, TrialsView, View};
use crate::words::{Message, Value, Words};

/// Every row that holds something, struck ones with their reasons. Where all rows are in the line, and where none has a
/// remark, there is no column for it.
pub fn readings_table(view: &View, words: &dyn Words) -> Table {
    Table {
        name: "readings",
        title: words.say(&message!("readings-title")),
        columns: columns(READINGS_COLUMNS, words),
        rows: shown_rows(view).map(|row| reading_cells(row, words)).collect(),
    }
    .without_empty(&["outside_because", "remark"])
}

/// The rows of [`readings_table`].
pub fn shown_rows(view: &View) -> impl Iterator<Item = &RowView> {
    view.rows.iter().filter(|row| row.state != RowState::Empty)
}

fn reading_cells(row: &RowView, words: &dyn Words) -> Vec<String> {
    let ruler_unit = row.cells.get(&Cell::Reading).map_or_else(String::new, |field| field.unit.clone());
    let typed = |cell| typed_cell(row, cell, words);
    let outside = match (row.state, outside(row, words)) {
        (RowState::Used, _) => String::new(),
        (state, why) if why.is_empty() => words.say(&labels::state(state)),
        (state, why) => words.say(&message!("tables-outside", state = labels::state(state), why = why)),
    };
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
        outside,
        typed(Cell::Remark),
    ]
}

/// A cell as typed, or what is taken for it while it is empty.
pub(super) fn typed_cell(row: &RowView, cell: Cell, words: &dyn Words) -> String {
    row.cells.get(&cell).map_or_else(String::new, |field| labels::typed_or_default(field, words))
}

/// Why a row is not in the line: the reason given as it was struck out, or what it lacks.
pub(super) fn outside(row: &RowView, words: &dyn Words) -> String {
    let lacks = || row.lacks.as_ref().map_or_else(String::new, |lacks| words.say(lacks));
    if row.struck.is_empty() { lacks() } else { row.struck.clone() }
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

/// The budget, part by part; what is said of a part stands in [`budget_notes`], by its number. On what it acts its name
/// says, or the list of errors that rows share.
pub fn budget_table(view: &View, words: &dyn Words) -> Table {
    let notes = budget_notes(view, words);
    let cells = |part: &ComponentView| {
        let note = words.say(&part.remark);
        let note = notes.iter().position(|known| *known == note);
        vec![
            words.text(&part.name),
            part.u.clone(),
            words.say(&part.shape),
            part.degrees_of_freedom.clone(),
            part.sensitivity.clone(),
            part.contribution.clone(),
            part.share_text.clone(),
            note.map_or_else(String::new, |place| (place + 1).to_string()),
        ]
    };
    Table {
        name: "budget",
        title: words.say(&message!("tables-budget")),
        columns: columns(BUDGET_COLUMNS, words),
        rows: view.budget.components.iter().map(cells).collect(),
    }
    .without_empty(&["note"])
}

/// What is said of the parts of the budget, each thing once.
pub fn budget_notes(view: &View, words: &dyn Words) -> Vec<String> {
    let mut notes: Vec<String> = Vec::new();
    for part in &view.budget.components {
        let note = words.say(&part.remark);
        if !note.is_empty() && !notes.contains(&note) {
            notes.push(note);
        }
    }
    notes
}

/// What the trials gave. What is said of each figure says how far the trials can be trusted, so it stands here.
pub fn trials_table(trials: &TrialsView, words: &dyn Words) -> Table {
    let meaning = message!("columns-figures-meaning");
    let told = |figure: &Figure| said(&figure.meaning, words);
    table_of("trials", &message!("trials-title"), &trials.figures, (&meaning, &told), words)
}

/// Figures, each with its method or source, and what is to be known of it in this notebook. What such a figure means in
/// any notebook is said on the page, and takes two pages on paper.
fn figures_table(name: &'static str, title: &Message, figures: &[Figure], words: &dyn Words) -> Table {
    let source = message!("columns-figures-source");
    let told = |figure: &Figure| match (&figure.source, figure.meaning.as_slice()) {
        (None, meaning) => said(meaning, words),
        (Some(source), [] | [_]) => words.text(source),
        (Some(source), [_, here @ ..]) => format!("{}. {}", words.text(source), said(here, words)),
    };
    table_of(name, title, figures, (&source, &told), words)
}

/// Figures with what is told of each, under a head.
fn table_of(
    name: &'static str,
    title: &Message,
    figures: &[Figure],
    (head, told): (&Message, &dyn Fn(&Figure) -> String),
    words: &dyn Words,
) -> Table {
    let cells = |figure: &Figure| {
        vec![words.text(&figure.name), figure.symbol.clone(), words.text(&figure.value), told(figure)]
    };
    let mut columns = columns(FIGURES_COLUMNS, words);
    let basis =
        Column { name: "basis", title: words.say(head), unit: "", kind: Kind::Text, description: None };
    columns.push(basis);
    Table { name, title: words.say(title), columns, rows: figures.iter().map(cells).collect() }
}

/// Sentences that follow one another.
fn said(sentences: &[Value], words: &dyn Words) -> String {
    sentences.iter().map(|sentence| words.text(sentence)).collect::<Vec<_>>().join(" ")
}

const FIGURES_COLUMNS: &[UnsaidColumn] = &[
    text("name", message!("columns-figures-name"), ""),
    UnsaidColumn {
        name: "symbol",
        title: message!("columns-figures-symbol"),
        unit: "",
        kind: Kind::Symbol,
        description: None,
    },
    text("value", message!("columns-figures-value"), ""),
];

const BUDGET_COLUMNS: &[UnsaidColumn] = &[
    text("component", message!("columns-budget-component"), ""),
    text("u", message!("columns-budget-u"), ""),
    text("shape", message!("columns-budget-shape"), ""),
    text("degrees_of_freedom", message!("columns-budget-degrees_of_freedom"), ""),
    text("sensitivity", message!("columns-budget-sensitivity"), ""),
    text("contribution", message!("columns-budget-contribution"), ""),
    text("share", message!("columns-budget-share"), ""),
    text("note", message!("columns-budget-note"), ""),
];

/// The column by which the rows of different tables are matched.
pub(super) const ROW: UnsaidColumn = UnsaidColumn {
    name: "row",
    title: message!("columns-row"),
    unit: "",
    kind: Kind::Number,
    description: Some(message!("columns-row-meaning")),
};

const READINGS_COLUMNS: &[UnsaidColumn] = &[
    ROW,
    text("rail", message!("columns-readings-rail"), ""),
    text("reading", message!("columns-readings-reading"), ""),
    text("ruler_unit", message!("columns-readings-ruler_unit"), ""),
    text("time_per_division", message!("columns-readings-time_per_division"), "ns"),
    text("edge_a", message!("columns-readings-edge_a"), "div"),
    text("edge_b", message!("columns-readings-edge_b"), "div"),
    text("distance_m", message!("columns-readings-distance_m"), "m"),
    text("delay_ns", message!("columns-readings-delay_ns"), "ns"),
    text("normalized_residual", message!("columns-readings-normalized_residual"), ""),
    text("outside_because", message!("columns-readings-outside_because"), ""),
    text("remark", message!("columns-readings-remark"), ""),
];

const ANSWERS_COLUMNS: &[UnsaidColumn] = &[
    text("question", message!("columns-answers-question"), ""),
    text("answer", message!("columns-answers-answer"), ""),
];

const fn text(name: &'static str, title: Message, unit: &'static str) -> UnsaidColumn {
    UnsaidColumn { name, title, unit, kind: Kind::Text, description: None }
}

#[cfg(test)]
#[path = "shown_test.rs"]
mod tests;
