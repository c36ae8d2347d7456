//! One row in the numbers that the line needs: a point, with what is known of its errors.

use super::evidence::CornerShift;
use super::origin::Clock;
use crate::notebook::RowId;
use crate::rail::Source;

/// The time base of a delay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeBase {
    /// By what the delay is timed.
    pub clock: Clock,
    /// Its relative standard uncertainty.
    pub relative: f64,
}

/// The time bases of points, that of each clock once, in [`Clock::order`].
pub fn time_bases(points: &[Point]) -> Vec<TimeBase> {
    let mut all: Vec<TimeBase> = points.iter().filter_map(|point| point.time_base).collect();
    all.sort_by(|a, b| a.clock.order(&b.clock));
    all.dedup_by(|a, b| a.clock == b.clock);
    all
}

/// From what a delay was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DelaySource {
    /// It was typed.
    Directly,
    /// Two edges were read on a screen.
    OnScreen,
    /// Two edges were marked on a picture of a screen.
    OnPicture,
    /// Traces were recorded.
    ByTraces,
}

/// One row in the numbers that the line needs: x is a distance in metres, y a delay in nanoseconds.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// The row.
    pub row: RowId,
    /// Distance, m.
    pub x: f64,
    /// Delay, ns.
    pub y: f64,
    /// Standard uncertainty of the distance that no other row shares, m; none if none was stated.
    pub ux: Option<f64>,
    /// Standard uncertainty of the delay that no other row shares, ns; none if none was stated.
    pub uy: Option<f64>,
    /// The part of `uy` that comes from the scatter of repeats, ns.
    pub type_a: f64,
    /// What one standard deviation of each shared source does to the distance, m.
    pub effects: Vec<(Source, f64)>,
    /// Place of the rail among the rails, if the row was read on one.
    pub rail: Option<usize>,
    /// The rails with a free step that move this row.
    pub free: Vec<usize>,
    /// The time base of its delay; none where the delay was typed, or nothing is said of a recorder's.
    pub time_base: Option<TimeBase>,
    /// From what the delay was taken.
    pub delay_source: DelaySource,
    /// What one standard deviation of each coordinate of its grid's corners does to the delay, ns.
    pub corners: Vec<(CornerShift, f64)>,
}

impl Point {
    /// Standard uncertainty of the delay, shared parts included, ns; none if none was stated.
    pub fn full_uy(&self) -> Option<f64> {
        full_uy(self.y, self.uy, self.time_base, &self.corners)
    }
}

/// Standard uncertainty of a delay, its time base and the corners of its grid included.
pub fn full_uy(
    y: f64,
    uy: Option<f64>,
    time_base: Option<TimeBase>,
    corners: &[(CornerShift, f64)],
) -> Option<f64> {
    let scale = match time_base {
        Some(TimeBase { relative, .. }) => y * relative,
        None if corners.is_empty() => return uy,
        None => 0.0,
    };
    let own = uy.unwrap_or(0.0);
    let corners: f64 = corners.iter().map(|(_, effect)| effect * effect).sum();
    Some((own * own + scale * scale + corners).sqrt())
}
