//! Places on the rails, and the rows that would be read there.

use litemap::LiteMap;

use crate::air;
use crate::analysis::context::RowContext;
use crate::analysis::read::{BenchNumbers, RailNumbers, ruler_unit};
use crate::analysis::{C0, Refusal, prepare};
use crate::message;
use crate::notebook::{Cell, NotebookState, PlannedPosition, PositionId, Row, RowId};
use crate::quantity::{Unit, fixed, in_unit, parse_alone};
use crate::rail::{self, Stand};

/// Share of the screen that a delay may take up, which leaves room for t₀ and for the edges themselves (common
/// practice, no source).
const ROOM: f64 = 0.8;
/// Room left on the screen for a t₀ that nobody knows yet, ns (common practice, no source).
const UNKNOWN_T0: f64 = 2.0;

/// Where proposals begin on a rail that reaches to the splitter, as a share of its far end (common practice, no source).
const CLEAR: f64 = 0.05;

/// A place at which the carriage may stand.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedStop {
    /// Place of the rail among the rails.
    pub rail: usize,
    /// Rail reading as it is typed.
    pub reading: String,
    /// Distance from the splitter, m.
    pub distance: f64,
    /// Time per division as it is typed.
    pub time_base: String,
}

/// The straight line that rows are expected to lie on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Model {
    /// t₀, ns.
    pub t0: f64,
    /// b, ns/m.
    pub slope: f64,
}

impl Model {
    /// The delay at a distance (m), ns.
    pub fn delay(&self, distance: f64) -> f64 {
        self.t0 + self.slope * distance
    }
}

/// The bench that a plan stands on.
pub struct PlanContext<'a> {
    /// The notebook.
    pub page: &'a NotebookState,
    /// The bench in numbers.
    pub bench: BenchNumbers,
    /// The rails in numbers.
    pub rails: Vec<RailNumbers>,
    /// Where the rails stand.
    pub stands: Vec<Option<Stand>>,
    /// The line expected before anything is measured: t₀ = 0 and b = f·n_g/c₀.
    pub model: Model,
    /// Group index of the air.
    pub group_index: f64,
}

impl<'a> PlanContext<'a> {
    /// The bench as it is described.
    ///
    /// # Errors
    /// When no rail has a place and a span yet, or the air has no index.
    pub fn of(page: &'a NotebookState) -> Result<Self, Refusal> {
        let bare = with_rows(page, Vec::new(), Vec::new());
        let RowContext { bench, rails, stands, .. } = prepare(&bare, None).context;
        let group_index = air::group_index(&bench.air, bench.wavelength_nm)
            .map_err(|_| Refusal::new("no_air_index", message!("refusal-no_air_index")))?;
        let slope = page.path.factor() * group_index / C0 * 1e9;
        let context = Self { page, bench, rails, stands, model: Model { t0: 0.0, slope }, group_index };
        if page.rails.is_empty() {
            return Err(Refusal::new("no_rails", message!("plan-no_rails")));
        }
        if (0..page.rails.len()).all(|index| context.ends(index).is_none()) {
            return Err(Refusal::new("no_place", message!("plan-no_place")));
        }
        Ok(context)
    }

    /// Near and far end of a rail, m from the splitter; none while its place or its span is not known.
    pub fn ends(&self, index: usize) -> Option<(f64, f64)> {
        let rail = self.rails.get(index)?.rail.as_ref()?;
        let stand = self.stands.get(index)?.as_ref()?;
        rail::near_end(rail, stand).zip(rail::far_end(rail, stand)).filter(|(near, far)| far > near)
    }

    /// Pulse period, ns; none where no pulse rate is stated.
    pub fn period(&self) -> Option<f64> {
        self.bench.pulse_rate.map(|rate| 1e9 / rate)
    }

    /// The farthest distance whose delay stays below one pulse period, m.
    pub fn reach(&self) -> Option<f64> {
        self.period().map(|period| period / self.model.slope)
    }

    /// Whether the delay at a distance finds room on the screen at so many ns a division.
    pub fn holds(&self, distance: f64, time_per_division: f64) -> bool {
        self.least_time(distance) <= time_per_division
    }

    /// The fastest time base, of the steps 1, 2 and 5 that screens have (common practice, no source), that has room
    /// for the delay at a distance.
    pub fn fastest(&self, distance: f64) -> String {
        let (step, place) = round_step(self.least_time(distance), false);
        fixed(step, place.min(0), self.page.decimal_mark)
    }

    /// The least time per division, ns, at which the delay at a distance finds room on the screen.
    fn least_time(&self, distance: f64) -> f64 {
        (self.model.delay(distance).abs() + UNKNOWN_T0) / (ROOM * self.bench.screen_width)
    }

    /// A time per division as typed, ns.
    pub fn time(&self, text: &str) -> Option<f64> {
        parse_alone(text, self.page.decimal_mark, Unit::NANOSECOND).ok().filter(|time| *time > 0.0)
    }

    /// The place on a rail nearest to a distance at which the ruler shows a round reading, `parts` of them or more
    /// to its span; none off the rail.
    pub fn round_stop(&self, index: usize, distance: f64, parts: f64) -> Option<PlannedStop> {
        let (near, far) = self.ends(index)?;
        let stand = self.stands.get(index)?.as_ref()?;
        let (unit, step, place) = self.ruler_step(index, parts)?;
        let aim = unit.from_base(stand.reading(distance.clamp(near, far)));
        // One step inwards where rounding would leave the rail.
        [0.0, 1.0, -1.0].into_iter().find_map(|aside| {
            let reading = ((aim / step).round() + aside) * step;
            let distance = stand.distance(unit.to_base(reading));
            (distance >= near - 1e-9 && distance <= far + 1e-9).then(|| PlannedStop {
                rail: index,
                reading: fixed(reading, place.min(0), self.page.decimal_mark),
                distance,
                time_base: self.fastest(distance),
            })
        })
    }

    /// The unit of a ruler, and the step between its round readings in that unit with the place of its digit.
    fn ruler_step(&self, index: usize, parts: f64) -> Option<(Unit, f64, i32)> {
        let (near, far) = self.ends(index)?;
        let unit = self.page.rails.get(index).map(|rail| ruler_unit(rail.unit))?;
        let (step, place) = round_step(unit.from_base(far - near) / parts, true);
        Some((unit, step, place))
    }

    /// The step between two round readings of a rail, m.
    pub fn fine_step(&self, index: usize) -> Option<f64> {
        self.ruler_step(index, FINE).map(|(unit, step, _)| unit.to_base(step))
    }

    /// `count` places spread evenly over a rail, ends included; none at the splitter or before it, nor beyond the
    /// reach of the pulse rate.
    pub fn along(&self, index: usize, count: usize) -> Vec<PlannedStop> {
        let mut stops: Vec<PlannedStop> = Vec::new();
        let Some((near, far)) = self.ends(index) else { return stops };
        let reach = self.reach().unwrap_or(f64::INFINITY);
        let far = far.min(reach);
        // At the splitter itself there is no place for a carriage.
        let near = if near > 0.0 { near } else { CLEAR * far };
        for k in 0..count {
            let aim = near + k as f64 / (count.max(2) - 1) as f64 * (far - near);
            let Some(stop) = self.round_stop(index, aim, FINE) else { continue };
            let new = stops.last().is_none_or(|last| last.reading != stop.reading);
            if new && stop.distance > 0.0 && stop.distance < reach {
                stops.push(stop);
            }
        }
        stops
    }

    /// The same over all rails.
    pub fn everywhere(&self, count: usize) -> Vec<PlannedStop> {
        let mut stops = Vec::new();
        for rail in 0..self.rails.len() {
            stops.append(&mut self.along(rail, count));
        }
        stops
    }

    /// The row that would be read at a place, with edges that lie exactly on the line expected; without the second where
    /// its time base can't be read.
    pub fn row(&self, id: RowId, stop: &PlannedStop, model: &Model) -> Row {
        let mark = self.page.decimal_mark;
        let divisions = self.time(&stop.time_base).map(|time| model.delay(stop.distance) / time);
        let name = self.page.rails.get(stop.rail).map(|rail| rail.name_or_number(stop.rail));
        Row {
            id,
            cells: LiteMap::from_iter([
                (Cell::Rail, name.unwrap_or_default()),
                (Cell::Reading, stop.reading.clone()),
                (Cell::TimeBase, stop.time_base.clone()),
                (Cell::EdgeA, "0".to_owned()),
                (Cell::EdgeB, divisions.map_or_else(String::new, |b| in_unit(b, Unit::DIVISION, mark))),
            ]),
            ..Row::default()
        }
    }
}

/// How finely handles and proposals move along a rail: steps to its span.
pub const FINE: f64 = 150.0;

/// The same bench with other rows and another plan. Matrices stated for rows that are not there are left out.
pub fn with_rows(page: &NotebookState, rows: Vec<Row>, plan: Vec<PlannedPosition>) -> NotebookState {
    NotebookState { rows, plan, covariances: Vec::new(), ..page.clone() }
}

/// A number that no row of the notebook has: rows that are only thought of begin there, so that what is said of some
/// rows is not taken to be said of them.
pub fn first_row(page: &NotebookState) -> RowId {
    page.rows.iter().map(|row| row.id).max().unwrap_or(0).saturating_add(1)
}

/// Of 1, 2, 5, 10, 20 … the smallest that is at least so much (or, `below`, the largest that is at most so much), with
/// the decimal place of its digit.
fn round_step(limit: f64, below: bool) -> (f64, i32) {
    let (mut before, mut now) = ((1e-6, -6), (1e-6, -6));
    for (factor, places) in [(2.0, 0), (2.5, 0), (2.0, 1)].into_iter().cycle().take(54) {
        // A hair of rounding must not call for the next step.
        if now.0 * (1.0 + 1e-12) >= limit {
            break;
        }
        before = now;
        now = (now.0 * factor, now.1 + places);
    }
    if below && now.0 > limit * (1.0 + 1e-12) { before } else { now }
}

/// A planned position at a place.
pub fn position(page: &NotebookState, id: PositionId, stop: &PlannedStop) -> PlannedPosition {
    let rail = page.rails.get(stop.rail).map(|rail| rail.name_or_number(stop.rail)).unwrap_or_default();
    PlannedPosition {
        id,
        rail,
        reading: stop.reading.clone(),
        time_base: stop.time_base.clone(),
        repeats: String::new(),
    }
}
