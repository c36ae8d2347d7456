//! The trail of a log: the digest of each entry, with the highest number that was given by then. By it is told how far two
//! logs go the same way, and which entry gave a number, whichever notebook that has come to since.

use slope_archive::sha256_hex;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::log::{LogEntry, Notebook};
use super::merged::MergedLog;

/// Of an entry the highest number given up to it, and the first 32 bits of its digest.
pub(super) type Step = (u32, u32);

/// Which entry gave a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Origin {
    /// How many entries come before it.
    before: usize,
    /// The first 32 bits of its digest, and so of all before it.
    digest: u32,
    /// The number, as that log has it.
    pub number: u32,
}

/// Steps of a log that follow on one another.
#[derive(Clone, Copy)]
pub(super) struct Trail<'a> {
    /// How many entries come before them.
    before: usize,
    steps: &'a [Step],
}

impl<'a> Trail<'a> {
    /// That of a whole log.
    pub fn whole(steps: &'a [Step]) -> Self {
        Self { before: 0, steps }
    }

    /// What a merge kept of it.
    pub fn kept(log: &'a MergedLog) -> Self {
        Self { before: (log.entries as usize).saturating_sub(log.trail.len()), steps: &log.trail }
    }

    /// After how many entries `whole` leaves this trail; 0 where it never was on it.
    pub fn along(self, whole: &[Step]) -> usize {
        let theirs = whole.get(self.before..).unwrap_or_default();
        let shared = self.steps.iter().zip(theirs).take_while(|(one, other)| one.1 == other.1).count();
        if shared > 0 { self.before + shared } else { 0 }
    }

    /// Whether the log that was merged as `log` goes along this trail to its end.
    pub fn covers(self, log: &MergedLog) -> bool {
        let last =
            (log.entries as usize).checked_sub(self.before + 1).and_then(|place| self.steps.get(place));
        log.trail.last().zip(last).is_some_and(|(one, other)| one.1 == other.1)
    }

    /// Which entry gave a number: that behind the last one up to which it was not given.
    pub fn origin(self, number: u32) -> Option<Origin> {
        let place = self.steps.iter().rposition(|step| step.0 < number).map_or(0, |place| place + 1);
        let (_, digest) = *self.steps.get(place)?;
        Some(Origin { before: self.before + place, digest, number })
    }

    /// The number here, by `numbers` from there to here, of what a log with this trail began at `origin`.
    pub fn number(self, origin: Origin, numbers: &[(u32, u32)]) -> Option<u32> {
        let (there, here) = numbers.iter().rfind(|(there, _)| *there == origin.number)?;
        (self.origin(*there) == Some(origin)).then_some(*here)
    }
}

/// What tells a log from another: when it was written, and the digest of its last entry.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Imprint {
    /// Time of the first entry that has one (RFC 3339); empty where none has.
    pub first: String,
    /// Time of the last entry that has one.
    pub last: String,
    /// Digest of the last entry, and with it of all before: SHA-256, hexadecimal; empty where there is no entry.
    pub digest: String,
}

impl Imprint {
    /// That of a notebook's log.
    pub fn of(notebook: &Notebook) -> Self {
        let log = notebook.log();
        let mut times = log.iter().map(|entry| &entry.at).filter(|at| !at.is_empty());
        let first = times.next().cloned().unwrap_or_default();
        let last = times.next_back().unwrap_or(&first).clone();
        Self { first, last, digest: chain(log).pop().unwrap_or_default() }
    }
}

/// The digest of a log up to each entry: SHA-256 of the digest before it, a line end, and the entry as it is written.
pub(super) fn chain(log: &[LogEntry]) -> Vec<String> {
    let mut digests: Vec<String> = Vec::with_capacity(log.len());
    for entry in log {
        let before = digests.last().map_or("", String::as_str);
        digests.push(sha256_hex([before, "\n", &to_json(entry)].concat().as_bytes()));
    }
    digests
}

/// The steps of a log with these digests.
pub(super) fn steps(log: &[LogEntry], digests: &[String]) -> Vec<Step> {
    let (mut done, mut undone): (Vec<u32>, Vec<u32>) = (vec![], vec![]);
    let mut steps = Vec::with_capacity(log.len());
    for (entry, digest) in log.iter().zip(digests) {
        let highest = done.last().copied().unwrap_or_default();
        match &entry.edit {
            Edit::Undo => undone.extend(done.pop()),
            Edit::Redo => done.extend(undone.pop()),
            edit => {
                undone.clear();
                done.push(edit.highest_number().max(highest));
            }
        }
        let bits = digest.get(..8).and_then(|digits| u32::from_str_radix(digits, 16).ok());
        steps.push((done.last().copied().unwrap_or_default(), bits.unwrap_or_default()));
    }
    steps
}

#[cfg(test)]
#[path = "trail_test.rs"]
mod tests;
