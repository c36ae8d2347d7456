//! A rail with another name, and the rows that call it by the one before.

use super::edit_error::EditError;
use super::state::{Cell, NotebookState, RailField, RailId};

impl NotebookState {
    /// Names a rail. Rows and planned positions that call it by its name before do so by the new one. While that is another
    /// rail's too, as it may be on the way to a longer one, they keep the name before, and follow later.
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
        let now = rail.name_or_number(place);
        if self.is_anothers(&now, place) {
            if let Some(rail) = self.rails.get_mut(place) {
                rail.called = Some(before);
            }
        } else if !self.is_anothers(&before, place) {
            let in_rows = self.rows.iter_mut().filter_map(|row| row.cells.get_mut(&Cell::Rail));
            for text in in_rows.chain(self.plan.iter_mut().map(|position| &mut position.rail)) {
                if text.trim().eq_ignore_ascii_case(&before) {
                    text.clone_from(&now);
                }
            }
        }
        Ok(())
    }

    /// Whether a rail at another place has this name.
    fn is_anothers(&self, name: &str, place: usize) -> bool {
        let mut rails = self.rails.iter().enumerate();
        rails.any(|(other, rail)| other != place && rail.name_or_number(other).eq_ignore_ascii_case(name))
    }
}

#[cfg(test)]
#[path = "renamed_test.rs"]
mod tests;
