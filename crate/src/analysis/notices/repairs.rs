//! The mending of a mistake as one edit, where it is one: offered, never made.

use crate::analysis::diagnosis::{Cause, Found};
use crate::analysis::notice::Repair;
use crate::message;
use crate::notebook::{
    Cell, Edit, Estimator, Evidence, NotebookState, OverlapPair, Path, Rail, RailField, RailId, Row, RowId,
    Sense, Splice, UncertaintyOf,
};
use crate::words::{Message, Value};

/// The edit that mends what was found and is `said` of it. `rows` and `rail` are their names.
pub(super) fn repair(
    page: &NotebookState,
    found: &Found,
    said: &Message,
    rows: Value,
    rail: String,
) -> Option<Repair> {
    let place = found.rail.and_then(|rail| page.rail(rail)).map(|(place, _)| place);
    let (does, edit) = match found.cause {
        Cause::RowOff | Cause::ForcedZero => {
            let [row] = found.rows[..] else { return None };
            (message!("repair-strike", rows = rows), Edit::StrikeRow { row, reason: String::new() })
        }
        Cause::EdgesSwapped if found.rows.is_empty() => {
            let rows: Vec<RowId> =
                page.rows.iter().filter(|row| row.struck.is_none()).map(|row| row.id).collect();
            (message!("repair-edges-all"), edges(page, &rows)?)
        }
        Cause::EdgesSwapped => (message!("repair-edges", rows = rows), edges(page, &found.rows)?),
        Cause::RowsExchanged => (message!("repair-exchanged", rows = rows), positions(page, &found.rows)?),
        Cause::WrongSense => match place {
            Some(place) => (message!("repair-sense", rail = rail), turned(page.rails.get(place)?)),
            None => (message!("repair-sense-all"), Edit::Together(page.rails.iter().map(turned).collect())),
        },
        Cause::OverlapTurned => (message!("repair-joint", rail = rail), joint(page.rails.get(place?)?)?),
        Cause::StepAtSplice => (message!("repair-fitted", rail = rail), fitted(page, place?)?),
        Cause::WrongRail => {
            let [row] = found.rows[..] else { return None };
            let is_its_name =
                |(place, one): &(usize, &Rail)| one.name_or_number(*place).eq_ignore_ascii_case(&rail);
            if page.rails.iter().enumerate().filter(is_its_name).count() != 1 {
                return None;
            }
            let does = message!("repair-next-rail", n = 1_usize, rows = rows, rail = rail.as_str());
            (does, Edit::SetCell { row, cell: Cell::Rail, text: rail })
        }
        Cause::RulerRestarts => restart(page, place?, &found.rows, rows)?,
        _ => return None,
    };
    let reason = matches!(edit, Edit::StrikeRow { .. }).then(|| said.clone());
    Some(Repair { does, edit, reason })
}

/// The other path factor.
pub(super) fn path(page: &NotebookState) -> Repair {
    let (does, path) = match page.path {
        Path::Mirror => (message!("repair-path-detector"), Path::Detector),
        Path::Detector => (message!("repair-path-mirror"), Path::Mirror),
    };
    Repair { does, edit: Edit::SetPath(path), reason: None }
}

/// Edges timed at a constant fraction; none where the traces of a row don't give it.
pub(super) fn by_constant_fraction(page: &NotebookState) -> Option<Repair> {
    let estimator = Estimator::ConstantFraction;
    let gives = |row: &Row| match &row.evidence {
        Some(Evidence::Traces(traces)) => {
            traces.delays.iter().any(|found| found.estimator == estimator && found.delay.is_some())
        }
        _ => true,
    };
    let does = message!("repair-constant_fraction");
    let repair = Repair { does, edit: Edit::SetEstimator(estimator), reason: None };
    page.rows.iter().filter(|row| row.struck.is_none()).all(gives).then_some(repair)
}

fn rows<'a>(page: &'a NotebookState, ids: &[RowId]) -> Option<Vec<&'a Row>> {
    ids.iter().map(|id| page.row(*id)).collect()
}

fn write(row: &Row, cell: Cell, text: &str) -> Edit {
    Edit::SetCell { row: row.id, cell, text: text.to_owned() }
}

/// A for B and B for A; none where an edge was not typed.
fn edges(page: &NotebookState, ids: &[RowId]) -> Option<Edit> {
    let rows = rows(page, ids)?;
    let typed = |row: &&Row| row.evidence.is_none() && row.text(Cell::Delay).is_empty();
    let edits = rows.iter().flat_map(|row| {
        [write(row, Cell::EdgeA, row.text(Cell::EdgeB)), write(row, Cell::EdgeB, row.text(Cell::EdgeA))]
    });
    rows.iter().all(typed).then(|| Edit::Together(edits.collect()))
}

/// Two rows with each other's positions, so that pictures and traces stay with their delays.
fn positions(page: &NotebookState, ids: &[RowId]) -> Option<Edit> {
    let [a, b] = rows(page, ids)?[..] else { return None };
    let cells = [Cell::Rail, Cell::Reading, Cell::Distance, Cell::DistanceUncertainty];
    let edits = cells.into_iter().filter(|cell| a.text(*cell) != b.text(*cell));
    let edits = edits.flat_map(|cell| [write(a, cell, b.text(cell)), write(b, cell, a.text(cell))]);
    Some(Edit::Together(edits.collect()))
}

fn turned(rail: &Rail) -> Edit {
    let sense = match rail.sense {
        Sense::Grows => Sense::Falls,
        Sense::Falls => Sense::Grows,
    };
    Edit::SetSense { rail: rail.id, sense }
}

/// The readings of a joint, each taken for the other rail's.
fn joint(rail: &Rail) -> Option<Edit> {
    let splice = match rail.splice.clone() {
        Splice::Overlap { pairs } => Splice::Overlap {
            pairs: pairs
                .into_iter()
                .map(|pair| OverlapPair { here: pair.before, before: pair.here })
                .collect(),
        },
        Splice::Joined { mark, mark_before, gap, uncertainty } => {
            Splice::Joined { mark: mark_before, mark_before: mark, gap, uncertainty }
        }
        _ => return None,
    };
    Some(Edit::SetSplice { rail: rail.id, splice })
}

/// A rail whose place is fitted with the line; none where it can't be put at the end of the one before to begin with.
fn fitted(page: &NotebookState, place: usize) -> Option<Edit> {
    let (rail, before) = (page.rails.get(place)?, page.rails.get(place.checked_sub(1)?)?);
    let mark = match &rail.splice {
        Splice::AtDistance { mark, .. } | Splice::Joined { mark, .. } => mark,
        Splice::Overlap { pairs } => &pairs.iter().find(|pair| !pair.here.trim().is_empty())?.here,
        _ => return None,
    };
    let has_ends = [RailField::From, RailField::To].iter().all(|end| before.texts.contains_key(end));
    has_ends.then(|| Edit::SetSplice { rail: rail.id, splice: Splice::Free { mark: mark.clone() } })
}

/// The rows on the next rail; where there is none, on a new one like theirs, whose place is fitted.
fn restart(page: &NotebookState, place: usize, ids: &[RowId], named: Value) -> Option<(Message, Edit)> {
    let n = ids.len();
    let (name, does, mut edits) = if let Some(next) = page.rails.get(place + 1) {
        let name = next.name_or_number(place + 1);
        (name.clone(), message!("repair-next-rail", n = n, rows = named, rail = name), Vec::new())
    } else {
        let edits = one_more_like(page.rails.get(place)?, page)?;
        ((place + 2).to_string(), message!("repair-new-rail", n = n, rows = named), edits)
    };
    edits.extend(rows(page, ids)?.into_iter().map(|row| write(row, Cell::Rail, &name)));
    Some((does, Edit::Together(edits)))
}

fn one_more_like(like: &Rail, page: &NotebookState) -> Option<Vec<Edit>> {
    let rail: RailId = page.new_number();
    let near = if like.sense == Sense::Grows { RailField::From } else { RailField::To };
    let mark = like.texts.get(&near)?.clone();
    let mut edits = vec![
        Edit::AddRail(rail),
        Edit::SetRulerUnit { rail, unit: like.unit },
        Edit::SetSense { rail, sense: like.sense },
        Edit::SetSplice { rail, splice: Splice::Free { mark } },
    ];
    let of: [fn(u32) -> UncertaintyOf; 2] = [UncertaintyOf::RulerReading, UncertaintyOf::RulerScale];
    edits.extend(of.map(|of| Edit::SetKind { of: of(rail), kind: page.kind(of(like.id)) }));
    let told = like.texts.iter().filter(|(field, _)| **field != RailField::Name);
    edits.extend(told.map(|(field, text)| Edit::SetRail { rail, field: *field, text: text.clone() }));
    Some(edits)
}
