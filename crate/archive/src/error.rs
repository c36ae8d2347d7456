//! What can be wrong with a bundle, each error naming the entry and saying what to do.

use thiserror::Error;

/// Why a bundle can't be written or read. Nothing is half read: an error leaves everything as it was.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ArchiveError {
    /// Something else than a zip.
    #[error("this file is not a bundle: it is no zip. Choose the .zip that was exported from a notebook")]
    NotZip,
    /// A zip that ends too early.
    #[error("this bundle is cut short: its table of entries is missing. Download the file again")]
    CutShort,
    /// A zip whose structure does not hold together.
    #[error("this bundle is damaged: {what}. Download the file again")]
    Damaged {
        /// What the reader met.
        what: String,
    },
    /// An entry that can't be read.
    #[error("\"{entry}\" in this bundle is damaged: {what}. Download the file again")]
    DamagedEntry {
        /// The entry.
        entry: String,
        /// What the reader met.
        what: String,
    },
    /// More entries than any notebook makes.
    #[error(
        "this bundle holds {found} entries, more than the {limit} that are read. It does not come from a notebook: don't open it"
    )]
    TooManyEntries {
        /// How many there are.
        found: usize,
        /// How many are read at most.
        limit: usize,
    },
    /// An entry that unpacks to too much.
    #[error(
        "\"{entry}\" unpacks to more than {limit} bytes. If it is a picture or a recording, take a smaller one; otherwise don't open this file"
    )]
    EntryTooLarge {
        /// The entry.
        entry: String,
        /// Bytes read at most.
        limit: usize,
    },
    /// Entries that together unpack to too much.
    #[error(
        "with \"{entry}\" this bundle unpacks to more than {limit} bytes in all. Leave out pictures or recordings; if there are none, don't open this file"
    )]
    BundleTooLarge {
        /// The entry that went over.
        entry: String,
        /// Bytes read at most.
        limit: usize,
    },
    /// An entry packed more tightly than real content can be.
    #[error(
        "\"{entry}\" unpacks to over {ratio} times its packed size, as only made-up content does. Don't open this file"
    )]
    TooTight {
        /// The entry.
        entry: String,
        /// The largest ratio read.
        ratio: usize,
    },
    /// A name that could lead out of the folder it is unpacked in, or that some system can't store.
    #[error(
        "the entry name \"{entry}\" is refused: {why}. A bundle from a notebook has no such name: take the file again from where it came"
    )]
    BadName {
        /// The entry.
        entry: String,
        /// What is wrong with its name.
        why: &'static str,
    },
    /// Two entries with one name, or names that differ by case only.
    #[error("this bundle holds \"{entry}\" twice (the other one is \"{other}\"). Download the file again")]
    Duplicate {
        /// The later entry.
        entry: String,
        /// The earlier entry.
        other: String,
    },
    /// An entry behind a password.
    #[error("\"{entry}\" is encrypted. Unpack the bundle with its password and pack it again without one")]
    Encrypted {
        /// The entry.
        entry: String,
    },
    /// An entry packed by a method other than "stored" and "deflate".
    #[error(
        "\"{entry}\" is packed by a method that is not read here. Pack the bundle again as an ordinary zip (deflate)"
    )]
    Method {
        /// The entry.
        entry: String,
    },
    /// A zip without the list of its contents, or with one that says nothing.
    #[error(
        "this zip is not a bundle: its list \"contents.json\" is missing or unreadable ({what}). Choose the .zip that was exported from a notebook, as it was exported"
    )]
    NoContents {
        /// What the reader met.
        what: String,
    },
    /// Written by a later version.
    #[error(
        "this bundle was written by a later version (format {found}; this program reads up to {known}). It was left untouched: open it with the newer program"
    )]
    Later {
        /// The format found.
        found: u64,
        /// The latest format read here.
        known: u32,
    },
    /// An entry that the list does not name.
    #[error(
        "\"{entry}\" is not in the bundle's list \"contents.json\": it was added later. Take it out, or take the file again from where it came"
    )]
    Unlisted {
        /// The entry.
        entry: String,
    },
    /// An entry that the list names and the bundle lacks.
    #[error("\"{entry}\" is missing from this bundle. Download the file again")]
    Missing {
        /// The entry.
        entry: String,
    },
    /// An entry whose size or SHA-256 is not the listed one.
    #[error(
        "\"{entry}\" was changed after the bundle was made: its {what} is not the one in \"contents.json\". Download the file again"
    )]
    Changed {
        /// The entry.
        entry: String,
        /// "size" or "SHA-256".
        what: &'static str,
    },
    /// A picture whose SHA-256 is not the one in its name.
    #[error(
        "\"{entry}\" is another picture than its name says: its SHA-256 differs. Download the file again"
    )]
    Misnamed {
        /// The entry.
        entry: String,
    },
    /// A text that is not UTF-8.
    #[error("\"{entry}\" is not a text in UTF-8. Download the file again")]
    NotText {
        /// The entry.
        entry: String,
    },
}
