//! The top of a file, which says what the file is and in which version, so that it is known before the rest is read.

use serde::Deserialize;
use slope_evidence::border::from_json;

/// What a text turns out to be by its top.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Head {
    /// Nothing of the kind that was looked for.
    Another,
    /// Of that kind, in the version that is read.
    Ours,
    /// Of that kind, in a version that came later.
    Later,
    /// Of that kind, but cut off or with no version that ever was.
    Damaged,
}

/// What every version has at its top.
#[derive(Deserialize)]
struct Stated {
    kind: Option<String>,
    format: Option<u64>,
}

/// Whether a text is of a kind, whose present version is `format`.
pub fn head(text: &str, kind: &str, format: u64) -> Head {
    // A notebook of ten thousand rows is not read for it.
    if !text.contains(kind) {
        return Head::Another;
    }
    match from_json::<Stated>(text) {
        Ok(Stated { kind: Some(told), format: version }) if told == kind => match version {
            Some(version) if version == format => Head::Ours,
            Some(version) if version > format => Head::Later,
            _ => Head::Damaged,
        },
        // Cut off, as by a download that broke off.
        Err(_) if text.trim_start().starts_with(&format!("{{\n  \"kind\": \"{kind}\"")) => Head::Damaged,
        _ => Head::Another,
    }
}
