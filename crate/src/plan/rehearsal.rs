//! A rehearsal: the whole lab on a simulated copy of the bench that a notebook describes.
//!
//! What is drawn is what the budget lists, no more and no less: each error that rows share once, each row's own errors
//! for itself, the edges within the limit to which they are read, a delay t₀ at zero distance, and steps where a place
//! is said to be unknown. The speed of light is c₀. Every shared error is drawn from a stream of its own, known by the name
//! of the error, so that what was so can be told again from the seed alone; every row has one, too, so that what one row
//! shows of its numbers tells nothing of another's.
//!
//! A data set is drawn alike, from a secret that stands in no notebook. Where its delays are handed over as pictures or traces,
//! nothing of reading them is drawn here.

use slope_archive::sha256;
use slope_evidence::row_truth::RowTruth;

use super::stop::{PlanContext, PlannedStop, first_row, position, with_rows};
use super::{planned, spread};
use crate::analysis::parts::Shared;
use crate::analysis::setup::Setup;
use crate::analysis::trials::shape;
use crate::analysis::{Origin, Quantity, Refusal, RowError, RowPart, RowReading, prepare};
use crate::budget::Random;
use crate::message;
use crate::notebook::{
    ActsOn, BenchField, Cell, Edit, Evidence, Notebook, NotebookState, PlannedPosition, Rail, RailId, Row,
    RowId, Scope, SharedError, TraceDelay, TraceTime, Traces,
};
use crate::quantity::{DecimalMark, Unit, fixed};

/// Standard deviation of a step that nobody knows, m.
const STEP: f64 = 0.02;

/// From what everything is drawn.
#[derive(Clone, Copy, Debug)]
enum Draws<'a> {
    /// A seed, which stands in the notebook.
    Seed(u32),
    /// A secret, which does not, so that nobody can tell without it what was drawn.
    Secret(&'a str),
}

impl Draws<'_> {
    /// The numbers that belong to something of a name.
    fn stream(self, name: &str) -> Random {
        match self {
            Self::Seed(seed) => {
                // FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo; IETF draft-eastlake-fnv).
                let hash = name.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
                    (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
                });
                Random::new(u64::from(seed), hash)
            }
            Self::Secret(secret) => {
                // The last 128 bits of the digest.
                let digest = sha256([secret, name].concat().as_bytes());
                let (seed, stream) = digest.iter().fold((0_u64, 0_u64), |(high, low), byte| {
                    ((high << 8) | (low >> 56), (low << 8) | u64::from(*byte))
                });
                Random::new(seed, stream)
            }
        }
    }
}

/// As what the delays of a data set are handed over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SetForm {
    /// Edges read on a screen, typed.
    Typed,
    /// Photographs of a screen, to be marked.
    Photographs,
    /// Recorded traces, to be measured.
    Traces,
}

/// What was really so in a rehearsal.
#[derive(Clone, Debug, PartialEq)]
pub struct RehearsalTruth {
    /// Delay at zero distance, ns.
    pub t0: f64,
    /// Each error that rows share.
    pub errors: Vec<DrawnError>,
    /// How much farther out than said each rail with a free step stood, m.
    pub steps: Vec<(RailId, f64)>,
}

/// An error that rows share, as it was drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnError {
    /// From where it comes.
    pub origin: Origin,
    /// Its size, in the unit of `quantity`.
    pub size: f64,
    /// Its standard uncertainty as stated.
    pub u: f64,
    /// What kind of quantity it is.
    pub quantity: Quantity,
}

/// A data set, and what is really so in it.
#[derive(Clone, Debug, PartialEq)]
pub struct DataSet {
    /// All of its notebook at one stroke, but for pictures and traces.
    pub edit: Edit,
    /// What is really so at each row: before this a camera or a recorder would stand.
    pub rows: Vec<RowTruth>,
    /// What is really so in all of it.
    pub truth: RehearsalTruth,
}

/// The edit with which the notebook of a rehearsal begins: the same bench, the positions `planned`, and readings drawn
/// from `seed`. It is all of the notebook at one stroke, so that the readings never stand without the word that they are a
/// rehearsal's.
///
/// # Errors
/// Why nothing can be rehearsed yet, and what to do.
pub fn rehearsal(
    page: &NotebookState,
    title: String,
    planned: Vec<PlannedPosition>,
    seed: u32,
) -> Result<Edit, Refusal> {
    let Run { rows, .. } = run(page, Draws::Seed(seed), SetForm::Typed)?;
    let mut edits = vec![Edit::SetTitle(title), Edit::SetRehearsal(seed)];
    edits.extend(bench_again(page, planned));
    edits.extend(rows);
    Ok(Edit::Together(edits))
}

/// A data set on the same bench with the positions `planned`, drawn from a `secret`. Who prepared it measured nothing in it,
/// and is not named. Rows whose delays are handed over as pictures or traces say nothing of a delay yet, and nothing of
/// reading it was drawn: whoever takes the pictures or traces draws that.
///
/// # Errors
/// Why nothing can be drawn yet, and what to do.
pub fn data_set(
    page: &NotebookState,
    title: String,
    planned: Vec<PlannedPosition>,
    secret: &str,
    form: SetForm,
) -> Result<DataSet, Refusal> {
    let run = run(page, Draws::Secret(secret), form)?;
    let mut edits = vec![Edit::SetTitle(title)];
    edits.extend(bench_again(page, planned).filter(|edit| !names_people(edit)));
    // A hand-out may fix it.
    edits.push(Edit::SetEstimator(page.estimator));
    edits.extend(run.rows);
    Ok(DataSet { edit: Edit::Together(edits), rows: run.so, truth: run.truth })
}

fn names_people(edit: &Edit) -> bool {
    matches!(edit, Edit::SetBench { field: BenchField::People, .. })
}

/// The same bench, described anew.
fn bench_again(page: &NotebookState, planned: Vec<PlannedPosition>) -> impl Iterator<Item = Edit> {
    let mut edits =
        vec![Edit::SetDecimalMark(page.decimal_mark), Edit::SetPath(page.path), Edit::SetBeam(page.beam)];
    edits.extend(page.bench.iter().map(|(field, text)| Edit::SetBench { field: *field, text: text.clone() }));
    edits.extend(page.rails.iter().flat_map(rail_again));
    edits.extend(page.settings.iter().cloned().map(Edit::SetSetting));
    edits.extend(page.kinds.iter().map(|(of, kind)| Edit::SetKind { of: *of, kind: *kind }));
    edits.extend(page.shared.iter().filter(|shared| has_rows_here(shared)).cloned().map(Edit::SetShared));
    edits.extend(planned.into_iter().map(Edit::SetPosition));
    edits.into_iter()
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

/// A run on the simulated bench.
#[derive(Debug)]
struct Run {
    /// What a person would write of each row: rail and reading, and of a screen the time base; both edges where delays are
    /// typed.
    rows: Vec<Edit>,
    /// What is really so at each.
    so: Vec<RowTruth>,
    /// What is really so in all of it.
    truth: RehearsalTruth,
}

/// The run that a person would make on the bench and by the plan of `page`. The bench's errors are drawn, too; where
/// nothing is planned, rows spread over all rails are read.
fn run(page: &NotebookState, draws: Draws, form: SetForm) -> Result<Run, Refusal> {
    let mut page = with_rows(page, Vec::new(), page.plan.clone());
    page.shared.retain(has_rows_here);
    let context = PlanContext::of(&page)?;
    let mut stops = planned(&context);
    if stops.len() < 2 {
        stops = spread(&context);
    }
    read(&context, &stops, draws, form)
}

/// What is drawn once for all rows.
struct CommonDraws {
    t0: f64,
    /// In standard deviations, in the order of the shared errors of the fit.
    errors: Vec<f64>,
    /// In metres, in the order of its free columns.
    steps: Vec<f64>,
}

fn drawn(draws: Draws, page: &NotebookState, setup: &Setup) -> CommonDraws {
    let error = |shared: &Shared| {
        shape(shared.shape, shared.degrees_of_freedom).draw(&mut draws.stream(&shared.origin.id()))
    };
    let step = |rail: &usize| STEP * draws.stream(&format!("step-{}", page.rails[*rail].id)).normal();
    CommonDraws {
        t0: 0.5 + 1.5 * draws.stream("t0").unit(),
        errors: setup.shared.iter().map(error).collect(),
        steps: setup.free.iter().map(step).collect(),
    }
}

impl CommonDraws {
    fn truth(&self, page: &NotebookState, setup: &Setup) -> RehearsalTruth {
        let error = |(of, z): (&Shared, &f64)| DrawnError {
            origin: of.origin.clone(),
            size: z * of.u,
            u: of.u,
            quantity: of.quantity,
        };
        let steps = setup.free.iter().zip(&self.steps);
        RehearsalTruth {
            t0: self.t0,
            errors: setup.shared.iter().zip(&self.errors).map(error).collect(),
            steps: steps.map(|(rail, step)| (page.rails[*rail].id, *step)).collect(),
        }
    }

    /// Where the carriage really is at a row, m, and the delay, ns, with what is drawn for all rows.
    fn moved(&self, setup: &Setup, row: usize, mut place: f64, mut delay: f64) -> (f64, f64) {
        for (shared, z) in setup.shared.iter().zip(&self.errors) {
            place -= z * shared.column.x_at(row);
            delay += z * shared.column.y_at(row);
        }
        for (column, step) in setup.data.free.iter().zip(&self.steps) {
            place -= step * column.entries()[row];
        }
        (place, delay)
    }
}

/// How far off its place a row is read, m, and its delay, ns, with the errors that it has for itself. Reading a screen or a
/// trace is drawn where that is read.
fn with_own_errors(setup: &Setup, row: usize, mut delay: f64, random: &mut Random) -> (f64, f64) {
    let mut off = 0.0;
    let is_drawn = |origin: &Origin| !matches!(origin, Origin::ScreenLimit | Origin::Traces);
    for noise in setup.noises.iter().filter(|noise| is_drawn(&noise.origin)) {
        let z = shape(noise.shape, noise.degrees_of_freedom).draw(random);
        match noise.acts_on {
            ActsOn::Distances => off += z * noise.u[row],
            ActsOn::Delays => delay += z * noise.u[row],
        }
    }
    (off, delay)
}

fn read(context: &PlanContext, stops: &[PlannedStop], draws: Draws, form: SetForm) -> Result<Run, Refusal> {
    let page = context.page;
    let mut rows = Vec::new();
    for (id, stop) in (first_row(page)..).zip(stops) {
        rows.push(expected_row(context, id, stop, form));
    }
    let expected = with_rows(page, rows, Vec::new());
    let prepared = prepare(&expected, None);
    all_are_read(&prepared.rows.readings)?;
    let (setup, lengthening) = (prepared.setup?, prepared.lengthening);
    let bench = &prepared.context.bench;
    let all = drawn(draws, page, &setup);
    let stretch = 1.0 + lengthening * draws.stream("beam").unit();
    let mut run = Run { rows: Vec::new(), so: Vec::new(), truth: all.truth(page, &setup) };
    for (row, (id, stop)) in (1..).zip(stops).enumerate() {
        let mut random = draws.stream(&format!("row-{row}"));
        let (own_x, delay) = with_own_errors(&setup, row, all.t0, &mut random);
        let (place, mut delay) = all.moved(&setup, row, stop.distance, delay);
        delay += context.model.slope * place * stretch;
        let begins = 0.3 + 0.4 * random.unit();
        let time_base =
            context.time(&stop.time_base).ok_or_else(|| not_read(&RowError::TimeBaseUnreadable))?;
        let ends = begins + delay / time_base;
        let mut edge = |divisions: f64| {
            let seen = divisions + bench.half_width * (2.0 * random.unit() - 1.0);
            fixed(seen, -3, page.decimal_mark)
        };
        let (a, b) = (edge(begins), edge(ends));
        let position = position(page, 0, stop);
        let cells = [
            (Cell::Rail, position.rail),
            (Cell::Reading, reading(context, stop, own_x)),
            (Cell::TimeBase, position.time_base),
            (Cell::EdgeA, a),
            (Cell::EdgeB, b),
        ];
        let cells = cells.into_iter().take(written(form)).collect();
        run.rows.push(Edit::AddRow { row: id, after: None, cells });
        let screen_width = bench.screen_width;
        run.so.push(RowTruth { row: id, distance: stop.distance, delay, time_base, screen_width });
    }
    Ok(run)
}

/// How many cells of a row are written: those of its place, of the screen, of its edges.
const fn written(form: SetForm) -> usize {
    match form {
        SetForm::Traces => 2,
        SetForm::Photographs => 3,
        SetForm::Typed => 5,
    }
}

/// The row that is expected at a stop. One with traces is timed by the recorder's clock, any other by that of the screen.
fn expected_row(context: &PlanContext, id: RowId, stop: &PlannedStop, form: SetForm) -> Row {
    let mut row = context.row(id, stop, &context.model);
    if form == SetForm::Traces {
        for cell in [Cell::TimeBase, Cell::EdgeA, Cell::EdgeB] {
            row.cells.remove(&cell);
        }
        let value = fixed(context.model.delay(stop.distance), -6, DecimalMark::Point);
        // Any uncertainty does: of the row's own errors it is the one that is not drawn here.
        let delay = Some(TraceTime { value, uncertainty: "0.01".into() });
        let found = TraceDelay { estimator: context.page.estimator, delay, remarks: Vec::new() };
        row.evidence = Some(Evidence::Traces(Traces {
            files: Vec::new(),
            delays: vec![found],
            layouts: Vec::new(),
            walk: None,
        }));
    }
    row
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
    Refusal::new("row_not_read", message!("plan-no_rehearsal", why = lacks.message()))
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

/// What was really so in a rehearsal; none in any other notebook.
pub fn truth(notebook: &Notebook) -> Option<RehearsalTruth> {
    // As it was made: what was stated since then says nothing of what was drawn.
    let page = notebook.first_page();
    let seed = page.rehearsal?;
    let setup = prepare(&page, None).setup.ok()?;
    Some(drawn(Draws::Seed(seed), &page, &setup).truth(&page, &setup))
}

#[cfg(test)]
#[path = "rehearsal_test.rs"]
pub(crate) mod tests;
