//! What a teacher says of a notebook that was handed in: comments, each beside a place of it, words on all of it, a mark.
//!
//! It is a file of its own, so that the log that was handed in stays as it was. It names the notebook by how many entries its
//! log had, and by the digest that the history shows of the last of them.

use serde::{Deserialize, Serialize};
use slope_evidence::border::{from_json, to_json_lines};
use slope_evidence::message;
use slope_evidence::words::Message;

use crate::head::{Head, head};

/// The version that is written.
const FORMAT: u64 = 1;
/// The word by which such a file is known.
const KIND: &str = "slope-of-light feedback";
/// The longest file that is read or written, bytes.
const LONGEST: usize = 1 << 20;
/// The most comments in one.
const MOST: usize = 1_000;

/// What a teacher says of a notebook. All texts are plain.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Feedback {
    /// The notebook that was handed in.
    pub of: HandedNotebook,
    /// Who says it, as typed.
    pub from: String,
    /// When it was written to a file (RFC 3339).
    pub at: String,
    /// Words on all of it.
    pub general: String,
    /// The mark, as typed.
    pub mark: String,
    /// What is said of its places.
    pub comments: Vec<Comment>,
}

/// A notebook as it was handed in, and what tells a person which it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct HandedNotebook {
    /// The count of entries of its log.
    pub entries: u32,
    /// The chained SHA-256 of the last of them, in hexadecimal digits.
    pub digest: String,
    /// Its title.
    pub title: String,
    /// Who measured.
    pub people: String,
    /// Student number.
    pub student_number: String,
    /// Group.
    pub group: String,
    /// Date.
    pub date: String,
}

/// What is said of one place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Comment {
    /// What it is about.
    pub place: CommentPlace,
    /// The words.
    pub text: String,
}

/// A place of a notebook.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum CommentPlace {
    /// A section.
    Section(ReportSection),
    /// A row, by the number that names it in the log.
    Row(u32),
    /// A question of the hand-out, by the number that names it in the log.
    Task(u32),
}

/// A section of a notebook's report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ReportSection {
    /// Cautions, and who has read them.
    Cautions,
    /// The text of the aim.
    Aim,
    /// The text of the method.
    Method,
    /// What stands on the bench.
    Apparatus,
    /// All rows.
    Readings,
    /// The line and its checks.
    Line,
    /// The budget and its check by trials.
    Uncertainty,
    /// The result.
    Result,
    /// The text of the discussion.
    Discussion,
}

impl Feedback {
    /// Whether it can be of a notebook, and nothing in it is beyond what is taken.
    fn is_sound(&self) -> bool {
        let HandedNotebook { entries, digest, .. } = &self.of;
        let is_digest =
            digest.len() == 64 && digest.bytes().all(|digit| matches!(digit, b'0'..=b'9' | b'a'..=b'f'));
        *entries > 0 && is_digest && self.comments.len() <= MOST
    }
}

/// Such a file as it is stored: what it is and its version first.
#[derive(Serialize)]
struct FeedbackFile<'a> {
    kind: &'static str,
    format: u64,
    feedback: &'a Feedback,
}

/// What is read of this version.
#[derive(Deserialize)]
struct Body {
    feedback: Feedback,
}

/// The text of a file.
///
/// # Errors
/// Where it would be one that [`read`] refuses.
pub fn write(feedback: &Feedback) -> Result<String, Message> {
    let text = to_json_lines(&FeedbackFile { kind: KIND, format: FORMAT, feedback }) + "\n";
    if text.len() > LONGEST || !feedback.is_sound() {
        return Err(too_large(&feedback.of.people));
    }
    Ok(text)
}

/// Reads a file; nothing where the text is none of these.
///
/// # Errors
/// Why it can't be read, and what to do.
pub fn read(name: &str, text: &str) -> Result<Option<Feedback>, Message> {
    let damaged = || message!("feedback-damaged", name = name);
    match head(text, KIND, FORMAT) {
        Head::Another => Ok(None),
        Head::Later => Err(message!("feedback-later", name = name)),
        Head::Damaged => Err(damaged()),
        Head::Ours if text.len() > LONGEST => Err(too_large(name)),
        Head::Ours => {
            let Body { feedback } = from_json(text).map_err(|_| damaged())?;
            if feedback.is_sound() { Ok(Some(feedback)) } else { Err(damaged()) }
        }
    }
}

fn too_large(name: &str) -> Message {
    message!("feedback-too_large", name = name, comments = MOST, kib = LONGEST >> 10)
}

#[cfg(test)]
#[path = "feedback_test.rs"]
mod tests;
