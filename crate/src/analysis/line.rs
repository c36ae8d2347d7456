//! From the rows to the straight line Δt = t₀ + b·d, with every error that rows share in its covariance.

use super::checks::checks;
use super::evidence::Corner;
use super::parts::{self, Noise as Source, Shared, WhatIf, factor, noises, slope_parts, total};
use super::read::Reader;
use super::rows::{Ground, Point, Rows};
use super::types::{Checks, LineAnalysis, Origin, Place, Quantity, Refusal, SlopePart};
use crate::distribution::chi_square_sf;
use crate::line::{self, Column, Data, Dense, Fit, FreeColumn, LineError, Noise, Stated};
use crate::notebook::{ActsOn, ErrorShape, Page, RowId, StatedCovariance};
use crate::quantity::Unit;
use crate::rail;

/// The line's input, and what is in it.
pub struct Setup {
    /// What goes into the engine.
    pub data: Data,
    /// Errors that each row has for itself, source by source; their sum is in `data`.
    pub noises: Vec<Source>,
    /// Errors that rows share, in the order of the columns in `data`; none where matrices were stated.
    pub shared: Vec<Shared>,
    /// The rails (by place) with a free column.
    pub free: Vec<usize>,
}

/// Fits the line.
///
/// # Errors
/// Why there is no line, naming the rows.
pub fn fit(
    ground: &Ground,
    rows: &Rows,
    what_if: Option<&WhatIf>,
    reader: &mut Reader,
) -> Result<LineAnalysis, Refusal> {
    let setup = setup(ground, rows, what_if, reader)?;
    let bare = bare(ground.page, &rows.points, &setup)?;
    let checks = checks(ground.page, &rows.points, &setup, &bare.fit);
    Ok(LineAnalysis { checks, ..bare })
}

/// Fits the line and leaves the side checks out.
///
/// # Errors
/// Why there is no line, naming the rows.
pub fn bare(page: &Page, points: &[Point], setup: &Setup) -> Result<LineAnalysis, Refusal> {
    let fit = line::fit(&setup.data).map_err(|error| refusal(&error, page, points))?;
    let stated = setup.data.noise != Noise::Unstated;
    let nu = fit.degrees_of_freedom;
    Ok(LineAnalysis {
        rows: points.iter().map(|p| p.row).collect(),
        distance: points.iter().map(|p| p.x).collect(),
        delay: points.iter().map(|p| p.y).collect(),
        u_distance: full(points, setup, |noise| &noise.x, |column| &column.x),
        u_delay: full(points, setup, |noise| &noise.y, |column| &column.y),
        stated,
        p_value: (stated && nu > 0).then(|| chi_square_sf(fit.chi_square, nu as f64)),
        birge_ratio: fit.scatter().filter(|_| stated),
        checks: Checks::default(),
        parts: parts_of(setup, &fit),
        shared: setup.shared.iter().map(|shared| shared.origin.clone()).collect(),
        free: setup.free.iter().filter_map(|i| page.rails.get(*i)).map(|rail| rail.id).collect(),
        fit,
    })
}

/// Full standard uncertainty of each distance or delay, shared parts included.
fn full(
    points: &[Point],
    setup: &Setup,
    own: impl Fn(&Source) -> &Vec<f64>,
    common: impl Fn(&Column) -> &Vec<f64>,
) -> Vec<f64> {
    let squares = total(points, &setup.noises, own).into_iter().map(|u| u * u);
    let shared = |i: usize| {
        let effects = setup.shared.iter().filter_map(|shared| common(&shared.column).get(i));
        effects.map(|effect| effect * effect).sum::<f64>()
    };
    squares.enumerate().map(|(i, own)| (own + shared(i)).sqrt()).collect()
}

/// What the slope's variance is made of; one part for all of it where it can't be told apart.
fn parts_of(setup: &Setup, fit: &Fit) -> Vec<SlopePart> {
    let Some(u) = fit.uncertainty else { return Vec::new() };
    let whole = |origin, degrees_of_freedom| SlopePart {
        origin,
        u: u.slope,
        quantity: Quantity::Slope,
        slope: u.slope,
        degrees_of_freedom,
        shape: ErrorShape::Normal,
        independent: true,
    };
    match setup.data.noise {
        Noise::Unstated => vec![whole(Origin::Scatter, Some(fit.degrees_of_freedom as f64))],
        Noise::Dense(_) => vec![whole(Origin::Matrices, None)],
        Noise::Stated(_) => slope_parts(fit, &setup.noises, &setup.shared),
    }
}

/// What goes into the fit.
///
/// An error in proportion moves each row by a share of what it would have read without error. Taken of the readings
/// themselves it would favour small ones, and pull the slope down the more the more rows there are (G. D'Agostini,
/// Nucl. Instrum. Meth. A 346 (1994) 306). So it is taken of the line, fitted without such errors first.
///
/// # Errors
/// When some rows state an uncertainty and others don't.
pub fn setup(
    ground: &Ground,
    rows: &Rows,
    what_if: Option<&WhatIf>,
    reader: &mut Reader,
) -> Result<Setup, Refusal> {
    let points = rows.points.as_slice();
    let read = Base { x: points.iter().map(|p| p.x).collect(), y: points.iter().map(|p| p.y).collect() };
    let first = setup_on(ground, rows, what_if, &read, reader)?;
    match first.base() {
        // What is wrong was noted the first time.
        Some(base) => setup_on(ground, rows, what_if, &base, &mut Reader::new(ground.page.decimal_mark)),
        None => Ok(first),
    }
}

/// The values that errors in proportion are taken of.
pub struct Base {
    /// Distances, m.
    pub x: Vec<f64>,
    /// Delays, ns.
    pub y: Vec<f64>,
}

impl Setup {
    /// The rows on the line fitted without errors in proportion; none where there are no such errors, or no line.
    fn base(&self) -> Option<Base> {
        let Noise::Stated(stated) = &self.data.noise else { return None };
        let columns = self.shared.iter().zip(&stated.shared);
        let kept: Vec<Column> = columns
            .filter(|(shared, _)| shared.quantity != Quantity::Ratio)
            .map(|(_, column)| column.clone())
            .collect();
        if kept.len() == stated.shared.len() {
            return None;
        }
        let noise = Noise::Stated(Stated { shared: kept, ..stated.clone() });
        let fit = line::fit(&Data { noise, ..self.data.clone() }).ok()?;
        let x: Vec<f64> = fit.rows.iter().map(|row| row.true_x).collect();
        let y = x.iter().map(|x| fit.at(*x)).collect();
        Some(Base { x, y })
    }
}

fn setup_on(
    ground: &Ground,
    rows: &Rows,
    what_if: Option<&WhatIf>,
    base: &Base,
    reader: &mut Reader,
) -> Result<Setup, Refusal> {
    let (page, points) = (ground.page, rows.points.as_slice());
    let x = points.iter().map(|p| p.x).collect();
    let y = points.iter().map(|p| p.y).collect();
    let free = free_rails(points);
    let columns = free.iter().map(|rail| free_column(points, |p| p.free.contains(rail))).collect();
    let stated = parts::stated(page, points, reader);
    let mut noises = noises(points, rows, ground, &stated, base);
    let mut shared = shared_errors(ground, points, base);
    shared.extend(stated.iter().filter_map(|stated| stated.shared(base)));
    shared.retain(|shared| shared.column.x.iter().chain(&shared.column.y).any(|effect| *effect != 0.0));
    for noise in &mut noises {
        let factor = factor(what_if, &noise.origin);
        noise.x.iter_mut().chain(&mut noise.y).for_each(|u| *u *= factor);
    }
    for shared in &mut shared {
        let factor = factor(what_if, &shared.origin);
        shared.u *= factor;
        shared.column.x.iter_mut().chain(&mut shared.column.y).for_each(|effect| *effect *= factor);
    }
    let matrices = covariances(page, points, reader);
    let noise = if matrices.is_empty() {
        independent(page, points, &noises, &shared)?
    } else {
        let dense = dense(points, &noises, &shared, &matrices);
        shared.clear();
        Noise::Dense(dense)
    };
    Ok(Setup { data: Data { x, y, noise, free: columns }, noises, shared, free })
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
fn independent(
    page: &Page,
    points: &[Point],
    noises: &[Source],
    shared: &[Shared],
) -> Result<Noise, Refusal> {
    let (ux, uy) = (total(points, noises, |noise| &noise.x), total(points, noises, |noise| &noise.y));
    let own =
        |i: usize| noises.iter().any(|noise| noise.x.get(i).or(noise.y.get(i)).is_some_and(|u| *u > 0.0));
    let bare: Vec<RowId> = (points.iter().enumerate())
        .filter(|(i, p)| p.ux.is_none() && p.uy.is_none() && !own(*i))
        .map(|(_, p)| p.row)
        .collect();
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
    let shared = shared.iter().map(|shared| shared.column.clone()).collect();
    Ok(Noise::Stated(Stated { ux, uy, cov_xy: Vec::new(), shared }))
}

/// One column for each error of the apparatus that rows share.
fn shared_errors(ground: &Ground, points: &[Point], base: &Base) -> Vec<Shared> {
    let mut columns = Vec::new();
    let mut sources: Vec<rail::Source> =
        points.iter().flat_map(|p| p.effects.iter().map(|(s, _)| *s)).collect();
    sources.sort_unstable();
    sources.dedup();
    for source in sources {
        let effect = |p: &Point| p.effects.iter().find(|(s, _)| *s == source).map_or(0.0, |(_, e)| *e);
        // A ruler's scale stretches what the reading would be without its own error.
        let stretch = match source {
            rail::Source::Scale(index) => {
                Some(index).zip(ground.rails.get(index).and_then(|r| r.rail.as_ref()))
            }
            rail::Source::Splice(_) => None,
        };
        let moved = |(p, x): (&Point, &f64)| match stretch {
            Some((index, rail)) if p.rail == Some(index) => effect(p) + rail.u_scale * (x - p.x),
            _ => effect(p),
        };
        let x: Vec<f64> = points.iter().zip(&base.x).map(moved).collect();
        columns.extend(rail_error(ground, source, x));
    }
    columns.extend(grid_errors(ground, points));
    let mut settings: Vec<(f64, f64)> = points.iter().filter_map(|p| p.time_base).collect();
    settings.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    settings.dedup_by(|a, b| a.0 == b.0);
    for (time, relative) in settings {
        let set = |p: &Point| p.time_base.is_some_and(|t| t.0 == time);
        let effect = |(p, y): (&Point, &f64)| if set(p) { y * relative } else { 0.0 };
        let y = points.iter().zip(&base.y).map(effect).collect();
        columns.push(Shared {
            origin: Origin::TimeBase { time_per_division: time },
            column: Column { x: Vec::new(), y },
            u: relative,
            quantity: Quantity::Ratio,
            shape: ErrorShape::Normal,
            degrees_of_freedom: None,
        });
    }
    columns
}

/// The corners of the grids on pictures, each coordinate an error of its own.
fn grid_errors(ground: &Ground, points: &[Point]) -> Vec<Shared> {
    let mut corners: Vec<Corner> = points.iter().flat_map(|p| p.corners.iter().map(|(c, _)| *c)).collect();
    corners.sort_unstable();
    corners.dedup();
    let each = corners.into_iter().map(|corner| {
        let effect = |p: &Point| p.corners.iter().find(|(c, _)| *c == corner).map_or(0.0, |(_, e)| *e);
        Shared {
            origin: Origin::Grid { grid: corner.grid },
            column: Column { x: Vec::new(), y: points.iter().map(effect).collect() },
            u: ground.marks.u_mark,
            quantity: Quantity::Pixel,
            shape: ErrorShape::Normal,
            degrees_of_freedom: None,
        }
    });
    each.collect()
}

/// The error of a rail's place or scale.
fn rail_error(ground: &Ground, source: rail::Source, x: Vec<f64>) -> Option<Shared> {
    let (rail::Source::Splice(index) | rail::Source::Scale(index)) = source;
    let id = ground.page.rails.get(index)?.id;
    let (origin, u, quantity) = match source {
        rail::Source::Splice(_) => {
            let u = x.iter().fold(0.0, |largest: f64, effect| largest.max(effect.abs()));
            (Origin::Splice { rail: id }, u, Quantity::Length)
        }
        rail::Source::Scale(_) => {
            let u = ground.rails.get(index)?.rail.as_ref()?.u_scale;
            (Origin::RulerScale { rail: id }, u, Quantity::Ratio)
        }
    };
    let column = Column { x, y: Vec::new() };
    Some(Shared { origin, column, u, quantity, shape: ErrorShape::Normal, degrees_of_freedom: None })
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
fn dense(points: &[Point], noises: &[Source], shared: &[Shared], matrices: &[Matrix]) -> Dense {
    let n = points.len();
    let block = |own: Vec<f64>, part: &dyn Fn(&Column) -> &Vec<f64>, acts_on: ActsOn| {
        let mut block = vec![0.0; n * n];
        let mut put = |i: usize, j: usize, value: f64| {
            if let Some(entry) = block.get_mut(i * n + j) {
                *entry += value;
            }
        };
        for (i, own) in own.iter().enumerate() {
            put(i, i, own * own);
        }
        for shared in shared {
            for (i, a) in part(&shared.column).iter().enumerate() {
                for (j, b) in part(&shared.column).iter().enumerate() {
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
        xx: block(total(points, noises, |noise| &noise.x), &|c| &c.x, ActsOn::Distances),
        yy: block(total(points, noises, |noise| &noise.y), &|c| &c.y, ActsOn::Delays),
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
