//! A rehearsal: the whole lab on a simulated copy of the bench that a notebook describes.
//!
//! What is drawn is what the budget lists, no more and no less: each error that rows share once, each row's own errors
//! for itself, the edges within the limit to which they are read, a delay t₀ at zero distance, and steps where a place
//! is said to be unknown. The speed of light is c₀. Every shared error is drawn from a stream of its own, known by the name
//! of the error, so that what was so can be told again from the seed alone; every row has one, too, so that what one row
//! shows of its numbers tells nothing of another's.

use sha2::{Digest, Sha256};

use super::stop::{PlanContext, PlannedStop, first_row, position, with_rows};
use super::{planned, spread};
use crate::analysis::trials::shape;
use crate::analysis::{Origin, Quantity, Refusal, RowError, RowPart, RowReading, prepare};
use crate::budget::Random;
use crate::message;
use crate::notebook::{
    ActsOn, Cell, Edit, Notebook, NotebookState, PlannedPosition, Rail, RailId, Scope, SharedError,
};
use crate::quantity::{Unit, fixed};

/// Standard deviation of a step that nobody knows, m.
const STEP: f64 = 0.02;

/// From what everything is drawn: a seed, which stands in the notebook; or a secret, which does not, so that nobody can tell
/// without it what was drawn.
#[derive(Clone, Copy, Debug)]
struct Draws<'a> {
    seed: u32,
    /// Empty where there is none.
    secret: &'a str,
}

impl Draws<'_> {
    /// The numbers that belong to something of a name.
    fn stream(self, name: &str) -> Random {
        if self.secret.is_empty() {
            // FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo; IETF draft-eastlake-fnv).
            let hash = name.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
                (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
            });
            return Random::new(u64::from(self.seed), hash);
        }
        // The last 128 bits of the digest.
        let digest = Sha256::digest([self.secret, name].concat().as_bytes());
        let (seed, stream) = digest.iter().fold((0_u64, 0_u64), |(high, low), byte| {
            ((high << 8) | (low >> 56), (low << 8) | u64::from(*byte))
        });
        Random::new(seed, stream)
    }
}

/// What was really so in a rehearsal.
#[derive(Clone, Debug, PartialEq)]
pub struct RehearsalTruth {
    /// Delay at zero distance, ns.
    pub t0: f64,
    /// Each error that rows share, with its size in the unit of its quantity, and its standard uncertainty as stated.
    pub errors: Vec<(Origin, f64, f64, Quantity)>,
    /// How much farther out than said each rail with a free step stood, m.
    pub steps: Vec<(RailId, f64)>,
}

/// The edit with which the notebook of a rehearsal begins: the same bench, the positions `planned`, and readings drawn
/// from `seed`, or from a `secret` where that is not empty. It is all of the notebook at one stroke, so that the readings
/// never stand without the word that they are a rehearsal's.
///
/// # Errors
/// Why nothing can be rehearsed yet, and what to do.
pub fn rehearsal(
    page: &NotebookState,
    title: String,
    planned: Vec<PlannedPosition>,
    seed: u32,
    secret: &str,
) -> Result<Edit, Refusal> {
    let rows = rehearse(page, Draws { seed, secret })?;
    let mut edits = vec![
        Edit::SetTitle(title),
        Edit::SetRehearsal(seed),
        Edit::SetDecimalMark(page.decimal_mark),
        Edit::SetPath(page.path),
        Edit::SetBeam(page.beam),
    ];
    edits.extend(page.bench.iter().map(|(field, text)| Edit::SetBench { field: *field, text: text.clone() }));
    edits.extend(page.rails.iter().flat_map(rail_again));
    edits.extend(page.settings.iter().cloned().map(Edit::SetSetting));
    edits.extend(page.kinds.iter().map(|(of, kind)| Edit::SetKind { of: *of, kind: *kind }));
    edits.extend(page.shared.iter().filter(|shared| has_rows_here(shared)).cloned().map(Edit::SetShared));
    edits.extend(planned.into_iter().map(Edit::SetPosition));
    edits.extend((1..).zip(rows).map(|(row, texts)| {
        let cells = [Cell::Rail, Cell::Reading, Cell::TimeBase, Cell::EdgeA, Cell::EdgeB];
        Edit::AddRow { row, after: None, cells: cells.into_iter().zip(texts).collect() }
    }));
    Ok(Edit::Together(edits))
}

fn rail_again(rail: &Rail) -> Vec<Edit> {
    let Rail { id, unit, sense, splice, texts, called: _ } = rail.clone();
    let mut edits = vec![
        Edit::AddRail(id),
        Edit::SetRulerUnit { rail: id, unit },
        Edit::SetSense { rail: id, sense },
        Edit::SetSplice { rail: id, splice },
    ];
    edits.extend(texts.into_iter().map(|(field, text)| Edit::SetRail { rail: id, field, text }));
    edits
}

/// An error of chosen rows has no rows in a rehearsal.
fn has_rows_here(shared: &SharedError) -> bool {
    !matches!(shared.rows, Scope::Rows(_))
}

/// The rows that a person would write on the bench and by the plan of `page`: rail, reading, time base and both edges of
/// each. The bench's errors are drawn, too; where nothing is planned, rows spread over all rails are read.
fn rehearse(page: &NotebookState, draws: Draws) -> Result<Vec<[String; 5]>, Refusal> {
    let mut page = with_rows(page, Vec::new(), page.plan.clone());
    page.shared.retain(has_rows_here);
    let context = PlanContext::of(&page)?;
    let mut stops = planned(&context);
    if stops.len() < 2 {
        stops = spread(&context);
    }
    read(&context, &stops, draws)
}

/// What is drawn once for all rows.
struct CommonDraws {
    t0: f64,
    /// In standard deviations, in the order of the shared errors of the fit.
    errors: Vec<f64>,
    /// In metres, in the order of its free columns.
    steps: Vec<f64>,
}

fn drawn(draws: Draws, page: &NotebookState, setup: &crate::analysis::setup::Setup) -> CommonDraws {
    let error = |shared: &crate::analysis::parts::Shared| {
        shape(shared.shape, shared.degrees_of_freedom).draw(&mut draws.stream(&shared.origin.id()))
    };
    let step = |rail: &usize| STEP * draws.stream(&format!("step-{}", page.rails[*rail].id)).normal();
    CommonDraws {
        t0: 0.5 + 1.5 * draws.stream("t0").unit(),
        errors: setup.shared.iter().map(error).collect(),
        steps: setup.free.iter().map(step).collect(),
    }
}

fn read(context: &PlanContext, stops: &[PlannedStop], draws: Draws) -> Result<Vec<[String; 5]>, Refusal> {
    let page = context.page;
    let mut rows = Vec::new();
    for (id, stop) in (first_row(page)..).zip(stops) {
        rows.push(context.row(id, stop, &context.model));
    }
    let expected = with_rows(page, rows, Vec::new());
    let prepared = prepare(&expected, None);
    all_are_read(&prepared.rows.readings)?;
    let (setup, lengthening) = (prepared.setup?, prepared.lengthening);
    let all = drawn(draws, page, &setup);
    let stretch = 1.0 + lengthening * draws.stream("beam").unit();
    let mut read = Vec::new();
    for (row, stop) in stops.iter().enumerate() {
        let mut random = draws.stream(&format!("row-{row}"));
        let (mut own_x, mut delay) = (0.0, all.t0);
        for noise in setup.noises.iter().filter(|noise| noise.origin != Origin::ScreenLimit) {
            let z = shape(noise.shape, noise.degrees_of_freedom).draw(&mut random);
            match noise.acts_on {
                ActsOn::Distances => own_x += z * noise.u[row],
                ActsOn::Delays => delay += z * noise.u[row],
            }
        }
        let mut place = stop.distance;
        for (shared, z) in setup.shared.iter().zip(&all.errors) {
            place -= z * shared.column.x_at(row);
            delay += z * shared.column.y_at(row);
        }
        for (column, step) in setup.data.free.iter().zip(&all.steps) {
            place -= step * column.entries()[row];
        }
        delay += context.model.slope * place * stretch;
        let begins = 0.3 + 0.4 * random.unit();
        let per_division =
            context.time(&stop.time_base).ok_or_else(|| not_read(&RowError::TimeBaseUnreadable))?;
        let ends = begins + delay / per_division;
        let mut edge = |divisions: f64| {
            let seen = divisions + prepared.context.bench.half_width * (2.0 * random.unit() - 1.0);
            fixed(seen, -3, page.decimal_mark)
        };
        let (a, b) = (edge(begins), edge(ends));
        let position = position(page, 0, stop);
        read.push([position.rail, reading(context, stop, own_x), position.time_base, a, b]);
    }
    Ok(read)
}

/// Errors are drawn for the rows of the line: each place must give one, or they would go to other rows than theirs.
fn all_are_read(readings: &[RowReading]) -> Result<(), Refusal> {
    for reading in readings {
        if let RowPart::Incomplete { lacks } = &reading.part {
            return Err(not_read(lacks));
        }
    }
    Ok(())
}

fn not_read(lacks: &RowError) -> Refusal {
    let message = message!("plan-no_rehearsal", why = lacks.message());
    Refusal { id: "row_not_read".into(), rows: Vec::new(), message }
}

/// What a ruler is read to show, to the place of its uncertainty.
fn reading(context: &PlanContext, stop: &PlannedStop, error: f64) -> String {
    let stand = context.stands.get(stop.rail).and_then(Option::as_ref);
    let rail = context.page.rails.get(stop.rail);
    let Some((stand, rail)) = stand.zip(rail) else { return stop.reading.clone() };
    let unit: Unit = crate::analysis::read::ruler_unit(rail.unit);
    let (mut place, mut digit) = (0, 1.0);
    while digit > unit.from_base(stand.u_reading) && place > -6 {
        place -= 1;
        digit /= 10.0;
    }
    fixed(unit.from_base(stand.reading(stop.distance + error)), place, context.page.decimal_mark)
}

/// What was really so in a rehearsal, drawn from a `secret` where that is not empty; none in any other notebook.
pub fn truth(notebook: &Notebook, secret: &str) -> Option<RehearsalTruth> {
    // As it was made: what was stated since then says nothing of what was drawn.
    let page = notebook.first_page();
    let seed = page.rehearsal?;
    let setup = prepare(&page, None).setup.ok()?;
    let all = drawn(Draws { seed, secret }, &page, &setup);
    let errors = setup.shared.iter().zip(&all.errors);
    let steps = setup.free.iter().zip(&all.steps);
    Some(RehearsalTruth {
        t0: all.t0,
        errors: errors.map(|(of, z)| (of.origin.clone(), z * of.u, of.u, of.quantity)).collect(),
        steps: steps.map(|(rail, step)| (page.rails[*rail].id, *step)).collect(),
    })
}

#[cfg(test)]
#[path = "rehearsal_test.rs"]
pub(crate) mod tests;
