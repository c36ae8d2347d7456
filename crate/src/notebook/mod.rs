//! The notebook: what a person wrote, and how it came to be.
//!
//! A notebook **is** its log of edits ([`Notebook`]); the page one sees is the fold of that log ([`NotebookState`]).
//! Nothing here is computed: every number is kept as it was typed, and read only by [`crate::analysis`].
//!
//! - [`claim`]: which uncertainty is claimed.
//! - [`handout`]: what a teacher fixes, asks and asks for.
//! - [`light`]: how the light goes.
//! - `merged`: what is kept of a partner's notebook that was merged.
//! - `note`: free notes between the rows.
//! - [`state`]: the model, a plain record of texts and choices.
//! - [`uncertainty`]: as what an uncertainty is typed, as a limit or as a standard uncertainty.
//! - [`edit`]: everything a person can do to it; `edit_error`: why that is refused.
//! - `renamed`: a rail with another name, and the rows that call it by the one before.
//! - `reach`: what an edit reaches of a notebook that was handed out, and whether it may.
//! - [`splice`]: where a rail stands, and what earlier versions wrote of it.
//! - [`slope_evidence::stored`]: pictures with their marks, and what was measured on traces.
//! - [`habits`](mod@habits): what a row goes on with from the rows before it.
//! - [`log`]: the log, its fold, undo and redo.
//! - [`paste`](mod@paste): a block from a spreadsheet, as edits; `block`: its lines and cells.
//! - `trail`, `renumber`, `rails_met`, `written_out`, `sorting`, [`merge`]: a partner’s notebook, merged: how far two logs go
//!   the same way, its numbers here, its rails, what its rows do not name, and what it changed.
//! - `after_seal`: what was changed after a seal was opened.
//! - `steps`: the log step by step, as it is played back.
//! - `first_edits`: edits as the first builds wrote them.
//! - [`file`](mod@file): the stored form, its versions and its checks.

pub mod splice;
pub mod uncertainty;
pub mod claim;
pub mod handout;
pub mod light;
mod merged;
mod note;
pub mod state;
pub mod habits;
mod edit_error;
mod renamed;
pub mod edit;
mod reach;
pub mod log;
mod trail;
mod renumber;
mod rails_met;
mod written_out;
mod sorting;
pub mod merge;
mod after_seal;
mod steps;
mod first_edits;
pub mod file;
mod block;
pub mod paste;

pub use after_seal::changes_after_seal;
pub use claim::{Basis, Claim};
pub use edit::Edit;
pub use edit_error::EditError;
pub use file::{FileError, read, read_entry, write};
pub use habits::habits;
pub use handout::{Asks, Handout, Piece, Rule, Task, TaskId};
pub use light::{Beam, Path};
pub use log::{LogEntry, Notebook};
pub use merge::{Merge, MergeError};
pub use merged::MergedLog;
pub use note::{Note, NoteId};
pub use paste::{Pasted, paste};
pub use rails_met::Astray;
pub use slope_evidence::stored::{
    EdgeHeight, EdgeHeights, Estimator, Evidence, Grid, GridCheck, GridId, LevelOf, Picture, Remark, Spot,
    StoredFile, TraceDelay, TraceTime, Traces, hashes_in,
};
pub use sorting::Clash;
pub use splice::{OverlapPair, Splice};
pub use state::*;
pub use steps::{LogStep, after_steps, steps};
pub use trail::Imprint;
pub use uncertainty::{ErrorShape, UncertaintyKind, UncertaintyOf};
