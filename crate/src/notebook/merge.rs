//! A partner's notebook, merged: two logs that began as one, and what one of them changed since.
//!
//! Both are held against the last page that both have seen: that of their common beginning, or, where one has merged the other
//! before, of what was merged then. What the partner alone changed is taken as it is; what both changed, each otherwise, is a
//! clash, for a person to choose. Rails are held against each other as one, since their order says which meet; a row as
//! one, since half of it from either would be nobody's reading.
//!
//! A partner's new things get numbers that nothing here has. What is of one person (student number, cautions read, seal) and
//! what is prepared of a hand-out is not looked at.

use std::iter::once;

use litemap::LiteMap;
use serde::Serialize;
use slope_archive::sha256_hex;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::habits::habits;
use super::handout::{Asks, Piece};
use super::log::{LogEntry, Notebook};
use super::merged::MergedLog;
use super::renumber::{Numbers, renumber};
use super::state::{BenchField, Cell, CovarianceOf, NotebookState, RailField, Row, RowId};
use super::uncertainty::UncertaintyOf;
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

/// Something that both changed, each otherwise.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Clash {
    /// As it is here, so far as it differs.
    pub ours: Vec<Edit>,
    /// What makes it the partner's.
    pub theirs: Vec<Edit>,
    /// What adds the partner's beside it; nothing where there is no room for two.
    pub both: Vec<Edit>,
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
        let stem = self.log().iter().zip(partner.log()).take_while(|(our, their)| our == their).count();
        self.began_with(partner, stem)?;
        let (ours, theirs) = (self.state(), partner.state());
        let (our_chain, their_chain) = (chain(self.log()), chain(partner.log()));
        let own = their_chain.get(stem).ok_or(MergeError::NothingNew)?.clone();
        if ours.decimal_mark != theirs.decimal_mark {
            return Err(MergeError::DecimalMark);
        }

        let seen = merges_of(&their_chain, ours, &MergeError::NothingNew)?;
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
        let theirs_here = here(theirs.clone());
        let base = match (seen.last(), was_seen.last()) {
            (None, None) => start,
            (Some(seen), None) => here(partner.page_after(seen.entries as usize)?),
            (None, Some(was_seen)) => self.page_after(was_seen.entries as usize)?,
            (Some(seen), Some(was_seen)) => {
                let page = self.page_after(was_seen.entries as usize)?;
                // Of the two that came later which holds the other.
                if page.merged.contains(seen) {
                    page
                } else {
                    here(partner.page_after(seen.entries as usize)?)
                }
            }
        };
        let mut sorting = Sorting { base: &base, ours, theirs: &theirs_here, taken: vec![], clashes: vec![] };
        sorting.sort_all(numbers.highest);
        let Sorting { mut taken, clashes, .. } = sorting;
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
        let last = |notebook: &Self| notebook.log().get(layer.checked_sub(1)?).cloned();
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
) -> LiteMap<u32, u32> {
    let mut known = LiteMap::new();
    for theirs in &theirs.merged {
        for ours in ours.merged.iter().filter(|ours| ours.own == theirs.own) {
            let third: LiteMap<u32, u32> = ours.numbers.iter().copied().collect();
            let both = theirs.numbers.iter().filter_map(|(id, there)| Some((*there, *third.get(id)?)));
            known.extend(both);
        }
    }
    known.extend(seen.iter().flat_map(|log| log.numbers.iter().copied()));
    known.extend(was_seen.iter().flat_map(|log| log.numbers.iter().map(|(here, there)| (*there, *here))));
    known
}

/// The differences of three pages, in the numbers of this notebook.
struct Sorting<'a> {
    /// The last page that both have seen.
    base: &'a NotebookState,
    ours: &'a NotebookState,
    theirs: &'a NotebookState,
    taken: Vec<Edit>,
    clashes: Vec<Clash>,
}

impl Sorting<'_> {
    /// Sorts everything; numbers for rows beside others begin above `highest`.
    fn sort_all(&mut self, highest: u32) {
        let (base, theirs) = (self.base, self.theirs);
        let whole: [fn(&NotebookState) -> Edit; 6] = [
            |page| Edit::SetTitle(page.title.clone()),
            |page| Edit::SetPath(page.path),
            |page| Edit::SetBeam(page.beam),
            |page| Edit::SetEstimator(page.estimator),
            |page| Edit::SetClaim(page.claim.clone()),
            |page| Edit::SetTrials(page.trials.clone()),
        ];
        for write in whole {
            self.sort(&|page| vec![write(page)]);
        }
        self.sort(&|page| page.rehearsal.map(Edit::SetRehearsal).into_iter().collect());
        for field in either(theirs.bench.keys(), base.bench.keys()) {
            if field != BenchField::StudentNumber {
                self.sort(&|page| field_written(page, field));
            }
        }
        self.sort_by(&rails_written, rails_turned);
        for id in either(theirs.settings.iter().map(|one| &one.id), base.settings.iter().map(|one| &one.id)) {
            self.sort(&|page| match page.settings.iter().find(|one| one.id == id) {
                Some(one) => vec![Edit::SetSetting(one.clone()), kind(page, UncertaintyOf::Setting(id))],
                None => vec![Edit::RemoveSetting(id), kind(page, UncertaintyOf::Setting(id))],
            });
        }
        for id in either(theirs.shared.iter().map(|one| &one.id), base.shared.iter().map(|one| &one.id)) {
            self.sort(&|page| match page.shared.iter().find(|one| one.id == id) {
                Some(one) => vec![Edit::SetShared(one.clone()), kind(page, UncertaintyOf::Shared(id))],
                None => vec![Edit::RemoveShared(id), kind(page, UncertaintyOf::Shared(id))],
            });
        }
        for of in [CovarianceOf::Distances, CovarianceOf::Delays, CovarianceOf::Both] {
            self.sort(&|page| match page.covariances.iter().find(|one| one.acts_on == of) {
                Some(one) => vec![Edit::SetCovariance(one.clone())],
                None => vec![Edit::RemoveCovariance(of)],
            });
        }
        for id in either(theirs.plan.iter().map(|one| &one.id), base.plan.iter().map(|one| &one.id)) {
            self.sort(&|page| match page.plan.iter().find(|one| one.id == id) {
                Some(one) => vec![Edit::SetPosition(one.clone())],
                None => vec![Edit::RemovePosition(id)],
            });
        }
        for grid in &theirs.grids {
            self.sort(&|page| {
                page.grids
                    .iter()
                    .find(|one| one.id == grid.id)
                    .cloned()
                    .map(Edit::SetGrid)
                    .into_iter()
                    .collect()
            });
        }
        self.sort_rows(highest);
        for task in theirs.handout.tasks.iter().filter(|task| task.asks != Asks::Nothing) {
            self.sort(&|page| {
                let here = page.handout.tasks.iter().find(|one| one.id == task.id);
                here.map(|task| Edit::Answer(task.id, task.answer.clone())).into_iter().collect()
            });
        }
    }

    /// Sorts what `written` writes of a page.
    fn sort(&mut self, written: &dyn Fn(&NotebookState) -> Vec<Edit>) {
        self.sort_by(written, lacking);
    }

    /// The same; `turned` turns the first of two writings into the second.
    fn sort_by(
        &mut self,
        written: &dyn Fn(&NotebookState) -> Vec<Edit>,
        turned: fn(&[Edit], &[Edit]) -> Vec<Edit>,
    ) {
        let [base, ours, theirs] = [self.base, self.ours, self.theirs].map(written);
        if theirs == base || theirs == ours {
            return;
        }
        let change = turned(&ours, &theirs);
        if ours == base {
            self.taken.extend(change);
        } else {
            self.clashes.push(Clash { ours: lacking(&theirs, &ours), theirs: change, both: vec![] });
        }
    }

    fn sort_rows(&mut self, mut highest: u32) {
        let (base, ours, theirs) = (self.base, self.ours, self.theirs);
        for (place, row) in theirs.rows.iter().enumerate() {
            let [was, here] = [base, ours].map(|page| page.rows.iter().find(|one| one.id == row.id));
            if was == Some(row) || here == Some(row) {
                continue;
            }
            match (was, here) {
                (None, None) => self.taken.extend(new_row(row.id, row, theirs.rows.get(..place))),
                (Some(_), None) => {
                    let theirs = new_row(row.id, row, theirs.rows.get(..place));
                    self.clashes.push(Clash { ours: vec![], theirs, both: vec![] });
                }
                (_, Some(_)) => {
                    let before = self.clashes.len();
                    self.sort(&|page| {
                        page.rows.iter().find(|one| one.id == row.id).map_or_else(Vec::new, row_written)
                    });
                    if let Some(clash) = self.clashes.get_mut(before)
                        && !ours.handout.fixes(Piece::Readings)
                    {
                        highest = highest.saturating_add(1);
                        clash.both = new_row(highest, row, theirs.rows.get(..place));
                    }
                }
            }
        }
    }
}

/// All of the first, then those of the second that are not among them.
fn either<'a, K: Copy + PartialEq + 'a>(
    first: impl Iterator<Item = &'a K>,
    second: impl Iterator<Item = &'a K>,
) -> Vec<K> {
    let mut all: Vec<K> = first.copied().collect();
    for one in second {
        if !all.contains(one) {
            all.push(*one);
        }
    }
    all
}

/// What of the second writing is not in the first.
fn lacking(first: &[Edit], second: &[Edit]) -> Vec<Edit> {
    second.iter().filter(|edit| !first.contains(edit)).cloned().collect()
}

fn kind(page: &NotebookState, of: UncertaintyOf) -> Edit {
    Edit::SetKind { of, kind: page.kind(of) }
}

/// A text of the bench, with the kind of what is an uncertainty.
fn field_written(page: &NotebookState, field: BenchField) -> Vec<Edit> {
    let of = match field {
        BenchField::EdgeHalfWidth => Some(UncertaintyOf::Edge),
        BenchField::TimeBaseUncertainty => Some(UncertaintyOf::TimeBase),
        BenchField::MarkUncertainty => Some(UncertaintyOf::Mark),
        _ => None,
    };
    let text = Edit::SetBench { field, text: page.text(field).to_owned() };
    once(text).chain(of.map(|of| kind(page, of))).collect()
}

/// All rails, each with everything of it.
fn rails_written(page: &NotebookState) -> Vec<Edit> {
    let mut all = Vec::new();
    for rail in &page.rails {
        let id = rail.id;
        all.extend([
            Edit::AddRail(id),
            Edit::SetRulerUnit { rail: id, unit: rail.unit },
            Edit::SetSense { rail: id, sense: rail.sense },
            Edit::SetSplice { rail: id, splice: rail.splice.clone() },
        ]);
        for field in [
            RailField::Name,
            RailField::From,
            RailField::To,
            RailField::ReadingUncertainty,
            RailField::ScaleUncertainty,
        ] {
            let text = rail.texts.get(&field).cloned().unwrap_or_default();
            all.push(Edit::SetRail { rail: id, field, text });
        }
        let kinds =
            [UncertaintyOf::RulerReading(id), UncertaintyOf::RulerScale(id), UncertaintyOf::Splice(id)];
        all.extend(kinds.map(|of| kind(page, of)));
    }
    all
}

/// Turns the first rails into the second: their order can't be changed, so from the first that is another on all are laid anew.
fn rails_turned(first: &[Edit], second: &[Edit]) -> Vec<Edit> {
    let laid = |edits: &[Edit]| -> Vec<u32> {
        edits.iter().filter_map(|edit| if let Edit::AddRail(id) = edit { Some(*id) } else { None }).collect()
    };
    let (before, after) = (laid(first), laid(second));
    let same = before.iter().zip(&after).take_while(|(before, after)| before == after).count();
    let mut all: Vec<Edit> = before.iter().skip(same).map(|id| Edit::RemoveRail(*id)).collect();
    let mut rails = 0;
    for edit in second {
        rails += usize::from(matches!(edit, Edit::AddRail(_)));
        if rails > same || !first.contains(edit) {
            all.push(edit.clone());
        }
    }
    all
}

/// Everything of a row.
fn row_written(row: &Row) -> Vec<Edit> {
    let id = row.id;
    let cells = [
        Cell::Rail,
        Cell::Reading,
        Cell::TimeBase,
        Cell::EdgeA,
        Cell::EdgeB,
        Cell::Distance,
        Cell::DistanceUncertainty,
        Cell::Delay,
        Cell::DelayUncertainty,
        Cell::Remark,
    ];
    let cells = cells.map(|cell| Edit::SetCell { row: id, cell, text: row.text(cell).to_owned() });
    cells.into_iter().chain([evidence(id, row), strike(id, row)]).collect()
}

fn evidence(id: RowId, row: &Row) -> Edit {
    Edit::SetEvidence { row: id, evidence: row.evidence.clone() }
}

fn strike(id: RowId, row: &Row) -> Edit {
    match &row.struck {
        Some(reason) => Edit::StrikeRow { row: id, reason: reason.clone() },
        None => Edit::RestoreRow(id),
    }
}

/// A new row, at the end, that holds what another does; what that goes on with from the rows `before` it is written out, since
/// other rows stand before the new one.
fn new_row(id: RowId, row: &Row, before: Option<&[Row]>) -> Vec<Edit> {
    let mut cells = row.cells.clone();
    for (cell, text) in habits(before.unwrap_or_default()) {
        if row.text(cell).trim().is_empty() {
            cells.insert(cell, text.to_owned());
        }
    }
    let evidence = row.evidence.is_some().then(|| evidence(id, row));
    let strike = row.struck.is_some().then(|| strike(id, row));
    once(Edit::AddRow { row: id, after: None, cells }).chain(evidence).chain(strike).collect()
}

#[cfg(test)]
#[path = "merge_test.rs"]
mod tests;
