//! What can be wrong with a bundle, each error naming the entry. Whoever shows one has the words (`slope-worker`).

use std::fmt;

/// Why a bundle can't be written or read. Nothing is half read: an error leaves everything as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ArchiveError {
    /// Something else than a zip.
    NotZip,
    /// A zip that ends too early.
    CutShort,
    /// A zip whose structure does not hold together.
    Damaged {
        /// What the reader met.
        what: String,
    },
    /// An entry that can't be read.
    DamagedEntry {
        /// The entry.
        entry: String,
        /// What the reader met.
        what: String,
    },
    /// More entries than any notebook makes.
    TooManyEntries {
        /// How many there are.
        found: usize,
        /// How many are read at most.
        limit: usize,
    },
    /// An entry that unpacks to too much.
    EntryTooLarge {
        /// The entry.
        entry: String,
        /// Bytes read at most.
        limit: usize,
    },
    /// Entries that together unpack to too much.
    BundleTooLarge {
        /// The entry that went over.
        entry: String,
        /// Bytes read at most.
        limit: usize,
    },
    /// An entry packed more tightly than real content can be.
    TooTight {
        /// The entry.
        entry: String,
        /// The largest ratio read.
        ratio: usize,
    },
    /// A name that could lead out of the folder it is unpacked in, or that some system can't store.
    BadName {
        /// The entry.
        entry: String,
        /// What is wrong with its name.
        why: &'static str,
    },
    /// Two entries with one name, or names that differ by case only.
    Duplicate {
        /// The later entry.
        entry: String,
        /// The earlier entry.
        other: String,
    },
    /// An entry behind a password.
    Encrypted {
        /// The entry.
        entry: String,
    },
    /// An entry packed by a method other than "stored" and "deflate".
    Method {
        /// The entry.
        entry: String,
    },
    /// A zip without the list of its contents, or with one that says nothing.
    NoContents {
        /// What the reader met.
        what: String,
    },
    /// Written by a later version.
    Later {
        /// The format found.
        found: u64,
        /// The latest format read here.
        known: u32,
    },
    /// An entry that the list does not name.
    Unlisted {
        /// The entry.
        entry: String,
    },
    /// An entry that the list names and the bundle lacks.
    Missing {
        /// The entry.
        entry: String,
    },
    /// An entry whose size or SHA-256 is not the listed one.
    Changed {
        /// The entry.
        entry: String,
        /// "size" or "SHA-256".
        what: &'static str,
    },
    /// A picture whose SHA-256 is not the one in its name.
    Misnamed {
        /// The entry.
        entry: String,
    },
    /// A text that is not UTF-8.
    NotText {
        /// The entry.
        entry: String,
    },
}

/// As what it is, for programs.
impl fmt::Display for ArchiveError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self, f)
    }
}

impl std::error::Error for ArchiveError {}
