//! The numbers that things of another notebook get in this one.

use std::mem::take;

use super::state::{NotebookState, Scope};
use super::trail::Lookup;
use super::uncertainty::UncertaintyOf;
use slope_evidence::stored::Evidence;

/// Which number here is whose in another notebook that began as this one did.
pub(super) struct Numbers {
    /// Up to this one they are the same in both.
    same: u32,
    /// Those here by those there, above it.
    here: Lookup,
    /// Those that are new here, there and here.
    pub given: Vec<(u32, u32)>,
    /// The highest number here.
    pub highest: u32,
}

impl Numbers {
    /// The numbers here of all that were `asked` for, which are the same up to `same`: a `known` one is that of what came from
    /// here, from there, or to both from a third one; all others are new, above the `highest` here.
    pub fn of(asked: Vec<u32>, same: u32, highest: u32, known: &dyn Fn(u32) -> Option<u32>) -> Self {
        let asked = Lookup::of(asked.into_iter().map(|there| ([there, 0, 0], there)).collect());
        let (mut here, mut given, mut highest) = (vec![], vec![], highest);
        for key @ [there, ..] in asked.keys().filter(|[there, ..]| *there > same) {
            let number = known(there).unwrap_or_else(|| {
                highest = highest.saturating_add(1);
                given.push((there, highest));
                highest
            });
            here.push((key, number));
        }
        Self { same, here: Lookup::of(here), given, highest }
    }

    /// The number here of one that was asked for.
    pub fn here(&self, there: u32) -> u32 {
        if there <= self.same { there } else { self.here.all([there, 0, 0]).next().unwrap_or(there) }
    }
}

/// All numbers by which things are named on a page.
pub(super) fn numbers_on(page: &NotebookState) -> Vec<u32> {
    let mut all = Vec::new();
    renumber(&mut page.clone(), &mut |number| {
        all.push(number);
        number
    });
    all
}

/// Gives everything on a `page` a `new` number, wherever it is named.
pub(super) fn renumber(page: &mut NotebookState, new: &mut dyn FnMut(u32) -> u32) {
    let NotebookState {
        rails,
        settings,
        kinds,
        shared,
        covariances,
        plan,
        rows,
        notes,
        grids,
        handout,
        // Without numbers, or with those of other logs.
        title: _,
        decimal_mark: _,
        bench: _,
        cautions_read: _,
        path: _,
        beam: _,
        photo: _,
        estimator: _,
        claim: _,
        trials: _,
        seal: _,
        rehearsal: _,
        merged: _,
        numbered: _,
    } = page;
    for rail in rails {
        rail.id = new(rail.id);
    }
    for setting in settings {
        setting.id = new(setting.id);
    }
    for error in shared {
        error.id = new(error.id);
        match &mut error.rows {
            Scope::Rail(rail) => *rail = new(*rail),
            Scope::Rows(rows) => rows.iter_mut().for_each(|row| *row = new(*row)),
            Scope::All | Scope::TimeBase(_) => {}
        }
    }
    for covariance in covariances {
        covariance.rows.iter_mut().for_each(|row| *row = new(*row));
    }
    for position in plan {
        position.id = new(position.id);
    }
    for row in rows {
        row.id = new(row.id);
        if let Some(Evidence::Picture(picture)) = &mut row.evidence {
            picture.grid = new(picture.grid);
        }
    }
    for note in notes {
        note.id = new(note.id);
        note.after = note.after.map(&mut *new);
    }
    for grid in grids {
        grid.id = new(grid.id);
    }
    for task in &mut handout.tasks {
        task.id = new(task.id);
    }
    for (of, kind) in take(kinds) {
        kinds.insert(of.renumbered(new), kind);
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
