//! A rehearsal: the whole lab on a simulated copy of the bench that a notebook describes.
//!
//! What is drawn is what the budget lists, no more and no less: each error that rows share once, each row's own errors
//! for itself, the edges within the limit to which they are read, a delay t₀ at zero distance, and steps where a place
//! is said to be unknown. The speed of light is c₀. Every shared error is drawn from a stream of its own of the seed,
//! known by the name of the error, so that what was so can be told again from the seed alone.

use litemap::LiteMap;

use super::spot::{Ground, Spot, first_row, position, with_rows};
use super::{planned, spread};
use crate::analysis::trials::shape;
use crate::analysis::{Origin, Quantity, Refusal, Sight, sight};
use crate::budget::Random;
use crate::line::FreeColumn;
use crate::notebook::{Cell, Edit, EditError, Notebook, Page, RailId, Scope};
use crate::quantity::{Unit, fixed};

/// Standard deviation of a step that nobody knows, m.
const STEP: f64 = 0.02;

/// What was really so in a rehearsal.
#[derive(Clone, Debug, PartialEq)]
pub struct Truth {
    /// Delay at zero distance, ns.
    pub t0: f64,
    /// Each error that rows share, with its size in the unit of its quantity, and its standard uncertainty as stated.
    pub errors: Vec<(Origin, f64, f64, Quantity)>,
    /// How much farther out than said each rail with a free step stood, m.
    pub steps: Vec<(RailId, f64)>,
}

/// A new notebook with the bench and the plan of `page`, and readings simulated from `seed`. Where nothing is planned,
/// rows spread over all rails are read.
///
/// # Errors
/// Why nothing can be rehearsed yet, and what to do.
pub fn rehearse(page: &Page, title: &str, seed: u32) -> Result<Notebook, Refusal> {
    // An error of chosen rows has no rows here.
    let shared =
        page.shared.iter().filter(|shared| !matches!(shared.rows, Scope::Rows(_))).cloned().collect();
    let page = Page { shared, ..with_rows(page, Vec::new(), page.plan.clone()) };
    let ground = Ground::of(&page)?;
    let mut spots = planned(&ground);
    let mut plan = page.plan.clone();
    if spots.len() < 2 {
        spots = spread(&ground);
        plan = (1..).zip(&spots).map(|(id, spot)| position(&page, id, spot)).collect();
    }
    let rows = read(&ground, &spots, seed)?;
    let mut edits = vec![
        Edit::SetTitle(title.to_owned()),
        Edit::SetRehearsal(seed),
        Edit::SetDecimalMark(page.decimal_mark),
        Edit::SetPath(page.path),
    ];
    edits.extend(page.bench.iter().map(|(field, text)| Edit::SetBench { field: *field, text: text.clone() }));
    for rail in &page.rails {
        let id = rail.id;
        edits.extend([
            Edit::AddRail(id),
            Edit::SetRulerUnit { rail: id, unit: rail.unit },
            Edit::SetSense { rail: id, sense: rail.sense },
            Edit::SetSplice { rail: id, splice: rail.splice.clone() },
        ]);
        let texts = rail.texts.iter();
        edits.extend(texts.map(|(field, text)| Edit::SetRail {
            rail: id,
            field: *field,
            text: text.clone(),
        }));
    }
    edits.extend(page.settings.iter().cloned().map(Edit::SetSetting));
    edits.extend(page.shared.iter().cloned().map(Edit::SetShared));
    edits.extend(plan.into_iter().map(Edit::SetPosition));
    edits.extend((1..).zip(rows).map(|(row, cells)| Edit::AddRow { row, after: None, cells }));
    let mut notebook = Notebook::new();
    // At one stroke, so that no readings are left without the word that they are a rehearsal's.
    let done = notebook.apply(Edit::Together(edits), "");
    done.map_err(|error: EditError| refuse(&error.to_string()))?;
    Ok(notebook)
}

fn refuse(message: &str) -> Refusal {
    Refusal { id: "no_rehearsal".into(), rows: Vec::new(), message: message.into() }
}

/// The numbers that belong to something of a name.
fn stream(seed: u32, name: &str) -> Random {
    // FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo; IETF draft-eastlake-fnv).
    let hash = name.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    Random::new(u64::from(seed), hash)
}

/// What is drawn once for all rows.
struct Drawn {
    t0: f64,
    /// In standard deviations, in the order of the shared errors of the fit.
    errors: Vec<f64>,
    /// In metres, in the order of its free columns.
    steps: Vec<f64>,
}

fn drawn(seed: u32, page: &Page, setup: &crate::analysis::line::Setup) -> Drawn {
    let error = |shared: &crate::analysis::parts::Shared| {
        shape(shared.shape, shared.degrees_of_freedom).draw(&mut stream(seed, &shared.origin.id()))
    };
    let step = |rail: &usize| {
        let id = page.rails.get(*rail).map_or(0, |rail| rail.id);
        STEP * stream(seed, &format!("step-{id}")).normal()
    };
    Drawn {
        t0: 0.5 + 1.5 * stream(seed, "t0").unit(),
        errors: setup.shared.iter().map(error).collect(),
        steps: setup.free.iter().map(step).collect(),
    }
}

/// The cells of each row, as a person would read them.
fn read(ground: &Ground, spots: &[Spot], seed: u32) -> Result<Vec<LiteMap<Cell, String>>, Refusal> {
    let page = ground.page;
    let rows = (first_row(page)..).zip(spots).map(|(id, spot)| ground.row(id, spot, &ground.model));
    let Sight { setup, bench, beam_angle, .. } = sight(&with_rows(page, rows.collect(), Vec::new()));
    let setup = setup?;
    let all = drawn(seed, page, &setup);
    let mut random = stream(seed, "rows");
    let at = |list: &[f64], row: usize| list.get(row).copied().unwrap_or(0.0);
    let stretch = 1.0 + beam_angle * beam_angle / 2.0 * random.unit();
    let mut read = Vec::with_capacity(spots.len());
    for (row, spot) in spots.iter().enumerate() {
        let (mut own_x, mut delay) = (0.0, all.t0);
        for noise in setup.noises.iter().filter(|noise| noise.origin != Origin::ScreenLimit) {
            let z = shape(noise.shape, noise.degrees_of_freedom).draw(&mut random);
            own_x += z * at(&noise.x, row);
            delay += z * at(&noise.y, row);
        }
        let mut place = spot.distance;
        for (shared, z) in setup.shared.iter().zip(&all.errors) {
            place -= z * at(&shared.column.x, row);
            delay += z * at(&shared.column.y, row);
        }
        for (column, step) in setup.data.free.iter().zip(&all.steps) {
            if let FreeColumn::InX(entries) = column {
                place -= step * at(entries, row);
            }
        }
        delay += ground.model.slope * place * stretch;
        let mut edge = || 2.0 * bench.half_width * random.unit() - bench.half_width;
        let (a, b) = (edge(), edge());
        let begins = 0.3 + 0.4 * random.unit();
        let time = ground.time(&spot.time_base).ok_or_else(|| refuse("a time base can’t be read"))?;
        let screen = |divisions: f64| fixed(divisions, -3, page.decimal_mark);
        read.push(LiteMap::from_iter([
            (
                Cell::Rail,
                page.rails.get(spot.rail).map(|rail| rail.name_or_number(spot.rail)).unwrap_or_default(),
            ),
            (Cell::Reading, reading(ground, spot, own_x)),
            (Cell::TimeBase, spot.time_base.clone()),
            (Cell::EdgeA, screen(begins + a)),
            (Cell::EdgeB, screen(begins + delay / time + b)),
        ]));
    }
    Ok(read)
}

/// What a ruler is read to show, to the place of its uncertainty.
fn reading(ground: &Ground, spot: &Spot, error: f64) -> String {
    let stand = ground.stands.get(spot.rail).and_then(Option::as_ref);
    let rail = ground.page.rails.get(spot.rail);
    let Some((stand, rail)) = stand.zip(rail) else { return spot.reading.clone() };
    let unit: Unit = crate::analysis::read::ruler_unit(rail.unit);
    let finest = libm::floor(libm::log10(unit.from_base(stand.u_reading.max(1e-6))));
    #[expect(clippy::cast_possible_truncation, reason = "the logarithm of a length on a bench")]
    let place = (finest as i32).min(0);
    fixed(unit.from_base(stand.reading(spot.distance + error)), place, ground.page.decimal_mark)
}

/// What was really so in a rehearsal; none in any other notebook.
pub fn truth(notebook: &Notebook) -> Option<Truth> {
    // As it was made: what was stated since then says nothing of what was drawn.
    let made = Notebook::from_log(notebook.log().get(..1)?.to_vec()).ok()?;
    let page = made.page();
    let seed = page.rehearsal?;
    let setup = sight(page).setup.ok()?;
    let all = drawn(seed, page, &setup);
    let errors = setup.shared.iter().zip(&all.errors);
    let steps = setup.free.iter().zip(&all.steps);
    Some(Truth {
        t0: all.t0,
        errors: errors.map(|(of, z)| (of.origin.clone(), z * of.u, of.u, of.quantity)).collect(),
        steps: steps.filter_map(|(rail, step)| Some((page.rails.get(*rail)?.id, *step))).collect(),
    })
}

#[cfg(test)]
#[path = "rehearsal_test.rs"]
mod tests;
