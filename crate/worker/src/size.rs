//! The size of a picture, read from its header: what would take hundreds of megabytes to decode is refused before. And whether
//! it is there to its end.
//!
//! Sources: W3C, Portable Network Graphics (PNG) Specification, third edition, 5.2 and 11.2.1; ITU-T T.81 (JPEG), annex
//! B.1.1 and B.2; RFC 9649 (WebP), 2.5 to 2.7 and 3.4, with RFC 6386 (VP8), 9.1; Graphics Interchange Format, Version
//! 89a, sections 17 to 26; ISO/IEC 14496-12, 4.3 (file type box), with the brands of ISO/IEC 23008-12 (HEIF), annex B (both
//! from memory).

use serde::Serialize;
use slope_evidence::words::{Message, Value};
use slope_evidence::{errors_as_data, message};

/// Pixels of a picture that is taken, at most.
pub const MOST: u64 = 64_000_000;

/// Pixels to the right and downwards, as stored; a picture may be turned when it is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Size {
    /// Pixels to the right.
    pub width: u32,
    /// Pixels downwards.
    pub height: u32,
}

/// Why a picture is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeError {
    /// None of the kinds known here.
    Unknown,
    /// A photo in HEIF format (HEIC), which few browsers decode.
    Heif,
    /// It ends before its size is told.
    Cut,
    /// It tells no size, or something that is none.
    Damaged,
    /// More pixels than are taken.
    TooLarge {
        /// Pixels to the right.
        width: u32,
        /// Pixels downwards.
        height: u32,
    },
}

errors_as_data!(SizeError);

impl SizeError {
    /// Why the picture of a file is not taken, and what to do.
    pub fn message(self, file: &str) -> Message {
        let file = if file.is_empty() { message!("size-unnamed").into() } else { Value::from(file) };
        match self {
            Self::Unknown => message!("size-unknown", file = file),
            Self::Heif => message!("size-heif", file = file),
            Self::Cut => message!("size-cut", file = file),
            Self::Damaged => message!("size-damaged", file = file),
            Self::TooLarge { width, height } => message!(
                "size-too_large",
                file = file,
                width = width.to_string(),
                height = height.to_string(),
                most = (MOST / 1_000_000).to_string()
            ),
        }
    }
}

/// The size of a picture, of which the first bytes are given; a size that is taken.
///
/// # Errors
/// [`SizeError::Cut`] where more bytes may tell; the others stand whatever follows.
pub fn size(bytes: &[u8]) -> Result<Size, SizeError> {
    let reader = Bytes(bytes);
    let [width, height] = if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        png(reader)
    } else if bytes.starts_with(b"\xff\xd8\xff") {
        jpeg(reader)
    } else if bytes.starts_with(b"RIFF") && bytes.get(8..12).is_none_or(|kind| kind == b"WEBP") {
        webp(reader)
    } else if bytes.starts_with(b"GIF87a") || bytes.starts_with(b"GIF89a") {
        gif(reader)
    } else {
        Err(if is_heif(bytes) { SizeError::Heif } else { SizeError::Unknown })
    }?;
    match u64::from(width) * u64::from(height) {
        0 => Err(SizeError::Damaged),
        pixels if pixels > MOST => Err(SizeError::TooLarge { width, height }),
        _ => Ok(Size { width, height }),
    }
}

/// Whether a file that begins so is a picture, be it one that is not taken: 32 bytes tell.
pub fn is_picture(bytes: &[u8]) -> bool {
    size(bytes) != Err(SizeError::Unknown)
}

/// Whether a picture is there to its end, as far as its kind tells: of one in JPEG format that was cut off, some browsers show
/// what there is, and make up the rest. One whose end is only not marked, as T.81 asks for, differs from that in nothing that
/// stands outside its coded data, and counts as cut off too: saved again by any program, it has its mark.
pub fn is_whole(bytes: &[u8]) -> bool {
    !bytes.starts_with(b"\xff\xd8\xff") || whole_jpeg(Bytes(bytes)).is_ok()
}

/// Whether the box that says which type a file has gives one of HEIF as the first: a picture, or several, coded as HEVC, or
/// in a way that the others say.
fn is_heif(bytes: &[u8]) -> bool {
    let brands = [b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"hevm", b"hevs", b"mif1", b"msf1"];
    let major = bytes.get(8..12);
    bytes.get(4..8) == Some(b"ftyp".as_slice()) && brands.iter().any(|brand| major == Some(brand.as_slice()))
}

/// Numbers at places of the bytes.
#[derive(Clone, Copy)]
struct Bytes<'a>(&'a [u8]);

impl Bytes<'_> {
    fn take<const N: usize>(self, at: usize) -> Result<[u8; N], SizeError> {
        self.0.get(at..).and_then(|rest| rest.first_chunk()).copied().ok_or(SizeError::Cut)
    }

    fn byte(self, at: usize) -> Result<u8, SizeError> {
        self.take(at).map(|[byte]: [u8; 1]| byte)
    }

    /// Two bytes, the greater first.
    fn big(self, at: usize) -> Result<u16, SizeError> {
        self.take(at).map(u16::from_be_bytes)
    }

    /// Two bytes, the smaller first.
    fn small(self, at: usize) -> Result<u16, SizeError> {
        self.take(at).map(u16::from_le_bytes)
    }

    fn is(self, at: usize, what: &[u8]) -> Result<(), SizeError> {
        let found = self.0.get(at..at + what.len()).ok_or(SizeError::Cut)?;
        if found == what { Ok(()) } else { Err(SizeError::Damaged) }
    }
}

/// The first chunk is the header.
fn png(bytes: Bytes<'_>) -> Result<[u32; 2], SizeError> {
    bytes.is(12, b"IHDR")?;
    Ok([u32::from_be_bytes(bytes.take(16)?), u32::from_be_bytes(bytes.take(20)?)])
}

/// The first frame header, behind whatever a camera writes before it.
fn jpeg(bytes: Bytes<'_>) -> Result<[u32; 2], SizeError> {
    let mut at = 2;
    loop {
        let (marker, behind) = marker(bytes, at)?;
        at = match marker {
            // Markers without a segment.
            0x01 | 0xd0..=0xd8 => behind,
            // The picture begins or ends, and no frame was told of.
            0x00 | 0xd9 | 0xda => return Err(SizeError::Damaged),
            // Frame headers: all of C0 to CF, but for tables (C4), what is reserved (C8), arithmetic conditioning (CC).
            0xc0..=0xc3 | 0xc5..=0xc7 | 0xc9..=0xcb | 0xcd..=0xcf => {
                return Ok([bytes.big(behind + 5)?.into(), bytes.big(behind + 3)?.into()]);
            }
            _ => segment_end(bytes, behind)?,
        };
    }
}

/// From its beginning to the marker that ends it; what a camera writes behind that does not count.
fn whole_jpeg(bytes: Bytes<'_>) -> Result<(), SizeError> {
    let mut at = 2;
    loop {
        let (marker, behind) = marker(bytes, at)?;
        at = match marker {
            0x01 | 0xd0..=0xd8 => behind,
            0x00 => return Err(SizeError::Damaged),
            0xd9 => return Ok(()),
            // Coded data stand behind the header of a scan.
            0xda => coded_end(bytes, segment_end(bytes, behind)?)?,
            _ => segment_end(bytes, behind)?,
        };
    }
}

/// The marker of a JPEG that stands at a place, and the place behind it.
fn marker(bytes: Bytes<'_>, mut at: usize) -> Result<(u8, usize), SizeError> {
    bytes.is(at, b"\xff")?;
    // Any number of these may stand before a marker.
    while bytes.byte(at)? == 0xff {
        at += 1;
    }
    Ok((bytes.byte(at)?, at + 1))
}

/// The place behind a segment of a JPEG that begins with its length.
fn segment_end(bytes: Bytes<'_>, at: usize) -> Result<usize, SizeError> {
    let length = usize::from(bytes.big(at)?);
    if length < 2 { Err(SizeError::Damaged) } else { Ok(at + length) }
}

/// The place behind coded data of a JPEG: at a marker that does not merely restart them.
fn coded_end(bytes: Bytes<'_>, at: usize) -> Result<usize, SizeError> {
    let data = bytes.0.get(at..).ok_or(SizeError::Cut)?;
    let ends = |pair: &[u8]| matches!(pair, [0xff, 0x01..=0xcf | 0xd8..=0xfe]);
    data.windows(2).position(ends).map(|length| at + length).ok_or(SizeError::Cut)
}

/// Lossy, lossless, or extended: the first chunk tells which, and the size.
fn webp(bytes: Bytes<'_>) -> Result<[u32; 2], SizeError> {
    let data = 20;
    match &bytes.take(12)? {
        b"VP8 " => {
            bytes.is(data + 3, b"\x9d\x01\x2a")?;
            // Two bits above each size ask for it to be scaled up when shown.
            let side = |at| bytes.small(at).map(|side| u32::from(side & 0x3fff));
            Ok([side(data + 6)?, side(data + 8)?])
        }
        b"VP8L" => {
            bytes.is(data, b"\x2f")?;
            let bits = u32::from_le_bytes(bytes.take(data + 1)?);
            Ok([(bits & 0x3fff) + 1, ((bits >> 14) & 0x3fff) + 1])
        }
        b"VP8X" => {
            let side = |at| bytes.take(at).map(|[a, b, c]: [u8; 3]| u32::from_le_bytes([a, b, c, 0]) + 1);
            Ok([side(data + 4)?, side(data + 7)?])
        }
        _ => Err(SizeError::Damaged),
    }
}

/// The logical screen, or what of the first image reaches beyond it.
fn gif(bytes: Bytes<'_>) -> Result<[u32; 2], SizeError> {
    let (width, height) = (u32::from(bytes.small(6)?), u32::from(bytes.small(8)?));
    let packed = bytes.byte(10)?;
    let table = if packed & 0x80 == 0 { 0 } else { 3 << ((packed & 7) + 1) };
    let mut at = 13 + table;
    loop {
        match bytes.byte(at)? {
            0x2c => break,
            // An extension: its label, then blocks with their lengths before them, up to an empty one.
            0x21 => {
                at += 2;
                loop {
                    let length = usize::from(bytes.byte(at)?);
                    at += 1 + length;
                    if length == 0 {
                        break;
                    }
                }
            }
            _ => return Err(SizeError::Damaged),
        }
    }
    let reach = |from: usize, side: usize| {
        Ok::<_, SizeError>(u32::from(bytes.small(at + from)?) + u32::from(bytes.small(at + side)?))
    };
    Ok([width.max(reach(1, 5)?), height.max(reach(3, 7)?)])
}

#[cfg(test)]
#[path = "size_test.rs"]
mod tests;
