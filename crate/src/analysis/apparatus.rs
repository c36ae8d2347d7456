//! The errors of the apparatus that rows share: splices and scales of rails, corners of grids, time bases, walk.

use super::context::RowContext;
use super::evidence::CornerShift;
use super::origin::{Clock, Origin, Quantity};
use super::parts::{Base, Shared};
use super::point::{DelaySource, Point, TimeBase, time_bases};
use super::seal;
use super::walk::u_walk;
use crate::line::SharedColumn;
use crate::notebook::{ErrorShape, Splice, UncertaintyKind, UncertaintyOf};
use crate::rail;

/// One column for each error of the apparatus that rows share.
pub fn shared_errors(context: &RowContext, points: &[Point], base: &Base) -> Vec<Shared> {
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
                Some(index).zip(context.rails.get(index).and_then(|r| r.rail.as_ref()))
            }
            rail::Source::Splice(_) => None,
        };
        let moved = |(p, x): (&Point, &f64)| match stretch {
            Some((index, rail)) if p.rail == Some(index) => effect(p) + rail.u_scale * (x - p.x),
            _ => effect(p),
        };
        let x: Vec<f64> = points.iter().zip(&base.x).map(moved).collect();
        columns.extend(rail_error(context, source, x));
    }
    columns.extend(grid_errors(context, points));
    for TimeBase { clock, relative } in time_bases(points) {
        let set = |p: &Point| p.time_base.is_some_and(|t| t.clock == clock);
        let effect = |(p, y): (&Point, &f64)| if set(p) { y * relative } else { 0.0 };
        let y = points.iter().zip(&base.y).map(effect).collect();
        columns.push(Shared {
            origin: Origin::TimeBase { clock },
            column: SharedColumn { x: Vec::new(), y },
            u: relative,
            quantity: Quantity::Ratio,
            shape: clock_kind(context, clock).into(),
            degrees_of_freedom: None,
        });
    }
    columns.extend(walk_error(context, points));
    columns
}

/// The walk of delays timed at a fixed level, in proportion to the distance.
fn walk_error(context: &RowContext, points: &[Point]) -> Option<Shared> {
    // What the traces tell of it is no secret: a closed seal, which divides slopes by its factor, has it shown as it is.
    let factor = seal::factor(context.page.seal.as_ref()).unwrap_or(1.0);
    let u = factor * u_walk(context.page, points)?;
    let late = |p: &Point| if p.delay_source == DelaySource::ByTraces { u * p.x } else { 0.0 };
    Some(Shared {
        origin: Origin::Walk,
        column: SharedColumn { x: Vec::new(), y: points.iter().map(late).collect() },
        u,
        quantity: Quantity::Slope,
        shape: ErrorShape::Normal,
        degrees_of_freedom: None,
    })
}

/// As what the uncertainty of a time base was typed: at its setting, or for all.
fn clock_kind(context: &RowContext, clock: Clock) -> UncertaintyKind {
    let setting = context
        .settings
        .iter()
        .find(|setting| clock == Clock::Screen(setting.time_per_division) && setting.uncertainty.is_some());
    setting.map_or(context.page.kind(UncertaintyOf::TimeBase), |setting| setting.kind)
}

/// The corners of the grids on pictures, each coordinate an error of its own.
fn grid_errors(context: &RowContext, points: &[Point]) -> Vec<Shared> {
    let mut corners: Vec<CornerShift> =
        points.iter().flat_map(|p| p.corners.iter().map(|(c, _)| *c)).collect();
    corners.sort_unstable();
    corners.dedup();
    let each = corners.into_iter().map(|corner| {
        let effect = |p: &Point| p.corners.iter().find(|(c, _)| *c == corner).map_or(0.0, |(_, e)| *e);
        Shared {
            origin: Origin::Grid { grid: corner.grid },
            column: SharedColumn { x: Vec::new(), y: points.iter().map(effect).collect() },
            u: context.marks.u_mark,
            quantity: Quantity::Pixel,
            shape: ErrorShape::Normal,
            degrees_of_freedom: None,
        }
    });
    each.collect()
}

/// The error of a rail's place or scale.
fn rail_error(context: &RowContext, source: rail::Source, x: Vec<f64>) -> Option<Shared> {
    let (rail::Source::Splice(index) | rail::Source::Scale(index)) = source;
    let typed = context.page.rails.get(index)?;
    let id = typed.id;
    let (origin, u, quantity, of) = match source {
        rail::Source::Splice(_) => {
            let u = x.iter().fold(0.0, |largest: f64, effect| largest.max(effect.abs()));
            (Origin::Splice { rail: id }, u, Quantity::Length, UncertaintyOf::Splice(id))
        }
        rail::Source::Scale(_) => {
            let u = context.rails.get(index)?.rail.as_ref()?.u_scale;
            (Origin::RulerScale { rail: id }, u, Quantity::Ratio, UncertaintyOf::RulerScale(id))
        }
    };
    let column = SharedColumn { x, y: Vec::new() };
    let shape = match (source, &typed.splice) {
        // Comes of its pairs of readings: nothing is typed.
        (rail::Source::Splice(_), Splice::Overlap { .. }) => ErrorShape::Normal,
        _ => context.page.kind(of).into(),
    };
    Some(Shared { origin, column, u, quantity, shape, degrees_of_freedom: None })
}
