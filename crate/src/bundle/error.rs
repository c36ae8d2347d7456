//! What can be wrong with a bundle.

use slope_archive::ArchiveError;

use crate::notebook::FileError;
use crate::report::TableError;
use crate::words::Message;
use crate::{errors_as_data, message};

/// Why a bundle can't be written or read. Nothing is half read: an error leaves everything as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BundleError {
    /// The container. In a browser it is packed and unpacked beside the page, which is where its words are.
    Archive(ArchiveError),
    /// The notebook inside can't be opened.
    Notebook {
        /// Why.
        reason: FileError,
    },
    /// A table can't be written.
    Table(TableError),
}

errors_as_data!(BundleError);

/// Why the notebook of a bundle can't be opened, and what to do.
pub fn notebook_refused(reason: &FileError) -> Message {
    message!("bundle-notebook", why = reason.message())
}

impl From<ArchiveError> for BundleError {
    fn from(error: ArchiveError) -> Self {
        Self::Archive(error)
    }
}

impl From<FileError> for BundleError {
    fn from(reason: FileError) -> Self {
        Self::Notebook { reason }
    }
}

impl From<TableError> for BundleError {
    fn from(error: TableError) -> Self {
        Self::Table(error)
    }
}
