//! From notebook and analysis to a [`View`].

use litemap::LiteMap;

use super::budget::budget_view;
use super::cautions::cautions_view;
use super::evidence::{delays_view, kind};
use super::fields::{Problems, bench_fields, cell_fields, rail_fields, splice_uncertainty};
use super::figures::{measured, undivided};
use super::fitted_line::line_view;
use super::handout::handout_view;
use super::proposal::proposal;
use super::result::result_view;
use super::trials::trial_plan_view;
use super::types::{RailView, RowNotice, RowState, RowView, SettingView, SharedView, View};
use crate::analysis::parts::unit_of;
use crate::analysis::place::SharedPart;
use crate::analysis::read::ruler_unit;
use crate::analysis::{Analysis, MeasuredValue, Place, RailStand, RowPart, RowReading};
use crate::message;
use crate::notebook::{Notebook, NotebookState, Rail, Row, RowId, UncertaintyOf};
use crate::quantity::{DecimalMark, Unit, fixed, p_equation};
use crate::words::Message;

/// A notice that names more rows than this is about all of them rather than about each: no row shows it.
const MARKED: usize = 8;
/// One that names more than this is only marked in each.
const TOLD: usize = 2;

/// What was put into words before: the readings, and the rows that came of them, for as long as decimals are written
/// alike.
#[derive(Clone, Debug, Default)]
pub struct PreviousView {
    /// The readings.
    pub readings: Vec<RowReading>,
    /// The rows.
    pub rows: Vec<RowView>,
    /// How decimals were written.
    pub decimal_mark: DecimalMark,
}

/// Puts everything into words and digits.
pub fn view(notebook: &Notebook, analysis: &Analysis) -> View {
    view_after(notebook, analysis, &PreviousView::default())
}

/// The same, with the words for distances and delays that are as they were before.
pub fn view_after(notebook: &Notebook, analysis: &Analysis, told: &PreviousView) -> View {
    let page = notebook.state();
    let problems = Problems::of(analysis);
    View {
        title: page.title.clone(),
        decimal_mark: page.decimal_mark,
        path: page.path,
        beam: page.beam,
        can_undo: notebook.can_undo(),
        can_redo: notebook.can_redo(),
        entries: notebook.log().len(),
        cautions: cautions_view(page),
        bench: bench_fields(page, &problems),
        handout: handout_view(notebook, analysis),
        rails: page
            .rails
            .iter()
            .enumerate()
            .map(|(index, rail)| rail_view(page, index, rail, analysis, &problems))
            .collect(),
        settings: settings(page, &problems),
        shared: shared(page, &problems),
        rows: rows(page, analysis, &problems, told),
        notes: page.notes.clone(),
        photo: page.photo.clone(),
        proposal: proposal(page, analysis),
        delays: delays_view(page, analysis),
        line: line_view(page, analysis),
        budget: budget_view(page, analysis),
        trials: trial_plan_view(page, analysis),
        result: result_view(page, analysis),
        notices: analysis.notices.clone(),
    }
}

fn rail_view(
    page: &NotebookState,
    index: usize,
    rail: &Rail,
    analysis: &Analysis,
    problems: &Problems,
) -> RailView {
    let stand = analysis.rails.get(index);
    RailView {
        id: rail.id,
        fields: rail_fields(page, rail, index, problems),
        unit: rail.unit,
        unit_symbol: ruler_unit(rail.unit).symbol().to_owned(),
        sense: rail.sense,
        splice: rail.splice.clone(),
        splice_problems: problems.of_splice(rail.id),
        splice_uncertainty: splice_uncertainty(page, rail, problems),
        stands: stand.and_then(|stand| stands(page, rail, stand)),
        step: step(page, rail, analysis),
        rows: analysis.rows.iter().filter(|row| row.rail == Some(rail.id) && row.part.is_used()).count(),
    }
}

fn stands(page: &NotebookState, rail: &Rail, stand: &RailStand) -> Option<Message> {
    let (mark, place) = stand.mark.as_ref()?;
    let at = undivided(*mark, ruler_unit(rail.unit), page.decimal_mark);
    let distance = measured(Some(place), "m", page.decimal_mark);
    Some(if stand.free {
        message!("rails-fitted", mark = at, distance = distance)
    } else {
        message!("rails-stands", mark = at, distance = distance)
    })
}

fn step(page: &NotebookState, rail: &Rail, analysis: &Analysis) -> Option<Message> {
    let line = analysis.line.as_ref().ok()?;
    let mark = page.decimal_mark;
    let in_millimetres = |value: f64, uncertainty: Option<f64>| {
        let step = MeasuredValue { value: value * 1000.0, uncertainty: uncertainty.map(|u| u * 1000.0) };
        measured(Some(&step), "mm", mark)
    };
    if let Some(found) = line.free.iter().position(|id| *id == rail.id).and_then(|k| line.fit.free.get(k)) {
        return Some(message!("rails-moved", step = in_millimetres(found.value, found.u)));
    }
    let check = line.checks.steps.iter().find(|check| check.rail == rail.id)?;
    let step = in_millimetres(check.step.value, Some(check.step.uncertainty));
    let p = p_equation(check.step.p_value, mark);
    Some(if check.step.p_value < 0.05 {
        message!("rails-step-significant", step = step, p = p)
    } else {
        message!("rails-step", step = step, p = p)
    })
}

fn settings(page: &NotebookState, problems: &Problems) -> Vec<SettingView> {
    page.settings
        .iter()
        .map(|setting| {
            let at = |uncertainty| Place::Setting { setting: setting.id, uncertainty };
            SettingView {
                id: setting.id,
                time_per_division: problems.field(
                    &at(false),
                    &setting.time_per_division,
                    Unit::NANOSECOND,
                    "",
                ),
                uncertainty: problems.uncertainty(
                    page,
                    Some(UncertaintyOf::Setting(setting.id)),
                    &at(true),
                    &setting.uncertainty,
                    Unit::PERCENT,
                    None,
                ),
            }
        })
        .collect()
}

fn shared(page: &NotebookState, problems: &Problems) -> Vec<SharedView> {
    page.shared
        .iter()
        .map(|shared| {
            let at = |part| Place::Shared { shared: shared.id, part };
            let unit = unit_of(shared.effect, shared.acts_on);
            SharedView {
                id: shared.id,
                name: shared.name.clone(),
                acts_on: shared.acts_on,
                effect: shared.effect,
                rows: shared.rows.clone(),
                uncertainty: problems.uncertainty(
                    page,
                    Some(UncertaintyOf::Shared(shared.id)),
                    &at(SharedPart::Uncertainty),
                    &shared.uncertainty,
                    unit,
                    None,
                ),
                shape: page.shape(shared),
                degrees_of_freedom: problems.field(
                    &at(SharedPart::DegreesOfFreedom),
                    &shared.degrees_of_freedom,
                    Unit::ONE,
                    "∞",
                ),
            }
        })
        .collect()
}

fn rows(page: &NotebookState, analysis: &Analysis, problems: &Problems, told: &PreviousView) -> Vec<RowView> {
    let residuals = residuals(analysis, page.decimal_mark);
    let pairs = page.rows.iter().zip(&analysis.rows).enumerate();
    pairs
        .map(|(place, (row, reading))| {
            let (distance, delay) = distance_and_delay(reading, told.at(place, page.decimal_mark), page);
            let (state, lacks) = state(&reading.part);
            RowView {
                id: row.id,
                number: reading.number,
                state,
                cells: cell_fields(page, row, reading, problems),
                evidence: kind(row),
                struck: row.struck.clone().unwrap_or_default(),
                lacks,
                distance,
                delay,
                residual: residuals.get(&row.id).cloned().unwrap_or_default(),
                notices: notices_of(row, analysis),
            }
        })
        .collect()
}

impl PreviousView {
    /// What was told of a place, if decimals are still written so.
    fn at(&self, place: usize, mark: DecimalMark) -> Option<(&RowReading, &RowView)> {
        let known = self.readings.get(place).zip(self.rows.get(place));
        known.filter(|_| self.decimal_mark == mark)
    }
}

/// Distance and delay in digits: those told before, where the numbers are the same.
fn distance_and_delay(
    reading: &RowReading,
    before: Option<(&RowReading, &RowView)>,
    page: &NotebookState,
) -> (String, String) {
    let digits = |value: Option<&MeasuredValue>| measured(value, "", page.decimal_mark);
    let distance = before.filter(|(old, _)| old.distance == reading.distance);
    let delay = before.filter(|(old, _)| old.delay == reading.delay);
    (
        distance.map_or_else(|| digits(reading.distance.as_ref()), |(_, told)| told.distance.clone()),
        delay.map_or_else(|| digits(reading.delay.as_ref()), |(_, told)| told.delay.clone()),
    )
}

/// How a row takes part, and what it lacks.
fn state(part: &RowPart) -> (RowState, Option<Message>) {
    match part {
        RowPart::Empty => (RowState::Empty, None),
        RowPart::Incomplete { lacks } => (RowState::Incomplete, Some(lacks.message())),
        RowPart::Struck => (RowState::Struck, None),
        RowPart::Used => (RowState::Used, None),
    }
}

fn residuals(analysis: &Analysis, mark: DecimalMark) -> LiteMap<RowId, String> {
    let Ok(line) = &analysis.line else { return LiteMap::new() };
    let each = line.rows.iter().zip(&line.fit.rows);
    each.filter_map(|(row, fit)| fit.normalised.map(|w| (*row, fixed(w, -1, mark)))).collect()
}

fn notices_of(row: &Row, analysis: &Analysis) -> Vec<RowNotice> {
    let few = analysis.notices.iter().filter(|notice| notice.rows.len() <= MARKED);
    few.filter(|notice| notice.rows.contains(&row.id))
        .map(|notice| RowNotice {
            weight: notice.weight,
            text: notice.text.clone(),
            told: notice.rows.len() <= TOLD,
        })
        .collect()
}
