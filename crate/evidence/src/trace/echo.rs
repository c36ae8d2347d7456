//! An echo that runs into the top of one trace: it raises the top, and with it the level at which the edge is timed.
//!
//! A detector's answer may climb on behind its edge, as that of a low-pass does; then both traces do so alike. What climbs on
//! one trace alone came later than its pulse. Places are counted in rises of each trace, so that two detectors of one kind may
//! differ in speed, and only climbs are compared, so that they may differ in how fast they fall. An echo within a rise of the
//! edge is part of it: it shows, if at all, by the shape of that (`delay.rs`).

use super::{Pulse, whole};

/// Share of the height from which on a climb counts: one moves the level of a crossing by about half of it, and the edge by
/// some hundredths of its rise. Of detectors of two kinds, a low-pass and one with a Gaussian answer, one climbs by up to 0.055
/// more than the other, and is told as well: its level is moved as much.
const LEAST: f64 = 0.03;
/// So many standard deviations of its noise a climb is that counts: none of the few that are looked at is so by chance.
const SURE: f64 = 5.0;
/// Places that are looked at, in quarters of a rise behind the middle of the edge: from its shoulder to the end of its top.
const QUARTERS: std::ops::RangeInclusive<u8> = 2..=8;

/// Where a trace climbs on its top while the other one does not: a sample.
pub(super) fn echo(pulse: &Pulse<'_>, other: &Pulse<'_>) -> Option<usize> {
    let least = LEAST.max(SURE * libm::hypot(noise_of_climb(pulse), noise_of_climb(other)));
    let mut places = QUARTERS.map(|quarters| 0.25 * f64::from(quarters));
    let place = places.find(|place| climb(pulse, *place) - climb(other, *place) > least)?;
    Some(whole(pulse.middle + (place + 0.5) * pulse.rise))
}

/// By what share of its height a pulse climbs from the half rise that begins so many rises behind its middle to the next; 0
/// where it falls.
fn climb(pulse: &Pulse<'_>, place: f64) -> f64 {
    let mean = |rises: f64| pulse.sums.window(pulse.middle + rises * pulse.rise, 0.25 * pulse.rise);
    ((mean(place + 0.75) - mean(place + 0.25)) / pulse.height).max(0.0)
}

/// Standard deviation of a climb by noise, as a share of the height.
fn noise_of_climb(pulse: &Pulse<'_>) -> f64 {
    let shared = 1.0 + 2.0 * pulse.baseline.correlation.iter().sum::<f64>();
    pulse.baseline.sigma / pulse.height * (4.0 * shared / pulse.rise.max(2.0)).sqrt()
}

#[cfg(test)]
#[path = "echo_test.rs"]
mod tests;
