//! What two pages have otherwise than a third, from which both came: what one of them changed alone, and what both did.
//!
//! The pages are written as edits, place by place. Rails are one place, since their order says which meet; so is a row, since
//! half of it from either would be nobody's reading. What is of one person (student number, cautions read, seal) and what is
//! prepared of a hand-out is not looked at.

use serde::Serialize;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::handout::{Asks, Piece, TaskId};
use super::rails_met::{Astray, RailNames, astray, call_by, rails_turned, rails_written};
use super::state::{BenchField, Cell, CovarianceOf, NotebookState, Row, RowId};
use super::uncertainty::UncertaintyOf;
use super::written_out::with_habits;

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

/// Pages of two notebooks each of which merged the other as it was before that: neither page that was seen holds the
/// other, and what comes from the partner may be ours of then.
pub(super) struct Crossed {
    /// The page on which both began.
    pub began: NotebookState,
    /// The page here that the partner has seen.
    pub seen: NotebookState,
}

/// The pages that are held against one another, all in the numbers of this notebook.
pub(super) struct Pages {
    /// The last page that both have seen.
    pub base: NotebookState,
    /// The other pages to heed, where that one is only the partner's.
    pub crossed: Option<Crossed>,
    pub ours: NotebookState,
    pub theirs: NotebookState,
    /// Rows here that state no rail, and have one written out on the page.
    pub unstated: Vec<RowId>,
}

/// What was found of their differences.
#[derive(Debug, PartialEq)]
pub(super) struct Sorted {
    /// What the partner alone changed.
    pub taken: Vec<Edit>,
    /// What both changed, each otherwise.
    pub clashes: Vec<Clash>,
    /// What may be on another rail afterwards.
    pub astray: Astray,
}

/// What becomes of a place of the pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Fate {
    /// It stays as it is here.
    Stays,
    /// The partner's comes in its stead.
    Comes,
    /// A person chooses.
    Clashes,
}

/// Pages on the way to what is found of them.
struct Sorting<'a> {
    pages: &'a Pages,
    /// What becomes of the rails.
    rails: Fate,
    /// What has those of the partner's rows and planned positions that come, and are on rails of theirs alone, call these, once all
    /// rails are the partner's.
    own_rails: Vec<Edit>,
    taken: Vec<Edit>,
    clashes: Vec<Clash>,
}

/// What `theirs` changed alone, and what both changed, each otherwise, since `base`; `highest` is the highest number that is
/// taken here.
pub(super) fn sorted(mut pages: Pages, highest: u32) -> Sorted {
    let rails = pages.fate(&rails_written);
    let Pages { ours, theirs, .. } = &pages;
    let here = if rails == Fate::Stays { Astray::default() } else { astray(ours, theirs) };
    let mut there = if rails == Fate::Comes { Astray::default() } else { astray(theirs, ours) };
    there.rows.retain(|id| rail_named(theirs, *id) != rail_named(ours, *id));
    there.positions.retain(|one| ours.plan.iter().all(|our| our.id != one.id || our.rail != one.rail));
    pages.call_alike(rails);
    let own_rails = pages.own_rails(&there);
    let mut sorting = Sorting { pages: &pages, rails, own_rails, taken: vec![], clashes: vec![] };
    sorting.sort_all(highest);
    let Sorting { taken, clashes, .. } = sorting;
    let rows = either(here.rows, there.rows);
    let positions = either(here.positions, there.positions);
    Sorted { taken, clashes, astray: Astray { rows, positions } }
}

impl Pages {
    /// What becomes of what `written` writes of a page.
    fn fate(&self, written: &dyn Fn(&NotebookState) -> Vec<Edit>) -> Fate {
        let [base, ours, theirs] = [&self.base, &self.ours, &self.theirs].map(|page| texts(written(page)));
        if same(&theirs, &base) || same(&theirs, &ours) {
            return Fate::Stays;
        }
        let comes_back = self.crossed.as_ref().is_some_and(|Crossed { began, seen }| {
            let [began, seen] = [began, seen].map(|page| texts(written(page)));
            !same(&seen, &began) && !same(&seen, &base)
        });
        if same(&ours, &base) && !comes_back { Fate::Comes } else { Fate::Clashes }
    }

    /// What has those of the partner's rows and positions that come, and would be on other rails here, call their own. They come
    /// before the rails do, by the names of which they would then follow ours.
    fn own_rails(&self, astray: &Astray) -> Vec<Edit> {
        let Self { base, ours, theirs, .. } = self;
        let row_comes = |id: RowId| {
            let is_new = [base, ours].iter().all(|page| page.row(id).is_none());
            is_new || self.fate(&|page| page.row(id).map_or_else(Vec::new, row_written)) == Fate::Comes
        };
        let own_rail = |row: RowId| {
            let text = rail_named(theirs, row)?.to_owned();
            Some(Edit::SetCell { row, cell: Cell::Rail, text })
        };
        let rows = astray.rows.iter().copied().filter(|id| row_comes(*id)).filter_map(own_rail);
        let positions = astray.positions.iter().map(|one| one.id);
        let positions = positions.filter(|id| self.fate(&|page| position_written(page, *id)) == Fate::Comes);
        rows.chain(positions.flat_map(|id| position_written(theirs, id))).collect()
    }

    /// Does something to each.
    pub fn each(&mut self, act: impl Fn(&mut NotebookState)) {
        let crossed = self.crossed.iter_mut().flat_map(|Crossed { began, seen }| [began, seen]);
        [&mut self.base, &mut self.ours, &mut self.theirs].into_iter().chain(crossed).for_each(act);
    }

    /// Has rows call each rail by one name on all pages: by that which it has here once what the partner alone changed is taken.
    fn call_alike(&mut self, rails: Fate) {
        let names = RailNames::on(if rails == Fate::Comes { &self.theirs } else { &self.ours });
        self.each(|page| call_by(page, &names));
    }
}

/// What there is one of on a page.
const WHOLE: [fn(&NotebookState) -> Edit; 7] = [
    |page| Edit::SetTitle(page.title.clone()),
    |page| Edit::SetPath(page.path),
    |page| Edit::SetBeam(page.beam),
    |page| Edit::SetEstimator(page.estimator),
    |page| Edit::SetClaim(page.claim.clone()),
    |page| Edit::SetTrials(page.trials.clone()),
    |page| Edit::SetPhoto(page.photo.clone()),
];

// Every field by name, so that one more does not compile until `sort_all` heeds it.
const _: fn(&NotebookState) = |page| {
    let NotebookState {
        title: _,
        path: _,
        beam: _,
        estimator: _,
        claim: _,
        trials: _,
        rehearsal: _,
        bench: _,
        kinds: _,
        rails: _,
        settings: _,
        shared: _,
        covariances: _,
        plan: _,
        grids: _,
        rows: _,
        notes: _,
        photo: _,
        handout: _,
        // Of one person, the same in both, or looked at where logs are.
        cautions_read: _,
        seal: _,
        decimal_mark: _,
        merged: _,
        numbered: _,
    } = page;
};

// So with every uncertainty, until its kind is written with what it is of: a field of the bench, a setting, a rail, an error of
// the user's own.
const _: fn(UncertaintyOf) = |of| {
    use UncertaintyOf::{Edge, Mark, RulerReading, RulerScale, Setting, Shared, Splice, TimeBase};
    let (Edge | TimeBase | Mark | Setting(_) | RulerReading(_) | RulerScale(_) | Splice(_) | Shared(_)) = of;
};

impl Sorting<'_> {
    fn sort_all(&mut self, highest: u32) {
        for write in WHOLE {
            self.sort(&|page| vec![write(page)]);
        }
        self.sort(&|page| page.rehearsal.map(Edit::SetRehearsal).into_iter().collect());
        self.sort_fields();
        // Rows call rails by name. Taken, the rails come before them, which call them as the partner does; chosen, they come
        // last, and all rows follow.
        if self.rails == Fate::Comes {
            self.sort_rails();
        }
        self.sort_each(|page| page.settings.iter().map(|one| one.id).collect(), setting_written);
        self.sort_each(|page| page.shared.iter().map(|one| one.id).collect(), shared_written);
        for of in CovarianceOf::ALL {
            self.sort(&|page| match page.covariances.iter().find(|one| one.acts_on == of) {
                Some(one) => vec![Edit::SetCovariance(one.clone())],
                None => vec![Edit::RemoveCovariance(of)],
            });
        }
        self.sort_each(|page| page.plan.iter().map(|one| one.id).collect(), position_written);
        for grid in &self.pages.theirs.grids {
            self.sort(&|page| {
                let here = page.grids.iter().find(|one| one.id == grid.id);
                here.cloned().map(Edit::SetGrid).into_iter().collect()
            });
        }
        let before = self.taken.len();
        self.sort_rows(highest);
        self.keep_rails(before);
        self.sort_each(|page| page.notes.iter().map(|one| one.id).collect(), note_written);
        self.sort_answers();
        if self.rails == Fate::Clashes {
            self.sort_rails();
        }
    }

    /// Has rows here that state no rail name the one that they go on with, where they would go on with another one: rails, or rows
    /// before them, may be otherwise afterwards. What the partner changed of rows is taken from `place` on, and comes later.
    fn keep_rails(&mut self, place: usize) {
        let is_other = |edit: &Edit| {
            matches!(
                edit,
                Edit::SetCell { cell: Cell::Rail, .. } | Edit::StrikeRow { .. } | Edit::RestoreRow(_)
            )
        };
        let of_clashes = self.clashes.iter().flat_map(|clash| &clash.theirs);
        if self.rails == Fate::Stays && !self.taken.iter().chain(of_clashes).any(is_other) {
            return;
        }
        let Pages { ours, unstated, .. } = self.pages;
        let stated = unstated.iter().filter_map(|row| {
            let text = rail_named(ours, *row).filter(|text| !text.is_empty())?.to_owned();
            Some(Edit::SetCell { row: *row, cell: Cell::Rail, text })
        });
        drop(self.taken.splice(place..place, stated));
    }

    fn sort_rails(&mut self) {
        let Pages { ours, theirs, .. } = self.pages;
        let mut turned = rails_turned(ours, theirs);
        if self.rails == Fate::Clashes {
            turned.append(&mut self.own_rails);
        }
        let [here, there] = [ours, theirs].map(|page| texts(rails_written(page)));
        self.put(self.rails, lacking(&there, &here), turned);
    }

    /// Sorts what pages have several of, by their numbers.
    fn sort_each(
        &mut self,
        numbers: fn(&NotebookState) -> Vec<u32>,
        written: fn(&NotebookState, u32) -> Vec<Edit>,
    ) {
        for id in either(numbers(&self.pages.theirs), numbers(&self.pages.base)) {
            self.sort(&|page| written(page, id));
        }
    }

    fn sort_fields(&mut self) {
        let fields = |page: &NotebookState| page.bench.keys().copied().collect();
        for field in either(fields(&self.pages.theirs), fields(&self.pages.base)) {
            match field {
                BenchField::StudentNumber => {}
                BenchField::People => self.sort_names(),
                _ => self.sort(&|page| field_written(page, field)),
            }
        }
    }

    /// A question that is only the partner's can't be answered here.
    fn sort_answers(&mut self) {
        let ours = &self.pages.ours.handout.tasks;
        let is_asked = |id: TaskId| ours.iter().any(|task| task.id == id && task.asks != Asks::Nothing);
        for task in self.pages.theirs.handout.tasks.iter().filter(|task| is_asked(task.id)) {
            self.sort(&|page| {
                let here = page.handout.tasks.iter().find(|one| one.id == task.id);
                here.map(|task| Edit::Answer(task.id, task.answer.clone())).into_iter().collect()
            });
        }
    }

    /// Who measured is chosen by a person, also where the partner alone changed it: one name would take the other's place.
    fn sort_names(&mut self) {
        let taken = self.taken.len();
        self.sort(&|page| field_written(page, BenchField::People));
        if let Some(theirs) = self.taken.get(taken).cloned() {
            self.taken.truncate(taken);
            let ours = field_written(&self.pages.ours, BenchField::People);
            self.clashes.push(Clash { ours, theirs: vec![theirs], both: vec![] });
        }
    }

    /// Sorts what `written` writes of a page.
    fn sort(&mut self, written: &dyn Fn(&NotebookState) -> Vec<Edit>) {
        let fate = self.pages.fate(written);
        if fate != Fate::Stays {
            let [ours, theirs] = [&self.pages.ours, &self.pages.theirs].map(|page| texts(written(page)));
            self.put(fate, lacking(&theirs, &ours), lacking(&ours, &theirs));
        }
    }

    /// Keeps what becomes of a place: what of it is `ours`, and what makes it `theirs`.
    fn put(&mut self, fate: Fate, ours: Vec<Edit>, theirs: Vec<Edit>) {
        match fate {
            Fate::Stays => {}
            Fate::Comes => self.taken.extend(theirs),
            Fate::Clashes => self.clashes.push(Clash { ours, theirs, both: vec![] }),
        }
    }

    fn sort_rows(&mut self, mut highest: u32) {
        let Pages { base, ours, theirs, .. } = self.pages;
        for (place, row) in theirs.rows.iter().enumerate() {
            let (was, here) = (base.row(row.id), ours.row(row.id));
            match (was, here) {
                (None, None) => self.taken.extend(new_row(row.id, row, theirs.rows.get(..place))),
                (Some(was), None) if same(&texts(row_written(was)), &texts(row_written(row))) => {}
                (Some(_), None) => {
                    let theirs = new_row(row.id, row, theirs.rows.get(..place));
                    self.clashes.push(Clash { ours: vec![], theirs, both: vec![] });
                }
                (_, Some(_)) => {
                    let before = self.clashes.len();
                    self.sort(&|page| page.row(row.id).map_or_else(Vec::new, row_written));
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
fn either<K: PartialEq>(mut first: Vec<K>, second: Vec<K>) -> Vec<K> {
    for one in second {
        if !first.contains(&one) {
            first.push(one);
        }
    }
    first
}

/// An edit that writes something of a page, with its text: edits are told apart by that.
type Written = (String, Edit);

fn texts(edits: Vec<Edit>) -> Vec<Written> {
    edits.into_iter().map(|edit| (to_json(&edit), edit)).collect()
}

fn same(first: &[Written], second: &[Written]) -> bool {
    first.len() == second.len() && first.iter().zip(second).all(|((one, _), (other, _))| one == other)
}

fn holds(all: &[Written], text: &str) -> bool {
    all.iter().any(|(one, _)| one == text)
}

/// What of the second writing is not in the first.
fn lacking(first: &[Written], second: &[Written]) -> Vec<Edit> {
    second.iter().filter(|(text, _)| !holds(first, text)).map(|(_, edit)| edit.clone()).collect()
}

fn kind(page: &NotebookState, of: UncertaintyOf) -> Edit {
    Edit::SetKind { of, kind: page.kind(of) }
}

fn setting_written(page: &NotebookState, id: u32) -> Vec<Edit> {
    let here = page.settings.iter().find(|one| one.id == id).cloned();
    vec![here.map_or(Edit::RemoveSetting(id), Edit::SetSetting), kind(page, UncertaintyOf::Setting(id))]
}

fn shared_written(page: &NotebookState, id: u32) -> Vec<Edit> {
    let here = page.shared.iter().find(|one| one.id == id).cloned();
    vec![here.map_or(Edit::RemoveShared(id), Edit::SetShared), kind(page, UncertaintyOf::Shared(id))]
}

fn position_written(page: &NotebookState, id: u32) -> Vec<Edit> {
    let here = page.plan.iter().find(|one| one.id == id).cloned();
    vec![here.map_or(Edit::RemovePosition(id), Edit::SetPosition)]
}

fn note_written(page: &NotebookState, id: u32) -> Vec<Edit> {
    let here = page.notes.iter().find(|one| one.id == id).cloned();
    vec![here.map_or(Edit::RemoveNote(id), Edit::SetNote)]
}

/// A text of the bench, with the kind of what is an uncertainty.
fn field_written(page: &NotebookState, field: BenchField) -> Vec<Edit> {
    let of = match field {
        BenchField::EdgeHalfWidth => Some(UncertaintyOf::Edge),
        BenchField::TimeBaseUncertainty => Some(UncertaintyOf::TimeBase),
        BenchField::MarkUncertainty => Some(UncertaintyOf::Mark),
        _ => None,
    };
    let mut all = vec![Edit::SetBench { field, text: page.text(field).to_owned() }];
    if let Some(of) = of {
        all.push(kind(page, of));
    }
    all
}

/// What a row calls its rail, where there is such a row.
fn rail_named(page: &NotebookState, id: RowId) -> Option<&str> {
    page.row(id).map(|row| row.text(Cell::Rail))
}

/// Everything of a row.
fn row_written(row: &Row) -> Vec<Edit> {
    let Row { id, cells: _, evidence: _, struck: _ } = *row;
    let mut all = Vec::new();
    for cell in Cell::ALL {
        all.push(Edit::SetCell { row: id, cell, text: row.text(cell).to_owned() });
    }
    all.push(evidence(id, row));
    all.push(strike(id, row));
    all
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

/// A new row, at the end, that holds what another does, behind the rows `before` it.
fn new_row(id: RowId, row: &Row, before: Option<&[Row]>) -> Vec<Edit> {
    let cells = with_habits(row, before.unwrap_or_default());
    let mut all = vec![Edit::AddRow { row: id, after: None, cells }];
    if row.evidence.is_some() {
        all.push(evidence(id, row));
    }
    if row.struck.is_some() {
        all.push(strike(id, row));
    }
    all
}

#[cfg(test)]
#[path = "sorting_test.rs"]
mod tests;
