//! What is on the screen: a colour for every place in divisions.

use serde::{Deserialize, Serialize};
use slope_evidence::decimal::exact;

use super::lettering::{Stroke, distance, written};
use super::theme::{Rgb, ScreenTheme};

/// How far the screen goes beyond its grid, divisions.
const MARGIN: f64 = 0.4;

/// How far its frame goes beyond the screen, divisions.
const FRAME: f64 = 0.55;

/// Steps in which a trace is drawn, in a division.
const STEPS: f64 = 60.0;

/// A pulse on a trace. Rows count downwards, so a pulse that goes up has `peak` below `base`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Pulse {
    /// Column where it crosses half of its own height, rising.
    pub edge: f64,
    /// Row of its baseline.
    pub base: f64,
    /// Row of its peak.
    pub peak: f64,
    /// From 10 % to 90 % of an edge without decay, divisions.
    pub rise: f64,
    /// Divisions in which it decays to 1/e; very many for a step.
    pub decay: f64,
}

impl Pulse {
    /// Logistic rise times exponential decay, not yet scaled: t from the middle of the rise.
    fn raw(&self, t: f64) -> f64 {
        // 10 % to 90 % of the logistic function is 2 ln 9 of its unit.
        let unit = self.rise / (2.0 * libm::log(9.0));
        libm::exp(-t.max(0.0) / self.decay) / (1.0 + libm::exp(-t / unit))
    }

    /// The height of the peak of [`Self::raw`], and the place where half of it is crossed.
    fn shape(&self) -> (f64, f64) {
        let places = (0..4000).map(|i| self.rise * (f64::from(i) / 500.0 - 1.0));
        let height = places.map(|t| self.raw(t)).fold(0.0, f64::max);
        let (mut below, mut above) = (-4.0 * self.rise, self.rise);
        for _ in 0..60 {
            let middle = f64::midpoint(below, above);
            if self.raw(middle) < height / 2.0 { below = middle } else { above = middle }
        }
        (height, above)
    }
}

/// A screen with a grid and two traces.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Screen {
    /// Divisions along the time axis.
    pub columns: u32,
    /// Divisions downwards.
    pub rows: u32,
    /// Small divisions in a division, ticked along the middle lines.
    pub small: u32,
    /// The traces of A and of B.
    pub pulses: [Pulse; 2],
    /// Width of a trace's line, divisions.
    pub line: f64,
    /// Width of a grid line, divisions.
    pub grid_line: f64,
    /// Whether grid lines are rows of dots, one at each small division.
    pub dotted: bool,
    /// How a trace pales where it is steep: to 1/√2 at a slope of 1/`fade`.
    pub fade: f64,
    /// Colours.
    pub theme: ScreenTheme,
    /// Time base written under the grid, ns per division.
    pub time_base: Option<f64>,
    /// Its picture elements, where a camera is near enough to see them.
    pub raster: Option<Raster>,
}

/// Picture elements of a screen, red, green and blue side by side. What a camera sees of them between its own pixels are
/// broad bands of colour (moiré).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Raster {
    /// From one to the next, either way, divisions.
    pub pitch: f64,
    /// How much lighter or darker than in the mean it is in the middle of one and between two, as a share.
    pub depth: f64,
}

impl Raster {
    /// The light of red, green or blue (0 to 2) at a place, in units of the mean.
    fn light(&self, [column, row]: [f64; 2], colour: usize) -> f64 {
        let wave = |x: f64| 1.0 + self.depth * libm::cos(std::f64::consts::TAU * x);
        wave(column / self.pitch + colour as f64 / 3.0) * wave(row / self.pitch)
    }
}

/// A trace made ready to draw: rows at steps of 1/[`STEPS`] of a division.
struct DrawnTrace {
    rows: Vec<f64>,
    colour: Rgb,
}

/// A screen made ready to draw.
pub(super) struct ReadyScreen<'a> {
    screen: &'a Screen,
    curves: Vec<DrawnTrace>,
    writing: Vec<Stroke>,
}

/// Blends towards a colour.
fn blend(under: &mut [f64; 3], over: Rgb, share: f64) {
    for (under, over) in under.iter_mut().zip(over) {
        *under += share * (f64::from(over) - *under);
    }
}

/// How much of a pixel of size `pixel` is covered, `inside` it reaching into the shape.
fn cover(inside: f64, pixel: f64) -> f64 {
    (inside / pixel + 0.5).clamp(0.0, 1.0)
}

impl Screen {
    /// Makes the curves.
    pub(super) fn ready(&self) -> ReadyScreen<'_> {
        let curve = |(pulse, colour): (&Pulse, Rgb)| {
            let (height, half) = pulse.shape();
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred")]
            let count = (f64::from(self.columns) * STEPS) as usize;
            let at = |i: usize| {
                let share = pulse.raw(i as f64 / STEPS - pulse.edge + half) / height;
                pulse.base + (pulse.peak - pulse.base) * share
            };
            DrawnTrace { rows: (0..=count).map(at).collect(), colour }
        };
        let curves = self.pulses.iter().zip(self.theme.traces).map(curve).collect();
        let text = self.time_base.map_or(String::new(), |s| exact(s) + " ns/div");
        let writing = written(&text, f64::from(self.columns), f64::from(self.rows) + 0.12);
        ReadyScreen { screen: self, curves, writing }
    }
}

impl ReadyScreen<'_> {
    /// The colour at a place, for a pixel of a size in divisions.
    pub(super) fn colour(&self, [column, row]: [f64; 2], pixel: f64) -> [f64; 3] {
        let screen = self.screen;
        let (width, height) = (f64::from(screen.columns), f64::from(screen.rows));
        // How far inside the grid's rectangle.
        let inside = column.min(width - column).min(row).min(height - row);
        // A table with a little light on it from above.
        let mut colour = [0.0; 3];
        blend(&mut colour, screen.theme.table, 1.0 - 0.012 * row.clamp(-10.0, 20.0));
        blend(&mut colour, screen.theme.frame, cover(inside + MARGIN + FRAME, pixel));
        blend(&mut colour, screen.theme.ground, cover(inside + MARGIN, pixel));
        if inside < -MARGIN {
            return colour;
        }
        if row > height {
            let off = distance(&self.writing, [column, row]);
            blend(&mut colour, screen.theme.grid, cover(0.016 - off, pixel));
        }
        blend(&mut colour, screen.theme.grid, self.grid([column, row], inside, pixel));
        for curve in &self.curves {
            if column >= -pixel && column <= width + pixel {
                let (off, slope) = curve.nearest([column, row], screen.line + pixel);
                let pale = 1.0 / libm::sqrt(1.0 + screen.fade * slope * screen.fade * slope);
                blend(&mut colour, curve.colour, pale * cover(screen.line / 2.0 - off, pixel));
            }
        }
        if let Some(raster) = screen.raster {
            for (which, light) in colour.iter_mut().enumerate() {
                *light *= raster.light([column, row], which);
            }
        }
        colour
    }

    /// The light of a lamp mirrored in the screen's glass: 1 in its middle, none outside of the glass.
    pub(super) fn lamp(&self, [column, row]: [f64; 2]) -> f64 {
        let (width, height) = (f64::from(self.screen.columns), f64::from(self.screen.rows));
        if column.min(width - column).min(row).min(height - row) < -MARGIN {
            return 0.0;
        }
        let (x, y) = ((column - 0.62 * width) / 1.8, (row - 0.3 * height) / 1.2);
        libm::exp(-0.5 * (x * x + y * y))
    }

    /// How much of a pixel is grid.
    fn grid(&self, [column, row]: [f64; 2], inside: f64, pixel: f64) -> f64 {
        let screen = self.screen;
        let half = screen.grid_line / 2.0;
        if inside < -half - pixel {
            return 0.0;
        }
        let off = |x: f64| (x - libm::round(x)).abs();
        let small = f64::from(screen.small);
        let lines = if screen.dotted {
            let dot = |across: f64, along: f64| libm::hypot(off(across), off(along * small) / small);
            cover(1.2 * half - dot(column, row).min(dot(row, column)), pixel)
        } else {
            cover(half - off(column).min(off(row)), pixel)
        };
        // Ticks across the two middle lines.
        let tick = |along: f64, across: f64, middle: f64| {
            let near = off(along * small) / small;
            cover(half * 0.8 - near, pixel) * cover(0.09 - (across - middle).abs(), pixel)
        };
        let (middle_row, middle_column) = (f64::from(screen.rows / 2), f64::from(screen.columns / 2));
        lines.max(tick(column, row, middle_row)).max(tick(row, column, middle_column))
    }
}

impl DrawnTrace {
    /// Distance of a place from the curve, divisions, infinite where it is farther than `far`; and the slope there.
    fn nearest(&self, [column, row]: [f64; 2], far: f64) -> (f64, f64) {
        let last = self.rows.len() - 1;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped")]
        let step = |x: f64| (x * STEPS).clamp(0.0, last as f64) as usize;
        let (from, to) = (step(column - far), (step(column + far) + 1).min(last));
        let (mut least, mut slope) = (f64::INFINITY, 0.0);
        for i in from..to {
            let (ax, ay, by) = (i as f64 / STEPS, self.rows[i], self.rows[i + 1]);
            if row < ay.min(by) - far || row > ay.max(by) + far {
                continue;
            }
            let (dx, dy) = (1.0 / STEPS, by - ay);
            let along = ((column - ax) * dx + (row - ay) * dy) / (dx * dx + dy * dy);
            let along = along.clamp(0.0, 1.0);
            let (ox, oy) = (column - ax - along * dx, row - ay - along * dy);
            if ox * ox + oy * oy < least {
                (least, slope) = (ox * ox + oy * oy, dy / dx);
            }
        }
        (libm::sqrt(least), slope)
    }
}
