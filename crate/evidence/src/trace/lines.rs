//! A file as text lines of fields, whatever system wrote it.

use std::borrow::Cow;

use super::{DecimalMark, Delimiter, ReadProblem};

/// Bytes that are looked through for such as no text has.
const LOOKED_AT: usize = 8_192;

/// The file as bytes of a text: UTF-16 turned into UTF-8, the byte order mark taken off.
///
/// # Errors
/// Empty files, and such with control bytes, which no text has.
pub(super) fn text(bytes: &[u8]) -> Result<Cow<'_, [u8]>, ReadProblem> {
    let text = match bytes {
        [0xef, 0xbb, 0xbf, rest @ ..] => Cow::Borrowed(rest),
        [0xff, 0xfe, rest @ ..] => Cow::Owned(sixteen(rest, u16::from_le_bytes)),
        [0xfe, 0xff, rest @ ..] => Cow::Owned(sixteen(rest, u16::from_be_bytes)),
        plain => Cow::Borrowed(plain),
    };
    // What is binary shows it soon; a stray byte further on is found as a field that is no number.
    let begin = text.get(..LOOKED_AT).unwrap_or(&text);
    if let Some(at) = begin.iter().position(|byte| *byte < 9 || (*byte > 13 && *byte < 32 && *byte != 26)) {
        return Err(ReadProblem::Binary { at: at + 1 });
    }
    if text.iter().all(u8::is_ascii_whitespace) {
        return Err(ReadProblem::Empty);
    }
    Ok(text)
}

fn sixteen(bytes: &[u8], word: fn([u8; 2]) -> u16) -> Vec<u8> {
    let words = bytes.as_chunks().0.iter().map(|pair| word(*pair));
    char::decode_utf16(words)
        .map(|char| char.unwrap_or(char::REPLACEMENT_CHARACTER))
        .collect::<String>()
        .into_bytes()
}

/// Where a line ends, and where the next begins: `\n`, `\r\n` and a lone `\r` all end one.
#[inline]
pub(super) fn line_end(text: &[u8], from: usize) -> (usize, usize) {
    if text.get(from) == Some(&b'\n') {
        return (from, from + 1);
    }
    let rest = text.get(from..).unwrap_or_default();
    match rest.iter().position(|byte| *byte == b'\n' || *byte == b'\r') {
        None => (text.len(), text.len()),
        Some(length) => {
            let end = from + length;
            let two = rest.get(length..length + 2) == Some(b"\r\n");
            (end, end + 1 + usize::from(two))
        }
    }
}

/// The lines of a text.
pub(super) fn lines(text: &[u8]) -> impl Iterator<Item = &[u8]> {
    let mut from = 0;
    std::iter::from_fn(move || {
        let begin = from;
        let (end, next) = line_end(text, from);
        from = next;
        (begin < text.len()).then(|| text.get(begin..end).unwrap_or_default())
    })
}

/// The fields of a line, without the space and the quotes around them.
pub(super) fn fields(line: &[u8], delimiter: Delimiter) -> Vec<&[u8]> {
    let mut fields = Vec::new();
    let mut from = 0;
    loop {
        let end = field_end(line, from, delimiter);
        let field = line.get(from..end).unwrap_or_default().trim_ascii();
        let bare = field.strip_prefix(b"\"").and_then(|field| field.strip_suffix(b"\""));
        fields.push(bare.unwrap_or(field).trim_ascii());
        if end >= line.len() {
            break;
        }
        from = end + 1;
    }
    if delimiter == Delimiter::Space {
        fields.retain(|field| !field.is_empty());
    }
    fields
}

/// Where the field that begins at `from` ends.
#[inline]
pub(super) fn field_end(line: &[u8], from: usize, delimiter: Delimiter) -> usize {
    let mut quoted = false;
    let mut at = from;
    while let Some(byte) = line.get(at) {
        quoted ^= *byte == b'"';
        let ends = *byte == delimiter.byte() || (delimiter == Delimiter::Space && *byte == b'\t');
        if ends && !quoted {
            break;
        }
        at += 1;
    }
    at
}

/// A field as a number.
pub(super) fn value(field: &[u8], decimal: DecimalMark) -> Option<f64> {
    super::number(field, decimal == DecimalMark::Comma)
}

/// A field as text to show: what is not UTF-8 is read as Latin-1, in which the micro sign is often written.
pub(super) fn shown(field: &[u8]) -> String {
    let text = match std::str::from_utf8(field) {
        Ok(text) => text.to_owned(),
        Err(_) => field.iter().map(|byte| char::from(*byte)).collect(),
    };
    match text.char_indices().nth(60) {
        Some((end, _)) => format!("{}…", text.get(..end).unwrap_or_default()),
        None => text,
    }
}
