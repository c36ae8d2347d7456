//! The numbers that things of another notebook get in this one.

use std::mem::take;

use super::state::{NotebookState, Scope};
use super::uncertainty::UncertaintyOf;
use slope_evidence::stored::Evidence;

/// Which number here is whose in another notebook that began as this one did.
pub(super) struct Numbers<'a> {
    /// Up to this one they are the same in both.
    pub same: u32,
    /// The number here of what came from here, from there, or to both from a third one.
    pub known: &'a dyn Fn(u32) -> Option<u32>,
    /// Those known that were asked for, there and here.
    pub met: Vec<(u32, u32)>,
    /// Those that were given since, there and here.
    pub given: Vec<(u32, u32)>,
    /// The highest number here.
    pub highest: u32,
}

impl Numbers<'_> {
    /// The number here; a new one for what has none yet.
    pub fn here(&mut self, there: u32) -> u32 {
        if there <= self.same {
            return there;
        }
        if let Some((_, here)) = self.met.iter().chain(&self.given).find(|(id, _)| *id == there) {
            return *here;
        }
        if let Some(here) = (self.known)(there) {
            self.met.push((there, here));
            return here;
        }
        self.highest = self.highest.saturating_add(1);
        self.given.push((there, self.highest));
        self.highest
    }
}

/// Gives everything on the other notebook's `page` its number here, wherever it is named.
pub(super) fn renumber(page: &mut NotebookState, numbers: &mut Numbers) {
    let mut new = |id: u32| numbers.here(id);
    for rail in &mut page.rails {
        rail.id = new(rail.id);
    }
    for setting in &mut page.settings {
        setting.id = new(setting.id);
    }
    for shared in &mut page.shared {
        shared.id = new(shared.id);
        match &mut shared.rows {
            Scope::Rail(rail) => *rail = new(*rail),
            Scope::Rows(rows) => rows.iter_mut().for_each(|row| *row = new(*row)),
            Scope::All | Scope::TimeBase(_) => {}
        }
    }
    for covariance in &mut page.covariances {
        covariance.rows.iter_mut().for_each(|row| *row = new(*row));
    }
    for position in &mut page.plan {
        position.id = new(position.id);
    }
    for row in &mut page.rows {
        row.id = new(row.id);
        if let Some(Evidence::Picture(picture)) = &mut row.evidence {
            picture.grid = new(picture.grid);
        }
    }
    for note in &mut page.notes {
        note.id = new(note.id);
        note.after = note.after.map(&mut new);
    }
    for grid in &mut page.grids {
        grid.id = new(grid.id);
    }
    for task in &mut page.handout.tasks {
        task.id = new(task.id);
    }
    for (of, kind) in take(&mut page.kinds) {
        page.kinds.insert(of.renumbered(&mut new), kind);
    }
}

impl UncertaintyOf {
    fn renumbered(self, new: &mut dyn FnMut(u32) -> u32) -> Self {
        match self {
            Self::Edge | Self::TimeBase | Self::Mark => self,
            Self::Setting(id) => Self::Setting(new(id)),
            Self::RulerReading(id) => Self::RulerReading(new(id)),
            Self::RulerScale(id) => Self::RulerScale(new(id)),
            Self::Splice(id) => Self::Splice(new(id)),
            Self::Shared(id) => Self::Shared(new(id)),
        }
    }
}
