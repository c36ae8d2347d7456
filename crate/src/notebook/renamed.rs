//! A rail with another name, and the rows that call it by the one before.

use super::edit_error::EditError;
use super::state::{Cell, NotebookState, Rail, RailField, RailId};

impl NotebookState {
    /// Names a rail. Rows and planned positions that call it by its name before do so by the new one. While that is another
    /// rail's too, as it may be on the way to a longer one, or where two rails are given each other's, they keep the name
    /// before, and follow later.
    ///
    /// # Errors
    /// When there is no such rail.
    pub(super) fn rename_rail(&mut self, id: RailId, name: &str) -> Result<(), EditError> {
        let found = self.rails.iter_mut().enumerate().find(|(_, rail)| rail.id == id);
        let (place, rail) = found.ok_or(EditError::NoRail { rail: id })?;
        let before = rail.called.take().unwrap_or_else(|| rail.name_or_number(place));
        if name.is_empty() {
            rail.texts.remove(&RailField::Name);
        } else {
            rail.texts.insert(RailField::Name, name.to_owned());
        }
        rail.called = Some(before);
        self.follow_names();
        Ok(())
    }

    /// Has rows and planned positions follow, all at once, the rails whose new name is theirs alone.
    fn follow_names(&mut self) {
        let named = |(place, rail): (usize, &Rail)| rail.name_or_number(place);
        let names: Vec<String> = self.rails.iter().enumerate().map(named).collect();
        let called = self.rails.iter().zip(&names);
        let calls: Vec<String> =
            called.map(|(rail, name)| rail.called.clone().unwrap_or_else(|| name.clone())).collect();
        let renamed = self.rails.iter().enumerate().filter(|(_, rail)| rail.called.is_some());
        let waiting: Vec<usize> = renamed.map(|(place, _)| place).collect();
        let mut ready = waiting.clone();
        ready.retain(|place| counted(&names, &names[*place]) == 1);
        // Nor is a name a rail's alone by which rows still call another, which has to wait.
        let is_held = |place: usize, ready: &[usize]| {
            let mut others = waiting.iter().filter(|other| !ready.contains(other));
            others.any(|other| calls[*other].eq_ignore_ascii_case(&names[place]))
        };
        while let Some(held) = ready.iter().position(|place| is_held(*place, &ready)) {
            ready.remove(held);
        }
        let mut turned = Vec::new();
        for place in ready {
            // Rows that call two rails by one name tell nothing.
            let before = self.rails[place].called.take();
            let alone = before.filter(|before| counted(&calls, before) == 1);
            turned.extend(alone.zip(Some(&names[place])));
        }
        let in_rows = self.rows.iter_mut().filter_map(|row| row.cells.get_mut(&Cell::Rail));
        for text in in_rows.chain(self.plan.iter_mut().map(|position| &mut position.rail)) {
            if let Some((_, now)) = turned.iter().find(|(before, _)| text.trim().eq_ignore_ascii_case(before))
            {
                text.clone_from(now);
            }
        }
    }
}

/// How many of the names are this one.
fn counted(names: &[String], name: &str) -> usize {
    names.iter().filter(|other| other.eq_ignore_ascii_case(name)).count()
}

#[cfg(test)]
#[path = "renamed_test.rs"]
mod tests;
