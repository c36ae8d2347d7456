//! The container of a bundle: a zip (PKWARE APPNOTE 6.3.10) whose entries are all listed in `contents.json`.
//!
//! Writing is a pure function of the entries: one fixed time stamp, one order, the same bytes on every machine.
//! Reading trusts nothing that the zip says of itself: sizes are counted while unpacking, and names that
//! climb, repeat or can't be stored everywhere are refused before their content is touched.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Cursor, Read, Write};

use zip::read::{ArchiveOffset, Config, ZipFileEntry};
use zip::result::{ZipError, ZipResult};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, System, ZipArchive, ZipReadOptions, ZipWriter};

use super::contents;
use super::error::BundleError;

/// One named content of a bundle.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its name, with forward slashes between folders.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// How much is read at most.
#[derive(Clone, Copy, Debug)]
pub struct Limits {
    /// How many entries.
    pub entries: usize,
    /// Unpacked size of one entry, bytes.
    pub entry_bytes: usize,
    /// Unpacked size of all entries together, bytes.
    pub total_bytes: usize,
    /// Unpacked over packed size of an entry larger than `free_bytes`.
    pub ratio: usize,
    /// Up to this unpacked size, bytes, an entry may be packed as tightly as it likes.
    pub free_bytes: usize,
}

/// The limits for a bundle on its own: a notebook with its pictures and recordings stays far below them.
pub const LIMITS: Limits =
    Limits { entries: 2000, entry_bytes: 64 << 20, total_bytes: 256 << 20, ratio: 100, free_bytes: 4 << 20 };

/// Longest entry name, bytes: common file systems store names of up to 255.
const LONGEST_NAME: usize = 200;

/// How much is unpacked between two looks at the limits, bytes.
const STEP: u64 = 1 << 16;

/// The checked entries of a bundle, in the order in which they were packed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Entries(Vec<Entry>);

impl Entries {
    /// The content of the entry called `name`.
    pub fn get(&self, name: &str) -> Option<&[u8]> {
        self.iter().find(|entry| entry.name == name).map(|entry| entry.bytes.as_slice())
    }

    /// The entries themselves.
    pub fn into_vec(self) -> Vec<Entry> {
        self.0
    }

    /// Every entry.
    pub fn iter(&self) -> std::slice::Iter<'_, Entry> {
        self.0.iter()
    }
}

impl<'a> IntoIterator for &'a Entries {
    type Item = &'a Entry;
    type IntoIter = std::slice::Iter<'a, Entry>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

/// Packs `entries`, and a list of them, into the bytes of a zip.
///
/// # Errors
/// What [`unpack`] would refuse is not written: bad or repeated names, too many or too large entries.
pub fn pack(entries: &[Entry]) -> Result<Vec<u8>, BundleError> {
    let list = contents::list(entries);
    let all = || std::iter::once(&list).chain(entries);
    let mut gate = Gate::new(LIMITS, entries.len() + 1)?;
    for entry in all() {
        gate.admit_name(&entry.name)?;
        gate.admit_bytes(&entry.name, entry.bytes.len())?;
    }
    write_zip(all()).map_err(|e| BundleError::Damaged { what: e.to_string() })
}

fn write_zip<'a>(entries: impl Iterator<Item = &'a Entry>) -> ZipResult<Vec<u8>> {
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    for entry in entries {
        writer.start_file(entry.name.as_str(), options(entry))?;
        writer.write_all(&entry.bytes)?;
    }
    Ok(writer.finish()?.into_inner())
}

/// What goes into the zip beside name and content: nothing that depends on the clock or the machine.
fn options(entry: &Entry) -> SimpleFileOptions {
    // A large entry is stored as it is, so that none we write can meet the limit on the ratio. Large entries
    // are pictures, which are compressed already.
    let method = if entry.bytes.len() > LIMITS.free_bytes {
        CompressionMethod::Stored
    } else {
        CompressionMethod::Deflated
    };
    SimpleFileOptions::default()
        .compression_method(method)
        .compression_level(None)
        .last_modified_time(DateTime::DEFAULT)
        .unix_permissions(0o644)
        .system(System::Unix)
}

/// Unpacks the bytes of a bundle and checks every entry against the list.
///
/// # Errors
/// See [`BundleError`]; each names the entry concerned.
pub fn unpack(bytes: &[u8]) -> Result<Entries, BundleError> {
    unpack_within(bytes, LIMITS)
}

/// As [`unpack`], within limits of one's own.
///
/// # Errors
/// See [`BundleError`]; each names the entry concerned.
pub fn unpack_within(bytes: &[u8], limits: Limits) -> Result<Entries, BundleError> {
    let config = Config { archive_offset: ArchiveOffset::Known(0) };
    let mut zip = ZipArchive::with_config(config, Cursor::new(bytes)).map_err(|e| no_table(bytes, &e))?;
    let mut gate = Gate::new(limits, zip.len())?;
    let table = zip.metadata();
    if table.has_duplicate_names() {
        let entry = repeated_name(bytes, zip.central_directory_start());
        return Err(BundleError::Duplicate { other: entry.clone(), entry });
    }
    for place in 0..table.len() {
        admit_header(&table.entry(place).map_err(|e| damaged(&e))?, &mut gate)?;
    }
    zip.validate_header_consistency().map_err(|e| damaged(&e))?;
    let mut entries = Vec::with_capacity(table.len());
    for place in 0..table.len() {
        let header = table.entry(place).map_err(|e| damaged(&e))?;
        if !is_folder(&header) {
            entries.push(inflate(header, bytes, &mut gate)?);
        }
    }
    contents::check(entries).map(Entries)
}

/// Looks at what the table says of an entry, before its content is touched.
fn admit_header(header: &ZipFileEntry, gate: &mut Gate) -> Result<(), BundleError> {
    let name = header.name().map_err(|e| damaged(&e))?;
    gate.admit_name(name.strip_suffix('/').filter(|_| is_folder(header)).unwrap_or(&name))?;
    if header.encrypted() {
        return Err(BundleError::Encrypted { entry: name.into_owned() });
    }
    if !matches!(header.compression(), CompressionMethod::Stored | CompressionMethod::Deflated) {
        return Err(BundleError::Method { entry: name.into_owned() });
    }
    Ok(())
}

/// Whether an entry only names a folder, as packing programs add them, and holds nothing.
fn is_folder(header: &ZipFileEntry) -> bool {
    header.name_raw().ends_with(b"/") && header.size() == 0
}

/// The content of one entry, counted as it grows.
fn inflate(header: ZipFileEntry, zip: &[u8], gate: &mut Gate) -> Result<Entry, BundleError> {
    let name = header.name().map_err(|e| damaged(&e))?.into_owned();
    let broken = |what: String| BundleError::DamagedEntry { entry: name.clone(), what };
    let packed = usize::try_from(header.compressed_size()).unwrap_or(usize::MAX).min(zip.len());
    let mut body = Cursor::new(zip);
    let mut source =
        header.with_reader(&mut body, ZipReadOptions::new()).map_err(|e| broken(e.to_string()))?;
    let mut bytes = Vec::new();
    loop {
        let step = source.by_ref().take(STEP).read_to_end(&mut bytes);
        let grown = step.map_err(|e| broken(e.to_string()))?;
        if grown == 0 {
            return Ok(Entry { name, bytes });
        }
        gate.admit_bytes(&name, grown)?;
        gate.admit_size(&name, bytes.len(), packed)?;
    }
}

/// The first name that stands twice in the table of entries, which starts at `start` (APPNOTE 4.3.12).
fn repeated_name(zip: &[u8], start: u64) -> String {
    const FIXED: usize = 46;
    let mut seen = BTreeSet::new();
    let mut rest = usize::try_from(start).ok().and_then(|start| zip.get(start..)).unwrap_or_default();
    loop {
        let length = |at: usize| match rest.get(at..at + 2) {
            Some(&[low, high]) => usize::from(u16::from_le_bytes([low, high])),
            _ => 0,
        };
        let (name, extra, comment) = (length(28), length(30), length(32));
        let Some(found) = rest.get(FIXED..FIXED + name) else {
            return String::new();
        };
        if !seen.insert(found) {
            return String::from_utf8_lossy(found).escape_debug().to_string();
        }
        rest = rest.get(FIXED + name + extra + comment..).unwrap_or_default();
    }
}

/// Lets entries through as long as they keep to the limits.
struct Gate {
    limits: Limits,
    total: usize,
    /// Names let through, folded to lower case, each with the name as written.
    names: BTreeMap<String, String>,
}

impl Gate {
    fn new(limits: Limits, found: usize) -> Result<Self, BundleError> {
        if found > limits.entries {
            return Err(BundleError::TooManyEntries { found, limit: limits.entries });
        }
        Ok(Self { limits, total: 0, names: BTreeMap::new() })
    }

    fn admit_name(&mut self, name: &str) -> Result<(), BundleError> {
        if let Some(why) = fault_in(name) {
            return Err(BundleError::BadName { entry: name.escape_debug().to_string(), why });
        }
        match self.names.insert(name.to_lowercase(), name.to_owned()) {
            Some(other) => Err(BundleError::Duplicate { entry: name.to_owned(), other }),
            None => Ok(()),
        }
    }

    /// Counts `grown` more bytes towards the whole bundle.
    fn admit_bytes(&mut self, name: &str, grown: usize) -> Result<(), BundleError> {
        let limit = self.limits.total_bytes;
        self.total = self.total.saturating_add(grown);
        if self.total > limit {
            return Err(BundleError::BundleTooLarge { entry: name.to_owned(), limit });
        }
        if grown > self.limits.entry_bytes {
            return Err(BundleError::EntryTooLarge {
                entry: name.to_owned(),
                limit: self.limits.entry_bytes,
            });
        }
        Ok(())
    }

    /// Looks at the size that one entry has reached.
    fn admit_size(&self, name: &str, unpacked: usize, packed: usize) -> Result<(), BundleError> {
        let Limits { entry_bytes, ratio, free_bytes, .. } = self.limits;
        let entry = || name.to_owned();
        if unpacked > entry_bytes {
            return Err(BundleError::EntryTooLarge { entry: entry(), limit: entry_bytes });
        }
        if unpacked > free_bytes && unpacked / ratio > packed {
            return Err(BundleError::TooTight { entry: entry(), ratio });
        }
        Ok(())
    }
}

/// What keeps a name from being stored safely on every system.
fn fault_in(name: &str) -> Option<&'static str> {
    if name.len() > LONGEST_NAME {
        return Some("it is longer than 200 bytes");
    }
    if name.starts_with('/') {
        return Some("it starts at the root of the disk");
    }
    if name.contains('\\') {
        return Some("it holds a backslash");
    }
    if name.contains(':') {
        return Some("it holds a colon, as a drive letter does");
    }
    if name.chars().any(char::is_control) {
        return Some("it holds a control character");
    }
    name.split('/').find_map(|part| match part {
        "" => Some("a part of it is empty"),
        "." | ".." => Some("it climbs out of its folder"),
        _ => None,
    })
}

fn damaged(error: &ZipError) -> BundleError {
    BundleError::Damaged { what: error.to_string() }
}

/// Why no table of entries was found: these bytes are no zip, or the end of one is missing.
fn no_table(bytes: &[u8], error: &ZipError) -> BundleError {
    const LOCAL_HEADER: &[u8] = b"PK\x03\x04";
    const END_OF_TABLE: &[u8] = b"PK\x05\x06";
    if bytes.windows(END_OF_TABLE.len()).any(|window| window == END_OF_TABLE) {
        damaged(error)
    } else if bytes.starts_with(LOCAL_HEADER) {
        BundleError::CutShort
    } else {
        BundleError::NotZip
    }
}

#[cfg(test)]
#[path = "container_test.rs"]
mod tests;
