//! The container of a bundle: a zip (PKWARE APPNOTE 6.3.10) whose entries are all listed in `contents.json`.
//!
//! Writing is a pure function of the entries: one fixed time stamp, one order, the same bytes on every machine.
//! Reading trusts nothing that the zip says of itself: sizes are counted while unpacking, and names that
//! climb, repeat or can't be stored everywhere are refused before their content is touched.

use std::io::Write;

use litemap::LiteMap;
use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::{TINFLStatus, decompress_to_vec_with_limit};
use rawzip::path::EntryPath;
use rawzip::time::UtcDateTime;
use rawzip::{
    CompressionMethod, DataDescriptorOutput, Error as ZipError, ZipArchive, ZipArchiveWriter,
    ZipFileHeaderRecord, ZipSliceArchive, ZipVerification, crc32,
};

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

/// The time stamp of every entry: 1980-01-01, the first that a zip can hold, in seconds since 1970.
const FIRST_MOMENT: i64 = 315_532_800;

/// How hard packing tries, of 10: the usual middle way between size and time.
const LEVEL: u8 = 6;

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

fn write_zip<'a>(entries: impl Iterator<Item = &'a Entry>) -> Result<Vec<u8>, ZipError> {
    let mut writer = ZipArchiveWriter::new(Vec::new());
    for entry in entries {
        let (method, packed) = packed(entry);
        let file = writer
            .new_file(path(&entry.name))
            .compression_method(method)
            .last_modified(UtcDateTime::from_unix(FIRST_MOMENT))
            .unix_permissions(0o644);
        let (mut out, _) = file.start()?;
        out.write_all(&packed).map_err(ZipError::from)?;
        out.finish(DataDescriptorOutput::new(crc32(&entry.bytes), entry.bytes.len() as u64))?;
    }
    writer.finish()
}

/// The name as it is written: no program reads an ASCII name in two ways, any other is marked as UTF-8.
fn path(name: &str) -> EntryPath<'_> {
    if name.is_ascii() { EntryPath::verbatim(name.as_bytes()) } else { EntryPath::conformant(name) }
}

/// How an entry is stored, and the bytes that are. A large one stays as it is, so that none we write can meet the
/// limit on the ratio. Large entries are pictures, which are compressed already.
fn packed(entry: &Entry) -> (CompressionMethod, Vec<u8>) {
    if entry.bytes.len() > LIMITS.free_bytes {
        (CompressionMethod::STORE, entry.bytes.clone())
    } else {
        (CompressionMethod::DEFLATE, compress_to_vec(&entry.bytes, LEVEL))
    }
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
    let zip = ZipArchive::from_slice(bytes).map_err(|e| no_table(bytes, &e))?;
    if !bytes.starts_with(b"PK") || zip.end_offset() != bytes.len() as u64 {
        return Err(BundleError::NotZip);
    }
    let found = usize::try_from(zip.entries_hint()).unwrap_or(usize::MAX);
    let mut gate = Gate::new(limits, found)?;
    let headers = headers(&zip)?;
    for header in &headers {
        admit_header(header, &mut gate)?;
    }
    apart(&zip, &headers)?;
    let mut entries = Vec::with_capacity(headers.len());
    for header in headers.iter().filter(|header| !is_folder(header)) {
        entries.push(inflate(&zip, header, &mut gate)?);
    }
    contents::check(entries).map(Entries)
}

type Zip<'a> = ZipSliceArchive<&'a [u8]>;

/// The table of entries; as many as it says there are.
fn headers<'a>(zip: &'a Zip) -> Result<Vec<ZipFileHeaderRecord<'a>>, BundleError> {
    let mut table = zip.entries();
    let mut headers = Vec::new();
    while let Some(header) = table.next_entry().map_err(|e| damaged(&e))? {
        headers.push(header);
    }
    if headers.len() as u64 != zip.entries_hint() {
        return Err(BundleError::Damaged {
            what: "its table does not hold as many entries as it says".into(),
        });
    }
    Ok(headers)
}

/// The name of an entry, which must be UTF-8.
fn name_of<'a>(header: &'a ZipFileHeaderRecord) -> Result<&'a str, BundleError> {
    std::str::from_utf8(header.file_path().as_bytes())
        .map_err(|_| BundleError::Damaged { what: "a name in it is no text".into() })
}

/// Looks at what the table says of an entry, before its content is touched.
fn admit_header(header: &ZipFileHeaderRecord, gate: &mut Gate) -> Result<(), BundleError> {
    let name = name_of(header)?;
    gate.admit_name(name.strip_suffix('/').filter(|_| is_folder(header)).unwrap_or(name))?;
    if header.flags().is_encrypted() {
        return Err(BundleError::Encrypted { entry: name.to_owned() });
    }
    if ![CompressionMethod::STORE, CompressionMethod::DEFLATE].contains(&header.compression_method()) {
        return Err(BundleError::Method { entry: name.to_owned() });
    }
    Ok(())
}

/// No two entries may share bytes, and each must bear at its own place the name that the table gives it.
fn apart(zip: &Zip, headers: &[ZipFileHeaderRecord]) -> Result<(), BundleError> {
    let mut ranges = Vec::with_capacity(headers.len());
    for header in headers {
        let entry = zip.get_entry(header.wayfinder()).map_err(|e| damaged(&e))?;
        if entry.local_header().file_path().as_bytes() != header.file_path().as_bytes() {
            return Err(BundleError::Damaged { what: "an entry and the table call it by two names".into() });
        }
        let (_, end) = entry.compressed_data_range();
        ranges.push((header.local_header_offset(), end));
    }
    ranges.sort_unstable();
    if ranges.windows(2).any(|pair| matches!(pair, [(_, end), (start, _)] if end > start)) {
        return Err(BundleError::Damaged { what: "two of its entries share their bytes".into() });
    }
    Ok(())
}

/// Whether an entry only names a folder, as packing programs add them, and holds nothing.
fn is_folder(header: &ZipFileHeaderRecord) -> bool {
    header.file_path().as_bytes().ends_with(b"/") && header.uncompressed_size_hint() == 0
}

/// The content of one entry, which never grows beyond what the limits let through.
fn inflate(zip: &Zip, header: &ZipFileHeaderRecord, gate: &mut Gate) -> Result<Entry, BundleError> {
    let name = name_of(header)?.to_owned();
    let broken = |what: String| BundleError::DamagedEntry { entry: name.clone(), what };
    let entry = zip.get_entry(header.wayfinder()).map_err(|e| broken(e.to_string()))?;
    let packed = entry.data();
    let room = gate.room_for(packed.len());
    let bytes = if header.compression_method() == CompressionMethod::STORE {
        packed.to_vec()
    } else {
        match decompress_to_vec_with_limit(packed, room) {
            Ok(bytes) => bytes,
            Err(error) if error.status == TINFLStatus::HasMoreOutput => {
                return Err(gate.too_much(&name, packed.len()));
            }
            Err(error) => return Err(broken(error.to_string())),
        }
    };
    if bytes.len() > room {
        return Err(gate.too_much(&name, packed.len()));
    }
    let found = ZipVerification { crc: crc32(&bytes), uncompressed_size: bytes.len() as u64 };
    entry.claim_verifier().valid(found).map_err(|e| broken(e.to_string()))?;
    gate.admit_bytes(&name, bytes.len())?;
    Ok(Entry { name, bytes })
}

/// Lets entries through as long as they keep to the limits.
struct Gate {
    limits: Limits,
    total: usize,
    /// Names let through, folded to lower case, each with the name as written.
    names: LiteMap<String, String>,
}

impl Gate {
    fn new(limits: Limits, found: usize) -> Result<Self, BundleError> {
        if found > limits.entries {
            return Err(BundleError::TooManyEntries { found, limit: limits.entries });
        }
        Ok(Self { limits, total: 0, names: LiteMap::new() })
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

    /// How large the next entry may become, of so many bytes packed.
    fn room_for(&self, packed: usize) -> usize {
        let Limits { entry_bytes, total_bytes, .. } = self.limits;
        entry_bytes.min(total_bytes - self.total).min(self.loosest(packed))
    }

    /// The largest size that so many bytes may unpack to.
    fn loosest(&self, packed: usize) -> usize {
        self.limits.free_bytes.max(packed.saturating_mul(self.limits.ratio))
    }

    /// Which limit an entry broke that has outgrown its room.
    fn too_much(&self, name: &str, packed: usize) -> BundleError {
        let Limits { entry_bytes, total_bytes, ratio, .. } = self.limits;
        let (entry, room) = (name.to_owned(), self.room_for(packed));
        if room == entry_bytes {
            BundleError::EntryTooLarge { entry, limit: entry_bytes }
        } else if room == self.loosest(packed) {
            BundleError::TooTight { entry, ratio }
        } else {
            BundleError::BundleTooLarge { entry, limit: total_bytes }
        }
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
