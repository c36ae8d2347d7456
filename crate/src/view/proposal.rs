//! What a new row begins with: the rail, the time base and the next reading of the step so far.

use litemap::LiteMap;

use super::types::NewRow;
use crate::analysis::Analysis;
use crate::analysis::read::ruler_unit;
use crate::notebook::{Cell, NotebookState, Row, habits};
use crate::quantity::{self, Unit, fixed};

/// The next row, as the rows so far suggest it.
pub fn proposal(page: &NotebookState, analysis: &Analysis) -> NewRow {
    let row = page.new_number();
    let mut cells: LiteMap<Cell, String> =
        habits(&page.rows).map(|(cell, text)| (cell, text.to_owned())).collect();
    let written: Vec<&Row> = page.rows.iter().filter(|row| row.struck.is_none()).collect();
    if let Some(next) = next_reading(page, analysis, &written) {
        cells.insert(Cell::Reading, next);
    }
    NewRow { row, cells }
}

/// One more of the last step on the same rail, written to the last place typed; none where that would leave the
/// rail, or where the last two rows make no step.
fn next_reading(page: &NotebookState, analysis: &Analysis, rows: &[&Row]) -> Option<String> {
    let [.., before, last] = rows else { return None };
    let rail_id = |row: &Row| analysis.rows.iter().find(|reading| reading.id == row.id)?.rail;
    let rail = rail_id(last)?;
    if rail_id(before)? != rail {
        return None;
    }
    let (index, rail) = page.rail(rail)?;
    let unit = ruler_unit(rail.unit);
    let read = |row: &Row| quantity::parse(row.text(Cell::Reading), page.decimal_mark, unit).ok();
    let (first, second) = (read(before)?, read(last)?);
    let next = 2.0 * second.value - first.value;
    let stand = analysis.rails.get(index)?;
    let ((mark, place), near, far) = (stand.mark.as_ref()?, stand.near?, stand.far?);
    let distance = place.value + rail.sense.sign() * (next - mark);
    let inside = next != second.value && distance >= near - 1e-9 && distance <= far + 1e-9;
    let written_in = if second.unit == first.unit { second.unit } else { unit };
    inside.then(|| written(next, written_in, unit, first.last_place.min(second.last_place), page))
}

fn written(value: f64, unit: Unit, ruler: Unit, place: i32, page: &NotebookState) -> String {
    let digits = fixed(unit.from_base(value), place.min(0), page.decimal_mark);
    if unit == ruler { digits } else { format!("{digits} {}", unit.symbol()) }
}
