//! A partner's notebook, merged: two logs that began as one, and what one of them changed since.
//!
//! Both are held against the last page that both have seen: that of their common beginning, or, where one has merged the other
//! before, the last one that was merged then (`sorting`), however many people notebooks went through, and whoever went on from
//! an older file. What both have is known by the entry that began it (`trail`); a partner's new things get numbers that nothing
//! here has (`renumber`).

use serde::Serialize;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::log::Notebook;
use super::merged::MergedLog;
use super::renumber::{Numbers, renumber};
use super::sorting::{Clash, Crossed, following, kept, sorted, write_out};
use super::state::{BenchField, NotebookState, RailField};
use super::trail::{Origin, Step, Trail, chain, steps};
use crate::words::Message;
use crate::{errors_as_data, message};

/// What a partner's notebook would bring. Done together, `kept`, `taken`, what is chosen of each clash, and `log` are the merge.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Merge {
    /// The log that is merged, as the merge names it.
    pub log: MergedLog,
    /// After how many of its entries it goes on otherwise than the state of it that was merged before, if it does. What was
    /// begun in it since is new here.
    pub parted: Option<u32>,
    /// After how many entries of this log the partner has merged another state of it than this one, if so. What was begun
    /// there since is new here.
    pub behind: Option<u32>,
    /// The time base by which rows here are read that name none, where there may be others after the merge.
    pub kept: Vec<Edit>,
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
    /// One of the two holds a merge of which the first builds kept too little to tell what both have.
    Early,
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
            Self::Early => message!("merge-refused-early"),
            Self::DecimalMark => message!("merge-refused-mark"),
            Self::NothingNew => message!("merge-refused-nothing"),
        }
    }
}

/// One of two notebooks that are held against each other.
struct Side<'a> {
    notebook: &'a Notebook,
    page: NotebookState,
    chain: Vec<String>,
    steps: Vec<Step>,
}

impl<'a> Side<'a> {
    fn of(notebook: &'a Notebook) -> Self {
        let chain = chain(notebook.log());
        let steps = steps(notebook.log(), &chain);
        Self { notebook, page: notebook.state().clone(), chain, steps }
    }

    fn trail(&self) -> Trail<'_> {
        Trail::whole(&self.steps)
    }

    /// Completes what the page keeps of merges from the `other` log, where the first builds kept too little.
    fn complete(&mut self, other: &Self) -> Result<(), MergeError> {
        for log in self.page.merged.iter_mut().filter(|log| log.trail.is_empty()) {
            let last = (log.entries as usize).checked_sub(1).and_then(|last| other.chain.get(last));
            let own = other.chain.iter().position(|digest| *digest == log.own);
            let trail = own.and_then(|own| other.steps.get(own..log.entries as usize));
            match trail {
                Some(trail) if last == Some(&log.digest) => log.trail = trail.to_vec(),
                _ => return Err(MergeError::Early),
            }
        }
        Ok(())
    }

    /// The merge by which this page knows most of the `other` log, and after how many entries what it knows ends; none where
    /// it knows no more than that both began with `stem` entries.
    fn has_seen(&self, other: &Self, stem: usize) -> Option<(&MergedLog, usize)> {
        let known = self.page.merged.iter().map(|log| (log, Trail::kept(log).along(&other.steps)));
        known.filter(|(_, entries)| *entries > stem).max_by_key(|(_, entries)| *entries)
    }

    /// The entries that began what has this number: of this log, and of each in which it was before it came here.
    fn origins(&self, number: u32) -> Vec<Origin> {
        let came = self.page.merged.iter().flat_map(|log| log.numbers.iter().map(move |pair| (log, pair)));
        let came = came.filter(|(_, (_, here))| *here == number);
        let came = came.filter_map(|(log, (there, _))| Trail::kept(log).origin(*there));
        self.trail().origin(number).into_iter().chain(came).collect()
    }

    /// The number here of what was begun by this entry.
    fn number(&self, origin: Origin) -> Option<u32> {
        let own = [(origin.number, origin.number)];
        let mut came = self.page.merged.iter().rev();
        let came = came.find_map(|log| Trail::kept(log).number(origin, &log.numbers));
        came.or_else(|| self.trail().number(origin, &own))
    }

    /// Whether this log goes to the end of what was merged as `log`, or has merged one that does.
    fn covers(&self, log: &MergedLog) -> bool {
        self.trail().covers(log) || self.page.merged.iter().any(|known| Trail::kept(known).covers(log))
    }

    /// The page after so many entries.
    fn page_after(&self, entries: usize) -> Result<NotebookState, MergeError> {
        let log = self.notebook.log().iter().take(entries).cloned().collect();
        let notebook = Notebook::from_log(log).map_err(|_| MergeError::Changed { entries })?;
        Ok(notebook.state().clone())
    }
}

impl Notebook {
    /// What `partner` would bring into this notebook. Changes nothing.
    ///
    /// # Errors
    /// Why it can't be merged.
    pub fn merge(&self, partner: &Self) -> Result<Merge, MergeError> {
        let (mut our_side, mut their_side) = (Side::of(self), Side::of(partner));
        let stem =
            our_side.chain.iter().zip(&their_side.chain).take_while(|(our, their)| our == their).count();
        self.began_with(partner, stem)?;
        let own = their_side.chain.get(stem).ok_or(MergeError::NothingNew)?.clone();
        if our_side.page.decimal_mark != their_side.page.decimal_mark {
            return Err(MergeError::DecimalMark);
        }
        our_side.complete(&their_side)?;
        their_side.complete(&our_side)?;
        let (ours, theirs) = (&our_side.page, &their_side.page);

        let seen = our_side.has_seen(&their_side, stem);
        let was_seen = their_side.has_seen(&our_side, stem);
        let start = our_side.page_after(stem)?;
        let known =
            |there: u32| their_side.origins(there).into_iter().find_map(|origin| our_side.number(origin));
        let mut numbers = Numbers {
            same: start.numbered,
            known: &known,
            met: vec![],
            given: vec![],
            highest: ours.numbered,
        };
        let mut here = |mut page: NotebookState| {
            renumber(&mut page, &mut numbers);
            page
        };
        let (mut ours_here, mut theirs_here) = (ours.clone(), here(theirs.clone()));
        let (mut base, mut crossed) =
            last_seen((&our_side, was_seen), (&their_side, seen), &start, &mut here)?;
        let mut carried = Vec::new();
        for log in theirs.merged.iter().filter(|log| !our_side.covers(log)) {
            let numbers = log.numbers.iter().map(|(there, theirs)| (*there, numbers.here(*theirs))).collect();
            carried.push(Edit::Merged(MergedLog { numbers, ..log.clone() }));
        }
        let kept = kept(ours, &theirs_here, &start);
        for page in [&mut base, &mut ours_here, &mut theirs_here].into_iter().chain(&mut crossed) {
            write_out(page, &start);
        }
        let crossed = crossed.as_ref().map(|seen| Crossed { began: &start, seen });
        let (mut taken, clashes) = sorted((&base, crossed), &ours_here, &theirs_here, numbers.highest);
        if taken.iter().any(|edit| matches!(edit, Edit::SetRail { field: RailField::Name, .. })) {
            taken.extend(following(&base, ours, &theirs_here));
        }
        taken.extend(carried);
        if taken.is_empty() && clashes.is_empty() {
            return Err(MergeError::NothingNew);
        }
        let log = MergedLog {
            entries: count(their_side.chain.len()),
            digest: their_side.chain.last().cloned().unwrap_or_default(),
            own,
            people: theirs.text(BenchField::People).to_owned(),
            numbers: numbers.given,
            trail: their_side.steps.get(stem..).unwrap_or_default().to_vec(),
        };
        let parted =
            seen.and_then(|(log, entries)| left(log, entries).filter(|_| entries < their_side.chain.len()));
        let behind = was_seen.and_then(|(log, entries)| left(log, entries));
        Ok(Merge { log, parted, behind, kept, taken, clashes })
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
}

/// The last page that both have seen, with the numbers that `here` gives what is the partner's; and the page here that the
/// partner has seen, where each has merged the other and neither page holds the other's merge. Each side stands with the
/// merge by which the other knows most of it, and after how many of its entries that ends.
fn last_seen(
    (ours, was_seen): (&Side, Option<(&MergedLog, usize)>),
    (theirs, seen): (&Side, Option<(&MergedLog, usize)>),
    start: &NotebookState,
    here: &mut dyn FnMut(NotebookState) -> NotebookState,
) -> Result<(NotebookState, Option<NotebookState>), MergeError> {
    Ok(match (seen, was_seen) {
        (None, None) => (start.clone(), None),
        (Some((_, entries)), None) => (here(theirs.page_after(entries)?), None),
        (None, Some((_, entries))) => (ours.page_after(entries)?, None),
        (Some((seen, entries)), Some((was_seen, our_entries))) => {
            let our_page = ours.page_after(our_entries)?;
            let their_page = theirs.page_after(entries)?;
            // Of the two that came later which holds the other.
            if has_merged(&our_page, seen) {
                (our_page, None)
            } else {
                let crossed = Some(our_page).filter(|_| !has_merged(&their_page, was_seen));
                (here(their_page), crossed)
            }
        }
    })
}

/// Whether `page` holds what was merged as `log`.
fn has_merged(page: &NotebookState, log: &MergedLog) -> bool {
    page.merged.iter().any(|known| known.digest == log.digest)
}

/// After how many entries another log leaves the one that was merged as `log`, where it does so before that ends.
fn left(log: &MergedLog, entries: usize) -> Option<u32> {
    Some(count(entries)).filter(|entries| *entries < log.entries)
}

fn count(entries: usize) -> u32 {
    u32::try_from(entries).unwrap_or(u32::MAX)
}

#[cfg(test)]
#[path = "merge_test.rs"]
mod tests;
