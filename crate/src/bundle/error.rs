//! What can be wrong with a bundle, each error naming the entry and saying what to do.

use slope_archive::ArchiveError;
use thiserror::Error;

use crate::notebook::FileError;
use crate::report::TableError;

/// Why a bundle can't be written or read. Nothing is half read: an error leaves everything as it was.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum BundleError {
    /// The container.
    #[error(transparent)]
    Archive(#[from] ArchiveError),
    /// The notebook inside can't be opened.
    #[error("\"notebook.json\" in this bundle: {reason}")]
    Notebook {
        /// Why.
        #[from]
        reason: FileError,
    },
    /// A table can't be written.
    #[error(transparent)]
    Table(#[from] TableError),
}
