//! Why a bundle is refused, as messages: which entry, and what to do. What exactly the reader met stays in the error.

use slope_archive::ArchiveError;
use slope_evidence::message;
use slope_evidence::words::Message;

/// Why a bundle can't be written or read.
pub fn archive(error: &ArchiveError) -> Message {
    match error {
        ArchiveError::NotZip => message!("bundle-not_zip"),
        ArchiveError::CutShort => message!("bundle-cut_short"),
        ArchiveError::Damaged { .. } => message!("bundle-damaged"),
        ArchiveError::DamagedEntry { entry, .. } | ArchiveError::NotText { entry } => {
            message!("bundle-damaged_entry", entry = entry.as_str())
        }
        ArchiveError::TooManyEntries { found, limit } => {
            message!("bundle-too_many_entries", found = *found, limit = *limit)
        }
        ArchiveError::EntryTooLarge { entry, limit } => {
            message!("bundle-entry_too_large", entry = entry.as_str(), limit = *limit)
        }
        ArchiveError::BundleTooLarge { entry, limit } => {
            message!("bundle-too_large", entry = entry.as_str(), limit = *limit)
        }
        ArchiveError::TooTight { entry, ratio } => {
            message!("bundle-too_tight", entry = entry.as_str(), ratio = *ratio)
        }
        ArchiveError::BadName { entry, .. } => message!("bundle-bad_name", entry = entry.as_str()),
        ArchiveError::Duplicate { entry, other } => {
            message!("bundle-duplicate", entry = entry.as_str(), other = other.as_str())
        }
        ArchiveError::Encrypted { entry } => message!("bundle-encrypted", entry = entry.as_str()),
        ArchiveError::Method { entry } => message!("bundle-method", entry = entry.as_str()),
        ArchiveError::NoContents { .. } => message!("bundle-no_contents"),
        ArchiveError::Later { found, known } => {
            message!("bundle-later", found = found.to_string(), known = known.to_string())
        }
        ArchiveError::Unlisted { entry } => message!("bundle-unlisted", entry = entry.as_str()),
        ArchiveError::Missing { entry } => message!("bundle-missing", entry = entry.as_str()),
        ArchiveError::Changed { entry, .. } => message!("bundle-changed", entry = entry.as_str()),
        ArchiveError::Misnamed { entry } => message!("bundle-misnamed", entry = entry.as_str()),
    }
}
