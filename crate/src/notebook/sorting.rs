//! What two pages have otherwise than a third, from which both came: what one of them changed alone, and what both did.
//!
//! The pages are written as edits, place by place. Rails are one place, since their order says which meet; so is a row, since
//! half of it from either would be nobody's reading. What is of one person (student number, cautions read, seal) and what is
//! prepared of a hand-out is not looked at.

use litemap::LiteMap;
use serde::Serialize;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::habits::habits;
use super::handout::{Asks, Piece, TaskId};
use super::state::{
    BenchField, Cell, CovarianceOf, NotebookState, PlannedPosition, PositionId, Rail, RailField, Row, RowId,
};
use super::uncertainty::UncertaintyOf;

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
#[derive(Clone, Copy)]
pub(super) struct Crossed<'a> {
    /// The page on which both began.
    pub began: &'a NotebookState,
    /// The page here that the partner has seen.
    pub seen: &'a NotebookState,
}

/// Three pages, and what was found of their differences.
struct Sorting<'a> {
    /// The last page that both have seen.
    base: &'a NotebookState,
    /// The other pages to heed, where that one is only the partner's.
    crossed: Option<Crossed<'a>>,
    ours: &'a NotebookState,
    theirs: &'a NotebookState,
    taken: Vec<Edit>,
    clashes: Vec<Clash>,
}

/// What `theirs` changed alone, and what both changed, each otherwise, since `base`; all in the numbers of this notebook, of
/// which `highest` is the highest that is taken.
pub(super) fn sorted(
    (base, crossed): (&NotebookState, Option<Crossed>),
    ours: &NotebookState,
    theirs: &NotebookState,
    highest: u32,
) -> (Vec<Edit>, Vec<Clash>) {
    let mut sorting = Sorting { base, crossed, ours, theirs, taken: vec![], clashes: vec![] };
    sorting.sort_all(highest);
    (sorting.taken, sorting.clashes)
}

/// Writes out by which time base each row is read that is not as it was on the page on which both began, where it names none
/// and there is only one: there may be others where it is taken over. So it is done with the rail of a row that was begun
/// since, and with what such a row goes on with from the rows before it, where others stand before it.
pub(super) fn write_out(page: &mut NotebookState, began: &NotebookState) {
    let (rail, time_base) = (only_rail(page), only_time_base(page));
    for place in 0..page.rows.len() {
        let (before, rest) = page.rows.split_at_mut(place);
        let Some(row) = rest.first_mut().filter(|row| !began.rows.contains(row)) else { continue };
        name(row, Cell::TimeBase, time_base.as_deref());
        if row.id > began.numbered {
            row.cells = with_habits(row, before);
            name(row, Cell::Rail, rail.as_deref());
        }
    }
}

/// Writes what a cell is read as, where it is empty.
fn name(row: &mut Row, cell: Cell, text: Option<&str>) {
    if let Some(text) = text.filter(|_| row.text(cell).trim().is_empty()) {
        row.cells.insert(cell, text.to_owned());
    }
}

/// What keeps rows of `ours` read by the only time base there is, which they don't name, where `theirs` has others, or
/// another one. A row that is as it was on the page on which both `began` follows where the only one is changed.
pub(super) fn kept(ours: &NotebookState, theirs: &NotebookState, began: &NotebookState) -> Vec<Edit> {
    let (here, there) = (only_time_base(ours), only_time_base(theirs));
    let Some(text) = here.filter(|text| there.as_ref() != Some(text)) else { return vec![] };
    let is_unnamed = |row: &&Row| row.text(Cell::TimeBase).trim().is_empty();
    let stays = |row: &&Row| there.is_none() || !began.rows.contains(row);
    let rows = ours.rows.iter().filter(is_unnamed).filter(stays);
    let named = rows.map(|row| Edit::SetCell { row: row.id, cell: Cell::TimeBase, text: text.clone() });
    named.filter(|edit| edit.may_reach(ours).is_ok()).collect()
}

/// What has rows and planned positions that are in `ours` alone, and not in `base`, call their rail as it is called in `theirs`.
pub(super) fn following(base: &NotebookState, ours: &NotebookState, theirs: &NotebookState) -> Vec<Edit> {
    let name = |text: &str| {
        let before = text.trim();
        let is_called =
            |(place, rail): &(usize, &Rail)| rail.name_or_number(*place).eq_ignore_ascii_case(before);
        let mut called = ours.rails.iter().enumerate().filter(is_called);
        let (Some((_, rail)), None) = (called.next(), called.next()) else { return None };
        let (place, rail) = theirs.rail(rail.id)?;
        Some(rail.name_or_number(place)).filter(|name| !name.eq_ignore_ascii_case(before))
    };
    let is_row = |id: RowId| [base, theirs].iter().any(|page| page.row(id).is_some());
    let rows = ours.rows.iter().filter(|row| !is_row(row.id)).filter_map(|row| {
        let text = name(row.text(Cell::Rail))?;
        Some(Edit::SetCell { row: row.id, cell: Cell::Rail, text })
    });
    let is_planned = |id: PositionId| base.plan.iter().chain(&theirs.plan).any(|position| position.id == id);
    let positions = ours.plan.iter().filter(|position| !is_planned(position.id)).filter_map(|position| {
        let rail = name(&position.rail)?;
        Some(Edit::SetPosition(PlannedPosition { rail, ..position.clone() }))
    });
    rows.chain(positions).collect()
}

/// The rail by which a row is read that names none: the only one on the page.
fn only_rail(page: &NotebookState) -> Option<String> {
    if let [rail] = page.rails.as_slice() { Some(rail.name_or_number(0)) } else { None }
}

/// The time base by which a row is read that names none: the only one on the page.
fn only_time_base(page: &NotebookState) -> Option<String> {
    let [setting] = page.settings.as_slice() else { return None };
    Some(setting.time_per_division.clone()).filter(|text| !text.trim().is_empty())
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

impl Sorting<'_> {
    fn sort_all(&mut self, highest: u32) {
        for write in WHOLE {
            self.sort(&|page| vec![write(page)]);
        }
        self.sort(&|page| page.rehearsal.map(Edit::SetRehearsal).into_iter().collect());
        self.sort_fields();
        self.sort_by(&rails_written, rails_turned);
        self.sort_each(|page| page.settings.iter().map(|one| one.id).collect(), setting_written);
        self.sort_each(|page| page.shared.iter().map(|one| one.id).collect(), shared_written);
        for of in [CovarianceOf::Distances, CovarianceOf::Delays, CovarianceOf::Both] {
            self.sort(&|page| match page.covariances.iter().find(|one| one.acts_on == of) {
                Some(one) => vec![Edit::SetCovariance(one.clone())],
                None => vec![Edit::RemoveCovariance(of)],
            });
        }
        self.sort_each(|page| page.plan.iter().map(|one| one.id).collect(), position_written);
        for grid in &self.theirs.grids {
            self.sort(&|page| {
                let here = page.grids.iter().find(|one| one.id == grid.id);
                here.cloned().map(Edit::SetGrid).into_iter().collect()
            });
        }
        self.sort_rows(highest);
        self.sort_each(|page| page.notes.iter().map(|one| one.id).collect(), note_written);
        self.sort_answers();
    }

    /// Sorts what pages have several of, by their numbers.
    fn sort_each(
        &mut self,
        numbers: fn(&NotebookState) -> Vec<u32>,
        written: fn(&NotebookState, u32) -> Vec<Edit>,
    ) {
        for id in either(numbers(self.theirs), numbers(self.base)) {
            self.sort(&|page| written(page, id));
        }
    }

    fn sort_fields(&mut self) {
        let fields = |page: &NotebookState| page.bench.keys().copied().collect();
        for field in either(fields(self.theirs), fields(self.base)) {
            match field {
                BenchField::StudentNumber => {}
                BenchField::People => self.sort_names(),
                _ => self.sort(&|page| field_written(page, field)),
            }
        }
    }

    /// A question that is only the partner's can't be answered here.
    fn sort_answers(&mut self) {
        let ours = &self.ours.handout.tasks;
        let is_asked = |id: TaskId| ours.iter().any(|task| task.id == id && task.asks != Asks::Nothing);
        for task in self.theirs.handout.tasks.iter().filter(|task| is_asked(task.id)) {
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
            let ours = field_written(self.ours, BenchField::People);
            self.clashes.push(Clash { ours, theirs: vec![theirs], both: vec![] });
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
        turned: fn(&[Written], &[Written]) -> Vec<Edit>,
    ) {
        let [base, ours, theirs] = [self.base, self.ours, self.theirs].map(|page| texts(written(page)));
        if same(&theirs, &base) || same(&theirs, &ours) {
            return;
        }
        let change = turned(&ours, &theirs);
        let comes_back = self.crossed.is_some_and(|Crossed { began, seen }| {
            let [began, seen] = [began, seen].map(|page| texts(written(page)));
            !same(&seen, &began) && !same(&seen, &base)
        });
        if same(&ours, &base) && !comes_back {
            self.taken.extend(change);
        } else {
            self.clashes.push(Clash { ours: lacking(&theirs, &ours), theirs: change, both: vec![] });
        }
    }

    fn sort_rows(&mut self, mut highest: u32) {
        let (base, ours, theirs) = (self.base, self.ours, self.theirs);
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
fn either<K: Copy + PartialEq>(mut first: Vec<K>, second: Vec<K>) -> Vec<K> {
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

/// All rails, each with everything of it.
fn rails_written(page: &NotebookState) -> Vec<Edit> {
    let mut all = Vec::new();
    for rail in &page.rails {
        let id = rail.id;
        all.push(Edit::AddRail(id));
        all.push(Edit::SetRulerUnit { rail: id, unit: rail.unit });
        all.push(Edit::SetSense { rail: id, sense: rail.sense });
        all.push(Edit::SetSplice { rail: id, splice: rail.splice.clone() });
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
        for of in [UncertaintyOf::RulerReading(id), UncertaintyOf::RulerScale(id), UncertaintyOf::Splice(id)]
        {
            all.push(kind(page, of));
        }
    }
    all
}

/// Turns the first rails into the second: their order can't be changed, so from the first that is another on all are laid anew.
fn rails_turned(first: &[Written], second: &[Written]) -> Vec<Edit> {
    let laid = |all: &[Written]| -> Vec<u32> {
        all.iter()
            .filter_map(|(_, edit)| if let Edit::AddRail(id) = edit { Some(*id) } else { None })
            .collect()
    };
    let (before, after) = (laid(first), laid(second));
    let same = before.iter().zip(&after).take_while(|(before, after)| before == after).count();
    let mut all: Vec<Edit> = before.iter().skip(same).map(|id| Edit::RemoveRail(*id)).collect();
    let mut rails = 0;
    for (text, edit) in second {
        rails += usize::from(matches!(edit, Edit::AddRail(_)));
        if rails > same || !holds(first, text) {
            all.push(edit.clone());
        }
    }
    all
}

/// Everything of a row.
fn row_written(row: &Row) -> Vec<Edit> {
    let id = row.id;
    let mut all = Vec::new();
    for cell in [
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
    ] {
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

/// The cells of a row, and what it goes on with from the rows `before` it.
fn with_habits(row: &Row, before: &[Row]) -> LiteMap<Cell, String> {
    let mut cells = row.cells.clone();
    for (cell, text) in habits(before) {
        if row.text(cell).trim().is_empty() {
            cells.insert(cell, text.to_owned());
        }
    }
    cells
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
