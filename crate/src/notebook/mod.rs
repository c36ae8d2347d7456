//! The notebook: what a person wrote, and how it came to be.
//!
//! A notebook **is** its log of edits ([`Notebook`]); the page one sees is the fold of that log ([`Page`]).
//! Nothing here is computed: every number is kept as it was typed, and read only by [`crate::analysis`].
//!
//! - [`page`]: the model, a plain record of texts and choices.
//! - [`edit`]: everything a person can do to it.
//! - [`splice`]: where a rail stands, and what earlier versions wrote of it.
//! - [`evidence`](mod@evidence): pictures with their marks, and what was measured on traces.
//! - [`log`]: the log, its fold, undo and redo.
//! - [`paste`](mod@paste): a block from a spreadsheet, as edits.
//! - [`file`](mod@file): the stored form, its versions and its checks.

pub mod evidence;
pub mod splice;
pub mod page;
pub mod edit;
pub mod log;
pub mod file;
pub mod paste;

pub use edit::{Edit, EditError};
pub use evidence::{
    Estimator, Evidence, Grid, GridCheck, GridId, Picture, Spot, StoredFile, TraceDelay, TraceTime, Traces,
    hashes_in,
};
pub use file::{FileError, read, read_entry, write};
pub use log::{LogEntry, Notebook};
pub use page::*;
pub use paste::{Pasted, paste};
pub use splice::{OverlapPair, Splice};
