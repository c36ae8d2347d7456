//! Why an edit is refused.

use super::handout::{Piece, TaskId};
use super::state::{PositionId, RailId, RowId, SettingId, SharedId};
use crate::words::Message;
use crate::{errors_as_data, message};
use slope_evidence::stored::GridId;

/// The highest number that a row, rail or the like may have which does not follow on those before it: some hundred
/// million are left for what is added later.
pub(super) const HIGHEST: u32 = 4_000_000_000;

/// Why an edit was refused. The notebook is as it was before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EditError {
    /// No such row.
    NoRow {
        /// The number asked for.
        row: RowId,
    },
    /// No such rail.
    NoRail {
        /// The number asked for.
        rail: RailId,
    },
    /// No such setting.
    NoSetting {
        /// The number asked for.
        setting: SettingId,
    },
    /// No such shared error.
    NoShared {
        /// The number asked for.
        shared: SharedId,
    },
    /// No such planned position.
    NoPosition {
        /// The number asked for.
        position: PositionId,
    },
    /// A row or rail of that number stands already.
    NumberTaken {
        /// The number asked for.
        id: u32,
    },
    /// A number that leaves too few for what is added later.
    TooHigh {
        /// The number asked for.
        id: u32,
    },
    /// No such grid.
    NoGrid {
        /// The number asked for.
        grid: GridId,
    },
    /// No such question.
    NoTask {
        /// The number asked for.
        task: TaskId,
    },
    /// It would change what the hand-out fixes.
    Fixed {
        /// Which piece.
        piece: Piece,
    },
    /// It would change the hand-out itself.
    HandedOut,
    /// What is left to take back was handed out.
    UndoStops,
    /// A row was struck out without saying why.
    NoReason {
        /// The row.
        row: RowId,
    },
    /// The cautions were read by nobody.
    NoName,
    /// Undo, redo or a seal inside a group of edits.
    NotInGroup,
    /// A second seal, or one without a salt.
    NoSecondSeal,
    /// There is no closed seal to open.
    NoSeal,
    /// There is nothing to take back.
    NothingToUndo,
    /// There is nothing to do again.
    NothingToRedo,
}

errors_as_data!(EditError);

impl EditError {
    /// What is wrong, and what to do.
    pub fn message(&self) -> Message {
        let number = |number: u32| number.to_string();
        match self {
            Self::NoRow { row } => message!("edit-no_row", n = number(*row)),
            Self::NoRail { rail } => message!("edit-no_rail", n = number(*rail)),
            Self::NoSetting { setting } => message!("edit-no_setting", n = number(*setting)),
            Self::NoShared { shared } => message!("edit-no_shared", n = number(*shared)),
            Self::NoPosition { position } => message!("edit-no_position", n = number(*position)),
            Self::NumberTaken { id } => message!("edit-taken", n = number(*id)),
            Self::TooHigh { id } => message!("edit-too_high", n = number(*id), most = number(HIGHEST)),
            Self::NoGrid { grid } => message!("edit-no_grid", n = number(*grid)),
            Self::NoTask { task } => message!("edit-no_task", n = number(*task)),
            Self::Fixed { piece } => message!("edit-fixed", piece = piece.name()),
            Self::HandedOut => message!("edit-handed_out"),
            Self::UndoStops => message!("edit-undo_stops"),
            Self::NoReason { row } => message!("edit-no_reason", n = number(*row)),
            Self::NoName => message!("edit-no_name"),
            Self::NotInGroup => message!("edit-not_in_group"),
            Self::NoSecondSeal => message!("edit-no_second_seal"),
            Self::NoSeal => message!("edit-no_seal"),
            Self::NothingToUndo => message!("edit-nothing_to_undo"),
            Self::NothingToRedo => message!("edit-nothing_to_redo"),
        }
    }
}
