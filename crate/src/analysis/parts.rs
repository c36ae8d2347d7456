//! What the uncertainty of the slope is made of.
//!
//! Errors that each row has for itself are kept source by source ([`RowErrors`]), so that the fit gets their sum and
//! the budget each alone. With a_i the change of the slope for one unit of delay i ([`RowFit::influence`]) and b
//! the slope, such a source gives the slope the variance Σ a_i²(u_y,i² + b²u_x,i²); a stated covariance matrix gives it
//! aᵀ(V_yy + b²V_xx − b(V_xy + V_yx))a; an error that rows share gives it cov(b, z)², z being the error in units of its
//! standard deviation. Together they are u²(b), exactly, because
//! the fit is a linear estimator at its own weights (ISO/TS 28037:2010, clause 9).
//!
//! [`RowFit::influence`]: crate::line::RowFit::influence

use super::context::RowContext;
use super::origin::{Clock, Origin, Quantity};
use super::place::{Place, SharedPart};
use super::point::{DelaySource, Point};
use super::read::{RailNumbers, Reader};
use super::rows::Rows;
use super::types::SlopePart;
use crate::line::{Dense, Fit, SharedColumn};
use crate::message;
use crate::notebook::{
    ActsOn, Cell, Effect, ErrorShape, NotebookState, Rail, Scope, SharedError, UncertaintyKind, UncertaintyOf,
};
use crate::quantity::Unit;

/// The values that errors in proportion are taken of.
pub struct Base {
    /// Distances, m.
    pub x: Vec<f64>,
    /// Delays, ns.
    pub y: Vec<f64>,
}

/// One source of errors that each row has for itself.
#[derive(Clone, Debug, PartialEq)]
pub struct RowErrors {
    /// From where it comes.
    pub origin: Origin,
    /// Whether distances or delays are in error.
    pub acts_on: ActsOn,
    /// Standard uncertainty of each row's distance, m, or delay, ns.
    pub u: Vec<f64>,
    /// How it is distributed.
    pub shape: ErrorShape,
    /// Degrees of freedom, which all its rows have in common; none means many.
    pub degrees_of_freedom: Option<f64>,
}

/// One error that rows share.
#[derive(Clone, Debug, PartialEq)]
pub struct Shared {
    /// From where it comes.
    pub origin: Origin,
    /// What one standard deviation of it does to each row.
    pub column: SharedColumn,
    /// Its standard uncertainty, in the unit of `quantity`.
    pub u: f64,
    /// What kind of quantity it is.
    pub quantity: Quantity,
    /// How it is distributed.
    pub shape: ErrorShape,
    /// Degrees of freedom; none means many.
    pub degrees_of_freedom: Option<f64>,
}

/// The same analysis with one source of uncertainty made larger or smaller.
#[derive(Clone, Debug, PartialEq)]
pub struct WhatIf {
    /// The source, by [`Origin::id`].
    pub origin: String,
    /// How many times as large it is taken to be.
    pub factor: f64,
}

/// By how much a source is scaled.
pub fn factor(what_if: Option<&WhatIf>, origin: &Origin) -> f64 {
    what_if.filter(|what_if| what_if.origin == origin.id()).map_or(1.0, |what_if| what_if.factor)
}

/// The user's own errors, in numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct StatedError<'a> {
    typed: &'a SharedError,
    u: f64,
    shape: ErrorShape,
    degrees_of_freedom: Option<f64>,
    /// Whether each point is concerned.
    concerns: Vec<bool>,
}

/// Reads the user's own errors; one that can't be read is left out, with a note at its place.
pub fn stated<'a>(page: &'a NotebookState, points: &[Point], reader: &mut Reader) -> Vec<StatedError<'a>> {
    page.shared.iter().filter_map(|typed| read_stated(page, typed, points, reader)).collect()
}

/// The unit of a user's own error, when a bare number is typed.
pub fn unit_of(effect: Effect, acts_on: ActsOn) -> Unit {
    match (effect, acts_on) {
        (Effect::Scale, _) => Unit::PERCENT,
        (_, ActsOn::Distances) => Unit::METRE,
        (_, ActsOn::Delays) => Unit::NANOSECOND,
    }
}

/// Beyond this an error in proportion is no small correction any more, and no line comes of it.
const LARGEST_RATIO: f64 = 0.5;
/// The same for an offset, m or ns: farther than any bench, longer than any delay on one.
const LARGEST_OFFSET: f64 = 1e9;

fn read_stated<'a>(
    page: &NotebookState,
    typed: &'a SharedError,
    points: &[Point],
    reader: &mut Reader,
) -> Option<StatedError<'a>> {
    let place = Place::Shared { shared: typed.id, part: SharedPart::Uncertainty };
    let kind = page.kind(UncertaintyOf::Shared(typed.id));
    let unit = unit_of(typed.effect, typed.acts_on);
    let stated = reader.typed_uncertainty(place.clone(), &typed.uncertainty, unit, kind)?;
    let largest = if typed.effect == Effect::Scale { LARGEST_RATIO } else { LARGEST_OFFSET };
    if stated > largest {
        let message = match typed.effect {
            Effect::Scale => message!("number-too_large_ratio", found = typed.uncertainty.trim()),
            _ => message!("number-too_large_offset", found = typed.uncertainty.trim()),
        };
        reader.note(place, message);
        return None;
    }
    let at_uncertainty = place.clone();
    let at_dof = Place::Shared { shared: typed.id, part: SharedPart::DegreesOfFreedom };
    let degrees_of_freedom = reader.positive(at_dof.clone(), &typed.degrees_of_freedom, Unit::ONE);
    let shape = page.shape(typed);
    let u = match kind {
        UncertaintyKind::Limit => stated / f64::from(shape.under_root()).sqrt(),
        UncertaintyKind::Standard => stated,
    };
    if shape == ErrorShape::Student && degrees_of_freedom.is_none() {
        reader.note(at_dof, message!("shared-no_degrees"));
        return None;
    }
    let time = match &typed.rows {
        Scope::TimeBase(text) => Some(Clock::Screen(reader.positive(place, text, Unit::NANOSECOND)?)),
        _ => None,
    };
    let rail = match typed.rows {
        Scope::Rail(id) => page.rail(id).map(|(index, _)| index),
        _ => None,
    };
    let concerned = |p: &Point| match &typed.rows {
        Scope::All => true,
        Scope::Rail(_) => rail.is_some() && p.rail == rail,
        Scope::TimeBase(_) => p.time_base.map(|base| base.clock) == time,
        Scope::Rows(rows) => rows.contains(&p.row),
    };
    let concerns: Vec<bool> = points.iter().map(concerned).collect();
    if !points.is_empty() && !concerns.contains(&true) {
        reader.note(at_uncertainty, message!("shared-no_rows"));
    }
    Some(StatedError { typed, u, shape, degrees_of_freedom, concerns })
}

impl StatedError<'_> {
    fn origin(&self) -> Origin {
        Origin::Stated { shared: self.typed.id }
    }

    /// The error on each point, of one standard deviation.
    fn effects(&self, base: &Base) -> Vec<f64> {
        let values = match self.typed.acts_on {
            ActsOn::Distances => &base.x,
            ActsOn::Delays => &base.y,
        };
        let effect = |(value, concerned): (&f64, &bool)| match (concerned, self.typed.effect) {
            (false, _) => 0.0,
            (true, Effect::Scale) => self.u * value,
            (true, Effect::Offset | Effect::Noise) => self.u,
        };
        values.iter().zip(&self.concerns).map(effect).collect()
    }

    /// The error as one that rows share; none if each row has it for itself.
    pub fn shared(&self, base: &Base) -> Option<Shared> {
        if self.typed.effect == Effect::Noise {
            return None;
        }
        let effects = self.effects(base);
        let column = match self.typed.acts_on {
            ActsOn::Distances => SharedColumn { x: effects, y: Vec::new() },
            ActsOn::Delays => SharedColumn { x: Vec::new(), y: effects },
        };
        let quantity = match (self.typed.effect, self.typed.acts_on) {
            (Effect::Scale, _) => Quantity::Ratio,
            (_, ActsOn::Distances) => Quantity::Length,
            (_, ActsOn::Delays) => Quantity::Time,
        };
        Some(Shared {
            origin: self.origin(),
            column,
            u: self.u,
            quantity,
            shape: self.shape,
            degrees_of_freedom: self.degrees_of_freedom,
        })
    }

    /// The error as one that each row has for itself; none if rows share it.
    fn noise(&self, base: &Base) -> Option<RowErrors> {
        if self.typed.effect != Effect::Noise {
            return None;
        }
        Some(RowErrors {
            origin: self.origin(),
            acts_on: self.typed.acts_on,
            u: self.effects(base),
            shape: self.shape,
            degrees_of_freedom: self.degrees_of_freedom,
        })
    }
}

/// Every source of errors that each row has for itself.
pub fn noises(
    points: &[Point],
    rows: &Rows,
    context: &RowContext,
    stated: &[StatedError],
    base: &Base,
) -> Vec<RowErrors> {
    let marks = &context.marks;
    // What states nothing has no errors here; `setup` refuses it where other rows state theirs.
    let on_rail = |p: &Point| if p.rail.is_some() { p.ux.unwrap_or(0.0) } else { 0.0 };
    let given = |p: &Point| if p.rail.is_none() { p.ux.unwrap_or(0.0) } else { 0.0 };
    let own = |source: DelaySource| move |p: &Point| if p.delay_source == source { limit(p) } else { 0.0 };
    let of = |acts_on, origin, part: &dyn Fn(&Point) -> f64, shape, degrees_of_freedom| RowErrors {
        origin,
        acts_on,
        u: points.iter().map(part).collect(),
        shape,
        degrees_of_freedom,
    };
    let x = |origin, part: &dyn Fn(&Point) -> f64, shape| of(ActsOn::Distances, origin, part, shape, None);
    let y = |origin, part: &dyn Fn(&Point) -> f64, shape, degrees_of_freedom| {
        of(ActsOn::Delays, origin, part, shape, degrees_of_freedom)
    };
    let page = context.page;
    let scatter_dof = rows.scatter.map(|scatter| scatter.degrees_of_freedom as f64);
    let mut all = vec![
        x(Origin::RailReadings, &on_rail, ruler_shape(context)),
        x(Origin::Distances, &given, typed_shape(page, Cell::Distance, Cell::DistanceUncertainty)),
        y(Origin::ScreenLimit, &own(DelaySource::OnScreen), edge_shape(context), None),
        y(Origin::ScreenScatter, &|p| p.type_a, ErrorShape::Normal, scatter_dof),
        y(Origin::PictureMarks, &own(DelaySource::OnPicture), ErrorShape::Normal, marks.degrees_of_freedom()),
        y(Origin::Traces, &own(DelaySource::ByTraces), ErrorShape::Normal, None),
        y(
            Origin::Delays,
            &own(DelaySource::Directly),
            typed_shape(page, Cell::Delay, Cell::DelayUncertainty),
            None,
        ),
    ];
    all.extend(stated.iter().filter_map(|stated| stated.noise(base)));
    all.retain(|noise| noise.u.iter().any(|u| *u > 0.0));
    all
}

/// How readings of the rulers are distributed: a ruler's own half millimetre either way is a limit; so is what was stated
/// as one.
fn ruler_shape(context: &RowContext) -> ErrorShape {
    let page = context.page;
    let is_standard = |(rail, typed): (&RailNumbers, &Rail)| {
        rail.u_reading_stated && page.kind(UncertaintyOf::RulerReading(typed.id)) == UncertaintyKind::Standard
    };
    if context.rails.iter().zip(&page.rails).any(is_standard) {
        ErrorShape::Normal
    } else {
        ErrorShape::Rectangular
    }
}

/// How the time from edge to edge on a screen is distributed: each edge within ±a, so the difference of two rectangular
/// errors is triangular.
fn edge_shape(context: &RowContext) -> ErrorShape {
    match context.page.kind(UncertaintyOf::Edge) {
        UncertaintyKind::Standard if context.bench.half_width_stated => ErrorShape::Normal,
        _ => ErrorShape::Triangular,
    }
}

/// How values that were typed are distributed: rectangular where each of them has a limit.
fn typed_shape(page: &NotebookState, value: Cell, uncertainty: Cell) -> ErrorShape {
    let mut typed = page.rows.iter().filter(|row| row.struck.is_none() && !row.text(value).trim().is_empty());
    if typed.all(|row| UncertaintyKind::written(row.text(uncertainty)).0 == UncertaintyKind::Limit) {
        ErrorShape::Rectangular
    } else {
        ErrorShape::Normal
    }
}

/// The part of a delay's own uncertainty that does not come from the scatter of repeated screen readings.
fn limit(p: &Point) -> f64 {
    let uy = p.uy.unwrap_or(0.0);
    (uy * uy - p.type_a * p.type_a).max(0.0).sqrt()
}

/// Whether errors that each row has for itself give way to the scatter, where that is claimed and is `ratio` times what was
/// stated. Where the scatter is smaller, two kinds stay, since rows that are all read alike do not scatter by them (JCGM
/// 100:2008, F.2.2.1): whatever lies within limits, typed or read; and what is read from a ruler, a screen or a picture in
/// whatever shape, unless it was found from repeats and so has degrees of freedom.
pub fn gives_way(origin: &Origin, shape: ErrorShape, degrees_of_freedom: Option<f64>, ratio: f64) -> bool {
    let read = matches!(origin, Origin::RailReadings | Origin::ScreenLimit | Origin::PictureMarks);
    let limited = matches!(shape, ErrorShape::Rectangular | ErrorShape::Triangular | ErrorShape::Arcsine);
    ratio >= 1.0 || !(limited || read && degrees_of_freedom.is_none())
}

/// The sum in quadrature of each row's own errors of its distance or of its delay.
pub fn total(points: &[Point], noises: &[RowErrors], acts_on: ActsOn) -> Vec<f64> {
    let mut squares = vec![0.0; points.len()];
    for noise in noises.iter().filter(|noise| noise.acts_on == acts_on) {
        add_squares(&mut squares, &noise.u);
    }
    squares.into_iter().map(f64::sqrt).collect()
}

/// Adds to each row's sum the square of its error.
pub fn add_squares(sums: &mut [f64], errors: &[f64]) {
    for (sum, error) in sums.iter_mut().zip(errors) {
        *sum += error * error;
    }
}

/// The parts of the slope's variance, those that rows have for themselves first.
pub fn slope_parts(
    fit: &Fit,
    noises: &[RowErrors],
    joint: Option<SlopePart>,
    shared: &[Shared],
) -> Vec<SlopePart> {
    let own = noises.iter().map(|noise| independent_part(fit, noise));
    let common = shared.iter().zip(&fit.shared).map(|(shared, estimate)| SlopePart {
        origin: shared.origin.clone(),
        u: shared.u,
        quantity: shared.quantity,
        slope: estimate.covariance_with_slope.map_or(0.0, f64::abs),
        degrees_of_freedom: shared.degrees_of_freedom,
        shape: shared.shape,
        independent: false,
    });
    merged(own.chain(joint).chain(common))
}

/// Parts of one origin, such as the corners of a grid, become one.
fn merged(parts: impl Iterator<Item = SlopePart>) -> Vec<SlopePart> {
    let mut all: Vec<SlopePart> = Vec::new();
    for part in parts {
        match all.last_mut().filter(|last| last.origin == part.origin) {
            Some(last) => last.slope = libm::hypot(last.slope, part.slope),
            None => all.push(part),
        }
    }
    all
}

fn independent_part(fit: &Fit, noise: &RowErrors) -> SlopePart {
    let (per_unit, quantity) = match noise.acts_on {
        ActsOn::Distances => (fit.slope, Quantity::Length),
        ActsOn::Delays => (1.0, Quantity::Time),
    };
    let variance: f64 = (fit.rows.iter().zip(&noise.u))
        .map(|(row, u)| {
            let error = per_unit * u;
            row.influence * row.influence * (error * error)
        })
        .sum();
    let present = noise.u.iter().filter(|u| **u > 0.0);
    let mean_square = present.clone().map(|u| u * u).sum::<f64>() / present.count().max(1) as f64;
    SlopePart {
        origin: noise.origin.clone(),
        u: mean_square.sqrt(),
        quantity,
        slope: variance.sqrt(),
        degrees_of_freedom: noise.degrees_of_freedom,
        shape: noise.shape,
        independent: true,
    }
}

/// The part of rows whose errors were stated together.
pub fn joint_part(fit: &Fit, joint: &Dense) -> SlopePart {
    let n = fit.rows.len();
    // Covariances of a block with the rows' weights on both sides.
    let weighed = |block: &[f64]| -> f64 {
        let by_row = fit.rows.iter().zip(block.chunks_exact(n.max(1)));
        let each = by_row.map(|(row, entries)| {
            row.influence * entries.iter().zip(&fit.rows).map(|(v, row)| v * row.influence).sum::<f64>()
        });
        each.sum()
    };
    let variance =
        weighed(&joint.yy) + fit.slope * (fit.slope * weighed(&joint.xx) - 2.0 * weighed(&joint.xy));
    let u = variance.max(0.0).sqrt();
    SlopePart {
        origin: Origin::Matrices,
        u,
        quantity: Quantity::Slope,
        slope: u,
        degrees_of_freedom: None,
        shape: ErrorShape::Normal,
        independent: true,
    }
}

#[cfg(test)]
#[path = "parts_test.rs"]
mod tests;
