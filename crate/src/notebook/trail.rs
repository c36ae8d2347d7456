//! The trail of a log: the digest of each entry, with the highest number that was given by then. By it is told how far two
//! logs go the same way, and which entry gave a number, whichever notebook that has come to since.

use slope_archive::sha256_hex;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::log::{LogEntry, Notebook};
use super::merged::MergedLog;

/// Of an entry the highest number given up to it, and the first 32 bits of its digest.
pub(super) type TrailStep = (u32, u32);

/// By what something is looked up.
pub(super) type Key = [u32; 3];

/// Numbers by their keys. A partner's file may be large, and not meant well: each look takes a few steps.
pub(super) struct Lookup(Vec<(Key, u32)>);

impl Lookup {
    pub fn of(mut all: Vec<(Key, u32)>) -> Self {
        all.sort_by_key(|(key, _)| *key);
        Self(all)
    }

    /// What has this key, in the order in which it was handed over.
    pub fn all(&self, key: Key) -> impl Iterator<Item = u32> {
        let from = self.0.partition_point(|(other, _)| *other < key);
        let rest = self.0.get(from..).unwrap_or_default();
        rest.iter().take_while(move |(other, _)| *other == key).map(|(_, number)| *number)
    }

    /// All keys, each once.
    pub fn keys(&self) -> impl Iterator<Item = Key> {
        self.0.chunk_by(|one, other| one.0 == other.0).filter_map(|same| same.first()).map(|(key, _)| *key)
    }
}

/// Which entry gave a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Giver {
    /// How many entries come before it.
    before: usize,
    /// The first 32 bits of its digest, and so of all before it.
    digest: u32,
    /// The number, as that log has it.
    pub number: u32,
}

impl Giver {
    pub fn key(self) -> Key {
        // No log has 2³² entries.
        [u32::try_from(self.before).unwrap_or(u32::MAX), self.digest, self.number]
    }
}

/// Steps of a log that follow on one another.
#[derive(Clone, Copy)]
pub(super) struct Trail<'a> {
    /// How many entries come before them.
    before: usize,
    steps: &'a [TrailStep],
}

impl<'a> Trail<'a> {
    /// That of a whole log.
    pub fn whole(steps: &'a [TrailStep]) -> Self {
        Self { before: 0, steps }
    }

    /// What a merge kept of it.
    pub fn kept(log: &'a MergedLog) -> Self {
        Self { before: (log.entries as usize).saturating_sub(log.trail.len()), steps: &log.trail }
    }

    /// After how many entries `whole` leaves this trail; 0 where it never was on it.
    pub fn along(self, whole: &[TrailStep]) -> usize {
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
}

/// Which entry of a trail gave each number.
pub(super) struct Givers<'a> {
    trail: Trail<'a>,
    /// From each step on the lowest of its highest numbers.
    lowest: Vec<u32>,
}

impl<'a> Givers<'a> {
    pub fn on(trail: Trail<'a>) -> Self {
        let mut lowest: Vec<u32> = trail.steps.iter().map(|step| step.0).collect();
        let mut least = u32::MAX;
        for number in lowest.iter_mut().rev() {
            least = least.min(*number);
            *number = least;
        }
        Self { trail, lowest }
    }

    /// The entry that gave a number: that behind the last one up to which it was not given.
    pub fn of(&self, number: u32) -> Option<Giver> {
        let place = self.lowest.partition_point(|lowest| *lowest < number);
        let (_, digest) = *self.trail.steps.get(place)?;
        Some(Giver { before: self.trail.before + place, digest, number })
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
pub(super) fn trail_steps(log: &[LogEntry], digests: &[String]) -> Vec<TrailStep> {
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
