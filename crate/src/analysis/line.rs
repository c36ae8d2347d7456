//! From the rows to the straight line Δt = t₀ + b·d, with every error that rows share in its covariance.

use super::checks::checks;
use super::read::Reader;
use super::rows::{Point, full_ux, full_uy};
use super::types::{LineAnalysis, Origin, Place, Refusal};
use crate::distribution::chi_square_sf;
use crate::line::{self, Column, Data, Dense, FreeColumn, LineError, Noise, Stated};
use crate::notebook::{ActsOn, Effect, Page, RowId, Scope, SharedError, StatedCovariance};
use crate::quantity::Unit;
use crate::rail::Source;

/// The line's input, and what its columns mean.
pub struct Setup {
    /// What goes into the engine.
    pub data: Data,
    /// The origins of the shared columns.
    pub shared: Vec<Origin>,
    /// The rails (by place) with a free column.
    pub free: Vec<usize>,
}

/// Fits the line to `points`.
///
/// # Errors
/// Why there is no line, naming the rows.
pub fn fit(page: &Page, points: &[Point], reader: &mut Reader) -> Result<LineAnalysis, Refusal> {
    let setup = setup(page, points, reader)?;
    let fit = line::fit(&setup.data).map_err(|error| refusal(&error, page, points))?;
    let stated = setup.data.noise != Noise::Unstated;
    let nu = fit.degrees_of_freedom;
    Ok(LineAnalysis {
        rows: points.iter().map(|p| p.row).collect(),
        distance: points.iter().map(|p| p.x).collect(),
        delay: points.iter().map(|p| p.y).collect(),
        u_distance: points.iter().map(|p| full_ux(p.ux, &p.effects).unwrap_or(0.0)).collect(),
        u_delay: points.iter().map(|p| full_uy(p.y, p.uy, p.time_base).unwrap_or(0.0)).collect(),
        stated,
        p_value: (stated && nu > 0).then(|| chi_square_sf(fit.chi_square, nu as f64)),
        birge_ratio: fit.scatter().filter(|_| stated),
        checks: checks(page, points, &setup, &fit),
        shared: setup.shared,
        free: setup.free.iter().filter_map(|i| page.rails.get(*i)).map(|rail| rail.id).collect(),
        fit,
    })
}

fn setup(page: &Page, points: &[Point], reader: &mut Reader) -> Result<Setup, Refusal> {
    let x = points.iter().map(|p| p.x).collect();
    let y = points.iter().map(|p| p.y).collect();
    let free = free_rails(points);
    let columns = free.iter().map(|rail| free_column(points, |p| p.free.contains(rail))).collect();
    let (mut shared, mut origins) = (Vec::new(), Vec::new());
    for (origin, column) in shared_columns(page, points, reader) {
        origins.push(origin);
        shared.push(column);
    }
    let matrices = covariances(page, points, reader);
    let noise = if matrices.is_empty() {
        independent(page, points, shared)?
    } else {
        origins.clear();
        Noise::Dense(dense(points, &shared, &matrices))
    };
    Ok(Setup { data: Data { x, y, noise, free: columns }, shared: origins, free })
}

/// A step of the rows that `behind` picks: the unknown is how much farther out they stand than read, m.
pub fn free_column(points: &[Point], behind: impl Fn(&Point) -> bool) -> FreeColumn {
    FreeColumn::InX(points.iter().map(|p| if behind(p) { -1.0 } else { 0.0 }).collect())
}

/// The free rails that any row stands behind, in order.
fn free_rails(points: &[Point]) -> Vec<usize> {
    let mut rails: Vec<usize> = points.iter().flat_map(|p| p.free.iter().copied()).collect();
    rails.sort_unstable();
    rails.dedup();
    rails
}

/// Row by row, with shared columns; or ordinary least squares where nothing was stated at all.
fn independent(page: &Page, points: &[Point], shared: Vec<Column>) -> Result<Noise, Refusal> {
    let bare: Vec<RowId> =
        points.iter().filter(|p| p.ux.is_none() && p.uy.is_none()).map(|p| p.row).collect();
    if bare.len() == points.len() && shared.is_empty() {
        return Ok(Noise::Unstated);
    }
    if !bare.is_empty() {
        let message = format!(
            "{} no uncertainty while others do: state one for each row, or for none",
            say_rows(page, &bare, "states", "state")
        );
        return Err(Refusal { id: "some_unstated".into(), rows: bare, message });
    }
    let ux: Vec<f64> = points.iter().map(|p| p.ux.unwrap_or(0.0)).collect();
    let uy: Vec<f64> = points.iter().map(|p| p.uy.unwrap_or(0.0)).collect();
    Ok(Noise::Stated(Stated { ux, uy, cov_xy: Vec::new(), shared }))
}

/// One column for each shared error that moves any row.
fn shared_columns(page: &Page, points: &[Point], reader: &mut Reader) -> Vec<(Origin, Column)> {
    let mut columns = Vec::new();
    let mut sources: Vec<Source> = points.iter().flat_map(|p| p.effects.iter().map(|(s, _)| *s)).collect();
    sources.sort_unstable();
    sources.dedup();
    for source in sources {
        let effect = |p: &Point| p.effects.iter().find(|(s, _)| *s == source).map_or(0.0, |(_, e)| *e);
        let x = points.iter().map(effect).collect();
        if let Some(origin) = origin(page, source) {
            columns.push((origin, Column { x, y: Vec::new() }));
        }
    }
    let mut settings: Vec<(f64, f64)> = points.iter().filter_map(|p| p.time_base).collect();
    settings.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    settings.dedup_by(|a, b| a.0 == b.0);
    for (time, relative) in settings {
        let effect = |p: &Point| if p.time_base.is_some_and(|t| t.0 == time) { p.y * relative } else { 0.0 };
        let y = points.iter().map(effect).collect();
        columns.push((Origin::TimeBase { time_per_division: time }, Column { x: Vec::new(), y }));
    }
    for stated in &page.shared {
        columns.extend(stated_column(page, stated, points, reader));
    }
    columns.retain(|(_, column)| column.x.iter().chain(&column.y).any(|effect| *effect != 0.0));
    columns
}

fn origin(page: &Page, source: Source) -> Option<Origin> {
    let id = |index: usize| page.rails.get(index).map(|rail| rail.id);
    match source {
        Source::Splice(index) => id(index).map(|rail| Origin::Splice { rail }),
        Source::Scale(index) => id(index).map(|rail| Origin::RulerScale { rail }),
    }
}

fn stated_column(
    page: &Page,
    stated: &SharedError,
    points: &[Point],
    reader: &mut Reader,
) -> Option<(Origin, Column)> {
    let place = Place::Shared { shared: stated.id };
    let unit = match (stated.effect, stated.acts_on) {
        (Effect::Scale, _) => Unit::PERCENT,
        (Effect::Offset, ActsOn::Distances) => Unit::METRE,
        (Effect::Offset, ActsOn::Delays) => Unit::NANOSECOND,
    };
    let u = reader.not_negative(place.clone(), &stated.uncertainty, unit)?;
    let time = match &stated.rows {
        Scope::TimeBase(text) => Some(reader.positive(place, text, Unit::NANOSECOND)?),
        _ => None,
    };
    let rail = match stated.rows {
        Scope::Rail(id) => page.rails.iter().position(|rail| rail.id == id),
        _ => None,
    };
    let concerned = |p: &Point| match &stated.rows {
        Scope::All => true,
        Scope::Rail(_) => rail.is_some() && p.rail == rail,
        Scope::TimeBase(_) => p.time_base.map(|t| t.0) == time,
        Scope::Rows(rows) => rows.contains(&p.row),
    };
    let effect = |p: &Point, value: f64| match (concerned(p), stated.effect) {
        (false, _) => 0.0,
        (true, Effect::Offset) => u,
        (true, Effect::Scale) => u * value,
    };
    let column = match stated.acts_on {
        ActsOn::Distances => Column { x: points.iter().map(|p| effect(p, p.x)).collect(), y: Vec::new() },
        ActsOn::Delays => Column { x: Vec::new(), y: points.iter().map(|p| effect(p, p.y)).collect() },
    };
    Some((Origin::Stated { shared: stated.id }, column))
}

/// A stated covariance matrix, with the places of its rows among the points.
struct Matrix {
    acts_on: ActsOn,
    places: Vec<Option<usize>>,
    values: Vec<f64>,
}

fn covariances(page: &Page, points: &[Point], reader: &mut Reader) -> Vec<Matrix> {
    page.covariances.iter().filter_map(|stated| covariance(stated, points, reader)).collect()
}

fn covariance(stated: &StatedCovariance, points: &[Point], reader: &mut Reader) -> Option<Matrix> {
    let place = Place::Covariance { acts_on: stated.acts_on };
    let n = stated.rows.len();
    if stated.matrix.len() != n || stated.matrix.iter().any(|row| row.len() != n) {
        let message = format!("a covariance matrix of {n} rows needs {n} lines of {n} numbers");
        reader.note(place, message);
        return None;
    }
    let own = |p: &Point| match stated.acts_on {
        ActsOn::Distances => p.ux,
        ActsOn::Delays => p.uy,
    };
    if points.iter().any(|p| stated.rows.contains(&p.row) && own(p).is_some()) {
        reader
            .note(place, "a row of this matrix states an uncertainty of its own: clear that, or the matrix");
        return None;
    }
    let texts = stated.matrix.iter().flatten();
    let values = texts
        .map(|text| reader.number(place.clone(), text, Unit::ONE).map(|number| number.value))
        .collect::<Option<Vec<f64>>>()?;
    let places = stated.rows.iter().map(|row| points.iter().position(|p| p.row == *row)).collect();
    Some(Matrix { acts_on: stated.acts_on, places, values })
}

/// Everything in one dense covariance matrix: rows' own variances, shared columns, stated matrices.
fn dense(points: &[Point], shared: &[Column], matrices: &[Matrix]) -> Dense {
    let n = points.len();
    let block = |own: &dyn Fn(&Point) -> f64, part: &dyn Fn(&Column) -> &Vec<f64>, acts_on: ActsOn| {
        let mut block = vec![0.0; n * n];
        let mut put = |i: usize, j: usize, value: f64| {
            if let Some(entry) = block.get_mut(i * n + j) {
                *entry += value;
            }
        };
        for (i, point) in points.iter().enumerate() {
            put(i, i, own(point) * own(point));
        }
        for column in shared {
            for (i, a) in part(column).iter().enumerate() {
                for (j, b) in part(column).iter().enumerate() {
                    put(i, j, a * b);
                }
            }
        }
        for matrix in matrices.iter().filter(|m| m.acts_on == acts_on) {
            let m = matrix.places.len();
            for (place, value) in matrix.values.iter().enumerate() {
                let at = |k: usize| matrix.places.get(k).copied().flatten();
                if let Some((i, j)) = at(place / m).zip(at(place % m)) {
                    put(i, j, *value);
                }
            }
        }
        block
    };
    Dense {
        xx: block(&|p| p.ux.unwrap_or(0.0), &|c| &c.x, ActsOn::Distances),
        yy: block(&|p| p.uy.unwrap_or(0.0), &|c| &c.y, ActsOn::Delays),
        xy: Vec::new(),
    }
}

/// The engine's refusal in the words of the notebook, with the rows by their numbers on the page.
fn refusal(error: &LineError, page: &Page, points: &[Point]) -> Refusal {
    let ids = |places: &[usize]| -> Vec<RowId> {
        places.iter().filter_map(|place| points.get(*place)).map(|p| p.row).collect()
    };
    let named = |id: &str, places: &[usize], rest: &str, one: &str, many: &str| {
        let rows = ids(places);
        let message = format!("{} {rest}", say_rows(page, &rows, one, many));
        Refusal { id: id.into(), rows, message }
    };
    let plain = |id: &str, message: String| Refusal { id: id.into(), rows: Vec::new(), message };
    match error {
        LineError::TooFewRows { got, needed } => plain("too_few_rows", too_few(*got, *needed)),
        LineError::AllPositionsEqual => plain(
            "all_positions_equal",
            "all rows stand at the same distance, so the line has no slope: take readings at other places"
                .into(),
        ),
        LineError::ZeroUncertainty { rows } => named(
            "zero_uncertainty",
            rows,
            "an uncertainty of zero in distance and in delay: a reading is never exact, state what it is worth",
            "states",
            "state",
        ),
        LineError::Indefinite { rows } => named(
            "indefinite",
            rows,
            "a covariance that can't exist (a variance would be negative): check that matrix",
            "is given",
            "are given",
        ),
        other => plain("no_line", other.to_string()),
    }
}

fn too_few(got: usize, needed: usize) -> String {
    let have = match got {
        0 => "no row has both a distance and a delay yet".to_owned(),
        1 => "one row alone fixes no line".to_owned(),
        n => format!("{n} rows are not enough here"),
    };
    format!("{have}: {needed} rows at different places are needed, five or more are better")
}

/// "row 3 states", "rows 3 and 5 state".
fn say_rows(page: &Page, rows: &[RowId], one: &str, many: &str) -> String {
    let numbers = super::row_numbers(page, rows);
    match numbers.as_slice() {
        [single] => format!("row {single} {one}"),
        _ => format!("rows {} {many}", super::listed(&numbers)),
    }
}
