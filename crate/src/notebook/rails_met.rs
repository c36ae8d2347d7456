//! Rails held against a partner's, and the rows that call them by name: a row stays with the rail that it is read on, whatever
//! that is called on either page.

use serde::Serialize;
use slope_evidence::border::to_json;

use super::edit::Edit;
use super::state::{Cell, NotebookState, PlannedPosition, Rail, RailField, RailId, RowId};
use super::uncertainty::UncertaintyOf;

/// What the rails of a page are called.
pub(super) struct RailNames(Vec<(RailId, [String; 2])>);

impl RailNames {
    /// Those of a page: of each rail what rows call it, and its name where that is another one.
    pub fn on(page: &NotebookState) -> Self {
        let names = |(place, rail): (usize, &Rail)| {
            let name = rail.name_or_number(place);
            (rail.id, [rail.called.clone().unwrap_or_else(|| name.clone()), name])
        };
        Self(page.rails.iter().enumerate().map(names).collect())
    }

    /// The rails of a name.
    fn meant(&self, name: &str) -> impl Iterator<Item = RailId> {
        let name = name.trim().to_owned();
        let is_called =
            move |names: &[String; 2]| names.iter().any(|called| called.eq_ignore_ascii_case(&name));
        self.0.iter().filter(move |(_, names)| is_called(names)).map(|(rail, _)| *rail)
    }

    /// The rail on which a row is read that names it so; none where there is none of that name, or more than one.
    fn rail(&self, name: &str) -> Option<RailId> {
        let mut meant = self.meant(name);
        meant.next().filter(|_| meant.next().is_none())
    }

    /// What rows call a rail, if no other one is called so.
    fn call(&self, rail: RailId) -> Option<&str> {
        let (_, [call, _]) = self.0.iter().find(|(id, _)| *id == rail)?;
        self.rail(call).is_some().then_some(call.as_str())
    }
}

/// Has rows and planned positions of a page call their rails by `names`. Those whose rail has none there are left as they are.
pub(super) fn call_by(page: &mut NotebookState, names: &RailNames) {
    let here = RailNames::on(page);
    let in_rows = page.rows.iter_mut().filter_map(|row| row.cells.get_mut(&Cell::Rail));
    for text in in_rows.chain(page.plan.iter_mut().map(|position| &mut position.rail)) {
        if let Some(call) = here.rail(text).and_then(|rail| names.call(rail)) {
            call.clone_into(text);
        }
    }
}

/// What may be on another rail after a merge: only one of the notebooks has its rail, or its name is not its alone, and what it
/// calls that may be another one's name. Which was meant nobody can tell.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
pub struct Astray {
    /// The rows.
    pub rows: Vec<RowId>,
    /// The planned positions, as their notebook has them.
    pub positions: Vec<PlannedPosition>,
}

/// What of `page` would be on another rail among those of `other`.
pub(super) fn astray(page: &NotebookState, other: &NotebookState) -> Astray {
    let [here, there] = [page, other].map(RailNames::on);
    let is_astray = |name: &str| {
        let follows = here.rail(name).and_then(|rail| there.call(rail)).is_some();
        !follows && here.meant(name).next().is_some() && there.rail(name).is_some()
    };
    let rows = page.rows.iter().filter(|row| is_astray(row.text(Cell::Rail))).map(|row| row.id).collect();
    let positions = page.plan.iter().filter(|position| is_astray(&position.rail)).cloned().collect();
    Astray { rows, positions }
}

/// All rails, each with everything of it.
pub(super) fn rails_written(page: &NotebookState) -> Vec<Edit> {
    page.rails.iter().flat_map(|rail| rail_written(page, rail)).collect()
}

/// Everything of a rail of a page.
fn rail_written(page: &NotebookState, rail: &Rail) -> Vec<Edit> {
    let Rail { id, unit, sense, splice, texts, called: _ } = rail;
    let id = *id;
    let mut all = vec![
        Edit::AddRail(id),
        Edit::SetRulerUnit { rail: id, unit: *unit },
        Edit::SetSense { rail: id, sense: *sense },
        Edit::SetSplice { rail: id, splice: splice.clone() },
    ];
    for field in RailField::ALL {
        let text = texts.get(&field).cloned().unwrap_or_default();
        all.push(Edit::SetRail { rail: id, field, text });
    }
    for of in [UncertaintyOf::RulerReading(id), UncertaintyOf::RulerScale(id), UncertaintyOf::Splice(id)] {
        all.push(Edit::SetKind { of, kind: page.kind(of) });
    }
    all
}

/// Turns the rails of `before` into those of `after`. Rows on a rail that gets another name follow it, as long as the one before
/// and the new one are its alone.
pub(super) fn rails_turned(before: &NotebookState, after: &NotebookState) -> Vec<Edit> {
    let [names_before, names_after] = [before, after].map(RailNames::on);
    let mut turn = Turn::default();
    for (place, rail) in before.rails.iter().enumerate() {
        let Some((there, other)) = after.rail(rail.id) else {
            turn.gone.push(rail.id);
            continue;
        };
        let (from, to) = (rail.name_or_number(place), other.name_or_number(there));
        let mut rail = rail.clone();
        // By its number it would be called otherwise once one before it is gone.
        let is_unnamed = rail.texts.get(&RailField::Name).is_none_or(|name| name.trim().is_empty());
        if is_unnamed && !turn.gone.is_empty() {
            turn.named.push((rail.id, from.clone()));
            rail.texts.insert(RailField::Name, from.clone());
        }
        if from != to {
            rail.texts.insert(RailField::Name, to.clone());
            let is_told = names_before.call(rail.id).is_some() && names_after.rail(&to) == Some(rail.id);
            let named = if is_told { &mut turn.followed } else { &mut turn.unfollowed };
            named.push((rail.id, to));
        }
        turn.stay.push(rail);
    }
    let mut edits = turn.edits();
    // Their order can't be changed: from the first that is another one on all are laid anew.
    let same = turn.stay.iter().zip(&after.rails).take_while(|(rail, other)| rail.id == other.id).count();
    edits.extend(turn.stay.iter().skip(same).map(|rail| Edit::RemoveRail(rail.id)));
    for (place, rail) in after.rails.iter().enumerate() {
        let had = turn.stay.get(place).filter(|_| place < same);
        let had = had.map_or_else(Vec::new, |rail| rail_written(before, rail));
        // Edits are told apart by their texts, since to compare all that they may hold costs more.
        let had: Vec<String> = had.iter().map(to_json).collect();
        edits.extend(rail_written(after, rail).into_iter().filter(|edit| !had.contains(&to_json(edit))));
    }
    edits
}

/// A name that a rail gets.
type Named = (RailId, String);

/// How rails are turned into others, before any is laid.
#[derive(Default)]
struct Turn {
    /// Rails without a name, which get their numbers for names.
    named: Vec<Named>,
    gone: Vec<RailId>,
    /// Those that get a name, and their rows with them.
    followed: Vec<Named>,
    /// Those that get one alone: they are, or will be, called as another one is, so that nobody can tell which rows would follow.
    unfollowed: Vec<Named>,
    /// Those that are not gone, called as they will be.
    stay: Vec<Rail>,
}

impl Turn {
    fn edits(&self) -> Vec<Edit> {
        let name =
            |(rail, name): &Named| Edit::SetRail { rail: *rail, field: RailField::Name, text: name.clone() };
        let mut edits: Vec<Edit> = self.named.iter().map(name).collect();
        edits.extend(self.gone.iter().map(|rail| Edit::RemoveRail(*rail)));
        // Out of the way with their rows, while others get a name by which rows may call them.
        if !self.unfollowed.is_empty() {
            let aside = |(rail, _): &Named| Edit::RenameRail { rail: *rail, name: format!("\u{2026}{rail}") };
            edits.extend(self.followed.iter().map(aside));
            edits.extend(self.unfollowed.iter().map(name));
        }
        let rename = |(rail, name): &Named| Edit::RenameRail { rail: *rail, name: name.clone() };
        edits.extend(self.followed.iter().map(rename));
        edits
    }
}

#[cfg(test)]
#[path = "rails_met_test.rs"]
mod tests;
