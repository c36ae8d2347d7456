//! The least χ² over the slope: Newton's method with halved steps, and a scan over all slopes where χ² may have more
//! than one valley.

use super::{
    error::LineError,
    noise::Noise,
    profile::{Point, Profile},
};

/// Where curvature and information differ by more than this share, errors in x bend χ² enough for a second valley.
const BENT: f64 = 0.1;
/// Beyond this slope, in units of the spans, the line counts as upright.
const UPRIGHT: f64 = 1e12;

/// The end of a descent.
struct Valley {
    point: Point,
    /// Newton's method walked straight in, and χ² is nearly a parabola.
    plain: bool,
}

/// Finds the least χ², and leaves `profile` at it.
pub(super) fn least<N: Noise>(profile: &mut Profile<'_, N>, start: f64) -> Result<Point, LineError> {
    match descend(profile, start) {
        Ok(Valley { point, plain: true }) => Ok(point),
        Ok(Valley { point, plain: false }) => scan(profile, Some(point)),
        Err(LineError::NoConvergence) => scan(profile, None),
        Err(error) => Err(error),
    }
}

fn descend<N: Noise>(profile: &mut Profile<'_, N>, start: f64) -> Result<Valley, LineError> {
    let mut here = profile.at(start)?;
    let mut straight = true;
    let mut last_step = f64::INFINITY;
    for _ in 0..100 {
        let step = newton_step(&here);
        if here.slope.abs() > UPRIGHT || !step.is_finite() {
            return Err(LineError::NoConvergence);
        }
        if arrived(&here, step, last_step) {
            let plain = straight && (here.curvature - here.information).abs() <= BENT * here.information;
            return Ok(Valley { point: here, plain });
        }
        let (next, halved) = downhill(profile, &here, step)?;
        straight &= !halved && here.curvature > 0.0;
        last_step = step;
        here = next;
    }
    Err(LineError::NoConvergence)
}

fn newton_step(point: &Point) -> f64 {
    let bend = if point.curvature > 0.0 { point.curvature } else { point.information };
    -point.gradient / bend
}

/// A step in the last place of the slope, or one that rounding keeps from shrinking.
fn arrived(point: &Point, step: f64, last_step: f64) -> bool {
    /// Steps below this, in units of the spans, are rounding if they do not shrink.
    const ROUNDING: f64 = 1e-11;
    let in_last_place = step.abs() <= 2.0 * f64::EPSILON * point.slope.abs();
    let stalled = step.abs() >= 0.5 * last_step.abs() && step.abs() <= ROUNDING * (1.0 + point.slope.abs());
    point.curvature > 0.0 && (in_last_place || stalled || step == 0.0)
}

/// Goes along `step`, halved until χ² no longer rises. Tells whether it was halved.
fn downhill<N: Noise>(
    profile: &mut Profile<'_, N>,
    here: &Point,
    step: f64,
) -> Result<(Point, bool), LineError> {
    /// χ² may rise by its own rounding.
    const ROUNDING: f64 = 1e-9;
    let mut share = 1.0;
    for _ in 0..60 {
        match profile.at(here.slope + share * step) {
            Ok(next) if next.chi_square <= here.chi_square * (1.0 + ROUNDING) + f64::EPSILON => {
                return Ok((next, share < 1.0));
            }
            Ok(_) | Err(LineError::ZeroUncertainty { .. } | LineError::OutOfRange) => share *= 0.5,
            Err(error) => return Err(error),
        }
    }
    Err(LineError::NoConvergence)
}

/// Looks at χ² over all slopes, descends into the lowest valleys, and gives the lowest end.
fn scan<N: Noise>(profile: &mut Profile<'_, N>, known: Option<Point>) -> Result<Point, LineError> {
    const TRIED: usize = 4;
    let heights: Vec<(f64, f64)> = slopes()
        .into_iter()
        .map(|slope| (slope, profile.at(slope).map_or(f64::INFINITY, |point| point.chi_square)))
        .collect();
    let mut starts: Vec<(f64, f64)> = heights
        .windows(3)
        .filter_map(|window| match window {
            [before, here, after] if here.1 <= before.1 && here.1 <= after.1 => Some(*here),
            _ => None,
        })
        .collect();
    starts.sort_by(|a, b| a.1.total_cmp(&b.1));
    let mut best = known;
    for (slope, _) in starts.into_iter().take(TRIED) {
        if let Ok(valley) = descend(profile, slope)
            && best.is_none_or(|best| valley.point.chi_square < best.chi_square)
        {
            best = Some(valley.point);
        }
    }
    let upright =
        [heights.first(), heights.last()].into_iter().flatten().fold(f64::INFINITY, |h, s| h.min(s.1));
    match best {
        Some(best) if best.chi_square <= upright => profile.at(best.slope),
        _ => Err(LineError::NoConvergence),
    }
}

/// Slopes in units of the spans, from −10⁹ to 10⁹: evenly by angle near 1, by factors of two beyond.
fn slopes() -> Vec<f64> {
    let by_angle = (-88..=88_i32).map(|degrees| libm::tan(f64::from(degrees).to_radians()));
    let steep = (5..=30).map(|power| libm::ldexp(1.0, power));
    let flat = (6..=30).map(|power| libm::ldexp(1.0, -power));
    let both = |size: f64| [size, -size];
    let mut slopes: Vec<f64> = by_angle.chain(steep.flat_map(both)).chain(flat.flat_map(both)).collect();
    slopes.sort_by(f64::total_cmp);
    slopes
}
