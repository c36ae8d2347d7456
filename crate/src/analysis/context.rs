//! What a row is read against: the page, and in numbers everything on it that is no row.

use super::evidence::MarkContext;
use super::place::{EntryProblem, Place, SplicePart};
use super::read::{self, BenchNumbers, RailNumbers, Reader, SettingNumbers};
use crate::notebook::NotebookState;
use crate::rail::{self, Stand};

/// Everything that a row is read against.
pub struct RowContext<'a> {
    /// The notebook.
    pub page: &'a NotebookState,
    /// The bench in numbers.
    pub bench: BenchNumbers,
    /// The rails in numbers; each is `page.rails` at the same place.
    pub rails: Vec<RailNumbers>,
    /// Where the rails stand, each at the same place.
    pub stands: Vec<Option<Stand>>,
    /// The time base settings with their own uncertainty.
    pub settings: Vec<SettingNumbers>,
    /// The grids of pictures.
    pub marks: MarkContext,
}

impl<'a> RowContext<'a> {
    /// Reads what rows are read against.
    pub fn read(page: &'a NotebookState, reader: &mut Reader) -> Self {
        let bench = read::bench(page, reader);
        let rails = read::rails(page, reader);
        let settings = read::settings(page, reader);
        let stands = stands(page, &rails, &mut reader.problems);
        // What is wrong with the wish is told once, where it is read for the traces.
        let (_, fraction) = read::trace_wishes(page, &mut Reader::new(page.decimal_mark));
        let marks = MarkContext::of(page, read::mark_uncertainty(page, reader), fraction);
        Self { page, bench, rails, stands, settings, marks }
    }
}

/// Places the rails; a joint that can't be laid becomes a problem at the splice.
fn stands(
    page: &NotebookState,
    rails: &[RailNumbers],
    problems: &mut Vec<EntryProblem>,
) -> Vec<Option<Stand>> {
    let mut stands: Vec<Option<Stand>> = Vec::with_capacity(rails.len());
    // A rail whose texts can't be read stands nowhere; so does what is joined to it.
    let readable: Vec<Option<&rail::Rail>> = rails.iter().map(|numbers| numbers.rail.as_ref()).collect();
    for (typed, placed) in page.rails.iter().zip(rail::lay(&readable)) {
        match placed {
            None => stands.push(None),
            Some(Ok(stand)) => stands.push(Some(stand)),
            Some(Err(error)) => {
                let place = Place::Splice { rail: typed.id, part: SplicePart::Whole };
                problems.push(EntryProblem { place, message: error.message() });
                stands.push(None);
            }
        }
    }
    stands
}
