//! The container of a bundle: a zip (PKWARE APPNOTE 6.3.10) whose entries are all listed in `contents.json`.
//!
//! Writing is a pure function of the entries: one fixed time stamp, one order, the same bytes on every machine.
//! Reading trusts nothing that the zip says of itself: sizes are counted while unpacking, and names that
//! climb, repeat or can't be stored everywhere are refused before their content is touched.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::io::Write;

use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::{TINFLStatus, decompress_to_vec_with_limit};
use rawzip::path::EntryPath;
use rawzip::time::UtcDateTime;
use rawzip::{
    CompressionMethod, DataDescriptorOutput, ZipArchive, ZipArchiveWriter, ZipFileHeaderRecord,
    ZipSliceArchive, ZipSliceEntry,
};

use super::contents;
use super::crc::crc32;
use super::entry::{Entries, Entry};
use super::error::ArchiveError;

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

/// Longest name of a file or a folder in an entry's path, bytes: common file systems store names of up to 255.
const LONGEST_NAME: usize = 200;
/// Longest path of an entry, bytes: a course page that packs what was handed in puts it into folders with long names.
const LONGEST_PATH: usize = 1000;

/// How hard deflate tries: of 0 to 10, its usual compromise.
const LEVEL: u8 = 6;

/// The time stamp of every entry: 1980-01-01T00:00:00Z, the first that a zip can hold (APPNOTE 4.4.6), as POSIX
/// time, seconds.
const EPOCH: i64 = 315_532_800;

/// An ordinary file that its owner writes and everyone reads (POSIX).
const MODE: u32 = 0o100_644;

/// How a local header starts (APPNOTE 4.3.7).
const LOCAL_HEADER: &[u8] = b"PK\x03\x04";

/// Packs `entries`, and a list of them, into the bytes of a zip.
///
/// # Errors
/// What [`unpack`] would refuse is not written: bad or repeated names, too many or too large entries.
pub fn pack(entries: &[Entry]) -> Result<Vec<u8>, ArchiveError> {
    let list = contents::list(entries);
    let all = || std::iter::once(&list).chain(entries);
    let mut gate = Gate::new(LIMITS, entries.len() + 1)?;
    for entry in all() {
        gate.admit_name(&entry.name)?;
        gate.admit_bytes(&entry.name, entry.bytes.len())?;
    }
    write_zip(all()).map_err(|e| ArchiveError::Damaged { what: e.to_string() })
}

fn write_zip<'a>(entries: impl Iterator<Item = &'a Entry>) -> Result<Vec<u8>, rawzip::Error> {
    let mut writer = ZipArchiveWriter::new(Vec::new());
    for entry in entries {
        write_entry(&mut writer, entry, method_for(entry))?;
    }
    writer.finish()
}

/// A large entry is stored as it is, so that none we write can meet the limit on the ratio. Large entries are
/// pictures, which are compressed already.
pub(super) fn method_for(entry: &Entry) -> CompressionMethod {
    if entry.bytes.len() > LIMITS.free_bytes { CompressionMethod::STORE } else { CompressionMethod::DEFLATE }
}

/// Beside name and content nothing goes in that depends on the clock or the machine.
pub(super) fn write_entry<W: Write>(
    writer: &mut ZipArchiveWriter<W>,
    entry: &Entry,
    method: CompressionMethod,
) -> Result<(), rawzip::Error> {
    let packed = if method == CompressionMethod::DEFLATE {
        Cow::Owned(compress_to_vec(&entry.bytes, LEVEL))
    } else {
        Cow::Borrowed(entry.bytes.as_slice())
    };
    // A conformant path says in its header that it is UTF-8, which ASCII need not.
    let name = entry.name.as_str();
    let path =
        if name.is_ascii() { EntryPath::verbatim(name.as_bytes()) } else { EntryPath::conformant(name) };
    let (mut body, _) = writer
        .new_file(path)
        .compression_method(method)
        .last_modified(UtcDateTime::from_unix(EPOCH))
        .unix_permissions(MODE)
        .start()?;
    body.write_all(&packed)?;
    body.finish(DataDescriptorOutput::new(crc32(&entry.bytes), entry.bytes.len() as u64))?;
    Ok(())
}

/// Unpacks the bytes of a bundle and checks every entry against the list.
///
/// # Errors
/// See [`ArchiveError`]; each names the entry concerned.
pub fn unpack(bytes: &[u8]) -> Result<Entries, ArchiveError> {
    unpack_within(bytes, LIMITS)
}

/// As [`unpack`], within limits of one's own.
///
/// # Errors
/// See [`ArchiveError`]; each names the entry concerned.
pub fn unpack_within(bytes: &[u8], limits: Limits) -> Result<Entries, ArchiveError> {
    contents::check(read(bytes, limits, &|_| true)?).map(Entries)
}

/// Unpacks those entries of any zip that are wanted by their names, and nothing else of it. Where it has a list of its
/// contents, what was unpacked is held against that; [`CONTENTS`](contents::CONTENTS) itself is wanted by nobody.
///
/// # Errors
/// See [`ArchiveError`]; each names the entry concerned.
pub fn unpack_wanted(bytes: &[u8], wanted: impl Fn(&str) -> bool) -> Result<Entries, ArchiveError> {
    let entries = read(bytes, LIMITS, &|name| name == contents::CONTENTS || wanted(name))?;
    contents::check_some(entries).map(Entries)
}

/// The entries that are wanted by their names, as they stand in the zip. The table and every name are looked at all the same.
fn read(bytes: &[u8], limits: Limits, wanted: &dyn Fn(&str) -> bool) -> Result<Vec<Entry>, ArchiveError> {
    let archive = ZipArchive::from_slice(bytes).map_err(|e| no_table(bytes, &e))?;
    let count = usize::try_from(archive.entries_hint()).unwrap_or(usize::MAX);
    let mut gate = Gate::new(limits, count)?;
    let table = read_table(&archive, count)?;
    let found = table.iter().map(|header| admit_header(header, &mut gate)).collect::<Result<Vec<_>, _>>()?;
    let found = found.into_iter().map(|listed| locate(listed, &archive)).collect::<Result<Vec<_>, _>>()?;
    check_layout(bytes, &found, archive.directory_offset())?;
    let mut entries = Vec::with_capacity(found.len());
    for place in &found {
        check_header(place)?;
        if !is_folder(place.header) && wanted(&place.name) {
            entries.push(inflate(place, &mut gate)?);
        }
    }
    Ok(entries)
}

/// The table of entries, which holds `count` by its own account.
fn read_table<'a>(
    archive: &'a ZipSliceArchive<&[u8]>,
    count: usize,
) -> Result<Vec<ZipFileHeaderRecord<'a>>, ArchiveError> {
    let table: Vec<_> =
        archive.entries().take(count.saturating_add(1)).collect::<Result<_, _>>().map_err(|e| damaged(&e))?;
    if table.len() == count {
        Ok(table)
    } else {
        Err(ArchiveError::Damaged { what: format!("its table does not hold the {count} entries it claims") })
    }
}

/// What the table says of an entry, under a name that was let through.
type NamedHeader<'a> = (Cow<'a, str>, &'a ZipFileHeaderRecord<'a>);

/// An entry at its place in the zip.
struct PlacedEntry<'a> {
    name: Cow<'a, str>,
    /// What the table says of it.
    header: &'a ZipFileHeaderRecord<'a>,
    /// Its own header and what is packed.
    body: ZipSliceEntry<'a>,
}

/// Looks at what the table says of an entry, before its content is touched.
fn admit_header<'a>(
    header: &'a ZipFileHeaderRecord<'a>,
    gate: &mut Gate,
) -> Result<NamedHeader<'a>, ArchiveError> {
    let raw = header.file_path().as_bytes();
    let bare = |name: &str| name.strip_suffix('/').filter(|_| is_folder(header)).unwrap_or(name).to_owned();
    let name = match std::str::from_utf8(raw) {
        Ok(name) => {
            gate.admit_name(&bare(name))?;
            Cow::Borrowed(name)
        }
        Err(_) if header.flags().is_utf8() => {
            let entry = String::from_utf8_lossy(raw).escape_debug().to_string();
            return Err(ArchiveError::BadName { entry, why: "it is not a text in UTF-8" });
        }
        // What is not said to be UTF-8 (APPNOTE 4.4.4, bit 11) is in the code page of whoever packed it, which nobody can
        // tell. Nothing is looked up by such a name, and two of them may be marked alike.
        Err(_) => {
            let name = marked(raw);
            admit_place(&bare(&name))?;
            Cow::Owned(name)
        }
    };
    if header.flags().is_encrypted() {
        return Err(ArchiveError::Encrypted { entry: name.into_owned() });
    }
    if !matches!(header.compression_method(), CompressionMethod::STORE | CompressionMethod::DEFLATE) {
        return Err(ArchiveError::Method { entry: name.into_owned() });
    }
    Ok((name, header))
}

/// A name in a code page, with a mark for each byte of a letter beyond ASCII: also for a second byte that looks like a backslash.
fn marked(raw: &[u8]) -> String {
    let mut inside = false;
    let told = |byte: &u8| {
        let is_told = byte.is_ascii() && !(inside && *byte == b'\\');
        inside = !byte.is_ascii();
        if is_told { char::from(*byte) } else { '\u{fffd}' }
    };
    raw.iter().map(told).collect()
}

/// Refuses a name that leads where no entry may stand.
fn admit_place(name: &str) -> Result<(), ArchiveError> {
    match fault_in(name) {
        Some(why) => Err(ArchiveError::BadName { entry: name.escape_debug().to_string(), why }),
        None => Ok(()),
    }
}

/// Whether an entry only names a folder, as packing programs add them, and holds nothing.
fn is_folder(header: &ZipFileHeaderRecord) -> bool {
    header.file_path().as_bytes().ends_with(b"/") && header.uncompressed_size_hint() == 0
}

fn locate<'a>(
    (name, header): NamedHeader<'a>,
    archive: &'a ZipSliceArchive<&[u8]>,
) -> Result<PlacedEntry<'a>, ArchiveError> {
    let body = archive.get_entry(header.wayfinder()).map_err(|e| damaged_entry(&name, e.to_string()))?;
    Ok(PlacedEntry { name, header, body })
}

/// Entries fill the zip from its first byte to the table at `table_start`: none reaches into the next, none is
/// left out of the table.
fn check_layout(bytes: &[u8], found: &[PlacedEntry], table_start: u64) -> Result<(), ArchiveError> {
    let refuse = |what: String| Err(ArchiveError::Damaged { what });
    let mut ranges = Vec::with_capacity(found.len());
    for place in found {
        let (_, end) = place.body.compressed_data_range();
        ranges.push((place.header.local_header_offset(), end, &*place.name));
    }
    ranges.sort_unstable();
    if ranges.first().is_some_and(|&(start, ..)| start > 0) {
        return refuse("something stands before its first entry".into());
    }
    let mut free = 0;
    for (start, end, name) in ranges.into_iter().chain([(table_start, table_start, "the table")]) {
        if start < free {
            return refuse(format!("the entry before \"{name}\" reaches into it"));
        }
        if holds(between(bytes, free, start), LOCAL_HEADER) {
            return refuse(format!("the entry before \"{name}\" is not in its table"));
        }
        free = end;
    }
    Ok(())
}

/// `bytes` from `start` up to `end`, nothing if they don't reach so far.
fn between(bytes: &[u8], start: u64, end: u64) -> &[u8] {
    let range = usize::try_from(start).ok().zip(usize::try_from(end).ok());
    range.and_then(|(start, end)| bytes.get(start..end)).unwrap_or_default()
}

fn holds(bytes: &[u8], sought: &[u8]) -> bool {
    bytes.windows(sought.len()).any(|window| window == sought)
}

/// An entry's own header, or what follows its content, says the same as the table.
fn check_header(place: &PlacedEntry) -> Result<(), ArchiveError> {
    let PlacedEntry { name, header, body } = place;
    let local = body.local_header();
    let after = body.data_descriptor().map_err(|e| damaged_entry(name, e.to_string()))?;
    let figures = match after {
        Some(after) => (after.crc32(), after.compressed_size(), after.uncompressed_size()),
        None => (local.crc32(), local.compressed_size_hint(), local.uncompressed_size_hint()),
    };
    let same = local.file_path().as_bytes() == header.file_path().as_bytes()
        && local.flags().bits() == header.flags().bits()
        && local.compression_method() == header.compression_method()
        && local.last_modified_dos() == header.last_modified_dos()
        && figures == (header.crc32(), header.compressed_size_hint(), header.uncompressed_size_hint());
    if same { Ok(()) } else { Err(damaged_entry(name, "its header and the table differ".into())) }
}

/// The content of one entry, unpacked no further than the limits allow.
fn inflate(place: &PlacedEntry, gate: &mut Gate) -> Result<Entry, ArchiveError> {
    let PlacedEntry { name, header, body } = place;
    let packed = body.data();
    let bytes = if header.compression_method() == CompressionMethod::STORE {
        packed.to_vec()
    } else {
        // One byte more than there is room for, so that the gate sees when there is too much.
        match decompress_to_vec_with_limit(packed, gate.room(packed.len()).saturating_add(1)) {
            Ok(bytes) => bytes,
            Err(stopped) if stopped.status == TINFLStatus::HasMoreOutput => stopped.output,
            Err(broken) => return Err(damaged_entry(name, broken.to_string())),
        }
    };
    gate.admit_bytes(name, bytes.len())?;
    gate.admit_ratio(name, bytes.len(), packed.len())?;
    if bytes.len() as u64 != header.uncompressed_size_hint() {
        return Err(damaged_entry(name, "it is not as long as the table says".into()));
    }
    if crc32(&bytes) != header.crc32() {
        return Err(damaged_entry(name, "its CRC-32 is not the one in the table".into()));
    }
    Ok(Entry { name: name.to_string(), bytes })
}

/// Lets entries through as long as they keep to the limits.
pub(super) struct Gate {
    limits: Limits,
    total: usize,
    /// Names let through, folded to lower case, each with the name as written. Folding ASCII is enough: entries
    /// are read by name in memory, and every name that is looked for is ASCII.
    names: BTreeMap<String, String>,
}

impl Gate {
    pub fn new(limits: Limits, found: usize) -> Result<Self, ArchiveError> {
        let gate = Self { limits, total: 0, names: BTreeMap::new() };
        gate.admit_count(found)?;
        Ok(gate)
    }

    /// Looks at how many entries there are.
    pub fn admit_count(&self, found: usize) -> Result<(), ArchiveError> {
        let limit = self.limits.entries;
        if found > limit { Err(ArchiveError::TooManyEntries { found, limit }) } else { Ok(()) }
    }

    pub fn admit_name(&mut self, name: &str) -> Result<(), ArchiveError> {
        admit_place(name)?;
        match self.names.insert(name.to_ascii_lowercase(), name.to_owned()) {
            Some(other) => Err(ArchiveError::Duplicate { entry: name.to_owned(), other }),
            None => Ok(()),
        }
    }

    /// Counts the `grown` bytes of one entry towards the whole bundle.
    pub fn admit_bytes(&mut self, name: &str, grown: usize) -> Result<(), ArchiveError> {
        let limit = self.limits.total_bytes;
        self.total = self.total.saturating_add(grown);
        if self.total > limit {
            return Err(ArchiveError::BundleTooLarge { entry: name.to_owned(), limit });
        }
        if grown > self.limits.entry_bytes {
            return Err(ArchiveError::EntryTooLarge {
                entry: name.to_owned(),
                limit: self.limits.entry_bytes,
            });
        }
        Ok(())
    }

    /// The largest unpacked size, bytes, that an entry of `packed` bytes may still have.
    fn room(&self, packed: usize) -> usize {
        let Limits { entry_bytes, total_bytes, ratio, free_bytes, .. } = self.limits;
        let tightest = packed.saturating_add(1).saturating_mul(ratio).saturating_sub(1).max(free_bytes);
        entry_bytes.min(total_bytes.saturating_sub(self.total)).min(tightest)
    }

    /// Looks at how tightly an entry was packed.
    fn admit_ratio(&self, name: &str, unpacked: usize, packed: usize) -> Result<(), ArchiveError> {
        let Limits { ratio, free_bytes, .. } = self.limits;
        if unpacked > free_bytes && unpacked / ratio > packed {
            return Err(ArchiveError::TooTight { entry: name.to_owned(), ratio });
        }
        Ok(())
    }
}

/// What keeps a name from being stored safely on every system.
fn fault_in(name: &str) -> Option<&'static str> {
    if name.len() > LONGEST_PATH {
        return Some("it is longer than 1000 bytes");
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
        part if part.len() > LONGEST_NAME => Some("a part of it is longer than 200 bytes"),
        _ => None,
    })
}

pub(super) fn damaged(error: &rawzip::Error) -> ArchiveError {
    ArchiveError::Damaged { what: error.to_string() }
}

fn damaged_entry(name: &str, what: String) -> ArchiveError {
    ArchiveError::DamagedEntry { entry: name.to_owned(), what }
}

/// Why no table of entries was found: these bytes are no zip, or the end of one is missing.
fn no_table(bytes: &[u8], error: &rawzip::Error) -> ArchiveError {
    const END_OF_TABLE: &[u8] = b"PK\x05\x06";
    if holds(bytes, END_OF_TABLE) {
        damaged(error)
    } else if bytes.starts_with(LOCAL_HEADER) {
        ArchiveError::CutShort
    } else {
        ArchiveError::NotZip
    }
}

#[cfg(test)]
#[path = "container_test.rs"]
mod tests;
