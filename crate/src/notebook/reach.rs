//! What an edit reaches of a notebook that was handed out, and whether it may.

use super::edit::Edit;
use super::edit_error::EditError;
use super::handout::{Piece, Rule, Task};
use super::note::Note;
use super::state::{BenchField, Cell, NotebookState};
use super::uncertainty::UncertaintyOf;
use slope_evidence::stored::{Evidence, StoredFile};

/// What of a handed-out notebook an edit changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Reach {
    /// What is always the student's.
    Open,
    /// A piece.
    Piece(Piece),
    /// The hand-out itself.
    Handout,
}

impl Edit {
    /// It as it is handed on with `page`; none where nothing of it is.
    pub(super) fn handed_on(self, page: &NotebookState) -> Option<Self> {
        match self {
            Self::Together(edits) => {
                let all: Vec<Self> = edits.into_iter().filter_map(|edit| edit.handed_on(page)).collect();
                (!all.is_empty()).then_some(Self::Together(all))
            }
            // In the words of now; in its place, since tasks and notes stand in the order in which they were begun.
            Self::SetTask(id, ..) => page
                .handout
                .tasks
                .iter()
                .find(|task| task.id == id)
                .map(|Task { at, asks, text, .. }| Self::SetTask(id, *at, *asks, text.clone())),
            Self::SetNote(note) => {
                page.notes.iter().find(|one| one.id == note.id).cloned().map(Self::SetNote)
            }
            edit => (!edit.stays_behind(page)).then_some(edit),
        }
    }

    /// Whether it is of no use to those to whom `page` is handed out: who read the cautions, who measured and what was
    /// answered before, whose notebook was merged, a seal that somebody may have opened, and words that stand no more, among
    /// which may be the answer.
    fn stays_behind(&self, page: &NotebookState) -> bool {
        match self {
            Self::ReadCautions(_)
            | Self::Answer(..)
            | Self::Merged(_)
            | Self::Seal(_)
            | Self::OpenSeal
            // Of what was removed nothing is handed on that it could remove.
            | Self::RemoveTask(_)
            | Self::RemoveNote(_) => true,
            Self::SetCell { row, cell: Cell::Remark, text } => {
                page.row(*row).is_none_or(|row| row.text(Cell::Remark) != text)
            }
            Self::SetTitle(text) => *text != page.title,
            // What a rehearsal was drawn from stays as it was made: its true values follow from that.
            Self::SetBench { field, text } if page.rehearsal.is_none() && text != page.text(*field) => true,
            Self::SetBench { field, .. } => match of_field(*field) {
                Reach::Piece(piece @ (Piece::People | Piece::StudentNumber | Piece::Group | Piece::Date)) => {
                    page.handout.rule(piece) != Rule::Fixed
                }
                _ => false,
            },
            _ => false,
        }
    }

    /// Whether it may be done to `page`: to what was handed out, nothing that is fixed.
    ///
    /// # Errors
    /// What it would reach.
    pub(super) fn may_reach(&self, page: &NotebookState) -> Result<(), EditError> {
        if page.handout.given.is_none() {
            return Ok(());
        }
        match self.reaches(page) {
            Reach::Handout => Err(EditError::HandedOut),
            Reach::Piece(piece) if page.handout.fixes(piece) => Err(EditError::Fixed { piece }),
            Reach::Open | Reach::Piece(_) => match self {
                Self::Together(edits) => edits.iter().try_for_each(|edit| edit.may_reach(page)),
                _ => Ok(()),
            },
        }
    }

    /// What of the handed-out `page` it changes.
    fn reaches(&self, page: &NotebookState) -> Reach {
        let gave = |id: &u32| page.handout.gave(*id);
        Reach::Piece(match self {
            Self::SetPiece(..)
            | Self::SetTask(..)
            | Self::RemoveTask(_)
            | Self::HandOut
            // Numbers that are fixed would be read otherwise.
            | Self::SetDecimalMark(_)
            | Self::SetRehearsal(_) => return Reach::Handout,
            Self::SetTitle(_) => Piece::Title,
            Self::SetBench { field, .. } => return of_field(*field),
            Self::SetPath(_) | Self::SetBeam(_) => Piece::Source,
            Self::SetPhoto(_) => Piece::Instruments,
            Self::AddRail(_)
            | Self::SetRail { .. }
            | Self::RenameRail { .. }
            | Self::SetRulerUnit { .. }
            | Self::SetSense { .. }
            | Self::SetSplice { .. }
            | Self::RemoveRail(_) => Piece::Rails,
            Self::SetKind { of, .. } => match of {
                UncertaintyOf::Edge | UncertaintyOf::Mark => Piece::Screen,
                UncertaintyOf::TimeBase | UncertaintyOf::Setting(_) => Piece::TimeBases,
                UncertaintyOf::RulerReading(_) | UncertaintyOf::RulerScale(_) | UncertaintyOf::Splice(_) => {
                    Piece::Rails
                }
                UncertaintyOf::Shared(_) => Piece::Uncertainty,
            },
            Self::SetEstimator(_) => Piece::Screen,
            Self::SetSetting(_) | Self::RemoveSetting(_) => Piece::TimeBases,
            Self::SetShared(_)
            | Self::RemoveShared(_)
            | Self::SetCovariance(_)
            | Self::RemoveCovariance(_) => Piece::Uncertainty,
            Self::SetPosition(_) | Self::RemovePosition(_) => Piece::Positions,
            Self::AddRow { .. } => Piece::Readings,
            Self::SetCell { row, cell, .. } if gave(row) => match cell {
                Cell::Rail | Cell::Reading | Cell::Distance | Cell::DistanceUncertainty => Piece::Positions,
                Cell::TimeBase => Piece::TimeBases,
                Cell::Remark => return Reach::Open,
                Cell::EdgeA | Cell::EdgeB | Cell::Delay | Cell::DelayUncertainty => Piece::Readings,
            },
            Self::SetNote(Note { id, .. }) | Self::RemoveNote(id) if gave(id) => Piece::Readings,
            Self::SetGrid(grid) if gave(&grid.id) => Piece::Readings,
            Self::SetEvidence { row, evidence } if gave(row) => {
                let had = page.row(*row).and_then(|row| row.evidence.as_ref());
                let same = had.is_none() || files(had) == files(evidence.as_ref());
                if same { Piece::Readings } else { Piece::Evidence }
            }
            Self::StrikeRow { .. } | Self::RestoreRow(_) => Piece::Line,
            Self::SetClaim(_) => Piece::Result,
            Self::Answer(..) => Piece::Answers,
            // Of what the student began, and what is the student's in any case.
            Self::SetCell { .. }
            | Self::SetNote(_)
            | Self::RemoveNote(_)
            | Self::SetGrid(_)
            | Self::SetEvidence { .. }
            | Self::ReadCautions(_)
            | Self::Copied(_)
            | Self::SetTrials(_)
            | Self::Seal(_)
            | Self::OpenSeal
            | Self::Merged(_)
            // What is done together is looked at one by one.
            | Self::Together(_)
            | Self::Undo
            | Self::Redo => return Reach::Open,
        })
    }
}

fn of_field(field: BenchField) -> Reach {
    Reach::Piece(match field {
        BenchField::People => Piece::People,
        BenchField::StudentNumber => Piece::StudentNumber,
        BenchField::Group => Piece::Group,
        BenchField::Date => Piece::Date,
        BenchField::Place => return Reach::Open,
        BenchField::LeastRows | BenchField::LocalRules | BenchField::LocalContact => return Reach::Handout,
        BenchField::Wavelength | BenchField::PulseRate | BenchField::BeamAngle => Piece::Source,
        BenchField::Instruments
        | BenchField::Cables
        | BenchField::FixedArm
        | BenchField::Trigger
        | BenchField::EdgeFraction => Piece::Instruments,
        BenchField::TimeBaseUncertainty => Piece::TimeBases,
        BenchField::SmallDivisions
        | BenchField::EdgeHalfWidth
        | BenchField::EdgeReason
        | BenchField::ScreenWidth
        | BenchField::MarkUncertainty
        | BenchField::TraceLevel
        | BenchField::TraceFraction => Piece::Screen,
        BenchField::Temperature | BenchField::Pressure | BenchField::Humidity | BenchField::CarbonDioxide => {
            Piece::Air
        }
        BenchField::Coverage => Piece::Result,
        BenchField::Aim => Piece::Aim,
        BenchField::Method => Piece::Method,
        BenchField::Discussion => Piece::Discussion,
    })
}

fn files(evidence: Option<&Evidence>) -> &[StoredFile] {
    evidence.map(Evidence::files).unwrap_or_default()
}

#[cfg(test)]
#[path = "reach_test.rs"]
mod tests;
