//! What a hand-out fixes, asks and asks for, and what it still lacks.

use super::types::{Field, HandoutView, TaskView};
use crate::analysis::Analysis;
use crate::notebook::{Asks, BenchField, Notebook, NotebookState, Piece, Rule, Task};
use crate::quantity::{Unit, parse};
use crate::words::Message;

/// How many rows must be in the line where no number of them is stated.
const LEAST_ROWS: f64 = 3.0;

/// The teacher's layer of a notebook.
pub fn handout_view(notebook: &Notebook, analysis: &Analysis) -> HandoutView {
    let page = notebook.state();
    let handout = &page.handout;
    HandoutView {
        entries: notebook.handed_out(),
        given: handout.given,
        fixed: handout.ruled(Rule::Fixed).collect(),
        needed: handout.ruled(Rule::Needed).collect(),
        tasks: handout.tasks.iter().map(|task| task_view(page, task)).collect(),
        missing: handout.ruled(Rule::Needed).filter(|piece| !is_there(page, analysis, *piece)).collect(),
    }
}

fn task_view(page: &NotebookState, task: &Task) -> TaskView {
    let answer = Field { text: task.answer.clone(), problem: problem(page, task), ..Field::default() };
    TaskView { id: task.id, at: task.at, asks: task.asks, text: task.text.clone(), answer }
}

/// What is wrong with an answer; an empty one is only missing.
fn problem(page: &NotebookState, task: &Task) -> Option<Message> {
    if task.asks != Asks::Number || task.answer.is_empty() {
        return None;
    }
    parse(&task.answer, page.decimal_mark, Unit::ONE).err().map(|error| error.message())
}

/// Whether what a hand-out asks for is there: of several texts that one which the others can't do without.
fn is_there(page: &NotebookState, analysis: &Analysis, piece: Piece) -> bool {
    let typed = |field| !page.text(field).trim().is_empty();
    match piece {
        Piece::Title => !page.title.trim().is_empty(),
        Piece::Cautions => !page.cautions_read.is_empty(),
        Piece::Source => typed(BenchField::Wavelength),
        Piece::Instruments => typed(BenchField::Instruments),
        Piece::Rails => !page.rails.is_empty(),
        Piece::Screen => typed(BenchField::SmallDivisions),
        Piece::TimeBases => typed(BenchField::TimeBaseUncertainty),
        Piece::Air => typed(BenchField::Temperature),
        Piece::Positions => !page.plan.is_empty(),
        Piece::Evidence => page.rows.iter().any(|row| row.evidence.is_some()),
        Piece::Uncertainty => !page.shared.is_empty(),
        Piece::Readings => {
            let used = analysis.rows.iter().filter(|row| row.part.is_used()).count();
            used as f64 >= least_rows(page)
        }
        Piece::Line => analysis.line.is_ok(),
        Piece::Result => analysis.speed.is_ok(),
        Piece::Aim => typed(BenchField::Aim),
        Piece::Method => typed(BenchField::Method),
        Piece::Discussion => typed(BenchField::Discussion),
        Piece::People => typed(BenchField::People),
        Piece::StudentNumber => typed(BenchField::StudentNumber),
        Piece::Group => typed(BenchField::Group),
        Piece::Date => typed(BenchField::Date),
        Piece::Answers => page.handout.tasks.iter().all(|task| {
            task.asks == Asks::Nothing || !task.answer.trim().is_empty() && problem(page, task).is_none()
        }),
    }
}

/// How many rows must be in the line; what can't be read is marked at its field.
fn least_rows(page: &NotebookState) -> f64 {
    let stated = parse(page.text(BenchField::LeastRows), page.decimal_mark, Unit::ONE);
    stated.ok().filter(|number| number.value > 0.0).map_or(LEAST_ROWS, |number| number.value)
}

#[cfg(test)]
#[path = "handout_test.rs"]
mod tests;
