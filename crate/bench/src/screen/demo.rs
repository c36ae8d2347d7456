//! Pictures for the demo: a fixed camera, tilted, and a screen for each row of readings.

use super::camera::{Camera, PictureTruth};
use super::drawing::{Pulse, Screen};
use super::theme::THEMES;
use crate::chance::Chance;

/// What one picture is to show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shot {
    /// Delay of B's edge behind A's, ns.
    pub delay: f64,
    /// Time base, ns per division.
    pub time_base: f64,
}

impl Shot {
    /// A screen of 8 rows that shows it: A is the upper trace, its edge at a column; the pulse of B is smaller, the more so the
    /// longer the delay, and higher than that by `more` divisions.
    pub fn screen(&self, columns: u32, edge: f64, more: f64) -> Screen {
        let apart = self.delay / self.time_base;
        let rise = (1.6 / self.time_base).clamp(0.08, 1.0);
        let decay = (18.0 / self.time_base).max(1.5);
        let height = 2.6 / (1.0 + 0.06 * apart) + more;
        let a = Pulse { edge, base: 3.5, peak: 0.7, rise, decay };
        let b = Pulse { edge: edge + apart, base: 7.4, peak: 7.4 - height, ..a };
        Screen {
            columns,
            rows: 8,
            small: 4,
            pulses: [a, b],
            line: 0.05,
            grid_line: 0.02,
            dotted: false,
            fade: 0.03,
            theme: THEMES[1],
            time_base: Some(self.time_base),
            raster: None,
        }
    }
}

/// A camera on a shelf, a little to the left of the screen and below it.
pub fn on_a_shelf() -> Camera {
    Camera {
        fill: 0.72,
        aim: [0.1, -0.15],
        yaw: 0.24,
        pitch: -0.13,
        roll: 0.02,
        blur: 0.9,
        noise: 3.0,
        vignetting: 0.18,
        exposure: 0.96,
        ..Camera::default()
    }
}

/// One picture for each shot, by a camera that does not move: screen, camera and truth. The picture itself is drawn by
/// [`Camera::photograph`].
///
/// A's edge stands near column 2, wherever the trigger left it. B's edge stays on a screen of ten divisions while the delay
/// is below seven of them.
pub fn demo_series(seed: u64, shots: &[Shot]) -> Vec<(Screen, Camera, PictureTruth)> {
    let mut chance = Chance::seeded(seed);
    let camera = on_a_shelf();
    let taken = |shot: &Shot| {
        let edge = 2.0 + 0.25 * (chance.unit() - 0.5);
        let screen = shot.screen(10, edge, 0.1 * chance.unit());
        let truth = camera.truth(&screen);
        (screen, camera, truth)
    };
    shots.iter().map(taken).collect()
}

/// A screen and a camera as chance has them, for tests: any theme, either sense of pulse, tilt up to `tilt` degrees in
/// any direction, a little roll; blur and noise as a hand-held camera has them.
pub fn random_view(seed: u64, tilt: f64) -> (Screen, Camera) {
    let mut chance = Chance::stream(seed, 2);
    let mut between = |low: f64, high: f64| low + (high - low) * chance.unit();
    let (tilt, way) = (tilt.to_radians() * between(0.0, 1.0), between(0.0, std::f64::consts::TAU));
    let camera = Camera {
        focal: between(0.9, 1.6),
        fill: between(0.6, 0.75),
        aim: [between(-0.3, 0.3), between(-0.2, 0.2)],
        yaw: tilt * libm::cos(way),
        pitch: tilt * libm::sin(way),
        roll: between(-0.07, 0.07),
        blur: between(0.4, 1.6),
        noise: between(1.0, 6.0),
        vignetting: between(0.0, 0.3),
        exposure: between(0.75, 1.05),
        glare: between(-0.2, 0.25).max(0.0),
        ..Camera::default()
    };
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few")]
    let mut pick = |count: usize| between(0.0, count as f64) as usize;
    let (theme, columns, upside_down) = (THEMES[pick(THEMES.len())], [10, 10, 12][pick(3)], pick(4) == 0);
    let rise = between(0.08, 0.6);
    let decay = if between(0.0, 1.0) < 0.3 { 1e6 } else { between(1.5, 8.0) };
    let edge = between(1.0, 3.0);
    let pulse = |edge: f64, base: f64, height: f64| {
        let (base, peak) =
            if upside_down { (base - 2.9, base - 2.9 + height) } else { (base, base - height) };
        Pulse { edge, base, peak, rise, decay }
    };
    let a = pulse(edge, between(3.2, 3.8), between(1.6, 2.9));
    // Traces of two colours may cross.
    let crossing = theme.traces[0] != theme.traces[1] && between(0.0, 1.0) < 0.3;
    let base = if crossing { between(4.3, 5.5) } else { between(7.1, 7.8) };
    let b = pulse(edge + between(0.3, 5.5), base, between(1.2, 2.9));
    let fade = between(-0.1, 0.15).max(0.0);
    let (line, grid_line) = (between(0.035, 0.07), between(0.015, 0.03));
    (
        Screen {
            columns,
            rows: 8,
            small: 5,
            pulses: [a, b],
            line,
            grid_line,
            dotted: false,
            fade,
            theme,
            time_base: Some(5.0),
            raster: None,
        },
        camera,
    )
}
