//! A partner's notebook, merged: two logs that began as one, and what one of them changed since.
//!
//! Both are held against the last page that both have seen: that of their common beginning, or, where one has merged the other
//! before, of what was merged then (`sorting`). A partner's new things get numbers that nothing here has (`renumber`).

use serde::Serialize;
use slope_archive::sha256_hex;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::log::{LogEntry, Notebook};
use super::merged::MergedLog;
use super::renumber::{Numbers, renumber};
use super::sorting::{Clash, Crossed, sorted, write_out};
use super::state::{BenchField, NotebookState};
use crate::words::Message;
use crate::{errors_as_data, message};

/// What a partner's notebook would bring. Done together, `taken`, what is chosen of each clash, and `log` are the merge.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Merge {
    /// The log that is merged, as the merge names it.
    pub log: MergedLog,
    /// What the partner alone changed.
    pub taken: Vec<Edit>,
    /// What both changed, each otherwise.
    pub clashes: Vec<Clash>,
}

/// Why a notebook can't be merged into another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MergeError {
    /// It did not begin as this one did.
    OtherHandout,
    /// It began so, but one of its first entries, or of these here, is not what it was.
    Changed {
        /// How many were the same once.
        entries: usize,
    },
    /// It was merged with a later state of this notebook.
    Behind,
    /// It has fewer entries than when it was merged before, so that nothing tells what became of the others.
    Shorter,
    /// Its numbers are written with the other decimal mark.
    DecimalMark,
    /// Everything in it is here.
    NothingNew,
}

errors_as_data!(MergeError);

impl MergeError {
    /// Why, and what to do.
    pub fn message(&self) -> Message {
        match self {
            Self::OtherHandout => message!("merge-refused-other"),
            Self::Changed { entries } => message!("merge-refused-changed", n = entries.to_string()),
            Self::Behind => message!("merge-refused-behind"),
            Self::Shorter => message!("merge-refused-shorter"),
            Self::DecimalMark => message!("merge-refused-mark"),
            Self::NothingNew => message!("merge-refused-nothing"),
        }
    }
}

impl Notebook {
    /// What `partner` would bring into this notebook. Changes nothing.
    ///
    /// # Errors
    /// Why it can't be merged.
    pub fn merge(&self, partner: &Self) -> Result<Merge, MergeError> {
        let (ours, theirs) = (self.state(), partner.state());
        let (our_chain, their_chain) = (chain(self.log()), chain(partner.log()));
        let stem = our_chain.iter().zip(&their_chain).take_while(|(our, their)| our == their).count();
        self.began_with(partner, stem)?;
        let own = their_chain.get(stem).ok_or(MergeError::NothingNew)?.clone();
        if ours.decimal_mark != theirs.decimal_mark {
            return Err(MergeError::DecimalMark);
        }

        let seen = merges_of(&their_chain, ours, &MergeError::Shorter)?;
        let was_seen = merges_of(&our_chain, theirs, &MergeError::Behind)?;
        let start = self.page_after(stem)?;
        let mut numbers = Numbers {
            same: start.numbered,
            known: known_numbers(ours, theirs, &seen, &was_seen),
            given: vec![],
            highest: ours.numbered,
        };
        let mut here = |mut page: NotebookState| {
            renumber(&mut page, &mut numbers);
            page
        };
        let (mut ours_here, mut theirs_here) = (ours.clone(), here(theirs.clone()));
        let mut crossed = None;
        let mut base = match (seen.last(), was_seen.last()) {
            (None, None) => start.clone(),
            (Some(seen), None) => here(partner.page_after(seen.entries as usize)?),
            (None, Some(was_seen)) => self.page_after(was_seen.entries as usize)?,
            (Some(seen), Some(was_seen)) => {
                let our_page = self.page_after(was_seen.entries as usize)?;
                let their_page = partner.page_after(seen.entries as usize)?;
                // Of the two that came later which holds the other.
                if has_merged(&our_page, seen) {
                    our_page
                } else {
                    crossed = Some(our_page).filter(|_| !has_merged(&their_page, was_seen));
                    here(their_page)
                }
            }
        };
        for page in [&mut base, &mut ours_here, &mut theirs_here].into_iter().chain(&mut crossed) {
            write_out(page, start.numbered);
        }
        let crossed = crossed.as_ref().map(|seen| Crossed { began: &start, seen });
        let (mut taken, clashes) = sorted((&base, crossed), &ours_here, &theirs_here, numbers.highest);
        let carried = theirs.merged.iter().filter(|log| !our_chain.contains(&log.own) && is_later(ours, log));
        for log in carried {
            let numbers = log.numbers.iter().map(|(there, theirs)| (*there, numbers.here(*theirs))).collect();
            taken.push(Edit::Merged(MergedLog { numbers, ..log.clone() }));
        }
        if taken.is_empty() && clashes.is_empty() {
            return Err(MergeError::NothingNew);
        }
        let log = MergedLog {
            entries: u32::try_from(their_chain.len()).unwrap_or(u32::MAX),
            digest: their_chain.last().cloned().unwrap_or_default(),
            own,
            people: theirs.text(BenchField::People).to_owned(),
            numbers: numbers.given,
        };
        Ok(Merge { log, taken, clashes })
    }

    /// Whether both logs began as one of so many entries, with the whole hand-out in it where there is one.
    fn began_with(&self, partner: &Self, stem: usize) -> Result<(), MergeError> {
        let layer = self.handed_out();
        if stem > 0 && stem >= layer && partner.handed_out() == layer {
            return Ok(());
        }
        let last = |notebook: &Self| notebook.log().get(layer.checked_sub(1)?).map(to_json);
        if partner.handed_out() == layer && last(self).is_some() && last(self) == last(partner) {
            return Err(MergeError::Changed { entries: layer });
        }
        Err(MergeError::OtherHandout)
    }

    /// The page after so many entries.
    fn page_after(&self, entries: usize) -> Result<NotebookState, MergeError> {
        let log = self.log().iter().take(entries).cloned().collect();
        let notebook = Self::from_log(log).map_err(|_| MergeError::Changed { entries })?;
        Ok(notebook.state().clone())
    }
}

/// The digest of a log up to each entry: SHA-256 of the digest before it, a line end, and the entry as it is written.
fn chain(log: &[LogEntry]) -> Vec<String> {
    let mut digests: Vec<String> = Vec::with_capacity(log.len());
    for entry in log {
        let before = digests.last().map_or("", String::as_str);
        digests.push(sha256_hex([before, "\n", &to_json(entry)].concat().as_bytes()));
    }
    digests
}

/// What `page` keeps of merges of the log with these digests, the last one last.
///
/// # Errors
/// When the log is not as it was then: `shorter` where it has fewer entries.
fn merges_of<'a>(
    chain: &[String],
    page: &'a NotebookState,
    shorter: &MergeError,
) -> Result<Vec<&'a MergedLog>, MergeError> {
    let known: Vec<&MergedLog> = page.merged.iter().filter(|log| chain.contains(&log.own)).collect();
    for log in &known {
        let entries = log.entries as usize;
        match entries.checked_sub(1).and_then(|last| chain.get(last)) {
            Some(digest) if *digest == log.digest => {}
            None if entries > 0 => return Err(shorter.clone()),
            _ => return Err(MergeError::Changed { entries }),
        }
    }
    Ok(known)
}

/// Whether `page` holds what was merged as `log`.
fn has_merged(page: &NotebookState, log: &MergedLog) -> bool {
    page.merged.iter().any(|known| known.digest == log.digest)
}

/// Whether `page` knows no state as late of the same log.
fn is_later(page: &NotebookState, log: &MergedLog) -> bool {
    !page.merged.iter().any(|known| known.own == log.own && known.entries >= log.entries)
}

/// The numbers here, by those there, of what came from here, from there, or to both from the same third notebook.
fn known_numbers(
    ours: &NotebookState,
    theirs: &NotebookState,
    seen: &[&MergedLog],
    was_seen: &[&MergedLog],
) -> Vec<(u32, u32)> {
    let mut known = Vec::new();
    for theirs in &theirs.merged {
        for ours in ours.merged.iter().filter(|ours| ours.own == theirs.own) {
            for (id, there) in &theirs.numbers {
                let here = ours.numbers.iter().find(|(third, _)| third == id);
                known.extend(here.map(|(_, here)| (*there, *here)));
            }
        }
    }
    for log in seen {
        known.extend(&log.numbers);
    }
    for log in was_seen {
        known.extend(log.numbers.iter().map(|(here, there)| (*there, *here)));
    }
    known
}

#[cfg(test)]
#[path = "merge_test.rs"]
mod tests;
