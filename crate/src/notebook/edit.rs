//! Everything a person can do to a notebook, one variant each.
//!
//! An edit carries what was done, never what follows from it; applying it is total or refused, and a refused
//! edit changes nothing.

#[cfg(not(target_arch = "wasm32"))]
use std::collections::BTreeMap;

use litemap::LiteMap;

#[cfg(not(target_arch = "wasm32"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::claim::Claim;
use super::edit_error::{EditError, HIGHEST};
use super::handout::{Asks, Handout, Piece, Rule, Task, TaskId};
use super::light::{Beam, Path};
use super::merged::MergedLog;
use super::note::{Note, NoteId};
use super::splice::Splice;
use super::state::{
    BenchField, CautionsRead, Cell, CovarianceOf, NotebookState, PlannedPosition, PositionId, Rail,
    RailField, RailId, Row, RowId, RulerUnit, Seal, Sense, Setting, SettingId, SharedError, SharedId,
    StatedCovariance, TrialPlan,
};
use super::uncertainty::{UncertaintyKind, UncertaintyOf};
use crate::quantity::DecimalMark;
use slope_evidence::stored::{Estimator, Evidence, Grid, StoredFile};

/// One thing a person did.
///
/// Its JSON form is the edit's name holding what it carries, as in `{"set_title": "Tuesday"}` or `{"set_cell": {"row": 3,
/// "cell": "reading", "text": "12.5"}}`, and the bare word for `"undo"` and `"redo"`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Edit {
    /// Gave the notebook a title.
    SetTitle(String),
    /// Chose how decimal numbers are written.
    SetDecimalMark(DecimalMark),
    /// Wrote a text of the bench or of the report.
    SetBench {
        /// Which.
        field: BenchField,
        /// What was typed.
        text: String,
    },
    /// Said, under this name, that the cautions were read. It is no permission to begin.
    ReadCautions(String),
    /// Copied another notebook, under this title, unless its title was fixed. Nobody has read the cautions for the copy.
    Copied(String),
    /// Chose what the carriage carries.
    SetPath(Path),
    /// Chose how the beam reaches it.
    SetBeam(Beam),
    /// Laid a rail behind the others.
    AddRail(RailId),
    /// Wrote a text of a rail.
    SetRail {
        /// Which rail.
        rail: RailId,
        /// Which text.
        field: RailField,
        /// What was typed.
        text: String,
    },
    /// Named a rail. Rows and planned positions that call it by its name before do so by the new one, as long as no other
    /// rail has either.
    RenameRail {
        /// Which rail.
        rail: RailId,
        /// What was typed.
        name: String,
    },
    /// Chose the unit of a ruler.
    SetRulerUnit {
        /// Which rail.
        rail: RailId,
        /// The unit.
        unit: RulerUnit,
    },
    /// Chose the sense of a ruler.
    SetSense {
        /// Which rail.
        rail: RailId,
        /// The sense.
        sense: Sense,
    },
    /// Said where a rail stands.
    SetSplice {
        /// Which rail.
        rail: RailId,
        /// How it is joined.
        splice: Splice,
    },
    /// Took a rail away. Rows that name it keep what was typed.
    RemoveRail(RailId),
    /// Wrote a time base setting with its own uncertainty, a new one if the number is new.
    SetSetting(Setting),
    /// Took a setting away.
    RemoveSetting(SettingId),
    /// Chose as what an uncertainty is typed.
    SetKind {
        /// Which uncertainty.
        of: UncertaintyOf,
        /// As a limit, or as a standard uncertainty.
        kind: UncertaintyKind,
    },
    /// Wrote a shared error, a new one if the number is new.
    SetShared(SharedError),
    /// Took a shared error away.
    RemoveShared(SharedId),
    /// Stated a full covariance matrix, in place of the one before of the same kind.
    SetCovariance(StatedCovariance),
    /// Took a stated covariance matrix away.
    RemoveCovariance(CovarianceOf),
    /// Wrote a planned carriage position, a new one if the number is new.
    SetPosition(PlannedPosition),
    /// Took a planned carriage position away: it is no reading, so nothing measured is lost.
    RemovePosition(PositionId),
    /// Said that the readings come from a simulated bench, and from which seed its errors were drawn.
    SetRehearsal(u32),
    /// Began a row.
    AddRow {
        /// A number no row of this notebook had before.
        row: RowId,
        /// The row it stands behind; at the end if absent.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        after: Option<RowId>,
        /// What its cells hold to begin with.
        #[cfg_attr(not(target_arch = "wasm32"), schemars(with = "BTreeMap<Cell, String>"))]
        #[cfg_attr(not(target_arch = "wasm32"), ts(as = "BTreeMap<Cell, String>"))]
        #[serde(default, skip_serializing_if = "LiteMap::is_empty")]
        cells: LiteMap<Cell, String>,
    },
    /// Typed in a cell.
    SetCell {
        /// Which row.
        row: RowId,
        /// Which cell.
        cell: Cell,
        /// What was typed.
        text: String,
    },
    /// Struck a row out. It stays visible.
    StrikeRow {
        /// Which row.
        row: RowId,
        /// Why.
        reason: String,
    },
    /// Took a strike back.
    RestoreRow(RowId),
    /// Put a photograph of the set-up beside the bench, in place of the one before, or took it away.
    SetPhoto(Option<StoredFile>),
    /// Wrote a note between the rows, a new one if the number is new.
    SetNote(Note),
    /// Took a note away.
    RemoveNote(NoteId),
    /// Marked the grid of a screen on a picture, a new one if the number is new.
    SetGrid(Grid),
    /// Gave a row a picture or traces, or moved its marks; without any, its delay is typed again.
    SetEvidence {
        /// Which row.
        row: RowId,
        /// From what its delay is taken.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        evidence: Option<Evidence>,
    },
    /// Chose how edges are timed on traces.
    SetEstimator(Estimator),
    /// Chose which uncertainty is claimed.
    SetClaim(Claim),
    /// Chose how the Monte Carlo trials are drawn.
    SetTrials(TrialPlan),
    /// Laid a seal over the result, with a salt drawn at random.
    Seal(String),
    /// Opened the seal. Neither this nor the seal can be taken back.
    OpenSeal,
    /// Ruled whether a piece is fixed or asked for once the notebook is handed out.
    SetPiece(Piece, Rule),
    /// Wrote a text or question for those to whom the notebook is handed out, a new one if the number is new: what it is
    /// about, what it asks for, the text.
    SetTask(TaskId, Piece, Asks, String),
    /// Took such a text or question away.
    RemoveTask(TaskId),
    /// Answered a question, with what was typed.
    Answer(TaskId, String),
    /// Handed the notebook out: all before this is the teacher's layer. It can't be taken back, and is there once.
    HandOut,
    /// Merged a partner's notebook, with all that is done together with this.
    Merged(MergedLog),
    /// Did several things at one stroke, such as pasting a block. All or none.
    Together(Vec<Edit>),
    /// Took back the last thing done and not taken back yet.
    Undo,
    /// Did again what was last taken back.
    Redo,
}

impl Edit {
    /// Does this edit to `page`; it was made at the time `at`.
    ///
    /// # Errors
    /// When the edit names what does not exist, or breaks a rule; `page` may then be half changed, so hand in a
    /// copy where that matters ([`super::Notebook::apply`] does).
    pub(super) fn do_to(&self, page: &mut NotebookState, at: &str) -> Result<(), EditError> {
        let number = self.number();
        if number > HIGHEST.max(page.new_number()) {
            return Err(EditError::TooHigh { id: number });
        }
        match self {
            Self::SetTitle(text) => page.title.clone_from(text),
            Self::SetDecimalMark(mark) => page.decimal_mark = *mark,
            Self::SetBench { field, text } => put(&mut page.bench, *field, text),
            Self::ReadCautions(name) => read_cautions(page, name, at)?,
            Self::Copied(title) => begin_copy(page, title),
            Self::SetPath(path) => page.path = *path,
            Self::SetBeam(beam) => page.beam = *beam,
            Self::AddRail(rail) => add_rail(page, *rail)?,
            Self::SetRail { rail, field, text } => put(&mut find_rail(page, *rail)?.texts, *field, text),
            Self::RenameRail { rail, name } => page.rename_rail(*rail, name)?,
            Self::SetRulerUnit { rail, unit } => find_rail(page, *rail)?.unit = *unit,
            Self::SetSense { rail, sense } => find_rail(page, *rail)?.sense = *sense,
            Self::SetSplice { rail, splice } => find_rail(page, *rail)?.splice.clone_from(splice),
            Self::RemoveRail(rail) => {
                remove(&mut page.rails, |r| r.id == *rail, EditError::NoRail { rail: *rail })?;
            }
            Self::SetSetting(setting) => put_by(&mut page.settings, setting, |s| s.id),
            Self::RemoveSetting(setting) => {
                let missing = EditError::NoSetting { setting: *setting };
                remove(&mut page.settings, |s| s.id == *setting, missing)?;
            }
            Self::SetKind { of, kind } => {
                page.kinds.insert(*of, *kind);
            }
            Self::SetShared(shared) => put_by(&mut page.shared, shared, |s| s.id),
            Self::RemoveShared(shared) => {
                remove(&mut page.shared, |s| s.id == *shared, EditError::NoShared { shared: *shared })?;
            }
            Self::SetCovariance(covariance) => {
                page.covariances.retain(|c| c.acts_on != covariance.acts_on);
                page.covariances.push(covariance.clone());
            }
            Self::RemoveCovariance(acts_on) => page.covariances.retain(|c| c.acts_on != *acts_on),
            Self::SetPosition(position) => put_by(&mut page.plan, position, |p| p.id),
            Self::RemovePosition(position) => {
                let missing = EditError::NoPosition { position: *position };
                remove(&mut page.plan, |p| p.id == *position, missing)?;
            }
            Self::SetRehearsal(seed) => page.rehearsal = Some(*seed),
            Self::AddRow { row, after, cells } => add_row(page, *row, *after, cells)?,
            Self::SetCell { row, cell, text } => put(&mut find_row(page, *row)?.cells, *cell, text),
            Self::StrikeRow { row, reason } => strike_row(page, *row, reason)?,
            Self::RestoreRow(row) => find_row(page, *row)?.struck = None,
            Self::SetPhoto(photo) => page.photo.clone_from(photo),
            Self::SetNote(note) => put_by(&mut page.notes, &note.dated(at), |n| n.id),
            Self::RemoveNote(id) => page.notes.retain(|note| note.id != *id),
            Self::SetGrid(grid) => put_by(&mut page.grids, grid, |g| g.id),
            Self::SetEvidence { row, evidence } => set_evidence(page, *row, evidence.as_ref())?,
            Self::SetEstimator(estimator) => page.estimator = *estimator,
            Self::SetClaim(claim) => page.claim.clone_from(claim),
            Self::SetTrials(plan) => page.trials.clone_from(plan),
            Self::Seal(salt) => seal(page, salt)?,
            Self::OpenSeal => open_seal(page)?,
            Self::SetPiece(piece, rule) => page.handout.set_rule(*piece, *rule),
            Self::SetTask(id, of, asks, text) => set_task(&mut page.handout, *id, (*of, *asks), text),
            Self::RemoveTask(id) => page.handout.tasks.retain(|task| task.id != *id),
            Self::Answer(id, text) => answer(&mut page.handout, *id, text)?,
            Self::Merged(log) => page.merged.push(log.clone()),
            Self::HandOut => page.handout.given = Some(page.numbered),
            Self::Together(edits) => together(page, edits, at)?,
            Self::Undo | Self::Redo => return Err(EditError::NotInGroup),
        }
        page.numbered = page.numbered.max(number);
        Ok(())
    }

    /// The number of what it begins or writes; 0 where that has none.
    fn number(&self) -> u32 {
        match self {
            Self::AddRail(id) | Self::AddRow { row: id, .. } => *id,
            Self::SetSetting(setting) => setting.id,
            Self::SetShared(shared) => shared.id,
            Self::SetPosition(position) => position.id,
            Self::SetNote(note) => note.id,
            Self::SetGrid(grid) => grid.id,
            Self::SetTask(task, ..) => *task,
            Self::Merged(log) => log.numbers.iter().map(|(_, here)| *here).max().unwrap_or_default(),
            Self::SetTitle(_)
            | Self::SetDecimalMark(_)
            | Self::SetBench { .. }
            | Self::ReadCautions(_)
            | Self::Copied(_)
            | Self::SetPath(_)
            | Self::SetBeam(_)
            | Self::SetRail { .. }
            | Self::RenameRail { .. }
            | Self::SetRulerUnit { .. }
            | Self::SetSense { .. }
            | Self::SetSplice { .. }
            | Self::RemoveRail(_)
            | Self::RemoveSetting(_)
            | Self::SetKind { .. }
            | Self::RemoveShared(_)
            | Self::SetCovariance(_)
            | Self::RemoveCovariance(_)
            | Self::RemovePosition(_)
            | Self::SetRehearsal(_)
            | Self::SetCell { .. }
            | Self::StrikeRow { .. }
            | Self::RestoreRow(_)
            | Self::SetPhoto(_)
            | Self::RemoveNote(_)
            | Self::SetEvidence { .. }
            | Self::SetEstimator(_)
            | Self::SetClaim(_)
            | Self::SetTrials(_)
            | Self::Seal(_)
            | Self::OpenSeal
            | Self::SetPiece(..)
            | Self::RemoveTask(_)
            | Self::Answer(..)
            | Self::HandOut
            | Self::Together(_)
            | Self::Undo
            | Self::Redo => 0,
        }
    }

    /// The highest number of what it, or what is done together in it, begins or writes.
    pub(super) fn highest_number(&self) -> u32 {
        match self {
            Self::Together(edits) => edits.iter().map(Self::highest_number).max().unwrap_or_default(),
            _ => self.number(),
        }
    }
}

/// Keeps `text` under `key`; an empty text leaves no entry.
fn put<K: Ord>(texts: &mut LiteMap<K, String>, key: K, text: &str) {
    if text.is_empty() {
        texts.remove(&key);
    } else {
        texts.insert(key, text.to_owned());
    }
}

/// Replaces the element with the same number, or adds it at the end.
fn put_by<T: Clone>(list: &mut Vec<T>, new: &T, id: impl Fn(&T) -> u32) {
    match list.iter_mut().find(|old| id(old) == id(new)) {
        Some(old) => old.clone_from(new),
        None => list.push(new.clone()),
    }
}

/// Takes away the element that `is` finds.
fn remove<T>(list: &mut Vec<T>, is: impl Fn(&T) -> bool, missing: EditError) -> Result<(), EditError> {
    let before = list.len();
    list.retain(|one| !is(one));
    if list.len() < before { Ok(()) } else { Err(missing) }
}

/// Makes the page that of a copy, for which nobody has read the cautions, under `title` unless the title is fixed.
fn begin_copy(page: &mut NotebookState, title: &str) {
    page.cautions_read.clear();
    if !page.handout.fixes(Piece::Title) {
        title.clone_into(&mut page.title);
    }
}

fn read_cautions(page: &mut NotebookState, name: &str, at: &str) -> Result<(), EditError> {
    if name.trim().is_empty() {
        return Err(EditError::NoName);
    }
    page.cautions_read.push(CautionsRead { name: name.to_owned(), at: at.to_owned() });
    Ok(())
}

fn find_rail(page: &mut NotebookState, rail: RailId) -> Result<&mut Rail, EditError> {
    page.rails.iter_mut().find(|r| r.id == rail).ok_or(EditError::NoRail { rail })
}

fn find_row(page: &mut NotebookState, row: RowId) -> Result<&mut Row, EditError> {
    page.rows.iter_mut().find(|r| r.id == row).ok_or(EditError::NoRow { row })
}

fn strike_row(page: &mut NotebookState, row: RowId, reason: &str) -> Result<(), EditError> {
    if reason.trim().is_empty() {
        return Err(EditError::NoReason { row });
    }
    find_row(page, row)?.struck = Some(reason.to_owned());
    Ok(())
}

fn seal(page: &mut NotebookState, salt: &str) -> Result<(), EditError> {
    if page.seal.is_some() || salt.trim().is_empty() {
        return Err(EditError::NoSecondSeal);
    }
    page.seal = Some(Seal { salt: salt.to_owned(), opened: false });
    Ok(())
}

fn open_seal(page: &mut NotebookState) -> Result<(), EditError> {
    match &mut page.seal {
        Some(seal) if !seal.opened => seal.opened = true,
        _ => return Err(EditError::NoSeal),
    }
    Ok(())
}

/// Writes a task; one that was there keeps its answer.
fn set_task(handout: &mut Handout, id: TaskId, (at, asks): (Piece, Asks), text: &str) {
    let answer = handout.tasks.iter().find(|task| task.id == id).map(|task| task.answer.clone());
    let (text, answer) = (text.to_owned(), answer.unwrap_or_default());
    put_by(&mut handout.tasks, &Task { id, at, asks, text, answer }, |t| t.id);
}

fn answer(handout: &mut Handout, id: TaskId, text: &str) -> Result<(), EditError> {
    let task = handout.tasks.iter_mut().find(|task| task.id == id && task.asks != Asks::Nothing);
    text.clone_into(&mut task.ok_or(EditError::NoTask { task: id })?.answer);
    Ok(())
}

/// Several edits in their order, none of them one that stands alone.
fn together(page: &mut NotebookState, edits: &[Edit], at: &str) -> Result<(), EditError> {
    for edit in edits {
        if matches!(edit, Edit::Seal(_) | Edit::OpenSeal | Edit::HandOut) {
            return Err(EditError::NotInGroup);
        }
        edit.do_to(page, at)?;
    }
    Ok(())
}

fn set_evidence(page: &mut NotebookState, row: RowId, evidence: Option<&Evidence>) -> Result<(), EditError> {
    // A picture on which nothing is marked yet waits for its grid.
    if let Some(Evidence::Picture(picture)) = evidence
        && !(picture.a.is_empty() && picture.b.is_empty())
        && !page.grids.iter().any(|grid| grid.id == picture.grid)
    {
        return Err(EditError::NoGrid { grid: picture.grid });
    }
    find_row(page, row)?.evidence = evidence.cloned();
    Ok(())
}

fn add_rail(page: &mut NotebookState, id: RailId) -> Result<(), EditError> {
    if page.rails.iter().any(|r| r.id == id) {
        return Err(EditError::NumberTaken { id });
    }
    page.rails.push(Rail {
        id,
        unit: RulerUnit::default(),
        sense: Sense::default(),
        splice: Splice::default(),
        texts: LiteMap::new(),
        called: None,
    });
    Ok(())
}

fn add_row(
    page: &mut NotebookState,
    id: RowId,
    after: Option<RowId>,
    cells: &LiteMap<Cell, String>,
) -> Result<(), EditError> {
    if page.rows.iter().any(|r| r.id == id) {
        return Err(EditError::NumberTaken { id });
    }
    let place = match after {
        None => page.rows.len(),
        Some(row) => 1 + page.rows.iter().position(|r| r.id == row).ok_or(EditError::NoRow { row })?,
    };
    let cells = cells.iter().filter(|(_, text)| !text.is_empty()).map(|(c, t)| (*c, t.clone())).collect();
    page.rows.insert(place, Row { id, cells, evidence: None, struck: None });
    Ok(())
}
