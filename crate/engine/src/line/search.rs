//! The least χ² over the slope: Newton's method with halved steps, and a scan over all slopes where χ² may have more
//! than one valley.

use core::f64::consts::FRAC_PI_2;

use super::{
    chebyshev::cosine,
    error::LineError,
    input::Data,
    pair::DoubleDouble,
    profile::{Profile, ProfileValue},
};

/// Where curvature and information differ by more than this share, errors in x bend χ² enough for a second valley.
const BENT: f64 = 0.1;
/// A slope within so many of its standard uncertainties from zero may have a second valley.
const FAR: f64 = 4.0;
/// Beyond this slope, in units of the spans, the line counts as upright.
const UPRIGHT: f64 = 1e12;

/// Where the least χ² is looked for, when χ² may have more than one valley.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Search {
    /// Over all slopes.
    Everywhere,
    /// In the valley that begins at the slope of the rows themselves.
    Near,
    /// In the valley that begins at this slope, in units of the data.
    At(f64),
}

/// The end of a descent.
struct Valley {
    point: ProfileValue,
    /// Newton's method walked straight in, and χ² is nearly a parabola.
    plain: bool,
}

/// The least χ², with slope and intercept to more digits than one double holds where that matters.
pub(super) struct LeastChiSquare {
    pub point: ProfileValue,
    pub slope: DoubleDouble,
    /// In scaled units.
    pub intercept: DoubleDouble,
}

/// Finds the least χ², and leaves `profile` at it.
pub(super) fn least(
    profile: &mut Profile<'_>,
    data: &Data,
    start: f64,
    search: Search,
) -> Result<LeastChiSquare, LineError> {
    let point = match descend(profile, start) {
        Ok(Valley { point, plain }) if plain || search != Search::Everywhere => point,
        Ok(Valley { point, .. }) => scan(profile, Some(point))?,
        Err(LineError::NoConvergence) => scan(profile, None)?,
        Err(error) => return Err(error),
    };
    let (intercept, largest) = profile.intercept(point.slope.into());
    if blurred(&point) || intercept.high.abs() < CANCELLED * largest {
        refine(profile, data, point)
    } else {
        Ok(LeastChiSquare { point, slope: point.slope.into(), intercept })
    }
}

/// Where terms cancel to less than this share, a double keeps less than eleven digits of what is left.
const CANCELLED: f64 = 1e-5;

/// Whether the line leaves so little of the readings that rounding would leave the residuals few digits, or rounding has
/// kept Newton's method from coming nearer.
fn blurred(point: &ProfileValue) -> bool {
    /// A share of the slope.
    const NEAR: f64 = 1e-12;
    let explained = point.information * point.slope * point.slope;
    point.chi_square < CANCELLED * CANCELLED * explained
        || newton_step(point).abs() > NEAR * point.slope.abs()
}

/// Two more of Newton's steps, with residuals in pairs.
fn refine(profile: &mut Profile<'_>, data: &Data, point: ProfileValue) -> Result<LeastChiSquare, LineError> {
    let mut slope = DoubleDouble::from(point.slope);
    for _ in 0..2 {
        let here = profile.closely_at(data, slope)?;
        slope = slope + newton_step(&here).into();
    }
    let point = profile.closely_at(data, slope)?;
    Ok(LeastChiSquare { point, slope, intercept: profile.intercept(slope).0 })
}

fn descend(profile: &mut Profile<'_>, start: f64) -> Result<Valley, LineError> {
    let mut here = profile.at(start)?;
    let mut straight = true;
    let mut last_step = f64::INFINITY;
    for _ in 0..100 {
        let step = newton_step(&here);
        if here.slope.abs() > UPRIGHT || !step.is_finite() {
            return Err(LineError::NoConvergence);
        }
        if arrived(&here, step, last_step) {
            return Ok(Valley { point: here, plain: straight && is_plain(&here) });
        }
        let (next, halved) = downhill(profile, &here, step)?;
        straight &= !halved && here.curvature > 0.0;
        last_step = step;
        here = next;
    }
    Err(LineError::NoConvergence)
}

/// Whether χ² is so like a parabola that there is no second valley to look for. Where x is exact it is one; elsewhere it
/// must bend little at the least, and that must lie far from the slope zero, about which the errors in x mirror it.
fn is_plain(point: &ProfileValue) -> bool {
    let bent = (point.curvature - point.information).abs();
    let far = point.information * point.slope * point.slope >= FAR * FAR;
    bent == 0.0 || (bent <= BENT * point.information && far)
}

fn newton_step(point: &ProfileValue) -> f64 {
    let bend = if point.curvature > 0.0 { point.curvature } else { point.information };
    -point.gradient / bend
}

/// A step in the last place of the slope, or one that rounding keeps from shrinking.
fn arrived(point: &ProfileValue, step: f64, last_step: f64) -> bool {
    /// Steps below this, in units of the spans or of the standard uncertainty, are rounding if they do not shrink.
    const ROUNDING: f64 = 1e-11;
    const NEGLIGIBLE: f64 = 1e-8;
    let in_last_place = step.abs() <= 2.0 * f64::EPSILON * point.slope.abs();
    let small = step.abs() <= ROUNDING * (1.0 + point.slope.abs())
        || step * step * point.information <= NEGLIGIBLE * NEGLIGIBLE;
    let stalled = small && step.abs() >= 0.5 * last_step.abs();
    point.curvature > 0.0 && (in_last_place || stalled || step == 0.0)
}

/// Goes along `step`, halved until χ² no longer rises. Tells whether it was halved.
fn downhill(
    profile: &mut Profile<'_>,
    here: &ProfileValue,
    step: f64,
) -> Result<(ProfileValue, bool), LineError> {
    /// χ² may rise by its own rounding.
    const ROUNDING: f64 = 1e-9;
    let mut share = 1.0;
    for _ in 0..60 {
        match profile.at(here.slope + share * step) {
            Ok(next) if next.chi_square <= here.chi_square * (1.0 + ROUNDING) + f64::EPSILON => {
                return Ok((next, share < 1.0));
            }
            Ok(_)
            | Err(LineError::ZeroUncertainty { .. } | LineError::Singular { .. } | LineError::OutOfRange) => {
                share *= 0.5;
            }
            Err(error) => return Err(error),
        }
    }
    Err(LineError::NoConvergence)
}

/// Looks at χ² over all slopes, descends into the lowest valleys, and gives the lowest end.
fn scan(profile: &mut Profile<'_>, known: Option<ProfileValue>) -> Result<ProfileValue, LineError> {
    /// An upright line that fits as well as this takes the place of any other.
    const ALIKE: f64 = 1e-9;
    let Floors { ends, upright } = floors(profile);
    let lower = |best: Option<ProfileValue>, end: ProfileValue| match best {
        Some(best) if best.chi_square <= end.chi_square => Some(best),
        _ => Some(end),
    };
    match ends.into_iter().fold(known, lower) {
        Some(best) if best.chi_square < upright * (1.0 - ALIKE) => {
            profile.forget();
            profile.at(best.slope)?;
            profile.at(best.slope)
        }
        _ => Err(LineError::NoConvergence),
    }
}

/// By how much √χ² is lower at its least, `best`, than on the floor of any other valley.
pub(super) fn lead(profile: &mut Profile<'_>, best: &ProfileValue) -> f64 {
    let Floors { ends, upright } = floors(profile);
    let is_other = |end: &&ProfileValue| best.information * (end.slope - best.slope).powi(2) > 1.0;
    let others = ends.iter().filter(is_other).map(|end| end.chi_square);
    others.fold(upright, f64::min).sqrt() - best.chi_square.sqrt()
}

/// The floors of the lowest valleys, and χ² of a line that is all but upright.
struct Floors {
    ends: Vec<ProfileValue>,
    upright: f64,
}

fn floors(profile: &mut Profile<'_>) -> Floors {
    const TRIED: usize = 4;
    let heights: Vec<(f64, f64)> = slopes()
        .into_iter()
        .map(|slope| (slope, profile.at(slope).map_or(f64::INFINITY, |point| point.chi_square)))
        .collect();
    let mut valleys: Vec<[(f64, f64); 3]> = heights
        .windows(3)
        .filter_map(|window| match window {
            [before, here, after] if here.1 <= before.1 && here.1 <= after.1 => {
                Some([*before, *here, *after])
            }
            _ => None,
        })
        .collect();
    valleys.sort_by(|a, b| a[1].1.total_cmp(&b[1].1));
    let mut ends = Vec::new();
    for valley in valleys.into_iter().take(TRIED) {
        let floor = narrowed(profile, valley);
        profile.forget();
        ends.extend(descend(profile, floor).map(|valley| valley.point));
    }
    let upright =
        [heights.first(), heights.last()].into_iter().flatten().fold(f64::INFINITY, |h, s| h.min(s.1));
    Floors { ends, upright }
}

/// A slope near the floor of a valley between three slopes of which the middle one is lowest, by halving the wider side:
/// from farther off, one of Newton's steps could leave the valley.
fn narrowed(profile: &mut Profile<'_>, valley: [(f64, f64); 3]) -> f64 {
    let [mut before, mut here, mut after] = valley;
    profile.forget();
    for _ in 0..16 {
        let rising = after.0 - here.0 > here.0 - before.0;
        let slope = 0.5 * (here.0 + if rising { after.0 } else { before.0 });
        let tried = (slope, profile.at(slope).map_or(f64::INFINITY, |point| point.chi_square));
        match (rising, tried.1 < here.1) {
            (true, true) => (before, here) = (here, tried),
            (true, false) => after = tried,
            (false, true) => (after, here) = (here, tried),
            (false, false) => before = tried,
        }
    }
    here.0
}

/// Slopes in units of the spans, from −10⁹ to 10⁹: evenly by angle near 1, by factors of two beyond.
fn slopes() -> Vec<f64> {
    let tangent = |degrees: i32| {
        let angle = f64::from(degrees).to_radians();
        cosine(FRAC_PI_2 - angle) / cosine(angle)
    };
    let by_angle = (-88..=88_i32).map(tangent);
    let steep = (5..=30).map(|power| libm::ldexp(1.0, power));
    let flat = (6..=30).map(|power| libm::ldexp(1.0, -power));
    let both = |size: f64| [size, -size];
    let mut slopes: Vec<f64> = by_angle.chain(steep.flat_map(both)).chain(flat.flat_map(both)).collect();
    slopes.sort_unstable_by(f64::total_cmp);
    slopes
}
