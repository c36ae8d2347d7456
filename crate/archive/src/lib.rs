//! The container of a bundle: a zip whose entries are all listed and hashed. It knows nothing of notebooks.
//!
//! It stands by itself because the page packs and unpacks in the worker beside it: pictures and traces make large
//! bundles.

mod entry;
mod error;
mod contents;
mod crc;
mod container;
mod packing;

pub use container::{LIMITS, Limits, pack, unpack, unpack_wanted, unpack_within};
pub use contents::{CONTENTS, FORMAT, sha256, sha256_hex};
pub use entry::{Entries, Entry};
pub use error::ArchiveError;
pub use packing::Packing;
