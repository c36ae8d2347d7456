//! What is drawn, in plain numbers: the charts know nothing of notebooks.
//!
//! Distances d are in metres, delays Δt in nanoseconds; u is a standard uncertainty in the same unit.
//! A value that is not finite is left out of the drawing.

use crate::quantity::DecimalMark;
use crate::words::Value;

/// The readings and the line through them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LinePicture {
    /// The readings that have both a distance and a delay, in the order of the page.
    pub marks: Vec<PlottedRow>,
    /// The fitted line, if there is one.
    pub line: Option<FittedLine>,
    /// The names of the series, one a rail, for the legend.
    pub series: Vec<Value>,
    /// How decimal numbers are written.
    pub decimal_mark: DecimalMark,
    /// What stands upright.
    pub upright: Upright,
    /// The part that is looked at.
    pub window: PlotWindow,
}

/// The part of a plot that is looked at: from and to, as shares of its whole range from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlotWindow {
    across: [f64; 2],
    up: [f64; 2],
}

impl Default for PlotWindow {
    /// The whole.
    fn default() -> Self {
        Self { across: [0.0, 1.0], up: [0.0, 1.0] }
    }
}

impl PlotWindow {
    /// Narrower than this nothing is looked at, in shares of the whole.
    const LEAST: f64 = 1e-3;

    /// From left, right, bottom and top; the whole where they are no part of it.
    pub fn of(ends: &[f64]) -> Self {
        let is_part = |[from, to]: [f64; 2]| 0.0 <= from && to <= 1.0 && to - from >= Self::LEAST;
        match *ends {
            [left, right, bottom, top] if is_part([left, right]) && is_part([bottom, top]) => {
                Self { across: [left, right], up: [bottom, top] }
            }
            _ => Self::default(),
        }
    }

    /// From and to of the distances.
    pub fn across(self) -> [f64; 2] {
        self.across
    }

    /// From and to of what stands upright.
    pub fn up(self) -> [f64; 2] {
        self.up
    }
}

/// What is drawn against the distance.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Upright {
    /// The delay Δt.
    #[default]
    Delay,
    /// Fixed level less constant fraction.
    Walk,
}

/// One reading.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PlottedRow {
    /// The row's number on the page, from 1.
    pub number: usize,
    /// Distance d, m.
    pub distance: f64,
    /// Delay Δt, ns.
    pub delay: f64,
    /// Standard uncertainty of the distance, m, where one was stated.
    pub u_distance: Option<f64>,
    /// Standard uncertainty of the delay, ns, where one was stated.
    pub u_delay: Option<f64>,
    /// Which series it belongs to: an index into [`LinePicture::series`].
    pub series: usize,
    /// Whether it was struck out.
    pub struck: bool,
    /// Its residual in units of the residual's standard uncertainty, where there is one.
    pub residual: Option<f64>,
}

/// The line Δt = t₀ + b·d.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FittedLine {
    /// Slope b, ns/m.
    pub slope: f64,
    /// Intercept t₀, ns.
    pub intercept: f64,
    /// Its band, where its uncertainty is known.
    pub band: Option<Band>,
}

impl FittedLine {
    /// Delay on the line at distance `d` (m), ns.
    pub fn at(&self, d: f64) -> f64 {
        self.intercept + self.slope * d
    }
}

/// The 95 % band of a line, told from the distance at which slope and level are uncorrelated.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Band {
    /// That distance, m.
    pub centre: f64,
    /// Standard uncertainty of the line there, ns.
    pub u_at_centre: f64,
    /// Standard uncertainty of the slope, ns/m.
    pub u_slope: f64,
    /// Coverage factor at 95 %.
    pub coverage_factor: f64,
}

impl Band {
    /// Half-width of the band at distance `d` (m), ns: k·√(u²(centre) + (d − centre)²·u²(b)) (GUM 5.1.2).
    pub fn half_width(&self, d: f64) -> f64 {
        let tilt = (d - self.centre) * self.u_slope;
        self.coverage_factor * (self.u_at_centre * self.u_at_centre + tilt * tilt).sqrt()
    }
}

/// The shares of the budget, in the order in which they are drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SharesPicture {
    /// The shares.
    pub shares: Vec<Share>,
}

/// One share of the budget.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Share {
    /// What it is called.
    pub label: Value,
    /// The share, 0 … 1.
    pub share: f64,
    /// The same as written.
    pub text: String,
}

/// Monte Carlo trials in bins. Speeds are in 10⁶ m/s, densities in their inverse.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HistogramPicture {
    /// Where the first bin begins.
    pub from: f64,
    /// Width of a bin.
    pub width: f64,
    /// Share of the trials in each bin over its width.
    pub densities: Vec<f64>,
    /// Share of the trials that the budget expects in each bin, 0 … 1.
    pub expected: Vec<f64>,
    /// The budget's density, as points from left to right.
    pub curve: Vec<(f64, f64)>,
    /// The ends of the trials' interval.
    pub interval: [f64; 2],
    /// How decimal numbers are written.
    pub decimal_mark: DecimalMark,
}

/// The bench seen from above.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BenchPicture {
    /// The rails whose place is known, from the splitter outwards.
    pub rails: Vec<BenchRail>,
    /// The names of the rails whose place can't be told yet.
    pub unplaced: Vec<String>,
    /// The carriage positions taken so far.
    pub carriages: Vec<Carriage>,
    /// How decimal numbers are written.
    pub decimal_mark: DecimalMark,
}

/// A rail on the bench.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BenchRail {
    /// Its name.
    pub name: String,
    /// Distance of its near end, m.
    pub near: f64,
    /// Distance of its far end, m.
    pub far: f64,
    /// What its ruler shows at the near end, with unit.
    pub near_reading: String,
    /// What its ruler shows at the far end, with unit.
    pub far_reading: String,
    /// Whether its readings grow as the carriage moves away from the splitter.
    pub grows: bool,
    /// Where it is tied to the rail before, or to the splitter.
    pub splice: Option<BenchSplice>,
}

/// The splice of a rail.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BenchSplice {
    /// Distance of the mark that ties the rail, m.
    pub distance: f64,
    /// A word on it: "u = 0.8 mm", "step fitted".
    pub note: Value,
}

/// A carriage position.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Carriage {
    /// The row's number on the page, from 1.
    pub number: usize,
    /// Distance d, m.
    pub distance: f64,
    /// The rail it stands on, an index into [`BenchPicture::rails`]; none for a distance given directly.
    pub rail: Option<usize>,
    /// Whether the row was struck out.
    pub struck: bool,
}

/// Two recorded traces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TracesPicture {
    /// A and B.
    pub traces: [TracePicture; 2],
    /// From when to when, ns.
    pub span: [f64; 2],
    /// How decimal numbers are written.
    pub decimal_mark: DecimalMark,
}

/// One trace.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TracePicture {
    /// Time of the first stretch, ns.
    pub start: f64,
    /// From one stretch to the next, ns.
    pub step: f64,
    /// Least and greatest sample of each stretch, V.
    pub bounds: Vec<[f64; 2]>,
    /// The pulse, where one was found.
    pub pulse: Option<TracePulse>,
}

/// The pulse of a trace.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TracePulse {
    /// Level of the baseline, V.
    pub baseline: f64,
    /// Level of the top, V.
    pub top: f64,
    /// The edge, where the estimator chosen found one.
    pub edge: Option<TraceEdge>,
}

/// The edge of a pulse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TraceEdge {
    /// Level at which it is taken, V.
    pub level: f64,
    /// When it crosses that, ns.
    pub time: f64,
    /// Standard uncertainty of the time, ns.
    pub u: f64,
}

impl TracePicture {
    /// From plain numbers, as they come from the page: `samples` are start and step, and then least and greatest of each
    /// stretch; `marks` are baseline and top of the pulse, where there is one, and then level, time and uncertainty of its
    /// edge, where that was found.
    pub fn of(samples: &[f64], marks: &[f64]) -> Self {
        let without = Self { pulse: TracePulse::of(marks), ..Self::default() };
        let [start, step, bounds @ ..] = samples else { return without };
        Self { start: *start, step: *step, bounds: bounds.as_chunks::<2>().0.to_vec(), ..without }
    }
}

impl TracePulse {
    fn of(marks: &[f64]) -> Option<Self> {
        let [baseline, top, edge @ ..] = marks else { return None };
        let edge = match edge {
            [level, time, u] => Some(TraceEdge { level: *level, time: *time, u: *u }),
            _ => None,
        };
        Some(Self { baseline: *baseline, top: *top, edge })
    }
}
