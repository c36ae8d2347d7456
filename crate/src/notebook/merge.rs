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
use super::rails_met::Astray;
use super::renumber::{Numbers, numbers_on, renumber};
use super::sorting::{Clash, Crossed, Pages, Sorted, sorted};
use super::state::{BenchField, Cell, NotebookState, Row};
use super::trail::{Giver, Givers, Lookup, Trail, TrailStep, chain, trail_steps};
use super::written_out::{kept, write_out};
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
    /// What may be on another rail afterwards.
    pub astray: Astray,
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

/// The most steps that are looked through, or kept, to complete what the first builds wrote of merges.
const MOST_COMPLETED: usize = 1 << 18;

/// One of two notebooks that are held against each other.
struct Side<'a> {
    notebook: &'a Notebook,
    page: NotebookState,
    chain: Vec<String>,
    steps: Vec<TrailStep>,
}

impl<'a> Side<'a> {
    fn of(notebook: &'a Notebook) -> Self {
        let chain = chain(notebook.log());
        let steps = trail_steps(notebook.log(), &chain);
        Self { notebook, page: notebook.state().clone(), chain, steps }
    }

    fn trail(&self) -> Trail<'_> {
        Trail::whole(&self.steps)
    }

    /// Completes what the page keeps of merges from the `other` log, where the first builds kept too little.
    fn complete(&mut self, other: &Self) -> Result<(), MergeError> {
        let lacking = self.page.merged.iter().filter(|log| log.trail.is_empty()).count();
        // Nobody merges so often: it is a file that would fill the memory.
        if lacking.saturating_mul(other.chain.len()) > MOST_COMPLETED {
            return Err(MergeError::Early);
        }
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

    /// The entries that began what came here by merges, each with its number here: of each log in which it was before.
    fn came(&self) -> Vec<(Giver, u32)> {
        let mut came = Vec::new();
        for log in &self.page.merged {
            let givers = Givers::on(Trail::kept(log));
            let begun = log.numbers.iter().filter_map(|(there, here)| Some((givers.of(*there)?, *here)));
            came.extend(begun);
        }
        came
    }

    /// The merges on the page of `other` of which nothing is here yet.
    fn new_merges<'b>(&self, other: &'b NotebookState) -> Vec<&'b MergedLog> {
        let is_new = |log: &&MergedLog| {
            !self.trail().covers(log) && !self.page.merged.iter().any(|known| Trail::kept(known).covers(log))
        };
        other.merged.iter().filter(is_new).collect()
    }

    /// This log as the other one keeps it, which it left after `stem` entries, with the numbers of what is new there.
    fn as_merged(&self, stem: usize, numbers: Vec<(u32, u32)>) -> MergedLog {
        MergedLog {
            entries: count(self.chain.len()),
            digest: self.chain.last().cloned().unwrap_or_default(),
            own: self.chain.get(stem).cloned().unwrap_or_default(),
            people: self.page.text(BenchField::People).to_owned(),
            numbers,
            trail: self.steps.get(stem..).unwrap_or_default().to_vec(),
        }
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
        if their_side.chain.len() <= stem {
            return Err(MergeError::NothingNew);
        }
        if our_side.page.decimal_mark != their_side.page.decimal_mark {
            return Err(MergeError::DecimalMark);
        }
        our_side.complete(&their_side)?;
        their_side.complete(&our_side)?;
        let (ours, theirs) = (&our_side.page, &their_side.page);

        let seen = our_side.has_seen(&their_side, stem);
        let was_seen = their_side.has_seen(&our_side, stem);
        let start = our_side.page_after(stem)?;
        let their_page = seen.map(|(_, entries)| their_side.page_after(entries)).transpose()?;
        let our_page = was_seen.map(|(_, entries)| our_side.page_after(entries)).transpose()?;
        // Of the two that came later which holds the other.
        let their_page = their_page.filter(|_| !holds(our_page.as_ref(), seen));
        let is_crossed = !holds(their_page.as_ref(), was_seen);

        let carried = our_side.new_merges(theirs);
        let mut asked = numbers_on(theirs);
        asked.extend(their_page.iter().flat_map(numbers_on));
        asked.extend(carried.iter().flat_map(|log| log.numbers.iter().map(|(_, theirs)| *theirs)));
        let known = known_here(&our_side, &their_side);
        let numbers = Numbers::of(asked, start.numbered, ours.numbered, &known);
        let here = |mut page: NotebookState| {
            renumber(&mut page, &mut |there| numbers.here(there));
            page
        };
        let (base, seen_here) = match (their_page, our_page) {
            (Some(their_page), our_page) => (here(their_page), our_page.filter(|_| is_crossed)),
            (None, Some(our_page)) => (our_page, None),
            (None, None) => (start.clone(), None),
        };
        let crossed = seen_here.map(|seen| Crossed { began: start.clone(), seen });
        let is_unstated = |row: &&Row| row.id > start.numbered && row.text(Cell::Rail).trim().is_empty();
        let unstated = ours.rows.iter().filter(is_unstated).map(|row| row.id).collect();
        let mut pages = Pages { base, crossed, ours: ours.clone(), theirs: here(theirs.clone()), unstated };
        let kept = kept(ours, &pages.theirs, &start);
        pages.each(|page| write_out(page, &start));
        let Sorted { mut taken, clashes, astray } = sorted(pages, numbers.highest);
        taken.extend(carried.into_iter().map(|log| {
            let numbers = log.numbers.iter().map(|(there, theirs)| (*there, numbers.here(*theirs))).collect();
            Edit::Merged(MergedLog { numbers, ..log.clone() })
        }));
        if taken.is_empty() && clashes.is_empty() {
            return Err(MergeError::NothingNew);
        }
        let log = their_side.as_merged(stem, numbers.given);
        let parted =
            seen.and_then(|(log, entries)| left(log, entries).filter(|_| entries < their_side.chain.len()));
        let behind = was_seen.and_then(|(log, entries)| left(log, entries));
        Ok(Merge { log, parted, behind, kept, taken, clashes, astray })
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

/// The number on our side of what has one on theirs, where it came from here, from there, or to both from a third notebook.
fn known_here(ours: &Side, theirs: &Side) -> impl Fn(u32) -> Option<u32> {
    let came_there = theirs.came();
    let there = came_there.iter().enumerate().map(|(place, (_, number))| ([*number, 0, 0], count(place)));
    let there = Lookup::of(there.collect());
    // What was merged last is known best.
    let here =
        Lookup::of(ours.came().into_iter().rev().map(|(giver, number)| (giver.key(), number)).collect());
    let (own_there, own_here) = (Givers::on(theirs.trail()), Givers::on(ours.trail()));
    move |number| {
        let came = there.all([number, 0, 0]).filter_map(|place| came_there.get(place as usize));
        let mut givers = own_there.of(number).into_iter().chain(came.map(|(giver, _)| *giver));
        let began_here = |giver: Giver| own_here.of(giver.number).filter(|own| *own == giver);
        givers.find_map(|giver| {
            here.all(giver.key()).next().or_else(|| began_here(giver).map(|own| own.number))
        })
    }
}

/// Whether a page holds what was merged as a log, where there are both.
fn holds(page: Option<&NotebookState>, log: Option<(&MergedLog, usize)>) -> bool {
    let pair = page.zip(log);
    pair.is_some_and(|(page, (log, _))| page.merged.iter().any(|known| known.digest == log.digest))
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
